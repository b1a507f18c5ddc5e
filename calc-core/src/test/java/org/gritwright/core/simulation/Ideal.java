package org.gritwright.core.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;

/**
 * What somebody could tell from a document who knew exactly how trucks, scales and people of the simulator behave, and
 * nothing of this truck but its document. Nothing of the assessment is used: only entries, and the geometry of the types.
 *
 * <p>The log-likelihood ℓ of a document without fault is that of a joint normal distribution of the logarithms of all
 * discharges it states ({@link Evidence}), with the simulator's priors for fill, drift, the spans of scales and
 * the scatter of catches marginalized (a document that states its scatter states the true one), plus the logarithms of what is said of delivery, road and habits ({@link Habits}). Under a fault it is that
 * of the repaired document. A fault that can be repaired in n ways has made any of them with the chance 1/n, so
 *
 * <p>Λ = 2·(max ℓ(repaired) − ln n − ℓ(recorded)).
 *
 * <p>This is the likelihood-ratio statistic of Neyman and Pearson (1933), from memory, with known priors in place of a
 * maximum. A fault is <b>visible</b> if Λ exceeds 2·ln 100 = 9.21: it is then 100 times as likely as no fault, where both
 * were equally likely before. Since the mean of a likelihood ratio without fault is at most 1, Markov's inequality
 * gives no more than one in 100 documents without fault in which it would seem visible, whatever the number of repairs. A
 * cause <b>can be told</b> if its Λ also exceeds that of every other fault by 2·ln 19, which are 95 % of both.
 */
final class Ideal {
    static final double VISIBLE = 2 * Math.log(100);
    static final double TOLD = 2 * Math.log(19);

    /** Of the logarithm of value in force ÷ discharge: from 0 to 15 % either way. */
    static final double DRIFT_DEVIATION = 0.06;

    /** Points of equal probability of the scatter of catches, where the document doesn't state it. */
    private static final int SCATTERS = 8;

    /** A rounded copy of the day's calibration agrees with it to less. */
    static final double COPIED = 0.0015;

    /**
     * What is known of how full conveyors run, as a normal distribution of the logarithm.
     *
     * @param mean of the logarithm of the fill
     * @param deviation its standard deviation
     */
    record Fill(double mean, double deviation) {
        /** As the simulator draws it. */
        static final Fill DRAWN = new Fill(TruckMaker.FILL_MEAN, TruckMaker.FILL_DEVIATION);

        /** As far as the usual fills of a type tell, which are common practice: 95 % of all trucks are within them. */
        static Fill usual(FillLimits limits) {
            return new Fill(
                    Math.log(limits.lowestUsual() * limits.highestUsual()) / 2,
                    Math.log(limits.highestUsual() / limits.lowestUsual()) / 4);
        }
    }

    private final FleetDay recorded;
    private final Fill fill;
    private final Set<Optional<Quantity<?>>> copied;
    private final double spanVariance;
    private final double[] scatters;
    private final double without;

    Ideal(TrueTruck truth, FleetDay recorded) {
        this(truth, recorded, Fill.DRAWN);
    }

    /** Somebody who knows no more of fills than this. */
    Ideal(TrueTruck truth, FleetDay recorded, Fill fill) {
        this.recorded = recorded;
        this.fill = fill;
        this.copied = copied(recorded);
        this.spanVariance = spanVariance(truth);
        this.scatters = scatters(truth);
        this.without = logLikelihood(recorded);
    }

    /** Whether two tickets say the same to the last digit. */
    static boolean isSameTicket(CatchEntry first, CatchEntry second) {
        return first.containers().equals(second.containers())
                && first.counted().equals(second.counted())
                && first.setting().equals(second.setting());
    }

    /** Where the value in force was found by the day's own calibration, it says nothing more of the discharge. */
    private static Set<Optional<Quantity<?>>> copied(FleetDay day) {
        Set<Optional<Quantity<?>>> found = new HashSet<>();
        TruckDay truck = day.trucks().get(0);
        for (InForceEntry held : Evidence.held(truck)) {
            double kilograms = 0;
            double revolutions = 0;
            for (var one : truck.calibrationCatches()) {
                if (one.entry().setting().equals(held.setting())) {
                    kilograms += Recorded.kilograms(one.entry());
                    revolutions += Recorded.revolutions(one.entry(), Edit.spreader(truck))
                            .orElse(0);
                }
            }
            double value = Evidence.kilogramsPerRevolution(held.value());
            if (revolutions > 0 && Math.abs(Math.log(kilograms / revolutions / value)) < COPIED) {
                found.add(held.setting());
            }
        }
        return found;
    }

    private boolean isCopied(InForceEntry held, FleetDay day) {
        // A repair may change what settings are called, but not their order.
        List<InForceEntry> then = Evidence.held(recorded.trucks().get(0));
        List<InForceEntry> now = Evidence.held(day.trucks().get(0));
        int index = now.indexOf(held);
        return index >= 0
                && index < then.size()
                && copied.contains(then.get(index).setting());
    }

    private static double spanVariance(TrueTruck truth) {
        double limit = truth.scale()
                .entry()
                .relativeSpanLimit(
                        Amounts.of(
                                truth.scale().kind().heaviest
                                        / truth.scale().kind().containers
                                        * truth.scale().division()
                                        / truth.scale().kind().division,
                                truth.trade().mass),
                        TruckMaker.DAY.minusYears(10))
                .orElse(TrueScale.UNKNOWN_SPAN);
        return limit * limit / 3;
    }

    /** What the scatter may be by the document: what it states, or else the simulator's prior in equal parts. */
    private static double[] scatters(TrueTruck truth) {
        if (truth.plan().states()) {
            return new double[] {truth.repeatability()};
        }
        double span = Math.log(TruckMaker.GREATEST_REPEATABILITY / TruckMaker.LEAST_REPEATABILITY);
        return IntStream.range(0, SCATTERS)
                .mapToDouble(i -> TruckMaker.LEAST_REPEATABILITY * Math.exp(span * (i + 0.5) / SCATTERS))
                .toArray();
    }

    /** Whether it can be computed with at all. */
    boolean isPossible() {
        return without != Double.NEGATIVE_INFINITY;
    }

    /** ℓ of a document, without fault. */
    private double logLikelihood(FleetDay day) {
        try {
            double sum = 0;
            for (TruckDay truck : day.trucks()) {
                sum += discharges(day, truck) + Habits.logLikelihood(truck, held -> isCopied(held, day));
            }
            return sum;
        } catch (InvalidInputException | ArithmeticException e) {
            // What can't be is not likely.
            return Double.NEGATIVE_INFINITY;
        }
    }

    /** With the scatter marginalized, as far as the document doesn't state it. */
    private double discharges(FleetDay day, TruckDay truck) {
        double[] each = Arrays.stream(scatters)
                .map(scatter -> discharges(day, truck, scatter))
                .toArray();
        double greatest = Arrays.stream(each).max().orElseThrow();
        return greatest
                + Math.log(Arrays.stream(each)
                        .map(one -> Math.exp(one - greatest))
                        .average()
                        .orElseThrow());
    }

    private double discharges(FleetDay day, TruckDay truck, double scatter) {
        Evidence evidence = Evidence.of(day, truck, scatter);
        Spreader spreader = Edit.spreader(truck).metering(Equipment.TYPES);
        List<Double> deviations = new ArrayList<>();
        List<Evidence.Discharge> all = new ArrayList<>(evidence.discharges());
        int caught = all.size();
        for (InForceEntry held : Evidence.held(truck)) {
            if (!isCopied(held, day)) {
                all.add(new Evidence.Discharge(
                        evidence.opening(held.setting()),
                        Math.log(Evidence.kilogramsPerRevolution(held.value())),
                        Evidence.logarithmOfLoose(day, held.material(), held.setting(), spreader),
                        TruckMaker.VALUE_DEVIATION * TruckMaker.VALUE_DEVIATION,
                        Optional.empty()));
            }
        }
        all.forEach(one -> deviations.add(one.logarithm() - one.logarithmOfLoose() - fill.mean()));
        double[][] covariance = new double[all.size()][all.size()];
        for (int i = 0; i < all.size(); i++) {
            for (int j = 0; j < all.size(); j++) {
                covariance[i][j] = covariance(all.get(i), all.get(j), i == j)
                        + square(fill.deviation())
                        + (all.get(i).opening() == all.get(j).opening() ? square(TruckMaker.SHAPE_DEVIATION) : 0)
                        + (i >= caught && j >= caught ? square(DRIFT_DEVIATION) : 0);
            }
        }
        return new Gaussian(covariance)
                .logDensity(deviations.stream().mapToDouble(d -> d).toArray());
    }

    private double covariance(Evidence.Discharge one, Evidence.Discharge other, boolean same) {
        boolean sameScale = one.scale().isPresent() && one.scale().equals(other.scale());
        return (same ? one.variance() : 0) + (sameScale ? spanVariance : 0);
    }

    private static double square(double number) {
        return number * number;
    }

    /** Λ of a fault, or minus infinity where it can't be in this document. */
    double ratio(Fault fault) {
        List<FleetDay> repaired = fault.repairs(recorded);
        double best = repaired.stream()
                .filter(day -> !day.equals(recorded))
                .mapToDouble(this::logLikelihood)
                .max()
                .orElse(Double.NEGATIVE_INFINITY);
        if (best == Double.NEGATIVE_INFINITY) {
            return best;
        }
        return without == Double.NEGATIVE_INFINITY
                ? Double.POSITIVE_INFINITY
                : 2 * (best - Math.log(repaired.size()) - without);
    }

    /** Whether the error of the value in force is proven to lie within the tolerance, or outside, or neither. */
    enum Decision {
        WITHIN,
        OUTSIDE,
        UNDECIDED
    }

    /**
     * The ideal rule: all catches of the day that were made at an opening say of its discharge what they say, with nothing
     * known before; the value's error is decided where 95 % of what is left lie on one side of the tolerance. A truck is
     * decided within where all its openings are, and outside where one is.
     */
    Decision decision() {
        TruckDay truck = recorded.trucks().get(0);
        double[] weights = Arrays.stream(scatters)
                .map(scatter -> discharges(recorded, truck, scatter))
                .toArray();
        double greatest = Arrays.stream(weights).max().orElseThrow();
        boolean within = true;
        for (InForceEntry held : Evidence.held(truck)) {
            double inside = 0;
            double whole = 0;
            for (int i = 0; i < scatters.length; i++) {
                double weight = Math.exp(weights[i] - greatest);
                inside += weight * insideTolerance(Evidence.of(recorded, truck, scatters[i]), held);
                whole += weight;
            }
            inside /= whole;
            if (inside <= DayMaker.RISK) {
                return Decision.OUTSIDE;
            }
            within &= inside >= 1 - DayMaker.RISK;
        }
        return within ? Decision.WITHIN : Decision.UNDECIDED;
    }

    /** The chance that the error is within the tolerance. */
    private double insideTolerance(Evidence evidence, InForceEntry held) {
        int opening = evidence.opening(held.setting());
        List<Evidence.Discharge> here = evidence.discharges().stream()
                .filter(one -> one.opening() == opening)
                .toList();
        if (here.isEmpty()) {
            return 0.5;
        }
        double[][] covariance = new double[here.size()][here.size()];
        double[] logarithms = new double[here.size()];
        double[] ones = new double[here.size()];
        for (int i = 0; i < here.size(); i++) {
            logarithms[i] = here.get(i).logarithm();
            ones[i] = 1;
            for (int j = 0; j < here.size(); j++) {
                covariance[i][j] = covariance(here.get(i), here.get(j), i == j);
            }
        }
        Gaussian scatter = new Gaussian(covariance);
        double weight = scatter.product(ones, ones);
        double discharge = scatter.product(ones, logarithms) / weight;
        double deviation = Math.sqrt(1 / weight);
        double error = Math.log(Evidence.kilogramsPerRevolution(held.value())) - discharge;
        return Rates.normalBelow((Math.log1p(DayMaker.TOLERANCE) - error) / deviation)
                - Rates.normalBelow((Math.log1p(-DayMaker.TOLERANCE) - error) / deviation);
    }
}
