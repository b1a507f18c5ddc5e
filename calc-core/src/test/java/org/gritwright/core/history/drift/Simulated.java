package org.gritwright.core.history.drift;

import static org.gritwright.core.history.Happenings.TWO;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.Happenings;
import org.gritwright.core.history.What;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * A truck's years with known truth: a calibration and verifications every two weeks, which vary from day to day, by their own errors, and by
 * one error of the scale that all of them share.
 */
final class Simulated {
    static final LocalDate FIRST = LocalDate.of(2023, 10, 2);
    static final double BETWEEN = 0.01;
    static final double OWN = 0.006;
    static final double SCALE = 0.004;
    static final double POUNDS = 25;
    static final int DAYS_APART = 14;

    private Simulated() {}

    /**
     * The stretch.
     *
     * @param values how many values
     * @param perValue by how much the logarithm of what leaves per revolution changes from one to the next
     */
    static Stretch stretch(SplittableRandom random, int values, double perValue) {
        return stretch(random, values, perValue, 1);
    }

    /**
     * The stretch with several values a day, which have the deviation of their day in common.
     *
     * @param values how many values
     * @param perDay by how much the logarithm of what leaves per revolution changes from one day to the next
     * @param aDay how many values a day
     */
    static Stretch stretch(SplittableRandom random, int values, double perDay, int aDay) {
        double scale = SCALE * random.nextGaussian();
        double ofDay = 0;
        List<Implied> implied = new ArrayList<>();
        for (int i = 0; i < values; i++) {
            int day = i / aDay;
            ofDay = i % aDay == 0 ? BETWEEN * random.nextGaussian() : ofDay;
            double log = perDay * day + ofDay + OWN * random.nextGaussian() + scale;
            Since at = Since.of(FIRST.plusDays((long) DAYS_APART * day));
            // k = c ÷ (1 + e), so that 1 + e = exp(−log).
            double error = Math.expm1(-log);
            Event event = Event.of(
                    "value " + i,
                    at,
                    Happenings.TRUCK,
                    new What.Verified(
                            Happenings.value(TWO, POUNDS),
                            Measured.of(
                                    Amounts.of(error, SpreadingUnits.ONE),
                                    Amounts.of((1 + error) * Math.hypot(OWN, SCALE), SpreadingUnits.ONE),
                                    Double.POSITIVE_INFINITY),
                            List.of(new SharedError("scale S-1", Amounts.of(SCALE, SpreadingUnits.ONE))),
                            Verdict.WITHIN_TOLERANCE,
                            1,
                            Samples.pounds(240),
                            Optional.empty()),
                    "simulation");
            implied.add(Implied.of(event, at.day().atStartOfDay().toInstant(Happenings.YARD), TWO.key())
                    .orElseThrow());
        }
        return new Stretch(Optional.empty(), implied);
    }

    static BetweenDays between() {
        return BetweenDays.assumed(Amounts.of(BETWEEN, SpreadingUnits.ONE));
    }
}
