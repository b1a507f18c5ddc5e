package org.gritwright.core.record;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.boom.NozzleComparison;
import org.gritwright.core.boom.NozzleCondition;
import org.gritwright.core.boom.NozzleReview;
import org.gritwright.core.boom.NozzleYardstick;
import org.gritwright.core.boom.PressureSetUp;
import org.gritwright.core.boom.SectionShare;
import org.gritwright.core.fleet.assessment.BoomAssessment;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.FlowRate;

/**
 * What a truck's boom showed, as it stands in a record. How its rate is kept is what was written down.
 *
 * @param review its nozzles beside what they are compared with; none if they weren't caught
 * @param sections which share each section gets; empty if the nozzles weren't caught
 * @param pressure the pressure that its rate is kept by; none where nobody can tell which liquid runs, or where flow keeps it
 */
public record BoomOutcome(Optional<Review> review, List<Section> sections, Optional<Pressure> pressure) {
    /**
     * The nozzles beside one yardstick.
     *
     * @param yardstick what they are compared with
     * @param reference the flow that it is
     * @param tolerance how far a nozzle may be from it
     * @param agree whether more than half of the nozzles lie within the tolerance of the middle one
     * @param nozzles the nozzles, in the order in which they were written down
     */
    public record Review(
            NozzleYardstick yardstick,
            Quantity<FlowRate> reference,
            Quantity<Dimensionless> tolerance,
            boolean agree,
            List<Nozzle> nozzles) {
        /** Copies the list. */
        public Review {
            nozzles = List.copyOf(nozzles);
        }

        private static Review of(NozzleReview review) {
            return new Review(
                    review.yardstick(),
                    review.reference(),
                    review.tolerance().limit(),
                    review.agree(),
                    review.comparisons().stream().map(Nozzle::of).toList());
        }
    }

    /**
     * One nozzle.
     *
     * @param section the section that it is in
     * @param nozzle what people know it by
     * @param flow what it gave
     * @param flowUncertainty its standard uncertainty, if known
     * @param deviation flow ÷ yardstick − 1
     * @param deviationUncertainty its standard uncertainty, if known
     * @param condition what that shows
     */
    public record Nozzle(
            String section,
            String nozzle,
            Quantity<FlowRate> flow,
            Optional<Quantity<FlowRate>> flowUncertainty,
            Quantity<Dimensionless> deviation,
            Optional<Quantity<Dimensionless>> deviationUncertainty,
            NozzleCondition condition) {
        private static Nozzle of(NozzleComparison one) {
            Measured<FlowRate> flow = one.nozzle().flow();
            return new Nozzle(
                    one.nozzle().section(),
                    one.nozzle().nozzle(),
                    flow.value(),
                    flow.standardUncertainty(),
                    one.deviation().value(),
                    one.deviation().standardUncertainty(),
                    one.condition());
        }
    }

    /**
     * One section.
     *
     * @param section its name
     * @param nozzles how many of its nozzles were caught
     * @param share its flow ÷ that of all sections
     * @param even what it would be if all nozzles gave alike
     * @param error share ÷ even − 1
     */
    public record Section(
            String section,
            Quantity<Dimensionless> nozzles,
            Quantity<Dimensionless> share,
            Quantity<Dimensionless> even,
            Quantity<Dimensionless> error) {
        private static Section of(SectionShare one) {
            return new Section(
                    one.section(), Amounts.of(one.nozzles(), SpreadingUnits.ONE), one.share(), one.even(), one.error());
        }
    }

    /**
     * A pressure that was set with one liquid and runs another, or the same.
     *
     * @param setUpWith the density of the liquid that it was set with
     * @param runsWith the density of the liquid that runs
     * @param volumeError how much more or less volume it delivers than it was set up for
     * @param pressureFactor by what the pressure is multiplied so that it delivers that volume
     */
    public record Pressure(
            Quantity<BulkDensity> setUpWith,
            Quantity<BulkDensity> runsWith,
            Quantity<Dimensionless> volumeError,
            Quantity<Dimensionless> pressureFactor) {
        private static Pressure of(PressureSetUp setUp) {
            return new Pressure(setUp.setUpWith(), setUp.runsWith(), setUp.error(), setUp.pressureFactor());
        }
    }

    /** Copies the list. */
    public BoomOutcome {
        sections = List.copyOf(sections);
    }

    static BoomOutcome of(BoomAssessment boom) {
        return new BoomOutcome(
                boom.nozzles().map(Review::of),
                boom.shares().stream().map(Section::of).toList(),
                boom.setUp().map(Pressure::of));
    }
}
