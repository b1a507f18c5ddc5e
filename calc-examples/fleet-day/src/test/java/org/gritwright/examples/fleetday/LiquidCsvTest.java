package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the tables for spreadsheets say of tanks and booms. */
class LiquidCsvTest {
    /** The day with a slip of the pen, if there is one. */
    private static FleetResult result(String right, String wrong) throws IOException, RejectedDocumentException {
        String text = Run.text(Run.LIQUIDS);
        assertThat(text).contains(right);
        return FleetResult.of(
                Document.FLEET_DAY.read(
                        new ByteArrayInputStream(text.replace(right, wrong).getBytes(StandardCharsets.UTF_8))),
                FleetAssessor.of(BuiltInTypes.registry()));
    }

    private static List<CSVRecord> rows(String table) throws IOException {
        try (CSVParser parser = CSVParser.parse(
                table,
                CsvTable.FORMAT.builder().setHeader().setSkipHeaderRecord(true).get())) {
            List<CSVRecord> rows = parser.getRecords();
            assertThat(rows).allSatisfy(row -> assertThat(row.isConsistent()).isTrue());
            return rows;
        }
    }

    private static List<CSVRecord> tanks(String right, String wrong) throws IOException, RejectedDocumentException {
        return rows(TankCsv.text(result(right, wrong)));
    }

    private static List<CSVRecord> nozzles(String right, String wrong) throws IOException, RejectedDocumentException {
        return rows(BoomCsv.text(result(right, wrong)));
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    @Test
    void aRowATankInTheOrderOfTheDay() throws IOException, RejectedDocumentException {
        List<CSVRecord> rows = tanks("", "");
        assertThat(rows)
                .extracting(row -> row.get("tank"), row -> row.get("needs attention"), row -> row.get("next step"))
                .containsExactly(
                        tuple("brine maker", "yes", "Add what brings it to what is wanted"),
                        tuple("north tank", "no", "Nothing to do"),
                        tuple("calcium tank", "yes", "Add what brings it to what is wanted"),
                        tuple("tote", "yes", "Find another way: it is off, and can't be corrected as it is"));
        CSVRecord weak = rows.get(0);
        assertThat(weak.get("instruction")).isEqualTo("Add 634.7 lb ± 78 of the salt at hand");
        assertThat(weak.get("strength (%)")).isEqualTo("21.501");
        assertThat(weak.get("wanted (%)")).isEqualTo("23.3");
        assertThat(weak.get("verdict")).isEqualTo("outside tolerance");
        assertThat(weak.get("freezes at (°F)")).isEqualTo("-1.25533");
        assertThat(number(weak, "freezes at (°C)")).isCloseTo((-1.25533 - 32) / 1.8, within(1e-4));
        // A difference: no 32 between them.
        assertThat(number(weak, "expanded uncertainty of freezes at (°F)"))
                .isCloseTo(1.8 * number(weak, "expanded uncertainty of freezes at (°C)"), within(1e-4));
        assertThat(number(weak, "add salt (kg)")).isCloseTo(0.45359237 * number(weak, "add salt (lb)"), within(1e-2));
        assertThat(weak.get("add water (gal)")).isEmpty();
        assertThat(weak.get("temperature (°F)")).isEqualTo("48");
        assertThat(weak.get("record")).isEqualTo("tank-records/brine_maker.json");
        assertThat(rows.get(2).get("add water (gal)")).isEqualTo("139.259");
        assertThat(rows.get(2).get("freezes at (°F)")).isEmpty();
        assertThat(rows.get(2).get("side of the eutectic")).isEqualTo("beyond the eutectic");
        assertThat(rows.get(3).get("can't be corrected because")).startsWith("capacity of the tank must be at least");
    }

    @Test
    void aRefusedTankHasItsReasonsAndNothingMade() throws IOException, RejectedDocumentException {
        CSVRecord row = tanks("\"89\"", "\"189\"").get(1);
        assertThat(row.get("next step")).isEqualTo("Correct what was written down");
        assertThat(row.get("refused because")).startsWith("degrees of a salometer must be within 0 to 100");
        assertThat(row.get("strength (%)")).isEmpty();
        assertThat(row.get("in the tank (gal)")).isEqualTo("4100");
    }

    @Test
    void aRowANozzleWithItsSectionAndItsBoom() throws IOException, RejectedDocumentException {
        List<CSVRecord> rows = nozzles("", "");
        assertThat(rows).hasSize(18);
        assertThat(rows).filteredOn(row -> row.get("truck").equals("A-41")).hasSize(12);
        CSVRecord worn = rows.stream()
                .filter(row -> row.get("section").equals("right lane")
                        && row.get("nozzle").equals("2"))
                .findFirst()
                .orElseThrow();
        assertThat(worn.get("flow (gal/min)")).isEqualTo("1.85938");
        assertThat(worn.get("off by (%)")).isEqualTo("23.8411");
        assertThat(worn.get("verdict")).isEqualTo("gives too much: worn, damaged or of another size");
        assertThat(number(worn, "coefficient of variation of the nozzles (%)")).isCloseTo(6.81045, within(1e-4));
        assertThat(worn.get("its section is off by (%)")).isEqualTo("3.82653");
        assertThat(worn.get("rate")).isEqualTo("kept by flow");
        assertThat(worn.get("needs attention")).isEqualTo("yes");
        assertThat(worn.get("pressure set up with (lb/gal)")).isEmpty();
        CSVRecord byPressure = rows.get(17);
        assertThat(byPressure.get("truck")).isEqualTo("A-43");
        assertThat(byPressure.get("pressure set up with (lb/gal)")).isEqualTo("8.34");
        assertThat(byPressure.get("volume at that pressure off by (%)")).isEqualTo("-7.84322");
    }

    @Test
    void aBoomWhoseNozzlesWerentCaughtHasOneRow() throws IOException, RejectedDocumentException {
        FleetResult result = result("", "");
        FleetResult uncaught = FleetResult.of(
                result.day()
                        .withTrucks(result.day().trucks().stream()
                                .map(truck -> truck.boom()
                                        .map(boom -> truck.boom(boom.withoutNozzles()))
                                        .orElse(truck))
                                .toList()),
                FleetAssessor.of(BuiltInTypes.registry()));
        List<CSVRecord> rows = rows(BoomCsv.text(uncaught));
        assertThat(rows).extracting(row -> row.get("truck")).containsExactly("A-41", "A-43");
        assertThat(rows).extracting(row -> row.get("nozzle")).containsOnly("");
        assertThat(rows.get(1).get("right pressure (times the one that was set)"))
                .isEqualTo("1.17746");
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+2", "+1", "@SUM(A1)", "＝1+2"})
    void aSpreadsheetRunsNoTextAsAFormula(String name) throws IOException, RejectedDocumentException {
        assertThat(tanks("\"north tank\"", "\"" + name + "\"").get(1).get("tank"))
                .isEqualTo("'" + name);
        assertThat(nozzles("\"left lane\"", "\"" + name + "\"").get(0).get("section"))
                .isEqualTo("'" + name);
    }
}
