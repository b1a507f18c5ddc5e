package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.name;
import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.observation.Material;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PrewetRate;

/**
 * The dry chemical that grains and the liquid that wets them lay together, by what the last catches of both show. It is a verdict of
 * its own: a right total never excuses a pump, as the liquid brings so little of it (10 gal of brine per ton about one per cent).
 *
 * <p>Displays that are off by e_g and e_l show R and r · R while R ÷ (1 + e_g) and r · R ÷ (1 + e_l) fall, so that with the dry
 * chemical d in a mass of grains and c in a volume of the liquid the total is off by (d + r·c) ÷ (d ÷ (1 + e_g) + r·c ÷ (1 + e_l)) − 1.
 * Errors of the two are taken to be independent. Immutable, thread-safe, a value.
 *
 * @param truck the id of the spreader that lays the grains
 * @param prewetRate liquid per mass of the grains, as the catches' targets say it
 * @param liquidShare the liquid's part of the dry chemical asked for
 * @param error by how much displays show more than is laid, of dry chemical
 * @param verdict what that and its uncertainty say about the day's tolerance
 */
public record PrewetTotal(
        String truck,
        Quantity<PrewetRate> prewetRate,
        Quantity<Dimensionless> liquidShare,
        Measured<Dimensionless> error,
        Verdict verdict) {
    /** Below that part of the total the liquid can be missing altogether and the total passes (common practice, no source). */
    private static final double SMALL = 0.05;

    /** Checks that nothing is null. */
    public PrewetTotal {
        Require.given(PrewetTotal.class, truck, prewetRate, liquidShare, error, verdict);
    }

    /**
     * The total of two.
     *
     * @param grains the last point of the spreader that was verified
     * @param liquid that of the pump or flow meter
     * @return the total; none where a catch isn't counted, or nobody says how much chemical a material holds
     */
    static Optional<PrewetTotal> of(
            String truck, PointAssessment grains, PointAssessment liquid, Quantity<PrewetRate> prewetRate, Yard yard) {
        Material salt = grains.point().material();
        Material brine = liquid.point().material();
        if (salt.chemical().isEmpty() || brine.chemical().isEmpty()) {
            return Optional.empty();
        }
        Optional<Measured<Dimensionless>> ofGrains = error(grains);
        Optional<Measured<Dimensionless>> ofLiquid = error(liquid);
        return ofGrains.isEmpty() || ofLiquid.isEmpty()
                ? Optional.empty()
                : total(
                        truck,
                        prewetRate,
                        chemical(salt),
                        Amounts.si(PrewetRate.class, prewetRate) * brine.kilogramsPerAmount() * chemical(brine),
                        ofGrains.get(),
                        ofLiquid.get(),
                        yard);
    }

    private static double chemical(Material material) {
        return si(material.chemical().orElseThrow());
    }

    /** Of what the last catches say together; none if they weren't counted. */
    private static Optional<Measured<Dimensionless>> error(PointAssessment point) {
        return point.lastVerification()
                .filter(last -> last.calibrationError().isPresent())
                .flatMap(last -> point.judged())
                .map(VerificationSeries::judgement)
                .map(judgement -> judgement.budget().result());
    }

    private static Optional<PrewetTotal> total(
            String truck,
            Quantity<PrewetRate> prewetRate,
            double grains,
            double liquid,
            Measured<Dimensionless> ofGrains,
            Measured<Dimensionless> ofLiquid,
            Yard yard) {
        double asked = grains + liquid;
        if (!(asked > 0)) {
            return Optional.empty();
        }
        double laidGrains = grains / (1 + si(ofGrains.value()));
        double laidLiquid = liquid / (1 + si(ofLiquid.value()));
        double laid = laidGrains + laidLiquid;
        double error = asked / laid - 1;
        Budget<Dimensionless> budget = Budget.of(
                percent(error),
                List.of(
                        component("grains", ofGrains, asked * laidGrains / (laid * laid * (1 + si(ofGrains.value())))),
                        component(
                                "liquid", ofLiquid, asked * laidLiquid / (laid * laid * (1 + si(ofLiquid.value()))))));
        double guard = yard.day().decisionRule().guardBand(budget);
        return Optional.of(new PrewetTotal(
                truck,
                prewetRate,
                percent(liquid / asked),
                budget.result(),
                yard.day().decisionRule().verdict(error, guard, yard.tolerance())));
    }

    private static Component<Dimensionless> component(String name, Measured<Dimensionless> error, double sensitivity) {
        Quantity<Dimensionless> uncertainty = error.standardUncertainty().orElseThrow();
        Quantity<Dimensionless> contribution = percent(sensitivity * si(uncertainty));
        double degrees = error.degreesOfFreedom().orElse(Double.POSITIVE_INFINITY);
        return Double.isInfinite(degrees)
                ? Component.typeB(name, Distribution.NORMAL, uncertainty, contribution)
                : Component.typeA(name, uncertainty, contribution, degrees);
    }

    private static double si(Quantity<Dimensionless> ratio) {
        return Amounts.si(Dimensionless.class, ratio);
    }

    private static Quantity<Dimensionless> percent(double ratio) {
        return Amounts.ofSi(ratio, SpreadingUnits.PERCENT);
    }

    /** What a person should know of it. */
    List<Finding> findings(Yard yard) {
        List<Finding> findings = new ArrayList<>();
        if (verdict == Verdict.OUTSIDE_TOLERANCE) {
            findings.add(Finding.of(
                    FindingCode.PREWET_TOTAL_OFF,
                    Map.of(
                            "truck", name(truck),
                            "error", number(error.value()),
                            "limit", number(yard.tolerance().limit()))));
        }
        if (si(liquidShare) < SMALL) {
            findings.add(Finding.of(
                    FindingCode.PREWET_SMALL_PART, Map.of("truck", name(truck), "share", number(liquidShare))));
        }
        return findings;
    }
}
