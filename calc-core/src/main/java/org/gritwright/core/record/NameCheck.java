package org.gritwright.core.record;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.json.Pointer;
import org.gritwright.core.json.Problems;

/** Looks whether what is named in one part of a document is there in another. */
final class NameCheck {
    /** Nobody mends more before trying again, and looking for what was meant takes time. */
    private static final int MOST = 100;

    private final Set<String> known;
    private final Problems problems;
    private int found;

    NameCheck(Stream<String> known, Problems problems) {
        this.known = known.collect(Collectors.toCollection(TreeSet::new));
        this.problems = problems;
    }

    void check(Pointer pointer, String name) {
        if (!known.contains(name) && found++ < MOST) {
            problems.unknownName(pointer, known, name);
        }
    }
}
