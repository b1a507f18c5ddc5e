package org.gritwright.core.budget;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;

import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;

/** The examples are of a gate 4 in (0.1016 m) high, read within 1/4 in (0.00635 m), and a discharge of 500·h² kg/rev. */
class GateReadingTest {
    private static final double H = 0.1016;
    private static final double DEVIATION = 0.00635 / Math.sqrt(3);

    private static Component<DischargePerRevolution> component(
            Quantity<?> reading, Setting setting, DoubleUnaryOperator discharge) {
        return GateReading.component(reading, setting, H, discharge, SpreadingUnits.KILOGRAM_PER_REVOLUTION);
    }

    /** Of a curve that goes from one opening to another only. */
    private static double contribution(double from, double to) {
        return component(inches(0.25), height(4), h -> {
                    if (h < from || h > to) {
                        throw new InvalidInputException("opening", "on the curve", String.valueOf(h));
                    }
                    return 500 * h * h;
                })
                .contribution()
                .getValue()
                .doubleValue();
    }

    @Test
    void theReadingIsARectangularErrorOfTheOpening() {
        Component<DischargePerRevolution> component = component(inches(0.25), height(4), h -> 100 * h);

        assertThat(Amounts.in(component.contribution(), SpreadingUnits.KILOGRAM_PER_REVOLUTION))
                .isCloseTo(100 * DEVIATION, within(1e-12));
        assertThat(component.name()).isEqualTo("reading of the gate");
        assertThat(component.distribution()).isEqualTo(Distribution.RECTANGULAR);
        assertThat(component.standardUncertainty().getUnit()).isEqualTo(SpreadingUnits.INCH);
        assertThat(component.standardUncertainty().getValue().doubleValue())
                .isCloseTo(0.25 / Math.sqrt(3), within(1e-15));
    }

    /** 500·((h + d)² − (h − d)²) ÷ 2 = 1000·h·d. */
    @Test
    void itIsHalfTheChangeFromOneSideToTheOther() {
        assertThat(contribution(0, 1)).isCloseTo(1000 * H * DEVIATION, within(1e-12));
    }

    /** 500·(h² − (h − d)²) = 500·(2·h·d − d²), and with + on the other side. */
    @Test
    void whereTheCurveEndsItIsTheChangeToTheOtherSide() {
        double square = DEVIATION * DEVIATION;

        assertThat(contribution(0, H)).isCloseTo(500 * (2 * H * DEVIATION - square), within(1e-12));
        assertThat(contribution(H, 1)).isCloseTo(500 * (2 * H * DEVIATION + square), within(1e-12));
    }

    @Test
    void onACurveOfASinglePointItIsTheWholeDischarge() {
        assertThat(contribution(H, H)).isCloseTo(500 * H * H, within(1e-12));
    }

    @Test
    void aReadingIsGreaterThanNothingAndOnTheSettingsScale() {
        assertRefused(
                "reading of the gate must be greater than 0 and on the scale of 4 in: 0 in",
                () -> component(inches(0), height(4), h -> h));
        assertRefused(
                "reading of the gate must be greater than 0 and on the scale of 4 in: 5 %",
                () -> component(Amounts.of(5, SpreadingUnits.PERCENT), height(4), h -> h));
    }
}
