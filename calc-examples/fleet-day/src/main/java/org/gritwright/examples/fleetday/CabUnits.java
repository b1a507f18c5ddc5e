package org.gritwright.examples.fleetday;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Speed;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.ApplicationRate;

/**
 * The round rates and road speeds of a truck's charts, in its own units: what roads ask for lies between them (common practice, no
 * source), and what is asked for itself is among the rates.
 *
 * @param speedUnit miles or kilometers per hour
 * @param rateUnit pounds per mile or kilograms per kilometer
 */
record CabUnits(Unit<Speed> speedUnit, Unit<ApplicationRate> rateUnit) {
    private static final int MOST_ROUND = 7;

    /** Nearer to each other than this part, two rates are one that was converted. */
    private static final double ROUNDING = 1e-9;

    /** @param like a quantity in the truck's own units */
    static CabUnits of(Quantity<?> like) {
        return new CabUnits(UnitSymbol.tradeUnit(Speed.class, like), UnitSymbol.tradeUnit(ApplicationRate.class, like));
    }

    private boolean isMetric() {
        return speedUnit.equals(SpreadingUnits.KILOMETER_PER_HOUR);
    }

    List<Quantity<Speed>> speeds() {
        return round(isMetric() ? 10 : 5, 1, isMetric() ? 7 : 9)
                .map(speed -> Amounts.of(speed, speedUnit))
                .toList();
    }

    /** What is asked for in the truck's unit, and round rates from half the least to half as much again as the most. */
    List<Quantity<ApplicationRate>> rates(List<Quantity<ApplicationRate>> wanted) {
        BigDecimal step = BigDecimal.valueOf(isMetric() ? 20 : 50);
        List<Double> asked =
                wanted.stream().map(rate -> Amounts.in(rate, rateUnit)).sorted().toList();
        if (asked.isEmpty()) {
            return inUnit(round(step.doubleValue(), 2, 10));
        }
        double least = asked.get(0);
        double most = asked.get(asked.size() - 1);
        while ((1.5 * most - 0.5 * least) / step.doubleValue() > MOST_ROUND) {
            step = step.multiply(BigDecimal.valueOf(2));
        }
        long first = Math.max(
                1,
                BigDecimal.valueOf(0.5 * least)
                        .divide(step, 0, RoundingMode.FLOOR)
                        .longValueExact());
        long last = BigDecimal.valueOf(1.5 * most)
                .divide(step, 0, RoundingMode.FLOOR)
                .longValueExact();
        List<Double> rates = new ArrayList<>();
        Stream.concat(asked.stream(), round(step.doubleValue(), first, last))
                .sorted(Comparator.naturalOrder())
                // What is asked for twice, or is round anyway, stands there once.
                .filter(rate -> rates.isEmpty() || rate > (1 + ROUNDING) * rates.get(rates.size() - 1))
                .forEach(rates::add);
        return inUnit(rates.stream());
    }

    private List<Quantity<ApplicationRate>> inUnit(Stream<Double> rates) {
        return rates.map(rate -> Amounts.of(rate, rateUnit)).toList();
    }

    private static Stream<Double> round(double step, long first, long last) {
        return LongStream.rangeClosed(first, last).mapToObj(i -> i * step);
    }

    String rateSymbol() {
        return UnitSymbol.of(rateUnit).symbol();
    }

    String speedSymbol() {
        return UnitSymbol.of(speedUnit).symbol();
    }
}
