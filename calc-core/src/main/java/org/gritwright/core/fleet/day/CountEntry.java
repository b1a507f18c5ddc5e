package org.gritwright.core.fleet.day;

import static java.util.Optional.empty;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Time;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.RevolutionCount;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * What was counted, as it was written down: pulses, or counter readings at start and stop, or revolutions by eye
 * with the uncertainty of the count, or a shaft speed and a time, or a control setting and a time.
 *
 * @param pulses pulses counted
 * @param start counter reading at the start
 * @param stop counter reading at the stop
 * @param modulus where the counter returns to zero
 * @param revolutions revolutions counted by eye
 * @param standardUncertainty standard uncertainty of the count by eye
 * @param shaftSpeed speed of the shaft under load
 * @param setting control setting of a drive without feedback
 * @param time time the shaft ran at that speed or setting
 */
public record CountEntry(
        Optional<Quantity<PulseCount>> pulses,
        Optional<Quantity<PulseCount>> start,
        Optional<Quantity<PulseCount>> stop,
        Optional<Quantity<PulseCount>> modulus,
        Optional<Quantity<RevolutionCount>> revolutions,
        Optional<Quantity<RevolutionCount>> standardUncertainty,
        Optional<Quantity<RotationalSpeed>> shaftSpeed,
        Optional<Quantity<Dimensionless>> setting,
        Optional<Quantity<Time>> time) {
    /** Checks that nothing is null. */
    public CountEntry {
        Require.given(
                CountEntry.class,
                pulses,
                start,
                stop,
                modulus,
                revolutions,
                standardUncertainty,
                shaftSpeed,
                setting,
                time);
    }

    /**
     * Pulses counted.
     *
     * @param pulses the pulses
     * @return the entry
     */
    public static CountEntry ofPulses(Quantity<PulseCount> pulses) {
        return new CountEntry(
                given("pulses", pulses), empty(), empty(), empty(), empty(), empty(), empty(), empty(), empty());
    }

    /**
     * A counter read at start and stop.
     *
     * @param start the reading at the start
     * @param stop the reading at the stop
     * @return the entry
     */
    public static CountEntry ofReadings(Quantity<PulseCount> start, Quantity<PulseCount> stop) {
        return new CountEntry(
                empty(),
                given("start", start),
                given("stop", stop),
                empty(),
                empty(),
                empty(),
                empty(),
                empty(),
                empty());
    }

    /**
     * A counter that may have returned to zero once, read at start and stop.
     *
     * @param start the reading at the start
     * @param stop the reading at the stop
     * @param modulus where the counter returns to zero
     * @return the entry
     */
    public static CountEntry ofReadings(
            Quantity<PulseCount> start, Quantity<PulseCount> stop, Quantity<PulseCount> modulus) {
        return new CountEntry(
                empty(),
                given("start", start),
                given("stop", stop),
                given("modulus", modulus),
                empty(),
                empty(),
                empty(),
                empty(),
                empty());
    }

    /**
     * Revolutions counted by eye.
     *
     * @param revolutions the revolutions
     * @param standardUncertainty how uncertain they are
     * @return the entry
     */
    public static CountEntry byEye(
            Quantity<RevolutionCount> revolutions, Quantity<RevolutionCount> standardUncertainty) {
        return new CountEntry(
                empty(),
                empty(),
                empty(),
                empty(),
                given("revolutions", revolutions),
                given("standardUncertainty", standardUncertainty),
                empty(),
                empty(),
                empty());
    }

    /**
     * A shaft that ran at a known speed.
     *
     * @param shaftSpeed its speed under load
     * @param time how long it ran
     * @return the entry
     */
    public static CountEntry atShaftSpeed(Quantity<RotationalSpeed> shaftSpeed, Quantity<Time> time) {
        return new CountEntry(
                empty(),
                empty(),
                empty(),
                empty(),
                empty(),
                empty(),
                given("shaftSpeed", shaftSpeed),
                empty(),
                given("time", time));
    }

    /**
     * A drive without feedback that ran at a control setting.
     *
     * @param setting the control setting
     * @param time how long it ran
     * @return the entry
     */
    public static CountEntry atControlSetting(Quantity<Dimensionless> setting, Quantity<Time> time) {
        return new CountEntry(
                empty(),
                empty(),
                empty(),
                empty(),
                empty(),
                empty(),
                empty(),
                given("setting", setting),
                given("time", time));
    }

    /**
     * The count.
     *
     * @return the count in the one form that was written down
     * @throws InvalidInputException if not exactly one form is complete, or its numbers are impossible
     */
    public ShaftCount count() {
        boolean readings = start.isPresent() && stop.isPresent();
        boolean byEye = revolutions.isPresent() && standardUncertainty.isPresent();
        boolean timed = shaftSpeed.isPresent() && time.isPresent();
        List<String> given = given();
        int parts = given.size();
        if (pulses.isPresent() && parts == 1) {
            return new ShaftCount.Pulses(pulses.get());
        }
        if (readings && parts == (modulus.isPresent() ? 3 : 2)) {
            return new ShaftCount.CounterReadings(start.get(), stop.get(), modulus);
        }
        if (byEye && parts == 2) {
            return new ShaftCount.ByEye(revolutions.get(), standardUncertainty.get());
        }
        if (timed && parts == 2) {
            return new ShaftCount.SpeedTimesTime(shaftSpeed.get(), time.get());
        }
        if (setting.isPresent() && time.isPresent() && parts == 2) {
            return new ShaftCount.SettingTimesTime(setting.get(), time.get());
        }
        throw new InvalidInputException(
                "count",
                "pulses; or start and stop; or revolutions and standardUncertainty; or shaftSpeed and time; or setting"
                        + " and time"
                        + (given.equals(List.of("revolutions")) ? "; for example standardUncertainty 0.1 rev" : ""),
                given.isEmpty() ? "nothing" : String.join(" and ", given) + (given.size() == 1 ? " alone" : ""));
    }

    /** The fields that were written down. */
    private List<String> given() {
        Map<String, Optional<?>> all = new LinkedHashMap<>();
        all.put("pulses", pulses);
        all.put("start", start);
        all.put("stop", stop);
        all.put("modulus", modulus);
        all.put("revolutions", revolutions);
        all.put("standardUncertainty", standardUncertainty);
        all.put("shaftSpeed", shaftSpeed);
        all.put("setting", setting);
        all.put("time", time);
        return all.entrySet().stream()
                .filter(field -> field.getValue().isPresent())
                .map(Map.Entry::getKey)
                .toList();
    }

    private static <T> Optional<T> given(String name, T value) {
        return Optional.of(Objects.requireNonNull(value, name));
    }
}
