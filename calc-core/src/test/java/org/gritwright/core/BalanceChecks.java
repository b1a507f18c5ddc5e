package org.gritwright.core;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.gritwright.core.PublishedCheck.Source;
import org.gritwright.core.PublishedCheck.Tolerance;
import org.gritwright.core.balance.Adjustment;
import org.gritwright.core.balance.Balance;
import org.gritwright.core.balance.Candidate;
import org.gritwright.core.balance.CorrelatedErrors;
import org.gritwright.core.balance.Network;
import org.gritwright.core.balance.Variable;

/** Published networks of measurements that have to add up. The files under balance name their source. */
final class BalanceChecks extends CheckList {
    private static final String BYPASS = "NarasimhanJordache2000_hx_bypass";
    private static final String STEAM = "VDI2048_steam_circuit_no_correlation";
    private static final double COVERAGE = 1.96;

    private BalanceChecks() {}

    static List<PublishedCheck> all() {
        BalanceChecks checks = new BalanceChecks();
        checks.bypass();
        checks.steam();
        checks.levels();
        checks.longley();
        checks.weighingDesigns();
        return checks.rows();
    }

    private static List<String[]> rows(String file) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                BalanceChecks.class.getResourceAsStream("/balance/" + file + ".csv"), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Network flows(String network, List<CorrelatedErrors> correlations) {
        List<Variable> variables = new ArrayList<>();
        Map<String, Map<String, Double>> balances = new LinkedHashMap<>();
        for (String[] row : rows("flow_reconciliation")) {
            if (row[0].equals(network)) {
                variables.add(Variable.measured(row[1], Double.parseDouble(row[2]), Double.parseDouble(row[3])));
                String[] coefficients = row[4].split(" ", -1);
                for (int i = 0; i < coefficients.length; i++) {
                    balances.computeIfAbsent("balance " + (i + 1), name -> new LinkedHashMap<>())
                            .put(row[1], Double.parseDouble(coefficients[i]));
                }
            }
        }
        return new Network(
                variables,
                balances.entrySet().stream()
                        .map(entry -> Balance.of(entry.getKey(), entry.getValue()))
                        .toList(),
                correlations);
    }

    private void check(
            String id,
            String what,
            Source source,
            String stated,
            String unit,
            Network network,
            ToDoubleFunction<Adjustment> of) {
        add(id, what, source, stated, unit, Tolerance.LAST_DIGIT, () -> of.applyAsDouble(network.adjust()));
    }

    private static ToDoubleFunction<Adjustment> value(String quantity) {
        return adjustment -> adjustment.value(quantity).orElseThrow();
    }

    private static ToDoubleFunction<Adjustment> uncertainty(String quantity, double factor) {
        return adjustment -> factor * adjustment.uncertainty(quantity).orElseThrow();
    }

    private void bypass() {
        Network network = flows(BYPASS, List.of());
        String[] stated = {"100.22", "64.50", "35.72", "64.50", "35.72", "100.22"};
        for (int i = 0; i < stated.length; i++) {
            String stream = "F" + (i + 1);
            check(
                    "balance-bypass-" + (i + 1),
                    "six measured streams about a bypass: stream " + (i + 1) + ", adjusted",
                    Source.NARASIMHAN,
                    stated[i],
                    "",
                    network,
                    value(stream));
        }
        check(
                "balance-bypass-u",
                "the same: standard uncertainty of an adjusted stream, 1 ÷ √3",
                Source.ARITHMETIC,
                "0.577350",
                "",
                network,
                uncertainty("F1", 1));
    }

    private void steam() {
        Network apart = flows(STEAM, List.of());
        String[] streams = {"mFDKEL", "mFDKELL", "mSPL", "mSPLL", "mV", "mHK", "mA7", "mA6", "mA5", "mHDNK"};
        String[] independent = {
            "44.6918", "44.1188", "44.6385", "44.3818", "0.5242", "69.9970", "10.3640", "3.7440", "4.3910", "18.4990"
        };
        String[] correlated = {
            "44.6959", "44.1229", "44.6426", "44.3861", "0.5245", "70.0049", "10.3642", "3.7440", "4.3910", "18.4993"
        };
        Network together = flows(
                STEAM,
                List.of(
                        new CorrelatedErrors("mFDKEL", "mFDKELL", 0.2),
                        new CorrelatedErrors("mSPL", "mSPLL", 0.39951)));
        for (int i = 0; i < streams.length; i++) {
            String what = "steam circuit, one coefficient 0.4: " + streams[i] + ", ";
            check(
                    "balance-steam-" + streams[i],
                    what + "independent",
                    Source.STEAM,
                    independent[i],
                    "kg/s",
                    apart,
                    value(streams[i]));
            check(
                    "balance-steam-" + streams[i] + "-correlated",
                    what + "two pairs correlated",
                    Source.STEAM,
                    correlated[i],
                    "kg/s",
                    together,
                    value(streams[i]));
        }
        check(
                "balance-steam-half-width",
                "steam circuit, two pairs correlated: 95 % half-width of mHK",
                Source.STEAM,
                "0.6151",
                "kg/s",
                together,
                uncertainty("mHK", COVERAGE));
        check(
                "balance-steam-misfit",
                "steam circuit, independent: J",
                Source.STEAM,
                "3.0602",
                "",
                apart,
                a -> a.test().misfit());
        check(
                "balance-steam-misfit-correlated",
                "steam circuit, two pairs correlated: J",
                Source.STEAM,
                "2.5370",
                "",
                together,
                a -> a.test().misfit());
    }

    private void levels() {
        double sigma = 5;
        List<Variable> variables = new ArrayList<>(List.of(
                Variable.exact("1a", 1000),
                Variable.unmeasured("2"),
                Variable.unmeasured("3"),
                Variable.unmeasured("4")));
        List<Balance> balances = new ArrayList<>();
        int number = 0;
        for (String[] row : rows("level_network_gama")) {
            String difference = "difference " + ++number;
            variables.add(Variable.measured(difference, Double.parseDouble(row[2]), sigma / 1000));
            balances.add(Balance.of(
                    "from " + row[0] + " to " + row[1] + ", " + number,
                    Map.of(row[0], 1.0, difference, 1.0, row[1], -1.0)));
        }
        Network network = Network.of(variables, balances);
        String[][] heights = {{"4", "998.77513", "3.1"}, {"3", "997.93325", "3.5"}, {"2", "999.27487", "3.1"}};
        for (String[] height : heights) {
            String what = "levelling loop, measured twice: height of point " + height[0];
            // The last digit of 999.274875 was rounded to even or down.
            add(
                    "balance-level-" + height[0],
                    what,
                    Source.GAMA,
                    height[1],
                    "m",
                    Tolerance.HAND_ROUNDED,
                    () -> value(height[0]).applyAsDouble(network.adjust()));
            check(
                    "balance-level-" + height[0] + "-u",
                    what + ", standard uncertainty",
                    Source.GAMA,
                    height[2],
                    "mm",
                    network,
                    uncertainty(height[0], 1000));
        }
        check(
                "balance-level-pvv",
                "levelling loop: sum of squares [pvv]",
                Source.GAMA,
                "146.625",
                "mm²",
                network,
                a -> sigma * sigma * a.test().misfit());
        check(
                "balance-level-m0",
                "levelling loop: standard deviation of a difference from the residuals, 5 degrees of freedom",
                Source.GAMA,
                "5.42",
                "mm",
                network,
                a -> sigma * Math.sqrt(a.test().misfit() / a.test().degreesOfFreedom()));
        check(
                "balance-level-largest",
                "levelling loop: largest normalized residual, that of difference 6",
                Source.GAMA,
                "1.68",
                "",
                network,
                a -> {
                    List<Candidate> measured = a.candidates().stream()
                            .filter(candidate -> candidate.kind() == Candidate.Kind.MEASUREMENT)
                            .toList();
                    return a.normalizedResidual(
                                    a.suspects(measured).get(0).candidate().name())
                            .orElseThrow();
                });
    }

    private void longley() {
        double correlation = 0.31040918154202557;
        List<Variable> variables = new ArrayList<>(
                List.of(Variable.unmeasured("constant"), Variable.unmeasured("GNP"), Variable.unmeasured("POP")));
        List<Balance> balances = new ArrayList<>();
        List<CorrelatedErrors> correlations = new ArrayList<>();
        List<String[]> rows = rows("longley_gls");
        for (int i = 0; i < rows.size(); i++) {
            String[] row = rows.get(i);
            String employed = "employed " + i;
            variables.add(Variable.measured(employed, Double.parseDouble(row[0]), 1));
            balances.add(Balance.of(
                    "year " + i,
                    Map.of(
                            employed,
                            1.0,
                            "constant",
                            -1.0,
                            "GNP",
                            -Double.parseDouble(row[1]),
                            "POP",
                            -Double.parseDouble(row[2]))));
            for (int j = 0; j < i; j++) {
                correlations.add(new CorrelatedErrors(employed, "employed " + j, Math.pow(correlation, i - j)));
            }
        }
        Network network = new Network(variables, balances, correlations);
        ToDoubleFunction<Adjustment> deviation =
                a -> Math.sqrt(a.test().misfit() / a.test().degreesOfFreedom());
        String[][] stated = {
            {"GNP", "0.0673894832", "0.0107033903"},
            {"POP", "-0.474273904", "0.153385472"},
            {"constant", "94898.8771", "13944.7723"}
        };
        for (String[] row : stated) {
            String what = "Longley's employment with correlated errors: " + row[0];
            check("balance-longley-" + row[0], what, Source.LONGLEY, row[1], "", network, value(row[0]));
            check(
                    "balance-longley-" + row[0] + "-u",
                    what + ", standard error",
                    Source.LONGLEY,
                    row[2],
                    "",
                    network,
                    a -> uncertainty(row[0], deviation.applyAsDouble(a)).applyAsDouble(a));
        }
        check(
                "balance-longley-s",
                "Longley's employment with correlated errors: residual standard deviation",
                Source.LONGLEY,
                "542.443043098",
                "",
                network,
                deviation);
    }

    /** All differences of equal weights, each measured once with a standard deviation of 1; the restraint is exact. */
    private static Network design(int weights, int restrained) {
        List<Variable> variables = new ArrayList<>();
        List<Balance> balances = new ArrayList<>();
        for (int i = 1; i <= weights; i++) {
            variables.add(Variable.unmeasured("weight " + i));
            for (int j = i + 1; j <= weights; j++) {
                String difference = i + " less " + j;
                variables.add(Variable.measured(difference, 0, 1));
                balances.add(Balance.of(difference, Map.of("weight " + i, 1.0, "weight " + j, -1.0, difference, -1.0)));
            }
        }
        Map<String, Double> restraint = new LinkedHashMap<>();
        for (int i = 1; i <= restrained; i++) {
            restraint.put("weight " + i, 1.0);
        }
        balances.add(Balance.of("restraint", restraint));
        return Network.of(variables, balances);
    }

    private void weighingDesigns() {
        design(3, 1, "unknown", "0.8165", 2);
        design(3, 1, "sum of both unknowns", "1.4142", 2, 3);
        design(4, 2, "standard", "0.3536", 1);
        design(4, 2, "unknown", "0.6124", 3);
        design(4, 2, "check, the difference of the standards", "0.7071", 1, -2);
        design(5, 2, "standard", "0.3162", 1);
        design(5, 2, "unknown", "0.5477", 3);
        design(5, 2, "sum of two unknowns", "0.8944", 3, 4);
        design(5, 2, "sum of three unknowns", "1.2247", 3, 4, 5);
        design(5, 2, "check, the difference of the standards", "0.6325", 1, -2);
    }

    private void design(int weights, int restrained, String what, String stated, int... of) {
        Map<String, Double> terms = new LinkedHashMap<>();
        for (int weight : of) {
            terms.put("weight " + Math.abs(weight), Math.signum((double) weight));
        }
        check(
                "balance-weights-" + weights + "-" + what.replaceAll("\\W+", "-"),
                "weighing design of " + weights + " equal weights: factor of the " + what,
                Source.WEIGHING_DESIGNS,
                stated,
                "",
                design(weights, restrained),
                a -> a.combination(terms).standardUncertainty());
    }
}
