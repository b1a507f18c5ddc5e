package org.gritwright.core.balance;

import java.io.Serializable;
import java.util.List;
import org.gritwright.units.check.Require;

/**
 * Quantities, and the balances that hold between them. Use it wherever several measurements have to add up: piles and trucks, streams of a
 * plant, differences of height. Immutable, thread-safe, a value.
 *
 * <p>{@link #adjust} changes the measured values as little as makes them add up, each in its standard uncertainty (weighted least squares with
 * linear constraints; S. Narasimhan and C. Jordache, Data Reconciliation and Gross Error Detection, 2000). The equations are sparse and are
 * solved as such: the cost grows with the quantities about as fast as they do, as long as each is in few balances.
 *
 * @param variables the quantities, each with a name of its own
 * @param balances what has to add up, each with a name of its own
 * @param correlations pairs of measurements whose own errors are correlated
 */
public record Network(List<Variable> variables, List<Balance> balances, List<CorrelatedErrors> correlations)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Copies the lists. What goes together is checked by {@link #adjust}. */
    public Network {
        Require.given(Network.class, variables, balances, correlations);
        variables = List.copyOf(variables);
        balances = List.copyOf(balances);
        correlations = List.copyOf(correlations);
    }

    /**
     * A network of measurements whose own errors are independent.
     *
     * @param variables the quantities
     * @param balances what has to add up
     * @return the network
     */
    public static Network of(List<Variable> variables, List<Balance> balances) {
        return new Network(variables, balances, List.of());
    }

    /**
     * Makes it add up.
     *
     * @return the adjustment, with all uncertainties
     * @throws org.gritwright.units.InvalidInputException if a name is there twice, a balance or correlation names a quantity that isn't
     *     there, correlations are impossible together, or exact balances contradict each other; the message names them. Also if sizes
     *     are so far apart that nothing can be computed with them together
     */
    public Adjustment adjust() {
        return Adjustment.of(this);
    }
}
