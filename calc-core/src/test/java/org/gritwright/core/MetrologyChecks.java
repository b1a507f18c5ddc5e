package org.gritwright.core;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.DoubleSupplier;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.gritwright.core.PublishedCheck.Source;
import org.gritwright.core.PublishedCheck.Tolerance;
import org.gritwright.core.statistics.Grubbs;
import org.gritwright.core.statistics.Sample;
import org.gritwright.core.statistics.StraightLine;
import org.gritwright.core.statistics.StraightLine.Range;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Published numbers of metrology and statistics: samples, lines, outlying values, quantiles. */
final class MetrologyChecks extends CheckList {
    private MetrologyChecks() {}

    static List<PublishedCheck> all() {
        MetrologyChecks checks = new MetrologyChecks();
        checks.samples();
        checks.thermometer();
        checks.referenceLines();
        checks.youngsModulus();
        checks.cadmium();
        checks.thermostat();
        checks.reactionChamber();
        checks.massart();
        checks.grubbs();
        checks.quantiles();
        return checks.rows();
    }

    private void add(
            String id, String what, Source source, String stated, Tolerance tolerance, DoubleSupplier computed) {
        add(id, what, source, stated, "", tolerance, computed);
    }

    private void digits(String id, String what, Source source, String stated, DoubleSupplier computed) {
        add(id, what, source, stated, Tolerance.LAST_DIGIT, computed);
    }

    private void known(String id, String what, Source source, String stated, OptionalDouble computed) {
        digits(id, what, source, stated, computed::orElseThrow);
    }

    private void samples() {
        for (String[] set : new String[][] {
            {"NumAcc1", "10000002", "1"},
            {"NumAcc2", "1.2", "0.1"},
            {"NumAcc3", "1000000.2", ""},
            {"NumAcc4", "10000000.2", ""},
            {"Lew", "-177.435", "277.332168044316"},
            {"Mavro", "2.001856", "0.000429123454003053"},
            {"Michelso", "299.8524", "0.0790105478190518"}
        }) {
            String file = set[0].toLowerCase(Locale.ROOT);
            Sample sample = Sample.of(Strd.column(file, "y"));
            add(file + "-mean", set[0] + ": mean", Source.STRD, set[1], Tolerance.EXACT, sample::mean);
            // The doubles next to the numbers of NumAcc3 and NumAcc4 have another deviation; SampleTest has it.
            if (!set[2].isEmpty()) {
                add(
                        file + "-s",
                        set[0] + ": standard deviation",
                        Source.STRD,
                        set[2],
                        Tolerance.EXACT,
                        () -> sample.deviation().orElseThrow());
            }
        }
    }

    private void thermometer() {
        double[] above20 = {1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511};
        double[] corrections = {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160};
        StraightLine line = StraightLine.fit(above20, corrections);
        known("gum-r", "thermometer line: correlation", Source.GUM, "-0.930", line.correlation());
        known("gum-s", "thermometer line: residual deviation", Source.GUM, "0.0035", line.residualDeviation());
        known(
                "gum-30-u",
                "its standard uncertainty at 30 °C",
                Source.GUM,
                "0.0041",
                line.meanAt(10).standardUncertainty());
    }

    private void referenceLines() {
        StraightLine norris = StraightLine.fit(Strd.column("norris", "x"), Strd.column("norris", "y"));
        StraightLine noInt1 = StraightLine.throughOrigin(Strd.column("noint1", "x"), Strd.column("noint1", "y"));
        certified("norris-s", "Norris: residual deviation", "0.884796396144373", norris.residualDeviation());
        certified(
                "noint1-slope",
                "NoInt1, through the origin: slope",
                "2.07438016528926",
                OptionalDouble.of(noInt1.slope()));
        certified("noint1-slope-u", "its standard deviation", "0.0165289256198347", noInt1.slopeUncertainty());
        certified("noint1-s", "NoInt1: residual deviation", "3.56753034006338", noInt1.residualDeviation());
    }

    private void certified(String id, String what, String stated, OptionalDouble computed) {
        add(id, what, Source.STRD, stated, Tolerance.EXACT, computed::orElseThrow);
    }

    private void youngsModulus() {
        double[] temperatures = IntStream.rangeClosed(0, 15)
                .mapToDouble(i -> i == 0 ? 30 : 100 * i)
                .toArray();
        double[] moduli = {
            4642, 4612, 4565, 4513, 4476, 4433, 4389, 4347, 4303, 4251, 4201, 4140, 4100, 4073, 4024, 3999
        };
        StraightLine line = StraightLine.fit(temperatures, moduli);
        Source source = Source.NATRELLA;
        digits("natrella-slope", "Young's modulus on temperature: slope", source, "-0.44985482", line::slope);
        digits("natrella-intercept", "its intercept", source, "4654.9846", line::intercept);
        byHand(
                "natrella-s",
                "its residual deviation",
                source,
                "9.277617",
                () -> line.residualDeviation().orElseThrow());
        byHand(
                "natrella-slope-v",
                "variance of the slope",
                source,
                "0.000025649045",
                () -> square(line.slopeUncertainty()));
        byHand(
                "natrella-intercept-v",
                "variance of the intercept",
                source,
                "19.879452",
                () -> square(line.interceptUncertainty()));
        digits(
                "natrella-1200-v",
                "variance of the line at 1200",
                source,
                "10.53",
                () -> square(line.meanAt(1200).standardUncertainty()));
        digits(
                "natrella-750-v",
                "variance of a new observation at 750",
                source,
                "91.45",
                () -> square(line.observationAt(750).standardUncertainty()));
    }

    private void byHand(String id, String what, Source source, String stated, DoubleSupplier computed) {
        add(id, what, source, stated, Tolerance.HAND_ROUNDED, computed);
    }

    private static double square(OptionalDouble uncertainty) {
        return uncertainty.orElseThrow() * uncertainty.orElseThrow();
    }

    private void cadmium() {
        double[] concentrations = {0.1, 0.1, 0.1, 0.3, 0.3, 0.3, 0.5, 0.5, 0.5, 0.7, 0.7, 0.7, 0.9, 0.9, 0.9};
        double[] readings = {
            0.028, 0.029, 0.029, 0.084, 0.083, 0.081, 0.135, 0.131, 0.133, 0.180, 0.181, 0.183, 0.215, 0.230, 0.216
        };
        StraightLine line = StraightLine.fit(concentrations, readings);
        StraightLine.Prediction sample = line.xForObservation((0.0712 + 0.0716) / 2, 2);
        Source source = Source.QUAM;
        digits("quam-intercept", "cadmium line: intercept", source, "0.0087", line::intercept);
        known("quam-intercept-u", "its standard uncertainty", source, "0.0029", line.interceptUncertainty());
        digits("quam-slope", "cadmium line: slope", source, "0.2410", line::slope);
        known("quam-slope-u", "its standard uncertainty", source, "0.0050", line.slopeUncertainty());
        digits("quam-x", "concentration by two readings", source, "0.260", sample::value);
        known("quam-x-u", "its standard uncertainty", source, "0.018", sample.standardUncertainty());
    }

    private void thermostat() {
        StraightLine line = StraightLine.fit(
                new double[] {96, 98, 100, 102, 104, 106, 108, 110},
                new double[] {95.71, 98.16, 99.52, 102.09, 103.79, 106.18, 108.14, 110.21});
        Range of104 = line.rangeOfXForObservation(104, 0.95).orElseThrow();
        Range of100 = line.rangeOfXForObservation(100, 0.90).orElseThrow();
        Source source = Source.GRAYBILL;
        digits(
                "graybill-104",
                "thermostat: setting for 104",
                source,
                "103.995",
                () -> line.xForObservation(104).value());
        digits("graybill-104-low", "its 95 % interval: from", source, "103.4", of104::lowest);
        digits("graybill-104-high", "to", source, "104.6", of104::highest);
        digits(
                "graybill-100",
                "thermostat: setting for 100",
                source,
                "100.1",
                () -> line.xForObservation(100).value());
        digits("graybill-100-low", "its 90 % interval: from", source, "99.63", of100::lowest);
        digits("graybill-100-high", "to", source, "100.59", of100::highest);
    }

    private void reactionChamber() {
        StraightLine line = StraightLine.fit(
                IntStream.rangeClosed(0, 10).mapToDouble(i -> 10 * i).toArray(),
                new double[] {206.36, 225.52, 252.18, 289.33, 318.11, 349.49, 383.03, 410.70, 444.40, 469.14, 501.16});
        Range range = line.rangeOfXForMean(400, 0.99).orElseThrow();
        Source source = Source.GRAYBILL;
        digits(
                "graybill-400",
                "reaction chamber: dial setting for a mean of 400",
                source,
                "66.5",
                () -> line.xForMean(400).value());
        digits("graybill-400-low", "its 99 % interval: from", source, "65.07", range::lowest);
        digits("graybill-400-high", "to", source, "68.03", range::highest);
    }

    private void massart() {
        StraightLine line =
                StraightLine.fit(new double[] {0, 10, 20, 30, 40, 50}, new double[] {4, 21.2, 44.6, 61.8, 78, 105.2});
        for (String[] row : new String[][] {
            {"massart-15", "x for one reading of 15", "15", "1", "6.1", "4.9"},
            {"massart-90", "x for one reading of 90", "90", "1", "43.9", "4.9"},
            {"massart-90-five", "x for five readings of 90", "90", "5", "43.9", "3.2"}
        }) {
            StraightLine.Prediction x = line.xForObservation(Double.parseDouble(row[2]), Double.parseDouble(row[3]));
            digits(row[0], row[1], Source.MASSART, row[4], x::value);
            known(row[0] + "-u", "half the width of its 95 % interval", Source.MASSART, row[5], x.halfWidth(0.95));
        }
    }

    private void grubbs() {
        double[] uranium = {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
        byHand(
                "grubbs-g",
                "eight isotope ratios: Grubbs' G",
                Source.GRUBBS,
                "2.4687",
                () -> Grubbs.of(uranium).statistic());
        digits(
                "grubbs-critical",
                "its one-sided critical value at 5 %",
                Source.GRUBBS,
                "2.032",
                () -> Grubbs.oneSidedCritical(8, 0.05));
    }

    private void quantiles() {
        for (String[] row : new String[][] {
            {"0.6827", "1", "1.84"}, {"0.9", "10", "1.81"}, {"0.9", "20", "1.72"}, {"0.95", "1", "12.71"},
            {"0.95", "20", "2.09"}, {"0.99", "11", "3.11"}, {"0.9973", "1", "235.8"}, {"0.9973", "2", "19.21"},
            {"0.9973", "5", "5.51"}
        }) {
            studentT(Source.GUM_T, row);
        }
        for (String[] row : new String[][] {
            {"0.95", "2", "4.3027"},
            {"0.95", "4", "2.7764"},
            {"0.95", "9", "2.2622"},
            {"0.95", "30", "2.0423"},
            {"0.99", "2", "9.9248"},
            {"0.9", "60", "1.6706"}
        }) {
            studentT(Source.TABLES, row);
        }
        for (String[] row :
                new String[][] {{"0.975", "1.959963985"}, {"0.95", "1.644853627"}, {"0.999", "3.090232306"}}) {
            digits(
                    "normal-" + row[0],
                    "normal quantile " + row[0],
                    Source.TABLES,
                    row[1],
                    () -> NormalDistribution.of(0, 1).inverseCumulativeProbability(Double.parseDouble(row[0])));
        }
        for (String[] row : new String[][] {
            {"0.95", "2", "5.9915"}, {"0.95", "9", "16.9190"}, {"0.025", "10", "3.2470"}, {"0.975", "20", "34.1696"}
        }) {
            digits(
                    "chi-squared-" + row[0] + "-" + row[1],
                    "chi-squared quantile " + row[0] + ", " + row[1] + " degrees of freedom",
                    Source.TABLES,
                    row[2],
                    () -> ChiSquaredDistribution.of(Double.parseDouble(row[1]))
                            .inverseCumulativeProbability(Double.parseDouble(row[0])));
        }
    }

    /** As the interval of a value with a standard uncertainty of 1. */
    private void studentT(Source source, String... row) {
        double coverage = Double.parseDouble(row[0]);
        digits(
                "t-" + row[0] + "-" + row[1],
                "Student's t, coverage " + row[0] + ", " + row[1] + " degrees of freedom",
                source,
                row[2],
                () -> Measured.of(
                                Amounts.of(0, SpreadingUnits.ONE),
                                Amounts.of(1, SpreadingUnits.ONE),
                                Integer.parseInt(row[1]))
                        .expandedUncertainty(coverage)
                        .orElseThrow()
                        .getValue()
                        .doubleValue());
    }
}
