package org.gritwright.core.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

/** What two lots of catches made in the same way have in common. */
class SharedErrorsTest {
    private static final CatchAllowances ALL = new CatchAllowances(
            Amounts.of(2, PERCENT),
            Amounts.of(1, PERCENT),
            Optional.of(new Moisture(Amounts.of(5, PERCENT), Amounts.of(1, PERCENT), Moisture.Basis.WET_MASS)),
            Optional.of(Repeatability.assumed(Amounts.of(1, PERCENT))));

    private static final CatchAllowances SCATTER_ONLY = new CatchAllowances(
            Amounts.of(0, PERCENT),
            Amounts.of(0, PERCENT),
            Optional.empty(),
            Optional.of(Repeatability.assumed(Amounts.of(1, PERCENT))));

    private static Scale scale(String id) {
        return Scale.of(id, pounds(5000), pounds(0.5)).withAccuracy(new ScaleAccuracy.Stated(Amounts.of(1, PERCENT)));
    }

    private static CaughtMass on(String scale, double net) {
        return CaughtMass.of(scale(scale), DAY, new Weighing("tarp", pounds(net), pounds(0)));
    }

    /** Catches of 20 revolutions. */
    private static Calibration calibration(CatchAllowances allowances, String scale, double... net) {
        return Calibration.from(
                DoubleStream.of(net)
                        .mapToObj(pounds -> catchAt(AUGER_POINT, on(scale, pounds), pulses(2000)))
                        .toList(),
                RatioEstimator.RATIO_OF_SUMS,
                CatchLimits.COMMON.withAllowances(allowances));
    }

    private static double normalized(CatchAllowances allowances, String scale, String otherScale) {
        return Math.abs(calibration(allowances, scale, 118, 118.5, 119)
                .comparedWith(calibration(allowances, otherScale, 119.5, 120, 120.5))
                .value());
    }

    @Test
    void sharedAreTheScalesOfBothAndAllThatIsAllowedFor() {
        ComponentKey spillage = ErrorSource.SPILLAGE.key();
        ComponentKey transientLoss = ErrorSource.TRANSIENT.key();
        ComponentKey moisture = ErrorSource.MOISTURE.key();

        assertThat(SharedErrors.of(List.of(on("A", 100), on("B", 100)), List.of(on("B", 100), on("C", 100))))
                .containsExactlyInAnyOrder(ErrorSource.spanOf(scale("B")), spillage, transientLoss, moisture);
        assertThat(SharedErrors.of(List.of(on("A", 100)), List.of(on("C", 100))))
                .containsExactlyInAnyOrder(spillage, transientLoss, moisture);
    }

    /**
     * The expanded uncertainty of the mean of three catches in lb, without their scale's span: each scatters by 1 %, is read
     * twice to half a pound, and is counted to 1/√6 pulse of a hundredth revolution.
     */
    private static double expanded(double... net) {
        double squares = DoubleStream.of(net)
                .map(pounds -> Math.pow(0.01 * pounds, 2) + 2 * 0.25 / 12)
                .sum();
        double mean = DoubleStream.of(net).average().orElseThrow();
        return 1.959963985 * Math.sqrt(squares + 3 * Math.pow(mean / 20 * 0.01, 2) / 6) / 3;
    }

    @Test
    void theSameScaleIsInNoDifferenceOfTwoCalibrations() {
        assertThat(normalized(SCATTER_ONLY, "A", "A"))
                .isCloseTo(1.5 / Math.hypot(expanded(118, 118.5, 119), expanded(119.5, 120, 120.5)), within(1e-6));
        assertThat(normalized(SCATTER_ONLY, "A", "B")).isLessThan(normalized(SCATTER_ONLY, "A", "A"));
    }

    @Test
    void whatIsAllowedForInBothIsInNoDifferenceOfTheirs() {
        assertThat(calibration(ALL, "A", 118, 118.5, 119).budget().components())
                .as("it is in the uncertainty of each")
                .extracting(Component::key)
                .containsExactly(
                        ErrorSource.SCALE_ROUNDING.key(),
                        ErrorSource.COUNT.key(),
                        ErrorSource.REPEATABILITY.key(),
                        ErrorSource.spanOf(scale("A")),
                        ErrorSource.SPILLAGE.key(),
                        ErrorSource.TRANSIENT.key(),
                        ErrorSource.MOISTURE.key());
        assertThat(normalized(ALL, "A", "A")).isCloseTo(normalized(SCATTER_ONLY, "A", "A"), within(1e-9));
        assertThat(normalized(ALL, "A", "B")).isCloseTo(normalized(SCATTER_ONLY, "A", "B"), within(1e-9));
    }
}
