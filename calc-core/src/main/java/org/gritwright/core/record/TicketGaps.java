package org.gritwright.core.record;

import static org.gritwright.core.finding.Argument.name;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;

/**
 * Numbers that are left out where tickets are numbered in a row, whatever piles they went to: one may be lost. A supplier that serves others too
 * numbers theirs between ours, so that a row is only what hardly leaves any out. All limits are ours (common practice, no source).
 */
final class TicketGaps {
    /** So many make a row. */
    private static final int FEW = 6;

    /** So many may be lost together; where more are left out, the row begins anew. */
    private static final int MOST = 3;

    /** Of the steps from ticket to ticket, those that leave none out. */
    private static final double MOSTLY = 0.75;

    /** More than a long can hold is no number of tickets. */
    private static final int DIGITS = 15;

    /** What stands before a ticket's digits, how many they are, and what number they are. */
    private record Numbered(String prefix, int digits, long number) {
        static Optional<Numbered> of(String ticket) {
            int at = ticket.length();
            while (at > 0 && isDigit(ticket.charAt(at - 1))) {
                at--;
            }
            int digits = ticket.length() - at;
            return digits == 0 || digits > DIGITS
                    ? Optional.empty()
                    : Optional.of(new Numbered(ticket.substring(0, at), digits, Long.parseLong(ticket.substring(at))));
        }

        private static boolean isDigit(char one) {
            return one >= '0' && one <= '9';
        }

        /** With zeros before it where those of its row have them. */
        String next(long more) {
            String text = Long.toString(number + more);
            return prefix + "0".repeat(Math.max(0, digits - text.length())) + text;
        }
    }

    private record Listed(Numbered number, String ticket, String pile) {
        long after(Listed before) {
            return number.number - before.number.number;
        }

        /** Of two with the same number, such as 7 and 07, whatever the order in which they are listed. */
        static Listed first(Listed one, Listed other) {
            return one.ticket.compareTo(other.ticket) <= 0 ? one : other;
        }
    }

    private TicketGaps() {}

    static void find(WrittenSeason season, List<Finding> findings) {
        Map<String, NavigableMap<Long, Listed>> byPrefix = new TreeMap<>();
        for (WrittenPile pile : season.piles()) {
            for (WrittenPile.Ticket one : pile.deliveries()) {
                Numbered.of(one.ticket())
                        .ifPresent(ticket -> byPrefix.computeIfAbsent(ticket.prefix, prefix -> new TreeMap<>())
                                .merge(ticket.number, new Listed(ticket, one.ticket(), pile.id()), Listed::first));
            }
        }
        for (NavigableMap<Long, Listed> listed : byPrefix.values()) {
            List<Listed> row = new ArrayList<>();
            for (Listed one : listed.values()) {
                if (!row.isEmpty() && one.after(row.get(row.size() - 1)) > MOST + 1) {
                    find(row, findings);
                    row.clear();
                }
                row.add(one);
            }
            find(row, findings);
        }
    }

    private static void find(List<Listed> row, List<Finding> findings) {
        int steps = row.size() - 1;
        long ones = IntStream.rangeClosed(1, steps)
                .filter(i -> row.get(i).after(row.get(i - 1)) == 1)
                .count();
        if (row.size() < FEW || ones < MOSTLY * steps) {
            return;
        }
        for (int i = 1; i <= steps; i++) {
            Listed before = row.get(i - 1);
            Listed after = row.get(i);
            for (long more = 1; more < after.after(before); more++) {
                findings.add(Finding.of(
                        FindingCode.TICKET_MISSING,
                        Map.of(
                                "ticket", name(before.number.next(more)),
                                "before", name(before.ticket),
                                "after", name(after.ticket),
                                "pile", name(before.pile))));
            }
        }
    }
}
