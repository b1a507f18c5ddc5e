package org.gritwright.core.season;

import java.io.Serializable;
import java.util.List;
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
}
