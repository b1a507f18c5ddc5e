package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.curve.DischargeCurveSamples.at;
import static org.gritwright.core.curve.DischargeCurveSamples.fit;
import static org.gritwright.core.curve.DischargeCurveSamples.pounds;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.SimulatedDay;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Conditions;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** No prediction is surer than scale and count. By hand: catches of 10 revolutions, half-pound readings. */
class DischargeCurveFloorTest {
    private static final double TWO_READINGS = Math.sqrt(2) * 0.5 / Math.sqrt(12);
    private static final double COUNT = 0.01 / Math.sqrt(6) / 10;

    /** Of a catch of so many pounds a revolution, relative. */
    private static double resolution(double poundsPerRevolution) {
        return Math.hypot(TWO_READINGS / (10 * poundsPerRevolution), COUNT);
    }

    private static Budget<DischargePerRevolution> budget(DischargeCurve curve, double inches) {
        return curve.predict(height(inches)).budget().orElseThrow();
    }

    private static double contribution(Budget<DischargePerRevolution> budget, String name) {
        return budget.components().stream()
                .filter(c -> c.name().equals(name))
                .mapToDouble(c -> pounds(c.contribution()))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " of\n" + budget));
    }

    private static List<String> names(Budget<DischargePerRevolution> budget) {
        return budget.components().stream().map(Component::name).toList();
    }

    private static DischargeCurve assumingOnePercent(CurveModel model, CalibrationCatch... catches) {
        return DischargeCurve.fit(List.of(catches), model, RatioEstimator.RATIO_OF_SUMS, SimulatedDay.limits(0, 0.01));
    }

    @ParameterizedTest
    @EnumSource(names = {"PROPORTIONAL", "TABLE"})
    void equalCatchesAtOneOpeningAreRoundedAsTheirCalibrationIs(CurveModel model) {
        List<CalibrationCatch> equal = List.of(at(4, 64), at(4, 64), at(4, 64));
        Budget<DischargePerRevolution> budget = budget(fit(model, equal), 4);
        Budget<DischargePerRevolution> calibration = Calibration.from(equal).budget();

        assertThat(names(budget)).containsExactly("resolution of scale and count", "span of scale S-1");
        assertThat(contribution(budget, "resolution of scale and count"))
                .isCloseTo(64 * resolution(64) / Math.sqrt(3), within(1e-6));
        // Nothing is shown with 2 degrees of freedom, and the calibration assumes 1 % with 2 more.
        double scatter = 0.64 / Math.sqrt(3) / Math.sqrt(2);
        assertThat(Math.hypot(pounds(budget.result().standardUncertainty().orElseThrow()), scatter))
                .isCloseTo(pounds(calibration.result().standardUncertainty().orElseThrow()), within(1e-6));
        assertThat(budget.result().degreesOfFreedom()).hasValue(Double.POSITIVE_INFINITY);
    }

    @Test
    void aScatterAboveTheFloorIsTakenAsItIs() {
        Budget<DischargePerRevolution> budget =
                budget(fit(CurveModel.PROPORTIONAL, at(4, 63), at(4, 64), at(4, 65)), 4);

        assertThat(names(budget)).containsExactly("curve through the catches", "span of scale S-1");
        assertThat(contribution(budget, "curve through the catches")).isCloseTo(1 / Math.sqrt(3), within(1e-9));
        assertThat(budget.components().get(0).degreesOfFreedom()).isEqualTo(2);
    }

    /** The rounding stands for two catches that agree by chance up to 1.96 ÷ 12.71 of it, by the factors of Student's t for 95 %. */
    @Test
    void ofTheRoundingAndTheScatterOfTwoCatchesTheOneWithTheWiderIntervalIsTaken() {
        double rounding = 64 * resolution(64) / Math.sqrt(2);
        double alike = 1.959964 / 12.706205 * rounding;

        for (double scatter : new double[] {0.05, 0.1, 0.15}) {
            assertThat(names(ofTwo(scatter * rounding)))
                    .as("scatter of %s of the rounding", scatter)
                    .containsExactly("resolution of scale and count", "span of scale S-1");
        }
        for (double scatter : new double[] {1.001 * alike / rounding, 0.2, 0.5, 1}) {
            assertThat(names(ofTwo(scatter * rounding)))
                    .as("scatter of %s of the rounding", scatter)
                    .containsExactly("curve through the catches", "span of scale S-1");
        }
    }

    /** Two catches whose mean is so uncertain by their scatter, in lb/rev. */
    private static Budget<DischargePerRevolution> ofTwo(double uncertainty) {
        return budget(fit(CurveModel.PROPORTIONAL, at(4, 64 - uncertainty), at(4, 64 + uncertainty)), 4);
    }

    @ParameterizedTest
    @EnumSource(names = {"PROPORTIONAL", "TABLE"})
    void oneCatchHasABudgetWhereItsScatterIsAllowedFor(CurveModel model) {
        Budget<DischargePerRevolution> budget = budget(assumingOnePercent(model, at(4, 64)), 4);

        assertThat(names(budget))
                .containsExactly(
                        "resolution of scale and count", "scatter of catches, from experience", "span of scale S-1");
        assertThat(contribution(budget, "resolution of scale and count")).isCloseTo(64 * resolution(64), within(1e-6));
        assertThat(contribution(budget, "scatter of catches, from experience")).isCloseTo(0.64, within(1e-6));
    }

    @Test
    void itsBudgetHoldsTheGatesReadingToo() {
        DischargeCurve curve = assumingOnePercent(CurveModel.PROPORTIONAL, at(4, 64));
        Budget<DischargePerRevolution> read =
                curve.predict(height(4), inches(0.05)).budget().orElseThrow();
        double without = pounds(budget(curve, 4).result().standardUncertainty().orElseThrow());

        // 16 lb/rev an inch; a half-width of 0.05 in is 0.05 ÷ √3.
        assertThat(pounds(read.result().standardUncertainty().orElseThrow()))
                .isCloseTo(Math.hypot(without, 16 * 0.05 / Math.sqrt(3)), within(1e-6));
    }

    @ParameterizedTest
    @EnumSource(names = {"PROPORTIONAL", "TABLE"})
    void oneCatchIsAssumedToScatterWhereNobodyKnows(CurveModel model) {
        Budget<DischargePerRevolution> budget =
                fit(model, at(4, 64)).predict(height(4)).budget().orElseThrow();

        // 1 % of 64 lb/rev, known with 2 degrees of freedom.
        Component<DischargePerRevolution> assumed =
                budget.component(ErrorSource.ASSUMED_SCATTER.key()).orElseThrow();
        assertThat(pounds(assumed.contribution())).isCloseTo(0.64, within(1e-12));
        assertThat(assumed.degreesOfFreedom()).isEqualTo(2);
        assertThat(fit(model, at(4, 64))
                        .predict(height(4))
                        .dischargePerRevolution()
                        .standardUncertainty())
                .contains(budget.result().standardUncertainty().orElseThrow());
    }

    /** The line through 32 lb at 2 in and 64 lb at 4 in is, at 6 in, 2·64 − 32: each catch weighs by the line. */
    @Test
    void beyondTheCatchesTheLineMakesMoreOfThem() {
        DischargeCurve curve = assumingOnePercent(CurveModel.DEAD_OPENING, at(2, 32), at(4, 64));

        assertThat(contribution(budget(curve, 3), "scatter of catches, from experience"))
                .isCloseTo(Math.hypot(0.16, 0.32), within(1e-4));
        assertThat(contribution(budget(curve, 6), "scatter of catches, from experience"))
                .isCloseTo(Math.hypot(1.28, 0.32), within(1e-4));
        assertThat(contribution(budget(curve, 6), "resolution of scale and count"))
                .isCloseTo(Math.hypot(2 * 64 * resolution(64), 32 * resolution(32)), within(1e-4));
    }

    @Test
    void theMoistureOfACatchReplacesTheOneAllowedFor() {
        Moisture allowed = new Moisture(percent(5), percent(1), Moisture.Basis.WET_MASS);
        CatchLimits limits = CatchLimits.COMMON.withAllowances(new CatchAllowances(
                percent(0), percent(0), Optional.of(allowed), Optional.of(Repeatability.assumed(percent(1)))));
        Conditions wet = Conditions.NONE.withMoisture(percent(20), Moisture.Basis.WET_MASS);
        CalibrationCatch one = CalibrationCatch.of(at(4, 58).observation().under(wet));

        Component<DischargePerRevolution> moisture = DischargeCurve.fit(
                        List.of(one), CurveModel.PROPORTIONAL, RatioEstimator.RATIO_OF_SUMS, limits)
                .predict(height(2))
                .budget()
                .orElseThrow()
                .component(ErrorSource.MOISTURE.key())
                .orElseThrow();

        assertThat(DischargeCurveSamples.pounds(moisture.contribution()))
                .isCloseTo(29 * 0.01 / 0.80 / Math.sqrt(3), within(1e-12));
    }

    private static Quantity<Dimensionless> percent(double percent) {
        return Amounts.of(percent, SpreadingUnits.PERCENT);
    }

    /** Half of 2 % is taken as lost: 0.99 of what was discharged was caught. */
    @ParameterizedTest
    @EnumSource
    void spillageMovesTheCurve(CurveModel model) {
        List<CalibrationCatch> catches = List.of(at(2, 32), at(4, 64));
        DischargeCurve curve =
                DischargeCurve.fit(catches, model, RatioEstimator.RATIO_OF_SUMS, SimulatedDay.limits(0.02, 0.01));

        assertThat(DischargeCurveSamples.pounds(curve, 3)).isCloseTo(48 / 0.99, within(1e-6));
    }
}
