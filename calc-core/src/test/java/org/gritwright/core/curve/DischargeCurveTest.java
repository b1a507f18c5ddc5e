package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.curve.DischargeCurveSamples.DEAD_OPENING_EXAMPLE;
import static org.gritwright.core.curve.DischargeCurveSamples.SIXTEEN_PER_INCH;
import static org.gritwright.core.curve.DischargeCurveSamples.at;
import static org.gritwright.core.curve.DischargeCurveSamples.by;
import static org.gritwright.core.curve.DischargeCurveSamples.byCurve;
import static org.gritwright.core.curve.DischargeCurveSamples.deadOpening;
import static org.gritwright.core.curve.DischargeCurveSamples.density;
import static org.gritwright.core.curve.DischargeCurveSamples.fit;
import static org.gritwright.core.curve.DischargeCurveSamples.millimeters;
import static org.gritwright.core.curve.DischargeCurveSamples.pounds;
import static org.gritwright.core.curve.DischargeCurveSamples.uncertainty;
import static org.gritwright.core.curve.DischargeCurveSamples.withoutSpan;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DischargeCurveTest {
    @Test
    void aDeadOpeningComesOutOfTwoOpenings() {
        DischargeCurve curve = fit(CurveModel.DEAD_OPENING, DEAD_OPENING_EXAMPLE);

        assertThat(density(curve)).isCloseTo(SIXTEEN_PER_INCH, within(1e-10));
        assertThat(deadOpening(curve)).isCloseTo(0.375, within(1e-12));
        assertThat(pounds(curve, 3)).isCloseTo(42.0, within(1e-11));
        assertThat(pounds(curve, 1)).isCloseTo(10.0, within(1e-11));
        assertThat(curve.effectiveBulkDensity().orElseThrow().standardUncertainty())
                .isEmpty();
        assertThat(curve.deadOpening().orElseThrow().standardUncertainty()).isEmpty();
        // Halfway between the two openings: 1 % of each catch, halved, beside little rounding and span.
        assertThat(uncertainty(curve, 3).orElseThrow()).isCloseTo(Math.hypot(0.26, 0.58) / 2, within(0.002));
    }

    @Test
    void aLineThroughZeroFromOneOpeningPredictsFortyFivePercentTooMuch() {
        DischargeCurve curve = fit(CurveModel.PROPORTIONAL, at(4, 58));

        assertThat(pounds(curve, 1)).isCloseTo(14.5, within(1e-12));
        assertThat(curve.deadOpening()).isEmpty();
    }

    @Test
    void uncertaintiesAreThoseOfTheFitInItsUnits() {
        // The same in inches and pounds per inch, on a bare line.
        double[] x = {2, 2, 3, 4, 4};
        double[] y = {26.5, 25.5, 42.4, 57, 58.5};
        CurveFit bare = CurveFit.shifted(h -> h, 0, 40, x, y, new double[] {1, 1, 1, 1, 1});
        DischargeCurve curve =
                fit(CurveModel.DEAD_OPENING, at(2, 26.5), at(2, 25.5), at(3, 42.4), at(4, 57), at(4, 58.5));
        double perInch = SIXTEEN_PER_INCH / 16;

        assertThat(density(curve)).isCloseTo(bare.scale() * perInch, within(1e-8));
        assertThat(deadOpening(curve)).isCloseTo(bare.shift(), within(1e-10));
        assertThat(Amounts.in(
                        curve.effectiveBulkDensity()
                                .orElseThrow()
                                .standardUncertainty()
                                .orElseThrow(),
                        SpreadingUnits.POUND_PER_CUBIC_FOOT))
                .isCloseTo(bare.scaleUncertainty().orElseThrow() * perInch, within(1e-8));
        assertThat(curve.deadOpening()
                        .orElseThrow()
                        .standardUncertainty()
                        .orElseThrow()
                        .getValue()
                        .doubleValue())
                .isCloseTo(bare.shiftUncertainty().orElseThrow(), within(1e-9));
        assertThat(uncertainty(curve, 5).orElseThrow())
                .isCloseTo(bare.uncertaintyAt(5).orElseThrow(), within(1e-8));
        assertThat(curve.deadOpening().orElseThrow().degreesOfFreedom()).hasValue(3);
        assertThat(curve.effectiveBulkDensity().orElseThrow().degreesOfFreedom())
                .hasValue(3);
        assertThat(byCurve(curve.predict(height(5))).degreesOfFreedom()).hasValue(3);
    }

    /** Catches of 5, 10 and 20 revolutions. */
    private static final List<CalibrationCatch> UNEQUAL = List.of(
            catchAt(chainAt(3), caught(211), pulses(500)),
            catchAt(chainAt(3), caught(419), pulses(1000)),
            catchAt(chainAt(3), caught(835), pulses(2000)));

    @ParameterizedTest
    @EnumSource(names = "LINE_WITH_INTERCEPT", mode = EnumSource.Mode.EXCLUDE)
    void throughOneOpeningItIsThatOpeningsCalibration(RatioEstimator estimator) {
        Measured<DischargePerRevolution> calibrated = withoutSpan(
                Calibration.from(UNEQUAL, estimator, CatchLimits.COMMON).budget());
        Measured<DischargePerRevolution> predicted =
                byCurve(DischargeCurve.fit(UNEQUAL, CurveModel.PROPORTIONAL, estimator, CatchLimits.COMMON)
                        .predict(height(3)));

        assertThat(pounds(predicted.value())).isCloseTo(pounds(calibrated.value()), within(1e-12));
        // A curve holds what its catches show; a calibration pools that with what was known before.
        assertThat(predicted.degreesOfFreedom()).hasValue(2);
        assertThat(calibrated.degreesOfFreedom().orElseThrow()).isGreaterThan(2);
    }

    @Test
    void aLineOfCatchesIsNoEstimatorForACurve() {
        assertRefused(
                "estimator of a discharge curve must be ratio of sums or mean of ratios: line with intercept",
                () -> DischargeCurve.fit(
                        UNEQUAL, CurveModel.PROPORTIONAL, RatioEstimator.LINE_WITH_INTERCEPT, CatchLimits.COMMON));
    }

    /** Ratios of 42.2, 41.9 and 41.75 lb/rev. */
    @Test
    void throughOneOpeningTheMeanOfRatiosHasTheScatterThatTheCatchesShow() {
        Calibration calibration = Calibration.from(UNEQUAL, RatioEstimator.MEAN_OF_RATIOS, CatchLimits.COMMON);
        Measured<DischargePerRevolution> predicted = byCurve(
                DischargeCurve.fit(UNEQUAL, CurveModel.PROPORTIONAL, RatioEstimator.MEAN_OF_RATIOS, CatchLimits.COMMON)
                        .predict(height(3)));
        double mean = (42.2 + 41.9 + 41.75) / 3;
        double squares = Math.pow(42.2 - mean, 2) + Math.pow(41.9 - mean, 2) + Math.pow(41.75 - mean, 2);
        double shown = squares / 2 / 3;

        assertThat(pounds(predicted.standardUncertainty().orElseThrow())).isCloseTo(Math.sqrt(shown), within(1e-12));
        // The calibration takes two readings to half a pound and a pulse out of that, and adds 1 % with 2 degrees of
        // freedom.
        double parts = 1 / 25.0 + 1 / 100.0 + 1 / 400.0;
        double rounded = parts * (2 * 0.25 / 12 + mean * mean * 1e-4 / 6) / 9;
        double assumed = 1e-4 * (42.2 * 42.2 + 41.9 * 41.9 + 41.75 * 41.75) / 9;
        assertThat(pounds(calibration
                        .budget()
                        .component(ErrorSource.SCATTER.key())
                        .orElseThrow()
                        .contribution()))
                .isCloseTo(Math.sqrt((shown - rounded + assumed) / 2), within(1e-12));
    }

    @Test
    void longCatchesWeighByTheirRevolutionsOrLikeAllOthers() {
        // 12 lb/rev and inch in 10 revolutions, 15 in 30: by revolutions (12 + 3·15)/4 = 14.25, alike 13.5.
        List<CalibrationCatch> catches = List.of(
                catchAt(chainAt(2), caught(240), pulses(1000)), catchAt(chainAt(3), caught(1350), pulses(3000)));
        DischargeCurve bySums =
                DischargeCurve.fit(catches, CurveModel.PROPORTIONAL, RatioEstimator.RATIO_OF_SUMS, CatchLimits.COMMON);
        DischargeCurve byRatios =
                DischargeCurve.fit(catches, CurveModel.PROPORTIONAL, RatioEstimator.MEAN_OF_RATIOS, CatchLimits.COMMON);

        assertThat(pounds(bySums, 1)).isCloseTo(14.25, within(1e-12));
        assertThat(pounds(byRatios, 1)).isCloseTo(13.5, within(1e-12));
        assertThat(pounds(fit(CurveModel.PROPORTIONAL, catches), 1)).isEqualTo(pounds(bySums, 1));
    }

    @Test
    void aTableGoesThroughTheMeansAndStraightBetweenThem() {
        DischargeCurve curve = fit(CurveModel.TABLE, at(2, 25), at(2, 27), at(4, 58), at(4, 62), at(6, 70));

        assertThat(pounds(curve, 2)).isCloseTo(26, within(1e-12));
        assertThat(pounds(curve, 3)).isCloseTo(43, within(1e-12));
        assertThat(pounds(curve, 4)).isCloseTo(60, within(1e-12));
        assertThat(pounds(curve, 5.5)).isCloseTo(67.5, within(1e-12));
        // Repeats off by 1/26 and 1/30: s² = (2/26² + 2/30²)/2.
        double variance = 1 / 676.0 + 1 / 900.0;
        assertThat(uncertainty(curve, 4).orElseThrow()).isCloseTo(60 * Math.sqrt(variance / 2), within(1e-11));
        assertThat(byCurve(curve.predict(height(4))).degreesOfFreedom()).hasValue(2);
        assertThat(curve.effectiveBulkDensity()).isEmpty();
        assertThat(curve.deadOpening()).isEmpty();
        assertThat(curve.test()).isEmpty();
    }

    @Test
    void beyondItsRowsATableGoesOnInProportionToTheGeometry() {
        DischargeCurve curve = fit(CurveModel.TABLE, at(2, 25), at(2, 27), at(4, 58), at(4, 62));

        assertThat(pounds(curve, 1)).isCloseTo(13, within(1e-12));
        assertThat(pounds(curve, 6)).isCloseTo(90, within(1e-12));
    }

    /** Whether its scatter is shown by repeats or known from experience. */
    @Test
    void beyondItsRowsATableHasNoUncertaintyAndSaysToCatchThere() {
        CatchLimits experienced = CatchLimits.COMMON.withAllowances(new CatchAllowances(
                Amounts.of(0, SpreadingUnits.PERCENT),
                Amounts.of(0, SpreadingUnits.PERCENT),
                Optional.empty(),
                Optional.of(Repeatability.assumed(Amounts.of(1, SpreadingUnits.PERCENT)))));
        List<CalibrationCatch> repeated = List.of(at(2, 25), at(2, 27), at(4, 58), at(4, 62));
        for (List<CalibrationCatch> catches : List.of(repeated, DEAD_OPENING_EXAMPLE)) {
            DischargeCurve curve =
                    DischargeCurve.fit(catches, CurveModel.TABLE, RatioEstimator.RATIO_OF_SUMS, experienced);
            for (double inches : new double[] {1, 6}) {
                DischargePrediction outside = curve.predict(height(inches));
                assertThat(outside.budget()).isEmpty();
                assertThat(outside.dischargePerRevolution().standardUncertainty())
                        .isEmpty();
                assertThat(only(FindingCode.GEOMETRY_ALONE, outside.findings()).sentence())
                        .endsWith("Catch there before relying on it.");
            }
            assertThat(curve.predict(height(3)).budget()).isPresent();
            assertThat(curve.predict(height(4)).budget()).isPresent();
        }
    }

    @Test
    void aTableWithoutRepeatsIsAsUncertainAsItsCatchesAreAssumedToScatter() {
        // At 3 in, halfway from 26 lb at 2 in to 58 lb at 4 in: 1 % of each, halved, beside little rounding and span.
        assertThat(uncertainty(fit(CurveModel.TABLE, DEAD_OPENING_EXAMPLE), 3).orElseThrow())
                .isCloseTo(Math.hypot(0.26, 0.58) / 2, within(0.002));
    }

    @Test
    void resultsAreInTheUnitsOfTheFirstCatchAndOfTheMaterial() {
        CalibrationCatch inKilograms =
                catchAt(chainAt(millimeters(50.8)), caught(Amounts.of(120, SpreadingUnits.KILOGRAM)), pulses(1000));
        Material metric = Material.of("salt", Amounts.of(1.28, SpreadingUnits.KILOGRAM_PER_LITER));
        DischargeCurve inMetric =
                DischargeCurve.fit(by(CHAIN, metric, List.of(inKilograms, at(4, 58))), CurveModel.DEAD_OPENING);
        DischargeCurve customary =
                DischargeCurve.fit(by(CHAIN, metric, List.of(at(4, 58), inKilograms)), CurveModel.DEAD_OPENING);

        assertThat(inMetric.predict(height(3)).dischargePerRevolution().value().getUnit())
                .isEqualTo(SpreadingUnits.KILOGRAM_PER_REVOLUTION);
        assertThat(inMetric.deadOpening().orElseThrow().value().getUnit()).isEqualTo(SpreadingUnits.MILLIMETER);
        assertThat(inMetric.effectiveBulkDensity().orElseThrow().value().getUnit())
                .isEqualTo(SpreadingUnits.KILOGRAM_PER_LITER);
        assertThat(customary
                        .predict(Setting.height(millimeters(76.2)))
                        .dischargePerRevolution()
                        .value()
                        .getUnit())
                .isEqualTo(SpreadingUnits.POUND_PER_REVOLUTION);
        assertThat(customary.deadOpening().orElseThrow().value().getUnit()).isEqualTo(SpreadingUnits.INCH);
        assertThat(customary.settings())
                .hasSize(2)
                .allSatisfy(
                        s -> assertThat(s.quantity().orElseThrow().getUnit()).isEqualTo(SpreadingUnits.INCH));
        assertThat(pounds(inMetric, 3)).isCloseTo(pounds(customary, 3), within(1e-11));
    }

    @Test
    void oneOpeningReadInTwoUnitsIsOneOpening() {
        DischargeCurve mixed = fit(
                CurveModel.DEAD_OPENING,
                at(2, 26.5),
                at(millimeters(50.8), 25.5),
                at(Amounts.of(0.1016, SpreadingUnits.METER), 57),
                at(4, 59));
        DischargeCurve plain = fit(CurveModel.DEAD_OPENING, at(2, 26.5), at(2, 25.5), at(4, 57), at(4, 59));

        assertThat(mixed.settings()).hasSize(2);
        assertThat(mixed.settings().get(0)).isEqualTo(height(2));
        assertThat(deadOpening(mixed)).isCloseTo(deadOpening(plain), within(1e-12));
        assertThat(density(mixed)).isCloseTo(density(plain), within(1e-11));
        assertThat(mixed.findings()).hasSameSizeAs(plain.findings());
    }

    @Test
    void openingsAreInRisingOrder() {
        assertThat(fit(CurveModel.TABLE, at(4, 58), at(2, 26), at(3, 42), at(2, 26.5))
                        .settings())
                .isEqualTo(List.of(height(2), height(3), height(4)));
    }

    @Test
    void keepsWhatItWasMadeFrom() {
        DischargeCurve curve = fit(CurveModel.DEAD_OPENING, DEAD_OPENING_EXAMPLE);

        assertThat(curve.metering()).isEqualTo(CHAIN);
        assertThat(curve.material()).isEqualTo(SALT);
        assertThat(curve.catches()).isEqualTo(DEAD_OPENING_EXAMPLE);
        assertThat(curve.model()).isEqualTo(CurveModel.DEAD_OPENING);
    }

    @Test
    void modelsSayThemselvesInWords() {
        assertThat(CurveModel.PROPORTIONAL.term().words()).isEqualTo("k·g(h)");
        assertThat(CurveModel.DEAD_OPENING.term().words()).isEqualTo("k·g(h − h0)");
        assertThat(CurveModel.TABLE.term().words()).isEqualTo("a rising table");
        assertThat(CurveModel.PROPORTIONAL.openingsToTest()).isEqualTo(2);
        assertThat(CurveModel.DEAD_OPENING.openingsToTest()).isEqualTo(3);
        assertThat(CurveModel.TABLE.openingsToTest()).isZero();
    }

    /** A value: what it was made from decides. */
    @Test
    void curvesOfEqualCatchesFittedAlikeAreEqual() {
        DischargeCurve one = DischargeCurve.fit(UNEQUAL, CurveModel.PROPORTIONAL);

        assertThat(DischargeCurve.fit(
                        List.copyOf(UNEQUAL),
                        CurveModel.PROPORTIONAL,
                        RatioEstimator.RATIO_OF_SUMS,
                        CatchLimits.COMMON))
                .isEqualTo(one)
                .hasSameHashCodeAs(one);
        for (DischargeCurve other : List.of(
                DischargeCurve.fit(UNEQUAL.subList(0, 2), CurveModel.PROPORTIONAL),
                DischargeCurve.fit(UNEQUAL, CurveModel.TABLE),
                DischargeCurve.fit(UNEQUAL, CurveModel.PROPORTIONAL, RatioEstimator.MEAN_OF_RATIOS, CatchLimits.COMMON),
                DischargeCurve.fit(
                        UNEQUAL,
                        CurveModel.PROPORTIONAL,
                        RatioEstimator.RATIO_OF_SUMS,
                        CatchLimits.COMMON.withAllowances(new CatchAllowances(
                                CatchAllowances.NONE.greatestSpillage(),
                                CatchAllowances.NONE.greatestTransient(),
                                Optional.empty(),
                                Optional.of(Repeatability.COMMON)))))) {
            assertThat(other).isNotEqualTo(one).doesNotHaveSameHashCodeAs(one);
        }
        assertThat(one).isNotEqualTo(UNEQUAL);
    }

    @Test
    void aModelThatATestChoseMakesAnotherCurveThanTheSameModelStated() {
        CalibrationCatch[] catches = {at(2, 26.5), at(2, 25.5), at(3, 42.4), at(4, 57), at(4, 58.5)};
        DischargeCurve chosen = DischargeCurve.chosenByTest(List.of(catches), CurveModel.PROPORTIONAL);

        assertThat(DischargeCurve.fit(List.of(catches), chosen.model())).isNotEqualTo(chosen);
        assertThat(DischargeCurve.chosenByTest(List.of(catches), CurveModel.TABLE))
                .isEqualTo(chosen);
    }
}
