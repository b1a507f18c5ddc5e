package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.apache.hadoop.conf.Configuration;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What can't be used is told in one line, and nothing is written. */
class BadInputTest {
    @TempDir
    private Path folder;

    private Path rows;
    private Path records;
    private Path output;

    @BeforeEach
    void prepare() throws Exception {
        records = Fixtures.records(folder);
        rows = Files.createDirectory(folder.resolve("rows"));
        output = folder.resolve("output");
    }

    private Fixtures.Run evaluate(String... more) {
        return Fixtures.Run.of(Stream.concat(
                        Stream.of(
                                "evaluate",
                                "--rows=" + rows,
                                "--records=" + records,
                                "--output=" + output,
                                "--cores=1"),
                        Stream.of(more))
                .toArray(String[]::new));
    }

    private void refused(String message) throws Exception {
        Fixtures.Run run = evaluate();
        assertThat(run.err().strip()).isEqualTo(message.replace("FOLDER", folder.toString()));
        assertThat(run.code()).isEqualTo(SeasonCommand.BAD_INPUT);
        assertThat(run.out()).isEmpty();
        assertThat(Fixtures.names(folder)).noneMatch(name -> name.startsWith("output."));
    }

    @Test
    void noSuchFolder() throws Exception {
        rows = folder.resolve("nowhere");
        refused("can't read rows: there is no folder FOLDER/nowhere");
    }

    @Test
    void noRows() throws Exception {
        refused("can't read rows: FOLDER/rows holds no .parquet file");
    }

    @Test
    void noRecords() throws Exception {
        records = Files.createDirectory(folder.resolve("empty"));
        refused("can't read calibration records: FOLDER/empty holds no .json file");
    }

    @Test
    void aRecordWithoutACalibration() throws Exception {
        change("K-05-2026-10-19.json", truck -> truck.remove(List.of("inForce", "calibrationCatches")));
        refused("record K-05-2026-10-19.json of K-05 can't be used: it holds no calibration in force");
    }

    @Test
    void aRecordWithASlip() throws Exception {
        change("K-05-2026-10-19.json", truck -> truck.set("inForces", truck.remove("inForce")));
        Fixtures.Run run = evaluate();
        assertThat(run.err())
                .startsWith("record K-05-2026-10-19.json can't be used: ")
                .contains("inForces");
        assertThat(run.code()).isEqualTo(SeasonCommand.BAD_INPUT);
    }

    @Test
    void aTypeThatNobodyKnows() throws Exception {
        change(
                "K-05-2026-10-19.json",
                truck -> ((ObjectNode) truck.get("conveyor")).put("type", "example.org/unheard-of"));
        Fixtures.Run run = evaluate();
        assertThat(run.err())
                .startsWith("record K-05-2026-10-19.json of K-05 can't be used: ")
                .contains("example.org/unheard-of");
        assertThat(run.code()).isEqualTo(SeasonCommand.BAD_INPUT);
    }

    @Test
    void aLiquidThatWetsWhatNobodyLays() throws Exception {
        change("K-03 brine-2026-10-19.json", truck -> truck.put("wets", "X-9"));
        refused("record K-03 brine-2026-10-19.json of K-03 brine can't be used: it wets what X-9 lays, of which there"
                + " is no record");
    }

    @Test
    void twoLiquidsOfOneTruckWhoseRowsHaveOneCounter() throws Exception {
        change("K-03 brine-2026-10-19.json", truck -> truck.put("wets", "K-01"));
        refused("record K-03 brine-2026-10-19.json of K-03 brine can't be used: another, K-01 brine, wets what the same"
                + " truck lays, and rows have one counter of a liquid");
    }

    @Test
    void aLiquidThatWetsNothing() throws Exception {
        change("K-03 brine-2026-10-19.json", truck -> truck.remove("wets"));
        refused("record K-03 brine-2026-10-19.json of K-03 brine can't be used: it meters a liquid that wets nothing,"
                + " and this example knows grains, and what wets them");
    }

    /** Left at 5.6 lb/rev in October; in January the display is said to have shown 5.4 lb/rev. */
    @Test
    void recordsThatContradictEachOtherAreToldWithTheirTruck() throws Exception {
        assertThat(contradictions()).isEmpty();

        change("K-08-2027-01-12.json", truck -> {
            ((ObjectNode) truck.get("inForce").get(0)).put("value", "5.4 lb/rev");
            for (int i = 0; i < 3; i++) {
                ((ObjectNode) truck.get("verificationCatches").get(i)).put("inForce", "5.4 lb/rev");
            }
        });
        assertThat(contradictions())
                .singleElement()
                .asString()
                .startsWith(
                        "The records of K-08 contradict each other: the display shows a value that nobody entered: ")
                .contains("5.4 lb/rev")
                .endsWith(". What is told of it is by the value that was last seen or entered.");
    }

    private List<String> contradictions() throws Exception {
        return new SeasonInput(Folder.of(rows.toString(), new Configuration()), List.of(), Fixtures.plans(records))
                .contradictions();
    }

    /** In January the pump is found to lay a tenth less than its display says. */
    @Test
    void anErrorOfALiquidThatGrewIsRefusedAndItsBoundsAreNot() throws Exception {
        ObjectMapper json = new ObjectMapper();
        JsonNode later = json.readTree(Files.readString(records.resolve("K-03 brine-2026-10-19.json")));
        ObjectNode day = (ObjectNode) later.get("entered");
        day.put("day", "2027-01-12");
        ObjectNode truck = (ObjectNode) day.get("trucks").get(0);
        truck.remove("calibrationCatches");
        truck.set("verificationCatches", json.readTree(JANUARY_CATCHES));
        Files.writeString(records.resolve("K-03 brine-2027-01-12.json"), json.writeValueAsString(later));

        for (FoundErrors grown : List.of(FoundErrors.WITH_TURNS, FoundErrors.WITH_AMOUNT)) {
            Fixtures.Run run = evaluate("--found-errors=" + grown);
            assertThat(run.err().strip())
                    .isEqualTo(
                            "record K-03 brine-2027-01-12.json of K-03 brine can't be used: an error of a liquid that"
                                    + " grew with turns or amount isn't corrected here: run it with AS_LEFT and AS_FOUND, which are"
                                    + " the bounds");
            assertThat(run.code()).isEqualTo(SeasonCommand.BAD_INPUT);
        }
        for (FoundErrors bound : List.of(FoundErrors.AS_LEFT, FoundErrors.AS_FOUND)) {
            assertThat(evaluate("--found-errors=" + bound).err()).contains("holds no .parquet file");
        }
    }

    private static final String JANUARY_CATCHES = """
            [{"at": "2027-01-12T10:00:00-06:00", "material": "salt brine",
              "read": {"container": "measure M-5", "fills": ["2.8 gal"]}, "counted": {"pulses": "6048 pulse"},
              "inForce": "0.0155 gal/rev", "targetRate": "300 lb/mi",
              "prewetRate": "10 gal/ton", "testSpeed": "25 mi/h", "runTime": "300 s"},
             {"at": "2027-01-12T10:20:00-06:00", "material": "salt brine",
              "read": {"container": "measure M-5", "fills": ["2.82 gal"]}, "counted": {"pulses": "6048 pulse"},
              "inForce": "0.0155 gal/rev", "targetRate": "300 lb/mi",
              "prewetRate": "10 gal/ton", "testSpeed": "25 mi/h", "runTime": "300 s"}]
            """;

    /** The truck as it was entered, changed. */
    private void change(String record, Consumer<ObjectNode> change) throws Exception {
        ObjectMapper json = new ObjectMapper();
        JsonNode tree = json.readTree(Files.readString(records.resolve(record)));
        change.accept((ObjectNode) tree.get("entered").get("trucks").get(0));
        Files.writeString(records.resolve(record), json.writeValueAsString(tree));
    }

    @Test
    void aFolderThatIsThereAlready() throws Exception {
        Files.createDirectory(output);
        Files.writeString(output.resolve("mine.txt"), "mine");
        refused("won't write into FOLDER/output: it is there already; give a folder that isn't");
        assertThat(Fixtures.names(output)).containsExactly("mine.txt");
    }

    @Test
    void aFileWithoutAColumnOrWithOneOfAnotherTypeAndATruckToDrawThatNobodyKnows() throws Exception {
        Path without = folder.resolve("without");
        Path other = folder.resolve("other");
        try (SparkSession spark = Engine.session("1")) {
            Dataset<Row> row = spark.range(1)
                    .selectExpr(
                            "'K-01' as truck",
                            "timestamp_millis(id) as time",
                            "id as shaft_pulse",
                            "1.5d as road_pulse",
                            "2.5d as gate_in",
                            "'1' as slot",
                            "0 as mode");
            row.drop("road_pulse").coalesce(1).write().parquet(without.toString());
            row.coalesce(1).write().parquet(other.toString());
        }
        rows = without;
        Fixtures.Run run = evaluate();
        assertThat(run.err().strip()).endsWith("can't be used: there is no column road_pulse");
        assertThat(run.code()).isEqualTo(SeasonCommand.BAD_INPUT);

        rows = other;
        Fixtures.Run drawn = evaluate("--picture=X-9");
        assertThat(drawn.err().strip()).isEqualTo("can't draw truck \"X-9\": it has no calibration record");
        assertThat(drawn.code()).isEqualTo(SeasonCommand.BAD_INPUT);

        Fixtures.Run typed = evaluate();
        assertThat(typed.err().strip()).endsWith("can't be used: column road_pulse is a double and not a bigint");
        assertThat(typed.code()).isEqualTo(SeasonCommand.BAD_INPUT);
        assertThat(Fixtures.names(folder)).noneMatch(name -> name.startsWith("output"));
    }

    @Test
    void anOptionWithoutAUnit() throws Exception {
        Fixtures.Run run = evaluate("--piece=0.1");
        assertThat(run.code()).isEqualTo(SeasonCommand.BAD_INPUT);
        assertThat(run.err().strip().lines()).hasSize(1);
    }

    @Test
    void moreTripsThanFitBetweenTheStorms() {
        Fixtures.Run run = Fixtures.Run.of("invent", "--output=" + output, "--trips=151");
        assertThat(run.err().strip()).isEqualTo("can't invent 151 trips of 3 h: give 1 to 150 trips of 1 h to 9 h");
        assertThat(run.code()).isEqualTo(SeasonCommand.BAD_INPUT);
    }

    @Test
    void eachCommandTellsItsOptions() {
        assertThat(Fixtures.Run.of("evaluate", "--help").out())
                .contains("--shaft-rolls-over-at=COUNT", "65536", "Exit codes:");
        assertThat(Fixtures.Run.of().code()).isEqualTo(SeasonCommand.BAD_INPUT);
    }
}
