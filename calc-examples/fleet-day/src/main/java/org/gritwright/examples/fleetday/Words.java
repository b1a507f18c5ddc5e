package org.gritwright.examples.fleetday;

/** Small matters of English. */
final class Words {
    private Words() {}

    /** For example "1 truck", "16 trucks". */
    static String count(long number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    /** For example "needs", "need". */
    static String verb(long number, String forOne, String forMany) {
        return number == 1 ? forOne : forMany;
    }
}
