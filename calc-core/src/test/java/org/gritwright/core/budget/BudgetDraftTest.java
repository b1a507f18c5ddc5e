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
import java.util.Optional;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Term;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.observation.Repeatability;
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
        draft.addScatter(ErrorSource.SCATTER, 0.02, 2, 0.02);

        assertOnly(ErrorSource.SCATTER, Evaluation.TYPE_A, Distribution.NORMAL, 0.02);
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
        rounded.addScaleRounding(first, isSingle, 0.01);
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

    @Test
    void aRepeatabilityFromRepeatsIsOfTypeA() {
        draft.addRepeatability(Optional.of(new Repeatability(Amounts.of(2, PERCENT), 5)), relative -> relative * 10);

        assertOnly(ErrorSource.REPEATABILITY, Evaluation.TYPE_A, Distribution.NORMAL, 0.2);
        assertThat(only().degreesOfFreedom()).isEqualTo(5);
    }

    @Test
    void anAssumedRepeatabilityIsOfTypeB() {
        draft.addRepeatability(Optional.of(Repeatability.assumed(Amounts.of(2, PERCENT))), relative -> relative * 10);

        assertOnly(ErrorSource.REPEATABILITY, Evaluation.TYPE_B, Distribution.NORMAL, 0.2);
        assertThat(only().degreesOfFreedom()).isInfinite();
    }

    @Test
    void anUnknownScatterIsNotedAndNotInTheBudget() {
        draft.addRepeatability(Optional.empty(), relative -> relative);

        assertThat(draft.components()).isEmpty();
        assertThat(draft.unknown()).containsExactly(Argument.Unknown.of(Term.SCATTER));
    }

    @Test
    void theSpanOfAScaleOfUnknownAccuracyIsNotedOnce() {
        Scale unknown = Scale.of("S-7", pounds(5000), pounds(0.5));
        CaughtMass caught = CaughtMass.of(unknown, DAY, new Weighing("pail", pounds(60), pounds(2)));
        draft.addCommon(ScaleSpans.of(List.of(caught, caught), new double[] {0.5, 0.5}), CatchAllowances.NONE, 0, 1);

        assertThat(draft.components()).isEmpty();
        assertThat(draft.unknown()).containsExactly(Argument.Unknown.accuracyOfScale("S-7"));
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
