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
import java.util.stream.Collectors;
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

    /** As canonical events have it. */
    private static final String SUPERSEDES = "\"supersedes\"";

    /** More, nobody reads. */
    private static final int MOST_CONFLICTS = 1000;

    private final Store store;
    private final Documents documents;
    private final Optional<String> why;

    /** Of the portion that is at hand. */
    private final Map<Kept.Name, Filed> fresh = new LinkedHashMap<>();

    private final List<Conflict> conflicts = new ArrayList<>();
    private final Map<Kept.Name, String> hashes = new HashMap<>();
    private int moreConflicts;
    private int added;
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

    /**
     * Something other under one name.
     *
     * @param old the SHA-256 of the one that came first
     * @param words what stands before and behind where that one is
     */
    private record Conflict(Kept.Name name, String old, List<String> words) {}

    /** @param why why what stands may be replaced; none if it may not */
    static Result of(Store store, Documents documents, Batch batch, Optional<String> why)
            throws SQLException, BadInputException {
        return new Import(store, documents, why).all(batch, () -> {});
    }

    /** The same into a database that holds nothing yet, and refused if it does. */
    static Result intoEmpty(Store store, Documents documents, Batch batch, String name)
            throws SQLException, BadInputException {
        return new Import(store, documents, Optional.empty()).all(batch, () -> {
            if (!store.isEmpty()) {
                throw new BadInputException(name + " holds something already; restore into a new one, or say import");
            }
        });
    }

    /** What has to be so before anything is kept. */
    private interface Condition {
        void require() throws SQLException, BadInputException;
    }

    private Result all(Batch batch, Condition condition) throws SQLException, BadInputException {
        try {
            return store.writing(() -> {
                condition.require();
                return run(batch);
            });
        } catch (BadInputException e) {
            if (conflicts.isEmpty()) {
                throw e;
            }
            // Nothing of this import is there any more: what is, was there before.
            throw new BadInputException(store.reading(() -> told(batch)));
        }
    }

    private Result run(Batch batch) throws SQLException, BadInputException {
        batch.forEachReplaced(store::addReplaced);
        batch.forEachPortion(this::portion);
        if (!conflicts.isEmpty()) {
            throw new BadInputException("conflicts");
        }
        if (hasSuperseding) {
            requireHistory();
        }
        return new Result(added, known, past, signed, replaced);
    }

    private void portion(List<Filed> portion) throws SQLException, BadInputException {
        hashes.clear();
        hashes.putAll(
                store.hashes(portion.stream().map(one -> one.document().name()).toList()));
        for (Filed one : portion) {
            Kept document = one.document();
            hasSuperseding = hasSuperseding
                    || (document.kind() == Kind.EVENT && document.text().contains(SUPERSEDES));
            file(one);
        }
        store.add(fresh.values().stream().map(Filed::document).toList());
        added += fresh.size();
        fresh.clear();
    }

    /** The conflicts, each with where the document is that came first. */
    private List<String> told(Batch batch) throws SQLException, BadInputException {
        Map<String, String> places =
                batch.places(conflicts.stream().map(Conflict::old).collect(Collectors.toSet()));
        Map<Kept.Name, String> there =
                store.hashes(conflicts.stream().map(Conflict::name).distinct().toList());
        List<String> told = new ArrayList<>();
        for (Conflict one : conflicts) {
            boolean isThere = one.old().equals(there.get(one.name()));
            told.add(String.join(
                    isThere || !places.containsKey(one.old()) ? "that is there" : "in " + places.get(one.old()),
                    one.words()));
        }
        if (moreConflicts > 0) {
            told.add("and " + Words.count(moreConflicts, "more document") + " that "
                    + (moreConflicts == 1 ? "is" : "are") + " other than those under the same name");
        }
        told.add("Nothing was imported. If the new one is right, import it with --why \"…\":"
                + " the old one is kept with that reason.");
        return told;
    }

    private void conflict(Kept old, Filed one, String how, String difference) {
        if (conflicts.size() == MOST_CONFLICTS) {
            moreConflicts++;
            return;
        }
        conflicts.add(new Conflict(
                old.name(),
                old.sha256(),
                List.of(one.from() + ": " + old.name() + " is " + how + " than the one ", ": " + difference)));
    }

    private void file(Filed one) throws SQLException, BadInputException {
        Kept document = one.document();
        Kept.Name name = document.name();
        Filed inThis = fresh.get(name);
        String hash = inThis == null ? hashes.get(name) : inThis.document().sha256();
        if (hash == null) {
            fresh.put(name, one);
        } else if (hash.equals(document.sha256())) {
            known++;
        } else {
            other(inThis == null ? store.find(name).orElseThrow() : inThis.document(), one);
        }
    }

    private void other(Kept old, Filed one) throws SQLException, BadInputException {
        Kept document = one.document();
        if (contentOf(old).equals(document.content())) {
            same(old, one);
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
            conflict(old, one, "other", difference(old.text(), document.text()));
        }
    }

    /** What was entered is the same: a signature is worth keeping, and else one of both, the same in whichever order they came. */
    private void same(Kept old, Filed one) throws SQLException, BadInputException {
        Kept document = one.document();
        Optional<SignOff> before = Documents.record(old).signOff();
        Optional<SignOff> now = Documents.record(document).signOff();
        if (before.isPresent() && now.isPresent() && !before.equals(now)) {
            if (why.isEmpty()) {
                conflict(
                        old,
                        one,
                        "signed otherwise",
                        "by " + now.get().name() + " on " + now.get().on() + ", and there by "
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
        if (fresh.containsKey(document.name())) {
            fresh.put(document.name(), one);
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

    /** Events that supersede each other in a circle would make no history; whoever is in one supersedes. */
    private void requireHistory() throws SQLException, BadInputException {
        List<Event> events = new ArrayList<>();
        for (Kept one : store.eventsWith(SUPERSEDES)) {
            events.addAll(Objects.requireNonNull(documents.events(one)));
        }
        try {
            History.of(events, ZoneOffset.UTC);
        } catch (InvalidInputException e) {
            throw new BadInputException("these events can't be kept together: " + e.getMessage());
        }
    }
}
