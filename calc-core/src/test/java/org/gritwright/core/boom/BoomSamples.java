package org.gritwright.core.boom;

import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.FlowRate;

/** Invented nozzles and a boom of them. */
final class BoomSamples {
    static final Quantity<BulkDensity> WATER = Amounts.of(8.34, SpreadingUnits.POUND_PER_US_GALLON);
    static final Quantity<BulkDensity> TEN_POUNDS = Amounts.of(10, SpreadingUnits.POUND_PER_US_GALLON);

    /** 1 gal/min at 40 psi, so 0.5 at 10 and 1.5 at 90. */
    static final Nozzle ONE = Nozzle.rated("one", psi(40), gallonsPerMinute(1), WATER, psi(10), psi(90));

    /** 4 and 6 nozzles, 30 in apart: 5 to 15 gal/min. */
    static final Boom BOOM = Boom.of(section("left", 4), section("right", 6));

    private BoomSamples() {}

    static Quantity<Pressure> psi(double psi) {
        return Amounts.of(psi, SpreadingUnits.POUND_FORCE_PER_SQUARE_INCH);
    }

    static Quantity<FlowRate> gallonsPerMinute(double flow) {
        return Amounts.of(flow, SpreadingUnits.US_GALLON_PER_MINUTE);
    }

    static BoomSection section(String name, int nozzles) {
        return section(name, ONE, nozzles);
    }

    static BoomSection section(String name, Nozzle nozzle, int nozzles) {
        return BoomSection.of(
                name, Amounts.of(1, SpreadingUnits.LANE), nozzle, nozzles, Amounts.of(30, SpreadingUnits.INCH));
    }

    static NozzlePoint point(double psi, double gallonsPerMinute) {
        return new NozzlePoint(psi(psi), gallonsPerMinute(gallonsPerMinute));
    }

    static double number(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }
}
