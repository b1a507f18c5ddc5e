package org.gritwright.core;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.gritwright.core.PublishedCheck.Source;

/** Every published or derived number with the one that comes out, as a page, as a table, and in short. */
final class PublishedPage {
    private static final String UNITS_SOURCE = "NIST SP 811, HB 44, UCUM";
    private static final String UNITS_CITATION =
            "computed from the exact definitions of NIST Special Publication 811 (2008), Appendix B; NIST Handbook 44,"
                    + " Appendix C; UCUM (ucum-essence.xml)";
    private static final String EQUAL = "– means equal to the last digit printed.";

    private PublishedPage() {}

    /** One line a source: how many checks, and the largest deviation among those that aren't equal as printed. */
    static String summary() {
        return "| source | checks | largest deviation |\n|---|---|---|\n"
                + Arrays.stream(Source.values())
                        .map(source -> "| " + source.shortName() + ": " + source.citation() + " | "
                                + of(source).size() + " | " + largest(source) + " |\n")
                        .collect(Collectors.joining())
                + "| factors of units: " + UNITS_CITATION + " | "
                + UnitFactors.all().size() + " | "
                + (UnitFactors.all().stream()
                                .allMatch(factor -> factor.deviationText().equals("–"))
                        ? "–"
                        : "rounding of the double")
                + " |\n";
    }

    private static List<PublishedCheck> of(Source source) {
        return PublishedChecks.all().stream()
                .filter(check -> check.source() == source)
                .toList();
    }

    private static String largest(Source source) {
        Optional<PublishedCheck> largest = of(source).stream()
                .filter(check -> !check.isAsPrinted())
                .max(Comparator.comparingDouble(check -> Math.abs(check.deviation())));
        return largest.map(PublishedCheck::deviationText).orElse("–");
    }

    static String markdown() {
        return "| what | source | stated | computed | deviation | tested in |\n|---|---|---|---|---|---|\n"
                + PublishedChecks.all().stream()
                        .map(check -> String.join(
                                        " | ",
                                        "| " + check.what(),
                                        check.source().shortName(),
                                        check.statedText(),
                                        check.computedText(),
                                        check.deviationText(),
                                        check.testedIn())
                                + " |\n")
                        .collect(Collectors.joining())
                + "\n" + EQUAL + " Sources:\n\n"
                + Arrays.stream(Source.values())
                        .map(source -> "- " + source.shortName() + ": " + source.citation() + ".\n")
                        .collect(Collectors.joining());
    }

    /** A page that can be printed: no script, nothing from elsewhere. */
    static String html() {
        String rows = PublishedChecks.all().stream()
                .map(check -> row(
                        check.what(),
                        check.source().shortName(),
                        check.statedText(),
                        check.computedText(),
                        check.deviationText(),
                        check.testedIn()))
                .collect(Collectors.joining());
        String units = UnitFactors.all().stream()
                .map(factor -> row(
                        factor.what(),
                        UNITS_SOURCE,
                        factor.stated(),
                        factor.computedText(),
                        factor.deviationText(),
                        "PublishedFactorsTest of calc-units; PublishedValuesTest"))
                .collect(Collectors.joining());
        return """
                <!DOCTYPE html>
                <html lang="en">
                <head>
                <meta charset="utf-8">
                <meta name="viewport" content="width=device-width">
                <title>Gritwright: published checks</title>
                <style>
                body { font: 1rem/1.4 sans-serif; margin: 1.5rem auto; max-width: 75rem; padding: 0 1rem; color: #1a1a1a; background: #fff; }
                table { border-collapse: collapse; width: 100%%; font-size: 0.875rem; }
                caption { text-align: left; font-weight: bold; padding: 0.5rem 0; }
                th, td { text-align: left; vertical-align: top; padding: 0.25rem 0.5rem; border-bottom: 1px solid #999; overflow-wrap: anywhere; }
                th.n, td.n { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
                thead { display: table-header-group; }
                tr { break-inside: avoid; }
                @media print { body { margin: 0; max-width: none; } table { font-size: 8pt; } }
                </style>
                </head>
                <body>
                <main>
                <h1>Published checks</h1>
                <p>Every number that somebody else stated, or that follows from exact definitions (“derived”), beside the one
                that the libraries compute. %s What is cited from memory says so.</p>
                <h2>Mathematics of spreaders</h2>
                <table>
                <caption>%d checks of calc-core</caption>
                %s<tbody>
                %s</tbody>
                </table>
                <h2>Units</h2>
                <table>
                <caption>%d factors of calc-units</caption>
                %s<tbody>
                %s</tbody>
                </table>
                <h2>Sources</h2>
                <dl>
                %s</dl>
                </main>
                </body>
                </html>
                """.formatted(
                        EQUAL,
                        PublishedChecks.all().size(),
                        HEAD,
                        rows,
                        UnitFactors.all().size(),
                        HEAD,
                        units,
                        sources());
    }

    private static final String HEAD = """
            <thead><tr><th scope="col">What</th><th scope="col">Source</th><th scope="col" class="n">Stated</th><th scope="col" class="n">Computed</th><th scope="col" class="n">Deviation</th><th scope="col">Tested in</th></tr></thead>
            """;

    private static String row(
            String what, String source, String stated, String computed, String deviation, String test) {
        return "<tr><td>" + escaped(what) + "</td><td>" + escaped(source) + "</td><td class=\"n\">" + escaped(stated)
                + "</td><td class=\"n\">" + escaped(computed) + "</td><td class=\"n\">" + escaped(deviation)
                + "</td><td>"
                + escaped(test) + "</td></tr>\n";
    }

    private static String sources() {
        return Arrays.stream(Source.values())
                        .map(source -> source(source.shortName(), source.citation()))
                        .collect(Collectors.joining())
                + source(UNITS_SOURCE, UNITS_CITATION);
    }

    private static String source(String name, String citation) {
        return "<dt>" + escaped(name) + "</dt><dd>" + escaped(citation) + ".</dd>\n";
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
