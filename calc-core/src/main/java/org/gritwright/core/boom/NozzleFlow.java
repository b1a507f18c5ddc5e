package org.gritwright.core.boom;

import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;

/**
 * What one nozzle of a boom gave, all of them caught at the same pressure and with the same liquid. Immutable, thread-safe, a value.
 *
 * @param section the section that it is in
 * @param nozzle what people know it by, such as its number from the left; once in a section
 * @param flow what it gave, 0 or more
 */
public record NozzleFlow(String section, String nozzle, Measured<FlowRate> flow) implements Serializable {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if a name is blank or the flow is negative
     */
    public NozzleFlow {
        Require.given(NozzleFlow.class, section, nozzle, flow);
        Require.text("name of a boom section", section);
        Require.text("name of a nozzle", nozzle);
        Require.notNegative("flow of nozzle " + nozzle, FlowRate.class, flow.value());
    }

    /**
     * A nozzle that ran into a graduate for a while: volume ÷ time. Its uncertainty is that of reading the graduate to its division,
     * division ÷ √12, and of the time, either way ÷ √3. It doesn't hold an error of the graduate's or the watch's own scale, which is
     * the same for all nozzles and cancels where they are compared with each other, but not where they are compared with a new one.
     *
     * @param section the section that the nozzle is in
     * @param nozzle what people know it by
     * @param caught what was caught, 0 or more
     * @param division the graduate's division, greater than zero
     * @param time for how long, greater than zero
     * @param eitherWay by how much that time may be off either way, 0 or more and below the time
     * @return its flow
     * @throws InvalidInputException if a value is out of its range
     */
    public static NozzleFlow caught(
            String section,
            String nozzle,
            Quantity<Volume> caught,
            Quantity<Volume> division,
            Quantity<Time> time,
            Quantity<Time> eitherWay) {
        Objects.requireNonNull(section, "section");
        Objects.requireNonNull(nozzle, "nozzle");
        double cubicMeters = Amounts.si(Volume.class, Require.notNegative("volume caught", Volume.class, caught));
        double seconds = Amounts.si(Time.class, Require.positive("time of the catch", Time.class, time));
        double divisionCubicMeters =
                Amounts.si(Volume.class, Require.positive("division of the graduate", Volume.class, division));
        double eitherWaySeconds = Amounts.si(
                Time.class, Require.notNegative("uncertainty of the time of the catch", Time.class, eitherWay));
        if (!(eitherWaySeconds < seconds)) {
            throw new InvalidInputException(
                    RefusalCode.TOO_HIGH,
                    "uncertainty of the time of the catch",
                    "below the time, " + Amounts.format(time),
                    Amounts.format(eitherWay),
                    Amounts.format(time));
        }
        double flow = cubicMeters / seconds;
        double ofReading = Distribution.RECTANGULAR.standardUncertainty(divisionCubicMeters / 2) / seconds;
        double ofTime = Distribution.RECTANGULAR.standardUncertainty(eitherWaySeconds) / seconds * flow;
        Unit<FlowRate> unit = UnitSymbol.tradeUnit(FlowRate.class, caught);
        return new NozzleFlow(
                section,
                nozzle,
                Measured.of(
                        Amounts.ofSi(flow, unit),
                        Amounts.ofSi(Math.hypot(ofReading, ofTime), unit),
                        Double.POSITIVE_INFINITY));
    }

    double cubicMetersPerSecond() {
        return Amounts.si(FlowRate.class, flow.value());
    }
}
