package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.record.WrittenPile;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.season.Suspicion;
import org.gritwright.core.season.TicketSlip;

/**
 * The delivery tickets of a season: hundreds of which most are like the others.
 *
 * @param days when each came, by its number, as far as that is known
 * @param odd numbers of those that a sentence of the season names: these stand by themselves
 */
record Tickets(Map<String, LocalDate> days, Set<String> odd) {
    static final Tickets NONE = new Tickets(Map.of(), Set.of());

    Tickets {
        days = Map.copyOf(days);
        odd = Set.copyOf(odd);
    }

    static Tickets of(WrittenSeason season, List<Suspicion> suspicions) {
        Map<String, LocalDate> days = new HashMap<>();
        for (WrittenPile pile : season.piles()) {
            pile.deliveries().forEach(one -> days.put(one.ticket(), one.on()));
        }
        Set<String> odd = new HashSet<>();
        for (Finding finding : season.findings()) {
            finding.arguments().values().stream().flatMap(Tickets::names).forEach(odd::add);
        }
        suspicions.stream()
                .filter(Suspicion.PileOff.class::isInstance)
                .flatMap(one -> ((Suspicion.PileOff) one).slips().stream())
                .map(TicketSlip::ticket)
                .forEach(odd::add);
        odd.retainAll(days.keySet());
        return new Tickets(days, odd);
    }

    private static Stream<String> names(Argument argument) {
        if (argument instanceof Argument.Several several) {
            return several.items().stream().flatMap(Tickets::names);
        }
        return argument instanceof Argument.Name name ? Stream.of(name.name()) : Stream.empty();
    }

    String day(String ticket) {
        return Optional.ofNullable(days.get(ticket)).map(LocalDate::toString).orElse(PageTable.NONE);
    }

    /** For example "30 tickets, 2024-11-04 to 2025-03-20"; "30 other tickets" where some stand by themselves. */
    String words(List<String> tickets, boolean areOthersListed) {
        List<LocalDate> on = tickets.stream()
                .flatMap(one -> Optional.ofNullable(days.get(one)).stream())
                .sorted(Comparator.naturalOrder())
                .toList();
        String first = on.isEmpty() ? "" : on.get(0).toString();
        String last = on.isEmpty() ? "" : on.get(on.size() - 1).toString();
        String count = Words.count(tickets.size(), areOthersListed ? "other ticket" : "ticket");
        return count + (on.isEmpty() ? "" : first.equals(last) ? ", " + first : ", " + first + " to " + last);
    }
}
