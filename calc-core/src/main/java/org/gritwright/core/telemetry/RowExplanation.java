package org.gritwright.core.telemetry;

import java.util.List;
import java.util.stream.Collectors;
import org.gritwright.units.check.Require;

/**
 * How a row came to what it holds, step by step with units: {@link RowEvaluator#explain}, the slow twin of the evaluation, whose
 * arithmetic is its own and gives the same to the last milligram. Immutable, thread-safe, a value.
 *
 * @param status what became of the row
 * @param amount what it holds, in whole milligrams or microliters
 * @param steps the steps in their order
 */
public record RowExplanation(RowStatus status, long amount, List<Step> steps) {
    /**
     * One step.
     *
     * @param what what it is, for example "counted"
     * @param value what it gives, with its unit, for example "10 pulse"
     */
    public record Step(String what, String value) {
        /** Checks that both are there. */
        public Step {
            Require.given(Step.class, what, value);
        }
    }

    /** Copies the list. */
    public RowExplanation {
        Require.given(RowExplanation.class, status, steps);
        steps = List.copyOf(steps);
    }

    /** A line for each step. */
    @Override
    public String toString() {
        return steps.stream().map(step -> step.what() + ": " + step.value()).collect(Collectors.joining("\n"));
    }
}
