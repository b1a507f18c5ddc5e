package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.chainWith;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.SQUARE_CENTIMETER;

import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class SweptByOpeningTest {
    private static final SweptByOpening GEOMETRY = CHAIN.sweptByOpening();

    @Property
    void isWhatTheSpreaderSweeps(@ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1) double meters) {
        assertThat(GEOMETRY.applyAsDouble(meters))
                .isEqualTo(CHAIN.sweptCubicMetersPerRevolution(Setting.of(Amounts.of(meters, METER))));
    }

    @Test
    void countsByTheSensedShaft() {
        SweptByOpening geared = chainWith(new ShaftSensor(Amounts.of(100, PULSE_PER_REVOLUTION), Amounts.of(4, ONE)))
                .sweptByOpening();

        assertThat(geared.applyAsDouble(0.1)).isCloseTo(GEOMETRY.applyAsDouble(0.1) / 4, within(1e-18));
    }

    @Test
    void aClosedGateSweepsNothing() {
        assertThat(GEOMETRY.applyAsDouble(0)).isZero();
    }

    @Test
    void goesFromTheLowestToTheHighestOpening() {
        assertThat(GEOMETRY.lowest()).isEqualTo(Setting.height(Amounts.of(0, METER)));
        assertThat(GEOMETRY.highest()).isEqualTo(Setting.height(Amounts.of(1, METER)));
        assertThat(GEOMETRY.applyAsDouble(1 + 1e-13))
                .as("a hair past the end is rounding")
                .isEqualTo(GEOMETRY.applyAsDouble(1));
        assertRefused("gate setting must be within 0 m to 1 m: 1.001", () -> GEOMETRY.applyAsDouble(1.001));
        assertRefused("gate setting must be within 0 m to 1 m: -0.001", () -> GEOMETRY.applyAsDouble(-0.001));
        assertRefused("gate setting must be within 0 m to 1 m: NaN", () -> GEOMETRY.applyAsDouble(Double.NaN));
    }

    @Test
    void takesAnOpeningOfTheGatesKindAsANumber() {
        assertThat(GEOMETRY.number(Setting.of(Amounts.of(50.8, MILLIMETER)))).isCloseTo(0.0508, within(1e-17));
        assertThat(GEOMETRY.number(Setting.of(inches(0)))).isZero();
        assertRefused("gate setting must be within 0 m to 1 m: 40 in", () -> GEOMETRY.number(Setting.of(inches(40))));
        assertRefused(
                "gate setting must be a height from 0 m to 1 m: 1",
                () -> GEOMETRY.number(Setting.of(Amounts.of(1, ONE))));
    }

    @Test
    void aSettingIsItsOwnNumber() {
        Gate marks = Gate.of(
                TableGate.bySetting(),
                Map.of(
                        "settings", List.of(Amounts.of(0, ONE), Amounts.of(10, ONE)),
                        "areas", List.of(Amounts.of(0, SQUARE_CENTIMETER), Amounts.of(500, SQUARE_CENTIMETER))));
        SweptByOpening bySetting = new Spreader(CHAIN.conveyor(), marks, SENSOR).sweptByOpening();

        assertThat(bySetting.number(Setting.of(Amounts.of(4, ONE)))).isEqualTo(4);
        assertThat(bySetting.highest()).isEqualTo(Setting.mark(10));
        assertThat(bySetting.applyAsDouble(4)).isCloseTo(0.02 * 6 * 2.609 * 0.0254, within(1e-16));
    }

    @Test
    void aPercentageIsARatio() {
        Gate gate = Gate.of(
                TableGate.bySetting(),
                Map.of(
                        "settings", List.of(Amounts.of(10, PERCENT), Amounts.of(100, PERCENT)),
                        "areas", List.of(Amounts.of(50, SQUARE_CENTIMETER), Amounts.of(500, SQUARE_CENTIMETER))));
        SweptByOpening byPercentage = new Spreader(CHAIN.conveyor(), gate, SENSOR).sweptByOpening();

        assertThat(byPercentage.number(Setting.percent(40))).isEqualTo(0.4);
        assertThat(byPercentage.lowest()).isEqualTo(Setting.percent(10));
        assertThat(byPercentage.applyAsDouble(0.4)).isCloseTo(0.02 * 6 * 2.609 * 0.0254, within(1e-16));
        assertRefused(
                "gate setting must be a percentage from 10 % to 100 %: 40",
                () -> byPercentage.number(Setting.mark(40)));
    }

    @Test
    void isThereOnlyWhereAnAdjustableGateMetersTheConveyor() {
        assertRefused(
                "spreader must be one with a conveyor that an adjustable gate meters:"
                        + " auger, version 1 with no-gate, version 1",
                AUGER::sweptByOpening);
        assertRefused(
                "spreader must be one with a conveyor that an adjustable gate meters:"
                        + " auger, version 1 with sliding-gate, version 1",
                () -> new Spreader(AUGER.conveyor(), CHAIN.gate(), SENSOR).sweptByOpening());
        Gate fixed = Gate.of(new FixedGate(), Map.of("width", inches(24), "height", inches(4)));
        assertRefused(
                "spreader must be one with a conveyor that an adjustable gate meters:"
                        + " drag-chain, version 1 with fixed-opening, version 1",
                () -> new Spreader(CHAIN.conveyor(), fixed, SENSOR).sweptByOpening());
    }
}
