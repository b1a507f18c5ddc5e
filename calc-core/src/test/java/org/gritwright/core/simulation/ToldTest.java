package org.gritwright.core.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.fleet.assessment.NextStep;
import org.junit.jupiter.api.Test;

/** What counts as naming a cause. */
class ToldTest {

    private static Outcome told(Fault fault, String... suggestions) {
        DayMaker.Made made = Simulation.make(fault, 1, truck -> true);
        Told told = new Told(
                NextStep.FIND_FAULT, true, List.of(), List.of(suggestions), Optional.empty(), Optional.empty());
        return new Outcome(made, fault, told, 100, 0, Ideal.Decision.UNDECIDED);
    }

    @Test
    void aCauseIsNamedFirstOrLaterOrNot() {
        Fault half = Faults.named("pulses-half");
        String right = "pulses per revolution × 2 (60 pulse/rev)";
        String wrong = "gear ratio × 2 (2)";

        assertThat(told(half, right, wrong).isNamedFirst()).isTrue();
        assertThat(told(half, wrong, right).isNamedFirst()).isFalse();
        assertThat(told(half, wrong, right).isNamed()).isTrue();
        assertThat(told(half, wrong).isNamed()).isFalse();
        assertThat(told(half).isNamedFirst()).isFalse();
    }

    /** Sentences that stand on healthy trucks, but for suspected slips, name no cause, so that no pattern is met by chance. */
    @Test
    void whatIsSaidOfHealthyTrucksNamesNothing() {
        List<Outcome> healthy = Simulation.run(Fault.NONE, truck -> true, 1, 60);
        List<Outcome> unsuspected = healthy.stream()
                .filter(outcome -> !outcome.told().findings().contains("probable-slips"))
                .toList();
        List<String> sentences = unsuspected.stream()
                .flatMap(outcome -> outcome.told().suggestions().stream())
                .toList();

        assertThat(unsuspected).hasSizeGreaterThanOrEqualTo(healthy.size() - 1);
        assertThat(sentences).hasSizeGreaterThan(10);
        assertThat(Faults.ALL).noneMatch(fault -> sentences.stream().anyMatch(fault::isNamedIn));
    }
}
