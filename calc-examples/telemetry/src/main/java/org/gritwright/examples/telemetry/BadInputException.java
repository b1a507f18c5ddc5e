package org.gritwright.examples.telemetry;

/** What the user gave can't be used; the message says what and why, in one line. */
final class BadInputException extends Exception {
    private static final long serialVersionUID = 1L;

    BadInputException(String message) {
        super(message);
    }
}
