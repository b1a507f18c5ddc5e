package org.gritwright.examples.fleetmemory;

import java.util.List;

/** What the user gave can't be used; the lines say what and why. */
final class BadInputException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<String> lines;

    BadInputException(String line) {
        this(List.of(line));
    }

    BadInputException(List<String> lines) {
        super(String.join("\n", lines));
        this.lines = List.copyOf(lines);
    }

    List<String> lines() {
        return lines;
    }
}
