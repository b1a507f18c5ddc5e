package org.gritwright.core.observation;

import static org.gritwright.core.finding.Argument.name;
import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.MeterPulses;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.weighing.Caught;
import org.gritwright.core.weighing.WeighedVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.RevolutionCount;

/** What a person should know about the weighing and the counting of one catch, of either purpose. */
public final class CatchFindings {
    private static final Quantity<Temperature> COLD = Amounts.of(60, SpreadingUnits.FAHRENHEIT);

    private static final double COLD_KELVIN = Amounts.si(Temperature.class, COLD);

    private static final Quantity<Dimensionless> NEARLY_EMPTY = Amounts.of(15, SpreadingUnits.PERCENT);

    private static final double NEARLY_EMPTY_RATIO = Amounts.si(Dimensionless.class, NEARLY_EMPTY);

    /**
     * Brine that warms by 25 °C gets about 1 % lighter, by its published densities; beyond 3 % it is another liquid (common practice,
     * no source).
     */
    private static final double OTHER_DENSITY = 0.03;

    private CatchFindings() {}

    /**
     * Findings about what was caught.
     *
     * @param made the catch
     * @param limits thresholds beyond which a catch is flagged
     * @return the findings, possibly none; those of the measuring, an amount of too few divisions, and a density that isn't the
     *     material's
     */
    public static List<Finding> ofAmount(Observation made, CatchLimits limits) {
        Caught caught = made.caught();
        List<Finding> findings = new ArrayList<>(caught.findings());
        if (Comparison.isAbove(limits.fewestDivisions(), caught.divisions())) {
            findings.add(Finding.of(
                    caught.isWeighed() ? FindingCode.CAUGHT_MASS_SMALL : FindingCode.CAUGHT_VOLUME_SMALL,
                    Map.of("caught", number(caught.total()), "division", number(caught.division()))));
        }
        if (caught instanceof WeighedVolume weighed) {
            ofDensity(weighed, made.point().material()).ifPresent(findings::add);
        }
        return findings;
    }

    /** Brine of another strength, water instead, or a density per liter taken for one per gallon: the volume is wrong by as much. */
    private static Optional<Finding> ofDensity(WeighedVolume weighed, Material material) {
        double ratio = Amounts.si(BulkDensity.class, weighed.density().value())
                / Amounts.si(BulkDensity.class, material.looseBulkDensity());
        return Comparison.isAbove(Math.abs(ratio - 1), OTHER_DENSITY)
                ? Optional.of(Finding.of(
                        FindingCode.LIQUID_DENSITY_DIFFERS,
                        Map.of(
                                "used", number(weighed.density().value()),
                                "material", name(material.name()),
                                "stated", number(material.looseBulkDensity()))))
                : Optional.empty();
    }

    /**
     * Findings about the conditions that catches were made in, as far as they were written down. One finding for several
     * catches, with the worst of them.
     *
     * @param conditions what was written down beside the catches
     * @return the findings, possibly none: of oil below 60 °F and of a hopper less than 15 % full (common practice, no
     *     source; the maker's manual may ask for more)
     */
    public static List<Finding> ofConditions(List<Conditions> conditions) {
        List<Finding> findings = new ArrayList<>();
        lowestBelow(COLD_KELVIN, Temperature.class, conditions.stream().flatMap(c -> c.oilTemperature().stream()))
                .ifPresent(oil -> findings.add(
                        Finding.of(FindingCode.OIL_COLD, Map.of("oil", number(oil), "limit", number(COLD)))));
        lowestBelow(NEARLY_EMPTY_RATIO, Dimensionless.class, conditions.stream().flatMap(c -> c.hopperLevel().stream()))
                .ifPresent(level -> findings.add(Finding.of(
                        FindingCode.HOPPER_NEARLY_EMPTY,
                        Map.of("level", number(level), "limit", number(NEARLY_EMPTY)))));
        return findings;
    }

    private static <Q extends Quantity<Q>> Optional<Quantity<Q>> lowestBelow(
            double limit, Class<Q> kind, Stream<Quantity<Q>> values) {
        return values.filter(value -> Comparison.isAbove(limit, Amounts.si(kind, value)))
                .min(Comparator.comparingDouble(value -> Amounts.si(kind, value)));
    }

    /**
     * Findings about what was counted.
     *
     * @param counted the count
     * @param feedback the drive's feedback
     * @param limits thresholds beyond which a catch is flagged
     * @return the findings, possibly none
     * @throws org.gritwright.units.InvalidInputException if pulses were counted and the drive has no sensor
     */
    public static List<Finding> ofCount(ShaftCount counted, DriveFeedback feedback, CatchLimits limits) {
        Objects.requireNonNull(feedback, "feedback");
        Objects.requireNonNull(limits, "limits");
        List<Finding> findings = new ArrayList<>();
        if (counted instanceof ShaftCount.Pulses pulses) {
            ofPulses(pulses, limits, findings);
        } else if (counted instanceof ShaftCount.CounterReadings readings) {
            ofPulses(readings.pulses(), limits, findings);
        } else if (counted instanceof ShaftCount.ByEye byEye) {
            ofCountByEye(byEye, limits, findings);
        }
        if (feedback instanceof MeterPulses) {
            return findings;
        }
        double turns = counted.revolutions(feedback) / Amounts.si(Dimensionless.class, feedback.gearRatio());
        if (Comparison.isAbove(Amounts.si(RevolutionCount.class, limits.fewestRevolutions()), turns)) {
            findings.add(Finding.of(
                    FindingCode.TOO_FEW_REVOLUTIONS,
                    Map.of(
                            "counted", number(Amounts.of(turns, SpreadingUnits.REVOLUTION)),
                            "wanted", number(limits.fewestRevolutions()))));
        }
        return findings;
    }

    private static void ofPulses(ShaftCount.Pulses counted, CatchLimits limits, List<Finding> findings) {
        if (Amounts.si(PulseCount.class, counted.pulses()) < Amounts.si(PulseCount.class, limits.fewestPulses())) {
            findings.add(Finding.of(
                    FindingCode.TOO_FEW_PULSES,
                    Map.of("counted", number(counted.pulses()), "wanted", number(limits.fewestPulses()))));
        }
    }

    private static void ofCountByEye(ShaftCount.ByEye counted, CatchLimits limits, List<Finding> findings) {
        Quantity<Dimensionless> limit = limits.greatestCountUncertainty();
        double relative = Amounts.si(RevolutionCount.class, counted.standardUncertainty())
                / Amounts.si(RevolutionCount.class, counted.revolutions());
        if (Comparison.isAbove(relative, Amounts.si(Dimensionless.class, limit))) {
            findings.add(Finding.of(
                    FindingCode.COUNT_UNCERTAIN,
                    Map.of(
                            "counted", number(counted.revolutions()),
                            "uncertainty", number(counted.standardUncertainty()),
                            "limit", number(limit))));
        }
    }
}
