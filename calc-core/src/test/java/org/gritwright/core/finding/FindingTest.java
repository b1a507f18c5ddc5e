package org.gritwright.core.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;

import java.util.HashMap;
import java.util.Map;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("locale")
class FindingTest {
    @Test
    void theSentenceIsTheTemplateWithRoundedNumbersAndWords() {
        Finding finding = new Finding(
                FindingCode.SCALE_CHECK_MISSED,
                Map.of("reading", pounds(49.123456), "testWeight", pounds(50)),
                Map.of("scale", "S-1"));

        assertThat(finding.sentence()).isEqualTo("Scale S-1 showed 49.12 lb for a test weight of 50 lb that day.");
        assertThat(finding)
                .hasToString("scale-check-missed: Scale S-1 showed 49.12 lb for a test weight of 50 lb that day.");
        assertThat(finding.severity()).isEqualTo(Severity.ERROR);
    }

    @Test
    void theNumbersStayExact() {
        Finding finding = Finding.of(
                FindingCode.STEADY_FLOW_OFF, Map.of("error", Amounts.of(1.0791366906, SpreadingUnits.PERCENT)));

        assertThat(finding.numbers())
                .containsOnly(Map.entry("error", Amounts.of(1.0791366906, SpreadingUnits.PERCENT)));
        assertThat(finding.sentence()).isEqualTo("The steady flow is off the target flow by 1.079 %.");
    }

    @Test
    void whatAUserNamedIsNotReadAsAPlaceInTheTemplate() {
        Finding finding = new Finding(
                FindingCode.SCALE_CHECK_MISSED,
                Map.of("reading", pounds(49), "testWeight", pounds(50)),
                Map.of("scale", "{reading} $1"));

        assertThat(finding.sentence())
                .isEqualTo("Scale {reading} $1 showed 49 lb for a test weight of 50 lb that day.");
    }

    @Test
    void aFindingWithoutANumberThatItsSentenceNeedsIsRefused() {
        assertRefused(
                "numbers and words of scale-check-missed must be all of [reading, scale, testWeight]: [reading]",
                () -> Finding.of(FindingCode.SCALE_CHECK_MISSED, Map.of("reading", pounds(49))));
    }

    @Test
    void aFindingHasACode() {
        assertThatNullPointerException().isThrownBy(() -> Finding.of(null)).withMessage("code");
    }

    @Test
    void laterChangesOfTheMapsDoNotReachIt() {
        Map<String, Quantity<?>> numbers = new HashMap<>(Map.of("error", Amounts.of(1, SpreadingUnits.PERCENT)));
        Finding finding = Finding.of(FindingCode.STEADY_FLOW_OFF, numbers);
        numbers.clear();

        assertThat(finding.numbers()).hasSize(1);
        assertThatThrownBy(() -> finding.numbers().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> finding.words().put("a", "b")).isInstanceOf(UnsupportedOperationException.class);
    }
}
