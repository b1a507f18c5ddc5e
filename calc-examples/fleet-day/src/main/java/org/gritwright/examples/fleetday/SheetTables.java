package org.gritwright.examples.fleetday;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.assessment.PrewetTotal;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.roadspeed.RoadSpeedCheck;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.StartUp;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.weighing.Caught;
import org.gritwright.core.weighing.WeighedVolume;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Makes the tables of a truck's sheet. */
final class SheetTables {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private static final char NO_BREAK_SPACE = '\u00a0';

    private final TruckResult result;
    private final TruckAssessment truck;

    SheetTables(TruckResult result) {
        this.result = result;
        this.truck = result.assessment();
    }

    /** What the displays hold, and what follows from several runs. */
    List<SheetTable> settings() {
        List<SheetTable> tables = new ArrayList<>();
        result.display().asFound().ifPresent(asFound -> tables.add(display(asFound)));
        truck.roadSpeed().ifPresent(check -> tables.add(roadSpeed(check)));
        truck.prewet().ifPresent(total -> tables.add(prewet(total)));
        truck.points()
                .forEach(point -> point.startUp().ifPresent(startUp -> tables.add(startUp(point.point(), startUp))));
        return tables;
    }

    private static SheetTable prewet(PrewetTotal total) {
        return new SheetTable(
                "Dry chemical, with " + total.truck(),
                List.of(),
                List.of(
                        Row.of("prewet rate", Cell.exact(total.prewetRate())),
                        Row.of("part of the liquid", Cell.computed(total.liquidShare(), 2)),
                        Row.of(
                                "display shows more than is laid",
                                new Cell(
                                        Figures.errorForPrint(total.error().value()) + " "
                                                + Figures.within(total.error()
                                                        .expandedUncertainty(Figures.COVERAGE)
                                                        .orElseThrow()),
                                        total.verdict().words()))),
                List.of("A right total says nothing about the pump: that is judged by its own catches."));
    }

    List<SheetTable> catches() {
        List<SheetTable> tables = new ArrayList<>();
        result.calibrations().forEach(calibration -> tables.add(calibration(calibration)));
        if (!truck.verifications().isEmpty()) {
            tables.add(verifications());
        }
        return tables;
    }

    private SheetTable display(Quantity<?> asFound) {
        List<Row> rows = new ArrayList<>();
        rows.add(Row.of("as found", Cell.exact(asFound)));
        correction().ifPresent(correction -> {
            rows.add(Row.of("called for", computed(correction.computed().value())));
            rows.add(Row.of("to enter", Cell.of(correction.toEnter().toString())));
        });
        rows.add(Row.of(
                "as left",
                result.display()
                        .asLeft()
                        .filter(value -> !isOpen(correction()))
                        .<Cell>map(Cell::exact)
                        .orElse(Cell.of("not entered yet"))));
        List<String> notes = new ArrayList<>();
        truck.truck().inForce().stream().map(SheetTables::origin).forEach(notes::add);
        truck.points()
                .forEach(point -> point.held()
                        .forEach(held ->
                                notes.add("After the day: " + held.factor() + " for " + place(point.point()) + ".")));
        correction().map(SheetTables::status).ifPresent(notes::add);
        return new SheetTable("Calibration in the display", List.of(), rows, notes);
    }

    private Optional<Correction> correction() {
        return truck.toCorrect().flatMap(PointAssessment::correction);
    }

    private static boolean isOpen(Optional<Correction> correction) {
        return correction.map(Correction::status).equals(Optional.of(Correction.Status.PROPOSED));
    }

    private static String origin(InForceEntry entry) {
        return Amounts.format(entry.value()) + " since " + entry.since() + ", for "
                + place(entry.material(), entry.setting())
                + entry.slot().map(slot -> ", slot " + slot).orElse("") + ".";
    }

    private static String status(Correction correction) {
        return switch (correction.status()) {
            case PROPOSED -> "The correction is proposed; nothing was entered yet.";
            case UNCONFIRMED -> "The correction is entered and not yet confirmed.";
            case CONFIRMED -> "The correction is confirmed by an independent catch.";
        };
    }

    private SheetTable calibration(Calibration calibration) {
        CalibrationPoint point = calibration.point();
        List<Row> rows = new ArrayList<>();
        for (CalibrationCatch one : calibration.catches()) {
            rows.add(Row.of(
                    time(one.observation().at()),
                    caught(one.caught()),
                    counted(one),
                    computed(ratio(one, calibration))));
        }
        rows.add(Row.of(
                "together",
                Cell.EMPTY,
                Cell.EMPTY,
                new Cell(
                        Figures.text(
                                Metered.found(
                                        truck,
                                        point,
                                        calibration.dischargePerRevolution().value()),
                                Figures.DIGITS),
                        "± "
                                + Figures.text(Metered.within(truck, point, calibration.dischargePerRevolution()), 2)
                                + " (95 %)")));
        List<String> notes = new ArrayList<>();
        notes.add(Metered.fill(point) + " "
                + Figures.text(calibration.apparentFill().quantity(), 3) + ".");
        notes.addAll(ConditionWords.of(calibration.catches().stream().map(CalibrationCatch::observation)));
        return new SheetTable(
                "Calibration catches, " + place(calibration.point()),
                List.of("caught", "counted", point.material().isLiquid() ? "found" : "per revolution"),
                rows,
                notes);
    }

    /** What was weighed and divided by a density has digits without end. */
    private static Cell caught(Caught caught) {
        return caught instanceof WeighedVolume ? computed(caught.total()) : Cell.exact(caught.total());
    }

    private Quantity<?> ratio(CalibrationCatch one, Calibration calibration) {
        return Metered.found(
                truck,
                calibration.point(),
                Amounts.ofSi(
                        one.observation().kilograms() / one.revolutions(),
                        calibration.dischargePerRevolution().value().getUnit()));
    }

    private static Cell counted(CalibrationCatch one) {
        ShaftCount count = one.counted();
        String revolutions = one.observation().point().metering().hasShaft()
                ? Figures.text(Amounts.of(one.revolutions(), SpreadingUnits.REVOLUTION), Figures.DIGITS)
                : "";
        if (count instanceof ShaftCount.Pulses pulses) {
            return new Cell(Amounts.format(pulses.pulses()), revolutions);
        }
        if (count instanceof ShaftCount.CounterReadings readings) {
            return new Cell(Amounts.format(readings.pulses().pulses()), revolutions);
        }
        if (count instanceof ShaftCount.ByEye byEye) {
            return new Cell(
                    Amounts.format(byEye.revolutions()), "by eye, u " + Amounts.format(byEye.standardUncertainty()));
        }
        if (count instanceof ShaftCount.SettingTimesTime timed) {
            return new Cell(
                    revolutions, "setting " + Amounts.format(timed.setting()) + " × " + Amounts.format(timed.time()));
        }
        ShaftCount.SpeedTimesTime timed = (ShaftCount.SpeedTimesTime) count;
        return new Cell(revolutions, Amounts.format(timed.speed()) + " × " + Amounts.format(timed.time()));
    }

    private SheetTable verifications() {
        List<Verification> all = truck.verifications();
        List<String> columns = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            columns.add(time(all.get(i).source().observation().at()) + label(all.get(i)));
        }
        List<Row> rows = new ArrayList<>();
        List<String> places = all.stream().map(SheetTables::place).distinct().toList();
        if (places.size() > 1) {
            rows.add(row(
                    "material",
                    v -> new Cell(
                            v.source().point().material().name(),
                            v.source()
                                    .point()
                                    .setting()
                                    .quantity()
                                    .map(setting -> "gate " + Amounts.format(setting))
                                    .orElse(""))));
        }
        rows.addAll(List.of(
                row("in force", v -> Cell.exact(v.source().inForce().factor().value())),
                row("target rate", v -> Cell.exact(v.source().run().targetRate())),
                row("test run", v -> testRun(v.source().run())),
                row("expected", v -> computed(v.expected())),
                row("indicated", v -> v.indicated().map(SheetTables::computed).orElse(Cell.of("nothing"))),
                row("caught", v -> caught(v.source().caught())),
                row(
                        "calibration error",
                        v -> v.calibrationError()
                                .map(e -> new Cell(
                                        Figures.errorWithin(v.judgement()).replace('-', '−'), judged(v)))
                                .orElse(Cell.of("not known"))),
                row(
                        "delivery error",
                        v -> new Cell(
                                Figures.errorForPrint(v.deliveryError()),
                                v.equivalentLostTime()
                                        .map(t -> "equals " + Figures.text(t, 3))
                                        .orElse(""))),
                row("delivered rate", v -> computed(v.deliveredRate()))));
        return new SheetTable(
                "Verification catches" + (places.size() > 1 ? "" : ", " + places.get(0)),
                columns,
                rows,
                notesOnVerifications());
    }

    /** What several catches with one value say that none of them says alone. */
    private List<String> notesOnVerifications() {
        List<String> notes = new ArrayList<>(ConditionWords.of(
                truck.verifications().stream().map(v -> v.source().observation())));
        truck.points().stream()
                .flatMap(point -> point.judged().stream())
                .filter(series -> series.size() > 1)
                .map(series -> "The " + Words.catches(series) + ", " + place(series.last())
                        + ", together: error "
                        + Figures.errorWithin(series.judgement()).replace('-', '−') + ", "
                        + series.judgement().verdict().words() + ", " + Figures.chanceWithin(series.judgement()) + ".")
                .forEach(notes::add);
        return notes;
    }

    /** The speed with what was set beside it, a time or a distance. */
    private static Cell testRun(TestRun run) {
        Quantity<?> set = run.runTime()
                .<Quantity<?>>map(time -> time)
                .orElseGet(() -> run.distance().orElseThrow());
        Cell speed = Cell.exact(run.testSpeed());
        return new Cell(
                speed.main() + ", " + Amounts.format(set),
                speed.other()
                        + Figures.otherSystem(set, Figures.DIGITS)
                                .map(other -> ", " + other)
                                .orElse(""));
    }

    private Row row(String head, Function<Verification, Cell> cell) {
        return new Row(head, truck.verifications().stream().map(cell).toList());
    }

    private String label(Verification verification) {
        CalibrationFactor inForce = verification.source().inForce().factor();
        Optional<Correction> correction = correction();
        if (correction.isEmpty()) {
            return "";
        }
        if (correction.get().asLeft().equals(Optional.of(inForce))) {
            return " as left";
        }
        return correction.get().asFound().equals(inForce) ? " as found" : "";
    }

    /** The verdict with the probability that the true error is within the tolerance. */
    private static String judged(Verification verification) {
        return verification.verdict().words() + ", " + Figures.chanceWithin(verification.judgement());
    }

    private static SheetTable startUp(CalibrationPoint point, StartUp startUp) {
        return new SheetTable(
                "Start and steady flow, by several run times",
                List.of(),
                List.of(
                        Row.of("lost per start", Cell.computed(point.asCaught(startUp.lostMassPerStart()), 3)),
                        Row.of("as time", Cell.computed(startUp.lostTimePerStart(), 3)),
                        Row.of("steady flow off by", Cell.of(Figures.errorForPrint(startUp.steadyError())))),
                List.of());
    }

    private static SheetTable roadSpeed(RoadSpeedCheck check) {
        return new SheetTable(
                "Road speed over a measured course",
                List.of(),
                List.of(
                        Row.of("in force", Cell.exact(check.inForce())),
                        Row.of("measured", Cell.computed(check.measured().value(), 5)),
                        Row.of(
                                "effect on rate",
                                new Cell(
                                        Figures.errorForPrint(check.effectOnRate()),
                                        check.verdict().words()))),
                List.of());
    }

    private static Cell computed(Quantity<?> quantity) {
        return Cell.computed(quantity, Figures.DIGITS);
    }

    static String place(Verification verification) {
        return place(verification.source().point());
    }

    static String place(CalibrationPoint point) {
        return place(point.material().name(), point.setting().quantity());
    }

    /** No line breaks between a setting's number and its unit. */
    static String place(String material, Optional<Quantity<?>> setting) {
        return material
                + setting.map(o -> ", gate " + Figures.both(o).replace(' ', NO_BREAK_SPACE))
                        .orElse("");
    }

    static String time(OffsetDateTime at) {
        return TIME.format(at.toLocalTime());
    }
}
