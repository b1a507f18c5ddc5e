package org.gritwright.examples.fleetday;

/** Small matters of English. */
final class Words {
    private Words() {}

    /** For example "1 truck", "16 trucks". */
    static String count(long number, String noun) {
        return count(number, noun, noun + "s");
    }

    /** For example "1 catch", "2 catches". */
    static String count(long number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    /** For example "needs", "need". */
    static String verb(long number, String forOne, String forMany) {
        return number == 1 ? forOne : forMany;
    }
}
