package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.history.Contradiction;

/**
 * What can't all be so: what is open, and what a later entry settled.
 *
 * @param open in the order of the history
 * @param settled in the order of the history
 */
record Contradictions(List<Contradiction> open, List<Contradiction> settled) {
    static Contradictions of(List<Contradiction> all) {
        return new Contradictions(
                all.stream().filter(Contradiction::isOpen).toList(),
                all.stream().filter(one -> !one.isOpen()).toList());
    }

    /** In lines, the open ones first. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        if (open.isEmpty()) {
            lines.add(settled.isEmpty() ? "Nothing contradicts itself." : "Nothing contradicts itself any more.");
        } else {
            lines.add("What can't all be so:");
            open.forEach(one -> lines.add("  " + one));
        }
        if (!settled.isEmpty()) {
            lines.add("What could not all be so, and a later entry settled:");
            settled.forEach(one -> lines.add("  " + one));
        }
        return lines;
    }

    /** For example "none", "2", "2, 1 settled", "none open, 1 settled". */
    String count() {
        if (settled.isEmpty()) {
            return open.isEmpty() ? "none" : String.valueOf(open.size());
        }
        return (open.isEmpty() ? "none open" : open.size()) + ", " + settled.size() + " settled";
    }

    static List<String> sentences(List<Contradiction> some) {
        return some.stream().map(one -> Words.minus(one.toString())).toList();
    }
}
