package org.gritwright.core.verification;

import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.observed;
import static org.gritwright.core.Samples.pulses;

import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Invented test runs of the auger, 100 pulses a revolution, at 360 lb/mi and 25 mi/h: 2.5 lb/s. */
public final class Runs {
    private Runs() {}

    /** A run that expects 2.5 lb for every second. */
    static TestRun seconds(double seconds) {
        return TestRun.lasting(
                Amounts.of(360, SpreadingUnits.POUND_PER_MILE),
                Amounts.of(25, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(seconds, SpreadingUnits.SECOND));
    }

    /** A catch at the point that the calibration in force is for, with a count. */
    static VerificationCatch of(CalibrationInForce inForce, TestRun run, CaughtMass caught, ShaftCount count) {
        return VerificationCatch.of(observed(inForce.point(), caught).counted(count), inForce, run);
    }

    /** The same with nothing counted or displayed. */
    static VerificationCatch of(CalibrationInForce inForce, TestRun run, CaughtMass caught) {
        return VerificationCatch.of(observed(inForce.point(), caught), inForce, run);
    }

    /** 120 s, 300 lb expected, so many pulses with a calibration of 6 lb/rev in force: 5 000 pulses indicate 300 lb. */
    public static VerificationCatch counted(double pulses, double caughtPounds) {
        return counted(pulses(pulses), caughtPounds);
    }

    /** The same, counted in another way. */
    static VerificationCatch counted(ShaftCount count, double caughtPounds) {
        return of(augerInForce(6), seconds(120), caught(caughtPounds), count);
    }

    /** The same with nothing counted or displayed. */
    public static VerificationCatch openLoop(double caughtPounds) {
        return of(augerInForce(6), seconds(120), caught(caughtPounds));
    }
}
