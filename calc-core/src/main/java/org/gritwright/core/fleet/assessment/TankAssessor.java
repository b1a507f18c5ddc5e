package org.gritwright.core.fleet.assessment;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Volume;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.EnteredRanges;
import org.gritwright.core.fleet.day.TankEntry;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.observation.Material;
import org.gritwright.core.solution.FreezingPoint;
import org.gritwright.core.solution.SaltSupply;
import org.gritwright.core.solution.Solution;
import org.gritwright.core.solution.Tank;
import org.gritwright.core.solution.TankCorrection;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/** Computes what is in one tank of a day, and what to add to it. What can't be computed is this tank's refusal. */
final class TankAssessor {
    /** Two densities of one liquid may differ by so much in any case: common practice, no source. */
    private static final double SAME_LIQUID = 0.01;

    private static final double COVERAGE = 0.95;

    private final Yard yard;
    private final TankEntry tank;
    private final String root;
    private final List<Refusal> refusals = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    TankAssessor(Yard yard, int index) {
        this.yard = yard;
        this.tank = yard.day().tanks().get(index);
        this.root = "/tanks/" + index;
    }

    TankAssessment assess() {
        EnteredRanges.check(tank, root, (at, why) -> refusals.add(Refusal.of(at, "", why)));
        if (!refusals.isEmpty()) {
            return assessed(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        }
        Optional<Material> liquid = attempt("/material", this::liquid);
        boolean fits = attempt("/level", this::level).isPresent();
        Optional<Solution> solution =
                attempt("/reading", () -> tank.reading().solution(tank.salt(), tank.temperature()));
        Optional<Measured<BulkDensity>> density =
                solution.flatMap(one -> attempt("/temperature", () -> one.density(tank.temperature())));
        Optional<FreezingPoint> freezingPoint = solution.flatMap(one -> attempt("/reading", one::freezingPoint));
        Optional<SaltSupply> supply =
                tank.saltAtHand().flatMap(entry -> attempt("/saltAtHand", () -> entry.supply(tank.salt())));
        solution.map(Solution::findings).ifPresent(findings::addAll);
        liquid.ifPresent(
                material -> density.flatMap(one -> otherDensity(material, one)).ifPresent(findings::add));
        Optional<Tolerance> tolerance = tolerance();
        Optional<Verdict> verdict =
                solution.flatMap(one -> tolerance.flatMap(limit -> attempt("/target", () -> verdict(one, limit))));
        if (verdict.filter(Verdict.OUTSIDE_TOLERANCE::equals).isPresent()) {
            findings.add(offTarget(solution.orElseThrow(), tolerance.orElseThrow()));
            if (fits
                    && density.isPresent()
                    && supply.isPresent() == tank.saltAtHand().isPresent()) {
                return corrected(solution.get(), density, freezingPoint, verdict, supply);
            }
        }
        return assessed(solution, density, freezingPoint, verdict);
    }

    private TankAssessment assessed(
            Optional<Solution> solution,
            Optional<Measured<BulkDensity>> density,
            Optional<FreezingPoint> freezingPoint,
            Optional<Verdict> verdict) {
        return new TankAssessment(
                tank,
                refusals,
                solution,
                density,
                freezingPoint,
                verdict,
                Optional.empty(),
                Optional.empty(),
                findings);
    }

    /** What the tank can't take is told as an obstacle: what is in it is known all the same. */
    private TankAssessment corrected(
            Solution solution,
            Optional<Measured<BulkDensity>> density,
            Optional<FreezingPoint> freezingPoint,
            Optional<Verdict> verdict,
            Optional<SaltSupply> supply) {
        Optional<TankCorrection> correction = Optional.empty();
        Optional<Refusal> obstacle = Optional.empty();
        try {
            correction = Optional.of(correction(solution, supply));
        } catch (RuntimeException e) {
            obstacle = Optional.of(Refusal.of(root, "", e));
        }
        return new TankAssessment(
                tank, refusals, Optional.of(solution), density, freezingPoint, verdict, correction, obstacle, findings);
    }

    private <T> Optional<T> attempt(String at, Supplier<T> reading) {
        try {
            return Optional.of(reading.get());
        } catch (RuntimeException e) {
            refusals.add(Refusal.of(root + at, "", e));
            return Optional.empty();
        }
    }

    private Material liquid() {
        Material material = yard.material(tank.material());
        Require.that(material.isLiquid(), "material in a tank", "a liquid, with density", material.name());
        return material;
    }

    private Quantity<Volume> level() {
        Require.positive("capacity of the tank", Volume.class, tank.capacity());
        Require.positive("level of the tank", Volume.class, tank.level());
        if (Comparison.isAbove(Amounts.si(Volume.class, tank.level()), Amounts.si(Volume.class, tank.capacity()))) {
            throw new InvalidInputException(
                    RefusalCode.TOO_HIGH,
                    "level of the tank",
                    "at most its capacity, " + Amounts.format(tank.capacity()),
                    Amounts.format(tank.level()),
                    Amounts.format(tank.capacity()));
        }
        return tank.level();
    }

    /** What is wanted and how nearly: both or neither. */
    private Optional<Tolerance> tolerance() {
        boolean wanted = tank.target().isPresent();
        if (wanted == tank.tolerance().isPresent()) {
            return tank.tolerance().flatMap(limit -> attempt("/tolerance", () -> new Tolerance(limit)));
        }
        return attempt(wanted ? "/tolerance" : "/target", () -> {
            throw new InvalidInputException(
                    RefusalCode.MISSING,
                    wanted ? "tolerance of a tank" : "target of a tank",
                    wanted ? "given with the target, for example \"0.5 %\"" : "given with the tolerance",
                    "nothing");
        });
    }

    /** Both are parts of the mass, so the error is their difference and not a part of the target. */
    private Verdict verdict(Solution solution, Tolerance tolerance) {
        Measured<Dimensionless> share = solution.share();
        double guardBand = yard.day()
                .decisionRule()
                .guardBand(
                        share.standardUncertainty().map(TankAssessor::si).orElse(0.0),
                        share.degreesOfFreedom().orElse(Double.POSITIVE_INFINITY));
        Quantity<Dimensionless> target =
                Require.share("target of a tank", tank.target().orElseThrow());
        return yard.day().decisionRule().verdict(si(share.value()) - si(target), guardBand, tolerance);
    }

    private TankCorrection correction(Solution solution, Optional<SaltSupply> supply) {
        Quantity<Dimensionless> target = tank.target().orElseThrow();
        boolean isBeyond = Solution.of(tank.salt(), target).findings().stream()
                .anyMatch(one -> one.code() == FindingCode.SOLUTION_BEYOND_EUTECTIC);
        Require.that(
                !isBeyond,
                "target of a tank",
                "one that isn't beyond the eutectic, where more salt freezes warmer and drops out in the cold",
                target);
        boolean isTooWeak = si(solution.share().value()) < si(target);
        if (isTooWeak && supply.isEmpty()) {
            throw new InvalidInputException(
                    RefusalCode.MISSING, "saltAtHand", "given, to say how much of it to add", "nothing");
        }
        return new Tank(tank.capacity(), tank.level(), solution, tank.temperature())
                // Of water it doesn't matter.
                .correctedTo(target, supply.orElseGet(() -> SaltSupply.pure(tank.salt())));
    }

    private Finding offTarget(Solution solution, Tolerance tolerance) {
        return Finding.of(
                FindingCode.TANK_OFF_TARGET,
                Map.of(
                        "tank", Argument.name(tank.name()),
                        "share", Argument.number(solution.share().value()),
                        "target", Argument.number(tank.target().orElseThrow()),
                        "limit", Argument.number(tolerance.limit())));
    }

    private Optional<Finding> otherDensity(Material material, Measured<BulkDensity> density) {
        double stated = Amounts.si(BulkDensity.class, material.looseBulkDensity());
        double apart = Math.abs(Amounts.si(BulkDensity.class, density.value()) - stated);
        double explained = density.expandedUncertainty(COVERAGE)
                .map(half -> Amounts.si(BulkDensity.class, half))
                .orElse(0.0);
        return apart > Math.max(SAME_LIQUID * stated, explained)
                ? Optional.of(Finding.of(
                        FindingCode.TANK_DENSITY_DIFFERS,
                        Map.of(
                                "tank", Argument.name(tank.name()),
                                "material", Argument.name(material.name()),
                                "density",
                                        Argument.number(Amounts.of(
                                                Amounts.in(
                                                        density.value(),
                                                        material.looseBulkDensity()
                                                                .getUnit()),
                                                material.looseBulkDensity().getUnit())),
                                "stated", Argument.number(material.looseBulkDensity()))))
                : Optional.empty();
    }

    private static double si(Quantity<Dimensionless> ratio) {
        return Amounts.si(Dimensionless.class, ratio);
    }
}
