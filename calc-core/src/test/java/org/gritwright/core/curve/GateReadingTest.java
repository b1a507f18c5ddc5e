package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.curve.DischargeCurveSamples.at;
import static org.gritwright.core.curve.DischargeCurveSamples.atMark;
import static org.gritwright.core.curve.DischargeCurveSamples.by;
import static org.gritwright.core.curve.DischargeCurveSamples.mark;
import static org.gritwright.core.curve.DischargeCurveSamples.repeated;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;

import java.util.List;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;

/** A gate read to a sixteenth of an inch either way. */
class GateReadingTest {
    private static final Quantity<?> SIXTEENTH = inches(1 / 16.0);
    private static final double DEVIATION = 1 / 16.0 / Math.sqrt(3);
    private static final String READING = "reading of the gate";

    private static Calibration at4(Spreader spreader) {
        return Calibration.from(by(spreader, at(4, 60), at(4, 61), at(4, 59)));
    }

    private static double ofReading(Budget<DischargePerRevolution> budget) {
        Component<DischargePerRevolution> reading = budget.components().stream()
                .filter(c -> c.name().equals(READING))
                .findFirst()
                .orElseThrow();
        assertThat(reading.distribution()).isEqualTo(Distribution.RECTANGULAR);
        return Amounts.in(reading.contribution(), POUND_PER_REVOLUTION);
    }

    @Test
    void aCalibrationOfAGateThatStaysKnowsNoReading() {
        assertThat(at4(CHAIN).budget().components()).extracting(Component::name).doesNotContain(READING);
    }

    @Test
    void aSlidingGateSetAgainIsAsUncertainAsItsHeight() {
        Budget<DischargePerRevolution> budget = at4(CHAIN).budgetOfGateSetAgain(SIXTEENTH);

        assertThat(ofReading(budget)).isCloseTo(60 * DEVIATION / 4, within(1e-9));
        assertThat(budget.result().value())
                .isEqualTo(at4(CHAIN).budget().result().value());
        Component<DischargePerRevolution> reading =
                budget.components().get(budget.components().size() - 1);
        assertThat(reading.standardUncertainty().getUnit()).isEqualTo(SpreadingUnits.INCH);
        assertThat(reading.standardUncertainty().getValue().doubleValue()).isCloseTo(DEVIATION, within(1e-12));
        assertThat(reading.sensitivity()).hasValueCloseTo(15.0, within(1e-9));
        assertThat(Amounts.in(budget.result().standardUncertainty().orElseThrow(), POUND_PER_REVOLUTION))
                .isCloseTo(
                        Math.hypot(
                                60 * DEVIATION / 4,
                                Amounts.in(
                                        at4(CHAIN)
                                                .budget()
                                                .result()
                                                .standardUncertainty()
                                                .orElseThrow(),
                                        POUND_PER_REVOLUTION)),
                        within(1e-9));
    }

    /** At half its height a round gate's area π·r²/2 grows by the whole chord 2·r. */
    @Test
    void aRoundGateAtHalfIsMoreSensitive() {
        Budget<DischargePerRevolution> budget =
                at4(DischargeCurveSamples.roundGate(8)).budgetOfGateSetAgain(SIXTEENTH);

        assertThat(ofReading(budget)).isCloseTo(60 * DEVIATION * 4 / (Math.PI * 4), within(1e-4));
    }

    @Test
    void whereTheGateEndsTheOtherSideTells() {
        Budget<DischargePerRevolution> budget =
                at4(DischargeCurveSamples.noHigherThan(4)).budgetOfGateSetAgain(SIXTEENTH);

        assertThat(ofReading(budget)).isCloseTo(60 * DEVIATION / 4, within(1e-9));
    }

    @Test
    void aPaintedMarkIsReadInMarks() {
        Calibration calibration = Calibration.from(List.of(atMark(3, 60), atMark(3, 61), atMark(3, 59)));

        assertThat(ofReading(calibration.budgetOfGateSetAgain(mark(0.1))))
                .isCloseTo(60 * 0.1 / Math.sqrt(3) / 3, within(1e-9));
    }

    @Test
    void aPredictionIsAsSensitiveAsItsCurve() {
        DischargeCurve proportional = DischargeCurveSamples.fit(
                CurveModel.PROPORTIONAL, repeated(new double[] {2, 4}, new double[] {32, 64}, 0.99, 1, 1.01));
        DischargeCurve dead = DischargeCurveSamples.fit(
                CurveModel.DEAD_OPENING, repeated(new double[] {2, 4}, new double[] {26, 58}, 0.99, 1, 1.01));

        assertThat(ofReading(proportional.predict(height(3), SIXTEENTH).budget().orElseThrow()))
                .isCloseTo(16 * DEVIATION, within(1e-6));
        assertThat(ofReading(dead.predict(height(3), SIXTEENTH).budget().orElseThrow()))
                .isCloseTo(16 * DEVIATION, within(0.02));
        assertThat(dead.predict(height(3)).budget().orElseThrow().components())
                .extracting(Component::name)
                .containsExactly("curve through the catches", "span of scale S-1");
        assertThat(dead.predict(height(3), SIXTEENTH).dischargePerRevolution())
                .isEqualTo(dead.predict(height(3), SIXTEENTH)
                        .budget()
                        .orElseThrow()
                        .result());
    }

    @Test
    void refusesAReadingOfAnotherKindOrOfNothing() {
        assertRefused(
                "reading of the gate must be greater than 0 and on the scale of 4 in: 0.5",
                () -> at4(CHAIN).budgetOfGateSetAgain(mark(0.5)));
        assertRefused(
                "reading of the gate must be greater than 0 and on the scale of 4 in: 0 in",
                () -> at4(CHAIN).budgetOfGateSetAgain(inches(0)));
        assertRefused("gate setting must be 0 or more: -1 in", () -> at4(CHAIN).budgetOfGateSetAgain(inches(-1)));
        assertRefused(
                "gate setting must be a finite length: NaN in \"in\"",
                () -> at4(CHAIN).budgetOfGateSetAgain(foreign(Double.NaN, SpreadingUnits.INCH)));
    }

    @Test
    void withoutAGateNothingIsSetAgain() {
        Calibration auger = Calibration.from(List.of(augerCatch(118.5, 2000)));

        assertRefused(
                "spreader must be one with a conveyor that an adjustable gate meters: auger, version 1 with no-gate,"
                        + " version 1",
                () -> auger.budgetOfGateSetAgain(SIXTEENTH));
    }

    /** Eight inches either way deviate by 4.6 in: below 4 in the gate would have to be less than closed. */
    @Test
    void aReadingThatMayBeOffByMoreThanTheOpeningTellsFromAboveAlone() {
        Budget<DischargePerRevolution> budget = at4(CHAIN).budgetOfGateSetAgain(inches(8));

        assertThat(ofReading(budget)).isCloseTo(60 * 8 / Math.sqrt(3) / 4, within(1e-9));
    }

    @Test
    void aReadingThatMayBeOffByMoreThanTheGateLeavesTheWholeDischargeUncertain() {
        Budget<DischargePerRevolution> budget =
                at4(DischargeCurveSamples.noHigherThan(4)).budgetOfGateSetAgain(inches(8));

        assertThat(ofReading(budget)).isCloseTo(60, within(1e-9));
    }

    @Test
    void aReadingReachesToTheClosedGate() {
        Budget<DischargePerRevolution> budget = at4(CHAIN).budgetOfGateSetAgain(inches(2 * Math.sqrt(3)));

        assertThat(ofReading(budget)).isCloseTo(30, within(1e-9));
    }
}
