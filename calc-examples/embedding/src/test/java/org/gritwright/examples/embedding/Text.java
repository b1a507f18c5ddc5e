package org.gritwright.examples.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;

/** What stands in the blocks of the pages. */
final class Text {
    private static final Path PROJECT = Path.of("..", "..");
    static final String EMBEDDING = "calc-core/EMBEDDING.md";
    static final String DOCUMENTS = "calc-core/DOCUMENTS.md";
    static final String README = "README.md";

    private Text() {}

    /** The text between the marks of a block, without its fence. */
    static String block(String page, String name) throws IOException {
        String text = Files.readString(PROJECT.resolve(page));
        String begin = "<!-- " + name + " -->\n";
        int from = text.indexOf(begin);
        int to = text.indexOf("<!-- /" + name + " -->");
        assertThat(0 <= from && from < to).as("%s has a block %s", page, name).isTrue();
        return text.substring(from + begin.length(), to)
                .strip()
                .lines()
                .filter(line -> !line.startsWith("```"))
                .collect(Collectors.joining("\n"));
    }
}
