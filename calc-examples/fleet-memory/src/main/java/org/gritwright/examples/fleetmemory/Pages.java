package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** All pages of a fleet, by file name. */
final class Pages {
    static final String FIRST = "index.html";

    private Pages() {}

    static Map<String, String> of(Overview fleet, List<SeasonPage> seasons) throws IOException {
        return of(fleet.with(new BalancedSeasons(seasons, List.of())));
    }

    static Map<String, String> of(Overview fleet) throws IOException {
        Templates templates = Templates.read();
        List<TruckOverview> trucks = fleet.trucks();
        Map<String, String> pages = new LinkedHashMap<>();
        put(pages, FIRST, FleetPage.html(fleet, trucks, templates));
        for (TruckOverview truck : trucks) {
            put(pages, PageNames.of("truck", truck.id()), TruckPage.html(truck, templates));
        }
        for (SeasonPage season : fleet.seasons().pages()) {
            put(pages, season.file(), season.html(templates));
        }
        return pages;
    }

    /** A page that took the place of another would leave a truck without one. */
    private static void put(Map<String, String> pages, String name, String html) {
        if (pages.put(name, html) != null) {
            throw new IllegalStateException("two pages have the name " + name);
        }
    }
}
