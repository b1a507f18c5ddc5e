package org.gritwright.core.history.drift;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * The logarithms of a stretch's discharges, freed from what they share: with V = diag(own²) + between² for each pair of values of one day + Σ
 * s·sᵀ over the shared errors, and V = L·Lᵀ, the components of L⁻¹·y have variance 1 and share nothing. A calibration and the verification
 * after it are of one load, one moisture and one oil, so that they deviate from other days together. The logarithm turns relative errors
 * into absolute ones; at the few per cent that matter here both differ by less than a tenth of the uncertainty.
 */
final class Whitened {
    private final double[][] factor;
    private final double[] y;

    private Whitened(double[][] factor, double[] y) {
        this.factor = factor;
        this.y = y;
    }

    /**
     * A stretch.
     *
     * @param implied what is implied, each with an uncertainty
     * @param between the relative standard deviation from day to day
     * @param reference kilograms per revolution that count as 0
     */
    static Whitened of(List<Implied> implied, double between, double reference) {
        int n = implied.size();
        double[][] v = new double[n][];
        Map<String, double[]> shared = new LinkedHashMap<>();
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            Implied one = implied.get(i);
            double own = one.ownUncertainty();
            v[i] = new double[i + 1];
            v[i][i] = own * own + between * between;
            Require.that(
                    v[i][i] > 0,
                    "uncertainty of the discharge of " + one.at(),
                    "greater than 0, or a deviation from day to day beside it",
                    v[i][i]);
            for (int j = 0; j < i; j++) {
                Implied other = implied.get(j);
                // Two values without errors of their own would have to be equal.
                boolean isOneDay = own > 0
                        && other.ownUncertainty() > 0
                        && one.by().at().day().equals(other.by().at().day());
                v[i][j] = isOneDay ? between * between : 0;
            }
            y[i] = Math.log(one.kilogramsPerRevolution() / reference);
            for (SharedError error : one.shared()) {
                shared.computeIfAbsent(error.id(), id -> new double[n])[i] += si(error);
            }
        }
        for (double[] s : shared.values()) {
            for (int i = 0; i < n; i++) {
                for (int j = 0; j <= i && s[i] != 0; j++) {
                    v[i][j] += s[i] * s[j];
                }
            }
        }
        factor(v);
        return new Whitened(v, solved(v, y));
    }

    /** The variance of the difference of two values by errors that others share, but not both in the same measure. */
    static double varianceOfWhatIsNotShared(Implied one, Implied other) {
        Map<String, Double> left = new LinkedHashMap<>();
        one.shared().forEach(error -> left.merge(error.id(), si(error), Double::sum));
        other.shared().forEach(error -> left.merge(error.id(), -si(error), Double::sum));
        return left.values().stream().mapToDouble(u -> u * u).sum();
    }

    private static double si(SharedError error) {
        return Amounts.si(Dimensionless.class, error.standardUncertainty());
    }

    /** Cholesky's factor, in place of the lower half. */
    private static void factor(double[][] v) {
        for (int i = 0; i < v.length; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = v[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= v[i][k] * v[j][k];
                }
                v[i][j] = i == j ? Math.sqrt(sum) : sum / v[j][j];
            }
        }
    }

    private static double[] solved(double[][] factor, double[] right) {
        double[] x = right.clone();
        for (int i = 0; i < x.length; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= factor[i][k] * x[k];
            }
            x[i] /= factor[i][i];
        }
        return x;
    }

    double[] y() {
        return y.clone();
    }

    /** A column of a design, whitened as y is. */
    double[] column(double[] x) {
        return solved(factor, x);
    }

    /**
     * The recursive residuals of a constant level that nobody knows: each value compared with what those before it let expect, divided by the
     * standard deviation of that difference. With a constant level they are independent with variance 1 (Brown, Durbin and Evans,
     * "Techniques for testing the constancy of regression relationships over time", J. R. Statist. Soc. B 37, 1975; from memory). There is one
     * fewer than there are values.
     */
    double[] recursiveResiduals() {
        double[] ones = new double[y.length];
        Arrays.fill(ones, 1);
        double[] x = column(ones);
        double[] residuals = new double[y.length - 1];
        double squares = x[0] * x[0];
        double products = x[0] * y[0];
        for (int i = 1; i < y.length; i++) {
            residuals[i - 1] = (y[i] - x[i] * products / squares) / Math.sqrt(1 + x[i] * x[i] / squares);
            squares += x[i] * x[i];
            products += x[i] * y[i];
        }
        return residuals;
    }
}
