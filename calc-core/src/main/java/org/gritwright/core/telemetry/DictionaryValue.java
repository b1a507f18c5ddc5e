package org.gritwright.core.telemetry;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * A value as the data dictionary of ISO 11783-11 has it: a whole number of 32 bits with a sign, times the entry's resolution. What is
 * beyond its range is set to the range's end, and says so. Immutable, thread-safe, a value.
 *
 * <p>Entries, units, resolutions and ranges: the export "completeTXT" of the data dictionary at isobus.net, as generated into an open-source
 * library's table (AgIsoStack++, isobus_data_dictionary.cpp), read there in 2026.
 *
 * @param entry the entry
 * @param raw the whole number, within 32 bits
 * @param isSaturated whether the value was beyond the entry's range
 */
public record DictionaryValue(Entry entry, int raw, boolean isSaturated) {
    /** The entries that spreading needs. */
    public enum Entry {
        /** Actual mass per area, in mg/m². */
        MASS_PER_AREA(7, "1", 0),
        /** Total volume, in L. */
        TOTAL_LITERS(80, "1", 0),
        /** Total mass, in kg. */
        TOTAL_KILOGRAMS(81, "1", 0),
        /** Total area, in m². */
        TOTAL_AREA(116, "1", 0),
        /** Total distance on which something was laid, in mm: after 2147 km it is at its end. */
        EFFECTIVE_DISTANCE(117, "1", 0),
        /** Total distance on which nothing was laid, in mm. */
        INEFFECTIVE_DISTANCE(118, "1", 0),
        /** Total time in which something was laid, in s. */
        EFFECTIVE_TIME(119, "1", 0),
        /** Total time in which nothing was laid, in s. */
        INEFFECTIVE_TIME(120, "1", 0),
        /** Total volume, in mL. */
        TOTAL_MILLILITERS(351, "1", 0),
        /** Total mass, in g. */
        TOTAL_GRAMS(352, "1", 0),
        /** Actual rotational speed, in r/min by 0.0001. */
        REVOLUTIONS_PER_TIME(390, "0.0001", Integer.MIN_VALUE),
        /** Actual speed, in mm/s. */
        SPEED(397, "1", Integer.MIN_VALUE),
        /** Total distance, in mm. */
        TOTAL_DISTANCE(597, "1", 0),
        /** Actual volume per distance, in mL/m by 0.001. */
        VOLUME_PER_DISTANCE(634, "0.001", 0);

        private final int identifier;
        private final String resolution;
        private final int lowest;

        Entry(int identifier, String resolution, int lowest) {
            this.identifier = identifier;
            this.resolution = resolution;
            this.lowest = lowest;
        }

        /**
         * The data dictionary identifier.
         *
         * @return for example 352
         */
        public int identifier() {
            return identifier;
        }

        DictionaryValue of(double inUnit) {
            BigDecimal raw = new BigDecimal(Require.finite("value of entry " + identifier, inUnit))
                    .divide(new BigDecimal(resolution), 0, RoundingMode.HALF_UP);
            BigDecimal held = raw.max(BigDecimal.valueOf(lowest)).min(BigDecimal.valueOf(Integer.MAX_VALUE));
            return new DictionaryValue(this, held.intValueExact(), held.compareTo(raw) != 0);
        }

        private <Q extends Quantity<Q>> DictionaryValue of(Quantity<Q> value, Unit<Q> unit, double perUnit) {
            return of(Amounts.in(value, unit) * perUnit);
        }
    }

    /**
     * Checks the value.
     *
     * @throws org.gritwright.units.InvalidInputException if it is below the entry's range
     */
    public DictionaryValue {
        Require.given(DictionaryValue.class, entry);
        Require.that(raw >= entry.lowest, "raw value of entry " + entry.identifier, entry.lowest + " or more", raw);
    }

    /**
     * The value that it stands for.
     *
     * @return raw × resolution, in the entry's unit
     */
    public BigDecimal value() {
        return BigDecimal.valueOf(raw)
                .multiply(new BigDecimal(entry.resolution))
                .stripTrailingZeros();
    }

    /**
     * A mass laid, in grams and in kilograms: the first is finer, the second lasts longer.
     *
     * @param mass the mass
     * @return the two values
     */
    public static List<DictionaryValue> ofMass(Quantity<Mass> mass) {
        Objects.requireNonNull(mass, "mass");
        return List.of(
                Entry.TOTAL_GRAMS.of(mass, SpreadingUnits.GRAM, 1),
                Entry.TOTAL_KILOGRAMS.of(mass, SpreadingUnits.KILOGRAM, 1));
    }

    /**
     * A volume laid, in milliliters and in liters.
     *
     * @param volume the volume
     * @return the two values
     */
    public static List<DictionaryValue> ofVolume(Quantity<Volume> volume) {
        Objects.requireNonNull(volume, "volume");
        return List.of(
                Entry.TOTAL_MILLILITERS.of(volume, SpreadingUnits.MILLILITER, 1),
                Entry.TOTAL_LITERS.of(volume, SpreadingUnits.LITER, 1));
    }

    /**
     * A distance.
     *
     * @param entry one of those in mm
     * @param distance the distance
     * @return the value
     * @throws org.gritwright.units.InvalidInputException if the entry isn't one of a distance
     */
    public static DictionaryValue ofDistance(Entry entry, Quantity<Length> distance) {
        Objects.requireNonNull(distance, "distance");
        requireOneOf(entry, Entry.EFFECTIVE_DISTANCE, Entry.INEFFECTIVE_DISTANCE, Entry.TOTAL_DISTANCE);
        return entry.of(distance, SpreadingUnits.METER, 1000);
    }

    /**
     * A time.
     *
     * @param entry one of those in s
     * @param time the time
     * @return the value
     * @throws org.gritwright.units.InvalidInputException if the entry isn't one of a time
     */
    public static DictionaryValue ofTime(Entry entry, Quantity<Time> time) {
        Objects.requireNonNull(time, "time");
        requireOneOf(entry, Entry.EFFECTIVE_TIME, Entry.INEFFECTIVE_TIME);
        return entry.of(time, SpreadingUnits.SECOND, 1);
    }

    private static void requireOneOf(Entry entry, Entry... entries) {
        Objects.requireNonNull(entry, "entry");
        Require.that(List.of(entries).contains(entry), "entry", "one of " + List.of(entries), entry);
    }

    /**
     * An area.
     *
     * @param area the area that was treated
     * @return the value
     */
    public static DictionaryValue ofArea(Quantity<Area> area) {
        Objects.requireNonNull(area, "area");
        return Entry.TOTAL_AREA.of(area, SpreadingUnits.SQUARE_METER, 1);
    }

    /**
     * A dosage of grains.
     *
     * @param rate mass per area
     * @return the value
     */
    public static DictionaryValue ofRate(Quantity<ArealApplicationRate> rate) {
        Objects.requireNonNull(rate, "rate");
        return Entry.MASS_PER_AREA.of(rate, SpreadingUnits.GRAM_PER_SQUARE_METER, 1000);
    }

    /**
     * A rate of a liquid.
     *
     * @param rate volume per distance
     * @return the value
     */
    public static DictionaryValue ofLiquidRate(Quantity<LiquidApplicationRate> rate) {
        Objects.requireNonNull(rate, "rate");
        return Entry.VOLUME_PER_DISTANCE.of(rate, SpreadingUnits.LITER_PER_KILOMETER, 1);
    }

    /**
     * A shaft's speed.
     *
     * @param speed the speed
     * @return the value
     */
    public static DictionaryValue ofShaftSpeed(Quantity<RotationalSpeed> speed) {
        Objects.requireNonNull(speed, "speed");
        return Entry.REVOLUTIONS_PER_TIME.of(speed, SpreadingUnits.REVOLUTION_PER_MINUTE, 1);
    }

    /**
     * A road speed.
     *
     * @param speed the speed
     * @return the value
     */
    public static DictionaryValue ofSpeed(Quantity<Speed> speed) {
        Objects.requireNonNull(speed, "speed");
        return Entry.SPEED.of(speed, SpreadingUnits.METER_PER_SECOND, 1000);
    }
}
