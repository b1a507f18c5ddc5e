package org.gritwright.core.planning;

import java.time.LocalDate;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * How the amount of a planned catch will become known, and how much may be caught: what {@link
 * org.gritwright.core.weighing.Caught} is of a catch that was made. Implementations are immutable, thread-safe values.
 */
public sealed interface PlannedAmount {
    /**
     * Whether a volume becomes known.
     *
     * @return true of a liquid; false of grains, of which a mass does
     */
    boolean isOfLiquid();

    /**
     * Grains, weighed in containers.
     *
     * @param scale the scale
     * @param weighedOn the day of weighing, as a test weight on the scale holds for its day
     * @param containers the containers
     */
    record Weighed(Scale scale, LocalDate weighedOn, Containers containers) implements PlannedAmount {
        /** Checks that all are given. */
        public Weighed {
            Require.given(Weighed.class, scale, weighedOn, containers);
        }

        @Override
        public boolean isOfLiquid() {
            return false;
        }
    }

    /**
     * A liquid, weighed in pails: mass ÷ density.
     *
     * @param weighed how it is weighed
     * @param density of the liquid at the temperature at which it is pumped, with its standard uncertainty, which all catches have in
     *     common; greater than zero
     */
    record WeighedLiquid(Weighed weighed, Measured<BulkDensity> density) implements PlannedAmount {
        /**
         * Checks the density.
         *
         * @throws InvalidInputException if it isn't greater than zero or nobody says how uncertain it is
         */
        public WeighedLiquid {
            Require.given(WeighedLiquid.class, weighed, density);
            Require.positive("density of the liquid", BulkDensity.class, density.value());
            Require.that(
                    density.standardUncertainty().isPresent(),
                    "uncertainty of the density of the liquid",
                    "given",
                    "nothing");
        }

        /**
         * Pails of a size.
         *
         * @param scale the scale
         * @param weighedOn the day of weighing
         * @param howMany how many pails may be filled in one catch, 1 or more
         * @param holds the volume that each may be filled with, greater than zero
         * @param tare the mass of each when it is empty, 0 or more
         * @param density as of the record
         * @return what they hold, at that density
         * @throws InvalidInputException if a value is out of its range
         */
        public static WeighedLiquid inPails(
                Scale scale,
                LocalDate weighedOn,
                int howMany,
                Quantity<Volume> holds,
                Quantity<Mass> tare,
                Measured<BulkDensity> density) {
            Objects.requireNonNull(scale, "scale");
            Objects.requireNonNull(weighedOn, "weighedOn");
            Objects.requireNonNull(holds, "holds");
            Objects.requireNonNull(tare, "tare");
            Objects.requireNonNull(density, "density");
            double kilograms = Amounts.si(Volume.class, Require.positive("what a pail holds", Volume.class, holds))
                    * Amounts.si(
                            BulkDensity.class,
                            Require.positive("density of the liquid", BulkDensity.class, density.value()));
            Quantity<Mass> full = Amounts.ofSi(kilograms, UnitSymbol.tradeUnit(Mass.class, density.value()));
            return new WeighedLiquid(new Weighed(scale, weighedOn, new Containers(howMany, full, tare)), density);
        }

        @Override
        public boolean isOfLiquid() {
            return true;
        }
    }

    /**
     * A liquid, read in a graduated container, fill by fill. What is wrong with its marks is wrong in every fill of every catch.
     *
     * @param container the container
     * @param howMany how many times it may be filled in one catch, 1 or more; more than once from a tub, as nobody changes containers
     *     while the liquid runs
     * @param holds the volume to which it may be filled, greater than zero and not beyond its highest mark
     */
    record Read(Graduate container, int howMany, Quantity<Volume> holds) implements PlannedAmount {
        /**
         * Checks the values.
         *
         * @throws InvalidInputException if one is out of its range
         */
        public Read {
            Require.given(Read.class, container, holds);
            Require.that(howMany >= 1, "fills of container " + container.id(), "one or more", howMany);
            String field = "what container " + container.id() + " may be filled to";
            Require.positive(field, Volume.class, holds);
            if (Comparison.isAbove(Amounts.si(Volume.class, holds), Amounts.si(Volume.class, container.capacity()))) {
                throw new InvalidInputException(
                        field,
                        "at most its highest mark, " + Amounts.format(container.capacity()),
                        Amounts.format(holds));
            }
        }

        /**
         * Fills up to a part of the container's capacity.
         *
         * @param container the container
         * @param howMany how many times it may be filled in one catch, 1 or more
         * @param part of its capacity, greater than zero and at most 100 %
         * @return the fills
         * @throws InvalidInputException if a value is out of its range
         */
        public static Read upTo(Graduate container, int howMany, Quantity<Dimensionless> part) {
            Objects.requireNonNull(container, "container");
            double ratio = Amounts.si(Dimensionless.class, part);
            Require.that(
                    ratio > 0 && ratio <= 1,
                    "part of the capacity of container " + container.id(),
                    "greater than 0 and at most 100 %",
                    part);
            return new Read(
                    container,
                    howMany,
                    Amounts.of(
                            ratio * container.capacity().getValue().doubleValue(),
                            container.capacity().getUnit()));
        }

        @Override
        public boolean isOfLiquid() {
            return true;
        }
    }
}
