package org.gritwright.core.document;

import org.gritwright.units.check.Require;

/**
 * One thing that is wrong with a document.
 *
 * @param code what kind of problem it is, stable across versions of the library: the id of a {@link ProblemCode}
 * @param pointer where, as a JSON pointer (RFC 6901); empty for the document as a whole
 * @param expected what would be accepted
 * @param found what stands there
 */
public record Problem(String code, String pointer, String expected, String found) {
    /** Checks that nothing is null. */
    public Problem {
        Require.given(Problem.class, code, pointer, expected, found);
    }

    /**
     * The problem in one line.
     *
     * @return for example "/trucks/3/id: expected a text, found 7"
     */
    @Override
    public String toString() {
        return (pointer.isEmpty() ? "document" : pointer) + ": expected " + expected + ", found " + found;
    }
}
