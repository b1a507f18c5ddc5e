package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.date;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.ChangeEntry;
import org.gritwright.core.fleet.day.StatedRangeEntry;

/** Whether the range that is known of a drive is of the truck as it is. */
final class DriveAge {
    private DriveAge() {}

    /**
     * The last change after the day that a stated range is of. As with a calibration, a change of the same day is taken to have been
     * made before. A range without a day may be from before any change of the hydraulics; to call it out of date for a sensor, that
     * nobody says when it was read is too little.
     */
    static Optional<Finding> of(DriveAssessment drive, Optional<StatedRangeEntry> stated, List<ChangeEntry> changes) {
        boolean measuredNow =
                drive.response().flatMap(response -> response.workingRange()).isPresent();
        return measuredNow
                ? Optional.empty()
                : stated.flatMap(range -> changes.stream()
                        .filter(change -> isAfter(change, range.on()))
                        .max(Comparator.comparing(ChangeEntry::on))
                        .map(change -> Finding.of(
                                FindingCode.DRIVE_RANGE_BEFORE_CHANGE,
                                Map.of("change", change.part().term(), "changed", date(change.on())))));
    }

    private static boolean isAfter(ChangeEntry change, Optional<LocalDate> on) {
        return switch (change.part()) {
            case HYDRAULIC -> on.map(change.on()::isAfter).orElse(true);
            case SENSOR -> on.filter(change.on()::isAfter).isPresent();
            case TIRE, MATERIAL, GATE, CONVEYOR -> false;
        };
    }

    static boolean isOutOfDate(DriveAssessment drive) {
        return drive.findings().stream().anyMatch(found -> found.code() == FindingCode.DRIVE_RANGE_BEFORE_CHANGE);
    }
}
