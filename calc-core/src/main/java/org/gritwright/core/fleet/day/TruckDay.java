package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.core.curve.CurveModel;

/**
 * One truck's day as it was written down. Nothing but presence is checked here: what can't be computed makes this one truck's
 * assessment a refusal and doesn't stop the others. Immutable, thread-safe, a value.
 *
 * @param id the truck's id, unique in the fleet
 * @param spreader what stands on it
 * @param curveModel the model of the discharge curve over several settings; none to have it chosen by test
 * @param inForce the calibrations in force when the day began
 * @param changes repairs and other changes
 * @param calibrationCatches calibration catches
 * @param verificationCatches verification catches
 * @param roadSpeed the check of the road speed
 * @param notes remarks
 */
public record TruckDay(
        String id,
        SpreaderEntry spreader,
        Optional<CurveModel> curveModel,
        List<InForceEntry> inForce,
        List<ChangeEntry> changes,
        List<CalibrationCatchEntry> calibrationCatches,
        List<VerificationCatchEntry> verificationCatches,
        Optional<RoadSpeedEntry> roadSpeed,
        Optional<String> notes) {

    /** Copies the lists. */
    public TruckDay {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(spreader, "spreader");
        Objects.requireNonNull(curveModel, "curveModel");
        inForce = List.copyOf(inForce);
        changes = List.copyOf(changes);
        calibrationCatches = List.copyOf(calibrationCatches);
        verificationCatches = List.copyOf(verificationCatches);
        Objects.requireNonNull(roadSpeed, "roadSpeed");
        Objects.requireNonNull(notes, "notes");
    }

    /**
     * Begins a truck's day on which nothing is written down yet but what stands on the truck.
     *
     * @param id the truck's id
     * @param spreader what stands on it
     * @return a builder
     */
    public static Builder builder(String id, SpreaderEntry spreader) {
        return new Builder(id, spreader);
    }

    /**
     * Begins another day with everything that this one has.
     *
     * @return a builder
     */
    public Builder toBuilder() {
        Builder builder = new Builder(id, spreader);
        builder.curveModel = curveModel;
        builder.inForce = inForce;
        builder.changes = changes;
        builder.calibrationCatches = calibrationCatches;
        builder.verificationCatches = verificationCatches;
        builder.roadSpeed = roadSpeed;
        builder.notes = notes;
        return builder;
    }

    /** Collects what is written down of a truck's day. Not thread-safe; the day it builds is. */
    public static final class Builder {
        private String id;
        private SpreaderEntry spreader;
        private Optional<CurveModel> curveModel = Optional.empty();
        private List<InForceEntry> inForce = List.of();
        private List<ChangeEntry> changes = List.of();
        private List<CalibrationCatchEntry> calibrationCatches = List.of();
        private List<VerificationCatchEntry> verificationCatches = List.of();
        private Optional<RoadSpeedEntry> roadSpeed = Optional.empty();
        private Optional<String> notes = Optional.empty();

        private Builder(String id, SpreaderEntry spreader) {
            this.id = id;
            this.spreader = spreader;
        }

        /**
         * Another id.
         *
         * @param other the truck's id
         * @return this builder
         */
        public Builder id(String other) {
            this.id = other;
            return this;
        }

        /**
         * Another spreader.
         *
         * @param other what stands on the truck
         * @return this builder
         */
        public Builder spreader(SpreaderEntry other) {
            this.spreader = other;
            return this;
        }

        /**
         * The model of the discharge curve.
         *
         * @param model the model
         * @return this builder
         */
        public Builder curveModel(CurveModel model) {
            this.curveModel = Optional.of(model);
            return this;
        }

        /**
         * The calibrations in force, in place of those before.
         *
         * @param entries the calibrations in force when the day began
         * @return this builder
         */
        public Builder inForce(List<InForceEntry> entries) {
            this.inForce = entries;
            return this;
        }

        /**
         * The changes, in place of those before.
         *
         * @param entries repairs and other changes
         * @return this builder
         */
        public Builder changes(List<ChangeEntry> entries) {
            this.changes = entries;
            return this;
        }

        /**
         * The calibration catches, in place of those before.
         *
         * @param entries the catches
         * @return this builder
         */
        public Builder calibrationCatches(List<CalibrationCatchEntry> entries) {
            this.calibrationCatches = entries;
            return this;
        }

        /**
         * The verification catches, in place of those before.
         *
         * @param entries the catches
         * @return this builder
         */
        public Builder verificationCatches(List<VerificationCatchEntry> entries) {
            this.verificationCatches = entries;
            return this;
        }

        /**
         * The check of the road speed.
         *
         * @param check the check
         * @return this builder
         */
        public Builder roadSpeed(RoadSpeedEntry check) {
            this.roadSpeed = Optional.of(check);
            return this;
        }

        /**
         * Remarks.
         *
         * @param text the remarks
         * @return this builder
         */
        public Builder notes(String text) {
            this.notes = Optional.of(text);
            return this;
        }

        /**
         * The day.
         *
         * @return the truck's day
         */
        public TruckDay build() {
            return new TruckDay(
                    id,
                    spreader,
                    curveModel,
                    inForce,
                    changes,
                    calibrationCatches,
                    verificationCatches,
                    roadSpeed,
                    notes);
        }
    }
}
