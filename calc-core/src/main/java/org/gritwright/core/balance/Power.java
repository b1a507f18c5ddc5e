package org.gritwright.core.balance;

import java.io.Serializable;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.gritwright.units.check.Require;

/**
 * When a gross error counts as found, and how large one has to be to be found. Immutable, thread-safe, a value.
 *
 * <p>An error is found if its score is beyond {@link #critical} on either side. With m places to look at, each is tested at the risk
 * 1 − (1 − risk)^(1/m), so that the chance of any false alarm among them is at most the stated one (Šidák 1967: for normal scores that
 * holds whatever their correlations). An error of non-centrality d, size ÷ standard uncertainty, is found with the probability
 * Φ(d − critical) + Φ(−d − critical).
 *
 * @param risk of a false alarm at all, where there is no gross error; greater than 0 and below 1
 * @param candidates how many places that can be told apart are looked at, 1 or more
 * @param probability with which an error shall be found; greater than the risk and below 1
 */
public record Power(double risk, int candidates, double probability) implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final double COMMON = 0.95;

    private static final int HALVINGS = 80;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one isn't accepted
     */
    public Power {
        Require.probability("risk", risk);
        Require.that(candidates >= 1, "candidates", "1 or more", candidates);
        Require.probability("probability of finding", probability);
        Require.that(probability > risk, "probability of finding", "greater than the risk " + risk, probability);
    }

    /**
     * Found with a probability of 95 %.
     *
     * @param risk of a false alarm at all
     * @param candidates how many places that can be told apart are looked at
     * @return what counts as found
     */
    public static Power common(double risk, int candidates) {
        return new Power(risk, candidates, COMMON);
    }

    /**
     * The risk of a false alarm at one place.
     *
     * @return 1 − (1 − risk)^(1/candidates)
     */
    public double riskOfEach() {
        return -Math.expm1(Math.log1p(-risk) / candidates);
    }

    /**
     * The score beyond which an error is found.
     *
     * @return the quantile of the standard normal distribution, both sides
     */
    public double critical() {
        return NormalDistribution.of(0, 1).inverseSurvivalProbability(riskOfEach() / 2);
    }

    /**
     * How likely chance alone makes the largest of all scores as large as one.
     *
     * @param score the score, with or without its sign
     * @return the probability, or more; it is exact where the scores are independent
     */
    public double riskOfScore(double score) {
        double ofEach = 2 * NormalDistribution.of(0, 1).survivalProbability(Math.abs(score));
        return -Math.expm1(candidates * Math.log1p(-Math.min(ofEach, 1)));
    }

    /**
     * With which probability an error is found.
     *
     * @param nonCentrality its size in standard uncertainties
     * @return the probability
     */
    public double found(double nonCentrality) {
        return found(Require.finite("non-centrality", nonCentrality), critical());
    }

    private static double found(double nonCentrality, double critical) {
        NormalDistribution normal = NormalDistribution.of(0, 1);
        return normal.cumulativeProbability(nonCentrality - critical)
                + normal.cumulativeProbability(-nonCentrality - critical);
    }

    /**
     * The non-centrality that is found with the wanted probability.
     *
     * @return a number of standard uncertainties
     */
    public double nonCentrality() {
        double critical = critical();
        double low = 0;
        // One side alone finds less than both.
        double high = Math.max(0, critical + NormalDistribution.of(0, 1).inverseCumulativeProbability(probability));
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (found(middle, critical) < probability) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }
}
