package org.gritwright.core.verification;

import java.util.List;
import java.util.OptionalDouble;
import org.gritwright.core.budget.ScaleSpans;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.uncertainty.Distribution;

/**
 * What a budget needs to know of catches, summed up, so that one more catch costs no more than a pass over the scales.
 *
 * <p>Masses are summed with compensation. The scatter of the catches' ratios r = 1 + error is carried along as their
 * mean and the sum M of squared deviations from it, so that no two large sums are subtracted.
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

    /** Of one catch; what is caught is allowed for as spilled too. */
    static ErrorSums of(VerificationCatch source, double spillageFactor) {
        boolean byRunTime =
                source.revolutions().isEmpty() && source.run().runTime().isPresent();
        return of(
                source,
                source.observation(),
                source.revolutions(),
                relativeCount(source),
                source.expectedKilograms(),
                spillageFactor,
                byRunTime);
    }

    /** Of the calibration catches at the same point, as the value in force of a verification catch would have indicated them. */
    static ErrorSums of(Calibration calibration, VerificationCatch source, double spillageFactor) {
        return calibration.catches().stream()
                .map(one -> {
                    OptionalDouble revolutions = OptionalDouble.of(one.revolutions());
                    OptionalDouble count = relative(one.observation().uncertaintyRevolutions(), one.revolutions());
                    return of(source, one.observation(), revolutions, count, 0, spillageFactor, false);
                })
                .reduce(ErrorSums::plus)
                .orElseThrow();
    }

    /** @param count relative standard uncertainty of the count; none where nobody knows */
    private static ErrorSums of(
            VerificationCatch first,
            Observation made,
            OptionalDouble revolutions,
            OptionalDouble count,
            double expected,
            double spillageFactor,
            boolean byRunTime) {
        double kilograms = made.kilograms();
        double discharged = kilograms * spillageFactor;
        double indicated = revolutions.orElse(0) * first.inForce().kilogramsPerRevolution();
        return new ErrorSums(
                first,
                1,
                new Sum(indicated, 0),
                new Sum(discharged, 0),
                new Sum(expected, 0),
                new Sum(revolutions.orElse(0), 0),
                new Sum(kilograms, 0),
                square(kilograms),
                square(made.roundingKilograms()),
                square(kilograms * count.orElse(0)),
                revolutions.isPresent() ? indicated / discharged : discharged / expected,
                0,
                ScaleSpans.of(List.of(made.caught()), new double[] {kilograms}),
                count.isPresent(),
                byRunTime);
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
    private static OptionalDouble relative(OptionalDouble uncertainty, double revolutions) {
        return uncertainty.isPresent() ? OptionalDouble.of(uncertainty.getAsDouble() / revolutions) : uncertainty;
    }

    private static OptionalDouble relativeCount(VerificationCatch source) {
        if (source.counted().isPresent()) {
            return relative(
                    source.observation().uncertaintyRevolutions(),
                    source.revolutions().getAsDouble());
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
        double step = source.stepKilograms();
        return Math.sqrt(square(Distribution.RECTANGULAR.standardUncertainty(step / 2))
                + square(Distribution.RECTANGULAR.standardUncertainty(source.hiddenKilograms()))
                + 2 * square(Distribution.TRIANGULAR.standardUncertainty(source.kilogramsPerPulse())));
    }
}
