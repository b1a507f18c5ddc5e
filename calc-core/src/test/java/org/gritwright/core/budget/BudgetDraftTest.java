package org.gritwright.core.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Term;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.statistics.Variance;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Component.Evaluation;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;

/** Contributions are in kg/rev; the budgets built on this have tests of their own. */
class BudgetDraftTest {
    private final BudgetDraft<DischargePerRevolution> draft = new BudgetDraft<>(POUND_PER_REVOLUTION);

    private Component<DischargePerRevolution> only() {
        assertThat(draft.components()).hasSize(1);
        return draft.components().get(0);
    }

    private void assertOnly(ErrorSource source, Evaluation evaluation, Distribution distribution, double kilograms) {
        assertThat(only().key()).isEqualTo(source.key());
        assertThat(only().name()).isEqualTo(source.name(source.key()));
        assertThat(only().evaluation()).isEqualTo(evaluation);
        assertThat(only().distribution()).isEqualTo(distribution);
        assertThat(Amounts.si(DischargePerRevolution.class, only().contribution()))
                .isCloseTo(kilograms, within(1e-15));
        assertThat(only().contribution().getUnit()).isEqualTo(POUND_PER_REVOLUTION);
    }

    private static CaughtMass pails(int number) {
        Weighing pail = new Weighing("pail", pounds(60), pounds(2));
        return CaughtMass.of(SCALE, DAY, Collections.nCopies(number, pail).toArray(Weighing[]::new));
    }

    private static Observation counted() {
        return catchAt(AUGER_POINT, pails(1), pulses(2000)).observation();
    }

    @Test
    void theScatterStandsWhereItIsAtLeastTheResolution() {
        draft.addScatter(ErrorSource.CURVE, 0.02, 2, 0.02);

        assertOnly(ErrorSource.CURVE, Evaluation.TYPE_A, Distribution.NORMAL, 0.02);
        assertThat(only().degreesOfFreedom()).isEqualTo(2);
    }

    @Test
    void theResolutionStandsWhereTheScatterIsLess() {
        draft.addScatter(ErrorSource.CURVE, 0.02, 2, 0.021);

        assertOnly(ErrorSource.RESOLUTION, Evaluation.TYPE_B, Distribution.NORMAL, 0.021);
        assertThat(only().degreesOfFreedom()).isInfinite();
    }

    @Test
    void theRoundingOfOneWeighingIsTriangularAndOfSeveralNormal() {
        assertThat(roundingOf(pails(1), true)).isEqualTo(Distribution.TRIANGULAR);
        assertThat(roundingOf(pails(2), true)).isEqualTo(Distribution.NORMAL);
        assertThat(roundingOf(pails(1), false)).isEqualTo(Distribution.NORMAL);
    }

    private static Distribution roundingOf(CaughtMass first, boolean isSingle) {
        BudgetDraft<DischargePerRevolution> rounded = new BudgetDraft<>(POUND_PER_REVOLUTION);
        rounded.addRounding(first, isSingle, 0.01);
        return rounded.components().get(0).distribution();
    }

    @Test
    void aSingleCountOfPulsesIsTriangular() {
        draft.addCount(counted(), true, 0.01);

        assertOnly(ErrorSource.COUNT, Evaluation.TYPE_B, Distribution.TRIANGULAR, 0.01);
    }

    @Test
    void severalCountsAreCloseToNormal() {
        draft.addCount(counted(), false, 0.01);

        assertOnly(ErrorSource.COUNT, Evaluation.TYPE_B, Distribution.NORMAL, 0.01);
    }

    @Test
    void aSingleReadingOfADisplayIsRectangular() {
        draft.addDisplayStep(pounds(0.3), true, 0.01);

        assertOnly(ErrorSource.DISPLAY_STEP, Evaluation.TYPE_B, Distribution.RECTANGULAR, 0.01);
    }

    private static CatchAllowances stated(Repeatability repeatability) {
        return new CatchAllowances(
                Amounts.of(0, PERCENT), Amounts.of(0, PERCENT), Optional.empty(), Optional.of(repeatability));
    }

    private static Optional<Variance> shown(double variance, double degreesOfFreedom) {
        return Optional.of(new Variance(variance, degreesOfFreedom));
    }

    @Test
    void aRepeatabilityFromRepeatsIsOfTypeA() {
        draft.addScatter(
                stated(new Repeatability(Amounts.of(2, PERCENT), 5)), relative -> relative * 10, Optional.empty(), 0);

        assertOnly(ErrorSource.REPEATABILITY, Evaluation.TYPE_A, Distribution.NORMAL, 0.2);
        assertThat(only().degreesOfFreedom()).isEqualTo(5);
    }

    @Test
    void aRepeatabilityThatIsSimplyStatedIsOfTypeB() {
        draft.addScatter(
                stated(Repeatability.assumed(Amounts.of(2, PERCENT))), relative -> relative * 10, Optional.empty(), 0);

        assertOnly(ErrorSource.REPEATABILITY, Evaluation.TYPE_B, Distribution.NORMAL, 0.2);
        assertThat(only().degreesOfFreedom()).isInfinite();
        assertThat(draft.findings()).isEmpty();
    }

    @Test
    void aScatterThatNobodyStatedIsAssumedAndNoted() {
        draft.addScatter(CatchAllowances.NONE, relative -> relative, Optional.empty(), 0);

        assertOnly(ErrorSource.ASSUMED_SCATTER, Evaluation.TYPE_A, Distribution.NORMAL, 0.01);
        assertThat(only().degreesOfFreedom()).isEqualTo(2);
        assertThat(draft.findings())
                .containsExactly(Finding.of(
                        FindingCode.UNCERTAINTY_ASSUMED,
                        Map.of("unknown", Argument.several(List.of(Argument.Unknown.of(Term.SCATTER))))));
    }

    @Test
    void whatTheCatchesShowIsPooledWithWhatIsStated() {
        draft.addScatter(
                stated(new Repeatability(Amounts.of(1, PERCENT), 4)), relative -> relative, shown(0.0004, 2), 0);

        // (4 · 1² + 2 · 2²) ÷ 6 = 2
        assertOnly(ErrorSource.SCATTER, Evaluation.TYPE_A, Distribution.NORMAL, Math.sqrt(2) / 100);
        assertThat(only().degreesOfFreedom()).isEqualTo(6);
    }

    @Test
    void theRoundingIsNotCountedTwice() {
        draft.addScatter(
                stated(new Repeatability(Amounts.of(1, PERCENT), 4)), relative -> relative, shown(0.0005, 2), 0.0001);

        assertOnly(ErrorSource.SCATTER, Evaluation.TYPE_A, Distribution.NORMAL, Math.sqrt(2) / 100);
    }

    @Test
    void catchesThatScatterLessThanTheyAreRoundedScatterByNothingOfTheirOwn() {
        draft.addScatter(
                stated(new Repeatability(Amounts.of(1, PERCENT), 2)), relative -> relative, shown(0.0001, 2), 0.0004);

        assertOnly(ErrorSource.SCATTER, Evaluation.TYPE_A, Distribution.NORMAL, Math.sqrt(0.5) / 100);
    }

    @Test
    void catchesThatAreShownToScatterMoreThanStatedSpeakForThemselves() {
        // By the chi-squared test: 2 · 3² = 18 is beyond 5.99, the upper 5 % point with 2 degrees of freedom.
        draft.addScatter(
                stated(Repeatability.assumed(Amounts.of(1, PERCENT))), relative -> relative, shown(0.0009, 2), 0);

        assertOnly(ErrorSource.SCATTER, Evaluation.TYPE_A, Distribution.NORMAL, 0.03);
        assertThat(only().degreesOfFreedom()).isEqualTo(2);
    }

    /**
     * Stated 1 %² and rounding 1 %² together, 2 %², of which 37 %² is 18.5 times as much, less than 19, the upper 5 % point of F
     * with 2 and 2 degrees of freedom. That 36 %² without the rounding would be 36 times 1 %² doesn't matter.
     */
    @Test
    void catchesAreTestedWithTheRoundingThatIsInTheirScatter() {
        draft.addScatter(
                stated(new Repeatability(Amounts.of(1, PERCENT), 2)), relative -> relative, shown(0.0037, 2), 0.0001);

        assertOnly(ErrorSource.SCATTER, Evaluation.TYPE_A, Distribution.NORMAL, Math.sqrt((2 + 2 * 36) / 4.0) / 100);
        assertThat(only().degreesOfFreedom()).isEqualTo(4);
    }

    @Test
    void aFirmStatementStandsWhereTheCatchesDontRefuteIt() {
        draft.addScatter(
                stated(Repeatability.assumed(Amounts.of(1, PERCENT))), relative -> relative, shown(0.0002, 2), 0);

        assertOnly(ErrorSource.REPEATABILITY, Evaluation.TYPE_B, Distribution.NORMAL, 0.01);
    }

    @Test
    void threeCatchesShowEnoughForNothingToBeNoted() {
        draft.addScatter(CatchAllowances.NONE, relative -> relative, shown(0.0001, 2), 0);
        assertThat(draft.findings()).isEmpty();

        draft.addScatter(CatchAllowances.NONE, relative -> relative, shown(0.0001, 1), 0);
        assertThat(draft.findings()).hasSize(1);
    }

    @Test
    void theSpanOfAScaleOfUnknownAccuracyIsAssumedAndNotedOnce() {
        Scale unknown = Scale.of("S-7", pounds(5000), pounds(0.5));
        CaughtMass caught = CaughtMass.of(unknown, DAY, new Weighing("pail", pounds(60), pounds(2)));
        draft.addCommon(ScaleSpans.of(List.of(caught, caught), new double[] {0.5, 0.5}), CatchAllowances.NONE, 0, 1);

        assertThat(only().key().subject()).hasValue("S-7");
        assertThat(only().distribution()).isEqualTo(Distribution.RECTANGULAR);
        assertThat(Amounts.si(DischargePerRevolution.class, only().contribution()))
                .isCloseTo(0.01 / Math.sqrt(3), within(1e-15));
        assertThat(draft.findings())
                .containsExactly(Finding.of(
                        FindingCode.UNCERTAINTY_ASSUMED,
                        Map.of("unknown", Argument.several(List.of(Argument.Unknown.accuracyOfScale("S-7"))))));
    }

    @Test
    void commonErrorsAreRectangularAndInProportion() {
        CatchAllowances allowances =
                new CatchAllowances(Amounts.of(2, PERCENT), Amounts.of(0, PERCENT), Optional.empty(), Optional.empty());
        draft.addCommon(
                ScaleSpans.of(List.of(pails(1)), new double[] {1}), allowances, allowances.moistureUncertainty(), 3);

        assertThat(draft.components())
                .extracting(Component::key)
                .containsExactly(ErrorSource.spanOf(SCALE), ErrorSource.SPILLAGE.key());
        for (Component<DischargePerRevolution> component : draft.components()) {
            assertThat(component.distribution()).isEqualTo(Distribution.RECTANGULAR);
            assertThat(Amounts.si(DischargePerRevolution.class, component.contribution()))
                    .isCloseTo(3 * component.standardUncertainty().getValue().doubleValue() / 100, within(1e-15));
        }
    }
}
