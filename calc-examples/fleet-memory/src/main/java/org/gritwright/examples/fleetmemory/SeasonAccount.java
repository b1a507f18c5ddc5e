package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.history.History;
import org.gritwright.core.record.WrittenPile;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.record.WrittenTruckSeason;
import org.gritwright.core.season.Season;
import org.gritwright.core.season.SeasonBalance;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;

/** From a season's account and the kept records to its page. */
final class SeasonAccount {
    /** Differences of more standard uncertainties are no chance (common practice, no source). */
    private static final double APART = 3;

    private SeasonAccount() {}

    /** What telemetry counted and what its trucks' verifications say is taken from the history, unless the account says it. */
    static SeasonPage page(History history, WrittenSeason account, List<WrittenSeason> all) throws BadInputException {
        SeasonSums sums = sums(history, account, all);
        WrittenSeason written = sums.season();
        SeasonErrors known = SeasonErrors.of(history, materials(written), written);
        Map<String, WrittenTruckSeason.CalibrationError> byRecords = new HashMap<>();
        SharedScales scales = new SharedScales(written);
        known.errors()
                .forEach((truck, error) ->
                        byRecords.put(truck, scales.error(error, known.shared().getOrDefault(truck, List.of()))));
        List<String> texts = new ArrayList<>();
        texts.add(written.from() + " to " + written.to() + ": "
                + Words.count(written.trucks().size(), "truck") + ", "
                + Words.count(written.piles().size(), "pile")
                + ". How far off a truck is \"by its verification\" is the mean of what the kept records tell of the season, unless the"
                + " account says it.");
        for (WrittenTruckSeason truck : written.trucks()) {
            if (truck.calibrationError().isPresent()) {
                texts.add(stated(
                        truck.id(),
                        truck.calibrationError().get(),
                        Optional.ofNullable(known.errors().get(truck.id()))));
            } else {
                List<String> remarks = known.remarks().getOrDefault(truck.id(), List.of());
                boolean isKnown = known.errors().containsKey(truck.id());
                if (!isKnown || !remarks.isEmpty()) {
                    texts.add("Truck " + truck.id() + (isKnown ? ": " : " counts as not verified. ")
                            + String.join(" ", remarks));
                }
            }
        }
        known.shared().values().stream()
                .flatMap(shared -> scales.contradiction(shared).stream())
                .distinct()
                .forEach(texts::add);
        texts.addAll(sums.texts());
        texts.addAll(sharing(written, all));
        otherUnits(written).ifPresent(texts::add);
        written.findings().forEach(finding -> texts.add(finding.sentence()));
        try {
            Season season = written.withCalibrationErrors(byRecords).toSeason();
            SeasonBalance balance = season.balance();
            return new SeasonPage(
                    "Season " + written.season(),
                    written.from(),
                    written.to(),
                    texts,
                    Tickets.of(written, balance.suspicions()),
                    season,
                    balance);
        } catch (InvalidInputException e) {
            throw unfit(written, e);
        }
    }

    private static SeasonSums sums(History history, WrittenSeason account, List<WrittenSeason> all)
            throws BadInputException {
        try {
            return SeasonSums.of(history, account, all);
        } catch (InvalidInputException e) {
            throw unfit(account, e);
        }
    }

    private static BadInputException unfit(WrittenSeason account, InvalidInputException why) {
        return new BadInputException("season " + account.season() + " can't be computed: " + why.getMessage());
    }

    /** What an account and the records say of the same truck may be two things. */
    private static String stated(
            String truck, WrittenTruckSeason.CalibrationError stated, Optional<Measured<Dimensionless>> byRecords) {
        String said = "Truck " + truck + ": the account says its error, not the records";
        if (byRecords.isEmpty()) {
            return said + ", which tell nothing of it.";
        }
        double difference = Amounts.si(Dimensionless.class, stated.value())
                - Amounts.si(Dimensionless.class, byRecords.get().value());
        double uncertainty = Math.hypot(
                Math.hypot(
                        Amounts.si(Dimensionless.class, stated.standardUncertainty()),
                        stated.sharedError()
                                .map(error -> Amounts.si(Dimensionless.class, error.standardUncertainty()))
                                .orElse(0.0)),
                Amounts.si(
                        Dimensionless.class,
                        byRecords.get().standardUncertainty().orElseThrow()));
        return Math.abs(difference) > APART * uncertainty
                ? said + " (" + Words.error(byRecords.get()) + "), and they don't agree: one of both is wrong."
                : said + ".";
    }

    /** Other accounts of the same days and piles: what came is written down twice, perhaps. */
    static List<String> sharing(WrittenSeason one, List<WrittenSeason> all) {
        Set<String> piles = one.piles().stream().map(WrittenPile::id).collect(Collectors.toSet());
        return all.stream()
                .filter(other -> !other.season().equals(one.season()))
                .filter(other -> !other.from().isAfter(one.to()) && !one.from().isAfter(other.to()))
                .filter(other -> other.piles().stream().map(WrittenPile::id).anyMatch(piles::contains))
                .map(other ->
                        "The account of season " + other.season() + " has days and piles of this one: is it the same?")
                .toList();
    }

    /** A supplier's scale prints one unit; a ton typed as a metric one is lost among a hundred tickets. */
    static Optional<String> otherUnits(WrittenSeason written) {
        Map<String, List<WrittenPile.Ticket>> byUnit = written.piles().stream()
                .flatMap(pile -> pile.deliveries().stream())
                .collect(Collectors.groupingBy(
                        ticket -> UnitSymbol.of(ticket.mass().mass().getUnit()).symbol(),
                        TreeMap::new,
                        Collectors.toList()));
        return byUnit.size() < 2
                ? Optional.empty()
                : Optional.of("Tickets are in several units: "
                        + byUnit.entrySet().stream()
                                .map(one -> one.getValue().size() + " in " + one.getKey() + " (such as "
                                        + one.getValue().get(0).ticket() + ")")
                                .collect(Collectors.joining(", "))
                        + ". Look whether that is what stands on them.");
    }

    /** By truck, what it drew. */
    private static Map<String, Set<String>> materials(WrittenSeason written) {
        Map<String, String> ofPile = new HashMap<>();
        for (WrittenPile pile : written.piles()) {
            ofPile.put(pile.id(), pile.material());
        }
        Map<String, Set<String>> materials = new LinkedHashMap<>();
        for (WrittenTruckSeason truck : written.trucks()) {
            Set<String> drawn = materials.computeIfAbsent(truck.id(), id -> new TreeSet<>());
            truck.draws().forEach(draw -> drawn.add(ofPile.getOrDefault(draw.pile(), "")));
        }
        return materials;
    }
}
