package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.pulses;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.DragChain;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.SlidingGate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;

class CalibrationLawsTest {
    /** One physical catch: what was caught, in kilograms, and the pulses. */
    record Caught(double kilograms, int pulses) {}

    /** The units that one bookkeeper writes in. */
    record Units(Unit<Mass> mass, Unit<Length> length, Unit<BulkDensity> density) {}

    private static final Units SI =
            new Units(SpreadingUnits.KILOGRAM, SpreadingUnits.METER, SpreadingUnits.KILOGRAM_PER_CUBIC_METER);

    /** Those that take catches of any lengths. */
    @Provide
    Arbitrary<RatioEstimator> ofRatios() {
        return Arbitraries.of(RatioEstimator.RATIO_OF_SUMS, RatioEstimator.MEAN_OF_RATIOS);
    }

    @Provide
    Arbitrary<List<Caught>> catches() {
        Arbitrary<Double> kilograms = Arbitraries.doubles().between(10, 1000).ofScale(3);
        Arbitrary<Integer> pulses = Arbitraries.integers().between(500, 5000);
        return Combinators.combine(kilograms, pulses)
                .as(Caught::new)
                .list()
                .ofMinSize(2)
                .ofMaxSize(5);
    }

    @Provide
    Arbitrary<Units> units() {
        return Combinators.combine(
                        Arbitraries.of(List.of(
                                SpreadingUnits.POUND,
                                SpreadingUnits.KILOGRAM,
                                SpreadingUnits.GRAM,
                                SpreadingUnits.OUNCE,
                                SpreadingUnits.SHORT_TON)),
                        Arbitraries.of(List.of(
                                SpreadingUnits.INCH,
                                SpreadingUnits.FOOT,
                                SpreadingUnits.MILLIMETER,
                                SpreadingUnits.CENTIMETER)),
                        Arbitraries.of(List.of(
                                SpreadingUnits.POUND_PER_CUBIC_FOOT,
                                SpreadingUnits.KILOGRAM_PER_LITER,
                                SpreadingUnits.SHORT_TON_PER_CUBIC_YARD)))
                .as(Units::new);
    }

    private static Quantity<Length> length(double meters, Units units) {
        return Amounts.ofSi(meters, units.length);
    }

    private static Calibration calibration(List<Caught> catches, double openingMeters, Units units) {
        return calibration(catches, openingMeters, units, RatioEstimator.RATIO_OF_SUMS);
    }

    private static Calibration calibration(
            List<Caught> catches, double openingMeters, Units units, RatioEstimator estimator) {
        Spreader spreader = new Spreader(
                Conveyor.of(
                        new DragChain(),
                        Map.of("teeth", Amounts.of(6, SpreadingUnits.ONE), "chainPitch", length(0.0663, units))),
                Gate.of(new SlidingGate(), Map.of("width", length(0.6, units))),
                SENSOR);
        Material material = Material.of("salt", Amounts.ofSi(1280, units.density));
        Scale scale = Scale.of("S", Amounts.ofSi(2000, units.mass), Amounts.ofSi(0.1, units.mass));
        CalibrationPoint point = CalibrationPoint.of(material, spreader, Setting.height(length(openingMeters, units)));
        List<CalibrationCatch> made = catches.stream()
                .map(c -> catchAt(
                        point,
                        CaughtMass.of(
                                scale,
                                DAY,
                                new Weighing(
                                        "A", Amounts.ofSi(c.kilograms + 2, units.mass), Amounts.ofSi(2, units.mass))),
                        pulses(c.pulses)))
                .toList();
        return Calibration.from(made, estimator, CatchLimits.COMMON);
    }

    private static double kilogramsPerRevolution(Quantity<DischargePerRevolution> discharge) {
        return Amounts.si(DischargePerRevolution.class, discharge);
    }

    private static void assertSame(Calibration actual, Calibration expected, double factor) {
        double ratio = kilogramsPerRevolution(expected.dischargePerRevolution().value()) * factor;
        double allowed = 1e-12 * ratio;
        assertThat(kilogramsPerRevolution(actual.dischargePerRevolution().value()))
                .isCloseTo(ratio, within(allowed));
        assertThat(kilogramsPerRevolution(actual.sampleDeviation().orElseThrow()))
                .isCloseTo(
                        factor
                                * kilogramsPerRevolution(
                                        expected.sampleDeviation().orElseThrow()),
                        within(allowed));
        assertThat(actual.apparentFill().value())
                .isCloseTo(
                        factor * expected.apparentFill().value(),
                        within(1e-12 * factor * expected.apparentFill().value()));
    }

    private static void assertSameUncertainty(Calibration actual, Calibration expected) {
        double wanted = kilogramsPerRevolution(
                expected.dischargePerRevolution().standardUncertainty().orElseThrow());
        assertThat(kilogramsPerRevolution(
                        actual.dischargePerRevolution().standardUncertainty().orElseThrow()))
                .isCloseTo(
                        wanted,
                        within(1e-12
                                * kilogramsPerRevolution(
                                        expected.dischargePerRevolution().value())));
    }

    @Property
    void theUnitsDoNotMatter(
            @ForAll("catches") List<Caught> catches,
            @ForAll("units") Units units,
            @ForAll @DoubleRange(min = 0.02, max = 0.9) double opening,
            @ForAll("ofRatios") RatioEstimator estimator) {
        Calibration inUnits = calibration(catches, opening, units, estimator);
        Calibration inSi = calibration(catches, opening, SI, estimator);

        assertSame(inUnits, inSi, 1);
        assertSameUncertainty(inUnits, inSi);
    }

    @Property
    void theOrderOfCatchesDoesNotMatter(
            @ForAll("catches") List<Caught> catches, @ForAll long seed, @ForAll("ofRatios") RatioEstimator estimator) {
        List<Caught> shuffled = new ArrayList<>(catches);
        Collections.shuffle(shuffled, new Random(seed));

        Calibration inOtherOrder = calibration(shuffled, 0.1, SI, estimator);
        Calibration inOrder = calibration(catches, 0.1, SI, estimator);

        assertSame(inOtherOrder, inOrder, 1);
        assertSameUncertainty(inOtherOrder, inOrder);
    }

    @Property
    void twiceTheMassIsTwiceTheDischargeAndTheFill(@ForAll("catches") List<Caught> catches) {
        List<Caught> half =
                catches.stream().map(c -> new Caught(c.kilograms / 2, c.pulses)).toList();

        assertSame(calibration(half, 0.1, SI), calibration(catches, 0.1, SI), 0.5);
    }

    @Property
    void timesTheCountIsAFractionOfTheDischargeAndTheFill(
            @ForAll("catches") List<Caught> catches, @ForAll @IntRange(min = 1, max = 9) int factor) {
        List<Caught> longer = catches.stream()
                .map(c -> new Caught(c.kilograms, c.pulses * factor))
                .toList();

        assertSame(calibration(longer, 0.1, SI), calibration(catches, 0.1, SI), 1.0 / factor);
    }

    @Property
    void splittingContainersChangesNothing(
            @ForAll @IntRange(min = 1, max = 5000) int first, @ForAll @IntRange(min = 1, max = 5000) int second) {
        Scale scale =
                Scale.of("S", Amounts.of(2000, SpreadingUnits.KILOGRAM), Amounts.of(0.1, SpreadingUnits.KILOGRAM));
        CaughtMass inOne = CaughtMass.of(scale, DAY, new Weighing("A", tenths(first + second + 20), tenths(20)));
        CaughtMass inTwo = CaughtMass.of(
                scale,
                DAY,
                new Weighing("A", tenths(first + 20), tenths(20)),
                new Weighing("B", tenths(second + 20), tenths(20)));

        assertThat(discharge(inTwo)).isEqualTo(discharge(inOne));
    }

    private static Quantity<Mass> tenths(int tenthsOfAKilogram) {
        return Amounts.of(BigDecimal.valueOf(tenthsOfAKilogram, 1).doubleValue(), SpreadingUnits.KILOGRAM);
    }

    private static Quantity<DischargePerRevolution> discharge(CaughtMass caught) {
        return Calibration.from(List.of(catchAt(AUGER_POINT, caught, pulses(2000))))
                .dischargePerRevolution()
                .value();
    }

    @Property
    void theFillFallsAsTheRecordedOpeningGrows(
            @ForAll("catches") List<Caught> catches,
            @ForAll @DoubleRange(min = 0.02, max = 0.4) double opening,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double more) {
        assertThat(calibration(catches, opening + more, SI).apparentFill().value())
                .isLessThan(calibration(catches, opening, SI).apparentFill().value());
    }
}
