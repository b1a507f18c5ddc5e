package org.gritwright.core.history.due;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Argument;
import org.gritwright.units.Rounded;
import org.gritwright.units.check.Require;

/** The least work that clears what is due. The usual cautions and the maker's manual hold for all of it. Immutable, thread-safe values. */
public sealed interface Work {
    /**
     * What to do, in words.
     *
     * @return for example "one verification catch of 120 lb would do"
     */
    String words();

    /** Work that proves a value. */
    sealed interface Proof extends Work {}

    /**
     * Verification catches.
     *
     * @param catches how many, 1 or more
     * @param each how much each has to catch at least; none if nothing is known to compute it from
     */
    record Verify(int catches, Optional<Quantity<?>> each) implements Proof {
        /**
         * Checks the number.
         *
         * @throws org.gritwright.units.InvalidInputException if it is less than 1
         */
        public Verify {
            Require.given(Verify.class, each);
            Require.that(catches >= 1, "verification catches", "1 or more", catches);
        }

        @Override
        public String words() {
            return catches == 1
                    ? "one verification catch" + of("") + " would do"
                    : catches + " verification catches" + of(" each") + " would do";
        }

        private String of(String each) {
            return this.each
                    .map(amount -> " of " + Argument.number(amount).words() + each)
                    .orElse("");
        }
    }

    /** Verification catches that tell more than those so far, of which not even ten could tell. */
    record PlanAnew() implements Proof {
        @Override
        public String words() {
            return "plan larger verification catches: not even " + LeastWork.MOST + " like the last would tell";
        }
    }

    /**
     * A correction that the last verification called for, or the calibration where what was entered isn't its value; and a verification catch that
     * confirms it.
     *
     * @param value the value to enter: the one that is held ÷ (1 + its error), in the display's step
     * @param confirmation the catches that confirm it
     */
    record Correct(CalibrationFactor value, Proof confirmation) implements Work {
        /** No display takes more. */
        private static final int DIGITS = 5;

        /** Checks that both are given. */
        public Correct {
            Require.given(Correct.class, value, confirmation);
        }

        @Override
        public String words() {
            return "enter the corrected value, " + Rounded.text(value.value(), DIGITS) + "; then "
                    + confirmation.words();
        }
    }

    /**
     * A value that the display lost, and a verification catch that proves it.
     *
     * @param value the value that it held last
     * @param proof the catches that prove it
     */
    record EnterAgain(CalibrationInForce value, Proof proof) implements Work {
        /** Checks that both are given. */
        public EnterAgain {
            Require.given(EnterAgain.class, value, proof);
        }

        @Override
        public String words() {
            return "read the display and enter " + value.factor() + " again; then " + proof.words();
        }
    }

    /**
     * A calibration, with verification catches that prove what is entered.
     *
     * @param proof the catches that prove it
     */
    record Calibrate(Proof proof) implements Work {
        /** Checks that it is given. */
        public Calibrate {
            Require.given(Calibrate.class, proof);
        }

        @Override
        public String words() {
            return "calibrate; then " + proof.words();
        }
    }
}
