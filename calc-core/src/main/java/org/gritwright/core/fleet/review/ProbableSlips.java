package org.gritwright.core.fleet.review;

import static org.gritwright.core.finding.Argument.several;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.fleet.day.MeteringEntry;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.InvalidInputException;

/**
 * The slips that explain a truck's day best. Each is tried on all that is written down: the likelihood of the day without it
 * over that of the day as it stands, divided by the number of places where such a slip could have been made (a likelihood ratio,
 * J. Neyman and E. S. Pearson, 1933; from memory). Without any slip the mean of a likelihood ratio is at most 1, so that by
 * Markov's inequality no more than one healthy truck in 30 seems to have a given one by thirtyfold; of simulated ones, 6 in 1000
 * seem to have any.
 */
public final class ProbableSlips {
    /** A slip that makes the day so many times more likely is told even where nothing else seems wrong. */
    static final double SHOWN = Math.log(30);

    /** One that makes it so many times more likely is told where something else does. */
    private static final double SUGGESTED = Math.log(2);

    /** One so many times less likely than the best is left out: those are 95 % of both. */
    private static final double RIVAL = Math.log(19);

    private ProbableSlips() {}

    private record Explained(Slip slip, double logRatio) {
        /** Two ways to say the same are equally likely, whatever rounding says of their last digits. */
        double rounded() {
            return Math.rint(logRatio * 1e6);
        }
    }

    /**
     * What may have been written down wrongly.
     *
     * @param day the day, with one catch or value in force or more
     * @param spreader the equipment as it was written down
     * @param types the types that are known
     * @param ofFleet slips that other trucks show, which come first
     * @param contradicted whether something else seems wrong
     * @return the finding; none if no slip would make the day much more likely
     */
    public static Optional<Finding> of(
            Sketch day, MeteringEntry spreader, TypeRegistry types, List<Slip> ofFleet, boolean contradicted) {
        List<Explained> explained = explained(day, spreader, types, contradicted);
        double best = explained.isEmpty() ? 0 : explained.get(0).logRatio();
        boolean told = best > (contradicted ? SUGGESTED : SHOWN);
        List<Slip> probable = Stream.concat(
                        ofFleet.stream(),
                        explained.stream()
                                .filter(one -> told && ofFleet.isEmpty() && one.logRatio() > best - RIVAL)
                                .map(Explained::slip))
                .distinct()
                .toList();
        return probable.isEmpty()
                ? Optional.empty()
                : Optional.of(Finding.of(FindingCode.PROBABLE_SLIPS, Map.of("slips", several(eachOnce(probable)))));
    }

    /** Without those that say the same of the same thing in other words, as a digit too many and ten times too much do. */
    private static List<Slip> eachOnce(List<Slip> slips) {
        List<Slip> once = new ArrayList<>();
        slips.stream()
                .filter(one -> once.stream().noneMatch(other -> saysTheSame(one, other)))
                .forEach(once::add);
        return List.copyOf(once);
    }

    private static boolean saysTheSame(Slip one, Slip other) {
        return one.part() == other.part()
                && one.of().equals(other.of())
                && one.catches().equals(other.catches())
                && !one.values().isEmpty()
                && one.values().size() == other.values().size()
                && IntStream.range(0, one.values().size())
                        .allMatch(i -> number(one, i) == number(other, i)
                                && one.values()
                                        .get(i)
                                        .getUnit()
                                        .equals(other.values().get(i).getUnit()));
    }

    private static float number(Slip slip, int value) {
        return slip.values().get(value).getValue().floatValue();
    }

    /** The most probable first. */
    private static List<Explained> explained(
            Sketch day, MeteringEntry spreader, TypeRegistry types, boolean contradicted) {
        double asItStands = day.logLikelihood();
        // Where nothing seems wrong, most searches can't find anything, and a fleet has many such trucks.
        boolean equipment = contradicted || day.greatestGainByEquipment() > SHOWN;
        try {
            // Of slips that explain the day as well, the sort keeps this order: values are typed most often.
            return Stream.of(
                            ValueSlips.of(day),
                            equipment ? EquipmentSlips.of(day, spreader, types) : List.<Hypothesis>of(),
                            CatchSlips.of(day, contradicted || !day.isAlike()))
                    .flatMap(List::stream)
                    .map(one -> new Explained(one.slip(), one.logLikelihood() - asItStands))
                    .filter(one -> Double.isFinite(one.logRatio()))
                    .sorted(Comparator.comparingDouble(Explained::rounded).reversed())
                    .toList();
        } catch (InvalidInputException e) {
            // A number so huge that ten times as much isn't one: what is wrong with it is said elsewhere.
            return List.of();
        }
    }
}
