package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;

/**
 * Over how much of the way the rate that was laid was within a tolerance about its target, below and above. The rate of each piece
 * counts over the piece's length: the shorter the pieces, the more it shows of how the rate scatters. Immutable, thread-safe, a value.
 *
 * @param below millimeters with less than the target less the tolerance
 * @param within millimeters within the tolerance
 * @param above millimeters with more
 * @param unknown millimeters of which nobody knows what was laid
 */
public record RateShares(long below, long within, long above, long unknown) implements Serializable {
    /**
     * Checks the lengths.
     *
     * @throws org.gritwright.units.InvalidInputException if one is negative
     */
    public RateShares {
        Require.that(below >= 0 && within >= 0 && above >= 0 && unknown >= 0, "lengths", "0 or more", "negative");
    }

    /**
     * The shares of pieces with grains.
     *
     * @param sums the pieces
     * @param target the target rate, greater than 0
     * @param tolerance how far the rate may be from it
     * @return the shares
     * @throws org.gritwright.units.InvalidInputException if the target isn't greater than 0, or the pieces are of liquids
     */
    public static RateShares of(PieceSums sums, Quantity<ApplicationRate> target, Tolerance tolerance) {
        Objects.requireNonNull(sums, "sums");
        Objects.requireNonNull(target, "target");
        Objects.requireNonNull(tolerance, "tolerance");
        Require.that(!sums.isOfLiquids(), "sums", "of grains", "of liquids");
        return about(
                sums,
                Amounts.si(ApplicationRate.class, Require.positive("target rate", ApplicationRate.class, target)),
                tolerance);
    }

    /**
     * The shares of pieces with a liquid.
     *
     * @param sums the pieces
     * @param target the target rate, greater than 0
     * @param tolerance how far the rate may be from it
     * @return the shares
     * @throws org.gritwright.units.InvalidInputException if the target isn't greater than 0, or the pieces are of grains
     */
    public static RateShares ofLiquid(PieceSums sums, Quantity<LiquidApplicationRate> target, Tolerance tolerance) {
        Objects.requireNonNull(sums, "sums");
        Objects.requireNonNull(target, "target");
        Objects.requireNonNull(tolerance, "tolerance");
        Require.that(sums.isOfLiquids(), "sums", "of liquids", "of grains");
        return about(
                sums,
                Amounts.si(
                        LiquidApplicationRate.class,
                        Require.positive("target rate", LiquidApplicationRate.class, target)),
                tolerance);
    }

    private static RateShares about(PieceSums sums, double wanted, Tolerance tolerance) {
        long below = 0;
        long within = 0;
        long above = 0;
        long unknown = 0;
        for (long piece : sums.pieces()) {
            unknown += sums.unknown(piece);
            long covered = sums.covered(piece);
            if (covered > 0) {
                double off = sums.rate(piece) / wanted - 1;
                if (tolerance.acceptsRatio(off)) {
                    within += covered;
                } else if (off < 0) {
                    below += covered;
                } else {
                    above += covered;
                }
            }
        }
        return new RateShares(below, within, above, unknown);
    }

    /**
     * These and others together.
     *
     * @param other the shares of other pieces
     * @return the sums
     */
    public RateShares plus(RateShares other) {
        return new RateShares(below + other.below, within + other.within, above + other.above, unknown + other.unknown);
    }

    /**
     * The share of the way within the tolerance, of that of which it is known.
     *
     * @return a ratio in percent
     * @throws org.gritwright.units.InvalidInputException if nothing is known of any way
     */
    public Quantity<Dimensionless> shareWithin() {
        long known = below + within + above;
        Require.that(known > 0, "pieces", "some in which a truck went somewhere", "none");
        return Amounts.ofSi((double) within / known, SpreadingUnits.PERCENT);
    }
}
