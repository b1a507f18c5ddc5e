package org.gritwright.core.verification;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.TradeSystem;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;

/**
 * What a standing truck was told: a target rate and a test speed, for a run time or over a test distance.
 *
 * <p>Test distance = test speed × run time; expected amount = target rate × test distance. Immutable, thread-safe, a
 * value.
 *
 * @param targetRate mass or, of a liquid, volume per distance the truck would travel, greater than zero
 * @param testSpeed the road speed fed to the truck, greater than zero
 * @param runTime the run time, if that was set
 * @param distance the test distance, if that was set; exactly one of the two is given
 */
public record TestRun(
        Quantity<?> targetRate,
        Quantity<Speed> testSpeed,
        Optional<Quantity<Time>> runTime,
        Optional<Quantity<Length>> distance) {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if the rate is not a mass or volume per distance of travel, a value is not greater
     *     than zero, or not exactly one of run time and distance is given
     */
    public TestRun {
        Require.given(TestRun.class, targetRate, testSpeed, runTime, distance);
        if (isOfLiquid(targetRate)) {
            Require.positive("target rate", LiquidApplicationRate.class, liquid(targetRate));
        } else {
            Require.positive("target rate", ApplicationRate.class, mass(targetRate));
        }
        Require.positive("test speed", Speed.class, testSpeed);
        runTime.ifPresent(t -> Require.positive("run time", Time.class, t));
        distance.ifPresent(d -> Require.positive("test distance", Length.class, d));
        if (runTime.isPresent() == distance.isPresent()) {
            throw new InvalidInputException(
                    "test run", "given either a run time or a test distance", runTime.isPresent() ? "both" : "neither");
        }
    }

    /**
     * A run over a time.
     *
     * @param targetRate the target rate
     * @param testSpeed the test speed
     * @param runTime the run time
     * @return the run
     */
    public static TestRun lasting(
            Quantity<ApplicationRate> targetRate, Quantity<Speed> testSpeed, Quantity<Time> runTime) {
        return new TestRun(
                targetRate, testSpeed, Optional.of(Objects.requireNonNull(runTime, "runTime")), Optional.empty());
    }

    /**
     * A run of a liquid over a time.
     *
     * @param targetRate the target rate; of prewet, prewet rate × rate of the dry material
     * @param testSpeed the test speed
     * @param runTime the run time
     * @return the run
     */
    public static TestRun pumping(
            Quantity<LiquidApplicationRate> targetRate, Quantity<Speed> testSpeed, Quantity<Time> runTime) {
        return new TestRun(
                targetRate, testSpeed, Optional.of(Objects.requireNonNull(runTime, "runTime")), Optional.empty());
    }

    /**
     * A run of a liquid over a distance.
     *
     * @param targetRate the target rate
     * @param testSpeed the test speed
     * @param distance the test distance
     * @return the run
     */
    public static TestRun pumpingOver(
            Quantity<LiquidApplicationRate> targetRate, Quantity<Speed> testSpeed, Quantity<Length> distance) {
        return new TestRun(
                targetRate, testSpeed, Optional.empty(), Optional.of(Objects.requireNonNull(distance, "distance")));
    }

    private static boolean isOfLiquid(Quantity<?> rate) {
        return UnitSymbol.of(rate.getUnit()).kind().equals(LiquidApplicationRate.class);
    }

    private static Quantity<LiquidApplicationRate> liquid(Quantity<?> rate) {
        return rate.asType(LiquidApplicationRate.class);
    }

    private static Quantity<ApplicationRate> mass(Quantity<?> rate) {
        if (!UnitSymbol.of(rate.getUnit()).kind().equals(ApplicationRate.class)) {
            throw new InvalidInputException(
                    "target rate", "a mass or a volume per distance of travel", Amounts.format(rate));
        }
        return rate.asType(ApplicationRate.class);
    }

    /**
     * Whether it is a run of a liquid.
     *
     * @return true if the target rate is a volume per distance
     */
    public boolean isOfLiquid() {
        return isOfLiquid(targetRate);
    }

    /**
     * A run over a distance.
     *
     * @param targetRate the target rate
     * @param testSpeed the test speed
     * @param distance the test distance
     * @return the run
     */
    public static TestRun over(
            Quantity<ApplicationRate> targetRate, Quantity<Speed> testSpeed, Quantity<Length> distance) {
        return new TestRun(
                targetRate, testSpeed, Optional.empty(), Optional.of(Objects.requireNonNull(distance, "distance")));
    }

    /**
     * The test distance.
     *
     * @return as given, or test speed × run time in miles or kilometers as the speed is given
     */
    public Quantity<Length> testDistance() {
        return distance.orElseGet(() -> Amounts.ofSi(
                meters(),
                UnitSymbol.of(testSpeed.getUnit()).system() == TradeSystem.METRIC
                        ? SpreadingUnits.KILOMETER
                        : SpreadingUnits.MILE));
    }

    Unit<ApplicationRate> massRateUnit() {
        return isOfLiquid()
                ? UnitSymbol.tradeUnit(ApplicationRate.class, targetRate)
                : mass(targetRate).getUnit();
    }

    double meters() {
        return distance.map(d -> Amounts.si(Length.class, d)).orElseGet(() -> metersPerSecond() * seconds());
    }

    double seconds() {
        return runTime.map(t -> Amounts.si(Time.class, t)).orElseGet(() -> meters() / metersPerSecond());
    }

    private double metersPerSecond() {
        return Amounts.si(Speed.class, testSpeed);
    }

    /**
     * The target rate as a mass per distance.
     *
     * @param material what is laid
     * @return kilograms per meter; of a liquid at its stated density
     * @throws InvalidInputException if the rate is one of liquids and the material granular, or the other way round
     */
    public double kilogramsPerMeter(Material material) {
        if (isOfLiquid() != material.isLiquid()) {
            throw new InvalidInputException(
                    "target rate",
                    material.isLiquid()
                            ? "a volume per distance, as " + material.name() + " is a liquid"
                            : "a mass per distance, as " + material.name() + " is granular",
                    Amounts.format(targetRate));
        }
        double perMeter = isOfLiquid()
                ? Amounts.si(LiquidApplicationRate.class, liquid(targetRate))
                : Amounts.si(ApplicationRate.class, mass(targetRate));
        return perMeter * material.kilogramsPerAmount();
    }

    /** The target mass flow: target rate × test speed. */
    double kilogramsPerSecond(Material material) {
        return kilogramsPerMeter(material) * metersPerSecond();
    }

    /**
     * What should be laid, as a number.
     *
     * @param material what is laid
     * @return target rate × test distance in kilograms, greater than 0; of a liquid at its stated density
     * @throws InvalidInputException if the rate doesn't go with the material
     */
    public double expectedKilograms(Material material) {
        return kilogramsPerMeter(material) * meters();
    }

    /**
     * The expected amount: target rate × test distance.
     *
     * @return a mass, in pounds or kilograms as the target rate is given, or a volume, in gallons or liters
     */
    public Quantity<?> expectedAmount() {
        return isOfLiquid()
                ? Amounts.ofSi(
                        Amounts.si(LiquidApplicationRate.class, liquid(targetRate)) * meters(),
                        UnitSymbol.tradeUnit(Volume.class, targetRate))
                : Amounts.ofSi(
                        Amounts.si(ApplicationRate.class, mass(targetRate)) * meters(),
                        UnitSymbol.tradeUnit(Mass.class, targetRate));
    }
}
