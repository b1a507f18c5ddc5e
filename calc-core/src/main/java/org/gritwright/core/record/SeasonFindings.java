package org.gritwright.core.record;

import static org.gritwright.core.finding.Argument.date;
import static org.gritwright.core.finding.Argument.name;
import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.units.Amounts;

/** Numbers of a season's account that can be read and hardly be. All limits are ours (common practice, no source). */
final class SeasonFindings {
    private static final double OVERDRAWN = 1.5;

    /** Controllers show whole tons, scales pounds. */
    private static final double BEYOND = 1.01;

    private SeasonFindings() {}

    static List<Finding> of(WrittenSeason season) {
        List<Finding> findings = new ArrayList<>();
        tickets(season, findings);
        TicketGaps.find(season, findings);
        season.piles().forEach(pile -> overdrawn(season, pile, findings));
        draws(season, findings);
        season.trucks().forEach(truck -> truck(truck, findings));
        return List.copyOf(findings);
    }

    private static void tickets(WrittenSeason season, List<Finding> findings) {
        UsualMass usual = UsualMass.of(season.piles().stream()
                .flatMap(pile -> pile.deliveries().stream())
                .map(one -> one.mass().mass()));
        for (WrittenPile pile : season.piles()) {
            for (WrittenPile.Ticket one : pile.deliveries()) {
                Quantity<Mass> mass = one.mass().mass();
                usual.inOtherUnit(mass)
                        .ifPresent(instead -> findings.add(Finding.of(
                                FindingCode.TICKET_IN_OTHER_UNIT,
                                Map.of(
                                        "ticket", name(one.ticket()),
                                        "pile", name(pile.id()),
                                        "mass", number(mass),
                                        "usual", number(usual.in(instead.getUnit())),
                                        "instead", number(instead)))));
            }
        }
    }

    /** What left beyond all that ever lay or came: no closing makes that right. */
    private static void overdrawn(WrittenSeason season, WrittenPile pile, List<Finding> findings) {
        Unit<Mass> unit = pile.opening().mass().getUnit();
        double there = sum(
                Stream.concat(
                        Stream.of(pile.opening().mass()),
                        pile.deliveries().stream().map(one -> one.mass().mass())),
                unit);
        double drawn = sum(
                season.trucks().stream()
                        .flatMap(truck -> truck.draws().stream())
                        .filter(one -> one.pile().equals(pile.id()))
                        .flatMap(one -> one.indicated().stream()),
                unit);
        if (drawn > OVERDRAWN * there && Double.isFinite(drawn)) {
            findings.add(Finding.of(
                    FindingCode.PILE_OVERDRAWN,
                    Map.of(
                            "pile", name(pile.id()),
                            "drawn", number(Amounts.of(drawn, unit)),
                            "there", number(Amounts.of(there, unit)))));
        }
    }

    /** In the order of their sizes, so that the last digit doesn't depend on that of the account. */
    private static double sum(Stream<Quantity<Mass>> masses, Unit<Mass> unit) {
        return masses.mapToDouble(mass -> Amounts.si(Mass.class, mass)).sorted().sum() / UsualMass.kilograms(unit);
    }

    private static void draws(WrittenSeason season, List<Finding> findings) {
        UsualMass usual = UsualMass.ofUnlike(season.trucks().stream()
                .flatMap(truck -> truck.draws().stream())
                .flatMap(one -> one.indicated().stream()));
        for (WrittenTruckSeason truck : season.trucks()) {
            for (WrittenTruckSeason.Drawn one : truck.draws()) {
                one.indicated()
                        .ifPresent(mass -> usual.inOtherUnit(mass)
                                .ifPresent(instead -> findings.add(Finding.of(
                                        FindingCode.DRAW_IN_OTHER_UNIT,
                                        Map.of(
                                                "truck", name(truck.id()),
                                                "pile", name(one.pile()),
                                                "from", date(one.from()),
                                                "mass", number(mass),
                                                "usual", number(usual.in(instead.getUnit())),
                                                "instead", number(instead))))));
            }
        }
    }

    private static void truck(WrittenTruckSeason truck, List<Finding> findings) {
        if (truck.draws().isEmpty()) {
            findings.add(Finding.of(FindingCode.TRUCK_WITHOUT_DRAWS, Map.of("truck", name(truck.id()))));
        }
        for (WrittenTruckSeason.Loads one : truck.weighedLoads()) {
            Quantity<Mass> weighed = one.weighed().mass();
            UsualMass.only(weighed)
                    .inOtherUnit(one.indicated())
                    .ifPresent(instead -> findings.add(Finding.of(
                            FindingCode.LOADS_IN_OTHER_UNIT,
                            Map.of(
                                    "truck", name(truck.id()),
                                    "from", date(one.from()),
                                    "weighed", number(weighed),
                                    "indicated", number(one.indicated()),
                                    "instead", number(instead)))));
        }
        List<Quantity<Mass>> masses = truck.draws().stream()
                .sorted(Comparator.comparing(WrittenTruckSeason.Drawn::from)
                        .thenComparing(WrittenTruckSeason.Drawn::pile))
                .flatMap(one -> one.indicated().stream())
                .toList();
        boolean isWhole = masses.size() == truck.draws().size();
        if (!masses.isEmpty() && isWhole && !truck.weighedLoads().isEmpty()) {
            Unit<Mass> unit = masses.get(0).getUnit();
            double drawn = sum(masses.stream(), unit);
            double loads = sum(truck.weighedLoads().stream().map(WrittenTruckSeason.Loads::indicated), unit);
            if (loads > BEYOND * drawn && Double.isFinite(loads)) {
                findings.add(Finding.of(
                        FindingCode.LOADS_BEYOND_DRAWS,
                        Map.of(
                                "truck", name(truck.id()),
                                "loads", number(Amounts.of(loads, unit)),
                                "drawn", number(Amounts.of(drawn, unit)))));
            }
        }
    }
}
