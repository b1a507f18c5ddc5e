package org.gritwright.core.judgement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.verification.Advice;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DecisionRuleTest {
    private static final double INFINITE = Double.POSITIVE_INFINITY;
    private static final Tolerance FOUR = Tolerance.percent(4);
    private static final DecisionRule GUARDED = DecisionRule.guarded(5);

    @Test
    void theGuardBandIsStudentsOneSidedFactorTimesTheUncertainty() {
        assertThat(GUARDED.guardBand(0.01, INFINITE)).isCloseTo(0.01644854, within(1e-8));
        assertThat(DecisionRule.guarded(2.275013).guardBand(0.01, INFINITE)).isCloseTo(0.02, within(1e-8));
        assertThat(GUARDED.guardBand(0.01, 2)).isCloseTo(0.029200, within(5e-7));
        assertThat(GUARDED.guardBand(0, 2)).isZero();
    }

    /** Student's one-sided factors for 5 % are 1.64485 and, with 2 degrees of freedom, 2.91999. */
    @Test
    void theGuardBandsOfIndependentErrorsAddInSquares() {
        Quantity<Dimensionless> one = Amounts.of(1, SpreadingUnits.PERCENT);
        Quantity<Dimensionless> negative = Amounts.of(-2, SpreadingUnits.PERCENT);
        Budget<Dimensionless> error = Budget.of(
                Amounts.of(0, SpreadingUnits.PERCENT),
                List.of(
                        Component.typeB("span", Distribution.RECTANGULAR, one, negative),
                        Component.typeA("scatter", one, one, 2)));

        assertThat(GUARDED.guardBand(error)).isCloseTo(Math.hypot(0.0328971, 0.0291999), within(1e-6));
        assertThat(DecisionRule.SIMPLE.guardBand(error)).isZero();
    }

    @Test
    void simpleAcceptanceHasNoGuardBand() {
        assertThat(DecisionRule.SIMPLE.guardBand(0.01, 2)).isZero();
        assertThat(DecisionRule.SIMPLE.risk()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "0, WITHIN_TOLERANCE",
        "0.04, WITHIN_TOLERANCE",
        "-0.04, WITHIN_TOLERANCE",
        "0.0401, OUTSIDE_TOLERANCE",
        "-0.0401, OUTSIDE_TOLERANCE"
    })
    void simpleAcceptanceHasTwoOutcomes(double error, Verdict verdict) {
        assertThat(DecisionRule.SIMPLE.verdict(error, 0, FOUR)).isEqualTo(verdict);
    }

    /** 4 % with 1 % of guard band. */
    @ParameterizedTest
    @CsvSource({
        "0.03, WITHIN_TOLERANCE",
        "-0.03, WITHIN_TOLERANCE",
        "0.0301, UNDECIDED",
        "-0.0301, UNDECIDED",
        "0.05, UNDECIDED",
        "-0.05, UNDECIDED",
        "0.0501, OUTSIDE_TOLERANCE",
        "-0.0501, OUTSIDE_TOLERANCE"
    })
    void guardBandsOnBothSidesGiveThree(double error, Verdict verdict) {
        assertThat(GUARDED.verdict(error, 0.01, FOUR)).isEqualTo(verdict);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0.04, UNDECIDABLE",
        "0.08, 0.04, UNDECIDABLE",
        "0.0801, 0.04, OUTSIDE_TOLERANCE",
        "-0.0801, 0.04, OUTSIDE_TOLERANCE",
        "0, 0.0399, WITHIN_TOLERANCE",
        "0.05, 0.1, UNDECIDABLE",
        "0.15, 0.1, OUTSIDE_TOLERANCE"
    })
    void aGuardBandAsWideAsTheToleranceLeavesNothingToBeShownWithin(double error, double guard, Verdict verdict) {
        assertThat(GUARDED.verdict(error, guard, FOUR)).isEqualTo(verdict);
    }

    private static int rank(Verdict verdict) {
        return switch (verdict) {
            case WITHIN_TOLERANCE -> 0;
            case UNDECIDED, UNDECIDABLE -> 1;
            case OUTSIDE_TOLERANCE -> 2;
        };
    }

    @Property
    void aLargerErrorIsNeverJudgedBetterAndItsSignDoesNotMatter(
            @ForAll @DoubleRange(min = 0, max = 0.3) double smaller,
            @ForAll @DoubleRange(min = 0, max = 0.1) double more,
            @ForAll @DoubleRange(min = 0, max = 0.1) double guard) {
        Verdict verdict = GUARDED.verdict(smaller, guard, FOUR);

        assertThat(rank(GUARDED.verdict(smaller + more, guard, FOUR))).isGreaterThanOrEqualTo(rank(verdict));
        assertThat(GUARDED.verdict(-smaller, guard, FOUR)).isEqualTo(verdict);
    }

    @Property
    void aWiderGuardBandShowsLess(
            @ForAll @DoubleRange(min = 0, max = 0.3) double error,
            @ForAll @DoubleRange(min = 0, max = 0.1) double guard,
            @ForAll @DoubleRange(min = 0, max = 0.1) double more) {
        Verdict wider = GUARDED.verdict(error, guard + more, FOUR);

        if (wider == Verdict.WITHIN_TOLERANCE || wider == Verdict.OUTSIDE_TOLERANCE) {
            assertThat(GUARDED.verdict(error, guard, FOUR)).isEqualTo(wider);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {50, 95, 100})
    void refusesARiskOfHalfOrMore(double percent) {
        assertRefused(
                "risk of a decision must be below 50 %: " + Amounts.format(Amounts.of(percent, SpreadingUnits.PERCENT)),
                () -> DecisionRule.guarded(percent));
    }

    @Test
    void refusesNoRiskAtAll() {
        assertRefused("risk of a decision must be greater than 0: 0 %", () -> DecisionRule.guarded(0));
        assertRefused("risk of a decision must be greater than 0: -5 %", () -> DecisionRule.guarded(-5));
        assertRefused(
                "risk of a decision must be greater than 0: 0",
                () -> new DecisionRule(Optional.of(Amounts.of(0, SpreadingUnits.ONE))));
    }

    @Test
    void refusesAnUncertaintyThatIsNone() {
        assertRefused("standard uncertainty of an error must be 0 or more: -0.01", () -> GUARDED.guardBand(-0.01, 2));
        assertRefused("standard uncertainty of an error must be finite: NaN", () -> GUARDED.guardBand(Double.NaN, 2));
        assertRefused(
                "standard uncertainty of an error must be finite: NaN",
                () -> DecisionRule.SIMPLE.guardBand(Double.NaN, 2));
        assertRefused("degrees of freedom must be greater than 0: 0.0", () -> GUARDED.guardBand(0.01, 0));
    }

    @Test
    void refusesAnErrorThatIsNone() {
        assertRefused("error must be finite: NaN", () -> DecisionRule.SIMPLE.verdict(Double.NaN, 0, FOUR));
        assertRefused("error must be finite: NaN", () -> GUARDED.verdict(Double.NaN, 0.01, FOUR));
    }

    /** All cells: significant or not, and what the rule says. */
    @ParameterizedTest
    @CsvSource({
        "false, WITHIN_TOLERANCE, LEAVE",
        "true, WITHIN_TOLERANCE, OPTIONAL",
        "false, UNDECIDED, CATCH_MORE",
        "true, UNDECIDED, CATCH_MORE",
        "false, UNDECIDABLE, CATCH_MORE",
        "true, UNDECIDABLE, CATCH_MORE",
        "false, OUTSIDE_TOLERANCE, CATCH_MORE",
        "true, OUTSIDE_TOLERANCE, CORRECT"
    })
    void adviceFollowsFromSignificanceAndVerdict(boolean significant, Verdict verdict, Advice advice) {
        assertThat(Advice.of(significant, verdict)).isEqualTo(advice);
    }

    @Test
    void verdictsAndAdviceHaveWords() {
        assertThat(Verdict.values())
                .extracting(Verdict::words)
                .containsExactly("within tolerance", "outside tolerance", "can't tell", "one such catch can't decide");
        assertThat(Advice.values())
                .extracting(Advice::words)
                .containsExactly("leave it", "catch more", "may be corrected", "correct and confirm", "find the fault");
    }
}
