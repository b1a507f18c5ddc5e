package org.gritwright.core.lateral;

import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.statistics.RobustSample;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.quantity.ArealApplicationRate;

/** What the row of pans says of itself. Its limits are common practice, no source. */
final class PatternFindings {
    /** An outermost pan that caught a tenth of the highest rate isn't at the end of the pattern. */
    private static final double SMALL = 0.1;

    /** So many pans within the treated width tell its evenness. */
    private static final int ENOUGH = 8;

    /** By how much of the highest rate neighbors differ that nothing is wrong with. */
    private static final double USUAL = 0.05;

    /** One wrong pan makes its neighbors deviate too: of fewer pans than these the three would be the usual. */
    private static final int FEWEST_BETWEEN = 7;

    private final SpreadPattern pattern;
    private final Profile profile;
    private final double highest;

    private PatternFindings(SpreadPattern pattern) {
        this.pattern = pattern;
        this.profile = pattern.profile();
        this.highest = IntStream.range(0, profile.size())
                .mapToDouble(profile::rate)
                .max()
                .orElseThrow();
    }

    static List<Finding> of(SpreadPattern pattern, RoadStrip lane) {
        PatternFindings row = new PatternFindings(pattern);
        List<Finding> findings = new ArrayList<>();
        row.shortOf(lane).ifPresent(findings::add);
        row.widerThanRow().ifPresent(findings::add);
        row.standsOut().ifPresent(findings::add);
        row.few().ifPresent(findings::add);
        return List.copyOf(findings);
    }

    private Optional<Finding> shortOf(RoadStrip lane) {
        double row = profile.right() - profile.left();
        return Comparison.isAbove(profile.left() - lane.leftMeters(), 0, row)
                        || Comparison.isAbove(lane.rightMeters() - profile.right(), 0, row)
                ? Optional.of(Finding.of(
                        FindingCode.PANS_SHORT_OF_LANE,
                        Map.of(
                                "left", number(length(profile.left())),
                                "right", number(length(profile.right())),
                                "laneLeft", number(lane.left()),
                                "laneRight", number(lane.right()))))
                : Optional.empty();
    }

    private Optional<Finding> widerThanRow() {
        int last = profile.size() - 1;
        int outermost = profile.rate(last) > profile.rate(0) ? last : 0;
        return Comparison.isAbove(profile.rate(outermost), SMALL * highest)
                ? Optional.of(Finding.of(
                        FindingCode.PATTERN_BEYOND_PANS,
                        Map.of(
                                "position", number(pattern.pans().get(outermost).position()),
                                "rate", number(rate(profile.rate(outermost))),
                                "highest", number(rate(highest)))))
                : Optional.empty();
    }

    /** The pan farthest from the line between its neighbors, if it is an outlier among all such deviations. */
    private Optional<Finding> standsOut() {
        double[] deviations = IntStream.range(1, profile.size() - 1)
                .mapToDouble(this::deviation)
                .toArray();
        if (deviations.length < FEWEST_BETWEEN) {
            return Optional.empty();
        }
        int worst = IntStream.range(1, deviations.length)
                .reduce(0, (one, other) -> Math.abs(deviations[other]) > Math.abs(deviations[one]) ? other : one);
        int pan = worst + 1;
        return RobustSample.of(deviations).isOutlier(deviations[worst], USUAL * highest)
                ? Optional.of(Finding.of(
                        FindingCode.PAN_STANDS_OUT,
                        Map.of(
                                "position", number(pattern.pans().get(pan).position()),
                                "rate", number(rate(profile.rate(pan))),
                                "neighbors", number(rate(profile.rate(pan) - deviations[worst])))))
                : Optional.empty();
    }

    private double deviation(int pan) {
        double part =
                (profile.middle(pan) - profile.middle(pan - 1)) / (profile.middle(pan + 1) - profile.middle(pan - 1));
        return profile.rate(pan) - (profile.rate(pan - 1) * (1 - part) + profile.rate(pan + 1) * part);
    }

    private Optional<Finding> few() {
        RoadStrip treated = pattern.treated();
        double[] inside = IntStream.range(0, profile.size())
                .mapToDouble(profile::middle)
                .filter(middle -> middle >= treated.leftMeters() && middle <= treated.rightMeters())
                .toArray();
        return inside.length < ENOUGH
                ? Optional.of(Finding.of(
                        FindingCode.FEW_PANS,
                        Map.of(
                                "pans", number(Amounts.of(inside.length, SpreadingUnits.ONE)),
                                "width", number(treated.width()),
                                "wanted", number(Amounts.of(ENOUGH, SpreadingUnits.ONE)))))
                : Optional.empty();
    }

    private Quantity<Length> length(double meters) {
        return Amounts.ofSi(meters, pattern.pans().get(0).position().getUnit());
    }

    private Quantity<ArealApplicationRate> rate(double kilogramsPerSquareMeter) {
        return Amounts.ofSi(kilogramsPerSquareMeter, pattern.arealUnit());
    }
}
