package org.gritwright.core.verification;

import java.util.OptionalDouble;
import javax.measure.quantity.Mass;
import org.gritwright.core.budget.ScaleSpans;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.units.Amounts;

/**
 * What a budget needs to know of catches, summed up, so that one more catch costs no more than a pass over the scales.
 *
 * <p>Masses are summed with compensation. The scatter of the catches' ratios r = 1 + error is carried along as their
 * mean and the sum M of squared deviations from it, which one more r changes by (r − old mean)·(r − new mean) (B. P.
 * Welford, Note on a method for calculating corrected sums of squares and products, Technometrics 4 (3), 1962, 419–420;
 * abstract checked, formula from memory), so that no two large sums are subtracted.
 *
 * @param first the first catch, by whose scale and count the budget's inputs are named
 * @param catches how many
 * @param indicated Σ indicated mass; where nothing was counted or displayed, nothing
 * @param discharged Σ caught, and allowed for as spilled
 * @param expected Σ expected mass
 * @param revolutions Σ revolutions
 * @param weighed Σ caught as weighed
 * @param squares Σ of its square
 * @param rounding Σ of the square of the scales' rounding in kg
 * @param counting Σ of the square of the count's uncertainty in kg
 * @param meanRatio the mean of the catches' ratios r
 * @param squaredDeviations M
 * @param spans the spans of the scales, weighted with what was weighed
 * @param countKnown whether the uncertainty of every count is known
 * @param byRunTime whether a run time stands for the count of any
 */
record ErrorSums(
        VerificationCatch first,
        int catches,
        Sum indicated,
        Sum discharged,
        Sum expected,
        Sum revolutions,
        Sum weighed,
        double squares,
        double rounding,
        double counting,
        double meanRatio,
        double squaredDeviations,
        ScaleSpans spans,
        boolean countKnown,
        boolean byRunTime) {

    /** A sum with what rounding took off it (W. Kahan, 1965; second-hand). */
    record Sum(double high, double low) {
        private static final Sum ZERO = new Sum(0, 0);

        Sum plus(double number) {
            double more = number + low;
            double sum = high + more;
            return new Sum(sum, more - (sum - high));
        }

        Sum plus(Sum other) {
            return plus(other.high).plus(other.low);
        }

        double total() {
            return high + low;
        }
    }

    /**
     * What one catch adds.
     *
     * @param count relative standard uncertainty of the count; none where nobody knows
     */
    private record Addend(
            CaughtMass caught,
            OptionalDouble count,
            OptionalDouble revolutions,
            OptionalDouble indicated,
            double discharged,
            double expected,
            boolean byRunTime) {
        double ratio() {
            return (indicated.isPresent() ? indicated.getAsDouble() / discharged : discharged / expected);
        }
    }

    /**
     * Of one catch.
     *
     * @param source the catch
     * @param indicated the indicated mass in kg; none if nothing was counted or displayed
     * @param discharged caught, and allowed for as spilled, in kg
     */
    static ErrorSums of(VerificationCatch source, OptionalDouble indicated, double discharged) {
        return empty(source).plus(source, indicated, discharged);
    }

    private static ErrorSums empty(VerificationCatch source) {
        return new ErrorSums(
                source,
                0,
                Sum.ZERO,
                Sum.ZERO,
                Sum.ZERO,
                Sum.ZERO,
                Sum.ZERO,
                0,
                0,
                0,
                0,
                0,
                ScaleSpans.NONE,
                true,
                false);
    }

    /** Of the calibration catches at the same point, as the value in force of a verification catch would have indicated them. */
    static ErrorSums of(Calibration calibration, VerificationCatch source, double spillageFactor) {
        ErrorSums sums = empty(source);
        for (CalibrationCatch one : calibration.catches()) {
            OptionalDouble uncertainty = one.observation().uncertaintyRevolutions();
            double revolutions = one.revolutions();
            sums = sums.plus(new Addend(
                    one.caught(),
                    uncertainty.isPresent() ? OptionalDouble.of(uncertainty.getAsDouble() / revolutions) : uncertainty,
                    OptionalDouble.of(revolutions),
                    OptionalDouble.of(revolutions * source.inForce().kilogramsPerRevolution()),
                    one.caught().kilograms() * spillageFactor,
                    0,
                    false));
        }
        return sums;
    }

    /**
     * Of these catches and others. The squared deviations of both from their means become those from the common mean (T. F.
     * Chan, G. H. Golub and R. J. LeVeque, Algorithms for computing the sample variance, The American Statistician 37 (3),
     * 1983, 242–247; abstract checked, formula from memory).
     */
    ErrorSums plus(ErrorSums other) {
        double apart = other.meanRatio - meanRatio;
        double all = catches + other.catches;
        return new ErrorSums(
                first,
                catches + other.catches,
                indicated.plus(other.indicated),
                discharged.plus(other.discharged),
                expected.plus(other.expected),
                revolutions.plus(other.revolutions),
                weighed.plus(other.weighed),
                squares + other.squares,
                rounding + other.rounding,
                counting + other.counting,
                meanRatio + apart * other.catches / all,
                squaredDeviations + other.squaredDeviations + apart * apart * catches * other.catches / all,
                spans.plus(other.spans),
                countKnown && other.countKnown,
                byRunTime || other.byRunTime);
    }

    /** With one more catch, counted or displayed if the others are. */
    ErrorSums plus(VerificationCatch source, OptionalDouble more, double caught) {
        return plus(new Addend(
                source.caught(),
                relativeCount(source),
                source.revolutions(),
                more,
                caught,
                source.run().expectedKilograms(),
                source.revolutions().isEmpty() && source.run().runTime().isPresent()));
    }

    private ErrorSums plus(Addend one) {
        double kilograms = one.caught.kilograms();
        double deviation = one.ratio() - meanRatio;
        double mean = meanRatio + deviation / (catches + 1);
        return new ErrorSums(
                first,
                catches + 1,
                indicated.plus(one.indicated.orElse(0)),
                discharged.plus(one.discharged),
                expected.plus(one.expected),
                revolutions.plus(one.revolutions.orElse(0)),
                weighed.plus(kilograms),
                squares + kilograms * kilograms,
                rounding + square(one.caught.roundingKilograms()),
                counting + square(kilograms * one.count.orElse(0)),
                mean,
                squaredDeviations + deviation * (one.ratio() - mean),
                spans.plus(one.caught, kilograms),
                countKnown && one.count.isPresent(),
                byRunTime || one.byRunTime);
    }

    private static double square(double number) {
        return number * number;
    }

    /** Whether something was counted or displayed: of all catches, or of none. */
    boolean isCounted() {
        return first.revolutions().isPresent();
    }

    /** Σ indicated ÷ Σ caught − 1, or Σ caught ÷ Σ expected − 1 where nothing was counted or displayed. */
    double error() {
        return (isCounted() ? indicated.total() / discharged.total() : discharged.total() / expected.total()) - 1;
    }

    double kilogramsPerRevolution() {
        return discharged.total() / revolutions.total();
    }

    /** How much less the errors together scatter than one of them: √Σ of the squared parts of the whole. */
    double shrinking() {
        return Math.sqrt(squares) / weighed.total();
    }

    /** The relative variance by the rounding of scale and count, of one catch as they are on average. */
    double resolution() {
        return (rounding + counting) / squares;
    }

    /** What the rounding of the scales contributes to the error, relative. */
    double ofRounding() {
        return Math.sqrt(rounding) / weighed.total();
    }

    /** What the counts contribute to the error, relative. */
    double ofCounting() {
        return Math.sqrt(counting) / weighed.total();
    }

    /** Σ of the squared deviations of the catches' ratios from that of them together, relative to it. */
    double scatter() {
        double together = 1 + error();
        return (squaredDeviations + catches * square(meanRatio - together)) / square(together);
    }

    ScaleSpans relativeSpans() {
        return spans.over(weighed.total());
    }

    /** Relative; of a count or of the display's step. */
    static OptionalDouble relativeCount(VerificationCatch source) {
        if (source.counted().isPresent()) {
            OptionalDouble uncertainty = source.observation().uncertaintyRevolutions();
            return uncertainty.isPresent()
                    ? OptionalDouble.of(
                            uncertainty.getAsDouble() / source.revolutions().getAsDouble())
                    : uncertainty;
        }
        return source.indicated().isPresent()
                ? OptionalDouble.of(displayStep(source) / source.shownKilograms())
                : OptionalDouble.of(0);
    }

    /**
     * A display rounds to its step, what it adds up comes in whole pulses, at either end one more or less than fell into the
     * catch, and it computes with a value of which it shows no more than its step.
     */
    static double displayStep(VerificationCatch source) {
        double step = Amounts.si(Mass.class, source.indicated().orElseThrow().resolution());
        return Math.sqrt(square(Distribution.RECTANGULAR.standardUncertainty(step / 2))
                + square(Distribution.RECTANGULAR.standardUncertainty(source.hiddenKilograms()))
                + 2 * square(Distribution.TRIANGULAR.standardUncertainty(source.kilogramsPerPulse())));
    }
}
