package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.spark.sql.SparkSession;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.LaidSum;
import org.gritwright.core.record.Document;
import org.gritwright.core.telemetry.RowSums;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Days of each truck: all that its display indicated, once, and in the fleet's history. */
class LaidSumsTest {
    private static final ZoneOffset YARD = Fixtures.OPTIONS.offset();
    private static final LocalDate FIRST = LocalDate.of(2026, 11, 1);
    private static final LocalDate LAST = LocalDate.of(2027, 4, 15);

    @TempDir
    private static Path folder;

    private static Path records;
    private static Map<String, TruckPlan> plans;

    @BeforeAll
    static void readRecords() throws Exception {
        records = Fixtures.records(folder);
        plans = Fixtures.plans(records);
    }

    private static TruckDays days(String truck, SlotMaterials materials, ZoneOffset offset, Stream<InventedRow> rows) {
        TruckSetup setup = plans.get(truck).asIndicated();
        RowPass<TruckDays> pass = new DayPass.Maker(Map.of(truck, materials), offset).of(setup, new Buffers());
        rows.forEach(row -> pass.add(
                row.millis(),
                row.shaftPulses(),
                row.roadPulses(),
                row.gateInches(),
                setup.slot(row.slot()),
                row.mode(),
                row.roadId() == null ? TruckPass.NO_ROAD : pass.road(row.roadId()),
                BadRow.NO_READING));
        return pass.finish();
    }

    private static SlotMaterials materials(String truck) {
        TruckPlan plan = plans.get(truck);
        return SlotMaterials.of(plan, plan.asIndicated().shaft().slots());
    }

    private static TruckDays days(String truck) {
        return days(truck, materials(truck), YARD, Fixtures.all(Fixtures.trips(Fixtures.truck(truck))).stream());
    }

    private static TruckDays.Sums sum(TruckDays days) {
        return days.days().values().stream().reduce(new TruckDays.Sums(0, 0, 0), TruckDays.Sums::plus);
    }

    @Test
    void daysAreAllThatWasIndicatedToTheMilligram() {
        for (InventedTruck truck : InventedFleet.trucks()) {
            String id = truck.id();
            RowSums all = Fixtures.plain(plans.get(id).asIndicated(), Fixtures.all(Fixtures.trips(truck)).stream())
                    .totals()
                    .sums();
            TruckDays days = days(id);

            assertThat(days.days().size()).as(id).isBetween(4, 8);
            assertThat(sum(days).milligrams()).as(id).isEqualTo(all.laid());
            assertThat(sum(days).unattributed()).as(id).isEqualTo(all.unattributed());
            assertThat(sum(days).pulses()).as(id).isPositive().isLessThanOrEqualTo(all.turned());
        }
    }

    @Test
    void nothingIsCorrectedBackwards() {
        String wore = "K-08";
        double corrected = Fixtures.plain(
                        plans.get(wore)
                                .secondPass(Fixtures.plain(
                                                plans.get(wore).setup(),
                                                Fixtures.all(Fixtures.trips(Fixtures.truck(wore))).stream())
                                        .totals()
                                        .sums()),
                        Fixtures.all(Fixtures.trips(Fixtures.truck(wore))).stream())
                .totals()
                .sums()
                .laid();

        assertThat((double) sum(days(wore)).milligrams()).isGreaterThan(1.01 * corrected);
    }

    /** As its records and its telemetry's lines tell it. */
    private static History history(String truck, TruckDays days) throws Exception {
        List<Event> events = new ArrayList<>();
        try (Stream<Path> files = Files.list(records)) {
            for (Path file : files.filter(one -> one.getFileName().toString().startsWith(truck))
                    .toList()) {
                events.addAll(Document.CALIBRATION_RECORD
                        .read(new ByteArrayInputStream(Files.readAllBytes(file)))
                        .events(file.getFileName().toString(), SeasonCommand.types()));
            }
        }
        days.days()
                .forEach((key, sums) ->
                        events.add(LaidSums.event(days, key, sums, YARD).event()));
        return History.of(events, YARD);
    }

    @Test
    void aFleetsHistoryTakesThemAndFindsThemInOrder() throws Exception {
        for (InventedTruck truck : InventedFleet.trucks()) {
            TruckDays days = days(truck.id());
            History history = history(truck.id(), days);
            LaidSum laid = LaidSum.of(history, truck.id(), "road salt", FIRST, LAST);

            assertThat(history.contradictions()).as(truck.id()).isEmpty();
            assertThat(Amounts.in(laid.indicated().orElseThrow(), SpreadingUnits.POUND))
                    .as(truck.id())
                    .isCloseTo(UsUnits.pounds(sum(days).milligrams()), within(1e-6));
            assertThat(laid.remarks()).as(truck.id()).hasSize(sum(days).unattributed() == 0 ? 0 : 1);
        }
    }

    @Test
    void aDayIsTheYards() {
        // 05:00 UTC is midnight in a yard five hours behind, and an hour before it in this one.
        Stream<InventedRow> rows = Stream.of(0, 1, 2)
                .map(i -> new InventedRow(
                        1_796_101_200_000L - 1000 + 1000L * i, 90L * i, 50L * i, 2.5, "1", 0, "Heron Road", null));
        List<InventedRow> all = rows.toList();

        assertThat(days("K-08", materials("K-08"), YARD, all.stream()).days()).hasSize(1);
        assertThat(days("K-08", materials("K-08"), ZoneOffset.ofHours(-5), all.stream())
                        .days())
                .hasSize(1)
                .containsOnlyKeys(new TruckDays.Key(LocalDate.of(2026, 12, 1), "road salt"));
    }

    private static SlotMaterials held(NavigableMap<Long, String> first) {
        SlotMaterials known = materials("K-08");
        return new SlotMaterials(List.of(first), known.pulsesPerTurn(), known.from(), known.until());
    }

    @Test
    void aSlotThatGetsAnotherMaterialInTheDayIsSummedApart() {
        long noon = 1_796_140_800_000L;
        List<InventedRow> rows = Stream.iterate(-5, i -> i <= 5, i -> i + 1)
                .map(i -> new InventedRow(
                        noon + 1000L * i, 90L * (i + 5), 50L * (i + 5), 2.5, "1", 0, "Heron Road", null))
                .toList();
        NavigableMap<Long, String> changed = new TreeMap<>(Map.of(0L, "road salt", noon, "sand"));
        NavigableMap<Long, String> lost = new TreeMap<>(Map.of(0L, "road salt", noon, ""));
        LocalDate day = LocalDate.of(2026, 12, 1);

        assertThat(days("K-08", held(changed), YARD, rows.stream()).days()).satisfies(days -> {
            assertThat(days).hasSize(2);
            assertThat(days.get(new TruckDays.Key(day, "road salt")).pulses()).isEqualTo(4 * 90);
            assertThat(days.get(new TruckDays.Key(day, "sand")).pulses()).isEqualTo(6 * 90);
        });
        assertThat(days("K-08", held(lost), YARD, rows.stream()).days())
                .containsOnlyKeys(new TruckDays.Key(day, "road salt"));
    }

    @Test
    void aRowWithoutATimeIsOfNoDay() {
        List<InventedRow> rows = Stream.of(Long.MIN_VALUE, 1_796_140_800_000L, 0L, 1_796_140_801_000L, Long.MAX_VALUE)
                .map(millis -> new InventedRow(millis, 90, 50, 2.5, "1", 0, "Heron Road", null))
                .toList();

        assertThat(days("K-08", materials("K-08"), YARD, rows.stream()).days()).isEmpty();
    }

    /** 16 bits stated where there are more: no row beyond them is in any sum. */
    @Test
    void rowsThatCantBeCountedAreTold() {
        List<InventedRow> rows = Stream.iterate(0, i -> i < 10, i -> i + 1)
                .map(i -> new InventedRow(
                        1_796_140_800_000L + 1000L * i, 65_500 + 90L * i, 50L * i, 2.5, "1", 0, "Heron Road", null))
                .toList();
        TruckDays days = days("K-08", materials("K-08"), YARD, rows.stream());

        assertThat(days.days()).isEmpty();
        assertThat(days.rows()).isEqualTo(10);
        assertThat(days.badRows()).isEqualTo(9);
    }

    @Test
    void onTheEngineALineIsWrittenOfEach() throws Exception {
        Path rows = folder.resolve("rows");
        Path output = folder.resolve("sums");
        try (SparkSession spark = Fixtures.spark()) {
            Fixtures.INVENTED.writeRows(spark, InventedFleet.trucks(), 3, rows.toString());
        }
        Fixtures.Run run = Fixtures.Run.of(
                "sums",
                "--rows",
                rows.toString(),
                "--records",
                records.toString(),
                "--output",
                output.toString(),
                "--cores",
                "2");
        List<Event> events = new ArrayList<>();
        for (String line : Files.readAllLines(output.resolve(LaidSums.FILE))) {
            events.add(Document.FLEET_EVENT
                    .read(new ByteArrayInputStream(line.getBytes(StandardCharsets.UTF_8)))
                    .event());
        }
        List<Event> plain = new ArrayList<>();
        for (InventedTruck truck : InventedFleet.trucks()) {
            TruckDays days = days(truck.id());
            days.days()
                    .forEach((key, sums) ->
                            plain.add(LaidSums.event(days, key, sums, YARD).event()));
        }

        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out())
                .contains(events.size() + " sums of what 8 trucks laid")
                .contains("K-04: ")
                .contains("rows can't be counted");
        assertThat(Fixtures.names(output)).containsExactly(LaidSums.FILE);
        assertThat(events).isEqualTo(plain);
        assertThat(Fixtures.Run.of(
                                "sums",
                                "--rows",
                                rows.toString(),
                                "--records",
                                records.toString(),
                                "--output",
                                output.toString())
                        .code())
                .isEqualTo(SeasonCommand.BAD_INPUT);
    }
}
