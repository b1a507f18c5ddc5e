package org.gritwright.core.range;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.statistics.MonotoneCurve;
import org.gritwright.core.statistics.MonotoneRegression;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;
import org.jspecify.annotations.Nullable;

/**
 * How the shaft answers commands in one direction, both ways: the speed at a command, and the commands for a speed.
 *
 * <p>The speeds at the commands from which on the shaft always turned are made to rise by {@link MonotoneRegression}, weighted by
 * the number of readings, with the monotone cubic of {@link MonotoneCurve} between them. Between the last command at rest and
 * the first one that turns nobody knows whether the shaft turns, nor beyond the highest command that was tried how fast: there
 * are no answers there.
 *
 * <p>The uncertainty of a speed has three parts: the scatter of all repeats together, taken to be normal and the same at all
 * commands, divided by the readings at its command (between commands, at the less certain of the two); the resolution of the reading, rectangular and not averaged out by repeats;
 * and between commands the distance of the cubic from a straight line, as half the width of a rectangle, for nobody knows how
 * the curve bends there. It is absent where no command was measured twice. It covers no other oil temperature, load or engine
 * speed. Immutable, thread-safe, a value.
 */
public final class DriveCurve implements Serializable {
    private static final long serialVersionUID = 1L;

    private final Direction direction;
    private final CommandScale scale;

    @SuppressWarnings("serial") // a unit of the symbol table
    private final Unit<RotationalSpeed> unit;

    private final Noise noise;
    private final CommandInterval threshold;
    private final boolean restSeen;
    private final boolean thresholdFound;
    private final double[] commands;
    /** Of each command, the fitted speed in revolutions per second, and its variance by scatter. */
    private final double[] speeds;

    private final double[] variances;
    private final boolean[] jerky;
    private final int lastBelowKnee;
    private final @Nullable CommandInterval saturation;
    private final MonotoneCurve cubic;
    private final MonotoneCurve straight;

    DriveCurve(DriveMeasurement measurement, Branch branch, Noise noise) {
        List<MonotoneRegression.Row> rows = branch.rows;
        this.direction = branch.direction;
        this.scale = measurement.scale();
        this.unit = measurement.speedUnit();
        this.noise = noise;
        this.restSeen = branch.rest.isPresent();
        this.threshold = new CommandInterval(branch.rest.orElse(scale.lowest()), branch.turning.orElseThrow());
        this.thresholdFound = !branch.isThresholdOpen(scale);
        this.commands = rows.stream().mapToDouble(MonotoneRegression.Row::x).toArray();
        this.speeds = rows.stream().mapToDouble(MonotoneRegression.Row::value).toArray();
        this.jerky = new boolean[commands.length];
        this.variances = new double[commands.length];
        for (int i = 0; i < commands.length; i++) {
            MonotoneRegression.Row row = rows.get(i);
            jerky[i] = branch.isJerky(row);
            double own = jerky[i] ? Branch.ownDeviation(row).orElse(0) : 0;
            double deviation = Math.max(noise.deviation(), own);
            variances[i] = deviation * deviation / row.blockWeight();
        }
        Knee knee = Knee.of(rows, noise);
        this.saturation = knee.interval(rows, scale, threshold).orElse(null);
        this.lastBelowKnee = saturation == null ? commands.length - 1 : knee.below();
        this.cubic = MonotoneCurve.cubic(commands, speeds);
        this.straight = MonotoneCurve.straight(commands, speeds);
    }

    /**
     * In which direction.
     *
     * @return the direction
     */
    public Direction direction() {
        return direction;
    }

    /**
     * Where the shaft starts (rising) or stops (falling): from the last command at rest to the first that turns. Where the shaft was
     * seen both to turn and to rest, all those commands are in it. Where it was never seen at rest it begins with the scale.
     *
     * @return the commands
     */
    public CommandInterval threshold() {
        return threshold;
    }

    /**
     * Whether the threshold is known to one step of the command.
     *
     * @return false while a command in between is left to try
     */
    public boolean isThresholdFound() {
        return thresholdFound;
    }

    /**
     * The part of the commands in which nothing moves, from the lowest one to the threshold.
     *
     * @return the dead band
     */
    public DeadBand deadBand() {
        return new DeadBand(
                ofSpan(threshold.from().number() - scale.lowest().number()),
                ofSpan(threshold.to().number() - scale.lowest().number()));
    }

    Quantity<Dimensionless> ofSpan(double width) {
        return Amounts.ofSi(width / scale.span(), SpreadingUnits.PERCENT);
    }

    /**
     * From which command on the speed no longer rises by more than noise: between the last command that is slower than the
     * plateau above it, and the highest at which the plateau may begin by what noise leaves open (97.5 % to each side).
     *
     * @return the commands; absent if the speed still rises at the highest command that was tried, or may
     */
    public Optional<CommandInterval> saturation() {
        return Optional.ofNullable(saturation);
    }

    /**
     * The lowest command at which the shaft turns steadily.
     *
     * @return the command; absent if it was jerky at all
     */
    public Optional<Command> lowestSteady() {
        return steady().mapToObj(i -> scale.at(commands[i])).findFirst();
    }

    /**
     * The highest command that was tried at which the shaft turns steadily.
     *
     * @return the command; absent if it was jerky at all
     */
    public Optional<Command> highestSteady() {
        return steady().mapToObj(i -> scale.at(commands[i])).reduce((lower, higher) -> higher);
    }

    private IntStream steady() {
        return IntStream.range(0, commands.length).filter(i -> !jerky[i]);
    }

    /**
     * The speeds at the lowest and the highest steady command.
     *
     * @return the range; absent if the shaft was jerky at all commands
     */
    public Optional<WorkingRange> workingRange() {
        return lowestSteady()
                .map(lowest ->
                        new WorkingRange(speed(lowest), speed(highestSteady().orElseThrow())));
    }

    private Quantity<RotationalSpeed> speed(Command command) {
        return told(cubic.at(command.number()));
    }

    /** Whether nothing lower that was left to try could be steady. */
    boolean isLowestProven() {
        return thresholdFound || jerky[0];
    }

    /** Whether nothing higher could be faster. */
    boolean isHighestProven() {
        return saturation != null
                || commands[commands.length - 1] == scale.highest().number();
    }

    /**
     * The gain, by stretches between measured commands.
     *
     * @return in the order of the commands; empty for a single command
     */
    public List<Stretch> gain() {
        List<Stretch> stretches = new ArrayList<>();
        for (int i = 1; i < commands.length; i++) {
            double perUnit = (speeds[i] - speeds[i - 1]) / (commands[i] - commands[i - 1]);
            stretches.add(new Stretch(
                    new CommandInterval(scale.at(commands[i - 1]), scale.at(commands[i])),
                    told(perUnit),
                    told(perUnit * scale.step().number())));
        }
        return List.copyOf(stretches);
    }

    /**
     * As finely as the shaft speed can be set: what one step of the command makes where it makes most.
     *
     * @return the speed; absent for a single command
     */
    public Optional<Quantity<RotationalSpeed>> resolution() {
        return gain().stream()
                .map(Stretch::perStep)
                .max((a, b) -> Double.compare(DriveMeasurement.si(a), DriveMeasurement.si(b)));
    }

    /**
     * The speed at a command.
     *
     * @param command a command of the scale
     * @return the speed, 0 up to the last command at rest; absent where nobody knows, between rest and turning and above the
     *     highest command that was tried
     * @throws org.gritwright.units.InvalidInputException if the command is not of the scale
     */
    public Optional<Measured<RotationalSpeed>> speedAt(Command command) {
        double at = scale.require(command).number();
        if (restSeen && at <= threshold.from().number()) {
            return Optional.of(Measured.of(told(0), told(0), Double.POSITIVE_INFINITY));
        }
        if (!(at >= cubic.lowest() && at <= cubic.highest())) {
            return Optional.empty();
        }
        Quantity<RotationalSpeed> speed = told(cubic.at(at));
        if (!noise.isKnown()) {
            return Optional.of(Measured.once(speed));
        }
        int row = rowBefore(at);
        double bend = cubic.at(at) - straight.at(at);
        double scatter = scatterVariance(row, at);
        double variance = scatter + noise.ofResolution() + bend * bend / 3;
        return Optional.of(Measured.of(speed, told(Math.sqrt(variance)), degrees(scatter, variance)));
    }

    /** The last row at or before a command. */
    private int rowBefore(double at) {
        int found = Arrays.binarySearch(commands, at);
        return found >= 0 ? found : -found - 2;
    }

    /** Of a command; between two, that of the less certain: how the curve runs there is known no better. */
    private double scatterVariance(int row, double at) {
        return at == commands[row] ? variances[row] : Math.max(variances[row], variances[row + 1]);
    }

    /** Welch–Satterthwaite, where all but the scatter is taken as known. */
    private double degrees(double scatter, double variance) {
        return scatter == 0
                ? Double.POSITIVE_INFINITY
                : noise.degreesOfFreedom() * (variance / scatter) * (variance / scatter);
    }

    /**
     * The commands that give a speed: one, or on a plateau all of it. For a speed of 0 they are those up to the last one at rest.
     *
     * @param speed the speed, 0 or more
     * @return the commands; absent for a speed below the slowest and above the fastest that was measured
     * @throws org.gritwright.units.InvalidInputException if the speed is negative
     */
    public Optional<CommandInterval> commandsFor(Quantity<RotationalSpeed> speed) {
        return commandsFor(entered(speed));
    }

    private static double entered(Quantity<RotationalSpeed> speed) {
        return DriveMeasurement.si(Require.notNegative("shaft speed", RotationalSpeed.class, speed));
    }

    Optional<CommandInterval> commandsFor(double revolutionsPerSecond) {
        if (revolutionsPerSecond == 0) {
            return restSeen ? Optional.of(new CommandInterval(scale.lowest(), threshold.from())) : Optional.empty();
        }
        return cubic.where(asMeasured(revolutionsPerSecond)).map(this::interval);
    }

    /** A measured speed isn't lost to rounding: beside a plateau the least difference is one of many commands. */
    private double asMeasured(double entered) {
        for (double speed : speeds) {
            if (!Comparison.isAbove(Math.abs(entered - speed), 0, speed)) {
                return speed;
            }
        }
        return entered;
    }

    private CommandInterval interval(MonotoneCurve.Interval where) {
        return new CommandInterval(scale.at(where.lowest()), scale.at(where.highest()));
    }

    /**
     * The commands among which the one that truly gives a speed is, with a stated probability: all whose speed is as near as the
     * uncertainty is wide, by the cubic or by straight lines between the measured commands. Beyond the slowest speed they go on to
     * where the shaft rests, beyond the fastest to the end of the scale.
     *
     * @param speed the speed, greater than 0
     * @param coverage greater than 0 and below 1, for example 0.95
     * @return the commands; absent where {@link #commandsFor(Quantity)} is, for 0, and where no command was measured twice
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public Optional<CommandInterval> commandsFor(Quantity<RotationalSpeed> speed, double coverage) {
        double revolutionsPerSecond = entered(speed);
        Require.probability("coverage", coverage);
        return commandsFor(revolutionsPerSecond, coverage);
    }

    Optional<CommandInterval> commandsFor(double revolutionsPerSecond, double coverage) {
        double speed = asMeasured(revolutionsPerSecond);
        return noise.isKnown() && speed > 0
                ? cubic.where(speed).map(at -> within(at, speed, coverage))
                : Optional.empty();
    }

    private CommandInterval within(MonotoneCurve.Interval at, double speed, double coverage) {
        int before = rowBefore(at.lowest());
        int after = Math.min(rowBefore(at.highest()) + 1, commands.length - 1);
        double scatter = IntStream.rangeClosed(before, after)
                .mapToDouble(row -> variances[row])
                .max()
                .orElseThrow();
        double variance = scatter + noise.ofResolution();
        double half = Student.of(degrees(scatter, variance)).coverageFactor(coverage) * Math.sqrt(variance);
        double from = Math.min(lowest(cubic, speed - half), lowest(straight, speed - half));
        double to = Math.max(highest(cubic, speed + half), highest(straight, speed + half));
        return new CommandInterval(scale.at(Math.min(from, at.lowest())), scale.at(Math.max(to, at.highest())));
    }

    private double lowest(MonotoneCurve curve, double speed) {
        return speed < speeds[0]
                ? threshold.from().number()
                : curve.where(speed).orElseThrow().lowest();
    }

    private double highest(MonotoneCurve curve, double speed) {
        return speed > speeds[speeds.length - 1]
                ? scale.highest().number()
                : curve.where(speed).orElseThrow().highest();
    }

    /** The measured speeds, revolutions per second. */
    double[] speeds() {
        return speeds.clone();
    }

    /** The fastest speed below the plateau, where each speed has one command; nothing if all is plateau. */
    double fastestBelowKnee() {
        return lastBelowKnee < 0 ? 0 : speeds[lastBelowKnee];
    }

    CommandScale scale() {
        return scale;
    }

    Quantity<RotationalSpeed> told(double revolutionsPerSecond) {
        return Amounts.ofSi(revolutionsPerSecond, unit);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DriveCurve that
                && direction == that.direction
                && scale.equals(that.scale)
                && unit.equals(that.unit)
                && noise.equals(that.noise)
                && threshold.equals(that.threshold)
                && restSeen == that.restSeen
                && Arrays.equals(variances, that.variances)
                && Arrays.equals(jerky, that.jerky)
                && Objects.equals(saturation, that.saturation)
                && cubic.equals(that.cubic);
    }

    @Override
    public int hashCode() {
        return Objects.hash(direction, scale, threshold, cubic);
    }

    /**
     * The curve as text.
     *
     * @return for example "rising, 9 commands from 34 % to 100 %"
     */
    @Override
    public String toString() {
        return direction.term().words() + ", " + commands.length
                + (commands.length == 1
                        ? " command at " + threshold.to()
                        : " commands from " + threshold.to() + " to " + scale.at(cubic.highest()));
    }
}
