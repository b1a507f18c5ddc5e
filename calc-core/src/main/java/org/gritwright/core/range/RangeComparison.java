package org.gritwright.core.range;

import static org.gritwright.core.finding.Argument.number;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Term;

/** Compares a working range with another one. */
record RangeComparison(DriveMeasurement measurement, List<DriveCurve> curves, WorkingRange measured) {
    private static final double COVERAGE = 0.95;

    Optional<Finding> with(StatedRange stated) {
        WorkingRange other = stated.range();
        double lowestRises = DriveMeasurement.si(measured.lowest()) - DriveMeasurement.si(other.lowest());
        double highestFalls = DriveMeasurement.si(other.highest()) - DriveMeasurement.si(measured.highest());
        boolean lowestProven = curves.stream().anyMatch(curve -> isLowest(curve) && curve.isLowestProven());
        boolean highestProven = curves.stream().anyMatch(curve -> isHighest(curve) && curve.isHighestProven());
        double ofLowest = allowance(true);
        double ofHighest = allowance(false);
        boolean narrower = (lowestProven && lowestRises > ofLowest) || (highestProven && highestFalls > ofHighest);
        boolean wider = -lowestRises > ofLowest || -highestFalls > ofHighest;
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

    private boolean isLowest(DriveCurve curve) {
        return curve.workingRange()
                .filter(range -> DriveMeasurement.si(range.lowest()) == DriveMeasurement.si(measured.lowest()))
                .isPresent();
    }

    private boolean isHighest(DriveCurve curve) {
        return curve.workingRange()
                .filter(range -> DriveMeasurement.si(range.highest()) == DriveMeasurement.si(measured.highest()))
                .isPresent();
    }

    /** What the measured speed may be off by. */
    private double allowance(boolean lowest) {
        return measurement.resolution()
                + curves.stream()
                        .filter(curve -> lowest ? isLowest(curve) : isHighest(curve))
                        .flatMap(curve -> (lowest ? curve.lowestSteady() : curve.highestSteady())
                                .stream().flatMap(command -> curve.speedAt(command).stream()))
                        .flatMap(at -> at.expandedUncertainty(COVERAGE).stream())
                        .mapToDouble(DriveMeasurement::si)
                        .max()
                        .orElse(0);
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
