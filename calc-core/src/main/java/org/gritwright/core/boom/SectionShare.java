package org.gritwright.core.boom;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.check.Require;

/**
 * Which share of a boom's flow one section gets. Under closed-loop flow control the controller keeps the total: a worn nozzle then
 * takes what the others lack, and the section's rate is off by {@code error} though the display's total is right. Where the pressure
 * is held instead, a worn nozzle adds to the total and the other sections keep their rate. Immutable, thread-safe, a value.
 *
 * @param section the section's name
 * @param nozzles how many of its nozzles were caught
 * @param share its flow ÷ that of all sections, in percent
 * @param even what it would be if all nozzles gave alike: its nozzles ÷ all, in percent
 * @param error share ÷ even − 1, in percent: how far the section's rate is off under flow control
 */
public record SectionShare(
        String section,
        int nozzles,
        Quantity<Dimensionless> share,
        Quantity<Dimensionless> even,
        Quantity<Dimensionless> error) {
    /** Checks that nothing is null. */
    public SectionShare {
        Require.given(SectionShare.class, section, share, even, error);
    }
}
