package org.gritwright.examples.fleetday;

import java.util.List;

/**
 * A chart for the driver, as a template reads it.
 *
 * @param caption what it is for
 * @param corner what stands in the rows' and in the columns' heads, with units
 * @param columns the heads of the columns
 * @param rows the rows
 * @param notes remarks below it
 */
record ChartTable(String caption, String corner, List<String> columns, List<Row> rows, List<String> notes) {
    /**
     * A row.
     *
     * @param isWanted whether it is one that somebody asks for
     */
    record Row(String head, boolean isWanted, List<Cell> cells) {}

    /**
     * A cell.
     *
     * @param other what stands below in small print; empty if nothing does
     * @param isOutside whether the truck can't do it, which its words say too
     */
    record Cell(String main, String other, boolean isOutside) {
        static Cell of(String main) {
            return new Cell(main, "", false);
        }
    }
}
