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
