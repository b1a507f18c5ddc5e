package org.gritwright.core.balance;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.gritwright.units.check.Require;

/**
 * A network that adds up: adjusted values with their uncertainties, whether that took more than chance, and which gross errors would explain
 * it. Immutable, thread-safe.
 *
 * <p>All follows from one factorization. The adjusted values are those of least misfit; their covariance is that of the same linear
 * combinations of the measurements. {@link #letting} gives another adjustment, in which a gross error is estimated too.
 */
public final class Adjustment {
    /** What is left of a number after cancellation by rounding alone. */
    private static final double NOTHING = 1e-9;
    /** Below that part of what it was made of, a number is computed again. */
    private static final double DOUBTFUL = 1e-4;
    /** A variance that was solved for again and is still less is that of a quantity which exact values determine (tried). */
    private static final double ROUNDING = 1e-20;

    private final Network network;
    private final Layout layout;
    private final Saddle saddle;
    private final double[] solution;
    private final Determination determination;
    private final List<Accepted> accepted;
    private final int degreesOfFreedom;

    /** A gross error that is let in: its row's column of the inverse without it. */
    private static final class Accepted {
        final Candidate candidate;
        final int node;
        final double[] column;

        Accepted(Candidate candidate, int node, double[] column) {
            this.candidate = candidate;
            this.node = node;
            this.column = column;
        }
    }

    private Adjustment(
            Network network,
            Layout layout,
            Saddle saddle,
            double[] solution,
            Determination determination,
            List<Accepted> accepted,
            int degreesOfFreedom) {
        this.network = network;
        this.layout = layout;
        this.saddle = saddle;
        this.solution = solution;
        this.determination = determination;
        this.accepted = accepted;
        this.degreesOfFreedom = degreesOfFreedom;
    }

    static Adjustment of(Network network) {
        Layout layout = new Layout(network.variables(), network.balances(), network.correlations());
        Saddle saddle = new Saddle(layout);
        double[] right = new double[layout.nodes()];
        System.arraycopy(layout.rightSide, 0, right, layout.nodeOfRow(0), layout.rows);
        double[] solution = saddle.solve(right);
        Determination determination = Determination.of(layout, saddle, solution);
        int free = layout.rows - layout.unknowns + determination.freeUnknowns() - determination.openRows();
        return new Adjustment(network, layout, saddle, solution, determination, List.of(), free);
    }

    /**
     * The adjusted value of a quantity.
     *
     * @param quantity its name
     * @return the value; absent where nothing determines it
     * @throws org.gritwright.units.InvalidInputException if the network has no such quantity
     */
    public OptionalDouble value(String quantity) {
        int node = layout.nodeOf(quantity);
        return determination.isFree(node) ? OptionalDouble.empty() : OptionalDouble.of(valueAt(node));
    }

    private double valueAt(int node) {
        return layout.origin[node - layout.errors] + solution[node];
    }

    /**
     * The standard uncertainty of an adjusted value.
     *
     * @param quantity its name
     * @return the uncertainty; absent where nothing determines the quantity
     * @throws org.gritwright.units.InvalidInputException if the network has no such quantity
     */
    public OptionalDouble uncertainty(String quantity) {
        int node = layout.nodeOf(quantity);
        return determination.isFree(node) ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(variance(node)));
    }

    private double variance(int node) {
        double variance = isExact(node) ? 0 : inverse(node, node);
        return variance > ROUNDING * saddle.inverseSize(node) ? variance : 0;
    }

    /** Whether it was given so: solving for what is known would take long where much is. */
    private boolean isExact(int node) {
        int row = layout.readingOf(node);
        return row >= 0
                && layout.readingVariance(node) == 0
                && accepted.stream().noneMatch(let -> let.node == layout.nodeOfRow(row));
    }

    /**
     * The covariance of two adjusted values.
     *
     * @param one the name of a quantity that is determined
     * @param other the name of another, or the same
     * @return the covariance
     * @throws org.gritwright.units.InvalidInputException if the network has no such quantity, or nothing determines it
     */
    public double covariance(String one, String other) {
        return inverse(determined(one), determined(other));
    }

    private int determined(String quantity) {
        int node = layout.nodeOf(quantity);
        Require.that(!determination.isFree(node), "quantity", "determined by the network", quantity);
        return node;
    }

    /**
     * A linear combination of adjusted values.
     *
     * @param terms the coefficient of each quantity, by its name
     * @return the sum with its standard uncertainty
     * @throws org.gritwright.units.InvalidInputException if the network has no such quantity, nothing determines it, or a coefficient isn't
     *     finite
     */
    public Estimate combination(Map<String, Double> terms) {
        double[] right = new double[layout.nodes()];
        PreciseSum value = new PreciseSum();
        Objects.requireNonNull(terms, "terms").forEach((quantity, coefficient) -> {
            int node = determined(quantity);
            right[node] = Require.finite("coefficient of " + quantity, coefficient);
            value.addProduct(coefficient, valueAt(node));
        });
        double[] image = project(saddle.solve(right));
        double variance = 0;
        for (int i = 0; i < right.length; i++) {
            variance += right[i] * image[i];
        }
        return new Estimate(value.value(), Math.sqrt(Math.max(0, variance)));
    }

    /**
     * What the terms of a balance add up to beyond its constant: nothing, unless an error of the balance is let in.
     *
     * @param balance the balance's name
     * @return the size of the leak
     * @throws org.gritwright.units.InvalidInputException if the network has no such balance, or nothing determines one of its quantities
     */
    public Estimate leak(String balance) {
        int row = layout.nodeOf(Candidate.balance(balance)) - layout.nodeOfRow(0);
        Balance one =
                network.balances().get(row - (layout.rows - network.balances().size()));
        Estimate sum = combination(one.terms());
        return new Estimate(sum.value() - one.constant(), sum.standardUncertainty());
    }

    /**
     * By how much an adjusted value follows what was read elsewhere, or what a balance's constant is.
     *
     * @param quantity the name of a quantity that is determined
     * @param on the measurement, the exact value, or the balance
     * @return change of the adjusted value per change of the other
     * @throws org.gritwright.units.InvalidInputException if the network has no such place, or nothing determines the quantity
     */
    public double influence(String quantity, Candidate on) {
        return inverse(determined(quantity), layout.nodeOf(on));
    }

    /**
     * Whether all together adds up as well as the uncertainties let expect.
     *
     * @return the misfit with its degrees of freedom
     */
    public GlobalTest test() {
        PreciseSum misfit = new PreciseSum();
        for (int i = 0; i < layout.errors; i++) {
            misfit.addProduct(solution[i], solution[i]);
        }
        return new GlobalTest(misfit.value(), degreesOfFreedom);
    }

    /**
     * The measurement test: what was read less what is adjusted, in the standard deviation of that difference.
     *
     * @param quantity the name of a measured quantity
     * @return the normalized residual; absent where nothing else tells of the measurement
     * @throws org.gritwright.units.InvalidInputException if the network has no such quantity
     */
    public OptionalDouble normalizedResidual(String quantity) {
        int node = layout.nodeOf(quantity);
        double variance = layout.readingVariance(node);
        double rest = variance - variance(node);
        return rest > NOTHING * variance
                ? OptionalDouble.of(-solution[node] / Math.sqrt(rest))
                : OptionalDouble.empty();
    }

    /**
     * The balance test: what the values as they were read add up to beyond the balance's constant, in the standard deviation of that.
     *
     * @param balance the name of the balance
     * @return the score; absent where not all of its quantities were measured, or all are exact
     * @throws org.gritwright.units.InvalidInputException if the network has no such balance
     */
    public OptionalDouble nodalTest(String balance) {
        int row = layout.nodeOf(Candidate.balance(balance)) - layout.nodeOfRow(0);
        Map<Integer, Double> errors = new HashMap<>();
        for (int k = layout.start[row]; k < layout.start[row + 1]; k++) {
            int reading = layout.readingOf(layout.column[k]);
            if (reading < 0) {
                return OptionalDouble.empty();
            }
            layout.addErrors(reading, layout.coefficient[k], errors);
        }
        double variance = errors.values().stream().mapToDouble(one -> one * one).sum();
        return variance > 0 ? OptionalDouble.of(-layout.rightSide[row] / Math.sqrt(variance)) : OptionalDouble.empty();
    }

    /**
     * What nothing in the network determines.
     *
     * @return the names of quantities that weren't measured and don't follow, in the order of the network
     */
    public List<String> undetermined() {
        return network.variables().stream()
                .map(Variable::name)
                .filter(name -> determination.isFree(layout.nodeOf(name)))
                .toList();
    }

    /**
     * What the network says twice.
     *
     * @return balances, or exact values, that follow from others
     */
    public List<Dependence> dependences() {
        return determination.dependences();
    }

    /**
     * All places where a gross error can be looked for: measurements, shared errors and balances. Exact values are not among them.
     *
     * @return the candidates, in the order of measurements, shared errors, balances, and of their names
     */
    public List<Candidate> candidates() {
        List<Candidate> all = new ArrayList<>();
        for (Candidate candidate : layout.candidates()) {
            if (candidate.kind() != Candidate.Kind.MEASUREMENT
                    || layout.readingVariance(layout.nodeOf(candidate.name())) > 0) {
                all.add(candidate);
            }
        }
        return all.stream().sorted().toList();
    }

    /**
     * How well one gross error would explain what doesn't add up.
     *
     * @param candidate where it would sit
     * @return its size and what it explains; absent where an error would leave no trace, because nothing else tells of that place, or
     *     would contradict what is exact
     * @throws org.gritwright.units.InvalidInputException if the network has no such place
     */
    public Optional<Suspect> suspect(Candidate candidate) {
        int node = layout.nodeOf(candidate);
        if (!leavesTrace(node)) {
            return Optional.empty();
        }
        double precision = -inverse(node, node);
        double size = sign(candidate) * solution[node] / precision;
        return Optional.of(new Suspect(candidate, size, 1 / Math.sqrt(precision)));
    }

    /** The right side that would fit is lower than what was read too high, and higher where an error or a leak isn't zero. */
    private static int sign(Candidate candidate) {
        return candidate.kind() == Candidate.Kind.MEASUREMENT ? -1 : 1;
    }

    private boolean leavesTrace(int node) {
        double least = NOTHING * saddle.inverseSize(node);
        // Of many nothing tells anything: they aren't worth solving for.
        return !determination.isFree(node)
                && -withoutLet(saddle.inverse(node, node), node, node) > least
                && -inverse(node, node) > least;
    }

    /**
     * Single gross errors in the order of what they explain.
     *
     * @param candidates where to look
     * @return those that would leave a trace, the one that explains most in front
     * @throws org.gritwright.units.InvalidInputException if the network has no such place
     */
    public List<Suspect> suspects(Collection<Candidate> candidates) {
        return candidates.stream()
                .distinct()
                .flatMap(candidate -> suspect(candidate).stream())
                // Those that explain the same but for rounding are in the order of candidates.
                .sorted(Comparator.comparingDouble((Suspect suspect) -> -(float) suspect.drop())
                        .thenComparing(Suspect::candidate))
                .toList();
    }

    /**
     * What can hardly be told from a gross error.
     *
     * @param candidate where it would sit
     * @param among which others to look at
     * @param least the smallest correlation, without its sign, that is told; from 0 to 1
     * @return the others, the most alike in front; none if the candidate leaves no trace
     * @throws org.gritwright.units.InvalidInputException if the network has no such place, or the limit isn't within 0 to 1
     */
    public List<Likeness> alike(Candidate candidate, Collection<Candidate> among, double least) {
        Require.that(least >= 0 && least <= 1, "least correlation", "within 0 to 1", least);
        int node = layout.nodeOf(candidate);
        if (!leavesTrace(node)) {
            return List.of();
        }
        double[] column = column(node);
        List<Likeness> alike = new ArrayList<>();
        for (Candidate other : among) {
            int at = layout.nodeOf(other);
            if (at != node && leavesTrace(at)) {
                double both = Math.sqrt(inverse(node, node) * inverse(at, at));
                double ofRows = Math.max(-1, Math.min(1, column[at] / both));
                double correlation = sign(candidate) == sign(other) ? -ofRows : ofRows;
                if (Math.abs(correlation) >= least - NOTHING) {
                    alike.add(new Likeness(other, correlation));
                }
            }
        }
        return alike.stream()
                .distinct()
                .sorted(Comparator.comparingDouble((Likeness one) -> -(float) Math.abs(one.correlation()))
                        .thenComparing(Likeness::candidate))
                .toList();
    }

    /**
     * Candidates that can be told apart: those that no data could tell from each other are together.
     *
     * <p>Two right sides without any pattern are solved for; candidates whose scores agree in both have the same trace.
     *
     * @param candidates which ones
     * @return groups of those that leave a trace, each in its order, the groups in the order of their first
     * @throws org.gritwright.units.InvalidInputException if the network has no such place
     */
    public List<List<Candidate>> toldApart(Collection<Candidate> candidates) {
        List<Candidate> traced = candidates.stream()
                .distinct()
                .sorted()
                .filter(candidate -> leavesTrace(layout.nodeOf(candidate)))
                .toList();
        return Traces.groups(traced, patternless(traced, 1), patternless(traced, 2));
    }

    private double[] patternless(List<Candidate> candidates, int seed) {
        double[] right = new double[layout.nodes()];
        double[] deviation = new double[candidates.size()];
        double[] pattern = Traces.patternless(deviation.length, seed);
        for (int i = 0; i < deviation.length; i++) {
            int node = layout.nodeOf(candidates.get(i));
            deviation[i] = Math.sqrt(-inverse(node, node));
            right[node] = pattern[i] / deviation[i];
        }
        double[] pulls = project(saddle.solve(right));
        return IntStream.range(0, deviation.length)
                .mapToDouble(i -> pulls[layout.nodeOf(candidates.get(i))] / deviation[i])
                .toArray();
    }

    /**
     * Another adjustment, in which a gross error may have any size: what was read there, or what the balance says, counts no more.
     *
     * @param candidate where it sits
     * @return the adjustment, with one degree of freedom less
     * @throws org.gritwright.units.InvalidInputException if the network has no such place, or an error there leaves no trace
     */
    public Adjustment letting(Candidate candidate) {
        int node = layout.nodeOf(candidate);
        Require.that(leavesTrace(node), "gross error", "one that leaves a trace", candidate);
        double[] column = column(node);
        double[] changed = without(solution, column, node);
        List<Accepted> more = new ArrayList<>(accepted);
        more.add(new Accepted(candidate, node, column));
        return new Adjustment(network, layout, saddle, changed, determination, List.copyOf(more), degreesOfFreedom - 1);
    }

    /**
     * The gross errors that are let in.
     *
     * @return the candidates in the order in which they came
     */
    public List<Candidate> let() {
        return accepted.stream().map(one -> one.candidate).toList();
    }

    private static double[] without(double[] numbers, double[] column, int node) {
        double part = numbers[node] / column[node];
        double[] rest = new double[numbers.length];
        for (int i = 0; i < rest.length; i++) {
            rest[i] = numbers[i] - part * column[i];
        }
        rest[node] = 0;
        return rest;
    }

    private double[] project(double[] numbers) {
        double[] rest = numbers;
        for (Accepted one : accepted) {
            rest = without(rest, one.column, one.node);
        }
        return rest;
    }

    private double[] column(int node) {
        return project(saddle.column(node));
    }

    private double inverse(int one, int other) {
        double number = saddle.inverse(one, other);
        // Where so much cancelled, it is worth solving for again, refined.
        if (Double.isNaN(number) || Math.abs(number) < DOUBTFUL * saddle.inverseSize(one, other)) {
            number = saddle.column(one)[other];
        }
        return withoutLet(number, one, other);
    }

    /** A number of the inverse once the errors that are let in count no more. */
    private double withoutLet(double number, int one, int other) {
        double rest = number;
        for (Accepted let : accepted) {
            if (let.node == one || let.node == other) {
                return 0;
            }
            rest -= let.column[one] * let.column[other] / let.column[let.node];
        }
        return rest;
    }
}
