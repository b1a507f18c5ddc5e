package org.gritwright.core;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleSupplier;

/** Published checks while they are listed, in the order of the page. */
abstract class CheckList {
    private final List<PublishedCheck> rows = new ArrayList<>();

    final void add(
            String id,
            String what,
            PublishedCheck.Source source,
            String stated,
            String unit,
            PublishedCheck.Tolerance tolerance,
            DoubleSupplier computed) {
        rows.add(new PublishedCheck(id, what, source, stated, unit, tolerance, computed));
    }

    final void addAll(List<PublishedCheck> others) {
        rows.addAll(others);
    }

    final List<PublishedCheck> rows() {
        return Collections.unmodifiableList(rows);
    }
}
