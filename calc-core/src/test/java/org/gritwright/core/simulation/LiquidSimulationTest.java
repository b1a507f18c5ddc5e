package org.gritwright.core.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.stream.LongStream;
import org.gritwright.core.Page;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is told of simulated trucks with liquids doesn't get worse, and the page shows the committed figures. */
class LiquidSimulationTest {

    @Test
    void nothingThatIsToldOfLiquidsGetsWorse() throws IOException {
        LiquidSimulation wanted = new LiquidSimulation(FleetSimulation.wanted());

        assertThat(LiquidSimulation.worse(wanted.committed(), wanted.run()))
                .as("worse than committed; where that is meant, copy calc-core/target/simulation over"
                        + " src/test/resources/simulation and say why")
                .isEmpty();
    }

    @Test
    void aWorseShareIsNoticed() {
        Tally was = new Tally("liquid-none", "", 10, 100);

        assertThat(LiquidMeasure.FALSE_ALARM.isWorse(new Tally("liquid-none", "", 11, 100), was))
                .isTrue();
        assertThat(LiquidMeasure.FALSE_ALARM.isWorse(was, was)).isFalse();
        assertThat(LiquidMeasure.NAMED.isWorse(new Tally("liquid-none", "", 9, 100), was))
                .isTrue();
        assertThat(LiquidMeasure.NAMED.isWorse(new Tally("liquid-none", "", 11, 100), was))
                .isFalse();
    }

    /** A fault that isn't made would be told right by chance. Digits that are alike can't be swapped, so that a few trucks are tried. */
    @ParameterizedTest
    @EnumSource(
            value = LiquidFault.class,
            mode = EnumSource.Mode.EXCLUDE,
            names = {"NONE", "SWAPPED"})
    void everyFaultChangesTheDocument(LiquidFault fault) {
        assertThat(LongStream.range(1, 6).mapToObj(seed -> LiquidTruck.make(seed, fault::fits)))
                .anySatisfy(
                        truck -> assertThat(LiquidDay.make(truck, fault, "L-1").entry())
                                .isNotEqualTo(LiquidDay.make(truck, LiquidFault.NONE, "L-1")
                                        .entry()));
    }

    @Test
    void thePageShowsTheCommittedFiguresOfLiquids() throws IOException {
        List<Tally> committed = new LiquidSimulation(FleetSimulation.FINAL).committed();

        Page.SIMULATION.assertHolds("simulation liquids told", LiquidSimulation.told(committed));
        Page.SIMULATION.assertHolds("simulation liquids bar", LiquidSimulation.bar(committed));
    }
}
