package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.units.SpreadingUnits.INCH;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class ParametersTest {
    private static final Parameter<Length> PITCH = Parameter.length("pitch", inches(1), inches(6));
    private static final Parameter<Length> WIDTH =
            Parameter.length("width", inches(1), inches(60)).withDefault(inches(24));
    private static final Parameter<Length> STEPS =
            Parameter.length("steps", inches(1), inches(6)).asList(2, 3);
    private static final List<Parameter<?>> DECLARED = List.of(PITCH, WIDTH);

    @Test
    void valuesAreKeptAsEnteredAndDefaultsFilledIn() {
        Parameters parameters = Parameters.of(DECLARED, Map.of("pitch", inches(2)));

        assertThat(parameters.get(PITCH)).isEqualTo(inches(2));
        assertThat(parameters.get(WIDTH)).isEqualTo(inches(24));
        assertThat(parameters.si(PITCH)).isCloseTo(0.0508, within(1e-17));
        assertThat(parameters).hasToString("{pitch=2 in, width=24 in}");
    }

    @Test
    void aDefaultGivesWay() {
        assertThat(Parameters.of(DECLARED, Map.of("pitch", inches(2), "width", inches(20)))
                        .get(WIDTH))
                .isEqualTo(inches(20));
    }

    @Test
    void refusesAnUnknownParameterAndNamesTheKnown() {
        assertRefused(
                "parameter must be one of pitch, width; nearest: \"pitch\": \"Pitch\"",
                () -> Parameters.of(DECLARED, Map.of("pitch", inches(2), "Pitch", inches(2))));
    }

    @Test
    void aMisspeltNameIsNamedBeforeTheOneThatIsMissing() {
        assertRefused(
                "parameter must be one of pitch, width; nearest: \"pitch\": \"ptich\"",
                () -> Parameters.of(DECLARED, Map.of("ptich", inches(2))));
        assertRefused(
                "parameter must be one of pitch, width; nearest: \"width\": \"widh\"",
                () -> Parameters.of(DECLARED, Map.of("widh", inches(2))));
        assertRefused(
                "parameter must be one of pitch, width: \"teeth\"",
                () -> Parameters.of(DECLARED, Map.of("teeth", inches(2))));
        assertRefused(
                "parameter must be left out, as the type has none: \"teeth\"",
                () -> Parameters.of(List.of(), Map.of("teeth", inches(2))));
    }

    @Test
    void aQuantityOfAnotherMakeIsCopied() {
        assertThat(Parameters.of(DECLARED, Map.of("pitch", foreign(2, INCH))))
                .isEqualTo(Parameters.of(DECLARED, Map.of("pitch", inches(2))));
    }

    @Test
    void refusesAMissingParameter() {
        assertRefused("pitch must be given: nothing", () -> Parameters.of(DECLARED, Map.of()));
    }

    @Test
    void refusesAValueOutOfLimitsOrOfAnotherKind() {
        assertRefused(
                "pitch must be within 1 in to 6 in: 7 in", () -> Parameters.of(DECLARED, Map.of("pitch", inches(7))));
        assertRefused("pitch must be a finite length: 2 lb", () -> Parameters.of(DECLARED, Map.of("pitch", pounds(2))));
    }

    @Test
    void refusesATypeThatDeclaresANameTwice() {
        assertRefused(
                "parameter must be declared once: \"pitch\"",
                () -> Parameters.of(List.of(PITCH, PITCH), Map.of("pitch", inches(2))));
    }

    @Test
    void refusesToTellWhatWasNotDeclared() {
        Parameters parameters = Parameters.of(List.of(PITCH), Map.of("pitch", inches(2)));

        assertRefused("parameter must be one of pitch: \"width\"", () -> parameters.get(WIDTH));
        assertRefused("parameter must be one of pitch: \"width\"", () -> parameters.si(WIDTH));
    }

    @Test
    void areEqualWhenAllValuesAreAsEntered() {
        Parameters parameters = Parameters.of(DECLARED, Map.of("pitch", inches(2)));

        assertThat(parameters)
                .isEqualTo(Parameters.of(DECLARED, Map.of("pitch", inches(2), "width", inches(24))))
                .hasSameHashCodeAs(Parameters.of(DECLARED, Map.of("pitch", inches(2), "width", inches(24))))
                .isNotEqualTo(Parameters.of(DECLARED, Map.of("pitch", inches(3))))
                .isNotEqualTo(Map.of());
    }

    @Test
    void areHashedByTheirValues() {
        Parameters two = Parameters.of(List.of(PITCH), Map.of("pitch", inches(2)));

        assertThat(two).hasSameHashCodeAs(Parameters.of(List.of(PITCH), Map.of("pitch", inches(2))));
        assertThat(two.hashCode())
                .isNotEqualTo(Parameters.of(List.of(PITCH), Map.of("pitch", inches(3)))
                        .hashCode());
    }

    @Test
    void canNotBeChanged() {
        List<Quantity<?>> steps = new ArrayList<>(List.of(inches(1), inches(2)));
        Parameters parameters = Parameters.of(List.of(STEPS), Map.of("steps", steps));
        steps.clear();

        assertThat(parameters.list(STEPS)).containsExactly(inches(1), inches(2));
        assertThatThrownBy(() -> parameters.asMap().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> parameters.asMap().get("steps").clear())
                .isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> parameters.list(STEPS).clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    private static Parameters steps(Object given) {
        return Parameters.of(List.of(STEPS), Map.of("steps", given));
    }

    @Test
    void aListIsKeptAsEnteredAndInItsOrder() {
        Parameters parameters = steps(List.of(inches(3), Amounts.of(50.8, SpreadingUnits.MILLIMETER), inches(1)));

        assertThat(parameters.list(STEPS))
                .containsExactly(inches(3), Amounts.of(50.8, SpreadingUnits.MILLIMETER), inches(1));
        assertThat(parameters.asMap())
                .containsOnlyKeys("steps")
                .containsEntry("steps", List.of(inches(3), Amounts.of(50.8, SpreadingUnits.MILLIMETER), inches(1)));
        assertThat(parameters).hasToString("{steps=3 in, 50.8 mm, 1 in}");
        assertThat(parameters)
                .isNotEqualTo(steps(List.of(inches(1), Amounts.of(50.8, SpreadingUnits.MILLIMETER), inches(3))));
    }

    @Test
    void aListOfOtherLengthIsRefused() {
        assertRefused("steps must be a list of 2 to 3: a list of 1", () -> steps(List.of(inches(1))));
        assertRefused("steps must be a list of 2 to 3: a list of 0", () -> steps(List.of()));
        assertRefused(
                "steps must be a list of 2 to 3: a list of 4",
                () -> steps(List.of(inches(1), inches(1), inches(1), inches(1))));
        assertRefused("steps must be given: nothing", () -> Parameters.of(List.of(STEPS), Map.of()));
    }

    @Test
    void aListIsNoSingleValueAndASingleValueNoList() {
        assertRefused("steps must be a list of 2 to 3: one value", () -> steps(inches(1)));
        assertRefused(
                "pitch must be one value: a list of 1",
                () -> Parameters.of(List.of(PITCH), Map.of("pitch", List.of(inches(2)))));
        Parameters parameters = steps(List.of(inches(1), inches(2)));
        assertRefused("steps must be one value: a list of 2", () -> parameters.get(STEPS));
        assertRefused("steps must be one value: a list of 2", () -> parameters.si(STEPS));
        assertThat(Parameters.of(List.of(PITCH), Map.of("pitch", inches(2))).list(PITCH))
                .containsExactly(inches(2));
    }

    @Test
    void eachValueOfAListIsChecked() {
        assertRefused("steps, value 2 must be within 1 in to 6 in: 7 in", () -> steps(List.of(inches(1), inches(7))));
        assertRefused("steps, value 2 must be a finite length: 2 lb", () -> steps(List.of(inches(1), pounds(2))));
    }

    @Test
    void whatIsNoQuantityIsRefused() {
        assertRefused(
                "pitch must be a quantity from 1 in to 6 in: 2 in (String)",
                () -> Parameters.of(List.of(PITCH), Map.of("pitch", "2 in")));
        assertRefused(
                "steps, value 2 must be a quantity from 1 in to 6 in: 2 (Integer)", () -> steps(List.of(inches(1), 2)));
        assertRefused(
                "steps, value 2 must be a quantity from 1 in to 6 in: null",
                () -> steps(Arrays.asList(inches(1), null)));
    }

    @Test
    void aTypeThatReadsAParameterWithNarrowerLimitsThanItDeclaredIsRefused() {
        Parameters parameters = Parameters.of(List.of(PITCH), Map.of("pitch", inches(5)));

        assertRefused(
                "pitch must be within 1 in to 4 in: 5 in",
                () -> parameters.get(Parameter.length("pitch", inches(1), inches(4))));
    }
}
