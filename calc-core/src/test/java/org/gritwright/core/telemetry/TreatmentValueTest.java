package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import org.gritwright.core.telemetry.TreatmentValue.Form;
import org.gritwright.core.telemetry.TreatmentValue.Product;
import org.gritwright.core.telemetry.TreatmentValue.TreatmentObject;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Numbers, names and ranges: NTCIP 1204's management information base, a compiled early version. */
class TreatmentValueTest {
    @Test
    void productsHaveTheirNumbers() {
        List<Integer> numbers = Arrays.stream(Product.values())
                .map(product -> TreatmentValue.ofProduct(product).value())
                .toList();

        assertThat(numbers).containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14);
        assertThat(List.of(Product.values()).subList(5, 14))
                .containsExactly(
                        Product.WATER,
                        Product.ENHANCED_SALTS,
                        Product.SODIUM_CHLORIDE,
                        Product.CALCIUM_CHLORIDE,
                        Product.MAGNESIUM_CHLORIDE,
                        Product.CALCIUM_MAGNESIUM_ACETATE,
                        Product.POTASSIUM_ACETATE,
                        Product.SODIUM_FORMATE,
                        Product.SODIUM_ACETATE);
        assertThat(TreatmentValue.ofProduct(Product.SAND))
                .isEqualTo(new TreatmentValue(TreatmentObject.PRODUCT_TYPE, 2, "", false));
    }

    @Test
    void formsHaveTheirNumbers() {
        assertThat(TreatmentValue.ofForm(Form.OTHER).value()).isEqualTo(1);
        assertThat(TreatmentValue.ofForm(Form.DRY).value()).isEqualTo(2);
        assertThat(TreatmentValue.ofForm(Form.PREWET).value()).isEqualTo(3);
        assertThat(TreatmentValue.ofForm(Form.LIQUID))
                .isEqualTo(new TreatmentValue(TreatmentObject.PRODUCT_FORM, 4, "", false));
    }

    @Test
    void amountsAreInTheUnitThatIsStated() {
        TreatmentValue kilograms = TreatmentValue.ofAmount(
                Amounts.of(250, SpreadingUnits.POUND_PER_LANE_MILE), SpreadingUnits.KILOGRAM_PER_LANE_KILOMETER);
        TreatmentValue pounds = TreatmentValue.ofAmount(
                Amounts.of(250, SpreadingUnits.POUND_PER_LANE_MILE), SpreadingUnits.POUND_PER_LANE_MILE);

        // 250 lb = 113.398 kg, 1 mi = 1.609344 km: 70.46 kg.
        assertThat(kilograms).isEqualTo(new TreatmentValue(TreatmentObject.AMOUNT, 70, "kg/lane-km", false));
        assertThat(pounds).isEqualTo(new TreatmentValue(TreatmentObject.AMOUNT, 250, "lb/lane-mi", false));
        assertThat(TreatmentValue.ofWidth(Amounts.of(12, SpreadingUnits.FOOT), SpreadingUnits.FOOT))
                .isEqualTo(new TreatmentValue(TreatmentObject.WIDTH, 12, "ft", false));
    }

    @Test
    void whatIsBeyondARangeIsAtItsEndAndSaysSo() {
        TreatmentValue amount = TreatmentValue.ofAmount(
                Amounts.of(255, SpreadingUnits.POUND_PER_LANE_MILE), SpreadingUnits.POUND_PER_LANE_MILE);
        assertThat(amount.value()).isEqualTo(254);
        assertThat(amount.isSaturated()).isTrue();
        TreatmentValue mix = TreatmentValue.ofMix(Amounts.of(-0.6, SpreadingUnits.PERCENT));
        assertThat(mix).isEqualTo(new TreatmentValue(TreatmentObject.PRODUCT_MIX, 0, "%", true));
        assertThat(TreatmentValue.ofMix(Amounts.of(100.4, SpreadingUnits.PERCENT)))
                .isEqualTo(new TreatmentValue(TreatmentObject.PRODUCT_MIX, 100, "%", false));
        assertThat(TreatmentValue.ofWidth(Amounts.of(12, SpreadingUnits.FOOT), SpreadingUnits.METER))
                .isEqualTo(new TreatmentValue(TreatmentObject.WIDTH, 4, "m", false));
    }

    @Test
    void objectsHaveTheirNamesAndRanges() {
        assertThat(Arrays.stream(TreatmentObject.values()).map(TreatmentObject::objectName))
                .containsExactly(
                        "essPaveTreatProductType",
                        "essPaveTreatProductForm",
                        "essPercentProductMix",
                        "essPaveTreatmentAmount",
                        "essPaveTreatmentWidth");
        assertThatThrownBy(() -> new TreatmentValue(TreatmentObject.AMOUNT, 255, "kg", false))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("essPaveTreatmentAmount must be 0 to 254");
        assertThatThrownBy(() -> new TreatmentValue(TreatmentObject.PRODUCT_TYPE, 0, "", false))
                .hasMessageContaining("essPaveTreatProductType must be 1 to 14");
    }
}
