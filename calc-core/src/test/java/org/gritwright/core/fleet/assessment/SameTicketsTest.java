package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
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

import java.util.List;
import java.util.Optional;
import org.gritwright.core.Samples;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.CatchAllowances;
import org.junit.jupiter.api.Test;

/** Catches of the same numbers, which may be one ticket; on a scale by 0.5 lb, and nobody says how catches scatter. */
class SameTicketsTest {
    private static List<List<FindingCode>> codes(TruckDay... trucks) {
        return FleetAssessor.of(BuiltInTypes.registry())
                .assess(day(trucks).withAllowances(CatchAllowances.NONE))
                .stream()
                .map(one -> Samples.codes(one.findings()))
                .toList();
    }

    private static boolean isTwice(CalibrationCatchEntry... catches) {
        return codes(with(idle("T-1"), catches)).get(0).contains(FindingCode.TICKET_ENTERED_TWICE);
    }

    /** Gross and tare in turn. */
    private static CalibrationCatchEntry caught(String time, double pulses, double... pairs) {
        return calibrates(weighed(Written.at(entry(8, 2, 1, Optional.of(pulses(pulses))), DAY, time), pairs));
    }

    /** 3011 pulses alone agree by chance once in 53 times, 20 lb on that scale always. */
    @Test
    void whatWasCaughtCountsWithoutTheContainer() {
        assertThat(isTwice(caught("08:10", 3011, 160.5, 4), caught("08:40", 3011, 160.5, 4)))
                .isTrue();
        assertThat(isTwice(caught("08:10", 3011, 420, 400), caught("08:40", 3011, 420, 400)))
                .isFalse();
    }

    @Test
    void ofTwoContainersTheMassesMayBeOffByTwiceTheDivision() {
        assertThat(isTwice(caught("08:10", 3011, 82, 4, 82.5, 4), caught("08:40", 3011, 82, 4, 82.5, 4)))
                .isTrue();
        assertThat(isTwice(caught("08:10", 3011, 42, 4, 42.5, 4), caught("08:40", 3011, 42, 4, 42.5, 4)))
                .isFalse();
    }

    /** 41.5 lb and 800 pulses agree once in 21 times. */
    @Test
    void twoCatchesUnderOneTimeShowNothingWhereNobodyNotesEachTime() {
        CalibrationCatchEntry one = caught("08:10", 800, 45.5, 4);

        assertThat(isTwice(one, one)).as("two alone").isFalse();
        assertThat(isTwice(one, one, caught("08:10", 700, 40, 4)))
                .as("all under one time")
                .isFalse();
        assertThat(isTwice(one, one, caught("08:20", 700, 40, 4)))
                .as("each other one has a time of its own")
                .isTrue();
    }

    private static VerificationCatchEntry verification(int hour, String inForce) {
        VerificationCatchEntry one = verificationCatch(hour, inForce, 120, 57.7);
        return verifies(one.entry(), one);
    }

    @Test
    void oneDischargeMayBeComparedWithTwoValuesOfOneTruckButNotOfTwo() {
        VerificationCatchEntry first = verification(9, "5.2 lb/rev");
        VerificationCatchEntry second = verification(10, "5.3 lb/rev");
        assertThat(codes(with(idle("T-1"), first, second)).get(0)).doesNotContain(FindingCode.TICKET_ENTERED_TWICE);
        assertThat(codes(with(idle("T-1"), first), with(idle("T-2"), second)))
                .allSatisfy(one -> assertThat(one).contains(FindingCode.TICKET_OF_TWO_TRUCKS));
    }

    @Test
    void aVerificationTypedTwiceWithOneValueIsToldAsOneTicket() {
        VerificationCatchEntry one = verification(9, "5.2 lb/rev");

        assertThat(codes(with(idle("T-1"), one, one)).get(0)).contains(FindingCode.TICKET_ENTERED_TWICE);
        assertThat(codes(with(idle("T-1"), one, verification(10, "5.2 lb/rev"))).get(0))
                .contains(FindingCode.TICKET_ENTERED_TWICE);
    }

    /** 41.5 lb and 800 pulses agree once in 21 times; two noted under one time do once in 20 times, whatever else there is. */
    @Test
    void ofManyCatchesOnlyTheOneUnderTheSameTimeIsCompared() {
        CalibrationCatchEntry one = caught("08:10", 800, 45.5, 4);
        CalibrationCatchEntry[] catches = new CalibrationCatchEntry[11];
        for (int i = 0; i < 9; i++) {
            catches[i] = caught("09:" + (10 + i), 700 + i, 40 + i, 4);
        }
        catches[9] = one;
        catches[10] = one;
        assertThat(isTwice(catches)).isTrue();
        catches[10] = caught("08:30", 800, 45.5, 4);
        assertThat(isTwice(catches)).as("at a time of its own").isFalse();
    }

    /** Read by 0.05 gal; so many gallons in one fill. */
    private static List<FindingCode> liquid(String... catches) {
        String text = """
                {"format": "gritwright/fleet-day", "formatVersion": 2, "day": "2026-10-19", "seasonStart": "2026-11-01",
                 "tolerance": "4 %%", "scales": [],
                 "graduates": [{"id": "M", "capacity": "60 gal", "division": "0.05 gal", "tolerance": "0.05 gal"}],
                 "materials": [{"name": "brine", "density": "9.82 lb/gal"}],
                 "trucks": [{"id": "A-1",
                   "flowMeter": {"type": "k-factor", "version": 1, "parameters": {"kFactor": "600 pulse/gal"}},
                   "calibrationCatches": [%s]}]}""".formatted(String.join(", ", catches));
        return Samples.codes(LiquidDays.assess(LiquidDays.read(text)).get(0).findings());
    }

    private static String read(String time, String pulses, String... fills) {
        return """
                {"at": "2026-10-19T%s:00-04:00", "material": "brine", "read": {"container": "M", "fills": ["%s"]},
                 "counted": {"pulses": "%s"}, "primed": true, "coasting": "in-both"}""".formatted(time, String.join("\", \"", fills), pulses);
    }

    @Test
    void soMayALiquidsTicketBeEnteredTwice() {
        assertThat(liquid(read("09:00", "12007 pulse", "20 gal"), read("10:00", "12007 pulse", "20 gal")))
                .contains(FindingCode.TICKET_ENTERED_TWICE);
        assertThat(liquid(read("09:00", "12007 pulse", "20 gal"), read("10:00", "12007 pulse", "20.05 gal")))
                .as("another reading")
                .doesNotContain(FindingCode.TICKET_ENTERED_TWICE);
    }

    /** 3607 pulses agree once in 64 times, 12 gal in two fills once in two; nothing caught would agree always. */
    @Test
    void allFillsOfALiquidWereCaught() {
        assertThat(liquid(read("09:00", "3607 pulse", "6 gal", "6 gal"), read("10:00", "3607 pulse", "6 gal", "6 gal")))
                .contains(FindingCode.TICKET_ENTERED_TWICE);
    }
}
