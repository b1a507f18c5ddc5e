package org.gritwright.core;

import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;

import java.util.Optional;
import java.util.SplittableRandom;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * A made-up day whose truth is known: a scale that reads half pounds and has a wrong span, the same all day; containers of
 * about 4 lb; a part of the material that misses them, the same all day; a sensor of 100 pulses a revolution that starts
 * and stops at any phase; and catches that scatter.
 */
public final class SimulatedDay {
    private static final double DIVISION = 0.5;
    private static final double PULSES_PER_REVOLUTION = 100;

    private final SplittableRandom random;
    private final Scale scale;
    private final double span;
    private final double spilled;

    /**
     * Draws the errors of the day, each with equal chances anywhere within its limits.
     *
     * @param greatestSpan of the scale, either way, a ratio; 0 for a scale that is known to be right
     * @param greatestSpillage a ratio
     */
    public SimulatedDay(SplittableRandom random, String scale, double greatestSpan, double greatestSpillage) {
        this.random = random;
        Scale plain = Scale.of(scale, pounds(5000), pounds(DIVISION));
        this.scale = plain.withAccuracy(
                new ScaleAccuracy.Stated(Amounts.of(Math.max(1e-4, 100 * greatestSpan), SpreadingUnits.PERCENT)));
        this.span = greatestSpan * (2 * random.nextDouble() - 1);
        this.spilled = greatestSpillage * random.nextDouble();
    }

    /** What was caught and counted. */
    public record Caught(CaughtMass mass, ShaftCount count) {}

    /** A catch of about so many revolutions, with a normal relative scatter. */
    public Caught of(double poundsPerRevolution, double revolutions, double scatter) {
        double turned = revolutions + random.nextDouble();
        double discharged = poundsPerRevolution * turned * (1 + scatter * random.nextGaussian());
        double tare = 4 + random.nextDouble();
        double counted = Math.floor(PULSES_PER_REVOLUTION * turned + random.nextDouble());
        return new Caught(
                CaughtMass.of(
                        scale, DAY, new Weighing("tarp", reading(tare + discharged * (1 - spilled)), reading(tare))),
                pulses(counted));
    }

    private Quantity<Mass> reading(double pounds) {
        return pounds(Math.rint(pounds * (1 + span) / DIVISION) * DIVISION);
    }

    /** The common limits with the day's spillage, and a scatter from experience, ratios; 0 for none. */
    public static CatchLimits limits(double greatestSpillage, double assumedScatter) {
        return limits(
                greatestSpillage,
                Optional.of(assumedScatter)
                        .filter(s -> s > 0)
                        .map(s -> Repeatability.assumed(Amounts.of(100 * s, SpreadingUnits.PERCENT))));
    }

    /** The common limits with the day's spillage, a ratio, and what is stated of the scatter. */
    public static CatchLimits limits(double greatestSpillage, Optional<Repeatability> stated) {
        return CatchLimits.COMMON.withAllowances(new CatchAllowances(
                Amounts.of(100 * greatestSpillage, SpreadingUnits.PERCENT),
                Amounts.of(0, SpreadingUnits.PERCENT),
                Optional.empty(),
                stated));
    }
}
