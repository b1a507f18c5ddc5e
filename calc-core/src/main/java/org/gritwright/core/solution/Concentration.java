package org.gritwright.core.solution;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * How strong a solution of one salt is, by a reading. A density belongs to one strength; a freezing point belongs to two. All is
 * for one salt in water: what else is dissolved, such as an inhibitor, makes the solution denser and seem stronger.
 */
public final class Concentration {
    /** How much a hydrometer's glass swells, per K: about, common practice, no source. Not corrected, but a limit. */
    private static final double GLASS = 25e-6;

    private static final Quantity<Temperature> SIXTY = Amounts.of(60, SpreadingUnits.FAHRENHEIT);

    private static final int HALVINGS = 64;

    private static final double MILLION = 1e6;

    private Concentration() {}

    /**
     * By a density.
     *
     * @param salt the salt
     * @param density mass per volume
     * @param temperature the solution's temperature when it was read
     * @return the solution; its share is as uncertain as the reading and the published densities
     * @throws org.gritwright.units.InvalidInputException if densities aren't known at that temperature, or no known strength has
     *     this one; it names the densities that some strength has
     */
    public static Solution byDensity(Salt salt, Measured<BulkDensity> density, Quantity<Temperature> temperature) {
        Objects.requireNonNull(salt, "salt");
        Objects.requireNonNull(density, "density");
        Objects.requireNonNull(temperature, "temperature");
        Require.positive("density", BulkDensity.class, density.value());
        return byDensity(salt, density, temperature, 0);
    }

    /**
     * By a hydrometer that reads specific gravity.
     *
     * @param salt the salt
     * @param reading the reading with its reference temperature
     * @param temperature the solution's temperature when it was read
     * @return the solution; the glass, which is as large as it should be at the reference temperature only, adds to the uncertainty
     * @throws org.gritwright.units.InvalidInputException as for a density
     */
    public static Solution bySpecificGravity(Salt salt, SpecificGravity reading, Quantity<Temperature> temperature) {
        Objects.requireNonNull(salt, "salt");
        Objects.requireNonNull(reading, "reading");
        Objects.requireNonNull(temperature, "temperature");
        Measured<BulkDensity> density = new Contributions<>(SpreadingUnits.KILOGRAM_PER_CUBIC_METER)
                .add("specific gravity", Dimensionless.class, reading.reading(), reading.water())
                .of(reading.ratio() * reading.water());
        return byDensity(salt, density, temperature, glass(density, temperature, reading.reference()));
    }

    /**
     * By a salometer, which is for sodium chloride only. It sinks as deep as in the solution at 60 °F that has the same density: what
     * it reads at another temperature is no percentage of saturation.
     *
     * @param reading the reading
     * @param temperature the solution's temperature when it was read
     * @return the solution; at 60 °F its share is degrees × 0.26395 %
     * @throws org.gritwright.units.InvalidInputException as for a density
     */
    public static Solution bySalometer(Salometer reading, Quantity<Temperature> temperature) {
        Objects.requireNonNull(reading, "reading");
        Objects.requireNonNull(temperature, "temperature");
        DensityModel model = Salt.SODIUM_CHLORIDE.densities();
        double sixty = Celsius.of("reference temperature", SIXTY);
        double slope = Salometer.percent(1) * model.slope(reading.percent(), sixty);
        Quantity<BulkDensity> value = Amounts.of(
                model.kilogramsPerCubicMeter(reading.percent(), sixty), SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
        Measured<BulkDensity> density = Measured.of(
                value,
                Amounts.of(slope * reading.uncertainty(), SpreadingUnits.KILOGRAM_PER_CUBIC_METER),
                Double.POSITIVE_INFINITY);
        return byDensity(Salt.SODIUM_CHLORIDE, density, temperature, glass(density, temperature, SIXTY));
    }

    private static double glass(
            Measured<BulkDensity> density, Quantity<Temperature> temperature, Quantity<Temperature> made) {
        double apart =
                Celsius.of("temperature of the solution", temperature) - Celsius.of("reference temperature", made);
        return GLASS * Math.abs(apart) * Amounts.si(BulkDensity.class, density.value());
    }

    private static Solution byDensity(
            Salt salt, Measured<BulkDensity> density, Quantity<Temperature> temperature, double glass) {
        DensityModel model = salt.densities();
        double celsius =
                Celsius.within("temperature of the solution", temperature, model.coldestOfAll(), model.warmest());
        DensityModel.Range range = model.range(celsius);
        Require.within(
                "density of a solution of " + salt.words() + " at " + Amounts.format(temperature),
                BulkDensity.class,
                density.value(),
                limit(Math.floor(MILLION * model.kilogramsPerCubicMeter(range.lowestPercent(), celsius))),
                limit(Math.ceil(MILLION * model.kilogramsPerCubicMeter(range.highestPercent(), celsius))));
        double percent = percent(model, celsius, range, Amounts.si(BulkDensity.class, density.value()));
        double perKilogram = 1 / (100 * model.slope(percent, celsius));
        double limit =
                model.kilogramsPerCubicMeter(percent, celsius) * model.limits().at(celsius);
        return new Solution(
                salt,
                new Contributions<>(SpreadingUnits.PERCENT)
                        .limits("published densities", limit * perKilogram)
                        .limits("glass", glass * perKilogram)
                        .add("density", BulkDensity.class, density, perKilogram)
                        .of(percent / 100));
    }

    /** To a milligram per cubic meter outward, so that a message has no more digits than that. */
    private static Quantity<BulkDensity> limit(double milligramsPerCubicMeter) {
        return Amounts.of(milligramsPerCubicMeter / MILLION, SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
    }

    /** By halving: the density rises with the strength throughout. */
    private static double percent(DensityModel model, double celsius, DensityModel.Range range, double wanted) {
        double below = range.lowestPercent();
        double above = range.highestPercent();
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (below + above) / 2;
            if (model.kilogramsPerCubicMeter(middle, celsius) < wanted) {
                below = middle;
            } else {
                above = middle;
            }
        }
        return above;
    }

    /**
     * By a freezing point, such as a refractometer for brines shows. There are two such solutions, and both are said.
     *
     * @param salt the salt
     * @param freezingPoint where the solution begins to freeze, from the weakest published eutectic to 0 °C; its uncertainty is a
     *     difference of temperatures
     * @return the weaker and, where a table was read, the stronger, whose uncertainty isn't known
     * @throws org.gritwright.units.InvalidInputException if freezing points of the salt's solutions aren't known, or none is this one
     */
    public static FreezingMatch byFreezingPoint(Salt salt, Measured<Temperature> freezingPoint) {
        Objects.requireNonNull(salt, "salt");
        Objects.requireNonNull(freezingPoint, "freezingPoint");
        FreezingCurve curve = salt.freezing();
        double celsius = Celsius.within("freezing point", freezingPoint.value(), curve.coldest(), 0);
        double percent = curve.percentOfWeaker(celsius).orElseThrow();
        double perKelvin = 1 / (100 * curve.slopeOfWeaker(percent));
        Contributions<Dimensionless> weaker = new Contributions<>(SpreadingUnits.PERCENT)
                .limits("published freezing points", curve.limit(celsius) * perKelvin)
                .add("freezing point", Temperature.class, difference(freezingPoint), perKelvin);
        OptionalDouble stronger = curve.percentOfStronger(celsius);
        return new FreezingMatch(
                new Solution(salt, weaker.of(percent / 100)),
                stronger.isPresent()
                        ? Optional.of(new Solution(
                                salt, Measured.once(Amounts.of(stronger.getAsDouble(), SpreadingUnits.PERCENT))))
                        : Optional.empty());
    }

    /** The uncertainty in kelvins, about any value. */
    private static Measured<Temperature> difference(Measured<Temperature> temperature) {
        return temperature
                .standardUncertainty()
                .map(u -> Measured.of(
                        Amounts.of(0, SpreadingUnits.KELVIN),
                        Amounts.of(Celsius.uncertainty(temperature), SpreadingUnits.KELVIN),
                        temperature.degreesOfFreedom().orElseThrow()))
                .orElse(Measured.once(Amounts.of(0, SpreadingUnits.KELVIN)));
    }
}
