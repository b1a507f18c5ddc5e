package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The tables in the README are those that the code makes. */
class ReadmeTablesTest {
    private static final Path README = Path.of("..", "README.md");
    private static final Path BLOCKS = Path.of("target", "readme-blocks");

    @ParameterizedTest
    @ValueSource(strings = {"types", "units", "findings", "published"})
    void theReadmesTableIsUpToDate(String name) throws IOException {
        String block = ReadmeBlocks.all().get(name);
        Path file = BLOCKS.resolve(name + ".md");
        Files.createDirectories(BLOCKS);
        Files.writeString(file, block);

        String readme = Files.exists(README) ? Files.readString(README) : "";
        Matcher inReadme = Pattern.compile("<!-- " + name + " -->\n(.*)<!-- /" + name + " -->", Pattern.DOTALL)
                .matcher(readme);
        assertThat(inReadme.find() ? inReadme.group(1).strip() : "")
                .as(
                        "README.md between <!-- %s --> and <!-- /%s -->; paste calc-core/%s there",
                        name, name, file.toString().replace('\\', '/'))
                .isEqualTo(block.strip());
    }
}
