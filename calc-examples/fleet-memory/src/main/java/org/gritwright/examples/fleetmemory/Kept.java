package org.gritwright.examples.fleetmemory;

import java.util.Optional;

/**
 * A document as it is kept.
 *
 * @param identity of a record truck and day, of an event its id
 * @param truck whom it is about; none for what concerns the fleet
 * @param day the record's day, or that of the event, as ISO 8601 writes it
 * @param content the SHA-256 of what was entered: records of one content are the same, signed or not
 * @param sha256 that of the text, as it was when it was kept
 * @param text the document in its canonical form
 */
record Kept(
        Kind kind, String identity, Optional<String> truck, String day, String content, String sha256, String text) {
    /** What is known under one name. */
    record Name(Kind kind, String identity) {
        /** For example "record T-07 2026-10-19". */
        @Override
        public String toString() {
            return kind.word() + " " + identity;
        }
    }

    Name name() {
        return new Name(kind, identity);
    }

    /** Whether nobody changed it since. */
    boolean isWhole() {
        return sha256.equals(Hash.of(text));
    }
}
