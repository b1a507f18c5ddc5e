package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.Held;
import org.gritwright.core.history.History;
import org.gritwright.core.history.TruckState;
import org.gritwright.core.history.What;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.season.Confusion;
import org.gritwright.core.season.Draw;
import org.gritwright.core.season.FoundError;
import org.gritwright.core.season.Pile;
import org.gritwright.core.season.Suspicion;
import org.gritwright.core.season.TruckSeason;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * Which trucks the account of a season found off, and nothing answered it yet.
 *
 * <p>Accounts count that stand, that add up to numbers, and whose last day has come: a replaced one is none of the seasons, and one that lacks a draw
 * can't be computed. Of what an account found, a truck is in doubt that it names, alone or among those that it can hardly tell apart. Where a pile or
 * a survey explains the very same, or more, no truck is: of a pile's missing salt each truck that drew from it is a suspect, and only the pile is a
 * finding.
 *
 * <p>A finding says that a truck was off although its verification said otherwise, so that another catch that says the same as that one answers
 * nothing, and neither does a repair: nobody knows whether it mended just this. It is answered
 *
 * <ul>
 *   <li>by a catch after the season that shows it, so that the usual rules take over from there: one that is nearer to what the account found than
 *       to what the verification said;
 *   <li>by the account of a later season that has the truck, doesn't find it, and would have found as much with a chance of 95 %;
 *   <li>by another account in the place of this one.
 * </ul>
 */
final class SeasonDoubts {
    /** With that chance a later account would have found it; what a season's page asks for too (common practice, no source). */
    private static final double SURE = 0.95;

    /** What reports more than any factor could explain counts as so much too much. */
    private static final double FAR = 1;

    private final History history;
    private final List<Account> latestFirst;
    private final LocalDate on;

    /** What an account found is looked for once, and asked for of each truck. */
    private record Account(SeasonPage page, List<FoundError> found) {}

    SeasonDoubts(History history, List<SeasonPage> seasons, LocalDate on) {
        this.history = history;
        this.on = on;
        latestFirst = seasons.stream()
                .filter(season -> isOver(season.to(), on))
                .sorted(Comparator.comparing(SeasonPage::to).reversed())
                .map(season -> new Account(season, season.balance().found()))
                .toList();
    }

    /**
     * That a truck was found off.
     *
     * @param words what the account says, as sentences
     * @param toDo what to do, without a full stop
     */
    record Doubt(String season, List<String> words, String toDo) {}

    /** The accounts that say something of a truck; only these have to add up before anyone asks for it alone. */
    static List<WrittenSeason> of(String truck, List<WrittenSeason> accounts, LocalDate on) {
        return accounts.stream()
                .filter(account -> isOver(account.to(), on)
                        && account.trucks().stream().anyMatch(one -> one.id().equals(truck)))
                .toList();
    }

    private static boolean isOver(LocalDate last, LocalDate on) {
        return !last.isAfter(on);
    }

    /** The latest that isn't answered. */
    Optional<Doubt> of(String truck) {
        return latestFirst.stream()
                .flatMap(account -> account.found.stream()
                        .flatMap(found -> accused(found, truck).stream()
                                .filter(what -> !isAnswered(account.page, what))
                                .map(what -> doubt(account.page, found, what))))
                .findFirst();
    }

    private static Optional<Suspicion.TruckReports> accused(FoundError found, String truck) {
        return trucks(found).filter(one -> one.truck().equals(truck)).findFirst();
    }

    /** The trucks that are found, or can hardly be told from what is. */
    private static Stream<Suspicion.TruckReports> trucks(FoundError found) {
        boolean isOfPile = Stream.concat(Stream.of(found.what()), found.confusion().same().stream())
                .anyMatch(one -> one instanceof Suspicion.PileOff || one instanceof Suspicion.SurveyOff);
        return isOfPile
                ? Stream.empty()
                : all(found).filter(Suspicion.TruckReports.class::isInstance).map(Suspicion.TruckReports.class::cast);
    }

    private static Stream<Suspicion> all(FoundError found) {
        Confusion confusion = found.confusion();
        return Stream.of(
                        Stream.of(found.what()),
                        confusion.same().stream(),
                        confusion.alike().stream().map(Confusion.Alike::other))
                .flatMap(some -> some);
    }

    private boolean isAnswered(SeasonPage season, Suspicion.TruckReports what) {
        double found = found(what);
        double said = ratio(what.byVerification());
        boolean isSeen = since(season, what.truck())
                .flatMap(event -> errors(season, event).stream())
                .anyMatch(error -> Math.abs(error - found) < Math.abs(error - said));
        return isSeen || latestFirst.stream().anyMatch(later -> isGone(season, later, what));
    }

    private static boolean isGone(SeasonPage season, Account account, Suspicion.TruckReports what) {
        SeasonPage later = account.page;
        Quantity<Dimensionless> more =
                Amounts.ofSi((1 + found(what)) / (1 + ratio(what.byVerification())) - 1, SpreadingUnits.PERCENT);
        return !later.from().isBefore(season.to())
                && later.season().trucks().stream().anyMatch(one -> one.id().equals(what.truck()))
                && account.found.stream()
                        .allMatch(one -> accused(one, what.truck()).isEmpty())
                && later.balance().chanceOfFinding(what.truck(), more) >= SURE;
    }

    private static double found(Suspicion.TruckReports what) {
        return what.byTheRest().map(SeasonDoubts::ratio).orElse(FAR);
    }

    private static double ratio(Measured<Dimensionless> error) {
        return Amounts.si(Dimensionless.class, error.value());
    }

    /** Catches of the truck after the season, of what it drew. */
    private Stream<Event> since(SeasonPage season, String truck) {
        Set<String> materials = materials(season, truck);
        return history.standing(truck).stream()
                .filter(event -> event.at().day().isAfter(season.to())
                        && !event.at().day().isAfter(on))
                .filter(event -> event.what() instanceof What.Verified || event.what() instanceof What.Calibrated)
                .filter(event -> event.what().point().stream()
                        .anyMatch(point -> materials.contains(point.material().name())));
    }

    private static Set<String> materials(SeasonPage season, String truck) {
        Set<String> piles = season.season().trucks().stream()
                .filter(one -> one.id().equals(truck))
                .map(TruckSeason::draws)
                .flatMap(List::stream)
                .map(Draw::pile)
                .collect(Collectors.toSet());
        return season.season().piles().stream()
                .filter(pile -> piles.contains(pile.id()))
                .map(Pile::material)
                .collect(Collectors.toSet());
    }

    /** By a verification, that of the value in force; by a calibration, that of the values that the display held when the season ended. */
    private List<Double> errors(SeasonPage season, Event event) {
        if (event.what() instanceof What.Calibrated calibrated) {
            TruckState then =
                    history.asOf(event.truck().orElseThrow(), FleetMemoryCommand.end(season.to(), history.yard()));
            double left = Amounts.si(
                    DischargePerRevolution.class, calibrated.discharge().value());
            return then.values().stream()
                    .map(Held::value)
                    .filter(value -> value.point().key().equals(calibrated.at().key()))
                    .map(CalibrationInForce::kilogramsPerRevolution)
                    .map(value -> value / left - 1)
                    .toList();
        }
        return verified(event).map(SeasonDoubts::ratio).stream().toList();
    }

    private static Optional<Measured<Dimensionless>> verified(Event event) {
        return event.what() instanceof What.Verified verified ? Optional.of(verified.error()) : Optional.empty();
    }

    private Doubt doubt(SeasonPage season, FoundError found, Suspicion.TruckReports what) {
        StringBuilder words = new StringBuilder(season.title() + ": " + what.sentence());
        Set<String> others =
                trucks(found).map(Suspicion.TruckReports::truck).collect(Collectors.toCollection(LinkedHashSet::new));
        others.remove(what.truck());
        if (!others.isEmpty()) {
            words.append(" Or it is ")
                    .append(others.size() == 1 ? "truck " : "one of trucks ")
                    .append(String.join(", ", others))
                    .append(" instead: the season's numbers can hardly tell them apart.");
        }
        all(found)
                .filter(one -> !(one instanceof Suspicion.TruckReports))
                .forEach(one -> words.append(" Or, hard to tell from that: ").append(one.sentence()));
        Optional<Event> last = since(season, what.truck())
                .filter(event -> verified(event).isPresent())
                .reduce((first, second) -> second);
        String caught = last.map(
                        event -> "The verification of " + event.at().day() + ", error "
                                + Words.error(verified(event).orElseThrow())
                                + ", doesn't show it: a catch doesn't show all that goes wrong on the road, such as salt that bridges.")
                .orElse("Nobody has verified the truck since.");
        String loads =
                "weigh some of its loads, on another scale if there is one, and compare them with what its controller"
                        + " says of them";
        return new Doubt(
                season.title(),
                List.of(words.toString(), caught),
                last.isPresent()
                        ? "one more verification catch first; if that doesn't show it either, " + loads
                        : "a verification catch first, before anyone changes its value; if that doesn't show it, "
                                + loads);
    }
}
