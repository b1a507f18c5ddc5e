package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.augerCatch;

import java.util.List;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Measured;
import org.junit.jupiter.api.Test;

class CalibrationOutcomeTest {
    private static Calibration calibration(RatioEstimator estimator) {
        return Calibration.from(
                List.of(augerCatch(57.1, 1000), augerCatch(116.8, 2000), augerCatch(177.1, 3000)),
                estimator,
                CatchLimits.COMMON);
    }

    @Test
    void holdsWhatALineSaysOfAStart() {
        Calibration calibration = calibration(RatioEstimator.LINE_WITH_INTERCEPT);
        CalibrationOutcome outcome = CalibrationOutcome.of(calibration);

        assertThat(outcome.estimator()).isEqualTo(RatioEstimator.LINE_WITH_INTERCEPT);
        assertThat(outcome.massPerStart())
                .isPresent()
                .isEqualTo(calibration.massPerStart().map(Measured::value));
        assertThat(outcome.massPerStartUncertainty())
                .isPresent()
                .isEqualTo(calibration.massPerStart().flatMap(Measured::standardUncertainty));
    }

    @Test
    void holdsNothingOfAStartByARatio() {
        CalibrationOutcome outcome = CalibrationOutcome.of(calibration(RatioEstimator.RATIO_OF_SUMS));

        assertThat(outcome.massPerStart()).isEmpty();
        assertThat(outcome.massPerStartUncertainty()).isEmpty();
    }
}
