package org.gritwright.core.record;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.season.Season;
import org.gritwright.units.check.Require;

/**
 * A season's account as people write it down: what lay on the piles, what came, what each truck says that it took. By days, which
 * {@link #toSeason} turns into the periods between surveys. A survey is made at the end of its day: what is dated on that day happened before it.
 * Immutable, thread-safe, a value.
 *
 * @param season the season's name, for example "2026/27"
 * @param from its first day; openings are of the beginning of that day
 * @param to its last day, the first one or later
 * @param piles the piles, each with an id of its own
 * @param trucks the trucks, each with an id of its own, drawing from these piles
 */
public record WrittenSeason(
        String season, LocalDate from, LocalDate to, List<WrittenPile> piles, List<WrittenTruckSeason> trucks) {

    /**
     * Copies the lists and checks what its parts say about each other.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank; the last day lies before the first; a pile, truck or ticket is
     *     there twice; a pile has no survey, or surveys out of order or two on a day; a day lies outside of the season or behind the
     *     pile's last survey; a truck draws from a pile that isn't there, beyond a survey, twice in the same days, from two piles of one
     *     material in the same days without saying how much, or has the same weighed loads twice; or one scale or density has two uncertainties. The message names them
     */
    public WrittenSeason {
        Require.given(WrittenSeason.class, season, from, to, piles, trucks);
        Require.text("name of a season", season);
        piles = List.copyOf(piles);
        trucks = List.copyOf(trucks);
        SeasonFaults.of(season, from, to, piles, trucks).throwFirst();
    }

    /**
     * The same account, where trucks that state no calibration error have those that are known from elsewhere, for example from the
     * fleet's history. What the account states stays: whoever has both compares them.
     *
     * @param byTruck calibration errors by the trucks' ids; trucks that aren't in the account are passed over
     * @return the changed copy
     * @throws org.gritwright.units.InvalidInputException if one shares the error of a scale that has another uncertainty in the account
     */
    public WrittenSeason withCalibrationErrors(Map<String, WrittenTruckSeason.CalibrationError> byTruck) {
        Objects.requireNonNull(byTruck, "byTruck");
        return new WrittenSeason(
                season,
                from,
                to,
                piles,
                trucks.stream()
                        .map(truck -> truck.or(Optional.ofNullable(byTruck.get(truck.id()))))
                        .toList());
    }

    /**
     * The same account, where draws by telemetry that state no mass have the one that its kept sums say, for example a fleet's history
     * ({@link org.gritwright.core.history.LaidSum}). What the account states stays.
     *
     * @param sums from a truck's id and one of its draws to the indicated mass; none where the sums don't tell it, and then it goes on missing
     * @return the changed copy
     * @throws org.gritwright.units.InvalidInputException if a mass is negative
     */
    public WrittenSeason withSums(BiFunction<String, WrittenTruckSeason.Drawn, Optional<Quantity<Mass>>> sums) {
        Objects.requireNonNull(sums, "sums");
        return new WrittenSeason(
                season,
                from,
                to,
                piles,
                trucks.stream().map(truck -> truck.withSums(sums)).toList());
    }

    /**
     * What a person should look at before the season is balanced: numbers that would be like the others in another unit, a ticket that is missing in
     * a row of numbers, a pile from which more is said to be taken than ever was there, a truck without a draw, more loads weighed than drawn.
     * The account can be balanced all the same.
     *
     * @return the findings, in the order of the account
     */
    public List<Finding> findings() {
        return SeasonFindings.of(this);
    }

    /**
     * The season as it is balanced, by periods between the surveys of each pile: what is dated on the day of a survey is before it.
     *
     * @return the season
     * @throws org.gritwright.units.InvalidInputException if the indicated mass of a draw is missing
     */
    public Season toSeason() {
        Map<String, WrittenPile> byId = piles.stream().collect(Collectors.toMap(WrittenPile::id, Function.identity()));
        return new Season(
                piles.stream().map(pile -> pile.pile(from)).toList(),
                trucks.stream()
                        .map(truck -> truck.truck((pile, day) ->
                                Objects.requireNonNull(byId.get(pile), pile).period(day)))
                        .toList());
    }
}
