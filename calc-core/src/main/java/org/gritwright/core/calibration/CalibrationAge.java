package org.gritwright.core.calibration;

import static org.gritwright.core.finding.Argument.date;

import java.time.LocalDate;
import java.time.Period;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;

/** Whether a calibration is still of this season and of this truck as it is. */
public final class CalibrationAge {
    /**
     * How long before the season's start a calibration may be made and still be one of that season (common practice, no
     * source: spreaders are calibrated in late summer and autumn).
     */
    public static final Period PREPARATION = Period.ofDays(120);

    private CalibrationAge() {}

    /**
     * Findings about the age of a calibration. When to calibrate again: every spreader before each season and after any
     * change in hydraulics or gate (University of Delaware T² Center, 2020); when type, grade or supplier of the
     * material changes (UK national winter service research group). A change on the day of the calibration is taken to
     * have been made before it.
     *
     * @param calibratedOn the day of the calibration
     * @param seasonStart the first day of the season it is to serve
     * @param preparation how long before the season's start it may have been made
     * @param changes changes of the truck and the material, in any order
     * @return the findings, possibly none
     */
    public static List<Finding> findings(
            LocalDate calibratedOn, LocalDate seasonStart, Period preparation, List<Change> changes) {
        List<Finding> findings = new ArrayList<>();
        if (calibratedOn.isBefore(seasonStart.minus(preparation))) {
            findings.add(Finding.of(
                    FindingCode.CALIBRATION_BEFORE_SEASON,
                    Map.of("calibrated", date(calibratedOn), "season", date(seasonStart))));
        }
        for (Change change : changes) {
            if (calibratedOn.isBefore(change.on())) {
                findings.add(Finding.of(
                        FindingCode.CALIBRATION_BEFORE_CHANGE,
                        Map.of(
                                "calibrated", date(calibratedOn),
                                "change", change.part().term(),
                                "changed", date(change.on()))));
            }
        }
        return List.copyOf(findings);
    }
}
