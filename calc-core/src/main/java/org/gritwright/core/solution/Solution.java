package org.gritwright.core.solution;

import java.io.Serializable;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * A salt in water. Its strength is one thing only: the mass of the salt without crystal water ÷ the mass of the solution. That is
 * neither a share of the volume, nor salt per water. Immutable, thread-safe, a value.
 *
 * <p>What isn't published is refused: there is no extrapolation.
 *
 * @param salt the salt
 * @param share the salt's part of the mass, 0 or more and below 100 %
 */
public record Solution(Salt salt, Measured<Dimensionless> share) implements Serializable {
    private static final double BILLION = 1e9;

    /** Standard uncertainties that are looked at to either side: 95 of 100. */
    private static final double REACH = 2;

    /**
     * Checks the share.
     *
     * @throws InvalidInputException if it is negative, or 100 % or more
     */
    public Solution {
        Require.given(Solution.class, salt, share);
        Require.share(field(salt), share.value());
    }

    /**
     * A solution of a stated strength, which is taken as exactly that.
     *
     * @param salt the salt
     * @param share its part of the mass
     * @return the solution
     * @throws InvalidInputException if the share is negative, or 100 % or more
     */
    public static Solution of(Salt salt, Quantity<Dimensionless> share) {
        Objects.requireNonNull(salt, "salt");
        Objects.requireNonNull(share, "share");
        return new Solution(salt, Contributions.exactly(share));
    }

    /**
     * Water, as a solution without salt.
     *
     * @param salt the salt that isn't in it
     * @return the solution
     */
    public static Solution water(Salt salt) {
        Objects.requireNonNull(salt, "salt");
        return of(salt, Amounts.of(0, SpreadingUnits.PERCENT));
    }

    static String field(Salt salt) {
        return "share of " + salt.words();
    }

    double ratio() {
        return Amounts.si(Dimensionless.class, share.value());
    }

    /** To a billionth, so that 0.233 is 23.3 % and not a rounding error beyond it. */
    double percent() {
        return Math.rint(Amounts.in(share.value(), SpreadingUnits.PERCENT) * BILLION) / BILLION;
    }

    /** The temperature in °C, if the density at it is known. */
    double celsius(Quantity<Temperature> temperature) {
        DensityModel model = salt.densities();
        double celsius =
                Celsius.within("temperature of the solution", temperature, model.coldestOfAll(), model.warmest());
        DensityModel.Range range = model.range(celsius);
        Require.within(
                field(salt) + " at " + Amounts.format(temperature),
                Dimensionless.class,
                share.value(),
                Amounts.of(range.lowestPercent(), SpreadingUnits.PERCENT),
                Amounts.of(range.highestPercent(), SpreadingUnits.PERCENT));
        return celsius;
    }

    /** At a temperature that was checked. */
    double kilogramsPerCubicMeter(double celsius) {
        return salt.densities().kilogramsPerCubicMeter(percent(), celsius);
    }

    /** In kg/m³ per unit of the share. */
    double slope(double celsius) {
        return 100 * salt.densities().slope(percent(), celsius);
    }

    /** How far tables differ, in kg/m³ either way. */
    double limit(double celsius) {
        return kilogramsPerCubicMeter(celsius) * salt.densities().limits().at(celsius);
    }

    /**
     * The density.
     *
     * @param temperature its temperature, up to 40 °C; how cold, and which strengths at which temperature, depends on the salt
     * @return mass per volume, in kg/m³, with the uncertainty of the published data and of the share
     * @throws InvalidInputException if the density of the salt's solutions isn't known, or not at this temperature and strength; it
     *     names the range that is
     */
    public Measured<BulkDensity> density(Quantity<Temperature> temperature) {
        double celsius = celsius(temperature);
        return new Contributions<>(SpreadingUnits.KILOGRAM_PER_CUBIC_METER)
                .limits("published densities", limit(celsius))
                .add(field(salt), Dimensionless.class, share, slope(celsius))
                .of(kilogramsPerCubicMeter(celsius));
    }

    /**
     * How much chemical is in a volume of the solution.
     *
     * @param temperature its temperature, as for the density
     * @return mass of the salt without crystal water per volume of solution, in kg/m³
     * @throws InvalidInputException as for the density
     */
    public Measured<BulkDensity> chemicalPerVolume(Quantity<Temperature> temperature) {
        double celsius = celsius(temperature);
        double density = kilogramsPerCubicMeter(celsius);
        return new Contributions<>(SpreadingUnits.KILOGRAM_PER_CUBIC_METER)
                .limits("published densities", ratio() * limit(celsius))
                .add(field(salt), Dimensionless.class, share, density + ratio() * slope(celsius))
                .of(ratio() * density);
    }

    /**
     * On which side of the eutectic the solution is.
     *
     * @return the side, by all sources together and within two standard uncertainties of the share
     */
    public Side side() {
        List<Eutectic> eutectics = salt.eutectics();
        double weakest = percent(eutectics.get(0));
        double strongest = percent(eutectics.get(eutectics.size() - 1));
        double reach = REACH
                * share.standardUncertainty()
                        .map(u -> Amounts.in(u, SpreadingUnits.PERCENT))
                        .orElse(0.0);
        if (percent() - reach < strongest && percent() + reach > weakest) {
            return Side.UNDECIDED;
        }
        return percent() <= weakest ? Side.UP_TO_EUTECTIC : Side.BEYOND_EUTECTIC;
    }

    private static double percent(Eutectic eutectic) {
        return Amounts.in(eutectic.share(), SpreadingUnits.PERCENT);
    }

    /**
     * Where the solution begins to freeze: up to the eutectic the lower the stronger it is, beyond it the higher.
     *
     * @return the freezing point with its side
     * @throws InvalidInputException if freezing points of the salt's solutions aren't known, or not at this strength
     */
    public FreezingPoint freezingPoint() {
        FreezingCurve curve = salt.freezing();
        Require.within(
                field(salt),
                Dimensionless.class,
                share.value(),
                Amounts.of(0, SpreadingUnits.PERCENT),
                Amounts.of(curve.highest(), SpreadingUnits.PERCENT));
        double percent = percent();
        Optional<Measured<Temperature>> temperature = Optional.empty();
        if (percent <= curve.weakestEutectic()) {
            temperature = Optional.of(upToEutectic(curve, percent));
        } else if (percent >= curve.strongestEutectic()) {
            temperature = curve.celsiusOfStronger(percent).stream()
                    .mapToObj(celsius -> Measured.once(Celsius.quantity(celsius)))
                    .findFirst();
        }
        return new FreezingPoint(side(), temperature);
    }

    private Measured<Temperature> upToEutectic(FreezingCurve curve, double percent) {
        double celsius = curve.celsiusOfWeaker(percent);
        // In kelvins, which differ from SI by no offset; only the uncertainty is used.
        Measured<Temperature> difference = new Contributions<>(SpreadingUnits.KELVIN)
                .limits("published freezing points", curve.limit(celsius))
                .add(field(salt), Dimensionless.class, share, 100 * curve.slopeOfWeaker(percent))
                .of(-celsius);
        return difference
                .standardUncertainty()
                .map(u -> Measured.of(
                        Celsius.quantity(celsius),
                        Celsius.quantity(u.getValue().doubleValue()),
                        difference.degreesOfFreedom().orElseThrow()))
                .orElse(Measured.once(Celsius.quantity(celsius)));
    }

    /**
     * What a person should know about the strength.
     *
     * @return that it is beyond the eutectic, or that nobody can tell; otherwise nothing
     */
    public List<Finding> findings() {
        List<Eutectic> eutectics = salt.eutectics();
        Argument weakest = Argument.number(eutectics.get(0).share());
        Argument strongest = Argument.number(eutectics.get(eutectics.size() - 1).share());
        Argument own = Argument.number(share.value());
        return switch (side()) {
            case UP_TO_EUTECTIC -> List.of();
            case UNDECIDED ->
                List.of(Finding.of(
                        FindingCode.EUTECTIC_SIDE_UNDECIDED,
                        Map.of("share", own, "weakest", weakest, "strongest", strongest)));
            case BEYOND_EUTECTIC ->
                List.of(Finding.of(FindingCode.SOLUTION_BEYOND_EUTECTIC, Map.of("share", own, "eutectic", strongest)));
        };
    }
}
