package org.gritwright.core.fleet.assessment;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.boom.NozzleCatches;
import org.gritwright.core.boom.NozzleCondition;
import org.gritwright.core.boom.NozzleReview;
import org.gritwright.core.boom.PressureSetUp;
import org.gritwright.core.boom.SectionShare;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.BoomControl;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * What a truck's boom shows. It says how a liquid is distributed, and of a rate that is kept by pressure whether that pressure is for
 * this liquid; it says nothing about the pump or flow meter, which is judged by its own catches. Immutable, thread-safe, a value.
 *
 * @param control how its rate is kept
 * @param nozzles its nozzles beside the average of those that agree, by {@link NozzleCatches#OF_AVERAGE} and
 *     {@link NozzleCatches#GUARDED}; none if they weren't caught
 * @param shares which share each section gets; empty if the nozzles weren't caught
 * @param liquids the liquids that the truck's values in force and catches name
 * @param setUp of a rate that is kept by pressure, the liquid that it was set with beside the one that runs; none where the truck's
 *     values and catches don't name one liquid alone
 */
public record BoomAssessment(
        BoomControl control,
        Optional<NozzleReview> nozzles,
        List<SectionShare> shares,
        List<String> liquids,
        Optional<PressureSetUp> setUp) {
    /** Copies the lists. */
    public BoomAssessment {
        Require.given(BoomAssessment.class, control, nozzles, shares, liquids, setUp);
        shares = List.copyOf(shares);
        liquids = List.copyOf(liquids);
    }

    /**
     * What a person should know.
     *
     * @return what the nozzles and the pressure show, and that nobody can tell which liquid runs
     */
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        setUp.ifPresent(one -> findings.addAll(one.findings(NozzleCatches.OF_RATE)));
        if (control == BoomControl.PRESSURE && liquids.size() > 1) {
            findings.add(Finding.of(
                    FindingCode.BOOM_LIQUID_UNCLEAR,
                    Map.of("first", Argument.name(liquids.get(0)), "second", Argument.name(liquids.get(1)))));
        }
        nozzles.ifPresent(review -> findings.addAll(review.findings()));
        return List.copyOf(findings);
    }

    /** Whether the pressure was set with a liquid so much lighter or heavier that the rate is off. */
    boolean isSetForOtherLiquid() {
        return setUp.filter(one -> !one.findings(NozzleCatches.OF_RATE).isEmpty())
                .isPresent();
    }

    /** Whether too much or too little was laid only because of that: the pressure is set first, and then it is caught again. */
    boolean explains(Quantity<Dimensionless> deliveryError) {
        return isSetForOtherLiquid()
                && NozzleCatches.OF_RATE.acceptsRatio((1 + Amounts.si(Dimensionless.class, deliveryError))
                                / (1
                                        + Amounts.si(
                                                Dimensionless.class,
                                                setUp.orElseThrow().error()))
                        - 1);
    }

    /** Whether a nozzle is off, or nobody can tell which ones are. */
    boolean hasNozzlesOff() {
        return nozzles.filter(review -> !review.agree() || !review.off().isEmpty())
                .isPresent();
    }

    /** Whether the catch leaves open of a nozzle whether it is off. */
    boolean hasNozzlesUndecided() {
        return nozzles.filter(review ->
                        review.comparisons().stream().anyMatch(one -> one.condition() == NozzleCondition.UNDECIDED))
                .isPresent();
    }
}
