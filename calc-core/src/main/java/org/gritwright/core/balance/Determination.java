package org.gritwright.core.balance;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.units.check.Require;

/** What nothing determines, and what follows from others. */
final class Determination {
    private static final double NOTHING = 1e-9;

    private final boolean[] free;
    private final int freeUnknowns;
    private final List<Dependence> dependences;

    private Determination(boolean[] free, int freeUnknowns, List<Dependence> dependences) {
        this.free = free;
        this.freeUnknowns = freeUnknowns;
        this.dependences = List.copyOf(dependences);
    }

    static Determination of(Layout layout, Saddle saddle, double[] solution) {
        int firstRow = layout.nodeOfRow(0);
        int unknowns = 0;
        double[] once = new double[layout.nodes()];
        double[] again = new double[layout.nodes()];
        List<Dependence> dependences = new ArrayList<>();
        int[] nothing = saddle.nothing();
        double[] some = Traces.patternless(nothing.length, 1);
        double[] others = Traces.patternless(nothing.length, 2);
        for (int i = 0; i < nothing.length; i++) {
            int node = nothing[i];
            once[node] = some[i];
            again[node] = others[i];
            if (node >= firstRow) {
                Dependence dependence = dependence(layout, saddle, node);
                requireNoContradiction(layout, solution, node - firstRow, dependence);
                dependences.add(dependence);
            } else {
                unknowns++;
            }
        }
        // Whatever changes with them is as free as they are.
        double[] one = saddle.unnoticed(once);
        double[] other = saddle.unnoticed(again);
        boolean[] free = new boolean[layout.nodes()];
        for (int node = layout.errors; node < free.length; node++) {
            free[node] = Math.abs(one[node]) > NOTHING || Math.abs(other[node]) > NOTHING;
        }
        return new Determination(free, unknowns, dependences);
    }

    private static Dependence dependence(Layout layout, Saddle saddle, int node) {
        double[] only = new double[layout.nodes()];
        only[node] = 1;
        double[] pulls = saddle.unnoticed(only);
        Candidate[] candidates = layout.candidates();
        List<Candidate> others = new ArrayList<>();
        for (int row = 0; row < layout.rows; row++) {
            if (layout.nodeOfRow(row) != node && Math.abs(pulls[layout.nodeOfRow(row)]) > NOTHING) {
                others.add(candidates[row]);
            }
        }
        return new Dependence(
                candidates[node - layout.nodeOfRow(0)], others.stream().sorted().toList());
    }

    private static void requireNoContradiction(Layout layout, double[] solution, int row, Dependence dependence) {
        PreciseSum lacking = new PreciseSum();
        lacking.add(layout.rightSide[row]);
        double size = 0;
        for (int k = layout.start[row]; k < layout.start[row + 1]; k++) {
            int node = layout.column[k];
            lacking.addProduct(-layout.coefficient[k], solution[node]);
            double origin = node < layout.errors ? 0 : layout.origin[node - layout.errors];
            size += Math.abs(layout.coefficient[k]) * (Math.abs(origin) + Math.abs(solution[node]));
        }
        double rest = lacking.value();
        Require.that(
                Math.abs(rest) <= NOTHING * (size + Math.abs(layout.rightSide[row])),
                "balances",
                "free of contradictions",
                () -> dependence.one().name() + " is off by " + rest + " from what follows from "
                        + String.join(
                                ", ",
                                dependence.others().stream()
                                        .map(Candidate::name)
                                        .toList()));
    }

    /** Whether a quantity isn't determined, or a row is one of several of which each follows from the others. */
    boolean isFree(int node) {
        return free[node];
    }

    int freeUnknowns() {
        return freeUnknowns;
    }

    int openRows() {
        return dependences.size();
    }

    List<Dependence> dependences() {
        return dependences;
    }
}
