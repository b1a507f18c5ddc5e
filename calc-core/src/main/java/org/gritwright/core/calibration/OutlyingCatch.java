package org.gritwright.core.calibration;

import static org.gritwright.core.finding.Argument.number;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Unit;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.statistics.Grubbs;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * Whether one catch of a calibration is outlying: Grubbs' two-sided test among the masses per revolution, at 5 %. It takes
 * them to scatter alike, which catches of about one length do.
 */
final class OutlyingCatch {
    private static final double SIGNIFICANCE = 0.05;
    private static final int FEWEST = 3;

    private OutlyingCatch() {}

    static Optional<Finding> among(List<CalibrationCatch> catches, Unit<DischargePerRevolution> unit) {
        int n = catches.size();
        if (n < FEWEST) {
            return Optional.empty();
        }
        double[] ratios = new double[n];
        double roundings = 0;
        for (int i = 0; i < n; i++) {
            double revolutions = catches.get(i).revolutions();
            ratios[i] = catches.get(i).observation().kilograms() / revolutions;
            roundings += rounding(catches.get(i)) / (revolutions * revolutions);
        }
        Grubbs test = Grubbs.of(ratios, Math.sqrt(roundings / n));
        if (!test.isOutlying(SIGNIFICANCE)) {
            return Optional.empty();
        }
        return Optional.of(Finding.of(
                n == FEWEST ? FindingCode.OUTLYING_OF_THREE : FindingCode.OUTLYING_CATCH,
                Map.of(
                        "catch", number(Amounts.of(test.index() + 1, SpreadingUnits.ONE)),
                        "discharge", number(Amounts.ofSi(ratios[test.index()], unit)),
                        "catches", number(Amounts.of(n, SpreadingUnits.ONE)))));
    }

    /** The variance of all readings: each is anywhere within a division, which has a variance of d²/12 (GUM 4.3.7). */
    private static double rounding(CalibrationCatch one) {
        double kilograms = one.observation().roundingKilograms();
        return kilograms * kilograms;
    }
}
