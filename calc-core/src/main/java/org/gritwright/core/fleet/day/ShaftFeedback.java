package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulsesPerRevolution;

/** How the revolutions of a conveyor's or pump's shaft become known, by what was written down. */
final class ShaftFeedback {
    private ShaftFeedback() {}

    static DriveFeedback of(
            Optional<Quantity<PulsesPerRevolution>> pulsesPerRevolution,
            Quantity<Dimensionless> gearRatio,
            List<OpenLoop.Row> controlSettings) {
        boolean openLoop = !controlSettings.isEmpty();
        if (pulsesPerRevolution.isPresent()) {
            Require.that(!openLoop, "control settings", "left out for a drive with a shaft sensor", "a table");
            return new ShaftSensor(pulsesPerRevolution.get(), gearRatio);
        }
        return openLoop ? new OpenLoop(gearRatio, controlSettings) : new NoSensor(gearRatio);
    }
}
