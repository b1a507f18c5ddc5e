package org.gritwright.core.season;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
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
        named.forEach(truck -> reasons.addAll(ofTruck(truck)));
        reasons.addAll(sameProportion(named));
        season.piles().stream().filter(pile -> piles.contains(pile.id())).forEach(pile -> reasons.add(surveys(pile)));
        return reasons;
    }

    private static List<String> ofTruck(TruckSeason truck) {
        List<String> reasons = new ArrayList<>();
        if (truck.loads().isEmpty()) {
            reasons.add("No load of truck " + truck.id() + " was weighed.");
        } else if (truck.loads().stream().map(loads -> scale(loads)).distinct().count() == 1) {
            reasons.add("The loads of truck " + truck.id() + " were weighed on one scale only.");
        }
        Map<String, Double> drawn = byPile(truck);
        if (drawn.size() == 1) {
            reasons.add("Truck " + truck.id() + " drew only from pile "
                    + drawn.keySet().iterator().next() + ".");
        }
        return reasons;
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

    private static List<String> sameProportion(List<TruckSeason> trucks) {
        List<String> reasons = new ArrayList<>();
        for (int i = 0; i < trucks.size(); i++) {
            for (int j = 0; j < i; j++) {
                Map<String, Double> one = byPile(trucks.get(j));
                Map<String, Double> other = byPile(trucks.get(i));
                if (!one.isEmpty() && one.keySet().equals(other.keySet()) && isSame(one, other)) {
                    reasons.add("Trucks " + trucks.get(j).id() + " and "
                            + trucks.get(i).id()
                            + (one.size() == 1
                                    ? " drew from the same pile."
                                    : " drew from the same piles in the same proportion."));
                }
            }
        }
        return reasons;
    }

    private static boolean isSame(Map<String, Double> one, Map<String, Double> other) {
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
                + " (95 %): what is less can't be seen there.";
    }
}
