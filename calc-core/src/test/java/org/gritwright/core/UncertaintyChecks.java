package org.gritwright.core;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleSupplier;
import java.util.stream.IntStream;
import javax.measure.quantity.Dimensionless;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.gritwright.core.PublishedCheck.Source;
import org.gritwright.core.PublishedCheck.Tolerance;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.statistics.Sample;
import org.gritwright.core.statistics.StraightLine;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Conformity;
import org.gritwright.core.uncertainty.Correlation;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.weighing.AccuracyClass;
import org.gritwright.core.weighing.AccuracyClass.Stage;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Published and derived numbers of uncertainty: budgets, coverage factors, conformity, scales' tolerances, counts. */
final class UncertaintyChecks extends CheckList {
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private UncertaintyChecks() {}

    static List<PublishedCheck> all() {
        UncertaintyChecks checks = new UncertaintyChecks();
        checks.impedance();
        checks.thermometerWithCommonError();
        checks.catchBudget();
        checks.coverageFactors();
        checks.meansOfCatches();
        checks.pulses();
        checks.conformity();
        checks.falseAcceptance();
        checks.scales();
        return checks.rows();
    }

    private void digits(String id, String what, Source source, String stated, String unit, DoubleSupplier computed) {
        add(id, what, source, stated, unit, Tolerance.LAST_DIGIT, computed);
    }

    private static Component<Dimensionless> ofRepeats(String name, double contribution, double degreesOfFreedom) {
        return Component.typeA(
                name,
                Amounts.of(Math.abs(contribution), SpreadingUnits.ONE),
                Amounts.of(contribution, SpreadingUnits.ONE),
                degreesOfFreedom);
    }

    private static Component<Dimensionless> known(String name, double contribution) {
        return Component.typeB(
                name,
                Distribution.NORMAL,
                Amounts.of(Math.abs(contribution), SpreadingUnits.ONE),
                Amounts.of(contribution, SpreadingUnits.ONE));
    }

    private static Measured<Dimensionless> result(
            double value, List<Component<Dimensionless>> components, List<Correlation> correlations) {
        return Budget.of(Amounts.of(value, SpreadingUnits.ONE), components, correlations)
                .result();
    }

    private static double uncertainty(Measured<Dimensionless> result) {
        return result.standardUncertainty().orElseThrow().getValue().doubleValue();
    }

    /** Resistance, reactance and impedance by a voltage, a current and a phase that were read five times together. */
    private void impedance() {
        double[] volts = {5.007, 4.994, 5.005, 4.990, 4.999};
        double[] milliamperes = {19.663, 19.639, 19.640, 19.685, 19.678};
        double[] phases = {1.0456, 1.0438, 1.0468, 1.0428, 1.0433};
        double v = Sample.of(volts).mean();
        double i = Sample.of(milliamperes).mean() / 1000;
        double phi = Sample.of(phases).mean();
        double relativeV = ofMean(volts) / v;
        double relativeI = ofMean(milliamperes) / 1000 / i;
        double ofPhi = ofMean(phases);
        List<Correlation> correlations = List.of(
                new Correlation("V", "I", correlation(volts, milliamperes)),
                new Correlation("V", "phi", correlation(volts, phases)),
                new Correlation("I", "phi", correlation(milliamperes, phases)));
        double z = v / i;
        double r = z * Math.cos(phi);
        double x = z * Math.sin(phi);
        Object[][] results = {
            {"r", "resistance V·cos φ ÷ I", r, -x * ofPhi, "127.732", "0.071", Tolerance.LAST_DIGIT},
            // In full precision 0.29558: the Guide prints it cut off.
            {"x", "reactance V·sin φ ÷ I", x, r * ofPhi, "219.847", "0.295", Tolerance.HAND_ROUNDED},
            {"z", "impedance V ÷ I", z, 0.0, "254.260", "0.236", Tolerance.LAST_DIGIT}
        };
        for (Object[] row : results) {
            double value = (double) row[2];
            Measured<Dimensionless> result = result(
                    value,
                    List.of(
                            ofRepeats("V", value * relativeV, 4),
                            ofRepeats("I", -value * relativeI, 4),
                            ofRepeats("phi", (double) row[3], 4)),
                    correlations);
            digits("gum-h2-" + row[0], (String) row[1], Source.GUM_H2, (String) row[4], "Ω", () -> value);
            add(
                    "gum-h2-" + row[0] + "-u",
                    "its standard uncertainty, by correlated inputs",
                    Source.GUM_H2,
                    (String) row[5],
                    "Ω",
                    (Tolerance) row[6],
                    () -> uncertainty(result));
        }
    }

    private static double ofMean(double... readings) {
        return Sample.of(readings).deviation().orElseThrow() / Math.sqrt(readings.length);
    }

    private static double correlation(double[] a, double[] b) {
        double meanOfA = Sample.of(a).mean();
        double meanOfB = Sample.of(b).mean();
        double products = IntStream.range(0, a.length)
                .mapToDouble(k -> (a[k] - meanOfA) * (b[k] - meanOfB))
                .sum();
        return products
                / (a.length - 1)
                / Sample.of(a).deviation().orElseThrow()
                / Sample.of(b).deviation().orElseThrow();
    }

    /** The thermometer of the Guide's H.3, with an error of 0.005 °C that all its corrections have in common. */
    private void thermometerWithCommonError() {
        StraightLine line = StraightLine.fit(
                new double[] {1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511},
                new double[] {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160});
        Measured<Dimensionless> intercept = result(
                line.intercept(),
                List.of(
                        ofRepeats("line", line.interceptUncertainty().orElseThrow(), line.degreesOfFreedom()),
                        known("common error", 0.005)),
                List.of());
        String what = "thermometer line, 0.005 °C common to all: ";
        digits(
                "gum-h3-common-u",
                what + "intercept's uncertainty",
                Source.BUDGETS,
                "0.00576893138",
                "°C",
                () -> uncertainty(intercept));
        digits(
                "gum-h3-common-df",
                what + "its effective degrees of freedom",
                Source.BUDGETS,
                "145.3796",
                "",
                () -> intercept.degreesOfFreedom().orElseThrow());
    }

    /** Contributions in percent. */
    private void catchBudget() {
        double rounding = Math.sqrt(2) * 0.5 / Math.sqrt(12) / 60 * 100;
        double pulses = 100 / (40 * Math.sqrt(6));
        List<Component<Dimensionless>> without = List.of(
                known("spillage", Distribution.RECTANGULAR.standardUncertainty(0.5)),
                known("gate reading", Distribution.RECTANGULAR.standardUncertainty(100 * 0.0625 / 2.625)),
                known("moisture", Distribution.RECTANGULAR.standardUncertainty(0.5)),
                known("transient", Distribution.RECTANGULAR.standardUncertainty(1)),
                ofRepeats("repeatability", 2 / Math.sqrt(3), 2));
        List<Component<Dimensionless>> with = new ArrayList<>(without);
        with.add(known("rounding", rounding));
        with.add(known("pulses", pulses));
        for (Object[] row : new Object[][] {
            {"with", "seven components of a 60-lb catch", with, "2.209", "26.8", "2.053", "4.53"},
            {"without", "the same without pulses and rounding", without, "1.930", "15.6", "2.124", "4.10"}
        }) {
            @SuppressWarnings("unchecked") // as the rows say
            Measured<Dimensionless> result = result(100, (List<Component<Dimensionless>>) row[2], List.of());
            String id = "budget-" + row[0];
            digits(id + "-u", (String) row[1], Source.BUDGETS, (String) row[3], "%", () -> uncertainty(result));
            digits(
                    id + "-df",
                    "its effective degrees of freedom",
                    Source.BUDGETS,
                    (String) row[4],
                    "",
                    () -> result.degreesOfFreedom().orElseThrow());
            digits(
                    id + "-k",
                    "its coverage factor, 95 %",
                    Source.BUDGETS,
                    (String) row[5],
                    "",
                    () -> result.coverageFactor(0.95).orElseThrow());
            digits(
                    id + "-expanded",
                    "its expanded uncertainty, 95 %",
                    Source.BUDGETS,
                    (String) row[6],
                    "%",
                    () -> result.expandedUncertainty(0.95)
                            .orElseThrow()
                            .getValue()
                            .doubleValue());
        }
    }

    private static Measured<Dimensionless> measured(double standardUncertainty, double degreesOfFreedom) {
        return Measured.of(
                Amounts.of(0, SpreadingUnits.ONE),
                Amounts.of(standardUncertainty, SpreadingUnits.ONE),
                degreesOfFreedom);
    }

    private void coverageFactors() {
        for (String[] row : new String[][] {
            {"0.95", "1", "12.71"},
            {"0.95", "20", "2.09"},
            {"0.9545", "Infinity", "2.00"},
            {"0.9973", "Infinity", "3.00"},
            {"0.9", "20", "1.72"}
        }) {
            digits(
                    "coverage-factor-" + row[0] + "-" + row[1],
                    "coverage factor for " + row[0] + ", " + row[1].replace("Infinity", "∞") + " degrees of freedom",
                    Source.GUM_T,
                    row[2],
                    "",
                    () -> measured(1, Double.parseDouble(row[1]))
                            .coverageFactor(Double.parseDouble(row[0]))
                            .orElseThrow());
        }
    }

    private void meansOfCatches() {
        for (String[] row :
                new String[][] {{"3", "4.97"}, {"4", "3.18"}, {"5", "2.48"}, {"6", "2.10"}, {"10", "1.43"}}) {
            int n = Integer.parseInt(row[0]);
            digits(
                    "mean-half-width-" + n,
                    "95 % half-width of a mean of " + n + " that scatter by 2 %",
                    Source.ARITHMETIC,
                    row[1],
                    "%",
                    () -> measured(2 / Math.sqrt(n), n - 1)
                            .expandedUncertainty(0.95)
                            .orElseThrow()
                            .getValue()
                            .doubleValue());
        }
    }

    private void pulses() {
        ShaftSensor sensor = ShaftSensor.of(Amounts.of(1, SpreadingUnits.PULSE_PER_REVOLUTION));
        for (String[] row : new String[][] {{"40", "1.021"}, {"360", "0.113"}}) {
            ShaftCount count = new ShaftCount.Pulses(Amounts.of(Double.parseDouble(row[0]), SpreadingUnits.PULSE));
            digits(
                    "pulse-count-" + row[0],
                    "uncertainty of " + row[0] + " pulses, ±1 at random phase",
                    Source.ARITHMETIC,
                    row[1],
                    "%",
                    () -> 100 * count.uncertaintyRevolutions(sensor).orElseThrow() / count.revolutions(sensor));
        }
    }

    private void conformity() {
        digits(
                "jcgm106-zener",
                "diode, −5.47 V by 0.05 V, at most −5.40 V: conforms",
                Source.JCGM106,
                "0.92",
                "",
                () -> Conformity.of(-5.47, 0.05, INFINITE, -INFINITE, -5.40).within());
        digits(
                "jcgm106-burst",
                "container, 509.7 kPa by 8.6 kPa, at least 490 kPa: conforms",
                Source.JCGM106,
                "0.99",
                "",
                () -> Conformity.of(509.7, 8.6, INFINITE, 490, INFINITE).within());
        digits(
                "jcgm106-oil",
                "viscosity, 13.6 by 1.8, from 12.5 to 16.3: conforms",
                Source.JCGM106,
                "0.66",
                "",
                () -> Conformity.of(13.6, 1.8, INFINITE, 12.5, 16.3).within());
        digits(
                "jcgm106-speed",
                "speed, 107 by 2 %: above the limit of 100",
                Source.JCGM106,
                "0.999",
                "",
                () -> Conformity.of(107, 0.02 * 107, INFINITE, -INFINITE, 100).above());
    }

    /** Of a normal process about the middle of its limits ±1, by a test with a quarter of its deviation. */
    private void falseAcceptance() {
        for (String[] row : new String[][] {
            {"60", "4.83860"},
            {"70", "3.92234"},
            {"80", "2.85583"},
            {"90", "1.59995"},
            {"95", "0.87101"},
            {"99", "0.19992"}
        }) {
            double inside = Double.parseDouble(row[0]) / 100;
            digits(
                    "false-acceptance-" + row[0],
                    "process " + row[0] + " % in tolerance: outside and accepted",
                    Source.RP19,
                    row[1],
                    "%",
                    () -> 100 * falseAcceptance(1 / normal().inverseCumulativeProbability((1 + inside) / 2)));
        }
    }

    private static NormalDistribution normal() {
        return NormalDistribution.of(0, 1);
    }

    /** Simpson's rule over the true values above the limit, twice. */
    private static double falseAcceptance(double process) {
        int steps = 4000;
        double width = 3 * process;
        double[] terms = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            double truth = 1 + width * i / steps;
            double accepted = Conformity.of(truth, process / 4, INFINITE, -1, 1).within();
            double weight = i == 0 || i == steps ? 1 : i % 2 == 0 ? 2 : 4;
            terms[i] = weight * normal().density(truth / process) / process * accepted;
        }
        return 2 * Arrays.stream(terms).sum() * width / steps / 3;
    }

    private void scales() {
        for (Object[] row : new Object[][] {
            {AccuracyClass.HB44_III, "500", "1"},
            {AccuracyClass.HB44_III, "501", "2"},
            {AccuracyClass.HB44_III, "2000", "2"},
            {AccuracyClass.HB44_III, "2001", "3"},
            {AccuracyClass.HB44_III, "4000", "3"},
            {AccuracyClass.HB44_III, "4001", "5"},
            {AccuracyClass.HB44_IIIL, "500", "1"},
            {AccuracyClass.HB44_IIIL, "501", "2"},
            {AccuracyClass.HB44_IIIL, "1000", "2"},
            {AccuracyClass.HB44_IIIL, "1500", "3"},
            {AccuracyClass.HB44_IIIL, "4000", "8"},
            {AccuracyClass.HB44_IIII, "50", "1"},
            {AccuracyClass.HB44_IIII, "51", "2"},
            {AccuracyClass.HB44_IIII, "200", "2"},
            {AccuracyClass.HB44_IIII, "201", "3"},
            {AccuracyClass.HB44_IIII, "400", "3"},
            {AccuracyClass.HB44_IIII, "401", "5"},
            {AccuracyClass.R76_I, "50000", "1"},
            {AccuracyClass.R76_I, "200000", "2"},
            {AccuracyClass.R76_I, "200001", "3"},
            {AccuracyClass.R76_II, "5000", "1"},
            {AccuracyClass.R76_II, "20000", "2"},
            {AccuracyClass.R76_II, "100000", "3"},
            {AccuracyClass.R76_III, "500", "1"},
            {AccuracyClass.R76_III, "2000", "2"},
            {AccuracyClass.R76_III, "10000", "3"},
            {AccuracyClass.R76_IIII, "50", "1"},
            {AccuracyClass.R76_IIII, "200", "2"},
            {AccuracyClass.R76_IIII, "1000", "3"}
        }) {
            AccuracyClass accuracyClass = (AccuracyClass) row[0];
            add(
                    "scale-" + accuracyClass.id() + "-" + row[1],
                    "scale of class " + accuracyClass.id() + ", " + row[1] + " divisions, in service",
                    ofScale(accuracyClass),
                    (String) row[2],
                    "divisions",
                    Tolerance.EXACT,
                    () -> accuracyClass.tolerance(Double.parseDouble((String) row[1]), Stage.IN_SERVICE));
        }
        for (Object[] row : new Object[][] {
            {AccuracyClass.HB44_III, "500", "0.5"},
            {AccuracyClass.HB44_III, "2000", "1"},
            {AccuracyClass.HB44_III, "4000", "1.5"},
            {AccuracyClass.HB44_III, "4001", "2.5"},
            {AccuracyClass.R76_III, "500", "0.5"},
            {AccuracyClass.R76_III, "2000", "1"},
            {AccuracyClass.R76_III, "10000", "1.5"}
        }) {
            AccuracyClass accuracyClass = (AccuracyClass) row[0];
            add(
                    "scale-new-" + accuracyClass.id() + "-" + row[1],
                    "scale of class " + accuracyClass.id() + ", " + row[1] + " divisions, new",
                    ofScale(accuracyClass),
                    (String) row[2],
                    "divisions",
                    Tolerance.EXACT,
                    () -> accuracyClass.tolerance(Double.parseDouble((String) row[1]), Stage.NEW));
        }
    }

    private static Source ofScale(AccuracyClass accuracyClass) {
        return switch (accuracyClass) {
            case HB44_III -> Source.HANDBOOK_44;
            case HB44_IIIL, HB44_IIII -> Source.HANDBOOK_44_MEMORY;
            default -> Source.R76;
        };
    }
}
