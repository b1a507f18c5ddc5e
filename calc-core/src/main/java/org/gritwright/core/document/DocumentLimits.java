package org.gritwright.core.document;

import org.gritwright.units.InvalidInputException;

/**
 * How large a document may be before it is refused unread.
 *
 * @param bytes the most bytes, 1 or more
 * @param depth the deepest nesting of objects and arrays, 1 or more
 * @param textLength the longest text, in characters, 1 or more
 * @param problems how many problems are listed at the most, 1 or more
 */
public record DocumentLimits(int bytes, int depth, int textLength, int problems) {

    /** 64 MiB, 16 levels, 10 000 characters a text, 1000 problems. */
    public static final DocumentLimits COMMON = new DocumentLimits(64 << 20, 16, 10_000, 1000);

    /**
     * Checks the limits.
     *
     * @throws InvalidInputException if one is below 1
     */
    public DocumentLimits {
        if (Math.min(Math.min(bytes, depth), Math.min(textLength, problems)) < 1) {
            throw new InvalidInputException(
                    "document limits",
                    "1 or more each",
                    bytes + " bytes, depth " + depth + ", " + textLength + " characters, " + problems + " problems");
        }
    }
}
