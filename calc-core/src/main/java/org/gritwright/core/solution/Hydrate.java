package org.gritwright.core.solution;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * A salt that holds water in its crystals. That water counts as water: it is a part of the mass that is weighed and not of the
 * chemical. From the standard atomic weights of IUPAC's Commission on Isotopic Abundances and Atomic Weights (2007, as a handbook
 * reprints them), rounded as in its abridged tables: H 1.008, O 15.999, Mg 24.305, Cl 35.45, Ca 40.078.
 */
public enum Hydrate {
    /** CaCl₂·2H₂O. */
    CALCIUM_CHLORIDE_DIHYDRATE(Salt.CALCIUM_CHLORIDE, 40.078 + 2 * 35.45, 2),
    /** MgCl₂·6H₂O. */
    MAGNESIUM_CHLORIDE_HEXAHYDRATE(Salt.MAGNESIUM_CHLORIDE, 24.305 + 2 * 35.45, 6);

    private static final double WATER = 2 * 1.008 + 15.999;

    private final Salt salt;
    private final double saltWeight;
    private final int waters;

    Hydrate(Salt salt, double saltWeight, int waters) {
        this.salt = salt;
        this.saltWeight = saltWeight;
        this.waters = waters;
    }

    /**
     * The salt without its water.
     *
     * @return the salt
     */
    public Salt salt() {
        return salt;
    }

    /**
     * The salt's part of the crystals.
     *
     * @return mass without crystal water ÷ mass with it, in percent
     */
    public Quantity<Dimensionless> anhydrousPart() {
        return Amounts.ofSi(part(), SpreadingUnits.PERCENT);
    }

    double part() {
        return saltWeight / (saltWeight + waters * WATER);
    }
}
