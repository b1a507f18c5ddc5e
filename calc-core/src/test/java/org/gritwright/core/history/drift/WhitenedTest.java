package org.gritwright.core.history.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.value;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.Samples;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

class WhitenedTest {
    private static final double BETWEEN = 0.008;

    /** A catch with its own error and those that it shares, in per cent. */
    private static Event caught(String id, String day, double own, SharedError... shared) {
        double all = own * own;
        for (SharedError one : shared) {
            double percent = one.standardUncertainty()
                    .to(SpreadingUnits.PERCENT)
                    .getValue()
                    .doubleValue();
            all += percent * percent;
        }
        return event(
                id,
                day(day),
                new What.Verified(
                        value(TWO, 25),
                        Measured.of(
                                Amounts.of(0, SpreadingUnits.PERCENT),
                                Amounts.of(Math.sqrt(all), SpreadingUnits.PERCENT),
                                Double.POSITIVE_INFINITY),
                        List.of(shared),
                        Verdict.WITHIN_TOLERANCE,
                        1,
                        Samples.pounds(240),
                        Optional.empty()));
    }

    private static SharedError by(String id, double percent) {
        return new SharedError(id, Amounts.of(percent, SpreadingUnits.PERCENT));
    }

    private static List<Implied> implied(Event... events) {
        return DischargeHistory.of(history(events), TRUCK, TWO.key()).current().implied();
    }

    /** Two scales, two days, and two catches without errors of their own: V as it follows from the text, and its inverse. */
    @Test
    void whatIsWhitenedSharesNothing() {
        List<Implied> implied = implied(
                caught("1", "2026-01-01", 0.6, by("A", 0.2)),
                caught("2", "2026-01-01", 0.5, by("A", 0.2), by("B", 0.3)),
                caught("3", "2026-01-08", 0.7, by("B", 0.4)),
                caught("4", "2026-01-08", 0),
                caught("5", "2026-01-08", 0),
                caught("6", "2026-01-08", 0.5));
        double day = BETWEEN * BETWEEN;
        double[][] v = new double[6][6];
        double[] own = {0.006, 0.005, 0.007, 0, 0, 0.005};
        for (int i = 0; i < 6; i++) {
            v[i][i] = own[i] * own[i] + day;
        }
        v[0][0] += 0.002 * 0.002;
        v[1][1] += 0.002 * 0.002 + 0.003 * 0.003;
        v[2][2] += 0.004 * 0.004;
        v[0][1] = day + 0.002 * 0.002;
        v[1][2] = 0.003 * 0.004;
        v[2][5] = day;
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < i; j++) {
                v[i][j] = v[j][i];
            }
        }
        RealMatrix inverse =
                new LUDecomposition(new Array2DRowRealMatrix(v)).getSolver().getInverse();
        Whitened whitened = Whitened.of(implied, BETWEEN, implied.get(0).kilogramsPerRevolution());

        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                double product = 0;
                for (int k = 0; k < 6; k++) {
                    product += whitened.column(unit(i))[k] * whitened.column(unit(j))[k];
                }
                assertThat(product).isCloseTo(inverse.getEntry(i, j), within(1e-6));
            }
        }
    }

    private static double[] unit(int at) {
        double[] unit = new double[6];
        unit[at] = 1;
        return unit;
    }

    @Test
    void thereIsOneResidualFewerThanValues() {
        for (int n = 1; n <= 3; n++) {
            List<Implied> implied = implied(
                            caught("1", "2026-01-01", 0.6),
                            caught("2", "2026-01-08", 0.6),
                            caught("3", "2026-01-15", 0.6))
                    .subList(0, n);

            assertThat(Whitened.of(implied, BETWEEN, 1).recursiveResiduals()).hasSize(n - 1);
        }
    }

    /** Of one scale what both have drops out, and what the one has more of it stays; of two scales nothing does. */
    @Test
    void whatTwoCatchesDontShareVaries() {
        List<Implied> implied = implied(
                caught("1", "2026-01-01", 0.6, by("A", 0.2)),
                caught("2", "2026-01-08", 0.6, by("A", 0.5)),
                caught("3", "2026-01-15", 0.6, by("B", 0.3)));

        assertThat(Whitened.varianceOfWhatIsNotShared(implied.get(0), implied.get(1)))
                .isCloseTo(0.003 * 0.003, within(1e-15));
        assertThat(Whitened.varianceOfWhatIsNotShared(implied.get(0), implied.get(2)))
                .isCloseTo(0.002 * 0.002 + 0.003 * 0.003, within(1e-15));
    }
}
