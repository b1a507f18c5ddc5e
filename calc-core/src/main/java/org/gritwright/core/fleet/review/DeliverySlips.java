package org.gritwright.core.fleet.review;

import static org.gritwright.core.finding.Argument.number;
import static org.gritwright.core.finding.Argument.time;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Time;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.verification.Verification;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * Slips with the target rate or the run time that would explain what was delivered. A drive that starts slowly or meets a limit
 * delivers less than expected too, so that they have to explain it much better (common practice, no source).
 */
public final class DeliverySlips {
    private static final double RATE_FACTOR =
            Amounts.in(Amounts.of(1, SpreadingUnits.KILOGRAM_PER_KILOMETER), SpreadingUnits.POUND_PER_MILE);

    private static final double LIQUID_RATE_FACTOR =
            Amounts.in(Amounts.of(1, SpreadingUnits.US_GALLON_PER_MILE), SpreadingUnits.LITER_PER_KILOMETER);

    /** A drive that only starts slowly or is limited still lays more than a third: it may do so beside that slip. */
    private static final double LEAST_BY_RATE = 0.7;

    private static final double GREATEST_BY_RATE = 1.05;

    /** A drive that was slow in a run that nobody could have misread is slow in others too, nearly for certain. */
    private static final double SLOW_ELSEWHERE = 0.95;

    private static final double LEAST_OF_OTHERS = 0.95;

    /** Where scale and count disagree by more, something else is wrong, and what was delivered isn't known. */
    private static final double AGREES = 0.1;

    private DeliverySlips() {}

    /**
     * The first catch that shows one.
     *
     * @param all the truck's verifications
     * @param targets what was written down as the target of one
     * @return the finding; none where nothing fits much better
     */
    public static Optional<Finding> of(List<Verification> all, Function<Verification, TargetEntry> targets) {
        List<Verification> verifications = all.stream()
                .filter(one -> one.calibrationError()
                        .filter(error -> Math.abs(Amounts.si(Dimensionless.class, error)) > AGREES)
                        .isEmpty())
                .toList();
        return verifications.stream()
                .flatMap(one -> rateInOtherUnit(one, targets.apply(one)).stream())
                .findFirst()
                .or(() -> runTimeInMinutes(verifications));
    }

    /** What was delivered of what was expected. */
    private static double delivered(Verification one) {
        return 1 + Amounts.si(Dimensionless.class, one.deliveryError());
    }

    /** What wets grains is asked for by their rate. */
    private static Optional<Finding> rateInOtherUnit(Verification one, TargetEntry target) {
        boolean wets = target.prewetRate().isPresent();
        Quantity<?> rate = wets
                ? target.rate().or(target::laneRate).orElseThrow()
                : one.source().run().targetRate();
        double units = one.source().run().isOfLiquid() && !wets ? LIQUID_RATE_FACTOR : RATE_FACTOR;
        return Stream.of(1 / units, units)
                .filter(factor -> delivered(one) / factor > LEAST_BY_RATE && delivered(one) / factor < GREATEST_BY_RATE)
                .findFirst()
                .map(factor -> finding(
                        FindingCode.RATE_IN_OTHER_UNIT,
                        one,
                        number(rate.multiply(factor)),
                        Map.entry("rate", number(rate))));
    }

    /** All runs that may have been misread were, or none: a person writes times in one way. */
    private static Optional<Finding> runTimeInMinutes(List<Verification> verifications) {
        boolean slow = verifications.stream().anyMatch(one -> !isReadable(one) && delivered(one) < LEAST_OF_OTHERS);
        List<Verification> readable =
                verifications.stream().filter(DeliverySlips::isReadable).toList();
        double gain = readable.stream()
                .mapToDouble(one -> gainInMinutes(one, slow ? SLOW_ELSEWHERE : Sketch.SLOW))
                .sum();
        return readable.stream()
                .filter(one -> gain > ProbableSlips.SHOWN)
                .findFirst()
                .map(one -> finding(
                        FindingCode.RUN_TIME_IN_MINUTES,
                        one,
                        number(Amounts.of(inMinutes(one), SpreadingUnits.SECOND)),
                        Map.entry("runTime", number(Amounts.of(seconds(one), SpreadingUnits.SECOND)))));
    }

    private static double gainInMinutes(Verification one, double slow) {
        double variance = variance(one);
        double asWritten = Math.log(delivered(one));
        return Sketch.logDelivered(asWritten + Math.log(seconds(one) / inMinutes(one)), variance, slow)
                - Sketch.logDelivered(asWritten, variance, slow);
    }

    /** Of what was delivered, relative: as finely as the turns were counted or shown. */
    private static double variance(Verification one) {
        Observation observation = one.source().observation();
        double counted = observation.uncertaintyRevolutions().orElse(0)
                / observation.revolutions().orElse(1);
        double shown = one.source()
                .indicated()
                .map(display -> display.relativeResolution())
                .orElse(0.0);
        return Math.max(counted * counted, shown * shown / 3);
    }

    private static boolean isReadable(Verification one) {
        return seconds(one) >= 100 && seconds(one) % 100 < 60;
    }

    private static double seconds(Verification one) {
        return one.source()
                .run()
                .runTime()
                .map(runTime -> Amounts.si(Time.class, runTime))
                .orElse(0.0);
    }

    /** 130 for 1:30. */
    private static double inMinutes(Verification one) {
        double digits = seconds(one);
        return Math.floor(digits / 100) * 60 + digits % 100;
    }

    private static Finding finding(
            FindingCode code, Verification one, Argument instead, Map.Entry<String, Argument> written) {
        return Finding.of(
                code,
                Map.ofEntries(
                        Map.entry("at", time(one.source().observation().at())),
                        Map.entry(
                                "delivered",
                                number(one.indicated()
                                        .orElseGet(() -> one.source().caught().total()))),
                        Map.entry("instead", instead),
                        written));
    }
}
