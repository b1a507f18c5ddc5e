package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.augerCatch;

import java.util.List;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
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

    /** Three catches show their scatter; what the scale may be off is taken as known. */
    @Test
    void holdsTheDegreesOfFreedomThatAreFinite() {
        Calibration calibration = calibration(RatioEstimator.RATIO_OF_SUMS);
        BudgetOutcome budget = CalibrationOutcome.of(calibration).budget().orElseThrow();
        Component<?> scatter = calibration.budget().components().stream()
                .filter(row -> row.evaluation() == Component.Evaluation.TYPE_A)
                .findFirst()
                .orElseThrow();

        assertThat(scatter.degreesOfFreedom()).isBetween(2.0, 10.0);
        assertThat(budget.components())
                .filteredOn(row -> row.name().equals(scatter.name()))
                .singleElement()
                .satisfies(row -> assertThat(row.degreesOfFreedom())
                        .contains(Amounts.of(scatter.degreesOfFreedom(), SpreadingUnits.ONE)));
        assertThat(budget.components())
                .filteredOn(row -> row.distribution() == Distribution.RECTANGULAR)
                .isNotEmpty()
                .allSatisfy(row -> assertThat(row.degreesOfFreedom()).isEmpty());
    }
}
