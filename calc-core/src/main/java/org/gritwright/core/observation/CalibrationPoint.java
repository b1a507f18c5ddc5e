package org.gritwright.core.observation;

import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.VolumePerPulse;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * What a calibration is for: a material, the metering that doses it, and where its gate stands. Use it to say which catches
 * belong together and which value of a display they prove.
 *
 * <p>Two points are equal when the materials have one name, the meterings are equal, and the settings are one position: 2 in
 * and 50.8 mm are one point. The material's density is a condition, not part of the point: a new lot is no new point.
 * Immutable, thread-safe, a value.
 *
 * @param material the material
 * @param metering what doses it
 * @param setting where the gate stands; {@link Setting#none()} where there is nothing to set
 */
public record CalibrationPoint(Material material, Metering metering, Setting setting) implements Serializable {
    /** Closer together than this part of the larger, two settings are probably meant to be one (common practice, no source). */
    private static final double NEAR = 0.01;

    /**
     * A point among those of one truck's metering.
     *
     * @param material the material's name
     * @param position where the gate stands
     */
    public record Key(String material, Setting.Position position) implements Serializable {
        /** Checks that nothing is null. */
        public Key {
            Require.given(Key.class, material, position);
        }
    }

    /**
     * Checks that the metering can stand there.
     *
     * @throws org.gritwright.units.InvalidInputException if a liquid meets a conveyor or grains a pump, or the setting is missing, out
     *     of place, on another scale, out of limits, or one at which nothing is swept
     */
    public CalibrationPoint {
        Require.given(CalibrationPoint.class, material, metering, setting);
        if (material.isLiquid() != metering.isForLiquids()) {
            throw new InvalidInputException(
                    "material",
                    metering.isForLiquids()
                            ? "a liquid, as a pump or a flow meter meters it"
                            : "granular, as a conveyor meters it",
                    material.name() + (material.isLiquid() ? ", a liquid" : ", granular"));
        }
        metering.sweptCubicMetersPerRevolution(setting);
    }

    /**
     * A point.
     *
     * @param material the material
     * @param metering what doses it
     * @param setting where the gate stands
     * @return the point
     * @throws org.gritwright.units.InvalidInputException if the metering can't stand there
     */
    public static CalibrationPoint of(Material material, Metering metering, Setting setting) {
        return new CalibrationPoint(material, metering, setting);
    }

    /**
     * What tells this point from the others of the same metering.
     *
     * @return the key
     */
    public Key key() {
        return new Key(material.name(), setting.position());
    }

    /**
     * A discharge per revolution as people say it at this point.
     *
     * @param discharge a mass per revolution; of a liquid, at its stated density
     * @return of grains the mass per revolution, of a liquid the volume per revolution of its pump or per pulse of its flow meter, in the
     *     same customary system
     */
    public Quantity<?> asMetered(Quantity<DischargePerRevolution> discharge) {
        Objects.requireNonNull(discharge, "discharge");
        if (!material.isLiquid()) {
            return discharge;
        }
        double cubicMeters = Amounts.si(DischargePerRevolution.class, discharge) / material.kilogramsPerAmount();
        return metering.hasShaft()
                ? Amounts.ofSi(cubicMeters, UnitSymbol.tradeUnit(VolumePerRevolution.class, discharge))
                : Amounts.ofSi(cubicMeters, UnitSymbol.tradeUnit(VolumePerPulse.class, discharge));
    }

    /**
     * A mass of the material as people say it.
     *
     * @param mass a mass; of a liquid, at its stated density
     * @return of grains the mass, of a liquid its volume, in the same customary system
     */
    public Quantity<?> asCaught(Quantity<Mass> mass) {
        Objects.requireNonNull(mass, "mass");
        return material.isLiquid()
                ? Amounts.ofSi(
                        Amounts.si(Mass.class, mass) / material.kilogramsPerAmount(),
                        UnitSymbol.tradeUnit(Volume.class, mass))
                : mass;
    }

    /**
     * Whether another point is so close that both are probably meant to be one, as gate 57 mm and 2.25 in.
     *
     * @param other another point
     * @return true for one material, one metering and two positions on one scale that differ by less than 1 %
     */
    public boolean isNearMiss(CalibrationPoint other) {
        return !equals(other)
                && material.name().equals(other.material.name())
                && setting.scale() == other.setting.scale()
                && metering.equals(other.metering)
                && Comparison.isAbove(
                        NEAR * Math.max(setting.si(), other.setting.si()), Math.abs(setting.si() - other.setting.si()));
    }

    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof CalibrationPoint that
                        && key().equals(that.key())
                        && metering.equals(that.metering));
    }

    @Override
    public int hashCode() {
        return key().hashCode();
    }

    /**
     * Material and setting.
     *
     * @return for example "road salt at 2 in"
     */
    @Override
    public String toString() {
        return setting.quantity().isPresent() ? material.name() + " at " + setting : material.name();
    }
}
