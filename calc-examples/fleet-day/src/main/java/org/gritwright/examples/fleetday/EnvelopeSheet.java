package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.Bound;
import org.gritwright.core.envelope.Delivered;
import org.gritwright.core.envelope.Demand;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.envelope.Span;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.units.Amounts;

/**
 * What a truck can do at a calibration point, as the report's template reads it.
 *
 * @param table what is asked for, between which road speeds it holds, and what is put down beyond
 * @param chart the picture
 * @param legend what the picture shows
 */
record EnvelopeSheet(SheetTable table, Picture chart, String legend) {
    /**
     * @param point material and gate opening
     * @param isSetByHand whether a driver sets the shaft's speed, so that it only has some of the speeds
     */
    static EnvelopeSheet of(String point, Envelope envelope, List<Demand> asked, boolean isSetByHand) {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < asked.size(); i++) {
            rows.add(row(i + 1, envelope, asked.get(i)));
        }
        String range = Amounts.format(envelope.range().lowest()) + " to "
                + Amounts.format(envelope.range().highest());
        List<String> notes = new ArrayList<>(
                List.of("With a steady shaft of " + range + ", " + Figures.measured(envelope.discharge()) + "."));
        if (isSetByHand) {
            notes.add(
                    "It is set by hand: what is held lies between its control settings too, where none of them lays it.");
        }
        return new EnvelopeSheet(
                new SheetTable(
                        "What it can do, " + point,
                        List.of("asked for", "holds from", "to", "at the ends"),
                        rows,
                        notes),
                new EnvelopeChart(envelope, asked).picture(),
                "Gray: the rates that the conveyor holds. Numbers: what is asked for, as in the table, from its lowest to its"
                        + " highest road speed. ● held there, × not held.");
    }

    private static Row row(int number, Envelope envelope, Demand one) {
        Span<Speed> holds = envelope.speedsFor(one.rate());
        return Row.of(
                number + " " + one.name(),
                Cell.exact(one.rate()),
                holds.lowest().map(EnvelopeSheet::cell).orElse(Cell.of("a stand")),
                cell(holds.highest()),
                Cell.of(EnvelopeChart.ends(one).stream()
                        .map(end -> words(envelope, one, end))
                        .collect(Collectors.joining("; "))));
    }

    private static Cell cell(Bound<Speed> bound) {
        return new Cell(Figures.text(bound.value().value(), 3), EnvelopeChart.words(bound.limit()));
    }

    private static String words(Envelope envelope, Demand one, Quantity<Speed> end) {
        Delivered delivered = envelope.deliveredAt(one.rate(), end);
        return Amounts.format(end) + ": "
                + (delivered.limit().isEmpty() ? "holds" : "lays " + Figures.text(delivered.delivered(), 3));
    }
}
