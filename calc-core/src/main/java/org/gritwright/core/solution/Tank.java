package org.gritwright.core.solution;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.Rounded;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * A tank with a solution in it, of which a reading says how strong it is. Immutable, thread-safe, a value.
 *
 * @param capacity what the tank holds when it is as full as it may be, greater than zero
 * @param filled what is in it, greater than zero and at most the capacity
 * @param content the solution in it
 * @param temperature its temperature, and that of water which is added, 0 °C to 40 °C
 */
public record Tank(
        Quantity<Volume> capacity, Quantity<Volume> filled, Solution content, Quantity<Temperature> temperature) {
    /** Of a volume that a message tells: finer than any tank is read. */
    private static final int DIGITS = 6;

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if one is out of its range, or the density of the content isn't known
     */
    public Tank {
        Require.given(Tank.class, capacity, filled, content, temperature);
        Require.positive("capacity of the tank", Volume.class, capacity);
        Require.positive("content of the tank", Volume.class, filled);
        holds(capacity, "the solution in it", filled);
        Celsius.within("temperature of the water", temperature, Water.COLDEST, Water.WARMEST);
        content.celsius(temperature);
    }

    static void holds(Quantity<Volume> capacity, String what, Quantity<Volume> volume) {
        double room = Amounts.si(Volume.class, capacity);
        if (Comparison.isAbove(Amounts.si(Volume.class, volume), room)) {
            throw new InvalidInputException(
                    "capacity of the tank",
                    "at least " + Rounded.text(volume, DIGITS) + ", " + what,
                    Amounts.format(capacity));
        }
    }

    /**
     * What makes the wanted strength of what is in the tank: water if it is too strong, salt if it is too weak.
     *
     * @param target the share that is wanted, greater than zero
     * @param supply the salt that would be added
     * @return what to add, salt in the trade's unit of mass beside that of the content
     * @throws InvalidInputException if the tank is too small for it, the supply is another salt, a solution of that strength isn't
     *     known at that temperature (beyond saturation, where that is known, it never is), or the salt is too wet to make it
     */
    public TankCorrection correctedTo(Quantity<Dimensionless> target, SaltSupply supply) {
        Objects.requireNonNull(supply, "supply");
        Require.positive("share that is wanted", Dimensionless.class, target);
        Solution wanted = Solution.of(content.salt(), target);
        Recipe.sameSalt(content.salt(), supply);
        wanted.celsius(temperature);
        return wanted.ratio() > content.ratio() ? strengthened(wanted, supply) : diluted(wanted);
    }

    private double celsius() {
        return Celsius.of("temperature", temperature);
    }

    private double kilograms() {
        return Amounts.si(Volume.class, filled) * content.kilogramsPerCubicMeter(celsius());
    }

    private TankCorrection diluted(Solution wanted) {
        double celsius = celsius();
        double ofWater = Water.kilogramsPerCubicMeter(celsius);
        double excess = content.ratio() / wanted.ratio() - 1;
        Quantity<Volume> after = after(wanted, kilograms() * (1 + excess), "after water is added");
        Optional<Measured<Volume>> water = excess > 0
                ? Optional.of(new Contributions<>(filled.getUnit())
                        .limits("published densities", relativeLimit() * kilograms() * excess / ofWater)
                        .add(
                                Solution.field(content.salt()),
                                Dimensionless.class,
                                content.share(),
                                (kilograms() / wanted.ratio() + kilogramsPerShare() * excess) / ofWater)
                        .of(kilograms() * excess / ofWater))
                : Optional.empty();
        return new TankCorrection(Optional.empty(), water, after, mass(0));
    }

    private TankCorrection strengthened(Solution wanted, SaltSupply supply) {
        Recipe.weakerThan(supply, wanted);
        double target = wanted.ratio();
        double missing = target - content.ratio();
        // salt = mass·(t − w) ÷ (c − t·(c + m)), with the chemical c and the water m of the salt
        double soluble = supply.chemicalRatio() + supply.waterRatio();
        double effect = supply.chemicalRatio() - target * soluble;
        double salt = kilograms() * missing / effect;
        Quantity<Volume> after = after(wanted, kilograms() + salt * soluble, "after salt is added");
        return new TankCorrection(
                Optional.of(new Contributions<>(massUnit())
                        .limits("published densities", relativeLimit() * salt)
                        .add(
                                Solution.field(content.salt()),
                                Dimensionless.class,
                                content.share(),
                                (kilogramsPerShare() * missing - kilograms()) / effect)
                        .add(
                                "chemical in the salt",
                                Dimensionless.class,
                                supply.chemical(),
                                -salt * (1 - target) / effect)
                        .of(salt)),
                Optional.empty(),
                after,
                mass(salt * supply.restRatio()));
    }

    /** The change of the mass in the tank per unit of the share. */
    private double kilogramsPerShare() {
        return Amounts.si(Volume.class, filled) * content.slope(celsius());
    }

    private double relativeLimit() {
        return content.limit(celsius()) / content.kilogramsPerCubicMeter(celsius());
    }

    private Unit<Mass> massUnit() {
        return UnitSymbol.tradeUnit(Mass.class, filled);
    }

    private Quantity<Mass> mass(double kilograms) {
        return Amounts.ofSi(kilograms, massUnit());
    }

    private Quantity<Volume> after(Solution wanted, double kilograms, String when) {
        Quantity<Volume> volume = Amounts.ofSi(kilograms / wanted.kilogramsPerCubicMeter(celsius()), filled.getUnit());
        holds(capacity, "what is in it " + when, volume);
        return volume;
    }
}
