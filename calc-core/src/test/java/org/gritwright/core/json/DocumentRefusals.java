package org.gritwright.core.json;

import java.util.List;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.RejectedDocumentException;

/** What a refused document is told. */
public final class DocumentRefusals {
    private DocumentRefusals() {}

    /** The problems as they are in a text of any layout, without guesses at what was meant. */
    public static List<Problem> withoutPlaces(RejectedDocumentException refused) {
        return refused.problems().stream()
                .map(one -> new Problem(one.code(), one.pointer(), one.expected(), one.found()))
                .toList();
    }
}
