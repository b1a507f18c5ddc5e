package org.gritwright.core.statistics;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.gritwright.units.check.Require;

/**
 * Many small samples' variances pooled to one, without those that don't belong. Immutable, thread-safe, a value.
 *
 * <p>Bartlett's statistic, T = (ν·ln s² − Σ νᵢ·ln sᵢ²) ÷ (1 + (Σ 1/νᵢ − 1/ν) ÷ 3(k − 1)), with ν = Σ νᵢ and s² the pooled variance, is distributed as χ² with
 * k − 1 degrees of freedom where all are of one (M. S. Bartlett, Proc. R. Soc. London A 160, 1937; NIST/SEMATECH e-Handbook of Statistical
 * Methods, 1.3.5.7, from memory).
 *
 * @param pooled the variance of those that belong together
 * @param odd the places, from 0 on, of those that don't, in the order of the list
 * @param statistic Bartlett's statistic of all; none if one of the variances is 0, or there is but one
 * @param chance how likely such a statistic or a larger one is if all are of one variance; present where it is
 */
public record EqualVariances(Variance pooled, List<Integer> odd, OptionalDouble statistic, OptionalDouble chance)
        implements Serializable {
    /** The chance with which any of the variances is taken for odd if all are of one (common practice, no source). */
    public static final double RISK = 0.01;

    /** Copies the list. */
    public EqualVariances {
        Require.given(EqualVariances.class, pooled, odd, statistic, chance);
        odd = List.copyOf(odd);
    }

    /**
     * Pools variances. The one that exceeds what the others together let expect by most is odd if an F test says so at the risk of 1 % for all
     * of them together (Šidák: 1 − (1 − 0.01)^(1/k) for each); then the next is looked for among the rest. A smaller variance than the others' is
     * no reason to leave one out.
     *
     * @param variances estimates of finite degrees of freedom, one or more
     * @return what they are together
     * @throws org.gritwright.units.InvalidInputException if there is none, or one is infinitely well known
     */
    public static EqualVariances of(List<Variance> variances) {
        Require.that(!variances.isEmpty(), "variances", "one or more", "none");
        for (Variance one : variances) {
            Require.that(
                    Double.isFinite(one.degreesOfFreedom()),
                    "degrees of freedom of a variance to pool",
                    "finite",
                    one.degreesOfFreedom());
        }
        List<Integer> in = new ArrayList<>();
        for (int i = 0; i < variances.size(); i++) {
            in.add(i);
        }
        List<Integer> odd = new ArrayList<>();
        double risk = -Math.expm1(Math.log1p(-RISK) / variances.size());
        int next = oddest(variances, in, risk);
        while (next >= 0) {
            in.remove(Integer.valueOf(next));
            odd.add(next);
            next = oddest(variances, in, risk);
        }
        odd.sort(null);
        OptionalDouble statistic = bartlett(variances);
        OptionalDouble chance = statistic.isPresent()
                ? OptionalDouble.of(
                        ChiSquaredDistribution.of(variances.size() - 1.0).survivalProbability(statistic.getAsDouble()))
                : OptionalDouble.empty();
        return new EqualVariances(pool(variances, in), odd, statistic, chance);
    }

    private static Variance pool(List<Variance> variances, List<Integer> in) {
        double degrees = 0;
        double squares = 0;
        for (int i : in) {
            degrees += variances.get(i).degreesOfFreedom();
            squares += variances.get(i).degreesOfFreedom() * variances.get(i).value();
        }
        return new Variance(squares / degrees, degrees);
    }

    /** The place of the variance that is least likely to be of the others'; −1 if none is odd. */
    private static int oddest(List<Variance> variances, List<Integer> in, double risk) {
        Variance all = pool(variances, in);
        double squares = all.value() * all.degreesOfFreedom();
        int place = -1;
        double least = risk;
        for (int i : in) {
            Variance one = variances.get(i);
            double degrees = all.degreesOfFreedom() - one.degreesOfFreedom();
            double others = (squares - one.value() * one.degreesOfFreedom()) / degrees;
            if (degrees > 0 && others > 0) {
                double chance =
                        FDistribution.of(one.degreesOfFreedom(), degrees).survivalProbability(one.value() / others);
                if (chance < least) {
                    least = chance;
                    place = i;
                }
            }
        }
        return place;
    }

    private static OptionalDouble bartlett(List<Variance> variances) {
        if (variances.size() < 2 || variances.stream().anyMatch(one -> one.value() == 0)) {
            return OptionalDouble.empty();
        }
        double degrees = 0;
        double squares = 0;
        double logs = 0;
        double reciprocals = 0;
        for (Variance one : variances) {
            degrees += one.degreesOfFreedom();
            squares += one.degreesOfFreedom() * one.value();
            logs += one.degreesOfFreedom() * Math.log(one.value());
            reciprocals += 1 / one.degreesOfFreedom();
        }
        double correction = 1 + (reciprocals - 1 / degrees) / (3.0 * (variances.size() - 1));
        return OptionalDouble.of((degrees * Math.log(squares / degrees) - logs) / correction);
    }
}
