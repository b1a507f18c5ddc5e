package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiConsumer;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.ElectricCurrent;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerPulse;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.PulsesPerDistance;
import org.gritwright.units.quantity.PulsesPerMass;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.PulsesPerVolume;
import org.gritwright.units.quantity.RevolutionCount;
import org.gritwright.units.quantity.RevolutionsPerMass;
import org.gritwright.units.quantity.RevolutionsPerVolume;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerPulse;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * What numbers on a truck's sheet can be, by the wide margin of what machines and people can do (common practice, no source): a
 * number outside can only be a slip, and a result computed with it could be beyond what a number holds. Zero, and what is below
 * it, is left to each field's own rule.
 */
public final class EnteredRanges {
    /**
     * The numbers of a field or kind that can be, both ends included. Immutable, thread-safe, a value.
     *
     * @param lowest the lowest
     * @param highest the highest
     */
    public record Range(Quantity<?> lowest, Quantity<?> highest) {
        /** Checks that both are given. */
        public Range {
            Require.given(Range.class, lowest, highest);
        }

        private static <Q extends Quantity<Q>> Range of(Class<Q> kind, String lowest, String highest) {
            return new Range(Amounts.parse(kind, lowest), Amounts.parse(kind, highest));
        }
    }

    /** A range beside its ends in SI units. */
    private record Ends(Range range, double lowest, double highest) {
        private static <Q extends Quantity<Q>> Ends of(Class<Q> kind, String lowest, String highest) {
            Range range = Range.of(kind, lowest, highest);
            return new Ends(range, si(kind, range.lowest()), si(kind, range.highest()));
        }

        private boolean hold(Class<?> kind, Quantity<?> quantity) {
            // As it was entered: what is tiny may be 0 in SI units.
            boolean ownRule = range.lowest().getValue().doubleValue() > 0
                    && quantity.getValue().doubleValue() <= 0;
            if (ownRule) {
                return true;
            }
            double si = si(kind, quantity);
            return si >= lowest && si <= highest;
        }

        /** In SI units; NaN for what is too large there. */
        @SuppressWarnings({"unchecked", "rawtypes"}) // the kind is the unit's own
        private static double si(Class<?> kind, Quantity<?> quantity) {
            try {
                return Amounts.si((Class) kind, (Quantity) quantity);
            } catch (InvalidInputException e) {
                return Double.NaN;
            }
        }
    }

    private static final Map<Class<?>, Ends> BY_KIND = Map.ofEntries(
            entry(Mass.class, "0.001 g", "1000 t"),
            entry(Length.class, "0.001 mm", "1000 km"),
            entry(Time.class, "0.01 s", "1000 h"),
            entry(Speed.class, "0.01 km/h", "150 km/h"),
            entry(Temperature.class, "-100 °C", "300 °C"),
            entry(ElectricCurrent.class, "0.0001 mA", "1000000 mA"),
            entry(Dimensionless.class, "1e-9", "1e6"),
            entry(BulkDensity.class, "1 kg/m³", "30000 kg/m³"),
            entry(RotationalSpeed.class, "0.001 rev/min", "100000 rev/min"),
            entry(RevolutionCount.class, "1e-6 rev", "1e9 rev"),
            entry(PulseCount.class, "1 pulse", "1e12 pulse"),
            entry(PulsesPerRevolution.class, "0.001 pulse/rev", "1e6 pulse/rev"),
            entry(PulsesPerDistance.class, "0.001 pulse/km", "1e9 pulse/km"),
            entry(DischargePerRevolution.class, "1e-6 kg/rev", "1e5 kg/rev"),
            entry(DischargePerPulse.class, "1e-9 kg/pulse", "1e5 kg/pulse"),
            entry(RevolutionsPerMass.class, "1e-5 rev/kg", "1e6 rev/kg"),
            entry(PulsesPerMass.class, "1e-5 pulse/kg", "1e9 pulse/kg"),
            entry(ApplicationRate.class, "0.001 kg/km", "1e6 kg/km"),
            entry(LaneApplicationRate.class, "0.001 kg/lane-km", "1e6 kg/lane-km"),
            entry(LaneCount.class, "0.01 lane", "100 lane"),
            entry(Volume.class, "0.001 mL", "1000000 L"),
            entry(VolumePerRevolution.class, "0.001 mL/rev", "1000 L/rev"),
            entry(VolumePerPulse.class, "0.000001 mL/pulse", "1000 L/pulse"),
            entry(RevolutionsPerVolume.class, "0.001 rev/L", "1e6 rev/L"),
            entry(PulsesPerVolume.class, "0.001 pulse/L", "1e9 pulse/L"),
            entry(LiquidApplicationRate.class, "0.001 L/km", "1e6 L/km"),
            entry(LiquidLaneApplicationRate.class, "0.001 L/lane-km", "1e6 L/lane-km"),
            entry(PrewetRate.class, "0.01 L/t", "1e4 L/t"));

    /** Where a field's own range is narrower than its kind's. */
    private static final Map<String, Ends> BY_FIELD = Map.of(
            "gearRatio", Ends.of(Dimensionless.class, "0.001", "1000"),
            "grainDiameter", Ends.of(Length.class, "0.001 mm", "1 m"),
            "course", Ends.of(Length.class, "1 m", "1000 km"));

    private EnteredRanges() {}

    private static <Q extends Quantity<Q>> Map.Entry<Class<?>, Ends> entry(
            Class<Q> kind, String lowest, String highest) {
        return Map.entry(kind, Ends.of(kind, lowest, highest));
    }

    /**
     * Looks at all numbers of what was entered, except the parameters of types, which have limits of their own.
     *
     * @param entry a truck, a scale or a material as it was written down
     * @param pointer where it stands in the day's document
     * @param refused receives where and why, for each number outside its range
     */
    public static void check(Record entry, String pointer, BiConsumer<String, InvalidInputException> refused) {
        Objects.requireNonNull(pointer, "pointer");
        Objects.requireNonNull(refused, "refused");
        check(entry, (below, why) -> refused.accept(pointer + below, why));
    }

    /** Where something stands is put together from within outwards, as only what is refused needs it. */
    private static void check(Record entry, BiConsumer<String, InvalidInputException> refused) {
        for (EnteredField field : EnteredField.of(entry.getClass())) {
            Object value = field.value(entry);
            check(field.name(), value, (below, why) -> refused.accept(field.place(value) + below, why));
        }
    }

    private static void check(String name, Object value, BiConsumer<String, InvalidInputException> refused) {
        if (value instanceof Quantity<?> quantity) {
            checkNumber(name, quantity, refused);
        } else if (value instanceof Optional<?> optional) {
            optional.ifPresent(given -> check(name, given, refused));
        } else if (value instanceof List<?> list) {
            for (int i = 0; i < list.size(); i++) {
                int place = i;
                check(name, list.get(i), (below, why) -> refused.accept("/" + place + below, why));
            }
        } else if (value instanceof Record part) {
            check(part, refused);
        }
    }

    /**
     * The range of a field's numbers, for whoever checks them where they are typed in. Where its lowest number is above zero, zero
     * and what is below it are left to the field's own rule.
     *
     * @param field the field's name in the document, for example "gross"
     * @param kind the kind of its quantity
     * @return the field's own range, or else that of its kind; none for a kind without one
     */
    public static Optional<Range> of(String field, Class<?> kind) {
        Objects.requireNonNull(kind, "kind");
        return Optional.ofNullable(BY_FIELD.get(Objects.requireNonNull(field, "field")))
                .or(() -> Optional.ofNullable(BY_KIND.get(kind)))
                .map(Ends::range);
    }

    private static void checkNumber(
            String name, Quantity<?> quantity, BiConsumer<String, InvalidInputException> refused) {
        Class<?> kind = UnitSymbol.of(quantity.getUnit()).kind();
        Ends own = BY_FIELD.get(name);
        Ends ends = own == null ? BY_KIND.get(kind) : own;
        if (ends != null && !ends.hold(kind, quantity)) {
            refused.accept("", refusal(words(name), quantity, ends.range()));
        }
    }

    private static InvalidInputException refusal(String field, Quantity<?> quantity, Range range) {
        String lowest = Amounts.format(range.lowest());
        String highest = Amounts.format(range.highest());
        return new InvalidInputException(
                RefusalCode.OUT_OF_RANGE,
                field,
                "within " + lowest + " to " + highest,
                Amounts.format(quantity),
                lowest,
                highest);
    }

    private static String words(String name) {
        return name.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
    }
}
