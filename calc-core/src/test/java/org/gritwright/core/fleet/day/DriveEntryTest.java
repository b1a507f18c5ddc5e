package org.gritwright.core.fleet.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.RangeSource;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.RotationalSpeed;
import org.junit.jupiter.api.Test;

/** What was written down of a drive, as it is computed with. */
class DriveEntryTest {
    private static Quantity<RotationalSpeed> rpm(double revolutionsPerMinute) {
        return Amounts.of(revolutionsPerMinute, REVOLUTION_PER_MINUTE);
    }

    private static DrivePointEntry read(
            Optional<Integer> readings,
            Optional<Quantity<RotationalSpeed>> slowest,
            Optional<Quantity<RotationalSpeed>> fastest) {
        return new DrivePointEntry(
                Amounts.of(40, PERCENT), rpm(12), readings, slowest, fastest, Optional.empty(), Optional.empty());
    }

    private static DrivePointEntry swung(double slowest, double fastest) {
        return read(Optional.empty(), Optional.of(rpm(slowest)), Optional.of(rpm(fastest)));
    }

    @Test
    void aPointIsTheMeanOfOneReadingOrOfSoMany() {
        assertThat(DrivePointEntry.of(Amounts.of(40, PERCENT), rpm(12)).point().readings())
                .isEqualTo(1);
        assertThat(read(Optional.of(9999), Optional.empty(), Optional.empty())
                        .point()
                        .readings())
                .isEqualTo(9999);
        assertThat(read(Optional.of(1), Optional.empty(), Optional.empty())
                        .point()
                        .readings())
                .isEqualTo(1);
        for (int none : new int[] {0, 10_000}) {
            assertRefused(
                    "readings must be from 1 to 9999: " + none,
                    () -> read(Optional.of(none), Optional.empty(), Optional.empty()));
        }
    }

    @Test
    void aSwingIsFromTheSlowestReadingToTheFastest() {
        Quantity<RotationalSpeed> swing = swung(11, 13.5).point().swing().orElseThrow();

        assertThat(Amounts.in(swing, REVOLUTION_PER_MINUTE)).isCloseTo(2.5, within(1e-12));
        assertThat(DrivePointEntry.of(Amounts.of(40, PERCENT), rpm(12)).point().swing())
                .isEmpty();
        assertRefused(
                "swing of the shaft speed must be given as the slowest and the fastest reading: the slowest only",
                () -> read(Optional.empty(), Optional.of(rpm(11)), Optional.empty())
                        .point());
        assertRefused(
                "swing of the shaft speed must be given as the slowest and the fastest reading: the fastest only",
                () -> read(Optional.empty(), Optional.empty(), Optional.of(rpm(13)))
                        .point());
        assertRefused(
                "fastest reading must be at least 13 rev/min: 11 rev/min",
                () -> swung(13, 11).point());
        assertRefused(
                "slowest reading must be 0 or more: -1 rev/min",
                () -> swung(-1, 11).point());
    }

    @Test
    void whatIsMeasuredIsTheRangeOrElseWhatIsStated() {
        StatedRangeEntry stated = new StatedRangeEntry(rpm(3), rpm(40), RangeSource.FROM_MAKER, Optional.empty());
        assertThat(DriveEntry.stated(stated).workingRange())
                .hasValueSatisfying(range -> assertThat(range.highest()).isEqualTo(rpm(40)));

        List<DrivePointEntry> points = List.of(
                DrivePointEntry.of(Amounts.of(29, PERCENT), rpm(0)),
                DrivePointEntry.of(Amounts.of(30, PERCENT), rpm(2)),
                DrivePointEntry.of(Amounts.of(30, PERCENT), rpm(2)),
                DrivePointEntry.of(Amounts.of(50, PERCENT), rpm(12)),
                DrivePointEntry.of(Amounts.of(80, PERCENT), rpm(28)),
                DrivePointEntry.of(Amounts.of(100, PERCENT), rpm(28)));
        DriveEntry measured = new DriveEntry(
                Optional.of(Amounts.of(0, PERCENT)),
                Optional.of(Amounts.of(100, PERCENT)),
                Optional.of(Amounts.of(1, PERCENT)),
                Optional.of(rpm(0.1)),
                DriveConditions.AS_AT_WORK,
                List.of(new DriveRunEntry(Direction.RISING, points)),
                Optional.of(stated));
        assertThat(measured.workingRange())
                .hasValueSatisfying(range -> assertThat(range.highest()).isEqualTo(rpm(28)));
    }
}
