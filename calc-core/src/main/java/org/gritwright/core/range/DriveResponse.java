package org.gritwright.core.range;

import java.io.Serializable;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.finding.Finding;
import org.jspecify.annotations.Nullable;

/**
 * What a conveyor's drive makes of commands: a curve for each direction that was measured, what both allow, and what a person
 * should know about them. The two directions are never averaged. Immutable, thread-safe, a value.
 */
public final class DriveResponse implements Serializable {
    private static final long serialVersionUID = 1L;

    private final DriveMeasurement measurement;
    private final @Nullable DriveCurve rising;
    private final @Nullable DriveCurve falling;

    @SuppressWarnings("serial") // an immutable list of records
    private final List<Finding> findings;

    private DriveResponse(DriveMeasurement measurement) {
        this.measurement = measurement;
        Branch up = new Branch(measurement, Direction.RISING);
        Branch down = new Branch(measurement, Direction.FALLING);
        Noise noise = Noise.of(measurement.resolution(), up, down);
        this.rising = curve(measurement, up, noise);
        this.falling = curve(measurement, down, noise);
        this.findings = new DriveFindings(measurement, noise).of(up, down);
    }

    private static @Nullable DriveCurve curve(DriveMeasurement measurement, Branch branch, Noise noise) {
        return branch.rows.isEmpty() ? null : new DriveCurve(measurement, branch, noise);
    }

    /**
     * The response that a measurement shows.
     *
     * @param measurement what was measured
     * @return the response
     */
    public static DriveResponse of(DriveMeasurement measurement) {
        return new DriveResponse(Objects.requireNonNull(measurement, "measurement"));
    }

    /**
     * What was measured.
     *
     * @return the measurement
     */
    public DriveMeasurement measurement() {
        return measurement;
    }

    /**
     * How the shaft answers in one direction.
     *
     * @param direction the direction
     * @return the curve; absent where the shaft was never seen to turn in that direction
     */
    public Optional<DriveCurve> curve(Direction direction) {
        return Optional.ofNullable(
                Objects.requireNonNull(direction, "direction") == Direction.RISING ? rising : falling);
    }

    private Stream<DriveCurve> curves() {
        return Stream.of(curve(Direction.RISING), curve(Direction.FALLING)).flatMap(Optional::stream);
    }

    /**
     * The largest difference of the commands for one speed.
     *
     * @return the hysteresis; absent where one direction is, or they have no speed in common
     */
    public Optional<Hysteresis> hysteresis() {
        return curve(Direction.RISING)
                .flatMap(up -> curve(Direction.FALLING).flatMap(down -> Hysteresis.between(up, down)));
    }

    /**
     * The steady speeds that the drive holds whichever way it gets there: from the higher of the lowest ones of both directions to
     * the lower of the highest; of one direction, where only one was measured.
     *
     * @return the range; absent if the shaft never turned steadily, or there is no such speed
     */
    public Optional<WorkingRange> workingRange() {
        return comparison().map(RangeComparison::measured);
    }

    /**
     * The lowest speed of the working range, as well as it is known.
     *
     * @return the speed; absent without a range
     */
    public Optional<RangeEnd> lowestSteady() {
        return comparison().map(RangeComparison::lowest);
    }

    /**
     * The highest speed of the working range, as well as it is known.
     *
     * @return the speed; absent without a range
     */
    public Optional<RangeEnd> highestSteady() {
        return comparison().map(RangeComparison::highest);
    }

    /** The range with the curves that its ends are of; of two that end alike, the one that nothing is left to try of. */
    private Optional<RangeComparison> comparison() {
        List<DriveCurve> steady =
                curves().filter(curve -> curve.workingRange().isPresent()).toList();
        Optional<DriveCurve> ofLowest = steady.stream()
                .max(Comparator.comparingDouble((DriveCurve curve) ->
                                DriveMeasurement.si(range(curve).lowest()))
                        .thenComparing(DriveCurve::isLowestProven));
        Optional<DriveCurve> ofHighest = steady.stream()
                .min(Comparator.comparingDouble((DriveCurve curve) ->
                                DriveMeasurement.si(range(curve).highest()))
                        .thenComparing(curve -> !curve.isHighestProven()));
        return ofLowest.flatMap(low -> ofHighest
                .filter(high -> DriveMeasurement.si(range(low).lowest())
                        <= DriveMeasurement.si(range(high).highest()))
                .map(high -> new RangeComparison(
                        new WorkingRange(range(low).lowest(), range(high).highest()),
                        low,
                        high,
                        measurement.resolution())));
    }

    private static WorkingRange range(DriveCurve steady) {
        return steady.workingRange().orElseThrow();
    }

    /**
     * What a person should know.
     *
     * @return the findings; none if all is well
     */
    public List<Finding> findings() {
        return findings;
    }

    /**
     * Compares the measured working range with one that was stated, or measured before. They differ where they do by more than the
     * measured speed's expanded uncertainty (95 %) and the resolution of its reading. That a speed lies beyond what was measured
     * contradicts it only where nothing was left to try there.
     *
     * @param stated the other range
     * @return a finding, or none: one that was measured before is told if the range is narrower now, any other if it differs
     */
    public List<Finding> comparedWith(StatedRange stated) {
        Objects.requireNonNull(stated, "stated");
        return comparison().flatMap(range -> range.with(stated)).map(List::of).orElse(List.of());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DriveResponse that && measurement.equals(that.measurement);
    }

    @Override
    public int hashCode() {
        return measurement.hashCode();
    }

    /**
     * The response as text.
     *
     * @return for example "drive: rising, 9 commands from 34 % to 100 %"
     */
    @Override
    public String toString() {
        return curves().map(DriveCurve::toString).collect(Collectors.joining("; ", "drive: ", ""));
    }
}
