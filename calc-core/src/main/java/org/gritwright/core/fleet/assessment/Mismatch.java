package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.date;
import static org.gritwright.core.finding.Argument.name;
import static org.gritwright.core.finding.Argument.number;
import static org.gritwright.core.finding.Argument.time;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.verification.Verification;

/** Verification catches that say nothing about the value they seem to have been made for. */
final class Mismatch {

    private Mismatch() {}

    /** The display was set for another point than the catch's: another material, another setting, or both. */
    static List<Finding> otherPoint(Verification verification, CalibrationInForce set) {
        CalibrationPoint caught = verification.source().point();
        List<Finding> findings = new ArrayList<>();
        if (!set.point().material().name().equals(caught.material().name())) {
            findings.add(Finding.of(
                    FindingCode.DISPLAY_SET_FOR_ANOTHER_MATERIAL,
                    Map.of(
                            "at", at(verification),
                            "set", name(set.point().material().name()),
                            "caught", name(caught.material().name()))));
        }
        if (!set.point().setting().isSameAs(caught.setting())) {
            findings.add(Finding.of(
                    FindingCode.DISPLAY_SET_FOR_ANOTHER_SETTING,
                    Map.of(
                            "at", at(verification),
                            "set", number(set.point().setting().quantity().orElseThrow()),
                            "caught", number(caught.setting().quantity().orElseThrow()))));
        }
        return findings;
    }

    /** The value was entered after the catch. */
    static List<Finding> older(Verification verification, CalibrationInForce entry) {
        return List.of(Finding.of(
                FindingCode.CATCH_BEFORE_ENTRY,
                Map.of(
                        "at", at(verification),
                        "since", date(entry.since().orElseThrow().day()))));
    }

    /** The catch was made with another value than those listed for its point, and nothing explains where it comes from. */
    static Finding otherValue(Verification verification, CalibrationInForce entry) {
        return Finding.of(
                FindingCode.OTHER_VALUE_IN_FORCE,
                Map.of(
                        "at", at(verification),
                        "caught",
                                number(verification.source().inForce().factor().value()),
                        "listed", number(entry.factor().value())));
    }

    /** All catches at a point, with tares of 0. */
    static Finding noTare(CalibrationPoint point) {
        return Finding.of(FindingCode.NO_TARE, Map.of("point", name(point.toString())));
    }

    /** The date of a catch is far from the day's. */
    static Finding otherDay(OffsetDateTime at, LocalDate day) {
        return Finding.of(FindingCode.CATCH_OF_ANOTHER_DAY, Map.of("at", time(at), "day", date(day)));
    }

    /** Two points so close that they are probably meant to be one. */
    static Finding nearMiss(CalibrationPoint one, CalibrationPoint other) {
        return Finding.of(
                FindingCode.SETTINGS_NEARLY_THE_SAME,
                Map.of(
                        "first", number(one.setting().quantity().orElseThrow()),
                        "second", number(other.setting().quantity().orElseThrow())));
    }

    private static Argument at(Verification verification) {
        return time(verification.source().observation().at());
    }
}
