package org.gritwright.core.season;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.balance.Adjustment;
import org.gritwright.core.balance.Candidate;
import org.gritwright.core.balance.Estimate;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Factors and accounts from an adjusted network. */
final class Accounts {
    private final Adjustment adjustment;
    private final Set<Candidate> let;

    private Accounts(Adjustment adjustment) {
        this.adjustment = adjustment;
        this.let = new HashSet<>(adjustment.let());
    }

    static SeasonFigures of(Season season, Adjustment adjustment) {
        Accounts accounts = new Accounts(adjustment);
        Map<String, Map<String, Double>> drawn = new LinkedHashMap<>();
        for (TruckSeason truck : season.trucks()) {
            for (Draw draw : truck.draws()) {
                drawn.computeIfAbsent(draw.pile(), pile -> new LinkedHashMap<>())
                        .merge(truck.id(), Amounts.si(Mass.class, draw.indicated()), Double::sum);
            }
        }
        return new SeasonFigures(
                adjustment.test(),
                season.trucks().stream().map(accounts::factor).toList(),
                season.piles().stream()
                        .map(pile -> accounts.account(pile, drawn.getOrDefault(pile.id(), Map.of())))
                        .toList());
    }

    private TruckFactor factor(TruckSeason truck) {
        String name = SeasonNetwork.truck(truck.id());
        OptionalDouble factor = adjustment.value(name);
        if (factor.isEmpty()) {
            return new TruckFactor(truck.id(), Optional.empty(), 0, 0, 0);
        }
        Measured<Dimensionless> measured = Measured.of(
                Amounts.of(factor.getAsDouble(), SpreadingUnits.ONE),
                Amounts.of(adjustment.uncertainty(name).orElseThrow(), SpreadingUnits.ONE),
                Double.POSITIVE_INFINITY);
        double verification =
                truck.statedFactor().isPresent() ? adjustment.influence(name, Candidate.measurement(name)) : 0;
        double loads = 0;
        for (int i = 0; i < truck.loads().size(); i++) {
            // What is weighed more is as a balance that lacks it.
            loads -= Amounts.si(Mass.class, truck.loads().get(i).indicated())
                    * adjustment.influence(name, Candidate.balance(SeasonNetwork.loads(truck, i + 1)));
        }
        return new TruckFactor(truck.id(), Optional.of(measured), verification, loads, 1 - verification - loads);
    }

    private PileAccount account(Pile pile, Map<String, Double> drawn) {
        Unit<Mass> unit = pile.opening().mass().getUnit();
        List<Flow> flows = new ArrayList<>();
        flows.add(flow(Flow.Kind.OPENING, "", SeasonNetwork.surveyBefore(pile, 1), 1, unit));
        for (Delivery delivery : pile.deliveries()) {
            flows.add(flow(Flow.Kind.DELIVERY, delivery.ticket(), SeasonNetwork.ticket(delivery), 1, unit));
        }
        for (int period = 1; period <= pile.periods(); period++) {
            Candidate candidate = Candidate.balance(SeasonNetwork.period(pile, period));
            if (let.contains(candidate)) {
                Estimate missing = adjustment.leak(candidate.name());
                flows.add(new Flow(
                        Flow.Kind.FOUND,
                        pile.period(period).words(),
                        Words.mass(new Estimate(-missing.value(), missing.standardUncertainty()), unit)));
            }
        }
        List<String> together = new ArrayList<>();
        drawn.forEach((truck, kilograms) -> {
            String name = SeasonNetwork.truck(truck);
            if (adjustment.value(name).isPresent()) {
                flows.add(flow(Flow.Kind.TRUCK, truck, name, kilograms, unit));
            } else {
                together.add(truck);
            }
        });
        for (int i = 0; i < pile.otherUses().size(); i++) {
            flows.add(
                    flow(Flow.Kind.OTHER_USE, pile.otherUses().get(i).what(), SeasonNetwork.use(pile, i + 1), 1, unit));
        }
        if (pile.unexplained().isPresent()) {
            flows.add(new Flow(Flow.Kind.UNEXPLAINED, "", Words.mass(unexplained(pile), unit)));
        }
        flows.add(flow(Flow.Kind.CLOSING, "", SeasonNetwork.surveyBefore(pile, pile.periods() + 1), 1, unit));
        if (!together.isEmpty()) {
            flows.add(flows.size() - 1, rest(pile, drawn, String.join(", ", together), unit));
        }
        return new PileAccount(pile.id(), flows);
    }

    private Flow flow(Flow.Kind kind, String name, String quantity, double factor, Unit<Mass> unit) {
        double value = adjustment.value(quantity).orElseThrow() * factor;
        double u = adjustment.uncertainty(quantity).orElseThrow() * factor;
        return new Flow(kind, name, Words.mass(new Estimate(value, u), unit));
    }

    private Estimate unexplained(Pile pile) {
        if (pile.periods() == 1) {
            String name = SeasonNetwork.unexplained(pile, 1);
            return new Estimate(
                    adjustment.value(name).orElseThrow(),
                    adjustment.uncertainty(name).orElseThrow());
        }
        Map<String, Double> terms = new LinkedHashMap<>();
        for (int period = 1; period <= pile.periods(); period++) {
            terms.put(SeasonNetwork.unexplained(pile, period), 1.0);
        }
        return adjustment.combination(terms);
    }

    /** What trucks took that nothing tells apart: what all else leaves. */
    private Flow rest(Pile pile, Map<String, Double> drawn, String trucks, Unit<Mass> unit) {
        Map<String, Double> terms = new LinkedHashMap<>();
        terms.put(SeasonNetwork.surveyBefore(pile, 1), 1.0);
        terms.put(SeasonNetwork.surveyBefore(pile, pile.periods() + 1), -1.0);
        pile.deliveries().forEach(delivery -> terms.put(SeasonNetwork.ticket(delivery), 1.0));
        for (int i = 0; i < pile.otherUses().size(); i++) {
            terms.put(SeasonNetwork.use(pile, i + 1), -1.0);
        }
        for (int period = 1; period <= pile.periods() && pile.unexplained().isPresent(); period++) {
            terms.put(SeasonNetwork.unexplained(pile, period), -1.0);
        }
        drawn.forEach((truck, kilograms) -> {
            if (adjustment.value(SeasonNetwork.truck(truck)).isPresent()) {
                terms.put(SeasonNetwork.truck(truck), -kilograms);
            }
        });
        return new Flow(Flow.Kind.TRUCK, trucks, Words.mass(adjustment.combination(terms), unit));
    }
}
