package org.gritwright.core.season;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;

/** Why errors can't be told apart, in words. */
final class Reasons {
    /** Proportions that differ by less are the same; common practice, no source. */
    private static final double SAME = 0.05;

    private static final double EXPANDED = 2;

    private Reasons() {}

    static List<String> of(Season season, List<Suspicion> errors) {
        Set<String> trucks = new LinkedHashSet<>();
        Set<String> piles = new LinkedHashSet<>();
        for (Suspicion error : errors) {
            if (error instanceof Suspicion.TruckReports one) {
                trucks.add(one.truck());
            } else if (error instanceof Suspicion.PileOff one) {
                piles.add(one.pile());
            } else if (error instanceof Suspicion.SurveyOff one) {
                piles.add(one.pile());
            } else if (error instanceof Suspicion.LoadsOff one) {
                trucks.add(one.truck());
            }
        }
        List<TruckSeason> named = season.trucks().stream()
                .filter(truck -> trucks.contains(truck.id()))
                .toList();
        List<String> reasons = new ArrayList<>();
        add(
                reasons,
                named.stream().filter(truck -> truck.loads().isEmpty()).toList(),
                ids -> "No load of " + ids + " was weighed.");
        add(
                reasons,
                named.stream().filter(Reasons::isOnOneScale).toList(),
                ids -> "The loads of " + ids + " were weighed on one scale only.");
        Map<String, List<TruckSeason>> byOnlyPile = new TreeMap<>();
        named.stream()
                .filter(truck -> byPile(truck).size() == 1)
                .forEach(truck -> byOnlyPile
                        .computeIfAbsent(byPile(truck).keySet().iterator().next(), pile -> new ArrayList<>())
                        .add(truck));
        byOnlyPile.forEach(
                (pile, only) -> add(reasons, only, ids -> capital(ids) + " drew only from pile " + pile + "."));
        for (List<TruckSeason> alike : inSameProportion(named)) {
            add(reasons, alike, ids -> capital(ids) + " drew from the same piles in the same proportion.");
        }
        season.piles().stream().filter(pile -> piles.contains(pile.id())).forEach(pile -> reasons.add(surveys(pile)));
        return reasons;
    }

    /** A sentence of trucks, if there are any. */
    private static void add(List<String> reasons, List<TruckSeason> trucks, UnaryOperator<String> sentence) {
        if (!trucks.isEmpty()) {
            String ids = trucks.stream().map(TruckSeason::id).collect(Collectors.joining(", "));
            reasons.add(sentence.apply((trucks.size() == 1 ? "truck " : "trucks ") + ids));
        }
    }

    private static String capital(String trucks) {
        return "T" + trucks.substring(1);
    }

    private static boolean isOnOneScale(TruckSeason truck) {
        return truck.loads().stream().map(Reasons::scale).distinct().count() == 1;
    }

    private static String scale(WeighedLoads loads) {
        return loads.weighed().common().map(CommonError::name).orElse("");
    }

    private static Map<String, Double> byPile(TruckSeason truck) {
        Map<String, Double> drawn = new TreeMap<>();
        for (Draw draw : truck.draws()) {
            double kilograms = Amounts.si(Mass.class, draw.indicated());
            if (kilograms > 0) {
                drawn.merge(draw.pile(), kilograms, Double::sum);
            }
        }
        return drawn;
    }

    /** Groups of two trucks or more, each of the proportion of its first. */
    private static List<List<TruckSeason>> inSameProportion(List<TruckSeason> trucks) {
        List<List<TruckSeason>> groups = new ArrayList<>();
        for (TruckSeason truck : trucks) {
            Map<String, Double> drawn = byPile(truck);
            if (drawn.size() > 1) {
                groups.stream()
                        .filter(group -> isSame(byPile(group.get(0)), drawn))
                        .findFirst()
                        .orElseGet(() -> {
                            groups.add(new ArrayList<>());
                            return groups.get(groups.size() - 1);
                        })
                        .add(truck);
            }
        }
        return groups.stream().filter(group -> group.size() > 1).toList();
    }

    private static boolean isSame(Map<String, Double> one, Map<String, Double> other) {
        if (!one.keySet().equals(other.keySet())) {
            return false;
        }
        double allOfOne =
                one.values().stream().mapToDouble(kilograms -> kilograms).sum();
        double allOfOther =
                other.values().stream().mapToDouble(kilograms -> kilograms).sum();
        return one.keySet().stream()
                .allMatch(pile ->
                        Math.abs(one.getOrDefault(pile, 0.0) / allOfOne - other.getOrDefault(pile, 0.0) / allOfOther)
                                < SAME);
    }

    private static String surveys(Pile pile) {
        double kilograms = Math.hypot(
                pile.opening().wholeUncertainty(),
                pile.surveys().get(pile.periods() - 1).wholeUncertainty());
        Unit<Mass> unit = pile.opening().mass().getUnit();
        return "Opening and closing of pile " + pile.id() + " are known to "
                + Rounded.text(Amounts.ofSi(EXPANDED * kilograms, unit), 2)
                + " (95 %): a smaller error can't be seen there.";
    }
}
