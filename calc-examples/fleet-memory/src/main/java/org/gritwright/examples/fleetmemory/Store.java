package org.gritwright.examples.fleetmemory;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** The documents in a database, by plain SQL. A history is never kept: it follows from the documents when it is read. */
final class Store implements AutoCloseable {
    private static final String COLUMNS = "kind, identity, truck, day, content, sha256, text";

    private static final int FETCHED_AT_ONCE = 500;

    private final Database database;
    private final Connection connection;

    private Store(Database database, Connection connection) {
        this.database = database;
        this.connection = connection;
    }

    /** For reading; refuses a database that isn't there. */
    static Store open(Database database) throws SQLException, BadInputException {
        return open(database, false);
    }

    /** For writing; a database that isn't there is made. */
    static Store make(Database database) throws SQLException, BadInputException {
        return open(database, true);
    }

    private static Store open(Database database, boolean toBeMade) throws SQLException, BadInputException {
        database.check(toBeMade);
        new Schema(database).prepare();
        return new Store(database, database.connect(toBeMade));
    }

    /** Work that is done whole or not at all. */
    interface Work<T> {
        T run() throws SQLException, BadInputException;
    }

    /** Does work that writes; others that write wait. */
    <T> T writing(Work<T> work) throws SQLException, BadInputException {
        return inOne(
                () -> {
                    if (database.isServer()) {
                        try (Statement lock = connection.createStatement()) {
                            lock.execute("LOCK TABLE document, replaced IN SHARE ROW EXCLUSIVE MODE");
                        }
                    }
                    return work.run();
                },
                false);
    }

    /** Does work that sees one state of all that is kept, whatever others write meanwhile. */
    <T> T reading(Work<T> work) throws SQLException, BadInputException {
        return inOne(work, true);
    }

    private <T> T inOne(Work<T> work, boolean isReading) throws SQLException, BadInputException {
        if (isReading && database.isServer()) {
            connection.setReadOnly(true);
            connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
        }
        connection.setAutoCommit(false);
        boolean isDone = false;
        try {
            T result = work.run();
            connection.commit();
            isDone = true;
            return result;
        } finally {
            if (!isDone) {
                rollBack();
            }
        }
    }

    /** What failed is told, and not that a broken connection can't be rolled back: the database does that itself. */
    private void rollBack() {
        try {
            connection.rollback();
        } catch (SQLException ignored) {
            return;
        }
    }

    /** The SHA-256 of the texts that stand under some names. */
    Map<Kept.Name, String> hashes(Collection<Kept.Name> names) throws SQLException {
        Map<Kept.Name, String> hashes = new HashMap<>();
        for (Kind kind : Kind.values()) {
            List<String> parameters = new ArrayList<>(List.of(kind.word()));
            names.stream()
                    .filter(name -> name.kind() == kind)
                    .map(Kept.Name::identity)
                    .forEach(parameters::add);
            if (parameters.size() > 1) {
                // Name by name: a server that doesn't know yet how much was just added would look through all of it.
                query(
                        "SELECT name.column1, (SELECT sha256 FROM document WHERE kind = ? AND identity = name.column1)"
                                + " FROM (VALUES "
                                + String.join(", ", Collections.nCopies(parameters.size() - 1, "(?)"))
                                + ") AS name",
                        one -> {
                            String hash = one.getString(2);
                            if (hash != null) {
                                hashes.put(new Kept.Name(kind, one.getString(1)), hash);
                            }
                        },
                        parameters.toArray(String[]::new));
            }
        }
        return hashes;
    }

    Optional<Kept> find(Kept.Name name) throws SQLException {
        List<Kept> found = new ArrayList<>();
        query(
                "SELECT " + COLUMNS + " FROM document WHERE kind = ? AND identity = ?",
                one -> found.add(kept(one)),
                name.kind().word(),
                name.identity());
        return found.stream().findFirst();
    }

    /** All that stands, in the order of kind and identity. */
    void forEach(Consumer<Kept> each) throws SQLException {
        query(
                "SELECT " + COLUMNS + " FROM document ORDER BY kind" + bytes() + ", identity" + bytes(),
                one -> each.accept(kept(one)));
    }

    /** What stands of a truck and of the fleet. */
    List<Kept> ofTruck(String truck) throws SQLException {
        List<Kept> found = new ArrayList<>();
        query(
                "SELECT " + COLUMNS + " FROM document WHERE truck = ? OR truck IS NULL",
                one -> found.add(kept(one)),
                truck);
        return found;
    }

    /** The events whose text has a word, for example a field's name. */
    List<Kept> eventsWith(String word) throws SQLException {
        List<Kept> found = new ArrayList<>();
        query(
                "SELECT " + COLUMNS + " FROM document WHERE kind = ? AND text LIKE ?",
                one -> found.add(kept(one)),
                Kind.EVENT.word(),
                "%" + word + "%");
        return found;
    }

    /** The latest of the sums whose days begin by another offset from UTC than this one. */
    Optional<Kept> sumByAnotherOffset(String offset) throws SQLException {
        String beginsAt = "%\"used\"%\"from\": \"__________T00:00:00";
        List<Kept> found = new ArrayList<>();
        query(
                "SELECT " + COLUMNS + " FROM document WHERE kind = ? AND text LIKE ? AND text NOT LIKE ?"
                        + " ORDER BY day DESC, identity" + bytes() + " LIMIT 1",
                one -> found.add(kept(one)),
                Kind.EVENT.word(),
                beginsAt + "%",
                beginsAt + offset + "\"%");
        return found.stream().findFirst();
    }

    /** In the order of their days. */
    List<Kept> ofKind(Kind kind) throws SQLException {
        List<Kept> found = new ArrayList<>();
        query(
                "SELECT " + COLUMNS + " FROM document WHERE kind = ? ORDER BY day, identity" + bytes(),
                one -> found.add(kept(one)),
                kind.word());
        return found;
    }

    List<String> trucks() throws SQLException {
        List<String> found = new ArrayList<>();
        query("SELECT DISTINCT truck FROM document WHERE truck IS NOT NULL", one -> found.add(one.getString(1)));
        return found.stream().sorted().toList();
    }

    /** All that stood once, in the order of kind, identity and content. */
    void forEachReplaced(Consumer<Replaced> each) throws SQLException {
        query(
                "SELECT " + COLUMNS + ", replaced_by, why FROM replaced ORDER BY kind" + bytes() + ", identity"
                        + bytes() + ", sha256" + bytes() + ", replaced_by" + bytes() + ", why" + bytes(),
                one -> each.accept(replaced(one)));
    }

    List<Replaced> replaced(Kept.Name name) throws SQLException {
        List<Replaced> found = new ArrayList<>();
        query(
                "SELECT " + COLUMNS + ", replaced_by, why FROM replaced WHERE kind = ? AND identity = ?",
                one -> found.add(replaced(one)),
                name.kind().word(),
                name.identity());
        return found;
    }

    void add(List<Kept> documents) throws SQLException {
        try (PreparedStatement insert =
                connection.prepareStatement("INSERT INTO document (" + COLUMNS + ") VALUES (?, ?, ?, ?, ?, ?, ?)")) {
            for (Kept document : documents) {
                set(insert, document);
                insert.addBatch();
            }
            insert.executeBatch();
        }
    }

    /** Puts a document in the place of the one of its name. */
    void put(Kept document) throws SQLException {
        try (PreparedStatement delete =
                connection.prepareStatement("DELETE FROM document WHERE kind = ? AND identity = ?")) {
            delete.setString(1, document.kind().word());
            delete.setString(2, document.identity());
            delete.executeUpdate();
        }
        add(List.of(document));
    }

    /** Keeps what stood once; what is there already changes nothing. */
    boolean addReplaced(Replaced one) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO replaced (" + COLUMNS
                + ", replaced_by, why) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING")) {
            int next = set(insert, one.document());
            insert.setString(next, one.by());
            insert.setString(next + 1, one.why());
            return insert.executeUpdate() > 0;
        }
    }

    boolean isEmpty() throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet found =
                        statement.executeQuery("SELECT 1 FROM document UNION ALL SELECT 1 FROM replaced LIMIT 1")) {
            return !found.next();
        }
    }

    /** What the database finds wrong with itself. */
    List<String> damages() throws SQLException {
        List<String> damages = new ArrayList<>();
        if (!database.isServer()) {
            query("PRAGMA integrity_check", one -> damages.add(one.getString(1)));
            damages.remove("ok");
        }
        return damages;
    }

    private interface Row {
        void take(ResultSet row) throws SQLException;
    }

    private void query(String sql, Row row, String... parameters) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            // Within a transaction the server hands them out bit by bit.
            statement.setFetchSize(FETCHED_AT_ONCE);
            for (int i = 0; i < parameters.length; i++) {
                statement.setString(i + 1, parameters[i]);
            }
            try (ResultSet found = statement.executeQuery()) {
                while (found.next()) {
                    row.take(found);
                }
            }
        }
    }

    /** One order on every server: that of bytes and not of letters. */
    private String bytes() {
        return database.isServer() ? " COLLATE \"C\"" : "";
    }

    private static int set(PreparedStatement statement, Kept document) throws SQLException {
        int next = 1;
        statement.setString(next++, document.kind().word());
        statement.setString(next++, document.identity());
        statement.setString(next++, document.truck().orElse(null));
        statement.setString(next++, document.day());
        statement.setString(next++, document.content());
        statement.setString(next++, document.sha256());
        statement.setString(next++, document.text());
        return next;
    }

    private static Replaced replaced(ResultSet row) throws SQLException {
        return new Replaced(kept(row), row.getString(8), row.getString(9));
    }

    private static Kept kept(ResultSet row) throws SQLException {
        return new Kept(
                kind(row),
                row.getString(2),
                Optional.ofNullable(row.getString(3)),
                row.getString(4),
                row.getString(5),
                row.getString(6),
                row.getString(7));
    }

    private static Kind kind(ResultSet row) throws SQLException {
        String word = row.getString(1);
        return Kind.of(word).orElseThrow(() -> new SQLException("unknown kind of document: " + word));
    }

    @Override
    public void close() throws SQLException {
        connection.close();
    }
}
