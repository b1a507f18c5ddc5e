package org.gritwright.core.document;

import java.util.stream.IntStream;
import org.gritwright.units.InvalidInputException;

/**
 * How large a document may be before it is refused. Reading takes memory in proportion to the bytes and the values, so both are
 * bounded; what is wrong with a document is bounded too, since one slip may show in many places.
 *
 * @param bytes the most bytes, 1 or more
 * @param depth the deepest nesting of objects and arrays, 1 or more
 * @param nodes the most values: objects, arrays, texts and words, 1 or more
 * @param textLength the longest text, in characters, 1 or more
 * @param nameLength the longest name of a field, in characters, 1 or more
 * @param problems how many problems are listed at the most, 1 or more
 * @param problemsLength how many characters the problems that are listed have at the most, 1 or more
 */
public record DocumentLimits(
        int bytes, int depth, int nodes, int textLength, int nameLength, int problems, int problemsLength) {

    /**
     * 64 MiB, 16 levels, 500 000 values (a thousand trucks with twenty catches each), 10 000 characters a text, 200 a name, 1000
     * problems of 1 000 000 characters in all.
     */
    public static final DocumentLimits COMMON = new DocumentLimits(64 << 20, 16, 500_000, 10_000, 200, 1000, 1_000_000);

    /**
     * Checks the limits.
     *
     * @throws InvalidInputException if one is below 1
     */
    public DocumentLimits {
        if (IntStream.of(bytes, depth, nodes, textLength, nameLength, problems, problemsLength)
                        .min()
                        .orElseThrow()
                < 1) {
            throw new InvalidInputException(
                    "document limits",
                    "1 or more each",
                    bytes + " bytes, depth " + depth + ", " + nodes + " values, " + textLength + " characters a text, "
                            + nameLength + " a name, " + problems + " problems of " + problemsLength + " characters");
        }
    }

    /**
     * Limits of which the others are the common ones.
     *
     * @param bytes the most bytes, 1 or more
     * @param depth the deepest nesting of objects and arrays, 1 or more
     * @param textLength the longest text, in characters, 1 or more
     * @param problems how many problems are listed at the most, 1 or more
     */
    public DocumentLimits(int bytes, int depth, int textLength, int problems) {
        this(bytes, depth, COMMON.nodes, textLength, COMMON.nameLength, problems, COMMON.problemsLength);
    }
}
