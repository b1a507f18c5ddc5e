package org.gritwright.units.check;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Which of the known names may have been meant by a misspelled one. */
public final class NearestName {
    /** In a longer name than this two letters may be wrong, as when two are swapped. */
    private static final int SHORT = 4;

    /** And one more in so many. */
    private static final int LETTERS_FOR_A_SLIP = 3;

    private NearestName() {}

    /**
     * The known name with the fewest letters added, left out or changed, if it is near enough; case doesn't count.
     *
     * @param name what was written
     * @param known the names that there are
     * @return the nearest, the first of several; none if all are too far
     */
    public static Optional<String> of(String name, Collection<String> known) {
        return known.stream()
                // What differs in length by more costs nothing, however long it is.
                .filter(one -> Math.abs(name.length() - one.length()) <= slips(one))
                .filter(one -> distance(name, one) <= slips(one))
                .min(Comparator.comparingInt(one -> distance(name, one)));
    }

    private static int slips(String name) {
        return Math.max(name.length() > SHORT ? 2 : 1, name.length() / LETTERS_FOR_A_SLIP);
    }

    private static int distance(String name, String other) {
        return Edits.between(name.toLowerCase(Locale.ROOT), other.toLowerCase(Locale.ROOT));
    }
}
