package org.gritwright.core.json;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.UnaryOperator;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.ProblemCode;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.units.InvalidInputException;

/** Collects what is wrong with a document while it is read. */
public final class Problems {
    /** What stands in a document may be long; a person needs to recognize it. */
    private static final int LONGEST = 500;

    private final int most;
    private final int mostCharacters;
    private final List<Problem> found = new ArrayList<>();
    private int characters;
    private int more;
    private UnaryOperator<Pointer> asWritten = UnaryOperator.identity();

    public Problems(DocumentLimits limits) {
        this.most = limits.problems();
        this.mostCharacters = limits.problemsLength();
    }

    /** From here on, places are in a tree that was changed: this leads back to where they were in the document. */
    public void translatedBy(UnaryOperator<Pointer> changedToWritten) {
        asWritten = changedToWritten;
    }

    /** Adds a problem. */
    public void add(ProblemCode code, Pointer pointer, String expected, String found) {
        add(code.id(), pointer, expected, found);
    }

    /** Adds a problem. */
    public void add(ProblemCode code, Pointer pointer, String expected, JsonNode found) {
        add(code, pointer, expected, found.describe());
    }

    /** Adds what a factory says about its input. */
    void refused(Pointer pointer, InvalidInputException e) {
        add(e.code().id(), pointer, e.field() + ": " + e.accepted(), e.value());
    }

    /** Adds that an object has a field that it can't have. */
    public void unknownField(Pointer object, String name, Collection<String> known) {
        add(
                ProblemCode.UNKNOWN_FIELD,
                object.at(name),
                "one of the fields " + String.join(", ", known),
                "\"" + name + "\"");
    }

    private void add(String code, Pointer pointer, String expected, String found) {
        if (more > 0 || this.found.size() >= most) {
            more++;
            return;
        }
        Problem problem = new Problem(code, asWritten.apply(pointer).toString(), shortened(expected), shortened(found));
        characters += problem.toString().length();
        // The first is told whatever its length, which the limits of names and depth bound.
        if (this.found.isEmpty() || characters <= mostCharacters) {
            this.found.add(problem);
        } else {
            more++;
        }
    }

    private static String shortened(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "…";
    }

    public void throwIfAny() throws RejectedDocumentException {
        if (!found.isEmpty()) {
            throw rejected();
        }
    }

    public RejectedDocumentException rejected() {
        return new RejectedDocumentException(found, more);
    }
}
