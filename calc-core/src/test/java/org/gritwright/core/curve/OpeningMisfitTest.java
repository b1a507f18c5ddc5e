package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
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

/** Leaving out the worst openings only finds what leaving out each would. */
class OpeningMisfitTest {
    private int found;
    private int withoutAFit;

    /** Openings from 0.7 in to 4.7 in, each with the stated factor on what it should discharge. */
    private static CaughtOpenings openings(Random random, double[] off) {
        return openings(random, off, random.nextInt(4) == 0);
    }

    static CaughtOpenings openings(Random random, double[] off, boolean curved) {
        double deadOpening = random.nextInt(3) == 0 ? 0 : 0.6 * random.nextDouble() - 0.2;
        double scatter = Math.pow(10, -1 - 2.5 * random.nextDouble());
        List<CalibrationCatch> catches = new ArrayList<>();
        for (int i = 0; i < off.length; i++) {
            double inches = 0.7 + 4.0 * i / off.length;
            double right = 1.6 * (inches - deadOpening) * (curved ? Math.sqrt(inches) : 1) * off[i];
            int repeats = 1 + random.nextInt(3);
            for (int k = 0; k < repeats; k++) {
                double pounds = right * Math.max(0.2, 1 + scatter * random.nextGaussian());
                catches.add(at(inches, Math.min(450, Math.max(0.02, pounds))));
            }
        }
        RatioEstimator estimator = random.nextBoolean() ? RatioEstimator.RATIO_OF_SUMS : RatioEstimator.MEAN_OF_RATIOS;
        return CaughtOpenings.of(catches, estimator, CatchAllowances.NONE);
    }

    private void assertFindsTheSame(CaughtOpenings data) {
        ModelFits fits = new ModelFits(data);
        Optional<OpeningMisfit.Candidate> worst = new OpeningMisfit(data, Integer.MAX_VALUE).find(fits);

        assertThat(new OpeningMisfit(data).find(fits)).isEqualTo(worst);
        found += worst.isPresent() ? 1 : 0;
        withoutAFit += fits.ifAny(CurveModel.DEAD_OPENING).isEmpty() ? 1 : 0;
    }

    private static double[] right(int openings) {
        double[] off = new double[openings];
        Arrays.fill(off, 1);
        return off;
    }

    @Test
    void whereNoOpeningIsOff() {
        Random random = new Random(1);
        for (int trial = 0; trial < 40; trial++) {
            assertFindsTheSame(openings(random, right(9 + random.nextInt(30))));
        }
        assertThat(found).isLessThan(30);
    }

    @Test
    void whereOneOpeningIsOff() {
        Random random = new Random(2);
        for (int trial = 0; trial < 60; trial++) {
            double[] off = right(9 + random.nextInt(30));
            off[random.nextInt(off.length)] *= Math.exp((trial % 2 == 0 ? 0.1 : 1) * random.nextGaussian());
            assertFindsTheSame(openings(random, off));
        }
        assertThat(found).isGreaterThan(30);
    }

    @Test
    void whereTwoOpeningsAreOff() {
        Random random = new Random(3);
        for (int trial = 0; trial < 60; trial++) {
            double[] off = right(9 + random.nextInt(30));
            off[random.nextInt(off.length)] *= Math.exp(0.5 * random.nextGaussian());
            off[random.nextInt(off.length)] *= Math.exp((trial % 2 == 0 ? 0.3 : 2) * random.nextGaussian());
            assertFindsTheSame(openings(random, off));
        }
        assertThat(found).isGreaterThan(30);
    }

    /** A slip of a decimal point or two may leave all openings together without a curve. */
    @Test
    void whereADecimalPointSlipped() {
        Random random = new Random(4);
        for (int trial = 0; trial < 60; trial++) {
            double[] off = right(9 + random.nextInt(6));
            off[random.nextInt(off.length)] *= Math.pow(10, 1 + random.nextInt(2));
            assertFindsTheSame(openings(random, off));
        }
        assertThat(found).isGreaterThan(50);
        assertThat(withoutAFit).isGreaterThan(3);
    }
}
