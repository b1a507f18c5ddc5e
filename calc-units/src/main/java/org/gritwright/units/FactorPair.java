package org.gritwright.units;

import java.math.BigInteger;
import java.util.Optional;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.function.RationalNumber;

/** A unit's exact factor to its system unit, with both directions compiled. */
record FactorPair(ExactFactor toSystem, CompiledFactor intoSystem, CompiledFactor outOfSystem) {

    /** Asks JSR 385 for the exact factor once; empty when the scale has an offset. */
    static Optional<FactorPair> toSystemUnit(Unit<?> unit) {
        UnitConverter converter = ((AbstractUnit<?>) unit).getSystemConverter();
        if (!converter.isLinear()) {
            return Optional.empty();
        }
        ExactFactor factor = exact(converter.convert((Number) 1));
        ExactFactor reciprocal = ExactFactor.ONE.dividedBy(factor);
        return Optional.of(new FactorPair(factor, CompiledFactor.of(factor), CompiledFactor.of(reciprocal)));
    }

    private static ExactFactor exact(Number number) {
        if (number instanceof RationalNumber rational) {
            return new ExactFactor(rational.getDividend(), rational.getDivisor());
        }
        // The other exact numbers are whole; the text of anything else is no whole number and fails here.
        return new ExactFactor(new BigInteger(number.toString()), BigInteger.ONE);
    }
}
