package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GrubbsTest {
    /** NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1: eight isotope ratios of uranium. */
    private static final double[] URANIUM = {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};

    @Test
    void theHandbooksOutlierIsFound() {
        Grubbs test = Grubbs.of(URANIUM);

        assertThat(test.index()).isEqualTo(7);
        assertThat(test.statistic()).isCloseTo(2.468765, within(5e-7));
        assertThat(test.size()).isEqualTo(8);
        assertThat(test.isOutlying(0.05)).isTrue();
        assertThat(Grubbs.of(Arrays.copyOf(URANIUM, 7)).isOutlying(0.05)).isFalse();
    }

    /** At 5 %, computed with another program; for 8 one-sided the handbook prints 2.032. */
    @ParameterizedTest
    @CsvSource({
        "3, 1.1531, 1.1543",
        "4, 1.4625, 1.4813",
        "5, 1.6714, 1.7150",
        "6, 1.8221, 1.8871",
        "7, 1.9381, 2.0200",
        "8, 2.0317, 2.1266",
        "9, 2.1096, 2.2150",
        "10, 2.1761, 2.2900"
    })
    void criticalValuesAreThoseOfTheTable(int size, double oneSided, double twoSided) {
        assertThat(Grubbs.oneSidedCritical(size, 0.05)).isCloseTo(oneSided, within(5e-5));
        assertThat(Grubbs.twoSidedCritical(size, 0.05)).isCloseTo(twoSided, within(5e-5));
    }

    @Test
    void ofThreeNoneCanBeFartherOutThanTwoOverTheRootOfThree() {
        assertThat(Grubbs.of(0, 0, 1).statistic()).isCloseTo(2 / Math.sqrt(3), within(1e-15));
        assertThat(Grubbs.of(0, 0.1, 1).isOutlying(0.05)).isFalse();
        assertThat(Grubbs.twoSidedCritical(3, 1e-300)).isCloseTo(2 / Math.sqrt(3), within(1e-15));
    }

    @Test
    void theCriticalValueIsExceededOnlyBeyondIt() {
        double critical = Grubbs.twoSidedCritical(5, 0.05);

        assertThat(new Grubbs(0, critical, 5).isOutlying(0.05)).isFalse();
        assertThat(new Grubbs(0, Math.nextUp(critical), 5).isOutlying(0.05)).isTrue();
    }

    @Test
    void equalValuesHaveNoneOutlyingWhateverTheirDivisionRounded() {
        assertThat(Grubbs.of(6.1, 6.1, 6.1).statistic()).isZero();
        assertThat(Grubbs.of(6.1, 6.1, Math.nextUp(6.1)).statistic()).isZero();
        assertThat(Grubbs.of(0, 0, 0).statistic()).isZero();
    }

    @Test
    void largeValuesThatDifferByRoundingAloneAreEqual() {
        assertThat(Grubbs.of(6.1e12, 6.1e12, Math.nextUp(6.1e12)).statistic()).isZero();
    }

    @Test
    void ofTwoThatAreEquallyFarTheFirstIsTaken() {
        assertThat(Grubbs.of(0, -1, 1, 0).index()).isEqualTo(1);
        assertThat(Grubbs.of(0, 1, -1, 0).index()).isEqualTo(1);
    }

    @Test
    void refusesOneValueAndNone() {
        assertRefused("values for Grubbs' test must be 3 or more: 1", () -> Grubbs.of(6.1));
        assertRefused("values for Grubbs' test must be 3 or more: 0", () -> Grubbs.of());
    }

    @Test
    void roundingIsAddedToTheDeviation() {
        // s² = 1/3, distance 2/3
        assertThat(Grubbs.of(new double[] {0, 1, 0}, 0.5))
                .satisfies(test -> assertThat(test.index()).isEqualTo(1))
                .satisfies(test ->
                        assertThat(test.statistic()).isCloseTo(2 / 3.0 / Math.sqrt(1 / 3.0 + 0.25), within(1e-15)));
    }

    private static double shareOfFalseAlarms(int size, double divisionsOfScatter, double rounding) {
        Random random = new Random(7);
        int alarms = 0;
        for (int trial = 0; trial < 4000; trial++) {
            double[] rounded = random.doubles(size, 0, 1)
                    .map(ignored -> Math.rint(100.3 + divisionsOfScatter * random.nextGaussian()))
                    .toArray();
            alarms += Grubbs.of(rounded, rounding).isOutlying(0.05) ? 1 : 0;
        }
        return alarms / 4000.0;
    }

    @ParameterizedTest
    @CsvSource({"3, 0.5", "3, 1", "3, 2", "4, 0.5", "5, 1", "10, 0.5", "10, 2"})
    void valuesRoundedToADivisionAreNotSuspectedTooOftenWithTheRoundingStated(int size, double divisionsOfScatter) {
        // Simulated share at most 5 %, with three standard deviations of 4000 trials allowed.
        assertThat(shareOfFalseAlarms(size, divisionsOfScatter, Math.sqrt(1 / 12.0)))
                .isLessThan(0.05 + 0.0104);
    }

    @Test
    void withoutTheRoundingTheyWouldBe() {
        assertThat(shareOfFalseAlarms(3, 1, 0)).isGreaterThan(0.3);
    }

    @Property(tries = 300, seed = "1")
    void unitAndOriginDoNotMatter(
            @ForAll @Size(min = 3, max = 12) List<@DoubleRange(min = -10, max = 10) Double> list,
            @ForAll @DoubleRange(min = 0.1, max = 10) double factor,
            @ForAll @DoubleRange(min = -10, max = 10) double shift) {
        double[] values = list.stream().mapToDouble(value -> value).toArray();
        Grubbs expected = Grubbs.of(values);
        Grubbs actual = Grubbs.of(
                Arrays.stream(values).map(value -> value * factor + shift).toArray());

        assertThat(actual.statistic()).isCloseTo(expected.statistic(), within(1e-9));
        assertThat(actual.statistic()).isLessThanOrEqualTo((values.length - 1) / Math.sqrt(values.length) + 1e-12);
    }

    @Test
    void refusesWhatCanNotBeTested() {
        assertRefused("values for Grubbs' test must be 3 or more: 2", () -> Grubbs.of(1, 2));
        assertRefused("values for Grubbs' test must be 3 or more: 2", () -> Grubbs.oneSidedCritical(2, 0.05));
        assertRefused("number of a sample must be finite: NaN", () -> Grubbs.of(1, 2, Double.NaN));
        assertRefused("rounding must be 0 or more: -1.0", () -> Grubbs.of(URANIUM, -1));
        assertRefused("rounding must be finite: NaN", () -> Grubbs.of(URANIUM, Double.NaN));
        for (double bad : new double[] {0, 1, Double.NaN}) {
            String message = "significance must be greater than 0 and below 1: " + bad;
            assertRefused(message, () -> Grubbs.of(URANIUM).isOutlying(bad));
            assertRefused(message, () -> Grubbs.oneSidedCritical(3, bad));
        }
    }

    @Test
    void aTestHoldsTogether() {
        assertRefused(
                "Grubbs' test must be of one of 3 values, with a statistic of 0 or more: value 3, statistic 1.0",
                () -> new Grubbs(3, 1, 3));
        assertRefused(
                "Grubbs' test must be of one of 3 values, with a statistic of 0 or more: value -1, statistic 1.0",
                () -> new Grubbs(-1, 1, 3));
        assertRefused(
                "Grubbs' test must be of one of 3 values, with a statistic of 0 or more: value 0, statistic -1.0",
                () -> new Grubbs(0, -1, 3));
        assertRefused("Grubbs' statistic must be finite: NaN", () -> new Grubbs(0, Double.NaN, 3));
        assertRefused("values for Grubbs' test must be 3 or more: 2", () -> new Grubbs(0, 1, 2));
    }
}
