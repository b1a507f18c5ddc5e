package org.gritwright.examples.fleetmemory;

import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.history.Contradiction;

/**
 * What is wrong with a database.
 *
 * @param damages what can't be used any more
 * @param contradictions what can't all be so, which somebody has to find out
 * @param slips what may have been written down under a wrong id
 */
record Check(
        int documents, int replaced, List<String> damages, List<Contradiction> contradictions, List<String> slips) {
    static Check of(Store store, Documents documents, ZoneOffset yard) throws SQLException, BadInputException {
        List<Kept> standing = new ArrayList<>();
        List<Kept> past = new ArrayList<>();
        List<String> damages = new ArrayList<>();
        store.reading(() -> {
            damages.addAll(store.damages());
            store.forEach(standing::add);
            store.forEachReplaced(one -> past.add(one.document()));
            return damages;
        });
        damages.addAll(standing.parallelStream()
                .flatMap(one -> damages(one, "", documents).stream())
                .toList());
        damages.addAll(past.parallelStream()
                .flatMap(one -> damages(one, "replaced ", documents).stream())
                .toList());
        List<Contradiction> contradictions = List.of();
        if (damages.isEmpty()) {
            contradictions = new Memory(store, documents, yard).ofFleet().contradictions();
        }
        List<String> trucks = standing.stream()
                .flatMap(one -> one.truck().stream())
                .distinct()
                .toList();
        return new Check(standing.size(), past.size(), damages, contradictions, Slips.alike(trucks));
    }

    private static List<String> damages(Kept kept, String which, Documents documents) {
        String name = which + kept.name();
        if (!kept.isWhole()) {
            return List.of(name + ": its text isn't the one that was kept (SHA-256)");
        }
        try {
            Kept read = documents.read(kept.kind(), kept.text(), name);
            return read.name().equals(kept.name()) ? List.of() : List.of(name + ": its text is " + read.name());
        } catch (BadInputException e) {
            return e.lines();
        }
    }

    List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(Words.count(documents, "document") + " and " + replaced + " replaced: "
                + (damages.isEmpty() ? "all whole" : Words.count(damages.size(), "line") + " about damage"));
        damages.stream().map("  "::concat).forEach(lines::add);
        if (damages.isEmpty()) {
            lines.addAll(Contradictions.of(contradictions).lines());
            lines.addAll(slips);
        }
        return lines;
    }
}
