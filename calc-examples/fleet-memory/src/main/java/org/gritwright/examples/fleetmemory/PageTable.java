package org.gritwright.examples.fleetmemory;

import java.util.List;
import java.util.Optional;

/**
 * A table of a page.
 *
 * @param columns the heads, that of the row heads first
 * @param notes remarks below it
 */
record PageTable(String caption, List<String> columns, List<Row> rows, List<String> notes) {
    /** What stands where nothing is known or nothing is said. */
    static final String NONE = "—";

    /**
     * A row.
     *
     * @param link where its head leads to; none for a head that is no link
     */
    record Row(String head, Optional<String> link, List<String> cells) {
        static Row of(String head, String... cells) {
            return new Row(head, Optional.empty(), List.of(cells));
        }
    }

    static PageTable of(String caption, List<String> columns, List<Row> rows) {
        return new PageTable(caption, columns, rows, List.of());
    }

    /** The heads of all but the first column. */
    public List<String> heads() {
        return columns.subList(1, columns.size());
    }
}
