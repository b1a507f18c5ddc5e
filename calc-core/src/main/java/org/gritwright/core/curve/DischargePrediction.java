package org.gritwright.core.curve;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * What a discharge curve says about one setting. Immutable, thread-safe, a value.
 *
 * @param setting the setting
 * @param dischargePerRevolution mass per revolution of the sensed shaft, with standard uncertainty where the catches
 *     allow one
 * @param budget where that uncertainty comes from; none where the catches allow none
 * @param findings what a person should know about it: whether it is geometry alone
 */
public record DischargePrediction(
        Setting setting,
        Measured<DischargePerRevolution> dischargePerRevolution,
        Optional<Budget<DischargePerRevolution>> budget,
        List<Finding> findings) {
    /** Copies the list. */
    public DischargePrediction {
        Require.given(DischargePrediction.class, setting, dischargePerRevolution, budget, findings);
        findings = List.copyOf(findings);
    }
}
