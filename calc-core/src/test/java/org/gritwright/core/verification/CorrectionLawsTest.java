package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.pulses;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** The same catch never corrects twice. */
class CorrectionLawsTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(1);

    @Provide
    Arbitrary<Unit<?>> forms() {
        return Arbitraries.of(List.of(
                SpreadingUnits.POUND_PER_REVOLUTION,
                SpreadingUnits.KILOGRAM_PER_PULSE,
                SpreadingUnits.REVOLUTION_PER_POUND,
                SpreadingUnits.PULSE_PER_KILOGRAM));
    }

    private static CalibrationInForce inForce(CalibrationFactor factor) {
        return CalibrationInForce.of(AUGER_POINT, factor, Optional.empty());
    }

    private static Correction correction(VerificationCatch source) {
        return source.assess(TOLERANCE).proposedCorrection().orElseThrow();
    }

    private static void assertSameValue(CalibrationFactor actual, CalibrationFactor expected) {
        double value = expected.value().getValue().doubleValue();
        assertThat(actual.value().getUnit()).isEqualTo(expected.value().getUnit());
        assertThat(actual.value().getValue().doubleValue()).isCloseTo(value, within(1e-12 * value));
    }

    /** Between 3.5 and 8 lb/rev the fill of the auger is usual; the error stays below 10 %. */
    private static CalibrationFactor believed(double poundsPerRevolution, double error, Unit<?> form) {
        return CalibrationFactor.ofDischarge(poundsPerRevolution * (1 + error) * 0.45359237, Samples.AUGER_POINT, form);
    }

    @Property
    void heldAgainstItsOwnCorrectionACountedCatchCallsForTheSameValue(
            @ForAll @IntRange(min = 1000, max = 9000) int pulses,
            @ForAll @DoubleRange(min = 3.6, max = 8) double poundsPerRevolution,
            @ForAll @DoubleRange(min = -0.09, max = 0.09) double error,
            @ForAll("forms") Unit<?> form) {
        CalibrationInForce before = inForce(believed(poundsPerRevolution, error, form));
        VerificationCatch once =
                Runs.of(before, Runs.seconds(120), caught(poundsPerRevolution * pulses / 100), pulses(pulses));
        Correction first = correction(once);

        VerificationCatch again = VerificationCatch.of(once.observation(), inForce(first.computed()), once.run());
        Correction second = correction(again);

        assertSameValue(second.computed(), first.computed());
        assertThat(percent(again.assess(TOLERANCE).calibrationError().orElseThrow()))
                .isCloseTo(0, within(1e-10));
    }

    @Property
    void aDisplayedMassIsReckonedWithTheCalibrationThenInForce(
            @ForAll @IntRange(min = 1000, max = 9000) int pulses,
            @ForAll @DoubleRange(min = 3.6, max = 8) double poundsPerRevolution,
            @ForAll @DoubleRange(min = -0.09, max = 0.09) double error,
            @ForAll("forms") Unit<?> form) {
        VerificationCatch once = displayed(pulses, poundsPerRevolution, believed(poundsPerRevolution, error, form));
        Correction first = correction(once);
        // The same revolutions, as the corrected display would have shown them.
        VerificationCatch again = displayed(pulses, poundsPerRevolution, first.computed());

        assertSameValue(correction(again).computed(), first.computed());
        // And the catch itself calls for the same value however often it is asked.
        assertSameValue(correction(once).computed(), first.computed());
    }

    private static VerificationCatch displayed(int pulses, double poundsPerRevolution, CalibrationFactor factor) {
        double shownKilograms = pulses / 100.0 * factor.kilogramsPerRevolution(Samples.AUGER_POINT);
        return Runs.of(inForce(factor), Runs.seconds(120), caught(poundsPerRevolution * pulses / 100))
                .indicated(Amounts.of(shownKilograms, SpreadingUnits.KILOGRAM), Amounts.of(1, SpreadingUnits.KILOGRAM));
    }

    @Property
    void countAndDisplayCallForTheSameValue(
            @ForAll @IntRange(min = 1000, max = 9000) int pulses,
            @ForAll @DoubleRange(min = 3.6, max = 8) double poundsPerRevolution,
            @ForAll @DoubleRange(min = -0.09, max = 0.09) double error,
            @ForAll("forms") Unit<?> form) {
        VerificationCatch byDisplay =
                displayed(pulses, poundsPerRevolution, believed(poundsPerRevolution, error, form));

        VerificationCatch byBoth = new VerificationCatch(
                byDisplay.observation().counted(pulses(pulses)),
                byDisplay.inForce(),
                byDisplay.run(),
                byDisplay.indicated());

        assertSameValue(correction(byBoth).computed(), correction(byDisplay).computed());
    }

    private static double percent(Quantity<?> error) {
        return error.getValue().doubleValue();
    }
}
