package org.gritwright.core.balance;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/**
 * How well a single gross error would explain that quantities don't add up. Immutable, thread-safe, a value.
 *
 * <p>The likelihood ratio test of one error of unknown size: with it, the misfit J falls by {@link #drop}, which follows a χ² distribution
 * of one degree of freedom where there is no gross error at all.
 *
 * @param candidate where it would sit
 * @param size how large it would be, with its sign; in the unit that the candidate's kind states
 * @param standardUncertainty of the size
 */
public record Suspect(Candidate candidate, double size, double standardUncertainty) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the size isn't finite or the uncertainty not greater than 0
     */
    public Suspect {
        Require.given(Suspect.class, candidate);
        Require.finite("size of a gross error", size);
        Require.positive("standard uncertainty of a gross error", standardUncertainty);
    }

    /**
     * The size in standard uncertainties: of a standard normal distribution where there is no gross error.
     *
     * @return the score, with the sign of the size
     */
    public double score() {
        return size / standardUncertainty;
    }

    /**
     * By how much the misfit falls if this error is let in.
     *
     * @return the square of the score
     */
    public double drop() {
        return score() * score();
    }

    /**
     * How clearly an error of a size would stand out here.
     *
     * @param ofSize the size, in the unit of {@link #size}
     * @return the non-centrality, as a number of standard deviations: size ÷ standard uncertainty
     */
    public double nonCentrality(double ofSize) {
        return Math.abs(ofSize) / standardUncertainty;
    }

    /**
     * The smallest size that would have been found.
     *
     * @param power with which probability, and at which risk
     * @return the size, without a sign
     */
    public double smallestFound(Power power) {
        return power.nonCentrality() * standardUncertainty;
    }
}
