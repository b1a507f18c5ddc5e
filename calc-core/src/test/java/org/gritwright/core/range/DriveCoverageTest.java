package org.gritwright.core.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.range.Drives.inRpm;
import static org.gritwright.core.range.Drives.rpm;

import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.range.Drives.Simulated;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RotationalSpeed;
import org.junit.jupiter.api.Test;

/** Drives that are known are measured with noise: what is said of them is true as often as is promised. */
class DriveCoverageTest {
    private static final int DRIVES = 1000;

    private static Simulated drive(RandomGenerator random, double resolution) {
        double start = 15 + 25 * random.nextDouble();
        return new Simulated(
                start,
                2 + 2 * random.nextDouble(),
                0.3 + 0.3 * random.nextDouble(),
                start + 30 + 10 * random.nextDouble(),
                1 + 5 * random.nextDouble(),
                0.15,
                resolution);
    }

    private static double[] commands() {
        double[] percents = new double[21];
        for (int i = 0; i < percents.length; i++) {
            percents[i] = 5 * i;
        }
        return percents;
    }

    private static double percent(Quantity<Dimensionless> part) {
        return Amounts.in(part, SpreadingUnits.PERCENT);
    }

    private static boolean isWithin(CommandInterval interval, double percent) {
        return interval.from().number() <= percent && percent <= interval.to().number();
    }

    private static final class Shares {
        private final TreeMap<String, int[]> counts = new TreeMap<>();

        void count(String what, boolean isSo) {
            int[] count = counts.computeIfAbsent(what, name -> new int[2]);
            count[0] += isSo ? 1 : 0;
            count[1]++;
        }

        double of(String what) {
            int[] count = counts.get(what);
            return (double) count[0] / count[1];
        }

        @Override
        public String toString() {
            StringBuilder all = new StringBuilder();
            counts.forEach((what, count) -> all.append(what)
                    .append(": ")
                    .append(of(what))
                    .append(" of ")
                    .append(count[1])
                    .append('\n'));
            return all.toString();
        }
    }

    private static Shares shares(double resolution, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Shares shares = new Shares();
        for (int n = 0; n < DRIVES; n++) {
            Simulated drive = drive(random, resolution);
            DriveResponse response = DriveResponse.of(drive.measured(commands(), 3, random));
            for (Direction direction : Direction.values()) {
                DriveCurve curve = response.curve(direction).orElseThrow();
                double shift = direction == Direction.RISING ? 0 : drive.hysteresis();
                shares.count("threshold", isWithin(curve.threshold(), drive.start() - shift));
                Optional<CommandInterval> knee = curve.saturation();
                shares.count("knee", knee.isPresent() && isWithin(knee.get(), drive.knee() - shift));
                // Halfway between measured commands, and at one.
                for (double at : new double[] {47.5, 50}) {
                    if (at >= drive.start() - shift + 10 && at <= drive.knee() - shift - 10) {
                        double truth = drive.truth(direction, at);
                        Measured<RotationalSpeed> speed =
                                curve.speedAt(Command.percent(at)).orElseThrow();
                        double half = inRpm(speed.expandedUncertainty(0.95).orElseThrow());
                        shares.count("speed at " + at, Math.abs(inRpm(speed.value()) - truth) <= half);
                        CommandInterval found =
                                curve.commandsFor(rpm(truth), 0.95).orElseThrow();
                        shares.count("command for the speed at " + at, isWithin(found, at));
                    }
                }
            }
            Hysteresis hysteresis = response.hysteresis().orElseThrow();
            shares.count(
                    "hysteresis",
                    percent(hysteresis.lowest().orElseThrow()) <= drive.hysteresis()
                            && drive.hysteresis()
                                    <= percent(hysteresis.highest().orElseThrow()));
            shares.count(
                    "no reversal",
                    response.findings().stream().map(Finding::code).noneMatch(c -> c == FindingCode.DRIVE_REVERSAL));
        }
        return shares;
    }

    /** At most four standard deviations of a binomial share away from what is promised, downwards. */
    private static void assertKept(Shares shares, String what, double promised) {
        double deviation = Math.sqrt(promised * (1 - promised) / shares.counts.get(what)[1]);
        assertThat(shares.of(what)).as(what + " in\n" + shares).isGreaterThan(promised - 4 * deviation);
    }

    private static void assertAllKept(Shares shares) {
        assertThat(shares.of("threshold")).isEqualTo(1);
        for (String what : shares.counts.keySet()) {
            assertKept(shares, what, 0.95);
        }
    }

    @Test
    void whatIsSaidOfDrivesIsTrueAsOftenAsIsPromised() {
        Shares shares = shares(0, 1);

        assertAllKept(shares);
        // Where a mean of three readings is all there is, it isn't promised too cautiously either.
        assertThat(shares.of("speed at 50.0")).isLessThan(0.98);
    }

    @Test
    void soItIsWhereSpeedsAreReadToATenth() {
        assertAllKept(shares(0.1, 2));
    }

    /** Coarser than speeds scatter: repeats show the same again, and the resolution is all there is. */
    @Test
    void soItIsWhereSpeedsAreReadToWholeTurns() {
        assertAllKept(shares(1, 3));
    }
}
