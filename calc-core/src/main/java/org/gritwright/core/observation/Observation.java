package org.gritwright.core.observation;

import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.weighing.Caught;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.CaughtVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;

/**
 * One catch as it was made: when, by whom, at which calibration point, what was caught, what was counted, and under which
 * conditions. A calibration catch and a verification catch are observations with a purpose. Immutable, thread-safe, a value.
 *
 * @param at when
 * @param by who was at the controls; none if nobody says
 * @param point the calibration point
 * @param caught what was caught
 * @param counted what was counted meanwhile; none if nothing was
 * @param conditions what else was written down
 */
public record Observation(
        OffsetDateTime at,
        Optional<String> by,
        CalibrationPoint point,
        Caught caught,
        Optional<ShaftCount> counted,
        Conditions conditions) {

    /**
     * Checks that the count goes with the drive, and the amount with the material.
     *
     * @throws org.gritwright.units.InvalidInputException if pulses were counted and the drive has no sensor, a control
     *     setting isn't one of the drive's, or a volume was caught of a granular material or a mere mass of a liquid
     */
    public Observation {
        Require.given(Observation.class, at, by, point, caught, counted, conditions);
        boolean isLiquid = point.material().isLiquid();
        if (isLiquid != caught instanceof CaughtVolume) {
            throw new InvalidInputException(
                    "caught amount",
                    isLiquid
                            ? "a volume, or a mass with the density, as "
                                    + point.material().name() + " is a liquid"
                            : "a mass, as " + point.material().name() + " is granular",
                    Amounts.format(caught.total()));
        }
        counted.filter(count -> !count.isInPulses() && !point.metering().hasShaft())
                .ifPresent(count -> {
                    throw new InvalidInputException(
                            "count", "in pulses, as a flow meter has no shaft", count.toString());
                });
        counted.ifPresent(count -> count.revolutions(point.metering().feedback()));
    }

    /**
     * A catch for which nothing was counted and nothing else was written down; add what was with {@link #counted(ShaftCount)},
     * {@link #by(String)} and {@link #under}.
     *
     * @param point the calibration point
     * @param at when
     * @param caught what was caught
     * @return the observation
     */
    public static Observation of(CalibrationPoint point, OffsetDateTime at, Caught caught) {
        return new Observation(at, Optional.empty(), point, caught, Optional.empty(), Conditions.NONE);
    }

    /**
     * The same catch with what was counted.
     *
     * @param count pulses or revolutions
     * @return the observation
     * @throws org.gritwright.units.InvalidInputException if the count doesn't go with the drive
     */
    public Observation counted(ShaftCount count) {
        return new Observation(at, by, point, caught, Optional.of(count), conditions);
    }

    /**
     * The same catch with who made it.
     *
     * @param person who was at the controls
     * @return the observation
     */
    public Observation by(String person) {
        return new Observation(at, Optional.of(person), point, caught, counted, conditions);
    }

    /**
     * The same catch with its conditions.
     *
     * @param noted what else was written down
     * @return the observation
     */
    public Observation under(Conditions noted) {
        return new Observation(at, by, point, caught, counted, noted);
    }

    /**
     * The mass of what was caught.
     *
     * @return kilograms, greater than zero; of a liquid at its stated density
     */
    public double kilograms() {
        return caught.si() * point.material().kilogramsPerAmount();
    }

    /**
     * What was caught, as a mass.
     *
     * @return as it was weighed; of a liquid at its stated density
     */
    public Quantity<Mass> mass() {
        return caught instanceof CaughtMass weighed ? weighed.total() : Amounts.ofSi(kilograms(), massUnit());
    }

    /**
     * The standard uncertainty of the rounding of all readings.
     *
     * @return kilograms; of a liquid at its stated density
     */
    public double roundingKilograms() {
        return caught.roundingSi() * point.material().kilogramsPerAmount();
    }

    /**
     * The unit in which masses of this catch are given.
     *
     * @return the unit in which it was weighed; of a liquid, pounds or kilograms as its volume is in gallons or liters
     */
    public Unit<Mass> massUnit() {
        return caught instanceof CaughtMass mass
                ? mass.total().getUnit()
                : UnitSymbol.tradeUnit(Mass.class, caught.total());
    }

    /**
     * A mass as an amount of what was caught: a mass of a granular material, a volume of a liquid.
     *
     * @param kilograms the mass
     * @return the amount, in the unit of what was caught
     */
    public Quantity<?> amount(double kilograms) {
        return Amounts.ofSi(
                kilograms / point.material().kilogramsPerAmount(),
                caught.total().getUnit());
    }

    /**
     * The revolutions of the sensed or watched shaft.
     *
     * @return revolutions, greater than zero; none if nothing was counted
     */
    public OptionalDouble revolutions() {
        return counted.isPresent()
                ? OptionalDouble.of(counted.get().revolutions(point.metering().feedback()))
                : OptionalDouble.empty();
    }

    /**
     * How uncertain the count is.
     *
     * @return standard uncertainty in revolutions; none if nothing was counted or nobody knows
     */
    public OptionalDouble uncertaintyRevolutions() {
        return counted.isPresent()
                ? counted.get().uncertaintyRevolutions(point.metering().feedback())
                : OptionalDouble.empty();
    }
}
