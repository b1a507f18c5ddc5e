package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.curve.DischargeCurveSamples.at;
import static org.gritwright.core.curve.DischargeCurveSamples.atMark;
import static org.gritwright.core.curve.DischargeCurveSamples.by;
import static org.gritwright.core.curve.DischargeCurveSamples.chainWith;
import static org.gritwright.core.curve.DischargeCurveSamples.deadOpening;
import static org.gritwright.core.curve.DischargeCurveSamples.mark;
import static org.gritwright.core.curve.DischargeCurveSamples.noHigherThan;
import static org.gritwright.core.curve.DischargeCurveSamples.pounds;
import static org.gritwright.core.curve.DischargeCurveSamples.roundGate;

import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.metering.SlidingGate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The curve over gates of other forms than a rectangle that never ends. */
class DischargeCurveGatesTest {
    private static DischargeCurve deadOpeningCurve(Spreader spreader, CalibrationCatch... catches) {
        return DischargeCurve.fit(by(spreader, catches), CurveModel.DEAD_OPENING);
    }

    private static DischargeCurve deadOpeningCurveByMarks(CalibrationCatch... catches) {
        return DischargeCurve.fit(List.of(catches), CurveModel.DEAD_OPENING);
    }

    private static double poundsAt(DischargeCurve curve, Quantity<?> opening) {
        return pounds(
                curve.predict(Setting.of(opening)).dischargePerRevolution().value());
    }

    /** The segment of a circle with diameter 10 in, in square inches, in the textbook's form. */
    private static double segment(double height) {
        return 25 * Math.acos(1 - height / 5) - (5 - height) * Math.sqrt(10 * height - height * height);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.375, -0.375, 1.5})
    void aRoundGateFollowsTheSegmentOfItsCircle(double dead) {
        CalibrationCatch[] catches = {
            at(2, segment(2 - dead)), at(4, segment(4 - dead)), at(7, segment(7 - dead)), at(9, segment(9 - dead))
        };
        DischargeCurve curve = deadOpeningCurve(roundGate(10), catches);

        assertThat(deadOpening(curve)).isCloseTo(dead, within(1e-9));
        assertThat(poundsAt(curve, inches(5))).isCloseTo(segment(5 - dead), within(1e-8));
    }

    @Test
    void aGateByMarksIsPredictedByItsMarks() {
        DischargeCurve curve = DischargeCurve.fit(List.of(atMark(1, 16), atMark(3, 48)), CurveModel.PROPORTIONAL);

        assertThat(poundsAt(curve, mark(2))).isCloseTo(32, within(1e-12));
        assertThat(poundsAt(curve, mark(5))).isCloseTo(80, within(1e-12));
        assertThat(curve.settings()).isEqualTo(List.of(Setting.mark(1), Setting.mark(3)));
    }

    @Test
    void aGateByMarksHasItsDeadOpeningInMarks() {
        // In truth discharge starts a quarter of a mark later, caught at the first, a middle and the last mark.
        DischargeCurve curve = deadOpeningCurveByMarks(atMark(1, 12), atMark(3, 44), atMark(5, 76));

        assertThat(deadOpening(curve)).isCloseTo(0.25, within(1e-9));
        assertThat(curve.deadOpening().orElseThrow().value().getUnit()).isEqualTo(SpreadingUnits.ONE);
        assertThat(poundsAt(curve, mark(2))).isCloseTo(28, within(1e-9));
    }

    @Test
    void aGateByMarksMayOpenSoonerThanItsMarksSay() {
        DischargeCurve curve = deadOpeningCurveByMarks(atMark(1, 20), atMark(3, 52), atMark(5, 84));

        assertThat(deadOpening(curve)).isCloseTo(-0.25, within(1e-9));
        assertThat(poundsAt(curve, mark(4.9))).isCloseTo(82.4, within(1e-8));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.5, -0.01, 0, 0.01, 0.5})
    void catchesAtTheHighestOpeningTellADeadOpeningOfEitherSign(double dead) {
        DischargeCurve curve = deadOpeningCurve(
                noHigherThan(6), at(2, 16 * (2 - dead)), at(4, 16 * (4 - dead)), at(6, 16 * (6 - dead)));

        assertThat(deadOpening(curve)).isCloseTo(dead, within(1e-9));
        assertThat(poundsAt(curve, inches(6))).isCloseTo(16 * (6 - dead), within(1e-8));
        assertThat(poundsAt(curve, inches(3))).isCloseTo(16 * (3 - dead), within(1e-8));
    }

    @Test
    void beyondItsDiameterARoundGateIsFullyOpen() {
        DischargeCurve curve =
                deadOpeningCurve(roundGate(10), at(4, segment(4.5)), at(7, segment(7.5)), at(10, segment(10)));

        assertThat(deadOpening(curve)).isCloseTo(-0.5, within(1e-3));
        assertThat(poundsAt(curve, inches(10))).isCloseTo(25 * Math.PI, within(1e-2));
    }

    @Test
    void aGatesKnownDeadOpeningIsNotFoundAgain() {
        Spreader closesAtOne =
                chainWith(Gate.of(new SlidingGate(), Map.of("width", inches(24), "deadOpening", inches(1))));
        DischargeCurve curve = deadOpeningCurve(closesAtOne, at(2, 16), at(3, 32), at(5, 64));
        DischargeCurve later = deadOpeningCurve(closesAtOne, at(2, 12), at(3, 28), at(5, 60));

        assertThat(deadOpening(curve)).isCloseTo(0, within(1e-12));
        assertThat(curve.findings()).isEmpty();
        assertThat(deadOpening(later)).isCloseTo(0.25, within(1e-12));
        assertThat(poundsAt(later, inches(4))).isCloseTo(44, within(1e-11));
    }

    @Test
    void aGateKnownToBeOpenAtZeroIsNotFoundToBe() {
        Spreader openAtZero =
                chainWith(Gate.of(new SlidingGate(), Map.of("width", inches(24), "deadOpening", inches(-0.5))));
        DischargeCurve curve = deadOpeningCurve(openAtZero, at(0.25, 16 * 0.5), at(2, 16 * 2.25));

        // By the geometry discharge starts at −0.5 in, by the catches at −0.25 in.
        assertThat(deadOpening(curve)).isCloseTo(0.25, within(1e-12));
        assertThat(poundsAt(curve, inches(0))).isCloseTo(4, within(1e-11));
    }

    @Test
    void theGearBetweenShaftAndSensorIsInTheGeometry() {
        Spreader chain = noHigherThan(40);
        Spreader geared = new Spreader(
                chain.conveyor(),
                chain.gate(),
                new ShaftSensor(
                        Amounts.of(50, SpreadingUnits.PULSE_PER_REVOLUTION), Amounts.of(2, SpreadingUnits.ONE)));
        // Twice the revolutions of the sensed shaft are one of the drive shaft: the same density from half the
        // discharge.
        DischargeCurve plain = deadOpeningCurve(chain, at(2, 26), at(4, 58));
        DischargeCurve half = deadOpeningCurve(geared, at(2, 26), at(4, 58));

        assertThat(poundsAt(half, inches(3))).isCloseTo(21, within(1e-11));
        assertThat(DischargeCurveSamples.density(half)).isCloseTo(DischargeCurveSamples.density(plain), within(1e-9));
    }
}
