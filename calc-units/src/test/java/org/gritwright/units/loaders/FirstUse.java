package org.gritwright.units.loaders;

import static org.gritwright.units.SpreadingUnits.KELVIN;
import static org.gritwright.units.SpreadingUnits.KILOGRAM;
import static org.gritwright.units.SpreadingUnits.POUND;

import java.util.concurrent.Callable;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.gritwright.units.Amounts;
import org.gritwright.units.Conversion;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;

/** What an application does first with this library; one line of results. */
public final class FirstUse implements Callable<String> {

    /** Made by the probe, by name. */
    public FirstUse() {}

    @Override
    public String call() {
        Quantity<ApplicationRate> rate = Amounts.parse(ApplicationRate.class, "250 lb/mi");
        Quantity<Mass> mass = Amounts.of(3, POUND).add(Amounts.of(1, KILOGRAM)).multiply(2);
        Quantity<Temperature> frost = Amounts.parse(Temperature.class, "14 °F");
        return String.join(
                "; ",
                Amounts.format(rate),
                String.valueOf(Amounts.in(rate, SpreadingUnits.KILOGRAM_PER_KILOMETER)),
                Conversion.between(POUND, KILOGRAM).toString(),
                String.valueOf(Amounts.in(mass, KILOGRAM)),
                String.valueOf(Amounts.si(Temperature.class, frost)),
                String.valueOf(frost.to(KELVIN).getValue().doubleValue()));
    }
}
