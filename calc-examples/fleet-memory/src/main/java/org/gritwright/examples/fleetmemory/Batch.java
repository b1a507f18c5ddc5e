package org.gritwright.examples.fleetmemory;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What files hold together, as it was read: whoever changes a file meanwhile changes nothing here. It lies on the disk, as it may be more than memory
 * holds.
 */
final class Batch implements AutoCloseable {
    /** So many documents are handed out at once, or so many characters of them. */
    private static final int MOST_AT_ONCE = 500;

    private static final int MOST_CHARACTERS = 4 << 20;

    private static final String MIDNIGHT = "T00:00:00";

    /** As canonical events have it. */
    private static final Pattern BEGIN_OF_DAY = Pattern.compile("\"from\": \"[-0-9]{10}" + MIDNIGHT + "([^\"]+)\"");

    private final Spool documents;
    private final Spool replaced;
    private final Map<String, LocalDate> last = new TreeMap<>();
    private final Map<String, String> offsets = new TreeMap<>();

    private Batch(Spool documents, Spool replaced) {
        this.documents = documents;
        this.replaced = replaced;
    }

    /** An empty one, which lies in a folder without a name. */
    static Batch in(Path folder) throws BadInputException {
        Spool documents = Spool.in(folder);
        try {
            return new Batch(documents, Spool.in(folder));
        } catch (BadInputException e) {
            documents.close();
            throw e;
        }
    }

    /** Takes what is handed out. */
    interface Each<T> {
        void take(T one) throws SQLException, BadInputException;
    }

    void add(Arrival arrival) throws BadInputException {
        if (arrival instanceof Filed one) {
            Kept document = one.document();
            documents.add(row(document, one.from()));
            document.truck()
                    .ifPresent(truck ->
                            last.merge(truck, LocalDate.parse(document.day()), (a, b) -> a.isAfter(b) ? a : b));
            offset(document).ifPresent(offset -> offsets.putIfAbsent(offset, document.identity()));
        } else if (arrival instanceof Replaced one) {
            replaced.add(row(one.document(), one.by(), one.why()));
        }
    }

    /** How much is in it that stood once. */
    long replaced() {
        return replaced.rows();
    }

    /** The last day of each truck's documents. */
    Map<String, LocalDate> last() {
        return last;
    }

    /** By which offsets from UTC sums of days say that their day begins, each with the first that does. */
    Map<String, String> offsets() {
        return offsets;
    }

    /** The offset by which the day of a sum begins; none of what is no sum, or doesn't say it. */
    static Optional<String> offset(Kept document) {
        if (document.kind() != Kind.EVENT || !document.text().contains(MIDNIGHT)) {
            return Optional.empty();
        }
        Matcher begin = BEGIN_OF_DAY.matcher(document.text());
        return begin.find() ? Optional.of(begin.group(1)) : Optional.empty();
    }

    /** What exports say that stood once. */
    void forEachReplaced(Each<Replaced> each) throws SQLException, BadInputException {
        replaced.forEach(row -> each.take(new Replaced(kept(row), text(row, 7), text(row, 8))));
    }

    /** The documents, some at a time, in the order in which they were read. */
    void forEachPortion(Each<List<Filed>> each) throws SQLException, BadInputException {
        List<Filed> portion = new ArrayList<>();
        long[] characters = new long[1];
        documents.forEach(row -> {
            Filed one = new Filed(kept(row), text(row, 7));
            portion.add(one);
            characters[0] += one.document().text().length();
            if (portion.size() == MOST_AT_ONCE || characters[0] >= MOST_CHARACTERS) {
                each.take(List.copyOf(portion));
                portion.clear();
                characters[0] = 0;
            }
        });
        if (!portion.isEmpty()) {
            each.take(portion);
        }
    }

    /** Where the first documents with some SHA-256 were read; none for those that aren't in it. */
    Map<String, String> places(Set<String> hashes) throws SQLException, BadInputException {
        Map<String, String> places = new HashMap<>();
        documents.forEach(row -> {
            String hash = text(row, 5);
            if (hashes.contains(hash)) {
                places.putIfAbsent(hash, text(row, 7));
            }
        });
        return places;
    }

    private static List<Optional<String>> row(Kept document, String... more) {
        List<Optional<String>> row = new ArrayList<>();
        row.add(Optional.of(document.kind().word()));
        row.add(Optional.of(document.identity()));
        row.add(document.truck());
        row.add(Optional.of(document.day()));
        row.add(Optional.of(document.content()));
        row.add(Optional.of(document.sha256()));
        row.add(Optional.of(document.text()));
        for (String one : more) {
            row.add(Optional.of(one));
        }
        return row;
    }

    private static Kept kept(List<Optional<String>> row) {
        return new Kept(
                Kind.of(text(row, 0)).orElseThrow(),
                text(row, 1),
                row.get(2),
                text(row, 3),
                text(row, 4),
                text(row, 5),
                text(row, 6));
    }

    private static String text(List<Optional<String>> row, int column) {
        return row.get(column).orElseThrow();
    }

    @Override
    public void close() throws BadInputException {
        try (documents) {
            replaced.close();
        }
    }
}
