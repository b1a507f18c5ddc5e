package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_KILOMETER;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_SECOND;
import static org.gritwright.units.SpreadingUnits.KILOMETER_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.MILE_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.envelope.Demand;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.envelope.Limit;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

/** By hand: 6 lb/rev at 5 to 50 rev/min are 30 to 300 lb/min; 600 lb/mi at 30 mi/h are 300 lb/min. */
class EnvelopeChartTest {
    private static final WorkingRange RANGE = range(5);
    private static final Envelope SIX = Envelope.of(
            Measured.of(Amounts.of(6, POUND_PER_REVOLUTION), Amounts.of(0.06, POUND_PER_REVOLUTION), 8), RANGE);

    private static WorkingRange range(double lowest) {
        return new WorkingRange(Amounts.of(lowest, REVOLUTION_PER_MINUTE), Amounts.of(50, REVOLUTION_PER_MINUTE));
    }

    private static Demand road(String name, double poundsPerMile, double slowest, double fastest) {
        return new Demand(
                name,
                Amounts.of(poundsPerMile, POUND_PER_MILE),
                Amounts.of(slowest, MILE_PER_HOUR),
                Amounts.of(fastest, MILE_PER_HOUR));
    }

    private static List<Plot.Shape> shapes(Picture picture, String look) {
        return picture.shapes().stream()
                .filter(shape -> shape.look().equals(look))
                .toList();
    }

    private static double[] start(Plot.Shape shape) {
        String[] place = shape.d().substring(1).split("[ mLZ]", -1);
        return new double[] {Double.parseDouble(place[0]), Double.parseDouble(place[1])};
    }

    /** Whether a place is in a closed path of straight lines, by the crossings of a ray. */
    private static boolean isInside(Plot.Shape region, double[] place) {
        double[][] corners = Arrays.stream(
                        region.d().substring(1, region.d().length() - 1).split("L", -1))
                .map(corner -> Arrays.stream(corner.split(" ", -1))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
        boolean inside = false;
        for (int i = 0, j = corners.length - 1; i < corners.length; j = i++) {
            double[] a = corners[i];
            double[] b = corners[j];
            if (a[1] > place[1] != b[1] > place[1]
                    && place[0] < (b[0] - a[0]) * (place[1] - a[1]) / (b[1] - a[1]) + a[0]) {
                inside = !inside;
            }
        }
        return inside;
    }

    @Test
    void whatIsHeldIsADotInTheRegionAndWhatIsNotACrossOutsideIt() {
        // 600 lb/mi: held at 10 mi/h (100 lb/min), not at 40 mi/h (400 lb/min), not at 2 mi/h (20 lb/min).
        Picture picture =
                new EnvelopeChart(SIX, List.of(road("hill road", 600, 10, 40), road("lot", 600, 2, 2))).picture();

        Plot.Shape region = shapes(picture, "band").get(0);
        List<Plot.Shape> dots = shapes(picture, "mark");
        List<Plot.Shape> crosses = shapes(picture, "stroke").stream()
                .filter(shape -> shape.d().endsWith("m-5-5l10 10m0-10l-10 10"))
                .toList();
        assertThat(dots)
                .singleElement()
                .satisfies(dot -> assertThat(isInside(region, start(dot))).isTrue());
        assertThat(crosses)
                .hasSize(2)
                .allSatisfy(cross -> assertThat(isInside(region, start(cross))).isFalse());
        assertThat(start(crosses.get(0))[1]).isEqualTo(start(dots.get(0))[1]);
        assertThat(start(crosses.get(0))[0]).isGreaterThan(start(dots.get(0))[0]);
        assertThat(picture.labels()).extracting(Plot.Label::text).contains("1", "2", "road speed, mi/h", "rate, lb/mi");
        assertThat(picture.description()).contains("2 things asked for");
    }

    @Test
    void aLimitOnTheEdgeIsHeld() {
        Picture picture = new EnvelopeChart(SIX, List.of(road("edge", 600, 3, 30))).picture();

        assertThat(shapes(picture, "mark")).hasSize(2);
    }

    @Test
    void nothingAskedForIsNoReasonToDrawNothing() {
        Picture picture = new EnvelopeChart(SIX, List.of()).picture();

        assertThat(shapes(picture, "band")).hasSize(1);
        assertThat(shapes(picture, "mark")).isEmpty();
    }

    @Test
    void anEdgeThatIsBeyondThePictureIsNotDrawn() {
        // 300 lb/min at 45 mi/h are 400 lb/mi; at 115 the picture ends.
        Picture picture = new EnvelopeChart(SIX, List.of(road("path", 100, 10, 20))).picture();

        assertThat(shapes(picture, "solid"))
                .hasSize(1)
                .allSatisfy(shape -> assertThat(shape.d()).contains("L"));
    }

    @Test
    void whereNothingIsHeldOnlyAxesAndMarksAreDrawn() {
        // Grains run at 20 lb/min at the most, below the 30 of the slowest shaft.
        Envelope none = SIX.withGreatestFlow(Amounts.of(20 * 0.45359237 / 60, KILOGRAM_PER_SECOND));
        Picture picture = new EnvelopeChart(none, List.of(road("hill road", 300, 10, 30))).picture();

        assertThat(shapes(picture, "band")).isEmpty();
        assertThat(shapes(picture, "mark")).isEmpty();
    }

    @Test
    void theTableSaysFromWhereToWhereARateHoldsAndWhatIsLaidBeyond() {
        EnvelopeSheet sheet = EnvelopeSheet.of("road salt, 2 in", SIX, List.of(road("hill road", 600, 2, 40)), false);

        SheetTable.Row row = sheet.table().rows().get(0);
        assertThat(row.head()).isEqualTo("1 hill road");
        assertThat(row.cells())
                .containsExactly(
                        new Cell("600 lb/mi", "169.1 kg/km"),
                        new Cell("3.00 mi/h", "no steady shaft below"),
                        new Cell("30.0 mi/h", "conveyor at its fastest"),
                        // 30 lb/min at 2 mi/h, 300 at 40.
                        Cell.of("2 mi/h: lays 900 lb/mi; 40 mi/h: lays 450 lb/mi"));
        assertThat(sheet.table().notes())
                .containsExactly("With a steady shaft of 5 rev/min to 50 rev/min, 6.000 lb/rev ± 0.14.");
    }

    @Test
    void aTruckInKilogramsIsDrawnInMetricUnitsWhateverIsAskedFor() {
        Envelope metric = Envelope.of(Measured.once(Amounts.of(3, KILOGRAM_PER_REVOLUTION)), range(0));
        EnvelopeSheet sheet = EnvelopeSheet.of("sand", metric, List.of(road("hill road", 300, 5, 5)), true);

        assertThat(sheet.chart().labels()).extracting(Plot.Label::text).contains("road speed, km/h", "rate, kg/km");
        SheetTable.Row row = sheet.table().rows().get(0);
        assertThat(row.cells().get(1)).isEqualTo(Cell.of("a stand"));
        assertThat(row.cells().get(3)).isEqualTo(Cell.of("5 mi/h: holds"));
        assertThat(sheet.table().notes()).anyMatch(note -> note.startsWith("It is set by hand"));
    }

    @Test
    void theScaleReachesBeyondWhatIsAskedFor() {
        Demand fast = new Demand(
                "motorway",
                Amounts.of(100, KILOGRAM_PER_KILOMETER),
                Amounts.of(60, KILOMETER_PER_HOUR),
                Amounts.of(90, KILOMETER_PER_HOUR));
        Picture picture = new EnvelopeChart(
                        Envelope.of(Measured.once(Amounts.of(3, KILOGRAM_PER_REVOLUTION)), RANGE), List.of(fast))
                .picture();

        double rightEdge = shapes(picture, "axis").stream()
                .map(Plot.Shape::d)
                .filter(d -> d.contains("L"))
                .mapToDouble(
                        d -> Double.parseDouble(d.substring(d.indexOf('L') + 1).split(" ", -1)[0]))
                .max()
                .orElseThrow();
        double leftEdge = shapes(picture, "axis").stream()
                .map(Plot.Shape::d)
                .filter(d -> d.contains("L"))
                .mapToDouble(d -> Double.parseDouble(d.substring(1).split("[ L]", -1)[0]))
                .min()
                .orElseThrow();
        // 90 of 1.15 × 90.
        assertThat((start(shapes(picture, "mark").get(1))[0] - leftEdge) / (rightEdge - leftEdge))
                .isCloseTo(1 / 1.15, within(1e-3));
        assertThat(Optional.of(picture).map(Picture::labels).orElseThrow())
                .extracting(Plot.Label::text)
                .contains("100");
    }

    @Test
    void everyLimitHasFewWords() {
        assertThat(Arrays.stream(Limit.values()).map(EnvelopeChart::words)).doesNotHaveDuplicates();
    }
}
