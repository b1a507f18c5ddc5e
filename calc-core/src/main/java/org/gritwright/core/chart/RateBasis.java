package org.gritwright.core.chart;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.rate.Rates;

/**
 * What the rates of a chart are stated for: a distance of the truck's travel, a distance of lane, or an area. The type of the
 * rates follows from it, so that a rate per mile can't stand where one per lane-mile belongs. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of rate
 */
public sealed interface RateBasis<Q extends Quantity<Q>> {
    /** Mass per distance that the truck travels. */
    record PerDistance() implements RateBasis<ApplicationRate> {
        @Override
        public Class<ApplicationRate> kind() {
            return ApplicationRate.class;
        }

        @Override
        public Quantity<ApplicationRate> onTheRoad(Quantity<ApplicationRate> rate) {
            return Require.notNegative("rate", ApplicationRate.class, rate);
        }

        @Override
        public Quantity<ApplicationRate> stated(Quantity<ApplicationRate> onTheRoad, Unit<ApplicationRate> unit) {
            return RateBasis.in(unit, onTheRoad);
        }

        @Override
        public String toString() {
            return "per distance of travel";
        }
    }

    /**
     * Mass per distance of lane.
     *
     * @param lanes how many lanes are treated at once, greater than zero
     */
    record PerLane(Quantity<LaneCount> lanes) implements RateBasis<LaneApplicationRate> {
        /**
         * Checks the number.
         *
         * @throws org.gritwright.units.InvalidInputException if it isn't greater than zero
         */
        public PerLane {
            Require.positive("lanes treated", LaneCount.class, lanes);
        }

        @Override
        public Class<LaneApplicationRate> kind() {
            return LaneApplicationRate.class;
        }

        @Override
        public Quantity<ApplicationRate> onTheRoad(Quantity<LaneApplicationRate> rate) {
            return Rates.rateFromLaneRate(rate, lanes);
        }

        @Override
        public Quantity<LaneApplicationRate> stated(
                Quantity<ApplicationRate> onTheRoad, Unit<LaneApplicationRate> unit) {
            return RateBasis.in(unit, Rates.laneRateFromRate(onTheRoad, lanes));
        }

        @Override
        public String toString() {
            return "per distance of lane, treated at once: " + Amounts.format(lanes);
        }
    }

    /**
     * Mass per area.
     *
     * @param width the whole width that is treated in the pass, greater than zero
     */
    record PerArea(Quantity<Length> width) implements RateBasis<ArealApplicationRate> {
        /**
         * Checks the width.
         *
         * @throws org.gritwright.units.InvalidInputException if it isn't greater than zero
         */
        public PerArea {
            Require.positive("treated width", Length.class, width);
        }

        @Override
        public Class<ArealApplicationRate> kind() {
            return ArealApplicationRate.class;
        }

        @Override
        public Quantity<ApplicationRate> onTheRoad(Quantity<ArealApplicationRate> rate) {
            return Rates.rateFromArealRate(rate, width);
        }

        @Override
        public Quantity<ArealApplicationRate> stated(
                Quantity<ApplicationRate> onTheRoad, Unit<ArealApplicationRate> unit) {
            return RateBasis.in(unit, Rates.arealRateFromRate(onTheRoad, width));
        }

        @Override
        public String toString() {
            return "per area, on a width of " + Amounts.format(width);
        }
    }

    /**
     * Rates per distance that the truck travels.
     *
     * @return the basis
     */
    static RateBasis<ApplicationRate> perDistance() {
        return new PerDistance();
    }

    /**
     * Rates per distance of lane.
     *
     * @param lanes how many lanes are treated at once, greater than zero
     * @return the basis
     * @throws org.gritwright.units.InvalidInputException if it isn't
     */
    static RateBasis<LaneApplicationRate> perLane(Quantity<LaneCount> lanes) {
        return new PerLane(lanes);
    }

    /**
     * Rates per area.
     *
     * @param width the whole width that is treated in the pass, greater than zero
     * @return the basis
     * @throws org.gritwright.units.InvalidInputException if it isn't
     */
    static RateBasis<ArealApplicationRate> perArea(Quantity<Length> width) {
        return new PerArea(width);
    }

    private static <R extends Quantity<R>> Quantity<R> in(Unit<R> unit, Quantity<R> rate) {
        return Amounts.of(Amounts.in(rate, Objects.requireNonNull(unit, "unit")), unit);
    }

    /**
     * The kind of rate.
     *
     * @return the kind
     */
    Class<Q> kind();

    /**
     * The rate per distance that the truck travels.
     *
     * @param rate a rate of this basis, 0 or more
     * @return the rate over all that is treated at once
     * @throws org.gritwright.units.InvalidInputException if it is negative
     */
    Quantity<ApplicationRate> onTheRoad(Quantity<Q> rate);

    /**
     * A rate per distance that the truck travels, as a rate of this basis.
     *
     * @param onTheRoad the rate over all that is treated at once, 0 or more
     * @param unit the wanted unit
     * @return the rate, in that unit
     * @throws org.gritwright.units.InvalidInputException if it is negative
     */
    Quantity<Q> stated(Quantity<ApplicationRate> onTheRoad, Unit<Q> unit);
}
