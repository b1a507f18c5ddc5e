package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.T0;
import static org.gritwright.core.telemetry.Trucks.chain;

import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class RowExplanationTest {
    @Test
    void theStepsOfARowHaveTheirUnits() {
        RowEvaluator evaluator = Trucks.evaluator(Trucks.rollingOverAt(65_536), chain(START, 4, 2.5));
        RowState state = evaluator.start();
        assertThat(evaluator.explain(state, T0, 65_530, Double.NaN, 0, 0)).hasToString("""
                reading: 65530 pulse at 2026-11-01T12:00:00Z
                status: first""");
        evaluator.step(state, evaluator.sums(), T0, 65_530, Double.NaN, 0, 0);
        RowExplanation row = evaluator.explain(state, T0 + 1000, 4, Double.NaN, 0, 1);

        assertThat(row).hasToString("""
                reading before: 65530 pulse at 2026-11-01T12:00:00Z
                reading: 4 pulse at 2026-11-01T12:00:01Z
                status: laid by hand
                counted: 4 + 65536 − 65530 = 10 pulse, rolled over at 65536 pulse
                in force: 1, 4 in, from 2026-11-01T12:00:00Z
                a pulse stands for: 25 g/pulse
                amount: 1638400000 mg up to where it rolls over + 100000 mg − 1638250000 mg = 250000 mg""");
        assertThat(row.amount()).isEqualTo(250_000);
        assertThat(state.count).isEqualTo(65_530);
        assertThat(evaluator.explain(state, T0 + 1000, 4, 0.05, 0, 5)).hasToString("""
                reading before: 65530 pulse at 2026-11-01T12:00:00Z
                reading: 4 pulse at 2026-11-01T12:00:01Z
                status: turned empty
                counted: 4 + 65536 − 65530 = 10 pulse, rolled over at 65536 pulse""");
    }

    @Property(tries = 300)
    void itHoldsWhatTheEvaluationDoes(@ForAll long seed, @ForAll @IntRange(min = 2, max = 60) int size) {
        SplittableRandom random = new SplittableRandom(seed);
        RowEvaluator evaluator = RowSumsLawsTest.evaluator();
        Rows rows = RowSumsLawsTest.rows(random.nextLong(), size, false);
        RowState state = evaluator.start();
        RowSums sums = evaluator.sums();
        for (int i = 0; i < size; i++) {
            RowExplanation told = evaluator.explain(
                    state, rows.times()[i], rows.counts()[i], rows.setting(i), rows.slot(i), rows.mode(i));
            RowStatus status = evaluator.step(
                    state, sums, rows.times()[i], rows.counts()[i], rows.setting(i), rows.slot(i), rows.mode(i));
            assertThat(told.status()).isSameAs(status);
            assertThat(told.amount()).as("%s", told).isEqualTo(state.amount());
        }
    }
}
