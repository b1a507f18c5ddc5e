package org.gritwright.core.balance;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/** Measurements whose own errors are correlated, block by block, and the root of each block: own error = uncertainty × root × independent errors. */
final class CorrelatedBlocks {
    /** What is left of a variance of 1 by rounding. */
    private static final double NOTHING = 1e-12;

    private final int[][] members;
    private final double[][] roots;

    CorrelatedBlocks(List<Variable> variables, Map<String, Integer> indexOf, List<CorrelatedErrors> correlations) {
        int n = variables.size();
        this.members = new int[n][];
        this.roots = new double[n][];
        int[] block = new int[n];
        Arrays.setAll(block, i -> i);
        Map<Set<Integer>, Double> coefficients = new HashMap<>();
        for (CorrelatedErrors pair : correlations) {
            int first = index(pair.first(), variables, indexOf);
            int second = index(pair.second(), variables, indexOf);
            Require.that(
                    coefficients.putIfAbsent(Set.of(first, second), pair.coefficient()) == null,
                    "correlation of " + pair.first() + " and " + pair.second(),
                    "stated once",
                    "twice");
            block[head(block, second)] = head(block, first);
        }
        Map<Integer, int[]> blocks = new HashMap<>();
        for (int i = 0; i < n; i++) {
            blocks.merge(head(block, i), new int[] {i}, CorrelatedBlocks::joined);
        }
        blocks.values().forEach(some -> root(some, coefficients, variables));
    }

    private static int[] joined(int[] some, int[] more) {
        int[] all = Arrays.copyOf(some, some.length + more.length);
        System.arraycopy(more, 0, all, some.length, more.length);
        return all;
    }

    private static int index(String name, List<Variable> variables, Map<String, Integer> indexOf) {
        Integer index = indexOf.get(name);
        if (index == null || !variables.get(index).isMeasured()) {
            throw new InvalidInputException("quantity of a correlation", "a measured one of the network", name);
        }
        return index;
    }

    private static int head(int[] block, int of) {
        int at = of;
        while (block[at] != at) {
            block[at] = block[block[at]];
            at = block[at];
        }
        return at;
    }

    /** Cholesky's, of the correlations. */
    private void root(int[] of, Map<Set<Integer>, Double> coefficients, List<Variable> variables) {
        double[][] root = new double[of.length][];
        for (int i = 0; i < of.length; i++) {
            root[i] = new double[i + 1];
            for (int j = 0; j <= i; j++) {
                double rest = i == j ? 1 : coefficients.getOrDefault(Set.of(of[i], of[j]), 0.0);
                for (int k = 0; k < j; k++) {
                    rest -= root[i][k] * root[j][k];
                }
                boolean possible = i == j ? rest > -NOTHING : root[j][j] > 0 || Math.abs(rest) < NOTHING;
                Require.that(
                        possible,
                        "correlations",
                        "possible together",
                        () -> "not those of " + variables.get(of[0]).name() + " and others");
                root[i][j] = i == j ? rest > NOTHING ? Math.sqrt(rest) : 0 : root[j][j] > 0 ? rest / root[j][j] : 0;
            }
            members[of[i]] = of;
            roots[of[i]] = root[i];
        }
    }

    /** The quantities of a quantity's block, in their order. */
    int[] members(int quantity) {
        return members[quantity];
    }

    /** A quantity's row of the root; 1 for one that is correlated with none. */
    double[] root(int quantity) {
        return roots[quantity];
    }
}
