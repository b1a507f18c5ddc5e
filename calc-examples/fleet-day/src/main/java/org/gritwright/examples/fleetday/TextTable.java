package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;

/**
 * A table of plain text with columns of fixed width; what is too long goes on in further lines of its cell.
 *
 * @param widths the columns' widths in characters
 */
record TextTable(List<Integer> widths) {
    private static final String GAP = "  ";

    /** One row, as one line or more, none of them longer than the widths and the gaps together. */
    List<String> row(List<String> cells) {
        List<List<String>> wrapped = new ArrayList<>();
        int height = 0;
        for (int column = 0; column < widths.size(); column++) {
            List<String> lines = wrap(cells.get(column), widths.get(column));
            wrapped.add(lines);
            height = Math.max(height, lines.size());
        }
        List<String> rows = new ArrayList<>();
        for (int line = 0; line < height; line++) {
            StringBuilder row = new StringBuilder();
            for (int column = 0; column < widths.size(); column++) {
                List<String> cell = wrapped.get(column);
                String text = line < cell.size() ? cell.get(line) : "";
                row.append(column == 0 ? "" : GAP).append(text).append(" ".repeat(widths.get(column) - length(text)));
            }
            rows.add(row.toString().stripTrailing());
        }
        return rows;
    }

    /** Breaks a text at its spaces, and a word that is too long wherever it has to be. */
    static List<String> wrap(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : PlainText.oneLine(text).split(" ", -1)) {
            String rest = word;
            if (!line.isEmpty() && length(line) + 1 + length(rest) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (length(rest) > width) {
                int cut = rest.offsetByCodePoints(0, width);
                lines.add(rest.substring(0, cut));
                rest = rest.substring(cut);
            }
            line.append(line.isEmpty() ? "" : " ").append(rest);
        }
        lines.add(line.toString());
        return lines;
    }

    private static int length(CharSequence text) {
        return Character.codePointCount(text, 0, text.length());
    }
}
