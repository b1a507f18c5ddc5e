package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_SECOND;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class OpenLoopTest {
    private static final Quantity<Dimensionless> DIRECT = Amounts.of(1, ONE);

    /** 0, 12, 30 and 30 rev/min at 1, 3, 6 and 8. */
    private static final OpenLoop DRIVE = new OpenLoop(DIRECT, List.of(row(1, 0), row(3, 12), row(6, 30), row(8, 30)));

    private static OpenLoop.Row row(double setting, double revolutionsPerMinute) {
        return new OpenLoop.Row(Amounts.of(setting, ONE), Amounts.of(revolutionsPerMinute, REVOLUTION_PER_MINUTE));
    }

    private static double at(double setting) {
        return DRIVE.shaftSpeed(Amounts.of(setting, ONE)).getValue().doubleValue();
    }

    @Test
    void aRowIsWhatWasMeasured() {
        assertThat(at(1)).isCloseTo(0, within(1e-13));
        assertThat(at(3)).isCloseTo(12, within(1e-13));
        assertThat(at(6)).isCloseTo(30, within(1e-13));
        assertThat(at(8)).isCloseTo(30, within(1e-13));
    }

    @Test
    void betweenTwoRowsIsAStraightLine() {
        assertThat(at(2)).isCloseTo(6, within(1e-13));
        assertThat(at(4)).isCloseTo(18, within(1e-13));
        assertThat(at(7)).isCloseTo(30, within(1e-13));
    }

    @Test
    void speedsComeInTheUnitOfTheFirstRow() {
        OpenLoop mixed = new OpenLoop(
                DIRECT,
                List.of(row(1, 6), new OpenLoop.Row(Amounts.of(3, ONE), Amounts.of(0.5, REVOLUTION_PER_SECOND))));

        Quantity<?> speed = mixed.shaftSpeed(Amounts.of(2, ONE));
        assertThat(speed.getUnit()).isEqualTo(REVOLUTION_PER_MINUTE);
        assertThat(speed.getValue().doubleValue()).isCloseTo(18, within(1e-13));
    }

    @Test
    void aSettingMayBeAPercentage() {
        OpenLoop percent = new OpenLoop(
                DIRECT,
                List.of(
                        new OpenLoop.Row(Amounts.of(20, PERCENT), Amounts.of(10, REVOLUTION_PER_MINUTE)),
                        new OpenLoop.Row(Amounts.of(80, PERCENT), Amounts.of(40, REVOLUTION_PER_MINUTE))));

        assertThat(percent.shaftSpeed(Amounts.of(0.5, ONE)).getValue().doubleValue())
                .isCloseTo(25, within(1e-13));
        assertRefused(
                "control setting must be within 20 % to 80 %: 90 %", () -> percent.shaftSpeed(Amounts.of(90, PERCENT)));
    }

    @Test
    void outsideTheTableTheSpeedIsNotKnown() {
        assertRefused("control setting must be within 1 to 8: 0.9", () -> DRIVE.shaftSpeed(Amounts.of(0.9, ONE)));
        assertRefused("control setting must be within 1 to 8: 8.1", () -> DRIVE.shaftSpeed(Amounts.of(8.1, ONE)));
    }

    @Test
    void refusesATableThatIsNone() {
        assertRefused("table of control settings must be two rows or more: 0", () -> new OpenLoop(DIRECT, List.of()));
        assertRefused(
                "table of control settings must be two rows or more: 1",
                () -> new OpenLoop(DIRECT, List.of(row(1, 10))));
    }

    @Test
    void theSpeedMayStayTheSameFromOneRowToTheNext() {
        OpenLoop flat = new OpenLoop(DIRECT, List.of(row(1, 10), row(2, 20), row(3, 20)));

        assertThat(flat.shaftSpeed(Amounts.of(2.5, ONE)).getValue().doubleValue())
                .isCloseTo(20, within(1e-13));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(DRIVE);
    }

    @Test
    void refusesRowsThatAreOutOfOrder() {
        assertRefused(
                "control setting must be above the one before, 3: 3",
                () -> new OpenLoop(DIRECT, List.of(row(1, 10), row(3, 20), row(3, 30))));
        assertRefused(
                "control setting must be above the one before, 3: 2",
                () -> new OpenLoop(DIRECT, List.of(row(3, 10), row(2, 20))));
        assertRefused(
                "loaded shaft speed must be not below the one before, 20 rev/min: 19 rev/min",
                () -> new OpenLoop(DIRECT, List.of(row(1, 10), row(2, 20), row(3, 19))));
    }

    @Test
    void refusesNegativeNumbersAndAGearRatioOfNothing() {
        assertRefused("control setting must be 0 or more: -1", () -> row(-1, 10));
        assertRefused("loaded shaft speed must be 0 or more: -10 rev/min", () -> row(1, -10));
        assertRefused(
                "gear ratio must be greater than 0: 0",
                () -> new OpenLoop(Amounts.of(0, ONE), List.of(row(1, 10), row(2, 20))));
    }

    @Test
    void doesNotFollowLaterChangesOfItsList() {
        List<OpenLoop.Row> rows = new ArrayList<>(List.of(row(1, 10), row(2, 20)));
        OpenLoop drive = new OpenLoop(DIRECT, rows);
        rows.clear();

        assertThat(drive.table()).containsExactly(row(1, 10), row(2, 20));
        assertThat(drive).isEqualTo(new OpenLoop(DIRECT, List.of(row(1, 10), row(2, 20))));
    }
}
