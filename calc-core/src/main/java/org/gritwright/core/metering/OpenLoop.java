package org.gritwright.core.metering;

import java.io.Serializable;
import java.util.List;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * A drive without feedback, whose shaft speed is known from a table measured in the yard: at each of several control
 * settings, the speed of the watched shaft under load, with the oil warm.
 *
 * <p>Between two rows the speed is interpolated on a straight line; outside the table it is not known. An unloaded
 * shaft runs faster than a loaded one, and cold oil slower than warm: a table measured otherwise is wrong. Revolutions
 * counted by eye can be used with it. Immutable, thread-safe, a value.
 *
 * @param gearRatio revolutions of the watched shaft per revolution of the conveyor's drive shaft, greater than zero
 * @param table the rows, two or more, settings rising and speeds never falling
 */
public record OpenLoop(Quantity<Dimensionless> gearRatio, List<Row> table) implements DriveFeedback {
    /**
     * A row of the table.
     *
     * @param setting the control setting, 0 or more
     * @param shaftSpeed the loaded shaft's speed at it, 0 or more
     */
    public record Row(Quantity<Dimensionless> setting, Quantity<RotationalSpeed> shaftSpeed) implements Serializable {
        /**
         * Checks the values.
         *
         * @throws InvalidInputException if one is negative
         */
        public Row {
            Require.notNegative("control setting", Dimensionless.class, setting);
            Require.notNegative("loaded shaft speed", RotationalSpeed.class, shaftSpeed);
        }

        /**
         * Speed and setting.
         *
         * @return for example "10 rev/min at 2"
         */
        @Override
        public String toString() {
            return Amounts.format(shaftSpeed) + " at " + Amounts.format(setting);
        }
    }

    /**
     * Copies and checks the table.
     *
     * @throws InvalidInputException if the gear ratio is not greater than zero, there are fewer than two rows, a setting
     *     is not above the one before, or a speed below the one before
     */
    public OpenLoop {
        Require.given(OpenLoop.class, gearRatio, table);
        Require.positive("gear ratio", Dimensionless.class, gearRatio);
        table = List.copyOf(table);
        Require.that(table.size() >= 2, "table of control settings", "two rows or more", table.size());
        for (int i = 1; i < table.size(); i++) {
            Row before = table.get(i - 1);
            Row row = table.get(i);
            if (!(settingOf(row) > settingOf(before))) {
                throw new InvalidInputException(
                        "control setting",
                        "above the one before, " + Amounts.format(before.setting()),
                        Amounts.format(row.setting()));
            }
            if (!(speedOf(row) >= speedOf(before))) {
                throw new InvalidInputException(
                        "loaded shaft speed",
                        "not below the one before, " + Amounts.format(before.shaftSpeed()),
                        Amounts.format(row.shaftSpeed()));
            }
        }
    }

    /**
     * The speed of the watched shaft at a control setting.
     *
     * @param setting a setting within the table
     * @return the speed, in the unit of the table's first row
     * @throws InvalidInputException if the setting is outside the table
     */
    public Quantity<RotationalSpeed> shaftSpeed(Quantity<Dimensionless> setting) {
        Row first = table.get(0);
        Row last = table.get(table.size() - 1);
        Require.within("control setting", Dimensionless.class, setting, first.setting(), last.setting());
        double wanted = Amounts.si(Dimensionless.class, setting);
        int above = 1;
        while (Comparison.isAbove(wanted, settingOf(table.get(above)))) {
            above++;
        }
        Row upper = table.get(above);
        Row lower = table.get(above - 1);
        double part = (wanted - settingOf(lower)) / (settingOf(upper) - settingOf(lower));
        Unit<RotationalSpeed> unit = first.shaftSpeed().getUnit();
        return Amounts.ofSi(speedOf(lower) + part * (speedOf(upper) - speedOf(lower)), unit);
    }

    /**
     * Table and gear ratio.
     *
     * @return for example "open loop with 10 rev/min at 2, 30 rev/min at 4, gear ratio 1"
     */
    @Override
    public String toString() {
        return "open loop with " + table.stream().map(Row::toString).collect(Collectors.joining(", ")) + ", gear ratio "
                + Amounts.format(gearRatio);
    }

    private static double settingOf(Row row) {
        return Amounts.si(Dimensionless.class, row.setting());
    }

    private static double speedOf(Row row) {
        return Amounts.si(RotationalSpeed.class, row.shaftSpeed());
    }
}
