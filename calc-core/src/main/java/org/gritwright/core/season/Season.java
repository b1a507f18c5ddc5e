package org.gritwright.core.season;

import java.io.Serializable;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * Piles and trucks of a season, as people wrote them down. {@link #balance} makes them add up and says what doesn't fit. Immutable,
 * thread-safe, a value.
 *
 * @param piles the piles, each with an id of its own
 * @param trucks the trucks, each with an id of its own, drawing from these piles
 */
public record Season(List<Pile> piles, List<TruckSeason> trucks) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Copies the lists and checks what goes together.
     *
     * @throws org.gritwright.units.InvalidInputException if an id or a ticket is there twice, a truck draws from a pile that isn't there or in a
     *     period that it doesn't have, or one scale or density has two uncertainties; the message names them
     */
    public Season {
        Require.given(Season.class, piles, trucks);
        piles = List.copyOf(piles);
        trucks = List.copyOf(trucks);
        Map<String, Pile> byId = new HashMap<>();
        Set<String> tickets = new HashSet<>();
        for (Pile pile : piles) {
            Require.that(byId.putIfAbsent(pile.id(), pile) == null, "ids of piles", "different", pile.id() + " twice");
            for (Delivery delivery : pile.deliveries()) {
                Require.that(
                        tickets.add(delivery.ticket()),
                        "tickets of pile " + pile.id(),
                        "different from all others of the season",
                        delivery.ticket() + " twice");
            }
        }
        Set<String> ids = new HashSet<>();
        for (TruckSeason truck : trucks) {
            Require.that(ids.add(truck.id()), "ids of trucks", "different", truck.id() + " twice");
            for (Draw draw : truck.draws()) {
                requirePile(truck, draw, byId);
            }
        }
        requireOneUncertainty(piles, trucks);
    }

    private static void requirePile(TruckSeason truck, Draw draw, Map<String, Pile> byId) {
        Pile pile = byId.get(draw.pile());
        if (pile == null) {
            throw new InvalidInputException(
                    "pile that truck " + truck.id() + " draws from", "one of the season", draw.pile());
        }
        Require.that(
                draw.period() <= pile.periods(),
                "period of a draw of truck " + truck.id() + " from pile " + pile.id(),
                "at most " + pile.periods() + ", the number of the pile's surveys after the opening",
                draw.period());
    }

    private static void requireOneUncertainty(List<Pile> piles, List<TruckSeason> trucks) {
        Map<String, CommonError> byName = new HashMap<>();
        Stream<StatedMass> masses = Stream.concat(
                piles.stream().flatMap(Season::masses),
                trucks.stream().flatMap(truck -> truck.loads().stream().map(WeighedLoads::weighed)));
        Stream.concat(
                        masses.flatMap(mass -> mass.common().stream()),
                        trucks.stream().flatMap(truck -> truck.common().stream()))
                .forEach(error -> {
                    CommonError first = byName.computeIfAbsent(error.name(), name -> error);
                    Require.that(
                            first.ratio() == error.ratio(),
                            "standard uncertainty of " + error.name(),
                            "the same wherever it is named: " + Amounts.format(first.standardUncertainty()),
                            error.standardUncertainty());
                });
    }

    private static Stream<StatedMass> masses(Pile pile) {
        return Stream.of(
                        Stream.of(pile.opening()),
                        pile.surveys().stream(),
                        pile.deliveries().stream().map(Delivery::mass),
                        pile.otherUses().stream().map(OtherUse::mass))
                .flatMap(masses -> masses);
    }

    /**
     * Makes the season add up, and looks for what doesn't fit.
     *
     * @return the balance, at a risk of 5 % for a false alarm in the whole season
     * @throws org.gritwright.units.InvalidInputException if exact numbers contradict each other, or sizes are too far apart to be computed
     *     with
     */
    public SeasonBalance balance() {
        return balance(0.05);
    }

    /**
     * Makes the season add up, and looks for what doesn't fit.
     *
     * @param risk of a false alarm in the whole season, greater than 0 and below 0.95
     * @return the balance
     * @throws org.gritwright.units.InvalidInputException if the risk isn't accepted, exact numbers contradict each other, or sizes
     *     are too far apart to be computed with
     */
    public SeasonBalance balance(double risk) {
        return SeasonBalance.of(this, risk);
    }
}
