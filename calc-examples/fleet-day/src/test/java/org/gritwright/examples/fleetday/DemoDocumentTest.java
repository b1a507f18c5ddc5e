package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.Test;

class DemoDocumentTest {

    private static final Pattern SCHEMA = Pattern.compile("(?m)^  \"\\$schema\": \"(.*)\",\n");

    /** So that the example shows how the library writes it, and a change of the file is seen in the lines it touches. */
    @Test
    void theDemoFleetIsWrittenAsTheLibraryWritesItButForTheSchema() throws IOException, RejectedDocumentException {
        try (InputStream in = Files.newInputStream(Run.DEMO)) {
            assertThat(Document.FLEET_DAY.toText(Document.FLEET_DAY.read(in)))
                    .isEqualTo(SCHEMA.matcher(Run.text(Run.DEMO)).replaceFirst(""));
        }
    }

    @Test
    void theSchemaThatItNamesIsThere() throws IOException {
        Matcher named = SCHEMA.matcher(Run.text(Run.DEMO));
        assertThat(named.find()).isTrue();
        assertThat(Run.DEMO.resolveSibling(named.group(1))).hasContent(Document.FLEET_DAY.schema());
    }
}
