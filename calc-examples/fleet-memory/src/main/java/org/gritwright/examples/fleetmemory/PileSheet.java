package org.gritwright.examples.fleetmemory;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.season.Delivery;
import org.gritwright.core.season.Flow;
import org.gritwright.core.season.OtherUse;
import org.gritwright.core.season.Pile;
import org.gritwright.core.season.PileAccount;
import org.gritwright.core.season.TruckSeason;

/**
 * A pile's account as it is printed: what is on its left adds up to what is on its right, in the rounded numbers too.
 *
 * @param tickets the season's, of all piles
 * @param in what was there or came
 * @param out what left or remains
 * @param sum what either adds up to, in steps
 */
record PileSheet(Pile pile, Rounding rounding, Tickets tickets, List<Line> in, List<Line> out, long sum) {
    private static final double COVERAGE = 0.95;

    /**
     * A line.
     *
     * @param name as a person calls it
     * @param adjusted the mass in steps, not rounded and not below zero
     * @param printed the same as it is printed
     * @param half half the interval that holds it with 95 %, in steps; NaN of tickets that are told as one
     * @param written what was written down, in steps; none of what nobody wrote down
     */
    record Line(
            Flow flow,
            String name,
            double adjusted,
            long printed,
            double half,
            Optional<Double> written,
            Optional<Long> writtenPrinted) {}

    static PileSheet of(Pile pile, PileAccount account, List<TruckSeason> trucks, Rounding rounding, Tickets tickets) {
        Written written = new Written(pile, account, trucks);
        List<Line> in = new ArrayList<>();
        List<Line> out = new ArrayList<>();
        for (Flow flow : account.flows()) {
            double steps = rounding.steps(flow.mass().value());
            double half = flow.mass()
                    .expandedUncertainty(COVERAGE)
                    .map(rounding::steps)
                    .orElse(0.0);
            // What is below zero stands on the other side, and so does what was written down of it: both sides stay as
            // far apart.
            int sign = steps >= 0 ? 1 : -1;
            boolean isIn = flow.kind().isIn() == (sign > 0);
            (isIn ? in : out)
                    .add(new Line(
                            flow,
                            name(flow, sign < 0),
                            sign * steps,
                            0,
                            half,
                            written.of(flow).map(mass -> sign * rounding.steps(mass)),
                            Optional.empty()));
        }
        long sum = Math.round(in.stream().mapToDouble(Line::adjusted).sum());
        return new PileSheet(pile, rounding, tickets, printed(in, sum), printed(out, sum), sum);
    }

    private static List<Line> printed(List<Line> lines, long sum) {
        List<Long> adjusted = Shares.of(lines.stream().map(Line::adjusted).toList(), sum);
        Deque<Long> written = new ArrayDeque<>(Shares.of(
                lines.stream().flatMap(line -> line.written().stream()).toList()));
        List<Line> printed = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            Line line = lines.get(i);
            printed.add(new Line(
                    line.flow,
                    line.name,
                    line.adjusted,
                    adjusted.get(i),
                    line.half,
                    line.written,
                    line.written.map(each -> written.remove())));
        }
        return printed;
    }

    private static String name(Flow flow, boolean isBelowZero) {
        return switch (flow.kind()) {
            case OPENING -> "opening";
            case CLOSING -> "closing";
            case DELIVERY -> "ticket " + flow.name() + (isBelowZero ? ", below zero" : "");
            case TRUCK ->
                (flow.name().contains(", ") ? "trucks " : "truck ") + flow.name() + (isBelowZero ? ", below zero" : "");
            case OTHER_USE -> flow.name() + (isBelowZero ? ", below zero" : "");
            case UNEXPLAINED -> isBelowZero ? "unexplained gain" : "unexplained";
            case FOUND ->
                (isBelowZero ? "not there" : "not written") + (flow.name().isEmpty() ? "" : ", " + flow.name());
        };
    }

    /** What people wrote down of each line, in the order in which an account has its lines. */
    private static final class Written {
        private final Pile pile;
        private final List<TruckSeason> trucks;
        private final Set<String> alone = new HashSet<>();
        private final Deque<Delivery> deliveries;
        private final Deque<OtherUse> uses;

        Written(Pile pile, PileAccount account, List<TruckSeason> trucks) {
            this.pile = pile;
            this.trucks = trucks;
            deliveries = new ArrayDeque<>(pile.deliveries());
            uses = new ArrayDeque<>(pile.otherUses());
            Set<String> ids = new HashSet<>(trucks.stream().map(TruckSeason::id).toList());
            account.flows().stream()
                    .filter(flow -> flow.kind() == Flow.Kind.TRUCK && ids.contains(flow.name()))
                    .forEach(flow -> alone.add(flow.name()));
        }

        Optional<Quantity<Mass>> of(Flow flow) {
            return switch (flow.kind()) {
                case OPENING -> Optional.of(pile.opening().mass());
                case DELIVERY -> Optional.of(deliveries.remove().mass().mass());
                case OTHER_USE -> Optional.of(uses.remove().mass().mass());
                case CLOSING ->
                    Optional.of(pile.surveys().get(pile.surveys().size() - 1).mass());
                case TRUCK -> drawn(flow.name());
                case FOUND, UNEXPLAINED -> Optional.empty();
            };
        }

        /** By its controller; of trucks that nothing tells apart, all together. */
        private Optional<Quantity<Mass>> drawn(String name) {
            boolean isAlone = alone.contains(name);
            return trucks.stream()
                    .filter(truck -> isAlone ? truck.id().equals(name) : !alone.contains(truck.id()))
                    .flatMap(truck -> truck.draws().stream())
                    .filter(draw -> draw.pile().equals(pile.id()))
                    .map(draw -> draw.indicated())
                    .reduce(Quantity::add);
        }
    }

    public Picture picture() {
        return Picture.of(width -> new FlowPicture(this, width).drawn());
    }

    /** With every ticket. */
    PageTable table() {
        List<PageTable.Row> rows = new ArrayList<>();
        side(in, "was there or came, together", rows);
        side(out, "left or remains, together", rows);
        return PageTable.of(
                "Pile " + pile.id() + " in numbers",
                List.of("what", "written down", "adjusted", "with 95 %", "adjusted by"),
                rows);
    }

    private List<String> cells(Line line) {
        return List.of(
                line.writtenPrinted.map(rounding::text).orElse("nothing"),
                rounding.text(line.printed),
                Double.isNaN(line.half) ? PageTable.NONE : rounding.half(line.half),
                rounding.signed(line.printed - line.writtenPrinted.orElse(0L)));
    }

    private void side(List<Line> lines, String together, List<PageTable.Row> rows) {
        for (Line line : lines) {
            rows.add(new PageTable.Row(line.name, Optional.empty(), cells(line)));
        }
        rows.add(PageTable.Row.of(
                together,
                rounding.text(written(lines)),
                rounding.text(sum),
                PageTable.NONE,
                rounding.signed(sum - written(lines))));
    }

    /** The same with tickets that nobody has to look at as one line. */
    public PageTable folded() {
        return new PileSheet(pile, rounding, tickets, folded(in, this::isOdd), folded(out, this::isOdd), sum).table();
    }

    /** Whether anything is folded. */
    public boolean isFolded() {
        return folded(in, this::isOdd).size() < in.size();
    }

    /** All tickets one by one. */
    public PageTable tickets(String caption) {
        boolean isDated =
                pile.deliveries().stream().anyMatch(one -> tickets.days().containsKey(one.ticket()));
        List<String> columns =
                new ArrayList<>(List.of("ticket", "written down", "adjusted", "with 95 %", "adjusted by"));
        if (isDated) {
            columns.add(1, "day");
        }
        List<PageTable.Row> rows = new ArrayList<>();
        Stream.concat(in.stream(), out.stream()).filter(PileSheet::isTicket).forEach(line -> {
            List<String> cells = new ArrayList<>(cells(line));
            if (isDated) {
                cells.add(0, tickets.day(line.flow.name()));
            }
            rows.add(new PageTable.Row(line.name.replaceFirst("^ticket ", ""), Optional.empty(), cells));
        });
        return PageTable.of(caption, columns, rows);
    }

    private static boolean isTicket(Line line) {
        return line.flow.kind() == Flow.Kind.DELIVERY;
    }

    /** That a sentence names, that is adjusted by more than it may be off, or that is below zero. */
    private boolean isOdd(Line line) {
        boolean isMoved = line.written
                .filter(mass -> Math.abs(line.adjusted - mass) > line.half)
                .isPresent();
        return tickets.odd().contains(line.flow.name()) || isMoved || !line.name.equals("ticket " + line.flow.name());
    }

    /** With all tickets as one, for pictures. */
    static List<Line> folded(List<Line> lines) {
        return folded(lines, Tickets.NONE, any -> false);
    }

    private List<Line> folded(List<Line> lines, Predicate<Line> isOdd) {
        return folded(lines, tickets, isOdd);
    }

    private static List<Line> folded(List<Line> lines, Tickets known, Predicate<Line> isOdd) {
        List<Line> usual = lines.stream()
                .filter(PileSheet::isTicket)
                .filter(isOdd.negate())
                .toList();
        if (usual.size() < 2) {
            return lines;
        }
        List<Line> folded = new ArrayList<>();
        for (Line line : lines) {
            if (!isTicket(line) || isOdd.test(line)) {
                folded.add(line);
            } else if (line.equals(usual.get(0))) {
                folded.add(new Line(
                        line.flow,
                        known.words(
                                usual.stream().map(one -> one.flow.name()).toList(),
                                lines.stream().filter(PileSheet::isTicket).count() > usual.size()),
                        usual.stream().mapToDouble(Line::adjusted).sum(),
                        usual.stream().mapToLong(Line::printed).sum(),
                        Double.NaN,
                        Optional.empty(),
                        Optional.of(written(usual))));
            }
        }
        return folded;
    }

    private static long written(List<Line> lines) {
        return lines.stream()
                .flatMap(line -> line.writtenPrinted.stream())
                .mapToLong(Long::longValue)
                .sum();
    }

    /** By how much what was written down doesn't add up. */
    public String gap() {
        long gap = written(in) - written(out);
        return "As written down, " + rounding.text(written(in)) + " was there or came and "
                + rounding.text(written(out))
                + " left or remains"
                + (gap == 0 ? ", which adds up." : ": " + rounding.text(Math.abs(gap)) + " apart.")
                + " Adjusted, both sides are " + rounding.text(sum) + ".";
    }
}
