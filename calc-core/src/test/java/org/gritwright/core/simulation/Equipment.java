package org.gritwright.core.simulation;

import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.SQUARE_CENTIMETER;
import static org.gritwright.units.SpreadingUnits.SQUARE_INCH;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * A spreader as it stands in the yard: one of every built-in conveyor type, under one of every built-in gate type where a
 * gate meters it.
 *
 * @param pulsesPerRevolution of the sensed shaft; none where revolutions are counted by eye
 * @param gearRatio revolutions of the sensed shaft per revolution of the conveyor's
 * @param settings where the gate may stand, rising; none where there is nothing to set
 */
record Equipment(
        TypedEntry conveyor,
        TypedEntry gate,
        OptionalInt pulsesPerRevolution,
        double gearRatio,
        List<Quantity<?>> settings) {
    /** Made once, since types are checked when a registry is made. */
    static final TypeRegistry TYPES = BuiltInTypes.registry();

    private static final List<Integer> SENSORS = List.of(1, 2, 4, 8, 16, 20, 30, 36, 60, 100, 180, 360);
    private static final List<Double> GEARS = List.of(5.2, 6.0, 25.0);
    private static final double WITHOUT_SENSOR = 0.08;
    private static final double MOTOR_IS_SENSED = 0.4;

    static Equipment draw(Draw draw) {
        TypedEntry conveyor = conveyor(draw);
        List<Quantity<?>> settings = new ArrayList<>();
        boolean gated = List.of("drag-chain", "belt").contains(conveyor.type());
        TypedEntry gate = gated ? gate(draw, settings) : new TypedEntry("no-gate", 1, Map.of());
        OptionalInt pulses = draw.chance(WITHOUT_SENSOR) ? OptionalInt.empty() : OptionalInt.of(draw.of(SENSORS));
        double gear = pulses.isPresent() && draw.chance(MOTOR_IS_SENSED) ? draw.of(GEARS) : 1;
        return new Equipment(conveyor, gate, pulses, gear, List.copyOf(settings));
    }

    private static TypedEntry conveyor(Draw draw) {
        return switch (draw.weighted(0.45, 0.15, 0.12, 0.1, 0.18)) {
            case 0 ->
                new TypedEntry(
                        "drag-chain",
                        1,
                        Map.of(
                                "teeth", Amounts.of(draw.whole(6, 12), ONE),
                                "chainPitch", inches(draw.of(List.of(2.25, 2.609)))));
            case 1 ->
                new TypedEntry(
                        "belt",
                        1,
                        Map.of(
                                "pulleyDiameter", inches(draw.whole(4, 8)),
                                "beltThickness", inches(draw.of(List.of(0.25, 0.375)))));
            case 2 -> new TypedEntry("auger", 1, screw(draw));
            case 3 -> new TypedEntry("twin-auger", 1, screw(draw));
            default ->
                new TypedEntry(
                        "feed-roller",
                        1,
                        Map.of(
                                "pockets", Amounts.of(draw.whole(6, 12), ONE),
                                "pocketArea", Amounts.of(draw.whole(2, 8), SQUARE_CENTIMETER),
                                "rollerLength", inches(draw.whole(20, 60))));
        };
    }

    private static Map<String, Quantity<Length>> screw(Draw draw) {
        int diameter = draw.whole(6, 9);
        return Map.of("screwDiameter", inches(diameter), "shaftDiameter", inches(2), "pitch", inches(diameter));
    }

    private static TypedEntry gate(Draw draw, List<Quantity<?>> settings) {
        int width = draw.whole(16, 26);
        Stream<Double> heights = Stream.of(1.5, 2.0, 2.5, 3.0, 4.0, 5.0);
        switch (draw.weighted(0.5, 0.12, 0.14, 0.14, 0.1)) {
            case 0 -> {
                heights.forEach(height -> settings.add(inches(height)));
                return new TypedEntry("sliding-gate", 1, Map.of("width", inches(width)));
            }
            case 1 -> {
                heights.forEach(height -> settings.add(inches(height)));
                return new TypedEntry("round-opening", 1, Map.of("diameter", inches(draw.whole(8, 14))));
            }
            case 2 -> {
                List<Quantity<Length>> rows = Stream.of(1.0, 2.0, 3.0, 4.0, 6.0)
                        .map(Equipment::inches)
                        .toList();
                List<Quantity<Area>> areas = rows.stream()
                        .map(row -> area(width * Amounts.in(row, INCH)))
                        .toList();
                heights.forEach(height -> settings.add(inches(height)));
                return new TypedEntry("measured-table", 1, Map.of("openings", rows, "areas", areas));
            }
            case 3 -> {
                IntStream.rangeClosed(2, 7).forEach(mark -> settings.add(Amounts.of(mark, ONE)));
                return new TypedEntry(
                        "setting-table",
                        1,
                        Map.of(
                                "settings", List.of(Amounts.of(1, ONE), Amounts.of(4, ONE), Amounts.of(8, ONE)),
                                "areas", List.of(area(width * 0.75), area(width * 2.5), area(width * 6.0))));
            }
            default -> {
                return new TypedEntry("fixed-opening", 1, Map.of("width", inches(width), "height", inches(2.5)));
            }
        }
    }

    private static Quantity<Length> inches(double number) {
        return Amounts.of(number, INCH);
    }

    private static Quantity<Area> area(double squareInches) {
        return Amounts.of(squareInches, SQUARE_INCH);
    }

    /** As it is written down without a slip. */
    SpreaderEntry entry() {
        Quantity<javax.measure.quantity.Dimensionless> gear = Amounts.of(gearRatio, ONE);
        return pulsesPerRevolution.isPresent()
                ? SpreaderEntry.sensed(
                        conveyor,
                        gate,
                        Amounts.of(pulsesPerRevolution.getAsInt(), SpreadingUnits.PULSE_PER_REVOLUTION),
                        gear)
                : SpreaderEntry.watched(conveyor, gate, gear);
    }

    /** By the types' geometry alone. */
    double sweptCubicMeters(Setting setting) {
        return entry().metering(TYPES).sweptCubicMetersPerRevolution(setting);
    }

    boolean isGateMeasured() {
        return !settings.isEmpty() && Setting.of(settings.get(0)).scale() == Setting.Scale.HEIGHT;
    }
}
