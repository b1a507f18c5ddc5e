package org.gritwright.core.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Tag("locale")
class CellValueTest {
    static CellValue<ApplicationRate> known(double value, double uncertainty) {
        return new CellValue<>(Measured.of(Trucks.rate(value), Trucks.rate(uncertainty), 8));
    }

    static CellValue<ApplicationRate> unknown(double value) {
        return new CellValue<>(Measured.once(Trucks.rate(value)));
    }

    @ParameterizedTest
    @CsvSource({
        "1, 1",
        "1.9999, 1",
        "2, 2",
        "4.9999, 2",
        "5, 5",
        "9.99, 5",
        "10, 10",
        "0.3, 0.2",
        "0.05, 0.05",
        "0.1, 0.1",
        "0.0999, 0.05",
        "234, 200",
        "1e-7, 1e-7"
    })
    void theStepIsTheLargestOfOneTwoAndFiveThatIsntAboveTheUncertainty(double uncertainty, String step) {
        assertThat(known(630, uncertainty).step()).isEqualByComparingTo(step);
    }

    @ParameterizedTest
    @CsvSource({
        "12.3456, 0.3, 12.4", // 61.728 steps of 0.2
        "12.3456, 0.05, 12.35", // 246.9 steps of 0.05
        "12.5, 1, 12", // a half to the even multiple
        "13.5, 1, 14",
        "-12.5, 1, -12",
        "0.30000000000000004, 0.1, 0.3",
        "359.1, 0.4, 359.2",
        "12.5, 0.05, 12.50",
        "1234.5, 300, 1200",
        "4, 30, 0"
    })
    void aNumberGoesToTheNearestMultipleOfItsStep(double value, double uncertainty, String printed) {
        assertThat(known(value, uncertainty).number()).isEqualTo(printed);
    }

    @ParameterizedTest
    @CsvSource({
        "1234.5, 1230",
        "0.0012345, 0.00123",
        "999.6, 1000",
        "0.3, 0.300",
        "630, 630",
        "0, 0",
        "1005, 1000",
        "1015, 1020"
    })
    void withoutAnUncertaintyThreeDigitsArePrinted(double value, String printed) {
        assertThat(unknown(value).number()).isEqualTo(printed);
        assertThat(known(value, 0).number()).isEqualTo(printed);
    }

    @Test
    void ofNothingTheStepIsOne() {
        assertThat(unknown(0).step()).isEqualByComparingTo("1");
        assertThat(known(0, 0.3).step()).isEqualByComparingTo("0.2");
    }

    @Test
    void aRoundedNumberHasItsUnitAndTheExactOneBesideIt() {
        CellValue<ApplicationRate> cell = known(0.1 * 3, 0.1);

        assertThat(cell).hasToString("0.3 lb/mi");
        assertThat(cell.rounded()).isEqualTo(Trucks.rate(0.3));
        assertThat(cell.decimal()).isEqualByComparingTo("0.3");
        assertThat(cell.exact().value()).isEqualTo(Trucks.rate(0.1 * 3));
        assertThat(new CellValue<>(Measured.once(Amounts.of(2.5, SpreadingUnits.ONE))))
                .hasToString("2.50");
    }

    /** 630 lb/mi are 177.565 kg/km, 6 of them 1.69: the step is 1. */
    @Test
    void inAnotherUnitANumberIsRoundedThere() {
        CellValue<ApplicationRate> cell = known(630, 6).in(SpreadingUnits.KILOGRAM_PER_KILOMETER);

        assertThat(cell).hasToString("178 kg/km");
        assertThat(cell.exact().degreesOfFreedom()).hasValue(8);
        assertThat(Amounts.in(cell.exact().standardUncertainty().orElseThrow(), SpreadingUnits.POUND_PER_MILE))
                .isCloseTo(6, within(1e-12));
        assertThat(unknown(630).in(SpreadingUnits.KILOGRAM_PER_KILOMETER)).hasToString("178 kg/km");
    }

    @Test
    void inwardNothingIsPromisedThatIsntThere() {
        assertThat(known(31.81, 0.3).down()).isEqualTo(Trucks.rate(31.8));
        assertThat(known(31.79, 0.3).down()).isEqualTo(Trucks.rate(31.6));
        assertThat(known(2.27, 0.02).up()).isEqualTo(Trucks.rate(2.28));
        assertThat(known(2.29, 0.02).up()).isEqualTo(Trucks.rate(2.3));
        assertThat(known(2.28, 0.02).up()).isEqualTo(Trucks.rate(2.28));
    }

    @Test
    void inwardWhatDoublesLoseIsNotLost() {
        assertThat(known(34.99999999999999, 0.5).down()).isEqualTo(Trucks.rate(35));
        assertThat(known(35.00000000000001, 0.5).up()).isEqualTo(Trucks.rate(35));
        assertThat(known(34.99999999, 0.5).down()).isEqualTo(Trucks.rate(34.5));
        assertThat(known(35.00000001, 0.5).up()).isEqualTo(Trucks.rate(35.5));
    }
}
