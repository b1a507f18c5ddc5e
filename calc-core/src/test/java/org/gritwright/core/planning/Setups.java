package org.gritwright.core.planning;

import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.pounds;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Invented yards: pails of 4 lb on a scale, a truck that is expected to lay 5 lb/rev. */
final class Setups {
    static final PlannedCount SIXTY_PULSES =
            new PlannedCount.Pulses(Amounts.of(60, SpreadingUnits.PULSE_PER_REVOLUTION));

    private Setups() {}

    static Quantity<Dimensionless> percent(double percent) {
        return Amounts.of(percent, SpreadingUnits.PERCENT);
    }

    static double inPercent(Quantity<Dimensionless> ratio) {
        return Amounts.in(ratio, SpreadingUnits.PERCENT);
    }

    /** Of unknown accuracy; carries 500 lb. */
    static Scale scale(double divisionPounds) {
        return Scale.of("S", pounds(500), pounds(divisionPounds));
    }

    /** So right that its span shows in no number: to a thousandth of a percent. */
    static Scale rightScale(double divisionPounds) {
        return scale(divisionPounds, 0.001);
    }

    static Scale scale(double divisionPounds, double accuracyPercent) {
        return scale(divisionPounds).withAccuracy(new ScaleAccuracy.Stated(percent(accuracyPercent)));
    }

    static Containers pails(int howMany, double holdsPounds) {
        return new Containers(howMany, pounds(holdsPounds), pounds(4));
    }

    static CatchSetup setup(Scale scale, Containers containers, PlannedCount count) {
        return CatchSetup.of(scale, DAY, containers, count, Amounts.of(5, SpreadingUnits.POUND_PER_REVOLUTION));
    }

    static CatchAllowances scatter(double percent) {
        return new CatchAllowances(
                percent(0), percent(0), Optional.empty(), Optional.of(Repeatability.assumed(percent(percent))));
    }
}
