package org.gritwright.core.chart;

import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/** What stands along a side of a chart, sorted: the order in which somebody lists speeds says nothing. */
final class Axis {
    /** A thousand rows and a thousand columns are beyond any paper; rows of data have {@code CompiledEnvelope}. */
    static final int MOST = 1000;

    private Axis() {}

    static <Q extends Quantity<Q>> List<Quantity<Q>> of(String field, Class<Q> kind, List<Quantity<Q>> listed) {
        return of(field, listed, one -> Require.positive(field, kind, one), one -> Amounts.si(kind, one));
    }

    static <T> List<T> of(String field, List<T> listed, Consumer<T> check, ToDoubleFunction<T> place) {
        List<T> copy = Require.noMoreThan(MOST, field + "s of a chart", listed);
        Require.that(!copy.isEmpty(), field + "s of a chart", "one or more", "none");
        copy.forEach(check);
        List<T> sorted = copy.stream().sorted(Comparator.comparingDouble(place)).toList();
        for (int i = 1; i < sorted.size(); i++) {
            T one = sorted.get(i);
            Require.that(
                    Comparison.isAbove(place.applyAsDouble(one), place.applyAsDouble(sorted.get(i - 1))),
                    field,
                    "listed once",
                    one);
        }
        return sorted;
    }
}
