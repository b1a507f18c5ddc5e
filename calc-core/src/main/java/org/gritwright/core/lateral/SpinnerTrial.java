package org.gritwright.core.lateral;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * Patterns of several spinner settings beside each other. The evenest setting and the one that wastes least are often not the
 * same: which counts more is the caller's choice. Immutable, thread-safe, a value.
 *
 * @param settings the settings, one or more, each name once
 */
public record SpinnerTrial(List<SpinnerSetting> settings) {
    private static final int MOST = 1000;

    /**
     * Copies the list and checks the names.
     *
     * @throws org.gritwright.units.InvalidInputException if there is no setting, or one is named twice
     */
    public SpinnerTrial {
        Require.given(SpinnerTrial.class, settings);
        settings = List.copyOf(Require.noMoreThan(MOST, "spinner settings", settings));
        Require.that(!settings.isEmpty(), "spinner settings", "one or more", "none");
        Set<String> names = new HashSet<>();
        settings.forEach(one -> Require.that(names.add(one.name()), "spinner setting", "named once", one.name()));
    }

    /**
     * The setting with the lowest coefficient of variation over a strip.
     *
     * @param strip the part of the road that is to be treated
     * @return the setting; of equal ones the first
     * @throws org.gritwright.units.InvalidInputException if a setting laid nothing there
     */
    public SpinnerSetting evenest(RoadStrip strip) {
        return least(one -> Amounts.si(Dimensionless.class, one.pattern().variation(strip)));
    }

    /**
     * The setting that lays the greatest share on a strip.
     *
     * @param strip the part of the road that is to be treated
     * @return the setting; of equal ones the first
     */
    public SpinnerSetting mostInside(RoadStrip strip) {
        return least(one -> -Amounts.si(
                Dimensionless.class, one.pattern().shares(strip).inside().value()));
    }

    private SpinnerSetting least(ToDoubleFunction<SpinnerSetting> by) {
        return settings.stream().min(Comparator.comparingDouble(by)).orElseThrow();
    }
}
