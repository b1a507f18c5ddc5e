package org.gritwright.core.fleet.assessment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.DriveRunEntry;
import org.gritwright.core.range.CommandScale;
import org.gritwright.core.range.DriveMeasurement;
import org.gritwright.core.range.DrivePoint;
import org.gritwright.core.range.DriveResponse;
import org.gritwright.core.range.DriveRun;
import org.gritwright.core.range.StatedRange;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;

/** Turns what was written down of a drive into a response and a stated range, each refusal with its place. */
final class DriveReader {
    private static final String AT = "/drive";

    /** A result, or none and one more refusal. */
    interface Attempts {
        <T> Optional<T> attempt(String at, Supplier<T> reading);
    }

    private final Attempts attempts;
    private final Optional<DriveResponse> response;
    private final Optional<StatedRange> stated;

    DriveReader(Attempts attempts, DriveEntry entry) {
        this.attempts = attempts;
        if (entry.runs().isEmpty() && entry.statedRange().isEmpty()) {
            attempts.attempt(AT, DriveReader::nothing);
        }
        this.response = entry.runs().isEmpty() ? Optional.empty() : response(entry);
        this.stated = entry.statedRange().flatMap(range -> attempts.attempt(AT + "/statedRange", range::range));
    }

    private static DriveEntry nothing() {
        throw new InvalidInputException(RefusalCode.MISSING, "drive", "given with runs or with statedRange", "nothing");
    }

    private Optional<DriveResponse> response(DriveEntry entry) {
        Optional<CommandScale> scale = attempts.attempt(AT, entry::scale);
        List<DriveRun> runs = new ArrayList<>();
        for (int i = 0; i < entry.runs().size(); i++) {
            run(AT + "/runs/" + i, entry.runs().get(i), scale).ifPresent(runs::add);
        }
        return scale.isPresent() && runs.size() == entry.runs().size()
                ? attempts.attempt(
                        AT,
                        () -> DriveResponse.of(
                                new DriveMeasurement(scale.get(), entry.resolution(), entry.atWork(), runs)))
                : Optional.empty();
    }

    private Optional<DriveRun> run(String at, DriveRunEntry entry, Optional<CommandScale> scale) {
        List<DrivePoint> points = new ArrayList<>();
        for (int i = 0; i < entry.points().size(); i++) {
            Supplier<DrivePoint> reading = entry.points().get(i)::point;
            attempts.attempt(at + "/points/" + i, () -> {
                        DrivePoint point = reading.get();
                        scale.ifPresent(all -> all.require(point.command()));
                        return point;
                    })
                    .ifPresent(points::add);
        }
        return points.size() == entry.points().size()
                ? attempts.attempt(at, () -> new DriveRun(entry.direction(), points))
                : Optional.empty();
    }

    Optional<DriveResponse> response() {
        return response;
    }

    Optional<StatedRange> stated() {
        return stated;
    }
}
