package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.check.Require;

/**
 * An error that all rows share which were evaluated with something: the calibration of a point, the span of the scale that it was
 * weighed on. It doesn't average out over a storm, and a scale's doesn't over the trucks that were weighed on it. Immutable,
 * thread-safe, a value.
 *
 * @param id what the error is of: equal ids are one error, for example "scale platform 1"; not blank
 * @param standardUncertainty its relative standard uncertainty, 0 or more
 */
public record SharedError(String id, Quantity<Dimensionless> standardUncertainty) implements Serializable {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the id is blank or the uncertainty negative
     */
    public SharedError {
        Require.given(SharedError.class, id, standardUncertainty);
        Require.text("id of a shared error", id);
        Require.notNegative("standard uncertainty of " + id, Dimensionless.class, standardUncertainty);
    }

    /** A copy of errors of which each is there once. */
    static List<SharedError> eachOnce(List<SharedError> errors) {
        List<String> ids = errors.stream().map(SharedError::id).toList();
        Require.that(ids.stream().distinct().count() == ids.size(), "shared errors", "each id once", ids);
        return List.copyOf(errors);
    }
}
