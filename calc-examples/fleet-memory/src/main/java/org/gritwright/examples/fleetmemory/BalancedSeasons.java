package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.history.History;
import org.gritwright.core.record.WrittenSeason;

/**
 * The seasons whose accounts can be made to add up.
 *
 * @param pages the latest first
 * @param withoutPage why others can't, line by line
 */
record BalancedSeasons(List<SeasonPage> pages, List<String> withoutPage) {
    static final BalancedSeasons NONE = new BalancedSeasons(List.of(), List.of());

    BalancedSeasons {
        pages = List.copyOf(pages);
        withoutPage = List.copyOf(withoutPage);
    }

    static BalancedSeasons of(History history, List<WrittenSeason> accounts) {
        return of(history, accounts, accounts);
    }

    /** @param all what some accounts leave out may stand in others */
    static BalancedSeasons of(History history, List<WrittenSeason> accounts, List<WrittenSeason> all) {
        List<SeasonPage> pages = new ArrayList<>();
        List<String> withoutPage = new ArrayList<>();
        for (WrittenSeason account : accounts) {
            try {
                pages.add(SeasonAccount.page(history, account, all));
            } catch (BadInputException e) {
                // What is due matters more than an account that somebody has yet to complete.
                withoutPage.addAll(e.lines());
            }
        }
        return new BalancedSeasons(pages, withoutPage);
    }
}
