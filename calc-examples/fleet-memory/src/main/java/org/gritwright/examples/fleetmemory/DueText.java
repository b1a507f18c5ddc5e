package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Mass;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.history.due.Due;
import org.gritwright.core.history.due.Reason;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;

/** What is due, in lines. */
final class DueText {
    private DueText() {}

    static List<String> lines(List<Due> dues, int trucks, LocalDate on, Tolerance tolerance) {
        List<String> lines = new ArrayList<>();
        lines.add("Due on " + on + " or within a month, with a tolerance of " + tolerance + ": "
                + Words.count(dues.size(), "calibration point") + " of " + Words.count(trucks, "truck"));
        if (!dues.isEmpty()) {
            lines.add(Caution.line());
        }
        for (Due due : dues) {
            lines.add("");
            lines.add(due.truck() + ", " + due.point());
            for (Reason reason : due.reasons()) {
                lines.add("  by " + reason.by() + ": " + reason.words());
            }
            lines.add("  expected error " + Words.expected(due.expectedError()) + atStake(due));
            lines.add("  to do: " + due.work().words());
        }
        return lines;
    }

    private static String atStake(Due due) {
        return Amounts.si(Mass.class, due.atStake()) > 0
                ? ", " + Argument.number(due.atStake()).words() + " of what is planned"
                : "";
    }
}
