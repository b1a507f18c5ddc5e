package org.gritwright.core.lateral;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.ArealApplicationRate;

/**
 * What a spreader lays where across the road, by a row of pans that it drove over once or several times in one direction.
 *
 * <p>Masses, shares, offset and treated width are integrals of the rate along lines from the middle of one pan to the middle of
 * the next (the trapezoidal rule), and level to the outer edge of the outermost pans. What lies beyond the row is not in them:
 * see {@link #findings}. The uncertainties are those of the scale's rounding alone, given where each pan has one; by how much
 * passes differ, only another test tells. Results are in the trade's units of the system of the leftmost pan. Immutable,
 * thread-safe, a value.
 *
 * @param pans the pans, from the left to the right, whatever their order was; three or more, none over another
 * @param passes how often the truck drove over them, 1 or more
 */
public record SpreadPattern(List<Pan> pans, int passes) {
    private static final int FEWEST = 3;
    private static final int MOST = 1000;

    /** That many pans make the middle. */
    private static final int MIDDLE = 3;

    /** Pans as near to the middle as another by this part of the row are equally near. */
    private static final double EQUALLY_NEAR = 1e-9;

    /**
     * Puts the pans in order and checks them.
     *
     * @throws InvalidInputException if there are fewer than three pans or more than 1000, two overlap, all are empty, or the
     *     passes are not 1 to 1000
     */
    public SpreadPattern {
        Require.given(SpreadPattern.class, pans);
        List<Pan> given = Require.noMoreThan(MOST, "pans", pans);
        Require.that(given.size() >= FEWEST, "pans across the road", "three or more", given.size());
        Require.that(passes >= 1 && passes <= MOST, "passes over the pans", "1 to " + MOST, passes);
        pans = given.stream().sorted(Comparator.comparingDouble(Pan::meters)).toList();
        for (int i = 1; i < pans.size(); i++) {
            requireBeside(pans.get(i - 1), pans.get(i));
        }
        Require.that(
                pans.stream().anyMatch(pan -> pan.kilograms() > 0), "mass caught in all pans", "greater than 0", 0);
    }

    private static void requireBeside(Pan pan, Pan next) {
        double between = next.meters() - pan.meters();
        double halves = pan.halfWidth() + next.halfWidth();
        if (Comparison.isAbove(halves, between)) {
            throw new InvalidInputException(
                    "pan at " + Amounts.format(next.position()),
                    "beside the pan at " + Amounts.format(pan.position()),
                    "over it");
        }
    }

    /**
     * The pattern of one pass.
     *
     * @param pans the pans, in any order
     * @return the pattern
     * @throws InvalidInputException as for the full form
     */
    public static SpreadPattern of(List<Pan> pans) {
        return new SpreadPattern(pans, 1);
    }

    Profile profile() {
        return Profile.of(pans, passes);
    }

    private Quantity<Mass> someMass() {
        return pans.get(0).caught();
    }

    private Unit<Length> lengthUnit() {
        return pans.get(0).position().getUnit();
    }

    Unit<ArealApplicationRate> arealUnit() {
        return UnitSymbol.tradeUnit(ArealApplicationRate.class, someMass());
    }

    Unit<ApplicationRate> rateUnit() {
        return UnitSymbol.tradeUnit(ApplicationRate.class, someMass());
    }

    /** A result in SI with what each pan's rate contributes to it. */
    private <Q extends Quantity<Q>> Measured<Q> measured(double value, double[] sensitivities, Unit<Q> unit) {
        Quantity<Q> result = Amounts.ofSi(value, unit);
        double variance = 0;
        for (int i = 0; i < pans.size(); i++) {
            Pan pan = pans.get(i);
            if (pan.rounding().isEmpty()) {
                return Measured.once(result);
            }
            double kilograms = Amounts.si(Mass.class, pan.rounding().get());
            double part = sensitivities[i] * kilograms / pan.squareMeters() / passes;
            variance += part * part;
        }
        return Measured.of(result, Amounts.ofSi(Math.sqrt(variance), unit), Double.POSITIVE_INFINITY);
    }

    /**
     * What each pan caught per area and pass.
     *
     * @return the rates, from the left to the right
     */
    public List<Measured<ArealApplicationRate>> rates() {
        Profile profile = profile();
        return IntStream.range(0, pans.size())
                .mapToObj(i -> measured(profile.rate(i), only(i), arealUnit()))
                .toList();
    }

    private double[] only(int pan) {
        double[] weights = new double[pans.size()];
        weights[pan] = 1;
        return weights;
    }

    /**
     * What the pans account for: the rate integrated across the road.
     *
     * @return mass per distance and pass
     */
    public Measured<ApplicationRate> massPerDistance() {
        Profile profile = profile();
        double[] weights = profile.weights();
        return measured(profile.sum(weights), weights, rateUnit());
    }

    /**
     * What the pans account for, beside the rate that was asked of the truck.
     *
     * @param asked mass per distance, greater than zero
     * @return the comparison
     * @throws InvalidInputException if the rate is not greater than zero
     */
    public Recovery recovery(Quantity<ApplicationRate> asked) {
        return new Recovery(asked, massPerDistance());
    }

    /**
     * How far the pattern's center of mass is from the truck's center line.
     *
     * @return the offset, negative to the left
     */
    public Measured<Length> offset() {
        Profile profile = profile();
        double[] weights = profile.weights();
        double[] moments = profile.moments();
        double mass = profile.sum(weights);
        double offset = profile.sum(moments) / mass;
        return measured(offset, ratio(moments, offset, weights, mass), lengthUnit());
    }

    /** The sensitivities of part ÷ whole. */
    private static double[] ratio(double[] part, double quotient, double[] whole, double sum) {
        double[] sensitivities = new double[part.length];
        Arrays.setAll(sensitivities, i -> (part[i] - quotient * whole[i]) / sum);
        return sensitivities;
    }

    /**
     * The treated width: from the outermost place on the left to the outermost on the right where the rate is half of that in the
     * middle. For a pattern that is symmetric about the truck this is twice the distance from the center to where the rate is half
     * of the average at the center, the effective swath width of Ohio State University Extension, Bulletin 817. The middle is
     * our definition: the mean of the three pans nearest to the pattern's center of mass, and of a fourth as near as the third. It is
     * the whole row if they caught nothing.
     *
     * @return the strip
     */
    public RoadStrip treated() {
        Profile profile = profile();
        double half = middleRate(profile) / 2;
        return new RoadStrip(
                Amounts.ofSi(profile.reachesFromLeft(half), lengthUnit()),
                Amounts.ofSi(-profile.mirrored().reachesFromLeft(half), lengthUnit()));
    }

    private static double middleRate(Profile profile) {
        double center = profile.sum(profile.moments()) / profile.sum(profile.weights());
        double[] distances = IntStream.range(0, profile.size())
                .mapToDouble(i -> Math.abs(profile.middle(i) - center))
                .toArray();
        double near = Arrays.stream(distances).sorted().toArray()[MIDDLE - 1];
        double farthest = near + EQUALLY_NEAR * (profile.right() - profile.left());
        return IntStream.range(0, profile.size())
                .filter(i -> distances[i] <= farthest)
                .mapToDouble(profile::rate)
                .average()
                .orElseThrow();
    }

    /**
     * The mean rate over a strip; where the pans don't reach, it counts as none.
     *
     * @param strip for example the {@link #treated} width, or a lane
     * @return mass per area and pass
     */
    public Measured<ArealApplicationRate> meanRate(RoadStrip strip) {
        Profile profile = profile();
        double width = strip.rightMeters() - strip.leftMeters();
        double[] weights = Arrays.stream(profile.weights(strip.leftMeters(), strip.rightMeters()))
                .map(weight -> weight / width)
                .toArray();
        return measured(profile.sum(weights), weights, arealUnit());
    }

    /**
     * The coefficient of variation over a strip: standard deviation ÷ mean, each pan standing for the road half-way to its
     * neighbors, so far as it lies in the strip. A pan at the strip's edge counts by the width that is inside, and where the pans
     * don't reach, the rate counts as none.
     *
     * <p>It is that of a population, because the pans together stand for the whole strip and nothing else is inferred. A sample of n
     * pans at equal distances would have √(n ÷ (n − 1)) of it: 2.6 % more of itself for 20. It isn't taken along the lines
     * between pans, which are evener than the pans.
     *
     * @param strip for example the {@link #treated} width, or a lane
     * @return a ratio, in percent
     * @throws InvalidInputException if nothing was caught there
     */
    public Quantity<Dimensionless> variation(RoadStrip strip) {
        double variation = profile()
                .steps()
                .within(strip.leftMeters(), strip.rightMeters())
                .variation();
        Require.that(!Double.isNaN(variation), "mass caught from " + strip, "greater than 0", "none");
        return Amounts.ofSi(variation, SpreadingUnits.PERCENT);
    }

    /**
     * How what the pans account for is shared between a strip and both sides of it.
     *
     * @param lane the strip
     * @return the shares, in percent
     */
    public LaneShares shares(RoadStrip lane) {
        double left = lane.leftMeters();
        double right = lane.rightMeters();
        return new LaneShares(
                share(Double.NEGATIVE_INFINITY, left), share(left, right), share(right, Double.POSITIVE_INFINITY));
    }

    private Measured<Dimensionless> share(double from, double to) {
        Profile profile = profile();
        double[] weights = profile.weights();
        double mass = profile.sum(weights);
        double[] inside = profile.weights(from, to);
        double share = profile.sum(inside) / mass;
        return measured(share, ratio(inside, share, weights, mass), SpreadingUnits.PERCENT);
    }

    /**
     * The pattern beside itself.
     *
     * @param spacing the distance between the center lines of the two passes, greater than zero
     * @param driving how the second pass lies beside the first
     * @return both together
     * @throws InvalidInputException if the spacing is not greater than zero
     */
    public Overlap overlap(Quantity<Length> spacing, Driving driving) {
        return new Overlap(this, spacing, driving);
    }

    /**
     * The widest spacing of two passes at which the coefficient of variation between their center lines keeps a limit. It is
     * looked for at 2000 spacings, from where the passes don't touch any more down to the narrowest: a limit kept only between
     * two of them may be missed.
     *
     * @param driving how the second pass lies beside the first
     * @param limit the greatest accepted coefficient of variation, greater than zero and below 100 %; the caller's choice
     * @param narrowest the narrowest spacing worth driving, greater than zero
     * @return the spacing; none if none keeps the limit
     * @throws InvalidInputException if a value is out of its range
     */
    public Optional<Quantity<Length>> widestSpacing(
            Driving driving, Quantity<Dimensionless> limit, Quantity<Length> narrowest) {
        Require.fraction("limit of the coefficient of variation", limit);
        Require.positive("narrowest spacing", Length.class, narrowest);
        SpacingSearch search = new SpacingSearch(profile(), driving, Amounts.si(Dimensionless.class, limit));
        return search.widest(Amounts.si(Length.class, narrowest)).stream()
                .mapToObj(meters -> Amounts.ofSi(meters, lengthUnit()))
                .findFirst();
    }

    /**
     * What a person should know before trusting the numbers: pans that don't cover the lane, a pattern wider than the row, a pan
     * that stands out, few pans.
     *
     * @param lane the part of the road that is to be treated
     * @return the findings, possibly none
     */
    public List<Finding> findings(RoadStrip lane) {
        return PatternFindings.of(this, lane);
    }
}
