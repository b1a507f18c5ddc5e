package org.gritwright.core.weighing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Volume;
import org.gritwright.core.finding.Finding;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * A caught volume that was read from a graduated container, filled once or more and emptied in between. Immutable, thread-safe, a
 * value.
 *
 * <p>Read it at the temperature at which the liquid was pumped, or near it: by its published densities, 23 % salt brine that
 * warms by 10 °C between tank and reading takes 0.4 to 0.5 % more room.
 *
 * @param container the container
 * @param measuredOn the day
 * @param fills what was read, one fill or more, each greater than zero and not beyond the highest mark
 */
public record ReadVolume(Graduate container, LocalDate measuredOn, List<Quantity<Volume>> fills)
        implements CaughtVolume {
    /** More fills than anybody makes; a bound for documents. */
    private static final int MOST = 1000;

    /**
     * Copies the list and checks it.
     *
     * @throws InvalidInputException if there is no fill, or one isn't greater than zero or is beyond the highest mark
     */
    public ReadVolume {
        Require.given(ReadVolume.class, container, measuredOn, fills);
        fills = List.copyOf(Require.noMoreThan(MOST, "fills of container " + container.id(), fills));
        Require.that(!fills.isEmpty(), "fills of container " + container.id(), "one or more", "none");
        double capacity = Amounts.si(Volume.class, container.capacity());
        for (Quantity<Volume> fill : fills) {
            String field = "volume read in container " + container.id();
            Require.positive(field, Volume.class, fill);
            if (Comparison.isAbove(Amounts.si(Volume.class, fill), capacity)) {
                throw new InvalidInputException(
                        field,
                        "at most its highest mark, " + Amounts.format(container.capacity()),
                        Amounts.format(fill));
            }
        }
    }

    /**
     * A volume read in one fill.
     *
     * @param container the container
     * @param measuredOn the day
     * @param fill what was read
     * @return the caught volume
     * @throws InvalidInputException if it isn't greater than zero or is beyond the highest mark
     */
    public static ReadVolume of(Graduate container, LocalDate measuredOn, Quantity<Volume> fill) {
        return new ReadVolume(container, measuredOn, List.of(Objects.requireNonNull(fill, "fill")));
    }

    /**
     * The sum of the fills.
     *
     * @return the volume, in the unit of the first fill
     */
    @Override
    public Quantity<Volume> total() {
        Unit<Volume> unit = fills.get(0).getUnit();
        double sum = fills.stream()
                .map(fill -> BigDecimal.valueOf(
                        fill.getUnit().equals(unit) ? fill.getValue().doubleValue() : Amounts.in(fill, unit)))
                .reduce(BigDecimal.ZERO, BigDecimal::add)
                .doubleValue();
        return Amounts.of(sum, unit);
    }

    @Override
    public double si() {
        return Amounts.si(Volume.class, total());
    }

    @Override
    public double roundingSi() {
        return container.roundingCubicMeters() * Math.sqrt(fills.size());
    }

    @Override
    public List<Double> readingsSi() {
        return fills.stream().map(fill -> Amounts.si(Volume.class, fill)).toList();
    }

    @Override
    public int readings() {
        return fills.size();
    }

    @Override
    public Quantity<?> readingUncertainty() {
        return Amounts.ofSi(
                container.roundingCubicMeters(), container.division().getUnit());
    }

    @Override
    public Quantity<?> division() {
        return container.division();
    }

    @Override
    public double divisions() {
        return si() / Amounts.si(Volume.class, container.division());
    }

    @Override
    public String instrument() {
        return container.id();
    }

    @Override
    public boolean isWeighed() {
        return false;
    }

    @Override
    public OptionalDouble relativeSpanLimit() {
        return container.relativeLimit(si(), fills.size());
    }

    @Override
    public double assumedSpanLimit() {
        return Graduate.COMMON_TOLERANCE;
    }

    @Override
    public boolean isSpanTested() {
        return container.tolerance().isPresent();
    }

    /** Nothing: what is odd about a volume shows beside others. */
    @Override
    public List<Finding> findings() {
        return List.of();
    }

    /**
     * The volume and where it was read.
     *
     * @return for example "4.85 gal in container P-1, 2026-10-19"
     */
    @Override
    public String toString() {
        return Amounts.format(total()) + " in container " + container.id() + ", " + measuredOn;
    }
}
