package org.gritwright.core.range;

import static org.gritwright.core.finding.Argument.number;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Term;
import org.gritwright.units.Amounts;

/**
 * Compares a measured working range with another one.
 *
 * @param measured the measured range
 * @param ofLowest the curve that its lowest speed is of
 * @param ofHighest the curve that its highest speed is of
 * @param resolution the step to which speeds are read, revolutions per second
 */
record RangeComparison(WorkingRange measured, DriveCurve ofLowest, DriveCurve ofHighest, double resolution) {
    private static final double COVERAGE = 0.95;

    Optional<Finding> with(StatedRange stated) {
        WorkingRange other = stated.range();
        double lowestRises = DriveMeasurement.si(measured.lowest()) - DriveMeasurement.si(other.lowest());
        double highestFalls = DriveMeasurement.si(other.highest()) - DriveMeasurement.si(measured.highest());
        double aroundLowest = allowance(ofLowest, ofLowest.lowestSteady());
        double aroundHighest = allowance(ofHighest, ofHighest.highestSteady());
        boolean narrower = (ofLowest.isLowestProven() && lowestRises > aroundLowest)
                || (ofHighest.isHighestProven() && highestFalls > aroundHighest);
        boolean wider = -lowestRises > aroundLowest || -highestFalls > aroundHighest;
        if (stated.source() == RangeSource.MEASURED) {
            return narrower
                    ? Optional.of(Finding.of(FindingCode.DRIVE_RANGE_NARROWER, arguments(other)))
                    : Optional.empty();
        }
        if (!narrower && !wider) {
            return Optional.empty();
        }
        Map<String, Argument> arguments = arguments(other);
        arguments.put("source", stated.source() == RangeSource.BY_EYE ? Term.BY_EYE : Term.FROM_MAKER);
        return Optional.of(Finding.of(FindingCode.DRIVE_RANGE_DISAGREES, arguments));
    }

    RangeEnd lowest() {
        return new RangeEnd(
                measured.lowest(),
                Amounts.ofSi(
                        allowance(ofLowest, ofLowest.lowestSteady()),
                        measured.lowest().getUnit()),
                ofLowest.isLowestProven());
    }

    RangeEnd highest() {
        return new RangeEnd(
                measured.highest(),
                Amounts.ofSi(
                        allowance(ofHighest, ofHighest.highestSteady()),
                        measured.highest().getUnit()),
                ofHighest.isHighestProven());
    }

    /** What the measured speed may be off by. */
    private double allowance(DriveCurve curve, Optional<Command> command) {
        return resolution
                + curve.speedAt(command.orElseThrow())
                        .orElseThrow()
                        .expandedUncertainty(COVERAGE)
                        .map(DriveMeasurement::si)
                        .orElse(0.0);
    }

    private Map<String, Argument> arguments(WorkingRange other) {
        Map<String, Argument> arguments = new TreeMap<>();
        arguments.put("lowest", number(measured.lowest()));
        arguments.put("highest", number(measured.highest()));
        arguments.put("otherLowest", number(other.lowest()));
        arguments.put("otherHighest", number(other.highest()));
        return arguments;
    }
}
