package org.gritwright.core.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Laws of networks, and the same by another way. */
class NetworkLawsTest {
    /** Of values up to some hundreds; far above rounding, far below what a wrong formula does. */
    private static final double ROUNDING = 1e-6;

    @Provide
    Arbitrary<Network> networks() {
        return Networks.any();
    }

    @Provide
    Arbitrary<Network> consistent() {
        return Networks.consistent();
    }

    private static List<String> names(Network network) {
        return network.variables().stream().map(Variable::name).toList();
    }

    private static void assertSame(OptionalDouble one, OptionalDouble other, double tolerance) {
        assertThat(one.isPresent()).isEqualTo(other.isPresent());
        if (one.isPresent()) {
            assertThat(one.getAsDouble()).isCloseTo(other.getAsDouble(), within(tolerance));
        }
    }

    private static OptionalDouble variance(OptionalDouble uncertainty) {
        return uncertainty.isPresent()
                ? OptionalDouble.of(uncertainty.getAsDouble() * uncertainty.getAsDouble())
                : uncertainty;
    }

    /** The variance of a measurement, with what it shares. */
    private static double stated(Variable variable) {
        return variable.standardUncertainty() * variable.standardUncertainty()
                + variable.shared().values().stream()
                        .mapToDouble(effect -> effect * effect)
                        .sum();
    }

    private static Network without(Network network, Candidate candidate) {
        if (candidate.kind() == Candidate.Kind.BALANCE) {
            return new Network(
                    network.variables(),
                    network.balances().stream()
                            .filter(balance -> !balance.name().equals(candidate.name()))
                            .toList(),
                    network.correlations());
        }
        return new Network(
                network.variables().stream()
                        .map(one -> one.name().equals(candidate.name()) ? Variable.unmeasured(one.name()) : one)
                        .toList(),
                network.balances(),
                network.correlations().stream()
                        .filter(pair -> !List.of(pair.first(), pair.second()).contains(candidate.name()))
                        .toList());
    }

    @Property
    void agreesWithFullMatrices(@ForAll("networks") Network network) {
        Adjustment adjustment = network.adjust();
        DenseAdjustment dense = new DenseAdjustment(network);

        for (String name : names(network)) {
            assertThat(adjustment.value(name).isPresent()).isEqualTo(dense.isDetermined(name));
            assertThat(adjustment.undetermined().contains(name)).isEqualTo(!dense.isDetermined(name));
            if (dense.isDetermined(name)) {
                double deviation = Math.sqrt(1 + dense.covariance(name, name));
                assertThat(adjustment.value(name).orElseThrow())
                        .isCloseTo(dense.value(name), within(ROUNDING * deviation));
                for (String other : names(network)) {
                    if (dense.isDetermined(other)) {
                        double size = Math.sqrt(1 + dense.covariance(name, name) * dense.covariance(other, other));
                        assertThat(adjustment.covariance(name, other))
                                .isCloseTo(dense.covariance(name, other), within(ROUNDING * size));
                    }
                }
            }
        }
        assertThat((double) adjustment.test().degreesOfFreedom()).isCloseTo(dense.degreesOfFreedom(), within(1e-6));
        assertThat(adjustment.test().misfit()).isCloseTo(dense.misfit(), within(ROUNDING * (1 + dense.misfit())));
    }

    /** In these, what is nothing is far from it until it is solved for again. */
    @Example
    void whatExactBalancesDetermineIsExact() {
        assertThat(Networks.of(4171).adjust().uncertainty("q1")).hasValue(0);
        assertThat(Networks.of(10_725).adjust().uncertainty("q3")).hasValue(0);
        assertThat(Networks.of(42_168).adjust().uncertainty("q3")).hasValue(0);
        assertThat(Networks.of(58_274).adjust().uncertainty("q4")).hasValue(0);
    }

    /** Nor has it anything in common with others: beside variances of hundreds, rounding left 1e-7 in some of these. */
    @Example
    void whatIsExactVariesWithNothing() {
        for (long part : new long[] {3408, 34_035, 48_588, 265_554}) {
            Network network = Networks.of(part * 0x9E37_79B9_7F4A_7C15L);
            Adjustment adjustment = network.adjust();
            List<String> exact = names(network).stream()
                    .filter(name -> adjustment.uncertainty(name).equals(OptionalDouble.of(0)))
                    .toList();
            assertThat(exact).hasSizeGreaterThan(2);
            for (String one : exact) {
                for (String other : exact) {
                    assertThat(adjustment.covariance(one, other)).isCloseTo(0, within(1e-15));
                }
            }
        }
    }

    private static boolean isIndependent(Network network, Candidate candidate) {
        return candidate.kind() == Candidate.Kind.MEASUREMENT
                && network.variables().stream()
                        .filter(one -> one.name().equals(candidate.name()))
                        .allMatch(one -> one.shared().isEmpty())
                && network.correlations().stream()
                        .noneMatch(pair -> List.of(pair.first(), pair.second()).contains(candidate.name()));
    }

    @Property
    void aSuspectExplainsWhatTheRestFitsBetterWithoutIt(@ForAll("networks") Network network) {
        Adjustment adjustment = network.adjust();
        double misfit = adjustment.test().misfit();
        for (Candidate candidate : adjustment.candidates()) {
            if (candidate.kind() == Candidate.Kind.SHARED_ERROR) {
                continue;
            }
            DenseAdjustment rest = new DenseAdjustment(without(network, candidate));
            Optional<Suspect> suspect = adjustment.suspect(candidate);
            assertThat(misfit - suspect.map(Suspect::drop).orElse(0.0))
                    .isCloseTo(rest.misfit(), within(ROUNDING * (1 + misfit)));
            // What others share tells of an error beside the value.
            if (suspect.isPresent() && isIndependent(network, candidate)) {
                double read = network.variables().stream()
                        .filter(one -> one.name().equals(candidate.name()))
                        .findFirst()
                        .orElseThrow()
                        .value()
                        .orElseThrow();
                assertThat(suspect.get().size()).isCloseTo(read - rest.value(candidate.name()), within(1e-5));
            }
        }
    }

    @Property
    void lettingAnErrorInIsTheNetworkWithoutThatPlace(@ForAll("networks") Network network) {
        Adjustment adjustment = network.adjust();
        adjustment.suspects(adjustment.candidates()).stream()
                .map(Suspect::candidate)
                .filter(candidate -> candidate.kind() != Candidate.Kind.SHARED_ERROR)
                .findFirst()
                .ifPresent(candidate -> {
                    Adjustment let = adjustment.letting(candidate);
                    Adjustment without = without(network, candidate).adjust();
                    assertThat(let.test().degreesOfFreedom())
                            .isEqualTo(without.test().degreesOfFreedom())
                            .isEqualTo(adjustment.test().degreesOfFreedom() - 1);
                    assertThat(let.test().misfit())
                            .isCloseTo(
                                    without.test().misfit(),
                                    within(ROUNDING * (1 + adjustment.test().misfit())));
                    for (String name : names(network)) {
                        assertSame(let.value(name), without.value(name), 1e-6);
                        assertSame(let.uncertainty(name), without.uncertainty(name), 1e-5);
                    }
                    for (Candidate other : without.candidates()) {
                        let.suspect(other)
                                .ifPresent(one -> assertThat(one.drop())
                                        .isCloseTo(
                                                without.suspect(other)
                                                        .orElseThrow()
                                                        .drop(),
                                                within(1e-5
                                                        * (1 + adjustment.test().misfit()))));
                    }
                });
    }

    @Property
    void theOrderDoesNotMatter(@ForAll("networks") Network network, @ForAll Random random) {
        List<Variable> variables = new ArrayList<>(network.variables());
        List<Balance> balances = new ArrayList<>(network.balances());
        Collections.shuffle(variables, random);
        Collections.shuffle(balances, random);
        Adjustment one = network.adjust();
        Adjustment other = new Network(variables, balances, network.correlations()).adjust();

        for (String name : names(network)) {
            assertSame(one.value(name), other.value(name), ROUNDING);
            assertSame(one.uncertainty(name), other.uncertainty(name), 1e-6);
            assertSame(one.normalizedResidual(name), other.normalizedResidual(name), 1e-5);
        }
        assertThat(other.test().degreesOfFreedom()).isEqualTo(one.test().degreesOfFreedom());
        assertThat(other.candidates()).isEqualTo(one.candidates());
        assertThat(other.toldApart(other.candidates())).isEqualTo(one.toldApart(one.candidates()));
        assertThat(other.dependences()).hasSameSizeAs(one.dependences());
    }

    @Property
    void theUnitDoesNotMatter(@ForAll("networks") Network network, @ForAll Random random) {
        Map<String, Double> per = new HashMap<>();
        List<Variable> variables = new ArrayList<>();
        for (Variable variable : network.variables()) {
            double factor = Math.exp(random.nextDouble() * 20 - 10);
            per.put(variable.name(), factor);
            Map<String, Double> shared = new HashMap<>();
            variable.shared().forEach((error, effect) -> shared.put(error, effect * factor));
            variables.add(new Variable(
                    variable.name(),
                    variable.value().isPresent()
                            ? OptionalDouble.of(variable.value().getAsDouble() * factor)
                            : OptionalDouble.empty(),
                    variable.standardUncertainty() * factor,
                    shared));
        }
        List<Balance> balances = network.balances().stream()
                .map(balance -> {
                    double factor = Math.exp(random.nextDouble() * 20 - 10);
                    Map<String, Double> terms = new HashMap<>();
                    balance.terms().forEach((name, number) -> terms.put(name, number * factor / per.get(name)));
                    return new Balance(balance.name(), terms, balance.constant() * factor);
                })
                .toList();
        Adjustment one = network.adjust();
        Adjustment other = new Network(variables, balances, network.correlations()).adjust();
        // What is known exactly is so as the difference of large variances, and its root is rounded by the root of what
        // they are.
        double ofVariances = 1e-8
                * (1
                        + network.variables().stream()
                                .mapToDouble(NetworkLawsTest::stated)
                                .max()
                                .orElse(0));

        for (String name : names(network)) {
            double factor = per.get(name);
            assertSame(one.value(name), scaled(other.value(name), 1 / factor), ROUNDING);
            assertSame(
                    variance(one.uncertainty(name)),
                    variance(scaled(other.uncertainty(name), 1 / factor)),
                    ofVariances);
        }
        assertThat(other.test().misfit())
                .isCloseTo(
                        one.test().misfit(), within(ROUNDING * (1 + one.test().misfit())));
        assertThat(other.test().degreesOfFreedom()).isEqualTo(one.test().degreesOfFreedom());
        for (Candidate candidate : one.candidates()) {
            assertThat(other.suspect(candidate).map(Suspect::drop).orElse(-1.0))
                    .isCloseTo(
                            one.suspect(candidate).map(Suspect::drop).orElse(-1.0),
                            within(1e-5 * (1 + one.test().misfit())));
        }
    }

    private static OptionalDouble scaled(OptionalDouble number, double factor) {
        return number.isPresent() ? OptionalDouble.of(number.getAsDouble() * factor) : number;
    }

    @Property
    void whatIsAdjustedAddsUp(@ForAll("networks") Network network) {
        Adjustment adjustment = network.adjust();
        for (Balance balance : network.balances()) {
            if (balance.terms().keySet().stream()
                    .allMatch(name -> adjustment.value(name).isPresent())) {
                double sum = -balance.constant();
                double size = Math.abs(sum);
                for (Map.Entry<String, Double> term : balance.terms().entrySet()) {
                    double part =
                            term.getValue() * adjustment.value(term.getKey()).orElseThrow();
                    sum += part;
                    size += Math.abs(part);
                }
                assertThat(sum).isCloseTo(0, within(1e-13 * (size + 1)));
            }
        }
    }

    @Property
    void oneMoreBalanceMakesNothingLessCertain(@ForAll("networks") Network network) {
        List<Balance> balances = network.balances();
        Adjustment fewer = new Network(
                        network.variables(), balances.subList(0, balances.size() - 1), network.correlations())
                .adjust();
        Adjustment more = network.adjust();
        for (String name : names(network)) {
            if (fewer.uncertainty(name).isPresent()) {
                assertThat(more.uncertainty(name).orElseThrow())
                        .isLessThanOrEqualTo(fewer.uncertainty(name).orElseThrow() + 1e-6);
            }
        }
    }

    @Property
    void whatAddsUpAsItWasReadHasNoMisfit(@ForAll("consistent") Network network) {
        Adjustment adjustment = network.adjust();
        assertThat(adjustment.test().misfit()).isLessThan(1e-18);
        for (Variable variable : network.variables()) {
            variable.value()
                    .ifPresent(
                            read -> assertThat(adjustment.value(variable.name()).orElseThrow())
                                    .isCloseTo(read, within(1e-10)));
        }
    }

    @Property
    void anAdjustedValueIsMadeOfWhatWasRead(@ForAll("networks") Network network) {
        Adjustment adjustment = network.adjust();
        for (String name : names(network)) {
            if (adjustment.value(name).isPresent()) {
                List<Double> parts = new ArrayList<>();
                for (Variable one : network.variables()) {
                    if (one.value().isPresent()) {
                        parts.add(one.value().getAsDouble()
                                * adjustment.influence(name, Candidate.measurement(one.name())));
                    }
                }
                for (Balance one : network.balances()) {
                    parts.add(one.constant() * adjustment.influence(name, Candidate.balance(one.name())));
                }
                double sum = parts.stream().mapToDouble(part -> part).sum();
                double size = parts.stream().mapToDouble(Math::abs).sum();
                assertThat(sum).isCloseTo(adjustment.value(name).getAsDouble(), within(1e-6 * (1 + size)));
            }
        }
    }
}
