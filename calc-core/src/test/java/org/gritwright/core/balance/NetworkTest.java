package org.gritwright.core.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;

class NetworkTest {
    private static final Variable IN = Variable.measured("in", 103, 1);
    private static final Variable LEFT = Variable.measured("left", 60, 1);
    private static final Variable RIGHT = Variable.measured("right", 40, 1);
    private static final Balance FORK = Balance.of("fork", Map.of("in", 1.0, "left", -1.0, "right", -1.0));

    private static Adjustment fork(Variable... more) {
        List<Variable> variables = new ArrayList<>(List.of(IN, LEFT, RIGHT));
        variables.addAll(List.of(more));
        return Network.of(variables, List.of(FORK)).adjust();
    }

    @Test
    void whatIsEquallyUncertainIsCorrectedAlike() {
        Adjustment adjustment = fork();

        assertThat(adjustment.value("in").orElseThrow()).isCloseTo(102, within(1e-12));
        assertThat(adjustment.value("left").orElseThrow()).isCloseTo(61, within(1e-12));
        assertThat(adjustment.uncertainty("right").orElseThrow()).isCloseTo(Math.sqrt(2 / 3.0), within(1e-12));
        assertThat(adjustment.covariance("in", "left")).isCloseTo(1 / 3.0, within(1e-12));
        assertThat(adjustment.covariance("left", "right")).isCloseTo(-1 / 3.0, within(1e-12));
        assertThat(adjustment.test().misfit()).isCloseTo(3, within(1e-12));
        assertThat(adjustment.test().degreesOfFreedom()).isEqualTo(1);
        // Two sides of a normal distribution at √3.
        assertThat(adjustment.test().probability()).isCloseTo(0.0832645, within(1e-7));
        assertThat(adjustment.test().holds(0.05)).isTrue();
        assertThat(adjustment.test().holds(0.1)).isFalse();
        assertThat(adjustment.nodalTest("fork").orElseThrow()).isCloseTo(Math.sqrt(3), within(1e-12));
        assertThat(adjustment.normalizedResidual("in").orElseThrow()).isCloseTo(Math.sqrt(3), within(1e-12));
        assertThat(adjustment.influence("in", Candidate.measurement("in"))).isCloseTo(2 / 3.0, within(1e-12));
        assertThat(adjustment.influence("left", Candidate.balance("fork"))).isCloseTo(-1 / 3.0, within(1e-12));
        Estimate sum = adjustment.combination(Map.of("left", 1.0, "right", 1.0));
        assertThat(sum.value()).isCloseTo(102, within(1e-12));
        assertThat(sum.standardUncertainty()).isCloseTo(Math.sqrt(2 / 3.0), within(1e-12));
    }

    @Test
    void inOneBalanceNothingTellsOneErrorFromAnother() {
        Adjustment adjustment = fork();
        List<Candidate> all = adjustment.candidates();

        assertThat(all)
                .containsExactly(
                        Candidate.balance("fork"),
                        Candidate.measurement("in"),
                        Candidate.measurement("left"),
                        Candidate.measurement("right"));
        assertThat(adjustment.toldApart(all)).containsExactly(all);
        Suspect first = adjustment.suspects(all).get(0);
        // What blames no single measurement is named first.
        assertThat(first.candidate()).isEqualTo(Candidate.balance("fork"));
        assertThat(first.size()).isCloseTo(3, within(1e-12));
        assertThat(first.standardUncertainty()).isCloseTo(Math.sqrt(3), within(1e-12));
        assertThat(first.drop()).isCloseTo(3, within(1e-12));
        assertThat(adjustment
                        .suspect(Candidate.measurement("left"))
                        .orElseThrow()
                        .size())
                .isCloseTo(-3, within(1e-12));
        assertThat(adjustment.suspect(Candidate.balance("fork")).orElseThrow().size())
                .isCloseTo(3, within(1e-12));
        // Reading too much on one side is as reading too little on the other.
        List<Likeness> alike = adjustment.alike(Candidate.measurement("in"), all, 0.9);
        assertThat(alike)
                .extracting(Likeness::candidate)
                .containsExactlyInAnyOrder(
                        Candidate.balance("fork"), Candidate.measurement("left"), Candidate.measurement("right"));
        assertThat(adjustment.alike(Candidate.measurement("in"), all, 1)).isEqualTo(alike);
        assertThat(alike.stream()
                        .filter(one -> one.candidate().equals(Candidate.measurement("left")))
                        .findFirst()
                        .orElseThrow()
                        .correlation())
                .isCloseTo(-1, within(1e-12));
    }

    @Test
    void aMeasurementThatNothingElseTellsOfLeavesNoTrace() {
        Adjustment adjustment = fork(Variable.measured("elsewhere", 5, 2));

        assertThat(adjustment.suspect(Candidate.measurement("elsewhere"))).isEmpty();
        assertThat(adjustment.normalizedResidual("elsewhere")).isEmpty();
        assertThat(adjustment.alike(Candidate.measurement("elsewhere"), adjustment.candidates(), 0))
                .isEmpty();
        assertThat(adjustment.toldApart(adjustment.candidates())).hasSize(1);
        assertThat(adjustment.value("elsewhere")).hasValue(5);
        assertThat(adjustment.uncertainty("elsewhere").orElseThrow()).isCloseTo(2, within(1e-12));
        assertThatThrownBy(() -> adjustment.letting(Candidate.measurement("elsewhere")))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("elsewhere");
    }

    @Test
    void whatIsNotMeasuredFollowsWhereItCan() {
        Adjustment adjustment = Network.of(
                        List.of(
                                IN,
                                LEFT,
                                Variable.unmeasured("right"),
                                Variable.unmeasured("a"),
                                Variable.unmeasured("b")),
                        List.of(FORK, Balance.of("further", Map.of("right", 1.0, "a", -1.0, "b", -1.0))))
                .adjust();

        assertThat(adjustment.value("right").orElseThrow()).isCloseTo(43, within(1e-12));
        assertThat(adjustment.uncertainty("right").orElseThrow()).isCloseTo(Math.sqrt(2), within(1e-12));
        assertThat(adjustment.undetermined()).containsExactly("a", "b");
        assertThat(adjustment.value("a")).isEmpty();
        assertThat(adjustment.uncertainty("b")).isEmpty();
        assertThat(adjustment.nodalTest("further")).isEmpty();
        assertThat(adjustment.test()).isEqualTo(new GlobalTest(0, 0));
        assertThat(adjustment.test().probability()).isEqualTo(1);
        assertThatThrownBy(() -> adjustment.covariance("a", "right"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("a");
    }

    @Test
    void aSumOfWhatEachIsFollowsFromThem() {
        Adjustment adjustment = Network.of(
                        List.of(Variable.unmeasured("x"), Variable.unmeasured("y"), Variable.unmeasured("z")),
                        List.of(
                                new Balance("sum", Map.of("x", 1.0, "y", 1.0, "z", 1.0), 10),
                                new Balance("of x", Map.of("x", 1.0), 2),
                                new Balance("of y", Map.of("y", 1.0), 3),
                                new Balance("of z", Map.of("z", 1.0), 5)))
                .adjust();

        assertThat(adjustment.dependences()).singleElement().satisfies(one -> {
            List<Candidate> named = new ArrayList<>(one.others());
            named.add(one.one());
            assertThat(named)
                    .containsExactlyInAnyOrder(
                            Candidate.balance("sum"),
                            Candidate.balance("of x"),
                            Candidate.balance("of y"),
                            Candidate.balance("of z"));
        });
        assertThat(adjustment.test().degreesOfFreedom()).isZero();
        assertThat(adjustment.value("z").orElseThrow()).isCloseTo(5, within(1e-12));
    }

    @Test
    void aCoarseReadingLeavesAGoodOneAsItIs() {
        double coarse = 7e6;
        Adjustment adjustment = Network.of(
                        List.of(
                                Variable.measured("coarse", 3e6, coarse),
                                Variable.measured("one", 4, 0.7),
                                Variable.measured("other", 5, 1.3)),
                        List.of(Balance.of("sum", Map.of("coarse", 1.0, "one", -1.0, "other", -1.0))))
                .adjust();

        double variance = 0.7 * 0.7 + 1.3 * 1.3;
        assertThat(adjustment.uncertainty("coarse").orElseThrow())
                .isCloseTo(Math.sqrt(1 / (1 / variance + 1 / (coarse * coarse))), within(1e-12));
        assertThat(adjustment.uncertainty("one").orElseThrow()).isCloseTo(0.7, within(1e-12));
        assertThat(adjustment.value("coarse").orElseThrow()).isCloseTo(9, within(1e-6));
    }

    @Test
    void aBalanceThatFollowsFromOthersIsNamed() {
        Balance again = new Balance("again", Map.of("in", 2.0, "left", -2.0, "right", -2.0), 0);
        Adjustment adjustment =
                Network.of(List.of(IN, LEFT, RIGHT), List.of(FORK, again)).adjust();

        assertThat(adjustment.dependences()).hasSize(1);
        Dependence dependence = adjustment.dependences().get(0);
        List<Candidate> named = new ArrayList<>(dependence.others());
        named.add(dependence.one());
        assertThat(named).containsExactlyInAnyOrder(Candidate.balance("fork"), Candidate.balance("again"));
        assertThat(adjustment.test().degreesOfFreedom()).isEqualTo(1);
        assertThat(adjustment.value("in").orElseThrow()).isCloseTo(102, within(1e-12));
        // An error in one of both would contradict the other.
        assertThat(adjustment.suspect(Candidate.balance("fork"))).isEmpty();
        assertThat(adjustment.suspect(Candidate.measurement("in"))).isPresent();
    }

    @Test
    void balancesThatContradictEachOtherAreRefusedByName() {
        Balance other = new Balance("other", Map.of("in", 1.0, "left", -1.0, "right", -1.0), 4);
        Network network = Network.of(List.of(IN, LEFT, RIGHT), List.of(FORK, other));

        assertThatThrownBy(network::adjust)
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("balances must be free of contradictions")
                .hasMessageContaining("other")
                .hasMessageContaining("fork")
                .hasMessageContaining("4.0");
    }

    @Test
    void anExactQuantityIsNotChanged() {
        Adjustment adjustment = Network.of(List.of(Variable.exact("in", 103), LEFT, RIGHT), List.of(FORK))
                .adjust();

        assertThat(adjustment.value("in")).hasValue(103);
        assertThat(adjustment.uncertainty("in")).hasValue(0);
        assertThat(adjustment.value("left").orElseThrow()).isCloseTo(61.5, within(1e-12));
        assertThat(adjustment.candidates()).doesNotContain(Candidate.measurement("in"));

        // Unless it is let in as an error: then it is what the rest says.
        Adjustment without = adjustment.letting(Candidate.measurement("in"));
        assertThat(without.value("in").orElseThrow()).isCloseTo(100, within(1e-12));
        assertThat(without.uncertainty("in").orElseThrow()).isCloseTo(Math.sqrt(2), within(1e-12));
    }

    @Test
    void aSharedErrorCancelsWhereItIsOnBothSides() {
        Adjustment adjustment = Network.of(
                        List.of(
                                Variable.measured("before", 100, 1).sharing("density", 5),
                                Variable.measured("after", 90, 1).sharing("density", 5),
                                Variable.measured("taken", 13, 1)),
                        List.of(Balance.of("pile", Map.of("before", 1.0, "after", -1.0, "taken", -1.0))))
                .adjust();

        assertThat(adjustment.test().misfit()).isCloseTo(3, within(1e-12));
        assertThat(adjustment.suspect(Candidate.sharedError("density"))).isEmpty();
        assertThat(adjustment.nodalTest("pile").orElseThrow()).isCloseTo(-Math.sqrt(3), within(1e-12));
    }

    @Test
    void aSharedErrorIsASuspectInItsStandardDeviations() {
        Variable[] weighed = new Variable[4];
        List<Balance> balances = new ArrayList<>();
        List<Variable> all = new ArrayList<>();
        for (int i = 0; i < weighed.length; i++) {
            all.add(Variable.exact("true " + i, 100));
            all.add(Variable.measured("weighed " + i, 104, 0.5).sharing("scale", 1));
            balances.add(Balance.of("load " + i, Map.of("true " + i, 1.0, "weighed " + i, -1.0)));
        }
        Adjustment adjustment = Network.of(all, balances).adjust();

        GrossErrorSearch search = GrossErrorSearch.of(adjustment, adjustment.candidates(), 0.05, 3, 0.7);
        assertThat(search.steps()).hasSize(1);
        GrossErrorSearch.Step step = search.steps().get(0);
        assertThat(step.suspect().candidate()).isEqualTo(Candidate.sharedError("scale"));
        assertThat(step.suspect().size()).isCloseTo(4, within(1e-12));
        assertThat(step.suspect().standardUncertainty()).isCloseTo(Math.sqrt(1 + 0.25 / 4), within(1e-12));
        assertThat(step.same()).isEmpty();
        assertThat(step.before().misfit() - step.after().misfit())
                .isCloseTo(step.suspect().drop(), within(1e-9));
        assertThat(step.after().degreesOfFreedom()).isEqualTo(3);
        assertThat(search.after().let()).containsExactly(Candidate.sharedError("scale"));
        assertThat(search.before().let()).isEmpty();
        // One scale and four loads; a load and its weighing are one.
        assertThat(search.power().candidates()).isEqualTo(5);
        assertThat(step.risk())
                .isCloseTo(search.power().riskOfScore(step.suspect().score()), within(1e-15));
    }

    @Test
    void grossErrorsAreFoundOneByOneAndNoMoreThanAsked() {
        List<Variable> variables = new ArrayList<>();
        List<Balance> balances = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            variables.add(Variable.exact("true " + i, 10));
            variables.add(Variable.measured("read " + i, 10 + (i == 1 ? 7 : i == 4 ? -9 : 0.1), 1));
            balances.add(Balance.of("equal " + i, Map.of("true " + i, 1.0, "read " + i, -1.0)));
        }
        Adjustment adjustment = Network.of(variables, balances).adjust();
        List<Candidate> measured = adjustment.candidates().stream()
                .filter(one -> one.kind() == Candidate.Kind.MEASUREMENT)
                .toList();

        GrossErrorSearch all = GrossErrorSearch.of(adjustment, measured, 0.01, 5, 0.7);
        assertThat(all.steps())
                .extracting(step -> step.suspect().candidate().name())
                .containsExactly("read 4", "read 1");
        assertThat(all.steps().get(1).suspect().size()).isCloseTo(7, within(1e-12));
        assertThat(all.after().test().holds(0.05)).isTrue();
        assertThat(GrossErrorSearch.of(adjustment, measured, 0.01, 1, 0.7).steps())
                .hasSize(1);
        assertThat(GrossErrorSearch.of(adjustment, List.of(), 0.01, 1, 0.7).steps())
                .isEmpty();
        assertThat(GrossErrorSearch.of(adjustment, measured, 0.01, 0, 0.7).steps())
                .isEmpty();
        // A balance and what was read in it are one; the groups in the order of their first.
        assertThat(adjustment.toldApart(adjustment.candidates()))
                .extracting(group -> group.get(0).name(), group -> group.get(1).name())
                .containsExactly(
                        tuple("equal 0", "read 0"),
                        tuple("equal 1", "read 1"),
                        tuple("equal 2", "read 2"),
                        tuple("equal 3", "read 3"),
                        tuple("equal 4", "read 4"),
                        tuple("equal 5", "read 5"));
    }

    /** One thing that is read three times, with the standard uncertainties 1, 2 and 1. */
    private static Adjustment threeReadings(double first) {
        return Network.of(
                        List.of(
                                Variable.unmeasured("x"),
                                Variable.measured("a", first, 1),
                                Variable.measured("m", 10, 2),
                                Variable.measured("z", 10, 1)),
                        List.of(
                                Balance.of("is a", Map.of("x", 1.0, "a", -1.0)),
                                Balance.of("is m", Map.of("x", 1.0, "m", -1.0)),
                                Balance.of("is z", Map.of("x", 1.0, "z", -1.0))))
                .adjust();
    }

    @Test
    void howAlikeTwoErrorsAreFollowsFromTheWeightsOfTheirReadings() {
        // Residuals have the covariance −1/W, W = 1 + 1/4 + 1, and the variances u² − 1/W.
        List<Likeness> alike = threeReadings(10)
                .alike(
                        Candidate.measurement("a"),
                        List.of(Candidate.measurement("m"), Candidate.measurement("z")),
                        0.3);

        assertThat(alike)
                .extracting(Likeness::candidate)
                .containsExactly(Candidate.measurement("z"), Candidate.measurement("m"));
        assertThat(alike.get(0).correlation()).isCloseTo(-0.8, within(1e-12));
        assertThat(alike.get(1).correlation()).isCloseTo(-1 / Math.sqrt(10), within(1e-12));
        assertThat(threeReadings(10).alike(Candidate.measurement("a"), List.of(Candidate.measurement("m")), 0.32))
                .isEmpty();
    }

    @Test
    void whatIsFoundNamesWhatIsTheSameAndWhatIsAlike() {
        Adjustment adjustment = threeReadings(30);
        GrossErrorSearch search = GrossErrorSearch.of(adjustment, adjustment.candidates(), 0.05, 1, 0.7);
        GrossErrorSearch.Step step = search.steps().get(0);

        assertThat(step.suspect().candidate()).isEqualTo(Candidate.balance("is a"));
        assertThat(step.same()).containsExactly(Candidate.measurement("a"));
        assertThat(step.alike())
                .extracting(Likeness::candidate)
                .containsExactly(Candidate.balance("is z"), Candidate.measurement("z"));
        assertThat(search.power().candidates()).isEqualTo(3);
    }

    @Test
    void onlyWhatIsBeyondTheLimitIsFound() {
        double critical = Power.common(0.05, 1).critical();
        assertThat(searched(critical)).isEmpty();
        assertThat(searched(critical * (1 + 1e-12))).hasSize(1);
    }

    /** What is found of one reading, in its standard uncertainty, of what is known to be 0. */
    private static List<GrossErrorSearch.Step> searched(double read) {
        Adjustment adjustment = Network.of(
                        List.of(Variable.measured("read", read, 1)),
                        List.of(Balance.of("is nothing", Map.of("read", 1.0))))
                .adjust();
        return GrossErrorSearch.of(adjustment, adjustment.candidates(), 0.05, 1, 0.7)
                .steps();
    }

    @Test
    void atTheVeryRiskItStillHolds() {
        GlobalTest test = new GlobalTest(3, 1);

        assertThat(test.holds(test.probability())).isTrue();
        assertThat(test.holds(test.probability() * (1 + 1e-12))).isFalse();
    }

    @Test
    void tracesAreTheSameButForABillionth() {
        Candidate in = Candidate.measurement("in");

        assertThat(new Likeness(in, -1).isSame()).isTrue();
        assertThat(new Likeness(in, 1 - 0.9e-9).isSame()).isTrue();
        assertThat(new Likeness(in, 1 - 1e-9).isSame()).isFalse();
    }

    @Test
    void tracesThatAgreeToAMillionthOfThemselvesBelongTogether() {
        List<Candidate> three =
                List.of(Candidate.measurement("a"), Candidate.measurement("b"), Candidate.measurement("c"));

        assertThat(Traces.groups(three, new double[] {1000, -1000.0005, 1000.01}, new double[] {2, 2, 2}))
                .containsExactly(three.subList(0, 2), three.subList(2, 3));
        assertThat(Traces.groups(three, new double[] {1, 1, 1}, new double[] {2, 3, -2}))
                .containsExactly(List.of(three.get(0), three.get(2)), List.of(three.get(1)));
    }

    @Test
    void aLeakIsWhatIsMissingOnceItIsLetIn() {
        Adjustment adjustment = fork();
        assertThat(adjustment.leak("fork").value()).isCloseTo(0, within(1e-12));
        assertThat(adjustment.leak("fork").standardUncertainty()).isCloseTo(0, within(1e-7));
        Estimate leak = adjustment.letting(Candidate.balance("fork")).leak("fork");
        // 103 − 60 − 40, each to ±1.
        assertThat(leak.value()).isCloseTo(3, within(1e-12));
        assertThat(leak.standardUncertainty()).isCloseTo(Math.sqrt(3), within(1e-12));

        Balance other = new Balance("other", Map.of("in", 1.0), 100);
        Adjustment two =
                Network.of(List.of(IN, LEFT, RIGHT), List.of(FORK, other)).adjust();
        assertThat(two.letting(Candidate.balance("other")).leak("other").value())
                .isCloseTo(2, within(1e-12));
        assertThat(two.letting(Candidate.balance("fork")).leak("fork").value()).isCloseTo(0, within(1e-12));
    }

    @Test
    void errorsThatAreSharedAndDoNotCancelAreInTheBalanceTest() {
        Adjustment adjustment = Network.of(
                        List.of(
                                Variable.measured("before", 100, 1).sharing("density", 5),
                                Variable.measured("after", 90, 1).sharing("scale", 3),
                                Variable.measured("taken", 13, 1)),
                        List.of(Balance.of("pile", Map.of("before", 1.0, "after", -1.0, "taken", -1.0))))
                .adjust();

        // 1 + 5² + 1 + 3² + 1.
        assertThat(adjustment.nodalTest("pile").orElseThrow()).isCloseTo(-3 / Math.sqrt(37), within(1e-12));
        assertThat(adjustment.test().misfit()).isCloseTo(9 / 37.0, within(1e-12));
        assertThat(adjustment
                        .suspect(Candidate.sharedError("density"))
                        .orElseThrow()
                        .size())
                .isCloseTo(-3 / 5.0, within(1e-12));
        assertThat(adjustment
                        .suspect(Candidate.sharedError("scale"))
                        .orElseThrow()
                        .size())
                .isCloseTo(1, within(1e-12));
    }

    @Test
    void aBalanceOfExactQuantitiesHasNothingToTest() {
        Adjustment adjustment = Network.of(
                        List.of(Variable.exact("one", 4), Variable.exact("other", 4)),
                        List.of(Balance.of("equal", Map.of("one", 1.0, "other", -1.0))))
                .adjust();

        assertThat(adjustment.nodalTest("equal")).isEmpty();
        assertThat(adjustment.normalizedResidual("one")).isEmpty();
        assertThat(adjustment.dependences()).hasSize(1);
    }

    @Test
    void sizesFarFromOneAreNoOthers() {
        // A millionth of the fork, beside something that is known to 10⁻⁹.
        double unit = 1e-6;
        Adjustment adjustment = Network.of(
                        List.of(
                                Variable.measured("elsewhere", 5, 1e-9),
                                Variable.measured("in", 103 * unit, unit),
                                Variable.measured("left", 60 * unit, unit),
                                Variable.measured("right", 40 * unit, unit)),
                        List.of(FORK))
                .adjust();

        assertThat(adjustment.uncertainty("elsewhere").orElseThrow()).isCloseTo(1e-9, within(1e-21));
        assertThat(adjustment.uncertainty("in").orElseThrow() / unit).isCloseTo(Math.sqrt(2 / 3.0), within(1e-12));
        assertThat(adjustment.normalizedResidual("in").orElseThrow()).isCloseTo(Math.sqrt(3), within(1e-9));
        assertThat(adjustment.suspect(Candidate.measurement("in")).orElseThrow().size() / unit)
                .isCloseTo(3, within(1e-9));
    }

    @Test
    void whatIsReadRoughlyIsStillToldApart() {
        List<Variable> variables = new ArrayList<>();
        List<Balance> balances = new ArrayList<>();
        double[] uncertainties = {1e-4, 1e4, 2e4};
        for (int i = 0; i < uncertainties.length; i++) {
            variables.add(Variable.exact("true " + i, 10));
            variables.add(Variable.measured("read " + i, 10, uncertainties[i]));
            balances.add(Balance.of("equal " + i, Map.of("true " + i, 1.0, "read " + i, -1.0)));
        }
        Adjustment adjustment = Network.of(variables, balances).adjust();

        assertThat(adjustment.toldApart(adjustment.candidates())).hasSize(3).allMatch(group -> group.size() == 2);
    }

    @Test
    void whatCannotBeToldApartIsSoWhateverTheUncertainties() {
        Adjustment adjustment = Network.of(
                        List.of(
                                Variable.measured("in", 103, 0.1),
                                Variable.measured("left", 60, 2),
                                Variable.measured("right", 40, 50)),
                        List.of(FORK))
                .adjust();

        assertThat(adjustment.toldApart(adjustment.candidates())).hasSize(1);
    }

    @Test
    void whatIsUndeterminedIsSoInAnyUnit() {
        // A kilogram and a million tonnes of a thing that isn't read, in one balance.
        Adjustment adjustment = Network.of(
                        List.of(Variable.unmeasured("a"), Variable.unmeasured("b"), IN, LEFT, RIGHT),
                        List.of(FORK, Balance.of("same", Map.of("a", 1e12, "b", 1.0))))
                .adjust();

        assertThat(adjustment.undetermined()).containsExactly("a", "b");
    }

    @Test
    void aHundredBranchesAreCorrectedAlike() {
        List<Variable> variables = new ArrayList<>(List.of(Variable.measured("trunk", 201, 1)));
        Map<String, Double> terms = new HashMap<>(Map.of("trunk", 1.0));
        for (int i = 0; i < 100; i++) {
            variables.add(Variable.measured("branch " + i, 1, 1));
            terms.put("branch " + i, -1.0);
        }
        Adjustment adjustment =
                Network.of(variables, List.of(Balance.of("tree", terms))).adjust();

        assertThat(adjustment.value("trunk").orElseThrow()).isCloseTo(200, within(1e-12));
        assertThat(adjustment.value("branch 7").orElseThrow()).isCloseTo(2, within(1e-12));
        assertThat(adjustment.covariance("branch 7", "branch 8")).isCloseTo(-1 / 101.0, within(1e-12));
    }

    /**
     * Hilbert's matrix of five rows, times 2 520 to have whole numbers, has a condition of 480 000; its inverse is known in whole numbers
     * (M.-D. Choi, Tricks or treats with the Hilbert matrix, American Mathematical Monthly 90, 1983, from memory).
     */
    @Test
    void hilbertsEquationsComeOutToTheLastDigits() {
        int n = 5;
        List<Variable> variables = new ArrayList<>();
        List<Balance> balances = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Map<String, Double> terms = new HashMap<>(Map.of("read " + i, -1.0));
            for (int j = 0; j < n; j++) {
                terms.put("x" + j, 2_520.0 / (i + j + 1));
            }
            balances.add(Balance.of("row " + i, terms));
            variables.add(Variable.measured("read " + i, i + 1, 1));
        }
        for (int j = 0; j < n; j++) {
            variables.add(Variable.unmeasured("x" + j));
        }
        Adjustment adjustment = Network.of(variables, balances).adjust();

        for (int j = 0; j < n; j++) {
            double value = 0;
            double variance = 0;
            for (int i = 0; i < n; i++) {
                double inverse = hilbertInverse(n, i + 1, j + 1) / 2_520;
                value += inverse * (i + 1);
                variance += inverse * inverse;
            }
            assertThat(adjustment.value("x" + j).orElseThrow()).isCloseTo(value, within(1e-14 * Math.abs(value)));
            assertThat(adjustment.uncertainty("x" + j).orElseThrow())
                    .isCloseTo(Math.sqrt(variance), within(1e-5 * Math.sqrt(variance)));
        }
    }

    private static double hilbertInverse(int n, int i, int j) {
        return ((i + j) % 2 == 0 ? 1 : -1)
                * (i + j - 1.0)
                * binomial(n + i - 1, n - j)
                * binomial(n + j - 1, n - i)
                * Math.pow(binomial(i + j - 2, i - 1), 2);
    }

    private static double binomial(int n, int k) {
        double product = 1;
        for (int i = 1; i <= k; i++) {
            product = product * (n - k + i) / i;
        }
        return product;
    }

    @Test
    void badInputIsRefusedByName() {
        assertThatThrownBy(() -> Network.of(List.of(IN, IN), List.of()).adjust())
                .hasMessageContaining("names of quantities must be different: in twice");
        assertThatThrownBy(() -> Network.of(List.of(IN, LEFT, RIGHT), List.of(FORK, FORK))
                        .adjust())
                .hasMessageContaining("fork twice");
        assertThatThrownBy(() -> Network.of(List.of(IN, LEFT), List.of(FORK)).adjust())
                .hasMessageContaining("quantity of balance fork must be one of the network: right");
        assertThatThrownBy(() -> Variable.measured("in", 1, 0)).hasMessageContaining("uncertainty of in");
        assertThatThrownBy(() -> Variable.measured("in", Double.NaN, 1)).hasMessageContaining("in");
        assertThatThrownBy(() -> Variable.exact("in", 1).sharing("scale", 1)).hasMessageContaining("in");
        assertThatThrownBy(() -> new Variable("in", OptionalDouble.empty(), 1, Map.of()))
                .hasMessageContaining("isn't measured");
        assertThatThrownBy(() -> new CorrelatedErrors("a", "a", 0.5)).hasMessageContaining("a twice");
        assertThatThrownBy(() -> new CorrelatedErrors("a", "b", 1.5)).hasMessageContaining("1.5");
        assertThatThrownBy(() -> IN.sharing(" ", 1)).hasMessageContaining("name of an error of in");
        assertThatThrownBy(() -> IN.sharing("scale", Double.NaN)).hasMessageContaining("effect of scale on in");
        assertThatThrownBy(() -> Balance.of("fork", Map.of(" ", 1.0))).hasMessageContaining("quantity in fork");
        assertThatThrownBy(() -> Balance.of("fork", Map.of("in", Double.NaN)))
                .hasMessageContaining("coefficient of in in fork");
        assertThatThrownBy(() -> new GlobalTest(1, -1)).hasMessageContaining("degrees of freedom");
        Candidate in = Candidate.measurement("in");
        assertThatThrownBy(() -> fork().alike(in, List.of(), -0.1)).hasMessageContaining("least correlation");
        assertThatThrownBy(() -> fork().alike(in, List.of(), 1.1)).hasMessageContaining("least correlation");
        assertThatThrownBy(() -> GrossErrorSearch.of(fork(), List.of(in), 0.05, -1, 0.7))
                .hasMessageContaining("gross errors to find");
        assertThatThrownBy(() -> fork().value("up")).hasMessageContaining("up");
        assertThatThrownBy(() -> fork().suspect(Candidate.balance("up"))).hasMessageContaining("up");
        List<CorrelatedErrors> impossible = List.of(
                new CorrelatedErrors("in", "left", 0.9),
                new CorrelatedErrors("left", "right", 0.9),
                new CorrelatedErrors("in", "right", -0.9));
        assertThatThrownBy(() -> new Network(List.of(IN, LEFT, RIGHT), List.of(FORK), impossible).adjust())
                .hasMessageContaining("correlations must be possible together");
        assertThatThrownBy(() -> new Network(
                                List.of(IN, LEFT, RIGHT),
                                List.of(FORK),
                                List.of(
                                        new CorrelatedErrors("in", "left", 0.9),
                                        new CorrelatedErrors("left", "in", 0.9)))
                        .adjust())
                .hasMessageContaining("stated once");
        assertThatThrownBy(() -> new Network(
                                List.of(IN, LEFT, RIGHT), List.of(FORK), List.of(new CorrelatedErrors("in", "up", 0.9)))
                        .adjust())
                .hasMessageContaining("quantity of a correlation");
    }

    /** One quantity is stated by two balances, and the other two balances give the rest. */
    @Test
    void whatExactBalancesDetermineIsExactHoweverCoarselyItWasRead() {
        Network network = Network.of(
                List.of(
                        Variable.measured("coarse", 3500, 1000).sharing("density", 1000),
                        Variable.measured("small", -1, 0.25).sharing("density", 0.25),
                        Variable.measured("fine", -168, 1e-4)),
                List.of(
                        new Balance("difference", Map.of("coarse", -1.0, "fine", 1.0), -4264),
                        new Balance("sum", Map.of("coarse", 0.5, "small", 0.25, "fine", 0.25), 2005.765625),
                        new Balance("once", Map.of("small", 0.5), -0.46875),
                        new Balance("again", Map.of("small", -2.0), 1.875)));

        Adjustment adjustment = network.adjust();

        assertThat(adjustment.value("coarse").orElseThrow()).isCloseTo(4096, within(1e-9));
        assertThat(adjustment.uncertainty("coarse")).hasValue(0);
        assertThat(adjustment.uncertainty("fine")).hasValue(0);
        assertThat(adjustment.dependences()).hasSize(1);
    }
}
