package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Curves that are right are refused as often as the level says: 2000 runs each, seeds 0 to 1999. */
class LackOfFitChanceTest {
    private static final int RUNS = 2000;

    /** Four standard deviations of a share. */
    private static double band(double share) {
        return 4 * Math.sqrt(share * (1 - share) / RUNS);
    }

    @ParameterizedTest
    @CsvSource({
        // shape, whether shifted, number of x, repeats, relative scatter
        "LINEAR, false, 2, 2, 0.02",
        "LINEAR, false, 2, 3, 0.04",
        "LINEAR, false, 3, 3, 0.02",
        "LINEAR, false, 4, 2, 0.04",
        "LINEAR, true, 3, 2, 0.02",
        "LINEAR, true, 3, 3, 0.04",
        "LINEAR, true, 4, 3, 0.02",
        "SEGMENT, true, 4, 2, 0.04"
    })
    void aRightCurveIsRefusedAtTheLevelOfTheTest(
            CurveFitShapes shape, boolean isShifted, int places, int repeats, double scatter) {
        double shift = isShifted ? 0.375 : 0;
        int n = places * repeats;
        double[] chances = IntStream.range(0, RUNS)
                .mapToDouble(run -> {
                    SplittableRandom random = new SplittableRandom(run);
                    double[] x = new double[n];
                    double[] y = new double[n];
                    double[] equal = new double[n];
                    for (int i = 0; i < n; i++) {
                        x[i] = 2 + 2 * (i % places);
                        y[i] = 16 * shape.applyAsDouble(x[i] - shift) * (1 + scatter * random.nextGaussian());
                        equal[i] = 1;
                    }
                    CurveFit fit = isShifted
                            ? CurveFit.shifted(shape, 0, CurveFitShapes.HIGHEST, x, y, equal)
                            : CurveFit.proportional(shape, x, y, equal);
                    return LackOfFit.test(Scatter.RELATIVE, x, y, equal, fit::at, fit.parameters())
                            .orElseThrow()
                            .chance();
                })
                .toArray();

        for (double level : new double[] {0.01, 0.05, 0.25, 0.5, 0.9}) {
            double share =
                    IntStream.range(0, RUNS).filter(i -> chances[i] < level).count() / (double) RUNS;
            assertThat(share).as("share below " + level).isCloseTo(level, within(band(level)));
        }
    }
}
