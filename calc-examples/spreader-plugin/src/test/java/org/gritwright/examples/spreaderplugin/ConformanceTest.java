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
    void bothSurviveADocument() {
        assertEquals(List.of(), JsonConformance.check(new ReciprocatingFloor()));
        assertEquals(List.of(), JsonConformance.check(new DiamondGate()));
    }
}
