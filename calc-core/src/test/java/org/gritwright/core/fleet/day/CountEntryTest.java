package org.gritwright.core.fleet.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PULSE;
import static org.gritwright.units.SpreadingUnits.REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.SECOND;

import java.util.Optional;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CountEntryTest {

    /** Letters say what is given: p pulses, a start, o stop, m modulus, r revolutions, u uncertainty, s speed, c
     * control setting, t time. */
    private static CountEntry given(String letters) {
        return new CountEntry(
                letters.contains("p") ? Optional.of(Amounts.of(360, PULSE)) : Optional.empty(),
                letters.contains("a") ? Optional.of(Amounts.of(100, PULSE)) : Optional.empty(),
                letters.contains("o") ? Optional.of(Amounts.of(60, PULSE)) : Optional.empty(),
                letters.contains("m") ? Optional.of(Amounts.of(400, PULSE)) : Optional.empty(),
                letters.contains("r") ? Optional.of(Amounts.of(8, REVOLUTION)) : Optional.empty(),
                letters.contains("u") ? Optional.of(Amounts.of(0.1, REVOLUTION)) : Optional.empty(),
                letters.contains("s") ? Optional.of(Amounts.of(30, REVOLUTION_PER_MINUTE)) : Optional.empty(),
                letters.contains("c") ? Optional.of(Amounts.of(4, ONE)) : Optional.empty(),
                letters.contains("t") ? Optional.of(Amounts.of(60, SECOND)) : Optional.empty());
    }

    @Test
    void eachCompleteFormIsACount() {
        assertThat(given("p").count()).isEqualTo(new ShaftCount.Pulses(Amounts.of(360, PULSE)));
        assertThat(given("aom").count())
                .isEqualTo(new ShaftCount.CounterReadings(
                        Amounts.of(100, PULSE), Amounts.of(60, PULSE), Optional.of(Amounts.of(400, PULSE))));
        assertThat(given("ru").count())
                .isEqualTo(new ShaftCount.ByEye(Amounts.of(8, REVOLUTION), Amounts.of(0.1, REVOLUTION)));
        assertThat(given("st").count())
                .isEqualTo(
                        new ShaftCount.SpeedTimesTime(Amounts.of(30, REVOLUTION_PER_MINUTE), Amounts.of(60, SECOND)));
        assertThat(given("ct").count())
                .isEqualTo(new ShaftCount.SettingTimesTime(Amounts.of(4, ONE), Amounts.of(60, SECOND)));
    }

    @Test
    void whatIsGivenIsNamed() {
        assertThatThrownBy(() -> given("r").count())
                .hasMessageEndingWith("; for example standardUncertainty 0.1 rev: revolutions alone");
        assertThatThrownBy(() -> given("pr").count()).hasMessageEndingWith("and time: pulses and revolutions");
        assertThatThrownBy(() -> given("").count()).hasMessageEndingWith(": nothing");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "", "a", "o", "m", "r", "u", "s", "t", "am", "om", "pm", "pr", "aomp", "aor", "rus", "stp", "c", "ctp",
                "cs", "cst"
            })
    void anythingElseIsRefused(String letters) {
        assertThatThrownBy(() -> given(letters).count())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("count must be pulses; or start and stop;");
    }
}
