package org.gritwright.core.observation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class CatchConditionsTest {
    private static Conditions oil(double fahrenheit) {
        return Conditions.NONE.withOilTemperature(Amounts.of(fahrenheit, SpreadingUnits.FAHRENHEIT));
    }

    private static Conditions hopper(double percent) {
        return Conditions.NONE.withHopperLevel(Amounts.of(percent, SpreadingUnits.PERCENT));
    }

    private static List<Finding> of(Conditions... conditions) {
        return CatchFindings.ofConditions(Arrays.asList(conditions));
    }

    @Test
    void coldOilIsWorthARemark() {
        assertThat(of(oil(20))).singleElement().satisfies(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.OIL_COLD);
            assertThat(finding.severity()).isEqualTo(Severity.NOTE);
            assertThat(finding.sentence()).startsWith("The oil was at 20 °F in a catch, below 60 °F:");
        });
        assertThat(of(oil(60), oil(104))).isEmpty();
        assertThat(of(oil(59.9))).hasSize(1);
    }

    /** 15.5 °C are 59.9 °F, 15.6 °C are 60.08 °F. */
    @Test
    void coldIsAsColdInCelsius() {
        Quantity<Temperature> cold = Amounts.of(15.5, SpreadingUnits.CELSIUS);
        assertThat(of(Conditions.NONE.withOilTemperature(cold)))
                .singleElement()
                .asString()
                .contains("15.5 °C");
        assertThat(of(Conditions.NONE.withOilTemperature(Amounts.of(15.6, SpreadingUnits.CELSIUS))))
                .isEmpty();
    }

    @Test
    void aNearlyEmptyHopperIsWorthARemark() {
        assertThat(of(hopper(5))).singleElement().satisfies(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.HOPPER_NEARLY_EMPTY);
            assertThat(finding.severity()).isEqualTo(Severity.NOTE);
            assertThat(finding.sentence()).startsWith("The hopper was only 5 % full in a catch, below 15 %:");
        });
        assertThat(of(hopper(15))).isEmpty();
    }

    @Test
    void ofSeveralCatchesTheWorstIsNamedOnce() {
        assertThat(of(oil(50), Conditions.NONE, hopper(12), oil(30), oil(110), hopper(9)))
                .extracting(Finding::sentence)
                .satisfiesExactly(
                        oil -> assertThat(oil).contains("30 °F"),
                        level -> assertThat(level).contains("9 %"));
    }

    @Test
    void whatWasNotWrittenDownIsNotRemarkedOn() {
        assertThat(of(Conditions.NONE, Conditions.NONE)).isEmpty();
        assertThat(of()).isEmpty();
    }
}
