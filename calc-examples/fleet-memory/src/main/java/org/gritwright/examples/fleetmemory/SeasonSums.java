package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.history.History;
import org.gritwright.core.history.LaidSum;
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
    private record Known(String truck, WrittenTruckSeason.Drawn draw, LaidSum laid) {}

    static SeasonSums of(History history, WrittenSeason written) throws BadInputException {
        Map<String, String> materials = new HashMap<>();
        for (WrittenPile pile : written.piles()) {
            materials.put(pile.id(), pile.material());
        }
        List<Known> known = new ArrayList<>();
        Map<LocalDate, LocalDate> last = new HashMap<>();
        for (WrittenTruckSeason truck : written.trucks()) {
            for (WrittenTruckSeason.Drawn draw : truck.draws()) {
                LaidSum laid = LaidSum.of(
                        history, truck.id(), materials.getOrDefault(draw.pile(), ""), draw.from(), draw.to());
                known.add(new Known(truck.id(), draw, laid));
                laid.last().ifPresent(day -> last.merge(draw.to(), day, (a, b) -> a.isAfter(b) ? a : b));
            }
        }
        List<String> texts = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        Map<String, Map<WrittenTruckSeason.Drawn, Quantity<Mass>>> byTruck = new HashMap<>();
        for (Known one : known) {
            Optional<Quantity<Mass>> indicated = one.laid.indicated();
            if (one.draw.indicated().isPresent()) {
                indicated.flatMap(mass -> stated(one, mass)).ifPresent(texts::add);
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
        }
        return new SeasonSums(
                written.withSums((truck, draw) -> Optional.ofNullable(
                        byTruck.getOrDefault(truck, Map.of()).get(draw))),
                texts);
    }

    private static String what(Known one) {
        return "Truck " + one.truck + ", " + one.draw.from() + " to " + one.draw.to() + " from pile " + one.draw.pile();
    }

    /** What the account states and what telemetry counted may be two things. */
    private static Optional<String> stated(Known one, Quantity<Mass> counted) {
        Quantity<Mass> stated = one.draw.indicated().orElseThrow();
        boolean isItsOwn = one.draw.source() == WrittenTruckSeason.Source.TELEMETRY;
        double most = isItsOwn ? ROUNDED : MISSED;
        double ofCounted = Amounts.si(Mass.class, counted);
        if (Math.abs(Amounts.si(Mass.class, stated) - ofCounted) <= most * ofCounted) {
            return Optional.empty();
        }
        return Optional.of(what(one) + ": the account states " + Amounts.format(stated)
                + (isItsOwn ? " by telemetry" : " by its controller") + ", and the kept sums of its telemetry are "
                + Rounded.text(Amounts.of(Amounts.in(counted, stated.getUnit()), stated.getUnit()), DIGITS)
                + ": one of both is wrong, or doesn't have all.");
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
