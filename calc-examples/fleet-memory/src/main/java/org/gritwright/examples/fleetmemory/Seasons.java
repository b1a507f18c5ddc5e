package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.time.Period;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.history.due.DueRule;

/** The seasons of a fleet, and to which of them a day belongs: what prepares for a season is of that season, as the rules have it. */
final class Seasons {
    private final NavigableMap<LocalDate, String> byFirstDay = new TreeMap<>();

    Seasons(History history) {
        Period preparation = DueRule.usual().stream()
                .filter(rule -> rule instanceof DueRule.EachSeason)
                .map(rule -> ((DueRule.EachSeason) rule).preparation())
                .findFirst()
                .orElse(Period.ZERO);
        for (Event event : history.standingOfFleet()) {
            if (event.what() instanceof What.SeasonStarted season) {
                byFirstDay.put(event.at().day().minus(preparation), season.name());
            }
        }
    }

    /** For example "from 2025-11-01". */
    String of(LocalDate day) {
        Map.Entry<LocalDate, String> season = byFirstDay.floorEntry(day);
        return season == null ? "earlier" : season.getValue();
    }
}
