package org.gritwright.core.document;

import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.units.check.Require;

/**
 * One thing that is wrong with a document.
 *
 * @param code what kind of problem it is, stable across versions of the library: the id of a {@link ProblemCode}
 * @param pointer where, as a JSON pointer (RFC 6901); empty for the document as a whole
 * @param place where in the text; none if it isn't known
 * @param expected what would be accepted
 * @param found what stands there
 * @param nearest what may have been meant by a misspelled name or word
 */
public record Problem(
        String code, String pointer, Optional<Place> place, String expected, String found, Optional<String> nearest) {

    /**
     * A place in the text of a document, as an editor counts it.
     *
     * @param subject what stands there, for people, for example "truck T-04"; empty if there is nothing to say
     * @param line the line, from 1
     * @param column the character in the line, from 1
     */
    public record Place(String subject, int line, int column) {
        /** Checks that nothing is null. */
        public Place {
            Require.given(Place.class, subject);
        }

        /**
         * The place in words.
         *
         * @return for example "truck T-04, line 41, column 12"
         */
        @Override
        public String toString() {
            return Stream.of(subject, "line " + line, "column " + column)
                    .filter(part -> !part.isEmpty())
                    .collect(Collectors.joining(", "));
        }
    }

    /** Checks that nothing is null. */
    public Problem {
        Require.given(Problem.class, code, pointer, place, expected, found, nearest);
    }

    /**
     * A problem of which only the pointer says where it is.
     *
     * @param code as of the record
     * @param pointer as of the record
     * @param expected as of the record
     * @param found as of the record
     */
    public Problem(String code, String pointer, String expected, String found) {
        this(code, pointer, Optional.empty(), expected, found, Optional.empty());
    }

    /**
     * The problem in one line.
     *
     * @return for example "/trucks/3/id (truck 7, line 41, column 12): expected a text, found 7"
     */
    @Override
    public String toString() {
        return (pointer.isEmpty() ? "document" : pointer)
                + place.map(one -> " (" + one + ")").orElse("")
                + (code.equals(ProblemCode.MISSING_FIELD.id())
                        ? ": missing; expected " + expected
                        : ": expected " + expected + ", found " + found)
                + nearest.map(one -> "; did you mean \"" + one + "\"?").orElse("");
    }
}
