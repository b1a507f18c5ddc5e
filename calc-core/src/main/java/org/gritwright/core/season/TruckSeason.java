package org.gritwright.core.season;

import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * A truck over a season. Immutable, thread-safe, a value.
 *
 * <p>Its factor is true mass ÷ indicated mass, 1 ÷ (1 + calibration error): below 1 for a truck that reports more than it takes, above 1 for one
 * that reports less. It is taken as one number for the whole season.
 *
 * @param id what the yard calls it
 * @param calibrationError indicated ÷ caught − 1 by its verifications, with its standard uncertainty; absent where it wasn't verified
 * @param common the error that its verifications share with others, of the scale that the catches were weighed on; the calibration error's
 *     uncertainty is without it
 * @param draws what it took from which pile, by its own controller
 * @param loads what was weighed of it, possibly nothing
 */
public record TruckSeason(
        String id,
        Optional<Measured<Dimensionless>> calibrationError,
        Optional<CommonError> common,
        List<Draw> draws,
        List<WeighedLoads> loads)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values and copies the lists.
     *
     * @throws org.gritwright.units.InvalidInputException if the id is blank, or the calibration error is −100 % or less, or has no standard
     *     uncertainty greater than 0, or isn't there and shares an error; the message names the truck
     */
    public TruckSeason {
        Require.given(TruckSeason.class, id, calibrationError, common, draws, loads);
        Require.text("id of a truck", id);
        Require.that(
                calibrationError.isPresent() || common.isEmpty(),
                "calibration error of truck " + id,
                "given where it shares the error of a scale",
                "none");
        draws = List.copyOf(draws);
        loads = List.copyOf(loads);
        calibrationError.ifPresent(error -> {
            double ratio = Amounts.si(Dimensionless.class, error.value());
            Require.that(ratio > -1, "calibration error of truck " + id, "above -100 %", error.value());
            Require.that(
                    error.standardUncertainty()
                            .filter(u -> Amounts.si(Dimensionless.class, u) > 0)
                            .isPresent(),
                    "standard uncertainty of the calibration error of truck " + id,
                    "known and greater than 0",
                    error);
        });
    }

    /**
     * A truck that was verified.
     *
     * @param id what the yard calls it
     * @param calibrationError indicated ÷ caught − 1, with its standard uncertainty
     * @param draws what it took from which pile, by its own controller
     * @param loads what was weighed of it, possibly nothing
     * @return the truck
     * @throws org.gritwright.units.InvalidInputException if a value isn't accepted
     */
    public static TruckSeason verified(
            String id, Measured<Dimensionless> calibrationError, List<Draw> draws, List<WeighedLoads> loads) {
        return new TruckSeason(
                id,
                Optional.of(Objects.requireNonNull(calibrationError, "calibrationError")),
                Optional.empty(),
                draws,
                loads);
    }

    /**
     * A truck that wasn't verified: its factor follows from the rest, where it does.
     *
     * @param id what the yard calls it
     * @param draws what it took from which pile, by its own controller
     * @param loads what was weighed of it, possibly nothing
     * @return the truck
     * @throws org.gritwright.units.InvalidInputException if a value isn't accepted
     */
    public static TruckSeason unverified(String id, List<Draw> draws, List<WeighedLoads> loads) {
        return new TruckSeason(id, Optional.empty(), Optional.empty(), draws, loads);
    }

    /**
     * The same truck, whose catches were weighed on a scale that others were weighed on too.
     *
     * @param error the scale's
     * @return the changed copy
     * @throws org.gritwright.units.InvalidInputException if the truck wasn't verified
     */
    public TruckSeason sharing(CommonError error) {
        return new TruckSeason(id, calibrationError, Optional.of(error), draws, loads);
    }

    /** True ÷ indicated by the verification. */
    Optional<Double> statedFactor() {
        return calibrationError.map(error -> 1 / (1 + Amounts.si(Dimensionless.class, error.value())));
    }

    /** Its standard uncertainty, to first order. */
    double statedFactorUncertainty() {
        double factor = statedFactor().orElseThrow();
        Quantity<Dimensionless> u =
                calibrationError.orElseThrow().standardUncertainty().orElseThrow();
        return factor * factor * Amounts.si(Dimensionless.class, u);
    }
}
