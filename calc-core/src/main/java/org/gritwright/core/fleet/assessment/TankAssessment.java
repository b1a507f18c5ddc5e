package org.gritwright.core.fleet.assessment;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.TankEntry;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.solution.FreezingPoint;
import org.gritwright.core.solution.Side;
import org.gritwright.core.solution.Solution;
import org.gritwright.core.solution.TankCorrection;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * What is in a tank of the yard, and what to add to it. What can be computed is there, even where something else is refused. Immutable,
 * thread-safe, a value.
 *
 * @param tank the tank as it was written down
 * @param refusals every reason why something can't be computed; none if all can
 * @param solution how strong the solution in it is, by its reading
 * @param density its density at the temperature of the tank
 * @param freezingPoint where it begins to freeze
 * @param verdict whether it is as strong as is wanted, by the tank's tolerance and the day's decision rule; none without a target
 * @param correction what to add to it, where it is shown to be off; else none
 * @param obstacle why nobody can say what to add, though it is off: the tank is too small for it, for example
 * @param findings everything that a person should know
 */
public record TankAssessment(
        TankEntry tank,
        List<Refusal> refusals,
        Optional<Solution> solution,
        Optional<Measured<BulkDensity>> density,
        Optional<FreezingPoint> freezingPoint,
        Optional<Verdict> verdict,
        Optional<TankCorrection> correction,
        Optional<Refusal> obstacle,
        List<Finding> findings) {
    /** Copies the lists. */
    public TankAssessment {
        Require.given(
                TankAssessment.class,
                tank,
                refusals,
                solution,
                density,
                freezingPoint,
                verdict,
                correction,
                obstacle,
                findings);
        refusals = List.copyOf(refusals);
        findings = List.copyOf(findings);
    }

    /**
     * The assessment of a tank of which nothing can be computed.
     *
     * @param tank the tank as it was written down
     * @param reasons why, one or more
     * @return an assessment that says to correct what was written down
     */
    public static TankAssessment refused(TankEntry tank, List<Refusal> reasons) {
        return new TankAssessment(
                tank,
                reasons,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of());
    }

    /**
     * Whether something can't be computed.
     *
     * @return true if there are refusals
     */
    public boolean isRefused() {
        return !refusals.isEmpty();
    }

    /**
     * What has to be done next. A tank that is as strong as was wanted has nothing to be done even where nobody can tell on which side
     * of the eutectic it is: brine that is made as strong as the eutectic always reads so.
     *
     * @return the most urgent step
     */
    public TankStep nextStep() {
        if (isRefused()) {
            return TankStep.FIX_RECORD;
        }
        if (verdict.filter(Verdict.OUTSIDE_TOLERANCE::equals).isPresent()) {
            return correction.isPresent() ? TankStep.CORRECT : TankStep.FIND_ANOTHER_WAY;
        }
        if (findings.stream().anyMatch(one -> one.code() == FindingCode.TANK_DENSITY_DIFFERS)) {
            return TankStep.CHECK_ENTRIES;
        }
        Optional<Side> side = freezingPoint.map(FreezingPoint::side);
        boolean isWithin = verdict.filter(Verdict.WITHIN_TOLERANCE::equals).isPresent();
        boolean isUndecided =
                verdict.isPresent() || side.filter(Side.UNDECIDED::equals).isPresent();
        if (!isWithin && isUndecided) {
            return TankStep.READ_AGAIN;
        }
        if (side.filter(Side.BEYOND_EUTECTIC::equals).isPresent()) {
            return TankStep.KEEP_FROM_COLD;
        }
        return isWithin ? TankStep.NOTHING : TankStep.STATE_TARGET;
    }

    /**
     * Whether the tank shouldn't be used before somebody has looked.
     *
     * @return whether the next step says so
     */
    public boolean needsAttention() {
        return nextStep().needsAttention();
    }
}
