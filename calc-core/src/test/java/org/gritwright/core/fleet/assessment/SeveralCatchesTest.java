package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.assessment.Assessments.correction;
import static org.gritwright.core.fleet.assessment.Assessments.corrections;
import static org.gritwright.core.fleet.assessment.Assessments.judged;
import static org.gritwright.core.fleet.assessment.Assessments.undecided;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.pulses;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.Optional;
import java.util.stream.IntStream;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.Judgement;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Catches that scatter by 1 %; ±4 %, guarded with a risk of 5 %. */
class SeveralCatchesTest {
    private static final FleetAssessor ASSESSOR = FleetAssessor.of(BuiltInTypes.registry());

    private static TruckAssessment assess(VerificationCatchEntry... catches) {
        FleetDay day = Trucks.day(with(idle("T-01"), catches));
        FleetDay guarded = new FleetDay(
                        day.day(),
                        day.seasonStart(),
                        day.tolerance(),
                        DecisionRule.guarded(5),
                        day.allowances(),
                        Optional.empty(),
                        Optional.empty(),
                        day.scales(),
                        day.graduates(),
                        day.materials(),
                        Optional.empty(),
                        day.routes(),
                        day.trucks())
                .withAllowances(new CatchAllowances(
                        Amounts.of(0, PERCENT),
                        Amounts.of(0, PERCENT),
                        Optional.empty(),
                        Optional.of(Repeatability.assumed(Amounts.of(1, PERCENT)))));
        return ASSESSOR.assess(guarded).get(0);
    }

    /** 50 revolutions with 5.2 lb/rev in force; the catches differ by a pulse each, so that none is another's copy. */
    private static VerificationCatchEntry off(int number, double percent) {
        int counted = 5000 + number;
        double net = 0.052 * counted / (1 + percent / 100);
        return verificationCatch("5.2 lb/rev", 104, entry(8 + number, 2, net, Optional.of(pulses(counted))));
    }

    private static VerificationCatchEntry[] several(int howMany, double percent) {
        return IntStream.range(0, howMany)
                .mapToObj(number -> off(number, percent))
                .toArray(VerificationCatchEntry[]::new);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-2.6, 2.6, 3, 5, 5.5})
    void catchingWhatIsAskedForEndsInSomethingElse(double percent) {
        TruckAssessment first = assess(several(1, percent));
        Judgement.FurtherCatches further =
                undecided(first).orElseThrow().judgement().further().orElseThrow();
        TruckAssessment after = assess(several(1 + further.catches(), percent));

        assertThat(first.nextStep()).isEqualTo(NextStep.CATCH_MORE);
        assertThat(first.massProof()).isEqualTo(MassProof.UNDECIDED);
        assertThat(undecided(after)).isEmpty();
        assertThat(after.nextStep()).isNotEqualTo(NextStep.CATCH_MORE);
        assertThat(after.massProof()).isEqualTo(Math.abs(percent) < 4 ? MassProof.PROVEN : MassProof.NOT_PROVEN);
    }

    @Test
    void allCatchesWithTheCalibrationInForceAreJudged() {
        TruckAssessment assessment = assess(several(3, 3));

        assertThat(judged(assessment)).hasSize(1);
        assertThat(judged(assessment).get(0).verifications()).isEqualTo(assessment.verifications());
        assertThat(judged(assessment).get(0).judgement().verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
        assertThat(assessment.verifications())
                .allSatisfy(v -> assertThat(v.judgement().advice()).isEqualTo(Advice.CATCH_MORE));
    }

    @Test
    void aCatchWithAnotherCalibrationBeginsAnew() {
        VerificationCatchEntry another =
                verificationCatch("5.1 lb/rev", 104, entry(14, 2, 260, Optional.of(pulses(5000))));
        TruckAssessment assessment = assess(off(0, 3), off(1, 3), another);

        assertThat(judged(assessment)).hasSize(1);
        assertThat(judged(assessment).get(0).verifications())
                .containsExactly(assessment.verifications().get(2));
    }

    @Test
    void catchesThatOnlyTogetherMissTheToleranceProposeACorrectionTogether() {
        int wanted = 1
                + undecided(assess(several(1, 5.5)))
                        .orElseThrow()
                        .judgement()
                        .further()
                        .orElseThrow()
                        .catches();
        Correction correction = correction(assess(several(wanted, 5.5)));

        assertThat(correction.basis()).isEqualTo(Correction.Basis.SEVERAL_CATCHES);
        assertThat(correction.toEnter().toString()).isEqualTo("4.93 lb/rev");
        assertThat(corrections(assess(several(wanted - 1, 5.5)))).isEmpty();
    }
}
