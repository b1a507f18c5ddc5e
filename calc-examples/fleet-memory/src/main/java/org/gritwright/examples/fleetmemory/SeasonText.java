package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.season.SeasonBalance;
import org.gritwright.core.season.Suspicion;

/** A season that was made to add up, in lines: the numbers of its page. */
final class SeasonText {
    /** So many errors are told that would explain most, whether they are beyond chance or not. */
    private static final int MOST = 5;

    private static final int GAP = 2;

    private final SeasonPage page;

    SeasonText(SeasonPage page) {
        this.page = page;
    }

    List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(page.title());
        page.texts().forEach(lines::add);
        lines.add("");
        lines.addAll(page.sentences());
        List<PileSheet> sheets = page.sheets();
        for (PileSheet sheet : sheets) {
            lines.add("");
            lines.add(sheet.gap());
            lines.addAll(table(sheet.folded()));
        }
        lines.add("");
        lines.addAll(table(page.trucks(sheets)));
        lines.add("");
        lines.addAll(suspicions());
        return lines.stream().map(Words::minus).toList();
    }

    private List<String> suspicions() {
        SeasonBalance balance = page.balance();
        List<Suspicion> all = balance.suspicions();
        List<String> lines = new ArrayList<>();
        if (all.isEmpty()) {
            lines.add("No number of this season can be told wrong by the others.");
            return lines;
        }
        lines.add("What would explain most, found or not (an error is found from a score of "
                + SeasonPage.score(balance.power().critical())
                + " on). Here each is taken alone, and above together with all that was found:");
        all.stream()
                .limit(MOST)
                .forEach(one -> lines.add("  " + SeasonPage.score(one.score()) + "  " + one.sentence()));
        return lines;
    }

    private static List<String> table(PageTable table) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(table.columns());
        for (PageTable.Row row : table.rows()) {
            List<String> cells = new ArrayList<>(List.of(row.head()));
            cells.addAll(row.cells());
            rows.add(cells);
        }
        List<String> lines = new ArrayList<>(List.of(table.caption() + ":"));
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder(" ");
            for (int column = 0; column < row.size(); column++) {
                int place = column;
                int width = rows.stream()
                        .mapToInt(one -> one.get(place).length())
                        .max()
                        .orElse(0);
                String pad = " ".repeat(width - row.get(column).length());
                line.append(" ".repeat(column == 0 ? 1 : GAP))
                        .append(column == 0 ? row.get(column) + pad : pad + row.get(column));
            }
            lines.add(line.toString().stripTrailing());
        }
        table.notes().forEach(note -> lines.add("  " + note));
        return lines;
    }
}
