package org.gritwright.core.season;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * What can't, or can hardly, be told from an error, and why. Immutable, thread-safe, a value.
 *
 * @param same errors that no number of this season tells from it
 * @param alike others whose traces are much alike, the most alike in front
 * @param reasons why, as English sentences
 */
public record Confusion(List<Suspicion> same, List<Alike> alike, List<String> reasons) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Another error and how alike its trace is. Immutable, thread-safe, a value.
     *
     * @param other the other error
     * @param correlation of both scores, without its sign
     */
    public record Alike(Suspicion other, double correlation) implements Serializable {
        private static final long serialVersionUID = 1L;

        /**
         * Checks the correlation.
         *
         * @throws org.gritwright.units.InvalidInputException if it isn't within 0 to 1
         */
        public Alike {
            Require.given(Alike.class, other);
            Require.that(correlation >= 0 && correlation <= 1, "correlation", "within 0 to 1", correlation);
        }
    }

    /** Copies the lists. */
    public Confusion {
        Require.given(Confusion.class, same, alike, reasons);
        same = List.copyOf(same);
        alike = List.copyOf(alike);
        reasons = List.copyOf(reasons);
    }

    /**
     * Whether it can be told from all others.
     *
     * @return true if nothing is the same or much alike
     */
    public boolean isNone() {
        return same.isEmpty() && alike.isEmpty();
    }

    /**
     * The same in words for the yard.
     *
     * @return English sentences: what no number of the season tells from the error, with many trucks in one sentence; what is hard to tell from it;
     *     and why. None where nothing is the same or much alike
     */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        List<String> trucks = new ArrayList<>();
        for (Suspicion one : same) {
            Optional<String> off = one instanceof Suspicion.TruckReports truck ? truck.off() : Optional.empty();
            off.ifPresentOrElse(
                    trucks::add,
                    () -> sentences.add("The season's numbers can't tell that from this: " + one.sentence()));
        }
        if (trucks.size() == 1) {
            sentences.add("The season's numbers can't tell that from a truck that is off: " + trucks.get(0) + ".");
        } else if (!trucks.isEmpty()) {
            sentences.add("The season's numbers can't tell that from a single truck that is off, any one of these: "
                    + String.join(", ", trucks) + ".");
        }
        alike.forEach(one -> sentences.add("Hard to tell from that (correlation "
                + Rounded.text(Amounts.of(one.correlation(), SpreadingUnits.ONE), 2) + "): "
                + one.other().sentence()));
        sentences.addAll(reasons);
        return List.copyOf(sentences);
    }
}
