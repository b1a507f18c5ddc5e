package org.gritwright.core.history.due;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.history.Held;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.check.Require;

/**
 * Something that is due at one calibration point of a truck. Immutable, thread-safe, a value.
 *
 * @param truck the truck's id
 * @param point the calibration point
 * @param held what the display holds for it; none if that is lost
 * @param reasons why, one or more, the soonest first
 * @param expectedError how far off the value is to be expected, either way
 * @param atStake expected error × what is planned to be laid with it; 0 if nobody says what is planned
 * @param work the least work that clears it
 */
public record Due(
        String truck,
        CalibrationPoint point,
        Optional<Held> held,
        List<Reason> reasons,
        Quantity<Dimensionless> expectedError,
        Quantity<Mass> atStake,
        Work work) {
    /**
     * Sorts the reasons.
     *
     * @throws org.gritwright.units.InvalidInputException if there is none
     */
    public Due {
        Require.given(Due.class, truck, point, held, reasons, expectedError, atStake, work);
        reasons = reasons.stream().sorted(Comparator.comparing(Reason::by)).toList();
        Require.that(!reasons.isEmpty(), "reasons", "one or more", "none");
    }

    /**
     * By when.
     *
     * @return the soonest day of all reasons
     */
    public LocalDate by() {
        return reasons.get(0).by();
    }

    /**
     * What, why, and what to do.
     *
     * @return for example "T-07, road salt at 2 in: not checked since it was entered (by 2026-11-02); one verification catch of 120 lb would
     *     do"
     */
    @Override
    public String toString() {
        return truck + ", " + point + ": "
                + String.join(
                        ", ",
                        reasons.stream()
                                .map(reason -> reason.words() + " (by " + reason.by() + ")")
                                .toList())
                + "; expected error " + Argument.number(expectedError).words() + "; " + work.words();
    }
}
