package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.jspecify.annotations.Nullable;

/**
 * What lies where: by pieces of road, of time, or by the ids that rows have, what was laid in each and how far the truck went there; all by one
 * axis, since a piece's number says nothing without. Sums are
 * whole numbers: in whatever order parts and trucks are added it comes to the same, and all pieces together are all rows. For one thread at a
 * time.
 */
public final class PieceSums implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final int AMOUNT = 0;
    private static final int COVERED = 1;
    private static final int UNKNOWN = 2;
    private static final int MILLIS = 3;

    /** Of the amount what was laid on a way that nobody knows. */
    private static final int UNMEASURED = 4;

    private static final int FIELDS = 5;

    private static final double MILLIMETERS = 1000;

    private final boolean ofLiquids;

    @SuppressWarnings("serial") // a TreeMap
    private final Map<Long, long[]> pieces = new TreeMap<>();

    /** Whose pieces they are; nothing before the first row. */
    private @Nullable PieceAxis axis;

    private long last;
    private long[] lastPiece = new long[FIELDS];
    private long unplaced;

    /**
     * Sums without pieces.
     *
     * @param isOfLiquids whether amounts are microliters and not milligrams: {@link RowEvaluator#isOfLiquids()}
     */
    public PieceSums(boolean isOfLiquids) {
        this.ofLiquids = isOfLiquids;
    }

    void requireOf(PieceAxis cutBy) {
        if (axis == null) {
            axis = cutBy;
        }
        Require.that(axis.equals(cutBy), "sums of pieces", "cut as those before, " + axis, cutBy);
    }

    void add(long piece, long amount, long unmeasured, long covered, long unknown, long millis) {
        if (piece != last || pieces.isEmpty()) {
            last = piece;
            lastPiece = pieces.computeIfAbsent(piece, none -> new long[FIELDS]);
        }
        lastPiece[AMOUNT] += amount;
        lastPiece[UNMEASURED] += unmeasured;
        lastPiece[COVERED] += covered;
        lastPiece[UNKNOWN] += unknown;
        lastPiece[MILLIS] += millis;
    }

    void addUnplaced(long amount) {
        unplaced += amount;
    }

    /**
     * Adds what others have: another part of the truck's rows, or another truck's.
     *
     * @param other other sums, which stay as they are
     * @throws org.gritwright.units.InvalidInputException if one is of liquids and the other of grains, or they are of other pieces
     */
    public void merge(PieceSums other) {
        Require.that(
                ofLiquids == other.ofLiquids,
                "sums to merge",
                ofLiquids ? "of liquids" : "of grains",
                "the other kind");
        if (other.axis != null) {
            requireOf(other.axis);
        }
        other.pieces.forEach((piece, sums) ->
                add(piece, sums[AMOUNT], sums[UNMEASURED], sums[COVERED], sums[UNKNOWN], sums[MILLIS]));
        unplaced += other.unplaced;
    }

    /**
     * The pieces.
     *
     * @return their numbers or ids, rising
     */
    public Set<Long> pieces() {
        return new TreeSet<>(pieces.keySet());
    }

    private long of(long piece, int field) {
        long[] sums = pieces.get(piece);
        return sums == null ? 0 : sums[field];
    }

    /**
     * What was laid in a piece.
     *
     * @param piece its number or id
     * @return milligrams or microliters; 0 if nobody was there
     */
    public long amount(long piece) {
        return of(piece, AMOUNT);
    }

    /**
     * How far trucks went in a piece while it is known what they laid, nothing included.
     *
     * @param piece its number or id
     * @return millimeters
     */
    public long covered(long piece) {
        return of(piece, COVERED);
    }

    /**
     * How far they went in it while nobody knows what they laid.
     *
     * @param piece its number or id
     * @return millimeters
     */
    public long unknown(long piece) {
        return of(piece, UNKNOWN);
    }

    /**
     * How long they were in it, in rows that were counted.
     *
     * @param piece its number or id
     * @return milliseconds
     */
    public long millis(long piece) {
        return of(piece, MILLIS);
    }

    /**
     * What was laid nobody knows where.
     *
     * @return milligrams or microliters
     */
    public long unplaced() {
        return unplaced;
    }

    /**
     * What was laid in all pieces and nobody knows where.
     *
     * @return milligrams or microliters
     */
    public long amount() {
        return unplaced
                + pieces.values().stream().mapToLong(sums -> sums[AMOUNT]).sum();
    }

    /** Amounts per distance in SI; of grains kg/m, of liquids m³/m. */
    double rate(long piece) {
        long covered = covered(piece);
        Require.that(covered > 0, "piece", "one in which a truck went somewhere", piece);
        double units = ofLiquids ? AmountPerCount.PER_CUBIC_METER : AmountPerCount.PER_KILOGRAM;
        return (amount(piece) - of(piece, UNMEASURED)) / units / (covered / MILLIMETERS);
    }

    /**
     * The rate at which grains were laid in a piece, over the distance on which that is known; without what was laid
     * while nobody knows how far the truck went.
     *
     * @param piece its number or id
     * @param unit the wanted unit
     * @return mass per distance
     * @throws org.gritwright.units.InvalidInputException if it is of liquids, or no truck went anywhere in it
     */
    public Quantity<ApplicationRate> rate(long piece, Unit<ApplicationRate> unit) {
        Require.that(!ofLiquids, "sums", "of grains", "of liquids");
        return Amounts.ofSi(rate(piece), Objects.requireNonNull(unit, "unit"));
    }

    /**
     * The rate at which a liquid was laid in a piece.
     *
     * @param piece its number or id
     * @param unit the wanted unit
     * @return volume per distance
     * @throws org.gritwright.units.InvalidInputException if it is of grains, or no truck went anywhere in it
     */
    public Quantity<LiquidApplicationRate> liquidRate(long piece, Unit<LiquidApplicationRate> unit) {
        Require.that(ofLiquids, "sums", "of liquids", "of grains");
        return Amounts.ofSi(rate(piece), Objects.requireNonNull(unit, "unit"));
    }

    boolean isOfLiquids() {
        return ofLiquids;
    }

    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof PieceSums that
                        && ofLiquids == that.ofLiquids
                        && unplaced == that.unplaced
                        && pieces.keySet().equals(that.pieces.keySet())
                        && pieces.entrySet().stream()
                                .allMatch(piece -> Arrays.equals(piece.getValue(), that.pieces.get(piece.getKey()))));
    }

    @Override
    public int hashCode() {
        return Objects.hash(ofLiquids, unplaced, pieces.keySet());
    }

    @Override
    public String toString() {
        return pieces.size() + " pieces with " + amount() + (ofLiquids ? " µL" : " mg");
    }
}
