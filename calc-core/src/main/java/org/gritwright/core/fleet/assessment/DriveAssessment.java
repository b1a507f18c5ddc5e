package org.gritwright.core.fleet.assessment;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.range.DriveResponse;
import org.gritwright.core.range.RangeEnd;
import org.gritwright.core.range.RangeSource;
import org.gritwright.core.range.StatedRange;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.units.check.Require;

/**
 * Which steady speeds a truck's shaft turns at, and how that is known: what was measured wins over what is stated. Immutable,
 * thread-safe, a value.
 *
 * @param response what was measured; none if nothing was
 * @param stated what somebody states; none if nobody does
 * @param findings what a person should know of the drive itself, and where both contradict each other
 */
public record DriveAssessment(Optional<DriveResponse> response, Optional<StatedRange> stated, List<Finding> findings) {
    /** Copies the list. */
    public DriveAssessment {
        Require.given(DriveAssessment.class, response, stated, findings);
        findings = List.copyOf(findings);
    }

    DriveAssessment with(Optional<Finding> more) {
        return new DriveAssessment(
                response,
                stated,
                Stream.concat(findings.stream(), more.stream()).toList());
    }

    private Optional<DriveResponse> measured() {
        return response.filter(one -> one.workingRange().isPresent());
    }

    /**
     * The working range that is computed with.
     *
     * @return the measured one, or else the stated; none if the shaft was never seen to turn steadily and nobody states one
     */
    public Optional<WorkingRange> range() {
        return measured().flatMap(DriveResponse::workingRange).or(() -> stated.map(StatedRange::range));
    }

    /**
     * Where that range comes from.
     *
     * @return measured, where it was measured now or on another day; none without a range
     */
    public Optional<RangeSource> source() {
        return measured().map(one -> RangeSource.MEASURED).or(() -> stated.map(StatedRange::source));
    }

    /**
     * Its lowest speed, as well as it is known.
     *
     * @return the speed; none without a range
     */
    public Optional<RangeEnd> lowest() {
        return measured().flatMap(DriveResponse::lowestSteady).or(() -> stated.map(StatedRange::lowest));
    }

    /**
     * Its highest speed, as well as it is known.
     *
     * @return the speed; none without a range
     */
    public Optional<RangeEnd> highest() {
        return measured().flatMap(DriveResponse::highestSteady).or(() -> stated.map(StatedRange::highest));
    }
}
