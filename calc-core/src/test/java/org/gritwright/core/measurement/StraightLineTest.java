package org.gritwright.core.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class StraightLineTest {
    @Test
    void twoPointsGiveTheLineThroughThemWithoutUncertainty() {
        assertThat(StraightLine.fit(new double[] {2, 4}, new double[] {26, 58}))
                .isEqualTo(new StraightLine(-6, 16, OptionalDouble.empty(), OptionalDouble.empty()));
    }

    @Test
    void pointsOnALineGiveThatLineAndNoUncertaintyButItIsThere() {
        StraightLine line = StraightLine.fit(new double[] {1, 2, 3}, new double[] {5, 7, 9});

        assertThat(line).isEqualTo(new StraightLine(3, 2, OptionalDouble.of(0), OptionalDouble.of(0)));
    }

    @Test
    void theUncertaintiesAreThoseOfTheFormula() {
        // Means 2.5 and 1, Sxx 5, Sxy 3; residuals −0.1, 0.3, −0.3, 0.1, so that the variance is 0.2/2 = 0.1.
        StraightLine line = StraightLine.fit(new double[] {1, 2, 3, 4}, new double[] {0, 1, 1, 2});

        assertThat(line.slope()).isCloseTo(0.6, within(1e-15));
        assertThat(line.intercept()).isCloseTo(-0.5, within(1e-15));
        assertThat(line.slopeUncertainty().orElseThrow()).isCloseTo(Math.sqrt(0.1 / 5), within(1e-15));
        assertThat(line.interceptUncertainty().orElseThrow())
                .isCloseTo(Math.sqrt(0.1 * (1 / 4.0 + 2.5 * 2.5 / 5)), within(1e-15));
    }

    @Test
    void aFarOriginCostsNoDigits() {
        StraightLine line = StraightLine.fit(new double[] {1e8, 1e8 + 1, 1e8 + 2}, new double[] {5, 7, 9});

        assertThat(line.slope()).isEqualTo(2);
    }

    @Test
    void refusesWhatGivesNoLine() {
        assertRefused(
                "points of a line must be two or more: 1 x, 1 y",
                () -> StraightLine.fit(new double[] {1}, new double[] {1}));
        assertRefused(
                "points of a line must be two or more: 2 x, 3 y",
                () -> StraightLine.fit(new double[] {1, 2}, new double[] {1, 2, 3}));
        assertRefused(
                "points of a line must be at two different x or more: all at 1.0",
                () -> StraightLine.fit(new double[] {1, 1}, new double[] {1, 2}));
    }

    @Test
    void refusesWhatIsNotFinite() {
        assertRefused(
                "x must be finite: NaN", () -> StraightLine.fit(new double[] {1, Double.NaN}, new double[] {1, 2}));
        assertRefused(
                "y must be finite: Infinity",
                () -> StraightLine.fit(new double[] {1, 2}, new double[] {1, Double.POSITIVE_INFINITY}));
        assertRefused(
                "intercept must be finite: NaN",
                () -> new StraightLine(Double.NaN, 1, OptionalDouble.empty(), OptionalDouble.empty()));
        assertRefused(
                "slope must be finite: NaN",
                () -> new StraightLine(1, Double.NaN, OptionalDouble.empty(), OptionalDouble.empty()));
        assertRefused(
                "uncertainty of the intercept must be finite: NaN",
                () -> new StraightLine(1, 1, OptionalDouble.of(Double.NaN), OptionalDouble.of(1)));
        assertRefused(
                "uncertainty of the slope must be finite: NaN",
                () -> new StraightLine(1, 1, OptionalDouble.of(1), OptionalDouble.of(Double.NaN)));
    }
}
