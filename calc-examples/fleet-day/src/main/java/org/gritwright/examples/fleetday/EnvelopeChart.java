package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.Demand;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.envelope.Limit;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.ApplicationRate;

/** Road speed across, rate up: what the conveyor holds as a region, what is asked for as numbered lines and marks in it or out of it. */
final class EnvelopeChart {
    private static final int WIDTH = 440;
    private static final int HEIGHT = 300;
    private static final int SAMPLES = 120;

    /** Space beyond what is asked for. */
    private static final double BEYOND = 1.15;

    /** Where nothing is asked for, the scale ends at what is held at a third of its speeds. */
    private static final double A_THIRD = 1 / 3.0;

    /** As fast as trucks spread, at the least (common practice, no source). */
    private static final Quantity<Speed> FAST = Amounts.of(45, SpreadingUnits.MILE_PER_HOUR);

    private final Envelope envelope;
    private final List<Demand> asked;
    private final Unit<Speed> speedUnit;
    private final Unit<ApplicationRate> rateUnit;
    private final double fastest;
    private final double most;

    /** @param asked what is asked for, in the order of its numbers */
    EnvelopeChart(Envelope envelope, List<Demand> asked) {
        Quantity<?> like = envelope.discharge().value();
        this.envelope = envelope;
        this.asked = asked;
        this.speedUnit = UnitSymbol.tradeUnit(Speed.class, like);
        this.rateUnit = UnitSymbol.tradeUnit(ApplicationRate.class, like);
        this.fastest = Stream.concat(
                        Stream.of(Amounts.in(FAST, speedUnit)),
                        asked.stream().map(one -> BEYOND * speed(one.fastest())))
                .max(Comparator.naturalOrder())
                .orElseThrow();
        this.most = asked.stream()
                .map(one -> BEYOND * rate(one.rate()))
                .max(Comparator.naturalOrder())
                .orElseGet(() -> highest(A_THIRD * fastest));
    }

    private double speed(Quantity<Speed> speed) {
        return Amounts.in(speed, speedUnit);
    }

    private double rate(Quantity<ApplicationRate> rate) {
        return Amounts.in(rate, rateUnit);
    }

    private double highest(double speed) {
        return rate(
                envelope.ratesAt(Amounts.of(speed, speedUnit)).highest().value().value());
    }

    private double lowest(double speed) {
        return envelope.ratesAt(Amounts.of(speed, speedUnit))
                .lowest()
                .map(bound -> rate(bound.value().value()))
                .orElse(0.0);
    }

    Picture picture() {
        Plot.Span ys = new Plot.Span(0, most);
        Plot plot = new Plot(
                new Plot.Span(32 + Plot.widthOfLabels(ys), WIDTH - 16.0),
                new Plot.Span(HEIGHT - 48.0, 10),
                new Plot.Span(0, fastest),
                ys);
        List<Double> speeds = IntStream.rangeClosed(1, SAMPLES)
                .mapToObj(i -> fastest * i / SAMPLES)
                // Where what is held begins above the picture, or where nothing is held, there is nothing to draw.
                .filter(v -> lowest(v) < Math.min(most, highest(v)))
                .toList();
        if (!speeds.isEmpty()) {
            plot.band("band", speeds, v -> v, this::lowest, v -> Math.min(most, highest(v)));
            plot.line("solid", speeds, v -> v, this::lowest);
            // The upper edge where it is in the picture, not where the picture ends.
            List<Double> upper = speeds.stream().filter(v -> highest(v) <= most).toList();
            if (!upper.isEmpty()) {
                plot.line("solid", upper, v -> v, this::highest);
            }
        }
        plot.xAxis(Plot::text);
        plot.xTitle("road speed, " + UnitSymbol.of(speedUnit).symbol());
        plot.yAxis("rate, " + UnitSymbol.of(rateUnit).symbol());
        for (int i = 0; i < asked.size(); i++) {
            asked(plot, asked.get(i), String.valueOf(i + 1));
        }
        return Picture.of(
                WIDTH,
                HEIGHT,
                "Chart of the rates that the conveyor holds, by road speed, with " + Words.count(asked.size(), "thing")
                        + " asked for. The table gives the numbers.",
                plot);
    }

    /** A line of speeds at a rate; what isn't held has crosses for ends, so that it is seen without color. */
    private void asked(Plot plot, Demand one, String number) {
        double rate = rate(one.rate());
        plot.line("stroke", speed(one.slowest()), rate, speed(one.fastest()), rate);
        for (Quantity<Speed> end : ends(one)) {
            boolean isHeld = envelope.deliveredAt(one.rate(), end).limit().isEmpty();
            plot.mark(isHeld ? Plot.Mark.CIRCLE : Plot.Mark.CROSS, speed(end), rate);
        }
        plot.above(speed(one.fastest()), rate, number);
    }

    static List<Quantity<Speed>> ends(Demand one) {
        List<Quantity<Speed>> ends = new ArrayList<>(List.of(one.slowest()));
        if (Amounts.si(Speed.class, one.fastest()) > Amounts.si(Speed.class, one.slowest())) {
            ends.add(one.fastest());
        }
        return ends;
    }

    /** Why a rate ends, in a few words. */
    static String words(Limit limit) {
        return switch (limit) {
            case SLOWEST_STEADY_SHAFT -> "no steady shaft below";
            case FASTEST_SHAFT -> "conveyor at its fastest";
            case ENGINE_SPEED -> "pump at its most";
            case GRAIN_FLOW -> "gate at its most";
            case LOWEST_NOZZLE_PRESSURE -> "nozzles at their lowest";
            case HIGHEST_NOZZLE_PRESSURE -> "nozzles at their highest";
            case LEAST_PUMP_FLOW -> "liquid pump at its least";
            case MOST_PUMP_FLOW -> "liquid pump at its most";
            case LEAST_METER_FLOW -> "flow meter at its least";
            case MOST_METER_FLOW -> "flow meter at its most";
        };
    }
}
