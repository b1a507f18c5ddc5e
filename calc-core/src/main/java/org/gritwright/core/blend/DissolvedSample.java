package org.gritwright.core.blend;

import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.observation.Moisture;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A sample of a mix from which everything soluble was washed out: weighed as it lay, then washed, dried and weighed again. All
 * that went with the water is taken for chemical; a salt's insoluble part stays with the sand. Immutable, thread-safe, a value.
 *
 * @param sample the mass as it lay, greater than zero
 * @param residue the dried mass of what didn't dissolve, 0 or more and below the dry mass of the sample
 * @param moisture the moisture of the mix, from a second sample that was dried only
 * @param division the step of the scale's reading, greater than zero
 */
public record DissolvedSample(
        Quantity<Mass> sample, Quantity<Mass> residue, Moisture moisture, Quantity<Mass> division) {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if one is out of its range, or nothing dissolved
     */
    public DissolvedSample {
        Require.given(DissolvedSample.class, sample, residue, moisture, division);
        Require.positive("mass of the sample", Mass.class, sample);
        Require.notNegative("mass of the residue", Mass.class, residue);
        Require.positive("division of the scale", Mass.class, division);
        double dry = Amounts.si(Mass.class, sample) * moisture.dryPart();
        if (!(Amounts.si(Mass.class, residue) < dry)) {
            throw new InvalidInputException(
                    "mass of the residue",
                    "below the sample's dry mass, " + Amounts.format(Amounts.ofSi(dry, sample.getUnit())),
                    Amounts.format(residue));
        }
    }

    /**
     * How much of the mix is dry chemical.
     *
     * @return dry part − residue ÷ sample; its uncertainty is that of the moisture and of the rounding of both readings. By how
     *     much samples of one pile differ is not in it: take several
     */
    public ChemicalShare chemicalShare() {
        double kilograms = Amounts.si(Mass.class, sample);
        double left = Amounts.si(Mass.class, residue) / kilograms;
        Contributions budget = new Contributions();
        budget.add("moisture of the mix", moisture, 1);
        budget.rounded("mass of the sample", Mass.class, division, left / kilograms);
        budget.rounded("mass of the residue", Mass.class, division, -1 / kilograms);
        return new ChemicalShare(budget.of(moisture.dryPart() - left));
    }
}
