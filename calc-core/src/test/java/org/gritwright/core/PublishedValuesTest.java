package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class PublishedValuesTest {
    @TestFactory
    Stream<DynamicTest> everyStatedNumberComesOut() {
        return PublishedChecks.all().stream()
                .map(check -> DynamicTest.dynamicTest(
                        check.id() + ": " + check.what(),
                        () -> assertThat(check.computed().getAsDouble())
                                .as("%s %s by %s", check.stated(), check.unit(), check.source())
                                .isCloseTo(check.statedValue(), within(check.allowed()))));
    }

    @Test
    void idsAreUnique() {
        assertThat(PublishedChecks.all()).extracting(PublishedCheck::id).doesNotHaveDuplicates();
    }

    @Test
    void theTableHasARowForEachAndIsWritten() throws IOException {
        Path file = Path.of("target", "published-checks.md");
        Files.createDirectories(file.getParent());
        Files.writeString(file, PublishedChecks.table());

        assertThat(Files.readAllLines(file))
                .filteredOn(line -> line.startsWith("| "))
                .hasSize(PublishedChecks.all().size() + 1)
                .allMatch(line -> line.chars().filter(c -> c == '|').count() == 6);
    }
}
