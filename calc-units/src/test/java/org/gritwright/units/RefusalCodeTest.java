package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigInteger;
import java.util.Arrays;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulseCount;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import tech.units.indriya.unit.Units;

/** What a program or a translation gets of a refusal. */
@Tag("locale")
class RefusalCodeTest {

    @Test
    void theIdsAreStable() {
        assertThat(Arrays.stream(RefusalCode.values()).map(RefusalCode::id))
                .containsExactly(
                        "not-accepted",
                        "missing",
                        "malformed",
                        "not-a-number",
                        "missing-unit",
                        "unknown-unit",
                        "wrong-unit",
                        "wrong-kind",
                        "unknown-name",
                        "repeated",
                        "not-finite",
                        "not-positive",
                        "negative",
                        "not-whole",
                        "too-low",
                        "too-high",
                        "out-of-range",
                        "inconsistent",
                        "type-failed");
    }

    private static void assertRefused(ThrowingCallable input, RefusalCode code, String... arguments) {
        InvalidInputException e = catchThrowableOfType(InvalidInputException.class, input);
        assertThat(e).isNotNull();
        assertThat(e.code()).as(e.getMessage()).isEqualTo(code);
        assertThat(e.arguments()).as(e.getMessage()).containsExactly(arguments);
    }

    private static void assertUnreadable(String text, RefusalCode code, String... arguments) {
        assertRefused(() -> Amounts.parse(Mass.class, text), code, arguments);
    }

    @Test
    void aTextThatIsNoQuantitySaysWhatIsWrongAndWhere() {
        assertUnreadable("12,5 lb", RefusalCode.NOT_A_NUMBER, "3");
        assertUnreadable("", RefusalCode.NOT_A_NUMBER, "1");
        assertUnreadable("1 000 lb", RefusalCode.NOT_A_NUMBER, "2");
        assertUnreadable("5 lb ", RefusalCode.MALFORMED, "5");
        assertUnreadable("5\tlb", RefusalCode.MALFORMED, "2");
        assertUnreadable("5  lb", RefusalCode.MALFORMED, "3");
        assertUnreadable("1e309 lb", RefusalCode.OUT_OF_RANGE, "5e-324", "1.7976931348623157e308");
        assertUnreadable("5", RefusalCode.MISSING_UNIT, "lb", "kg", "oz", "ton", "long ton", "g", "t");
        assertUnreadable("5 LB", RefusalCode.UNKNOWN_UNIT, "LB", "lb");
        assertUnreadable("5 bucket", RefusalCode.UNKNOWN_UNIT, "bucket");
        assertUnreadable("5 lb/mi", RefusalCode.WRONG_KIND, "mass");
        assertRefused(() -> Amounts.parseAny("5 bucket"), RefusalCode.UNKNOWN_UNIT, "bucket");
        assertRefused(() -> Amounts.parse(Force.class, "5 N"), RefusalCode.UNKNOWN_NAME);
    }

    @Test
    void aNumberOrUnitThatCannotBeUsedSaysWhy() {
        Unit<Mass> pound = SpreadingUnits.POUND;
        assertRefused(() -> Amounts.of(Double.NaN, pound), RefusalCode.NOT_FINITE);
        assertRefused(
                () -> Amounts.si(Length.class, Amounts.of(1e308, SpreadingUnits.KILOMETER)), RefusalCode.NOT_FINITE);
        assertRefused(() -> UnitSymbol.of(Units.NEWTON), RefusalCode.UNKNOWN_UNIT);
        assertRefused(() -> Amounts.ofSi(1, SpreadingUnits.CELSIUS), RefusalCode.WRONG_UNIT);
        assertRefused(() -> Conversion.between(SpreadingUnits.CELSIUS, SpreadingUnits.KELVIN), RefusalCode.WRONG_UNIT);
        Conversion conversion = Conversion.between(pound, SpreadingUnits.KILOGRAM);
        assertRefused(() -> conversion.convert(Double.NaN), RefusalCode.NOT_FINITE);
        assertRefused(() -> conversion.convert(new double[2], new double[3]), RefusalCode.INCONSISTENT, "2");
        assertRefused(() -> new ExactFactor(BigInteger.ZERO, BigInteger.ONE), RefusalCode.NOT_POSITIVE);
        assertRefused(() -> Rounded.text(Amounts.of(1, pound), 0), RefusalCode.TOO_LOW, "1");
        assertRefused(() -> Rounded.toResolution(Amounts.of(1, pound), Amounts.of(0, pound)), RefusalCode.NOT_POSITIVE);
        assertRefused(
                () -> Rounded.toResolution(Amounts.of(1, pound), Amounts.of(1, SpreadingUnits.KILOGRAM)),
                RefusalCode.WRONG_UNIT);
    }

    @Test
    void aCheckSaysItsLimitsAsTheyWereGiven() {
        Quantity<Length> inch = Amounts.of(1, SpreadingUnits.INCH);
        Quantity<Length> foot = Amounts.of(1, SpreadingUnits.FOOT);
        Quantity<Length> meter = Amounts.of(1, SpreadingUnits.METER);
        Quantity<Length> nothing = Amounts.of(0, SpreadingUnits.METER);
        Quantity<Length> below = Amounts.of(-1, SpreadingUnits.METER);
        assertRefused(() -> Require.positive("width", Length.class, nothing), RefusalCode.NOT_POSITIVE);
        assertRefused(() -> Require.notNegative("width", Length.class, below), RefusalCode.NEGATIVE);
        assertRefused(() -> Require.atLeast("width", Length.class, inch, foot), RefusalCode.TOO_LOW, "1 ft");
        assertRefused(
                () -> Require.within("width", Length.class, meter, inch, foot),
                RefusalCode.OUT_OF_RANGE,
                "1 in",
                "1 ft");
        Quantity<PulseCount> half = Amounts.of(0.5, SpreadingUnits.PULSE);
        Quantity<PulseCount> less = Amounts.of(-1, SpreadingUnits.PULSE);
        assertRefused(() -> Require.wholeNumber("pulses", PulseCount.class, half), RefusalCode.NOT_WHOLE);
        assertRefused(() -> Require.wholeNumber("pulses", PulseCount.class, less), RefusalCode.NEGATIVE);
        Quantity<Dimensionless> all = Amounts.of(100, SpreadingUnits.PERCENT);
        assertRefused(() -> Require.share("part", all), RefusalCode.TOO_HIGH, "100 %");
        assertRefused(() -> Require.fraction("part", all), RefusalCode.TOO_HIGH, "100 %");
        assertRefused(() -> Require.probability("risk", 1), RefusalCode.OUT_OF_RANGE, "0", "1");
        assertRefused(() -> Require.finite("ratio", Double.NaN), RefusalCode.NOT_FINITE);
        assertRefused(() -> Require.text("name", " "), RefusalCode.MISSING);
    }

    @Test
    @SuppressWarnings({"unchecked", "rawtypes"}) // what raw types get past the compiler is the point
    void aQuantityOfAnotherKindIsRefusedAsThatAndNotAsNotFinite() {
        Quantity mass = Amounts.of(1, SpreadingUnits.POUND);
        assertRefused(() -> Require.positive("width", Length.class, mass), RefusalCode.WRONG_KIND, "length");
        assertRefused(() -> Amounts.si(Length.class, mass), RefusalCode.WRONG_KIND, "length");
    }

    @Test
    void aNameInFrontKeepsCodeAndArguments() {
        Quantity<Length> inch = Amounts.of(1, SpreadingUnits.INCH);
        Quantity<Length> foot = Amounts.of(1, SpreadingUnits.FOOT);
        assertRefused(
                () -> Require.naming("gate", () -> Require.atLeast("width", Length.class, inch, foot)),
                RefusalCode.TOO_LOW,
                "1 ft");
    }
}
