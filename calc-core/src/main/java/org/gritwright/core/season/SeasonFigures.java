package org.gritwright.core.season;

import java.io.Serializable;
import java.util.List;
import org.gritwright.core.balance.GlobalTest;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A season that adds up. Immutable, thread-safe, a value.
 *
 * @param test whether that took more than chance
 * @param trucks the trucks' factors, in the order of the season
 * @param piles the piles' accounts, in the order of the season
 */
public record SeasonFigures(GlobalTest test, List<TruckFactor> trucks, List<PileAccount> piles)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Copies the lists. */
    public SeasonFigures {
        Require.given(SeasonFigures.class, test, trucks, piles);
        trucks = List.copyOf(trucks);
        piles = List.copyOf(piles);
    }

    /**
     * A truck's factor.
     *
     * @param id the truck's id
     * @return the factor
     * @throws InvalidInputException if there is no such truck
     */
    public TruckFactor truck(String id) {
        return trucks.stream()
                .filter(truck -> truck.truck().equals(id))
                .findFirst()
                .orElseThrow(() -> new InvalidInputException("truck", "one of the season", id));
    }

    /**
     * A pile's account.
     *
     * @param id the pile's id
     * @return the account
     * @throws InvalidInputException if there is no such pile
     */
    public PileAccount pile(String id) {
        return piles.stream()
                .filter(pile -> pile.pile().equals(id))
                .findFirst()
                .orElseThrow(() -> new InvalidInputException("pile", "one of the season", id));
    }
}
