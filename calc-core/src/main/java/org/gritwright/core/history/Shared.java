package org.gritwright.core.history;

import java.util.List;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.units.check.Require;

/** Parts of an uncertainty that others share. */
final class Shared {
    private Shared() {}

    /** A copy in which each id is there once. */
    static List<SharedError> once(List<SharedError> errors) {
        List<SharedError> all = List.copyOf(errors);
        Require.that(
                all.stream().map(SharedError::id).distinct().count() == all.size(),
                "shared errors",
                "each id once",
                () -> all.stream().map(SharedError::id).toList());
        return all;
    }
}
