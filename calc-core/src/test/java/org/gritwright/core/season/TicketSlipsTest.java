package org.gritwright.core.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.season.TicketSlip.Kind.NOT_HERE;
import static org.gritwright.core.season.TicketSlip.Kind.POUNDS_AS_TONS;
import static org.gritwright.core.season.TicketSlip.Kind.TONS_AS_POUNDS;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.balance.Candidate;
import org.gritwright.core.balance.Suspect;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class TicketSlipsTest {
    private static StatedMass kilograms(double kilograms) {
        return StatedMass.of(
                Amounts.of(kilograms, SpreadingUnits.KILOGRAM), Amounts.of(kilograms / 500, SpreadingUnits.KILOGRAM));
    }

    /** A pile with tickets T1, T2 … */
    private static Pile pile(double... tickets) {
        List<Delivery> deliveries = new ArrayList<>();
        for (double ticket : tickets) {
            deliveries.add(Delivery.of("T" + (deliveries.size() + 1), kilograms(ticket)));
        }
        return Pile.of("north", "salt", kilograms(500_000), deliveries, kilograms(100_000));
    }

    /** Slips where so much is listed too much. */
    private static List<TicketSlip> slips(Pile pile, double tooMuch, double uncertainty) {
        return TicketSlips.of(pile, 1, new Suspect(Candidate.balance("period"), tooMuch, uncertainty));
    }

    @Test
    void aTicketAsLargeAsWhatIsTooMuchMayBeAnothers() {
        Pile pile = pile(30_000, 40_000, 50_000);

        assertThat(slips(pile, 41_000, 1_000)).containsExactly(new TicketSlip("T2", NOT_HERE));
        assertThat(slips(pile, 45_000, 1_000)).isEmpty();
        // What is missing is no ticket too many.
        assertThat(slips(pile, -40_000, 1_000)).isEmpty();
    }

    @Test
    void itFitsWithinTwoStandardUncertaintiesAndIsLargerThanThose() {
        Pile pile = pile(40_000, 10_000, 50_000);

        assertThat(slips(pile, 44_000, 2_000)).containsExactly(new TicketSlip("T1", NOT_HERE));
        assertThat(slips(pile, 44_001, 2_000)).isEmpty();
        assertThat(slips(pile, 10_000, 4_999)).containsExactly(new TicketSlip("T2", NOT_HERE));
        assertThat(slips(pile, 10_000, 5_000)).isEmpty();
    }

    @Test
    void poundsAsTonsAreTooMuchByAllButATwoThousandth() {
        Pile pile = pile(40_000, 80_000_000, 40_000);

        assertThat(slips(pile, 79_960_000, 10_000)).containsExactly(new TicketSlip("T2", POUNDS_AS_TONS));
        assertThat(slips(pile, 79_990_000, 10_000)).containsExactly(new TicketSlip("T2", NOT_HERE));
    }

    @Test
    void onlyATicketLargerThanAllOthersTogetherLooksLikePounds() {
        assertThat(slips(pile(20_001, 20_000), 20_000, 1_000))
                .containsExactly(new TicketSlip("T1", POUNDS_AS_TONS), new TicketSlip("T2", NOT_HERE));
        assertThat(slips(pile(40_000, 10_000, 20_000), 40_000, 1_000))
                .containsExactly(new TicketSlip("T1", POUNDS_AS_TONS));
        assertThat(slips(pile(40_000, 20_000, 20_000), 40_000, 1_000)).containsExactly(new TicketSlip("T1", NOT_HERE));
        assertThat(slips(pile(40_000, 20_000, 30_000), 40_000, 1_000)).containsExactly(new TicketSlip("T1", NOT_HERE));
    }

    @Test
    void tonsAsPoundsAreMissingTwoThousandTimesOverButOnce() {
        Pile pile = pile(20, 45_000);

        assertThat(slips(pile, -39_980, 5)).containsExactly(new TicketSlip("T1", TONS_AS_POUNDS));
        assertThat(slips(pile, 39_980, 5)).isEmpty();
    }

    @Test
    void whereMoreThanThreeFitNoneTellsAnything() {
        assertThat(slips(pile(40_000, 40_000, 40_000, 9_000), 40_000, 1_000)).hasSize(3);
        assertThat(slips(pile(40_000, 40_000, 40_000, 40_000), 40_000, 1_000)).isEmpty();
    }

    @Test
    void aTicketOfNothingExplainsNothing() {
        assertThat(slips(pile(0, 9_000), 1, 1)).isEmpty();
    }

    @Test
    void onlyTicketsOfThePeriodMatter() {
        Pile pile = new Pile(
                "north",
                "salt",
                kilograms(500_000),
                List.of(kilograms(400_000), kilograms(300_000)),
                List.of(
                        new Delivery("a", 1, kilograms(40_000)),
                        new Delivery("b", 2, kilograms(40_000)),
                        new Delivery("c", 2, kilograms(90_000))),
                List.of(),
                Optional.empty());

        assertThat(slips(pile, 40_000, 1_000)).containsExactly(new TicketSlip("a", NOT_HERE));
    }
}
