package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.gritwright.core.history.History;
import org.gritwright.core.history.LaidSum;
import org.gritwright.core.history.What;
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

    private static final int DIGITS = 4;

    /** A draw, and what is known of it. */
    private record Known(DrawDays days, WrittenTruckSeason.Drawn draw, LaidSum laid) {}

    /** @param all the accounts of all seasons, this one too */
    static SeasonSums of(History history, WrittenSeason written, List<WrittenSeason> all) throws BadInputException {
        List<Known> known = known(history, written);
        Map<String, List<Known>> draws = known.stream().collect(Collectors.groupingBy(one -> one.days.truck()));
        UndrawnSums undrawn = new UndrawnSums(history, written, all);
        List<String> texts = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        List<DrawDays> silent = new ArrayList<>();
        Map<String, Map<WrittenTruckSeason.Drawn, Quantity<Mass>>> byTruck = new HashMap<>();
        for (Known one : known) {
            Optional<Quantity<Mass>> indicated = one.laid.indicated();
            if (one.draw.indicated().isPresent()) {
                List<Known> together = draws.getOrDefault(one.days.truck(), List.of()).stream()
                        .filter(other -> one.days.isSummedWith(other.days))
                        .toList();
                stated(one, together).ifPresent(texts::add);
            } else if (indicated.isPresent()) {
                byTruck.computeIfAbsent(one.days.truck(), id -> new HashMap<>()).put(one.draw, indicated.get());
                one.laid.remarks().forEach(remark -> texts.add(one.days.words() + ": " + remark));
                texts.addAll(undrawn.inTwoAccounts(one.days));
                silent.add(one.days);
            } else {
                missing.add(one.days.words() + ": " + String.join(" ", one.laid.remarks()));
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
            texts.addAll(SilentTrucks.questions(
                    history, silent, known.stream().map(Known::days).toList()));
            ended(known).ifPresent(texts::add);
            texts.addAll(otherOffsets(history, silent));
        }
        texts.addAll(undrawn.inNoDraw());
        return new SeasonSums(
                written.withSums((truck, draw) -> Optional.ofNullable(
                        byTruck.getOrDefault(truck, Map.of()).get(draw))),
                texts);
    }

    private static List<Known> known(History history, WrittenSeason written) {
        List<Known> known = new ArrayList<>();
        Iterator<DrawDays> all = DrawDays.of(written).iterator();
        for (WrittenTruckSeason truck : written.trucks()) {
            for (WrittenTruckSeason.Drawn draw : truck.draws()) {
                DrawDays days = all.next();
                known.add(new Known(
                        days, draw, LaidSum.of(history, truck.id(), days.material(), draw.from(), draw.to())));
            }
        }
        return known;
    }

    /**
     * What the account states and what telemetry counted may be two things. Draws of one material in the same days are compared together, by
     * the first of them; in days that only partly are the same, nothing can be compared.
     */
    private static Optional<String> stated(Known one, List<Known> together) {
        boolean isOfSameDays = together.stream()
                .allMatch(other -> other.draw.from().equals(one.draw.from())
                        && other.draw.to().equals(one.draw.to()));
        if (one.laid.sums() == 0 || (isOfSameDays && !together.get(0).equals(one))) {
            return Optional.empty();
        }
        if (one.laid.indicated().isEmpty()) {
            return Optional.of(
                    one.days.words() + ": what the account states can't be compared with the kept sums of its"
                            + " telemetry. " + String.join(" ", one.laid.remarks()));
        }
        if (!isOfSameDays) {
            return Optional.empty();
        }
        Quantity<Mass> counted = one.laid.indicated().get();
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
        return Optional.of(one.days.words() + piles + ": the account states " + Amounts.format(stated)
                + (isItsOwn ? " by telemetry" : " by its controller") + ", and the kept sums of its telemetry are "
                + Rounded.text(Amounts.of(Amounts.in(counted, stated.getUnit()), stated.getUnit()), DIGITS)
                + ": one of both is wrong, or doesn't have all.");
    }

    /** Of sums by another offset than the yard's, hours at the ends of draws are in another day. */
    private static List<String> otherOffsets(History history, List<DrawDays> draws) {
        return draws.stream()
                .map(DrawDays::truck)
                .distinct()
                .flatMap(truck -> history.standing(truck).stream())
                .flatMap(event -> event.what() instanceof What.Used used ? used.from().stream() : Stream.empty())
                .flatMap(since -> since.time().stream())
                .filter(time -> time.toLocalTime().equals(LocalTime.MIDNIGHT))
                .map(OffsetDateTime::getOffset)
                .distinct()
                .filter(offset -> !offset.equals(history.yard()))
                .sorted()
                .map(offset -> "Days of kept sums begin at " + offset + ", and those of the yard at " + history.yard()
                        + ". Say the yard's --offset here, or sum again by it.")
                .toList();
    }

    /** A file that was written in January looks like a winter that ended then. */
    private static Optional<String> ended(List<Known> known) {
        LocalDate end = known.stream()
                .filter(one -> one.draw.indicated().isEmpty())
                .map(one -> one.draw.to())
                .max(Comparator.naturalOrder())
                .orElseThrow();
        LocalDate kept = known.stream()
                .flatMap(one -> one.laid.last().stream())
                .max(Comparator.naturalOrder())
                .orElseThrow();
        return ChronoUnit.DAYS.between(kept, end) < SilentTrucks.SILENT_DAYS
                ? Optional.empty()
                : Optional.of("The last kept sum of all is of " + kept + ", and the last draw ends on " + end
                        + ". Was nothing laid since, or are later sums still to be imported?");
    }
}
