package org.gritwright.core.history.due;

import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.history.Held;
import org.gritwright.core.history.Standing;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;

/** How far off a value is to be expected, either way. */
final class ExpectedError {
    private ExpectedError() {}

    /**
     * The mean of |x| for x normal about the error with its standard uncertainty (the folded normal distribution): u·√(2/π)·exp(−e²/2u²) +
     * |e|·(1 − 2Φ(−|e|/u)). Where something was changed, what nobody knows is added to u in quadrature.
     */
    static double of(Held held, DueSettings settings) {
        double unknown = Amounts.si(Dimensionless.class, settings.unknownError());
        Optional<Measured<Dimensionless>> known = held.error();
        double error = known.map(one -> Math.abs(Amounts.si(Dimensionless.class, one.value())))
                .orElse(0.0);
        double u = known.flatMap(Measured::standardUncertainty)
                .map(one -> Amounts.si(Dimensionless.class, one))
                .orElse(unknown);
        return folded(error, held.standing() == Standing.CHANGED_SINCE ? Math.hypot(u, unknown) : u);
    }

    static double folded(double error, double u) {
        if (u == 0) {
            return error;
        }
        double ratio = error / u;
        return u * Math.sqrt(2 / Math.PI) * Math.exp(-ratio * ratio / 2)
                + error * (1 - 2 * Student.of(Double.POSITIVE_INFINITY).probabilityAbove(ratio));
    }
}
