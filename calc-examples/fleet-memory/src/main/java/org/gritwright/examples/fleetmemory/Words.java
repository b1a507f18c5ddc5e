package org.gritwright.examples.fleetmemory;

import java.util.Locale;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;

/** Small matters of English. */
final class Words {
    private static final double COVERAGE = 0.95;

    private Words() {}

    /** For example "1 truck", "16 trucks". */
    static String count(long number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    /** For example "-1.2 %". */
    static String percent(double ratio) {
        String tenths = String.format(Locale.ROOT, "%.1f", 100 * ratio);
        return (tenths.equals("-0.0") ? "0.0" : tenths.replace('-', '−')) + " %";
    }

    /** With the interval that holds it with 95 %, if it is known, for example "0.4 % ± 1.1 %". */
    static String error(Measured<Dimensionless> error) {
        String value = percent(Amounts.si(Dimensionless.class, error.value()));
        return error.expandedUncertainty(COVERAGE)
                .map(expanded -> value + " ± " + percent(Amounts.si(Dimensionless.class, expanded)))
                .orElse(value);
    }
}
