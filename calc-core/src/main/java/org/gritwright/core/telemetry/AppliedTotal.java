package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Map;
import java.util.TreeMap;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * What was laid, by a truck or a fleet, with its uncertainty: errors that rows share are kept by their ids to the end, since they don't
 * average out; those of single readings are independent. Sums are exact, so that the order of trucks doesn't matter. Immutable,
 * thread-safe, a value.
 *
 * <p>A reading counts whole pulses, so that it is short by up to one: a standard uncertainty of 1/√12 pulse (JCGM 100:2008, the GUM,
 * F.2.2.1). Rows that follow each other share readings: of a run of them only the first and the last count.
 *
 * @param isOfLiquid whether amounts are microliters and not milligrams
 * @param amount what was laid, or left the hopper, in whole milligrams or microliters
 * @param sharedErrors by the id of each shared error one standard uncertainty of it, in milligrams or microliters
 * @param squares of what a pulse stands for before and after each reading, less each other: in squares of 1/1024 milligram or microliter
 */
public record AppliedTotal(boolean isOfLiquid, long amount, Map<String, Long> sharedErrors, BigInteger squares)
        implements Serializable {
    private static final double VARIANCE_OF_A_READING = 1.0 / 12;

    /**
     * Copies the map.
     *
     * @throws org.gritwright.units.InvalidInputException if a number is negative
     */
    public AppliedTotal {
        Require.given(AppliedTotal.class, sharedErrors, squares);
        Require.that(amount >= 0, "amount laid", "0 or more", amount);
        Require.that(squares.signum() >= 0, "sum of squares", "0 or more", squares);
        sharedErrors = Map.copyOf(sharedErrors);
        sharedErrors.forEach((id, size) -> Require.that(size >= 0, "shared error " + id, "0 or more", size));
    }

    /**
     * What this and others laid together, of other rows: another truck's, or another storm's.
     *
     * @param other another total
     * @return the sum; an error that both share is one error
     * @throws org.gritwright.units.InvalidInputException if one is of a liquid and the other of grains, or the sum overflows
     */
    public AppliedTotal plus(AppliedTotal other) {
        Require.that(
                isOfLiquid == other.isOfLiquid,
                "total to add",
                isOfLiquid ? "of a liquid" : "of grains",
                "the other kind");
        Map<String, Long> shared = new TreeMap<>(sharedErrors);
        other.sharedErrors.forEach((id, size) -> shared.merge(id, size, AppliedTotal::sum));
        return new AppliedTotal(isOfLiquid, sum(amount, other.amount), shared, squares.add(other.squares));
    }

    private static long sum(long one, long other) {
        long sum = one + other;
        Require.that(sum >= one, "total to add", "at most 9.2 × 10¹² kg in all", () -> other + " to " + one);
        return sum;
    }

    /** Of the counted pulses alone, in milligrams or microliters. */
    double ownUncertainty() {
        return Math.sqrt(
                Math.scalb(new BigDecimal(squares).doubleValue(), -2 * RowSums.MOST_HALVINGS) * VARIANCE_OF_A_READING);
    }

    private double standardUncertainty() {
        double shared = 0;
        for (long size : new TreeMap<>(sharedErrors).values()) {
            shared += (double) size * size;
        }
        return Math.hypot(Math.sqrt(shared), ownUncertainty());
    }

    private <Q extends Quantity<Q>> Measured<Q> measured(double perUnit, Unit<Q> unit) {
        return Measured.of(
                Amounts.ofSi(amount / perUnit, unit),
                Amounts.ofSi(standardUncertainty() / perUnit, unit),
                Double.POSITIVE_INFINITY);
    }

    /**
     * The mass of grains that was laid.
     *
     * @param unit the wanted unit
     * @return the mass with its standard uncertainty
     * @throws org.gritwright.units.InvalidInputException if it is a liquid's
     */
    public Measured<Mass> mass(Unit<Mass> unit) {
        Require.that(!isOfLiquid, "total", "of grains", "of a liquid");
        return measured(AmountPerCount.PER_KILOGRAM, unit);
    }

    /**
     * The volume of liquid that was laid.
     *
     * @param unit the wanted unit
     * @return the volume with its standard uncertainty
     * @throws org.gritwright.units.InvalidInputException if it is of grains
     */
    public Measured<Volume> volume(Unit<Volume> unit) {
        Require.that(isOfLiquid, "total", "of a liquid", "of grains");
        return measured(AmountPerCount.PER_CUBIC_METER, unit);
    }

    @Override
    public String toString() {
        return isOfLiquid
                ? volume(SpreadingUnits.LITER).toString()
                : mass(SpreadingUnits.KILOGRAM).toString();
    }
}
