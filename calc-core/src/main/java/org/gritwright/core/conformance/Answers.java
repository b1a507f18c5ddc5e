package org.gritwright.core.conformance;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerPulse;
import org.gritwright.units.quantity.VolumePerRevolution;

/** What types of each sort give, and where the laws ask it. */
final class Answers {
    private static final int POINTS = 33;

    /** From nothing to more than any spreader has open, in m². */
    private static final List<Double> OPEN_AREAS = List.of(0.0, 1e-6, 1e-4, 1e-3, 0.01, 0.03, 0.1, 0.3, 1.0, 3.0, 5.0);

    /** From rest to more than any pump turns, in rev/s. */
    private static final List<Double> SPEEDS = List.of(0.0, 0.01, 0.1, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0);

    /** From nothing to more than any truck doses, in m³/s. */
    private static final List<Double> FLOWS = List.of(0.0, 1e-6, 1e-5, 3e-5, 1e-4, 3e-4, 1e-3, 3e-3, 0.01, 0.03, 0.1);

    private static final Answer.Stated NOTHING_STATED = new Answer.Stated(0, 0, List.of());

    private static final Answer.Rise OF_AREAS = new Answer.Rise((at, area) -> area, "m²");
    private static final Answer.Rise OF_VOLUMES = new Answer.Rise((at, volume) -> volume, "m³/rev");
    private static final Answer.Rise OF_FLOWS = new Answer.Rise((speed, volume) -> speed * volume, "m³/s");
    private static final Answer.Rise OF_PULSES = new Answer.Rise((flow, volume) -> flow / volume, "pulse/s");

    private static final Answer.Words VOLUMES =
            new Answer.Words("a function", at -> Answer.number(at) + " m² open", "m³/rev");

    private Answers() {}

    private static DoubleUnaryOperator pumped(Serializable output) {
        return ((PumpOutput) output).volume()::cubicMetersPerRevolution;
    }

    private static DoubleUnaryOperator metered(Serializable output) {
        return ((PulseOutput) output).volume()::cubicMetersPerPulse;
    }

    static Answer of(ConveyorType type, Parameters given) {
        SweptVolume volume = type.sweptVolume(given);
        return new Answer(
                volume,
                f -> ((SweptVolume) f)::cubicMetersPerRevolution,
                OPEN_AREAS,
                NOTHING_STATED,
                OF_VOLUMES,
                VOLUMES);
    }

    static Answer of(GateType type, Parameters given) {
        GateShape shape = type.shape(given);
        if (shape instanceof GateShape.Adjustable adjustable) {
            return of(adjustable);
        }
        Answer.Words words =
                new Answer.Words(String.valueOf(shape), at -> Setting.none().toString(), "m²");
        return new Answer(shape, s -> at -> areaOf((GateShape) s), List.of(0.0), NOTHING_STATED, OF_AREAS, words);
    }

    private static double areaOf(GateShape shape) {
        return shape instanceof GateShape.Fixed fixed ? Amounts.si(Area.class, fixed.area()) : 0;
    }

    private static Answer of(GateShape.Adjustable shape) {
        double lowest = shape.lowest().si();
        double closed = shape.closed().map(Setting::si).orElse(Double.NEGATIVE_INFINITY);
        List<Double> points = DoubleStream.concat(
                        between(lowest, shape.highest().si()), DoubleStream.of(Math.max(closed, lowest)))
                .sorted()
                .boxed()
                .toList();
        int closedPoints =
                (int) points.stream().filter(point -> point <= closed).count();
        List<Answer.Limit> limits = new ArrayList<>();
        limits.add(limit("lowest setting", shape, shape.lowest()));
        limits.add(limit("highest setting", shape, shape.highest()));
        shape.closed().ifPresent(setting -> limits.add(limit("closed position", shape, setting)));
        Answer.Words words = new Answer.Words(
                shape.toString(), at -> shape.lowest().withSi(at).toString(), "m²");
        return new Answer(
                shape,
                s -> ((GateShape.Adjustable) s).area()::squareMeters,
                points,
                new Answer.Stated(closedPoints, 0, limits),
                OF_AREAS,
                words);
    }

    private static Answer.Limit limit(String name, GateShape.Adjustable shape, Setting setting) {
        return new Answer.Limit(
                name, setting.toString(), () -> shape.area().squareMeters(shape.number(written(setting))));
    }

    static Answer of(PumpType type, Parameters given) {
        PumpOutput output = type.output(given);
        if (output == null) {
            return new Answer(null, Answers::pumped, List.of(), NOTHING_STATED, OF_FLOWS, VOLUMES);
        }
        Quantity<RotationalSpeed> lowest = output.lowestSpeed();
        Optional<Quantity<RotationalSpeed>> highest = output.highestSpeed();
        List<Answer.Limit> limits = limits(
                RotationalSpeed.class,
                "speed",
                lowest,
                highest,
                speed -> output.volume().cubicMetersPerRevolution(output.number(speed)));
        return new Answer(
                output,
                Answers::pumped,
                points(RotationalSpeed.class, lowest, highest, SPEEDS),
                new Answer.Stated(0, Amounts.si(VolumePerRevolution.class, output.displacement()), limits),
                OF_FLOWS,
                new Answer.Words(output.toString(), at -> text(at, lowest), "m³/rev"));
    }

    static Answer of(FlowMeterType type, Parameters given) {
        PulseOutput output = type.output(given);
        if (output == null) {
            return new Answer(null, Answers::metered, List.of(), NOTHING_STATED, OF_PULSES, VOLUMES);
        }
        Quantity<FlowRate> lowest = output.lowestFlow();
        Optional<Quantity<FlowRate>> highest = output.highestFlow();
        List<Answer.Limit> limits = limits(
                FlowRate.class,
                "flow",
                lowest,
                highest,
                flow -> output.volume().cubicMetersPerPulse(output.number(flow)));
        return new Answer(
                output,
                Answers::metered,
                points(FlowRate.class, lowest, highest, FLOWS),
                new Answer.Stated(0, Amounts.si(VolumePerPulse.class, output.nominal()), limits),
                OF_PULSES,
                new Answer.Words(output.toString(), at -> text(at, lowest), "m³/pulse"));
    }

    private static <Q extends Quantity<Q>> List<Answer.Limit> limits(
            Class<Q> kind, String what, Quantity<Q> lowest, Optional<Quantity<Q>> highest, Consumer<Quantity<Q>> ask) {
        List<Answer.Limit> limits = new ArrayList<>();
        limits.add(new Answer.Limit("lowest " + what, Amounts.format(lowest), () -> ask.accept(written(kind, lowest))));
        highest.ifPresent(most -> limits.add(
                new Answer.Limit("highest " + what, Amounts.format(most), () -> ask.accept(written(kind, most)))));
        return limits;
    }

    /** From the lowest to the highest; if there is no highest, as far beyond the lowest as the usual points go. */
    private static <Q extends Quantity<Q>> List<Double> points(
            Class<Q> kind, Quantity<Q> lowest, Optional<Quantity<Q>> highest, List<Double> usual) {
        double low = Amounts.si(kind, lowest);
        return highest.map(most -> between(low, Amounts.si(kind, most)))
                .orElseGet(() -> usual.stream().mapToDouble(beyond -> low + beyond))
                .boxed()
                .toList();
    }

    private static DoubleStream between(double lowest, double highest) {
        return DoubleStream.concat(
                IntStream.range(0, POINTS)
                        .mapToDouble(i -> Math.min(highest, lowest + (highest - lowest) * i / (POINTS - 1.0))),
                DoubleStream.of(highest));
    }

    private static <Q extends Quantity<Q>> String text(double si, Quantity<Q> like) {
        try {
            return Amounts.format(Amounts.ofSi(si, like.getUnit()));
        } catch (InvalidInputException e) {
            // Near the largest number the way to SI units and back overflows.
            return si + " in SI units";
        }
    }

    /** As a document holds it: written and read again. */
    private static Setting written(Setting setting) {
        return Setting.of(
                Amounts.parseAny(setting.quantity().map(Amounts::format).orElseThrow()));
    }

    private static <Q extends Quantity<Q>> Quantity<Q> written(Class<Q> kind, Quantity<Q> limit) {
        return Amounts.parse(kind, Amounts.format(limit));
    }
}
