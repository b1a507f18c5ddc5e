package org.gritwright.core.verification;

import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.DoubleStream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.statistics.StraightLine;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * What a start loses, told apart from a steady flow that is off target, by catches of different run times.
 *
 * <p>The count is regressed on the run time: N = a + b · t. Mass flow in the steady state is b times the calibration in
 * force; a start loses −a revolutions, or the time −a ÷ b. One run time can't tell the two apart. What is counted in
 * the run-down reduces the loss. Immutable, thread-safe, a value.
 *
 * @param inForce the calibration that was in force during the catches
 * @param lostMassPerStart mass that a start loses, in the unit of the caught mass; negative if a start gains
 * @param lostTimePerStart the same as time at the steady flow
 * @param steadyError steady flow ÷ target flow − 1, in percent
 * @param steadyErrorUncertainty its standard uncertainty by the spread about the line; none for two catches
 * @param expectedMassOfShortestRun the expected mass of the shortest run, against which a loss is judged
 * @param tolerance the caller's tolerance
 */
public record StartUp(
        CalibrationInForce inForce,
        Quantity<Mass> lostMassPerStart,
        Quantity<Time> lostTimePerStart,
        Quantity<Dimensionless> steadyError,
        Optional<Quantity<Dimensionless>> steadyErrorUncertainty,
        Quantity<Mass> expectedMassOfShortestRun,
        Tolerance tolerance) {
    /** Checks that nothing is null. */
    public StartUp {
        Require.given(
                StartUp.class,
                inForce,
                lostMassPerStart,
                lostTimePerStart,
                steadyError,
                steadyErrorUncertainty,
                expectedMassOfShortestRun,
                tolerance);
    }

    /**
     * Separates the two.
     *
     * @param catches two catches or more, counted, the longest run at least 1.5 times the shortest, with one
     *     calibration in force, one target rate and one test speed
     * @param tolerance the part of an expected mass beyond which a loss or an error is flagged
     * @return the separation
     * @throws InvalidInputException if a catch has no count, the conditions differ, the run times don't differ enough,
     *     or the count doesn't grow with the time
     */
    public static StartUp separate(List<VerificationCatch> catches, Tolerance tolerance) {
        Objects.requireNonNull(tolerance, "tolerance");
        requireAlike(catches);
        requireRunTimes(catches);
        StraightLine line = line(catches);
        Require.that(line.slope() > 0, "count", "growing with the run time", () -> line.slope() + " rev/s");
        VerificationCatch first = catches.get(0);
        double calibration = first.inForce().kilogramsPerRevolution();
        double target = first.run().kilogramsPerSecond(first.point().material());
        Unit<Mass> unit = first.observation().massUnit();
        return new StartUp(
                first.inForce(),
                Amounts.ofSi(-line.intercept() * calibration, unit),
                Amounts.ofSi(-line.intercept() / line.slope(), SpreadingUnits.SECOND),
                Amounts.ofSi(line.slope() * calibration / target - 1, SpreadingUnits.PERCENT),
                line.slopeUncertainty().isPresent()
                        ? Optional.of(Amounts.ofSi(
                                line.slopeUncertainty().getAsDouble() * calibration / target, SpreadingUnits.PERCENT))
                        : Optional.empty(),
                Amounts.ofSi(
                        catches.stream()
                                .mapToDouble(VerificationCatch::expectedKilograms)
                                .min()
                                .orElseThrow(),
                        unit),
                tolerance);
    }

    private static void requireAlike(List<VerificationCatch> catches) {
        for (int i = 0; i < catches.size(); i++) {
            VerificationCatch one = catches.get(i);
            int number = i + 1;
            String field = "catches for the start-up loss";
            String alike = "made with one calibration, target rate and test speed";
            Require.that(isAlike(one, catches.get(0)), field, alike, () -> "catch " + number + " differs");
            boolean counted = one.revolutions().isPresent();
            Require.that(counted, field, "counted or displayed", () -> "catch " + number + " is neither");
        }
    }

    private static boolean isAlike(VerificationCatch one, VerificationCatch other) {
        return one.inForce().equals(other.inForce())
                && one.run().targetRate().equals(other.run().targetRate())
                && one.run().testSpeed().equals(other.run().testSpeed());
    }

    private static void requireRunTimes(List<VerificationCatch> catches) {
        if (!runTimesDiffer(catches)) {
            DoubleSummaryStatistics seconds = seconds(catches).summaryStatistics();
            throw new InvalidInputException(
                    "run times for the start-up loss",
                    "two or more, the longest at least " + RatioEstimator.LEAST_RATIO_OF_LENGTHS
                            + " times the shortest",
                    catches.isEmpty() ? "none" : seconds.getMin() + " s to " + seconds.getMax() + " s");
        }
    }

    private static boolean runTimesDiffer(List<VerificationCatch> catches) {
        DoubleSummaryStatistics seconds = seconds(catches).summaryStatistics();
        return seconds.getMax() >= RatioEstimator.LEAST_RATIO_OF_LENGTHS * seconds.getMin();
    }

    private static DoubleStream seconds(List<VerificationCatch> catches) {
        return catches.stream().mapToDouble(c -> c.run().seconds());
    }

    private static StraightLine line(List<VerificationCatch> catches) {
        double[] revolutions =
                catches.stream().mapToDouble(c -> c.revolutions().orElseThrow()).toArray();
        return StraightLine.fit(seconds(catches).toArray(), revolutions);
    }

    /**
     * Whether the catches can be separated: two run times or more, far enough apart, otherwise alike, all counted, and
     * a count that grows with the time.
     *
     * @param catches any catches
     * @return true if {@link #separate} has what it needs
     */
    public static boolean isSeparable(List<VerificationCatch> catches) {
        return catches.stream().allMatch(c -> c.revolutions().isPresent() && isAlike(c, catches.get(0)))
                && runTimesDiffer(catches)
                && line(catches).slope() > 0;
    }

    /**
     * What a person should know.
     *
     * @return findings for a loss per start that is beyond the tolerance of the shortest run (a gain gets none), and
     *     for a steady error beyond the tolerance
     */
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        double lost = Amounts.si(Mass.class, lostMassPerStart) / Amounts.si(Mass.class, expectedMassOfShortestRun);
        if (lost > 0 && !tolerance.acceptsRatio(lost)) {
            findings.add(Finding.of(
                    FindingCode.START_UP_LOSS,
                    Map.of(
                            "lostMass", number(inForce.point().asCaught(lostMassPerStart)),
                            "lostTime", number(lostTimePerStart))));
        }
        if (!tolerance.accepts(steadyError)) {
            findings.add(Finding.of(FindingCode.STEADY_FLOW_OFF, Map.of("error", number(steadyError))));
        }
        return findings;
    }
}
