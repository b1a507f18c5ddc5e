package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class CurveChartTest {
    private static final Pattern POINT = Pattern.compile("[ML]([-0-9.]+) ([-0-9.]+)");

    /** A point of the picture. */
    private record Place(double x, double y) {}

    private static Picture picture(DischargeCurve curve) {
        return new CurveChart(curve).picture();
    }

    /** The marks of both parts, catch by catch, the upper part's first. */
    private static List<Place> marks(Picture picture) {
        return paths(picture, "mark").stream().map(outline -> outline.get(0)).toList();
    }

    private static List<Place> upper(List<Place> marks) {
        return marks.subList(0, marks.size() / 2);
    }

    private static List<Place> lower(List<Place> marks) {
        return marks.subList(marks.size() / 2, marks.size());
    }

    private static List<List<Place>> bands(Picture picture) {
        return paths(picture, "band");
    }

    /** The corners of all paths of a look. */
    private static List<List<Place>> paths(Picture picture, String look) {
        return picture.shapes().stream()
                .filter(shape -> shape.look().equals(look))
                .map(shape -> POINT.matcher(shape.d())
                        .results()
                        .map(found -> new Place(Double.parseDouble(found.group(1)), Double.parseDouble(found.group(2))))
                        .toList())
                .toList();
    }

    private static double lowest(List<Place> places, ToDoubleFunction<Place> coordinate) {
        return places.stream().mapToDouble(coordinate).min().orElseThrow();
    }

    private static double highest(List<Place> places, ToDoubleFunction<Place> coordinate) {
        return places.stream().mapToDouble(coordinate).max().orElseThrow();
    }

    private static CaughtCurves threeOpenings() {
        return CaughtCurves.slidingGate("12 in")
                .at("2 in", 26.1, 25.9)
                .at("3 in", 42.1, 41.9)
                .at("4 in", 58.1, 57.9);
    }

    @Test
    void eachCatchHasAMarkInEachPartAndTheyStandAboveEachOther() {
        List<Place> marks = marks(picture(threeOpenings().fit(CurveModel.DEAD_OPENING)));
        assertThat(marks).hasSize(12);
        IntStream.range(0, 6)
                .forEach(i -> assertThat(lower(marks).get(i).x())
                        .isCloseTo(upper(marks).get(i).x(), within(1.0)));
        assertThat(upper(marks)).allMatch(mark -> mark.y() < 260, "in the upper part");
        assertThat(lower(marks)).allMatch(mark -> mark.y() > 260 && mark.y() < 450, "in the lower part");
    }

    /** 2 in, 3 in and 4 in stand equally far apart; more caught stands higher. */
    @Test
    void marksStandWhereTheirNumbersSay() {
        List<Place> marks = upper(marks(picture(threeOpenings().fit(CurveModel.DEAD_OPENING))));
        assertThat(marks.get(4).x() - marks.get(2).x())
                .isCloseTo(marks.get(2).x() - marks.get(0).x(), within(0.01))
                .isGreaterThan(50);
        double perPound = (marks.get(0).y() - marks.get(4).y()) / 32;
        assertThat(perPound).isPositive();
        assertThat(marks.get(1).y() - marks.get(0).y()).isCloseTo(0.2 * perPound, within(0.01));
        assertThat(marks.get(2).y() - marks.get(4).y()).isCloseTo(16 * perPound, within(0.01));
    }

    /** 30.3 and 29.7 lb/rev are 1 % off the curve, up and down, and so are 60.6 and 59.4. */
    @Test
    void theLowerPartShowsDeviationsInPercent() {
        List<Place> marks = lower(marks(picture(CaughtCurves.slidingGate("12 in")
                .at("2 in", 30.3, 29.7)
                .at("4 in", 60.6, 59.4)
                .fit(CurveModel.PROPORTIONAL))));
        assertThat(marks.get(0).y()).isCloseTo(marks.get(2).y(), within(0.01));
        assertThat(marks.get(1).y()).isCloseTo(marks.get(3).y(), within(0.01));
        assertThat(marks.get(1).y() - marks.get(0).y()).isGreaterThan(20);
    }

    @Test
    void theBandHasTheIntervalsWidthInBothParts() {
        Picture picture = picture(CaughtCurves.slidingGate("12 in")
                .at("2 in", 30.3, 29.7)
                .at("4 in", 60.6, 59.4)
                .fit(CurveModel.PROPORTIONAL));
        List<List<Place>> bands = bands(picture);
        assertThat(bands).hasSize(2);
        // The half-width is 1.77899 % (see CurveSheetTest), and the catches are at ±1 %.
        List<Place> marks = lower(marks(picture));
        double perPercent = (marks.get(1).y() - marks.get(0).y()) / 2;
        List<Place> band = bands.get(1);
        assertThat((highest(band, Place::y) - lowest(band, Place::y)) / perPercent)
                .isCloseTo(2 * 1.77899, within(0.01));
        // It reaches from the first caught opening to the last, in the upper part beyond them.
        assertThat(lowest(band, Place::x)).isCloseTo(marks.get(0).x(), within(0.01));
        assertThat(highest(band, Place::x)).isCloseTo(marks.get(3).x(), within(0.01));
        assertThat(highest(bands.get(0), Place::x)).isGreaterThan(marks.get(3).x() + 20);
    }

    /** By the assumed scatter; half the band is 0.873 of 26 lb/rev, and 1.951 of 58 (see CurveSheetTest). */
    @Test
    void withoutRepeatsThereIsABandByTheAssumedScatter() {
        Picture picture = picture(
                CaughtCurves.slidingGate("12 in").at("2 in", 26).at("4 in", 58).fit(CurveModel.DEAD_OPENING));
        List<Place> marks = upper(marks(picture));
        assertThat(bands(picture)).hasSize(2);
        assertThat(marks).hasSize(2);
        double perPound = (marks.get(0).y() - marks.get(1).y()) / 32;
        assertThat(heightAt(bands(picture).get(0), marks.get(0).x()) / perPound).isCloseTo(2 * 0.873, within(0.1));
        assertThat(heightAt(bands(picture).get(0), marks.get(1).x()) / perPound).isCloseTo(2 * 1.951, within(0.1));
    }

    /** Between the corners of a band that are nearest to a place. */
    private static double heightAt(List<Place> band, double x) {
        double nearest = band.stream()
                .mapToDouble(place -> Math.abs(place.x() - x))
                .min()
                .orElseThrow();
        List<Place> there = band.stream()
                .filter(place -> Math.abs(place.x() - x) <= nearest + 0.01)
                .toList();
        return highest(there, Place::y) - lowest(there, Place::y);
    }

    /** The dashed line is one path, since dashes begin anew in each of many short lines, and show only in one long one. */
    @Test
    void theCurveIsDashedBeyondTheCatchesAndSolidBetweenThem() {
        Picture picture = picture(threeOpenings().fit(CurveModel.DEAD_OPENING));
        List<Place> marks = upper(marks(picture));
        List<List<Place>> dashed = paths(picture, "dashed");
        assertThat(dashed).hasSize(1);
        assertThat(lowest(dashed.get(0), Place::x)).isLessThan(marks.get(0).x() - 20);
        assertThat(highest(dashed.get(0), Place::x)).isGreaterThan(marks.get(4).x() + 20);
        List<Place> solid = paths(picture, "solid").get(0);
        assertThat(lowest(solid, Place::x)).isCloseTo(marks.get(0).x(), within(0.01));
        assertThat(highest(solid, Place::x)).isCloseTo(marks.get(4).x(), within(0.01));
    }

    @Test
    void whoCannotSeeItIsToldTheAxesWithTheirUnits() {
        Picture picture = picture(threeOpenings().fit(CurveModel.DEAD_OPENING));
        assertThat(picture.width()).isEqualTo(440);
        assertThat(picture.height()).isEqualTo(450);
        assertThat(picture.description())
                .startsWith(
                        "Two charts of road salt: mass per revolution, lb/rev, over gate opening, in, with 6 catches;");
        assertThat(picture.labels().stream().map(Plot.Label::text))
                .contains("mass per revolution, lb/rev", "off the curve, %", "gate opening, in");
        assertThat(picture(CaughtCurves.paintedMarks().at("2", 20).at("4", 41).fit(CurveModel.PROPORTIONAL))
                        .description())
                .contains("mass per revolution, lb/rev, over gate opening, with 2 catches;");
        assertThat(picture(CaughtCurves.slidingGate("1 m")
                                .at("50 mm", 20)
                                .at("90 mm", 41)
                                .fit(CurveModel.PROPORTIONAL))
                        .description())
                .contains("over gate opening, mm, with");
    }

    /** By the openings' axis, of which the lower part's labels stand in one line. */
    @Test
    void theAxesHaveRoundNumbers() {
        Picture picture = picture(threeOpenings().fit(CurveModel.DEAD_OPENING));
        long lowestLine = picture.labels().stream()
                .mapToLong(Plot.Label::y)
                .sorted()
                .skip(picture.labels().size() - 2)
                .findFirst()
                .orElseThrow();
        assertThat(picture.labels().stream()
                        .filter(label -> label.y() == lowestLine)
                        .map(Plot.Label::text))
                .containsExactly("0", "1", "2", "3", "4");
        List<Place> marks = upper(marks(picture));
        assertThat(picture.labels().stream()
                        .filter(label -> label.y() == lowestLine && label.text().equals("2"))
                        .map(label -> (double) label.x()))
                .singleElement(InstanceOfAssertFactories.DOUBLE)
                .isCloseTo(marks.get(0).x(), within(0.51));
    }

    @Test
    void catchesReadInOtherUnitsStandInTheUnitOfTheFirst() {
        List<Place> marks = upper(marks(picture(CaughtCurves.slidingGate("12 in")
                .at("2 in", 26)
                .at("76.2 mm", 42)
                .at("4 in", 58)
                .fit(CurveModel.DEAD_OPENING))));
        assertThat(marks.get(1).x()).isCloseTo((marks.get(0).x() + marks.get(2).x()) / 2, within(0.01));
    }

    @ParameterizedTest
    @ValueSource(strings = {"4 in", "4.0001 in", "4.01 in", "4.7 in", "12 in"})
    void aGateThatOpensHardlyFartherThanCaughtMakesNoTrouble(String highest) {
        Picture picture = picture(CaughtCurves.slidingGate(highest)
                .at("2 in", 26.1, 25.9)
                .at("4 in", 58.1, 57.9)
                .fit(CurveModel.PROPORTIONAL));
        assertThat(marks(picture)).hasSize(8).allMatch(mark -> mark.x() > 0 && mark.x() <= 440, "in the picture");
        assertThat(bands(picture)).hasSize(2);
    }

    @ParameterizedTest
    @EnumSource(CurveModel.class)
    void anyModelWithAnyKindOfOpening(CurveModel model) {
        assertThat(marks(picture(threeOpenings().fit(model)))).hasSize(12);
        DischargeCurve byMarks = CaughtCurves.paintedMarks()
                .at("1", 10.2, 10.1)
                .at("3", 31.1, 30.7)
                .at("6", 58, 59)
                .fit(model);
        assertThat(marks(picture(byMarks))).hasSize(12);
        DischargeCurve falling = CaughtCurves.slidingGate("12 in")
                .at("2 in", 40, 60)
                .at("4 in", 41, 39)
                .fit(CurveModel.TABLE);
        assertThat(marks(picture(falling))).hasSize(8);
    }

    @Test
    void aTablesBandEndsAtTheCaughtOpenings() {
        List<List<Place>> shape = bands(picture(threeOpenings().fit(CurveModel.DEAD_OPENING)));
        List<List<Place>> table = bands(picture(threeOpenings().fit(CurveModel.TABLE)));
        // The lower picture has its band between the caught openings only.
        assertThat(lowest(table.get(0), Place::x)).isCloseTo(lowest(table.get(1), Place::x), within(0.5));
        assertThat(highest(table.get(0), Place::x)).isCloseTo(highest(table.get(1), Place::x), within(0.5));
        assertThat(lowest(shape.get(0), Place::x)).isLessThan(lowest(shape.get(1), Place::x));
    }

    /** With one degree of freedom the interval is several times the value: it is cut, and the catches stay readable. */
    @Test
    void aWideBandNeitherLeavesThePictureNorFlattensWhatIsInIt() {
        DischargeCurve wild = CaughtCurves.slidingGate("12 in")
                .at("2 in", 20, 30)
                .at("4 in", 60)
                .fit(CurveModel.DEAD_OPENING);
        assertThat(wild.predict(wild.settings().get(0)).dischargePerRevolution().expandedUncertainty(0.95))
                .hasValueSatisfying(
                        half -> assertThat(half.getValue().doubleValue()).isGreaterThan(50));
        Picture picture = picture(wild);
        assertThat(bands(picture))
                .hasSize(2)
                .allSatisfy(band -> assertThat(band)
                        .allMatch(point -> point.y() >= 0 && point.y() <= 450 && point.x() <= 440, "in the picture"));
        assertThat(highest(bands(picture).get(0), Place::y)).isLessThan(260);
        assertThat(lowest(bands(picture).get(1), Place::y)).isGreaterThan(260);
        List<Place> marks = marks(picture);
        assertThat(highest(upper(marks), Place::y) - lowest(upper(marks), Place::y))
                .isGreaterThan(30);
        assertThat(highest(lower(marks), Place::y) - lowest(lower(marks), Place::y))
                .isGreaterThan(30);
    }
}
