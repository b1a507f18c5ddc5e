package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.assessment.Driven.first;
import static org.gritwright.core.fleet.assessment.Driven.sentences;
import static org.gritwright.core.fleet.assessment.Written.calibrates;
import static org.gritwright.core.fleet.assessment.Written.verifies;
import static org.gritwright.core.fleet.assessment.Written.weighed;
import static org.gritwright.core.fleet.day.Trucks.DAY;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.pulses;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;

import java.util.Optional;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Times, counters and tares that are just possible, or just not. */
class OddTimesTest {
    private static CalibrationCatchEntry calibration(String time, CountEntry count, double pounds) {
        return calibrates(Written.at(entry(8, 2, pounds, Optional.of(count)), DAY, time));
    }

    private static CountEntry readings(double start, double stop) {
        return CountEntry.ofReadings(Amounts.of(start, SpreadingUnits.PULSE), Amounts.of(stop, SpreadingUnits.PULSE));
    }

    private static VerificationCatchEntry verification(String time, double seconds, double revolutions) {
        VerificationCatchEntry one = verificationCatch(8, "5.2 lb/rev", seconds, revolutions);
        return verifies(Written.at(one.entry(), DAY, time), one);
    }

    /** Twelve hours later than 07:50 somebody caught too; both are by day. */
    @ParameterizedTest
    @CsvSource({"19:55, false", "20:00, true"})
    void theNightBeginsAtEight(String evening, boolean told) {
        TruckDay truck =
                with(idle("T-1"), calibration("07:50", pulses(3000), 156), calibration(evening, pulses(3200), 166.5));

        assertThat(sentences(first(day(truck)), FindingCode.CATCH_HALF_A_DAY_OFF))
                .hasSize(told ? 1 : 0);
    }

    @Test
    void aCounterThatRolledOverToZeroOrdersNoCatches() {
        CountEntry rolled = CountEntry.ofReadings(
                Amounts.of(7000, SpreadingUnits.PULSE),
                Amounts.of(0, SpreadingUnits.PULSE),
                Amounts.of(10_000, SpreadingUnits.PULSE));
        TruckDay truck =
                with(idle("T-1"), calibration("08:30", readings(0, 3200), 166.5), calibration("09:10", rolled, 156));

        assertThat(first(day(truck)).refusals()).isEmpty();
        assertThat(sentences(first(day(truck)), FindingCode.COUNTER_RUNS_BACKWARDS))
                .isEmpty();
    }

    /** The middle of 500 and 3500 pulses is 2000. */
    @ParameterizedTest
    @CsvSource({
        "2000, 09:10, false",
        "2001, 09:10, true",
        "3499, 09:10, true",
        "3500, 09:10, false",
        "3050, 08:30, false"
    })
    void aCounterThatBeginsInTheLaterHalfOfTheCatchBeforeOverlapsIt(double begin, String time, boolean told) {
        TruckDay truck = with(
                idle("T-1"),
                calibration("08:30", readings(500, 3500), 156),
                calibration(time, readings(begin, begin + 3200), 166.5));

        assertThat(sentences(first(day(truck)), FindingCode.COUNTS_OVERLAP)).hasSize(told ? 1 : 0);
    }

    @Test
    void aRunThatNobodyTimedOverlapsNone() {
        TruckDay truck = with(
                idle("T-1"),
                Written.over(25 / 30.0, verification("09:00", 120, 57.7)),
                verification("09:01", 360, 173.1));

        assertThat(first(day(truck)).refusals()).isEmpty();
        assertThat(sentences(first(day(truck)), FindingCode.RUNS_OVERLAP)).isEmpty();
    }

    private static CalibrationCatchEntry withTare(String time, double net, double tare) {
        CalibrationCatchEntry one = calibration(time, pulses(Math.rint(net / 0.052)), net);
        return calibrates(weighed(one.entry(), net + tare, tare));
    }

    @Test
    void ofSeveralEqualTaresTheFirstIsTold() {
        TruckDay heavyLast =
                with(idle("T-1"), withTare("08:30", 156, 4), withTare("08:50", 157, 4), withTare("09:10", 158, 44));
        assertThat(sentences(first(day(heavyLast)), FindingCode.TARES_DIFFER))
                .singleElement()
                .satisfies(one -> assertThat(one).contains("4 lb empty in the catch of 2026-10-19 08:30"));

        TruckDay lightLast =
                with(idle("T-1"), withTare("08:30", 156, 44), withTare("08:50", 157, 44), withTare("09:10", 158, 4));
        assertThat(sentences(first(day(lightLast)), FindingCode.TARES_DIFFER))
                .singleElement()
                .satisfies(one -> assertThat(one).contains("44 lb in that of 2026-10-19 08:30"));
    }

    @Test
    void aTareLeftOutBesideOthersIsToldFirst() {
        CalibrationCatchEntry other = withTare("08:30", 156, 4);
        CalibrationCatchEntry leftOut =
                calibrates(weighed(calibration("09:10", pulses(3029), 157.5).entry(), 82, 4, 79.5, 0));
        TruckDay verified = with(with(idle("T-1"), other, leftOut), verification("10:00", 120, 57.7));

        assertThat(first(day(verified)).nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        assertThat(first(day(verified)).massProof()).isEqualTo(MassProof.UNDECIDED);
        assertThat(sentences(first(day(verified)), FindingCode.TARES_UNEQUAL)).hasSize(1);
        CalibrationCatchEntry light =
                calibrates(weighed(calibration("09:10", pulses(3029), 157.5).entry(), 82, 4, 81, 1.5));
        TruckAssessment allWeighed =
                first(day(with(with(idle("T-1"), other, light), verification("10:00", 120, 57.7))));
        assertThat(sentences(allWeighed, FindingCode.TARES_UNEQUAL)).hasSize(1);
        assertThat(allWeighed.massProof()).as("every container was weighed").isEqualTo(MassProof.PROVEN);
    }

    /** 9 kg are three times 3 kg, to the last digit. */
    @ParameterizedTest
    @CsvSource({"9, false", "9.1, true"})
    void threeTimesAsMuchEmptyMayBe(double kilograms, boolean told) {
        TruckDay truck = with(idle("T-1"), inKilograms("08:30", 71, 3), inKilograms("09:10", 72, kilograms));

        assertThat(sentences(first(day(truck)), FindingCode.TARES_DIFFER)).hasSize(told ? 1 : 0);
    }

    private static CalibrationCatchEntry inKilograms(String time, double net, double tare) {
        CalibrationCatchEntry one = calibration(time, pulses(Math.rint(net / 0.0235868)), 1);
        CatchEntry weighed = CatchEntry.of(
                        one.entry().at(),
                        "salt",
                        "platform",
                        new WeighingEntry(
                                "tarp",
                                Amounts.of(net + tare, SpreadingUnits.KILOGRAM),
                                Amounts.of(tare, SpreadingUnits.KILOGRAM)))
                .counted(one.entry().counted().orElseThrow())
                .at(one.entry().setting().orElseThrow());
        return calibrates(weighed);
    }
}
