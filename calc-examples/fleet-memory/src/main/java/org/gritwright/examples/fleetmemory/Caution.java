package org.gritwright.examples.fleetmemory;

/** What is said wherever somebody is told to do something at a truck. */
final class Caution {
    static final String FIRST = "Before anyone works on a truck:";
    static final String REST =
            "lock out, and keep clear of what can move or run. Local lockout rules, the maker’s manual and licensed practice come first.";

    private Caution() {}

    static String line() {
        return FIRST + " " + REST;
    }
}
