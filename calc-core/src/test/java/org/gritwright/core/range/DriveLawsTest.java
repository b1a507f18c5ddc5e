package org.gritwright.core.range;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.range.Drives.inRpm;
import static org.gritwright.core.range.Drives.rpm;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.range.Drives.Simulated;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

class DriveLawsTest {
    /** Points of a rising run, of whatever speeds; some rest. */
    @Provide
    Arbitrary<List<DrivePoint>> points() {
        return Combinators.combine(
                        Arbitraries.integers().between(0, 20),
                        Arbitraries.integers().between(-10, 60),
                        Arbitraries.integers().between(1, 4))
                .as((command, speed, readings) ->
                        Drives.point(5 * command, Math.max(0, speed / 2.0)).withReadings(readings))
                .list()
                .ofMinSize(1)
                .ofMaxSize(14)
                .map(DriveLawsTest::inOrder);
    }

    private static List<DrivePoint> inOrder(List<DrivePoint> points) {
        List<DrivePoint> sorted = new ArrayList<>(points);
        sorted.sort(Comparator.comparingDouble(point -> point.command().number()));
        return sorted;
    }

    /** A drive that is known, and commands at which it is measured. */
    @Provide
    Arbitrary<Simulated> drives() {
        return Combinators.combine(
                        Arbitraries.doubles().between(5, 45),
                        Arbitraries.doubles().between(0.5, 4),
                        Arbitraries.doubles().between(0.1, 1),
                        Arbitraries.doubles().between(10, 50))
                .as((start, slowest, gain, rise) -> new Simulated(start, slowest, gain, start + rise, 0, 0, 0));
    }

    private static DriveResponse response(List<DrivePoint> points) {
        return Drives.response(new DriveRun(Direction.RISING, points));
    }

    private static DriveCurve curve(Simulated drive, List<Integer> percents) {
        List<DrivePoint> points = percents.stream()
                .sorted()
                .map(percent -> Drives.point(percent, drive.truth(Direction.RISING, percent)))
                .toList();
        return response(points).curve(Direction.RISING).orElseThrow();
    }

    @Provide
    Arbitrary<List<Integer>> percents() {
        return Arbitraries.integers()
                .between(0, 99)
                .list()
                .uniqueElements()
                .ofMinSize(2)
                .ofMaxSize(12)
                .map(list -> {
                    List<Integer> withHighest = new ArrayList<>(list);
                    withHighest.add(100);
                    return withHighest;
                });
    }

    @Property
    void aCommandAndItsSpeedAreAPairWhereTheSpeedRises(
            @ForAll("drives") Simulated drive,
            @ForAll("percents") List<Integer> percents,
            @ForAll @DoubleRange(min = 0, max = 1) double part) {
        DriveCurve curve = curve(drive, percents);
        List<Stretch> rising = curve.gain().stream()
                .filter(stretch -> inRpm(stretch.perUnit()) > 1e-6)
                .toList();
        Assume.that(!rising.isEmpty());
        CommandInterval stretch = rising.get((int) (part * (rising.size() - 1))).commands();
        Command command = Command.percent(stretch.from().number() + part * stretch.width());
        CommandInterval back =
                curve.commandsFor(curve.speedAt(command).orElseThrow().value()).orElseThrow();

        // Beside a plateau the slope is 0, and a command only as sure as the root of the speed's rounding.
        assertThat(back.from().number()).isLessThanOrEqualTo(command.number() + 1e-3);
        assertThat(back.to().number()).isGreaterThanOrEqualTo(command.number() - 1e-3);
        assertThat(part == 1 || part == 0 || back.width() < 1e-3).isTrue();
    }

    @Property
    void aPlateauInvertsToAllOfIt(@ForAll("drives") Simulated drive, @ForAll("percents") List<Integer> percents) {
        DriveCurve curve = curve(drive, percents);
        List<Double> flat = percents.stream()
                .filter(percent -> percent >= drive.knee())
                .map(percent -> (double) percent)
                .sorted()
                .toList();
        Assume.that(!flat.isEmpty());
        CommandInterval commands = curve.commandsFor(
                        curve.speedAt(Command.percent(100)).orElseThrow().value())
                .orElseThrow();

        assertThat(commands.from().number()).isLessThanOrEqualTo(flat.get(0));
        assertThat(commands.to()).isEqualTo(Command.percent(100));
    }

    @Property
    void theTrueStartIsInTheThreshold(@ForAll("drives") Simulated drive, @ForAll("percents") List<Integer> percents) {
        CommandInterval threshold = curve(drive, percents).threshold();

        assertThat(threshold.from().number()).isLessThan(drive.start());
        assertThat(threshold.to().number()).isGreaterThanOrEqualTo(drive.start());
    }

    /** Whatever was measured: a point outside changes nothing; one inside leaves what was inside. */
    @Property
    void morePointsOfADriveNeverWidenTheThreshold(
            @ForAll("drives") Simulated drive,
            @ForAll("percents") List<Integer> percents,
            @ForAll @IntRange(min = 0, max = 100) int another) {
        CommandInterval before = curve(drive, percents).threshold();
        List<Integer> more = new ArrayList<>(percents);
        more.add(another);
        CommandInterval after = curve(drive, more).threshold();

        assertThat(before.contains(after.from()) && before.contains(after.to())).isTrue();
        if (another <= before.from().number() || another >= before.to().number()) {
            // Rest may come to be seen at the very end of the scale.
            assertThat(after).isEqualTo(before);
        }
    }

    /** A point that contradicts others can only put more commands in doubt. */
    @Property
    void aContradictionNeverNarrowsTheThreshold(
            @ForAll("drives") Simulated drive,
            @ForAll("percents") List<Integer> percents,
            @ForAll @IntRange(min = 0, max = 100) int another) {
        CommandInterval before = curve(drive, percents).threshold();
        // Where it was never seen at rest, a turn below contradicts nothing.
        boolean rested = percents.stream().anyMatch(percent -> percent < drive.start());
        boolean turns = rested && another <= before.from().number();
        Assume.that(turns || (another >= before.to().number() && another < 100));
        List<DrivePoint> points = new ArrayList<>(percents.stream()
                .map(percent -> Drives.point(percent, drive.truth(Direction.RISING, percent)))
                .toList());
        points.add(Drives.point(another, turns ? 5 : 0));
        CommandInterval after =
                response(inOrder(points)).curve(Direction.RISING).orElseThrow().threshold();

        assertThat(after.contains(before.from()) && after.contains(before.to())).isTrue();
    }

    @Property
    void theUnitDoesntMatter(@ForAll("points") List<DrivePoint> points) {
        DriveResponse perMinute = response(points);
        DriveResponse perSecond = Drives.response(new DriveRun(
                Direction.RISING,
                points.stream()
                        .map(point -> DrivePoint.of(
                                        point.command(),
                                        Amounts.of(inRpm(point.speed()) / 60, SpreadingUnits.REVOLUTION_PER_SECOND))
                                .withReadings(point.readings()))
                        .toList()));

        assertThat(perSecond.findings()).extracting(Finding::code).isEqualTo(codes(perMinute));
        assertThat(perSecond.workingRange().isPresent())
                .isEqualTo(perMinute.workingRange().isPresent());
        assertSameAnswers(perSecond, perMinute, 1, 0);
    }

    private static List<Object> codes(DriveResponse response) {
        return response.findings().stream().<Object>map(Finding::code).toList();
    }

    private static void assertSameAnswers(DriveResponse one, DriveResponse other, double scale, double shift) {
        assertThat(one.curve(Direction.RISING).isPresent())
                .isEqualTo(other.curve(Direction.RISING).isPresent());
        other.curve(Direction.RISING).ifPresent(expected -> {
            DriveCurve curve = one.curve(Direction.RISING).orElseThrow();
            for (int percent = 0; percent <= 100; percent += 5) {
                Command at = expected.scale().at(percent);
                Command there = curve.scale().at(scale * percent + shift);
                assertThat(curve.speedAt(there).isPresent())
                        .isEqualTo(expected.speedAt(at).isPresent());
                expected.speedAt(at)
                        .ifPresent(speed -> assertThat(
                                        inRpm(curve.speedAt(there).orElseThrow().value()))
                                .isCloseTo(inRpm(speed.value()), within(1e-9)));
            }
            assertThat(curve.threshold().from().number())
                    .isCloseTo(scale * expected.threshold().from().number() + shift, within(1e-9));
            assertThat(curve.saturation().isPresent())
                    .isEqualTo(expected.saturation().isPresent());
        });
    }

    /** 0 to 100 % as 10 to 410 on a dial: steps and commands are exact doubles on both. */
    @Property
    void theScaleOfTheCommandsDoesntMatter(@ForAll("points") List<DrivePoint> points) {
        DriveRun onADial = new DriveRun(
                Direction.RISING,
                points.stream()
                        .map(point -> DrivePoint.of(
                                        Command.number(4 * point.command().number() + 10), point.speed())
                                .withReadings(point.readings()))
                        .toList());
        DriveResponse dial = DriveResponse.of(new DriveMeasurement(
                CommandScale.numbers(10, 410, 4), rpm(0.1), DriveConditions.AS_AT_WORK, List.of(onADial)));

        assertSameAnswers(dial, response(points), 4, 10);
        assertThat(codes(dial)).isEqualTo(codes(response(points)));
    }

    @Property
    void theOrderOfRunsDoesntMatter(@ForAll("points") List<DrivePoint> points, @ForAll Random random) {
        List<DrivePoint> shuffled = new ArrayList<>(points);
        Collections.shuffle(shuffled, random);
        DriveRun[] runs = shuffled.stream()
                .map(point -> DriveRun.of(Direction.RISING, point))
                .toArray(DriveRun[]::new);

        assertSameAnswers(Drives.response(runs), response(points), 1, 0);
    }

    @Property
    void theSpeedNeverFalls(
            @ForAll("points") List<DrivePoint> points,
            @ForAll @DoubleRange(min = 0, max = 100) double one,
            @ForAll @DoubleRange(min = 0, max = 100) double other) {
        DriveResponse response = response(points);
        response.curve(Direction.RISING)
                .ifPresent(curve -> curve.speedAt(Command.percent(Math.min(one, other)))
                        .ifPresent(slow -> curve.speedAt(Command.percent(Math.max(one, other)))
                                .ifPresent(fast -> assertThat(inRpm(fast.value()))
                                        .isGreaterThanOrEqualTo(inRpm(slow.value()) * (1 - 1e-12)))));
    }
}
