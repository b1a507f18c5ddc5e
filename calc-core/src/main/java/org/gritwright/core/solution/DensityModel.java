package org.gritwright.core.solution;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.statistics.MonotoneCurve;

/**
 * The density of one salt's solutions. From its lowest temperature on by the equation of M. Laliberté, A Model for Calculating the
 * Heat Capacity of Aqueous Solutions, with Updated Density and Viscosity Data, Journal of Chemical and Engineering Data 54, 2009,
 * 1725–1760: 1 ÷ ρ = (1 − w) ÷ ρ(water) + w ÷ ρ(salt), with ρ(salt) = (c₀·w + c₁)·exp(10⁻⁶·(t + c₄)²) ÷ (w + c₂ + c₃·t). In the
 * cold by what the equation gives at that lowest temperature times how much tables say that a solution shrinks from there.
 *
 * @param c the equation's five constants
 * @param coldest the lowest temperature of the equation, in °C
 * @param mostPercent the strongest solution of the equation
 * @param saturation the strongest solution there is, if a table is known
 * @param cold how solutions shrink below that
 * @param limits how far sources differ, relative to the density
 */
record DensityModel(
        List<Double> c,
        double coldest,
        double mostPercent,
        Optional<MonotoneCurve> saturation,
        List<Column> cold,
        Limits limits) {
    /** Water's equation and the tables that this was compared with end there; the equation itself goes on. */
    private static final double WARMEST = Water.WARMEST;

    private static final double TWENTIETH = 0.05;

    /** Half the width, at or above a temperature and below it. */
    record Limits(double warm, double border, double cold) {
        double at(double celsius) {
            return celsius >= border ? warm : cold;
        }
    }

    /** From one strength to another, at one temperature. */
    record Range(double lowestPercent, double highestPercent) {}

    /** One strength of a table: densities by the negative of the temperature, so that they rise. */
    record Column(double percent, MonotoneCurve byNegativeTemperature) {
        double coldest() {
            return -byNegativeTemperature.highest();
        }

        double shrunk(double from, double to) {
            return byNegativeTemperature.at(-to) / byNegativeTemperature.at(-from);
        }
    }

    /** Where the second column ends: one strength alone is no range. */
    double coldestOfAll() {
        return cold.stream()
                .mapToDouble(Column::coldest)
                .sorted()
                .skip(1)
                .findFirst()
                .orElse(coldest);
    }

    double warmest() {
        return WARMEST;
    }

    /** What is published at a temperature between the coldest of all and the warmest: always two strengths or more. */
    Range range(double celsius) {
        if (celsius >= coldest) {
            double most = saturation
                    .map(table -> Math.min(mostPercent, Saturation.percent(table, celsius)))
                    .orElse(mostPercent);
            return new Range(0, most);
        }
        List<Column> there = covering(celsius);
        return new Range(there.get(0).percent(), there.get(there.size() - 1).percent());
    }

    private List<Column> covering(double celsius) {
        return cold.stream().filter(column -> column.coldest() <= celsius).toList();
    }

    double kilogramsPerCubicMeter(double percent, double celsius) {
        return celsius >= coldest
                ? equation(percent / 100, celsius)
                : equation(percent / 100, coldest) * shrunk(percent, celsius);
    }

    private double equation(double w, double celsius) {
        double warmth = celsius + c.get(4);
        double ofSalt =
                (c.get(0) * w + c.get(1)) * Math.exp(1e-6 * warmth * warmth) / (w + c.get(2) + c.get(3) * celsius);
        return 1 / ((1 - w) / Water.kilogramsPerCubicMeter(celsius) + w / ofSalt);
    }

    /** On a straight line between the two columns beside the strength, which is in the range and so not beyond the last. */
    private double shrunk(double percent, double celsius) {
        List<Column> there = covering(celsius);
        int above = 1;
        while (there.get(above).percent() < percent) {
            above++;
        }
        Column weaker = there.get(above - 1);
        Column stronger = there.get(above);
        double part = (percent - weaker.percent()) / (stronger.percent() - weaker.percent());
        return (1 - part) * weaker.shrunk(coldest, celsius) + part * stronger.shrunk(coldest, celsius);
    }

    /** The change of the density per percent, over a tenth of it or what of that lies within the range. */
    double slope(double percent, double celsius) {
        Range range = range(celsius);
        double below = Math.max(range.lowestPercent(), percent - TWENTIETH);
        double above = Math.min(range.highestPercent(), percent + TWENTIETH);
        return (kilogramsPerCubicMeter(above, celsius) - kilogramsPerCubicMeter(below, celsius)) / (above - below);
    }
}
