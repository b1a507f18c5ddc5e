package org.gritwright.core.planning;

import static org.gritwright.core.LiquidSamples.gallons;
import static org.gritwright.core.LiquidSamples.poundsPerGallon;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.pounds;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.VolumePerRevolution;

/** Invented: brine of 9.8 lb/gal, through a flow meter of 1200 pulses a gallon or a pump of 0.05 gal a revolution. */
final class LiquidSetups {
    static final PlannedCount METER_PULSES = counted(LiquidSamples.METER.feedback());
    static final Quantity<?> PER_PULSE = Amounts.of(1.0 / 1200, SpreadingUnits.US_GALLON_PER_PULSE);
    static final Quantity<VolumePerRevolution> PER_TURN = Amounts.of(0.05, SpreadingUnits.US_GALLON_PER_REVOLUTION);

    private LiquidSetups() {}

    static PlannedCount counted(DriveFeedback feedback) {
        return PlannedCount.with(feedback, Optional.empty());
    }

    /** Marks every so often, right to so much; 6 gal. */
    static Graduate graduate(double division, double tolerance) {
        return Graduate.of("P-1", gallons(6), gallons(division)).within(gallons(tolerance));
    }

    static PlannedAmount.Read read(Graduate container, int howMany, double holds) {
        return new PlannedAmount.Read(container, howMany, gallons(holds));
    }

    static Measured<BulkDensity> density(double uncertainty) {
        return Measured.of(poundsPerGallon(9.8), poundsPerGallon(uncertainty), Double.POSITIVE_INFINITY);
    }

    /** Pails of 5 gal that weigh 2 lb. */
    static PlannedAmount.WeighedLiquid weighed(Scale scale, int howMany, double densityUncertainty) {
        return PlannedAmount.WeighedLiquid.inPails(
                scale, DAY, howMany, gallons(5), pounds(2), density(densityUncertainty));
    }

    static CatchSetup meter(PlannedAmount amount) {
        return CatchSetup.of(amount, METER_PULSES, PER_PULSE);
    }
}
