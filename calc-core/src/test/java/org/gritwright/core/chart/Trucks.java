package org.gritwright.core.chart;

import static org.gritwright.units.SpreadingUnits.MILE_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.Samples;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.range.Command;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.RotationalSpeed;

/** An invented truck: 7 lb/rev, known to 1 %, at 5 to 50 rev/min, so 35 to 350 lb/min. */
final class Trucks {
    static final ChartSubject SUBJECT = new ChartSubject("T-12", "road salt", Samples.height(2));
    static final Measured<DischargePerRevolution> SEVEN = discharge(7, 0.07);
    static final WorkingRange RANGE = new WorkingRange(rpm(5), rpm(50));
    static final Envelope ENVELOPE = Envelope.of(SEVEN, RANGE);

    private Trucks() {}

    static Measured<DischargePerRevolution> discharge(double pounds, double uncertainty) {
        return Measured.of(Amounts.of(pounds, POUND_PER_REVOLUTION), Amounts.of(uncertainty, POUND_PER_REVOLUTION), 8);
    }

    static Quantity<RotationalSpeed> rpm(double speed) {
        return Amounts.of(speed, REVOLUTION_PER_MINUTE);
    }

    static Quantity<ApplicationRate> rate(double poundsPerMile) {
        return Amounts.of(poundsPerMile, POUND_PER_MILE);
    }

    static Quantity<Speed> speed(double milesPerHour) {
        return Amounts.of(milesPerHour, MILE_PER_HOUR);
    }

    static List<Quantity<ApplicationRate>> rates(double... poundsPerMile) {
        return Arrays.stream(poundsPerMile).mapToObj(Trucks::rate).toList();
    }

    static List<Quantity<Speed>> speeds(double... milesPerHour) {
        return Arrays.stream(milesPerHour).mapToObj(Trucks::speed).toList();
    }

    /** A numbered setting with a shaft speed that nobody measured twice. */
    static ControlSetting setting(double number, double speed) {
        return new ControlSetting(Command.number(number), Measured.once(rpm(speed)));
    }
}
