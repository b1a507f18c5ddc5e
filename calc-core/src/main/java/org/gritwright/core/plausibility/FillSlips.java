package org.gritwright.core.plausibility;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.DoublePredicate;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.finding.Term;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.FlowMetering;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.PulsesPerVolume;

/**
 * The search for every single slip of input that explains an unusual apparent fill: what would have to be read instead
 * for the fill to be usual. It picks none.
 */
final class FillSlips {
    /** Decimal point misplaced. */
    private static final List<Double> SETTING_FACTORS = List.of(10.0);

    /** Both edges of a pulse counted or one of two; decimal point misplaced. */
    private static final List<Double> SENSOR_FACTORS = List.of(2.0, 10.0);

    /** Decimal point misplaced; per liter taken for per gallon or the other way round; one gallon for the other. */
    private static final List<Double> METER_FACTORS =
            List.of(10.0, Digits.LITERS_PER_GALLON, Digits.GALLONS_PER_IMPERIAL);

    private final double looseCubicMetersPerRevolution;
    private final CalibrationPoint point;
    private final FillLimits limits;
    private final List<Slip> found = new ArrayList<>();

    private FillSlips(double looseCubicMetersPerRevolution, CalibrationPoint point, FillLimits limits) {
        this.looseCubicMetersPerRevolution = looseCubicMetersPerRevolution;
        this.point = point;
        this.limits = limits;
    }

    /**
     * Every single slip that would make the fill usual.
     *
     * @param looseCubicMetersPerRevolution discharge per revolution of the sensed shaft ÷ loose bulk density
     * @param fill the unusual apparent fill
     * @param inPulses whether the revolutions came from pulses
     */
    static List<Slip> search(
            double looseCubicMetersPerRevolution,
            double fill,
            boolean inPulses,
            CalibrationPoint point,
            FillLimits limits) {
        FillSlips slips = new FillSlips(looseCubicMetersPerRevolution, point, limits);
        point.setting().quantity().ifPresent(slips::openingSlips);
        DriveFeedback feedback = point.metering().feedback();
        if (inPulses && feedback instanceof ShaftSensor sensor) {
            slips.sensorSlips(Term.PULSES_PER_REVOLUTION, sensor.pulsesPerRevolution(), fill);
        }
        if (point.metering() instanceof FlowMetering flow) {
            slips.meterSlips(flow.pulsesPerVolume(), fill);
        } else {
            slips.sensorSlips(Term.GEAR_RATIO, feedback.gearRatio(), fill);
        }
        if (point.metering().isForLiquids()) {
            slips.unitSlips(fill);
        }
        return slips.found;
    }

    /** The fill grows with both: with pulses per revolution by the mass, with the gear ratio by the swept volume. */
    private <Q extends Quantity<Q>> void sensorSlips(Term part, Quantity<Q> recorded, double fill) {
        for (double factor : SENSOR_FACTORS) {
            addFactorSlips(part, recorded, factor, asRead -> limits.isUsual(fill * asRead / numberOf(recorded)));
        }
    }

    /** The fill grows with the pulses per volume as with pulses per revolution. */
    private void meterSlips(Quantity<PulsesPerVolume> recorded, double fill) {
        for (double factor : METER_FACTORS) {
            addFactorSlips(
                    Term.PULSES_PER_VOLUME,
                    recorded,
                    factor,
                    asRead -> limits.isUsual(fill * asRead / numberOf(recorded)));
        }
    }

    private void unitSlips(double fill) {
        addUnitSlip(Slip.Mistake.LITERS_AS_GALLONS, fill / Digits.LITERS_PER_GALLON);
        addUnitSlip(Slip.Mistake.GALLONS_AS_LITERS, fill * Digits.LITERS_PER_GALLON);
        addUnitSlip(Slip.Mistake.IMPERIAL_AS_US_GALLONS, fill * Digits.GALLONS_PER_IMPERIAL);
    }

    private void addUnitSlip(Slip.Mistake mistake, double fill) {
        if (limits.isUsual(fill)) {
            found.add(Slip.of(Term.CAUGHT_VOLUME, mistake, List.of()));
        }
    }

    private <Q extends Quantity<Q>> void openingSlips(Quantity<?> reading) {
        @SuppressWarnings("unchecked") // whatever kind it is, it stays
        Quantity<Q> recorded = (Quantity<Q>) reading;
        DoublePredicate restores = asRead -> {
            if (!(asRead > 0)) {
                return false;
            }
            Setting setting = Setting.of(Amounts.of(asRead, recorded.getUnit()));
            try {
                return point.metering().accepts(setting)
                        && limits.isUsual(looseCubicMetersPerRevolution
                                / point.metering().sweptCubicMetersPerRevolution(setting));
            } catch (RuntimeException e) {
                // Types of others may answer what nobody entered with any exception: so it wasn't meant.
                return false;
            }
        };
        for (double factor :
                point.setting().scale() == Setting.Scale.HEIGHT ? Digits.LENGTH_FACTORS : SETTING_FACTORS) {
            addFactorSlips(Term.GATE_SETTING, recorded, factor, restores);
        }
        Unit<Q> unit = recorded.getUnit();
        addDigitSlip(Slip.Mistake.DIGIT_TOO_MANY, Digits.withOneLess(numberOf(recorded)), unit, restores);
        addDigitSlip(Slip.Mistake.DIGIT_DROPPED, Digits.withOneMore(numberOf(recorded)), unit, restores);
    }

    private <Q extends Quantity<Q>> void addFactorSlips(
            Term part, Quantity<Q> recorded, double factor, DoublePredicate restores) {
        double larger = numberOf(recorded) * factor;
        if (restores.test(larger)) {
            found.add(Slip.byFactor(part, Slip.Mistake.TOO_SMALL, factor, Amounts.of(larger, recorded.getUnit())));
        }
        double smaller = numberOf(recorded) / factor;
        if (restores.test(smaller)) {
            found.add(Slip.byFactor(part, Slip.Mistake.TOO_LARGE, factor, Amounts.of(smaller, recorded.getUnit())));
        }
    }

    private static double numberOf(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }

    private <Q extends Quantity<Q>> void addDigitSlip(
            Slip.Mistake mistake, Set<Double> candidates, Unit<Q> unit, DoublePredicate restores) {
        List<Quantity<?>> restoring = new ArrayList<>();
        candidates.stream().filter(restores::test).forEach(candidate -> restoring.add(Amounts.of(candidate, unit)));
        if (!restoring.isEmpty()) {
            found.add(Slip.of(Term.GATE_SETTING, mistake, restoring));
        }
    }
}
