package org.gritwright.core.fleet.review;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.finding.Slip.Mistake;
import org.gritwright.core.finding.Term;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.plausibility.Digits;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.weighing.ReadVolume;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.RevolutionCount;

/** The slips of catches: of their masses, their counts, and what they were made for. */
final class CatchSlips {
    private static final double POUNDS_PER_KILOGRAM = 1 / Amounts.si(Mass.class, Amounts.of(1, SpreadingUnits.POUND));

    /** Slips of single catches are looked for in so many at most: those that fit worst. */
    private static final int MOST_CATCHES = 12;

    private final Sketch day;
    private final List<SketchedCatch> suspects;
    private final List<Hypothesis> all = new ArrayList<>();

    private CatchSlips(Sketch day, List<SketchedCatch> suspects) {
        this.day = day;
        this.suspects = suspects;
    }

    /**
     * The slips.
     *
     * @param ofOne whether slips of single catches are looked for too
     */
    static List<Hypothesis> of(Sketch day, boolean ofOne) {
        if (day.catches().isEmpty()) {
            return List.of();
        }
        CatchSlips made = new CatchSlips(day, ofOne ? day.worstFitting(MOST_CATCHES) : List.of());
        made.masses();
        made.volumes();
        made.tares();
        made.digits();
        made.counts();
        if (made.isOfLiquid()) {
            made.fills();
            made.air();
        } else {
            // What meters a volume gives the same of every brine, and there is no gate.
            made.elsewhere();
        }
        made.displays();
        return made.all;
    }

    /** Where it would change nothing, nobody made it. */
    private void add(Slip slip, int places, UnaryOperator<SketchedCatch> change) {
        Sketch repaired = day.with(change);
        if (!repaired.catches().equals(day.catches())) {
            all.add(new Hypothesis(slip, List.of(repaired), places));
        }
    }

    /** This catch and no other, even one with the same numbers. */
    @SuppressWarnings("ReferenceEquality")
    private static UnaryOperator<SketchedCatch> only(SketchedCatch suspect, SketchedCatch changed) {
        return one -> one == suspect ? changed : one;
    }

    /** In one catch after the other. */
    private void addEach(Slip slip, UnaryOperator<SketchedCatch> change) {
        for (SketchedCatch suspect : suspects) {
            add(slip.in(List.of(suspect.at())), day.catches().size(), only(suspect, change.apply(suspect)));
        }
    }

    private static boolean isInPounds(SketchedCatch one) {
        return one.source().caught().total().getUnit().equals(SpreadingUnits.POUND);
    }

    private void masses() {
        Slip kilograms = Slip.of(Term.CAUGHT_MASS, Mistake.KILOGRAMS_AS_POUNDS, List.of());
        UnaryOperator<SketchedCatch> inPounds =
                one -> isInPounds(one) ? one.withKilograms(one.kilograms() * POUNDS_PER_KILOGRAM) : one;
        add(kilograms, 1, inPounds);
        addEach(kilograms, inPounds);
    }

    /** Liters and gallons mixed up in what was read. Air in a line explains as much as imperial gallons do, and is far more usual. */
    private void volumes() {
        volumes(Mistake.LITERS_AS_GALLONS, 1 / Digits.LITERS_PER_GALLON);
        volumes(Mistake.GALLONS_AS_LITERS, Digits.LITERS_PER_GALLON);
    }

    private void volumes(Mistake mistake, double factor) {
        Slip slip = Slip.of(Term.CAUGHT_VOLUME, mistake, List.of());
        UnaryOperator<SketchedCatch> change =
                one -> one.source().caught() instanceof ReadVolume ? one.withKilograms(one.kilograms() * factor) : one;
        add(slip, 1, change);
        addEach(slip, change);
    }

    private boolean isOfLiquid() {
        return day.catches().get(0).point().material().isLiquid();
    }

    /** In one catch after the other. In all of them it is as wear is, and what a pump delivers of its displacement says both. */
    private void air() {
        for (SketchedCatch suspect : suspects) {
            List<Sketch> repaired = DoubleStream.of(0.06, 0.12, 0.18, 0.25, 0.33, 0.42, 0.55)
                    .mapToObj(air -> day.with(only(suspect, suspect.withKilograms(suspect.kilograms() / (1 - air)))))
                    .toList();
            all.add(new Hypothesis(
                    Slip.of(Term.CAUGHT_VOLUME, Mistake.AIR_IN_LINE, List.of()).in(List.of(suspect.at())),
                    repaired,
                    repaired.size() * day.catches().size()));
        }
    }

    /** Two digits of a fill swapped. */
    private void fills() {
        for (SketchedCatch suspect : suspects) {
            if (suspect.source().caught() instanceof ReadVolume read) {
                for (Quantity<Volume> fill : read.fills()) {
                    Set<Double> swapped = Digits.swapped(fill.getValue().doubleValue());
                    for (double number : swapped) {
                        addFill(
                                suspect,
                                read,
                                fill,
                                number,
                                day.catches().size() * read.fills().size() * swapped.size());
                    }
                }
            }
        }
    }

    private void addFill(SketchedCatch suspect, ReadVolume read, Quantity<Volume> fill, double number, int places) {
        double capacity = Amounts.in(read.container().capacity(), fill.getUnit());
        double others = Amounts.in(read.total().asType(Volume.class), fill.getUnit())
                - fill.getValue().doubleValue();
        if (number <= capacity) {
            double factor = (others + number) / (others + fill.getValue().doubleValue());
            add(
                    Slip.of(Term.CAUGHT_VOLUME, Mistake.DIGITS_SWAPPED, List.of(Amounts.of(number, fill.getUnit())))
                            .in(List.of(suspect.at())),
                    places,
                    only(suspect, suspect.withKilograms(suspect.kilograms() * factor)));
        }
    }

    /** What the containers of other catches weigh when they are empty, or else anything that containers may weigh. */
    private void tares() {
        List<SketchedCatch> without =
                day.catches().stream().filter(SketchedCatch::isTareMissing).toList();
        if (without.isEmpty()) {
            return;
        }
        OptionalDouble usual = day.catches().stream()
                .filter(one -> !one.isTareMissing())
                .flatMap(one -> one.weighings().stream())
                .mapToDouble(one -> Amounts.si(Mass.class, one.tare()))
                .average();
        double[] tares = usual.isPresent()
                ? new double[] {usual.getAsDouble()}
                : IntStream.rangeClosed(1, 12)
                        .mapToDouble(step -> 0.005 * step * step)
                        .map(part -> part
                                * without.get(0).kilograms()
                                / without.get(0).weighings().size())
                        .toArray();
        List<Sketch> repaired = DoubleStream.of(tares)
                .mapToObj(tare -> day.with(one -> {
                    double left = one.kilograms() - tare * one.weighings().size();
                    return one.isTareMissing() && left > 0 ? one.withKilograms(left) : one;
                }))
                .toList();
        List<OffsetDateTime> at = without.size() == day.catches().size()
                ? List.of()
                : without.stream().map(SketchedCatch::at).toList();
        Unit<Mass> unit = without.get(0).source().massUnit();
        // What containers of the kind weigh, about.
        Quantity<Mass> tare = Amounts.of(
                new BigDecimal(Amounts.in(Amounts.ofSi(tares[tares.length / 2], unit), unit))
                        .round(new MathContext(2))
                        .doubleValue(),
                unit);
        all.add(new Hypothesis(
                Slip.of(Term.TARE, Mistake.FORGOTTEN, List.of(tare)).in(at), repaired, tares.length));
    }

    /** Two digits of a gross mass swapped, or its decimal point moved. */
    private void digits() {
        for (SketchedCatch suspect : suspects) {
            int places = day.catches().stream()
                    .mapToInt(one -> one.weighings().size())
                    .sum();
            for (Weighing weighing : suspect.weighings()) {
                Set<Double> swapped = Digits.swapped(weighing.gross().getValue().doubleValue());
                for (double gross : swapped) {
                    addGross(suspect, weighing, gross, places * swapped.size());
                }
                addGross(suspect, weighing, weighing.gross().getValue().doubleValue() / 10, places);
            }
        }
    }

    private void addGross(SketchedCatch suspect, Weighing weighing, double number, int places) {
        Quantity<Mass> gross = Amounts.of(number, weighing.gross().getUnit());
        double kilograms =
                suspect.kilograms() + Amounts.si(Mass.class, gross) - Amounts.si(Mass.class, weighing.gross());
        if (!(kilograms > 0) || !(Amounts.si(Mass.class, gross) >= Amounts.si(Mass.class, weighing.tare()))) {
            return;
        }
        boolean tenth = number == weighing.gross().getValue().doubleValue() / 10;
        Slip slip = tenth
                ? Slip.byFactor(Term.GROSS_MASS, Mistake.TOO_LARGE, 10, gross)
                : Slip.of(Term.GROSS_MASS, Mistake.DIGITS_SWAPPED, List.of(gross));
        SketchedCatch changed = suspect.withKilograms(kilograms);
        add(slip.of(weighing.container()).in(List.of(suspect.at())), places, only(suspect, changed));
    }

    private void counts() {
        DriveFeedback feedback = day.catches().get(0).point().metering().feedback();
        if (feedback instanceof ShaftSensor sensor) {
            for (double factor : List.of(2.0, 10.0)) {
                sensor(sensor, factor, Mistake.TOO_SMALL);
                sensor(sensor, 1 / factor, Mistake.TOO_LARGE);
            }
        }
        if (!day.catches().get(0).point().metering().hasShaft()) {
            return;
        }
        UnaryOperator<SketchedCatch> oneTurn = one -> one.isVerification() ? one : turned(one, -1);
        add(
                Slip.of(Term.REVOLUTIONS, Mistake.TURN_TOO_MANY, List.of())
                        .in(day.catches().stream()
                                .filter(one -> !one.isVerification())
                                .map(SketchedCatch::at)
                                .toList()),
                1,
                oneTurn);
        addEach(Slip.of(Term.REVOLUTIONS, Mistake.TURN_TOO_MANY, List.of()), one -> turned(one, -1));
        for (int i = 1; i < day.catches().size(); i++) {
            SketchedCatch before = day.catches().get(i - 1);
            SketchedCatch one = day.catches().get(i);
            double rest = one.counted().orElse(0) - before.counted().orElse(0);
            if (before.counted().isPresent() && rest > 0 && suspects.contains(one)) {
                SketchedCatch changed = one.withCounted(OptionalDouble.of(rest));
                add(
                        Slip.of(Term.REVOLUTIONS, Mistake.NOT_RESET, List.of(turns(rest)))
                                .in(List.of(one.at())),
                        day.catches().size(),
                        only(one, changed));
            }
        }
        add(
                Slip.of(Term.REVOLUTIONS, Mistake.RUN_TIME_INSTEAD, List.of())
                        .in(day.catches().stream()
                                .filter(CatchSlips::isRunTime)
                                .map(SketchedCatch::at)
                                .toList()),
                1,
                one -> isRunTime(one) ? one.withCounted(OptionalDouble.empty()) : one);
    }

    private static Quantity<RevolutionCount> turns(double revolutions) {
        return Amounts.of(revolutions, SpreadingUnits.REVOLUTION);
    }

    private static SketchedCatch turned(SketchedCatch one, double more) {
        double turns = one.counted().orElse(0) + more;
        return one.counted().isPresent() && turns > 0 ? one.withCounted(OptionalDouble.of(turns)) : one;
    }

    /** Where the value in force is one by pulse, it means another mass per revolution too. */
    private void sensor(ShaftSensor sensor, double factor, Mistake mistake) {
        Quantity<PulsesPerRevolution> instead = Amounts.of(
                sensor.pulsesPerRevolution().getValue().doubleValue() * factor,
                sensor.pulsesPerRevolution().getUnit());
        add(Slip.byFactor(Term.PULSES_PER_REVOLUTION, mistake, Math.max(factor, 1 / factor), instead), 1, one -> {
            SketchedCatch counted = one.isInPulses()
                    ? one.withCounted(OptionalDouble.of(one.counted().orElseThrow() / factor))
                    : one;
            boolean byPulse = one.verification()
                    .filter(made -> made.inForce().factor().form().isByPulse())
                    .isPresent();
            return byPulse ? counted.withHeld(counted.heldKilograms() * factor) : counted;
        });
    }

    /** A count in pulses that is just the number of seconds. */
    private static boolean isRunTime(SketchedCatch one) {
        if (!one.isInPulses() || !one.isVerification()) {
            return false;
        }
        VerificationCatch made = one.verification().orElseThrow();
        double pulses = Math.rint(one.counted().orElseThrow() / one.pulse());
        return made.run()
                .runTime()
                .filter(time -> Math.rint(Amounts.si(Time.class, time)) == pulses)
                .isPresent();
    }

    /** Verification catches that were not made with the material, or at the opening, that they name. */
    private void elsewhere() {
        List<OffsetDateTime> at = day.catches().stream()
                .filter(SketchedCatch::isVerification)
                .map(SketchedCatch::at)
                .toList();
        if (at.isEmpty() || at.size() == day.catches().size()) {
            return;
        }
        List<Sketch> repaired = DoubleStream.of(0.6, 0.7, 0.76, 0.82, 0.88, 1.12, 1.18, 1.25, 1.35, 1.5, 1.7)
                .mapToObj(factor ->
                        day.with(one -> one.isVerification() ? one.withKilograms(one.kilograms() / factor) : one))
                .toList();
        all.add(new Hypothesis(
                Slip.of(Term.VERIFICATION, Mistake.MADE_ELSEWHERE, List.of()).in(at), repaired, repaired.size()));
    }

    private void displays() {
        Predicate<SketchedCatch> isShown = one -> one.shownKilograms().isPresent() && isInPounds(one);
        List<OffsetDateTime> shown =
                day.catches().stream().filter(isShown).map(SketchedCatch::at).toList();
        add(
                Slip.of(Term.DISPLAYED_MASS, Mistake.KILOGRAMS_AS_POUNDS, List.of())
                        .in(shown),
                1,
                one -> isShown.test(one)
                        ? one.withShown(one.shownKilograms().orElseThrow() * POUNDS_PER_KILOGRAM)
                        : one);
    }
}
