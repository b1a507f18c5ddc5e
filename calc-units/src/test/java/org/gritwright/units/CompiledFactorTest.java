package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

/** A factor as a sum of two doubles. */
class CompiledFactorTest {

    @Property(tries = 20_000)
    void theSumIsTheFactorToTwiceADoublesPrecision(
            @ForAll @LongRange(min = 1) long numerator, @ForAll @LongRange(min = 1) long denominator) {
        ExactFactor exact = ExactFactor.of(numerator, denominator);
        CompiledFactor compiled = CompiledFactor.of(exact);
        BigDecimal high = new BigDecimal(compiled.high());
        BigDecimal low = new BigDecimal(compiled.low());
        BigDecimal wanted = exact.toDecimal(60);
        assertThat(wanted.subtract(high).subtract(low).abs())
                .isLessThanOrEqualTo(wanted.multiply(new BigDecimal(Math.scalb(1.0, -105))));
        assertThat(compiled.low()).isBetween(0.0, Math.ulp(compiled.high()));
    }

    @Property
    void aFactorThatIsADoubleHasNoLowPart(@ForAll @LongRange(min = 1, max = 1L << 53) long number) {
        CompiledFactor whole = CompiledFactor.of(ExactFactor.of(number, 1));
        assertThat(whole).isEqualTo(new CompiledFactor(number, 0));
        CompiledFactor eighths = CompiledFactor.of(ExactFactor.of(number, 8));
        assertThat(eighths).isEqualTo(new CompiledFactor(number / 8.0, 0));
    }

    @Example
    void everyFactorInUseIsFarFromTheEdgesOfADouble() {
        for (UnitPairs.Pair pair : UnitPairs.ALL) {
            assertThat(pair.conversion().exactFactor().toDecimal(20).doubleValue())
                    .isBetween(1e-12, 1e12);
        }
        for (UnitSymbol<?> row : UnitSymbol.all()) {
            if (UnitPairs.hasFactor(row)) {
                assertThat(SymbolTable.entryOf(row.unit())
                                .factors()
                                .intoSystem()
                                .high())
                        .isBetween(1e-12, 1e12);
            }
        }
    }

    @Example
    void aPlainProductIsWrongInAboutFourCasesOfTenAndOursInNone() {
        ExactFactor exact = UnitPairs.between("lb/mi", "kg/km").exactFactor();
        CompiledFactor compiled = CompiledFactor.of(exact);
        double oneDouble = exact.toDecimal(40).doubleValue();
        SplittableRandom random = new SplittableRandom(17);
        int plainWrong = 0;
        int oursWrong = 0;
        for (int i = 0; i < 100_000; i++) {
            double value = random.nextDouble(1, 1000);
            plainWrong += Ulps.error(value, exact, value * oneDouble) > 0.5 ? 1 : 0;
            oursWrong += Ulps.error(value, exact, compiled.times(value)) > 0.5 ? 1 : 0;
        }
        assertThat(plainWrong).isBetween(35_000, 45_000);
        assertThat(oursWrong).isZero();
    }
}
