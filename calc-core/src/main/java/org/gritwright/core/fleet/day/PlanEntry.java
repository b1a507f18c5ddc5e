package org.gritwright.core.fleet.day;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.core.planning.CatchPlanner;
import org.gritwright.core.planning.FirstOrderStart;
import org.gritwright.core.planning.PlannedCount;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.quantity.RevolutionCount;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * What a day is to be planned for, as it was written down. Immutable, thread-safe, a value.
 *
 * @param wantedUncertainty the relative expanded uncertainty (95 %) wanted of a calibration, greater than zero and below
 *     100 %
 * @param wantedVerificationUncertainty that of the calibration error of one verification catch; none for the day's
 *     tolerance
 * @param fewestRepeats the fewest calibration catches, 1 or more; none for {@value #FEWEST_REPEATS}, or the most if that is
 *     less
 * @param mostRepeats the most, not below the fewest; none for {@value CatchPlanner#MOST_REPEATS}
 * @param shaftSpeed the speed at which the sensed or watched shaft is run in calibration catches; none if nobody says
 * @param lowestShaftSpeed the lowest steady shaft speed that the drives hold; only with the highest
 * @param highestShaftSpeed the highest
 * @param startTimeConstant the time constant with which conveyors and pumps come up to speed, if known
 * @param greatestStartLoss the part of a verification run that its start may cost; only with the time constant
 * @param countUncertainty the standard uncertainty of a count by eye, for trucks without a sensor
 * @param crews how many crews work side by side, each with a scale and containers of its own; none for one
 * @param workingDay how long a crew works a day, breaks left out; none for 8 h (common practice, no source)
 * @param targetRates target rates for verification catches
 * @param testSpeeds test speeds that the trucks can be told; each is tried at each target rate
 * @param weighingMethods the weighing methods to compare, one or more, each with its own name
 * @param liquidRates target rates of verification catches of liquids that are laid alone
 * @param prewetRates prewet rates of verification catches of liquids that wet: each with each target rate
 * @param readingMethods the methods by which liquids are read, possibly none
 */
public record PlanEntry(
        Quantity<Dimensionless> wantedUncertainty,
        Optional<Quantity<Dimensionless>> wantedVerificationUncertainty,
        Optional<Integer> fewestRepeats,
        Optional<Integer> mostRepeats,
        Optional<Quantity<RotationalSpeed>> shaftSpeed,
        Optional<Quantity<RotationalSpeed>> lowestShaftSpeed,
        Optional<Quantity<RotationalSpeed>> highestShaftSpeed,
        Optional<Quantity<Time>> startTimeConstant,
        Optional<Quantity<Dimensionless>> greatestStartLoss,
        Optional<Quantity<RevolutionCount>> countUncertainty,
        Optional<Integer> crews,
        Optional<Quantity<Time>> workingDay,
        List<Quantity<ApplicationRate>> targetRates,
        List<Quantity<Speed>> testSpeeds,
        List<WeighingMethodEntry> weighingMethods,
        List<Quantity<LiquidApplicationRate>> liquidRates,
        List<Quantity<PrewetRate>> prewetRates,
        List<ReadingMethodEntry> readingMethods) {
    /** Fewer catches can't show how they scatter. */
    public static final int FEWEST_REPEATS = 3;

    /** A sheet has a line for each catch and a box for each container; nobody fills in more. */
    private static final int MOST_WEIGHINGS = 10_000;

    private static final int MOST_RUNS = 1000;

    private static final int MOST_CREWS = 100;

    /** Common practice, no source. */
    private static final Quantity<Time> WORKING_DAY = Amounts.of(8, SpreadingUnits.HOUR);

    /**
     * A plan that leaves all else to what is usual.
     *
     * @param wantedUncertainty as of the record
     * @param targetRates as of the record
     * @param testSpeeds as of the record
     * @param weighingMethods as of the record
     * @return the plan
     * @throws InvalidInputException as the constructor
     */
    public static PlanEntry of(
            Quantity<Dimensionless> wantedUncertainty,
            List<Quantity<ApplicationRate>> targetRates,
            List<Quantity<Speed>> testSpeeds,
            List<WeighingMethodEntry> weighingMethods) {
        return new PlanEntry(
                wantedUncertainty,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                targetRates,
                testSpeeds,
                weighingMethods,
                List.of(),
                List.of(),
                List.of());
    }

    /**
     * Checks the values and copies the lists.
     *
     * @throws InvalidInputException if one is out of its range, lacks what it goes with, or there is no weighing method or
     *     one of a name twice
     */
    public PlanEntry {
        Require.given(
                PlanEntry.class,
                wantedUncertainty,
                wantedVerificationUncertainty,
                fewestRepeats,
                mostRepeats,
                shaftSpeed,
                lowestShaftSpeed,
                highestShaftSpeed,
                startTimeConstant,
                greatestStartLoss,
                countUncertainty,
                crews,
                workingDay,
                targetRates,
                testSpeeds,
                weighingMethods,
                liquidRates,
                prewetRates,
                readingMethods);
        Require.fraction("wanted uncertainty", wantedUncertainty);
        wantedVerificationUncertainty.ifPresent(u -> Require.fraction("wanted uncertainty of a verification", u));
        fewestRepeats.ifPresent(n -> requireRepeats("fewest repeats", 1, n));
        mostRepeats.ifPresent(n -> requireRepeats("most repeats", fewestRepeats.orElse(1), n));
        shaftSpeed.ifPresent(s -> Require.positive("shaft speed", RotationalSpeed.class, s));
        if (lowestShaftSpeed.isPresent() != highestShaftSpeed.isPresent()) {
            throw new InvalidInputException(
                    "steady shaft speeds",
                    "given as the lowest and the highest",
                    lowestShaftSpeed.isPresent() ? "the lowest only" : "the highest only");
        }
        lowestShaftSpeed.ifPresent(lowest -> new WorkingRange(lowest, highestShaftSpeed.get()));
        startTimeConstant.ifPresent(FirstOrderStart::new);
        greatestStartLoss.ifPresent(part -> Require.fraction("part lost by the start", part));
        Require.that(
                greatestStartLoss.isEmpty() || startTimeConstant.isPresent(),
                "part lost by the start",
                "given with the time constant of the start",
                "it alone");
        countUncertainty.ifPresent(PlannedCount.ByEye::new);
        crews.ifPresent(n -> Require.that(n >= 1 && n <= MOST_CREWS, "crews", "from 1 to " + MOST_CREWS, n));
        workingDay.ifPresent(length -> Require.positive("working day", Time.class, length));
        Quantity<Time> length = workingDay.orElse(WORKING_DAY);
        targetRates = List.copyOf(targetRates);
        targetRates.forEach(rate -> Require.positive("target rate", ApplicationRate.class, rate));
        testSpeeds = List.copyOf(testSpeeds);
        testSpeeds.forEach(speed -> Require.positive("test speed", Speed.class, speed));
        liquidRates = List.copyOf(liquidRates);
        liquidRates.forEach(rate -> Require.positive("target rate of a liquid", LiquidApplicationRate.class, rate));
        prewetRates = List.copyOf(prewetRates);
        prewetRates.forEach(rate -> Require.positive("prewet rate", PrewetRate.class, rate));
        Require.that(
                prewetRates.isEmpty() || !targetRates.isEmpty(),
                "prewet rates",
                "given with the target rates of what is wetted",
                "they alone");
        boolean noRates = targetRates.isEmpty() && liquidRates.isEmpty();
        if (noRates != testSpeeds.isEmpty()) {
            throw new InvalidInputException(
                    "verification catches",
                    "planned with target rates and test speeds",
                    noRates ? "test speeds only" : "target rates only");
        }
        weighingMethods = List.copyOf(weighingMethods);
        readingMethods = List.copyOf(readingMethods);
        List<MethodEntry> methods = methods(weighingMethods, readingMethods);
        Require.that(!methods.isEmpty(), "weighing methods", "one or more", "none");
        long rates = Math.max(liquidRates.size(), (long) targetRates.size() * Math.max(1, prewetRates.size()));
        long runs = rates * testSpeeds.size() * methods.size();
        Require.that(runs <= MOST_RUNS, "target rates × test speeds × weighing methods", "at most " + MOST_RUNS, runs);
        int repeats = mostRepeats.orElse(fewestRepeats.orElse(1));
        Set<String> names = new HashSet<>();
        for (MethodEntry method : methods) {
            Require.that(names.add(method.name()), "weighing method", "listed once", () -> "\"" + method.name() + "\"");
            Require.that(
                    Amounts.si(Time.class, method.times().daily()) < Amounts.si(Time.class, length),
                    "yard's daily set-up and clean-up of weighing method " + method.name(),
                    "shorter than the working day of " + Amounts.format(length),
                    () -> Amounts.format(method.times().daily()));
            long weighings = (long) repeats * method.mostContainers();
            Require.that(
                    weighings <= MOST_WEIGHINGS,
                    "repeats × containers of weighing method " + method.name(),
                    "at most " + MOST_WEIGHINGS,
                    weighings);
        }
    }

    private static List<MethodEntry> methods(List<WeighingMethodEntry> weighing, List<ReadingMethodEntry> reading) {
        return Stream.<MethodEntry>concat(weighing.stream(), reading.stream()).toList();
    }

    /**
     * All methods.
     *
     * @return the weighing methods, then those by which liquids are read
     */
    public List<MethodEntry> methods() {
        return methods(weighingMethods, readingMethods);
    }

    private static void requireRepeats(String field, int fewest, int repeats) {
        Require.that(repeats >= fewest && repeats <= 1000, field, "from " + fewest + " to 1000", repeats);
    }

    public int fewest() {
        return fewestRepeats.orElseGet(() -> Math.min(FEWEST_REPEATS, most()));
    }

    public int most() {
        return mostRepeats.orElseGet(() -> Math.max(CatchPlanner.MOST_REPEATS, fewestRepeats.orElse(1)));
    }

    public int howManyCrews() {
        return crews.orElse(1);
    }

    public Quantity<Time> lengthOfDay() {
        return workingDay.orElse(WORKING_DAY);
    }

    public Optional<WorkingRange> range() {
        return lowestShaftSpeed.map(lowest -> new WorkingRange(lowest, highestShaftSpeed.orElseThrow()));
    }
}
