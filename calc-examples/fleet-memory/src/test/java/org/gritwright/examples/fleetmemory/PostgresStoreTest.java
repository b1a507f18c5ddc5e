package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
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

    /** Of memory, so that it can be full without filling a disk; only root may mount one. */
    private static boolean mountsSmallFileSystem(Path at) throws IOException, InterruptedException {
        try {
            return new ProcessBuilder("mount", "-t", "tmpfs", "-o", "size=24m", "tmpfs", at.toString())
                            .redirectErrorStream(true)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException e) {
            // There is no such program.
            return false;
        }
    }

    @Test
    void aFileSystemThatIsFullLosesNothing() throws Exception {
        Path small = Files.createDirectory(folder.resolve("small"));
        if (!mountsSmallFileSystem(small)) {
            String reason = "No file system can be mounted here: that of a full one is skipped";
            System.out.println(reason);
            Assumptions.abort(reason);
        }
        // A server of its own: one whose file system is gone isn't well.
        try (EmbeddedPostgres narrow = EmbeddedPostgres.start();
                Connection connection = narrow.getPostgresDatabase().getConnection();
                Statement statement = connection.createStatement()) {
            Path tables = Files.createDirectory(small.resolve("tables"));
            statement.execute("CREATE TABLESPACE small LOCATION '" + tables + "'");
            statement.execute("CREATE DATABASE narrow TABLESPACE small");
            fillAndImport(Database.of(narrow.getJdbcUrl("postgres", "narrow")), small.resolve("filler"));
        } finally {
            new ProcessBuilder("umount", "-l", small.toString()).start().waitFor();
        }
    }

    private void fillAndImport(Database narrow, Path filler) throws Exception {
        Fixtures.keep(narrow, Fixtures.all().subList(0, 2));
        String before = Fixtures.export(narrow);
        assertThatThrownBy(() -> {
                    try (OutputStream out = Files.newOutputStream(filler)) {
                        while (true) {
                            out.write(new byte[1024]);
                        }
                    }
                })
                .isInstanceOf(IOException.class);

        Fixtures.Run run = Fixtures.run(
                narrow,
                "import",
                Fixtures.FLEET.write(folder.resolve("documents")).toArray());

        assertThat(run.err()).contains("the disk of ").contains(" is full; nothing was changed");
        assertThat(run.code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
        assertThat(Fixtures.export(narrow)).isEqualTo(before);
        Files.delete(filler);
        assertThat(Fixtures.run(narrow, "check").out()).contains("all whole");
        assertThat(Fixtures.run(
                                narrow,
                                "import",
                                Fixtures.FLEET.write(folder.resolve("again")).toArray())
                        .code())
                .isZero();
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
