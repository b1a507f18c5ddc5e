package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.wrongKind;
import static org.gritwright.units.SpreadingUnits.CENTIMETER;
import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.math.BigDecimal;
import java.util.stream.Stream;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@Tag("locale")
class SettingTest {
    static Stream<Setting> oneOfEach() {
        return Stream.of(Setting.height(inches(2.25)), Setting.mark(3.5), Setting.percent(12.5), Setting.none());
    }

    @Test
    void theUnitSaysTheScale() {
        assertThat(Setting.of(inches(2))).isEqualTo(Setting.height(inches(2)));
        assertThat(Setting.of(Amounts.of(3, ONE))).isEqualTo(Setting.mark(3));
        assertThat(Setting.of(Amounts.of(40, PERCENT))).isEqualTo(Setting.percent(40));
        assertRefused(
                "gate setting must be a height, the number of a painted mark, or a percentage: 2 lb",
                () -> Setting.of(pounds(2)));
    }

    @Test
    void isNeverNegativeAndAlwaysFinite() {
        assertRefused("gate setting must be 0 or more: -1 in", () -> Setting.height(inches(-1)));
        assertRefused("gate setting must be 0 or more: -1", () -> Setting.mark(-1));
        assertRefused("gate setting must be 0 or more: -1 %", () -> Setting.percent(-1));
        assertRefused(
                "gate setting must be a finite length: NaN in \"in\"", () -> Setting.height(foreign(Double.NaN, INCH)));
        assertRefused("gate setting must be a finite length: 2 lb", () -> Setting.height(wrongKind(pounds(2))));
    }

    @Test
    void aMarkIsABareNumberAndAPercentageIsInPercent() {
        assertRefused(
                "gate setting must be the number of a painted mark, for example \"3\": 3 %",
                () -> new Setting.Mark(Amounts.of(3, PERCENT)));
        assertRefused(
                "gate setting must be a percentage, for example \"40 %\": 0.4",
                () -> new Setting.Percent(Amounts.of(0.4, ONE)));
    }

    @ParameterizedTest
    @MethodSource("oneOfEach")
    void aNumberAndBackIsTheSame(Setting setting) {
        assertThat(setting.withSi(setting.si())).isEqualTo(setting);
    }

    @Test
    void theNumberIsInSi() {
        assertThat(oneOfEach().map(Setting::si)).containsExactly(0.05715, 3.5, 0.125, 0.0);
    }

    @Test
    void printsAsItWasRead() {
        assertThat(oneOfEach().map(Setting::toString)).containsExactly("2.25 in", "mark 3.5", "12.5 %", "no setting");
    }

    @Test
    void equalityIsOfNumberAndUnitPositionOfNeither() {
        Setting twoInches = Setting.height(inches(2));

        assertThat(twoInches).isNotEqualTo(Setting.height(Amounts.of(50.8, MILLIMETER)));
        assertThat(twoInches.isSameAs(Setting.height(Amounts.of(50.8, MILLIMETER))))
                .isTrue();
        assertThat(twoInches.isSameAs(Setting.height(Amounts.of(5.08, CENTIMETER))))
                .isTrue();
        assertThat(twoInches.isSameAs(Setting.height(inches(Math.nextUp(2.0))))).isFalse();
        assertThat(twoInches.position())
                .isEqualTo(new Setting.Position(Setting.Scale.HEIGHT, new BigDecimal("0.0508")));
    }

    @Test
    void onePositionIsOnOneScale() {
        assertThat(Setting.mark(0.4).isSameAs(Setting.percent(40))).isFalse();
        assertThat(Setting.mark(1).isSameAs(Setting.height(Amounts.of(1000, MILLIMETER))))
                .isFalse();
        assertThat(Setting.none().isSameAs(Setting.mark(0))).isFalse();
        assertThat(Setting.none().isSameAs(Setting.none())).isTrue();
    }

    @Test
    void aQuantityOfAnotherMakeIsCopied() {
        assertThat(Setting.height(foreign(2, INCH)))
                .isEqualTo(Setting.height(inches(2)))
                .hasSameHashCodeAs(Setting.height(inches(2)));
    }

    @ParameterizedTest
    @MethodSource("oneOfEach")
    void survivesSerialization(Setting setting) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(setting);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            assertThat(in.readObject()).isEqualTo(setting);
        }
    }
}
