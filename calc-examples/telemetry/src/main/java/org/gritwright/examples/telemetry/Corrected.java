package org.gritwright.examples.telemetry;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.Onset;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.units.Amounts;

/**
 * What a verification found before anything was adjusted, and what became of it.
 *
 * @param truck whose value it was
 * @param correction what was found, and how it is taken to have come about
 * @param passes what two passes came to; nothing where one is enough
 */
record Corrected(String truck, Timeline.Correction correction, Optional<Passes> passes) {
    private static final double COVERAGE = 0.95;
    private static final double PERCENT = 100;

    /**
     * The truck's season by the first pass and by the second.
     *
     * @param pulses turned in all its rows that can be counted
     * @param indicated milligrams laid by what its display held
     * @param laid milligrams laid, corrected
     */
    record Passes(long pulses, long indicated, long laid) {}

    /**
     * What was found of all trucks that have rows.
     *
     * @param first what the first pass came to, of the trucks that needed one
     * @param trucks what the last pass came to
     */
    static List<Corrected> of(
            Map<String, TruckPlan> plans, Map<String, TruckTotals> first, Map<String, TruckTotals> trucks) {
        List<Corrected> all = new ArrayList<>();
        trucks.forEach((truck, totals) -> {
            Optional<Passes> passes = Optional.ofNullable(first.get(truck))
                    .map(counted -> new Passes(
                            counted.sums().turned(),
                            counted.sums().laid(),
                            totals.sums().laid()));
            for (Timeline.Correction one :
                    Objects.requireNonNull(plans.get(truck), "plan").corrections()) {
                all.add(new Corrected(truck, one, passes));
            }
        });
        return List.copyOf(all);
    }

    /** @param offset the yard's, for the days */
    String sentence(ZoneOffset offset) {
        AsFound found = correction.found();
        double error = Amounts.si(Dimensionless.class, found.error().value());
        String within = found.error()
                .expandedUncertainty(COVERAGE)
                .map(half -> String.format(
                        Locale.ROOT, " +/- %.1f %% (95 %%)", PERCENT * Amounts.si(Dimensionless.class, half)))
                .orElse("");
        String left = found.asLeft().atOffset(offset).toLocalDate().toString();
        return String.format(
                Locale.ROOT,
                "%s, slot %s: on %s a verification found that its display counted %.1f %%%s %s than fell. %s",
                truck,
                found.slot(),
                found.at().atOffset(offset).toLocalDate(),
                PERCENT * Math.abs(error),
                within,
                error < 0 ? "less" : "more",
                found.isShown() ? became(found, left) : "That may be none: nothing is corrected.");
    }

    private String became(AsFound found, String left) {
        if (correction.onset() instanceof Onset.AtOnce once) {
            return once.at().equals(found.at())
                    ? "It is taken to have come just then: what was laid before isn't corrected."
                    : "It is taken to have been there since " + left + ": all since then is corrected by it.";
        }
        String grown = switch ((Onset.Gradually) correction.onset()) {
            case WITH_TIME -> "time";
            case WITH_TURNS -> "the turns of its shaft";
            case WITH_AMOUNT -> "what left its hopper";
        };
        return "It is taken to have grown with " + grown + " since " + left
                + passes.map(two -> String.format(
                                Locale.ROOT,
                                ", in two passes: the first counted %,d pulse and %,.0f lb over the whole season; the"
                                        + " second made of that %,.0f lb.",
                                two.pulses(),
                                UsUnits.pounds(two.indicated()),
                                UsUnits.pounds(two.laid())))
                        .orElse(".");
    }
}
