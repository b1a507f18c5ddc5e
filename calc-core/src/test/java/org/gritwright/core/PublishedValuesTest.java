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
    void thePageHasARowForEachCheckOfBothLibraries() throws IOException {
        Path file = Path.of("target", "published-checks.html");
        Files.createDirectories(file.getParent());
        Files.writeString(file, PublishedPage.html());

        int units = UnitFactors.all().size();
        assertThat(units).isGreaterThan(50);
        assertThat(Files.readAllLines(file))
                .filteredOn(line -> line.startsWith("<tr><td>"))
                .hasSize(PublishedChecks.all().size() + units)
                .allMatch(line -> line.split("<td", -1).length - 1 == 6);
    }

    @Test
    void theMarkdownTableHasARowForEachOfCore() throws IOException {
        Path file = Path.of("target", "published-checks.md");
        Files.createDirectories(file.getParent());
        Files.writeString(file, PublishedPage.markdown());

        assertThat(Files.readAllLines(file))
                .filteredOn(line -> line.startsWith("| "))
                .hasSize(PublishedChecks.all().size() + 1)
                .allMatch(line -> line.chars().filter(c -> c == '|').count() == 7);
    }

    @Test
    void thePageNeedsNothingButItself() {
        assertThat(PublishedPage.html()).doesNotContain("<script", "http:", "https:", "src=", "url(", "@import");
    }

    /** The factors of units are computed with the library, and equal to the last digit of 15 for a double. */
    @TestFactory
    Stream<DynamicTest> everyUnitFactorComesOut() {
        return UnitFactors.all().stream()
                .map(factor -> DynamicTest.dynamicTest(
                        factor.what(),
                        () -> assertThat(factor.computed())
                                .isCloseTo(factor.statedValue(), within(2e-15 * factor.statedValue()))));
    }
}
