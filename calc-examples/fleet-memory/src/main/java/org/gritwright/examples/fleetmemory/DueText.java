package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Mass;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.history.due.Due;
import org.gritwright.core.history.due.Reason;
import org.gritwright.units.Amounts;

/** What is due, in lines. */
final class DueText {
    static final String SILENT = "These accounts of seasons say nothing of any truck yet:";

    private DueText() {}

    /** What is due, and where nothing is and that can't be believed, so that no truck is passed over in silence. */
    static List<String> lines(Overview fleet) {
        List<Due> dues = fleet.dues();
        List<TruckOverview> trucks = fleet.trucks();
        List<String> lines = new ArrayList<>();
        lines.add("Due on " + fleet.on() + " or within a month, with a tolerance of " + fleet.tolerance() + ": "
                + Words.count(dues.size(), "calibration point") + " of " + Words.count(trucks.size(), "truck"));
        if (trucks.isEmpty()) {
            lines.add("Nothing is kept of any truck yet: import its fleet days and events first.");
        }
        if (!dues.isEmpty() || trucks.stream().anyMatch(truck -> truck.doubt().isPresent())) {
            lines.add(Caution.line());
        }
        for (Due due : dues) {
            lines.add("");
            lines.add(due.truck() + ", " + due.point());
            for (Reason reason : due.reasons()) {
                lines.add("  " + Words.due(reason.by(), fleet.on()) + ": " + reason.words());
            }
            lines.add("  expected error " + Words.expected(due.expectedError()) + atStake(due));
            lines.add("  to do: " + due.work().words());
        }
        lines.addAll(doubted(trucks));
        lines.addAll(quiet(
                trucks,
                TruckOverview.Quiet.UNKNOWN,
                "Nobody knows what these displays hold, and no rule can ask for anything. That is no sign that they are in"
                        + " order:"));
        lines.addAll(quiet(trucks, TruckOverview.Quiet.DOUBTFUL, "Not due by the rules, and in doubt all the same:"));
        if (!fleet.seasons().withoutPage().isEmpty()) {
            lines.add("");
            lines.add(SILENT);
            fleet.seasons().withoutPage().forEach(one -> lines.add("  " + one));
        }
        List<String> slips = Slips.of(fleet);
        if (!slips.isEmpty()) {
            lines.add("");
            lines.addAll(slips);
        }
        return lines.stream().map(Words::minus).toList();
    }

    private static List<String> quiet(List<TruckOverview> trucks, TruckOverview.Quiet kind, String heading) {
        List<TruckOverview> some = trucks.stream()
                .filter(truck -> truck.dues().isEmpty() && truck.quiet() == kind)
                .toList();
        if (some.isEmpty()) {
            return List.of();
        }
        List<String> lines = new ArrayList<>(List.of("", heading));
        for (TruckOverview truck : some) {
            lines.add(truck.id());
            truck.belief().forEach(one -> lines.add("  " + one));
            truck.doubt().ifPresent(doubt -> lines.add("  to do: " + doubt.toDo()));
        }
        return lines;
    }

    /** Of trucks of which something is due as well. */
    private static List<String> doubted(List<TruckOverview> trucks) {
        List<String> lines = new ArrayList<>();
        trucks.stream()
                .filter(truck -> !truck.dues().isEmpty())
                .forEach(truck -> truck.doubt().ifPresent(doubt -> {
                    lines.add("");
                    lines.add(truck.id() + ", of which something is due as well");
                    doubt.words().forEach(one -> lines.add("  " + one));
                    lines.add("  to do: " + doubt.toDo());
                }));
        return lines;
    }

    private static String atStake(Due due) {
        return Amounts.si(Mass.class, due.atStake()) > 0
                ? ", " + Argument.number(due.atStake()).words() + " of what is planned"
                : "";
    }
}
