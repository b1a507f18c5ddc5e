package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.fleet.assessment.DriveAssessment;
import org.gritwright.core.range.CommandInterval;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveCurve;
import org.gritwright.core.range.DriveResponse;
import org.gritwright.core.range.RangeSource;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.units.Rounded;

/** What a truck's drive holds, as the report shows it. */
final class DriveTable {
    private static final int DIGITS = 3;

    private DriveTable() {}

    static SheetTable of(DriveAssessment drive) {
        List<Row> rows = new ArrayList<>();
        drive.range().ifPresent(range -> {
            rows.add(Row.of("slowest steady", Cell.of(Figures.text(range.lowest(), DIGITS))));
            rows.add(Row.of("fastest steady", Cell.of(Figures.text(range.highest(), DIGITS))));
        });
        drive.source().ifPresent(source -> rows.add(Row.of("known", Cell.of(words(source)))));
        drive.response().ifPresent(response -> {
            for (Direction direction : Direction.values()) {
                response.curve(direction).ifPresent(curve -> rows.addAll(rows(direction, curve)));
            }
            rows.addAll(more(response));
        });
        return new SheetTable("What the drive holds, turns of the shaft by command", List.of(), rows, List.of());
    }

    private static String words(RangeSource source) {
        return switch (source) {
            case BY_EYE -> "set by eye";
            case FROM_MAKER -> "stated by the maker";
            case MEASURED -> "measured";
        };
    }

    private static List<Row> rows(Direction direction, DriveCurve curve) {
        String way = direction == Direction.RISING ? "rising, " : "falling, ";
        List<Row> rows = new ArrayList<>();
        rows.add(Row.of(
                way + (direction == Direction.RISING ? "starts" : "stops"), Cell.of(interval(curve.threshold()))));
        curve.saturation().ifPresent(knee -> rows.add(Row.of(way + "no faster", Cell.of("from " + interval(knee)))));
        return rows;
    }

    private static List<Row> more(DriveResponse response) {
        List<Row> rows = new ArrayList<>();
        response.hysteresis()
                .ifPresent(hysteresis ->
                        rows.add(Row.of("hysteresis", Cell.of(Figures.text(hysteresis.ofSpan(), 2) + " of the span"))));
        response.curve(Direction.RISING)
                .flatMap(DriveCurve::resolution)
                .ifPresent(step -> rows.add(Row.of("one step", Cell.of(Figures.text(step, 2)))));
        return rows;
    }

    private static String interval(CommandInterval interval) {
        return Rounded.text(interval.from().quantity(), DIGITS) + " to "
                + Rounded.text(interval.to().quantity(), DIGITS);
    }
}
