package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.range.Command;
import org.gritwright.core.range.CommandScale;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.DriveMeasurement;
import org.gritwright.core.range.DriveResponse;
import org.gritwright.core.range.StatedRange;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * How a truck's drive answers its control, as it was written down: points that were measured, or a range that somebody states, or
 * both. All speeds are those of the sensed or watched shaft, the one whose revolutions a calibration counts. Nothing but presence
 * is checked here. Immutable, thread-safe, a value.
 *
 * @param lowestCommand the lowest command that the valve can be given; with runs
 * @param highestCommand the highest; with runs
 * @param commandStep by how much a command can be changed at least; with runs
 * @param speedStep to which step the shaft speed can be read; none where it is read exactly
 * @param atWork whether the drive was measured as it works
 * @param runs the runs in the order they were made; empty if nothing was measured
 * @param statedRange the range that somebody states; none if nobody does
 */
public record DriveEntry(
        Optional<Quantity<?>> lowestCommand,
        Optional<Quantity<?>> highestCommand,
        Optional<Quantity<?>> commandStep,
        Optional<Quantity<RotationalSpeed>> speedStep,
        DriveConditions atWork,
        List<DriveRunEntry> runs,
        Optional<StatedRangeEntry> statedRange) {
    /** Copies the list. */
    public DriveEntry {
        Require.given(
                DriveEntry.class, lowestCommand, highestCommand, commandStep, speedStep, atWork, runs, statedRange);
        runs = List.copyOf(runs);
    }

    /**
     * A drive of which nothing was measured.
     *
     * @param range the range that somebody states
     * @return the entry
     */
    public static DriveEntry stated(StatedRangeEntry range) {
        return new DriveEntry(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                DriveConditions.NOT_SAID,
                List.of(),
                Optional.of(Objects.requireNonNull(range, "range")));
    }

    /**
     * The same drive with another stated range.
     *
     * @param range the range that somebody states
     * @return the entry
     */
    public DriveEntry with(StatedRangeEntry range) {
        return new DriveEntry(lowestCommand, highestCommand, commandStep, speedStep, atWork, runs, Optional.of(range));
    }

    /**
     * The commands that the valve can be given.
     *
     * @return the scale
     * @throws InvalidInputException if a command is missing, they aren't all of one kind, the scale is upside down, or the step
     *     out of its range
     */
    public CommandScale scale() {
        return new CommandScale(
                given("lowest command", lowestCommand, "0 %"),
                given("highest command", highestCommand, "100 %"),
                given("command step", commandStep, "1 %"));
    }

    private static Command given(String field, Optional<Quantity<?>> command, String example) {
        return Command.of(command.orElseThrow(() -> new InvalidInputException(
                RefusalCode.MISSING,
                field,
                "given with the runs of a drive, for example \"" + example + "\"",
                "nothing")));
    }

    /**
     * To which step the shaft speed was read.
     *
     * @return the step; 0 where none is written down
     */
    public Quantity<RotationalSpeed> resolution() {
        return speedStep.orElseGet(() -> Amounts.of(0, SpreadingUnits.REVOLUTION_PER_MINUTE));
    }

    /**
     * What was measured.
     *
     * @return the response; none if there are no runs
     * @throws InvalidInputException if the scale, a run or a point can't be used
     */
    public Optional<DriveResponse> response() {
        return runs.isEmpty()
                ? Optional.empty()
                : Optional.of(DriveResponse.of(new DriveMeasurement(
                        scale(),
                        resolution(),
                        atWork,
                        runs.stream().map(DriveRunEntry::run).toList())));
    }

    /**
     * What somebody states.
     *
     * @return the range; none if nobody does
     * @throws InvalidInputException if it is upside down, or a speed is out of its range
     */
    public Optional<StatedRange> stated() {
        return statedRange.map(StatedRangeEntry::range);
    }

    /**
     * The working range that is computed with: the measured one, or else the stated.
     *
     * @return the range; none if the shaft was never seen to turn steadily and nobody states one
     * @throws InvalidInputException if what was written down can't be used
     */
    public Optional<WorkingRange> workingRange() {
        return response().flatMap(DriveResponse::workingRange).or(() -> stated().map(StatedRange::range));
    }

    /** How many points were measured. */
    int points() {
        return runs.stream().mapToInt(run -> run.points().size()).sum();
    }
}
