package org.gritwright.core.fuzz;

/** Assertions that cost nothing as long as they hold. */
final class Check {
    private Check() {}

    static void that(boolean holds, String what) {
        if (!holds) {
            throw new AssertionError(what);
        }
    }

    static void equal(String what, Object found, Object expected) {
        if (!found.equals(expected)) {
            throw new AssertionError(what + ": " + found + " and not " + expected);
        }
    }
}
