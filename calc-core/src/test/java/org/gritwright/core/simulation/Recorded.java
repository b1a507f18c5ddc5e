package org.gritwright.core.simulation;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.RevolutionCount;

/** The numbers that entries state, by the simplest arithmetic and none of the library's results. */
final class Recorded {

    private Recorded() {}

    static double kilograms(CatchEntry entry) {
        return entry.containers().stream()
                .mapToDouble(one -> Amounts.si(Mass.class, one.gross()) - Amounts.si(Mass.class, one.tare()))
                .sum();
    }

    static OptionalDouble pulses(CountEntry count) {
        if (count.pulses().isPresent()) {
            return OptionalDouble.of(Amounts.si(PulseCount.class, count.pulses().get()));
        }
        if (count.start().isPresent() && count.stop().isPresent()) {
            return OptionalDouble.of(Amounts.si(PulseCount.class, count.stop().get())
                    - Amounts.si(PulseCount.class, count.start().get()));
        }
        return OptionalDouble.empty();
    }

    static OptionalDouble revolutions(CatchEntry entry, SpreaderEntry spreader) {
        if (entry.counted().isEmpty()) {
            return OptionalDouble.empty();
        }
        CountEntry count = entry.counted().get();
        Optional<Quantity<PulsesPerRevolution>> sensor = spreader.pulsesPerRevolution();
        OptionalDouble pulses = pulses(count);
        if (pulses.isPresent() && sensor.isPresent()) {
            return OptionalDouble.of(pulses.getAsDouble() / Amounts.si(PulsesPerRevolution.class, sensor.get()));
        }
        return count.revolutions().isPresent()
                ? OptionalDouble.of(
                        Amounts.si(RevolutionCount.class, count.revolutions().get()))
                : OptionalDouble.empty();
    }

    /** Caught by counted over all calibration catches at an opening, in the truck's unit; what a technician computes. */
    static Optional<Double> ratio(
            List<CalibrationCatchEntry> catches, SpreaderEntry spreader, TrueTruck truck, int opening) {
        int perOpening = truck.plan().calibrationCatches();
        List<CatchEntry> here = catches.stream()
                .map(CalibrationCatchEntry::entry)
                .skip((long) perOpening * opening)
                .limit(perOpening)
                .toList();
        double kilograms = here.stream().mapToDouble(Recorded::kilograms).sum();
        double revolutions = here.stream()
                .mapToDouble(entry -> revolutions(entry, spreader).orElse(0))
                .sum();
        return kilograms > 0 && revolutions > 0
                ? Optional.of(truck.trade().ofKilograms(kilograms / revolutions))
                : Optional.empty();
    }
}
