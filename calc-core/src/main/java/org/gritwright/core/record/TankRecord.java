package org.gritwright.core.record;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.TankAssessment;
import org.gritwright.core.fleet.assessment.TankStep;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TankEntry;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.observation.Material;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * One tank's record: what was written down that day, and what came out. A tank is the yard's and no truck's, so that it is in no truck's
 * record. Immutable, thread-safe, a value.
 *
 * @param day the day of the reading
 * @param site where
 * @param technician who was in charge
 * @param decisionRule how an uncertain strength was compared with the tolerance
 * @param material the liquid that is in the tank, as it was stated
 * @param tank the tank as it was written down
 * @param refusals every reason why something couldn't be computed; pointers lead into the day's own document
 * @param outcome what came out
 * @param nextStep what had to be done next
 * @param findings everything that a person should know
 */
public record TankRecord(
        LocalDate day,
        Optional<String> site,
        Optional<String> technician,
        DecisionRule decisionRule,
        Material material,
        TankEntry tank,
        List<Refusal> refusals,
        TankOutcome outcome,
        TankStep nextStep,
        List<Finding> findings) {
    /** Copies the lists. */
    public TankRecord {
        Require.given(
                TankRecord.class,
                day,
                site,
                technician,
                decisionRule,
                material,
                tank,
                refusals,
                outcome,
                nextStep,
                findings);
        refusals = List.copyOf(refusals);
        findings = List.copyOf(findings);
    }

    /**
     * The record of an assessment.
     *
     * @param day the fleet's day
     * @param assessment the assessment of one of its tanks
     * @return the record
     * @throws InvalidInputException if the day doesn't list the material that the tank names
     */
    public static TankRecord of(FleetDay day, TankAssessment assessment) {
        TankEntry tank = assessment.tank();
        return new TankRecord(
                day.day(),
                day.site(),
                day.technician(),
                day.decisionRule(),
                day.materials().stream()
                        .filter(one -> one.name().equals(tank.material()))
                        .findFirst()
                        .orElseThrow(() -> new InvalidInputException(
                                "material of tank \"" + tank.name() + "\"", "one of the day's", tank.material())),
                tank,
                assessment.refusals(),
                TankOutcome.of(assessment),
                assessment.nextStep(),
                assessment.findings());
    }
}
