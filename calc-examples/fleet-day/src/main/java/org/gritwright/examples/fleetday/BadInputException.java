package org.gritwright.examples.fleetday;

import java.util.List;

/** What the user gave can't be used: everything that is wrong with it, a line each. */
final class BadInputException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<String> lines;

    BadInputException(List<String> lines) {
        super(String.join("\n", lines));
        this.lines = List.copyOf(lines);
    }

    List<String> lines() {
        return lines;
    }
}
