package org.gritwright.core.record;

import java.util.ArrayList;
import java.util.List;

/** Collects what is wrong with a document while it is read. */
final class Problems {
    private final int most;
    private final List<Problem> found = new ArrayList<>();

    Problems(int most) {
        this.most = most;
    }

    void add(Pointer pointer, String expected, String found) {
        if (this.found.size() < most) {
            this.found.add(new Problem(pointer.toString(), expected, found));
        }
    }

    void add(Pointer pointer, String expected, JsonNode found) {
        add(pointer, expected, found.describe());
    }

    void throwIfAny() throws RejectedDocumentException {
        if (!found.isEmpty()) {
            throw new RejectedDocumentException(found);
        }
    }
}
