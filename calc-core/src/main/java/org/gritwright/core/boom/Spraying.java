package org.gritwright.core.boom;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import org.gritwright.core.envelope.Limit;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.FlowRate;

/**
 * What a rate takes of a boom at a road speed. Immutable, thread-safe, a value.
 *
 * @param flow the flow that rate and speed need
 * @param pressure the pressure at the nozzles; none where a limit forbids it
 * @param sections what each section that is on gives; none where a limit forbids it
 * @param limit why the boom doesn't lay it; none where it does
 */
public record Spraying(
        Quantity<FlowRate> flow,
        Optional<Quantity<Pressure>> pressure,
        List<SectionFlow> sections,
        Optional<Limit> limit) {
    /** Checks that nothing is null, and copies the list. */
    public Spraying {
        Require.given(Spraying.class, flow, pressure, sections, limit);
        sections = List.copyOf(sections);
    }

    static Spraying limited(Quantity<FlowRate> flow, Limit limit) {
        return new Spraying(flow, Optional.empty(), List.of(), Optional.of(limit));
    }

    static Spraying held(Boom boom, Quantity<BulkDensity> density, Quantity<FlowRate> flow) {
        Quantity<Pressure> pressure = boom.pressure(flow, density);
        return new Spraying(flow, Optional.of(pressure), boom.sectionFlows(pressure, density), Optional.empty());
    }
}
