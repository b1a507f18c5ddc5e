package org.gritwright.core.solution;

import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/** Temperatures as the tables have them. */
final class Celsius {
    private static final double BILLION = 1e9;

    /** In K. */
    private static final double ICE = 273.15;

    private Celsius() {}

    /** To a billionth of a degree, so that 32 °F is 0 °C and not a rounding error below it. */
    static double of(String field, Quantity<Temperature> temperature) {
        Require.notNegative(field, Temperature.class, temperature);
        return rounded(Amounts.si(Temperature.class, temperature) - ICE);
    }

    static double ofFahrenheit(double fahrenheit) {
        return rounded((fahrenheit - 32) / 1.8);
    }

    private static double rounded(double celsius) {
        return Math.rint(celsius * BILLION) / BILLION;
    }

    static Quantity<Temperature> quantity(double celsius) {
        return Amounts.of(celsius, SpreadingUnits.CELSIUS);
    }

    static double within(String field, Quantity<Temperature> temperature, double lowest, double highest) {
        Require.within(field, Temperature.class, temperature, quantity(lowest), quantity(highest));
        return of(field, temperature);
    }

    /** A temperature's uncertainty is a difference: 1.8 °F are 1 °C. */
    static double uncertainty(Measured<Temperature> temperature) {
        Quantity<Temperature> value = temperature.value();
        double number = value.getValue().doubleValue();
        double u = temperature.standardUncertainty().orElseThrow().getValue().doubleValue();
        return Amounts.si(Temperature.class, Amounts.of(number + u, value.getUnit()))
                - Amounts.si(Temperature.class, value);
    }
}
