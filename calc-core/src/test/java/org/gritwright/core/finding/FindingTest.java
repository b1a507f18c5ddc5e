package org.gritwright.core.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.finding.Argument.name;
import static org.gritwright.core.finding.Argument.number;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.HashMap;
import java.util.Map;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("locale")
class FindingTest {
    private static final Argument TEST_WEIGHT = number(pounds(50));

    private static Finding scaleCheckMissed(Argument reading, Argument scale) {
        return Finding.of(
                FindingCode.SCALE_CHECK_MISSED, Map.of("reading", reading, "testWeight", TEST_WEIGHT, "scale", scale));
    }

    @Test
    void theSentenceIsTheTemplateWithTheArgumentsInWords() {
        Finding finding = scaleCheckMissed(number(pounds(49.123456)), name("S-1"));

        assertThat(finding.sentence()).isEqualTo("Scale S-1 showed 49.12 lb for a test weight of 50 lb that day.");
        assertThat(finding)
                .hasToString("scale-check-missed: Scale S-1 showed 49.12 lb for a test weight of 50 lb that day.");
        assertThat(finding.severity()).isEqualTo(Severity.ERROR);
    }

    @Test
    void theNumbersStayExact() {
        Finding finding = Finding.of(
                FindingCode.STEADY_FLOW_OFF, Map.of("error", number(Amounts.of(1.0791366906, SpreadingUnits.PERCENT))));

        assertThat(finding.number("error")).isEqualTo(Amounts.of(1.0791366906, SpreadingUnits.PERCENT));
        assertThat(finding.sentence()).isEqualTo("The steady flow is off the target flow by 1.079 %.");
    }

    @Test
    void onlyANumberIsGivenAsANumber() {
        Finding finding = scaleCheckMissed(number(pounds(49)), name("S-1"));

        assertRefused(
                "number of scale-check-missed must be one of its arguments: scale", () -> finding.number("scale"));
        assertRefused("number of scale-check-missed must be one of its arguments: mass", () -> finding.number("mass"));
    }

    @Test
    void whatAUserNamedIsNotReadAsAPlaceInTheTemplate() {
        assertThat(scaleCheckMissed(number(pounds(49)), name("{reading} $1")).sentence())
                .isEqualTo("Scale {reading} $1 showed 49 lb for a test weight of 50 lb that day.");
    }

    @Test
    void aMissingArgumentIsRefused() {
        assertRefused(
                "arguments of scale-check-missed must be [reading: number, scale: name, testWeight: number]:"
                        + " {reading=49 lb}",
                () -> Finding.of(FindingCode.SCALE_CHECK_MISSED, Map.of("reading", number(pounds(49)))));
    }

    @Test
    void anArgumentThatTheCodeDoesNotDeclareIsRefused() {
        assertRefused(
                "arguments of single-catch must be []: {caught=49 lb}",
                () -> Finding.of(FindingCode.SINGLE_CATCH, Map.of("caught", number(pounds(49)))));
    }

    @Test
    void anArgumentOfAnotherKindIsRefused() {
        assertRefused(
                "arguments of scale-check-missed must be [reading: number, scale: name, testWeight: number]:"
                        + " {reading=49 lb, scale=50 lb, testWeight=50 lb}",
                () -> scaleCheckMissed(number(pounds(49)), TEST_WEIGHT));
        assertRefused(
                "arguments of coasting-mismatch must be [coasting: term[caught-only, counted-only]]:"
                        + " {coasting=in-both}",
                () -> Finding.of(FindingCode.COASTING_MISMATCH, Map.of("coasting", Term.IN_BOTH)));
    }

    @Test
    void proseIsTakenOnlyWhereVersion1OfARecordHadIt() {
        Argument prose = new Argument.Prose("the uncertainty of the count, the scatter of the catches");

        assertThat(Finding.of(FindingCode.UNCERTAINTY_INCOMPLETE, Map.of("unknown", prose))
                        .sentence())
                .contains("the uncertainty of the count, the scatter of the catches");
        assertThatThrownBy(() -> scaleCheckMissed(number(pounds(49)), prose)).hasMessageContaining("scale: name");
    }

    @Test
    void aFindingHasACode() {
        assertThatNullPointerException().isThrownBy(() -> Finding.of(null)).withMessage("code");
    }

    @Test
    void laterChangesOfTheMapDoNotReachIt() {
        Map<String, Argument> arguments = new HashMap<>(Map.of("error", number(Amounts.of(1, SpreadingUnits.PERCENT))));
        Finding finding = Finding.of(FindingCode.STEADY_FLOW_OFF, arguments);
        arguments.clear();

        assertThat(finding.arguments()).hasSize(1);
        assertThatThrownBy(() -> finding.arguments().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void aFindingOfEveryCodeArrivesAsItWasSent() throws IOException, ClassNotFoundException {
        for (Finding sent : FindingSamples.all()) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
                out.writeObject(sent);
            }
            try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
                assertThat(in.readObject())
                        .isEqualTo(sent)
                        .hasSameHashCodeAs(sent)
                        .hasToString(sent.toString());
            }
        }
    }
}
