package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StudentTest {
    /**
     * For 5 % to three decimals as in the NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, read in a reprint;
     * the fourth decimals, and 2.275 %, from memory.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 0.05, 6.3138",
        "2, 0.05, 2.9200",
        "4, 0.05, 2.1318",
        "9, 0.05, 1.8331",
        "2, 0.02275, 4.5266",
        "9, 0.02275, 2.3198",
        "Infinity, 0.05, 1.6449",
        "Infinity, 0.02275, 2.0000"
    })
    void theFactorExceededWithARiskIsOneSided(double degreesOfFreedom, double risk, double factor) {
        assertThat(Student.of(degreesOfFreedom).factorExceededWith(risk)).isCloseTo(factor, within(1e-4));
    }

    @Test
    void theFactorOfACoverageLeavesHalfTheRestOnEachSide() {
        Student student = Student.of(5.5);

        assertThat(student.coverageFactor(0.95)).isCloseTo(student.factorExceededWith(0.025), within(1e-12));
        assertThat(student.probabilityAbove(student.coverageFactor(0.95))).isCloseTo(0.025, within(1e-12));
        assertThat(student.probabilityBelow(-student.coverageFactor(0.95))).isCloseTo(0.025, within(1e-12));
    }

    /** For one degree of freedom P(t below x) = 1/2 + arctan(x) ÷ π. */
    @Test
    void probabilitiesAreTheClosedFormForOneDegreeOfFreedomFarOutToo() {
        Student student = Student.of(1);

        assertThat(student.probabilityBelow(1)).isCloseTo(0.75, within(1e-12));
        assertThat(student.probabilityAbove(1e12)).isCloseTo(1 / (Math.PI * 1e12), within(1e-20));
        assertThat(student.probabilityAbove(Double.POSITIVE_INFINITY)).isZero();
        assertThat(student.probabilityBelow(Double.NEGATIVE_INFINITY)).isZero();
    }

    @Test
    void wordsOfDegreesOfFreedomGoToATenth() {
        assertThat(Student.words(2)).isEqualTo("2");
        assertThat(Student.words(26.8376)).isEqualTo("26.8");
        assertThat(Student.words(145.3796)).isEqualTo("145.4");
        assertThat(Student.words(1.04)).isEqualTo("1");
        assertThat(Student.words(1e9)).isEqualTo("1000000000");
        assertThat(Student.words(Double.POSITIVE_INFINITY)).isEqualTo("∞");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN})
    void refusesToBeWithoutDegreesOfFreedom(double degreesOfFreedom) {
        assertRefused(
                "degrees of freedom must be greater than 0: " + degreesOfFreedom, () -> Student.of(degreesOfFreedom));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, Double.NaN})
    void refusesARiskOrCoverageThatIsNone(double none) {
        assertRefused(
                "risk must be greater than 0 and below 1: " + none,
                () -> Student.of(3).factorExceededWith(none));
        assertRefused(
                "coverage must be greater than 0 and below 1: " + none,
                () -> Student.of(3).coverageFactor(none));
    }

    /** The search for a factor beyond all numbers would never end. */
    @Test
    void aFactorThatNoNumberHoldsIsInfiniteAndSoonSo() {
        assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
            assertRefused("degrees of freedom must be at least 0.01: 4.9E-324", () -> Student.of(4.9e-324));
            assertThat(Student.of(0.01).factorExceededWith(1e-10)).isEqualTo(Double.POSITIVE_INFINITY);
            assertThat(Student.of(0.01).factorExceededWith(1 - 1e-10)).isEqualTo(Double.NEGATIVE_INFINITY);
            Student few = Student.of(0.01);
            double factor = few.factorExceededWith(0.3);
            assertThat(few.probabilityAbove(factor)).isCloseTo(0.3, within(1e-6));
            assertThat(few.factorExceededWith(0.7)).isNegative();
            assertThat(few.factorExceededWith(0.5)).isBetween(-1.0, 1.0);
        });
    }
}
