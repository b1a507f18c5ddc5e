package org.gritwright.core.telemetry;

import java.time.Instant;
import java.util.Objects;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.verification.Verification;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * The calibration error that a verification found before anything was adjusted, and what it may correct: the rows since the last
 * as-left state. The error is indicated ÷ caught − 1, so that what was indicated is divided by 1 + error. Immutable, thread-safe, a
 * value.
 *
 * @param slot the slot, or where nobody names slots the material
 * @param setting the setting that was verified; a curve is corrected as a whole
 * @param asLeft when it was right for the last time: calibrated, or corrected
 * @param at when the error was found, later than that
 * @param error the calibration error; its value is above −1. One without a standard uncertainty is never shown, and corrects nothing
 */
public record AsFound(String slot, Setting setting, Instant asLeft, Instant at, Measured<Dimensionless> error) {
    /** The chance with which an error that isn't there would be taken for shown. */
    private static final double COVERAGE = 0.95;

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if the slot is blank, the times are in the wrong order, or the error is −100 % or less
     */
    public AsFound {
        Require.given(AsFound.class, slot, setting, asLeft, at, error);
        Require.text("slot", slot);
        Instant left = asLeft;
        Require.that(
                Times.millis("time as left", asLeft) < Times.millis("time as found", at),
                "time as found",
                "later than the time as left, " + left,
                at);
        Require.that(
                Amounts.si(Dimensionless.class, error.value()) > -1,
                "calibration error",
                "above −100 %",
                error.value());
    }

    /**
     * What a verification catch found.
     *
     * @param slot the slot, or where nobody names slots the material
     * @param asLeft when it was right for the last time
     * @param verification a verification that counted
     * @return the error with its standard uncertainty
     * @throws InvalidInputException if nothing was counted, or it was not later
     */
    public static AsFound of(String slot, Instant asLeft, Verification verification) {
        Objects.requireNonNull(slot, "slot");
        Objects.requireNonNull(asLeft, "asLeft");
        Objects.requireNonNull(verification, "verification");
        if (verification.calibrationError().isEmpty()) {
            throw new InvalidInputException("verification", "one that counted", "nothing counted");
        }
        return new AsFound(
                slot,
                verification.source().point().setting(),
                asLeft,
                verification.source().observation().at().toInstant(),
                verification.judgement().budget().result());
    }

    /**
     * Whether the error is shown to differ from zero: only then it corrects anything.
     *
     * @return true if its 95 % interval leaves zero out
     */
    public boolean isShown() {
        return error.expandedUncertainty(COVERAGE)
                .filter(expanded -> Math.abs(Amounts.si(Dimensionless.class, error.value()))
                        > Amounts.in(expanded, SpreadingUnits.ONE))
                .isPresent();
    }
}
