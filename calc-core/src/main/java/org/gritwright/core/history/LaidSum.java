package org.gritwright.core.history;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RevolutionCount;

/**
 * What a truck laid of a material in some days, as far as the kept sums of its telemetry tell. Immutable, thread-safe, a value.
 *
 * <p>There is no mass, and a remark says why, where sums contradict each other or the display, one of them reaches beyond the days, so that nobody
 * can say how much of it lies in them, or some say since when and others don't: those may be of the whole season. Nothing is divided in proportion to time, since trucks lay in storms.
 *
 * @param indicated the indicated mass of all of them, in the unit of the first; none if it can't be told
 * @param sums how many sums it is made of
 * @param last the day on which the last of them ends: what was laid later isn't in it, if it was counted at all; none without a sum
 * @param remarks what a person should know of it, as English sentences
 */
public record LaidSum(Optional<Quantity<Mass>> indicated, int sums, Optional<LocalDate> last, List<String> remarks) {
    /** Copies the list. */
    public LaidSum {
        Require.given(LaidSum.class, indicated, last, remarks);
        Require.that(sums >= 0, "sums", "0 or more", sums);
        remarks = List.copyOf(remarks);
    }

    /**
     * What a truck laid.
     *
     * @param history what is known
     * @param truck the truck's id
     * @param material a material's name
     * @param from the first day
     * @param to the last day, which is in
     * @return the mass; without one where it can't be told, with the reason
     * @throws org.gritwright.units.InvalidInputException if the last day is before the first, or the sums together are more than a number holds
     */
    public static LaidSum of(History history, String truck, String material, LocalDate from, LocalDate to) {
        Objects.requireNonNull(history, "history");
        Objects.requireNonNull(truck, "truck");
        Objects.requireNonNull(material, "material");
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        Require.that(!to.isBefore(from), "last day", "not before the first, " + from, to);
        Instant begin = history.beginning(from);
        Instant end = history.beginning(to.plusDays(1));
        List<Sum> all = history.summed(truck).sums();
        List<Sum> sums = all.stream()
                .filter(sum -> sum.isOf(material) && sum.isPartlyIn(begin, end))
                .toList();
        List<String> against = new ArrayList<>();
        sums.stream()
                .filter(sum -> !sum.isIn(begin, end))
                .map(sum -> sum.event() + ": it reaches beyond " + from + " to " + to + ", and can't be divided.")
                .forEach(against::add);
        all.stream()
                .filter(sum -> sum.isOf(material) && sum.to().isBefore(sum.from()))
                .filter(sum -> sum.to().isBefore(end) && !sum.from().isBefore(begin))
                .map(sum -> sum.event() + ": in the yard's time it ends before it begins.")
                .forEach(against::add);
        if (sums.stream().anyMatch(sum -> sum.used().from().isPresent())) {
            sums.stream()
                    .filter(sum -> sum.used().from().isEmpty())
                    .map(sum -> sum.event() + ": it doesn't say since when, and may count again what others count.")
                    .forEach(against::add);
        }
        Set<String> ids = sums.stream().map(sum -> sum.event().id()).collect(Collectors.toSet());
        history.summed(truck).contradictions().stream()
                .filter(one -> one.events().stream().map(Event::id).anyMatch(ids::contains))
                .map(one -> SeasonError.upperFirst(one.toString()) + ".")
                .forEach(against::add);
        if (sums.isEmpty()) {
            against.add(nothing(all, material, from, to));
        }
        return against.isEmpty() ? added(sums) : new LaidSum(Optional.empty(), sums.size(), last(sums), against);
    }

    /** A material by another name is easily taken for one of which nothing is known. */
    private static String nothing(List<Sum> all, String material, LocalDate from, LocalDate to) {
        List<String> others = all.stream()
                .map(sum -> sum.used().material())
                .filter(name -> !name.equals(material))
                .distinct()
                .sorted()
                .toList();
        return "No sum of what it laid of " + material + " from " + from + " to " + to + " is kept"
                + (others.isEmpty() ? "." : "; its sums are of " + String.join(", ", others) + ": is that the same?");
    }

    private static LaidSum added(List<Sum> sums) {
        Unit<Mass> unit = sums.get(0).used().mass().getUnit();
        String whose = sums.get(0).event().truck().orElseThrow() + " laid of "
                + sums.get(0).used().material();
        double mass = Require.finite(
                "mass that " + whose + ", in " + UnitSymbol.of(unit).symbol(),
                sums.stream()
                        .mapToDouble(sum -> Amounts.in(sum.used().mass(), unit))
                        .sorted()
                        .sum());
        List<String> remarks = new ArrayList<>();
        long undated = sums.stream().filter(sum -> sum.used().from().isEmpty()).count();
        if (undated > 0) {
            remarks.add(undated + " of " + sums.size()
                    + " sums of what it laid don't say since when: each counts as of its own day.");
        }
        double turns = turns(sums, false);
        double lost = Require.finite("unattributed revolutions beside what " + whose, turns(sums, true));
        if (lost > 0) {
            remarks.add("Beside what its sums say it turned "
                    + Rounded.text(Amounts.ofSi(lost, SpreadingUnits.REVOLUTION), 3)
                    + " of which nobody can say what they laid"
                    + (turns > 0
                            ? ": " + Rounded.text(Amounts.ofSi(lost / (turns + lost), SpreadingUnits.PERCENT), 2)
                                    + " of all."
                            : "."));
        }
        return new LaidSum(Optional.of(Amounts.of(mass, unit)), sums.size(), last(sums), remarks);
    }

    private static Optional<LocalDate> last(List<Sum> sums) {
        return sums.stream().map(sum -> sum.event().at().day()).max(Comparator.naturalOrder());
    }

    private static double turns(List<Sum> sums, boolean isUnattributed) {
        return sums.stream()
                .flatMap(sum ->
                        (isUnattributed ? sum.used().unattributed() : sum.used().revolutions()).stream())
                .mapToDouble(count -> Amounts.si(RevolutionCount.class, count))
                .sorted()
                .sum();
    }
}
