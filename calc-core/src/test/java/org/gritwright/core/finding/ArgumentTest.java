package org.gritwright.core.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.inches;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("locale")
class ArgumentTest {
    /** Documents hold these: one that is missing or renamed breaks them. */
    private static final Set<String> TERMS_IN_DOCUMENTS = Set.of(
            "calibration-error",
            "delivery-error",
            "in-both",
            "in-neither",
            "caught-only",
            "counted-only",
            "proportional",
            "dead-opening",
            "table",
            "constant-volume",
            "leak-flow",
            "hydraulic",
            "sensor",
            "tire",
            "material",
            "scale-accuracy",
            "container-tolerance",
            "scatter",
            "count",
            "run-time",
            "gate-setting",
            "pulses-per-revolution",
            "gear-ratio",
            "pulses-per-volume",
            "caught-volume",
            "parameter",
            "density",
            "gross-mass",
            "caught-mass",
            "tare",
            "revolutions",
            "ticket",
            "displayed-mass",
            "value-in-force",
            "verification",
            "too-much",
            "too-little",
            "digits-swapped",
            "digit-too-many",
            "digit-dropped",
            "wrong-reading",
            "rising",
            "falling",
            "load",
            "lowest-engine-speed",
            "spinner",
            "prewet",
            "plow",
            "gate",
            "conveyor",
            "by-eye",
            "from-maker");

    private static final Quantity<Dimensionless> NO_FACTOR = Amounts.of(1, SpreadingUnits.ONE);

    /** A product holds dozens of digits: a record with such a number didn't equal what was read from it. */
    @Test
    void aProductOfQuantitiesEqualsWhatIsReadAgain() {
        Quantity<Length> product = inches(0.1).multiply(1 / 0.45359237);
        Quantity<Length> read = inches(product.getValue().doubleValue());

        assertThat(product).isNotEqualTo(read);
        assertThat(Argument.number(product)).isEqualTo(Argument.number(read));
    }

    @Test
    void idsOfTermsAreStable() {
        assertThat(Arrays.stream(Term.values()).map(Term::id).collect(Collectors.toSet()))
                .isEqualTo(TERMS_IN_DOCUMENTS);
    }

    @Test
    void eachKindHasItsWords() {
        assertThat(Argument.number(inches(2.123456)).words()).isEqualTo("2.123 in");
        assertThat(Argument.date(LocalDate.of(2026, 10, 8)).words()).isEqualTo("2026-10-08");
        assertThat(Argument.name("hanging 4").words()).isEqualTo("hanging 4");
        assertThat(Term.DELIVERY_ERROR.words()).isEqualTo("delivery error");
        assertThat(Argument.refusal(new InvalidInputException("gate opening", "at most 12 in", "14 in"))
                        .words())
                .isEqualTo("gate opening must be at most 12 in: 14 in");
        assertThat(new Argument.Prose("as it was").words()).isEqualTo("as it was");
    }

    @Test
    void aNumberIsPrintedExactly() {
        assertThat(Argument.number(inches(2.123456))).hasToString("2.123456 in");
    }

    @Test
    void whatIsUnknownNamesWhatItIsOf() {
        assertThat(Argument.Unknown.of(Term.SCATTER).words()).isEqualTo("the scatter of the catches");
        assertThat(Argument.Unknown.accuracyOfScale("hanging 4").words()).isEqualTo("the accuracy of scale hanging 4");
        assertRefused(
                "subject of scale-accuracy must be given: nothing", () -> Argument.Unknown.of(Term.SCALE_ACCURACY));
        assertRefused(
                "subject of scatter must be left out: hanging 4",
                () -> new Argument.Unknown(Term.SCATTER, "hanging 4"));
    }

    @Test
    void aScaleMayBeCalledLikeAPlaceInATemplate() {
        assertThat(Argument.Unknown.accuracyOfScale("{of}").words()).isEqualTo("the accuracy of scale {of}");
    }

    @Test
    void aSlipByAFactorSaysWhichWay() {
        assertThat(Slip.byFactor(Term.GATE_SETTING, Slip.Mistake.TOO_LARGE, 25.4, inches(57 / 25.4)))
                .hasToString("gate opening ÷ 25.4 (2.244 in)");
        assertThat(Slip.byFactor(Term.GEAR_RATIO, Slip.Mistake.TOO_SMALL, 2, Amounts.of(6, SpreadingUnits.ONE)))
                .hasToString("gear ratio × 2 (6)");
    }

    @Test
    void aSlipOfADigitListsEveryValueWithAllItsDigits() {
        assertThat(Slip.of(Term.GATE_SETTING, Slip.Mistake.DIGIT_DROPPED, List.of(inches(1.23451), inches(1.23452))))
                .hasToString("a dropped digit in the gate opening (1.23451 in or 1.23452 in)");
        assertThat(Slip.of(Term.GATE_SETTING, Slip.Mistake.DIGIT_TOO_MANY, List.of(inches(3))))
                .hasToString("a digit too many in the gate opening (3 in)");
    }

    @Test
    void theFactorGoesWithTheMistake() {
        assertRefused(
                "factor of a slip must be greater than 1: 0.5",
                () -> Slip.byFactor(Term.GEAR_RATIO, Slip.Mistake.TOO_LARGE, 0.5, inches(3)));
        assertRefused(
                "factor of a slip must be 1: 10",
                () -> Slip.byFactor(Term.GEAR_RATIO, Slip.Mistake.DIGIT_DROPPED, 10, inches(3)));
        assertRefused(
                "factor of a slip must be greater than 1: 1",
                () -> new Slip(Term.GEAR_RATIO, Slip.Mistake.TOO_SMALL, NO_FACTOR, List.of(inches(3)), "", List.of()));
        assertRefused(
                "values of a slip must be one or more: none",
                () -> Slip.of(Term.GATE_SETTING, Slip.Mistake.DIGIT_DROPPED, List.of()));
    }

    @Test
    void aListIsJoinedAsItsItemsAllow() {
        assertThat(Argument.several(List.of()).words()).isEqualTo("none");
        assertThat(Argument.several(List.of(Argument.Unknown.of(Term.COUNT), Argument.Unknown.of(Term.SCATTER)))
                        .words())
                .isEqualTo("the uncertainty of the count, the scatter of the catches");
        assertThat(FindingSamples.of(FindingCode.FILL_IMPOSSIBLE)
                        .arguments()
                        .get("slips")
                        .words())
                .isEqualTo("gate opening ÷ 25.4 (2.25 in); a dropped digit in the gate opening (12 in or 20 in); gear"
                        + " ratio × 2 (6)");
    }

    @Test
    void whatIsNoValueIsRefused() {
        assertRefused(
                "number of a finding must be finite: NaN",
                () -> Argument.number(foreign(Double.NaN, SpreadingUnits.INCH)));
        assertRefused("name in a finding must be a text that is not blank: \" \"", () -> Argument.name(" "));
        assertThatNullPointerException().isThrownBy(() -> Argument.number(null)).withMessage("quantity");
        assertThatNullPointerException().isThrownBy(() -> Argument.date(null)).withMessage("day");
    }
}
