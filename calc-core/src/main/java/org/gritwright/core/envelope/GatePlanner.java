package org.gritwright.core.envelope;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;

/**
 * Finds the gate setting that serves all demands with the most margin; a wider gate lets the shaft turn more slowly, a narrower one
 * faster. Where no setting serves all, the one is best that loses the least where it loses most.
 */
public final class GatePlanner {
    private GatePlanner() {}

    /**
     * Compares settings.
     *
     * @param envelopes the truck's envelope at each setting that may be chosen, one or more; what is predicted by geometry alone may
     *     be among them
     * @param demands what is to be served, one or more
     * @return how each setting fits: those that serve all first, the largest margin first; then those that don't, by their largest
     *     loss, the smallest first
     * @throws org.gritwright.units.InvalidInputException if there is no setting or no demand
     */
    public static List<GateFit> compare(Map<Setting, Envelope> envelopes, List<Demand> demands) {
        Objects.requireNonNull(envelopes, "envelopes");
        Objects.requireNonNull(demands, "demands");
        Require.that(!envelopes.isEmpty(), "gate settings to choose from", "one or more", "none");
        Require.that(!demands.isEmpty(), "demands on a truck", "one or more", "none");
        return envelopes.entrySet().stream()
                .map(entry -> fit(entry.getKey(), entry.getValue(), demands))
                .sorted(Comparator.comparing(GateFit::servesAll)
                        .thenComparingDouble(GatePlanner::worstOff)
                        .reversed())
                .toList();
    }

    private static GateFit fit(Setting setting, Envelope envelope, List<Demand> demands) {
        double margin = Double.POSITIVE_INFINITY;
        List<GateFit.Loss> losses = new ArrayList<>();
        CompiledEnvelope flows = envelope.compiled();
        for (Demand demand : demands) {
            double rate = Amounts.si(ApplicationRate.class, demand.rate());
            margin = Math.min(margin, flows.greatestFlow() / (rate * Amounts.si(Speed.class, demand.fastest())));
            if (flows.leastFlow() > 0) {
                margin = Math.min(margin, rate * Amounts.si(Speed.class, demand.slowest()) / flows.leastFlow());
            }
            demand.ends()
                    .map(speed -> new GateFit.Loss(demand, speed, envelope.deliveredAt(demand.rate(), speed)))
                    .filter(loss -> loss.delivered().limit().isPresent())
                    .forEach(losses::add);
        }
        return new GateFit(Objects.requireNonNull(setting, "setting"), Amounts.of(margin, SpreadingUnits.ONE), losses);
    }

    /** The margin where all is served; else how much of what was asked for is put down, or the reverse where it is too much. */
    private static double worstOff(GateFit fit) {
        return fit.servesAll()
                ? Amounts.si(Dimensionless.class, fit.margin())
                : fit.losses().stream()
                        .mapToDouble(loss ->
                                Amounts.si(Dimensionless.class, loss.delivered().share()))
                        .map(share -> share > 1 ? 1 / share : share)
                        .min()
                        .orElseThrow();
    }
}
