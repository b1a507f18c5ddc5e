package org.gritwright.examples.fleetmemory;

import java.util.Arrays;
import java.util.Optional;

/** The kinds of documents that are kept. */
enum Kind {
    RECORD("record"),
    EVENT("event"),
    SEASON("season");

    private final String word;

    Kind(String word) {
        this.word = word;
    }

    /** In the database, in exports, and before an identity in messages. */
    String word() {
        return word;
    }

    static Optional<Kind> of(String word) {
        return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
    }
}
