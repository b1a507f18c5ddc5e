package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** The contract on SQLite, and what can be wrong with its file. */
class SqliteStoreTest extends StoreContract {
    @Override
    Database fresh() throws BadInputException {
        return Database.of(folder.resolve(UUID.randomUUID() + ".db").toString());
    }

    @Test
    void aFullDiskLosesNothing() throws Exception {
        Fixtures.keep(database, Fixtures.all().subList(0, 2));
        String before = Fixtures.export(database);
        // As many pages as it has and few more: SQLite says of that what it says of a full disk.
        long pages = Files.size(database.file().orElseThrow()) / 4096 + 5;
        Path documents = folder.resolve("documents");

        Fixtures.Run run = Fixtures.run(
                Database.of(database.url() + "?max_page_count=" + pages),
                "import",
                Fixtures.FLEET.write(documents).toArray());

        assertThat(run.err()).contains("the disk is full, or ").contains("nothing was changed");
        assertThat(run.code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
        assertThat(Fixtures.export(database)).isEqualTo(before);
        assertThat(Fixtures.run(database, "check").out()).contains("all whole");
    }

    @Test
    void aFileThatIsNoDatabaseIsLeftAlone() throws Exception {
        Path file =
                Files.writeString(folder.resolve("list.txt"), "a shopping list, long enough to be read\n".repeat(99));

        assertThat(Fixtures.run(Database.of(file.toString()), "due").err()).contains("is no database of this program");
        assertThat(Files.readString(file)).startsWith("a shopping list");
    }

    @Test
    void aFolderAndAMissingFileAreNoDatabase() throws Exception {
        assertThat(Fixtures.run(Database.of(folder.toString()), "due").err())
                .contains("is a folder; name a file in it");
        assertThat(Fixtures.run(database, "due").err()).contains("yet; import makes one");
        assertThat(database.file().orElseThrow()).doesNotExist();
        assertThat(Fixtures.run(
                                Database.of(folder.resolve("no/where.db").toString()),
                                "restore",
                                folder.resolve("backup"))
                        .err())
                .contains("there is no folder ");
    }

    @Test
    void aDamagedFileIsToldOf() throws Exception {
        Fixtures.keep(database, Fixtures.all());
        Path file = database.file().orElseThrow();
        byte[] bytes = Files.readAllBytes(file);
        for (int i = 4096 * 3; i < bytes.length; i += 7) {
            bytes[i] = 42;
        }
        Files.write(file, bytes);

        Fixtures.Run run = Fixtures.run(database, "check");
        assertThat(run.code()).isIn(FleetMemoryCommand.DAMAGED, FleetMemoryCommand.BAD_INPUT);
        assertThat(run.out() + run.err()).containsAnyOf("about damage", "is damaged; restore a backup");
    }
}
