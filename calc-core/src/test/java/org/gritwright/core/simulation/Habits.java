package org.gritwright.core.simulation;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.PulsesPerDistance;

/**
 * How likely it is, without any fault, what a document says of delivery, display, road, times and tickets. What the
 * simulator's people never do has the chance {@link #NEVER}: nobody knows people so well that it were 0.
 */
final class Habits {
    static final double NEVER = 1e-4;

    /** Of drives that start slowly or are capped; together as {@link TruckMaker} draws them. */
    private static final double SLOW = 0.2;

    private static final double SLOWEST = -0.75;
    private static final double DRIVE_DEVIATION = 0.008;

    private static final double ROAD_DEVIATION = 0.005;
    private static final double ROAD_OFF = 0.05;
    private static final double ROAD_OFF_DEVIATION = 0.1;

    /** The range in which the masses and turns of catches lie, as part of their mean. */
    private static final double RANGE_OF_CATCHES = 0.3;

    private static final int FIRST_HOUR = 6;
    private static final int LAST_HOUR = 20;

    private Habits() {}

    static double logLikelihood(TruckDay truck, Predicate<InForceEntry> copied) {
        double log = tares(truck) + tickets(truck) + times(truck, copied) + values(truck, copied);
        for (VerificationCatchEntry one : truck.verificationCatches()) {
            log += delivery(one, Edit.spreader(truck)) + display(one, Edit.spreader(truck)) + seconds(one);
        }
        return log + truck.roadSpeed().map(Habits::road).orElse(0.0);
    }

    private static Stream<CatchEntry> catches(TruckDay truck) {
        return Stream.concat(
                truck.calibrationCatches().stream().map(one -> one.entry()),
                truck.verificationCatches().stream().map(one -> one.entry()));
    }

    private static double tares(TruckDay truck) {
        long all = catches(truck).mapToLong(one -> one.containers().size()).sum();
        long zero = catches(truck)
                .flatMap(one -> one.containers().stream())
                .filter(Evidence::isZeroTare)
                .count();
        if (zero == 0) {
            return 0;
        }
        return Math.log(zero == all ? TruckMaker.NET_WRITERS : NEVER);
    }

    /** Two catches that agree to the last digit. */
    private static double tickets(TruckDay truck) {
        double log = 0;
        for (int i = 1; i < truck.calibrationCatches().size(); i++) {
            CatchEntry one = truck.calibrationCatches().get(i).entry();
            if (Ideal.isSameTicket(truck.calibrationCatches().get(i - 1).entry(), one)) {
                double pulses = one.counted()
                        .map(count -> Recorded.pulses(count).orElse(10))
                        .orElse(10.0);
                log -= Math.log(Math.max(1, RANGE_OF_CATCHES * pulses)) + Math.log(1 / RANGE_OF_CATCHES);
            }
        }
        return log;
    }

    private static double times(TruckDay truck, Predicate<InForceEntry> copied) {
        double log = 0;
        for (CatchEntry one : catches(truck).toList()) {
            int hour = one.at().getHour();
            boolean usual = one.at().toLocalDate().equals(TruckMaker.DAY) && hour >= FIRST_HOUR && hour < LAST_HOUR;
            log += usual ? 0 : Math.log(NEVER);
        }
        Optional<OffsetDateTime> calibrated =
                truck.calibrationCatches().stream().map(one -> one.entry().at()).max(OffsetDateTime::compareTo);
        for (InForceEntry held : Evidence.held(truck)) {
            Optional<OffsetDateTime> verified = truck.verificationCatches().stream()
                    .filter(one -> one.entry().setting().equals(held.setting()))
                    .map(one -> one.entry().at())
                    .min(OffsetDateTime::compareTo);
            boolean before = verified.isPresent()
                    && (held.since().isAfter(verified.get())
                            || (copied.test(held)
                                    && calibrated
                                            .filter(verified.get()::isBefore)
                                            .isPresent()));
            log += before ? Math.log(NEVER) : 0;
        }
        return log;
    }

    /** The value that the truck lists is the one that its catches were made with, unless that was found by the day. */
    private static double values(TruckDay truck, Predicate<InForceEntry> copied) {
        double log = 0;
        List<InForceEntry> held = Evidence.held(truck);
        for (int i = 0; i < held.size(); i++) {
            boolean same = held.get(i).value().equals(truck.inForce().get(i).value());
            log += same || copied.test(held.get(i)) ? 0 : Math.log(NEVER);
        }
        return log;
    }

    static double expectedKilograms(VerificationCatchEntry one) {
        return Amounts.si(ApplicationRate.class, one.target().perDistance().asType(ApplicationRate.class))
                * Amounts.si(Speed.class, one.testSpeed())
                * Amounts.si(Time.class, one.runTime().orElseThrow());
    }

    /** The controller turns the shaft until it believes to have laid what is wanted; a slow drive lays less. */
    private static double delivery(VerificationCatchEntry one, SpreaderEntry spreader) {
        Optional<Evidence.Turned> turned = Evidence.turned(one, spreader);
        if (turned.isEmpty()) {
            return 0;
        }
        double delivered = turned.get().revolutions() * Evidence.kilogramsPerRevolution(one.inForce());
        double logarithm = Math.log(delivered / expectedKilograms(one));
        double deviation =
                Math.sqrt(DRIVE_DEVIATION * DRIVE_DEVIATION + turned.get().variance());
        double usual = (1 - SLOW) * Math.exp(Gaussian.logDensity(logarithm, deviation));
        double slow = logarithm > SLOWEST && logarithm < 0 ? SLOW / -SLOWEST : 0;
        return Math.log(usual + slow + NEVER);
    }

    /** What was counted and what was displayed are the same turns. */
    private static double display(VerificationCatchEntry one, SpreaderEntry spreader) {
        Optional<Evidence.Turned> counted = Evidence.turned(one.entry(), spreader);
        Optional<Evidence.Turned> displayed = Evidence.displayed(one, spreader);
        if (counted.isEmpty() || displayed.isEmpty()) {
            return 0;
        }
        double logarithm =
                Math.log(counted.get().revolutions() / displayed.get().revolutions());
        double deviation = Math.sqrt(counted.get().variance() + displayed.get().variance());
        return Math.log(Math.exp(Gaussian.logDensity(logarithm, deviation)) + NEVER);
    }

    /** A count that is just the number of seconds. */
    private static double seconds(VerificationCatchEntry one) {
        double seconds = Amounts.si(Time.class, one.runTime().orElseThrow());
        boolean same = one.entry()
                .counted()
                .filter(count -> Recorded.pulses(count).orElse(-1) == seconds)
                .isPresent();
        return same ? -Math.log(seconds) : 0;
    }

    private static double road(RoadSpeedEntry road) {
        double inForce = Amounts.si(PulsesPerDistance.class, road.inForce());
        double usual = Math.log(1 - ROAD_OFF);
        double off = Math.log(ROAD_OFF);
        for (var run : road.runs()) {
            double logarithm = Math.log(
                    Amounts.si(PulseCount.class, run.pulses()) / Amounts.si(Length.class, run.course()) / inForce);
            usual += Gaussian.logDensity(logarithm, ROAD_DEVIATION);
            off += Gaussian.logDensity(logarithm, ROAD_OFF_DEVIATION);
        }
        return Math.max(usual, off);
    }
}
