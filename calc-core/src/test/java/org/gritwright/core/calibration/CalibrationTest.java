package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.augerPoint;
import static org.gritwright.core.Samples.butForUnknown;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.chainAt;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.goodAugerCatches;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;

import java.util.List;
import javax.measure.quantity.Mass;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;

class CalibrationTest {
    private static final CalibrationCatch IN_KILOGRAMS =
            catchAt(AUGER_POINT, caught(Amounts.of(54, SpreadingUnits.KILOGRAM)), pulses(2000));

    /** The variance in lb² of two readings, each rounded to half a pound. */
    private static final double ROUNDED = 2 * 0.25 / 12;

    /** The variance in rev² of a count to a pulse of 100 a revolution either way. */
    private static final double COUNTED = 1e-4 / 6;

    @Test
    void isTotalMassOverTotalRevolutionsByDefault() {
        Calibration calibration =
                Calibration.from(List.of(augerCatch(31, 500), augerCatch(60.5, 1000), augerCatch(122, 2000)));

        assertThat(calibration.estimator()).isEqualTo(RatioEstimator.RATIO_OF_SUMS);
        assertThat(poundsPerRevolution(calibration)).isCloseTo(6.1, within(1e-14));
    }

    @Test
    void mayBeTheMeanOfTheRatios() {
        Calibration calibration = Calibration.from(
                List.of(augerCatch(31, 500), augerCatch(60.5, 1000), augerCatch(122, 2000)),
                RatioEstimator.MEAN_OF_RATIOS,
                CatchLimits.COMMON);

        assertThat(calibration.estimator()).isEqualTo(RatioEstimator.MEAN_OF_RATIOS);
        assertThat(poundsPerRevolution(calibration)).isCloseTo((6.2 + 6.05 + 6.1) / 3, within(1e-14));
    }

    private static Calibration byLine(CalibrationCatch... catches) {
        return Calibration.from(List.of(catches), RatioEstimator.LINE_WITH_INTERCEPT, CatchLimits.COMMON);
    }

    @Test
    void aLineTakesWhatAStartLosesOffTheMassPerRevolution() {
        // 6 lb/rev less 3 lb a start, but for 0.1, −0.2, 0.1 lb that leave line and intercept: s² = 0.06, Sxx 200, mean
        // 20.
        Calibration calibration = byLine(augerCatch(57.1, 1000), augerCatch(116.8, 2000), augerCatch(177.1, 3000));

        assertThat(poundsPerRevolution(calibration)).isCloseTo(6, within(1e-13));
        // What is shown without the rounding, with 1 degree of freedom, and 1 % of the outer catches' 10/200 with 2.
        Component<DischargePerRevolution> scatter =
                calibration.budget().component(ErrorSource.SCATTER.key()).orElseThrow();
        double shown = (0.06 - ROUNDED - COUNTED * 6 * 6) / 200;
        double assumed = 1e-4 * (57.1 * 57.1 + 177.1 * 177.1) / 400;
        assertThat(scatter.degreesOfFreedom()).isEqualTo(3);
        assertThat(scatter.contribution().getValue().doubleValue())
                .isCloseTo(Math.sqrt((shown + 2 * assumed) / 3), within(1e-12));
        Measured<Mass> perStart = calibration.massPerStart().orElseThrow();
        assertThat(perStart.value().getUnit()).isEqualTo(SpreadingUnits.POUND);
        assertThat(perStart.value().getValue().doubleValue()).isCloseTo(-3, within(1e-11));
        assertThat(perStart.standardUncertainty().orElseThrow().getUnit()).isEqualTo(SpreadingUnits.POUND);
        assertThat(perStart.standardUncertainty().orElseThrow().getValue().doubleValue())
                .isCloseTo(Math.sqrt(0.06 * (1 / 3.0 + 400 / 200.0)), within(1e-11));
        assertThat(perStart.degreesOfFreedom()).hasValue(1);
        // The ratios 5.71, 5.84, 5.90 rise with the length; without the 3 lb they scatter by 0.01, −0.01, 0.1/30.
        assertThat(calibration.sampleDeviation().orElseThrow().getValue().doubleValue())
                .isCloseTo(Math.sqrt(2e-4 + 0.01 / 900), within(1e-12));
        assertThat(codes(calibration.findings()))
                .as("one degree of freedom tells little")
                .containsExactly(FindingCode.UNCERTAINTY_ASSUMED);
    }

    @Test
    void aLineThroughTwoCatchesIsAsUncertainAsScaleAndCount() {
        Calibration calibration = byLine(augerCatch(57, 1000), augerCatch(117, 2000));

        assertThat(poundsPerRevolution(calibration)).isCloseTo(6, within(1e-13));
        // Two readings a catch, rounded to 0.5 lb, and 1/√6 pulse of 0.06 lb, and 1 % of each catch, over 10
        // revolutions;
        // the span in proportion.
        double ofCatch = Math.sqrt(ROUNDED + COUNTED * 6 * 6);
        double scatter = 0.01 * Math.hypot(57, 117);
        assertThat(Amounts.in(
                        calibration
                                .dischargePerRevolution()
                                .standardUncertainty()
                                .orElseThrow(),
                        SpreadingUnits.POUND_PER_REVOLUTION))
                .isCloseTo(
                        Math.hypot(Math.hypot(ofCatch * Math.sqrt(2), scatter) / 10, 6 * 0.001 / Math.sqrt(3)),
                        within(1e-12));
        assertThat(calibration.massPerStart().orElseThrow().value().getValue().doubleValue())
                .isCloseTo(-3, within(1e-11));
        // The line's value at no revolutions is 2·57 − 117: the catches weigh 1/2 − 15·(∓1/10), which is 2 and −1.
        assertThat(Amounts.in(
                        calibration
                                .massPerStart()
                                .orElseThrow()
                                .standardUncertainty()
                                .orElseThrow(),
                        SpreadingUnits.POUND))
                .isCloseTo(ofCatch * Math.sqrt(2 * 2 + 1), within(1e-12));
        assertThat(calibration.massPerStart().orElseThrow().degreesOfFreedom()).hasValue(Double.POSITIVE_INFINITY);
        assertThat(calibration.sampleDeviation()).isEmpty();
        assertThat(butForUnknown(calibration.findings())).isEmpty();
    }

    @Test
    void aLineNeedsCatchesOfDifferentLength() {
        assertRefused(
                "denominators of a line must be two or more, the largest at least 1.5 times the smallest: 20.0 to 20.0",
                () -> byLine(augerCatch(118.5, 2000), augerCatch(119, 2000)));
    }

    @Test
    void onlyALineTellsWhatAStartLoses() {
        assertThat(Calibration.from(goodAugerCatches()).massPerStart()).isEmpty();
    }

    @Test
    void hasUncertaintyDeviationAndDegreesOfFreedomFromItsCatches() {
        Calibration calibration = Calibration.from(goodAugerCatches());

        // R = 355.5/60 = 5.925; residuals 0, 0.5, −0.5 lb; u² = 3/2 · 0.5/60²; ratios 5.925, 5.95, 5.9. Without the
        // rounding
        // that is pooled with 1 %, each with 2 degrees of freedom.
        double rounded = 3 * (ROUNDED + COUNTED * 5.925 * 5.925);
        double assumed = 1e-4 * (118.5 * 118.5 + 119 * 119 + 118 * 118);
        double scatter = (0.75 - rounded + assumed) / 2;
        double span = 5.925 * 0.001 / Math.sqrt(3);
        double variance = (scatter + rounded) / 3600 + span * span;
        Measured<DischargePerRevolution> found = calibration.dischargePerRevolution();
        assertThat(found.degreesOfFreedom().orElseThrow())
                .isCloseTo(4 * Math.pow(variance / (scatter / 3600), 2), within(1e-9));
        assertThat(found.standardUncertainty().orElseThrow())
                .satisfies(u -> assertThat(u.getUnit()).isEqualTo(SpreadingUnits.POUND_PER_REVOLUTION))
                .satisfies(u -> assertThat(u.getValue().doubleValue()).isCloseTo(Math.sqrt(variance), within(1e-14)));
        assertThat(calibration.sampleDeviation().orElseThrow().getValue().doubleValue())
                .isCloseTo(0.025, within(1e-14));
    }

    @Test
    void ofOneCatchHasNoDeviation() {
        Calibration calibration = Calibration.from(List.of(augerCatch(118.5, 2000)));

        assertThat(calibration.sampleDeviation()).isEmpty();
        assertThat(calibration.relativeScatter()).isEmpty();
    }

    @Test
    void speaksTheUnitsOfTheFirstWeighing() {
        assertThat(Calibration.from(List.of(IN_KILOGRAMS, augerCatch(119, 2000)))
                        .dischargePerRevolution()
                        .value()
                        .getUnit())
                .isEqualTo(SpreadingUnits.KILOGRAM_PER_REVOLUTION);
        assertThat(Calibration.from(List.of(augerCatch(119, 2000), IN_KILOGRAMS))
                        .dischargePerRevolution()
                        .value()
                        .getUnit())
                .isEqualTo(SpreadingUnits.POUND_PER_REVOLUTION);
    }

    @Test
    void tellsTheApparentFill() {
        // 5.925 lb/rev of 6.98132 lb/rev at a fill of 1
        assertThat(Calibration.from(goodAugerCatches()).apparentFill().value()).isCloseTo(0.848694, within(5e-7));
    }

    @Test
    void keepsWhatItWasMadeFrom() {
        List<CalibrationCatch> catches = List.of(catchAt(chainAt(4), caught(1252), pulses(2000)));
        Calibration calibration = Calibration.from(catches);

        assertThat(calibration.point()).isEqualTo(chainAt(4));
        assertThat(calibration.point().metering()).isEqualTo(CHAIN);
        assertThat(calibration.point().material()).isEqualTo(SALT);
        assertThat(calibration.point().setting()).isEqualTo(height(4));
        assertThat(calibration.catches()).isEqualTo(catches);
    }

    @Test
    void worksWithoutASensor() {
        Calibration calibration = Calibration.from(
                List.of(catchAt(augerPoint(NoSensor.onDriveShaft()), caught(118.5), revolutionsByEye(20))));

        assertThat(poundsPerRevolution(calibration)).isCloseTo(5.925, within(1e-14));
    }

    @Test
    void goesIntoADisplayRoundedToItsStep() {
        Calibration calibration = Calibration.from(goodAugerCatches());
        CalibrationInForce entered = calibration.entered(Amounts.of(0.1, SpreadingUnits.POUND_PER_REVOLUTION));

        assertThat(entered.factor()).isEqualTo(CalibrationFactor.parse("5.9 lb/rev"));
        assertThat(entered.point()).isEqualTo(AUGER_POINT);
        assertThat(entered.since()).isEmpty();
        assertThat(entered.slot()).isEmpty();
        assertThat(calibration
                        .entered(Amounts.of(0.1, SpreadingUnits.PULSE_PER_POUND))
                        .factor())
                .isEqualTo(CalibrationFactor.parse("16.9 pulse/lb"));
    }

    @Test
    void settingsAreTheSameInAnyUnitAndSpelledAsInTheFirstCatch() {
        Calibration calibration = Calibration.from(List.of(
                catchAt(chainAt(4), caught(1252), pulses(2000)),
                catchAt(chainAt(Amounts.of(101.6, SpreadingUnits.MILLIMETER)), caught(1250), pulses(2000))));

        assertThat(calibration.catches()).hasSize(2);
        assertThat(calibration.point().setting()).isEqualTo(height(4));
    }

    private static double poundsPerRevolution(Calibration calibration) {
        return Amounts.in(calibration.dischargePerRevolution().value(), SpreadingUnits.POUND_PER_REVOLUTION);
    }

    @Test
    void isEqualWhenCatchesEstimatorAndLimitsAre() {
        List<CalibrationCatch> catches = goodAugerCatches();
        Calibration one = Calibration.from(catches, RatioEstimator.RATIO_OF_SUMS, CatchLimits.COMMON);
        CatchLimits others = CatchLimits.COMMON.withFill(new FillLimits(0.1, 0.2, 1.1, 1.2));

        assertThat(Calibration.from(goodAugerCatches(), RatioEstimator.RATIO_OF_SUMS, CatchLimits.COMMON))
                .isEqualTo(one)
                .hasSameHashCodeAs(one);
        for (Calibration other : List.of(
                Calibration.from(catches.subList(0, 2), RatioEstimator.RATIO_OF_SUMS, CatchLimits.COMMON),
                Calibration.from(catches, RatioEstimator.MEAN_OF_RATIOS, CatchLimits.COMMON),
                Calibration.from(catches, RatioEstimator.RATIO_OF_SUMS, others))) {
            assertThat(other).isNotEqualTo(one).doesNotHaveSameHashCodeAs(one);
        }
        assertThat(one).isNotEqualTo(catches);
    }

    /** 5 and 6.5 lb/rev can't both be. */
    @Test
    void isDoubtedWhereAFindingDoubtsItsCatches() {
        assertThat(Calibration.from(goodAugerCatches()).isDoubted()).isFalse();
        assertThat(Calibration.from(List.of(augerCatch(100, 2000), augerCatch(130, 2000)))
                        .isDoubted())
                .isTrue();
    }

    @Test
    void namesItsScalesAndItsPoint() {
        Calibration calibration = Calibration.from(goodAugerCatches());

        assertThat(calibration.instruments()).containsExactly(ErrorSource.spanOf(SCALE));
        assertThat(calibration.toString()).startsWith("salt: 5.9").contains(" lb/rev (u ");
    }

    /**
     * 118 and 236 lb on a scale by 0.5 lb, whose two readings are uncertain by 0.5 ÷ √12 lb each, in 20 and 40 rev to a pulse of
     * 100 a revolution, 1 ÷ √6: the root of the mean square.
     */
    @Test
    void theResolutionIsThatOfAnAverageCatch() {
        double rounding = 0.5 / Math.sqrt(12) * Math.sqrt(2);
        double count = 0.01 / Math.sqrt(6);
        double shorter = Math.hypot(rounding / 118, count / 20);
        double longer = Math.hypot(rounding / 236, count / 40);
        Calibration calibration = Calibration.from(List.of(augerCatch(118, 2000), augerCatch(236, 4000)));

        assertThat(calibration.relativeResolution())
                .isCloseTo(Math.sqrt((shorter * shorter + longer * longer) / 2), within(1e-14));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(augerCatch(118, 2000));
        assertNamesWhatIsMissing(augerInForce(6));
        assertNamesWhatIsMissing(new Change(DAY, Change.Part.SENSOR));
    }

    /** By hand: a sliding gate's area is proportional to its opening, so 0.06 in at 3 in move the discharge by 2 %, either way. */
    @Test
    void aGateThatIsSetAgainIsUncertainByHowFinelyItIsRead() {
        Calibration calibration = Calibration.from(List.of(
                catchAt(chainAt(3), caught(211), pulses(500)),
                catchAt(chainAt(3), caught(419), pulses(1000)),
                catchAt(chainAt(3), caught(835), pulses(2000))));
        Budget<DischargePerRevolution> again = calibration.budgetOfGateSetAgain(inches(0.06));
        double pounds = poundsPerRevolution(calibration);
        double before = Amounts.in(
                calibration.budget().result().standardUncertainty().orElseThrow(), SpreadingUnits.POUND_PER_REVOLUTION);

        assertThat(again.result().value())
                .isEqualTo(calibration.dischargePerRevolution().value());
        assertThat(Amounts.in(again.result().standardUncertainty().orElseThrow(), SpreadingUnits.POUND_PER_REVOLUTION))
                .isCloseTo(Math.hypot(before, pounds * 0.02 / Math.sqrt(3)), within(1e-9));
        assertThat(again.components())
                .hasSize(calibration.budget().components().size() + 1)
                .containsAll(calibration.budget().components());
    }

    /** A point that has no gate to set again. */
    @Test
    void withoutAnAdjustableGateNothingIsSetAgain() {
        Calibration auger = Calibration.from(goodAugerCatches());
        assertThatThrownBy(() -> auger.budgetOfGateSetAgain(inches(0.06))).isInstanceOf(InvalidInputException.class);
    }
}
