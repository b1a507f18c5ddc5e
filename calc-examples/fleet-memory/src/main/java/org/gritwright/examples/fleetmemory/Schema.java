package org.gritwright.examples.fleetmemory;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.OptionalInt;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;

/** The version of a database's tables. */
final class Schema {
    /** That of the last script in the folder "schema". */
    static final int VERSION = 1;

    /** Who makes a new database at the same time is done soon. */
    private static final int TRIES = 20;

    private static final long PAUSE_MILLISECONDS = 250;

    private final Database database;

    Schema(Database database) {
        this.database = database;
    }

    /** Brings the tables up to date, or refuses what a newer program has made. */
    void prepare() throws SQLException, BadInputException {
        if (isCurrent()) {
            return;
        }
        for (int tries = 1; ; tries++) {
            try {
                migrate();
                return;
            } catch (FlywayException e) {
                // Of two that make a database at once one is refused.
                if (isCurrent()) {
                    return;
                }
                if (tries == TRIES) {
                    throw refused(e);
                }
                pause();
            }
        }
    }

    private boolean isCurrent() throws SQLException, BadInputException {
        OptionalInt version = version();
        if (version.isPresent() && version.getAsInt() > VERSION) {
            throw new BadInputException(database.name() + " has tables of version " + version.getAsInt()
                    + ", made by a newer version of this program; this one knows " + VERSION
                    + ". Nothing was changed: use the newer program");
        }
        return version.isPresent() && version.getAsInt() == VERSION;
    }

    /** None where there are no tables of this program. */
    private OptionalInt version() throws SQLException {
        try (Connection connection = database.connect(false);
                ResultSet tables = connection
                        .getMetaData()
                        .getTables(null, connection.getSchema(), "flyway_schema_history", null)) {
            if (!tables.next()) {
                return OptionalInt.empty();
            }
            try (Statement statement = connection.createStatement();
                    ResultSet found = statement.executeQuery(
                            "SELECT version FROM flyway_schema_history WHERE success AND version IS NOT NULL")) {
                OptionalInt version = OptionalInt.empty();
                while (found.next()) {
                    int one = Integer.parseInt(found.getString(1));
                    version = OptionalInt.of(Math.max(one, version.orElse(one)));
                }
                return version;
            }
        }
    }

    private void migrate() {
        Flyway.configure(Schema.class.getClassLoader())
                .dataSource(database.url(), null, null)
                .locations("classpath:org/gritwright/examples/fleetmemory/schema")
                .load()
                .migrate();
    }

    private static void pause() {
        try {
            Thread.sleep(PAUSE_MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        }
    }

    private BadInputException refused(FlywayException failure) {
        return new BadInputException(
                String.valueOf(failure.getMessage()).contains("non-empty schema")
                        ? database.name() + " holds tables of something else; give a database of its own"
                        : "can't make the tables in " + database.name() + ": " + Failure.words(failure));
    }
}
