package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** What goes into the cabs, of the demo's trucks with routes and ranges of our own. */
class CabTest {
    /** 4 to 28 rev/min by eye; a hill road for all that spread salt, and one for the mix. */
    private static FleetResult result(Consumer<ObjectNode> change) throws IOException, RejectedDocumentException {
        return DemoDay.result(day -> {
            ArrayNode routes = day.putArray("routes");
            routes.addObject()
                    .put("name", "hill road")
                    .put("material", "road salt")
                    .put("targetRate", "320 lb/mi")
                    .put("lowestSpeed", "8 mi/h")
                    .put("highestSpeed", "45 mi/h")
                    .putArray("trucks")
                    .add("T-01")
                    .add("T-11");
            routes.addObject()
                    .put("name", "valley")
                    .put("material", "sand-salt mix")
                    .put("targetRate", "90 kg/km")
                    .put("lowestSpeed", "20 km/h")
                    .put("highestSpeed", "50 km/h")
                    .putArray("trucks")
                    .add("T-15");
            for (var truck : day.withArray("trucks")) {
                ((ObjectNode) truck).remove("drive");
            }
            for (String id : List.of("T-01", "T-11", "T-17")) {
                range(DemoDay.truck(day, id), "28 rev/min");
            }
            change.accept(day);
        });
    }

    private static void range(ObjectNode truck, String highest) {
        truck.putObject("drive")
                .putObject("statedRange")
                .put("lowest", "4 rev/min")
                .put("highest", highest)
                .put("source", "by-eye");
    }

    private static CabSheet sheet(FleetResult result, String id) {
        return result.trucks().stream()
                .filter(truck -> truck.id().equals(id))
                .map(truck -> CabSheet.of(result, truck, 1))
                .findFirst()
                .orElseThrow();
    }

    /** The calibration of a truck with one point, lb/rev. */
    private static double poundsPerRevolution(FleetResult result, String id) {
        return result.trucks().stream()
                .filter(truck -> truck.id().equals(id))
                .mapToDouble(truck -> Amounts.in(
                        truck.calibrations().get(0).dischargePerRevolution().value(),
                        SpreadingUnits.POUND_PER_REVOLUTION))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aCardSaysWhatToSetAndFromWhereToWhereTheRatesOfTheRoutesHold() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> {});
        CabSheet sheet = sheet(result, "T-01");

        CabSheet.Card card = sheet.cards().get(0);
        CabSheet.Section section = card.sections().get(0);
        assertThat(section.material()).isEqualTo("road salt");
        assertThat(section.set()).isEqualTo("gate at 2.5 in, display at 6.59 lb/rev");
        CabLine line = section.lines().get(0);
        assertThat(section.lines()).hasSize(1);
        assertThat(line.rate()).isEqualTo("320 lb/mi");
        assertThat(line.forWhat()).isEqualTo("hill road");
        // v = m × n ÷ r, rounded inward.
        double perHour = 60 * poundsPerRevolution(result, "T-01") / 320;
        double lowest = Math.ceil(4 * perHour);
        double highest = Math.floor(28 * perHour);
        assertThat(line.speeds()).containsExactly((int) lowest + " mi/h to " + (int) highest + " mi/h");
        assertThat(line.beyond())
                .containsExactly("slow down to " + (int) highest + " mi/h where hill road allows 45 mi/h");
        assertThat(card.on()).isEqualTo("2026-10-19");
        assertThat(card.by()).isEqualTo("L. Marsh");
        assertThat(card.validUntil()).isEqualTo("2027-10-31");
        assertThat(card.voidedBy()).hasSizeGreaterThan(3);
        assertThat(card.rule()).isEqualTo("Keep to these speeds.");
        assertThat(card.caveat()).isEmpty();
        assertThat(sheet.missing()).isEmpty();
    }

    @Test
    void aRouteThatIsHeldWithinTheToleranceIsNoReasonToSlowDown() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> ((ObjectNode) day.withArray("routes").get(0))
                .put("lowestSpeed", "6 mi/h")
                .put("highestSpeed", "35 mi/h"));

        // 316 of 320 lb/mi at 35 mi/h.
        assertThat(28 * 60 * poundsPerRevolution(result, "T-01") / 35).isBetween(0.96 * 320, 320.0);
        assertThat(sheet(result, "T-01")
                        .cards()
                        .get(0)
                        .sections()
                        .get(0)
                        .lines()
                        .get(0)
                        .beyond())
                .isEmpty();
    }

    @Test
    void aSpeedThatIsTooLowForARouteIsNamed() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> ((ObjectNode) day.withArray("routes").get(0))
                .put("lowestSpeed", "3 mi/h")
                .put("highestSpeed", "30 mi/h"));

        assertThat(sheet(result, "T-01")
                        .cards()
                        .get(0)
                        .sections()
                        .get(0)
                        .lines()
                        .get(0)
                        .beyond())
                .containsExactly("too much below 5 mi/h, and hill road begins at 3 mi/h");
    }

    @Test
    void aLimitThatNoTruckReachesIsNone() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> range(DemoDay.truck(day, "T-01"), "90 rev/min"));

        assertThat(sheet(result, "T-01")
                        .cards()
                        .get(0)
                        .sections()
                        .get(0)
                        .lines()
                        .get(0)
                        .speeds())
                .containsExactly("from 5 mi/h on");
    }

    private static void measured(ObjectNode truck, String loaded, double... pairs) {
        ObjectNode drive = truck.putObject("drive")
                .put("lowestCommand", "0 %")
                .put("highestCommand", "100 %")
                .put("commandStep", "1 %")
                .put("speedStep", "0.1 rev/min");
        drive.putObject("atWork").put("loaded", loaded).put("spinner", "no");
        ArrayNode points =
                drive.putArray("runs").addObject().put("direction", "rising").putArray("points");
        for (int i = 0; i < pairs.length; i += 2) {
            points.addObject().put("command", pairs[i] + " %").put("shaftSpeed", pairs[i + 1] + " rev/min");
        }
    }

    private static final double[] BOTH_ENDS = {20, 0, 21, 2, 40, 9, 60, 17, 80, 28, 90, 28, 100, 28};

    @Test
    void whatNobodyMeasuredIsPromisedToNobody() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> measured(DemoDay.truck(day, "T-01"), "yes", 50, 16, 55, 20, 58, 22, 60, 24));

        assertThat(sheet(result, "T-01").missing())
                .containsExactly(
                        "road salt at 2.5 in: For a paper, measure the drive on, to its slowest and its fastest"
                                + " steady speed.");
    }

    @Test
    void aDriveThatWasMeasuredWithoutItsLoadMakesNoPaper() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> measured(DemoDay.truck(day, "T-01"), "no", BOTH_ENDS));

        assertThat(sheet(result, "T-01").missing())
                .containsExactly("road salt at 2.5 in: For a paper, measure the drive with its load.");
    }

    @Test
    void whatElseTheDriveWasMeasuredWithoutStandsOnTheCard() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> measured(DemoDay.truck(day, "T-01"), "yes", BOTH_ENDS));

        assertThat(sheet(result, "T-01").cards().get(0).caveat())
                .contains("spinner")
                .endsWith(".");
    }

    @Test
    void aSettingThatIsNotForARouteSaysSo() throws IOException, RejectedDocumentException {
        // 28 rev/min of about 16.6 lb hold 320 lb/mi from 12 to 87 mi/h, of 53 lb from 40 on.
        FleetResult result = result(day -> {
            DemoDay.truck(day, "T-17");
            ((ObjectNode) day.withArray("routes").get(0))
                    .put("highestSpeed", "35 mi/h")
                    .withArray("trucks")
                    .add("T-17");
        });
        List<CabSheet.Section> sections = sheet(result, "T-17").cards().get(0).sections();

        assertThat(sections).hasSizeGreaterThan(1);
        assertThat(sections.get(sections.size() - 1).lines().get(0).beyond()).containsExactly("not for hill road");
        assertThat(sheet(result, "T-17").cards().get(0).rule()).contains("another");
    }

    @Test
    void thereIsNoPaperOfWhatIsInDoubt() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> {});

        // A correction is proposed and not entered.
        assertThat(sheet(result, "T-11").hasPaper()).isFalse();
        assertThat(sheet(result, "T-11").missing())
                .containsExactly("road salt: Enter the correction, read it back, catch again.");
        // Right, but nobody says what the drive holds.
        assertThat(sheet(result, "T-02").missing())
                .containsExactly("road salt at 2.5 in: For a paper, find out which shaft speeds the conveyor holds.");
        // Not calibrated anew, and a record that can't be computed with.
        assertThat(sheet(result, "T-09").missing()).containsExactly("road salt at 2 in: Calibrate.");
        assertThat(sheet(result, "T-13").hasPaper()).isFalse();
        assertThat(sheet(result, "T-13").missing()).hasSize(1);
        // Without a sensor, and nobody measured its control.
        assertThat(sheet(result, "T-08").missing())
                .containsExactly("road salt at 2 in: For a paper, measure the shaft speeds of its control settings.");
    }

    @Test
    void anUncalibratedMaterialIsNoDoubtAboutTheOther() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> ((ObjectNode) day.withArray("routes").get(1))
                .withArray("trucks")
                .add("T-01"));

        assertThat(result.trucks().get(0).needsAttention()).isTrue();
        assertThat(sheet(result, "T-01").cards()).hasSize(1);
    }

    @Test
    void withoutATechnicianSomebodyHasToSign() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> day.remove("technician"));

        assertThat(sheet(result, "T-01").cards().get(0).by()).isEmpty();
        assertThat(CabPage.html(result, (truck, page) -> {})).contains("<i class=\"sign\"></i>");
    }

    private static ChartTable.Cell cell(ChartTable chart, String rate, String speed) {
        return chart.rows().stream()
                .filter(row -> row.head().equals(rate))
                .findFirst()
                .orElseThrow()
                .cells()
                .get(chart.columns().indexOf(speed));
    }

    @Test
    void aChartHasShaftSpeedAndMassOrWhatIsLaidInstead() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> {});
        ChartTable chart = sheet(result, "T-01").charts().get(0);

        assertThat(chart.columns()).containsExactly("5", "10", "15", "20", "25", "30", "35", "40", "45");
        double m = poundsPerRevolution(result, "T-01");
        ChartTable.Cell held = cell(chart, "320", "25");
        // 320 lb/mi at 25 mi/h are 133.3 lb/min.
        assertThat(Double.parseDouble(held.main())).isCloseTo(320 * 25 / 60.0 / m, within(0.2));
        assertThat(held.other()).isEqualTo("133");
        assertThat(held.isOutside()).isFalse();
        ChartTable.Cell fast = cell(chart, "320", "45");
        assertThat(fast.isOutside()).isTrue();
        assertThat(fast.other()).isEqualTo("too fast");
        assertThat(Double.parseDouble(fast.main().replace("lays ", ""))).isCloseTo(28 * m * 60 / 45, within(2.0));
        assertThat(cell(chart, "200", "5").other()).isEqualTo("too slow");
        assertThat(chart.rows())
                .filteredOn(ChartTable.Row::isWanted)
                .extracting(ChartTable.Row::head)
                .containsExactly("260", "320");
        assertThat(String.join(" ", chart.notes()))
                .contains("320 by hill road", "260 by test run", "Too slow: ", "Too fast: ");
    }

    @Test
    void aTruckThatIsSetByHandHasAChartOfItsControlAndTheBestSettings() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> {
            day.put("tolerance", "10 %");
            day.remove("decisionRule");
        });
        CabSheet sheet = sheet(result, "T-15");

        double kilograms = poundsPerRevolution(result, "T-15") * 0.45359237;
        ChartTable chart = sheet.charts().get(0);
        assertThat(chart.rows()).extracting(ChartTable.Row::head).containsExactly("2", "4", "6");
        // 30 rev/min × m at 40 km/h.
        assertThat(Double.parseDouble(cell(chart, "4", "40").main())).isCloseTo(30 * 60 * kilograms / 40, within(1.0));
        assertThat(chart.notes()).anyMatch(note -> note.contains("less sure"));
        ChartTable best = sheet.charts().get(1);
        ChartTable.Cell at50 = cell(best, "90", "50");
        assertThat(at50.main()).isEqualTo("4");
        assertThat(at50.other()).isEqualTo("−" + Math.round(100 * (1 - 30 * 60 * kilograms / 50 / 90)) + " %");
        CabSheet.Card card = sheet.cards().get(0);
        assertThat(card.rule()).startsWith("Set the control");
        // The valley road is driven at 20 to 50 km/h: setting 2 is for less, setting 6 for more, and between them is
        // nothing.
        CabLine line = card.sections().get(0).lines().get(0);
        assertThat(line.speeds()).hasSizeBetween(1, 2).anyMatch(words -> words.startsWith("set 4 for "));
        assertThat(line.beyond()).anyMatch(words -> words.startsWith("on valley no setting from "));
    }

    @Test
    void theTableForSpreadsheetsHasEveryCellOfEveryChart() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> {});
        List<CSVRecord> rows = CSVParser.parse(
                        CabCsv.text(result),
                        CSVFormat.RFC4180
                                .builder()
                                .setHeader()
                                .setSkipHeaderRecord(true)
                                .get())
                .getRecords();

        Map<String, List<CSVRecord>> byTruck = rows.stream().collect(Collectors.groupingBy(row -> row.get("truck")));
        ChartTable chart = sheet(result, "T-01").charts().get(0);
        assertThat(byTruck.keySet()).contains("T-01").doesNotContain("T-11", "T-02", "T-13");
        assertThat(byTruck.get("T-01"))
                .hasSize(chart.rows().size() * chart.columns().size());
        CSVRecord fast = byTruck.get("T-01").stream()
                .filter(row -> row.get("rate").equals("320 lb/mi")
                        && row.get("road speed").equals("45 mi/h"))
                .findFirst()
                .orElseThrow();
        assertThat(fast.get("holds")).isEqualTo("no");
        assertThat(fast.get("why not")).isEqualTo("the drive turns the shaft no faster");
        assertThat(fast.get("laid instead"))
                .isEqualTo(cell(chart, "320", "45").main().replace("lays ", "") + " lb/mi");
        assertThat(fast.get("exactly laid instead")).endsWith(" lb/mi");
        assertThat(rows).allSatisfy(row -> assertThat(row.isConsistent()).isTrue());
    }

    @Test
    void whatThePageShowsIsEscaped() throws IOException, RejectedDocumentException {
        FleetResult result = result(day -> {
            ((ObjectNode) day.withArray("routes").get(0)).put("name", "<b>hill</b>");
            day.put("site", "\"><script>");
        });
        String html = CabPage.html(result, (truck, page) -> {});

        assertThat(html).contains("&lt;b&gt;hill").doesNotContain("<b>hill", "<script>");
    }

    @Test
    void roundRatesSurroundWhatIsAskedFor() {
        CabUnits pounds = CabUnits.of(Amounts.of(6, SpreadingUnits.POUND_PER_REVOLUTION));
        CabUnits kilograms = CabUnits.of(Amounts.of(3, SpreadingUnits.KILOGRAM_PER_REVOLUTION));

        assertThat(numbers(pounds.rates(List.of()).stream().map(Amounts::format)))
                .startsWith("100 lb/mi")
                .hasSizeBetween(6, 12);
        assertThat(numbers(pounds
                        .rates(List.of(
                                Amounts.of(300, SpreadingUnits.POUND_PER_MILE),
                                Amounts.of(210, SpreadingUnits.POUND_PER_MILE),
                                Amounts.of(300, SpreadingUnits.POUND_PER_MILE)))
                        .stream()
                        .map(Amounts::format)))
                .containsExactly(
                        "100 lb/mi",
                        "150 lb/mi",
                        "200 lb/mi",
                        "210 lb/mi",
                        "250 lb/mi",
                        "300 lb/mi",
                        "350 lb/mi",
                        "400 lb/mi",
                        "450 lb/mi");
        // A rate of the other system stands there converted, as exactly as the chart's own unit has it.
        assertThat(numbers(kilograms.rates(List.of(Amounts.of(300, SpreadingUnits.POUND_PER_MILE))).stream()
                        .map(Amounts::format)))
                .anyMatch(rate -> rate.startsWith("84.55"));
        assertThat(IntStream.range(0, 7)
                        .mapToObj(i -> Amounts.format(kilograms.speeds().get(i))))
                .startsWith("10 km/h")
                .endsWith("70 km/h");
    }

    private static List<String> numbers(Stream<String> texts) {
        return texts.toList();
    }
}
