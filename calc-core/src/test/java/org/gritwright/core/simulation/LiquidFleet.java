package org.gritwright.core.simulation;

import static org.gritwright.units.SpreadingUnits.*;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CourseRunEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.ReadEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.record.Document;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.units.Amounts;

/** Days with liquids, assessed whole through the public API, as {@link Simulation} does with grains. */
final class LiquidFleet {
    private static final FleetAssessor ASSESSOR = FleetAssessor.of(Equipment.TYPES);

    private LiquidFleet() {}

    /**
     * One truck, and what was told of it.
     *
     * @param made the truck and what was written down
     * @param worstCatch the greatest part that a catch as written is off
     * @param correctedError the road error once a proposed correction is entered
     * @param told of the truck
     */
    record Outcome(
            LiquidFault fault, LiquidDay.Made made, double worstCatch, Optional<Double> correctedError, Told told) {
        boolean isOff() {
            return Math.abs(made.roadError()) > DayMaker.TOLERANCE;
        }

        /** Whether anything that is off by more than the tolerance stands in the record; a rating or a target always is. */
        boolean isWronglyRecorded() {
            return worstCatch > DayMaker.TOLERANCE
                    || List.of(
                                    LiquidFault.K_IN_ENTRY,
                                    LiquidFault.PULSES_HALF,
                                    LiquidFault.PULSES_DOUBLE,
                                    LiquidFault.PULSES_TENTH,
                                    LiquidFault.PULSES_TENFOLD,
                                    LiquidFault.OTHER_DRY_RATE,
                                    LiquidFault.TWICE)
                            .contains(fault);
        }

        boolean isNamed() {
            return told.suggestions().stream().anyMatch(fault::isNamedIn);
        }

        boolean isNamedFirst() {
            return told.suggestions().stream().limit(1).anyMatch(fault::isNamedIn);
        }

        boolean isMiscorrected() {
            return correctedError
                    .filter(error -> Math.abs(error) > DayMaker.TOLERANCE)
                    .isPresent();
        }
    }

    static FleetDay day(LiquidFault fault, List<LiquidDay.Made> all) {
        LiquidDay.Made first = all.get(0);
        boolean us = first.truck().us();
        List<TruckDay> trucks = new ArrayList<>();
        trucks.add(grains("T-1", us));
        all.forEach(one -> trucks.add(one.entry()));
        FleetDay plain = FleetDay.of(
                        TruckMaker.DAY,
                        LocalDate.of(2026, 11, 1),
                        Amounts.of(100 * DayMaker.TOLERANCE, PERCENT),
                        List.of(scale("S", 600, 0.2, us), scale("platform", 1000, 0.5, us)),
                        Stream.concat(Stream.of(salt()), all.stream().map(LiquidDay.Made::brine))
                                .toList(),
                        trucks)
                .withDecisionRule(DecisionRule.guarded(100 * DayMaker.RISK))
                .withGraduates(
                        all.stream().flatMap(one -> one.graduates().stream()).toList());
        return first.truck().seed() % 2 == 0
                ? plain
                : plain.withAllowances(new CatchAllowances(
                        Amounts.of(0, PERCENT),
                        Amounts.of(0, PERCENT),
                        Optional.empty(),
                        Optional.of(Repeatability.assumed(
                                Trade.written(Math.max(0.1, 100 * first.truck().repeatability()), 0.1, PERCENT)))));
    }

    private static Scale scale(String id, double capacity, double division, boolean us) {
        return Scale.of(
                        id,
                        Amounts.of(capacity * (us ? 1 : 0.5), us ? POUND : KILOGRAM),
                        Amounts.of(us ? division : division * 0.4, us ? POUND : KILOGRAM))
                .withAccuracy(new ScaleAccuracy.Stated(Amounts.of(0.1, PERCENT)));
    }

    private static Material salt() {
        return Material.of("salt", Amounts.of(78, POUND_PER_CUBIC_FOOT)).withChemical(Amounts.of(96, PERCENT));
    }

    static RoadSpeedEntry roadSpeed(boolean us) {
        return new RoadSpeedEntry(
                TruckMaker.DAY,
                Amounts.of(12_600, us ? PULSE_PER_MILE : PULSE_PER_KILOMETER),
                IntStream.of(12_590, 12_605, 12_600)
                        .mapToObj(pulses ->
                                new CourseRunEntry(Amounts.of(1, us ? MILE : KILOMETER), Amounts.of(pulses, PULSE)))
                        .toList());
    }

    /** A sound spreader, whose grains are wetted. */
    private static TruckDay grains(String id, boolean us) {
        SpreaderEntry auger = SpreaderEntry.sensed(
                new TypedEntry(
                        "auger",
                        1,
                        Map.of(
                                "screwDiameter",
                                Amounts.of(6, INCH),
                                "shaftDiameter",
                                Amounts.of(1.5, INCH),
                                "pitch",
                                Amounts.of(5, INCH))),
                new TypedEntry("no-gate", 1, Map.of()),
                Amounts.of(60, PULSE_PER_REVOLUTION),
                Amounts.of(1, ONE));
        return TruckDay.of(id, auger)
                .inForce(List.of(new InForceEntry(
                        us ? Amounts.of(5.7, POUND_PER_REVOLUTION) : Amounts.of(2.585, KILOGRAM_PER_REVOLUTION),
                        Optional.empty(),
                        Since.of(TruckMaker.DAY.minusDays(20)),
                        "salt",
                        Optional.empty(),
                        Optional.empty())))
                .roadSpeed(roadSpeed(us));
    }

    private static CatchEntry swapped(CatchEntry one, CatchEntry other) {
        return new CatchEntry(
                one.at(),
                one.operator(),
                one.scale(),
                other.containers(),
                one.read()
                        .map(read -> new ReadEntry(
                                read.container(), other.read().orElseThrow().fills())),
                one.density(),
                one.counted(),
                one.setting(),
                one.material(),
                one.conditions(),
                one.notes());
    }

    private static LiquidDay.Made withFirst(LiquidDay.Made one, LiquidDay.Made other) {
        CatchEntry theirs = other.entry().verificationCatches().get(0).entry();
        List<VerificationCatchEntry> mine =
                Edit.one(one.entry().verificationCatches(), 0, made -> Edit.with(made, swapped(made.entry(), theirs)));
        double ratio =
                volume(theirs) / volume(one.entry().verificationCatches().get(0).entry());
        return new LiquidDay.Made(
                one.truck(),
                one.entry().verificationCatches(mine),
                one.brine(),
                one.graduates(),
                one.truth(),
                one.held(),
                one.written(),
                one.commanded(),
                Math.abs(ratio - 1));
    }

    private static double volume(CatchEntry entry) {
        return entry.read()
                .map(read -> read.fills().get(0).getValue().doubleValue())
                .orElseGet(() -> Recorded.kilograms(entry));
    }

    static Outcome run(LiquidFault fault, long seed) {
        LiquidTruck truck = LiquidTruck.make(seed, fault::fits);
        LiquidDay.Made one = LiquidDay.make(truck, fault, "L-1");
        List<LiquidDay.Made> all = List.of(one);
        if (fault == LiquidFault.SWAPPED) {
            LiquidTruck second = LiquidTruck.make(
                    seed + 500_000_000,
                    other -> fault.fits(other)
                            && other.us() == truck.us()
                            && other.metered() == truck.metered()
                            && other.weighed() == truck.weighed()
                            && other.capacity() == truck.capacity()
                            && other.prewets() == truck.prewets());
            LiquidDay.Made other = LiquidDay.make(second, fault, "L-2");
            all = List.of(withFirst(one, other), withFirst(other, one));
        }
        Optional<FleetDay> read = Simulation.read(Document.FLEET_DAY.toText(day(fault, all)));
        Told told = read.map(day -> Told.of(assessed(day))).orElseGet(() -> Told.rejected("the document is rejected"));
        LiquidDay.Made made = all.get(0);
        return new Outcome(
                fault,
                made,
                made.worstCatch(),
                told.correction()
                        .map(correction -> made.roadError(
                                correction.toEnter().value().getValue().doubleValue())),
                told);
    }

    private static TruckAssessment assessed(FleetDay day) {
        return ASSESSOR.assess(day).get(1);
    }

    static List<Outcome> run(LiquidFault fault, long firstSeed, int trucks) {
        return LongStream.range(firstSeed, firstSeed + trucks)
                .parallel()
                .mapToObj(seed -> run(fault, seed))
                .toList();
    }

    /** What is told, and how often it is wrong. */
    static List<Tally> tallies(LiquidFault fault, long firstSeed, int trucks) {
        List<Outcome> all = run(fault, firstSeed, trucks);
        List<Tally> tallies = new ArrayList<>();
        for (NextStep step : NextStep.values()) {
            tallies.add(tally(
                    fault, step.name(), all.stream(), outcome -> outcome.told().step() == step));
        }
        for (LiquidMeasure measure : LiquidMeasure.values()) {
            tallies.add(tally(fault, measure.id(), all.stream().filter(measure::counts), measure::hits));
        }
        return tallies;
    }

    private static Tally tally(LiquidFault fault, String key, Stream<Outcome> of, Predicate<Outcome> hits) {
        List<Outcome> counted = of.toList();
        return new Tally(
                "liquid-" + fault.id(), key, (int) counted.stream().filter(hits).count(), counted.size());
    }
}
