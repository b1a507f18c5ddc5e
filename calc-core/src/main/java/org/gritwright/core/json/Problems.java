package org.gritwright.core.json;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.ProblemCode;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.NearestName;
import org.jspecify.annotations.Nullable;

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
    private Function<Pointer, String> subjects = anything -> "";
    private @Nullable FollowedStream text;
    private Places places = new Places();

    public Problems(DocumentLimits limits) {
        this.most = limits.problems();
        this.mostCharacters = limits.problemsLength();
    }

    /** From here on, places are in a tree that was changed: this leads back to where they were in the document. */
    public void translatedBy(UnaryOperator<Pointer> changedToWritten) {
        asWritten = changedToWritten;
    }

    /** From here on, problems say where in this text they are. */
    void follow(FollowedStream read, Places placesInIt) {
        text = read;
        places = placesInIt;
    }

    /**
     * From here on, problems say what they are about.
     *
     * @param of what the value at a place in the document as it was written belongs to, for example "truck T-04"; empty if
     *     there is nothing to say
     */
    public void about(Function<Pointer, String> of) {
        subjects = of;
    }

    /** Where in the text a value is, or what it would be in if it were there. */
    public Optional<Problem.Place> place(Pointer pointer) {
        Pointer written = asWritten.apply(pointer);
        return place(written, places.offset(written));
    }

    /** Adds a problem. */
    public void add(ProblemCode code, Pointer pointer, String expected, String found) {
        add(code.id(), pointer, expected, found, Optional.empty());
    }

    /** Adds a problem at an offset of the text, or nowhere in particular if it is below 0. */
    void addAt(long offset, ProblemCode code, Pointer pointer, String expected, String found) {
        add(code.id(), pointer, place(pointer, (int) offset), expected, found, Optional.empty());
    }

    /** Adds that a field is not there. */
    public void missing(Pointer pointer, String expected) {
        add(ProblemCode.MISSING_FIELD, pointer, expected, "nothing");
    }

    /** Adds that a word is none of those that there are. */
    void unknownWord(Pointer pointer, Collection<String> known, JsonNode.TextNode found) {
        add(
                ProblemCode.UNKNOWN_WORD.id(),
                pointer,
                "one of " + known,
                found.describe(),
                NearestName.of(found.text(), known));
    }

    /** Adds that something of this name isn't there. */
    public void unknownName(Pointer pointer, Collection<String> known, String name) {
        add(ProblemCode.UNKNOWN_WORD.id(), pointer, "one of " + known, "\"" + name + "\"", NearestName.of(name, known));
    }

    /** Adds a problem. */
    public void add(ProblemCode code, Pointer pointer, String expected, JsonNode found) {
        add(code, pointer, expected, found.describe());
    }

    /** Adds what a factory says about its input. */
    public void refused(Pointer pointer, InvalidInputException e) {
        add(e.code().id(), pointer, e.field() + ": " + e.accepted(), e.value(), Optional.empty());
    }

    /** Adds that an object has a field that it can't have. */
    public void unknownField(Pointer object, String name, Collection<String> known) {
        add(
                ProblemCode.UNKNOWN_FIELD.id(),
                object.at(name),
                "one of the fields " + String.join(", ", known),
                "\"" + name + "\"",
                NearestName.of(name, known));
    }

    private void add(String code, Pointer pointer, String expected, String found, Optional<String> nearest) {
        // What is refused beyond the limit isn't looked for in the text.
        if (isFull()) {
            more++;
            return;
        }
        Pointer written = asWritten.apply(pointer);
        add(code, written, place(written, places.offset(written)), expected, found, nearest);
    }

    private boolean isFull() {
        return more > 0 || found.size() >= most;
    }

    private void add(
            String code,
            Pointer written,
            Optional<Problem.Place> place,
            String expected,
            String found,
            Optional<String> nearest) {
        if (isFull()) {
            more++;
            return;
        }
        Problem problem = new Problem(code, written.toString(), place, shortened(expected), shortened(found), nearest);
        characters += problem.toString().length();
        // The first is told whatever its length, which the limits of names and depth bound.
        if (this.found.isEmpty() || characters <= mostCharacters) {
            this.found.add(problem);
        } else {
            more++;
        }
    }

    private Optional<Problem.Place> place(Pointer written, int offset) {
        return text == null || offset < 0
                ? Optional.empty()
                : Optional.of(new Problem.Place(subjects.apply(written), text.line(offset), text.column(offset)));
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
