package org.gritwright.core.boom;

import java.io.Serializable;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import org.gritwright.core.statistics.MonotoneCurve;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.rate.LiquidRates;

/**
 * A nozzle's flow by pressure and by the liquid's density. Use it for streams and fans alike: which pattern a nozzle makes, and
 * whether that is right for the work, is not in it.
 *
 * <p>Of one point, the flow goes with the square root of the pressure, Q = Q₀ · √(p ÷ p₀), as through any orifice. Of several, it
 * runs between them along straight lines over the square root of the pressure, which is that same law where they obey it. Either
 * way only from the lowest to the highest pressure: outside nothing is guessed, because below its lowest pressure a nozzle loses
 * its pattern and above its highest it makes mist. At the same pressure a liquid of another density than the one that the nozzle
 * was rated with flows by √(ρ₀ ÷ ρ), a heavier one less. A liquid's viscosity is not in it: a cold, thick one flows differently.
 *
 * <p>Results are in the trade's units of the system that the argument was given in. Immutable, thread-safe, a value.
 *
 * @param name what people know it by, such as the maker's number
 * @param points what it gives at which pressure, in the order of the pressures, whatever the order was; the flow rises with it
 * @param ratedWith the density of the liquid that the points are for, which is water in most catalogs
 * @param lowest the lowest pressure that it is made for; that of the first point or more where there are several
 * @param highest the highest pressure that it is made for; that of the last point or less where there are several
 */
public record Nozzle(
        String name,
        List<NozzlePoint> points,
        Quantity<BulkDensity> ratedWith,
        Quantity<Pressure> lowest,
        Quantity<Pressure> highest)
        implements Serializable {
    private static final int MOST = 1000;

    /** More nozzles than these are a slip. */
    private static final int MOST_NOZZLES = 100_000;

    /**
     * Puts the points in order and checks them.
     *
     * @throws InvalidInputException if there is no point or more than 1000, pressure or flow don't rise from one to the next, the
     *     density is not greater than zero, or a pressure is out of its range
     */
    public Nozzle {
        Require.given(Nozzle.class, name, points, ratedWith, lowest, highest);
        Require.text("name of a nozzle", name);
        List<NozzlePoint> given = Require.noMoreThan(MOST, "points of a nozzle", points);
        Require.that(!given.isEmpty(), "points of a nozzle", "one or more", given.size());
        points = given.stream()
                .sorted(Comparator.comparingDouble(NozzlePoint::pascals))
                .toList();
        for (int i = 1; i < points.size(); i++) {
            requireRise(points.get(i - 1), points.get(i));
        }
        density("density of the liquid that the nozzle is rated with", ratedWith);
        Require.positive("lowest nozzle pressure", Pressure.class, lowest);
        Require.atLeast("highest nozzle pressure", Pressure.class, highest, lowest);
        if (points.size() > 1) {
            Require.atLeast(
                    "lowest nozzle pressure",
                    Pressure.class,
                    lowest,
                    points.get(0).pressure());
            Require.within(
                    "highest nozzle pressure",
                    Pressure.class,
                    highest,
                    lowest,
                    points.get(points.size() - 1).pressure());
        }
    }

    private static void requireRise(NozzlePoint below, NozzlePoint above) {
        Require.that(
                above.pascals() > below.pascals(), "nozzle pressure", "stated once, with one flow", above.pressure());
        Require.that(
                above.cubicMetersPerSecond() > below.cubicMetersPerSecond(),
                "nozzle flow at " + Amounts.format(above.pressure()),
                "greater than the " + Amounts.format(below.flow()) + " at " + Amounts.format(below.pressure()),
                above.flow());
    }

    /**
     * A nozzle that is rated at one pressure.
     *
     * @param name what people know it by
     * @param pressure the pressure that it is rated at
     * @param flow its flow there
     * @param ratedWith the density of the liquid that it is rated with
     * @param lowest the lowest pressure that it is made for
     * @param highest the highest pressure that it is made for
     * @return the nozzle
     * @throws InvalidInputException as for the full form
     */
    public static Nozzle rated(
            String name,
            Quantity<Pressure> pressure,
            Quantity<FlowRate> flow,
            Quantity<BulkDensity> ratedWith,
            Quantity<Pressure> lowest,
            Quantity<Pressure> highest) {
        return new Nozzle(name, List.of(new NozzlePoint(pressure, flow)), ratedWith, lowest, highest);
    }

    /**
     * A nozzle by a table, good from its lowest to its highest pressure.
     *
     * @param name what people know it by
     * @param points the table's lines, or measurements, two or more in any order
     * @param ratedWith the density of the liquid that they are for
     * @return the nozzle
     * @throws InvalidInputException if there are fewer than two, and as for the full form
     */
    public static Nozzle table(String name, List<NozzlePoint> points, Quantity<BulkDensity> ratedWith) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(ratedWith, "ratedWith");
        List<NozzlePoint> given = Require.noMoreThan(MOST, "points of a nozzle", points);
        Require.that(given.size() > 1, "points of a nozzle's table", "two or more", given.size());
        List<Quantity<Pressure>> pressures = given.stream()
                .sorted(Comparator.comparingDouble(NozzlePoint::pascals))
                .map(NozzlePoint::pressure)
                .toList();
        return new Nozzle(name, given, ratedWith, pressures.get(0), pressures.get(pressures.size() - 1));
    }

    /**
     * The flow at a pressure.
     *
     * @param pressure the pressure at the nozzle above that of the air, within those that it is made for
     * @param density the density of the liquid that runs
     * @return volume per time; a nozzle of 0.40 gal/min at 40 psi gives 0.489898 gal/min of the same liquid at 60 psi
     * @throws InvalidInputException if the pressure is out of its range, or the density is not greater than zero
     */
    public Quantity<FlowRate> flow(Quantity<Pressure> pressure, Quantity<BulkDensity> density) {
        double pascals = Amounts.si(
                Pressure.class, Require.within("nozzle pressure", Pressure.class, pressure, lowest, highest));
        return Amounts.ofSi(
                cubicMetersPerSecond(pascals, density("density of the liquid", density)),
                UnitSymbol.tradeUnit(FlowRate.class, pressure));
    }

    /**
     * The pressure at which a flow runs.
     *
     * @param flow volume per time, between those at the lowest and the highest pressure
     * @param density the density of the liquid that runs
     * @return the pressure at the nozzle above that of the air
     * @throws InvalidInputException if the flow is out of its range, or the density is not greater than zero
     */
    public Quantity<Pressure> pressure(Quantity<FlowRate> flow, Quantity<BulkDensity> density) {
        double kilogramsPerCubicMeter = density("density of the liquid", density);
        Require.within(
                "flow of nozzle " + name,
                FlowRate.class,
                flow,
                Amounts.ofSi(cubicMetersPerSecond(lowestPascals(), kilogramsPerCubicMeter), flow.getUnit()),
                Amounts.ofSi(cubicMetersPerSecond(highestPascals(), kilogramsPerCubicMeter), flow.getUnit()));
        return Amounts.ofSi(
                pascals(Amounts.si(FlowRate.class, flow) / lighterBy(kilogramsPerCubicMeter)),
                UnitSymbol.tradeUnit(Pressure.class, flow));
    }

    /**
     * By what a wanted flow of a liquid is multiplied to find the same nozzle and pressure in a table for the liquid that it is rated
     * with: √(ρ ÷ ρ₀), 1.10 for 10.0 lb/gal beside water of 8.34 lb/gal (University of Nebraska, CropWatch, 2016).
     *
     * @param density the density of the liquid that runs
     * @return a ratio, above 1 for a heavier liquid
     * @throws InvalidInputException if the density is not greater than zero
     */
    public Quantity<Dimensionless> densityFactor(Quantity<BulkDensity> density) {
        return Amounts.of(1 / lighterBy(density("density of the liquid", density)), SpreadingUnits.ONE);
    }

    /**
     * How many of these nozzles lay a rate at every speed from one to another and keep to their pressures.
     *
     * @param rate volume per distance that all together lay, greater than zero
     * @param slowest the lowest road speed, greater than zero
     * @param fastest the highest road speed, not below the lowest
     * @param density the density of the liquid
     * @return from how many to how many
     * @throws InvalidInputException if a value is out of its range, or more than 100 000 nozzles were needed
     */
    public NozzleCounts countsFor(
            Quantity<LiquidApplicationRate> rate,
            Quantity<Speed> slowest,
            Quantity<Speed> fastest,
            Quantity<BulkDensity> density) {
        Require.positive("rate", LiquidApplicationRate.class, rate);
        Require.positive("lowest road speed", Speed.class, slowest);
        Require.atLeast("highest road speed", Speed.class, fastest, slowest);
        double kilogramsPerCubicMeter = density("density of the liquid", density);
        double most = flowOf(rate, slowest) / cubicMetersPerSecond(lowestPascals(), kilogramsPerCubicMeter);
        double fewest = flowOf(rate, fastest) / cubicMetersPerSecond(highestPascals(), kilogramsPerCubicMeter);
        Require.that(
                Math.max(fewest, most) <= MOST_NOZZLES, "nozzles for this rate", "at most " + MOST_NOZZLES, "more");
        return new NozzleCounts((int) Math.ceil(unrounded(fewest)), (int) Math.floor(unrounded(most)));
    }

    private static double flowOf(Quantity<LiquidApplicationRate> rate, Quantity<Speed> speed) {
        return Amounts.si(FlowRate.class, LiquidRates.flowFromRate(rate, speed));
    }

    /** 11.999999999999998 nozzles are 12. */
    private static double unrounded(double number) {
        double nearest = Math.rint(number);
        return Comparison.isAbove(Math.abs(number - nearest), 0, number) ? number : nearest;
    }

    static double density(String field, Quantity<BulkDensity> density) {
        return Amounts.si(BulkDensity.class, Require.positive(field, BulkDensity.class, density));
    }

    double lowestPascals() {
        return Amounts.si(Pressure.class, lowest);
    }

    double highestPascals() {
        return Amounts.si(Pressure.class, highest);
    }

    /** √(ρ₀ ÷ ρ). */
    private double lighterBy(double kilogramsPerCubicMeter) {
        return Math.sqrt(Amounts.si(BulkDensity.class, ratedWith) / kilogramsPerCubicMeter);
    }

    double cubicMetersPerSecond(double pascals, double kilogramsPerCubicMeter) {
        NozzlePoint first = points.get(0);
        double rated = points.size() == 1
                ? first.cubicMetersPerSecond() * Math.sqrt(pascals / first.pascals())
                : curve().at(Math.sqrt(Math.max(
                        first.pascals(),
                        Math.min(pascals, points.get(points.size() - 1).pascals()))));
        return rated * lighterBy(kilogramsPerCubicMeter);
    }

    /** Where the liquid that the nozzle is rated with flows so. */
    private double pascals(double rated) {
        NozzlePoint first = points.get(0);
        if (points.size() == 1) {
            double ratio = rated / first.cubicMetersPerSecond();
            return first.pascals() * ratio * ratio;
        }
        NozzlePoint last = points.get(points.size() - 1);
        double root = curve().where(
                        Math.max(first.cubicMetersPerSecond(), Math.min(rated, last.cubicMetersPerSecond())))
                .orElseThrow()
                .lowest();
        return root * root;
    }

    /** Flow over the square root of the pressure. */
    private MonotoneCurve curve() {
        return MonotoneCurve.straight(
                points.stream().mapToDouble(point -> Math.sqrt(point.pascals())).toArray(),
                points.stream().mapToDouble(NozzlePoint::cubicMetersPerSecond).toArray());
    }
}
