package org.gritwright.core.spi;

import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A type that a registry left out.
 *
 * @param provider the class that was offered, or "service provider" where none could be made
 * @param reason why it was left out
 */
public record RejectedType(String provider, String reason) {
    /** What is thrown may have a text of any length. */
    private static final int LONGEST = 500;

    /** Checks that nothing is null. */
    public RejectedType {
        Require.given(RejectedType.class, provider, reason);
    }

    /**
     * What foreign code threw, in words. Also that may be of its own making and throw when it is asked.
     *
     * @param thrown what was thrown
     * @return its message where it is a refusal, else its class and message with its cause
     * @throws OutOfMemoryError if that is what was thrown: the application's trouble and no fault of a type's
     */
    public static String reason(Throwable thrown) {
        if (thrown instanceof OutOfMemoryError outOfMemory) {
            throw outOfMemory;
        }
        try {
            String cause = thrown.getCause() == null ? "" : " (" + thrown.getCause() + ")";
            String reason = thrown instanceof InvalidInputException refusal ? refusal.getMessage() : thrown + cause;
            return reason.length() > LONGEST ? reason.substring(0, LONGEST) + "…" : reason;
        } catch (Throwable unprintable) {
            return thrown.getClass().getName();
        }
    }

    /**
     * Provider and reason.
     *
     * @return for example "org.example.Belt: SPI level must be one of this library's, 1 to 1: 2"
     */
    @Override
    public String toString() {
        return provider + ": " + reason;
    }
}
