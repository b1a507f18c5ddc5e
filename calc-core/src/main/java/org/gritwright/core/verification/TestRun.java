package org.gritwright.core.verification;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.TradeSystem;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;

/**
 * What a standing truck was told: a target rate and a test speed, for a run time or over a test distance.
 *
 * <p>Test distance = test speed × run time; expected mass = target rate × test distance. Immutable, thread-safe, a
 * value.
 *
 * @param targetRate mass per distance the truck would travel, greater than zero
 * @param testSpeed the road speed fed to the truck, greater than zero
 * @param runTime the run time, if that was set
 * @param distance the test distance, if that was set; exactly one of the two is given
 */
public record TestRun(
        Quantity<ApplicationRate> targetRate,
        Quantity<Speed> testSpeed,
        Optional<Quantity<Time>> runTime,
        Optional<Quantity<Length>> distance) {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if one is not greater than zero, or not exactly one of run time and distance is
     *     given
     */
    public TestRun {
        Require.given(TestRun.class, targetRate, testSpeed, runTime, distance);
        Require.positive("target rate", ApplicationRate.class, targetRate);
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

    double meters() {
        return distance.map(d -> Amounts.si(Length.class, d)).orElseGet(() -> metersPerSecond() * seconds());
    }

    double seconds() {
        return runTime.map(t -> Amounts.si(Time.class, t)).orElseGet(() -> meters() / metersPerSecond());
    }

    private double metersPerSecond() {
        return Amounts.si(Speed.class, testSpeed);
    }

    /** The target mass flow: target rate × test speed. */
    double kilogramsPerSecond() {
        return Amounts.si(ApplicationRate.class, targetRate) * metersPerSecond();
    }

    /**
     * What should be laid, as a number.
     *
     * @return target rate × test distance in kilograms, greater than 0
     */
    public double expectedKilograms() {
        return Amounts.si(ApplicationRate.class, targetRate) * meters();
    }

    /**
     * The expected mass: target rate × test distance.
     *
     * @return the mass, in pounds or kilograms as the target rate is given
     */
    public Quantity<Mass> expectedMass() {
        return Amounts.ofSi(expectedKilograms(), UnitSymbol.tradeUnit(Mass.class, targetRate));
    }
}
