package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javax.measure.Quantity;
import org.gritwright.core.boom.NozzleComparison;
import org.gritwright.core.boom.NozzleReview;
import org.gritwright.core.boom.PressureSetUp;
import org.gritwright.core.boom.SectionShare;
import org.gritwright.core.fleet.assessment.BoomAssessment;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;

/**
 * The booms of the day as a table for spreadsheets: a row a nozzle, in the order in which they were written down. What is of its section or
 * of the whole boom stands in each of its rows; a boom whose nozzles weren't caught has one row.
 */
final class BoomCsv {
    /**
     * A row.
     *
     * @param nozzle none of a boom whose nozzles weren't caught
     */
    private record Row(TruckResult truck, BoomAssessment boom, Optional<NozzleComparison> nozzle) {
        private Optional<SectionShare> section() {
            return nozzle.flatMap(one -> boom.shares().stream()
                    .filter(share -> share.section().equals(one.nozzle().section()))
                    .findFirst());
        }

        private static List<Row> of(TruckResult truck, BoomAssessment boom) {
            List<Row> rows = new ArrayList<>();
            boom.nozzles()
                    .ifPresent(review ->
                            review.comparisons().forEach(one -> rows.add(new Row(truck, boom, Optional.of(one)))));
            return rows.isEmpty() ? List.of(new Row(truck, boom, Optional.empty())) : rows;
        }
    }

    private final CsvTable<Row> table = new CsvTable<>();

    private BoomCsv(FleetResult result) {
        table.text("truck", row -> row.truck().id());
        table.text("day", row -> result.day().day().toString());
        table.text("needs attention", row -> row.truck().needsAttention() ? "yes" : "no");
        table.text("rate", row -> row.boom().control().words());
        table.optional("section", row -> row.nozzle().map(one -> one.nozzle().section()));
        table.optional("nozzle", row -> row.nozzle().map(one -> one.nozzle().nozzle()));
        table.measured(
                "flow",
                row -> row.nozzle().map(one -> one.nozzle().flow()),
                SpreadingUnits.US_GALLON_PER_MINUTE,
                SpreadingUnits.LITER_PER_MINUTE);
        table.number(
                "compared with",
                row -> row.boom().nozzles().map(one -> one.yardstick().words()));
        table.quantity(
                "flow that it is compared with",
                row -> row.boom().nozzles().map(NozzleReview::reference),
                SpreadingUnits.US_GALLON_PER_MINUTE,
                SpreadingUnits.LITER_PER_MINUTE);
        table.measured("off by", row -> row.nozzle().map(NozzleComparison::deviation), SpreadingUnits.PERCENT);
        table.quantity(
                "tolerance of a nozzle",
                row -> row.boom().nozzles().map(one -> one.tolerance().limit()),
                SpreadingUnits.PERCENT);
        table.quantity(
                "coefficient of variation of the nozzles",
                row -> row.boom().nozzles().flatMap(NozzleReview::variation),
                SpreadingUnits.PERCENT);
        table.number("verdict", row -> row.nozzle().map(one -> one.condition().words()));
        table.quantity("share of its section", row -> row.section().map(SectionShare::share), SpreadingUnits.PERCENT);
        table.quantity("even share", row -> row.section().map(SectionShare::even), SpreadingUnits.PERCENT);
        table.quantity("its section is off by", row -> row.section().map(SectionShare::error), SpreadingUnits.PERCENT);
        density("pressure set up with", PressureSetUp::setUpWith);
        density("runs now", PressureSetUp::runsWith);
        table.quantity(
                "volume at that pressure off by",
                row -> row.boom().setUp().map(PressureSetUp::error),
                SpreadingUnits.PERCENT);
        table.number(
                "right pressure (times the one that was set)",
                row -> row.boom().setUp().map(one -> Figures.number(one.pressureFactor(), SpreadingUnits.ONE)));
    }

    static boolean isWanted(FleetResult result) {
        return !rows(result).isEmpty();
    }

    static String text(FleetResult result) throws IOException {
        return new BoomCsv(result).table.of(rows(result));
    }

    private static List<Row> rows(FleetResult result) {
        return result.trucks().stream()
                .flatMap(truck -> truck.assessment().boom().stream().flatMap(boom -> Row.of(truck, boom).stream()))
                .toList();
    }

    private void density(String name, Function<PressureSetUp, Quantity<BulkDensity>> cell) {
        table.quantity(
                name,
                row -> row.boom().setUp().map(cell),
                SpreadingUnits.POUND_PER_US_GALLON,
                SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
    }
}
