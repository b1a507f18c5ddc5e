package org.gritwright.core.uncertainty;

import java.io.Serializable;
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
 * Where a result's uncertainty comes from: components, combined by the law of propagation (JCGM 100:2008, the GUM, 5.1 and
 * 5.2). A component is found by its {@link Component#key key}, never by its printed name.
 *
 * <ul>
 *   <li>u² = Σᵢ Σⱼ rᵢⱼ·cᵢ·cⱼ, with the contributions c. Components of one group are one error, r = 1; others have the
 *       stated correlation, or none.
 *   <li>The effective degrees of freedom follow the formula of Welch and Satterthwaite, ν = u⁴ ÷ Σ u_b⁴/ν_b (G.4.1). It
 *       holds for independent errors, so correlated components enter as one block b, with the fewest degrees of freedom
 *       of any of them.
 * </ul>
 *
 * <p>Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of the result
 */
public final class Budget<Q extends Quantity<Q>> implements Serializable {
    private static final long serialVersionUID = 1L;

    /** How far rounding of the coefficients may take a matrix from being a correlation matrix. */
    private static final double ROUNDING = 1e-9;

    private final Quantity<Q> value;
    private final List<Component<Q>> components;
    private final List<Correlation> correlations;
    private final double[] contributions;
    private final double[] shares;
    private final Measured<Q> result;

    private Budget(Quantity<Q> value, List<Component<Q>> components, List<Correlation> correlations) {
        this.value = Require.finite("value", Objects.requireNonNull(value, "value"));
        this.components = List.copyOf(Objects.requireNonNull(components, "components"));
        this.correlations = List.copyOf(Objects.requireNonNull(correlations, "correlations"));
        Unit<Q> unit = value.getUnit();
        this.contributions = this.components.stream()
                .mapToDouble(c -> Amounts.in(c.contribution(), unit))
                .toArray();
        // In a power of two of the unit, which changes no digit, their squares neither overflow nor vanish.
        double greatest = Arrays.stream(contributions).map(Math::abs).max().orElse(0);
        int power = Math.getExponent(greatest);
        double[] scaled =
                Arrays.stream(contributions).map(c -> Math.scalb(c, -power)).toArray();
        Map<ComponentKey, Integer> places = places();
        int n = contributions.length;
        double[] variances = Arrays.stream(scaled).map(c -> c * c).toArray();
        int[] blocks = IntStream.range(0, n).toArray();
        // Most budgets have no coupled components; then the cost is that of their number, not of their pairs.
        if (isCoupled()) {
            double[][] coefficients = coefficients(places);
            for (int i = 0; i < n; i++) {
                double coupled = 0;
                for (int j = 0; j < n; j++) {
                    coupled += coefficients[i][j] * scaled[j];
                }
                variances[i] = scaled[i] * coupled;
            }
            blocks = blocks(coefficients);
        }
        // Full correlation with opposite signs may leave a rounding error below zero.
        double variance = Math.max(0, Arrays.stream(variances).sum());
        this.shares = Arrays.stream(variances)
                .map(v -> variance > 0 ? v / variance : 0)
                .toArray();
        this.result = Measured.of(
                value,
                Amounts.of(Math.scalb(Math.sqrt(variance), power), unit),
                effectiveDegreesOfFreedom(variance, variances, blocks));
    }

    /**
     * A budget of components that are independent except within their groups.
     *
     * @param <Q> the kind of the result
     * @param value the result
     * @param components the components, possibly none; each key once
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
     * @param components the components, possibly none; each key once
     * @param correlations between components, each pair once; not of components in a group
     * @return the budget
     * @throws InvalidInputException if a key or a pair occurs twice, a correlation names a component that isn't there or
     *     is in a group, the members of a group differ in distribution or degrees of freedom, or no errors could have
     *     these correlations together
     */
    public static <Q extends Quantity<Q>> Budget<Q> of(
            Quantity<Q> value, List<Component<Q>> components, List<Correlation> correlations) {
        return new Budget<>(value, components, correlations);
    }

    private Map<ComponentKey, Integer> places() {
        Map<ComponentKey, Integer> places = new HashMap<>();
        for (Component<Q> component : components) {
            if (places.put(component.key(), places.size()) != null) {
                throw new InvalidInputException(
                        "key of an uncertainty",
                        "in the budget once",
                        component.key().toString());
            }
        }
        return places;
    }

    private boolean isCoupled() {
        return !correlations.isEmpty()
                || components.stream().anyMatch(c -> c.group().isPresent());
    }

    private double[][] coefficients(Map<ComponentKey, Integer> places) {
        int n = components.size();
        double[][] coefficients = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                coefficients[i][j] = i == j || isOneError(components.get(i), components.get(j)) ? 1 : 0;
            }
        }
        Set<Set<ComponentKey>> stated = new HashSet<>();
        for (Correlation correlation : correlations) {
            int i = place(places, correlation.first());
            int j = place(places, correlation.second());
            Require.that(
                    stated.add(Set.of(correlation.first(), correlation.second())),
                    "correlation",
                    "stated once per pair",
                    () -> correlation.first() + " and " + correlation.second());
            coefficients[i][j] = correlation.coefficient();
            coefficients[j][i] = correlation.coefficient();
        }
        requirePossible(coefficients);
        return coefficients;
    }

    private int place(Map<ComponentKey, Integer> places, ComponentKey key) {
        Integer place = places.get(key);
        if (place == null || components.get(place).group().isPresent()) {
            throw new InvalidInputException(
                    "correlated component", "one of the budget that is in no group", key.toString());
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

    /** Cholesky's method: a matrix with a negative pivot is no correlation matrix. */
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
        if (variance == 0) {
            return Double.POSITIVE_INFINITY;
        }
        double[] ofBlocks = new double[blocks.length];
        double[] fewest = new double[blocks.length];
        Arrays.fill(fewest, Double.POSITIVE_INFINITY);
        for (int i = 0; i < blocks.length; i++) {
            ofBlocks[blocks[i]] += variances[i];
            fewest[blocks[i]] = Math.min(fewest[blocks[i]], components.get(i).degreesOfFreedom());
        }
        double sum = 0;
        for (int block = 0; block < blocks.length; block++) {
            // Shares of the total, whose squares neither overflow nor vanish.
            double part = ofBlocks[block] / variance;
            sum += part * part / fewest[block];
        }
        // A single block gives its own degrees of freedom, which rounding may take below 1.
        return Math.max(1, 1 / sum);
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
     * The correlations between components, other than those within groups.
     *
     * @return the correlations, as given
     */
    public List<Correlation> correlations() {
        return correlations;
    }

    /**
     * The component with a key.
     *
     * @param key the key
     * @return the component; none if the budget has no such component
     */
    public Optional<Component<Q>> component(ComponentKey key) {
        Objects.requireNonNull(key, "key");
        return components.stream().filter(c -> c.key().equals(key)).findFirst();
    }

    /**
     * The same budget without some components: when two results are compared, an error common to both cancels in the
     * difference and has to be left out.
     *
     * @param keys keys of components; keys that the budget doesn't have are ignored
     * @return the budget of the others
     */
    public Budget<Q> without(Set<ComponentKey> keys) {
        Objects.requireNonNull(keys, "keys");
        return new Budget<>(
                value,
                components.stream().filter(c -> !keys.contains(c.key())).toList(),
                correlations.stream()
                        .filter(c -> !keys.contains(c.first()) && !keys.contains(c.second()))
                        .toList());
    }

    /**
     * The share of the combined variance that a component causes: cᵢ·Σⱼ rᵢⱼ·cⱼ ÷ u².
     *
     * @param component one of the components
     * @return a ratio; all of them sum to 1, and that of a component that offsets others is negative; 0 where nothing is
     *     uncertain
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
     * The component with the largest share: the one to improve first.
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
     * Draws results at random: each component's error from its own distribution, added as the law of propagation adds them.
     * The outcome assumes neither effective degrees of freedom nor a normal sum, so it cross-checks the expanded
     * uncertainty. For a model that isn't a sum, see {@link MonteCarlo#propagate}.
     *
     * @param trials how many, 1 000 or more
     * @param random the source of randomness; the same seed gives the same results
     * @return the distribution of the results, in the value's unit
     * @throws InvalidInputException if there are too few trials, or components are correlated other than by groups
     */
    public MonteCarlo simulate(int trials, RandomGenerator random) {
        Require.that(correlations.isEmpty(), "correlations of a simulated budget", "by groups only", correlations);
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
     * The budget as a table of plain text: a line per component, in the given order, and one for the result.
     *
     * @return several lines
     */
    @Override
    public String toString() {
        return BudgetTable.of(this);
    }
}
