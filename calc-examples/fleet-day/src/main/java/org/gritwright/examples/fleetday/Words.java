package org.gritwright.examples.fleetday;

import org.gritwright.core.verification.VerificationSeries;

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

    /** With a period, unless it is a question. */
    static String ended(String sentence) {
        return sentence.endsWith("?") ? sentence : sentence + ".";
    }

    /** For example "needs", "need". */
    static String verb(long number, String forOne, String forMany) {
        return number == 1 ? forOne : forMany;
    }

    /** The catches that are judged, for example "last catch", "last 2 catches", "last catch and the calibration catches". */
    static String catches(VerificationSeries series) {
        int verifications = series.verifications().size();
        return (verifications == 1 ? "last catch" : "last " + verifications + " catches")
                + (series.isWithCalibration() ? " and the calibration catches" : "");
    }
}
