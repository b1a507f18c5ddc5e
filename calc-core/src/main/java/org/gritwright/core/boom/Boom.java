package org.gritwright.core.boom;

import java.io.Serializable;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidArealApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;
import org.gritwright.units.rate.LiquidRates;

/**
 * A boom: sections of nozzles that are switched on and off. What it treats, and what it gives at a pressure, is that of the sections
 * that are on.
 *
 * <p>The pressure is that at the nozzles, the same at all of them. What hoses, valves and a long pipe take off on the way from the
 * gauge is not in it. Immutable, thread-safe, a value.
 *
 * @param sections the sections, 1 to 100, each name once
 */
public record Boom(List<BoomSection> sections) implements Serializable {
    private static final int MOST = 100;

    /**
     * Checks the sections.
     *
     * @throws InvalidInputException if there is none or more than 100, or two have the same name
     */
    public Boom {
        Require.given(Boom.class, sections);
        sections = List.copyOf(Require.noMoreThan(MOST, "sections of a boom", sections));
        Require.that(!sections.isEmpty(), "sections of a boom", "one or more", sections.size());
        Set<String> names = new HashSet<>();
        for (BoomSection section : sections) {
            Require.that(names.add(section.name()), "name of a boom section", "in the boom once", section.name());
        }
    }

    /**
     * A boom.
     *
     * @param sections the sections
     * @return the boom
     * @throws InvalidInputException as for the full form
     */
    public static Boom of(BoomSection... sections) {
        return new Boom(List.of(Objects.requireNonNull(sections, "sections")));
    }

    /**
     * The same boom with one section switched.
     *
     * @param section the section's name
     * @param on whether it is on
     * @return the boom
     * @throws InvalidInputException if it has no such section
     */
    public Boom switched(String section, boolean on) {
        Objects.requireNonNull(section, "section");
        Require.that(
                sections.stream().anyMatch(own -> own.name().equals(section)),
                "boom section",
                "one of "
                        + String.join(
                                ", ", sections.stream().map(BoomSection::name).toList()),
                section);
        return new Boom(sections.stream()
                .map(own -> own.name().equals(section) ? own.switched(on) : own)
                .toList());
    }

    private Stream<BoomSection> on() {
        return sections.stream().filter(BoomSection::on);
    }

    /**
     * How many nozzles are on.
     *
     * @return their number, 0 where all sections are off
     */
    public int nozzlesOn() {
        return on().mapToInt(BoomSection::nozzles).sum();
    }

    /**
     * The lanes that are treated at once.
     *
     * @return the lanes of the sections that are on, 0 where none is
     */
    public Quantity<LaneCount> lanesTreated() {
        return Amounts.of(
                on().mapToDouble(section -> Amounts.si(LaneCount.class, section.lanes()))
                        .sum(),
                SpreadingUnits.LANE);
    }

    /**
     * The width that is treated: nozzles × spacing.
     *
     * @return that of the sections that are on, in the unit of the first section's spacing; 0 where none is
     */
    public Quantity<Length> treatedWidth() {
        Unit<Length> unit = sections.get(0).spacing().getUnit();
        return Amounts.ofSi(
                on().mapToDouble(section -> Amounts.si(Length.class, section.width()))
                        .sum(),
                unit);
    }

    /**
     * The rate per distance that a rate per lane distance comes to: × the lanes that are treated.
     *
     * @param laneRate volume per lane distance
     * @return volume per distance the truck travels
     * @throws InvalidInputException if the rate is negative, or all sections are off
     */
    public Quantity<LiquidApplicationRate> rateFromLaneRate(Quantity<LiquidLaneApplicationRate> laneRate) {
        return LiquidRates.rateFromLaneRate(laneRate, lanesTreated());
    }

    /**
     * The rate per distance that a rate per area comes to: × the width that is treated.
     *
     * @param arealRate volume per area
     * @return volume per distance the truck travels
     * @throws InvalidInputException if the rate is negative, or all sections are off
     */
    public Quantity<LiquidApplicationRate> rateFromArealRate(Quantity<LiquidArealApplicationRate> arealRate) {
        return LiquidRates.rateFromArealRate(arealRate, treatedWidth());
    }

    /**
     * The flow at a pressure.
     *
     * @param pressure the pressure at the nozzles, within those that all nozzles that are on are made for
     * @param density the density of the liquid that runs
     * @return volume per time of all nozzles that are on
     * @throws InvalidInputException if the pressure is out of its range, the density is not greater than zero, or all sections are off
     */
    public Quantity<FlowRate> flow(Quantity<Pressure> pressure, Quantity<BulkDensity> density) {
        return Amounts.ofSi(
                cubicMetersPerSecond(pascals(pressure), Nozzle.density("density of the liquid", density)),
                UnitSymbol.tradeUnit(FlowRate.class, pressure));
    }

    /**
     * What each section that is on gives at a pressure. Sections with equal nozzles share the flow by their number.
     *
     * @param pressure the pressure at the nozzles, within those that all nozzles that are on are made for
     * @param density the density of the liquid that runs
     * @return the flows, in the order of the sections
     * @throws InvalidInputException if the pressure is out of its range, the density is not greater than zero, or all sections are off
     */
    public List<SectionFlow> sectionFlows(Quantity<Pressure> pressure, Quantity<BulkDensity> density) {
        double pascals = pascals(pressure);
        double kilogramsPerCubicMeter = Nozzle.density("density of the liquid", density);
        double total = cubicMetersPerSecond(pascals, kilogramsPerCubicMeter);
        Unit<FlowRate> unit = UnitSymbol.tradeUnit(FlowRate.class, pressure);
        return on().map(section -> {
                    double flow = section.cubicMetersPerSecond(pascals, kilogramsPerCubicMeter);
                    return new SectionFlow(
                            section.name(),
                            section.nozzles(),
                            Amounts.ofSi(flow / section.nozzles(), unit),
                            Amounts.ofSi(flow, unit),
                            Amounts.ofSi(flow / total, SpreadingUnits.PERCENT));
                })
                .toList();
    }

    /**
     * The pressure that a flow needs.
     *
     * @param flow volume per time of all nozzles that are on, between those at their lowest and highest common pressure
     * @param density the density of the liquid that runs
     * @return the pressure at the nozzles
     * @throws InvalidInputException if the flow is out of its range, the density is not greater than zero, or all sections are off
     */
    public Quantity<Pressure> pressure(Quantity<FlowRate> flow, Quantity<BulkDensity> density) {
        double kilogramsPerCubicMeter = Nozzle.density("density of the liquid", density);
        Require.within(
                "flow of the boom",
                FlowRate.class,
                flow,
                Amounts.ofSi(leastCubicMetersPerSecond(kilogramsPerCubicMeter), flow.getUnit()),
                Amounts.ofSi(mostCubicMetersPerSecond(kilogramsPerCubicMeter), flow.getUnit()));
        return Amounts.ofSi(
                pascalsFor(Amounts.si(FlowRate.class, flow), kilogramsPerCubicMeter),
                UnitSymbol.tradeUnit(Pressure.class, flow));
    }

    private double pascals(Quantity<Pressure> pressure) {
        Unit<Pressure> unit = pressure.getUnit();
        return Amounts.si(
                Pressure.class,
                Require.within(
                        "nozzle pressure",
                        Pressure.class,
                        pressure,
                        Amounts.ofSi(lowestPascals(), unit),
                        Amounts.ofSi(highestPascals(), unit)));
    }

    double leastCubicMetersPerSecond(double kilogramsPerCubicMeter) {
        return cubicMetersPerSecond(lowestPascals(), kilogramsPerCubicMeter);
    }

    double mostCubicMetersPerSecond(double kilogramsPerCubicMeter) {
        return cubicMetersPerSecond(highestPascals(), kilogramsPerCubicMeter);
    }

    /** The highest of the lowest pressures. */
    private double lowestPascals() {
        return ofNozzlesOn(Nozzle::lowestPascals).max().orElseThrow(Boom::allOff);
    }

    /** The lowest of the highest pressures. */
    private double highestPascals() {
        double highest = ofNozzlesOn(Nozzle::highestPascals).min().orElseThrow(Boom::allOff);
        Require.that(
                highest >= lowestPascals(),
                "nozzles of the sections that are on",
                "made for a pressure in common",
                () -> String.join(
                        ", ",
                        on().map(section -> section.nozzle().name()).distinct().toList()));
        return highest;
    }

    private DoubleStream ofNozzlesOn(ToDoubleFunction<Nozzle> pascals) {
        return on().map(BoomSection::nozzle).mapToDouble(pascals);
    }

    private static InvalidInputException allOff() {
        return new InvalidInputException("boom", "switched on in one section or more", "off");
    }

    private double cubicMetersPerSecond(double pascals, double kilogramsPerCubicMeter) {
        return on().mapToDouble(section -> section.cubicMetersPerSecond(pascals, kilogramsPerCubicMeter))
                .sum();
    }

    /** By halving, until no double lies between: the flow rises with the pressure, by whatever tables. */
    double pascalsFor(double cubicMetersPerSecond, double kilogramsPerCubicMeter) {
        double below = lowestPascals();
        double above = highestPascals();
        for (double middle = (below + above) / 2; middle > below && middle < above; middle = (below + above) / 2) {
            if (cubicMetersPerSecond(middle, kilogramsPerCubicMeter) < cubicMetersPerSecond) {
                below = middle;
            } else {
                above = middle;
            }
        }
        return above;
    }
}
