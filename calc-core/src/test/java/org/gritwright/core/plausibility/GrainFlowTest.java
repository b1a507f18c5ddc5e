package org.gritwright.core.plausibility;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.numbers;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_CUBIC_METER;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_SECOND;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.SQUARE_METER;

import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.FixedGate;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargeRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GrainFlowTest {
    private static final Quantity<BulkDensity> DENSITY = Amounts.of(1200, KILOGRAM_PER_CUBIC_METER);
    private static final Quantity<Length> THREE_MILLIMETERS = Amounts.of(3, MILLIMETER);
    private static final Material DRY_SALT = SALT.withGrains(THREE_MILLIMETERS);

    /** A circle of so many millimeters. */
    private static Quantity<Area> circle(double millimeters) {
        return Amounts.of(Math.PI / 4 * millimeters * millimeters * 1e-6, SQUARE_METER);
    }

    private static double kilogramsPerSecond(GrainFlow flow, Quantity<Area> area) {
        Quantity<DischargeRate> through = flow.through(area, DENSITY, THREE_MILLIMETERS);
        assertThat(through.getUnit()).isEqualTo(KILOGRAM_PER_SECOND);
        return through.getValue().doubleValue();
    }

    /** derived from the textbook form with C 0.58, k 1.4 and g 9.80665 m/s²; the constants from memory */
    @ParameterizedTest
    @CsvSource({"50, 0.978438, 5e-7", "100, 6.19132, 5e-6"})
    void isCTimesDensityTimesRootGTimesTheEffectiveDiameterToTheTwoAndAHalf(
            double millimeters, double expected, double lastDigit) {
        assertThat(kilogramsPerSecond(GrainFlow.USUAL, circle(millimeters))).isCloseTo(expected, within(lastDigit));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, 4.19, 4.2})
    void nothingRunsThroughAnOpeningNoWiderThanTheMargin(double millimeters) {
        assertThat(kilogramsPerSecond(GrainFlow.USUAL, circle(millimeters))).isCloseTo(0, within(1e-30));
    }

    @Test
    void somethingRunsThroughAWiderOne() {
        assertThat(kilogramsPerSecond(GrainFlow.USUAL, circle(4.3))).isGreaterThan(1e-8);
    }

    @Test
    void hasConstantsOfItsOwnWhereSomebodyMeasuredThem() {
        double usual = kilogramsPerSecond(GrainFlow.USUAL, circle(50));

        assertThat(kilogramsPerSecond(new GrainFlow(0.29, 1.4), circle(50))).isCloseTo(usual / 2, within(1e-15));
        // Without a margin the 50 mm count whole: (50 / 45.8) to the 2.5.
        assertThat(kilogramsPerSecond(new GrainFlow(0.58, 0), circle(50)))
                .isCloseTo(usual * Math.pow(50 / 45.8, 2.5), within(1e-14));
    }

    @Property
    void doublingTheDensityDoublesTheFlow(@ForAll @DoubleRange(min = 100, max = 3000) double density) {
        double once = GrainFlow.USUAL
                .through(circle(50), Amounts.of(density, KILOGRAM_PER_CUBIC_METER), THREE_MILLIMETERS)
                .getValue()
                .doubleValue();
        double twice = GrainFlow.USUAL
                .through(circle(50), Amounts.of(2 * density, KILOGRAM_PER_CUBIC_METER), THREE_MILLIMETERS)
                .getValue()
                .doubleValue();

        assertThat(twice).isCloseTo(2 * once, within(1e-14 * twice));
    }

    @Property
    void coarserGrainsRunNoFaster(
            @ForAll @DoubleRange(min = 0.1, max = 40) double one,
            @ForAll @DoubleRange(min = 0.1, max = 40) double two) {
        double fine = GrainFlow.USUAL
                .through(circle(50), DENSITY, Amounts.of(Math.min(one, two), MILLIMETER))
                .getValue()
                .doubleValue();
        double coarse = GrainFlow.USUAL
                .through(circle(50), DENSITY, Amounts.of(Math.max(one, two), MILLIMETER))
                .getValue()
                .doubleValue();

        assertThat(coarse).isLessThanOrEqualTo(fine);
    }

    @Test
    void refusesConstantsAndValuesThatAreNone() {
        assertRefused("coefficient of grain flow must be greater than 0: 0.0", () -> new GrainFlow(0, 1.4));
        assertRefused("coefficient of grain flow must be finite: NaN", () -> new GrainFlow(Double.NaN, 1.4));
        assertRefused("margin of grain flow must be 0 or more: -1.0", () -> new GrainFlow(0.58, -1));
        assertRefused(
                "margin of grain flow must be finite: Infinity", () -> new GrainFlow(0.58, Double.POSITIVE_INFINITY));
        assertRefused(
                "open area must be 0 or more: -1 m²",
                () -> GrainFlow.USUAL.through(Amounts.of(-1, SQUARE_METER), DENSITY, THREE_MILLIMETERS));
        assertRefused(
                "loose bulk density must be greater than 0: 0 kg/m³",
                () -> GrainFlow.USUAL.through(circle(50), Amounts.of(0, KILOGRAM_PER_CUBIC_METER), THREE_MILLIMETERS));
        assertRefused(
                "grain diameter must be greater than 0: 0 mm",
                () -> GrainFlow.USUAL.through(circle(50), DENSITY, Amounts.of(0, MILLIMETER)));
    }

    /** What runs by itself through the chain's gate at 2 in: an area of 24 in × 2 in counts as its circle. */
    private static double limitKilogramsPerSecond() {
        double diameter = Math.sqrt(4 * 24 * 2 * 0.0254 * 0.0254 / Math.PI);
        double density = Amounts.si(BulkDensity.class, SALT.looseBulkDensity());
        return 0.58 * density * Math.sqrt(9.80665) * Math.pow(diameter - 1.4 * 0.003, 2.5);
    }

    private static Optional<Finding> starved(Spreader spreader, Material material, double kilogramsPerSecond) {
        return GrainFlow.USUAL.starved(
                CalibrationPoint.of(material, spreader, height(2)),
                Amounts.of(kilogramsPerSecond, KILOGRAM_PER_SECOND));
    }

    @Test
    void aFlowJustAboveTheLimitStarvesTheConveyor() {
        assertThat(starved(CHAIN, DRY_SALT, limitKilogramsPerSecond() * (1 - 1e-9)))
                .isEmpty();
        assertThat(starved(CHAIN, DRY_SALT, limitKilogramsPerSecond())).isEmpty();

        Finding finding =
                starved(CHAIN, DRY_SALT, limitKilogramsPerSecond() * (1 + 1e-9)).orElseThrow();
        assertThat(finding.code()).isEqualTo(FindingCode.STARVED_GATE);
        assertThat(finding.code().doubtsData()).isFalse();
    }

    @Test
    void theFindingTellsFlowAndLimitInTheUnitOfTheFlow() {
        Quantity<DischargeRate> flow = Amounts.of(10_000, POUND_PER_MINUTE);
        Finding finding = GrainFlow.USUAL
                .starved(CalibrationPoint.of(DRY_SALT, CHAIN, height(2)), flow)
                .orElseThrow();

        assertThat(numbers(finding)).containsOnlyKeys("flow", "limit").containsEntry("flow", flow);
        Quantity<?> limit = finding.number("limit");
        assertThat(limit.getUnit()).isEqualTo(POUND_PER_MINUTE);
        assertThat(limit.getValue().doubleValue()).isCloseTo(limitKilogramsPerSecond() / 0.45359237 * 60, within(1e-9));
    }

    @Test
    void ofGrainsThatNobodyKnowsNothingIsSaid() {
        assertThat(starved(CHAIN, SALT, 1e6)).isEmpty();
        assertThat(starved(CHAIN, DRY_SALT, 1e6)).isPresent();
    }

    @Test
    void aConveyorThatNoGateMetersIsNotStarvedByOne() {
        Quantity<DischargeRate> much = Amounts.of(1e6, KILOGRAM_PER_SECOND);

        assertThat(GrainFlow.USUAL.starved(CalibrationPoint.of(DRY_SALT, AUGER, Setting.none()), much))
                .isEmpty();
        assertThat(starved(new Spreader(AUGER.conveyor(), CHAIN.gate(), SENSOR), DRY_SALT, 1e6))
                .isEmpty();
    }

    @Test
    void aFixedGateCanStarveAConveyorToo() {
        Gate fixed = Gate.of(new FixedGate(), Map.of("width", inches(24), "height", inches(2)));
        Spreader spreader = new Spreader(CHAIN.conveyor(), fixed, SENSOR);
        Quantity<DischargeRate> above = Amounts.of(limitKilogramsPerSecond() * 1.001, KILOGRAM_PER_SECOND);

        assertThat(GrainFlow.USUAL.starved(CalibrationPoint.of(DRY_SALT, spreader, Setting.none()), above))
                .isPresent();
    }
}
