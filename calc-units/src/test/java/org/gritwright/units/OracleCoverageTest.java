package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** No conversion of the symbol table rests on our own numbers alone. */
class OracleCoverageTest {

    @Test
    void everyPairOfDifferentUnitsIsComparedWithIcuOrUcum() {
        Set<UnitPairs.Pair> compared = new HashSet<>();
        IcuOracleTest.PAIRS.forEach(pair -> compared.add(pair.ours()));
        UcumOracleTest.PAIRS.forEach(pair -> compared.add(pair.ours()));
        assertThat(UnitPairs.ofDifferentUnits()).hasSizeGreaterThan(700).allMatch(compared::contains);
    }
}
