package org.gritwright.core.history;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Events of an invented county's trucks. */
public final class Happenings {
    /** The county's offset in winter. */
    public static final ZoneOffset YARD = ZoneOffset.ofHours(-5);

    /** Road salt at a gate opening of 2 in. */
    public static final CalibrationPoint TWO = Samples.chainAt(2);

    /** Road salt at a gate opening of 3 in. */
    public static final CalibrationPoint THREE = Samples.chainAt(3);

    /** The truck that most of it happens to. */
    public static final String TRUCK = "T-07";

    private static final String SOURCE = "day book";

    private Happenings() {}

    /** A day. */
    public static Since day(String day) {
        return Since.of(LocalDate.parse(day));
    }

    /** An hour of the yard. */
    public static Since hour(String time) {
        return Since.of(OffsetDateTime.parse(time + ":00-05:00"));
    }

    /** Pounds per revolution. */
    public static CalibrationFactor pounds(double value) {
        return CalibrationFactor.of(Amounts.of(value, SpreadingUnits.POUND_PER_REVOLUTION));
    }

    /** A value in a display. */
    public static CalibrationInForce value(CalibrationPoint point, double pounds) {
        return CalibrationInForce.of(point, pounds(pounds), Optional.empty());
    }

    /** An event of the truck. */
    public static Event event(String id, Since at, What what) {
        return Event.of(id, at, TRUCK, what, SOURCE);
    }

    /** A value that was entered. */
    public static Event entered(String id, Since at, CalibrationInForce value) {
        return event(id, at, new What.Entered(value, Optional.empty()));
    }

    /** A value that was seen. */
    public static Event shown(String id, Since at, CalibrationInForce value) {
        return event(id, at, new What.Shown(value));
    }

    /** A verification with one catch of 240 lb, uncertain by 0.6 % of its own and 0.2 % of its scale. */
    public static Event verified(String id, Since at, CalibrationInForce value, double percent) {
        return verified(id, at, value, percent, verdict(percent));
    }

    /** The same with a verdict. */
    public static Event verified(String id, Since at, CalibrationInForce value, double percent, Verdict verdict) {
        return event(
                id,
                at,
                new What.Verified(
                        value,
                        Measured.of(
                                Amounts.of(percent, SpreadingUnits.PERCENT),
                                Amounts.of(Math.hypot(0.6, 0.2) * (1 + percent / 100), SpreadingUnits.PERCENT),
                                Double.POSITIVE_INFINITY),
                        List.of(new SharedError("scale S-1", Amounts.of(0.2, SpreadingUnits.PERCENT))),
                        verdict,
                        1,
                        Samples.pounds(240),
                        Optional.empty()));
    }

    /** By ±4 %. */
    private static Verdict verdict(double percent) {
        return Math.abs(percent) <= 4 ? Verdict.WITHIN_TOLERANCE : Verdict.OUTSIDE_TOLERANCE;
    }

    /** A calibration from three catches, uncertain by 0.5 % of its own and 0.2 % of its scale. */
    public static Event calibrated(String id, Since at, CalibrationPoint point, double pounds) {
        return event(
                id,
                at,
                new What.Calibrated(
                        point,
                        Measured.of(
                                Amounts.of(pounds, SpreadingUnits.POUND_PER_REVOLUTION),
                                Amounts.of(pounds * Math.hypot(0.5, 0.2) / 100, SpreadingUnits.POUND_PER_REVOLUTION),
                                Double.POSITIVE_INFINITY),
                        List.of(new SharedError("scale S-1", Amounts.of(0.2, SpreadingUnits.PERCENT))),
                        3,
                        Optional.empty()));
    }

    /** A correction that a verification called for. */
    public static Event corrected(String id, Since at, CalibrationInForce asFound, double asLeft, String because) {
        return event(id, at, new What.Corrected(asFound, pounds(asLeft), Optional.of(because)));
    }

    /** A change. */
    public static Event changed(String id, Since at, Change.Part part) {
        return event(id, at, new What.Changed(part, Optional.empty()));
    }

    /** The first day of a season. */
    public static Event season(String day) {
        return Event.ofFleet("season " + day, day(day), new What.SeasonStarted("from " + day), SOURCE);
    }

    /** A history. */
    public static History history(Event... events) {
        return History.of(Arrays.asList(events), YARD);
    }
}
