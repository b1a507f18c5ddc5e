package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CurveSheetTest {

    private static CurveSheet sheet(DischargeCurve curve) {
        return CurveSheet.of(curve, Optional.empty());
    }

    private static List<String> openings(CurveSheet sheet) {
        return sheet.table().rows().stream().map(SheetTable.Row::head).toList();
    }

    private static List<String> column(CurveSheet sheet, int index) {
        return sheet.table().rows().stream()
                .map(row -> row.cells().get(index).main())
                .toList();
    }

    private static List<String> geometryAlone(CurveSheet sheet) {
        return sheet.table().rows().stream()
                .filter(row -> row.cells().get(1).other().equals("geometry alone"))
                .map(SheetTable.Row::head)
                .toList();
    }

    /** Two openings, derived: 26 lb/rev at 2 in and 58 lb/rev at 4 in are 16 lb/rev/in above 0.375 in. */
    private static CaughtCurves withDeadOpening() {
        return CaughtCurves.slidingGate("12 in").at("2 in", 26).at("4 in", 58);
    }

    @Test
    void aRowForEachRoundOpeningAndOneBeyondEitherEnd() {
        CurveSheet sheet = sheet(withDeadOpening().fit(CurveModel.DEAD_OPENING));
        assertThat(openings(sheet))
                .containsExactly(
                        "1.5 in (38.1 mm)",
                        "2 in (50.8 mm)",
                        "2.5 in (63.5 mm)",
                        "3 in (76.2 mm)",
                        "3.5 in (88.9 mm)",
                        "4 in (102 mm)",
                        "4.5 in (114 mm)");
        assertThat(column(sheet, 0))
                .containsExactly(
                        "18.00 lb/rev",
                        "26.00 lb/rev",
                        "34.00 lb/rev",
                        "42.00 lb/rev",
                        "50.00 lb/rev",
                        "58.00 lb/rev",
                        "66.00 lb/rev");
        assertThat(sheet.table().rows().get(3).cells().get(0)).isEqualTo(new Cell("42.00 lb/rev", "19.05 kg/rev"));
    }

    @Test
    void onlyWhatIsBeyondTheCaughtOpeningsIsGeometryAlone() {
        assertThat(geometryAlone(sheet(withDeadOpening().fit(CurveModel.DEAD_OPENING))))
                .containsExactly("1.5 in (38.1 mm)", "4.5 in (114 mm)");
        assertThat(geometryAlone(sheet(CaughtCurves.slidingGate("1 m")
                        .at("47 mm", 26)
                        .at("103 mm", 58)
                        .fit(CurveModel.PROPORTIONAL))))
                .containsExactly("40 mm (1.57 in)", "110 mm (4.33 in)");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            50 mm   | 100 mm  | 40 mm (1.57 in), 50 mm (1.97 in), 60 mm (2.36 in), 70 mm (2.76 in), 80 mm (3.15 in), \
            90 mm (3.54 in), 100 mm (3.94 in), 110 mm (4.33 in)
            5 cm    | 7.5 cm  | 4.5 cm (1.77 in), 5 cm (1.97 in), 5.5 cm (2.17 in), 6 cm (2.36 in), 6.5 cm (2.56 in), \
            7 cm (2.76 in), 7.5 cm (2.95 in), 8 cm (3.15 in)
            2 in    | 2.4 in  | 1.9 in (48.3 mm), 2 in (50.8 mm), 2.1 in (53.3 mm), 2.2 in (55.9 mm), 2.3 in (58.4 mm), \
            2.4 in (61.0 mm), 2.5 in (63.5 mm)
            2 in    | 2.8 in  | 1.8 in (45.7 mm), 2 in (50.8 mm), 2.2 in (55.9 mm), 2.4 in (61.0 mm), 2.6 in (66.0 mm), \
            2.8 in (71.1 mm), 3 in (76.2 mm)
            1 in    | 9 in    | 2 in (50.8 mm), 4 in (102 mm), 6 in (152 mm), 8 in (203 mm), 10 in (254 mm)
            """)
    void roundOpeningsInTheUnitOfTheCatches(String low, String high, String openings) {
        CurveSheet sheet =
                sheet(CaughtCurves.slidingGate("1 m").at(low, 20).at(high, 40).fit(CurveModel.PROPORTIONAL));
        assertThat(String.join(", ", openings(sheet))).isEqualTo(openings);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            2   | 4   | 1, 2, 3, 4, 5
            1   | 3   | 1, 2, 3, 4
            4   | 6   | 3, 4, 5, 6
            2   | 2.5 | 1.9, 2, 2.1, 2.2, 2.3, 2.4, 2.5, 2.6
            """)
    void paintedMarksAreNotDividedUnlessTheCatchesDo(String low, String high, String marks) {
        CurveSheet sheet =
                sheet(CaughtCurves.paintedMarks().at(low, 20).at(high, 40).fit(CurveModel.PROPORTIONAL));
        assertThat(String.join(", ", openings(sheet))).isEqualTo(marks);
    }

    @Test
    void openingsAtWhichTheGateIsShutOrCannotBeSetAreLeftOut() {
        CaughtCurves startingAtThreeQuarters =
                CaughtCurves.slidingGate("3.25 in").at("1 in", 4).at("3 in", 36);
        assertThat(openings(sheet(startingAtThreeQuarters.fit(CurveModel.DEAD_OPENING))))
                .containsExactly(
                        "1 in (25.4 mm)", "1.5 in (38.1 mm)", "2 in (50.8 mm)", "2.5 in (63.5 mm)", "3 in (76.2 mm)");
    }

    /** Two openings as near to each other as the library tells apart; one step is a millionth of that from the next. */
    @Test
    void openingsThatAreHardlyDifferentMakeNoTrouble() {
        CurveSheet sheet = sheet(CaughtCurves.slidingGate("2 m")
                .at("1999 mm", 20)
                .at("1999.000002 mm", 20)
                .fit(CurveModel.PROPORTIONAL));
        assertThat(openings(sheet)).hasSizeBetween(4, 14).anyMatch(head -> head.startsWith("1999 mm"));
    }

    /**
     * Four catches at ±1 % of 15 lb/rev/in: the relative variance is 4·10⁻⁴ ÷ 3, that of their mean ⅓·10⁻⁴ with 3 degrees of
     * freedom. The span, within 1 % by assumption, adds ⅓·10⁻⁴. So the effective degrees of freedom are 2² · 3 = 12, Student's
     * t for 95 % is 2.17881, and the half-width √(⅔·10⁻⁴) · 2.17881 = 1.77899 % (derived).
     */
    @Test
    void withinIsTheHalfWidthOfTheNinetyFivePercentInterval() {
        CurveSheet sheet = sheet(CaughtCurves.slidingGate("12 in")
                .at("2 in", 30.3, 29.7)
                .at("4 in", 60.6, 59.4)
                .fit(CurveModel.PROPORTIONAL));
        assertThat(openings(sheet)).element(3).isEqualTo("3 in (76.2 mm)");
        assertThat(column(sheet, 0)).element(3).isEqualTo("45.00 lb/rev");
        assertThat(column(sheet, 1)).element(3).isEqualTo("± 0.80 lb/rev");
        assertThat(column(sheet, 1)).element(5).isEqualTo("± 1.1 lb/rev");
        assertThat(sheet.legend()).contains("Gray band: the 95 % interval of the curve");
    }

    /**
     * At 2 in the assumed scatter of 1 % of 26 lb/rev has a variance of 0.0676 with 2 degrees of freedom; a span within 1 % adds
     * 0.26² ÷ 3, the rounding of 264 and 4 lb to 0.5 lb and that of 600 pulses at both ends 0.00073. Together that is
     * 0.3014² with (0.0909 ÷ 0.0676)² · 2 = 3.61 degrees of freedom, for which Student's t is 2.898: ± 0.873. Between the
     * openings the catches count in part: 13 and 29 at 3 in, for example (derived).
     */
    @Test
    void withoutRepeatsTheIntervalIsByTheAssumedScatter() {
        CurveSheet sheet = sheet(withDeadOpening().fit(CurveModel.DEAD_OPENING));
        assertThat(column(sheet, 1))
                .containsExactly(
                        "± 1.4 lb/rev",
                        "± 0.87 lb/rev",
                        "± 0.78 lb/rev",
                        "± 1.0 lb/rev",
                        "± 1.4 lb/rev",
                        "± 2.0 lb/rev",
                        "± 2.5 lb/rev");
        assertThat(sheet.legend())
                .contains("Gray band: the 95 % interval of the curve")
                .doesNotContain("Too few");
        assertThat(sheet.table().notes()).singleElement().asString().endsWith("shape could not be tested.");
    }

    @Test
    void theNoteNamesWhatWasFittedAndTheTest() {
        CurveSheet tested = sheet(CaughtCurves.slidingGate("12 in")
                .at("2 in", 26.1, 25.9)
                .at("3 in", 42.1, 41.9)
                .at("4 in", 58.1, 57.9)
                .fit(CurveModel.DEAD_OPENING));
        assertThat(tested.table().notes())
                .singleElement()
                .asString()
                .matches("Effective bulk density k = 73\\.\\d lb/ft³\\. "
                        + "Dead opening h0 = 0\\.37\\d in, standard uncertainty 0\\.00\\d+ in\\. "
                        + "Lack-of-fit test: the chance of a misfit like this is above 99\\.9 %\\.");
        assertThat(tested.legend()).contains("the curve, k·g(h − h0), dashed").endsWith("at the gate opening h.");
        CurveSheet readingTooLow = sheet(
                CaughtCurves.slidingGate("12 in").at("2 in", 36).at("4 in", 68).fit(CurveModel.DEAD_OPENING));
        assertThat(readingTooLow.table().notes()).singleElement().asString().contains("Dead opening h0 = −0.250 in. ");
        CurveSheet proportional = sheet(withDeadOpening().fit(CurveModel.PROPORTIONAL));
        assertThat(proportional.table().notes())
                .singleElement()
                .asString()
                .startsWith("Effective bulk density k = ")
                .doesNotContain("Dead opening");
    }

    /** Rows follow the table's means; beyond them it goes on in proportion to the geometry. */
    @Test
    void aTableFollowsItsRowsAndHasNothingToTest() {
        CurveSheet sheet = sheet(withDeadOpening().fit(CurveModel.TABLE));
        assertThat(column(sheet, 0))
                .containsExactly(
                        "19.50 lb/rev",
                        "26.00 lb/rev",
                        "34.00 lb/rev",
                        "42.00 lb/rev",
                        "50.00 lb/rev",
                        "58.00 lb/rev",
                        "65.25 lb/rev");
        assertThat(sheet.legend()).contains("the curve, a rising table, dashed").doesNotContain("g is the volume");
        assertThat(sheet.table().notes())
                .containsExactly("The table follows whatever was caught, so there is no shape to test.");
    }

    @Test
    void theTableSaysItsMaterial() {
        assertThat(sheet(withDeadOpening().fit(CurveModel.TABLE)).table().caption())
                .isEqualTo("Mass per revolution by gate opening, road salt");
    }
}
