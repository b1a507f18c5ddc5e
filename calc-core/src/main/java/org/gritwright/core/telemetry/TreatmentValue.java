package org.gritwright.core.telemetry;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.LaneApplicationRate;

/**
 * A value of the pavement treatment objects of NTCIP 1204 (environmental sensor stations). What is beyond an object's range is set to the
 * range's end, and says so. Immutable, thread-safe, a value.
 *
 * <p>Names, numbers and ranges: a compiled early version of its management information base. In what units amount and width are, it doesn't
 * say, and the standard's text wasn't read: so the caller states the unit, and the value keeps it in words. That 255 stands for "missing" there
 * is from memory; so that no measured value can be taken for it, 254 is the end of their range.
 *
 * @param object which object
 * @param value the whole number
 * @param unit the symbol of the unit that was stated, or "%"; blank for a number out of a list
 * @param isSaturated whether what it stands for was beyond the range
 */
public record TreatmentValue(TreatmentObject object, int value, String unit, boolean isSaturated) {
    /** The objects. */
    public enum TreatmentObject {
        /** essPaveTreatProductType: see {@link Product}. */
        PRODUCT_TYPE("essPaveTreatProductType", 1, 14),
        /** essPaveTreatProductForm: see {@link Form}. */
        PRODUCT_FORM("essPaveTreatProductForm", 1, 4),
        /** essPercentProductMix: how much of a mix the product is, in percent. */
        PRODUCT_MIX("essPercentProductMix", 0, 100),
        /** essPaveTreatmentAmount: how much was laid a lane. */
        AMOUNT("essPaveTreatmentAmount", 0, 254),
        /** essPaveTreatmentWidth: how wide. */
        WIDTH("essPaveTreatmentWidth", 0, 254);

        private final String objectName;
        private final int lowest;
        private final int highest;

        TreatmentObject(String objectName, int lowest, int highest) {
            this.objectName = objectName;
            this.lowest = lowest;
            this.highest = highest;
        }

        /**
         * The object's name.
         *
         * @return for example "essPaveTreatmentAmount"
         */
        public String objectName() {
            return objectName;
        }

        private TreatmentValue of(double number, String unit) {
            double whole = Math.rint(Require.finite(objectName, number));
            double held = Math.min(Math.max(whole, lowest), highest);
            return new TreatmentValue(this, (int) held, unit, held != whole);
        }
    }

    /** What is laid, with its number. */
    public enum Product {
        /** Something else. */
        OTHER,
        /** Sand. */
        SAND,
        /** Dirt. */
        DIRT,
        /** Gravel. */
        GRAVEL,
        /** Cinders. */
        CINDERS,
        /** Water. */
        WATER,
        /** Enhanced salts. */
        ENHANCED_SALTS,
        /** Sodium chloride, NaCl. */
        SODIUM_CHLORIDE,
        /** Calcium chloride, CaCl₂. */
        CALCIUM_CHLORIDE,
        /** Magnesium chloride, MgCl₂. */
        MAGNESIUM_CHLORIDE,
        /** Calcium magnesium acetate. */
        CALCIUM_MAGNESIUM_ACETATE,
        /** Potassium acetate. */
        POTASSIUM_ACETATE,
        /** Sodium formate. */
        SODIUM_FORMATE,
        /** Sodium acetate. */
        SODIUM_ACETATE
    }

    /** In what form it is laid, with its number. */
    public enum Form {
        /** Something else. */
        OTHER,
        /** Dry. */
        DRY,
        /** Prewetted. */
        PREWET,
        /** Liquid. */
        LIQUID
    }

    /**
     * Checks the value.
     *
     * @throws org.gritwright.units.InvalidInputException if it is outside the object's range
     */
    public TreatmentValue {
        Require.given(TreatmentValue.class, object, unit);
        Require.that(
                value >= object.lowest && value <= object.highest,
                object.objectName,
                object.lowest + " to " + object.highest,
                value);
    }

    /**
     * What was laid.
     *
     * @param product what
     * @return its number
     */
    public static TreatmentValue ofProduct(Product product) {
        return TreatmentObject.PRODUCT_TYPE.of(number(Objects.requireNonNull(product, "product")), "");
    }

    /**
     * In what form.
     *
     * @param form in what form
     * @return its number
     */
    public static TreatmentValue ofForm(Form form) {
        return TreatmentObject.PRODUCT_FORM.of(number(Objects.requireNonNull(form, "form")), "");
    }

    @SuppressWarnings("EnumOrdinal") // listed in the order of their numbers, from 1; a test has them all
    private static double number(Enum<?> one) {
        return one.ordinal() + 1.0;
    }

    /**
     * How much of a mix the product is.
     *
     * @param share its share
     * @return whole percent
     */
    public static TreatmentValue ofMix(Quantity<Dimensionless> share) {
        Objects.requireNonNull(share, "share");
        return TreatmentObject.PRODUCT_MIX.of(Amounts.in(share, SpreadingUnits.PERCENT), "%");
    }

    /**
     * How much was laid.
     *
     * @param rate mass per lane distance
     * @param unit the unit that the receiver reads it in
     * @return whole units, to the nearest
     */
    public static TreatmentValue ofAmount(Quantity<LaneApplicationRate> rate, Unit<LaneApplicationRate> unit) {
        Objects.requireNonNull(rate, "rate");
        Objects.requireNonNull(unit, "unit");
        return TreatmentObject.AMOUNT.of(
                Amounts.in(rate, unit), UnitSymbol.of(unit).symbol());
    }

    /**
     * How wide.
     *
     * @param width the width that was treated
     * @param unit the unit that the receiver reads it in
     * @return whole units, to the nearest
     */
    public static TreatmentValue ofWidth(Quantity<Length> width, Unit<Length> unit) {
        Objects.requireNonNull(width, "width");
        Objects.requireNonNull(unit, "unit");
        return TreatmentObject.WIDTH.of(
                Amounts.in(width, unit), UnitSymbol.of(unit).symbol());
    }
}
