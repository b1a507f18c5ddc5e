package org.gritwright.core.weighing;

import static org.gritwright.core.finding.Argument.name;
import static org.gritwright.core.finding.Argument.number;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * What one catch caught: the sum of gross − tare over its containers, weighed on one scale on one day.
 *
 * <p>Immutable, thread-safe, a value: equal when scale, day and containers are. Summed once, when it is made.
 */
public final class CaughtMass implements Caught {
    /** Tares that differ by more than this are worth a second look (common practice, no source). */
    private static final double UNEQUAL_TARES = 2;

    private final Scale scale;
    private final LocalDate weighedOn;
    private final List<Weighing> weighings;
    private final Quantity<Mass> total;

    /**
     * What was caught.
     *
     * @param scale the scale
     * @param weighedOn the day of weighing
     * @param weighings the containers, one or more
     * @throws InvalidInputException if there is no container, a gross is beyond the scale's capacity, or nothing was
     *     caught; it names the containers
     */
    public CaughtMass(Scale scale, LocalDate weighedOn, List<Weighing> weighings) {
        this.scale = Objects.requireNonNull(scale, "scale");
        this.weighedOn = Objects.requireNonNull(weighedOn, "weighedOn");
        this.weighings = List.copyOf(Objects.requireNonNull(weighings, "weighings"));
        Require.that(!this.weighings.isEmpty(), "containers of a catch", "one or more", "none");
        double capacity = Amounts.si(Mass.class, scale.capacity());
        for (Weighing weighing : this.weighings) {
            if (Comparison.isAbove(Amounts.si(Mass.class, weighing.gross()), capacity)) {
                throw new InvalidInputException(
                        "gross of container " + weighing.container(),
                        "at most the capacity of scale " + scale.id() + ", " + Amounts.format(scale.capacity()),
                        Amounts.format(weighing.gross()));
            }
        }
        this.total = sum(this.weighings);
        if (!(total.getValue().doubleValue() > 0)) {
            String containers = this.weighings.stream().map(Weighing::container).collect(Collectors.joining(", "));
            throw new InvalidInputException(
                    "caught mass in container " + containers, "greater than 0", Amounts.format(total));
        }
    }

    /**
     * What was caught.
     *
     * @param scale the scale
     * @param weighedOn the day of weighing
     * @param weighings the containers
     * @return the caught mass
     * @throws InvalidInputException as for the full form
     */
    public static CaughtMass of(Scale scale, LocalDate weighedOn, Weighing... weighings) {
        return new CaughtMass(scale, weighedOn, List.of(Objects.requireNonNull(weighings, "weighings")));
    }

    /**
     * The caught mass.
     *
     * @return the sum of gross − tare, in the unit of the first gross
     */
    @Override
    public Quantity<Mass> total() {
        return total;
    }

    /**
     * The scale.
     *
     * @return the scale
     */
    public Scale scale() {
        return scale;
    }

    /**
     * The day of weighing.
     *
     * @return the day
     */
    @Override
    public LocalDate measuredOn() {
        return weighedOn;
    }

    /**
     * The containers.
     *
     * @return the containers, one or more
     */
    @Override
    public List<Weighing> weighings() {
        return weighings;
    }

    /**
     * The caught mass as a number.
     *
     * @return kilograms, greater than zero
     */
    public double kilograms() {
        return Amounts.si(Mass.class, total());
    }

    @Override
    public double si() {
        return kilograms();
    }

    @Override
    public double roundingSi() {
        return roundingKilograms();
    }

    /**
     * Gross and tare of each container.
     *
     * @return two for each
     */
    @Override
    public int readings() {
        return 2 * weighings.size();
    }

    @Override
    public List<Double> readingsSi() {
        return weighings.stream()
                .flatMap(one -> Stream.of(one.gross(), one.tare()))
                .map(mass -> Amounts.si(Mass.class, mass))
                .toList();
    }

    @Override
    public Quantity<Mass> readingUncertainty() {
        return Amounts.ofSi(scale.roundingKilograms(), scale.division().getUnit());
    }

    @Override
    public Quantity<Mass> division() {
        return scale.division();
    }

    @Override
    public double divisions() {
        return kilograms() / Amounts.si(Mass.class, scale.division());
    }

    @Override
    public String instrument() {
        return scale.id();
    }

    @Override
    public boolean isWeighed() {
        return true;
    }

    /**
     * The standard uncertainty of the rounding of all readings, gross and tare of each container, which are independent.
     *
     * @return kilograms: division ÷ √12 × √(readings)
     */
    public double roundingKilograms() {
        return scale.roundingKilograms() * Math.sqrt(readings());
    }

    /**
     * How far off the caught mass may be by the scale's span: an error proportional to the load, which all weighings on
     * that scale have in common. So what bounds it at the heaviest container bounds it at all. A wrong zero cancels in
     * gross − tare.
     *
     * @return the relative limit; none if nobody knows the scale's accuracy
     */
    @Override
    public OptionalDouble relativeSpanLimit() {
        return scale.relativeSpanLimit(heaviestGross(), weighedOn);
    }

    @Override
    public double assumedSpanLimit() {
        return Scale.COMMON_SPAN_LIMIT;
    }

    /**
     * Whether a wrong span would have been noticed.
     *
     * @return true if there was a test weight of half to twice the heaviest gross that day
     */
    @Override
    public boolean isSpanTested() {
        return scale.isTestedNear(heaviestGross(), weighedOn);
    }

    private Quantity<Mass> heaviestGross() {
        return weighings.stream()
                .map(Weighing::gross)
                .max(Comparator.comparingDouble(gross -> Amounts.si(Mass.class, gross)))
                .orElseThrow();
    }

    private static Quantity<Mass> sum(List<Weighing> weighings) {
        Unit<Mass> unit = weighings.get(0).gross().getUnit();
        BigDecimal sum = weighings.stream()
                .map(weighing -> Weighing.decimal(weighing.net(), unit))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        return Amounts.of(sum.doubleValue(), unit);
    }

    /**
     * What a person should know about the weighing: unequal tares, and a scale that was not checked or failed its check
     * that day.
     *
     * @return the findings, possibly none
     */
    @Override
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        Comparator<Quantity<Mass>> byMass = Comparator.comparingDouble(mass -> Amounts.si(Mass.class, mass));
        List<Quantity<Mass>> tares =
                weighings.stream().map(Weighing::tare).sorted(byMass).toList();
        Quantity<Mass> lowest = tares.get(0);
        Quantity<Mass> highest = tares.get(tares.size() - 1);
        if (Comparison.isAbove(Amounts.si(Mass.class, highest), UNEQUAL_TARES * Amounts.si(Mass.class, lowest))) {
            findings.add(Finding.of(
                    FindingCode.TARES_UNEQUAL, Map.of("lowest", number(lowest), "highest", number(highest))));
        }
        List<ScaleCheck> sameDay =
                scale.checks().stream().filter(c -> c.on().equals(weighedOn)).toList();
        if (sameDay.isEmpty()) {
            findings.add(Finding.of(FindingCode.SCALE_NOT_CHECKED, Map.of("scale", name(scale.id()))));
        }
        for (ScaleCheck check : sameDay) {
            double testWeight = Amounts.si(Mass.class, check.testWeight());
            double miss = Math.abs(Amounts.si(Mass.class, check.reading()) - testWeight);
            if (Comparison.isAbove(miss, scale.acceptedMissKilograms(check.testWeight()), testWeight)) {
                findings.add(Finding.of(
                        FindingCode.SCALE_CHECK_MISSED,
                        Map.of(
                                "reading", number(check.reading()),
                                "testWeight", number(check.testWeight()),
                                "scale", name(scale.id()))));
            }
        }
        return List.copyOf(findings);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CaughtMass that
                && scale.equals(that.scale)
                && weighedOn.equals(that.weighedOn)
                && weighings.equals(that.weighings);
    }

    @Override
    public int hashCode() {
        return Objects.hash(scale, weighedOn, weighings);
    }

    /**
     * The mass and where it was weighed.
     *
     * @return for example "161.5 lb on scale platform, 2026-10-19"
     */
    @Override
    public String toString() {
        return Amounts.format(total) + " on scale " + scale.id() + ", " + weighedOn;
    }
}
