package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.gritwright.core.history.History;
import org.gritwright.core.record.WrittenPile;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.record.WrittenTruckSeason;
import org.gritwright.core.season.Season;
import org.gritwright.units.InvalidInputException;

/** From a season's account and the kept records to its page. */
final class SeasonAccount {
    private SeasonAccount() {}

    /** What its trucks' verifications say is taken from the history, unless the account says it. */
    static SeasonPage page(History history, WrittenSeason written) throws BadInputException {
        SeasonErrors known = SeasonErrors.of(history, materials(written), written);
        Map<String, WrittenTruckSeason.CalibrationError> byRecords = new HashMap<>();
        known.errors().forEach((truck, error) -> byRecords.put(truck, WrittenTruckSeason.CalibrationError.of(error)));
        List<String> texts = new ArrayList<>();
        texts.add(written.from() + " to " + written.to() + ": "
                + Words.count(written.trucks().size(), "truck") + ", "
                + Words.count(written.piles().size(), "pile")
                + ". How far off a truck is \"by its verification\" is the mean of what the kept records tell of the season, unless the"
                + " account says it.");
        for (WrittenTruckSeason truck : written.trucks()) {
            if (truck.calibrationError().isPresent()) {
                texts.add("Truck " + truck.id() + ": the account says its error, not the records.");
            } else {
                List<String> remarks = known.remarks().getOrDefault(truck.id(), List.of());
                boolean isKnown = known.errors().containsKey(truck.id());
                if (!isKnown || !remarks.isEmpty()) {
                    texts.add("Truck " + truck.id() + (isKnown ? ": " : " counts as not verified. ")
                            + String.join(" ", remarks));
                }
            }
        }
        written.findings().forEach(finding -> texts.add(finding.sentence()));
        try {
            Season season = written.withCalibrationErrors(byRecords).toSeason();
            return new SeasonPage("Season " + written.season(), texts, season, season.balance());
        } catch (InvalidInputException e) {
            throw new BadInputException("season " + written.season() + " can't be computed: " + e.getMessage());
        }
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
