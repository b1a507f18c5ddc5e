package org.gritwright.core.simulation;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.Judgement;

/**
 * What a technician is told of a truck: the first thing to do, and what might be the cause.
 *
 * @param step the first thing to do
 * @param warned whether a warning or an error is among the findings
 * @param suggestions what might be wrong, the first one first: the slips that findings list, or else the sentences of
 *     errors and then of warnings
 * @param findings the ids of all findings
 * @param correction the value to enter, if one is proposed
 * @param further how much more is to be caught, if that is said
 */
record Told(
        NextStep step,
        boolean warned,
        List<String> findings,
        List<String> suggestions,
        Optional<Correction> correction,
        Optional<Judgement.FurtherCatches> further) {

    /** A document that the reader rejects is a record to fix. */
    static Told rejected(String why) {
        return new Told(NextStep.FIX_RECORD, true, List.of(), List.of(why), Optional.empty(), Optional.empty());
    }

    static Told of(TruckAssessment truck) {
        if (truck.isRefused()) {
            return new Told(
                    NextStep.FIX_RECORD,
                    true,
                    List.of(),
                    truck.refusals().stream().map(Object::toString).toList(),
                    Optional.empty(),
                    Optional.empty());
        }
        List<Finding> findings = truck.findings();
        List<String> slips = findings.stream().flatMap(Told::slips).toList();
        List<String> sentences = Stream.of(Severity.ERROR, Severity.WARNING)
                .flatMap(severity -> findings.stream().filter(f -> f.severity() == severity))
                .map(Finding::sentence)
                .toList();
        Optional<Correction> proposed = truck.points().stream()
                .map(PointAssessment::correction)
                .flatMap(Optional::stream)
                .filter(c -> c.status() == Correction.Status.PROPOSED)
                .findFirst();
        return new Told(
                truck.nextStep(),
                !sentences.isEmpty(),
                findings.stream().map(f -> f.code().id()).distinct().toList(),
                Stream.concat(slips.stream(), sentences.stream()).distinct().toList(),
                truck.nextStep() == NextStep.ENTER_CORRECTION ? proposed : Optional.empty(),
                truck.points().stream()
                        .flatMap(point -> point.judged().stream())
                        .flatMap(series -> series.judgement().further().stream())
                        .findFirst());
    }

    private static Stream<String> slips(Finding finding) {
        return finding.arguments().values().stream()
                .filter(Argument.Several.class::isInstance)
                .map(Argument.Several.class::cast)
                .flatMap(several -> several.items().stream())
                .filter(Slip.class::isInstance)
                .map(Argument::words);
    }

    /** Nothing is to be done about the mass; a road speed that nobody checked is another matter. */
    boolean isNothing() {
        return step == NextStep.NOTHING || step == NextStep.CHECK_ROAD_SPEED;
    }

    boolean isFault() {
        return step == NextStep.FIND_FAULT
                || step == NextStep.FIX_RECORD
                || step == NextStep.MATCH_DISPLAY
                || step == NextStep.CHECK_ENTRIES;
    }
}
