package org.gritwright.core.fleet.day;

import static java.util.Optional.empty;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.units.check.Require;

/**
 * One truck's day as it was written down: one metering of it. A truck that prewets has two entries, one for its conveyor and one for
 * its pump or flow meter, each with catches and values in force of its own. Nothing but presence is checked here: what can't be computed makes this one truck's
 * assessment a refusal and doesn't stop the others. Immutable, thread-safe, a value.
 *
 * @param id the truck's id, unique in the fleet
 * @param spreader what meters the material: a conveyor with its gate, a pump or a flow meter
 * @param wets of a pump or flow meter that prewets what another spreader of the fleet lays, that spreader's id; none for one that
 *     lays its liquid alone, and for a conveyor
 * @param boom of a pump or flow meter, the boom that its liquid leaves through; none if nobody says anything, and for a conveyor
 * @param drive how its drive answers the control; none if nobody says anything
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
        MeteringEntry spreader,
        Optional<String> wets,
        Optional<BoomEntry> boom,
        Optional<DriveEntry> drive,
        Optional<CurveModel> curveModel,
        List<InForceEntry> inForce,
        List<ChangeEntry> changes,
        List<CalibrationCatchEntry> calibrationCatches,
        List<VerificationCatchEntry> verificationCatches,
        Optional<RoadSpeedEntry> roadSpeed,
        Optional<String> notes) {

    /** Copies the lists. */
    public TruckDay {
        Require.given(
                TruckDay.class,
                id,
                spreader,
                wets,
                boom,
                drive,
                curveModel,
                inForce,
                changes,
                calibrationCatches,
                verificationCatches,
                roadSpeed,
                notes);
        inForce = List.copyOf(inForce);
        changes = List.copyOf(changes);
        calibrationCatches = List.copyOf(calibrationCatches);
        verificationCatches = List.copyOf(verificationCatches);
    }

    /**
     * A truck's day on which nothing is written down yet but what stands on the truck.
     *
     * @param id the truck's id
     * @param spreader what stands on it
     * @return the day
     */
    public static TruckDay of(String id, MeteringEntry spreader) {
        return new TruckDay(
                id, spreader, empty(), empty(), empty(), empty(), List.of(), List.of(), List.of(), List.of(), empty(),
                empty());
    }

    /** What all catches have, calibration catches first. */
    Stream<CatchEntry> entries() {
        return Stream.concat(
                calibrationCatches.stream().map(CalibrationCatchEntry::entry),
                verificationCatches.stream().map(VerificationCatchEntry::entry));
    }

    /**
     * Another id.
     *
     * @param one the truck's id
     * @return the day with it
     */
    public TruckDay id(String one) {
        return new TruckDay(
                one,
                spreader,
                wets,
                boom,
                drive,
                curveModel,
                inForce,
                changes,
                calibrationCatches,
                verificationCatches,
                roadSpeed,
                notes);
    }

    /**
     * Another spreader.
     *
     * @param other what stands on the truck
     * @return the day with it
     */
    public TruckDay spreader(MeteringEntry other) {
        return new TruckDay(
                id,
                other,
                wets,
                boom,
                drive,
                curveModel,
                inForce,
                changes,
                calibrationCatches,
                verificationCatches,
                roadSpeed,
                notes);
    }

    /**
     * The spreader whose material this one wets.
     *
     * @param other the id of the spreader that lays it
     * @return the day with it
     */
    public TruckDay wetting(String other) {
        Optional<String> wetted = Optional.of(other);
        return new TruckDay(
                id,
                spreader,
                wetted,
                boom,
                drive,
                curveModel,
                inForce,
                changes,
                calibrationCatches,
                verificationCatches,
                roadSpeed,
                notes);
    }

    /**
     * The boom that the liquid leaves through.
     *
     * @param fitted how its rate is kept and what its nozzles gave
     * @return the day with it
     */
    public TruckDay boom(BoomEntry fitted) {
        Optional<BoomEntry> noted = Optional.of(fitted);
        return new TruckDay(
                id,
                spreader,
                wets,
                noted,
                drive,
                curveModel,
                inForce,
                changes,
                calibrationCatches,
                verificationCatches,
                roadSpeed,
                notes);
    }

    /**
     * How the drive answers the control.
     *
     * @param measured what was measured of it or is stated
     * @return the day with it
     */
    public TruckDay drive(DriveEntry measured) {
        Optional<DriveEntry> noted = Optional.of(measured);
        return new TruckDay(
                id,
                spreader,
                wets,
                boom,
                noted,
                curveModel,
                inForce,
                changes,
                calibrationCatches,
                verificationCatches,
                roadSpeed,
                notes);
    }

    /**
     * The model of the discharge curve.
     *
     * @param model the model
     * @return the day with it
     */
    public TruckDay curveModel(CurveModel model) {
        Optional<CurveModel> used = Optional.of(model);
        return new TruckDay(
                id,
                spreader,
                wets,
                boom,
                drive,
                used,
                inForce,
                changes,
                calibrationCatches,
                verificationCatches,
                roadSpeed,
                notes);
    }

    /**
     * The calibrations in force, in place of those before.
     *
     * @param entries the calibrations in force when the day began
     * @return the day with it
     */
    public TruckDay inForce(List<InForceEntry> entries) {
        return new TruckDay(
                id,
                spreader,
                wets,
                boom,
                drive,
                curveModel,
                entries,
                changes,
                calibrationCatches,
                verificationCatches,
                roadSpeed,
                notes);
    }

    /**
     * The changes, in place of those before.
     *
     * @param entries repairs and other changes
     * @return the day with it
     */
    public TruckDay changes(List<ChangeEntry> entries) {
        return new TruckDay(
                id,
                spreader,
                wets,
                boom,
                drive,
                curveModel,
                inForce,
                entries,
                calibrationCatches,
                verificationCatches,
                roadSpeed,
                notes);
    }

    /**
     * The calibration catches, in place of those before.
     *
     * @param entries the catches
     * @return the day with it
     */
    public TruckDay calibrationCatches(List<CalibrationCatchEntry> entries) {
        return new TruckDay(
                id,
                spreader,
                wets,
                boom,
                drive,
                curveModel,
                inForce,
                changes,
                entries,
                verificationCatches,
                roadSpeed,
                notes);
    }

    /**
     * The verification catches, in place of those before.
     *
     * @param entries the catches
     * @return the day with it
     */
    public TruckDay verificationCatches(List<VerificationCatchEntry> entries) {
        return new TruckDay(
                id,
                spreader,
                wets,
                boom,
                drive,
                curveModel,
                inForce,
                changes,
                calibrationCatches,
                entries,
                roadSpeed,
                notes);
    }

    /**
     * The check of the road speed.
     *
     * @param check the check
     * @return the day with it
     */
    public TruckDay roadSpeed(RoadSpeedEntry check) {
        Optional<RoadSpeedEntry> road = Optional.of(check);
        return new TruckDay(
                id,
                spreader,
                wets,
                boom,
                drive,
                curveModel,
                inForce,
                changes,
                calibrationCatches,
                verificationCatches,
                road,
                notes);
    }

    /**
     * Remarks.
     *
     * @param text the remarks
     * @return the day with it
     */
    public TruckDay notes(String text) {
        Optional<String> noted = Optional.of(text);
        return new TruckDay(
                id,
                spreader,
                wets,
                boom,
                drive,
                curveModel,
                inForce,
                changes,
                calibrationCatches,
                verificationCatches,
                roadSpeed,
                noted);
    }
}
