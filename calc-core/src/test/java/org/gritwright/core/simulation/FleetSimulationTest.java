package org.gritwright.core.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.gritwright.core.Page;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What technicians are told of simulated trucks doesn't get worse than it was when the figures were committed, and the
 * page shows the committed figures. A few trucks of each scenario are simulated in every build; {@code
 * -Dgritwright.simulation=full} simulates as many as figures need, {@code final} those of the page, with seeds that nobody uses while working.
 */
class FleetSimulationTest {

    @Test
    void nothingThatIsToldGetsWorse() throws IOException {
        FleetSimulation wanted = FleetSimulation.wanted();
        List<Tally> now = wanted.run();
        wanted.write(now);
        if (!wanted.isCommitted()) {
            // Final figures are measured once, when the work is done.
            assertThat(wanted).isEqualTo(FleetSimulation.FINAL);
            return;
        }

        assertThat(worse(wanted.committed(), now))
                .as("worse than committed; where that is meant, copy calc-core/target/simulation over"
                        + " src/test/resources/simulation and say why")
                .isEmpty();
    }

    private static List<String> worse(List<Tally> then, List<Tally> now) {
        Map<String, Tally> before =
                then.stream().collect(Collectors.toMap(tally -> tally.scenario() + " " + tally.key(), tally -> tally));
        List<String> worse = new ArrayList<>();
        for (Scenario scenario : Scenarios.all()) {
            for (Measure measure : scenario.measures()) {
                Tally was = before.get(scenario.id() + " " + measure.id());
                Tally is = find(now, scenario.id(), measure.id());
                if (was == null || measure.isWorse(is, was)) {
                    worse.add(scenario.id() + ": " + measure.words() + ": " + is.words() + ", was " + was);
                }
            }
        }
        for (Coverage one : Coverage.all()) {
            Tally was = before.get(one.id() + " " + Coverage.HELD);
            Tally is = find(now, one.id(), Coverage.HELD);
            if (was == null || one.worse(is) > one.worse(was) + 1e-9) {
                worse.add(one.words() + ": " + is.words() + ", was " + was);
            }
        }
        return worse;
    }

    private static Tally find(List<Tally> all, String scenario, String key) {
        return all.stream()
                .filter(tally ->
                        tally.scenario().equals(scenario) && tally.key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aWorseShareIsNoticed() {
        Tally was = new Tally("healthy", Measure.HEALTHY_FALSE.id(), 10, 100);

        assertThat(Measure.HEALTHY_FALSE.isWorse(new Tally("healthy", "", 11, 100), was))
                .isTrue();
        assertThat(Measure.HEALTHY_FALSE.isWorse(new Tally("healthy", "", 10, 100), was))
                .isFalse();
        assertThat(Measure.CAUSE_NAMED.isWorse(new Tally("healthy", "", 9, 100), was))
                .isTrue();
        assertThat(Measure.CAUSE_NAMED.isWorse(new Tally("healthy", "", 11, 100), was))
                .isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"told", "bar", "coverage"})
    void thePageShowsTheCommittedFigures(String block) throws IOException {
        SimulationPage page = new SimulationPage(FleetSimulation.FINAL.committed());
        String wanted = switch (block) {
            case "told" -> page.told();
            case "bar" -> page.bar();
            default -> page.coverage();
        };
        Page.SIMULATION.assertHolds("simulation " + block, wanted);
    }
}
