package org.gritwright.core.record;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.season.CommonError;
import org.gritwright.core.season.Draw;
import org.gritwright.core.season.StatedMass;
import org.gritwright.core.season.TruckSeason;
import org.gritwright.core.season.WeighedLoads;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * A truck of a season's account, by days. Immutable, thread-safe, a value.
 *
 * <p>What its parts say about each other, such as draws whose days overlap, is checked by the {@link WrittenSeason} that it is in.
 *
 * @param id what the yard calls it
 * @param calibrationError by its verifications; absent where it wasn't verified, or where that is known from elsewhere
 * @param draws what it took from which pile, by its own controller
 * @param weighedLoads what was weighed of it, possibly nothing
 */
public record WrittenTruckSeason(
        String id, Optional<CalibrationError> calibrationError, List<Drawn> draws, List<Loads> weighedLoads) {

    /** Where the number of a draw comes from. */
    public enum Source {
        /** Somebody read it off the controller. */
        CONTROLLER,
        /** It was added up from what the controller reported on the road. */
        TELEMETRY
    }

    /**
     * How far a truck's indicated mass is off by its verifications.
     *
     * @param value indicated ÷ caught − 1, above −100 %; kept in percent
     * @param standardUncertainty of the value, without what it shares; greater than 0, kept in percent
     * @param sharedError of the scale that its catches were weighed on, where others were weighed on it too
     */
    public record CalibrationError(
            Quantity<Dimensionless> value,
            Quantity<Dimensionless> standardUncertainty,
            Optional<CommonError> sharedError) {
        /**
         * Checks the numbers.
         *
         * @throws InvalidInputException if the error is −100 % or less, or its uncertainty isn't greater than 0
         */
        public CalibrationError {
            Require.given(CalibrationError.class, value, standardUncertainty, sharedError);
            double ratio = Amounts.si(Dimensionless.class, value);
            Require.that(ratio > -1, "calibration error", "above -100 %", value);
            Require.positive("standard uncertainty of a calibration error", Dimensionless.class, standardUncertainty);
            value = percent(value);
            standardUncertainty = percent(standardUncertainty);
        }

        private static Quantity<Dimensionless> percent(Quantity<Dimensionless> ratio) {
            return Amounts.of(Amounts.in(ratio, SpreadingUnits.PERCENT), SpreadingUnits.PERCENT);
        }

        /**
         * A calibration error that shares nothing, for example by a truck's history.
         *
         * @param measured indicated ÷ caught − 1, with its standard uncertainty
         * @return the error
         * @throws InvalidInputException if the error is −100 % or less, or has no standard uncertainty greater than 0
         */
        public static CalibrationError of(Measured<Dimensionless> measured) {
            Objects.requireNonNull(measured, "measured");
            return new CalibrationError(
                    measured.value(),
                    measured.standardUncertainty()
                            .orElseThrow(() -> new InvalidInputException(
                                    "standard uncertainty of a calibration error",
                                    "known and greater than 0",
                                    measured.toString())),
                    Optional.empty());
        }

        Measured<Dimensionless> measured() {
            return Measured.of(value, standardUncertainty, Double.POSITIVE_INFINITY);
        }
    }

    /**
     * What the truck took from a pile in some days, by its own controller. The days of two draws of a truck from one pile never overlap, and no
     * draw lasts beyond a survey of its pile: it is split there.
     *
     * @param pile the pile's id
     * @param from the first day
     * @param to the last day, the first one or later
     * @param indicated the indicated mass of what it took and spread, 0 or more: counts × the calibration in force; absent of a draw by telemetry
     *     whose sums are kept elsewhere
     * @param source where the number comes from
     */
    public record Drawn(String pile, LocalDate from, LocalDate to, Optional<Quantity<Mass>> indicated, Source source) {
        /**
         * Checks the values.
         *
         * @throws InvalidInputException if the id is blank, the mass is negative, or absent of a draw by the controller, or the last day
         *     lies before the first
         */
        public Drawn {
            Require.given(Drawn.class, pile, from, to, indicated, source);
            Require.text("id of a pile", pile);
            String name = pile;
            indicated.ifPresent(mass -> Draw.of(name, mass));
            Require.that(
                    indicated.isPresent() || source == Source.TELEMETRY,
                    "indicated mass of a draw from pile " + pile,
                    "stated, as the controller's is kept nowhere else",
                    "missing");
            requireDays("last day of a draw from pile " + pile, from, to);
        }

        private Quantity<Mass> stated(String truck) {
            return indicated.orElseThrow(() -> new InvalidInputException(
                    "indicated mass that truck " + truck + " drew from pile " + pile + " from " + from + " to " + to,
                    "stated, or filled in from the sums of its telemetry",
                    "missing"));
        }

        private Drawn or(String truck, BiFunction<String, Drawn, Optional<Quantity<Mass>>> sums) {
            return indicated.isPresent() ? this : new Drawn(pile, from, to, sums.apply(truck, this), source);
        }
    }

    /**
     * Loads that were weighed on one scale or by one loader in some days, beside what the truck indicated of the very same loads.
     *
     * @param from the first day
     * @param to the last day, the first one or later
     * @param weighed their mass, greater than 0, with its uncertainty; the scale's error is the one that it shares
     * @param indicated what the truck indicated of them, greater than 0
     */
    public record Loads(LocalDate from, LocalDate to, StatedMass weighed, Quantity<Mass> indicated) {
        /**
         * Checks the values.
         *
         * @throws InvalidInputException if a mass or the uncertainty isn't greater than 0, or the last day lies before the first
         */
        public Loads {
            Require.given(Loads.class, from, to, weighed, indicated);
            requireDays("last day of weighed loads", from, to);
            new WeighedLoads(weighed, indicated);
        }
    }

    /**
     * Checks the values and copies the lists.
     *
     * @throws InvalidInputException if the id is blank
     */
    public WrittenTruckSeason {
        Require.given(WrittenTruckSeason.class, id, calibrationError, draws, weighedLoads);
        Require.text("id of a truck", id);
        draws = List.copyOf(draws);
        weighedLoads = List.copyOf(weighedLoads);
    }

    private static void requireDays(String field, LocalDate from, LocalDate to) {
        Require.that(!to.isBefore(from), field, from + ", the first one, or later", to);
    }

    /** The same truck by what its verifications say; what is stated stays. */
    WrittenTruckSeason or(Optional<CalibrationError> other) {
        return new WrittenTruckSeason(id, calibrationError.or(() -> other), draws, weighedLoads);
    }

    /** The same truck, where draws that state no mass have what its telemetry's sums say. */
    WrittenTruckSeason withSums(BiFunction<String, Drawn, Optional<Quantity<Mass>>> sums) {
        return new WrittenTruckSeason(
                id,
                calibrationError,
                draws.stream().map(one -> one.or(id, sums)).toList(),
                weighedLoads);
    }

    /** The truck, its draws in the periods of the piles. */
    TruckSeason truck(Piles piles) {
        return new TruckSeason(
                id,
                calibrationError.map(CalibrationError::measured),
                calibrationError.flatMap(CalibrationError::sharedError),
                draws.stream()
                        .map(one -> new Draw(one.pile, piles.period(one.pile, one.to), one.stated(id)))
                        .toList(),
                weighedLoads.stream()
                        .map(one -> new WeighedLoads(one.weighed, one.indicated))
                        .toList());
    }

    /** In which period of a pile a day lies. */
    @FunctionalInterface
    interface Piles {
        int period(String pile, LocalDate day);
    }
}
