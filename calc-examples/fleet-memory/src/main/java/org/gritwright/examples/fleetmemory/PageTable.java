package org.gritwright.examples.fleetmemory;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A table of a page.
 *
 * @param columns the heads, that of the row heads first
 * @param notes remarks below it
 */
record PageTable(String caption, List<String> columns, List<Row> rows, List<String> notes) {
    /** What stands where nothing is known or nothing is said. */
    static final String NONE = "—";

    /** So many letters of the style sheet's size stand side by side on Letter. */
    private static final int ON_PAPER = 74;

    /** Between columns, in letters. */
    private static final int GAP = 1;

    /** What isn't longer is never broken; parts.peb has the same. */
    private static final int SHORT = 16;

    /** What is longer, such as an id, is broken anywhere. */
    private static final int LONGEST = 25;

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

    /** The heads of all but the first column, as a style sheet sets them beside numbers: it can't mark in them what is to stay together. */
    public List<String> heads() {
        return columns.subList(1, columns.size()).stream()
                .map(head -> head.replace(" %", "\u00A0%"))
                .toList();
    }

    /** Whether its columns, as narrow as they may be, are wider than a sheet of paper. */
    public boolean isWide() {
        int letters = least(columns.get(0), rows.stream().map(Row::head));
        for (int i = 1; i < columns.size(); i++) {
            int cell = i - 1;
            letters +=
                    least(columns.get(i), rows.stream().map(row -> row.cells().get(cell)));
        }
        return letters > ON_PAPER;
    }

    private static int least(String head, Stream<String> cells) {
        return GAP
                + Stream.concat(Stream.of(Wholes.longest(head)), cells.map(PageTable::least))
                        .mapToInt(Integer::intValue)
                        .max()
                        .orElse(0);
    }

    private static int least(String cell) {
        return cell.length() <= SHORT ? cell.length() : Math.min(LONGEST, Wholes.longest(Words.times(cell)));
    }
}
