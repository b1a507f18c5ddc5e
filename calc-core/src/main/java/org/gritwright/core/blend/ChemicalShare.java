package org.gritwright.core.blend;

import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;

/**
 * How much of a mix is dry chemical, and what that makes of a rate. A truck doses the mix as it lies; what melts is the chemical.
 * The basis is one for both ways: dry chemical ÷ mass of the mix, water included. Immutable, thread-safe, a value.
 *
 * @param share dry chemical ÷ mass as it lies, greater than zero and at most 100 %
 */
public record ChemicalShare(Measured<Dimensionless> share) {
    /**
     * Checks the share.
     *
     * @throws org.gritwright.units.InvalidInputException if it is not greater than zero or above 100 %
     */
    public ChemicalShare {
        Require.given(ChemicalShare.class, share);
        Require.positive("share of dry chemical", Dimensionless.class, share.value());
        Require.within(
                "share of dry chemical",
                Dimensionless.class,
                share.value(),
                Amounts.of(0, SpreadingUnits.PERCENT),
                Amounts.of(100, SpreadingUnits.PERCENT));
    }

    private double ratio() {
        return Amounts.si(Dimensionless.class, share.value());
    }

    /**
     * The dry chemical that a rate of the mix lays.
     *
     * @param mix mass of the mix per lane distance, 0 or more
     * @return dry chemical per lane distance, in the same unit; uncertain by the share alone
     * @throws org.gritwright.units.InvalidInputException if the rate is negative
     */
    public Measured<LaneApplicationRate> dryChemical(Quantity<LaneApplicationRate> mix) {
        return times(Require.notNegative("rate of the mix", LaneApplicationRate.class, mix));
    }

    /**
     * The dry chemical that a rate of the mix lays.
     *
     * @param mix mass of the mix per distance the truck travels, 0 or more
     * @return dry chemical per distance, in the same unit; uncertain by the share alone
     * @throws org.gritwright.units.InvalidInputException if the rate is negative
     */
    public Measured<ApplicationRate> dryChemicalPerDistance(Quantity<ApplicationRate> mix) {
        return times(Require.notNegative("rate of the mix", ApplicationRate.class, mix));
    }

    /**
     * The rate of the mix that lays a wanted amount of dry chemical.
     *
     * @param dryChemical dry chemical per lane distance, 0 or more
     * @return mass of the mix per lane distance, in the same unit; uncertain by the share alone
     * @throws org.gritwright.units.InvalidInputException if the rate is negative
     */
    public Measured<LaneApplicationRate> mix(Quantity<LaneApplicationRate> dryChemical) {
        return over(Require.notNegative("rate of dry chemical", LaneApplicationRate.class, dryChemical));
    }

    /**
     * The rate of the mix that lays a wanted amount of dry chemical.
     *
     * @param dryChemical dry chemical per distance the truck travels, 0 or more
     * @return mass of the mix per distance, in the same unit; uncertain by the share alone
     * @throws org.gritwright.units.InvalidInputException if the rate is negative
     */
    public Measured<ApplicationRate> mixPerDistance(Quantity<ApplicationRate> dryChemical) {
        return over(Require.notNegative("rate of dry chemical", ApplicationRate.class, dryChemical));
    }

    private <R extends Quantity<R>> Measured<R> times(Quantity<R> rate) {
        return uncertain(rate.getValue().doubleValue() * ratio(), rate.getUnit());
    }

    private <R extends Quantity<R>> Measured<R> over(Quantity<R> rate) {
        return uncertain(rate.getValue().doubleValue() / ratio(), rate.getUnit());
    }

    /** Product and quotient have the relative uncertainty of the share. */
    private <R extends Quantity<R>> Measured<R> uncertain(double value, Unit<R> unit) {
        return share.standardUncertainty()
                .map(u -> Measured.of(
                        Amounts.of(value, unit),
                        Amounts.of(value * Amounts.si(Dimensionless.class, u) / ratio(), unit),
                        share.degreesOfFreedom().orElseThrow()))
                .orElseGet(() -> Measured.once(Amounts.of(value, unit)));
    }
}
