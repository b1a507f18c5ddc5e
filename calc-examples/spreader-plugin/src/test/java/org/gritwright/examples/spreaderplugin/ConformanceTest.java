package org.gritwright.examples.spreaderplugin;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.gritwright.core.conformance.Conformance;
import org.gritwright.core.record.JsonConformance;
import org.junit.jupiter.api.Test;

class ConformanceTest {
    @Test
    void theFloorObeysEveryLaw() {
        assertEquals(List.of(), Conformance.check(new ReciprocatingFloor()));
    }

    @Test
    void theGateObeysEveryLaw() {
        assertEquals(List.of(), Conformance.check(new DiamondGate()));
    }

    @Test
    void thePumpObeysEveryLaw() {
        assertEquals(List.of(), Conformance.check(new HosePump()));
    }

    @Test
    void theFlowMeterObeysEveryLaw() {
        assertEquals(List.of(), Conformance.check(new PaddleWheelMeter()));
    }

    @Test
    void allSurviveADocument() {
        assertEquals(List.of(), JsonConformance.check(new ReciprocatingFloor()));
        assertEquals(List.of(), JsonConformance.check(new DiamondGate()));
        assertEquals(List.of(), JsonConformance.check(new HosePump()));
        assertEquals(List.of(), JsonConformance.check(new PaddleWheelMeter()));
    }
}
