package org.gritwright.core.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.history.Happenings.THREE;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.calibrated;
import static org.gritwright.core.history.Happenings.corrected;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.entered;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.hour;
import static org.gritwright.core.history.Happenings.value;
import static org.gritwright.core.history.Happenings.verified;

import java.time.Instant;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.telemetry.TimelineEntry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Which events say something of which value. */
class EvidenceTest {
    private static final Event TWO_ENTERED =
            entered("two", day("2026-09-01"), value(TWO, 25).inSlot("1"));
    private static final Event TWO_PROVEN =
            verified("proven", hour("2026-10-19T09:00"), value(TWO, 25).inSlot("1"), 1);

    private static CalibrationInForce sand() {
        return value(
                        CalibrationPoint.of(
                                Material.of("sand", Amounts.of(95, SpreadingUnits.POUND_PER_CUBIC_FOOT)),
                                TWO.metering(),
                                TWO.setting()),
                        30)
                .inSlot("1");
    }

    private static List<TimelineEntry> from(String time, Event... events) {
        return history(events).timeline(TRUCK).entries().stream()
                .filter(entry -> entry.from().equals(Instant.parse(time)))
                .toList();
    }

    private static List<SharedError> errorsOfTheFirst(Event... events) {
        return from("2026-09-01T05:00:00Z", events).get(0).errors();
    }

    /** A value that is gone at the end of the day on which it was verified was found so, and not left so. */
    @Test
    void aVerificationOfTheDayOnWhichAValueIsLostDoesntSayHowItWasLeft() {
        assertThat(errorsOfTheFirst(TWO_ENTERED, TWO_PROVEN)).hasSize(2);
        for (Event gone : List.of(
                entered("gone", hour("2026-10-19T15:00"), sand()),
                entered("gone", hour("2026-10-19T15:00"), value(TWO, 24).inSlot("1")),
                event("gone", hour("2026-10-19T15:00"), new What.Overwritten("1")))) {
            assertThat(errorsOfTheFirst(TWO_ENTERED, TWO_PROVEN, gone))
                    .as(gone.what().words())
                    .isEmpty();
        }
        assertThat(errorsOfTheFirst(
                        TWO_ENTERED,
                        TWO_PROVEN,
                        entered(
                                "beside",
                                hour("2026-10-19T15:00"),
                                value(THREE, 40).inSlot("1"))))
                .hasSize(2);
    }

    /** Found 4 % off with u(e) ÷ (1 + e) = 0.6 % of its own and 0.2 % of the scale. */
    @Test
    void aCorrectionIsAsUncertainAsTheCatchThatCalledForIt() {
        List<TimelineEntry> corrected = from(
                "2026-10-19T15:00:00Z",
                entered("1", day("2026-09-01"), value(TWO, 26)),
                verified("2", hour("2026-10-19T09:00"), value(TWO, 26), 4),
                corrected("3", hour("2026-10-19T10:00"), value(TWO, 26), 25, "2"));

        assertThat(corrected).singleElement().satisfies(entry -> {
            assertThat(entry.errors()).extracting(SharedError::id).startsWith("scale S-1");
            assertThat(Amounts.si(Dimensionless.class, entry.errors().get(1).standardUncertainty()))
                    .isCloseTo(0.006, within(1e-9));
        });
    }

    @Test
    void aCalibrationOfAnotherGateOpeningSaysNothing() {
        History history = history(
                TWO_ENTERED,
                entered("three", day("2026-09-01"), value(THREE, 40).inSlot("1")),
                calibrated("k", day("2026-10-01"), THREE, 40));
        TruckState state = history.asOf(TRUCK, Instant.parse("2026-10-02T00:00:00Z"));

        assertThat(state.value(TWO.key()).orElseThrow().calibrated()).isEmpty();
        assertThat(state.value(THREE.key()).orElseThrow().calibrated())
                .map(Event::id)
                .contains("k");
    }

    /** 26 instead of 25 lb/rev: 4 % off, and as uncertain as the calibration, times 1.04. */
    @Test
    void whatACalibrationSaysOfAValueIsAsUncertainAsTheirRatio() {
        Held held = history(
                        calibrated("1", day("2026-10-01"), TWO, 25), entered("2", day("2026-10-02"), value(TWO, 26)))
                .asOf(TRUCK, Instant.parse("2026-10-03T00:00:00Z"))
                .value(TWO.key())
                .orElseThrow();

        assertThat(Amounts.si(
                        Dimensionless.class,
                        held.error().orElseThrow().standardUncertainty().orElseThrow()))
                .isCloseTo(1.04 * Math.hypot(0.005, 0.002), within(1e-12));
    }

    @Test
    void aCatchOfAnotherValueMakesAProvenOneUnsureUntilItIsVerifiedAgain() {
        History history = history(
                TWO_ENTERED,
                TWO_PROVEN,
                verified("other", day("2026-11-01"), value(TWO, 24).inSlot("1"), 0.5),
                verified("again", day("2026-11-10"), value(TWO, 25).inSlot("1"), 0.5));

        assertThat(held(history, "2026-10-31T00:00:00Z").standing()).isEqualTo(Standing.PROVEN);
        assertThat(held(history, "2026-11-02T00:00:00Z").standing()).isEqualTo(Standing.CHANGED_SINCE);
        assertThat(held(history, "2026-11-02T00:00:00Z").changed())
                .extracting(Event::id)
                .containsExactly("other");
        assertThat(held(history, "2026-11-11T00:00:00Z").standing()).isEqualTo(Standing.PROVEN);
        assertThat(held(history, "2026-11-11T00:00:00Z").changed()).isEmpty();
    }

    private static Held held(History history, String time) {
        return history.asOf(TRUCK, Instant.parse(time)).value(TWO.key()).orElseThrow();
    }

    @Test
    void theValueOfAPointIsTheOneThatWasEnteredLastInWhicheverSlot() {
        for (List<String> slots : List.of(List.of("1", "2"), List.of("2", "1"))) {
            TruckState state = history(
                            entered("a", day("2026-10-01"), value(TWO, 25).inSlot(slots.get(0))),
                            entered("b", day("2026-10-05"), value(TWO, 24).inSlot(slots.get(1))),
                            entered("c", day("2026-10-09"), value(THREE, 40).inSlot("1")))
                    .asOf(TRUCK, Instant.parse("2026-10-10T00:00:00Z"));

            assertThat(state.value(TWO.key()).orElseThrow().entered().id()).isEqualTo("b");
            assertThat(state.value(THREE.key()).orElseThrow().entered().id()).isEqualTo("c");
        }
    }

    private static List<AsFound> found(Event... events) {
        return history(events).found(TRUCK);
    }

    /** What was entered at eight and verified at nine was confirmed; of what was entered some time that day nobody knows that. */
    @Test
    void aVerificationOfTheDayOfTheEntryFindsSomethingOnlyIfItsHourIsntKnown() {
        assertThat(found(entered("1", hour("2026-10-19T08:00"), value(TWO, 25).inSlot("1")), TWO_PROVEN))
                .isEmpty();
        assertThat(found(entered("1", day("2026-10-19"), value(TWO, 25).inSlot("1")), TWO_PROVEN))
                .hasSize(1);
        assertThat(found(entered("1", hour("2026-10-18T08:00"), value(TWO, 25).inSlot("1")), TWO_PROVEN))
                .hasSize(1);
        assertThat(found(entered("1", hour("2026-10-19T09:00"), value(TWO, 25).inSlot("1")), TWO_PROVEN))
                .isEmpty();
    }

    /** Beyond 1.2 % an error is shown. */
    @Test
    void whatIsFoundIsOffSinceItWasRightForTheLastTimeAndOnceOnly() {
        CalibrationInForce held = value(TWO, 25).inSlot("1");
        List<AsFound> found = found(
                entered("1", hour("2026-10-01T08:00"), held),
                verified("a", hour("2026-10-05T08:00"), held, 2),
                verified("b", hour("2026-10-09T08:00"), held, 3),
                verified("c", hour("2026-10-13T08:00"), held, 0.5),
                verified("d", hour("2026-10-17T08:00"), held, 0.6),
                verified("e", hour("2026-10-21T08:00"), held, -2));

        assertThat(found)
                .extracting(
                        AsFound::asLeft,
                        AsFound::at,
                        one -> Amounts.in(one.error().value(), SpreadingUnits.PERCENT))
                .containsExactly(
                        tuple(Instant.parse("2026-10-01T13:00:00Z"), Instant.parse("2026-10-09T13:00:00Z"), 3.0),
                        tuple(Instant.parse("2026-10-09T13:00:00Z"), Instant.parse("2026-10-13T13:00:00Z"), 0.5),
                        tuple(Instant.parse("2026-10-13T13:00:00Z"), Instant.parse("2026-10-17T13:00:00Z"), 0.6),
                        tuple(Instant.parse("2026-10-17T13:00:00Z"), Instant.parse("2026-10-21T13:00:00Z"), -2.0));
    }

    @Test
    void ofOneTimeTwoAreFoundAndCantBothCorrect() {
        CalibrationInForce held = value(TWO, 25).inSlot("1");
        List<AsFound> found = found(
                entered("1", hour("2026-10-01T08:00"), held),
                verified("a", hour("2026-10-05T08:00"), held, 2),
                verified("b", hour("2026-10-05T08:00"), held, 3));

        assertThat(found)
                .extracting(AsFound::asLeft)
                .containsOnly(Instant.parse("2026-10-01T13:00:00Z"))
                .hasSize(2);
    }

    @Test
    void whatWasFoundIsInTheOrderOfTimeWhicheverValueWasEnteredFirst() {
        assertThat(found(
                        TWO_ENTERED,
                        entered("three", day("2026-09-02"), value(THREE, 40).inSlot("1")),
                        verified("early", day("2026-10-01"), value(THREE, 40).inSlot("1"), 1),
                        TWO_PROVEN))
                .extracting(AsFound::setting)
                .containsExactly(THREE.setting(), TWO.setting());
    }

    @Test
    void aTimelineHoldsAllSettingsOfAMaterialUntilAnotherTakesTheSlot() {
        Event[] events = {
            TWO_ENTERED,
            entered("three", day("2026-09-02"), value(THREE, 40).inSlot("1")),
            entered("sand", day("2026-09-03"), sand())
        };

        assertThat(from("2026-09-02T05:00:00Z", events)).hasSize(2);
        assertThat(from("2026-09-03T05:00:00Z", events)).hasSize(1);
    }

    /** With 60 pulse/rev in place of 100: the value at 2 in was entered for pulses that nobody counts any more. */
    @Test
    void aTimelineHoldsWhatWasEnteredForAnotherSensorNoLongerThanThat() {
        CalibrationPoint other = CalibrationPoint.of(
                THREE.material(),
                Samples.chainWith(ShaftSensor.of(Amounts.of(60, SpreadingUnits.PULSE_PER_REVOLUTION))),
                THREE.setting());

        assertThat(from(
                        "2026-09-02T05:00:00Z",
                        TWO_ENTERED,
                        entered("three", day("2026-09-02"), value(other, 40).inSlot("1"))))
                .extracting(
                        entry -> ((TimelineEntry.Value) entry.held()).inForce().point())
                .containsExactly(other);
    }

    @Test
    void whatASlotLostDoesntComeBackIntoTheTimelineWithTheNextValue() {
        assertThat(from(
                        "2026-10-02T05:00:00Z",
                        TWO_ENTERED,
                        event("over", day("2026-10-01"), new What.Overwritten("1")),
                        entered("three", day("2026-10-02"), value(THREE, 40).inSlot("1"))))
                .hasSize(1);
    }
}
