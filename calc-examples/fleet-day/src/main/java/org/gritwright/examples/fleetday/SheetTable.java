package org.gritwright.examples.fleetday;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;

/**
 * A small table of a truck's sheet.
 *
 * @param caption its caption
 * @param columns the heads of its columns, without that of the row heads; empty for a table of one column
 * @param rows its rows
 * @param notes remarks below it
 */
record SheetTable(String caption, List<String> columns, List<Row> rows, List<String> notes) {

    /**
     * A row.
     *
     * @param head its head
     * @param cells its cells
     */
    record Row(String head, List<Cell> cells) {
        static Row of(String head, Cell... cells) {
            return new Row(head, List.of(cells));
        }
    }

    /**
     * A cell.
     *
     * @param main the value as it was written down or in the same unit system
     * @param other the same in the other unit system, or empty
     */
    record Cell(String main, String other) {
        static final Cell EMPTY = new Cell("", "");

        static Cell of(String text) {
            return new Cell(text, "");
        }

        /** What may be missing. */
        static Cell of(Optional<String> text) {
            return of(text.orElse("—"));
        }

        static Cell of(String main, Quantity<?> quantity, int digits) {
            return new Cell(main, Figures.otherSystem(quantity, digits).orElse(""));
        }

        /** A computed quantity. */
        static Cell computed(Quantity<?> quantity, int digits) {
            return of(Figures.text(quantity, digits), quantity, digits);
        }

        /** A quantity as it was written down, every digit. */
        static Cell exact(Quantity<?> quantity) {
            return of(Amounts.format(quantity), quantity, Figures.DIGITS);
        }
    }
}
