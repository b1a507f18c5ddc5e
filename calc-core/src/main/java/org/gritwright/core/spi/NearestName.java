package org.gritwright.core.spi;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Which of the known names may have been meant by a misspelled one. */
final class NearestName {
    /** In a longer name than this two letters may be wrong, as when two are swapped. */
    private static final int SHORT = 4;

    /** And one more in so many. */
    private static final int LETTERS_FOR_A_SLIP = 3;

    private NearestName() {}

    /** The known name with the fewest letters added, left out or changed, if it is near enough; case doesn't count. */
    static Optional<String> of(String name, Collection<String> known) {
        return known.stream()
                .filter(one -> distance(name, one) <= slips(one))
                .min(Comparator.comparingInt(one -> distance(name, one)));
    }

    private static int slips(String name) {
        return Math.max(name.length() > SHORT ? 2 : 1, name.length() / LETTERS_FOR_A_SLIP);
    }

    /** Levenshtein's distance, row by row. */
    private static int distance(String name, String other) {
        String one = name.toLowerCase(Locale.ROOT);
        String two = other.toLowerCase(Locale.ROOT);
        int[] row = new int[two.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= one.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int changed = diagonal + (one.charAt(i - 1) == two.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[two.length()];
    }
}
