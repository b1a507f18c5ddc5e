package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tech.units.indriya.quantity.Quantities;

/** Mixed-up kinds do not compile: javac is asked. */
class KindsApartAtCompileTimeTest {
    private static final String HEAD = """
            import static org.gritwright.units.Amounts.*;
            import static org.gritwright.units.SpreadingUnits.*;
            import javax.measure.*;
            import org.gritwright.units.*;
            import org.gritwright.units.quantity.*;
            class Snippet { Object use() {
            """;

    @TempDir
    Path folder;

    @Test
    void aRatePerMileIsNotGivenInAUnitPerLaneMile() throws Exception {
        assertOnlyTheFirstCompiles(
                "return of(260, POUND_PER_MILE).to(KILOGRAM_PER_KILOMETER);",
                "return of(260, POUND_PER_MILE).to(POUND_PER_LANE_MILE);");
        assertOnlyTheFirstCompiles(
                "return in(of(260, POUND_PER_MILE), KILOGRAM_PER_KILOMETER);",
                "return in(of(260, POUND_PER_MILE), KILOGRAM_PER_LANE_KILOMETER);");
    }

    @Test
    void noConversionIsCompiledBetweenTwoKinds() throws Exception {
        assertOnlyTheFirstCompiles(
                "return Conversion.between(POUND_PER_MILE, KILOGRAM_PER_KILOMETER);",
                "return Conversion.between(POUND_PER_MILE, POUND_PER_LANE_MILE);");
        assertOnlyTheFirstCompiles(
                "return Conversion.between(REVOLUTION_PER_MINUTE, REVOLUTION_PER_SECOND);",
                "return Conversion.between(REVOLUTION_PER_MINUTE, tech.units.indriya.unit.Units.HERTZ);");
        assertOnlyTheFirstCompiles(
                "return Conversion.between(LITER_PER_KILOMETER, LITER_PER_METER);",
                "return Conversion.between(LITER_PER_KILOMETER, SQUARE_METER);");
        assertOnlyTheFirstCompiles(
                "return Conversion.between(MILLILITER_PER_SQUARE_METER, LITER_PER_SQUARE_METER);",
                "return Conversion.between(MILLILITER_PER_SQUARE_METER, METER);");
    }

    @Test
    void textIsReadAsTheKindThatIsAskedFor() throws Exception {
        assertOnlyTheFirstCompiles(
                "Quantity<ApplicationRate> rate = parse(ApplicationRate.class, \"260 lb/mi\"); return rate;",
                "Quantity<ApplicationRate> rate = parse(LaneApplicationRate.class, \"260 lb/lane-mi\"); return rate;");
        assertOnlyTheFirstCompiles(
                "return si(ApplicationRate.class, of(260, POUND_PER_MILE));",
                "return si(ApplicationRate.class, of(260, POUND_PER_LANE_MILE));");
    }

    private void assertOnlyTheFirstCompiles(String right, String wrong) throws Exception {
        assertThat(errorsOf(right)).as(right).isEmpty();
        assertThat(errorsOf(wrong))
                .as(wrong)
                .containsPattern("compiler\\.err\\.(cant\\.apply\\.symbol|prob\\.found\\.req)")
                .contains("Snippet.java");
    }

    /** What javac says about a snippet, as message keys, which are the same in every language. */
    private String errorsOf(String body) throws IOException {
        Path source = Files.writeString(folder.resolve("Snippet.java"), HEAD + body + " } }");
        String classPath = Stream.of(Amounts.class, Unit.class, Quantities.class)
                .map(KindsApartAtCompileTimeTest::jarOf)
                .collect(Collectors.joining(java.io.File.pathSeparator));
        StringWriter said = new StringWriter();
        ToolProvider javac = ToolProvider.findFirst("javac").orElseThrow();
        int status = javac.run(
                new PrintWriter(said),
                new PrintWriter(said),
                "-XDrawDiagnostics",
                "-proc:none",
                "-cp",
                classPath,
                "-d",
                folder.toString(),
                source.toString());
        assertThat(status)
                .as("exit status, with the output: %s", said)
                .isEqualTo(said.toString().contains("compiler.err") ? 1 : 0);
        return status == 0 ? "" : said.toString();
    }

    private static String jarOf(Class<?> type) {
        try {
            return Path.of(type.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }
}
