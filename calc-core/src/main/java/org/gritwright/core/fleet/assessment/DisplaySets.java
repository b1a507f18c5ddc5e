package org.gritwright.core.fleet.assessment;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;

/** Which calibration point a display was set for during a catch: by its slot, or else by the exact value it held. */
final class DisplaySets {
    private final Map<CalibrationPoint.Key, CalibrationInForce> byPoint = new HashMap<>();
    private final Map<String, CalibrationInForce> bySlot = new HashMap<>();
    private final Map<CalibrationFactor, CalibrationInForce> byValue = new HashMap<>();
    private final Map<VerificationCatch, String> slots = new HashMap<>();

    /** The catches are read from the truck's entries, in their order. */
    DisplaySets(TruckDay truck, List<VerificationCatch> catches, List<CalibrationInForce> inForce) {
        for (CalibrationInForce entry : inForce) {
            byPoint.putIfAbsent(entry.point().key(), entry);
            byValue.putIfAbsent(entry.factor(), entry);
            entry.slot().ifPresent(slot -> bySlot.putIfAbsent(slot, entry));
        }
        for (int i = 0; i < catches.size(); i++) {
            VerificationCatch made = catches.get(i);
            truck.verificationCatches().get(i).slot().ifPresent(slot -> slots.put(made, slot));
        }
    }

    /** The value in force for another point that the display was set to; none if it was set for the catch's own. */
    Optional<CalibrationInForce> elsewhere(Verification verification) {
        CalibrationPoint point = verification.source().point();
        Optional<CalibrationInForce> named =
                Optional.ofNullable(slots.get(verification.source())).map(bySlot::get);
        if (named.isPresent()) {
            return named.filter(entry -> !entry.point().equals(point));
        }
        return byPoint.containsKey(point.key())
                ? Optional.empty()
                : Optional.ofNullable(
                        byValue.get(verification.source().inForce().factor()));
    }
}
