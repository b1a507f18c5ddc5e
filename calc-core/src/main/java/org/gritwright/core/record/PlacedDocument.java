package org.gritwright.core.record;

import java.util.Objects;
import java.util.Optional;
import org.gritwright.core.document.Problem;
import org.gritwright.core.json.Pointer;
import org.gritwright.core.json.Problems;

/**
 * A document that was read, and where in its text everything stands. Immutable, thread-safe; equal to no other.
 *
 * @param <T> the type of the document
 */
public final class PlacedDocument<T> {
    private final T document;
    private final Problems places;

    PlacedDocument(T document, Problems places) {
        this.document = document;
        this.places = places;
    }

    /**
     * The document.
     *
     * @return as {@link Document#read(java.io.InputStream)} gives it
     */
    public T document() {
        return document;
    }

    /**
     * Where a value stands in the text that was read.
     *
     * @param pointer where it is in the document as it is written today, a JSON pointer (RFC 6901), for example that of a {@link
     *     org.gritwright.core.fleet.assessment.Refusal}
     * @return the place of the value, or of what it would be in if it were there
     */
    public synchronized Optional<Problem.Place> place(String pointer) {
        // Finding a line remembers the last one.
        return places.place(Pointer.of(Objects.requireNonNull(pointer, "pointer")));
    }
}
