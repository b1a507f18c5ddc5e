package org.gritwright.core.fleet.assessment;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.gritwright.core.boom.NozzleCatches;
import org.gritwright.core.boom.NozzleFlow;
import org.gritwright.core.boom.NozzleReview;
import org.gritwright.core.boom.PressureSetUp;
import org.gritwright.core.boom.SectionShare;
import org.gritwright.core.fleet.day.BoomControl;
import org.gritwright.core.fleet.day.BoomEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.NozzleEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/** Turns what was written down of a boom into what it shows, each refusal with its place. */
final class BoomReader {
    private static final String AT = "/boom";

    private final DriveReader.Attempts attempts;
    private final TruckDay truck;
    private final Yard yard;

    /** How each section was written the first time, by what is left of it without case and spaces. */
    private final Map<String, String> sections = new HashMap<>();

    private final Set<List<String>> nozzles = new HashSet<>();

    private Optional<String> liquid = Optional.empty();

    BoomReader(DriveReader.Attempts attempts, TruckDay truck, Yard yard) {
        this.attempts = attempts;
        this.truck = truck;
        this.yard = yard;
    }

    Optional<BoomAssessment> read(BoomEntry entry) {
        attempts.attempt(AT, () -> {
            Require.that(truck.spreader().isForLiquids(), "boom", "left out beside a conveyor", "a boom");
            return entry;
        });
        List<NozzleFlow> flows = new ArrayList<>();
        for (int i = 0; i < entry.nozzles().size(); i++) {
            flow(AT + "/nozzles/" + i, entry.nozzles().get(i)).ifPresent(flows::add);
        }
        Optional<NozzleCatches> catches =
                entry.nozzles().isEmpty() || flows.size() < entry.nozzles().size()
                        ? Optional.empty()
                        : attempts.attempt(AT + "/nozzles", () -> new NozzleCatches(flows));
        Optional<NozzleReview> review = catches.flatMap(all -> attempts.attempt(
                AT + "/nozzles", () -> all.byAverage(NozzleCatches.OF_AVERAGE, NozzleCatches.GUARDED)));
        List<SectionShare> shares = catches.map(NozzleCatches::sectionShares).orElse(List.of());
        List<String> liquids = Stream.concat(
                        truck.inForce().stream().map(InForceEntry::material),
                        Stream.concat(
                                truck.calibrationCatches().stream()
                                        .map(one -> one.entry().material()),
                                truck.verificationCatches().stream()
                                        .map(one -> one.entry().material())))
                .distinct()
                .toList();
        return Optional.of(new BoomAssessment(entry.control(), review, shares, liquids, setUp(entry, liquids)));
    }

    /** What is caught twice or spelled in two ways would be computed with, and nobody would notice. */
    private Optional<NozzleFlow> flow(String at, NozzleEntry entry) {
        String section = bare(entry.section());
        String spelled = sections.computeIfAbsent(section, one -> entry.section());
        Optional<NozzleEntry> named = attempts.attempt(at + "/section", () -> {
            Require.that(
                    spelled.equals(entry.section()),
                    "section of nozzle " + entry.nozzle(),
                    "spelled alike for all its nozzles, \"" + spelled + "\"",
                    () -> "\"" + entry.section() + "\"");
            return entry;
        });
        Optional<NozzleEntry> first = attempts.attempt(at + "/nozzle", () -> {
            Require.that(
                    nozzles.add(List.of(section, bare(entry.nozzle()))),
                    "nozzle of section " + entry.section(),
                    "listed once",
                    () -> "\"" + entry.nozzle() + "\"");
            return entry;
        });
        Optional<NozzleEntry> alike = attempts.attempt(at + "/liquid", () -> {
            entry.liquid().ifPresent(this::requireSameLiquid);
            return entry;
        });
        return named.isPresent() && first.isPresent() && alike.isPresent()
                ? attempts.attempt(at, entry::flow)
                : Optional.empty();
    }

    private void requireSameLiquid(String ran) {
        String caught = liquid.orElse(ran);
        liquid = Optional.of(caught);
        Require.that(
                bare(caught).equals(bare(ran)),
                "liquid that a nozzle was caught with",
                "the same for all nozzles, \"" + caught + "\"",
                () -> "\"" + ran + "\"");
    }

    /** As a tired hand may write it otherwise: "Left  lane" for "left lane", "01" for "1". */
    private static String bare(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ").replaceAll("^0+(?=\\d)", "");
    }

    private Optional<PressureSetUp> setUp(BoomEntry entry, List<String> liquids) {
        boolean byPressure = entry.control() == BoomControl.PRESSURE;
        Optional<Quantity<BulkDensity>> stated = entry.setUpWith();
        boolean asItShould = attempts.attempt(AT + "/setUpWith", () -> {
                    if (byPressure != stated.isPresent()) {
                        throw new InvalidInputException(
                                byPressure ? RefusalCode.MISSING : RefusalCode.NOT_ACCEPTED,
                                "setUpWith, the density of the liquid that the pressure was set with,",
                                byPressure
                                        ? "given for a rate that is kept by pressure"
                                        : "left out for a rate that is kept by flow",
                                stated.map(Amounts::format).orElse("nothing"));
                    }
                    return entry;
                })
                .isPresent();
        // Which of several liquids runs is nobody's guess.
        Optional<Material> runs = liquids.size() == 1
                ? Optional.ofNullable(yard.materials().get(liquids.get(0))).filter(Material::isLiquid)
                : Optional.empty();
        return asItShould && runs.isPresent()
                ? stated.flatMap(density -> attempts.attempt(
                        AT + "/setUpWith",
                        () -> new PressureSetUp(density, runs.get().looseBulkDensity())))
                : Optional.empty();
    }
}
