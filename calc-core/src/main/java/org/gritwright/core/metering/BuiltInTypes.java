package org.gritwright.core.metering;

import java.util.List;
import org.gritwright.core.spi.TypeRegistry;

/** The types that come with the library. They use the SPI exactly as an outsider's would. */
public final class BuiltInTypes {

    private BuiltInTypes() {}

    /**
     * A registry of the built-in types: drag chain, belt, auger, twin auger and feed roller; sliding gate, round, fixed,
     * table by opening, table by setting, and no gate; pumps by the measures of their gears, by displacement and by table; flow
     * meters by K-factor and by table.
     *
     * @return the registry
     */
    public static TypeRegistry registry() {
        return TypeRegistry.of(
                List.of(new DragChain(), new Belt(), new Auger(), new TwinAuger(), new FeedRoller()),
                List.of(
                        new SlidingGate(),
                        new RoundGate(),
                        new FixedGate(),
                        TableGate.byOpening(),
                        TableGate.bySetting(),
                        new NoGate()),
                List.of(new GearPump(), new DisplacementPump(), new TablePump()),
                List.of(new KFactorMeter(), new TableFlowMeter()));
    }
}
