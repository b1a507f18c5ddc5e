package org.gritwright.core.history.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.history.Happenings.THREE;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.calibrated;
import static org.gritwright.core.history.Happenings.changed;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.value;
import static org.gritwright.core.history.Happenings.verified;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.Happenings;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;

class DischargeHistoryTest {
    private static final History YEARS = history(
            calibrated("1", day("2024-10-10"), TWO, 25),
            verified("2", day("2024-12-01"), value(TWO, 25), 4),
            verified("3", day("2024-12-02"), value(TWO, 24), 0),
            verified("4", day("2025-01-02"), value(THREE, 40), 0),
            changed("5", day("2025-08-01"), Change.Part.TIRE),
            changed("6", day("2025-09-01"), Change.Part.HYDRAULIC),
            changed("7", day("2025-09-02"), Change.Part.SENSOR),
            calibrated("8", day("2025-10-10"), TWO, 26));

    private static List<Double> pounds(Stretch stretch) {
        return stretch.implied().stream()
                .map(one ->
                        Amounts.si(DischargePerRevolution.class, one.discharge().value()) / 0.45359237)
                .map(value -> Math.round(value * 1e6) / 1e6)
                .toList();
    }

    /** A correction from 25 to 24 lb/rev after an error of 4 % doesn't set back what leaves per revolution: 25 ÷ 1.04. */
    @Test
    void whatLeavesIsTheValueInForceDividedByOnePlusTheError() {
        DischargeHistory known = DischargeHistory.of(YEARS, TRUCK, TWO.key());

        assertThat(pounds(known.stretches().get(0))).containsExactly(25.0, 24.038462, 24.0);
    }

    @Test
    void aChangeThatConcernsTheMassBeginsAnotherStretch() {
        DischargeHistory known = DischargeHistory.of(YEARS, TRUCK, TWO.key());

        assertThat(known.stretches()).hasSize(2);
        assertThat(known.stretches().get(0).began()).isEmpty();
        assertThat(known.current().began()).map(one -> one.id()).contains("7");
        assertThat(pounds(known.current())).containsExactly(26.0);
    }

    @Test
    void aStretchThatLastsIsThereEvenIfNothingWasCaughtInIt() {
        History history = YEARS.with(List.of(changed("9", day("2026-02-01"), Change.Part.CONVEYOR)));

        assertThat(DischargeHistory.of(history, TRUCK, TWO.key()).current().implied())
                .isEmpty();
    }

    @Test
    void anotherSensorWheelBeginsAnotherStretchEvenIfNobodyWroteItDown() {
        CalibrationPoint other = CalibrationPoint.of(
                Samples.SALT,
                Samples.chainWith(ShaftSensor.of(Amounts.of(50, SpreadingUnits.PULSE_PER_REVOLUTION))),
                TWO.setting());
        History history = YEARS.with(List.of(calibrated("9", day("2026-02-01"), other, 13)));

        assertThat(DischargeHistory.of(history, TRUCK, TWO.key()).current().began())
                .map(one -> one.id())
                .contains("9");
    }

    @Test
    void everyPointThatWasCaughtHasItsHistory() {
        assertThat(DischargeHistory.all(YEARS))
                .extracting(DischargeHistory::point)
                .containsExactly(TWO.key(), THREE.key());
    }

    @Test
    void untilAnInstantOnlyWhatHadHappenedThenCounts() {
        List<Event> events = YEARS.standing(TRUCK);
        for (Event last : events) {
            Instant until = YEARS.instant(last);
            History then = history(events.stream()
                    .filter(event -> !YEARS.instant(event).isAfter(until))
                    .toArray(Event[]::new));

            assertThat(DischargeHistory.until(YEARS, until)).isEqualTo(DischargeHistory.all(then));
        }
        assertThat(DischargeHistory.until(YEARS, YEARS.instant(events.get(0)).minusNanos(1)))
                .isEmpty();
    }

    /** u(k)/k = u(e)/(1 + e), of which the scale's 0.2 % is shared and 0.6 % is the catch's own. */
    @Test
    void theUncertaintyIsDividedByWhatTheErrorGrewToAndTheSharesAreKeptApart() {
        Implied found = DischargeHistory.of(YEARS, TRUCK, TWO.key())
                .stretches()
                .get(0)
                .implied()
                .get(1);

        assertThat(Amounts.si(
                                DischargePerRevolution.class,
                                found.discharge().standardUncertainty().orElseThrow())
                        / found.kilogramsPerRevolution())
                .isCloseTo(Math.hypot(0.006, 0.002), within(1e-12));
        assertThat(found.ownUncertainty()).isCloseTo(0.006, within(1e-12));
    }

    @Test
    void whatIsNeitherCalibrationNorVerificationImpliesNothing() {
        History history = history(
                event("1", day("2026-01-01"), new What.Entered(value(TWO, 25), Optional.empty())),
                Happenings.shown("2", day("2026-01-02"), value(TWO, 25)));

        assertThat(DischargeHistory.all(history)).isEmpty();
        assertThat(DischargeHistory.of(history, TRUCK, TWO.key()).current().implied())
                .isEmpty();
    }
}
