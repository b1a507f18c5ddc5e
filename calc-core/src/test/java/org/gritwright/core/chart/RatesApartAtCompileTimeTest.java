package org.gritwright.core.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A rate of another basis than the chart's does not compile: javac is asked. */
class RatesApartAtCompileTimeTest {
    private static final String HEAD = """
            import static org.gritwright.units.Amounts.*;
            import static org.gritwright.units.SpreadingUnits.*;
            import java.util.*;
            import org.gritwright.core.chart.*;
            import org.gritwright.core.envelope.*;
            import org.gritwright.units.quantity.*;
            class Snippet { Object use(ChartSubject subject, Envelope truck, OpenLoopChart<ApplicationRate> control) {
            """;

    @TempDir
    Path folder;

    @Test
    void aRatePerLaneMileIsNoRateOfAChartPerMile() throws IOException {
        String chart = "return new FeedbackChart<>(subject, truck, RateBasis.%s, List.of(of(300, %s)), "
                + "List.of(of(20, MILE_PER_HOUR)));";

        assertThat(errorsOf(chart.formatted("perDistance()", "POUND_PER_MILE"))).isEmpty();
        assertThat(errorsOf(chart.formatted("perLane(of(2, LANE))", "POUND_PER_LANE_MILE")))
                .isEmpty();
        assertThat(errorsOf(chart.formatted("perDistance()", "POUND_PER_LANE_MILE")))
                .contains("compiler.err.");
        assertThat(errorsOf(chart.formatted("perLane(of(2, LANE))", "POUND_PER_MILE")))
                .contains("compiler.err.");
    }

    @Test
    void theBestSettingForARatePerLaneMileIsNotAskedOfAChartPerMile() throws IOException {
        String best = "return control.best(of(300, %s), of(20, MILE_PER_HOUR));";

        assertThat(errorsOf(best.formatted("KILOGRAM_PER_KILOMETER"))).isEmpty();
        assertThat(errorsOf(best.formatted("POUND_PER_LANE_MILE"))).contains("compiler.err.");
    }

    @Test
    void aLineOfACardHasTheRateOfItsBasis() throws IOException {
        String line = "return new FeedbackLine<>(truck, RateBasis.perArea(of(8, METER)), of(20, %s));";

        assertThat(errorsOf(line.formatted("GRAM_PER_SQUARE_METER"))).isEmpty();
        assertThat(errorsOf(line.formatted("POUND_PER_MILE"))).contains("compiler.err.");
    }

    /** What javac says about a snippet, as message keys, which are the same in every language. */
    private String errorsOf(String body) throws IOException {
        Path source = Files.writeString(folder.resolve("Snippet.java"), HEAD + body + " } }");
        String libraries = Stream.of("java.class.path", "jdk.module.path")
                .map(System::getProperty)
                .filter(Objects::nonNull)
                .collect(Collectors.joining(File.pathSeparator));
        StringWriter said = new StringWriter();
        PrintWriter out = new PrintWriter(said);
        ToolProvider javac = ToolProvider.findFirst("javac").orElseThrow();
        javac.run(
                out,
                out,
                "-XDrawDiagnostics",
                "-proc:none",
                "-cp",
                libraries,
                "-d",
                folder.toString(),
                source.toString());
        return said.toString();
    }
}
