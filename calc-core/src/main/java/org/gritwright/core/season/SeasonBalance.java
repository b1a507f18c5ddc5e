package org.gritwright.core.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.balance.Adjustment;
import org.gritwright.core.balance.Candidate;
import org.gritwright.core.balance.GrossErrorSearch;
import org.gritwright.core.balance.Likeness;
import org.gritwright.core.balance.Power;
import org.gritwright.core.balance.Suspect;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * A season that was made to add up: factors and accounts, what doesn't fit, what can't be told apart, and what would have been found.
 * Immutable, thread-safe.
 *
 * <p>Nothing is removed silently. {@link #asStated} takes all numbers as they were stated; errors beyond chance are looked for one by one
 * ({@link #found}), and {@link #withFound} lets them in. The chance of a false alarm in the whole season is at most the stated risk: each
 * place that can be told apart from the others has its part of it (Šidák).
 */
public final class SeasonBalance {
    /** From that correlation on, two errors are told as hardly different; common practice, no source. */
    private static final double ALIKE = 0.7;
    /** More errors than that in one season are no single errors any more; common practice, no source. */
    private static final int MOST = 20;

    /** A scale or density of which not even an error so many times as stated would show is no candidate; common practice, no source. */
    private static final double SHOWN = 5;

    private final Season season;
    private final SeasonNetwork network;
    private final List<Candidate> places;
    private final GrossErrorSearch search;

    private SeasonBalance(Season season, SeasonNetwork network, List<Candidate> places, GrossErrorSearch search) {
        this.season = season;
        this.network = network;
        this.places = places;
        this.search = search;
    }

    static SeasonBalance of(Season season, double risk) {
        SeasonNetwork network = new SeasonNetwork(season);
        Adjustment adjustment = network.network().adjust();
        List<Candidate> places = network.candidates().keySet().stream()
                .filter(candidate -> wouldShow(adjustment, candidate))
                .toList();
        return new SeasonBalance(season, network, places, GrossErrorSearch.of(adjustment, places, risk, MOST, ALIKE));
    }

    /**
     * A density that cancels between opening and closing leaves a trace only as far as both were misread, and would then explain that very
     * misreading.
     */
    private static boolean wouldShow(Adjustment adjustment, Candidate candidate) {
        return candidate.kind() != Candidate.Kind.SHARED_ERROR
                || adjustment
                        .suspect(candidate)
                        .filter(suspect -> suspect.standardUncertainty() <= SHOWN)
                        .isPresent();
    }

    /**
     * The season with all numbers as they were stated.
     *
     * @return factors and accounts
     */
    public SeasonFigures asStated() {
        return Accounts.of(season, search.before());
    }

    /**
     * The season with the errors that were found.
     *
     * @return factors and accounts, to which what was wrong adds nothing any more; the same as stated if nothing was found
     */
    public SeasonFigures withFound() {
        return Accounts.of(season, search.after());
    }

    /**
     * Errors beyond chance, in the order in which they were found: each is looked for after those before it were let in.
     *
     * @return the errors, each with what it can't be told from; none if all is within chance
     */
    public List<FoundError> found() {
        List<FoundError> found = new ArrayList<>();
        Adjustment now = search.before();
        for (GrossErrorSearch.Step step : search.steps()) {
            found.add(new FoundError(
                    suspicion(step.suspect()), step.risk(), confusion(now, step.suspect(), step.same(), step.alike())));
            now = now.letting(step.suspect().candidate());
        }
        return List.copyOf(found);
    }

    private Suspicion suspicion(Suspect suspect) {
        return Objects.requireNonNull(network.candidates().get(suspect.candidate()))
                .of(suspect);
    }

    private Confusion confusion(Adjustment now, Suspect suspect, List<Candidate> same, List<Likeness> alike) {
        List<Suspicion> equal = same.stream()
                .flatMap(one -> now.suspect(one).stream())
                .map(this::suspicion)
                .toList();
        List<Confusion.Alike> near = alike.stream()
                .flatMap(one -> now.suspect(one.candidate()).stream()
                        .map(other -> new Confusion.Alike(suspicion(other), Math.abs(one.correlation()))))
                .toList();
        List<Suspicion> all = new ArrayList<>(List.of(suspicion(suspect)));
        all.addAll(equal);
        near.forEach(one -> all.add(one.other()));
        List<String> reasons = all.size() == 1 ? List.of() : Reasons.of(season, all);
        return new Confusion(equal, near, reasons);
    }

    /**
     * Every single error by which the season would add up better, the one that explains most in front, whether beyond chance or not.
     *
     * @return the suspicions
     */
    public List<Suspicion> suspicions() {
        return search.before().suspects(places).stream().map(this::suspicion).toList();
    }

    /**
     * What counts as found.
     *
     * @return the risk, the number of places that can be told apart, and the score beyond which an error is found
     */
    public Power power() {
        return search.power();
    }

    /**
     * The smallest over-report of a truck that would have been found with a probability of 95 %.
     *
     * @param truck the truck's id
     * @return how much more it would report than its verification says; absent where none would have been found: it wasn't verified, or nothing
     *     else tells of it
     * @throws InvalidInputException if there is no such truck
     */
    public Optional<Quantity<Dimensionless>> smallestOverReport(String truck) {
        double factor = require(truck).statedFactor().orElse(1.0);
        return suspect(truck)
                .map(suspect -> suspect.smallestFound(search.power()))
                .filter(size -> size < factor)
                .map(size -> Amounts.ofSi(factor / (factor - size) - 1, SpreadingUnits.PERCENT));
    }

    /**
     * With which probability an over-report of a truck would have been found.
     *
     * @param truck the truck's id
     * @param overReport how much more it would report than its verification says; below zero for less; above −100 %
     * @return the probability; 0 where an error would leave no trace
     * @throws InvalidInputException if there is no such truck, or the over-report isn't accepted
     */
    public double chanceOfFinding(String truck, Quantity<Dimensionless> overReport) {
        double ratio = Amounts.si(Dimensionless.class, overReport);
        Require.that(ratio > -1, "over-report", "above -100 %", overReport);
        double factor = require(truck).statedFactor().orElse(1.0);
        return suspect(truck)
                .map(suspect -> search.power().found(suspect.nonCentrality(factor - factor / (1 + ratio))))
                .orElse(0.0);
    }

    private Optional<Suspect> suspect(String truck) {
        return require(truck).calibrationError().isPresent()
                ? search.before().suspect(candidate(truck))
                : Optional.empty();
    }

    private static Candidate candidate(String truck) {
        return Candidate.measurement(SeasonNetwork.truck(truck));
    }

    private TruckSeason require(String truck) {
        Objects.requireNonNull(truck, "truck");
        return season.trucks().stream()
                .filter(one -> one.id().equals(truck))
                .findFirst()
                .orElseThrow(() -> new InvalidInputException("truck", "one of the season", truck));
    }

    /**
     * What an error of a truck couldn't be told from.
     *
     * @param truck the truck's id
     * @return other errors, and why; absent where an error of the truck would leave no trace
     * @throws InvalidInputException if there is no such truck
     */
    public Optional<Confusion> confusedWith(String truck) {
        return suspect(truck).map(this::confusion);
    }

    /**
     * What an error couldn't be told from.
     *
     * @param suspicion one of {@link #suspicions}
     * @return other errors, and why
     * @throws InvalidInputException if it isn't one of this season's
     */
    public Confusion confusedWith(Suspicion suspicion) {
        Objects.requireNonNull(suspicion, "suspicion");
        return search.before().suspects(places).stream()
                .filter(suspect -> suspicion(suspect).equals(suspicion))
                .findFirst()
                .map(this::confusion)
                .orElseThrow(() -> new InvalidInputException("suspicion", "one of the season's", suspicion.sentence()));
    }

    private Confusion confusion(Suspect suspect) {
        Adjustment now = search.before();
        List<Likeness> near = now.alike(suspect.candidate(), places, ALIKE);
        return confusion(
                now,
                suspect,
                near.stream().filter(Likeness::isSame).map(Likeness::candidate).toList(),
                near.stream().filter(one -> !one.isSame()).toList());
    }

    /**
     * The season in words.
     *
     * @return sentences: whether it adds up, what was found, what can't be told apart and why
     */
    public List<String> sentences() {
        return Report.of(this);
    }
}
