package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.day.BoomEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.NozzleEntry;
import org.gritwright.core.fleet.day.TankEntry;
import org.gritwright.core.fleet.day.TankReadingEntry;
import org.gritwright.core.fleet.plan.FleetPlanner;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.gritwright.examples.fleetday.PlanSheet.Box;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** What a plan has of booms and tanks. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LiquidPlanTest {
    private FleetDay day;

    @BeforeAll
    void read() throws IOException, RejectedDocumentException {
        try (InputStream in = Files.newInputStream(Run.LIQUIDS)) {
            day = Document.FLEET_DAY.read(in);
        }
    }

    private static DayPlan plan(FleetDay day) {
        return new DayPlan(
                day,
                FleetPlanner.of(BuiltInTypes.registry()).plan(day, day.plan().orElseThrow()));
    }

    private static PlanSheet sheet(FleetDay day, String id) {
        DayPlan plan = plan(day);
        return plan.planned().stream()
                .filter(truck -> truck.truck().id().equals(id))
                .map(truck -> PlanSheet.of(plan, truck, 1))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> labels(List<Box> boxes) {
        return boxes.stream().map(Box::label).toList();
    }

    private FleetDay withBooms(BoomEntry boom) {
        return day.withTrucks(day.trucks().stream()
                .map(truck -> truck.boom().isPresent() ? truck.boom(boom) : truck)
                .toList());
    }

    private static NozzleEntry nozzle(String section, int number) {
        return NozzleEntry.of(
                section,
                String.valueOf(number),
                Amounts.of(96, SpreadingUnits.US_FLUID_OUNCE),
                Amounts.of(1, SpreadingUnits.US_FLUID_OUNCE),
                Amounts.of(30, SpreadingUnits.SECOND),
                Amounts.of(0.3, SpreadingUnits.SECOND));
    }

    @Test
    void everyNozzleOfTheDocumentHasARowInTheOrderOfItsFields() {
        NozzleSheet nozzles = sheet(day, "A-41").nozzles().get(0);
        assertThat(nozzles.sections())
                .extracting(NozzleSheet.Section::name)
                .containsExactly("left lane", "center", "right lane");
        assertThat(nozzles.sections()).flatExtracting(NozzleSheet.Section::rows).hasSize(12);
        List<Box> second = nozzles.sections().get(0).rows().get(1);
        assertThat(second.get(0).choice()).isEqualTo("2");
        assertThat(labels(second)).containsExactly("nozzle", "caught", "marks every", "time", "± time", "liquid");
        assertThat(second).extracting(Box::unit).containsExactly("", "fl oz", "fl oz", "s", "s", "");
        assertThat(nozzles.task())
                .contains("at one pressure, the one that the boom works at", "30 s ± 0.3 s, marks every 1 fl oz")
                .doesNotContain("96");
        assertThat(labels(nozzles.before())).containsExactly("pressure", "graduate");
    }

    /** A row's boxes are the components of what the document has, in their order. */
    @Test
    void aBoomOfUnknownNozzlesHasRowsForTheirNamesToo() {
        NozzleSheet nozzles = sheet(withBooms(BoomEntry.keptByFlow(List.of())), "A-41")
                .nozzles()
                .get(0);
        assertThat(nozzles.sections()).singleElement().satisfies(section -> {
            assertThat(section.name()).isEmpty();
            assertThat(section.rows())
                    .hasSize(12)
                    .allSatisfy(row -> assertThat(row)
                            .hasSameSizeAs(Stream.of(NozzleEntry.class.getRecordComponents())
                                    .toList()));
            assertThat(labels(section.rows().get(0)))
                    .containsExactly("section", "nozzle", "caught", "marks every", "time", "± time", "liquid");
            assertThat(section.rows().get(0)).extracting(Box::choice).containsOnly("");
        });
        assertThat(nozzles.task()).doesNotContain("In the day’s document");
    }

    @Test
    void nozzlesOfASectionStandTogetherHoweverTheyWereWritten() {
        NozzleSheet nozzles = sheet(
                        withBooms(BoomEntry.keptByFlow(
                                List.of(nozzle("left", 1), nozzle("right", 1), nozzle("left", 2)))),
                        "A-41")
                .nozzles()
                .get(0);
        assertThat(nozzles.sections())
                .extracting(section -> section.name() + section.rows().size())
                .containsExactly("left2", "right1");
        assertThat(nozzles.spacing()).isEmpty();
        List<NozzleEntry> many =
                IntStream.range(0, 30).mapToObj(i -> nozzle("left", i)).toList();
        assertThat(sheet(withBooms(BoomEntry.keptByFlow(many)), "A-41")
                        .nozzles()
                        .get(0)
                        .spacing())
                .isEqualTo("closest");
    }

    @Test
    void onlyATruckWithABoomIsToldOfNozzles() {
        assertThat(sheet(day, "A-42").nozzles()).isEmpty();
        assertThat(sheet(day, "A-42").steps()).noneMatch(step -> step.text().contains("each nozzle"));
        assertThat(sheet(day, "A-41").steps())
                .extracting(WorkStep::text)
                .anySatisfy(text -> assertThat(text)
                        .startsWith("Stop the pump, relieve the pressure, lock out.")
                        .contains("each nozzle"));
        assertThat(sheet(day, "A-41").kit()).anyMatch(kit -> kit.contains("graduate"));
    }

    @Test
    void aTankIsReadByItsInstrumentInTheOrderOfTheDocument() {
        List<TankReadingSheet> tanks = TankReadingSheet.of(day);
        assertThat(tanks)
                .extracting(TankReadingSheet::name)
                .containsExactly("brine maker", "north tank", "calcium tank", "tote");
        assertThat(labels(tanks.get(0).boxes()))
                .containsExactly("salometer", "± (standard)", "sample at", "tank at", "level");
        assertThat(labels(tanks.get(2).boxes()))
                .containsExactly(
                        "specific gravity", "on it: made for", "± (standard)", "sample at", "tank at", "level");
        assertThat(labels(tanks.get(3).boxes()))
                .containsExactly("concentration", "± (standard)", "sample at", "tank at", "level");
        assertThat(tanks.get(3).boxes()).extracting(Box::unit).containsExactly("%", "%", "°F", "°F", "gal");
        assertThat(tanks.get(0).facts())
                .isEqualTo("salt brine, sodium chloride. Holds 3000 gal. Wanted: 23.3 % ± 0.5 %."
                        + " Salt at hand: 96 % pure, 2 % moisture.");
        // What was read before isn't what is there now.
        assertThat(tanks.toString()).doesNotContain("83", "2600");
    }

    @Test
    void aBareTankHasNothingWantedAndNoSalt() {
        FleetDay bare = day.withTanks(List.of(new TankEntry(
                "new",
                "salt brine",
                day.tanks().get(0).salt(),
                TankReadingEntry.stated(percent(20), percent(1)),
                Amounts.of(5, SpreadingUnits.CELSIUS),
                Amounts.of(9000, SpreadingUnits.LITER),
                Amounts.of(10, SpreadingUnits.LITER),
                Optional.empty(),
                Optional.empty(),
                Optional.empty())));
        TankReadingSheet tank = TankReadingSheet.of(bare).get(0);
        assertThat(tank.facts()).isEqualTo("salt brine, sodium chloride. Holds 9000 L.");
        assertThat(tank.boxes()).extracting(Box::unit).containsExactly("%", "%", "°C", "°C", "L");
    }

    private static Quantity<Dimensionless> percent(double number) {
        return Amounts.of(number, SpreadingUnits.PERCENT);
    }

    @Test
    void theDaysSayThatTheyHoldNoTimeForThat() throws IOException {
        assertThat(plan(day).besides()).isEqualTo("reading 4 tanks; catching the nozzles of A-41, A-43");
        assertThat(PlanPage.html(plan(day)))
                .contains("Neither is what comes besides, as nobody stated its minutes: reading 4 tanks; catching the"
                        + " nozzles of A-41, A-43.");
        FleetDay without = day.withTanks(List.of())
                .withTrucks(day.trucks().stream()
                        .filter(truck -> truck.boom().isEmpty())
                        .toList())
                .withRoutes(List.of());
        assertThat(plan(without).besides()).isEmpty();
        assertThat(PlanPage.html(plan(without)))
                .doesNotContain("what comes besides", "id=\"tanks\"", "The nozzles.", "Before anybody adds salt");
        assertThat(plan(day).mix().work())
                .isEqualTo(plan(day.withTanks(List.of())).mix().work());
    }

    @Test
    void pageAndPaperHaveThemWithTheirCautions(@TempDir Path folder) throws IOException {
        Run run = Run.withPdf(Run.LIQUIDS, folder, "plan");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("Besides, in no time above: reading 4 tanks; catching the nozzles of A-41, A-43.");
        Path results = folder.resolve("run-0001");
        String page = Run.text(results.resolve("plan.html"));
        assertThat(page)
                .containsSubsequence(
                        "Section: left lane",
                        "id=\"tanks\"",
                        "never water to salt",
                        "Never enter a tank",
                        "Local codes, the salt’s safety data sheet and the makers’ manuals come first",
                        "<h3>brine maker</h3>",
                        "salometer",
                        "<h3>calcium tank</h3>",
                        "specific gravity");
        String truck = TaggedText.of(results.resolve("trucks/A-41.pdf")).replaceAll("\\s+", " ");
        assertThat(truck)
                .contains(
                        "Section: left lane",
                        "relieve the pressure, lock the controls out",
                        "Local rules and codes, the maker’s manual and licensed practice come first")
                .doesNotContain("Before anybody adds salt");
        assertThat(TaggedText.of(results.resolve("trucks/A-42.pdf"))).doesNotContain("The nozzles.");
        assertThat(TaggedText.of(results.resolve("plan.pdf")).replaceAll("\\s+", " "))
                .contains("Tanks What is in them.", "Draw the sample at a tap, or from outside with a long dipper");
    }
}
