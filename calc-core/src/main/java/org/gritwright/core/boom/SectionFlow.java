package org.gritwright.core.boom;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;

/**
 * What one section of a boom gives. Immutable, thread-safe, a value.
 *
 * @param section its name
 * @param nozzles how many nozzles it has
 * @param perNozzle the flow of each
 * @param flow the flow of all of them
 * @param share its share of the boom's flow; all sections that are on make 100 %
 */
public record SectionFlow(
        String section,
        int nozzles,
        Quantity<FlowRate> perNozzle,
        Quantity<FlowRate> flow,
        Quantity<Dimensionless> share) {
    /** Checks that nothing is null. */
    public SectionFlow {
        Require.given(SectionFlow.class, section, perNozzle, flow, share);
    }
}
