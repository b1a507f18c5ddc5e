package org.gritwright.core.balance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;

/** Networks at random: some quantities measured, some with shared or correlated errors, some exact, some not measured. */
final class Networks {
    private Networks() {}

    static Arbitrary<Network> any() {
        return Arbitraries.longs().map(Networks::of);
    }

    /** The one of a seed. */
    static Network of(long seed) {
        return of(new SplittableRandom(seed), true);
    }

    /** What was read is true. */
    static Arbitrary<Network> consistent() {
        return Arbitraries.longs().map(seed -> of(new SplittableRandom(seed), false));
    }

    private static Network of(SplittableRandom random, boolean scattered) {
        int quantities = random.nextInt(3, 13);
        int balances = random.nextInt(1, 8);
        double[] truth = random.doubles(quantities, -50, 50).toArray();
        List<Variable> variables = new ArrayList<>();
        double common = random.nextGaussian();
        for (int i = 0; i < quantities; i++) {
            String name = "q" + i;
            double uncertainty = Math.exp(random.nextDouble(-2, 2));
            double kind = random.nextDouble();
            if (kind < 0.1) {
                variables.add(Variable.exact(name, truth[i]));
            } else if (kind < 0.3) {
                variables.add(Variable.unmeasured(name));
            } else {
                double effect = kind < 0.5 ? random.nextDouble(-2, 2) : 0;
                double off = scattered ? random.nextGaussian() * uncertainty + effect * common : 0;
                Variable variable = Variable.measured(name, truth[i] + off, uncertainty);
                Variable shared = effect == 0 ? variable : variable.sharing("scale", effect);
                variables.add(kind > 0.4 && kind < 0.6 ? shared.sharing("density", uncertainty) : shared);
            }
        }
        List<String> measured = variables.stream()
                .filter(Variable::isMeasured)
                .map(Variable::name)
                .toList();
        List<CorrelatedErrors> correlations = measured.size() > 3
                ? List.of(
                        new CorrelatedErrors(measured.get(0), measured.get(1), random.nextDouble(-0.6, 0.6)),
                        new CorrelatedErrors(measured.get(2), measured.get(1), random.nextDouble(-0.6, 0.6)))
                : List.of();
        return new Network(variables, balances(random, balances, truth), correlations);
    }

    private static List<Balance> balances(SplittableRandom random, int count, double[] truth) {
        double[] coefficients = {1, -1, 0.4, -2};
        List<Balance> balances = new ArrayList<>();
        for (int b = 0; b < count; b++) {
            Map<String, Double> terms = new HashMap<>();
            double constant = 0;
            int first = random.nextInt(truth.length);
            for (int i = 0; i < truth.length; i++) {
                if (i == first || random.nextDouble() < 0.35) {
                    double coefficient = coefficients[random.nextInt(coefficients.length)];
                    terms.put("q" + i, coefficient);
                    constant += coefficient * truth[i];
                }
            }
            balances.add(new Balance("b" + b, terms, constant));
        }
        return balances;
    }
}
