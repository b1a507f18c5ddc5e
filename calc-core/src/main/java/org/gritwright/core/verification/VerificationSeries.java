package org.gritwright.core.verification;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.uncertainty.NormalizedError;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * Verification catches made with one calibration in force, judged together: what one catch can't tell, several may. Their
 * error is Σ indicated ÷ Σ caught − 1, or Σ caught ÷ Σ expected − 1 where nothing was counted or displayed. {@link
 * SeriesFollower} makes series catch by catch. Immutable, thread-safe, a value.
 *
 * <p>A series shares what came before with the one that it extends, and knows its sums, so that one more catch costs the same
 * however many there are.
 */
public final class VerificationSeries {

    /** The catches so far, from the last to the first. */
    private record Catches(Verification last, Optional<Catches> before) {}

    private final Catches catches;
    private final Verification last;
    private final ErrorSums sums;
    private final boolean doubted;
    private final boolean withCalibration;
    private final Judgement.Call call;
    /** The calibration catches as this value in force would have indicated them; the same in all series that begin alike. */
    private final CalibrationSums calibrated;
    /** Made when it is asked for: most series are only steps to the next. Two threads that ask at once make the same. */
    private volatile Optional<Judgement> judgement = Optional.empty();

    /** Made when it is asked for, once for all catches with one value in force. */
    private static final class CalibrationSums {
        private volatile Optional<ErrorSums> sums = Optional.empty();

        ErrorSums of(Calibration calibration, Verification one) {
            if (sums.isEmpty()) {
                sums = Optional.of(
                        ErrorSums.of(calibration, one.source(), one.allowances().spillageFactor()));
            }
            return sums.get();
        }
    }

    private VerificationSeries(
            Catches catches,
            Verification last,
            ErrorSums sums,
            boolean doubted,
            boolean withCalibration,
            CalibrationSums calibrated) {
        this.catches = catches;
        this.last = last;
        this.sums = sums;
        this.doubted = doubted;
        this.withCalibration = withCalibration;
        this.calibrated = calibrated;
        this.call = sums.catches() == 1
                ? new Judgement.Call(
                        last.judgement().verdict(), last.judgement().advice())
                : called(Judgement.call(errors().budget(), last.judgement().rule(), last.tolerance()));
    }

    /**
     * Judges catches together.
     *
     * @param verifications one or more, in the order of time, made with one calibration in force; the decision rule, the
     *     tolerance and the calibration catches are those of the last
     * @return the series
     * @throws org.gritwright.units.InvalidInputException if there is none, they were made with different calibrations, or only some were
     *     counted or displayed
     */
    public static VerificationSeries of(List<Verification> verifications) {
        Require.that(!verifications.isEmpty(), "verification catches to judge together", "one or more", "none");
        Verification first = verifications.get(0);
        Catches catches = new Catches(first, Optional.empty());
        ErrorSums sums = first.sums();
        boolean doubted = first.isDoubted();
        for (Verification next : verifications.subList(1, verifications.size())) {
            requireAlike(first, next);
            catches = new Catches(next, Optional.of(catches));
            sums = sums.plus(next.sums());
            doubted |= next.isDoubted();
        }
        return new VerificationSeries(catches, catches.last(), sums, doubted, false, new CalibrationSums());
    }

    private static void requireAlike(Verification one, Verification other) {
        Require.that(
                isAlike(one, other),
                "verification catches to judge together",
                "made with one calibration in force, and all counted or none",
                "another one");
    }

    /** Whether two catches can be judged together. */
    static boolean isAlike(Verification one, Verification other) {
        return one.source().inForce().equals(other.source().inForce()) && one.isCounted() == other.isCounted();
    }

    /** The same with one more catch. */
    VerificationSeries plus(Verification next) {
        if (withCalibration) {
            // The sums hold the calibration catches, which are no verification catches.
            return of(verifications()).plus(next);
        }
        requireAlike(last, next);
        return new VerificationSeries(
                new Catches(next, Optional.of(catches)),
                next,
                sums.plus(next.sums()),
                doubted || next.isDoubted(),
                false,
                calibrated);
    }

    /** The same with a catch that is one of them, written down again: it is the last, and counts no second time. */
    VerificationSeries again(Verification repeated) {
        if (withCalibration) {
            return of(verifications()).again(repeated);
        }
        requireAlike(last, repeated);
        return new VerificationSeries(catches, repeated, sums, doubted || repeated.isDoubted(), false, calibrated);
    }

    /**
     * These catches judged together with the day's calibration catches at their point, which tell of the same mass per
     * revolution: what the verification catches alone can't tell, all together may.
     *
     * <p>Each judgement has the rule's risk. That one or the other of two accepts an error at a limit is more likely: in simulated
     * days up to 8 % where the rule's risk is 5 %.
     *
     * @return the series of all of them; the same series where it can tell by itself, or where the two must not be put together:
     *     nothing was counted or displayed, there is no calibration by the ratio of sums, something doubts either, their
     *     normalized error is beyond 1, or the catches by themselves are outside a tolerance that all together keep
     */
    public VerificationSeries withCalibration() {
        Optional<Calibration> calibration = last.calibration()
                .filter(c -> c.estimator() == RatioEstimator.RATIO_OF_SUMS)
                .filter(c -> !c.isDoubted());
        if (withCalibration
                || !sums.isCounted()
                || advice() != Advice.CATCH_MORE
                || doubted
                || calibration.isEmpty()
                || comparedWith(calibration.get()).filter(e -> !e.isAgreement()).isPresent()) {
            return this;
        }
        VerificationSeries all = new VerificationSeries(
                catches, last, sums.plus(calibrated.of(calibration.get(), last)), false, true, calibrated);
        return all.verdict() == Verdict.WITHIN_TOLERANCE && !last.tolerance().acceptsRatio(sums.error()) ? this : all;
    }

    /**
     * Whether the calibration catches are judged with the verification catches.
     *
     * @return true for a series made by {@link #withCalibration()} that needed them
     */
    public boolean isWithCalibration() {
        return withCalibration;
    }

    private Judgement.Call called(Judgement.Call undoubted) {
        return doubted ? new Judgement.Call(undoubted.verdict(), Advice.FIND_FAULT) : undoubted;
    }

    private ErrorBudget errors() {
        return new ErrorBudget(sums, withCalibration ? Optional.empty() : last.calibration(), last.allowances());
    }

    private Judgement judgedTogether() {
        double mean =
                sums.discharged().total() / sums.catches() / last.allowances().spillageFactor();
        Judgement judged = Judgement.of(
                errors(),
                last.judgement().rule(),
                last.tolerance(),
                last.source().observation().amount(mean));
        return doubted ? judged.doubted() : judged;
    }

    /**
     * The catches.
     *
     * @return the catches, each discharge once
     */
    public List<Verification> verifications() {
        Deque<Verification> all = new ArrayDeque<>();
        for (Optional<Catches> rest = Optional.of(catches);
                rest.isPresent();
                rest = rest.get().before()) {
            all.addFirst(rest.get().last());
        }
        return List.copyOf(all);
    }

    /**
     * How many catches are judged together.
     *
     * @return one or more, calibration catches included where they are judged with them
     */
    public int size() {
        return sums.catches();
    }

    /**
     * The last catch.
     *
     * @return the last in the order of time, even if it is one of the others written down again
     */
    public Verification last() {
        return last;
    }

    /**
     * What the catches together say about the error, the tolerance, and what to do.
     *
     * @return the judgement; of a single catch its own
     */
    public Judgement judgement() {
        if (sums.catches() == 1) {
            return last.judgement();
        }
        if (judgement.isEmpty()) {
            judgement = Optional.of(judgedTogether());
        }
        return judgement.get();
    }

    /**
     * The verdict on the error.
     *
     * @return the judgement's
     */
    public Verdict verdict() {
        return call.verdict();
    }

    /**
     * What to do.
     *
     * @return the judgement's advice
     */
    public Advice advice() {
        return call.advice();
    }

    /**
     * Whether the catches prove the calibration in force.
     *
     * @return true if something was counted or displayed, the error is within the tolerance, and nothing doubts the data of
     *     any of them
     */
    public boolean passes() {
        return sums.isCounted() && verdict() == Verdict.WITHIN_TOLERANCE && !doubted;
    }

    /**
     * The mass per revolution by these catches.
     *
     * @return Σ caught ÷ Σ revolutions, as uncertain relative to itself as the error is to 1 + error, in lb/rev or kg/rev as
     *     was weighed; none if nothing was counted or displayed
     */
    public Optional<Measured<DischargePerRevolution>> dischargePerRevolution() {
        if (!sums.isCounted()) {
            return Optional.empty();
        }
        Unit<DischargePerRevolution> unit = UnitSymbol.tradeUnit(
                DischargePerRevolution.class, last.source().caught().total());
        return Optional.of(judgement().discharge(sums.kilogramsPerRevolution(), Set.of(), unit));
    }

    /**
     * Compares the mass per revolution by these catches with an independent calibration. An error common to both, such as
     * the span of a shared scale or an allowance, cancels in the difference and is left out.
     *
     * @param calibration a calibration at the same point, not the one that the value in force was made from
     * @return the normalized error, these catches' value less the calibration's; none if nothing was counted or displayed,
     *     or neither has any uncertainty
     */
    public Optional<NormalizedError> comparedWith(Calibration calibration) {
        return sums.isCounted()
                ? judgement()
                        .comparedWith(
                                calibration,
                                sums.kilogramsPerRevolution(),
                                verifications().stream()
                                        .map(one -> one.source().caught())
                                        .toList())
                : Optional.empty();
    }

    /**
     * The correction that these catches call for.
     *
     * @return the correction by all of them; none if the last catch's {@link Verification#proposedCorrection} is none
     */
    public Optional<Correction> proposedCorrection() {
        return sums.catches() == 1
                ? last.proposedCorrection()
                : last.proposedCorrection()
                        .map(single -> last.correction(
                                sums.kilogramsPerRevolution(),
                                withCalibration
                                        ? Correction.Basis.CATCH_AND_CALIBRATION
                                        : Correction.Basis.SEVERAL_CATCHES,
                                judgement()));
    }

    /**
     * The error.
     *
     * @return in percent
     */
    public Quantity<Dimensionless> error() {
        return Amounts.ofSi(sums.error(), SpreadingUnits.PERCENT);
    }

    /** Everything else follows from these. */
    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof VerificationSeries that
                        && withCalibration == that.withCalibration
                        && doubted == that.doubted
                        && last.equals(that.last)
                        && verifications().equals(that.verifications()));
    }

    @Override
    public int hashCode() {
        return Objects.hash(last, sums.catches(), withCalibration);
    }
}
