package org.gritwright.core.chart;

import java.util.List;
import java.util.Objects;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.range.Command;
import org.gritwright.core.range.DriveCurve;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * A setting of a control, and how fast the watched shaft then turns under load. Immutable, thread-safe, a value.
 *
 * @param setting what the control is set to
 * @param shaftSpeed the steady speed of the watched shaft, 0 or more
 */
public record ControlSetting(Command setting, Measured<RotationalSpeed> shaftSpeed) {
    /**
     * Checks the speed.
     *
     * @throws org.gritwright.units.InvalidInputException if it is negative
     */
    public ControlSetting {
        Require.given(ControlSetting.class, setting, shaftSpeed);
        Require.notNegative("loaded shaft speed", RotationalSpeed.class, shaftSpeed.value());
    }

    /**
     * The settings of a table that was measured in the yard. Nobody said how its speeds scatter.
     *
     * @param drive the drive, with its table
     * @return a setting for each row
     * @throws org.gritwright.units.InvalidInputException if a setting is neither a bare number nor a percentage
     */
    public static List<ControlSetting> of(OpenLoop drive) {
        return drive.table().stream()
                .map(row -> new ControlSetting(Command.of(row.setting()), Measured.once(row.shaftSpeed())))
                .toList();
    }

    /**
     * Settings of a valve whose answers were measured, as sure as they were measured.
     *
     * @param drive the curve of the direction in which the settings are reached
     * @param settings the settings that a chart is to show
     * @return them, with their speeds
     * @throws org.gritwright.units.InvalidInputException if a setting isn't of the drive's scale, or nobody knows how fast the shaft
     *     turns at it
     */
    public static List<ControlSetting> of(DriveCurve drive, List<Command> settings) {
        Objects.requireNonNull(drive, "drive");
        return settings.stream().map(setting -> of(drive, setting)).toList();
    }

    private static ControlSetting of(DriveCurve drive, Command setting) {
        Measured<RotationalSpeed> speed = drive.speedAt(setting).orElse(null);
        Require.that(speed != null, "control setting", "one whose shaft speed is known", setting);
        return new ControlSetting(setting, Objects.requireNonNull(speed));
    }

    double revolutionsPerSecond() {
        return Amounts.si(RotationalSpeed.class, shaftSpeed.value());
    }

    /** Sorted, each once and all read alike. */
    static List<ControlSetting> sorted(List<ControlSetting> settings) {
        return Axis.of(
                "control setting",
                settings,
                one -> Require.that(
                        one.setting().in() == settings.get(0).setting().in(),
                        "control setting",
                        "read in the same unit as the others",
                        one.setting()),
                one -> one.setting().number());
    }

    /**
     * The setting.
     *
     * @return for example "4"
     */
    @Override
    public String toString() {
        return setting.toString();
    }
}
