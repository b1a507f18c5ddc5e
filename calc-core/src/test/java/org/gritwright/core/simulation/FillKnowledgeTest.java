package org.gritwright.core.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.Predicate;
import java.util.stream.LongStream;
import org.gritwright.core.fleet.day.FleetDay;
import org.junit.jupiter.api.Test;

/** What can be told of equipment depends on how well somebody knows how full conveyors run. */
class FillKnowledgeTest {
    private static final int TRUCKS = 120;
    private static final Fault TEETH = Faults.named("teeth-wrong");

    private static boolean isTellable(Ideal ideal) {
        double ratio = ideal.ratio(TEETH);
        return ratio > Ideal.VISIBLE && ratio - Math.max(0, Simulation.rival(ideal, TEETH)) > Ideal.TOLD;
    }

    private static long tellable(Predicate<DayMaker.Made> tells) {
        return LongStream.range(1, 1 + TRUCKS)
                .parallel()
                .mapToObj(seed -> Simulation.make(TEETH, seed, truck -> true))
                .filter(tells)
                .count();
    }

    private static Ideal.Fill usual(FleetDay day) {
        return Ideal.Fill.usual(
                Edit.spreader(day.trucks().get(0)).metering(Equipment.TYPES).fillLimits());
    }

    /** Half or double the teeth make a fill that is usual for a type, if not for the simulator's trucks. */
    @Test
    void whoKnowsOnlyUsualFillsCannotTellTeethFromOtherCauses() {
        assertThat(tellable(made -> isTellable(new Ideal(made.truck(), made.day()))))
                .isGreaterThan(TRUCKS / 20);
        assertThat(tellable(made -> isTellable(new Ideal(made.truck(), made.day(), usual(made.day())))))
                .isLessThan(TRUCKS / 50);
    }
}
