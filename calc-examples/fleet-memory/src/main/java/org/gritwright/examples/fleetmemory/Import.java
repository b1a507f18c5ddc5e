package org.gritwright.examples.fleetmemory;

import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.record.SignOff;
import org.gritwright.units.InvalidInputException;

/**
 * One import, whole or not at all. In which order documents come doesn't matter: of two that are the same, the signed one stays, and
 * what is other under one name is refused unless a reason is given.
 */
final class Import {
    /**
     * What became of the documents.
     *
     * @param past how many of the known ones were replaced earlier, so that another stands in their place
     */
    record Result(int added, int known, int past, int signed, int replaced) {
        /** For example "12 new, 3 known". */
        String words() {
            return added + " new, " + known + " known"
                    + (past > 0 ? " (" + past + " of them replaced earlier; what took their place stands)" : "")
                    + (signed > 0 ? ", " + signed + " now signed" : "")
                    + (replaced > 0 ? ", " + replaced + " replaced" : "");
        }
    }

    private static final Pattern NAMED = Pattern.compile("\"(container|at|id|ticket|on|name)\": ");

    private final Store store;
    private final Documents documents;
    private final Optional<String> why;
    private final Map<Kept.Name, Filed> added = new LinkedHashMap<>();
    private final List<String> conflicts = new ArrayList<>();
    private Map<Kept.Name, String> hashes = Map.of();
    private int known;
    private int past;
    private int signed;
    private int replaced;
    private boolean hasSuperseding;

    private Import(Store store, Documents documents, Optional<String> why) {
        this.store = store;
        this.documents = documents;
        this.why = why;
    }

    /** @param why why what stands may be replaced; none if it may not */
    static Result of(Store store, Documents documents, Batch batch, Optional<String> why)
            throws SQLException, BadInputException {
        return store.writing(() -> new Import(store, documents, why).run(batch));
    }

    /** The same into a database that holds nothing yet, and refused if it does. */
    static Result intoEmpty(Store store, Documents documents, Batch batch, String name)
            throws SQLException, BadInputException {
        return store.writing(() -> {
            if (!store.isEmpty()) {
                throw new BadInputException(name + " holds something already; restore into a new one, or say import");
            }
            return new Import(store, documents, Optional.empty()).run(batch);
        });
    }

    private Result run(Batch batch) throws SQLException, BadInputException {
        hashes = store.hashes();
        for (Replaced one : batch.replaced()) {
            store.addReplaced(one);
        }
        for (Filed one : batch.documents()) {
            hasSuperseding = hasSuperseding || one.document().kind() == Kind.EVENT;
            file(one);
        }
        if (!conflicts.isEmpty()) {
            conflicts.add("Nothing was imported. If the new one is right, import it with --why \"…\":"
                    + " the old one is kept with that reason.");
            throw new BadInputException(conflicts);
        }
        store.add(added.values().stream().map(Filed::document).toList());
        if (hasSuperseding) {
            requireHistory();
        }
        return new Result(added.size(), known, past, signed, replaced);
    }

    private void file(Filed one) throws SQLException, BadInputException {
        Kept document = one.document();
        Kept.Name name = document.name();
        Filed inThis = added.get(name);
        String hash = inThis == null ? hashes.get(name) : inThis.document().sha256();
        if (hash == null) {
            added.put(name, one);
        } else if (hash.equals(document.sha256())) {
            known++;
        } else {
            Kept old = inThis == null ? store.find(name).orElseThrow() : inThis.document();
            other(old, one, inThis == null ? "that is there" : "in " + inThis.from());
        }
    }

    private void other(Kept old, Filed one, String where) throws SQLException, BadInputException {
        Kept document = one.document();
        if (contentOf(old).equals(document.content())) {
            same(old, one, where);
            return;
        }
        Map<String, Set<String>> instead = new HashMap<>();
        store.replaced(old.name())
                .forEach(past -> instead.computeIfAbsent(past.document().content(), key -> new HashSet<>())
                        .add(past.by()));
        boolean isPast = leads(instead, document.content(), old.content());
        boolean isNext = leads(instead, old.content(), document.content());
        if (isPast && !isNext) {
            known++;
            past++;
        } else if (isNext && !isPast) {
            put(one);
            replaced++;
        } else if (why.isPresent()) {
            store.addReplaced(new Replaced(old, document.content(), why.get()));
            put(one);
            replaced++;
        } else {
            conflicts.add(one.from() + ": " + document.name() + " is other than the one " + where + ": "
                    + difference(old.text(), document.text()));
        }
    }

    /** What was entered is the same: a signature is worth keeping, and else one of both, the same in whichever order they came. */
    private void same(Kept old, Filed one, String where) throws SQLException, BadInputException {
        Kept document = one.document();
        Optional<SignOff> before = Documents.record(old).signOff();
        Optional<SignOff> now = Documents.record(document).signOff();
        if (before.isPresent() && now.isPresent() && !before.equals(now)) {
            if (why.isEmpty()) {
                conflicts.add(
                        one.from() + ": " + document.name() + " is signed otherwise than the one " + where + ": by "
                                + now.get().name() + " on " + now.get().on() + ", and there by "
                                + before.get().name() + " on " + before.get().on());
                return;
            }
            store.addReplaced(new Replaced(old, document.content(), why.get()));
            put(one);
            replaced++;
        } else if (before.isEmpty() && now.isPresent()) {
            put(one);
            signed++;
        } else {
            known++;
            boolean isAlike = before.isPresent() == now.isPresent();
            if (isAlike && document.sha256().compareTo(old.sha256()) < 0) {
                put(one);
            }
        }
    }

    private void put(Filed one) throws SQLException {
        Kept document = one.document();
        if (added.containsKey(document.name())) {
            added.put(document.name(), one);
        } else {
            store.put(document);
            hashes.put(document.name(), document.sha256());
        }
    }

    /** As this program's library writes it, which may be newer than the one that kept it. */
    private String contentOf(Kept old) throws BadInputException {
        return documents
                .read(old.kind(), old.text(), old.name() + " in the database")
                .content();
    }

    private static boolean leads(Map<String, Set<String>> instead, String from, String to) {
        Set<String> seen = new HashSet<>();
        List<String> open = new ArrayList<>(List.of(from));
        while (!open.isEmpty()) {
            for (String next : instead.getOrDefault(open.remove(open.size() - 1), Set.of())) {
                if (next.equals(to)) {
                    return true;
                }
                if (seen.add(next)) {
                    open.add(next);
                }
            }
        }
        return false;
    }

    /** The first line in which two texts differ. */
    private static String difference(String old, String now) {
        List<String> before = old.lines().toList();
        List<String> after = now.lines().toList();
        for (int i = 0; i < Math.min(before.size(), after.size()); i++) {
            if (!before.get(i).equals(after.get(i))) {
                return "there " + told(before.get(i)) + ", here " + told(after.get(i)) + ", in line " + (i + 1)
                        + " as it is kept" + within(after, i);
            }
        }
        return "one of them goes on where the other ends";
    }

    private static String told(String line) {
        String told = line.strip();
        return told.endsWith(",") ? told.substring(0, told.length() - 1) : told;
    }

    /** What names the nearest thing that the line is of, for example a container; empty if nothing does. */
    private static String within(List<String> lines, int line) {
        for (int i = line - 1; i >= 0; i--) {
            String told = told(lines.get(i));
            if (NAMED.matcher(told).lookingAt()) {
                return ", below " + told;
            }
        }
        return "";
    }

    /** Events that supersede each other in a circle would make no history. */
    private void requireHistory() throws SQLException, BadInputException {
        List<Event> events = new ArrayList<>();
        for (Kept one : store.events()) {
            events.addAll(Objects.requireNonNull(documents.events(one)));
        }
        try {
            History.of(events, ZoneOffset.UTC);
        } catch (InvalidInputException e) {
            throw new BadInputException("these events can't be kept together: " + e.getMessage());
        }
    }
}
