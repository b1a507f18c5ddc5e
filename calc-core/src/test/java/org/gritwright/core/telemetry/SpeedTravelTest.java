package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.telemetry.RowStatus.DUPLICATE;
import static org.gritwright.core.telemetry.RowStatus.FIRST;
import static org.gritwright.core.telemetry.RowStatus.GAP;
import static org.gritwright.core.telemetry.RowStatus.IMPOSSIBLE_READING;
import static org.gritwright.core.telemetry.RowStatus.IMPOSSIBLE_TIME;
import static org.gritwright.core.telemetry.RowStatus.LAID;
import static org.gritwright.core.telemetry.RowStatus.OUT_OF_ORDER;
import static org.gritwright.core.telemetry.RowStatus.STANDING;
import static org.gritwright.core.telemetry.Trucks.FROM;
import static org.gritwright.core.telemetry.Trucks.T0;
import static org.gritwright.core.telemetry.Trucks.UNTIL;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class SpeedTravelTest {
    /** In mm/s, up to 30 m/s. */
    private final Travel travel = bySpeed(speed(0.001), speed(30), 60);

    private static Quantity<Speed> speed(double metersPerSecond) {
        return Amounts.of(metersPerSecond, SpreadingUnits.METER_PER_SECOND);
    }

    private static Travel bySpeed(Quantity<Speed> step, Quantity<Speed> fastest, double gap) {
        return Travel.bySpeed(step, fastest, Amounts.of(gap, SpreadingUnits.SECOND), FROM, UNTIL);
    }

    private record Went(List<Long> millimeters, List<RowStatus> statuses) {}

    private static Went went(Travel travel, long[] times, long[] speeds, int... cuts) {
        long[] millimeters = new long[times.length];
        byte[] statuses = new byte[times.length];
        RowState state = travel.start();
        int from = 0;
        for (int cut : cuts) {
            travel.evaluate(times, speeds, from, cut, state, millimeters, statuses);
            from = cut;
        }
        travel.evaluate(times, speeds, from, times.length, state, millimeters, statuses);
        List<RowStatus> became = new ArrayList<>();
        for (byte status : statuses) {
            became.add(RowStatus.of(status));
        }
        return new Went(Arrays.stream(millimeters).boxed().toList(), became);
    }

    private static long[] at(double... seconds) {
        return Arrays.stream(seconds).mapToLong(s -> T0 + Math.round(1000 * s)).toArray();
    }

    @Test
    void betweenTwoRowsATruckGoesWithTheMeanOfTheirSpeeds() {
        Went went = went(travel, at(0, 1, 3, 4, 5, 6), new long[] {0, 10_000, 20_000, 0, 0, 1});

        assertThat(went.millimeters()).containsExactly(Travel.UNKNOWN, 5_000L, 30_000L, 10_000L, 0L, 0L);
        assertThat(went.statuses()).containsExactly(FIRST, LAID, LAID, LAID, STANDING, LAID);
    }

    @Test
    void anHourAtAConstantSpeedIsThatSpeed() {
        long[] times = new long[3601];
        long[] speeds = new long[3601];
        for (int i = 0; i < times.length; i++) {
            times[i] = T0 + 1000L * i;
            speeds[i] = 256 * 40 + 1;
        }
        // Steps of 1/256 km/h: 40 + 1/256 km/h.
        Travel travel = bySpeed(
                Amounts.of(1.0 / 256, SpreadingUnits.KILOMETER_PER_HOUR),
                Amounts.of(120, SpreadingUnits.KILOMETER_PER_HOUR),
                60);

        long all = went(travel, times, speeds).millimeters().stream()
                .mapToLong(Long::longValue)
                .sum();
        assertThat(all + 1).isEqualTo(Math.round(40_003_906.25));
    }

    @Test
    void whatIsOddIsUnknownAndIsCountedAsForCounters() {
        Went went = went(travel, at(0, 1, 1, 0.5, 2, 2, 3, 63.001, 64, 64.5, 1e9, 65), new long[] {
            1000, 1000, 1000, 1000, -1, 3000, 30_001, 3000, 30_000, 30_001, 1, 30_000
        });

        assertThat(went.statuses())
                .containsExactly(
                        FIRST,
                        LAID,
                        DUPLICATE,
                        OUT_OF_ORDER,
                        IMPOSSIBLE_READING,
                        LAID,
                        IMPOSSIBLE_READING,
                        GAP,
                        LAID,
                        IMPOSSIBLE_READING,
                        IMPOSSIBLE_TIME,
                        LAID);
        assertThat(went.millimeters())
                .containsExactly(-1L, 1000L, -1L, -1L, -1L, 2000L, -1L, -1L, 16_484L, -1L, -1L, 30_000L);
    }

    @Test
    void aGapIsLongerThanTheLongest() {
        assertThat(went(travel, at(0, 60, 120.001), new long[] {1, 1, 1}).statuses())
                .containsExactly(FIRST, LAID, GAP);
    }

    @Test
    void anotherSpeedAtTheSameTimeIsTheNextRowsAndNoWay() {
        Went went = went(travel, at(0, 1, 1, 2), new long[] {1000, 1000, 3000, 3000});

        assertThat(went.millimeters()).containsExactly(-1L, 1000L, 0L, 3000L);
        assertThat(went.statuses()).containsExactly(FIRST, LAID, LAID, LAID);
    }

    @Test
    void theLastTimeThatRowsCanHaveIsOne() {
        long last = UNTIL.toEpochMilli();
        long first = FROM.toEpochMilli();
        assertThat(went(travel, new long[] {first - 1, first, last, last + 1}, new long[4])
                        .statuses())
                .containsExactly(IMPOSSIBLE_TIME, FIRST, GAP, IMPOSSIBLE_TIME);
    }

    @Property
    void rowsAddUpToTheRoundedWayHoweverTheyAreFed(@ForAll long seed, @ForAll @IntRange(min = 1, max = 200) int size) {
        SplittableRandom random = new SplittableRandom(seed);
        long[] times = new long[size];
        long[] speeds = new long[size];
        double way = 0;
        for (int i = 0; i < size; i++) {
            times[i] = i == 0 ? T0 : times[i - 1] + 1 + random.nextInt(3000);
            speeds[i] = random.nextInt(30_001);
            way += i == 0 ? 0 : (speeds[i] + speeds[i - 1]) / 2.0 * (times[i] - times[i - 1]) / 1000;
        }
        Went went = went(travel, times, speeds);

        assertThat(went.millimeters().stream()
                        .skip(1)
                        .mapToLong(Long::longValue)
                        .sum())
                .isBetween((long) Math.rint(way - 1e-6), (long) Math.rint(way + 1e-6));
        assertThat(went(travel, times, speeds, random.nextInt(size + 1))).isEqualTo(went);
    }

    @Test
    void whatMakesNoSenseIsRefused() {
        assertThatThrownBy(() -> bySpeed(speed(1), speed(0.5), 60))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("fastest speed must be a step, 1 m/s, or more");
        assertThatThrownBy(() -> bySpeed(speed(0), speed(30), 60)).hasMessageContaining("step of speeds");
        assertThatThrownBy(() -> bySpeed(speed(1), speed(0), 60)).hasMessageContaining("fastest speed");
        assertThatThrownBy(() -> bySpeed(speed(1), speed(30), 0)).hasMessageContaining("longest gap");
        assertThatThrownBy(() -> Travel.bySpeed(speed(1), speed(30), Amounts.of(60, SpreadingUnits.SECOND), FROM, FROM))
                .hasMessageContaining("latest time must be later than the earliest");
        assertThatThrownBy(
                        () -> travel.evaluate(new long[2], new long[2], 0, 2, travel.start(), new long[1], new byte[2]))
                .hasMessageContaining("column of millimeters");
        assertThatThrownBy(
                        () -> travel.evaluate(new long[2], new long[2], 0, 2, travel.start(), new long[2], new byte[1]))
                .hasMessageContaining("column of statuses");
        assertThatThrownBy(() -> travel.evaluate(
                        new long[2], new long[2], 0, 2, Trucks.plain().start(), new long[2], new byte[2]))
                .hasMessageContaining("state must be one that speeds started");
    }
}
