package org.gritwright.core.balance;

import java.io.Serializable;
import java.util.List;
import org.gritwright.units.check.Require;

/**
 * Something that the network says twice: one balance, or exact value, follows from others and adds nothing. Immutable, thread-safe, a value.
 *
 * @param one the balance or the exact value
 * @param others from which it follows, in their order
 */
public record Dependence(Candidate one, List<Candidate> others) implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Copies the list. */
    public Dependence {
        Require.given(Dependence.class, one, others);
        others = List.copyOf(others);
    }
}
