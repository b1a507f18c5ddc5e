package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.number;
import static org.gritwright.core.finding.Argument.time;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Time;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.verification.Verification;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;

/**
 * Slips with the target rate or the run time that would explain what was delivered. A drive that starts slowly or meets a limit
 * delivers less than expected too, so that the limits below are narrow where it could be that (common practice, no source).
 */
final class DeliverySlips {
    private static final double RATE_FACTOR =
            Amounts.in(Amounts.of(1, SpreadingUnits.KILOGRAM_PER_KILOMETER), SpreadingUnits.POUND_PER_MILE);

    /** A drive that only starts slowly or is limited still lays more than a third: it may do so beside that slip. */
    private static final double LEAST_BY_RATE = 0.7;

    private static final double GREATEST_BY_RATE = 1.05;
    private static final double NEAR_BY_RUN_TIME = 0.015;
    private static final double LEAST_OF_OTHERS = 0.95;

    /** Where scale and count disagree by more, something else is wrong, and what was delivered isn't known. */
    private static final double AGREES = 0.1;

    private DeliverySlips() {}

    /** The first catch that shows one. */
    static Optional<Finding> of(List<Verification> all) {
        List<Verification> verifications = all.stream()
                .filter(one -> one.calibrationError()
                        .filter(error -> Math.abs(Amounts.si(Dimensionless.class, error)) > AGREES)
                        .isEmpty())
                .toList();
        return verifications.stream()
                .flatMap(one -> rateInOtherUnit(one).stream())
                .findFirst()
                .or(() -> runTimeInMinutes(verifications));
    }

    /** What was delivered of what was expected. */
    private static double delivered(Verification one) {
        return 1 + Amounts.si(Dimensionless.class, one.deliveryError());
    }

    private static Optional<Finding> rateInOtherUnit(Verification one) {
        Quantity<ApplicationRate> rate = one.source().run().targetRate();
        return Stream.of(1 / RATE_FACTOR, RATE_FACTOR)
                .filter(factor -> delivered(one) / factor > LEAST_BY_RATE && delivered(one) / factor < GREATEST_BY_RATE)
                .findFirst()
                .map(factor -> finding(
                        FindingCode.RATE_IN_OTHER_UNIT,
                        one,
                        number(rate.multiply(factor)),
                        Map.entry("rate", number(rate))));
    }

    /** One run by chance, but hardly two: all that may have been misread have to fit, and no other may fall short. */
    private static Optional<Finding> runTimeInMinutes(List<Verification> verifications) {
        List<Verification> readable =
                verifications.stream().filter(DeliverySlips::isReadable).toList();
        boolean fit = verifications.stream()
                .allMatch(one -> isReadable(one)
                        ? Math.abs(delivered(one) * seconds(one) / inMinutes(one) - 1) <= NEAR_BY_RUN_TIME
                        : delivered(one) >= LEAST_OF_OTHERS);
        return readable.stream()
                .filter(one -> fit)
                .findFirst()
                .map(one -> finding(
                        FindingCode.RUN_TIME_IN_MINUTES,
                        one,
                        number(Amounts.of(inMinutes(one), SpreadingUnits.SECOND)),
                        Map.entry("runTime", number(Amounts.of(seconds(one), SpreadingUnits.SECOND)))));
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
                                number(one.indicatedMass()
                                        .orElseGet(() -> one.source().caught().total()))),
                        Map.entry("instead", instead),
                        written));
    }
}
