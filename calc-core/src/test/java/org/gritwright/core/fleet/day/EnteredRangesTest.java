package org.gritwright.core.fleet.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
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

    /** What can be of liquids, both ends included: beyond them nobody pumps, reads or displays. */
    @ParameterizedTest
    @CsvSource({
        "0.001 mL, 1000000 L, 0.0009 mL, 1001 m³",
        "0.001 mL/rev, 1000 L/rev, 0.0009 mL/rev, 1001 L/rev",
        "0.001 rev/L, 1000000 rev/L, 0.0009 rev/L, 1000001 rev/L",
        "0.001 pulse/L, 1000000000 pulse/L, 0.0009 pulse/L, 1000000001 pulse/L",
        "0.000001 mL/pulse, 1000 L/pulse, 0.0000009 mL/pulse, 1001 L/pulse",
        "0.001 L/km, 1000000 L/km, 0.0009 L/km, 1000001 L/km",
        "0.001 L/lane-km, 1000000 L/lane-km, 0.0009 L/lane-km, 1000001 L/lane-km",
        "0.01 L/t, 10000 L/t, 0.009 L/t, 10001 L/t"
    })
    void liquidsHaveRangesToo(String lowest, String highest, String below, String above) {
        assertThat(refused(lowest)).isFalse();
        assertThat(refused(highest)).isFalse();
        assertThat(refused(below)).isTrue();
        assertThat(refused(above)).isTrue();
    }

    /** Any record with a quantity will do. */
    private record Any(Quantity<?> value) {}

    private static boolean refused(String text) {
        List<String> refused = new ArrayList<>();
        EnteredRanges.check(new Any(Amounts.parseAny(text)), "", (at, why) -> refused.add(at));
        return !refused.isEmpty();
    }
}
