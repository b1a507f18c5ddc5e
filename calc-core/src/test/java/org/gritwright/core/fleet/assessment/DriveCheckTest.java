package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.RANGE;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.fleet.assessment.Driven.measured;
import static org.gritwright.core.fleet.assessment.Driven.run;
import static org.gritwright.core.fleet.assessment.Driven.stated;
import static org.gritwright.core.fleet.assessment.Driven.twoToTwentyEight;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.RangeSource;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of a drive in several places, at its limits. */
class DriveCheckTest {
    private static DriveAssessment assessed(DriveEntry entry, double gearRatio) {
        return DriveCheck.of(entry.response(), entry.stated(), Amounts.of(gearRatio, SpreadingUnits.ONE));
    }

    @Test
    void bothEndsOfARangeAreWithinIt() {
        double lowest = DriveCheck.si(RANGE.lowest());
        double highest = DriveCheck.si(RANGE.highest());

        assertThat(DriveCheck.isWithin(RANGE, lowest)).isTrue();
        assertThat(DriveCheck.isWithin(RANGE, highest)).isTrue();
        assertThat(DriveCheck.isWithin(RANGE, Math.nextDown(lowest))).isFalse();
        assertThat(DriveCheck.isWithin(RANGE, Math.nextUp(highest))).isFalse();
    }

    /** 28 rev/min measured: a gear ratio of 1.22 makes 22.95 of them, and one of 1.25 makes 22.4. */
    @ParameterizedTest
    @CsvSource({
        "5.2, 0.4, 5.4, STATED_RANGE_OF_OTHER_SHAFT",
        "5.2, 10, 145.6, STATED_RANGE_OF_OTHER_SHAFT",
        "5.2, 0.4, 6.2, DRIVE_RANGE_DISAGREES",
        "5.2, 0.4, 4.7, DRIVE_RANGE_DISAGREES",
        "1.25, 1.6, 22.4, STATED_RANGE_OF_OTHER_SHAFT",
        "1.2, 1.6, 23.3, DRIVE_RANGE_DISAGREES"
    })
    void aRangeAGearRatioAwayIsOfTheOtherShaft(double gearRatio, double lowest, double highest, FindingCode code) {
        DriveEntry both = twoToTwentyEight().with(Driven.range(lowest, highest, RangeSource.FROM_MAKER));

        assertThat(codes(assessed(both, gearRatio).findings())).containsExactly(code);
    }

    private static DriveAssessment with(Finding... findings) {
        return new DriveAssessment(Optional.empty(), Optional.empty(), List.of(findings));
    }

    private static Finding changed() {
        return Finding.of(
                FindingCode.DRIVE_RANGE_BEFORE_CHANGE,
                Map.of("change", Change.Part.HYDRAULIC.term(), "changed", Argument.date(LocalDate.of(2026, 8, 12))));
    }

    @Test
    void aRangeFromBeforeAChangeIsOutOfDateButNoContradictionAndNoWear() {
        assertThat(DriveCheck.contradictions(with(changed()))).isEmpty();
        assertThat(DriveCheck.isNarrower(with(changed()))).isFalse();
        assertThat(DriveAge.isOutOfDate(with(changed()))).isTrue();
    }

    @Test
    void aNarrowerRangeThanBeforeIsWearAndNotOutOfDate() {
        DriveAssessment worn = assessed(twoToTwentyEight().with(Driven.range(2, 34, RangeSource.MEASURED)), 5.2);

        assertThat(codes(worn.findings())).containsExactly(FindingCode.DRIVE_RANGE_NARROWER);
        assertThat(DriveCheck.isNarrower(worn)).isTrue();
        assertThat(DriveCheck.contradictions(worn)).isEmpty();
        assertThat(DriveAge.isOutOfDate(worn)).isFalse();
    }

    @Test
    void aContradictionIsNoWear() {
        DriveAssessment disagrees = assessed(twoToTwentyEight().with(Driven.range(2, 34, RangeSource.FROM_MAKER)), 5.2);

        assertThat(DriveCheck.contradictions(disagrees).toList()).isEqualTo(disagrees.findings());
        assertThat(DriveCheck.isNarrower(disagrees)).isFalse();
    }

    @Test
    void aShaftThatNeverTurnedLeavesTheRangeThatIsStated() {
        DriveEntry still =
                measured(run(Direction.RISING, 30, 0, 60, 0, 100, 0)).with(Driven.range(2, 28, RangeSource.BY_EYE));

        assertThat(assessed(still, 5.2).source()).contains(RangeSource.BY_EYE);
        assertThat(assessed(still, 5.2).range()).contains(RANGE);
        assertThat(assessed(stated(2, 28), 5.2).source()).contains(RangeSource.FROM_MAKER);
        assertThat(assessed(twoToTwentyEight(), 5.2).source()).contains(RangeSource.MEASURED);
    }
}
