package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.gritwright.core.document.RejectedDocumentException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FleetCsvTest {

    private static List<CSVRecord> rows(Consumer<ObjectNode> change) throws IOException, RejectedDocumentException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser = CSVParser.parse(FleetCsv.text(DemoDay.result(change)), format)) {
            return parser.getRecords();
        }
    }

    @Test
    void aRowATruckInTheOrderOfTheDay() throws IOException, RejectedDocumentException {
        List<CSVRecord> rows = rows(day -> {});
        assertThat(rows)
                .extracting(row -> row.get("truck"))
                .containsExactly(
                        "T-01", "T-02", "T-03", "T-04", "T-05", "T-06", "T-07", "T-08", "T-09", "T-10", "T-11", "T-12",
                        "T-13", "T-14", "T-15", "T-16", "T-17", "T-18", "T-19", "T-20");
        assertThat(rows).allSatisfy(row -> assertThat(row.isConsistent()).isTrue());
    }

    @Test
    void whatARowSays() throws IOException, RejectedDocumentException {
        CSVRecord row = rows(day -> {}).get(10);
        assertThat(row.get("needs attention")).isEqualTo("yes");
        assertThat(row.get("value as found")).isEqualTo("5.35 lb/rev");
        assertThat(row.get("value as left")).isEqualTo("5.35 lb/rev");
        assertThat(row.get("value to enter")).isEqualTo("5.68 lb/rev");
        assertThat(row.get("mass per revolution as left (kg/rev)")).isEqualTo("2.42672");
        assertThat(row.get("indicated (lb)")).isEqualTo("246.992");
        assertThat(row.get("caught (lb)")).isEqualTo("262");
        assertThat(row.get("caught (kg)")).isEqualTo("118.841");
        assertThat(row.get("calibration error (%)")).isEqualTo("-5.72837");
        assertThat(row.get("delivered rate (kg/km)")).isEqualTo("73.8445");
        assertThat(row.get("findings")).isEqualTo("tolerance-missed");
        assertThat(row.get("record")).isEqualTo("records/T-11.json");
    }

    /** Its display holds 16.5 lb/rev for 1.5 in; the last of its verification catches was made at 2.5 in. */
    @Test
    void theErrorBesideAValueIsThatOfItsOwnGateOpening() throws IOException, RejectedDocumentException {
        CSVRecord row = rows(day -> {}).get(16);
        assertThat(row.get("value as left")).isEqualTo("16.5 lb/rev");
        assertThat(row.get("caught (lb)")).isEqualTo("131.5");
        assertThat(row.get("calibration error (%)")).startsWith("-0.038");
    }

    @Test
    void aRefusedTruckHasItsReasonAndNoNumbers() throws IOException, RejectedDocumentException {
        CSVRecord row = rows(day -> {}).get(12);
        assertThat(row.get("record refused because"))
                .startsWith("catch of 15:42: pail 2: gross 3.5 lb is below its tare 44 lb. Swapped?");
        assertThat(row.get("calibration error (%)")).isEmpty();
        assertThat(row.get("caught (lb)")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+2", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "＝1+2"})
    void aSpreadsheetRunsNoTextAsAFormula(String id) throws IOException, RejectedDocumentException {
        CSVRecord row = rows(day -> DemoDay.only(day, "T-11").put("id", id)).get(0);
        assertThat(row.get("truck")).isEqualTo("'" + id.replace('\r', '\uFFFD'));
        assertThat(row.get("calibration error (%)")).isEqualTo("-5.72837");
    }

    @Test
    void quotesCommasAndLineBreaksComeBackAsTheyWere() throws IOException, RejectedDocumentException {
        String id = "the \"new\" one, with\na line break; and more";
        CSVRecord row = rows(day -> DemoDay.only(day, "T-11").put("id", id)).get(0);
        assertThat(row.get("truck")).isEqualTo(id);
    }

    /** In many countries a spreadsheet takes a semicolon for the end of a cell. */
    @Test
    void everyCellStandsInQuotationMarksAndHoldsNothingUnseen() throws IOException, RejectedDocumentException {
        String text = FleetCsv.text(
                DemoDay.result(day -> DemoDay.truck(day, "T-04").put("id", "T;4 \u001b[31m\u202e\u2066x")));
        assertThat(text.lines())
                .allSatisfy(line -> assertThat(line).startsWith("\"").endsWith("\""));
        assertThat(text).contains("\"T;4 \uFFFD[31m\uFFFD\uFFFDx\",").doesNotContain("\u001b", "\u202e", "\u2066");
    }
}
