package org.gritwright.core.season;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Mass;
import org.gritwright.core.balance.Balance;
import org.gritwright.core.balance.Candidate;
import org.gritwright.core.balance.Network;
import org.gritwright.core.balance.Suspect;
import org.gritwright.core.balance.Variable;
import org.gritwright.units.Amounts;

/**
 * A season as a network in kilograms and factors. What a truck drew is its indicated mass times its factor, so that a draw is a term of a pile's
 * balance and no quantity of its own.
 */
final class SeasonNetwork {
    private final Map<Candidate, Accusation> candidates = new LinkedHashMap<>();
    private final List<Variable> variables = new ArrayList<>();
    private final List<Balance> balances = new ArrayList<>();
    private final Network network;

    /** What a suspect means. */
    interface Accusation {
        Suspicion of(Suspect suspect);
    }

    SeasonNetwork(Season season) {
        Map<String, CommonError> common = new LinkedHashMap<>();
        for (TruckSeason truck : season.trucks()) {
            truck(truck, common);
        }
        Map<String, List<Map<String, Double>>> drawn = drawn(season);
        for (Pile pile : season.piles()) {
            pile(pile, drawn.getOrDefault(pile.id(), List.of()), common);
        }
        common.values()
                .forEach(error -> candidates.put(
                        Candidate.sharedError(error.name()), suspect -> Suspicions.common(error, suspect)));
        this.network = Network.of(variables, balances);
    }

    static String truck(String id) {
        return "truck " + id;
    }

    static String ticket(Delivery delivery) {
        return "ticket " + delivery.ticket();
    }

    static String use(Pile pile, int number) {
        return "use " + number + " of pile " + pile.id();
    }

    static String unexplained(Pile pile, int period) {
        return "unexplained " + period + " of pile " + pile.id();
    }

    /** The survey before a period; that before the first is the opening. */
    static String surveyBefore(Pile pile, int period) {
        return period == 1 ? "opening of pile " + pile.id() : "survey " + (period - 1) + " of pile " + pile.id();
    }

    static String period(Pile pile, int period) {
        return "period " + period + " of pile " + pile.id();
    }

    static String loads(TruckSeason truck, int number) {
        return "loads " + number + " of truck " + truck.id();
    }

    private void truck(TruckSeason truck, Map<String, CommonError> common) {
        String name = truck(truck.id());
        if (truck.statedFactor().isPresent()) {
            variables.add(verified(truck, common));
            candidates.put(Candidate.measurement(name), suspect -> Suspicions.truck(truck, suspect));
        } else {
            variables.add(Variable.unmeasured(name));
        }
        for (int i = 0; i < truck.loads().size(); i++) {
            WeighedLoads loads = truck.loads().get(i);
            String weighed = loads(truck, i + 1);
            variables.add(variable(weighed, loads.weighed(), common));
            balances.add(Balance.of(weighed, Map.of(weighed, 1.0, name, -Amounts.si(Mass.class, loads.indicated()))));
            candidates.put(
                    Candidate.measurement(weighed), suspect -> Suspicions.loads(truck, loads.weighed(), suspect));
        }
    }

    /** A scale that shows too much makes what was caught, and with it the factor, too large by as much. */
    private static Variable verified(TruckSeason truck, Map<String, CommonError> common) {
        double factor = truck.statedFactor().orElseThrow();
        Variable variable = Variable.measured(truck(truck.id()), factor, truck.statedFactorUncertainty());
        truck.common().ifPresent(error -> common.putIfAbsent(error.name(), error));
        return truck.common()
                .map(error -> variable.sharing(error.name(), error.ratio() * factor))
                .orElse(variable);
    }

    private static Variable variable(String name, StatedMass mass, Map<String, CommonError> common) {
        if (mass.uncertainty() == 0) {
            return Variable.exact(name, mass.kilograms());
        }
        Variable variable = Variable.measured(name, mass.kilograms(), mass.uncertainty());
        mass.common().ifPresent(error -> common.putIfAbsent(error.name(), error));
        return mass.common()
                .map(error -> variable.sharing(error.name(), error.ratio() * mass.kilograms()))
                .orElse(variable);
    }

    /** By pile and period, minus what each truck indicated. */
    private static Map<String, List<Map<String, Double>>> drawn(Season season) {
        Map<String, List<Map<String, Double>>> drawn = new LinkedHashMap<>();
        for (Pile pile : season.piles()) {
            List<Map<String, Double>> periods = new ArrayList<>();
            for (int period = 1; period <= pile.periods(); period++) {
                periods.add(new LinkedHashMap<>());
            }
            drawn.put(pile.id(), periods);
        }
        for (TruckSeason truck : season.trucks()) {
            for (Draw draw : truck.draws()) {
                drawn.getOrDefault(draw.pile(), List.of())
                        .get(draw.period() - 1)
                        .merge(truck(truck.id()), -Amounts.si(Mass.class, draw.indicated()), Double::sum);
            }
        }
        return drawn;
    }

    private void pile(Pile pile, List<Map<String, Double>> drawn, Map<String, CommonError> common) {
        int last = pile.periods();
        for (int period = 1; period <= last + 1; period++) {
            String survey = surveyBefore(pile, period);
            variables.add(variable(survey, pile.before(period), common));
            int number = period - 1;
            if (number > 0 && number < last && pile.before(period).uncertainty() > 0) {
                candidates.put(Candidate.measurement(survey), suspect -> Suspicions.survey(pile, number, suspect));
            }
        }
        for (int period = 1; period <= last; period++) {
            Map<String, Double> terms = new LinkedHashMap<>(drawn.get(period - 1));
            terms.put(surveyBefore(pile, period), 1.0);
            terms.put(surveyBefore(pile, period + 1), -1.0);
            moved(pile, period, terms, common);
            balances.add(Balance.of(period(pile, period), terms));
            int number = period;
            candidates.put(Candidate.balance(period(pile, period)), suspect -> Suspicions.pile(pile, number, suspect));
        }
    }

    private void moved(Pile pile, int period, Map<String, Double> terms, Map<String, CommonError> common) {
        for (Delivery delivery : pile.deliveries()) {
            if (delivery.period() == period) {
                variables.add(variable(ticket(delivery), delivery.mass(), common));
                terms.put(ticket(delivery), 1.0);
            }
        }
        for (int i = 0; i < pile.otherUses().size(); i++) {
            OtherUse use = pile.otherUses().get(i);
            if (use.period() == period) {
                variables.add(variable(use(pile, i + 1), use.mass(), common));
                terms.put(use(pile, i + 1), -1.0);
            }
        }
        pile.unexplained().ifPresent(spread -> {
            // Independent from period to period, so that the season's is as stated.
            double kilograms = Amounts.si(Mass.class, spread) / Math.sqrt(pile.periods());
            variables.add(Variable.measured(unexplained(pile, period), 0, kilograms));
            terms.put(unexplained(pile, period), -1.0);
        });
    }

    Network network() {
        return network;
    }

    /** Where a season's errors are looked for, and what each means. */
    Map<Candidate, Accusation> candidates() {
        return candidates;
    }
}
