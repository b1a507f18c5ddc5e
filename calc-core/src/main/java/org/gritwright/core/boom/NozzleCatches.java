package org.gritwright.core.boom;

import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.statistics.Sample;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;

/**
 * What each nozzle of a boom gave: how even they are, which are worn or blocked, and which share each section gets. All nozzles are of
 * one size, and were caught at one pressure with one liquid; nozzles of two sizes are two of these.
 *
 * <p>Three yardsticks answer three questions, and each name says which it is. {@link #byAverageOfAll} is the published rule by its
 * letter, in which a nozzle that is far off pulls the average and makes good ones look off; {@link #byAverage} leaves such a nozzle
 * out of the average; only {@link #byNew} tells whether all are worn alike. A nozzle is called off where its excess over the
 * tolerance is shown, by the caller's {@link DecisionRule}; else the catch can't tell.
 *
 * <p>Under closed-loop flow control a worn nozzle spoils the distribution and not the total: see {@link #sectionShares}. Results are
 * in the unit of the first nozzle's flow. Immutable, thread-safe, a value.
 *
 * @param flows the nozzles, 2 to 10 000, each once in its section; one or more give something
 */
public record NozzleCatches(List<NozzleFlow> flows) {
    private static final int MOST = 10_000;

    /** "Each nozzle should be within 10 percent of the average output": University of Georgia, Special Bulletin 16, 2002, appendix. */
    public static final Tolerance OF_AVERAGE = Tolerance.percent(10);

    /** Nozzles that are off by more than 10 % of a new one are replaced: E. Ozkan, Ohio State University. */
    public static final Tolerance OF_NEW = Tolerance.percent(10);

    /** The actual rate is adjusted if it is more than 5 % off the intended one: E. Ozkan, Ohio State University, there called a guideline. */
    public static final Tolerance OF_RATE = Tolerance.percent(5);

    /** One good nozzle in twenty at the very limit would be called off (common practice, no source). */
    public static final DecisionRule GUARDED = DecisionRule.guarded(5);

    /**
     * Checks the nozzles.
     *
     * @throws InvalidInputException if there are fewer than two or more than 10 000, one is there twice, or none gives anything
     */
    public NozzleCatches {
        Require.given(NozzleCatches.class, flows);
        flows = List.copyOf(Require.noMoreThan(MOST, "nozzles of a boom", flows));
        Require.that(flows.size() >= 2, "nozzles of a boom", "two or more", flows.size());
        Set<List<String>> names = new HashSet<>();
        for (NozzleFlow one : flows) {
            Require.that(
                    names.add(List.of(one.section(), one.nozzle())),
                    "nozzle of section " + one.section(),
                    "caught once",
                    one.nozzle());
        }
        Require.that(
                flows.stream().anyMatch(one -> one.cubicMetersPerSecond() > 0),
                "flow of all nozzles",
                "greater than 0",
                0);
    }

    private Unit<FlowRate> unit() {
        return flows.get(0).flow().value().getUnit();
    }

    private double[] values() {
        return flows.stream().mapToDouble(NozzleFlow::cubicMetersPerSecond).toArray();
    }

    /**
     * The average of all nozzles.
     *
     * @return their mean, with the uncertainty that theirs make, if all of them say
     */
    public Measured<FlowRate> average() {
        double[] sensitivities = new double[flows.size()];
        Arrays.fill(sensitivities, 1.0 / flows.size());
        return measured(Sample.of(values()).mean(), sensitivities, unit());
    }

    /**
     * The coefficient of variation: sample standard deviation (n − 1 in the denominator) ÷ mean.
     *
     * @return in percent
     */
    public Quantity<Dimensionless> variation() {
        return variation(values());
    }

    static Quantity<Dimensionless> variation(double[] flows) {
        Sample sample = Sample.of(flows);
        return Amounts.ofSi(sample.deviation().orElseThrow() / sample.mean(), SpreadingUnits.PERCENT);
    }

    /**
     * All nozzles together beside the flow that rate and speed need: sum ÷ wanted − 1. It is for a boom whose pressure is held; under
     * closed-loop flow control the total is the controller's.
     *
     * @param wanted the flow that is wanted of these nozzles together, greater than zero
     * @return in percent, with the uncertainty that theirs make, if all of them say
     * @throws InvalidInputException if the wanted flow is not greater than zero
     */
    public Measured<Dimensionless> totalError(Quantity<FlowRate> wanted) {
        double cubicMetersPerSecond =
                Amounts.si(FlowRate.class, Require.positive("wanted flow", FlowRate.class, wanted));
        double[] sensitivities = new double[flows.size()];
        Arrays.fill(sensitivities, 1 / cubicMetersPerSecond);
        return measured(
                Arrays.stream(values()).sum() / cubicMetersPerSecond - 1, sensitivities, SpreadingUnits.PERCENT);
    }

    /**
     * What a person should know of the total.
     *
     * @param wanted the flow that is wanted of these nozzles together, greater than zero
     * @param tolerance how far the total may be off, such as {@link #OF_RATE}
     * @param rule how the error is compared with it
     * @return a finding if the total is shown to be off, else none
     * @throws InvalidInputException if the wanted flow is not greater than zero
     */
    public List<Finding> totalFindings(Quantity<FlowRate> wanted, Tolerance tolerance, DecisionRule rule) {
        Measured<Dimensionless> error = totalError(wanted);
        return condition(error, tolerance, rule).isOff()
                ? List.of(Finding.of(
                        FindingCode.BOOM_RATE_OFF,
                        Map.of(
                                "flow",
                                Argument.number(
                                        Amounts.ofSi(Arrays.stream(values()).sum(), unit())),
                                "wanted",
                                Argument.number(wanted),
                                "error",
                                Argument.number(error.value()),
                                "limit",
                                Argument.number(tolerance.limit()))))
                : List.of();
    }

    /**
     * Each nozzle beside the average of all, itself among them: the rule of Special Bulletin 16 by its letter. Of four nozzles one of
     * which is blocked, the three good ones are a third above the average.
     *
     * @param tolerance how far a nozzle may be from the average, such as {@link #OF_AVERAGE}
     * @param rule how a deviation is compared with it
     * @return the comparison
     */
    public NozzleReview byAverageOfAll(Tolerance tolerance, DecisionRule rule) {
        boolean[] all = new boolean[flows.size()];
        Arrays.fill(all, true);
        return byAverageOf(all, NozzleYardstick.AVERAGE_OF_ALL, isMajority(agreeing(tolerance)), tolerance, rule);
    }

    /**
     * Each nozzle beside the average of those that agree: of those within the tolerance of the median, if they are more than half of
     * all; else beside the average of all, because nobody knows then which are the good ones. Leaving the others out of the average is
     * common practice, no source.
     *
     * @param tolerance how far a nozzle may be from the average, such as {@link #OF_AVERAGE}
     * @param rule how a deviation is compared with it
     * @return the comparison, of all nozzles
     */
    public NozzleReview byAverage(Tolerance tolerance, DecisionRule rule) {
        boolean[] agreeing = agreeing(tolerance);
        if (!isMajority(agreeing) || count(agreeing) == flows.size()) {
            return byAverageOfAll(tolerance, rule);
        }
        return byAverageOf(agreeing, NozzleYardstick.AVERAGE_OF_THOSE_THAT_AGREE, true, tolerance, rule);
    }

    /**
     * Each nozzle beside what a new one gives.
     *
     * @param newNozzle the flow of a new nozzle at the pressure and with the liquid of the catches, by {@link Nozzle#flow}
     * @param tolerance how far a nozzle may be from it, such as {@link #OF_NEW}
     * @param rule how a deviation is compared with it
     * @return the comparison
     * @throws InvalidInputException if the flow is not greater than zero
     */
    public NozzleReview byNew(Quantity<FlowRate> newNozzle, Tolerance tolerance, DecisionRule rule) {
        double reference =
                Amounts.si(FlowRate.class, Require.positive("flow of a new nozzle", FlowRate.class, newNozzle));
        return review(
                NozzleYardstick.NEW_NOZZLE,
                newNozzle,
                reference,
                new double[flows.size()],
                isMajority(agreeing(tolerance)),
                tolerance,
                rule);
    }

    private NozzleReview byAverageOf(
            boolean[] kept, NozzleYardstick yardstick, boolean agree, Tolerance tolerance, DecisionRule rule) {
        double[] weights = new double[kept.length];
        Arrays.setAll(weights, i -> kept[i] ? 1.0 / count(kept) : 0);
        double[] values = values();
        double reference = Sample.of(IntStream.range(0, kept.length)
                        .filter(i -> kept[i])
                        .mapToDouble(i -> values[i])
                        .toArray())
                .mean();
        return review(yardstick, Amounts.ofSi(reference, unit()), reference, weights, agree, tolerance, rule);
    }

    private NozzleReview review(
            NozzleYardstick yardstick,
            Quantity<FlowRate> reference,
            double cubicMetersPerSecond,
            double[] weights,
            boolean agree,
            Tolerance tolerance,
            DecisionRule rule) {
        List<NozzleComparison> comparisons = IntStream.range(0, flows.size())
                .mapToObj(i -> {
                    Measured<Dimensionless> deviation = deviation(i, cubicMetersPerSecond, weights);
                    return new NozzleComparison(flows.get(i), deviation, condition(deviation, tolerance, rule));
                })
                .toList();
        return new NozzleReview(yardstick, reference, tolerance, comparisons, agree);
    }

    /** q ÷ m − 1 with m = Σ wⱼ · qⱼ, or a flow that is no average and has no weights. */
    private Measured<Dimensionless> deviation(int nozzle, double reference, double[] weights) {
        double ratio = flows.get(nozzle).cubicMetersPerSecond() / reference;
        double[] sensitivities = new double[weights.length];
        Arrays.setAll(sensitivities, j -> ((j == nozzle ? 1 : 0) - ratio * weights[j]) / reference);
        return measured(ratio - 1, sensitivities, SpreadingUnits.PERCENT);
    }

    /** A result in SI, with the fewest degrees of freedom of what goes into it. */
    private <Q extends Quantity<Q>> Measured<Q> measured(double value, double[] sensitivities, Unit<Q> unit) {
        Quantity<Q> result = Amounts.ofSi(value, unit);
        double uncertainty = 0;
        double degreesOfFreedom = Double.POSITIVE_INFINITY;
        for (int i = 0; i < sensitivities.length; i++) {
            Measured<FlowRate> flow = flows.get(i).flow();
            if (sensitivities[i] == 0) {
                continue;
            }
            if (flow.standardUncertainty().isEmpty()) {
                return Measured.once(result);
            }
            double own = Amounts.si(FlowRate.class, flow.standardUncertainty().get());
            uncertainty = Math.hypot(uncertainty, sensitivities[i] * own);
            degreesOfFreedom =
                    Math.min(degreesOfFreedom, flow.degreesOfFreedom().orElseThrow());
        }
        return Measured.of(result, Amounts.ofSi(uncertainty, unit), degreesOfFreedom);
    }

    private static NozzleCondition condition(
            Measured<Dimensionless> deviation, Tolerance tolerance, DecisionRule rule) {
        if (rule.risk().isPresent() && deviation.standardUncertainty().isEmpty()) {
            return NozzleCondition.UNDECIDED;
        }
        double error = Amounts.si(Dimensionless.class, deviation.value());
        double guardBand = rule.guardBand(
                deviation
                        .standardUncertainty()
                        .map(u -> Amounts.si(Dimensionless.class, u))
                        .orElse(0.0),
                deviation.degreesOfFreedom().orElse(Double.POSITIVE_INFINITY));
        return switch (rule.verdict(error, guardBand, tolerance)) {
            case WITHIN_TOLERANCE -> NozzleCondition.WITHIN;
            case OUTSIDE_TOLERANCE -> error > 0 ? NozzleCondition.HIGH : NozzleCondition.LOW;
            case UNDECIDED, UNDECIDABLE -> NozzleCondition.UNDECIDED;
        };
    }

    /** Which lie within the tolerance of the median. */
    private boolean[] agreeing(Tolerance tolerance) {
        double[] values = values();
        double[] sorted = Arrays.stream(values).sorted().toArray();
        double median = (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
        boolean[] agreeing = new boolean[values.length];
        for (int i = 0; i < values.length; i++) {
            // Nozzles that give nothing agree on nothing.
            agreeing[i] =
                    median > 0 && !Comparison.isAbove(Math.abs(values[i] - median), tolerance.ratio() * median, median);
        }
        return agreeing;
    }

    private static int count(boolean[] kept) {
        return (int) IntStream.range(0, kept.length).filter(i -> kept[i]).count();
    }

    private static boolean isMajority(boolean[] kept) {
        return 2 * count(kept) > kept.length;
    }

    /**
     * Which share of the flow each section gets. Under closed-loop flow control these are the shares of the flow that the controller
     * keeps: a worn nozzle takes from all others, and the total doesn't show it.
     *
     * @return the shares, in the order in which the sections come first
     */
    public List<SectionShare> sectionShares() {
        double total = Arrays.stream(values()).sum();
        Map<String, List<NozzleFlow>> sections = flows.stream()
                .collect(Collectors.groupingBy(NozzleFlow::section, LinkedHashMap::new, Collectors.toList()));
        return sections.entrySet().stream()
                .map(section -> {
                    int nozzles = section.getValue().size();
                    double share = section.getValue().stream()
                                    .mapToDouble(NozzleFlow::cubicMetersPerSecond)
                                    .sum()
                            / total;
                    double even = (double) nozzles / flows.size();
                    return new SectionShare(
                            section.getKey(),
                            nozzles,
                            Amounts.ofSi(share, SpreadingUnits.PERCENT),
                            Amounts.ofSi(even, SpreadingUnits.PERCENT),
                            Amounts.ofSi(share / even - 1, SpreadingUnits.PERCENT));
                })
                .toList();
    }
}
