package org.gritwright.examples.embedding;

import java.nio.file.Path;

/** Kotlin's standard library, which a Kotlin program has beside it. */
final class KotlinLibrary {
    private KotlinLibrary() {}

    static Path jar() throws Exception {
        return Path.of(kotlin.Unit.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI());
    }
}
