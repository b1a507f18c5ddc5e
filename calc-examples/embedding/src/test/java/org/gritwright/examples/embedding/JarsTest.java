package org.gritwright.examples.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;

/** What is in the libraries' jars beside their classes. */
class JarsTest {
    @Test
    void licenseAndNotice() throws Exception {
        assertThat(Jars.ours()).hasSize(2);
        for (Path jar : Jars.ours()) {
            try (JarFile file = new JarFile(jar.toFile())) {
                assertThat(file.getEntry("META-INF/LICENSE")).as("%s", jar).isNotNull();
                assertThat(file.getEntry("META-INF/NOTICE")).as("%s", jar).isNotNull();
            }
        }
    }
}
