package org.gritwright.core.roadspeed;

import static org.gritwright.core.finding.Argument.number;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Term;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.plausibility.Digits;
import org.gritwright.core.statistics.RobustSample;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.TradeSystem;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.PulsesPerDistance;

/**
 * Whether runs over a course are fit to judge a road-speed value by: whether they agree with each other, whether a slip with the
 * course explains what they give, and whether a tire could make so many pulses.
 *
 * <p>A run differs from the others if its modified z-score, 0.6745 · (its deviation from the median) ÷ (the median of all absolute
 * deviations), exceeds 3.5, as {@link RobustSample} says. The median of three deviations can be tiny by chance, so that no deviation counts as smaller than healthy runs have;
 * a pulse at either end and the stop at the mark are allowed for (both common practice, no source).
 */
final class RoadSpeedDoubt {
    private static final double Z_SCORE = 3.5;
    private static final double NORMAL = 0.6745;

    /** The relative deviation of runs in which nothing went wrong, and where a slip explains a run well. */
    private static final double USUAL = 0.006;

    private static final double USUAL_BESIDE_A_SLIP = 0.0045;
    /** How near a run has to come to the others once its slip is undone. */
    private static final Tolerance AGREES = Tolerance.percent(0.75);

    private static final double PULSES_AT_THE_ENDS = 2;
    private static final double METERS_AT_THE_MARKS = 1;

    private static final List<Unit<Length>> COURSES =
            List.of(SpreadingUnits.MILE, SpreadingUnits.KILOMETER, SpreadingUnits.METER, SpreadingUnits.FOOT);

    /** A decimal point; both edges of a pulse counted, or one of two. */
    private static final List<Double> FACTORS = List.of(10.0, 2.0, 0.5, 0.1);

    /**
     * From a wheel of 60 teeth before an axle of 7 to 1 to one pulse a turn of a large tire: how many pulses a turn has, nobody
     * states, so that the limits are wide (common practice, no source).
     */
    private static final double LEAST_METERS = 0.004;

    private static final double GREATEST_METERS = 4.5;

    private final List<RoadSpeedRun> runs;
    private final RoadSpeedCheck check;
    private final double[] perMeter;
    private final double measured;

    private RoadSpeedDoubt(List<RoadSpeedRun> runs, RoadSpeedCheck check) {
        this.runs = runs;
        this.check = check;
        this.perMeter =
                runs.stream().mapToDouble(run -> pulses(run) / meters(run)).toArray();
        this.measured = Amounts.si(PulsesPerDistance.class, check.measured().value());
    }

    /** The first reason for doubt: what it explains needs no other. */
    static Optional<Finding> of(List<RoadSpeedRun> runs, RoadSpeedCheck check) {
        RoadSpeedDoubt doubt = new RoadSpeedDoubt(runs, check);
        return doubt.runThatDiffers().or(doubt::otherFactor).or(doubt::implausible);
    }

    private Optional<Finding> runThatDiffers() {
        double middle = RobustSample.of(perMeter).median();
        double[] deviations =
                Arrays.stream(perMeter).map(one -> Math.abs(one / middle - 1)).toArray();
        int worst = IntStream.range(1, deviations.length)
                .reduce(0, (one, other) -> deviations[other] > deviations[one] ? other : one);
        RoadSpeedRun run = runs.get(worst);
        double others = meters(run)
                * RobustSample.of(IntStream.range(0, perMeter.length)
                                .filter(i -> i != worst)
                                .mapToDouble(i -> perMeter[i])
                                .toArray())
                        .median();
        double ends = PULSES_AT_THE_ENDS / others + METERS_AT_THE_MARKS / meters(run);
        Optional<Term> slip = slip(pulses(run), instead -> AGREES.acceptsRatio(instead / others - 1));
        double usual = slip.isPresent() ? USUAL_BESIDE_A_SLIP : USUAL;
        if (deviations[worst] > Z_SCORE * Math.max(RobustSample.of(deviations).median() / NORMAL, usual) + ends) {
            return Optional.of(Finding.of(
                    FindingCode.ROAD_RUN_DIFFERS,
                    Map.of(
                            "run", number(Amounts.of(worst + 1, SpreadingUnits.ONE)),
                            "pulses", number(run.pulses()),
                            "others", number(Amounts.of(Math.rint(others), SpreadingUnits.PULSE)),
                            "mistake", slip.orElse(Term.WRONG_READING))));
        }
        Unit<PulsesPerDistance> unit = check.inForce().getUnit();
        return deviations[worst] > 2 * Z_SCORE * USUAL + ends
                ? Optional.of(Finding.of(
                        FindingCode.ROAD_RUNS_DISAGREE,
                        Map.of(
                                "lowest",
                                        number(Amounts.ofSi(
                                                Arrays.stream(perMeter).min().orElseThrow(), unit)),
                                "highest",
                                        number(Amounts.ofSi(
                                                Arrays.stream(perMeter).max().orElseThrow(), unit)))))
                : Optional.empty();
    }

    /** By which slip the digits of a count become what it should be. */
    private static Optional<Term> slip(double pulses, DoublePredicate agrees) {
        Predicate<Set<Double>> anyAgrees = numbers -> numbers.stream().anyMatch(agrees::test);
        if (anyAgrees.test(Digits.swapped(pulses))) {
            return Optional.of(Term.DIGITS_SWAPPED);
        }
        if (anyAgrees.test(Digits.withOneLess(pulses))) {
            return Optional.of(Term.DIGIT_TOO_MANY);
        }
        return anyAgrees.test(Digits.withOneMore(pulses)) ? Optional.of(Term.DIGIT_DROPPED) : Optional.empty();
    }

    /** A value in force that agrees with the runs once a course is in another unit, or something is multiplied by a factor. */
    private Optional<Finding> otherFactor() {
        double inForce = Amounts.si(PulsesPerDistance.class, check.inForce());
        Quantity<Length> course = runs.get(0).course();
        DoublePredicate agrees = factor -> check.tolerance().acceptsRatio(measured / factor / inForce - 1);
        if (agrees.test(1)) {
            return Optional.empty();
        }
        return COURSES.stream()
                .map(unit -> Amounts.of(course.getValue().doubleValue(), unit))
                .filter(instead -> agrees.test(Amounts.si(Length.class, instead) / meters(runs.get(0))))
                .findFirst()
                .map(instead -> Finding.of(
                        FindingCode.COURSE_IN_OTHER_UNIT,
                        Map.of(
                                "inForce", number(check.inForce()),
                                "factor", factor(Amounts.si(Length.class, instead) / meters(runs.get(0))),
                                "instead", number(instead),
                                "course", number(course))))
                .or(() -> FACTORS.stream()
                        .filter(agrees::test)
                        .findFirst()
                        .map(factor -> Finding.of(
                                FindingCode.ROAD_SPEED_BY_FACTOR,
                                Map.of(
                                        "inForce", number(check.inForce()),
                                        "measured", number(check.measured().value()),
                                        "factor", factor(factor)))));
    }

    private static Argument factor(double factor) {
        return number(Amounts.of(Math.max(factor, 1 / factor), SpreadingUnits.ONE));
    }

    private Optional<Finding> implausible() {
        double metersPerPulse = 1 / measured;
        Unit<Length> unit = UnitSymbol.of(runs.get(0).course().getUnit()).system() == TradeSystem.METRIC
                ? SpreadingUnits.METER
                : SpreadingUnits.FOOT;
        return metersPerPulse < LEAST_METERS || metersPerPulse > GREATEST_METERS
                ? Optional.of(Finding.of(
                        FindingCode.ROAD_PULSES_IMPLAUSIBLE,
                        Map.of(
                                "distance", number(Amounts.ofSi(metersPerPulse, unit)),
                                "lowest", number(Amounts.ofSi(LEAST_METERS, unit)),
                                "highest", number(Amounts.ofSi(GREATEST_METERS, unit)))))
                : Optional.empty();
    }

    private static double pulses(RoadSpeedRun run) {
        return Amounts.si(PulseCount.class, run.pulses());
    }

    private static double meters(RoadSpeedRun run) {
        return Amounts.si(Length.class, run.course());
    }
}
