package org.gritwright.core.control;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.gritwright.core.statistics.MonotoneCurve;
import org.gritwright.core.statistics.Sample;
import org.gritwright.units.check.Require;

/**
 * What a chart's average run length in control is really worth where target and standard deviation were estimated from a few observations by their
 * mean and sample deviation: it is another one with each estimate, and this is the distribution of it. Immutable, thread-safe, a
 * value.
 *
 * <p>With the mean off by Z/√m deviations and the deviation off by the factor W, W² = χ²(m − 1)/(m − 1), the chart does what a chart with limits
 * W times as wide does at a shift of Z/√m; Z and W are independent. The chance is integrated over Z, and W is found from the average run
 * length, which grows with it (the conditional run length is that of, for example, W. A. Jensen and others, Effects of parameter estimation on control chart
 * properties: a literature review, Journal of Quality Technology 38, 2006, 349–364, from memory; the quadrature is ours).
 */
public final class EstimatedRunLengths implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final int FEWEST = 5;
    private static final int MOST = 1_000_000;

    /** Normal scores beyond it are left out: one estimate in a million. */
    private static final double FARTHEST = 5;

    private static final int NODES = 14;
    private static final int STEPS = 20;
    private static final double LONGEST = 1e7;
    private static final double ONE_HALF = 0.5;

    private final ControlChart chart;
    private final int observations;
    private final double[] weights;
    /** For each weight, the logarithm of the average run length by the normal score of W. */
    private final List<MonotoneCurve> curves;

    private EstimatedRunLengths(ControlChart chart, int observations, double[] weights, List<MonotoneCurve> curves) {
        this.chart = chart;
        this.observations = observations;
        this.weights = weights;
        this.curves = curves;
    }

    /**
     * The distribution.
     *
     * @param chart the chart, which takes the estimates for the truth
     * @param observations m, of how many independent observations in control they were made, 5 to a million
     * @return the distribution of its average run length in control
     * @throws org.gritwright.units.InvalidInputException if the number is out of its range
     */
    public static EstimatedRunLengths of(ControlChart chart, int observations) {
        Objects.requireNonNull(chart, "chart");
        Require.that(
                observations >= FEWEST && observations <= MOST,
                "observations for the estimates",
                FEWEST + " to " + MOST,
                observations);
        GaussLegendre rule = GaussLegendre.of(NODES);
        double[] weights = new double[NODES];
        List<MonotoneCurve> curves = new ArrayList<>();
        for (int i = 0; i < NODES; i++) {
            double z = FARTHEST * rule.node(i);
            weights[i] = rule.weight(i) * Normal.density(z);
            curves.add(curve(chart, observations, z / Math.sqrt(observations)));
        }
        double sum = Arrays.stream(weights).sum();
        return new EstimatedRunLengths(
                chart, observations, Arrays.stream(weights).map(w -> w / sum).toArray(), List.copyOf(curves));
    }

    private static MonotoneCurve curve(ControlChart chart, int observations, double shift) {
        double[] scores = new double[STEPS + 1];
        double[] logarithms = new double[STEPS + 1];
        int known = 0;
        while (known <= STEPS) {
            double score = FARTHEST * (2.0 * known / STEPS - 1);
            double factor = Sample.deviationFactor(observations - 1, Normal.below(-score));
            double average = RunLengthMethods.average(chart.scaled(factor), Change.step(shift));
            if (Double.isInfinite(average)) {
                break;
            }
            scores[known] = score;
            // Near 1 it may fall by a rounding.
            logarithms[known] = Math.max(Math.log(average), known == 0 ? 0 : logarithms[known - 1]);
            known++;
        }
        Require.that(known > 0, "average run length in control", "one that can be computed", chart);
        return MonotoneCurve.cubic(Arrays.copyOf(scores, known), Arrays.copyOf(logarithms, known));
    }

    /**
     * The chance that the estimates are such that the average run length is shorter.
     *
     * @param averageRunLength 1 to 10⁷
     * @return from 0 to 1, to about four digits
     * @throws org.gritwright.units.InvalidInputException if the number is out of its range
     */
    public double chanceBelow(double averageRunLength) {
        Require.that(
                averageRunLength >= 1 && averageRunLength <= LONGEST,
                "average run length",
                "1 to " + LONGEST,
                averageRunLength);
        double logarithm = Math.log(averageRunLength);
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * Normal.below(score(curves.get(i), logarithm));
        }
        return sum;
    }

    /** Where a curve has a value; infinite where it never or always has more. */
    private static double score(MonotoneCurve curve, double logarithm) {
        return curve.where(logarithm)
                .map(MonotoneCurve.Interval::lowest)
                .orElseGet(() ->
                        logarithm < curve.at(curve.lowest()) ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY);
    }

    /**
     * A quantile of the average run length.
     *
     * @param probability greater than 0 and below 1, for example 0.1 for what nine estimates of ten keep
     * @return the average run length that is not reached with this probability
     * @throws org.gritwright.units.InvalidInputException if the probability is out of its range, or the quantile beyond 10⁷
     */
    public double quantile(double probability) {
        Require.probability("probability", probability);
        Require.that(
                chanceBelow(LONGEST) > probability,
                "probability",
                "below " + chanceBelow(LONGEST) + ", since longer average run lengths can't be computed",
                probability);
        if (chanceBelow(1) >= probability) {
            return 1;
        }
        DoubleUnaryOperator excess = length -> chanceBelow(length) - probability;
        return Root.between(excess, 1, LONGEST);
    }

    /**
     * The median of the average run length.
     *
     * @return the quantile at one half
     * @throws org.gritwright.units.InvalidInputException if it is beyond 10⁷
     */
    public double median() {
        return quantile(ONE_HALF);
    }

    /**
     * The chart.
     *
     * @return the chart, which takes the estimates for the truth
     */
    public ControlChart chart() {
        return chart;
    }

    /**
     * How many observations the estimates were made of.
     *
     * @return m
     */
    public int observations() {
        return observations;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof EstimatedRunLengths that
                && chart.equals(that.chart)
                && observations == that.observations;
    }

    @Override
    public int hashCode() {
        return Objects.hash(chart, observations);
    }

    /**
     * The distribution as text.
     *
     * @return the chart and the number of observations
     */
    @Override
    public String toString() {
        return "average run lengths of " + chart + " with estimates from " + observations + " observations";
    }
}
