package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.plan.FleetPlanner;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The demo's day of liquids: prewets and anti-icing, with the faults that were put in. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LiquidDemoTest {
    private FleetDay day;
    private FleetResult result;
    private String page;
    private String plan;

    @BeforeAll
    void assess() throws IOException, RejectedDocumentException {
        try (InputStream in = Files.newInputStream(Path.of("src/demo/demo-liquids.json"))) {
            day = Document.FLEET_DAY.read(in);
        }
        result = FleetResult.of(day, FleetAssessor.of(BuiltInTypes.registry()));
        page = ReportPage.html(result);
        plan = PlanPage.html(new DayPlan(
                day,
                FleetPlanner.of(BuiltInTypes.registry()).plan(day, day.plan().orElseThrow())));
    }

    private TruckResult truck(String id) {
        return result.trucks().stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private String sheet(String id) {
        int found = page.indexOf("<h3>" + id + "</h3>");
        return page.substring(found, page.indexOf("</article>", found));
    }

    private String worksheet(String id) {
        int found = plan.indexOf("<h2>" + id + "</h2>\n<p><b>Side 1");
        return plan.substring(found, plan.indexOf("</article>", found));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            T-31       | NOTHING          | Nothing to do
            T-31 brine | NOTHING          | Nothing to do
            T-32 brine | FIND_FAULT       | Check what was written down; if it is right, find the fault and catch again
            T-33 brine | CHECK_ENTRIES    | Check the entries that the findings name
            T-34 brine | ENTER_CORRECTION | Enter 0.0136 gal/rev for salt brine in place of 0.0155 gal/rev, read it back, catch again
            T-35 brine | FIND_FAULT       | Check what was written down; if it is right, find the fault and catch again
            A-42       | FIND_FAULT       | Check what was written down; if it is right, find the fault and catch again
            """)
    void nextStep(String id, String step, String instruction) {
        assertThat(truck(id).assessment().nextStep()).hasToString(step);
        assertThat(truck(id).instruction().text()).isEqualTo(instruction);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            T-32 brine | Look for air in the line, or a leak on the suction side
            T-33 brine | That fits 10 gal/t, not 10 gal/ton
            T-34 brine | The liquid is 1.178 % of the dry chemical that it and the grains of T-34 bring
            T-35 brine | k factor × 10 (1200 pulse/gal)
            A-42       | caught volume read in liters and written in gallons
            """)
    void whatWasPutInIsTold(String id, String words) {
        assertThat(sheet(id)).contains(words);
    }

    @Test
    void aPumpThatLaysAnEighthLessIsWrongThoughTheDryChemicalIsRight() {
        assertThat(truck("T-34 brine").metering().text()).isEqualTo("✗ wrong");
        assertThat(truck("T-34 brine").assessment().prewet().orElseThrow().verdict())
                .isEqualTo(Verdict.WITHIN_TOLERANCE);
        assertThat(sheet("T-34 brine")).contains("Dry chemical, with T-34");
    }

    @Test
    void noLiquidIsShownAsAMassNorAsWhatAConveyorDoes() {
        assertThat(sheet("T-34 brine"))
                .contains("pump ✗ wrong", "gal/rev", "gal/mi", "Volume over the pump’s displacement: 0.850")
                .doesNotContain(" lb", "conveyor", "gate", "hopper");
        assertThat(sheet("A-41"))
                .contains("flow meter ✓ right", "pulse/gal")
                .doesNotContain("conveyor", "gate ", "lb/");
    }

    @Test
    void theTableNamesVolumesInColumnsOfTheirOwn() throws IOException {
        List<CSVRecord> rows = CSVParser.parse(
                        FleetCsv.text(result),
                        CsvTable.FORMAT
                                .builder()
                                .setHeader()
                                .setSkipHeaderRecord(true)
                                .get())
                .getRecords();
        CSVRecord brine = rows.stream()
                .filter(row -> row.get("truck").equals("T-34 brine"))
                .findFirst()
                .orElseThrow();

        assertThat(brine.get("metered by")).isEqualTo("pump");
        assertThat(brine.get("metering")).isEqualTo("wrong");
        assertThat(brine.get("caught (gal)")).isEqualTo("2.74");
        assertThat(brine.get("expected (gal)")).isEqualTo("3.125");
        assertThat(brine.get("delivered rate (gal/mi)")).startsWith("1.315");
        assertThat(brine.get("verdict of the dry chemical")).isEqualTo("within tolerance");
        assertThat(List.of("caught (lb)", "mass per revolution measured (lb/rev)", "delivered rate (lb/mi)"))
                .allSatisfy(column -> assertThat(brine.get(column)).isEmpty());
        assertThat(rows.get(0).get("caught (gal)")).isEmpty();
        assertThat(rows.get(0).get("caught (lb)")).isNotEmpty();
    }

    @Test
    void prewetsAreCountedBesideTrucks() {
        assertThat(result.summary()).matches("\\d+ trucks and 5 prewets: .* 4 tanks: 3 need attention\\.");
    }

    @Test
    void thePageHasTheCautionsOfLiquids() {
        assertThat(page)
                .contains("relieve the pressure before a line, cap or nozzle is opened", "Nobody enters a tank.");
    }

    @Test
    void aWorksheetOfAPumpSaysWhatToReadAndNothingOfTarpsAndGates() {
        assertThat(worksheet("T-31 brine"))
                .contains(
                        "3 catches of 130 rev (3900 pulse, 130 turns of the pump shaft), about 2.02 gal each",
                        "Set 300 lb/mi, 10 gal/ton and 25 mi/h",
                        "<span>prewet run</span><i>gal/ton</i>",
                        "<span>volume</span><i>gal</i>",
                        "relieve the pressure, lock out",
                        "air is counted as liquid",
                        "Nobody enters a tank.")
                .doesNotContain(
                        "tarp and shovel",
                        "hopper",
                        "gross",
                        "Road speed, measured course",
                        "Road speed over the measured course");
        assertThat(worksheet("A-41"))
                .contains("pulse, about", "Road speed, measured course", "Road speed over the measured course");
    }

    @Test
    void aCatchIsComparedInTheUnitsThatSideTwoExpects() {
        assertThat(worksheet("T-31 brine")).contains("Each catch in gal/rev against what side 2 expects");
        assertThat(worksheet("A-41")).contains("Each catch in pulse/gal against what side 2 expects");
    }

    @Test
    void methodsForGrainsAreNotOfferedForLiquidsNorTheOtherWayRound() {
        int found = plan.indexOf("<summary>T-31 brine</summary>");
        String tables = plan.substring(found, plan.indexOf("</details>", found));

        assertThat(tables).contains("measure M-5", "tote on the platform").doesNotContain("tarp and shovel");
        found = plan.indexOf("<summary>T-31</summary>");
        assertThat(plan.substring(found, plan.indexOf("</details>", found)))
                .contains("tarp and shovel")
                .doesNotContain("measure M-5", "Can't be used");
    }
}
