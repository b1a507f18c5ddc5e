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
import org.gritwright.core.statistics.RatioEstimator;
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
            Optional.empty());

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

    /** 118.5 and 120 lb in 20 revolutions, each with s = 0.5 lb of three catches, t = 4.3027 for two degrees of freedom. */
    @Test
    void theSameScaleIsInNoDifferenceOfTwoCalibrations() {
        double expanded = 4.302652730 * 0.5 / Math.sqrt(3);

        assertThat(normalized(CatchAllowances.NONE, "A", "A")).isCloseTo(1.5 / (expanded * Math.sqrt(2)), within(1e-6));
        assertThat(normalized(CatchAllowances.NONE, "A", "B")).isLessThan(normalized(CatchAllowances.NONE, "A", "A"));
    }

    @Test
    void whatIsAllowedForInBothIsInNoDifferenceOfTheirs() {
        assertThat(calibration(ALL, "A", 118, 118.5, 119).budget().components())
                .as("it is in the uncertainty of each")
                .hasSize(5);
        assertThat(normalized(ALL, "A", "A")).isCloseTo(normalized(CatchAllowances.NONE, "A", "A"), within(1e-9));
        assertThat(normalized(ALL, "A", "B")).isCloseTo(normalized(CatchAllowances.NONE, "A", "B"), within(1e-9));
    }
}
