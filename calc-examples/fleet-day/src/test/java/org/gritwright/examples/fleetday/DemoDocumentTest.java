package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.Test;

class DemoDocumentTest {

    /** So that the example shows how the library writes it, and a change of the file is seen in the lines it touches. */
    @Test
    void theDemoFleetIsWrittenAsTheLibraryWritesIt() throws IOException, RejectedDocumentException {
        try (InputStream in = Files.newInputStream(Run.DEMO)) {
            assertThat(Document.FLEET_DAY.toText(Document.FLEET_DAY.read(in))).isEqualTo(Run.text(Run.DEMO));
        }
    }
}
