package org.gritwright.core.balance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A network as rows of numbers. Each row says that errors and unknowns add up to its right side: a measurement "unknown + its errors =
 * what was read", a shared error "unknown − error = 0", a balance what it balances. Errors are in their standard deviations,
 * independent of each other, so that the misfit is their sum of squares, and a gross error is a change of one row's right side.
 *
 * <p>Unknowns are counted from where they were read, which keeps digits. Nodes are the errors, then the unknowns, then the rows.
 */
final class Layout {
    final int errors;
    final int unknowns;
    final int rows;
    /** Row r has the columns and coefficients from start[r] to start[r + 1]; columns are nodes. */
    final int[] start;

    final int[] column;
    final double[] coefficient;
    /** What each row still lacks at the origin. */
    final double[] rightSide;
    /** Where unknowns are counted from. */
    final double[] origin;

    private final int[] reading;
    private final Map<String, Integer> unknownOf = new HashMap<>();
    private final Map<Candidate, Integer> rowOf = new HashMap<>();

    Layout(List<Variable> variables, List<Balance> balances, List<CorrelatedErrors> correlations) {
        TreeSet<String> shared = new TreeSet<>();
        for (Variable variable : variables) {
            Require.that(
                    unknownOf.putIfAbsent(variable.name(), unknownOf.size()) == null,
                    "names of quantities",
                    "different",
                    variable.name() + " twice");
            shared.addAll(variable.shared().keySet());
        }
        CorrelatedBlocks blocks = new CorrelatedBlocks(variables, unknownOf, correlations);
        this.unknowns = variables.size() + shared.size();
        int measured = (int) variables.stream().filter(Variable::isMeasured).count();
        this.errors = measured + shared.size();
        this.origin = new double[unknowns];
        this.reading = new int[unknowns];
        Arrays.fill(reading, -1);
        Map<String, Integer> sharedUnknown = new HashMap<>();
        shared.forEach(name -> sharedUnknown.put(name, variables.size() + sharedUnknown.size()));

        int[] errorOf = new int[variables.size()];
        for (int i = 0, next = 0; i < errorOf.length; i++) {
            errorOf[i] = variables.get(i).isMeasured() ? next++ : -1;
        }
        List<int[]> columns = new ArrayList<>();
        List<double[]> coefficients = new ArrayList<>();
        for (int i = 0; i < errorOf.length; i++) {
            Variable variable = variables.get(i);
            if (variable.value().isPresent()) {
                origin[i] = variable.value().getAsDouble();
                reading[i] = columns.size();
                rowOf.put(Candidate.measurement(variable.name()), columns.size());
                measurement(i, variable, errorOf, blocks, sharedUnknown, columns, coefficients);
            }
        }
        sharedUnknown.entrySet().stream().sorted(Map.Entry.comparingByKey()).forEach(error -> {
            reading[error.getValue()] = columns.size();
            rowOf.put(Candidate.sharedError(error.getKey()), columns.size());
            int own = measured + error.getValue() - variables.size();
            columns.add(new int[] {errors + error.getValue(), own});
            coefficients.add(new double[] {1, -1});
        });
        double[] right = new double[columns.size() + balances.size()];
        for (Balance balance : balances) {
            Require.that(
                    rowOf.putIfAbsent(Candidate.balance(balance.name()), columns.size()) == null,
                    "names of balances",
                    "different",
                    balance.name() + " twice");
            right[columns.size()] = balance(balance, columns, coefficients);
        }
        this.rows = columns.size();
        this.rightSide = right;
        this.start = new int[rows + 1];
        for (int r = 0; r < rows; r++) {
            start[r + 1] = start[r] + columns.get(r).length;
        }
        this.column = columns.stream().flatMapToInt(Arrays::stream).toArray();
        this.coefficient = coefficients.stream().flatMapToDouble(Arrays::stream).toArray();
    }

    private void measurement(
            int index,
            Variable variable,
            int[] errorOf,
            CorrelatedBlocks blocks,
            Map<String, Integer> sharedUnknown,
            List<int[]> columns,
            List<double[]> coefficients) {
        List<Integer> nodes = new ArrayList<>(List.of(errors + index));
        List<Double> numbers = new ArrayList<>(List.of(1.0));
        if (variable.isMeasured()) {
            int[] with = blocks.members(index);
            double[] root = blocks.root(index);
            for (int k = 0; k < root.length; k++) {
                if (root[k] != 0) {
                    nodes.add(errorOf[with[k]]);
                    numbers.add(variable.standardUncertainty() * root[k]);
                }
            }
        }
        variable.shared().forEach((name, effect) -> {
            if (effect != 0) {
                nodes.add(errors + Objects.requireNonNull(sharedUnknown.get(name)));
                numbers.add(effect);
            }
        });
        columns.add(nodes.stream().mapToInt(Integer::intValue).toArray());
        coefficients.add(numbers.stream().mapToDouble(Double::doubleValue).toArray());
    }

    /** Adds its row, and gives what it lacks at the origin. */
    private double balance(Balance balance, List<int[]> columns, List<double[]> coefficients) {
        int[] nodes = new int[balance.terms().size()];
        double[] numbers = new double[nodes.length];
        int used = 0;
        PreciseSum lacking = new PreciseSum();
        lacking.add(balance.constant());
        for (Map.Entry<String, Double> term : balance.terms().entrySet()) {
            int unknown = known(unknownOf, term.getKey(), "quantity of balance " + balance.name());
            if (term.getValue() != 0) {
                nodes[used] = errors + unknown;
                numbers[used++] = term.getValue();
                lacking.addProduct(-term.getValue(), origin[unknown]);
            }
        }
        columns.add(Arrays.copyOf(nodes, used));
        coefficients.add(Arrays.copyOf(numbers, used));
        return lacking.value();
    }

    private static <K> int known(Map<K, Integer> numbers, K key, String what) {
        Integer number = numbers.get(key);
        if (number == null) {
            throw new InvalidInputException(what, "one of the network", key.toString());
        }
        return number;
    }

    int nodes() {
        return errors + unknowns + rows;
    }

    int nodeOfRow(int row) {
        return errors + unknowns + row;
    }

    /** The node of a quantity. */
    int nodeOf(String quantity) {
        return errors + known(unknownOf, quantity, "quantity");
    }

    /** The node of the row that a gross error would change. */
    int nodeOf(Candidate candidate) {
        return nodeOfRow(known(rowOf, candidate, "candidate"));
    }

    /** Adds a multiple of the errors of a measurement, shared ones included. */
    void addErrors(int row, double factor, Map<Integer, Double> sum) {
        for (int k = start[row] + 1; k < start[row + 1]; k++) {
            // In a shared error's own row its error comes after it; a measurement's row may lead there.
            int error = column[k] < errors ? column[k] : column[start[readingOf(column[k])] + 1];
            sum.merge(error, factor * coefficient[k], Double::sum);
        }
    }

    /** The variance of what was read of an unknown, by its own errors and by those that it shares; 0 if it wasn't measured. */
    double readingVariance(int unknownNode) {
        int row = readingOf(unknownNode);
        if (row < 0) {
            return 0;
        }
        double variance = 0;
        for (int k = start[row] + 1; k < start[row + 1]; k++) {
            // A shared error is one standard deviation.
            variance += coefficient[k] * coefficient[k];
        }
        return variance;
    }

    /** The places where a gross error can sit, exact values included, by row. */
    Candidate[] candidates() {
        Candidate[] candidates = new Candidate[rows];
        rowOf.forEach((candidate, row) -> candidates[row] = candidate);
        return candidates;
    }

    /** The row that says what was read of an unknown, if any; -1 for one that wasn't measured. */
    int readingOf(int unknownNode) {
        return reading[unknownNode - errors];
    }
}
