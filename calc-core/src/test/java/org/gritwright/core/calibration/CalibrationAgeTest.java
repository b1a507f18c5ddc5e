package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.only;

import java.time.LocalDate;
import java.time.Period;
import java.util.List;
import java.util.Map;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every spreader before each season and after any change in hydraulics or gate: University of Delaware T² Center, 2020.
 * When the material changes: UK national winter service research group.
 */
class CalibrationAgeTest {
    private static final LocalDate SEASON = LocalDate.of(2026, 11, 1);
    private static final Period FOUR_WEEKS = Period.ofWeeks(4);

    private static List<Finding> findings(LocalDate calibratedOn, Change... changes) {
        return CalibrationAge.findings(calibratedOn, SEASON, FOUR_WEEKS, List.of(changes));
    }

    @Test
    void aCalibrationInTheSeasonOrItsPreparationIsOfTheSeason() {
        assertThat(findings(SEASON.plusDays(30))).isEmpty();
        assertThat(findings(SEASON)).isEmpty();
        assertThat(findings(SEASON.minusDays(28))).isEmpty();
    }

    @Test
    void anOlderOneIsNot() {
        Finding finding = only(FindingCode.CALIBRATION_BEFORE_SEASON, findings(SEASON.minusDays(29)));

        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(finding.arguments())
                .isEqualTo(Map.of(
                        "calibrated", Argument.date(LocalDate.of(2026, 10, 3)),
                        "season", Argument.date(LocalDate.of(2026, 11, 1))));
        assertThat(finding.sentence())
                .isEqualTo("The calibration of 2026-10-03 is older than the season that starts 2026-11-01.");
    }

    @Test
    void preparationIsAHundredAndTwentyDays() {
        // common practice, no source
        assertThat(CalibrationAge.PREPARATION).isEqualTo(Period.ofDays(120));
    }

    @ParameterizedTest
    @CsvSource({"HYDRAULIC, hydraulic", "SENSOR, sensor", "TIRE, tire", "MATERIAL, material"})
    void aLaterChangeOfAnyPartIsAFinding(Change.Part part, String words) {
        Finding finding =
                only(FindingCode.CALIBRATION_BEFORE_CHANGE, findings(SEASON, new Change(SEASON.plusDays(1), part)));

        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(finding.sentence())
                .isEqualTo("The calibration of 2026-11-01 is older than the " + words + " change of 2026-11-02.");
    }

    @Test
    void aChangeOnTheDayOrBeforeIsNone() {
        assertThat(findings(SEASON, new Change(SEASON, Change.Part.TIRE))).isEmpty();
        assertThat(findings(SEASON, new Change(SEASON.minusDays(1), Change.Part.SENSOR)))
                .isEmpty();
    }

    @Test
    void everyLaterChangeIsNamed() {
        assertThat(codes(findings(
                        SEASON.minusYears(1),
                        new Change(SEASON.minusDays(60), Change.Part.HYDRAULIC),
                        new Change(SEASON.minusDays(50), Change.Part.MATERIAL))))
                .containsExactly(
                        FindingCode.CALIBRATION_BEFORE_SEASON,
                        FindingCode.CALIBRATION_BEFORE_CHANGE,
                        FindingCode.CALIBRATION_BEFORE_CHANGE);
    }
}
