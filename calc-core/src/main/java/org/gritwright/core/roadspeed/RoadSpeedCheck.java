package org.gritwright.core.roadspeed;

import static org.gritwright.core.finding.Argument.number;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Term;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.statistics.RatioEstimate;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.PulsesPerDistance;

/**
 * Whether the road-speed value in force is right: pulses over a measured course, three runs or more.
 *
 * <p>The truck takes distance for pulses ÷ value in force. With P pulses per distance in truth and F in force it
 * believes P/F times the true distance and speed and lays P/F times the target rate: the rate changes by P/F − 1.
 * Derived; common practice, no source. Immutable, thread-safe, a value.
 *
 * @param measured pulses per distance, total pulses ÷ total distance, in the unit of the value in force
 * @param inForce the value in force
 * @param error value in force ÷ measured − 1, in percent
 * @param effectOnRate measured ÷ value in force − 1: by how much the applied rate differs from the target, in percent
 * @param tolerance the caller's tolerance for the effect on the rate
 * @param doubt why the runs prove nothing, and no value may be entered by them; none if nothing speaks against them
 */
public record RoadSpeedCheck(
        Measured<PulsesPerDistance> measured,
        Quantity<PulsesPerDistance> inForce,
        Quantity<Dimensionless> error,
        Quantity<Dimensionless> effectOnRate,
        Tolerance tolerance,
        Optional<Finding> doubt) {
    /** Checks that nothing is null. */
    public RoadSpeedCheck {
        Require.given(RoadSpeedCheck.class, measured, inForce, error, effectOnRate, tolerance, doubt);
    }

    private static final int FEWEST_RUNS = 3;

    /**
     * Checks a road-speed value.
     *
     * @param runs three runs or more
     * @param inForce the value in force, greater than zero
     * @param tolerance the caller's tolerance for the effect on the rate
     * @return the check
     * @throws org.gritwright.units.InvalidInputException if there are fewer than three runs or the value is not greater than zero
     */
    public static RoadSpeedCheck of(List<RoadSpeedRun> runs, Quantity<PulsesPerDistance> inForce, Tolerance tolerance) {
        Objects.requireNonNull(tolerance, "tolerance");
        Require.positive("road-speed value", PulsesPerDistance.class, inForce);
        Require.that(runs.size() >= FEWEST_RUNS, "runs over the course", "three or more", runs.size());
        RatioEstimate estimate = RatioEstimator.RATIO_OF_SUMS.estimate(
                runs.stream()
                        .mapToDouble(r -> Amounts.si(PulseCount.class, r.pulses()))
                        .toArray(),
                runs.stream()
                        .mapToDouble(r -> Amounts.si(Length.class, r.course()))
                        .toArray());
        Unit<PulsesPerDistance> unit = inForce.getUnit();
        double ratio = Amounts.si(PulsesPerDistance.class, inForce) / estimate.ratio();
        RoadSpeedCheck check = new RoadSpeedCheck(
                Measured.of(
                        Amounts.ofSi(estimate.ratio(), unit),
                        Amounts.ofSi(estimate.standardUncertainty().orElseThrow(), unit),
                        estimate.degreesOfFreedom()),
                inForce,
                Amounts.ofSi(ratio - 1, SpreadingUnits.PERCENT),
                Amounts.ofSi(1 / ratio - 1, SpreadingUnits.PERCENT),
                tolerance,
                Optional.empty());
        return new RoadSpeedCheck(
                check.measured, inForce, check.error, check.effectOnRate, tolerance, RoadSpeedDoubt.of(runs, check));
    }

    /**
     * The verdict on the effect on the applied rate.
     *
     * @return whether it is within the tolerance
     */
    public Verdict verdict() {
        return tolerance.accepts(effectOnRate) ? Verdict.WITHIN_TOLERANCE : Verdict.OUTSIDE_TOLERANCE;
    }

    /**
     * What a person should know.
     *
     * @return one finding for runs in doubt, else for a value outside the tolerance
     */
    public List<Finding> findings() {
        if (doubt.isPresent() || verdict() == Verdict.WITHIN_TOLERANCE) {
            return doubt.stream().toList();
        }
        double effect = Amounts.si(Dimensionless.class, effectOnRate);
        return List.of(Finding.of(
                FindingCode.ROAD_SPEED_OFF,
                Map.of(
                        "inForce", number(inForce),
                        "measured", number(measured.value()),
                        "error", number(error),
                        "effect", number(Amounts.ofSi(Math.abs(effect), SpreadingUnits.PERCENT)),
                        "way", effect > 0 ? Term.TOO_MUCH : Term.TOO_LITTLE)));
    }
}
