package org.gritwright.core.telemetry;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * From when on what holds for a slot: a value at a point, a curve over settings, or nothing that could be relied on. Immutable,
 * thread-safe, a value.
 *
 * @param from from when on, inclusive
 * @param slot the controller's slot, or where nobody names slots the material
 * @param held what holds from then on
 * @param errors the errors that all rows evaluated with it share; each id once
 */
public record TimelineEntry(Instant from, String slot, Held held, List<SharedError> errors) {
    /** What a slot holds. */
    public sealed interface Held permits Value, Curve, Nothing {}

    /**
     * A value at a calibration point.
     *
     * @param inForce the value that a display holds
     */
    public record Value(CalibrationInForce inForce) implements Held {
        /**
         * Checks that the value can be counted with.
         *
         * @throws InvalidInputException if the point's drive gives no pulses
         */
        public Value {
            Require.given(Value.class, inForce);
            AmountPerCount.of(inForce);
        }

        Setting setting() {
            return inForce.point().setting();
        }

        private String material() {
            return inForce.point().material().name();
        }

        private double countsPerTurn() {
            return AmountPerCount.countsPerTurn(inForce.point().metering());
        }

        /**
         * Whether a slot can hold both at a time: of one material, counted by one sensor, at two settings of one scale that rows tell
         * apart.
         */
        boolean goesBeside(Value other) {
            return material().equals(other.material())
                    && countsPerTurn() == other.countsPerTurn()
                    && setting().scale() == other.setting().scale()
                    && Math.abs(setting().si() - other.setting().si())
                            > HeldArrays.SAME
                                    * Math.max(setting().si(), other.setting().si());
        }
    }

    /**
     * A curve over settings, between its lowest and its highest caught setting.
     *
     * @param curve the curve
     */
    public record Curve(DischargeCurve curve) implements Held {
        /**
         * Checks that the curve can be counted with.
         *
         * @throws InvalidInputException if its drive gives no pulses
         */
        public Curve {
            Require.given(Curve.class, curve);
            AmountPerCount.countsPerTurn(curve.metering());
        }
    }

    /** Nothing that could be relied on: an emptied slot, or a repair after which nobody calibrated. */
    public record Nothing() implements Held {}

    /**
     * Copies the list.
     *
     * @throws InvalidInputException if the slot is blank or not the one that the value itself says, a time is beyond what milliseconds
     *     hold, or an error's id is there twice
     */
    public TimelineEntry {
        Require.given(TimelineEntry.class, from, slot, held, errors);
        Require.text("slot", slot);
        if (held instanceof Value value) {
            String said = value.inForce().slot().orElse(slot);
            Require.that(said.equals(slot), "slot", "the one that its value is held in, " + said, slot);
        }
        Times.millis("start of an entry", from);
        errors = SharedError.eachOnce(errors);
    }

    /**
     * A value from a time on, in its slot, or where it has none under its material's name.
     *
     * @param from from when on
     * @param inForce the value
     * @return the entry, without errors
     * @throws InvalidInputException if the point's drive gives no pulses
     */
    public static TimelineEntry value(Instant from, CalibrationInForce inForce) {
        Objects.requireNonNull(inForce, "inForce");
        return new TimelineEntry(
                from, inForce.slot().orElse(inForce.point().material().name()), new Value(inForce), List.of());
    }

    /**
     * A value since it was entered, as a day's record has it ({@code CalibrationRecord.inForceAfter}).
     *
     * @param inForce the value, which says since when it is held
     * @param offset the yard's offset: where only the day is known, it is held from that day's beginning on
     * @return the entry, without errors
     * @throws InvalidInputException if nobody says since when it is held, or the point's drive gives no pulses
     */
    public static TimelineEntry entered(CalibrationInForce inForce, ZoneOffset offset) {
        Objects.requireNonNull(inForce, "inForce");
        Objects.requireNonNull(offset, "offset");
        Since since = inForce.since()
                .orElseThrow(() -> new InvalidInputException(
                        "calibration in force",
                        "one that says since when it is held",
                        inForce.factor().toString()));
        return value(
                since.time()
                        .map(OffsetDateTime::toInstant)
                        .orElseGet(() -> since.day().atStartOfDay().toInstant(offset)),
                inForce);
    }

    /**
     * A curve from a time on.
     *
     * @param from from when on
     * @param slot the slot, or where nobody names slots the material
     * @param curve the curve
     * @return the entry, without errors
     * @throws InvalidInputException if the curve's drive gives no pulses, or the slot is blank
     */
    public static TimelineEntry curve(Instant from, String slot, DischargeCurve curve) {
        return new TimelineEntry(from, slot, new Curve(curve), List.of());
    }

    /**
     * Nothing to rely on from a time on.
     *
     * @param from from when on
     * @param slot the slot, or where nobody names slots the material
     * @return the entry
     * @throws InvalidInputException if the slot is blank
     */
    public static TimelineEntry nothing(Instant from, String slot) {
        return new TimelineEntry(from, slot, new Nothing(), List.of());
    }

    /**
     * The same with the errors that its rows share.
     *
     * @param shared the errors
     * @return the entry
     * @throws InvalidInputException if an id is there twice
     */
    public TimelineEntry withErrors(List<SharedError> shared) {
        return new TimelineEntry(from, slot, held, shared);
    }
}
