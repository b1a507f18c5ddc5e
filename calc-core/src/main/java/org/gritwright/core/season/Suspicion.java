package org.gritwright.core.season;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * One error of the season's numbers that would explain that they don't add up. The kinds are a closed set of plain values. Immutable,
 * thread-safe, a value.
 */
public sealed interface Suspicion extends Serializable {

    /**
     * How clearly it stands out.
     *
     * @return size ÷ standard uncertainty, without a sign; of a standard normal distribution where nothing is wrong
     */
    double score();

    /**
     * In words for the yard.
     *
     * @return an English sentence; what stands behind a ± covers 95 %
     */
    String sentence();

    /**
     * A truck takes another mass than its verification lets expect.
     *
     * @param truck the truck's id
     * @param byVerification its calibration error, indicated ÷ true − 1, as stated
     * @param byTheRest the same by all else; absent where no factor at all would fit
     * @param score how clearly it stands out
     */
    record TruckReports(
            String truck,
            Measured<Dimensionless> byVerification,
            Optional<Measured<Dimensionless>> byTheRest,
            double score)
            implements Suspicion {
        private static final long serialVersionUID = 1L;

        /** Checks that all is given. */
        public TruckReports {
            Require.given(TruckReports.class, truck, byVerification, byTheRest);
            requireScore(score);
        }

        @Override
        public String sentence() {
            return off().map(off -> "Truck " + off + ", by all numbers but its verification, which says "
                            + Words.signedPercent(byVerification) + ".")
                    .orElse("Truck " + truck + " reports far more than it can have taken.");
        }

        /** For example "T-03 over-reports by 7.5 ± 1.2 % (95 %)"; none where no factor at all would fit. */
        Optional<String> off() {
            return byTheRest.map(error -> truck
                    + (Words.isNegative(error) ? " under-reports by " : " over-reports by ")
                    + Words.plusMinus(error));
        }
    }

    /**
     * More or less came to a pile, or left it, than is written down: a ticket, an other use, or the opening or the closing is wrong.
     *
     * @param pile the pile's id
     * @param period between which surveys
     * @param missing what isn't written down: above zero, more came or was there; below zero, less
     * @param slips tickets that would explain it; none if none does, or too many do
     * @param score how clearly it stands out
     */
    record PileOff(String pile, SurveyPeriod period, Measured<Mass> missing, List<TicketSlip> slips, double score)
            implements Suspicion {
        private static final long serialVersionUID = 1L;

        /** Copies the list. */
        public PileOff {
            Require.given(PileOff.class, pile, period, missing, slips);
            slips = List.copyOf(slips);
            requireScore(score);
        }

        @Override
        public String sentence() {
            String when = period.words();
            String where = "Pile " + pile + (when.isEmpty() ? "" : ", " + when) + ": ";
            String what = Words.isNegative(missing)
                    ? " are written down that never came or left unwritten: a delivery ticket too many or too large, a use that"
                            + " isn't listed, an opening too high or a closing too low"
                    : " aren't written down: a delivery ticket is missing, a use is listed too large, the opening is too low or"
                            + " the closing too high";
            StringBuilder text = new StringBuilder(where + Words.plusMinus(missing) + what + ".");
            slips.forEach(slip -> text.append(' ').append(slip.sentence()));
            return text.toString();
        }
    }

    /**
     * A survey in the season doesn't fit what came and went before and after it.
     *
     * @param pile the pile's id
     * @param number which one after the opening
     * @param on its day, if it is known
     * @param tooMuch what it found too much
     * @param score how clearly it stands out
     */
    record SurveyOff(String pile, int number, Optional<LocalDate> on, Measured<Mass> tooMuch, double score)
            implements Suspicion {
        private static final long serialVersionUID = 1L;

        /** Checks that all is given. */
        public SurveyOff {
            Require.given(SurveyOff.class, pile, on, tooMuch);
            requireScore(score);
        }

        @Override
        public String sentence() {
            String survey = on.map(day -> "The survey of " + day).orElse("Survey " + number);
            return survey + " of pile " + pile + " found " + Words.plusMinus(tooMuch)
                    + (Words.isNegative(tooMuch) ? " too little." : " too much.");
        }
    }

    /**
     * Weighed loads don't fit all else that is known of the truck.
     *
     * @param truck the truck's id
     * @param on the scale, if it has a name
     * @param tooMuch what was weighed too much
     * @param score how clearly it stands out
     */
    record LoadsOff(String truck, Optional<String> on, Measured<Mass> tooMuch, double score) implements Suspicion {
        private static final long serialVersionUID = 1L;

        /** Checks that all is given. */
        public LoadsOff {
            Require.given(LoadsOff.class, truck, on, tooMuch);
            requireScore(score);
        }

        @Override
        public String sentence() {
            return "The weighed loads of truck " + truck
                    + on.map(scale -> " on " + scale).orElse("") + " are " + Words.plusMinus(tooMuch)
                    + (Words.isNegative(tooMuch) ? " too small." : " too large.");
        }
    }

    /**
     * A scale, or a density, is further off than stated.
     *
     * @param name its name
     * @param error what it gives too much, relative to the masses as stated
     * @param score how clearly it stands out
     */
    record CommonOff(String name, Measured<Dimensionless> error, double score) implements Suspicion {
        private static final long serialVersionUID = 1L;

        /** Checks that all is given. */
        public CommonOff {
            Require.given(CommonOff.class, name, error);
            requireScore(score);
        }

        @Override
        public String sentence() {
            return "All masses by " + name + " are " + Words.plusMinus(error)
                    + (Words.isNegative(error) ? " too small." : " too large.");
        }
    }

    private static void requireScore(double score) {
        if (!(score >= 0)) {
            throw new InvalidInputException("score", "0 or more", String.valueOf(score));
        }
    }
}
