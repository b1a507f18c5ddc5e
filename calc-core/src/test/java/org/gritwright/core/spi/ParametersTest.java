package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;

import java.util.List;
import java.util.Map;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;

class ParametersTest {
    private static final Parameter<Length> PITCH = Parameter.length("pitch", inches(1), inches(6));
    private static final Parameter<Length> WIDTH =
            Parameter.length("width", inches(1), inches(60)).withDefault(inches(24));
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
                "parameter must be one of [pitch, width]: \"Pitch\"",
                () -> Parameters.of(DECLARED, Map.of("pitch", inches(2), "Pitch", inches(2))));
    }

    @Test
    void refusesAMissingParameter() {
        assertRefused("pitch must be given: nothing", () -> Parameters.of(DECLARED, Map.of()));
    }

    @Test
    void refusesAValueOutOfLimitsOrOfAnotherKind() {
        assertRefused(
                "pitch must be within 1 in to 6 in: 7 in", () -> Parameters.of(DECLARED, Map.of("pitch", inches(7))));
        assertRefused(
                "pitch must be a finite length: \"lb\" is one of mass",
                () -> Parameters.of(DECLARED, Map.of("pitch", pounds(2))));
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

        assertRefused("parameter must be one of [pitch]: \"width\"", () -> parameters.get(WIDTH));
        assertRefused("parameter must be one of [pitch]: \"width\"", () -> parameters.si(WIDTH));
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
    void canNotBeChanged() {
        Parameters parameters = Parameters.of(DECLARED, Map.of("pitch", inches(2)));

        assertThatThrownBy(() -> parameters.asMap().clear()).isInstanceOf(UnsupportedOperationException.class);
    }
}
