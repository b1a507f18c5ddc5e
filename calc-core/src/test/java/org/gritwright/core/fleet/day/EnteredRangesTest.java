package org.gritwright.core.fleet.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EnteredRangesTest {
    @Test
    void aFieldHasItsOwnRangeOrThatOfItsKind() {
        assertThat(EnteredRanges.of("gearRatio", Dimensionless.class).map(EnteredRanges.Range::highest))
                .contains(Amounts.parse(Dimensionless.class, "1000"));
        assertThat(EnteredRanges.of("setting", Dimensionless.class).map(EnteredRanges.Range::highest))
                .contains(Amounts.parse(Dimensionless.class, "1e6"));
        assertThat(EnteredRanges.of("gross", Mass.class))
                .contains(new EnteredRanges.Range(
                        Amounts.parse(Mass.class, "0.001 g"), Amounts.parse(Mass.class, "1000 t")));
        assertThat(EnteredRanges.of("rate", ArealApplicationRate.class)).isEmpty();
    }

    /** What a range says is what is checked; what isn't above zero is left to the field. */
    @ParameterizedTest
    @CsvSource({"0.001 g, true", "0.0009 g, false", "1000 t, true", "1001 t, false", "0 g, true", "-1 t, true"})
    void bothEndsBelongToTheRange(String gross, boolean isAccepted) {
        WeighingEntry entry =
                new WeighingEntry("pail", Amounts.parse(Mass.class, gross), Amounts.parse(Mass.class, "1 kg"));
        List<String> refused = new ArrayList<>();
        EnteredRanges.check(entry, "/containers/0", (at, why) -> refused.add(at));
        assertThat(refused).isEqualTo(isAccepted ? List.of() : List.of("/containers/0/gross"));
    }
}
