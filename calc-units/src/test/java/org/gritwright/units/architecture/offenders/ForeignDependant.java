package org.gritwright.units.architecture.offenders;

import org.apache.commons.numbers.fraction.BigFraction;

/** Depends on another library, on purpose. */
public final class ForeignDependant {
    private ForeignDependant() {}

    static Object use() {
        return BigFraction.ONE;
    }
}
