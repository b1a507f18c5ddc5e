package org.gritwright.core.boom;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;

/**
 * The nozzles of a boom beside one yardstick. Immutable, thread-safe, a value.
 *
 * @param yardstick what they are compared with
 * @param reference the flow that it is
 * @param tolerance how far a nozzle may be from it
 * @param comparisons the nozzles, in the order in which they were given
 * @param agree whether more than half of the nozzles lie within the tolerance of the middle one; without that an average says little
 */
public record NozzleReview(
        NozzleYardstick yardstick,
        Quantity<FlowRate> reference,
        Tolerance tolerance,
        List<NozzleComparison> comparisons,
        boolean agree) {
    /** Checks that nothing is null, and copies the list. */
    public NozzleReview {
        Require.given(NozzleReview.class, yardstick, reference, tolerance, comparisons);
        comparisons = List.copyOf(comparisons);
    }

    /**
     * The nozzles that are shown to be off.
     *
     * @return those that give too much or too little
     */
    public List<NozzleComparison> off() {
        return comparisons.stream().filter(one -> one.condition().isOff()).toList();
    }

    /**
     * How evenly they give: the coefficient of variation, sample standard deviation (n − 1 in the denominator) ÷ mean, as
     * {@link NozzleCatches#variation} has it.
     *
     * @return in percent; none for one nozzle alone
     */
    public Optional<Quantity<Dimensionless>> variation() {
        double[] flows = comparisons.stream()
                .mapToDouble(
                        one -> Amounts.si(FlowRate.class, one.nozzle().flow().value()))
                .toArray();
        return flows.length > 1 ? Optional.of(NozzleCatches.variation(flows)) : Optional.empty();
    }

    /**
     * What a person should know: nozzles that are off, nozzles of which the catch can't tell, and whether an average says anything.
     *
     * @return the findings, possibly none
     */
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        boolean isNew = yardstick == NozzleYardstick.NEW_NOZZLE;
        if (!agree && !isNew) {
            findings.add(Finding.of(FindingCode.NOZZLES_DISAGREE, Map.of("limit", Argument.number(tolerance.limit()))));
        }
        for (NozzleComparison one : comparisons) {
            if (one.condition() != NozzleCondition.WITHIN) {
                findings.add(Finding.of(code(one.condition(), isNew), arguments(one)));
            }
        }
        return List.copyOf(findings);
    }

    private static FindingCode code(NozzleCondition condition, boolean isNew) {
        if (condition == NozzleCondition.UNDECIDED) {
            return FindingCode.NOZZLE_UNDECIDED;
        }
        return isNew ? FindingCode.NOZZLE_OFF_NEW : FindingCode.NOZZLE_OFF_AVERAGE;
    }

    private Map<String, Argument> arguments(NozzleComparison one) {
        return Map.of(
                "section", Argument.name(one.nozzle().section()),
                "nozzle", Argument.name(one.nozzle().nozzle()),
                "flow", Argument.number(one.nozzle().flow().value()),
                "reference", Argument.number(reference),
                "deviation", Argument.number(one.deviation().value()),
                "limit", Argument.number(tolerance.limit()));
    }
}
