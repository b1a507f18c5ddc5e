package org.gritwright.core.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("locale")
class LawTest {
    private static final Path SPI = Path.of("src", "main", "java", "org", "gritwright", "core", "spi");

    /** A law's id in the Javadoc; other things in code font have dots, capitals or brackets. */
    private static final Pattern ID = Pattern.compile("\\{@code ([a-z]+(-[a-z]+)*)}");

    private static List<String> idsInJavadocOf(String type) throws IOException {
        String source = Files.readString(SPI.resolve(type + ".java"));
        String list = source.substring(source.indexOf("<ul>"), source.indexOf("</ul>"));
        return ID.matcher(list)
                .results()
                .map((MatchResult found) -> found.group(1))
                .toList();
    }

    private static List<String> idsOfLawsThat(Predicate<Law> bind) {
        return Stream.of(Law.values()).filter(bind).map(Law::id).toList();
    }

    @Test
    void idsStayAsTheyAre() {
        assertThat(idsOfLawsThat(law -> true))
                .containsExactly(
                        "stable-identity",
                        "described-parameters",
                        "enforced-limits",
                        "named-refusals",
                        "finite",
                        "not-negative",
                        "positive",
                        "rising",
                        "unit-invariant",
                        "deterministic",
                        "serializable",
                        "plausible-fill",
                        "settable-limits",
                        "closed-is-zero",
                        "json-round-trip");
    }

    @Test
    void theJavadocOfConveyorTypesNamesExactlyTheLawsThatBindThem() throws IOException {
        assertThat(idsInJavadocOf("ConveyorType"))
                .containsExactlyInAnyOrderElementsOf(idsOfLawsThat(Law::bindsConveyors));
    }

    @Test
    void theJavadocOfGateTypesNamesExactlyTheLawsThatBindThem() throws IOException {
        assertThat(idsInJavadocOf("GateType")).containsExactlyInAnyOrderElementsOf(idsOfLawsThat(Law::bindsGates));
    }

    @Test
    void theJavadocOfPumpAndFlowMeterTypesNamesExactlyTheLawsThatBindThem() throws IOException {
        assertThat(idsInJavadocOf("PumpType")).containsExactlyInAnyOrderElementsOf(idsOfLawsThat(Law::bindsPumps));
        assertThat(idsInJavadocOf("FlowMeterType"))
                .containsExactlyInAnyOrderElementsOf(idsOfLawsThat(Law::bindsFlowMeters));
    }

    @Test
    void whoIsNotBoundByALaw() {
        assertThat(Law.values()).filteredOn(law -> !law.bindsGates()).containsExactly(Law.POSITIVE, Law.PLAUSIBLE_FILL);
        assertThat(Law.values())
                .filteredOn(law -> !law.bindsConveyors())
                .containsExactly(Law.POSITIVE, Law.SETTABLE_LIMITS, Law.CLOSED_IS_ZERO);
        assertThat(Law.values())
                .filteredOn(law -> !law.bindsPumps())
                .containsExactly(Law.NOT_NEGATIVE, Law.CLOSED_IS_ZERO);
        assertThat(Law.values())
                .filteredOn(law -> !law.bindsFlowMeters())
                .containsExactly(Law.NOT_NEGATIVE, Law.CLOSED_IS_ZERO);
    }
}
