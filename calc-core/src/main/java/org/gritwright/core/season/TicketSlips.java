package org.gritwright.core.season;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.balance.Suspect;

/** Which slip with one ticket makes a pile's error as large as it is. */
final class TicketSlips {
    private static final double POUNDS_PER_TON = 2000;
    /** Where more fit, none tells anything. */
    private static final int MOST = 3;
    /** Of the standard uncertainty; common practice, no source. */
    private static final double NEAR = 2;

    private TicketSlips() {}

    /** The suspect's size is what is listed too much, in kilograms. */
    static List<TicketSlip> of(Pile pile, int period, Suspect suspect) {
        List<TicketSlip> slips = new ArrayList<>();
        for (Delivery delivery : pile.deliveries()) {
            if (delivery.period() == period) {
                double kilograms = delivery.mass().kilograms();
                // What the slip moves is as uncertain as the ticket.
                add(slips, delivery, TicketSlip.Kind.NOT_HERE, kilograms, suspect);
                add(slips, delivery, TicketSlip.Kind.POUNDS_AS_TONS, kilograms * (1 - 1 / POUNDS_PER_TON), suspect);
                add(slips, delivery, TicketSlip.Kind.TONS_AS_POUNDS, kilograms * (1 - POUNDS_PER_TON), suspect);
            }
        }
        // Nothing but the number's size tells pounds from nothing at all.
        slips.removeIf(slip -> slip.kind() == TicketSlip.Kind.POUNDS_AS_TONS && !isOdd(pile, slip));
        slips.removeIf(slip -> slip.kind() == TicketSlip.Kind.NOT_HERE
                && slips.contains(new TicketSlip(slip.ticket(), TicketSlip.Kind.POUNDS_AS_TONS)));
        return slips.size() > MOST ? List.of() : slips;
    }

    private static void add(
            List<TicketSlip> slips, Delivery delivery, TicketSlip.Kind kind, double tooMuch, Suspect suspect) {
        double allowed = NEAR * suspect.standardUncertainty();
        if (Math.abs(tooMuch) > allowed && Math.abs(suspect.size() - tooMuch) <= allowed) {
            slips.add(new TicketSlip(delivery.ticket(), kind));
        }
    }

    /** Larger than all others of the pile together. */
    private static boolean isOdd(Pile pile, TicketSlip slip) {
        double all = 0;
        double own = 0;
        for (Delivery delivery : pile.deliveries()) {
            all += delivery.mass().kilograms();
            own += delivery.ticket().equals(slip.ticket()) ? delivery.mass().kilograms() : 0;
        }
        return own > all - own;
    }
}
