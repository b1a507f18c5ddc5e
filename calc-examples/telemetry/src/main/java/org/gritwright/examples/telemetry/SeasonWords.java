package org.gritwright.examples.telemetry;

import java.io.PrintWriter;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What a season came to, in words.
 *
 * @param out where to
 * @param options the band, and the yard's offset for days
 */
record SeasonWords(PrintWriter out, SeasonOptions options) {
    private static final int MOST_ROADS = 20;
    private static final double PERCENT = 100;

    void tell(Summary summary, String output) {
        Summary.Line fleet = summary.fleet();
        say(
                "Read %,d rows of %d trucks; %,d can't be counted.%n",
                fleet.rows(), summary.trucks().size(), fleet.badRows());
        trucks(summary);
        roads(summary);
        say(
                "%n+/- is half the 95 %% interval. Spreading: how far trucks went with it on. Within band: of that way, where the"
                        + " rate was at most %s %% off its target.",
                Drawing.text(
                        BigDecimal.valueOf(options.band().limit().getValue().doubleValue())));
        liquids(summary);
        corrections(summary);
        reasons(summary);
        say("%nThe rest is in %s", output);
    }

    private void say(String format, Object... values) {
        out.println(String.format(Locale.ROOT, format, values));
    }

    private static String percent(Optional<Double> percent) {
        return percent.map(known -> String.format(Locale.ROOT, "%.1f", known)).orElse("-");
    }

    private void trucks(Summary summary) {
        say("Truck     Laid, lb (95 %%)       Spreading, mi   Within band   Bad rows");
        for (Summary.Line line : summary.lines()) {
            say(
                    "%-8s  %,9.0f +/-%,6.0f    %,13.1f   %9s %%   %,8d",
                    line.name(),
                    UsUnits.pounds(line.laid().amount()),
                    line.expandedPounds(),
                    UsUnits.miles(line.way().spreading()),
                    percent(line.percent(line.shares().within())),
                    line.badRows());
        }
    }

    private void roads(Summary summary) {
        long named = summary.roads().keySet().stream()
                .filter(name -> !name.isEmpty())
                .count();
        if (named == 0) {
            say("%nNo row names a road, so that there is nothing by roads.");
            return;
        }
        say("%nRoad                  Laid, lb (95 %%)       Spreading, mi   Within band   Rate, lb/lane-mi");
        summary.roads().entrySet().stream()
                .filter(road -> !road.getKey().isEmpty())
                .limit(MOST_ROADS)
                .forEach(road -> road(road.getKey(), road.getValue()));
        RoadTotals nowhere = summary.roads().get("");
        if (nowhere != null) {
            say(
                    "%-20s  %,9.0f +/-%,6.0f",
                    "no road is named",
                    UsUnits.pounds(nowhere.laid().amount()),
                    UsUnits.expandedPounds(nowhere.laid()));
        }
        if (named > MOST_ROADS) {
            say("%,d more roads are in the table.", named - MOST_ROADS);
        }
    }

    private void road(String name, RoadTotals road) {
        double laneMiles = UsUnits.miles(road.laneMillimeters());
        double target = UsUnits.pounds(road.wantedMilligrams()) / laneMiles;
        String wanted = road.withoutTarget() == 0 ? String.format(Locale.ROOT, " of %.0f wanted", target) : "";
        String rate = laneMiles > 0
                ? String.format(Locale.ROOT, "%.0f%s", UsUnits.pounds(road.placed()) / laneMiles, wanted)
                : "-";
        say(
                "%-20s  %,9.0f +/-%,6.0f    %,13.1f   %9s %%   %s",
                name,
                UsUnits.pounds(road.laid().amount()),
                UsUnits.expandedPounds(road.laid()),
                UsUnits.miles(road.way().spreading()),
                percent(UsUnits.percent(road.shares(), road.shares().within())),
                rate);
    }

    private void liquids(Summary summary) {
        for (Summary.Line line : summary.trucks()) {
            if (line.liquid().isMetered()) {
                say(
                        "%n%s wetted what it laid with %,.1f US gal +/- %.1f US gal (95 %%): %s.",
                        line.name(),
                        UsUnits.gallons(line.liquid().laid().amount()),
                        UsUnits.expandedGallons(line.liquid().laid()),
                        UsUnits.gallonsPerTon(line.liquid().wetted())
                                .map(gallons -> prewet(gallons, line.statedGallonsPerTon()))
                                .orElse("nothing was laid that it could have wetted"));
            }
        }
    }

    private static String prewet(double gallonsPerTon, double stated) {
        String got = String.format(Locale.ROOT, "%.2f US gal per short ton", gallonsPerTon);
        if (Double.isNaN(stated)) {
            return got + "; no route says how much is wanted";
        }
        double off = gallonsPerTon / stated - 1;
        return got
                + String.format(
                        Locale.ROOT,
                        ", which is %.1f %% %s than the %.2f that its route asks for",
                        PERCENT * Math.abs(off),
                        off < 0 ? "less" : "more",
                        stated);
    }

    private void corrections(Summary summary) {
        for (Corrected one : summary.corrected()) {
            say("%n%s", one.sentence(options.offset()));
        }
    }

    private void reasons(Summary summary) {
        if (summary.fleet().badRows() > 0) {
            say("%nWhy rows can't be counted, and how many:");
        }
        for (Map.Entry<String, Long> reason : summary.fleet().reasons().entrySet()) {
            String trucks = String.join(
                    ", ",
                    summary.trucks().stream()
                            .filter(line -> line.reasons().containsKey(reason.getKey()))
                            .map(Summary.Line::name)
                            .toList());
            say("%,8d  %s (%s)", reason.getValue(), reason.getKey(), trucks);
        }
    }
}
