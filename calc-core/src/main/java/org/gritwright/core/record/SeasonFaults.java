package org.gritwright.core.record;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.document.ProblemCode;
import org.gritwright.core.json.Pointer;
import org.gritwright.core.json.Problems;
import org.gritwright.core.season.CommonError;
import org.gritwright.core.season.StatedMass;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;

/** What the parts of a season's account say about each other and can't both be so: all of it, each at its place. */
final class SeasonFaults {
    /** What is wrong at a place; what would be known there if it is an unknown name. */
    private record Fault(
            ProblemCode code, Pointer at, String field, String accepted, String value, Optional<Set<String>> known) {
        InvalidInputException exception() {
            return new InvalidInputException(field, accepted, value);
        }

        void tell(Problems problems) {
            known.ifPresentOrElse(
                    names -> problems.unknownName(at, names, value),
                    () -> problems.add(code, at, field + ": " + accepted, value));
        }
    }

    /** The surveys of a pile; none where it has none. */
    private record Surveys(String pile, NavigableSet<LocalDate> days) {
        static Surveys of(WrittenPile pile) {
            NavigableSet<LocalDate> days = new TreeSet<>();
            pile.surveys().forEach(one -> days.add(one.on()));
            return new Surveys(pile.id(), days);
        }

        boolean isAfterLast(LocalDate day) {
            return !days.isEmpty() && day.isAfter(days.last());
        }
    }

    private final List<Fault> found = new ArrayList<>();
    private final String season;
    private final LocalDate from;
    private final LocalDate to;
    private final Map<String, Surveys> surveys = new TreeMap<>();
    private final Map<String, String> materials = new HashMap<>();
    private final Map<String, CommonError> shared = new HashMap<>();
    private final Set<String> tickets = new HashSet<>();

    private SeasonFaults(String season, LocalDate from, LocalDate to) {
        this.season = season;
        this.from = from;
        this.to = to;
    }

    static SeasonFaults of(
            String season, LocalDate from, LocalDate to, List<WrittenPile> piles, List<WrittenTruckSeason> trucks) {
        SeasonFaults faults = new SeasonFaults(season, from, to);
        Pointer root = Pointer.ROOT;
        if (to.isBefore(from)) {
            faults.add(
                    root.at("to"), "last day of season " + season, from + ", its first day, or later", to.toString());
            return faults;
        }
        for (int i = 0; i < piles.size(); i++) {
            faults.pile(piles.get(i), root.at("piles").at(i));
        }
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < trucks.size(); i++) {
            Pointer at = root.at("trucks").at(i);
            String id = trucks.get(i).id();
            if (!ids.add(id)) {
                faults.repeated(at.at("id"), "ids of trucks", "each once", id + " again");
            }
            faults.truck(trucks.get(i), at);
        }
        return faults;
    }

    boolean isNone() {
        return found.isEmpty();
    }

    void tell(Problems problems) {
        found.forEach(fault -> fault.tell(problems));
    }

    void throwFirst() {
        if (!found.isEmpty()) {
            throw found.get(0).exception();
        }
    }

    private void add(Pointer at, String field, String accepted, String value) {
        found.add(new Fault(ProblemCode.NOT_ACCEPTED, at, field, accepted, value, Optional.empty()));
    }

    private void repeated(Pointer at, String field, String accepted, String value) {
        found.add(new Fault(ProblemCode.REPEATED_ITEM, at, field, accepted, value, Optional.empty()));
    }

    private void pile(WrittenPile pile, Pointer at) {
        if (surveys.putIfAbsent(pile.id(), Surveys.of(pile)) != null) {
            repeated(at.at("id"), "ids of piles", "each once", pile.id() + " again");
        }
        materials.putIfAbsent(pile.id(), pile.material());
        shared(pile.opening(), at.at("opening"));
        surveys(pile, at.at("surveys"));
        Surveys own = Surveys.of(pile);
        for (int i = 0; i < pile.deliveries().size(); i++) {
            WrittenPile.Ticket one = pile.deliveries().get(i);
            Pointer where = at.at("deliveries").at(i);
            if (!tickets.add(one.ticket())) {
                repeated(
                        where.at("ticket"),
                        "tickets of the season",
                        "each once",
                        one.ticket() + " again, at pile " + pile.id());
            }
            day(where.at("on"), "day of ticket " + one.ticket(), one.on(), own);
            shared(one.mass(), where);
        }
        for (int i = 0; i < pile.otherUses().size(); i++) {
            WrittenPile.Use one = pile.otherUses().get(i);
            Pointer where = at.at("otherUses").at(i);
            day(where.at("on"), "day of " + one.what() + " at pile " + pile.id(), one.on(), own);
            shared(one.mass(), where);
        }
    }

    private void surveys(WrittenPile pile, Pointer at) {
        String field = "day of a survey of pile " + pile.id();
        if (pile.surveys().isEmpty()) {
            add(at, "surveys of pile " + pile.id(), "at least the closing", "none");
        }
        Optional<LocalDate> last = Optional.empty();
        for (int i = 0; i < pile.surveys().size(); i++) {
            WrittenPile.Survey one = pile.surveys().get(i);
            Pointer on = at.at(i).at("on");
            if (isInSeason(on, field, one.on())
                    && last.filter(day -> !day.isBefore(one.on())).isPresent()) {
                add(
                        on,
                        field,
                        "after " + last.get() + ", that of the one before it",
                        one.on().toString());
            }
            last = Optional.of(one.on());
            shared(one.mass(), at.at(i));
        }
    }

    private boolean isInSeason(Pointer at, String field, LocalDate day) {
        boolean isIn = !day.isBefore(from) && !day.isAfter(to);
        if (!isIn) {
            add(at, field, "in season " + season + ", from " + from + " to " + to, day.toString());
        }
        return isIn;
    }

    private boolean day(Pointer at, String field, LocalDate day, Surveys pile) {
        if (!isInSeason(at, field, day)) {
            return false;
        }
        if (pile.isAfterLast(day)) {
            add(
                    at,
                    field,
                    pile.days.last() + ", that of the last survey of pile " + pile.pile
                            + ", or earlier; what is later needs a survey behind it",
                    day.toString());
            return false;
        }
        return true;
    }

    private void truck(WrittenTruckSeason truck, Pointer at) {
        truck.calibrationError()
                .flatMap(WrittenTruckSeason.CalibrationError::sharedError)
                .ifPresent(error -> shared(error, at.at("calibrationError").at("sharedError")));
        Map<String, NavigableMap<LocalDate, WrittenTruckSeason.Drawn>> byPile = new HashMap<>();
        for (int i = 0; i < truck.draws().size(); i++) {
            WrittenTruckSeason.Drawn one = truck.draws().get(i);
            draw(
                    "truck " + truck.id() + " from pile " + one.pile(),
                    one,
                    byPile.computeIfAbsent(one.pile(), pile -> new TreeMap<>()),
                    at.at("draws").at(i));
        }
        undivided(truck, at.at("draws"));
        Set<WrittenTruckSeason.Loads> loads = new HashSet<>();
        for (int i = 0; i < truck.weighedLoads().size(); i++) {
            WrittenTruckSeason.Loads one = truck.weighedLoads().get(i);
            Pointer where = at.at("weighedLoads").at(i);
            String field = "weighed loads of truck " + truck.id();
            if (isInSeason(where.at("from"), "first day of " + field, one.from())) {
                isInSeason(where.at("to"), "last day of " + field, one.to());
            }
            if (!loads.add(one)) {
                repeated(where, field, "each once", Amounts.format(one.weighed().mass()) + " again");
            }
            shared(one.weighed(), where.at("weighed"));
        }
    }

    /** Draws of one truck from one pile lie in days of their own, so that the one before in order is the one to look at. */
    private void draw(
            String who,
            WrittenTruckSeason.Drawn draw,
            NavigableMap<LocalDate, WrittenTruckSeason.Drawn> others,
            Pointer at) {
        Surveys pile = surveys.get(draw.pile());
        if (pile == null) {
            found.add(new Fault(
                    ProblemCode.UNKNOWN_WORD,
                    at.at("pile"),
                    "pile of a draw of " + who,
                    "one of " + surveys.keySet(),
                    draw.pile(),
                    Optional.of(surveys.keySet())));
            return;
        }
        boolean isInDays = isInSeason(at.at("from"), "first day of a draw of " + who, draw.from())
                && day(at.at("to"), "last day of a draw of " + who, draw.to(), pile);
        LocalDate survey = pile.days.ceiling(draw.from());
        if (isInDays && survey != null && survey.isBefore(draw.to())) {
            add(
                    at,
                    "days of a draw of " + who,
                    "between two surveys: split it at the survey of " + survey + " into one to " + survey
                            + " and one from " + survey.plusDays(1),
                    days(draw));
        }
        Map.Entry<LocalDate, WrittenTruckSeason.Drawn> before = others.floorEntry(draw.to());
        if (before != null && !before.getValue().to().isBefore(draw.from())) {
            repeated(
                    at,
                    "days of the draws of " + who,
                    "each in one draw only, and " + days(before.getValue()) + " is another one",
                    days(draw));
        } else {
            others.put(draw.from(), draw);
        }
    }

    /** Telemetry knows of material, and not of which pile it was taken: its sum would count for both. */
    private void undivided(WrittenTruckSeason truck, Pointer at) {
        List<WrittenTruckSeason.Drawn> draws = truck.draws();
        Map<String, Map<String, WrittenTruckSeason.Drawn>> last = new HashMap<>();
        int[] order = IntStream.range(0, draws.size())
                .boxed()
                .sorted(Comparator.comparing(i -> draws.get(i).from()))
                .mapToInt(Integer::intValue)
                .toArray();
        for (int i : order) {
            WrittenTruckSeason.Drawn draw = draws.get(i);
            Map<String, WrittenTruckSeason.Drawn> ofMaterial =
                    last.computeIfAbsent(materials.getOrDefault(draw.pile(), ""), material -> new TreeMap<>());
            ofMaterial.values().stream()
                    .filter(other ->
                            !other.pile().equals(draw.pile()) && !other.to().isBefore(draw.from()))
                    .filter(other ->
                            draw.indicated().isEmpty() || other.indicated().isEmpty())
                    .findFirst()
                    .ifPresent(other -> add(
                            at.at(i),
                            "days of a draw of truck " + truck.id() + " from pile " + draw.pile(),
                            "others than those of its draw from pile " + other.pile() + ", " + days(other)
                                    + ", or both with their indicated mass: sums of telemetry don't tell of which pile it was",
                            days(draw)));
            ofMaterial.put(draw.pile(), draw);
        }
    }

    private static String days(WrittenTruckSeason.Drawn draw) {
        return draw.from() + " to " + draw.to();
    }

    private void shared(StatedMass mass, Pointer at) {
        mass.common().ifPresent(error -> shared(error, at.at("sharedError")));
    }

    private void shared(CommonError error, Pointer at) {
        CommonError first = shared.computeIfAbsent(error.name(), name -> error);
        if (ratio(first) != ratio(error)) {
            add(
                    at.at("standardUncertainty"),
                    "standard uncertainty of " + error.name(),
                    "the same wherever it is named: " + Amounts.format(first.standardUncertainty()),
                    Amounts.format(error.standardUncertainty()));
        }
    }

    private static double ratio(CommonError error) {
        return Amounts.si(Dimensionless.class, error.standardUncertainty());
    }
}
