package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.goodAugerCatches;
import static org.gritwright.core.fleet.assessment.Driven.first;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withNothingInForce;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.observation.Conditions;
import org.junit.jupiter.api.Test;

class ToDoListTest {
    private static PointHistory calibrated(LocalDate day, List<CalibrationCatch> catches) {
        return new PointHistory(
                AUGER_POINT,
                List.of(),
                Optional.of(Calibration.from(catches.stream()
                        .map(one -> CalibrationCatch.of(one.observation().under(Conditions.NONE.withScaleZeroed())))
                        .toList())),
                List.of(),
                one -> Optional.empty(),
                Tolerance.percent(4),
                day);
    }

    /** Ten times what an auger can carry. */
    private static PointHistory impossible() {
        return calibrated(DAY, List.of(augerCatch(1185, 2000)));
    }

    @Test
    void aDayIsContradictedByAFaultOrByADoubtfulEntryAnywhere() {
        PointHistory good = calibrated(DAY, goodAugerCatches());
        PointHistory ofAnotherDay = calibrated(DAY.plusDays(60), goodAugerCatches());
        List<Finding> faults = impossible().findings().stream()
                .filter(one -> one.severity() == Severity.ERROR)
                .toList();
        List<Finding> warnings = Stream.of(good, ofAnotherDay)
                .flatMap(one -> one.findings().stream())
                .filter(one -> one.severity() != Severity.ERROR)
                .toList();

        assertThat(faults).isNotEmpty();
        assertThat(warnings).isNotEmpty();
        assertThat(ToDoList.isContradicted(List.of(good), List.of())).isFalse();
        assertThat(ToDoList.isContradicted(List.of(good), warnings)).isFalse();
        assertThat(ToDoList.isContradicted(List.of(good), faults)).isTrue();
        assertThat(ToDoList.isContradicted(List.of(good, impossible()), List.of()))
                .isTrue();
        assertThat(ToDoList.isContradicted(List.of(good, ofAnotherDay), List.of()))
                .isTrue();
    }

    /** Caught at 300 lb without a count, so that only the delivery is right. */
    private static TruckDay uncounted() {
        return withRoadSpeed(
                with(idle("T-1"), verificationCatch("5.2 lb/rev", 120, entry(9, 2, 300, Optional.empty()))), 13_000);
    }

    @Test
    void aDeliveryThatIsRightIsCalibratedWhereNobodySaysByWhat() {
        assertThat(first(day(withNothingInForce(uncounted()))).toDo())
                .extracting(ToDo::toString)
                .containsExactly("Calibrate: salt at 2 in");
        assertThat(first(day(uncounted())).toDo()).isEmpty();
        assertThat(first(day(with(withNothingInForce(uncounted()), calibrationCatch(8, 2))))
                        .toDo())
                .isEmpty();
    }

    @Test
    void everyStepHasItsWords() {
        assertThat(TankStep.values())
                .extracting(TankStep::words)
                .doesNotHaveDuplicates()
                .doesNotContain("");
        assertThat(TankStep.NOTHING.words()).isEqualTo("Nothing to do");
        assertThat(RouteAssessment.Status.values())
                .extracting(RouteAssessment.Status::words)
                .doesNotHaveDuplicates()
                .doesNotContain("");
        assertThat(RouteAssessment.Status.HELD.words()).isEqualTo("can do it");
    }

    @Test
    void aReasonIsToldToAThousandCharacters() {
        String longest = "x".repeat(1000);

        assertThat(new Refusal("/trucks/0", "", "field", "given", longest).value())
                .isEqualTo(longest);
        assertThat(new Refusal("/trucks/0", "", "field", "given", longest + "y").value())
                .isEqualTo("x".repeat(999) + "…");
    }
}
