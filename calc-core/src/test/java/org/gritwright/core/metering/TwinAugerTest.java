package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;

import java.util.Map;
import java.util.TreeMap;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class TwinAugerTest {
    private static final double ONE_SCREW = AUGER.conveyor().cubicMetersPerRevolution(0);

    /** Two of the sample's screws. */
    private static Conveyor twin(Map<String, Quantity<?>> more) {
        Map<String, Quantity<?>> given =
                new TreeMap<>(Map.of("screwDiameter", inches(6), "shaftDiameter", inches(2), "pitch", inches(6)));
        given.putAll(more);
        return Conveyor.of(new TwinAuger(), given);
    }

    private static Conveyor overlapping(double factor) {
        return twin(Map.of("overlapFactor", Amounts.of(factor, SpreadingUnits.ONE)));
    }

    @Test
    void screwsThatDoNotMeshSweepTwiceWhatOneSweeps() {
        assertThat(twin(Map.of()).cubicMetersPerRevolution(0)).isEqualTo(2 * ONE_SCREW);
        // derived: 2 × 150.796 in³
        assertThat(twin(Map.of()).cubicMetersPerRevolution(0) / Math.pow(0.0254, 3))
                .isCloseTo(301.592894744622, within(1e-9));
    }

    @Test
    void screwsThatMeshSweepLessByTheOverlapFactor() {
        assertThat(overlapping(0.9).cubicMetersPerRevolution(0)).isCloseTo(1.8 * ONE_SCREW, within(1e-17));
        assertThat(overlapping(0.5).cubicMetersPerRevolution(0)).isCloseTo(ONE_SCREW, within(1e-17));
    }

    @Test
    void theyNeverSweepMoreThanTwoOrLessThanOne() {
        assertRefused("overlapFactor of twin-auger must be within 0.5 to 1: 1.1", () -> overlapping(1.1));
        assertRefused("overlapFactor of twin-auger must be within 0.5 to 1: 0.4", () -> overlapping(0.4));
    }

    @Test
    void doesNotHeedAGateAndFillsAsASingleScrewDoes() {
        assertThat(twin(Map.of()).isMeteredByGate()).isFalse();
        assertThat(twin(Map.of()).cubicMetersPerRevolution(0.5))
                .isEqualTo(twin(Map.of()).cubicMetersPerRevolution(0));
        assertThat(twin(Map.of()).fillLimits()).isEqualTo(AUGER.conveyor().fillLimits());
    }

    @Test
    void refusesAShaftAsThickAsTheScrew() {
        assertRefused(
                "shaftDiameter must be smaller than screwDiameter, 6 in: 6 in",
                () -> twin(Map.of("shaftDiameter", inches(6))));
    }
}
