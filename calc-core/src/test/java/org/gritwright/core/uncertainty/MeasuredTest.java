package org.gritwright.core.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.wrongKind;

import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("locale")
class MeasuredTest {
    @Test
    void holdsValueUncertaintyAndDegreesOfFreedom() {
        Measured<Mass> measured = Measured.of(pounds(5.25), pounds(0.125), 2);

        assertThat(measured.value()).isEqualTo(pounds(5.25));
        assertThat(measured.standardUncertainty()).contains(pounds(0.125));
        assertThat(measured.degreesOfFreedom()).hasValue(2);
        assertThat(measured).hasToString("5.25 lb (u 0.125 lb, 2 degrees of freedom)");
    }

    @Test
    void withoutRepeatsTheUncertaintyIsAbsentAndNotZero() {
        Measured<Mass> measured = Measured.once(pounds(5.25));

        assertThat(measured.standardUncertainty()).isEmpty();
        assertThat(measured.degreesOfFreedom()).isEmpty();
        assertThat(measured).hasToString("5.25 lb (one measurement)");
    }

    @Test
    void isEqualWhenAllThreeAre() {
        Measured<Mass> measured = Measured.of(pounds(5), pounds(0.1), 2);

        assertThat(measured)
                .isEqualTo(Measured.of(pounds(5), pounds(0.1), 2))
                .hasSameHashCodeAs(Measured.of(pounds(5), pounds(0.1), 2))
                .isNotEqualTo(Measured.of(pounds(6), pounds(0.1), 2))
                .isNotEqualTo(Measured.of(pounds(5), pounds(0.2), 2))
                .isNotEqualTo(Measured.of(pounds(5), pounds(0.1), 3))
                .isNotEqualTo(Measured.once(pounds(5)))
                .isNotEqualTo(pounds(5));
    }

    @Test
    void refusesAnUncertaintyThatIsNegativeOrInAnotherUnit() {
        assertRefused(
                "standard uncertainty must be 0 or more and in the unit of 5 lb: -0.1 lb",
                () -> Measured.of(pounds(5), pounds(-0.1), 2));
        assertRefused(
                "standard uncertainty must be 0 or more and in the unit of 5 lb: 0.1 kg",
                () -> Measured.of(pounds(5), Amounts.of(0.1, SpreadingUnits.KILOGRAM), 2));
        assertRefused(
                "standard uncertainty must be 0 or more and in the unit of 5 lb: 0.1 in",
                () -> Measured.of(pounds(5), wrongKind(Amounts.of(0.1, SpreadingUnits.INCH)), 2));
    }

    @Test
    void refusesAnUncertaintyWithoutDegreesOfFreedom() {
        assertRefused("degrees of freedom must be 1 or more: 0.0", () -> Measured.of(pounds(5), pounds(0.1), 0));
    }

    @Test
    void uncertaintyAndDegreesOfFreedomComeTogether() {
        assertRefused(
                "degrees of freedom must be given with a standard uncertainty, and only with it: OptionalDouble.empty",
                () -> new Measured<>(pounds(5), Optional.of(pounds(0.1)), OptionalDouble.empty()));
        assertRefused(
                "degrees of freedom must be given with a standard uncertainty, and only with it: OptionalDouble[2.0]",
                () -> new Measured<>(pounds(5), Optional.empty(), OptionalDouble.of(2)));
    }

    @Test
    void refusesWhatIsNotFinite() {
        assertRefused("value must be finite: NaN", () -> Measured.once(foreign(Double.NaN, SpreadingUnits.POUND)));
        assertRefused(
                "value must be finite: Infinity",
                () -> Measured.of(foreign(Double.POSITIVE_INFINITY, SpreadingUnits.POUND), pounds(0.1), 2));
        assertRefused(
                "standard uncertainty must be finite: NaN",
                () -> Measured.of(pounds(5), foreign(Double.NaN, SpreadingUnits.POUND), 2));
    }
}
