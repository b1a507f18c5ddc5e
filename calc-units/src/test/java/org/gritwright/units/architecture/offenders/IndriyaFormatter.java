package org.gritwright.units.architecture.offenders;

import javax.measure.Unit;
import tech.units.indriya.format.SimpleUnitFormat;

/** Prints with Indriya's global format, on purpose. */
public final class IndriyaFormatter {
    private IndriyaFormatter() {}

    static String print(Unit<?> unit) {
        return SimpleUnitFormat.getInstance().format(unit);
    }
}
