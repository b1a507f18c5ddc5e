package org.gritwright.examples.fleetmemory;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * File names of pages. A name depends on nothing but the id, so that a bookmark of one truck never shows another; no two ids share one,
 * on disks that don't tell upper from lower case either.
 */
final class PageNames {
    /** What most ids are made of: their names say it all. */
    private static final Pattern PLAIN = Pattern.compile("[A-Z0-9-]{1,40}");

    private static final int LONGEST = 40;
    private static final int DIGITS = 16;

    private PageNames() {}

    /** For example "truck-c-07.html"; where the name can't say it all, some of the id's SHA-256 follows after an underscore. */
    static String of(String kind, String id) {
        String name = id.replaceAll("[^A-Za-z0-9-]", "-");
        String kept = name.substring(0, Math.min(LONGEST, name.length())).toLowerCase(Locale.ROOT);
        String rest = PLAIN.matcher(id).matches() ? "" : "_" + Hash.of(id).substring(0, DIGITS);
        return kind + "-" + kept + rest + ".html";
    }
}
