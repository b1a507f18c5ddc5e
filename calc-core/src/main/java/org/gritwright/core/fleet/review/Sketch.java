package org.gritwright.core.fleet.review;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * A truck's day as the numbers that a slip would change, and how likely they are where nobody slipped: the apparent fill is
 * usual for the type, near to the same at all openings, and the same in all catches at one; the value in force was right not
 * long ago; the truck lays what is wanted, or less while it starts; count and display tell of the same turns. All chances and
 * spreads are common practice, no source.
 *
 * @param catches the catches
 * @param held the values in force, unless the day's calibration was entered
 * @param expected the values that a catch might have been made with: those that are listed, and the day's calibrations
 * @param fill the usual fill
 * @param scatters relative standard deviations of single catches, one of which is true
 * @param unlisted how many points have catches made with a value that neither the truck's list nor the day's calibration has
 * @param places how many calibration points there are
 */
public record Sketch(
        List<SketchedCatch> catches,
        List<Held> held,
        List<Held> expected,
        FillLimits fill,
        List<Double> scatters,
        int unlisted,
        int places) {
    /** By how much the fill differs from opening to opening. */
    private static final double SHAPE = 0.04;

    /** How far a value in force may be from what is true today. */
    private static final double DRIFT = 0.06;

    /** Catches never scatter less. */
    private static final double LEAST_SCATTER = 0.003;

    /** Tickets of so many catches are compared with those of other trucks. */
    private static final int MOST_SUSPECTS = 12;

    /** Catches at one point that differ by no more, as logarithms, hide no slip that could be told from their scatter. */
    private static final double ALIKE = 0.01;

    /** People round by so much before they enter a value, however fine the display's step is (common practice, no source). */
    private static final double ROUNDED = 0.002;

    /** What happens only by a slip that is not looked for. */
    private static final double NEVER = 1e-4;

    /** Gross and tare are asked for, and some crews write down net masses with tares of 0 all the same. */
    private static final double NET_MASSES = 0.002;

    /** How well a drive follows its controller. */
    private static final double DRIVE = 0.01;

    /** Some drives start slowly or meet a limit. */
    static final double SLOW = 0.2;

    private static final double SLOWEST = 0.75;

    /**
     * A value in force.
     *
     * @param place which of the day's points it is for
     * @param point the point
     * @param kilogramsPerRevolution the value
     * @param looseKilograms as of a catch
     * @param entered as a person entered it; none for one that the day found
     */
    record Held(
            int place,
            CalibrationPoint point,
            double kilogramsPerRevolution,
            double looseKilograms,
            Optional<CalibrationFactor> entered) {
        Held with(double kilograms, double loose) {
            return new Held(place, point, kilograms, loose, entered);
        }

        double logFill() {
            return Math.log(kilogramsPerRevolution / looseKilograms);
        }
    }

    /**
     * A truck's day.
     *
     * @param calibrationCatches its calibration catches
     * @param verificationCatches its verification catches, those at one point in the order of time; without those that say nothing
     *     of the value in force
     * @param calibrations the calibrations of the day, and so which values in force are theirs
     * @param listed the values in force that the truck lists
     */
    public static Sketch of(
            List<CalibrationCatch> calibrationCatches,
            List<VerificationCatch> verificationCatches,
            List<Calibration> calibrations,
            List<CalibrationInForce> listed,
            CatchLimits limits) {
        // A truck's entries share one object for each calibration point.
        IdentityHashMap<CalibrationPoint, Integer> places = new IdentityHashMap<>();
        ToIntFunction<CalibrationPoint> place = point -> places.computeIfAbsent(point, one -> places.size());
        List<SketchedCatch> catches = Stream.concat(
                        calibrationCatches.stream()
                                .sorted(Comparator.comparing(
                                        one -> one.observation().at()))
                                .map(one -> SketchedCatch.of(
                                        place.applyAsInt(one.observation().point()), one.observation())),
                        verificationCatches.stream().map(one -> SketchedCatch.of(place.applyAsInt(one.point()), one)))
                .toList();
        Map<Integer, Double> found = calibrations.stream()
                .collect(Collectors.toMap(
                        one -> place.applyAsInt(one.point()), Sketch::kilogramsPerRevolution, (a, b) -> a));
        Map<Integer, Set<Double>> values = new HashMap<>();
        listed.forEach(one -> values.computeIfAbsent(place.applyAsInt(one.point()), key -> new HashSet<>())
                .add(one.kilogramsPerRevolution()));
        List<Held> held = new ArrayList<>();
        int unlisted = 0;
        for (CalibrationInForce one : listed) {
            add(one, place.applyAsInt(one.point()), found, held);
        }
        Set<Integer> verified = new HashSet<>();
        for (VerificationCatch one : verificationCatches) {
            Set<Double> known = values.getOrDefault(place.applyAsInt(one.point()), Set.of());
            // A later catch at the point may have been made with a correction.
            boolean first = verified.add(place.applyAsInt(one.point()));
            if (first && !known.contains(one.inForce().kilogramsPerRevolution())) {
                unlisted += !known.isEmpty() && !isEntered(one.inForce(), place.applyAsInt(one.point()), found) ? 1 : 0;
                add(one.inForce(), place.applyAsInt(one.point()), found, held);
            }
        }
        FillLimits fill = limits.fill()
                .orElseGet(() -> points(catches, held)
                        .findFirst()
                        .orElseThrow()
                        .metering()
                        .fillLimits());
        List<Double> scatters = limits.allowances()
                .repeatability()
                .map(one -> List.of(Math.max(LEAST_SCATTER, one.relative())))
                .orElse(List.of(0.004, 0.008, 0.016, 0.032));
        List<Held> expected = Stream.concat(
                        listed.stream()
                                .map(one -> held(
                                        place.applyAsInt(one.point()),
                                        one.point(),
                                        one.kilogramsPerRevolution(),
                                        Optional.of(one.factor()))),
                        calibrations.stream()
                                .map(one -> held(
                                        place.applyAsInt(one.point()),
                                        one.point(),
                                        kilogramsPerRevolution(one),
                                        Optional.empty())))
                .toList();
        return new Sketch(catches, List.copyOf(held), expected, fill, scatters, unlisted, places.size());
    }

    private static Stream<CalibrationPoint> points(List<SketchedCatch> catches, List<Held> held) {
        return catches.isEmpty()
                ? held.stream().map(Held::point)
                : catches.stream().map(SketchedCatch::point);
    }

    /** Of the catches; where there are none, of the values in force. */
    Stream<CalibrationPoint> points() {
        return points(catches, held);
    }

    private static double kilogramsPerRevolution(Calibration calibration) {
        return Amounts.si(
                DischargePerRevolution.class,
                calibration.dischargePerRevolution().value());
    }

    private static void add(CalibrationInForce one, int place, Map<Integer, Double> found, List<Held> held) {
        if (!isFound(one, place, found)) {
            held.add(held(place, one.point(), one.kilogramsPerRevolution(), Optional.of(one.factor())));
        }
    }

    private static Held held(
            int place, CalibrationPoint point, double kilogramsPerRevolution, Optional<CalibrationFactor> entered) {
        return new Held(place, point, kilogramsPerRevolution, SketchedCatch.loose(point), entered);
    }

    /**
     * Whether a value is a calibration's, as a display or a person rounds it: then it tells nothing more.
     *
     * @param one a value in force
     * @param calibrated kilograms per revolution that were found
     * @return whether it may have been entered from that
     */
    public static boolean isRounded(CalibrationInForce one, double calibrated) {
        return isNear(one, calibrated, Math.max(ROUNDED, step(one).orElse(0)));
    }

    private static boolean isFound(CalibrationInForce one, int place, Map<Integer, Double> found) {
        return found.containsKey(place) && isRounded(one, found.get(place));
    }

    /** Whether it is just that which a display makes of the day's calibration. */
    private static boolean isEntered(CalibrationInForce one, int place, Map<Integer, Double> found) {
        return found.containsKey(place)
                && isNear(one, found.get(place), step(one).orElse(ROUNDED));
    }

    private static boolean isNear(CalibrationInForce one, double calibrated, double limit) {
        return Math.abs(one.kilogramsPerRevolution() / calibrated - 1) <= limit;
    }

    /** Of the display, relative to the value. */
    private static OptionalDouble step(CalibrationInForce one) {
        return one.displayStep()
                .map(size -> OptionalDouble.of(size.getValue().doubleValue()
                        / one.factor().value().getValue().doubleValue()))
                .orElse(OptionalDouble.empty());
    }

    Sketch with(UnaryOperator<SketchedCatch> change) {
        List<SketchedCatch> changed = new ArrayList<>(catches);
        changed.replaceAll(change);
        return new Sketch(Collections.unmodifiableList(changed), held, expected, fill, scatters, unlisted, places);
    }

    Sketch withHeld(UnaryOperator<Held> change) {
        return new Sketch(catches, held.stream().map(change).toList(), expected, fill, scatters, unlisted, places);
    }

    /** The same without a value in force that nobody meant. */
    Sketch without(double kilogramsPerRevolution) {
        return new Sketch(
                catches,
                held.stream()
                        .filter(one -> one.kilogramsPerRevolution() != kilogramsPerRevolution)
                        .toList(),
                expected,
                fill,
                scatters,
                unlisted - 1,
                places);
    }

    /** The same with the equipment and the materials as they might be. */
    Sketch withLoose(ToDoubleFunction<CalibrationPoint> loose) {
        double[] known = new double[places];
        for (SketchedCatch one : catches) {
            known[one.place()] = known[one.place()] > 0 ? known[one.place()] : loose.applyAsDouble(one.point());
        }
        for (Held one : held) {
            known[one.place()] = known[one.place()] > 0 ? known[one.place()] : loose.applyAsDouble(one.point());
        }
        return with(one -> one.withLoose(known[one.place()]))
                .withHeld(one -> one.with(one.kilogramsPerRevolution(), known[one.place()]));
    }

    /** The logarithm of the apparent fill of a catch; none where nothing tells of its turns. */
    private static OptionalDouble logFill(SketchedCatch one) {
        OptionalDouble turns = one.revolutions();
        return turns.isPresent()
                ? OptionalDouble.of(Math.log(one.kilograms() / turns.getAsDouble() / one.looseKilograms()))
                : turns;
    }

    /**
     * The material of the first catch, or else of the first value in force.
     *
     * @return its name
     */
    public String material() {
        return points().findFirst().orElseThrow().material().name();
    }

    /** The middle one of the fills that values in force imply, as a logarithm. */
    OptionalDouble medianLogFillOfHeld() {
        return middle(held.stream().mapToDouble(Held::logFill));
    }

    /** The middle one of the catches' fills, as a logarithm; none without a catch that tells. */
    OptionalDouble medianLogFill() {
        return middle(catches.stream()
                .map(Sketch::logFill)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble));
    }

    private static OptionalDouble middle(DoubleStream logFills) {
        // A type of others may sweep nothing.
        double[] fills = logFills.filter(Double::isFinite).sorted().toArray();
        return fills.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(fills[fills.length / 2]);
    }

    /** The middle of the usual fills, as a logarithm. */
    double usualLogFill() {
        return (Math.log(fill.lowestUsual()) + Math.log(fill.highestUsual())) / 2;
    }

    /**
     * What a catch should have caught by all the others.
     *
     * @param logKilograms the logarithm of the mass
     * @param deviation its standard deviation, the catch's own scatter included
     */
    record Expected(SketchedCatch of, double logKilograms, double deviation) {}

    /** For those catches that fit worst. */
    List<Expected> expectedMasses() {
        return worstFitting(MOST_SUSPECTS).stream()
                .flatMap(one -> expectedMass(one).stream())
                .toList();
    }

    /** By all others, even one with the same numbers. */
    @SuppressWarnings("ReferenceEquality")
    private Optional<Expected> expectedMass(SketchedCatch one) {
        OptionalDouble turns = one.revolutions();
        if (turns.isEmpty()) {
            return Optional.empty();
        }
        double scatter = scatters.get(scatters.size() / 2);
        NormalEstimates here = new NormalEstimates();
        NormalEstimates elsewhere = new NormalEstimates();
        double spread = spreadOfFills();
        elsewhere.add(usualLogFill(), spread * spread);
        for (SketchedCatch other : catches) {
            OptionalDouble logFill = logFill(other);
            if (other != one && logFill.isPresent()) {
                double variance = scatter * scatter + other.massVariance() + other.turnsVariance();
                if (other.point().equals(one.point())) {
                    here.add(logFill.getAsDouble(), variance);
                } else {
                    elsewhere.add(logFill.getAsDouble(), variance + SHAPE * SHAPE);
                }
            }
        }
        for (Held value : held) {
            if (value.point().equals(one.point())) {
                here.add(value.logFill(), DRIFT * DRIFT);
            }
        }
        here.add(elsewhere.mean(), elsewhere.variance() + SHAPE * SHAPE);
        return Optional.of(new Expected(
                one,
                here.mean() + Math.log(turns.getAsDouble() * one.looseKilograms()),
                Math.sqrt(here.variance() + scatter * scatter + one.massVariance() + one.turnsVariance())));
    }

    private double spreadOfFills() {
        return Math.log(fill.highestUsual() / fill.lowestUsual()) / 4;
    }

    /** The catches whose fills are farthest from the middle one. */
    List<SketchedCatch> worstFitting(int most) {
        if (catches.size() <= most) {
            return catches;
        }
        double median = medianLogFill().orElse(0);
        return catches.stream()
                .sorted(Comparator.comparingDouble(one -> -Math.abs(logFill(one).orElse(median) - median)))
                .limit(most)
                .toList();
    }

    /**
     * By how much the day could become more likely, as a logarithm, if other equipment made its fills usual and alike from opening
     * to opening: no slip with gate, conveyor or material does more.
     */
    double greatestGainByEquipment() {
        NormalEstimates all = new NormalEstimates();
        double gain = 0;
        double scatter = scatters.get(0);
        List<NormalEstimates> points = byPoint(fills(), scatter);
        for (NormalEstimates point : points) {
            all.add(point.mean(), point.variance() + SHAPE * SHAPE);
        }
        for (NormalEstimates point : points) {
            gain += square(point.mean() - all.mean()) / (point.variance() + SHAPE * SHAPE);
        }
        return points.isEmpty()
                ? 0
                : (gain + square(all.mean() - usualLogFill()) / (all.variance() + square(spreadOfFills()))) / 2;
    }

    private static double square(double number) {
        return number * number;
    }

    /** Whether the catches at every point agree so well that no slip with one of them could be told. */
    boolean isAlike() {
        Map<Integer, DoubleSummaryStatistics> byPoint = new HashMap<>();
        for (SketchedCatch one : catches) {
            logFill(one)
                    .ifPresent(fill -> byPoint.computeIfAbsent(one.place(), key -> new DoubleSummaryStatistics())
                            .accept(fill));
        }
        return byPoint.values().stream().allMatch(point -> point.getMax() - point.getMin() < ALIKE);
    }

    /** The logarithm of how likely it all is. */
    double logLikelihood() {
        double discharges = 0;
        double best = Double.NEGATIVE_INFINITY;
        List<Fill> fills = fills();
        double[] logs = new double[scatters.size()];
        for (int i = 0; i < logs.length; i++) {
            logs[i] = ofDischarges(fills, scatters.get(i));
            best = Math.max(best, logs[i]);
        }
        for (double log : logs) {
            discharges += Math.exp(log - best);
        }
        double sum = best + Math.log(discharges / logs.length) + unlisted * Math.log(NEVER);
        boolean tared = isTared();
        boolean untared = false;
        for (SketchedCatch one : catches) {
            sum += one.isVerification() ? ofDelivery(one) + ofDisplay(one) : 0;
            sum += tared && one.isTareMissing() && one.isAsWeighed() ? Math.log(NEVER) : 0;
            untared |= one.isTareMissing() && one.isAsWeighed();
        }
        return untared && !tared ? sum + Math.log(NET_MASSES) : sum;
    }

    /** Whether the tares of one catch or more are known. */
    private boolean isTared() {
        for (SketchedCatch one : catches) {
            if (!one.isTareMissing()) {
                return true;
            }
        }
        return false;
    }

    /**
     * What a catch, or a value in force, tells of the fill.
     *
     * @param place of which point
     * @param log the logarithm of the fill
     * @param massVariance of a catch, beside its scatter
     * @param turnsVariance likewise
     * @param isCatch whether a catch tells it
     */
    private record Fill(int place, double log, double massVariance, double turnsVariance, boolean isCatch) {
        double variance(double scatter) {
            return isCatch ? scatter * scatter + massVariance + turnsVariance : DRIFT * DRIFT;
        }
    }

    private List<Fill> fills() {
        List<Fill> fills = new ArrayList<>();
        for (SketchedCatch one : catches) {
            OptionalDouble logFill = logFill(one);
            if (logFill.isPresent()) {
                fills.add(new Fill(one.place(), logFill.getAsDouble(), one.massVariance(), one.turnsVariance(), true));
            }
        }
        for (Held value : held) {
            fills.add(new Fill(value.place(), value.logFill(), 0, 0, false));
        }
        return fills;
    }

    /** Of each point that something tells of. */
    private List<NormalEstimates> byPoint(List<Fill> fills, double scatter) {
        List<NormalEstimates> byPoint = new ArrayList<>(places);
        for (int i = 0; i < places; i++) {
            byPoint.add(new NormalEstimates());
        }
        for (Fill fill : fills) {
            byPoint.get(fill.place()).add(fill.log(), fill.variance(scatter));
        }
        byPoint.removeIf(NormalEstimates::isEmpty);
        return byPoint;
    }

    private double ofDischarges(List<Fill> fills, double scatter) {
        List<NormalEstimates> byPoint = byPoint(fills, scatter);
        if (byPoint.isEmpty()) {
            return 0;
        }
        NormalEstimates all = new NormalEstimates();
        double log = 0;
        for (NormalEstimates point : byPoint) {
            log += point.logDensityOfSpread();
            all.add(point.mean(), point.variance() + SHAPE * SHAPE);
        }
        double spread = spreadOfFills();
        return log
                + all.logDensityOfSpread()
                + NormalEstimates.logDensity(all.mean() - usualLogFill(), all.variance() + spread * spread);
    }

    /** The controller turns the shaft until it believes to have laid what is wanted; a slow drive lays less. */
    private static double ofDelivery(SketchedCatch one) {
        if (one.revolutions().isEmpty()) {
            return 0;
        }
        return logDelivered(
                Math.log(one.revolutions().getAsDouble() * one.heldKilograms() / one.expectedKilograms()),
                one.turnsVariance(),
                SLOW);
    }

    /** How likely a logarithm of delivered ÷ expected is, where a drive is slow with a given probability. */
    static double logDelivered(double logarithm, double variance, double slow) {
        double usual = (1 - slow) * Math.exp(NormalEstimates.logDensity(logarithm, DRIVE * DRIVE + variance));
        boolean maybeSlow = logarithm > -SLOWEST && logarithm < 0;
        return Math.log(usual + (maybeSlow ? slow / SLOWEST : 0) + NEVER);
    }

    private static double ofDisplay(SketchedCatch one) {
        if (one.counted().isEmpty() || one.displayed().isEmpty()) {
            return 0;
        }
        double logarithm =
                Math.log(one.counted().getAsDouble() / one.displayed().getAsDouble());
        double variance = one.turnsVariance() + one.displayVariance();
        return Math.log(Math.exp(NormalEstimates.logDensity(logarithm, variance)) + NEVER);
    }
}
