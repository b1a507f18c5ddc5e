package org.gritwright.core.judgement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;

import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToleranceTest {
    @ParameterizedTest
    @CsvSource({"0, true", "0.04, true", "-0.04, true", "0.0401, false", "-0.0401, false"})
    void isTheSameEitherWayAndItsLimitPasses(double error, boolean accepted) {
        assertThat(Tolerance.percent(4).accepts(error)).isEqualTo(accepted);
    }

    @Test
    void itsLimitPassesWhateverRoundingAdds() {
        assertThat(104.0 / 100 - 1).isGreaterThan(0.04);
        assertThat(Tolerance.percent(4).accepts(104.0 / 100 - 1)).isTrue();
    }

    @Test
    void aRotarySpreaderMayBeFivePerCentOff() {
        // UMass turf programme, fact sheet on rotary spreaders: 5.00 lb per 1000 ft², accepted within ±5 %
        assertThat(Tolerance.percent(5).accepts(5.25 / 5.00 - 1)).isTrue();
        assertThat(Tolerance.percent(5).accepts(4.75 / 5.00 - 1)).isTrue();
        assertThat(Tolerance.percent(5).accepts(5.26 / 5.00 - 1)).isFalse();
        assertThat(Tolerance.percent(5).accepts(4.74 / 5.00 - 1)).isFalse();
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
        assertRefused("error must be finite: NaN", () -> Tolerance.percent(4).accepts(Double.NaN));
    }
}
