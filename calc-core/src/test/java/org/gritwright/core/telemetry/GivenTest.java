package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.List;
import java.util.Optional;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** What a caller without a checker of nulls leaves out is named. */
@SuppressWarnings("NullAway") // what is tested
class GivenTest {
    private static void assertMissing(String name, Runnable made) {
        assertThatNullPointerException().isThrownBy(made::run).withMessage(name);
    }

    @Test
    void whatIsMissingIsNamed() {
        assertMissing("id", () -> new SharedError(null, Amounts.of(1, SpreadingUnits.PERCENT)));
        assertMissing("inForce", () -> new TimelineEntry.Value(null));
        assertMissing("held", () -> new TimelineEntry(Trucks.START, "1", null, List.of()));
        assertMissing("loaded", () -> new Ticket(null, Amounts.of(1, SpreadingUnits.POUND), List.of()));
        assertMissing(
                "longestGap",
                () -> new Counter(
                        1,
                        Optional.empty(),
                        null,
                        Amounts.of(1, SpreadingUnits.SECOND),
                        Amounts.of(1, SpreadingUnits.SECOND)));
        assertMissing("entry", () -> new DictionaryValue(null, 0, false));
    }
}
