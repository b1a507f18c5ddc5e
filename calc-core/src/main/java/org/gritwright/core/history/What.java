package org.gritwright.core.history;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.RevolutionCount;
import org.gritwright.units.quantity.RotationalSpeed;

/** What can happen to a truck or a fleet. Immutable, thread-safe values. */
public sealed interface What {
    /**
     * What happened, in a few words.
     *
     * @return for example "road salt at 2 in entered as 26 lb/rev"
     */
    String words();

    /** A ratio to a tenth of a per cent: nobody catches better. */
    private static String tenth(Quantity<Dimensionless> ratio) {
        BigDecimal percent = BigDecimal.valueOf(100 * Amounts.si(Dimensionless.class, ratio))
                .setScale(1, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return percent.toPlainString() + " %";
    }

    /** As a person reads it. */
    private static String rounded(Quantity<?> quantity) {
        return Argument.number(quantity).words();
    }

    /**
     * The calibration point that it is about.
     *
     * @return the point; none for what isn't about one
     */
    default Optional<CalibrationPoint> point() {
        return Optional.empty();
    }

    /**
     * How the catches of it scattered.
     *
     * @return the scatter; none of what isn't caught, or with too few catches to tell
     */
    default Optional<Repeatability> scatter() {
        return Optional.empty();
    }

    /**
     * Whether it happens to a truck.
     *
     * @return false for what concerns the fleet
     */
    default boolean isOfTruck() {
        return true;
    }

    /**
     * A calibration: what catches showed to leave per revolution. It changes no display.
     *
     * @param at the calibration point, with the material's density of that day
     * @param discharge mass per revolution of the sensed shaft; of a liquid at its stated density
     * @param shared the parts of its uncertainty that others share, relative: the span of a scale; each id once
     * @param catches how many catches, 1 or more
     * @param scatter how they scattered; none with too few to tell
     */
    record Calibrated(
            CalibrationPoint at,
            Measured<DischargePerRevolution> discharge,
            List<SharedError> shared,
            int catches,
            Optional<Repeatability> scatter)
            implements What {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if the discharge isn't above 0, there is no catch, or an error's id is there twice
         */
        public Calibrated {
            Require.given(Calibrated.class, at, discharge, shared, scatter);
            Require.positive("discharge per revolution", DischargePerRevolution.class, discharge.value());
            Require.that(catches >= 1, "catches of a calibration", "1 or more", catches);
            shared = Shared.once(shared);
        }

        @Override
        public Optional<CalibrationPoint> point() {
            return Optional.of(at);
        }

        @Override
        public String words() {
            return at + " calibrated: " + rounded(at.asMetered(discharge.value()));
        }
    }

    /**
     * A verification: what catches showed a value in a display to be off by.
     *
     * @param inForce the value that the display held
     * @param error indicated ÷ caught − 1, above −1
     * @param shared the parts of its uncertainty that others share, relative; each id once
     * @param verdict what that said about the tolerance
     * @param catches how many catches, 1 or more
     * @param caught how much they caught together; of a liquid at its stated density
     * @param scatter how they scattered; none with too few to tell
     */
    record Verified(
            CalibrationInForce inForce,
            Measured<Dimensionless> error,
            List<SharedError> shared,
            Verdict verdict,
            int catches,
            Quantity<Mass> caught,
            Optional<Repeatability> scatter)
            implements What {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if the error is −100 % or less, nothing was caught, there is no catch, or an
         *     error's id is there twice
         */
        public Verified {
            Require.given(Verified.class, inForce, error, shared, verdict, caught, scatter);
            Require.that(
                    Amounts.si(Dimensionless.class, error.value()) > -1,
                    "calibration error",
                    "above −100 %",
                    error.value());
            Require.positive("caught mass", Mass.class, caught);
            Require.that(catches >= 1, "catches of a verification", "1 or more", catches);
            shared = Shared.once(shared);
        }

        @Override
        public Optional<CalibrationPoint> point() {
            return Optional.of(inForce.point());
        }

        @Override
        public String words() {
            return inForce.point() + " verified with " + inForce.factor() + ": error " + tenth(error.value()) + ", "
                    + verdict.words();
        }
    }

    /**
     * A value that was entered into a display and, where that was written down, read back.
     *
     * @param asked the value that was to be entered
     * @param readBack what the display showed then; none if nobody looked
     */
    record Entered(CalibrationInForce asked, Optional<CalibrationFactor> readBack) implements What {
        /**
         * Checks that what was read back can be a value of the point.
         *
         * @throws org.gritwright.units.InvalidInputException if it can't
         */
        public Entered {
            Require.given(Entered.class, asked, readBack);
            readBack.ifPresent(asked::withFactor);
        }

        /**
         * What the display held then.
         *
         * @return what was read back, or else what was to be entered
         */
        public CalibrationInForce held() {
            return readBack.map(asked::withFactor).orElse(asked);
        }

        @Override
        public Optional<CalibrationPoint> point() {
            return Optional.of(asked.point());
        }

        @Override
        public String words() {
            return asked.point() + " entered as " + asked.factor()
                    + readBack.filter(shown -> !shown.equals(asked.factor()))
                            .map(shown -> ", read back as " + shown)
                            .orElse("");
        }
    }

    /**
     * A correction: the value as found was replaced by the value as left.
     *
     * @param asFound the value that the display held before
     * @param asLeft the value that it reads back
     * @param because the id of the verification that called for it; none if nobody says
     */
    record Corrected(CalibrationInForce asFound, CalibrationFactor asLeft, Optional<String> because) implements What {
        /**
         * Checks that the value as left can be a value of the point.
         *
         * @throws org.gritwright.units.InvalidInputException if it can't, or the id is blank
         */
        public Corrected {
            Require.given(Corrected.class, asFound, asLeft, because);
            asFound.withFactor(asLeft);
            because.ifPresent(id -> Require.text("id of the verification", id));
        }

        /**
         * What the display held then.
         *
         * @return the value as left
         */
        public CalibrationInForce held() {
            return asFound.withFactor(asLeft);
        }

        @Override
        public Optional<CalibrationPoint> point() {
            return Optional.of(asFound.point());
        }

        @Override
        public String words() {
            return asFound.point() + " corrected from " + asFound.factor() + " to " + asLeft;
        }
    }

    /**
     * A value that a display was seen to hold. If it says since when, it is taken to be held since then, unless something else is known of the
     * slot in between. If nobody entered it, it was changed in between, and nobody wrote it down.
     *
     * @param seen the value, perhaps with since when it is held
     */
    record Shown(CalibrationInForce seen) implements What {
        /** Checks that it is given. */
        public Shown {
            Require.given(Shown.class, seen);
        }

        @Override
        public Optional<CalibrationPoint> point() {
            return Optional.of(seen.point());
        }

        @Override
        public String words() {
            return seen.point() + " shown as " + seen.factor();
        }
    }

    /**
     * A slot that was overwritten or lost what it held, with what isn't known. A known value is {@link Entered}.
     *
     * @param slot the controller's slot, or where nobody names slots the material
     */
    record Overwritten(String slot) implements What {
        /**
         * Checks the slot.
         *
         * @throws org.gritwright.units.InvalidInputException if it is blank
         */
        public Overwritten {
            Require.given(Overwritten.class, slot);
            Require.text("slot", slot);
        }

        @Override
        public String words() {
            return "slot " + slot + " overwritten";
        }
    }

    /** A controller that was set back, or replaced: what its slots hold now, nobody knows. */
    record SetBack() implements What {
        @Override
        public String words() {
            return "controller reset or replaced";
        }
    }

    /**
     * A repair or another change of the truck.
     *
     * @param part what was changed
     * @param notes remarks; none for none
     */
    record Changed(Change.Part part, Optional<String> notes) implements What {
        /** Checks that both are given. */
        public Changed {
            Require.given(Changed.class, part, notes);
        }

        /**
         * Whether a calibration made before may no longer hold.
         *
         * @return false for tires, which change the distance and not the mass per revolution
         */
        public boolean concernsMass() {
            return part != Change.Part.TIRE;
        }

        @Override
        public String words() {
            return part.term().words() + " changed"
                    + notes.map(text -> ": " + text).orElse("");
        }
    }

    /**
     * The working range of the drive as it was measured.
     *
     * @param lowest the lowest steady shaft speed
     * @param highest the highest
     */
    record RangeMeasured(Quantity<RotationalSpeed> lowest, Quantity<RotationalSpeed> highest) implements What {
        /**
         * Checks the speeds.
         *
         * @throws org.gritwright.units.InvalidInputException if one is negative or they are in the wrong order
         */
        public RangeMeasured {
            Require.given(RangeMeasured.class, lowest, highest);
            Require.notNegative("lowest speed of the drive", RotationalSpeed.class, lowest);
            Require.atLeast("highest speed of the drive", RotationalSpeed.class, highest, lowest);
        }

        @Override
        public String words() {
            return "drive measured from " + rounded(lowest) + " to " + rounded(highest);
        }
    }

    /**
     * What a truck laid in a time, as its telemetry sums it up: the indicated mass, turns × what the display held, not corrected by what a later
     * verification found. The time ends with the event, a day alone with that day: by the offset of the time since when, and else the yard's.
     *
     * @param material what it laid, a material's name
     * @param from when the time begins, a day alone with its beginning; none if nobody says
     * @param revolutions revolutions of the sensed shaft by which it was laid; none if nobody counted them
     * @param unattributed revolutions of which nobody can say what they laid, beside the others; none if nobody counted them
     * @param mass the indicated mass of what it laid
     * @param storms in how many storms, 0 or more
     */
    record Used(
            String material,
            Optional<Since> from,
            Optional<Quantity<RevolutionCount>> revolutions,
            Optional<Quantity<RevolutionCount>> unattributed,
            Quantity<Mass> mass,
            int storms)
            implements What {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if the name is blank or a number negative
         */
        public Used {
            Require.given(Used.class, material, from, revolutions, unattributed, mass);
            Require.text("material that was laid", material);
            revolutions.ifPresent(turns -> Require.notNegative("revolutions", RevolutionCount.class, turns));
            unattributed.ifPresent(
                    turns -> Require.notNegative("unattributed revolutions", RevolutionCount.class, turns));
            Require.notNegative("mass that was laid", Mass.class, mass);
            Require.that(storms >= 0, "storms", "0 or more", storms);
        }

        /**
         * What was laid, where only that is known.
         *
         * @param material what it laid, a material's name
         * @param mass the indicated mass of what it laid
         * @return the sum
         * @throws org.gritwright.units.InvalidInputException if the name is blank or the mass negative
         */
        public static Used of(String material, Quantity<Mass> mass) {
            return new Used(material, Optional.empty(), Optional.empty(), Optional.empty(), mass, 0);
        }

        @Override
        public String words() {
            return "laid " + rounded(mass) + " of " + material
                    + from.map(since -> " since " + since).orElse("");
        }
    }

    /**
     * Material that came to the yard.
     *
     * @param material the material, with the loose bulk density of this lot
     * @param lot what the lot is known by; not blank
     * @param moisture its moisture; none if nobody measured it
     */
    record Delivered(Material material, String lot, Optional<Moisture> moisture) implements What {
        /**
         * Checks the lot.
         *
         * @throws org.gritwright.units.InvalidInputException if it is blank
         */
        public Delivered {
            Require.given(Delivered.class, material, lot, moisture);
            Require.text("lot of " + material.name(), lot);
        }

        @Override
        public boolean isOfTruck() {
            return false;
        }

        @Override
        public String words() {
            return "lot " + lot + " of " + material.name() + " delivered";
        }
    }

    /**
     * The first day of a season.
     *
     * @param name what the season is called, for example "2026/27"; not blank
     */
    record SeasonStarted(String name) implements What {
        /**
         * Checks the name.
         *
         * @throws org.gritwright.units.InvalidInputException if it is blank
         */
        public SeasonStarted {
            Require.given(SeasonStarted.class, name);
            Require.text("name of a season", name);
        }

        @Override
        public boolean isOfTruck() {
            return false;
        }

        @Override
        public String words() {
            return "season " + name + " started";
        }
    }

    /** Nothing: the event that it supersedes never happened. */
    record Withdrawn() implements What {
        @Override
        public String words() {
            return "withdrawn";
        }
    }
}
