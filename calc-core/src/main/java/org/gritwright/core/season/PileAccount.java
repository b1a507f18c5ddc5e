package org.gritwright.core.season;

import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;

/**
 * A pile's season, adjusted: what was there and came equals what left and remains, to rounding. Immutable, thread-safe, a value.
 *
 * @param pile the pile's id
 * @param flows the lines: opening, deliveries, what was found, trucks, other uses, unexplained, closing
 */
public record PileAccount(String pile, List<Flow> flows) implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Copies the list. */
    public PileAccount {
        Require.given(PileAccount.class, pile, flows);
        flows = List.copyOf(flows);
    }

    /**
     * What the pile lost without anybody writing it down; below zero, what it gained.
     *
     * @return the unexplained line, if anything may be unexplained
     */
    public Optional<Measured<Mass>> lost() {
        return flows.stream()
                .filter(flow -> flow.kind() == Flow.Kind.UNEXPLAINED)
                .map(Flow::mass)
                .findFirst();
    }
}
