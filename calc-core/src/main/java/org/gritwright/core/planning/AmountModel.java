package org.gritwright.core.planning;

import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;

/**
 * A planned amount as numbers, in the SI unit of what counts: kilograms of grains, cubic meters of a liquid.
 *
 * @param howMany how many containers or fills there may be
 * @param holds what each takes
 * @param division the step of the reading
 * @param reading the standard uncertainty of one reading by its rounding
 * @param readings how many readings a container or fill takes
 * @param limit how far off an amount may be by what all catches have in common
 * @param assumedLimit what is assumed where nobody knows that
 * @param density the relative standard uncertainty of the density; 0 where none is needed
 * @param names what its errors are called
 */
record AmountModel(
        int howMany,
        double holds,
        double division,
        double reading,
        double readings,
        Limit limit,
        double assumedLimit,
        double density,
        Names names) {
    /** Part of a container by which an amount may exceed what the containers hold: rounding of doubles. */
    private static final double ROUNDING = 1e-9;

    /** The relative limit of an amount in so many containers; none where nobody knows. */
    @FunctionalInterface
    interface Limit {
        OptionalDouble of(double amount, int containers);
    }

    /** What the errors of the reading and of the scale or container are called, and what is said where the latter is assumed. */
    record Names(Cause ofReading, ErrorSource reading, Cause ofInstrument, ComponentKey instrument, String assumed) {}

    static AmountModel of(PlannedAmount amount) {
        if (amount instanceof PlannedAmount.Weighed weighed) {
            return weighed(weighed, 1, 0);
        }
        if (amount instanceof PlannedAmount.WeighedLiquid liquid) {
            Measured<BulkDensity> density = liquid.density();
            double value = si(density.value());
            return weighed(
                    liquid.weighed(),
                    value,
                    density.standardUncertainty().map(u -> si(u) / value).orElseThrow());
        }
        return read((PlannedAmount.Read) amount);
    }

    private static double si(Quantity<BulkDensity> density) {
        return Amounts.si(BulkDensity.class, density);
    }

    private static AmountModel weighed(PlannedAmount.Weighed weighed, double kilogramsPerUnit, double density) {
        Scale scale = weighed.scale();
        double tare = Amounts.si(Mass.class, weighed.containers().tare());
        double capacity = Amounts.si(Mass.class, scale.capacity());
        if (!(tare < capacity)) {
            throw new InvalidInputException(
                    "tare of a container",
                    "below the capacity of scale " + scale.id() + ", " + Amounts.format(scale.capacity()),
                    Amounts.format(weighed.containers().tare()));
        }
        return new AmountModel(
                weighed.containers().howMany(),
                Math.min(Amounts.si(Mass.class, weighed.containers().holds()), capacity - tare) / kilogramsPerUnit,
                Amounts.si(Mass.class, scale.division()) / kilogramsPerUnit,
                scale.roundingKilograms() / kilogramsPerUnit,
                2,
                (amount, containers) -> {
                    // A full container may come out a rounding error above the capacity.
                    double gross = Math.min(amount * kilogramsPerUnit / containers + tare, capacity);
                    return scale.relativeSpanLimit(Amounts.of(gross, SpreadingUnits.KILOGRAM), weighed.weighedOn());
                },
                Scale.COMMON_SPAN_LIMIT,
                density,
                new Names(
                        Cause.ROUNDING,
                        ErrorSource.SCALE_ROUNDING,
                        Cause.SPAN,
                        ErrorSource.spanOf(scale),
                        "The error of scale " + scale.id() + " is assumed to be at most "
                                + Amounts.format(CatchModel.percent(Scale.COMMON_SPAN_LIMIT))
                                + " (common practice, no source): its accuracy is not known, and there is no test weight near the load."));
    }

    private static AmountModel read(PlannedAmount.Read read) {
        Graduate container = read.container();
        return new AmountModel(
                read.howMany(),
                Amounts.si(Volume.class, read.holds()),
                Amounts.si(Volume.class, container.division()),
                container.roundingCubicMeters(),
                1,
                container::relativeLimit,
                Graduate.COMMON_TOLERANCE,
                0,
                new Names(
                        Cause.READING,
                        ErrorSource.CONTAINER_READING,
                        Cause.MARKS,
                        ErrorSource.marksOf(container),
                        "The marks of container " + container.id() + " are assumed to be off by at most "
                                + Amounts.format(CatchModel.percent(Graduate.COMMON_TOLERANCE))
                                + " (common practice, no source): their tolerance is not known."));
    }

    /** What all containers or fills take. */
    double most() {
        return howMany * holds;
    }

    /** The fewest containers that hold an amount; what exceeds one by a rounding error is held. */
    int containers(double amount) {
        return Math.max(1, (int) Math.ceil(amount / holds * (1 - ROUNDING)));
    }

    /** The relative standard uncertainty of an amount by the rounding of its readings. */
    double rounding(double amount, int containers) {
        return reading * Math.sqrt(readings * containers) / amount;
    }
}
