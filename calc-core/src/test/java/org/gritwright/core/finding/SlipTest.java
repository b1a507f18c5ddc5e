package org.gritwright.core.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.POUND;

import java.time.OffsetDateTime;
import java.util.List;
import org.gritwright.core.finding.Slip.Mistake;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("locale")
class SlipTest {
    private static final OffsetDateTime EIGHT = OffsetDateTime.parse("2026-10-19T08:00-05:00");
    private static final Slip TENTH = Slip.byFactor(Term.GATE_SETTING, Mistake.TOO_SMALL, 10, Amounts.of(2, INCH));

    @Test
    void saysInWhichCatchesItWasMade() {
        assertThat(TENTH.words()).endsWith("(2 in)");
        assertThat(TENTH.in(List.of(EIGHT)).words()).isEqualTo(TENTH.words() + ", catch of 2026-10-19 08:00");
        assertThat(TENTH.in(List.of(EIGHT, EIGHT.plusHours(1))).words()).isEqualTo(TENTH.words() + ", in 2 catches");
    }

    @Test
    void namesTheTruckThatItWasSwappedWith() {
        Slip swapped =
                Slip.of(Term.TICKET, Mistake.SWAPPED_WITH_TRUCK, List.of()).of("T-7");

        assertThat(swapped.words()).isEqualTo(Term.TICKET.words() + " swapped with that of truck T-7");
        assertThat(Mistake.SWAPPED_WITH_TRUCK.template()).isEqualTo("{part} swapped with that of truck {of}");
    }

    @Test
    void aFactorIsGivenWhereTheMistakeHasOneAndNowhereElse() {
        assertRefused(
                "factor of a slip must be greater than 1: 1",
                () -> Slip.byFactor(Term.TARE, Mistake.TOO_LARGE, 1, Amounts.of(2, POUND)));
        assertRefused(
                "factor of a slip must be 1: 2",
                () -> Slip.byFactor(Term.TARE, Mistake.NOT_AS_LISTED, 2, Amounts.of(2, POUND)));
        assertRefused(
                "values of a slip must be one or more: none",
                () -> Slip.of(Term.TARE, Mistake.NOT_AS_LISTED, List.of()));
    }

    @Test
    void nothingOfItIsNull() {
        assertThatNullPointerException()
                .isThrownBy(() -> new Slip(
                        Term.TARE,
                        Mistake.NOT_AS_LISTED,
                        Amounts.of(1, ONE),
                        List.of(Amounts.of(2, POUND)),
                        null,
                        List.of()))
                .withMessage("of");
        assertThatNullPointerException()
                .isThrownBy(() -> new Slot("tare", null, false, List.of()))
                .withMessage("kind");
        assertThatNullPointerException()
                .isThrownBy(() -> new Argument.Unknown(Term.SCALE_ACCURACY, null))
                .withMessage("of");
        assertThatNullPointerException()
                .isThrownBy(() -> new Argument.Several(null))
                .withMessage("items");
    }

    @Test
    void aMomentIsAsOnTheClockWhereItWasRead() {
        assertThat(new Argument.Moment(EIGHT).words()).isEqualTo("2026-10-19 08:00");
    }
}
