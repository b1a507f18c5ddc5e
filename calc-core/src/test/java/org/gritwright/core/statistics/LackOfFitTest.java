package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

class LackOfFitTest {
    private static final double[] EQUAL = {1, 1, 1, 1};

    /** At 1 the curve says 8, at 2 it says 25. */
    private static double curve(double x) {
        return x < 1.5 ? 8 : 25;
    }

    @Test
    void theStatisticIsThatOfTheFormula() {
        // Means 10 and 20, off by 0.25 and −0.2: misfit 2·0.0625 + 2·0.04 = 0.205 on 2 − 1 degrees. Repeats off by 0.1
        // and 0.05: scatter 2·0.01 + 2·0.0025 = 0.025 on 4 − 2 degrees. F = 0.205/0.0125.
        LackOfFit test = LackOfFit.test(
                        Scatter.RELATIVE,
                        new double[] {1, 2, 1, 2},
                        new double[] {9, 21, 11, 19},
                        EQUAL,
                        LackOfFitTest::curve,
                        1)
                .orElseThrow();

        assertThat(test.statistic()).isCloseTo(16.4, within(1e-12));
        assertThat(test.misfitDegrees()).isEqualTo(1);
        assertThat(test.scatterDegrees()).isEqualTo(2);
        // With 1 and 2 degrees the chance is that of Student's t: 1 − √(F/(2 + F)).
        assertThat(test.chance()).isCloseTo(1 - Math.sqrt(16.4 / 18.4), within(1e-12));
    }

    @Test
    void oneRepeatIsEnough() {
        // Means 10 and 20, off by 0.25 and −0.2: misfit 2·0.0625 + 0.04 = 0.165 on 1 degree; scatter 2·0.01 on 1
        // degree.
        LackOfFit test = LackOfFit.test(
                        Scatter.RELATIVE, new double[] {1, 2, 1}, new double[] {9, 20, 11}, LackOfFitTest::curve, 1)
                .orElseThrow();

        assertThat(test.statistic()).isCloseTo(8.25, within(1e-12));
        assertThat(test.scatterDegrees()).isEqualTo(1);
        // With 1 and 1 degree the chance is that of Cauchy's distribution: 1 − 2/π·atan √F.
        assertThat(test.chance()).isCloseTo(1 - 2 / Math.PI * Math.atan(Math.sqrt(8.25)), within(1e-12));
    }

    @Test
    void meansAndSquaresAreWeighted() {
        // The mean at 1 is (3·9 + 13)/4 = 10. Scaled weights are 3/2, 1/2, 1, 1. Misfit 2·0.0625 + 2·0.04 = 0.205;
        // scatter
        // 1.5·0.01 + 0.5·0.09 + 2·0.0025 = 0.065 on 2 degrees.
        LackOfFit test = LackOfFit.test(
                        Scatter.RELATIVE,
                        new double[] {1, 1, 2, 2},
                        new double[] {9, 13, 21, 19},
                        new double[] {3, 1, 2, 2},
                        LackOfFitTest::curve,
                        1)
                .orElseThrow();

        assertThat(test.statistic()).isCloseTo(0.205 / 0.0325, within(1e-12));
    }

    @Test
    void byAbsoluteScatterDeviationsAreDifferences() {
        // Means 10 and 20, the curve at 8 and 25: misfit 2·4 + 2·25 = 58 on 2 − 1 degrees. Repeats off by 1 and 1:
        // scatter
        // 2·1 + 2·1 = 4 on 4 − 2 degrees. F = 58/2.
        LackOfFit test = LackOfFit.test(
                        Scatter.ABSOLUTE,
                        new double[] {1, 2, 1, 2},
                        new double[] {9, 21, 11, 19},
                        LackOfFitTest::curve,
                        1)
                .orElseThrow();

        assertThat(test.statistic()).isCloseTo(29, within(1e-12));
        assertThat(test.chance()).isCloseTo(1 - Math.sqrt(29.0 / 31), within(1e-12));
    }

    @Property(tries = 200)
    void byAbsoluteScatterLiftingDataAndCurveChangesNothing(
            @ForAll @Scale(2) @DoubleRange(min = -1000, max = 1000) double lift) {
        double[] x = {1, 2, 1, 2};
        double[] y = {9, 21, 11, 19};
        double[] lifted = Arrays.stream(y).map(one -> one + lift).toArray();

        assertThat(LackOfFit.test(Scatter.ABSOLUTE, x, lifted, at -> curve(at) + lift, 1)
                        .orElseThrow()
                        .statistic())
                .isCloseTo(29, within(1e-9));
    }

    private static LackOfFit ofStraightLine(Scatter scatter, double[] x, double[] y) {
        StraightLine line = StraightLine.fit(x, y);
        return LackOfFit.test(scatter, x, y, at -> line.meanAt(at).value(), 2).orElseThrow();
    }

    /**
     * Montgomery and Runger, Applied Statistics and Probability for Engineers, supplement to chapter 11, example S11-1:
     * F = 1.42, P = 0.3276. The printed P is that of F as rounded; that of the unrounded 1.4162 is 0.0012 more.
     */
    @Test
    void aTextbooksExampleComesOutAsPrinted() {
        double[] x = {1, 1, 2, 3.3, 3.3, 4, 4, 4, 5, 5.6, 5.6, 5.6, 6, 6, 6.5, 6.9};
        double[] y = {2.3, 1.8, 2.8, 1.8, 3.7, 2.6, 2.6, 2.2, 2, 3.5, 2.8, 2.1, 3.4, 3.2, 3.4, 5};
        LackOfFit test = ofStraightLine(Scatter.ABSOLUTE, x, y);

        assertThat(test.misfitDegrees()).isEqualTo(7);
        assertThat(test.scatterDegrees()).isEqualTo(7);
        assertThat(test.statistic()).isCloseTo(1.42, within(0.005));
        assertThat(test.chance()).isCloseTo(0.3276, within(0.0013));
    }

    /**
     * NIST/SEMATECH e-Handbook of Statistical Methods, 4.6.1.5, load cell: the lack-of-fit F of the straight line is
     * 214.7464 on 18 and 20 degrees of freedom. The data are NIST's StRD "Pontius". Recomputed from them, F is
     * 214.7469.
     */
    @Test
    void theHandbooksLoadCellComesOutAsPrinted() {
        double[] first = {
            .11019, .21956, .32949, .43899, .54803, .65694, .76562, .87487, .98292, 1.09146, 1.20001, 1.30822, 1.41599,
            1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844
        };
        double[] second = {
            .11052, .22018, .32939, .43886, .54798, .65739, .76596, .87474, .98300, 1.09150, 1.20004, 1.30818, 1.41613,
            1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829
        };
        double[] x = new double[40];
        double[] y = new double[40];
        for (int i = 0; i < 20; i++) {
            x[i] = 150_000 * (i + 1);
            x[i + 20] = x[i];
            y[i] = first[i];
            y[i + 20] = second[i];
        }
        LackOfFit test = ofStraightLine(Scatter.ABSOLUTE, x, y);

        assertThat(test.misfitDegrees()).isEqualTo(18);
        assertThat(test.scatterDegrees()).isEqualTo(20);
        assertThat(test.statistic()).isCloseTo(214.7464, within(0.001));
        assertThat(test.chance()).isLessThan(1e-15);
    }

    /**
     * The three runs up a load cell of the NIST/SEMATECH e-Handbook of Statistical Methods, 2.3.6.5 (its data file
     * LOADCELL.DAT) and a straight line through them: F = 112.24 on 9 and 22 degrees of freedom by absolute scatter. By
     * relative scatter it would be 166.16. Both were recomputed from the published data in another language (Python).
     */
    @Test
    void whichScatterIsMeantDecidesTheStatisticOfALoadCell() {
        double[] loads = {2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 21};
        double[][] runs = {
            {.20024, .40056, .60087, .80130, 1.00173, 1.20227, 1.40282, 1.60344, 1.80412, 2.00485, 2.10526},
            {.20016, .40045, .60075, .80122, 1.00164, 1.20218, 1.40278, 1.60339, 1.80409, 2.00481, 2.10524},
            {.20024, .40054, .60086, .80127, 1.00173, 1.20227, 1.40279, 1.60341, 1.80411, 2.00483, 2.10524}
        };
        double[] x =
                Arrays.stream(runs).flatMapToDouble(run -> Arrays.stream(loads)).toArray();
        double[] y = Arrays.stream(runs).flatMapToDouble(Arrays::stream).toArray();

        LackOfFit absolute = ofStraightLine(Scatter.ABSOLUTE, x, y);
        assertThat(absolute.statistic()).isCloseTo(112.24, within(0.005));
        assertThat(absolute.misfitDegrees()).isEqualTo(9);
        assertThat(absolute.scatterDegrees()).isEqualTo(22);
        assertThat(ofStraightLine(Scatter.RELATIVE, x, y).statistic()).isCloseTo(166.16, within(0.005));
    }

    /** Two x with two repeats each that give the statistic F = 2d²/e². */
    private static LackOfFit withMisfit(double d, double e, int groups) {
        double[] x = new double[2 * groups];
        double[] y = new double[2 * groups];
        for (int i = 0; i < groups; i++) {
            x[2 * i] = i + 1;
            x[2 * i + 1] = i + 1;
            y[2 * i] = (1 + d) * (1 + e);
            y[2 * i + 1] = (1 + d) * (1 - e);
        }
        double[] equal = new double[x.length];
        Arrays.fill(equal, 1);
        return LackOfFit.test(Scatter.RELATIVE, x, y, equal, at -> 1, groups - 2)
                .orElseThrow();
    }

    @Property(tries = 200)
    void withTwoDegreesOfMisfitTheChanceIsTheClosedForm(
            @ForAll @Scale(4) @DoubleRange(min = 0.001, max = 0.2) double misfit,
            @ForAll @Scale(4) @DoubleRange(min = 0.01, max = 0.1) double scatter,
            @ForAll @IntRange(min = 3, max = 8) int groups) {
        LackOfFit test = withMisfit(misfit, scatter, groups);
        double f = (misfit * misfit * 2 * groups / 2) / (scatter * scatter * 2 * groups / groups);
        // The survival function of F with 2 and n degrees of freedom is (1 + 2F/n)^(−n/2).
        double chance = Math.pow(1 + 2 * f / groups, -groups / 2.0);

        assertThat(test.misfitDegrees()).isEqualTo(2);
        assertThat(test.scatterDegrees()).isEqualTo(groups);
        assertThat(test.statistic()).isCloseTo(f, within(1e-9 * f));
        assertThat(test.chance()).isCloseTo(chance, within(1e-10));
    }

    @Test
    void thereIsNoneWithoutRepeats() {
        assertThat(LackOfFit.test(
                        Scatter.RELATIVE,
                        new double[] {1, 2, 3},
                        new double[] {9, 19, 32},
                        new double[] {1, 1, 1},
                        x -> 10 * x,
                        1))
                .isEmpty();
    }

    @Test
    void thereIsNoneWithoutMoreXThanParameters() {
        double[] x = {1, 1, 2, 2};
        double[] y = {9, 11, 19, 21};

        assertThat(LackOfFit.test(Scatter.RELATIVE, x, y, EQUAL, LackOfFitTest::curve, 2))
                .isEmpty();
        assertThat(LackOfFit.test(Scatter.RELATIVE, new double[] {1, 1, 1, 1}, y, EQUAL, LackOfFitTest::curve, 1))
                .isEmpty();
        assertThat(LackOfFit.test(Scatter.RELATIVE, x, y, EQUAL, LackOfFitTest::curve, 1))
                .isPresent();
    }

    @Test
    void repeatsWithoutScatterThatTheCurveMissesRefuseIt() {
        assertThat(LackOfFit.test(
                        Scatter.RELATIVE,
                        new double[] {1, 1, 2, 2},
                        new double[] {10, 10, 20, 20},
                        EQUAL,
                        LackOfFitTest::curve,
                        1))
                .contains(new LackOfFit(Double.POSITIVE_INFINITY, 1, 2, 0));
    }

    @Test
    void aCurveThroughTheMeansIsNeverRefused() {
        double[] x = {1, 1, 2, 2};

        assertThat(LackOfFit.test(Scatter.RELATIVE, x, new double[] {9, 11, 19, 21}, EQUAL, at -> 10 * at, 1))
                .contains(new LackOfFit(0, 1, 2, 1));
        assertThat(LackOfFit.test(Scatter.RELATIVE, x, new double[] {10, 10, 20, 20}, EQUAL, at -> 10 * at, 1))
                .contains(new LackOfFit(0, 1, 2, 1));
    }

    @Test
    void roundingIsNeitherMisfitNorScatter() {
        double[] x = {1, 1, 2, 2};
        double[] y = {10, 10 * (1 + 4e-16), 20, 20};

        assertThat(LackOfFit.test(Scatter.RELATIVE, x, y, EQUAL, at -> 10 * at * (1 - 4e-16), 1))
                .contains(new LackOfFit(0, 1, 2, 1));
        assertThat(LackOfFit.test(Scatter.RELATIVE, x, y, EQUAL, LackOfFitTest::curve, 1))
                .contains(new LackOfFit(Double.POSITIVE_INFINITY, 1, 2, 0));
    }

    @Test
    void refusesWhatIsNotWholeOrOutOfRange() {
        assertRefused(
                "observations must be one or more, with an x, a y and a weight each: 1 x, 2 y, 4 weights",
                () -> LackOfFit.test(Scatter.RELATIVE, new double[] {1}, new double[] {1, 2}, EQUAL, x -> 1, 1));
        assertRefused(
                "y must be greater than 0: -1.0",
                () -> LackOfFit.test(
                        Scatter.RELATIVE, new double[] {1}, new double[] {-1}, new double[] {1}, x -> 1, 1));
        assertRefused(
                "fitted parameters must be 0 or more: -1",
                () -> LackOfFit.test(Scatter.ABSOLUTE, new double[] {1}, new double[] {1}, x -> 1, -1));
        assertRefused(
                "curve at 1.0 must be greater than 0: 0.0",
                () -> LackOfFit.test(Scatter.RELATIVE, new double[] {1, 1}, new double[] {1, 2}, x -> 0, 0));
        assertRefused(
                "curve at 1.0 must be finite: NaN",
                () -> LackOfFit.test(Scatter.ABSOLUTE, new double[] {1, 1}, new double[] {1, 2}, x -> Double.NaN, 0));
        assertRefused(
                "y must be finite: NaN",
                () -> LackOfFit.test(Scatter.ABSOLUTE, new double[] {1, 1}, new double[] {1, Double.NaN}, x -> 1, 0));
    }

    @Test
    void byAbsoluteScatterValuesMayBeOfEitherSign() {
        // Means 0 and −10, the curve at 1 and −9: misfit 2·1 + 2·1 = 4 on 1 degree; scatter 4·1 on 2 degrees.
        assertThat(LackOfFit.test(
                                Scatter.ABSOLUTE,
                                new double[] {1, 1, 2, 2},
                                new double[] {-1, 1, -11, -9},
                                x -> x < 1.5 ? 1 : -9,
                                1)
                        .orElseThrow()
                        .statistic())
                .isCloseTo(2, within(1e-12));
    }

    @Test
    void roundingIsMeasuredAgainstTheSizeOfTheData() {
        double[] x = {1, 1, 2, 2};
        double[] large = {1e9, 1e9 * (1 + 4e-16), 2e9, 2e9};

        assertThat(LackOfFit.test(Scatter.ABSOLUTE, x, large, at -> 1e9 * at * (1 - 4e-16), 1))
                .contains(new LackOfFit(0, 1, 2, 1));
        assertThat(LackOfFit.test(Scatter.ABSOLUTE, x, large, at -> 1.5e9 * at, 1))
                .contains(new LackOfFit(Double.POSITIVE_INFINITY, 1, 2, 0));
    }
}
