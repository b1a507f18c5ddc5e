package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The pages of documentation say what the code says, and lead to one another. */
class PagesTest {
    private static final int README_BYTES = 15 * 1024;

    private static final Pattern LINK = Pattern.compile("\\[[^]]*]\\(([^)#]*)(?:#([^)]*))?\\)");
    private static final Pattern HEADING = Pattern.compile("(?m)^#+ (.*)$");
    private static final Pattern JAVA = Pattern.compile("(?m)^(.*)\n```java$");

    static List<Page> pages() throws IOException {
        return Page.all();
    }

    static List<PageBlocks.Block> blocks() {
        return PageBlocks.all();
    }

    @ParameterizedTest
    @MethodSource("blocks")
    void aTableIsTheOneThatTheCodeGives(PageBlocks.Block block) throws IOException {
        block.page().assertHolds(block.name(), block.text());
    }

    @Test
    void thePagesAreAllFound() throws IOException {
        assertThat(pages())
                .contains(Page.README, Page.DEVELOPERS, Page.UNITS, Page.UNCERTAINTY)
                .allSatisfy(page -> assertThat(page.file()).isNotEmptyFile());
    }

    @Test
    void theReadmeIsShort() throws IOException {
        assertThat(Files.size(Page.README.file())).isLessThanOrEqualTo(README_BYTES);
    }

    @ParameterizedTest
    @MethodSource("pages")
    void everyLinkLeadsToAFileAndAHeading(Page page) throws IOException {
        Path folder = page.file().resolveSibling("");
        assertThat(LINK.matcher(withoutCode(page)).results())
                .filteredOn(link -> !link.group(1).startsWith("https:"))
                .allSatisfy(link -> {
                    Path file = link.group(1).isEmpty() ? page.file() : folder.resolve(link.group(1));
                    assertThat(file).exists();
                    if (link.group(2) != null) {
                        assertThat(anchors(Files.readString(file))).contains(link.group(2));
                    }
                });
    }

    @Test
    void theReadmeLeadsToEveryOtherPage() throws IOException {
        List<String> linked = LINK.matcher(withoutCode(Page.README))
                .results()
                .map(link -> link.group(1))
                .toList();
        assertThat(pages())
                .filteredOn(page -> !page.equals(Page.README))
                .allSatisfy(page -> assertThat(linked).contains(page.path()));
    }

    /** Java that no test compiles would soon be wrong. */
    @ParameterizedTest
    @MethodSource("pages")
    void javaStandsOnlyWhereATestCompilesIt(Page page) throws IOException {
        assertThat(JAVA.matcher(page.text())
                        .results()
                        .map(MatchResult::group)
                        .map(text -> text.lines().findFirst().orElseThrow()))
                .allSatisfy(before -> assertThat(PageExamplesTest.COMPILED).contains(before));
    }

    private static String withoutCode(Page page) throws IOException {
        return page.text().replaceAll("(?s)```.*?```", "").replaceAll("`[^`]*`", "");
    }

    /** As the usual renderers make them of headings. */
    private static List<String> anchors(String text) {
        return HEADING.matcher(text)
                .results()
                .map(heading -> heading.group(1).toLowerCase(Locale.ROOT))
                .map(heading -> heading.replaceAll("[^\\p{L}\\p{N} _-]", "").replace(' ', '-'))
                .toList();
    }
}
