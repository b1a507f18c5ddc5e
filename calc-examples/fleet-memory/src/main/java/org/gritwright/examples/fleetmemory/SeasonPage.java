package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.gritwright.core.season.Season;
import org.gritwright.core.season.SeasonBalance;

/**
 * A season that was made to add up, as a page.
 *
 * @param title what it is called, for example "season 2025/26"
 * @param texts what is said above its pictures, a paragraph each
 */
record SeasonPage(String title, List<String> texts, Season season, SeasonBalance balance) {
    public String file() {
        return PageNames.of("season", title);
    }

    String html(Templates templates) throws IOException {
        return templates.filled("season.peb", Map.of());
    }
}
