package org.gritwright.units.check;

import java.util.Arrays;

/** How far one spelling is from another. */
public final class Edits {
    private Edits() {}

    /**
     * Levenshtein's distance, row by row.
     *
     * @param a a spelling
     * @param b another
     * @return how many letters are changed, left out or put in
     */
    public static int between(String a, String b) {
        int[] row = new int[b.length() + 1];
        Arrays.setAll(row, j -> j);
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int changed = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(changed, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
