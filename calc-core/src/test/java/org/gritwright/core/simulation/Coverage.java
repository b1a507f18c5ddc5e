package org.gritwright.core.simulation;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.simulation.TrueTruck.Reading;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.verification.Verification;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * How often an interval that is printed as 95 % holds the truth, on trucks without fault.
 *
 * @param holds whether the interval of a truck's first opening holds it; none where no interval is printed
 */
record Coverage(
        String id,
        String words,
        boolean threeCatchesOrMore,
        Predicate<TrueTruck> fits,
        BiFunction<DayMaker.Made, PointAssessment, Optional<Boolean>> holds) {
    static final int DAYS = 4000;
    static final String HELD = "held";

    static List<Coverage> all() {
        return List.of(
                calibration("calibration-1", "calibration, 1 catch, repeatability stated", 1, true),
                calibration("calibration-1-minimal", "calibration, 1 catch, nothing stated", 1, false),
                calibration("calibration-2", "calibration, 2 catches, repeatability stated", 2, true),
                calibration("calibration-2-minimal", "calibration, 2 catches, nothing stated", 2, false),
                calibration("calibration-3", "calibration, 3 catches", 3, false),
                calibration("calibration-5", "calibration, 5 catches", 5, false),
                verification(
                        "verification-3",
                        "verification by count, calibrated by 3 catches",
                        true,
                        truck -> truck.plan().reading() == Reading.COUNT
                                && truck.plan().calibrationCatches() == 3),
                verification(
                        "verification-stated",
                        "verification by count, no calibration, repeatability stated",
                        false,
                        truck -> truck.plan().reading() == Reading.COUNT
                                && truck.plan().calibrationCatches() == 0
                                && truck.plan().states()),
                verification(
                        "verification-minimal",
                        "verification by count, no calibration, nothing stated",
                        false,
                        truck -> truck.plan().reading() == Reading.COUNT
                                && truck.plan().calibrationCatches() == 0
                                && !truck.plan().states()),
                verification(
                        "verification-display",
                        "verification by display, 1 pulse a revolution",
                        false,
                        truck -> truck.plan().reading() == Reading.DISPLAY
                                && truck.pulsesPerRevolution() == 1
                                && truck.plan().states()));
    }

    private static Coverage calibration(String id, String words, int catches, boolean states) {
        return new Coverage(
                id,
                words,
                catches >= 3,
                truck -> truck.plan().calibrationCatches() == catches
                        && truck.plan().states() == states,
                Coverage::calibrationHolds);
    }

    private static Coverage verification(
            String id, String words, boolean threeCatchesOrMore, Predicate<TrueTruck> fits) {
        return new Coverage(
                id,
                words,
                threeCatchesOrMore,
                truck -> truck.plan().verificationCatches() > 0 && fits.test(truck),
                Coverage::verificationHolds);
    }

    private static Optional<Boolean> calibrationHolds(DayMaker.Made made, PointAssessment point) {
        return point.calibration().flatMap(calibration -> {
            Measured<DischargePerRevolution> measured = calibration.dischargePerRevolution();
            double truth = made.truck().discharge().get(0);
            double value = Amounts.si(DischargePerRevolution.class, measured.value());
            return measured.expandedUncertainty(0.95)
                    .map(width -> Math.abs(value - truth) <= Amounts.si(DischargePerRevolution.class, width));
        });
    }

    /** The error of the value as it was written down. */
    private static Optional<Boolean> verificationHolds(DayMaker.Made made, PointAssessment point) {
        Verification verification = point.lastVerification().orElseThrow();
        double held = verification.source().inForce().kilogramsPerRevolution();
        double truth = held / made.truck().discharge().get(0) - 1;
        Measured<Dimensionless> measured = verification.judgement().budget().result();
        double value = Amounts.si(Dimensionless.class, measured.value());
        return measured.expandedUncertainty(0.95)
                .map(width -> Math.abs(value - truth) <= Amounts.si(Dimensionless.class, width));
    }

    Tally tally(long firstSeed, int days) {
        List<Boolean> held = LongStream.range(firstSeed, firstSeed + days)
                .parallel()
                .mapToObj(this::holds)
                .flatMap(Optional::stream)
                .toList();
        return new Tally(id, HELD, (int) held.stream().filter(one -> one).count(), held.size());
    }

    private Optional<Boolean> holds(long seed) {
        DayMaker.Made made = Simulation.make(Fault.NONE, seed, fits);
        FleetDay day = Simulation.read(Simulation.text(made, Fault.NONE)).orElseThrow();
        return Simulation.assess(day).points().stream().findFirst().flatMap(point -> holds.apply(made, point));
    }

    /** From 93 to 97 %, where three catches tell of their scatter; else never below 93 %. */
    boolean isMet(Tally tally) {
        return tally.share() >= 0.93 && (!threeCatchesOrMore || tally.share() <= 0.97);
    }

    double worse(Tally tally) {
        double over = threeCatchesOrMore ? Math.max(0, tally.share() - 0.97) : 0;
        return Math.max(over, Math.max(0, 0.93 - tally.share()));
    }
}
