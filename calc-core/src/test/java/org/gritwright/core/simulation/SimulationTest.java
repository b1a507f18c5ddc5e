package org.gritwright.core.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The simulator itself: what it draws and writes is what it says. */
@Tag("jackson")
class SimulationTest {
    static List<Fault> faults() {
        return Faults.ALL;
    }

    @Test
    void oneSeedMakesOneTruck() {
        for (long seed = 1; seed < 20; seed++) {
            assertThat(Simulation.make(Fault.NONE, seed, truck -> true))
                    .isEqualTo(Simulation.make(Fault.NONE, seed, truck -> true));
        }
    }

    @Test
    void whatIsWrittenIsReadBack() {
        for (long seed = 1; seed < 50; seed++) {
            FleetDay day = Simulation.make(Fault.NONE, seed, truck -> true).day();

            assertThat(Simulation.read(Document.FLEET_DAY.toText(day))).contains(day);
        }
    }

    @Test
    void thereAreTwentySlipsAndMoreWithIdsOfTheirOwn() {
        assertThat(Faults.ALL).hasSizeGreaterThan(25);
        assertThat(Faults.ALL).extracting(Fault::id).doesNotHaveDuplicates();
    }

    @ParameterizedTest
    @MethodSource("faults")
    void everyFaultChangesTheDocumentAndIsRepaired(Fault fault) {
        List<Outcome> outcomes = Simulation.run(fault, truck -> true, 1, 4);

        assertThat(outcomes).anySatisfy(outcome -> {
            DayMaker.Made right = DayMaker.make(outcome.made().truck(), Fault.NONE);
            boolean isDrift = outcome.made().truck().drift() != 0;
            assertThat(isDrift
                            || !Simulation.text(outcome.made(), fault).equals(Document.FLEET_DAY.toText(right.day())))
                    .isTrue();
        });
        if (outcomes.get(0).made().truck().drift() == 0) {
            assertThat(outcomes).as("Λ of %s", fault).anyMatch(outcome -> outcome.ratio() > 0);
        }
    }

    @Test
    void healthyTrucksAreRightOnTheRoad() {
        assertThat(LongStream.range(1, 100).mapToObj(seed -> Simulation.make(Fault.NONE, seed, truck -> true)))
                .filteredOn(made -> !made.truck().plan().enters())
                .allMatch(made -> Math.abs(made.roadError()) < DayMaker.TOLERANCE);
    }
}
