package org.gritwright.core;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleSupplier;
import org.gritwright.core.PublishedCheck.Source;
import org.gritwright.core.PublishedCheck.Tolerance;
import org.gritwright.core.control.Change;
import org.gritwright.core.control.ControlChart;
import org.gritwright.core.control.CusumChart;
import org.gritwright.core.control.EwmaChart;
import org.gritwright.core.control.Goal;
import org.gritwright.core.control.IndividualsChart;
import org.gritwright.core.control.RunLengths;
import org.gritwright.core.control.RunRulesChart;
import org.gritwright.core.control.Sides;

/** Published numbers of control charts. */
final class ControlChecks extends CheckList {
    private static final double MEAN = 10;

    private ControlChecks() {}

    static List<PublishedCheck> all() {
        ControlChecks checks = new ControlChecks();
        checks.montgomery();
        checks.ewmaSteps();
        checks.ewmaDrifts();
        checks.ewmaDesigns();
        checks.cusumSteps();
        checks.cusumDrifts();
        checks.cusumQuantiles();
        checks.runRules();
        checks.individuals();
        return checks.rows();
    }

    private void add(
            String id, String what, Source source, String stated, Tolerance tolerance, DoubleSupplier computed) {
        add(id, what, source, stated, "", tolerance, computed);
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    /** An EWMA whose own limit is given, not that in its standard deviations. */
    private static EwmaChart ewmaWithin(double lambda, double limit) {
        return EwmaChart.fixed(lambda, limit / Math.sqrt(lambda / (2 - lambda)));
    }

    private static double[] observations() {
        return ControlTables.rows("montgomery-table-9-1").stream()
                .mapToDouble(row -> number(row, "x") - MEAN)
                .toArray();
    }

    private void montgomery() {
        CusumChart chart = CusumChart.twoSided(0.5, 5);
        List<Map<String, String>> rows = ControlTables.rows("montgomery-table-9-1");
        for (String number : List.of("4", "5", "6", "7", "8", "23", "24", "25", "26", "27", "28", "29", "30")) {
            int i = Integer.parseInt(number) - 1;
            add(
                    "cusum-" + number,
                    "CUSUM above of Montgomery's observations at " + number + ", k 0.5",
                    Source.MONTGOMERY,
                    rows.get(i).get("above"),
                    Tolerance.LAST_DIGIT,
                    () -> chart.run(observations()).get(i).above());
        }
        add(
                "cusum-signal",
                "number of the first CUSUM signal, h 5",
                Source.MONTGOMERY,
                "29",
                Tolerance.EXACT,
                () -> signal(chart).number());
        add(
                "cusum-first-changed",
                "number of the first observation after the change",
                Source.MONTGOMERY,
                "23",
                Tolerance.EXACT,
                () -> chart.changeAt(signal(chart)).orElseThrow().firstChanged());
        add(
                "cusum-mean",
                "mean after the change: 10 + 0.5 + 5.28 ÷ 7",
                Source.MONTGOMERY,
                "11.25",
                Tolerance.LAST_DIGIT,
                () -> MEAN + chart.changeAt(signal(chart)).orElseThrow().mean());
        EwmaChart ewma = new EwmaChart(0.1, 2.7, EwmaChart.Limits.EXACT, Sides.BOTH);
        add(
                "ewma-1",
                "EWMA of Montgomery's observations at 1, λ 0.1",
                Source.MONTGOMERY,
                "9.945",
                Tolerance.LAST_DIGIT,
                () -> MEAN + ewma.run(observations()).get(0).value());
        add(
                "ewma-30",
                "EWMA of Montgomery's observations at 30, λ 0.1",
                Source.MONTGOMERY,
                "10.6341",
                Tolerance.LAST_DIGIT,
                () -> MEAN + ewma.run(observations()).get(29).value());
    }

    private static CusumChart.Point signal(CusumChart chart) {
        return chart.run(observations()).stream()
                .filter(point -> point.signal().isPresent())
                .findFirst()
                .orElseThrow();
    }

    private static Tolerance tolerance(Map<String, String> row) {
        double units = number(row, "units");
        return units <= 0.5
                ? Tolerance.LAST_DIGIT
                : row.get("source").equals("QC_MANUAL")
                        ? Tolerance.WRONG_LAST_DIGITS
                        : units <= 1
                                ? Tolerance.HAND_ROUNDED
                                : row.get("source").equals("GAN_1991")
                                        ? Tolerance.ROUNDED_LIMITS
                                        : Tolerance.COARSE_INTEGRATION;
    }

    private void averages(String table, String kind, String change) {
        for (Map<String, String> row : ControlTables.rows(table)) {
            StringBuilder id = new StringBuilder(table);
            row.forEach((column, cell) -> {
                if (!column.equals("published") && !column.equals("units")) {
                    id.append('-').append(cell.toLowerCase(Locale.ROOT).replace('_', '-'));
                }
            });
            add(
                    id.toString(),
                    "average run length, " + kind + " " + words(row, change),
                    Source.valueOf(row.get("source")),
                    row.get("published"),
                    tolerance(row),
                    () -> chart(table, row).averageRunLength(change(row, change)));
        }
    }

    private static String words(Map<String, String> row, String change) {
        String start = row.containsKey("headstart") ? ", headstart " + row.get("headstart") : "";
        return (row.containsKey("lambda")
                        ? "λ " + row.get("lambda") + ", limit "
                        : "k " + row.get("allowance") + ", h ")
                + row.get("limit") + start + ", " + change + " " + row.get(change);
    }

    private static Change change(Map<String, String> row, String change) {
        return change.equals("drift") ? Change.drift(number(row, "drift")) : Change.step(number(row, "shift"));
    }

    private static ControlChart chart(String table, Map<String, String> row) {
        return switch (table) {
            case "ewma-step" -> EwmaChart.fixed(number(row, "lambda"), number(row, "limit"));
            case "ewma-drift" -> ewmaWithin(number(row, "lambda"), number(row, "limit"));
            case "cusum-step" ->
                new CusumChart(
                        number(row, "allowance"),
                        number(row, "limit"),
                        number(row, "headstart"),
                        Sides.valueOf(row.get("sides")));
            default -> new CusumChart(number(row, "allowance"), number(row, "limit"), 0, Sides.UPPER);
        };
    }

    private void ewmaSteps() {
        averages("ewma-step", "EWMA", "shift");
    }

    private void ewmaDrifts() {
        averages("ewma-drift", "EWMA", "drift");
    }

    private void cusumSteps() {
        averages("cusum-step", "CUSUM", "shift");
    }

    private void cusumDrifts() {
        averages("cusum-drift", "CUSUM", "drift");
    }

    private void ewmaDesigns() {
        for (String[] row :
                new String[][] {{"0.05", "2.32"}, {"0.1", "2.55"}, {"0.15", "2.65"}, {"0.2", "2.72"}, {"0.25", "2.76"}
                }) {
            add(
                    "ewma-limit-" + row[0],
                    "limit L of an EWMA, λ " + row[0] + ", for an average run length of 250",
                    Source.CROWDER_1989,
                    row[1],
                    Tolerance.LAST_DIGIT,
                    () -> EwmaChart.designed(
                                    Double.parseDouble(row[0]), EwmaChart.Limits.FIXED, Sides.BOTH, Goal.average(250))
                            .limit());
        }
        for (String[] row : new String[][] {
            {"0.05", "0.441"}, {"0.1", "0.675"}, {"0.15", "0.863"}, {"0.2", "1.027"}, {"0.25", "1.177"}
        }) {
            double lambda = Double.parseDouble(row[0]);
            add(
                    "ewma-median-" + row[0],
                    "median run length of an EWMA, λ " + row[0] + ", own limit " + row[1],
                    Source.GAN_1993,
                    "500",
                    Tolerance.ROUNDED_LIMITS,
                    () -> ewmaWithin(lambda, Double.parseDouble(row[1]))
                            .runLengths(Change.none())
                            .median());
            add(
                    "ewma-median-limit-" + row[0],
                    "own limit of an EWMA, λ " + row[0] + ", for a median run length of 500",
                    Source.GAN_1993,
                    row[1],
                    Tolerance.HAND_ROUNDED,
                    () -> EwmaChart.designed(lambda, EwmaChart.Limits.FIXED, Sides.BOTH, Goal.median(500))
                            .limitAt(1));
        }
    }

    private void cusumQuantiles() {
        for (String[] row : new String[][] {{"0.95", "345"}, {"0.5", "82"}, {"0.05", "9"}}) {
            add(
                    "cusum-quantile-" + row[0],
                    "quantile of the run length, CUSUM k 0.5, h 3, at " + row[0],
                    Source.WALDMANN,
                    row[1],
                    Tolerance.HAND_ROUNDED,
                    () -> {
                        RunLengths lengths = new CusumChart(0.5, 3, 0, Sides.UPPER).runLengths(Change.none());
                        return lengths.quantile(Double.parseDouble(row[0]));
                    });
        }
    }

    private void runRules() {
        Map<String, RunRulesChart> charts = Map.of(
                "beyond3",
                RunRulesChart.of(RunRulesChart.ONE_BEYOND_3),
                "two",
                RunRulesChart.of(RunRulesChart.ONE_BEYOND_3, RunRulesChart.TWO_OF_3_BEYOND_2),
                "four",
                RunRulesChart.of(RunRulesChart.ONE_BEYOND_3, RunRulesChart.FOUR_OF_5_BEYOND_1),
                "eight",
                RunRulesChart.of(RunRulesChart.ONE_BEYOND_3, RunRulesChart.EIGHT_ON_ONE_SIDE));
        for (Map<String, String> row : ControlTables.rows("run-rules")) {
            for (String rules : List.of("beyond3", "two", "four", "eight")) {
                add(
                        "run-rules-" + rules + "-" + row.get("shift"),
                        "average run length with run rules (" + rules + "), shift " + row.get("shift"),
                        Source.CHAMP_WOODALL,
                        row.get(rules),
                        Tolerance.LAST_DIGIT,
                        () -> charts.get(rules).averageRunLength(Change.step(number(row, "shift"))));
            }
        }
    }

    private void individuals() {
        String[] printed = {"18.2164", "16.3541", "12.4282", "8.7559", "6.1071", "4.3582", "3.2260", "2.4878", "1.9989"
        };
        for (int i = 0; i < printed.length; i++) {
            double shift = i / 4.0;
            add(
                    "individuals-" + shift,
                    "average run length of individuals within 2 and moving ranges within 3, shift " + shift,
                    Source.CROWDER_INDIVIDUALS,
                    printed[i],
                    Tolerance.COARSE_INTEGRATION,
                    () -> IndividualsChart.standardized(2, 3).averageRunLength(Change.step(shift)));
        }
        add(
                "individuals-200",
                "average run length of individuals within 2.992 and moving ranges within 4.139",
                Source.RIGDON,
                "200",
                Tolerance.LAST_DIGIT,
                () -> IndividualsChart.standardized(2.992, 4.139).averageRunLength(Change.none()));
        add(
                "individuals-500",
                "average run length of individuals within 3.268 and moving ranges within 4.556",
                Source.RIGDON,
                "500",
                Tolerance.ROUNDED_LIMITS,
                () -> IndividualsChart.standardized(3.268, 4.556).averageRunLength(Change.none()));
    }
}
