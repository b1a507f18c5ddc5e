package org.gritwright.core.judgement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.assertRefused;

import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToleranceTest {
    @ParameterizedTest
    @CsvSource({"0, true", "0.04, true", "-0.04, true", "0.0401, false", "-0.0401, false"})
    void isTheSameEitherWayAndItsLimitPasses(double error, boolean accepted) {
        assertThat(Tolerance.percent(4).acceptsRatio(error)).isEqualTo(accepted);
    }

    @ParameterizedTest
    @CsvSource({"4 %, true", "-4 %, true", "4.01 %, false", "0.04, true", "0.05, false"})
    void takesAnErrorInTheUnitItIsStatedIn(String error, boolean accepted) {
        assertThat(Tolerance.percent(4).accepts(Amounts.parse(Dimensionless.class, error)))
                .isEqualTo(accepted);
    }

    /** With bare numbers, 3 for 3 % would be an error of 300 %. */
    @Test
    void threePercentIsNotTakenForThree() {
        assertThat(Tolerance.percent(4).accepts(Amounts.of(3, SpreadingUnits.PERCENT)))
                .isTrue();
        assertThat(Tolerance.percent(4).accepts(Amounts.of(3, SpreadingUnits.ONE)))
                .isFalse();
    }

    @Test
    void isPrintedInOurSymbols() {
        assertThat(Tolerance.percent(4)).hasToString("±4 %");
        assertThat(new Tolerance(Amounts.of(0.025, SpreadingUnits.ONE))).hasToString("±0.025");
    }

    @Test
    void itsLimitPassesWhateverRoundingAdds() {
        assertThat(104.0 / 100 - 1).isGreaterThan(0.04);
        assertThat(Tolerance.percent(4).acceptsRatio(104.0 / 100 - 1)).isTrue();
    }

    @Test
    void aRotarySpreaderMayBeFivePercentOff() {
        // UMass turf program, fact sheet on rotary spreaders: 5.00 lb per 1000 ft², accepted within ±5 %
        assertThat(Tolerance.percent(5).acceptsRatio(5.25 / 5.00 - 1)).isTrue();
        assertThat(Tolerance.percent(5).acceptsRatio(4.75 / 5.00 - 1)).isTrue();
        assertThat(Tolerance.percent(5).acceptsRatio(5.26 / 5.00 - 1)).isFalse();
        assertThat(Tolerance.percent(5).acceptsRatio(4.74 / 5.00 - 1)).isFalse();
    }

    @Test
    void refusesWhatIsNoTolerance() {
        assertRefused("tolerance must be greater than 0: 0 %", () -> Tolerance.percent(0));
        assertRefused(
                "tolerance must be greater than 0: -0.04", () -> new Tolerance(Amounts.of(-0.04, SpreadingUnits.ONE)));
        assertRefused("value must be finite: NaN in \"%\"", () -> Tolerance.percent(Double.NaN));
    }

    @Test
    void refusesAnErrorThatIsNone() {
        assertRefused("error must be finite: NaN", () -> Tolerance.percent(4).acceptsRatio(Double.NaN));
        assertThatNullPointerException()
                .isThrownBy(() -> Tolerance.percent(4).accepts(null))
                .withMessage("error");
        assertThatNullPointerException().isThrownBy(() -> new Tolerance(null)).withMessage("tolerance");
    }
}
