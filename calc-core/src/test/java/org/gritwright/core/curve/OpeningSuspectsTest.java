package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.curve.DischargeCurveSamples.at;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.statistics.RatioEstimator;
import org.junit.jupiter.api.Test;

/**
 * Of openings that lie about a line, the one that is suspected first is already the one that the others contradict most. On
 * made-up catches with stated seeds.
 */
class OpeningSuspectsTest {
    private static final double KILOGRAMS = 0.45359237;
    private int byTheirCurve;
    private int withoutACurve;

    private void assertTheFirstIsTheWorst(Random random, double factor) {
        double[] off = new double[6 + random.nextInt(6)];
        Arrays.fill(off, 1);
        off[random.nextInt(off.length)] *= factor;
        assertTheFirstIsTheWorst(OpeningMisfitTest.openings(random, off, false));
    }

    private void assertTheFirstIsTheWorst(CaughtOpenings data) {
        ModelFits fits = new ModelFits(data);
        Optional<OpeningMisfit.Candidate> worst = new OpeningMisfit(data, Integer.MAX_VALUE).find(fits);
        if (worst.isPresent()) {
            assertThat(new OpeningMisfit(data, 1).find(fits)).isEqualTo(worst);
            byTheirCurve += fits.ifAny(CurveModel.DEAD_OPENING).isPresent() ? 1 : 0;
            withoutACurve += fits.ifAny(CurveModel.DEAD_OPENING).isPresent() ? 0 : 1;
        }
    }

    @Test
    void byTheCurveThroughAll() {
        Random random = new Random(1);
        for (int trial = 0; trial < 60; trial++) {
            assertTheFirstIsTheWorst(random, Math.exp(0.3 * random.nextGaussian()));
        }
        assertThat(byTheirCurve).isGreaterThan(40);
    }

    /** One catch or nine, which scatter by 0.3 % or 4 %: what an opening scatters by itself, and how many judge it, counts. */
    private static CaughtOpenings uneven(Random random) {
        int openings = 6 + random.nextInt(4);
        int wrong = random.nextInt(openings);
        List<CalibrationCatch> catches = new ArrayList<>();
        for (int i = 0; i < openings; i++) {
            double inches = 1 + i;
            int repeats = random.nextBoolean() ? 1 : 9;
            double scatter = random.nextBoolean() ? 0.003 : 0.04;
            double off = i == wrong ? 1 + 0.06 * random.nextGaussian() : 1;
            for (int k = 0; k < repeats; k++) {
                catches.add(at(inches, 10 * (inches - 0.2) * off * (1 + scatter * random.nextGaussian())));
            }
        }
        return CaughtOpenings.of(catches, RatioEstimator.RATIO_OF_SUMS, CatchAllowances.NONE);
    }

    @Test
    void whereCatchesAreUnevenToo() {
        Random random = new Random(1);
        for (int trial = 0; trial < 160; trial++) {
            assertTheFirstIsTheWorst(uneven(random));
        }
        assertThat(byTheirCurve).isGreaterThan(60);
    }

    /** All of them may give none where a decimal point slipped. */
    @Test
    void byTheDischargePerSweptVolumeWhereAllOfThemGiveNoCurve() {
        Random random = new Random(2);
        for (int trial = 0; trial < 60; trial++) {
            assertTheFirstIsTheWorst(random, Math.pow(10, (1 + random.nextInt(2)) * (random.nextBoolean() ? 1 : -1)));
        }
        assertThat(withoutACurve).isGreaterThan(5);
    }

    private static Optional<OpeningMisfit.Candidate> first(CaughtOpenings data) {
        return new OpeningMisfit(data, 1).find(new ModelFits(data));
    }

    private static CaughtOpenings of(CalibrationCatch... catches) {
        return CaughtOpenings.of(List.of(catches), RatioEstimator.RATIO_OF_SUMS, CatchAllowances.NONE);
    }

    /** Three others of one catch each have one degree of freedom. */
    @Test
    void threeOthersAreEnough() {
        assertThat(first(of(at(2, 32), at(4, 64), at(6, 100), at(8, 128))))
                .get()
                .satisfies(worst -> assertThat(worst.opening().mean()).isCloseTo(100 * KILOGRAMS, within(1e-9)));
    }

    @Test
    void aDecimalPointThatSlippedToTheLeftAtTheWidestLeavesNoCurve() {
        CaughtOpenings data = of(at(2, 32), at(3, 48.1), at(4, 64), at(6, 96.1), at(8, 12.8));

        assertThat(new ModelFits(data).ifAny(CurveModel.DEAD_OPENING)).isEmpty();
        assertThat(first(data))
                .get()
                .satisfies(worst -> assertThat(worst.opening().mean()).isCloseTo(12.8 * KILOGRAMS, within(1e-9)));
    }
}
