package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** The contract on a real PostgreSQL server, which the test starts in a folder of its own. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PostgresStoreTest extends StoreContract {
    private final AtomicInteger databases = new AtomicInteger();
    private EmbeddedPostgres server;

    @BeforeAll
    void startServer() {
        try {
            server = EmbeddedPostgres.start();
        } catch (IOException | RuntimeException e) {
            String reason = "PostgreSQL can't be started here, its tests are skipped: " + e.getMessage();
            System.out.println(reason);
            Assumptions.abort(reason);
        }
    }

    @AfterAll
    void stopServer() throws IOException {
        if (server != null) {
            server.close();
        }
    }

    @Override
    Database fresh() throws SQLException, BadInputException {
        String name = "fleet" + databases.incrementAndGet();
        try (Connection connection = server.getPostgresDatabase().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE DATABASE " + name);
        }
        return Database.of(server.getJdbcUrl("postgres", name));
    }

    /** By a trigger that says, with the server's own code, what a server with a full disk says. */
    @Test
    void aServerWithAFullDiskLosesNothing() throws Exception {
        Fixtures.keep(database, Fixtures.all().subList(0, 2));
        String before = Fixtures.export(database);
        try (Connection connection = database.connect(true);
                Statement statement = connection.createStatement()) {
            statement.execute(
                    "CREATE FUNCTION refuse() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN"
                            + " IF (SELECT count(*) FROM document) >= 9 THEN"
                            + " RAISE EXCEPTION 'could not extend file' USING ERRCODE = 'disk_full'; END IF; RETURN NEW; END $$");
            statement.execute(
                    "CREATE TRIGGER full_disk BEFORE INSERT ON document FOR EACH ROW EXECUTE FUNCTION refuse()");
        }

        Fixtures.Run run = Fixtures.run(
                database,
                "import",
                Fixtures.FLEET.write(folder.resolve("documents")).toArray());

        assertThat(run.err()).contains("the disk of ").contains(" is full; nothing was changed");
        assertThat(run.code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
        assertThat(Fixtures.export(database)).isEqualTo(before);
        assertThat(Fixtures.run(database, "check").out()).contains("all whole");
    }

    @Test
    void aServerOrDatabaseThatIsntThereIsToldOf() throws Exception {
        assertThat(Fixtures.run(Database.of(database.url().replaceFirst("/fleet\\d+", "/nowhere")), "due")
                        .err())
                .contains("/nowhere; make an empty one first");
        assertThat(Fixtures.run(Database.of("jdbc:postgresql://localhost:1/fleet?user=a&password=secret"), "due")
                        .err())
                .contains("no server answers at jdbc:postgresql://localhost:1/fleet")
                .doesNotContain("secret");
    }
}
