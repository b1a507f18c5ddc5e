package org.gritwright.core.balance;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.SingularValueDecomposition;

/** The same by another way: full matrices with the inverse of the covariance, solved by Hipparchus's pseudo-inverse. */
final class DenseAdjustment {
    private final Network network;
    private final Map<String, Integer> index = new HashMap<>();
    private final RealMatrix weight;
    private final RealMatrix inverse;
    private final RealVector solution;
    private final RealVector read;
    private final RealMatrix nullSpace;

    DenseAdjustment(Network network) {
        this.network = network;
        List<Variable> variables = network.variables();
        int n = variables.size();
        for (Variable variable : variables) {
            index.put(variable.name(), index.size());
        }
        List<Variable> exact = variables.stream()
                .filter(one -> one.value().isPresent() && !one.isMeasured())
                .toList();
        int m = network.balances().size() + exact.size();
        RealMatrix all = new Array2DRowRealMatrix(n + m, n + m);
        this.weight = weight(variables);
        all.setSubMatrix(weight.getData(), 0, 0);
        RealVector right = new ArrayRealVector(n + m);
        this.read = new ArrayRealVector(n);
        for (Variable variable : variables) {
            read.setEntry(index.get(variable.name()), variable.value().orElse(0));
        }
        right.setSubVector(0, weight.operate(read));
        int row = n;
        for (Balance balance : network.balances()) {
            for (Map.Entry<String, Double> term : balance.terms().entrySet()) {
                all.setEntry(row, index.get(term.getKey()), term.getValue());
                all.setEntry(index.get(term.getKey()), row, term.getValue());
            }
            right.setEntry(row++, balance.constant());
        }
        for (Variable variable : exact) {
            all.setEntry(row, index.get(variable.name()), 1);
            all.setEntry(index.get(variable.name()), row, 1);
            right.setEntry(row++, variable.value().orElseThrow());
        }
        SingularValueDecomposition values = new SingularValueDecomposition(all);
        double least = 1e-12 * values.getNorm();
        RealMatrix pseudo = new Array2DRowRealMatrix(n + m, n + m);
        double[] singular = values.getSingularValues();
        RealMatrix nothing = new Array2DRowRealMatrix(n + m, n + m);
        for (int k = 0; k < singular.length; k++) {
            if (singular[k] > least) {
                pseudo = pseudo.add(values.getV()
                        .getColumnVector(k)
                        .outerProduct(values.getU().getColumnVector(k))
                        .scalarMultiply(1 / singular[k]));
            } else {
                nothing = nothing.add(values.getV()
                        .getColumnVector(k)
                        .outerProduct(values.getV().getColumnVector(k)));
            }
        }
        this.nullSpace = nothing;
        this.inverse = pseudo;
        this.solution = pseudo.operate(right);
    }

    private RealMatrix weight(List<Variable> variables) {
        List<Variable> measured =
                variables.stream().filter(Variable::isMeasured).toList();
        int k = measured.size();
        RealMatrix weights = new Array2DRowRealMatrix(variables.size(), variables.size());
        if (k == 0) {
            return weights;
        }
        RealMatrix covariance = new Array2DRowRealMatrix(k, k);
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                Variable one = measured.get(i);
                Variable other = measured.get(j);
                double both = i == j ? one.standardUncertainty() * one.standardUncertainty() : 0;
                for (CorrelatedErrors pair : network.correlations()) {
                    if (List.of(pair.first(), pair.second()).containsAll(List.of(one.name(), other.name())) && i != j) {
                        both += pair.coefficient() * one.standardUncertainty() * other.standardUncertainty();
                    }
                }
                for (Map.Entry<String, Double> effect : one.shared().entrySet()) {
                    both += effect.getValue() * other.shared().getOrDefault(effect.getKey(), 0.0);
                }
                covariance.setEntry(i, j, both);
            }
        }
        RealMatrix inverted = new LUDecomposition(covariance).getSolver().getInverse();
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                weights.setEntry(
                        index.get(measured.get(i).name()),
                        index.get(measured.get(j).name()),
                        inverted.getEntry(i, j));
            }
        }
        return weights;
    }

    boolean isDetermined(String quantity) {
        int i = index.get(quantity);
        return nullSpace.getEntry(i, i) < 1e-9;
    }

    double value(String quantity) {
        return solution.getEntry(index.get(quantity));
    }

    double covariance(String one, String other) {
        return inverse.getEntry(index.get(one), index.get(other));
    }

    /** What is measured less what is left free in it. */
    double degreesOfFreedom() {
        int n = index.size();
        long measured =
                network.variables().stream().filter(Variable::isMeasured).count();
        return measured
                - weight.multiply(inverse.getSubMatrix(0, n - 1, 0, n - 1)).getTrace();
    }

    double misfit() {
        RealVector off = solution.getSubVector(0, index.size()).subtract(read);
        return off.dotProduct(weight.operate(off));
    }
}
