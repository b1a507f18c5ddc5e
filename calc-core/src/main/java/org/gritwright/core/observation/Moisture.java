package org.gritwright.core.observation;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * The moisture of what was caught, and how far the moisture of what is spread may be from it. A scale weighs water too: at
 * another moisture the same mass is another mass of dry material. Immutable, thread-safe, a value.
 *
 * @param content the moisture of what was caught, 0 or more and below 100 %
 * @param halfWidth how far from it the moisture may be, either way, 0 or more and below 100 %, in the same terms
 * @param basis what both are a part of
 */
public record Moisture(Quantity<Dimensionless> content, Quantity<Dimensionless> halfWidth, Basis basis) {

    /** What a moisture is a part of; the two differ, so the basis is always named. */
    public enum Basis {
        /** Of the wet mass: loss ÷ wet mass (the Minnesota handbook's salt moisture worksheet). */
        WET_MASS,
        /** Of the dry mass: loss ÷ dry mass. */
        DRY_MASS;

        private double dryPart(double content) {
            return this == WET_MASS ? 1 - content : 1 / (1 + content);
        }

        private double content(double dryPart) {
            return this == WET_MASS ? 1 - dryPart : 1 / dryPart - 1;
        }
    }

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if one is out of its range, or a wet mass might be water alone
     */
    public Moisture {
        Require.given(Moisture.class, content, halfWidth, basis);
        Require.share("moisture", content);
        Require.share("uncertainty of the moisture", halfWidth);
        double wettest = Amounts.si(Dimensionless.class, content) + Amounts.si(Dimensionless.class, halfWidth);
        if (!(basis.dryPart(wettest) > 0)) {
            throw new InvalidInputException(
                    "uncertainty of the moisture",
                    "such that the mass can't be water alone at " + Amounts.format(content),
                    Amounts.format(halfWidth));
        }
    }

    /**
     * The same uncertainty about another content: that of a catch whose own moisture was measured.
     *
     * @param measured the moisture of the catch
     * @param measuredBasis what it is a part of
     * @return the moisture, on this basis
     * @throws InvalidInputException as when a moisture is made
     */
    public Moisture measured(Quantity<Dimensionless> measured, Basis measuredBasis) {
        double dryPart = measuredBasis.dryPart(Amounts.si(Dimensionless.class, measured));
        Quantity<Dimensionless> converted =
                measuredBasis == basis ? measured : Amounts.ofSi(basis.content(dryPart), measured.getUnit());
        return new Moisture(converted, halfWidth, basis);
    }

    /**
     * The dry part of the mass.
     *
     * @return a ratio: 1 − w of the wet mass, 1 ÷ (1 + x) of the dry mass
     */
    public double dryPart() {
        return basis.dryPart(Amounts.si(Dimensionless.class, content));
    }

    /**
     * By how much the dry mass may be off, relative to itself: half of what the dry part changes from the one end of the
     * moisture to the other.
     *
     * @return a ratio, 0 or more
     */
    public double relativeHalfWidth() {
        double middle = Amounts.si(Dimensionless.class, content);
        double half = Amounts.si(Dimensionless.class, halfWidth);
        double driest = basis.dryPart(Math.max(0, middle - half));
        double wettest = basis.dryPart(middle + half);
        return (driest - wettest) / 2 / dryPart();
    }
}
