package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Optional;
import java.util.Properties;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * Where documents are kept: SQLite in one file, or PostgreSQL.
 *
 * @param url what the driver takes
 * @param name what a person calls it; never with a password
 * @param file the file of SQLite; none for a server
 */
record Database(String url, String name, Optional<Path> file) {
    private static final String SQLITE = "jdbc:sqlite:";
    private static final String POSTGRESQL = "jdbc:postgresql:";

    /** An import that waits for another one; a large one takes seconds. */
    private static final String PATIENCE_MILLISECONDS = "120000";

    static Database of(String place) throws BadInputException {
        if (place.startsWith(POSTGRESQL)) {
            return new Database(place, place.replaceFirst("[?].*", ""), Optional.empty());
        }
        boolean isUrl = place.startsWith(SQLITE);
        if (!isUrl && place.startsWith("jdbc:")) {
            throw new BadInputException(
                    place.replaceFirst("[?].*", "") + ": give a file, jdbc:sqlite:… or jdbc:postgresql:…");
        }
        String name = isUrl ? place.substring(SQLITE.length()).replaceFirst("[?].*", "") : place;
        if (name.isBlank() || (!isUrl && name.indexOf('?') >= 0)) {
            throw new BadInputException("\"" + place + "\" can't be the name of a database file");
        }
        try {
            return new Database(isUrl ? place : SQLITE + place, name, Optional.of(Path.of(name)));
        } catch (InvalidPathException e) {
            throw new BadInputException("\"" + place + "\" can't be the name of a database file");
        }
    }

    /** Where there is room for what is read before it is kept: on the disk that is to hold it, where that is known. */
    Path folder() {
        return file.flatMap(path -> Optional.ofNullable(path.toAbsolutePath().getParent()))
                .orElseGet(() -> Path.of(System.getProperty("java.io.tmpdir")));
    }

    boolean isServer() {
        return file.isEmpty();
    }

    /** Refuses what can't be a database file, and one that isn't there unless it is to be made. */
    void check(boolean toBeMade) throws BadInputException {
        if (isServer()) {
            return;
        }
        Path path = file.orElseThrow();
        Path folder = path.toAbsolutePath().getParent();
        if (Files.isDirectory(path)) {
            throw new BadInputException(name + " is a folder; name a file in it");
        }
        if (folder == null || !Files.isDirectory(folder)) {
            throw new BadInputException("there is no folder " + folder);
        }
        if (!toBeMade && !Files.exists(path)) {
            throw new BadInputException("there is no database " + name + " yet; import makes one");
        }
        if (!toBeMade && isEmpty(path)) {
            throw new BadInputException(name + " is no database of this program (it is empty)");
        }
    }

    private static boolean isEmpty(Path path) throws BadInputException {
        try {
            return Files.isRegularFile(path) && Files.size(path) == 0;
        } catch (IOException e) {
            throw new BadInputException("can't read " + path + ": " + Failure.words(e));
        }
    }

    /**
     * A connection.
     *
     * @param isWriting whether a transaction that begins shuts out all others that write
     */
    Connection connect(boolean isWriting) throws SQLException {
        Properties properties = new Properties();
        if (!isServer()) {
            properties.setProperty("busy_timeout", PATIENCE_MILLISECONDS);
            properties.setProperty("transaction_mode", isWriting ? "IMMEDIATE" : "DEFERRED");
            // A commit is on the disk when it returns.
            properties.setProperty("synchronous", "FULL");
        }
        return DriverManager.getConnection(url, properties);
    }

    /** Why the database can't be used, if a person can do something about it. */
    Optional<String> words(SQLException failure) {
        if (failure instanceof SQLiteException sqlite) {
            return words(sqlite.getResultCode());
        }
        String state = failure.getSQLState();
        if (!isServer() || state == null) {
            return Optional.empty();
        }
        return Optional.ofNullable(
                switch (state) {
                    case "53100" -> "the disk of " + name + " is full; nothing was changed";
                    case "28P01", "28000" ->
                        name + " doesn't let this user in; put user and password into the address or into .pgpass";
                    case "3D000" -> "there is no database " + name + "; make an empty one first";
                    case "08001" -> "no server answers at " + name;
                    default -> state.startsWith("08") ? "the connection to " + name + " broke" : null;
                });
    }

    private Optional<String> words(SQLiteErrorCode code) {
        return Optional.ofNullable(
                switch (code) {
                    case SQLITE_NOTADB -> name + " is no database of this program (no SQLite file)";
                    case SQLITE_CORRUPT -> name + " is damaged; restore a backup into another file";
                    case SQLITE_FULL -> "the disk is full, or " + name + " may not grow; nothing was changed";
                    case SQLITE_BUSY -> "another program keeps " + name + " locked; try again";
                    case SQLITE_CANTOPEN -> "can't open " + name;
                    case SQLITE_READONLY -> name + " may only be read";
                    default -> null;
                });
    }
}
