package org.gritwright.core.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.uncertainty.Components.a;
import static org.gritwright.core.uncertainty.Components.b;
import static org.gritwright.core.uncertainty.Components.degrees;
import static org.gritwright.core.uncertainty.Components.normal;
import static org.gritwright.core.uncertainty.Components.u;

import java.util.List;
import java.util.Set;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("locale")
class BudgetTest {
    private static Budget<Mass> of(List<Component<Mass>> components, Correlation... correlations) {
        return Budget.of(pounds(60), components, List.of(correlations));
    }

    @Test
    void independentComponentsAddInSquares() {
        Budget<Mass> budget = of(List.of(a("scatter", 3, 2), normal("span", -4)));

        assertThat(u(budget)).isCloseTo(5, within(1e-14));
        // 5⁴ ÷ (3⁴/2)
        assertThat(degrees(budget)).isCloseTo(625 / 40.5, within(1e-12));
        assertThat(budget.shareOf(budget.components().get(0))).isCloseTo(0.36, within(1e-15));
        assertThat(budget.shareOf(budget.components().get(1))).isCloseTo(0.64, within(1e-15));
        assertThat(budget.dominant()).contains(normal("span", -4));
        assertThat(budget.result().value()).isEqualTo(pounds(60));
    }

    @Test
    void aGroupIsOneErrorWithItsSigns() {
        assertThat(u(of(List.of(normal("a", 3).inGroup("span"), normal("b", 4).inGroup("span")))))
                .isCloseTo(7, within(1e-14));
        assertThat(u(of(List.of(normal("a", 3).inGroup("span"), normal("b", -4).inGroup("span")))))
                .isCloseTo(1, within(1e-14));
        assertThat(u(of(List.of(normal("a", 3).inGroup("one"), normal("b", 4).inGroup("other")))))
                .isCloseTo(5, within(1e-14));
    }

    @Test
    void aGroupKeepsItsDegreesOfFreedom() {
        assertThat(degrees(of(List.of(a("a", 3, 2).inGroup("g"), a("b", 4, 2).inGroup("g")))))
                .isCloseTo(2, within(1e-12));
        // As independent ones they would have more: 25² ÷ (9²/2 + 16²/2).
        assertThat(degrees(of(List.of(a("a", 3, 2), a("b", 4, 2))))).isCloseTo(625 / 168.5, within(1e-12));
    }

    @Test
    void correlatedComponentsAreABlockWithTheFewestDegreesOfFreedom() {
        Budget<Mass> budget = of(List.of(a("a", 3, 2), a("b", 4, 9), a("c", 12, 5)), new Correlation("a", "b", 0.5));

        // 9 + 16 + 2·0.5·12 = 37, and 144.
        assertThat(u(budget)).isCloseTo(Math.sqrt(181), within(1e-13));
        assertThat(degrees(budget)).isCloseTo(181.0 * 181 / (37.0 * 37 / 2 + 144.0 * 144 / 5), within(1e-10));
        assertThat(budget.shareOf(budget.components().get(0))).isCloseTo((9 + 6) / 181.0, within(1e-14));
        assertThat(budget.correlations()).containsExactly(new Correlation("a", "b", 0.5));
    }

    @Test
    void blocksReachThroughOthers() {
        Budget<Mass> budget = of(
                List.of(a("a", 1, 8), a("b", 1, 4), a("c", 1, 6)),
                new Correlation("a", "c", 0.5),
                new Correlation("c", "b", 0.5));

        assertThat(degrees(budget)).isCloseTo(4, within(1e-12));
    }

    @Test
    void whatMakesUpForAnotherHasANegativeShare() {
        Budget<Mass> budget = of(List.of(normal("a", 3), normal("b", -1)), new Correlation("a", "b", 1));

        assertThat(u(budget)).isCloseTo(2, within(1e-14));
        assertThat(budget.shareOf(budget.components().get(1))).isCloseTo(-0.5, within(1e-14));
        assertThat(budget.shareOf(budget.components().get(0))).isCloseTo(1.5, within(1e-14));
    }

    @Test
    void withoutComponentsNothingIsUncertain() {
        Budget<Mass> budget = of(List.of());

        assertThat(u(budget)).isZero();
        assertThat(degrees(budget)).isInfinite();
        assertThat(budget.dominant()).isEmpty();
    }

    @Test
    void componentsOfNothingAreAsGoodAsNone() {
        Budget<Mass> budget = of(List.of(a("a", 0, 2), normal("b", 0)));

        assertThat(u(budget)).isZero();
        assertThat(degrees(budget)).isInfinite();
        assertThat(budget.shareOf(normal("b", 0))).isZero();
        assertThat(budget.dominant()).isEmpty();
    }

    @Test
    void withoutSomeItIsTheBudgetOfTheOthers() {
        Budget<Mass> budget = of(List.of(a("a", 3, 2), a("b", 4, 9), a("c", 12, 5)), new Correlation("a", "b", 0.5));

        assertThat(budget.without(Set.of(ComponentKey.of("b"), ComponentKey.of("unheard of"))))
                .isEqualTo(of(List.of(a("a", 3, 2), a("c", 12, 5))));
        assertThat(budget.without(Set.of(ComponentKey.of("c"))))
                .isEqualTo(of(List.of(a("a", 3, 2), a("b", 4, 9)), new Correlation("a", "b", 0.5)));
    }

    @Test
    void aComponentIsFoundByItsKeyWhateverItIsCalled() {
        Component<Mass> span =
                Component.typeB(ComponentKey.of("span", "S-1"), "any name", Distribution.NORMAL, pounds(1), pounds(1));
        Budget<Mass> budget = of(List.of(normal("a", 3), span));

        assertThat(budget.component(ComponentKey.of("span", "S-1"))).contains(span);
        assertThat(budget.component(ComponentKey.of("a"))).contains(normal("a", 3));
        assertThat(budget.component(ComponentKey.of("any name"))).isEmpty();
        assertThat(budget.component(ComponentKey.of("span", "S-2"))).isEmpty();
        assertThat(budget.without(Set.of(ComponentKey.of("span", "S-1")))).isEqualTo(of(List.of(normal("a", 3))));
    }

    @Test
    void twoOfOneSourceDifferByTheirSubject() {
        Component<Mass> one = Component.typeB(
                ComponentKey.of("span", "S-1"), "span of a scale", Distribution.NORMAL, pounds(3), pounds(3));
        Component<Mass> other = Component.typeB(
                ComponentKey.of("span", "S-2"), "span of a scale", Distribution.NORMAL, pounds(4), pounds(4));

        assertThat(u(of(List.of(one, other)))).isCloseTo(5, within(1e-14));
        assertRefused("key of an uncertainty must be in the budget once: span of S-1", () -> of(List.of(one, one)));
    }

    @Test
    void contributionsMayBeInAnotherUnit() {
        Component<Mass> kilogram = Component.typeB(
                "kilogram",
                Distribution.NORMAL,
                Amounts.of(1, SpreadingUnits.KILOGRAM),
                Amounts.of(1, SpreadingUnits.KILOGRAM));

        assertThat(u(of(List.of(kilogram)))).isCloseTo(2.2046226218, within(1e-9));
        assertThat(of(List.of(kilogram)).result().value()).isEqualTo(pounds(60));
    }

    @Test
    void isEqualWhenValueComponentsAndCorrelationsAre() {
        List<Component<Mass>> components = List.of(a("a", 3, 2), a("b", 4, 9));
        Correlation r = new Correlation("a", "b", 0.5);

        assertThat(of(components, r))
                .isEqualTo(of(components, r))
                .hasSameHashCodeAs(of(components, r))
                .isNotEqualTo(of(components))
                .isNotEqualTo(of(List.of(a("a", 3, 2)), new Correlation[0]))
                .isNotEqualTo(Budget.of(pounds(61), components, List.of(r)))
                .isNotEqualTo("a budget");
    }

    @Test
    void keysAreThereOnce() {
        assertRefused(
                "key of an uncertainty must be in the budget once: a",
                () -> of(List.of(normal("a", 1), normal("a", 2))));
    }

    @Test
    void aGroupIsOfOneDistributionAndTheSameDegreesOfFreedom() {
        assertRefused(
                "group g must be of one distribution and the same degrees of freedom, as it is one error: a and b",
                () -> of(List.of(
                        normal("a", 1).inGroup("g"),
                        b("b", Distribution.RECTANGULAR, 1).inGroup("g"))));
        assertRefused(
                "group g must be of one distribution and the same degrees of freedom, as it is one error: a and b",
                () -> of(List.of(a("a", 1, 2).inGroup("g"), a("b", 1, 3).inGroup("g"))));
    }

    @Test
    void correlationsAreOfComponentsThatAreThereAndInNoGroup() {
        assertRefused(
                "correlated component must be one of the budget that is in no group: c",
                () -> of(List.of(normal("a", 1), normal("b", 1)), new Correlation("a", "c", 0.5)));
        assertRefused(
                "correlated component must be one of the budget that is in no group: b",
                () -> of(List.of(normal("a", 1), normal("b", 1).inGroup("g")), new Correlation("a", "b", 0.5)));
    }

    @Test
    void aPairIsCorrelatedOnce() {
        List<Component<Mass>> two = List.of(normal("a", 1), normal("b", 1));

        assertRefused(
                "correlation must be stated once per pair: b and a",
                () -> of(two, new Correlation("a", "b", 0.5), new Correlation("b", "a", 0.5)));
        assertRefused(
                "correlation must be stated once per pair: a and b",
                () -> of(two, new Correlation("a", "b", 0), new Correlation("a", "b", 0.5)));
    }

    @Test
    void refusesCorrelationsThatNoErrorsCouldHave() {
        List<Component<Mass>> three = List.of(normal("a", 1), normal("b", 1), normal("c", 1));

        assertRefused(
                "correlations must be possible together: [a with b 0.9," + " b with c 0.9," + " a with c -0.9]",
                () -> of(
                        three,
                        new Correlation("a", "b", 0.9),
                        new Correlation("b", "c", 0.9),
                        new Correlation("a", "c", -0.9)));
        // a is b, so it can't have another correlation with c than b has.
        assertRefused(
                "correlations must be possible together: [a with b 1.0," + " a with c 0.5]",
                () -> of(three, new Correlation("a", "b", 1), new Correlation("a", "c", 0.5)));
        assertThat(u(of(
                        three,
                        new Correlation("a", "b", 1),
                        new Correlation("a", "c", 0.5),
                        new Correlation("b", "c", 0.5))))
                .isCloseTo(Math.sqrt(3 + 2 * (1 + 0.5 + 0.5)), within(1e-12));
    }

    /** Of a that is b, another correlation with c is taken for rounding as far as √10⁻⁹. */
    @Test
    void whatRoundingMayHaveDoneToCorrelationsPasses() {
        List<Component<Mass>> three = List.of(normal("a", 1), normal("b", 1), normal("c", 1));
        double rounding = Math.sqrt(1e-9);

        assertThat(u(of(three, new Correlation("a", "b", 1), new Correlation("b", "c", rounding))))
                .isCloseTo(Math.sqrt(5 + 2 * rounding), within(1e-12));
        assertThatThrownBy(
                        () -> of(three, new Correlation("a", "b", 1), new Correlation("b", "c", Math.nextUp(rounding))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("correlations must be possible together");
    }

    @Test
    void threeThatAllOpposeEachOtherGoAsFarAsHalf() {
        List<Component<Mass>> three = List.of(normal("a", 1), normal("b", 1), normal("c", 1));

        assertThat(u(of(
                        three,
                        new Correlation("a", "b", -0.5),
                        new Correlation("b", "c", -0.5),
                        new Correlation("a", "c", -0.5))))
                .isCloseTo(0, within(1e-7));
    }

    @Test
    void asksOnlyForSharesOfItsOwn() {
        assertRefused(
                "component must be one of the budget: z",
                () -> of(List.of(normal("a", 1))).shareOf(normal("z", 1)));
    }

    @Test
    void refusesAValueThatIsNotFinite() {
        assertRefused(
                "value must be finite: NaN",
                () -> Budget.of(foreign(Double.NaN, SpreadingUnits.POUND), List.of(normal("a", 1))));
    }

    @Test
    void asTextItIsATable() {
        Budget<Mass> budget = Budget.of(
                pounds(59.98765),
                List.of(
                        a("scatter of the catches", 0.3, 2),
                        b("span of scale S-1", Distribution.RECTANGULAR, -0.4).inGroup("S-1")));

        assertThat(budget).hasToString("""
                component                type  distribution  standard uncertainty  contribution  share   degrees of freedom
                scatter of the catches   A     normal        0.3 lb                0.3 lb        36.0 %  2
                span of scale S-1 (S-1)  B     rectangular   0.4 lb                -0.4 lb       64.0 %  ∞
                combined                                                           0.5 lb        100 %   15.4
                59.99 lb ± 1.06 lb (95 %)""");
    }

    @Test
    void asTextABudgetOfNothingHasNoShares() {
        assertThat(of(List.of())).hasToString("""
                component  type  distribution  standard uncertainty  contribution  share  degrees of freedom
                combined                                             0 lb                 ∞
                60 lb ± 0 lb (95 %)""");
    }

    /** Squares of what is tiny vanish, and of what is huge overflow. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-300, 1e-200, 1, 1e200, 1e300})
    void contributionsOfAnySizeAreCombined(double size) {
        Budget<Mass> budget =
                Budget.of(pounds(size), List.of(normal("one", 3 * size), normal("other", 4 * size)), List.of());

        assertThat(u(budget) / size).isCloseTo(5, within(1e-12));
        assertThat(budget.shareOf(budget.components().get(0))).isCloseTo(9 / 25.0, within(1e-12));
    }
}
