package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.gritwright.core.telemetry.PieceAxis;
import org.gritwright.core.telemetry.RowSums;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** On the engine it comes to what it comes to in a plain loop, bit for bit, however the rows lie in files. */
class SeasonJobTest {
    @TempDir
    private static Path folder;

    private static SparkSession spark;
    private static Path records;
    private static Map<String, TruckSetup> setups;
    private static Map<String, TruckSeason> plain;

    @BeforeAll
    static void start() throws Exception {
        spark = Fixtures.spark();
        records = Fixtures.records(folder);
        setups = Fixtures.setups(records);
        plain = Fixtures.plainFleet(setups);
    }

    @AfterAll
    static void stop() {
        spark.stop();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3, 8})
    void isTheSameInHoweverManyTasks(int files) throws Exception {
        Path rows = folder.resolve("rows-in-" + files);
        Path output = folder.resolve("output-of-" + files);
        Fixtures.INVENTED.writeRows(spark, InventedFleet.trucks(), files, rows.toString());
        Summary summary = run(rows, output);

        assertThat(Fixtures.names(output))
                .containsExactly(
                        SeasonJob.BAD_ROWS,
                        SeasonJob.FLEET,
                        SeasonJob.HOURS,
                        SeasonJob.PIECES,
                        SeasonJob.ROADS,
                        SeasonJob.ROADS_CHART,
                        SeasonJob.SUMMARY_CSV,
                        SeasonJob.SUMMARY,
                        SeasonJob.TRIP);
        assertThat(Fixtures.lines(spark, output.resolve(SeasonJob.HOURS))).isEqualTo(lines(Tables::hours));
        assertThat(Fixtures.lines(spark, output.resolve(SeasonJob.PIECES)))
                .isEqualTo(lines(season -> Tables.pieces(season, Fixtures.OPTIONS.piece())));
        assertThat(Fixtures.lines(spark, output.resolve(SeasonJob.BAD_ROWS))).isEqualTo(lines(Tables::badRows));
        SortedMap<String, RoadTotals> roads = Fixtures.roads(plain.values());
        assertThat(summary.roads()).isEqualTo(roads);
        assertThat(Fixtures.lines(spark, output.resolve(SeasonJob.ROADS)))
                .isEqualTo(
                        Tables.roads(roads).stream().map(Row::toString).sorted().toList());
        assertThat(summary.corrected()).singleElement().satisfies(corrected -> {
            RowSums laid = plain.get("K-08").totals().sums();
            assertThat(corrected.truck()).isEqualTo("K-08");
            assertThat(corrected.passes()).hasValueSatisfying(passes -> {
                assertThat(passes.pulses()).isEqualTo(laid.turned());
                assertThat(passes.laid()).isEqualTo(laid.laid()).isLessThan(passes.indicated());
            });
        });
        assertThat(summary.trucks()).hasSize(8);
        plain.forEach((id, season) -> assertThat(summary.trucks()).anySatisfy(line -> {
            assertThat(line.name()).isEqualTo(id);
            assertThat(line.laid())
                    .isEqualTo(setups.get(id).shaft().total(season.totals().sums()));
        }));
        assertThat(Files.readAllLines(output.resolve(SeasonJob.SUMMARY_CSV))).hasSize(10);
        assertThat(Fixtures.lines(spark, output.resolve(SeasonJob.SUMMARY)))
                .isEqualTo(summary.lines().stream()
                        .map(line -> line.row().toString())
                        .sorted()
                        .toList());
    }

    private static List<String> lines(Function<TruckSeason, Iterator<Row>> table) {
        List<String> lines = new ArrayList<>();
        plain.values().forEach(season -> table.apply(season).forEachRemaining(row -> lines.add(row.toString())));
        lines.sort(null);
        return lines;
    }

    private static SeasonInput input(Path rows) throws Exception {
        return SeasonInput.of(
                rows.toString(),
                records.toString(),
                SeasonCommand.types(),
                Fixtures.OPTIONS,
                spark.sparkContext().hadoopConfiguration());
    }

    private static Summary run(Path rows, Path output) throws Exception {
        SeasonInput input = input(rows);
        try (NewFolder folder =
                NewFolder.of(output.toString(), spark.sparkContext().hadoopConfiguration())) {
            return new SeasonJob(spark, Fixtures.OPTIONS).run(input, folder, Optional.empty());
        }
    }

    private static Path write(String name, Stream<Row> rows, int files) {
        Path path = folder.resolve(name);
        spark.createDataFrame(rows.toList(), Nullable.SCHEMA)
                .coalesce(files)
                .write()
                .parquet(path.toString());
        return path;
    }

    private static Stream<Row> rows(String truck) {
        return Fixtures.trips(Fixtures.truck("K-06")).next().stream().map(row -> InventedFiles.row(truck, row));
    }

    private static List<TruckSeason> evaluate(Path rows) throws Exception {
        PieceAxis axis = PieceAxis.everyLength(Fixtures.OPTIONS.piece());
        RowPass.Maker<TruckSeason> pass = (setup, buffers) -> new TruckPass(setup, axis, buffers);
        return new SeasonRows(spark)
                .evaluate(input(rows), input(rows).setups(), pass).collect().stream()
                        .flatMap(file -> file.trucks().stream())
                        .toList();
    }

    @Test
    void aTruckInTwoPlacesIsRefusedAndNothingIsWritten() throws Exception {
        Path rows = write(
                "apart", Stream.of(rows("K-01"), rows("K-06"), rows("K-01")).flatMap(one -> one), 1);
        Path output = folder.resolve("never");
        assertThatThrownBy(() -> run(rows, output))
                .isInstanceOf(BadInputException.class)
                .hasMessage("rows that don't lie together, of \"K-01\": a truck's rows belong into one file, one after"
                        + " the other");
        assertThat(Fixtures.names(folder)).noneMatch(name -> name.startsWith("never"));
    }

    @Test
    void aTruckWithoutARecordIsRefused() throws Exception {
        Path rows = write("stranger", Stream.concat(rows("K-01"), rows("X-9")), 1);
        Path output = folder.resolve("never");
        assertThatThrownBy(() -> run(rows, output))
                .isInstanceOf(BadInputException.class)
                .hasMessage("rows of trucks without a calibration record: \"X-9\"");
        assertThat(Fixtures.names(folder)).noneMatch(name -> name.startsWith("never"));
    }

    @Test
    void rowsInTheWrongOrderGetTheirStatusAndNothingIsInvented() throws Exception {
        List<Row> forward = rows("K-06").toList();
        List<Row> backward = new ArrayList<>(forward);
        java.util.Collections.reverse(backward);
        TruckSeason season = evaluate(write("backward", backward.stream(), 1)).get(0);
        assertThat(season.totals().sums().laid()).isZero();
        assertThat(season.badRows())
                .hasSize(forward.size() - 1)
                .allMatch(row -> row.why().equals("out of order"));
    }

    @Test
    void whatIsMissingInARowPutsItAsideWithItsReason() throws Exception {
        List<Row> rows = new ArrayList<>(rows("K-06").limit(100).toList());
        Row like = rows.get(50);
        rows.set(50, row(like, RowTable.TIME, null));
        rows.set(60, row(rows.get(60), RowTable.SHAFT, null));
        rows.set(70, row(rows.get(70), RowTable.SHAFT, -5L));
        TruckSeason season = evaluate(write("missing", rows.stream(), 1)).get(0);
        assertThat(season.badRows().stream().map(BadRow::why).toList())
                .containsExactly("impossible time", "no reading", "impossible reading");
    }

    /** One file names roads, the other is of a yard that doesn't. */
    @Test
    void aFileMayLackWhatNotAllTrucksHave() throws Exception {
        Path rows = folder.resolve("mixed");
        write("mixed", rows("K-06"), 1);
        spark.createDataFrame(rows("K-08").toList(), Nullable.SCHEMA)
                .drop("road_id", "liquid_pulse")
                .coalesce(1)
                .write()
                .mode("append")
                .parquet(rows.toString());
        List<TruckSeason> seasons = evaluate(rows);

        assertThat(seasons).hasSize(2);
        for (TruckSeason season : seasons) {
            boolean hasRoads = season.truck().equals("K-06");
            assertThat(season.roads().keySet().contains("Mill Road")).isEqualTo(hasRoads);
            assertThat(season.roads().values().stream()
                            .mapToLong(road -> road.laid().amount())
                            .sum())
                    .isEqualTo(season.totals().sums().laid());
        }
        assertThat(seasons).anySatisfy(season -> {
            assertThat(season.roads().keySet()).containsExactly("");
            assertThat(season.roads().get("").way()).isEqualTo(season.totals().way());
            assertThat(season.badRows().stream().map(BadRow::reason)).contains("road id: laid where no road is named");
        });
    }

    private static Row row(Row like, int column, Object value) {
        Object[] cells = new Object[like.length()];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = i == column ? value : like.get(i);
        }
        return org.apache.spark.sql.RowFactory.create(cells);
    }
}
