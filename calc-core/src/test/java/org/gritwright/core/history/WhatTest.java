package org.gritwright.core.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.calibrated;
import static org.gritwright.core.history.Happenings.corrected;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.entered;
import static org.gritwright.core.history.Happenings.pounds;
import static org.gritwright.core.history.Happenings.shown;
import static org.gritwright.core.history.Happenings.value;
import static org.gritwright.core.history.Happenings.verified;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class WhatTest {
    private static final Since DAY = day("2026-10-19");
    private static final What.Used USED = used(12_000, 300_000, 2);
    private static final What.RangeMeasured RANGE = new What.RangeMeasured(
            Amounts.of(5, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(60, SpreadingUnits.REVOLUTION_PER_MINUTE));
    private static final What.Delivered LOT = new What.Delivered(Samples.SALT, "L-9", Optional.empty());

    private static What.Used used(double turns, double pounds, int storms) {
        return new What.Used(
                "salt",
                Optional.empty(),
                Optional.of(Amounts.of(turns, SpreadingUnits.REVOLUTION)),
                Optional.of(Amounts.of(turns / 100, SpreadingUnits.REVOLUTION)),
                Samples.pounds(pounds),
                storms);
    }

    @Test
    void everyEventIsToldInAFewWords() {
        assertThat(List.of(
                        calibrated("1", DAY, TWO, 24.6).what(),
                        verified("1", DAY, value(TWO, 26), 5.84).what(),
                        verified("1", DAY, value(TWO, 26), -0.96).what(),
                        entered("1", DAY, value(TWO, 26)).what(),
                        new What.Entered(value(TWO, 26), Optional.of(pounds(26))),
                        new What.Entered(value(TWO, 26), Optional.of(pounds(62))),
                        corrected("1", DAY, value(TWO, 26), 24.6, "v").what(),
                        shown("1", DAY, value(TWO, 26)).what(),
                        new What.Overwritten("2"),
                        new What.SetBack(),
                        new What.Changed(Change.Part.GATE, Optional.empty()),
                        new What.Changed(Change.Part.GATE, Optional.of("bent")),
                        RANGE,
                        USED,
                        new What.Used(
                                "salt",
                                Optional.of(DAY),
                                Optional.empty(),
                                Optional.empty(),
                                Samples.pounds(300_000),
                                0),
                        LOT,
                        new What.SeasonStarted("2026/27"),
                        new What.Withdrawn()))
                .extracting(What::words)
                .containsExactly(
                        "salt at 2 in calibrated: 24.6 lb/rev",
                        "salt at 2 in verified with 26 lb/rev: error 5.8 %, outside tolerance",
                        "salt at 2 in verified with 26 lb/rev: error -1 %, within tolerance",
                        "salt at 2 in entered as 26 lb/rev",
                        "salt at 2 in entered as 26 lb/rev",
                        "salt at 2 in entered as 26 lb/rev, read back as 62 lb/rev",
                        "salt at 2 in corrected from 26 lb/rev to 24.6 lb/rev",
                        "salt at 2 in shown as 26 lb/rev",
                        "slot 2 overwritten",
                        "controller reset or replaced",
                        "gate changed",
                        "gate changed: bent",
                        "drive measured from 5 rev/min to 60 rev/min",
                        "laid 300000 lb of salt",
                        "laid 300000 lb of salt since 2026-10-19",
                        "lot L-9 of salt delivered",
                        "season 2026/27 started",
                        "withdrawn");
    }

    @Test
    void whatIsAboutAPointNamesIt() {
        assertThat(List.of(
                        calibrated("1", DAY, TWO, 24.6).what(),
                        verified("1", DAY, value(TWO, 26), 5.84).what(),
                        entered("1", DAY, value(TWO, 26)).what(),
                        corrected("1", DAY, value(TWO, 26), 24.6, "v").what(),
                        shown("1", DAY, value(TWO, 26)).what()))
                .allSatisfy(what -> assertThat(what.point()).contains(TWO));
        assertThat(USED.point()).isEmpty();
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        for (What what : List.of(
                calibrated("1", DAY, TWO, 24.6).what(),
                verified("1", DAY, value(TWO, 26), 5.84).what(),
                entered("1", DAY, value(TWO, 26)).what(),
                corrected("1", DAY, value(TWO, 26), 24.6, "v").what(),
                shown("1", DAY, value(TWO, 26)).what(),
                new What.Overwritten("2"),
                new What.Changed(Change.Part.GATE, Optional.empty()),
                RANGE,
                USED,
                LOT,
                new What.SeasonStarted("2026/27"))) {
            assertNamesWhatIsMissing((Record) what);
        }
        assertNamesWhatIsMissing(entered("1", DAY, value(TWO, 26)));
        assertNamesWhatIsMissing(new Event.Superseding("1", "typed 26 for 27"));
    }

    private static What.Calibrated calibration(int catches, SharedError... shared) {
        return new What.Calibrated(
                TWO,
                Measured.once(Amounts.of(25, SpreadingUnits.POUND_PER_REVOLUTION)),
                List.of(shared),
                catches,
                Optional.empty());
    }

    private static What.Verified verification(double percent, int catches, SharedError... shared) {
        return new What.Verified(
                value(TWO, 25),
                Measured.once(Amounts.of(percent, SpreadingUnits.PERCENT)),
                List.of(shared),
                Verdict.UNDECIDABLE,
                catches,
                Samples.pounds(240),
                Optional.empty());
    }

    @Test
    void numbersThatCantBeAreRefused() {
        assertThat(calibration(1).catches()).isEqualTo(1);
        assertThat(verification(-99.9, 1).catches()).isEqualTo(1);
        assertThat(used(0, 0, 0).storms()).isZero();
        assertRefused("catches of a calibration must be 1 or more: 0", () -> calibration(0));
        assertRefused("catches of a verification must be 1 or more: 0", () -> verification(1, 0));
        assertRefused("calibration error must be above −100 %: -100 %", () -> verification(-100, 1));
        assertRefused("storms must be 0 or more: -1", () -> used(0, 0, -1));
        assertRefused("revolutions must be 0 or more: -1 rev", () -> used(-1, 0, 0));
        assertRefused(
                "unattributed revolutions must be 0 or more: -1 rev",
                () -> new What.Used(
                        "salt",
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(Amounts.of(-1, SpreadingUnits.REVOLUTION)),
                        Samples.pounds(1),
                        0));
    }

    @Test
    void anErrorThatOthersShareIsThereOnce() {
        SharedError scale = new SharedError("scale S-1", Amounts.of(0.2, SpreadingUnits.PERCENT));
        SharedError again = new SharedError("scale S-1", Amounts.of(0.3, SpreadingUnits.PERCENT));

        assertRefused("shared errors must be each id once: [scale S-1, scale S-1]", () -> calibration(1, scale, again));
        assertRefused(
                "shared errors must be each id once: [scale S-1, scale S-1]", () -> verification(1, 1, scale, again));
    }

    /** Of a chain counts pounds per revolution, and of a flow meter pulses per gallon. */
    @Test
    void aFactorThatThePointCantHaveIsRefused() {
        CalibrationFactor pulses = CalibrationFactor.of(Amounts.of(1200, SpreadingUnits.PULSE_PER_US_GALLON));

        String refusal = "calibration must be by mass, as salt is granular: in pulse/gal";
        assertRefused(refusal, () -> new What.Entered(value(TWO, 26), Optional.of(pulses)));
        assertRefused(refusal, () -> new What.Corrected(value(TWO, 26), pulses, Optional.empty()));
    }

    @Test
    void textsThatSayNothingAreRefused() {
        assertThatThrownBy(() -> corrected("1", DAY, value(TWO, 26), 24.6, " "))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("id of the verification must be");
        assertThatThrownBy(() -> Event.of("1", DAY, " ", new What.SetBack(), "day book"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("truck of event 1 must be");
        Event signed = entered("1", DAY, value(TWO, 26));
        assertThatThrownBy(() -> signed.by(" "))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("person of event 1 must be");
    }

    @Test
    void aSlotHoldsSomethingKnownOrLostIt() {
        assertRefused(
                "values of slot 1 must be known, or lost by an event: []",
                () -> new SlotState("1", Instant.EPOCH, List.of(), Optional.empty()));
        assertRefused(
                "events of a contradiction must be one or more: none",
                () -> new Contradiction(Contradiction.Kind.TWO_AT_ONCE, List.of()));
    }

    @Test
    void whatIsOddAndHowSureAValueIsHaveWordsOfTheirOwn() {
        assertThat(Contradiction.Kind.values())
                .extracting(Contradiction.Kind::words)
                .doesNotHaveDuplicates()
                .contains("the display shows a value that nobody entered");
        assertThat(Standing.values())
                .extracting(Standing::words)
                .containsExactly("proven", "can't tell", "wrong", "not checked", "changed since");
    }
}
