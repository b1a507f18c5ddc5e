package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.LaidSum;
import org.gritwright.core.history.What;
import org.gritwright.core.record.WrittenPile;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.record.WrittenTruckSeason;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;

/**
 * The draws of a season's account and what the kept sums of telemetry say of them.
 *
 * @param season the account, with what they say where it states nothing
 * @param texts what a person should know of them
 */
record SeasonSums(WrittenSeason season, List<String> texts) {
    /** Telemetry's own number may be rounded (common practice, no source). */
    private static final double ROUNDED = 0.01;

    /** A controller's counter sees what telemetry misses, and is read on another day (common practice, no source). */
    private static final double MISSED = 0.05;

    /** A truck that is silent for so much longer than others isn't only at rest (common practice, no source). */
    private static final long SILENT_DAYS = 21;

    private static final int DIGITS = 4;

    /** A draw, and what is known of it. */
    private record Known(String truck, String material, WrittenTruckSeason.Drawn draw, LaidSum laid) {
        /** Sums tell material and not pile: what both drew in a day is in the sums of both. */
        boolean isSummedWith(Known other) {
            return material.equals(other.material)
                    && !draw.from().isAfter(other.draw.to())
                    && !other.draw.from().isAfter(draw.to());
        }
    }

    static SeasonSums of(History history, WrittenSeason written) throws BadInputException {
        Map<String, String> materials = new HashMap<>();
        for (WrittenPile pile : written.piles()) {
            materials.put(pile.id(), pile.material());
        }
        List<Known> known = new ArrayList<>();
        Map<LocalDate, LocalDate> last = new HashMap<>();
        for (WrittenTruckSeason truck : written.trucks()) {
            for (WrittenTruckSeason.Drawn draw : truck.draws()) {
                String material = materials.getOrDefault(draw.pile(), "");
                LaidSum laid = LaidSum.of(history, truck.id(), material, draw.from(), draw.to());
                known.add(new Known(truck.id(), material, draw, laid));
                laid.last().ifPresent(day -> last.merge(draw.to(), day, (a, b) -> a.isAfter(b) ? a : b));
            }
        }
        List<String> texts = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        Map<String, Map<WrittenTruckSeason.Drawn, Quantity<Mass>>> byTruck = new HashMap<>();
        Map<String, List<Known>> ofTruck = known.stream().collect(Collectors.groupingBy(Known::truck));
        for (Known one : known) {
            Optional<Quantity<Mass>> indicated = one.laid.indicated();
            if (one.draw.indicated().isPresent()) {
                List<Known> together = ofTruck.getOrDefault(one.truck, List.of()).stream()
                        .filter(one::isSummedWith)
                        .toList();
                indicated.flatMap(mass -> stated(one, together, mass)).ifPresent(texts::add);
            } else if (indicated.isPresent()) {
                byTruck.computeIfAbsent(one.truck, id -> new HashMap<>()).put(one.draw, indicated.get());
                one.laid.remarks().forEach(remark -> texts.add(what(one) + ": " + remark));
                silent(one, last).ifPresent(texts::add);
            } else {
                missing.add(what(one) + ": " + String.join(" ", one.laid.remarks()));
            }
        }
        if (!missing.isEmpty()) {
            missing.add(
                    0,
                    "season " + written.season()
                            + " can't be computed: these draws state no mass, and the kept sums of telemetry don't tell it.");
            throw new BadInputException(missing);
        }
        if (!byTruck.isEmpty()) {
            texts.add(
                    0,
                    "What telemetry counted of " + Words.count(byTruck.size(), "truck")
                            + " is taken from its kept sums.");
            ended(known, last).ifPresent(texts::add);
        }
        texts.addAll(inNoDraw(history, written, ofTruck));
        return new SeasonSums(
                written.withSums((truck, draw) -> Optional.ofNullable(
                        byTruck.getOrDefault(truck, Map.of()).get(draw))),
                texts);
    }

    private static String what(Known one) {
        return "Truck " + one.truck + ", " + one.draw.from() + " to " + one.draw.to() + " from pile " + one.draw.pile();
    }

    /**
     * What the account states and what telemetry counted may be two things. Draws of one material in the same days are compared together, by
     * the first of them; in days that only partly are the same, nothing can be compared.
     */
    private static Optional<String> stated(Known one, List<Known> together, Quantity<Mass> counted) {
        boolean isOfSameDays = together.stream()
                .allMatch(other -> other.draw.from().equals(one.draw.from())
                        && other.draw.to().equals(one.draw.to()));
        if (!isOfSameDays || !together.get(0).equals(one)) {
            return Optional.empty();
        }
        Unit<Mass> unit = one.draw.indicated().orElseThrow().getUnit();
        Quantity<Mass> stated = Amounts.of(
                together.stream()
                        .mapToDouble(other -> Amounts.in(other.draw.indicated().orElseThrow(), unit))
                        .sum(),
                unit);
        boolean isItsOwn =
                together.stream().allMatch(other -> other.draw.source() == WrittenTruckSeason.Source.TELEMETRY);
        double most = isItsOwn ? ROUNDED : MISSED;
        double ofCounted = Amounts.si(Mass.class, counted);
        if (Math.abs(Amounts.si(Mass.class, stated) - ofCounted) <= most * ofCounted) {
            return Optional.empty();
        }
        String piles =
                together.stream().skip(1).map(other -> ", " + other.draw.pile()).collect(Collectors.joining());
        return Optional.of(what(one) + piles + ": the account states " + Amounts.format(stated)
                + (isItsOwn ? " by telemetry" : " by its controller") + ", and the kept sums of its telemetry are "
                + Rounded.text(Amounts.of(Amounts.in(counted, stated.getUnit()), stated.getUnit()), DIGITS)
                + ": one of both is wrong, or doesn't have all.");
    }

    /** A file that was written in January looks like a winter that ended then. */
    private static Optional<String> ended(List<Known> known, Map<LocalDate, LocalDate> last) {
        LocalDate end = known.stream()
                .filter(one -> one.draw.indicated().isEmpty())
                .map(one -> one.draw.to())
                .max(Comparator.naturalOrder())
                .orElseThrow();
        LocalDate kept = last.values().stream().max(Comparator.naturalOrder()).orElseThrow();
        return ChronoUnit.DAYS.between(kept, end) < SILENT_DAYS
                ? Optional.empty()
                : Optional.of("The last kept sum of all is of " + kept + ", and the last draw ends on " + end
                        + ". Was nothing laid since, or are later sums still to be imported?");
    }

    /** A material by another name, or a day between two draws, is easily left out. */
    private static List<String> inNoDraw(History history, WrittenSeason written, Map<String, List<Known>> ofTruck) {
        Map<String, List<Event>> left = new TreeMap<>();
        for (WrittenTruckSeason truck : written.trucks()) {
            for (Event event : history.standing(truck.id())) {
                LocalDate day = event.at().day();
                if (event.what() instanceof What.Used used
                        && !day.isBefore(written.from())
                        && !day.isAfter(written.to())
                        && ofTruck.getOrDefault(truck.id(), List.of()).stream()
                                .noneMatch(one -> one.material.equals(used.material())
                                        && !day.isBefore(one.draw.from())
                                        && !day.isAfter(one.draw.to()))) {
                    left.computeIfAbsent(used.material(), none -> new ArrayList<>())
                            .add(event);
                }
            }
        }
        List<String> texts = new ArrayList<>();
        left.forEach((material, events) -> texts.add("In no draw of this account: "
                + Words.count(events.size(), "sum") + " of what its trucks laid of " + material + ", such as "
                + events.get(0) + ". Is that a pile's material by another name, or days that were left out?"));
        return texts;
    }

    /** A radio that fell silent looks like a truck that stood. */
    private static Optional<String> silent(Known one, Map<LocalDate, LocalDate> last) {
        LocalDate its = one.laid.last().orElseThrow();
        LocalDate others = last.getOrDefault(one.draw.to(), its);
        return ChronoUnit.DAYS.between(its, others) < SILENT_DAYS
                ? Optional.empty()
                : Optional.of(what(one) + ": its last sum is of " + its + ", and others have some until " + others
                        + ". Did it stand, or wasn't it heard?");
    }
}
