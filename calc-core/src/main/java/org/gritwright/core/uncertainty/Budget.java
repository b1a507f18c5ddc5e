package org.gritwright.core.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * Where a result's uncertainty comes from: named components, combined by the law of propagation (JCGM 100:2008, the GUM,
 * 5.1 and 5.2).
 *
 * <ul>
 *   <li>u² = Σᵢ Σⱼ rᵢⱼ·cᵢ·cⱼ, with the contributions c. Components of one group are one error, r = 1; others have the
 *       stated correlation, or none.
 *   <li>Effective degrees of freedom by the formula of Welch and Satterthwaite, ν = u⁴ ÷ Σ u_b⁴/ν_b (G.4.1). It is for
 *       independent errors, so components that are correlated go in as one block b, with the fewest degrees of freedom
 *       of any of them.
 * </ul>
 *
 * <p>Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of the result
 */
public final class Budget<Q extends Quantity<Q>> {
    /** A correlation matrix of rounded coefficients may miss being one by about this much. */
    private static final double ROUNDING = 1e-9;

    private final Quantity<Q> value;
    private final List<Component<Q>> components;
    private final List<Correlation> correlations;
    private final double[] contributions;
    private final double[] shares;
    private final Measured<Q> result;

    private Budget(Quantity<Q> value, List<Component<Q>> components, List<Correlation> correlations) {
        this.value = Require.finite("value", value);
        this.components = List.copyOf(components);
        this.correlations = List.copyOf(correlations);
        Unit<Q> unit = value.getUnit();
        this.contributions = this.components.stream()
                .mapToDouble(c -> Amounts.in(c.contribution(), unit))
                .toArray();
        double[][] coefficients = coefficients();
        int n = contributions.length;
        double[] variances = new double[n];
        for (int i = 0; i < n; i++) {
            double coupled = 0;
            for (int j = 0; j < n; j++) {
                coupled += coefficients[i][j] * contributions[j];
            }
            variances[i] = contributions[i] * coupled;
        }
        // Full correlation with opposite signs may leave a rounding error on the wrong side of zero.
        double variance = Math.max(0, Arrays.stream(variances).sum());
        this.shares = Arrays.stream(variances)
                .map(v -> variance > 0 ? v / variance : 0)
                .toArray();
        this.result = Measured.of(
                value,
                Amounts.of(Math.sqrt(variance), unit),
                effectiveDegreesOfFreedom(variance, variances, blocks(coefficients)));
    }

    /**
     * A budget of components that are independent, but for their groups.
     *
     * @param <Q> the kind of the result
     * @param value the result
     * @param components the components, possibly none; each name once
     * @return the budget
     * @throws InvalidInputException as for the full form
     */
    public static <Q extends Quantity<Q>> Budget<Q> of(Quantity<Q> value, List<Component<Q>> components) {
        return of(value, components, List.of());
    }

    /**
     * A budget.
     *
     * @param <Q> the kind of the result
     * @param value the result
     * @param components the components, possibly none; each name once
     * @param correlations between components, each pair once; not within a group
     * @return the budget
     * @throws InvalidInputException if a name or a pair is there twice, a correlation names a component that isn't there
     *     or one of a group, the members of a group differ in distribution or degrees of freedom, or no errors could have
     *     these correlations
     */
    public static <Q extends Quantity<Q>> Budget<Q> of(
            Quantity<Q> value, List<Component<Q>> components, List<Correlation> correlations) {
        return new Budget<>(value, components, correlations);
    }

    private double[][] coefficients() {
        int n = components.size();
        Map<String, Integer> places = new HashMap<>();
        double[][] coefficients = new double[n][n];
        for (int i = 0; i < n; i++) {
            if (places.put(components.get(i).name(), i) != null) {
                throw new InvalidInputException(
                        "name of an uncertainty",
                        "in the budget once",
                        components.get(i).name());
            }
            for (int j = 0; j < n; j++) {
                coefficients[i][j] = i == j || isOneError(components.get(i), components.get(j)) ? 1 : 0;
            }
        }
        Set<Set<String>> stated = new HashSet<>();
        for (Correlation correlation : correlations) {
            int i = place(places, correlation.first());
            int j = place(places, correlation.second());
            if (!stated.add(Set.of(correlation.first(), correlation.second()))) {
                throw new InvalidInputException(
                        "correlation", "stated once a pair", correlation.first() + " and " + correlation.second());
            }
            coefficients[i][j] = correlation.coefficient();
            coefficients[j][i] = correlation.coefficient();
        }
        requirePossible(coefficients);
        return coefficients;
    }

    private int place(Map<String, Integer> places, String name) {
        Integer place = places.get(name);
        if (place == null || components.get(place).group().isPresent()) {
            throw new InvalidInputException("correlated component", "one of the budget that is in no group", name);
        }
        return place;
    }

    private static boolean isOneError(Component<?> one, Component<?> other) {
        boolean sameGroup = one.group().isPresent() && one.group().equals(other.group());
        if (sameGroup
                && (one.distribution() != other.distribution() || one.degreesOfFreedom() != other.degreesOfFreedom())) {
            throw new InvalidInputException(
                    "group " + one.group().get(),
                    "of one distribution and the same degrees of freedom, as it is one error",
                    one.name() + " and " + other.name());
        }
        return sameGroup;
    }

    /** Cholesky's way: a matrix with a negative pivot is no correlation matrix. */
    private void requirePossible(double[][] coefficients) {
        if (correlations.isEmpty()) {
            return;
        }
        int n = coefficients.length;
        double[][] rest = new double[n][];
        for (int i = 0; i < n; i++) {
            rest[i] = coefficients[i].clone();
        }
        for (int k = 0; k < n; k++) {
            double pivot = rest[k][k];
            if (pivot < -ROUNDING) {
                throw impossible();
            }
            for (int i = k + 1; i < n; i++) {
                if (pivot <= ROUNDING) {
                    if (Math.abs(rest[i][k]) > Math.sqrt(ROUNDING)) {
                        throw impossible();
                    }
                    continue;
                }
                for (int j = k + 1; j < n; j++) {
                    rest[i][j] -= rest[i][k] * rest[k][j] / pivot;
                }
            }
        }
    }

    private InvalidInputException impossible() {
        return new InvalidInputException("correlations", "possible together", correlations.toString());
    }

    /** For each component the first one with which it is correlated, directly or through others. */
    private static int[] blocks(double[][] coefficients) {
        int n = coefficients.length;
        int[] blocks = IntStream.range(0, n).toArray();
        boolean joined = true;
        while (joined) {
            joined = false;
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    if (coefficients[i][j] != 0 && blocks[j] < blocks[i]) {
                        blocks[i] = blocks[j];
                        joined = true;
                    }
                }
            }
        }
        return blocks;
    }

    private double effectiveDegreesOfFreedom(double variance, double[] variances, int[] blocks) {
        double sum = 0;
        for (int block = 0; block < blocks.length; block++) {
            double ofBlock = 0;
            double fewest = Double.POSITIVE_INFINITY;
            for (int i = 0; i < blocks.length; i++) {
                if (blocks[i] == block) {
                    ofBlock += variances[i];
                    fewest = Math.min(fewest, components.get(i).degreesOfFreedom());
                }
            }
            // Parts of the whole, whose fourth powers can neither overflow nor vanish.
            double part = variance > 0 ? ofBlock / variance : 0;
            sum += part * part / fewest;
        }
        // One block gives its own degrees of freedom, but for rounding below 1.
        return sum > 0 ? Math.max(1, 1 / sum) : Double.POSITIVE_INFINITY;
    }

    /**
     * The result with its combined standard uncertainty and effective degrees of freedom.
     *
     * @return the result; its expanded uncertainty is {@link Measured#expandedUncertainty}
     */
    public Measured<Q> result() {
        return result;
    }

    /**
     * The components.
     *
     * @return the components, as given
     */
    public List<Component<Q>> components() {
        return components;
    }

    /**
     * The correlations between components, beside those of the groups.
     *
     * @return the correlations, as given
     */
    public List<Correlation> correlations() {
        return correlations;
    }

    /**
     * The same budget without some components, as without an error that two results share when they are compared.
     *
     * @param names names of components; those that aren't there are no matter
     * @return the budget of the others
     */
    public Budget<Q> without(Set<String> names) {
        return new Budget<>(
                value,
                components.stream().filter(c -> !names.contains(c.name())).toList(),
                correlations.stream()
                        .filter(c -> !names.contains(c.first()) && !names.contains(c.second()))
                        .toList());
    }

    /**
     * The part of the combined variance that a component is to blame for: cᵢ·Σⱼ rᵢⱼ·cⱼ ÷ u².
     *
     * @param component one of the components
     * @return a ratio; all of them sum to 1, and one that makes up for others is negative; 0 where nothing is uncertain
     * @throws InvalidInputException if the component is not of this budget
     */
    public double shareOf(Component<Q> component) {
        int place = components.indexOf(component);
        if (place < 0) {
            throw new InvalidInputException("component", "one of the budget", component.name());
        }
        return shares[place];
    }

    /**
     * The component with the largest share: what to improve first.
     *
     * @return the component; none where nothing is uncertain
     */
    public Optional<Component<Q>> dominant() {
        return IntStream.range(0, shares.length)
                .filter(i -> shares[i] > 0)
                .boxed()
                .max(Comparator.comparingDouble(i -> shares[i]))
                .map(components::get);
    }

    /**
     * Draws results at random, each component's error from its own distribution, added as the law of propagation adds
     * them. What comes out needs no effective degrees of freedom and no normal sum: a cross-check of the expanded
     * uncertainty. For what isn't a sum see {@link MonteCarlo#propagate}.
     *
     * @param trials how many, 1 000 or more
     * @param random the source of randomness; seed it to get the same again
     * @return the distribution of the results, in the value's unit
     * @throws InvalidInputException if there are too few trials, or components are correlated other than by groups
     */
    public MonteCarlo simulate(int trials, RandomGenerator random) {
        if (!correlations.isEmpty()) {
            throw new InvalidInputException(
                    "correlations of a simulated budget", "by groups only", correlations.toString());
        }
        List<MonteCarlo.Input> inputs = new ArrayList<>();
        for (int i = 0; i < contributions.length; i++) {
            Component<Q> component = components.get(i);
            // A group is one error: its first member stands for the sum of all.
            int[] same = IntStream.range(0, contributions.length)
                    .filter(j -> isOneError(component, components.get(j)))
                    .toArray();
            if (same.length == 0 || same[0] == i) {
                double total = same.length == 0
                        ? contributions[i]
                        : Arrays.stream(same).mapToDouble(j -> contributions[j]).sum();
                inputs.add(new MonteCarlo.Input(
                        0, Math.abs(total), component.distribution(), component.degreesOfFreedom()));
            }
        }
        double centre = value.getValue().doubleValue();
        return MonteCarlo.propagate(
                inputs, errors -> centre + Arrays.stream(errors).sum(), trials, random);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Budget<?> that
                && value.equals(that.value)
                && components.equals(that.components)
                && correlations.equals(that.correlations);
    }

    @Override
    public int hashCode() {
        return Objects.hash(value, components, correlations);
    }

    /**
     * The budget as a table of plain text: a line a component, in the given order, and one for the result.
     *
     * @return several lines
     */
    @Override
    public String toString() {
        return BudgetTable.of(this);
    }
}
