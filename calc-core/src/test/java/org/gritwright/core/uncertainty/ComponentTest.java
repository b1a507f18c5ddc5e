package org.gritwright.core.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.pounds;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Component.Evaluation;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ComponentTest {
    private static Component<Mass> component(
            String name, Quantity<?> uncertainty, Quantity<Mass> contribution, double degreesOfFreedom, String group) {
        return new Component<>(
                ComponentKey.of("a key"),
                name,
                Evaluation.TYPE_B,
                Distribution.NORMAL,
                uncertainty,
                contribution,
                degreesOfFreedom,
                Optional.ofNullable(group));
    }

    @Test
    void theSensitivityIsContributionPerUncertaintyWithItsSign() {
        Component<Mass> gate =
                Component.typeB("gate", Distribution.RECTANGULAR, Amounts.of(0.25, SpreadingUnits.INCH), pounds(-0.5));

        assertThat(gate.sensitivity()).hasValue(-2);
        assertThat(gate.evaluation()).isEqualTo(Evaluation.TYPE_B);
        assertThat(gate.degreesOfFreedom()).isInfinite();
        assertThat(gate.group()).isEmpty();
    }

    @Test
    void withoutUncertaintyThereIsNoSensitivity() {
        assertThat(Components.normal("nothing", 0).sensitivity()).isEmpty();
    }

    @Test
    void repeatsAreNormalAndOfTypeA() {
        Component<Mass> repeats = Component.typeA("repeats", pounds(1), pounds(1), 2);

        assertThat(repeats.evaluation()).isEqualTo(Evaluation.TYPE_A);
        assertThat(repeats.distribution()).isEqualTo(Distribution.NORMAL);
        assertThat(repeats.degreesOfFreedom()).isEqualTo(2);
    }

    @Test
    void inAGroupItIsTheSameButForTheGroup() {
        assertThat(Components.a("one", 0.5, 3).inGroup("scale"))
                .isEqualTo(new Component<>(
                        ComponentKey.of("one"),
                        "one",
                        Evaluation.TYPE_A,
                        Distribution.NORMAL,
                        pounds(0.5),
                        pounds(0.5),
                        3,
                        Optional.of("scale")));
    }

    @Test
    void refusesBadNumbersByName() {
        assertRefused(
                "standard uncertainty of span must be 0 or more, and more than 0 if it contributes: -0.1 lb",
                () -> component("span", pounds(-0.1), pounds(1), 1, null));
        assertRefused(
                "standard uncertainty of span must be 0 or more, and more than 0 if it contributes: 0 lb",
                () -> component("span", pounds(0), pounds(1), 1, null));
        assertRefused(
                "standard uncertainty of span must be finite: NaN",
                () -> component("span", foreign(Double.NaN, SpreadingUnits.POUND), pounds(1), 1, null));
        assertRefused(
                "contribution of span must be finite: NaN",
                () -> component("span", pounds(1), foreign(Double.NaN, SpreadingUnits.POUND), 1, null));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.999, -1, Double.NaN})
    void refusesToBeWithoutADegreeOfFreedom(double degreesOfFreedom) {
        assertRefused(
                "degrees of freedom of span must be 1 or more: " + degreesOfFreedom,
                () -> component("span", pounds(1), pounds(1), degreesOfFreedom, null));
    }

    @Test
    void refusesBlankNames() {
        assertRefused(
                "name of an uncertainty must be a text that is not blank: \" \"",
                () -> component(" ", pounds(1), pounds(1), 1, null));
        assertRefused(
                "group of span must be a text that is not blank: \"\"",
                () -> component("span", pounds(1), pounds(1), 1, ""));
    }

    @Test
    void correlationsAreOfTwoAndFromMinusOneToOne() {
        assertRefused(
                "correlated components must be two different ones: a with itself", () -> new Correlation("a", "a", 0));
        assertRefused("correlation of a and b must be -1 to 1: 1.1", () -> new Correlation("a", "b", 1.1));
        assertRefused("correlation of a and b must be -1 to 1: -1.1", () -> new Correlation("a", "b", -1.1));
        assertRefused("correlation of a and b must be -1 to 1: NaN", () -> new Correlation("a", "b", Double.NaN));
        assertRefused(
                "key of an uncertainty must be a text that is not blank: \"\"", () -> new Correlation("", "b", 0));
        assertRefused(
                "key of an uncertainty must be a text that is not blank: \" \"", () -> new Correlation("a", " ", 0));
    }
}
