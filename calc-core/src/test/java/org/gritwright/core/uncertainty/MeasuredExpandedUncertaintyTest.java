package org.gritwright.core.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;

import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeasuredExpandedUncertaintyTest {
    private static double ofUnitUncertainty(int degreesOfFreedom, double coverage) {
        return Measured.of(pounds(5), pounds(1), degreesOfFreedom)
                .expandedUncertainty(coverage)
                .orElseThrow()
                .getValue()
                .doubleValue();
    }

    /** JCGM 100:2008 (the GUM), table G.2, as NIST Technical Note 1297, appendix B, table B.1 prints it. */
    @ParameterizedTest
    @CsvSource({
        "1, 0.95, 12.71",
        "2, 0.95, 4.30",
        "3, 0.95, 3.18",
        "4, 0.95, 2.78",
        "5, 0.95, 2.57",
        "10, 0.95, 2.23",
        "20, 0.95, 2.09",
        "1, 0.90, 6.31",
        "10, 0.99, 3.17"
    })
    void isStudentsFactorAsTheGuidePrintsIt(int degreesOfFreedom, double coverage, double factor) {
        assertThat(ofUnitUncertainty(degreesOfFreedom, coverage)).isCloseTo(factor, within(0.005));
    }

    @Property(tries = 200)
    void isTheClosedFormForOneAndTwoDegreesOfFreedom(
            @ForAll @Scale(4) @DoubleRange(min = 0.01, max = 0.999) double coverage) {
        double one = Math.tan(Math.PI / 2 * coverage);
        double two = coverage * Math.sqrt(2 / (1 - coverage * coverage));

        assertThat(ofUnitUncertainty(1, coverage)).isCloseTo(one, within(1e-9 * one));
        assertThat(ofUnitUncertainty(2, coverage)).isCloseTo(two, within(1e-9 * two));
    }

    @Property(tries = 200)
    void growsWithTheCoverageAndWithTheUncertaintyAndFallsWithTheDegreesOfFreedom(
            @ForAll @IntRange(min = 1, max = 50) int degreesOfFreedom,
            @ForAll @Scale(4) @DoubleRange(min = 0.05, max = 0.98) double coverage) {
        double width = ofUnitUncertainty(degreesOfFreedom, coverage);

        assertThat(ofUnitUncertainty(degreesOfFreedom, coverage + 0.01)).isGreaterThan(width);
        assertThat(ofUnitUncertainty(degreesOfFreedom + 1, coverage)).isLessThan(width);
        assertThat(Measured.of(pounds(5), pounds(3), degreesOfFreedom)
                        .expandedUncertainty(coverage)
                        .orElseThrow()
                        .getValue()
                        .doubleValue())
                .isCloseTo(3 * width, within(1e-12 * width));
    }

    @Test
    void isInTheUnitOfTheValue() {
        Quantity<Mass> width =
                Measured.of(pounds(5), pounds(0.5), 4).expandedUncertainty(0.95).orElseThrow();

        assertThat(width.getUnit()).isEqualTo(SpreadingUnits.POUND);
    }

    @Test
    void isAbsentWhereTheUncertaintyIsAndZeroWhereItIsZero() {
        assertThat(Measured.once(pounds(5)).expandedUncertainty(0.95)).isEmpty();
        assertThat(Measured.of(pounds(5), pounds(0), 4).expandedUncertainty(0.95))
                .contains(pounds(0));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, -0.5, 95, Double.NaN})
    void refusesACoverageThatIsNone(double coverage) {
        assertRefused(
                "coverage must be greater than 0 and below 1: " + coverage,
                () -> Measured.of(pounds(5), pounds(1), 4).expandedUncertainty(coverage));
        assertRefused(
                "coverage must be greater than 0 and below 1: " + coverage,
                () -> Measured.once(pounds(5)).expandedUncertainty(coverage));
    }
}
