package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.pulses;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
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
import net.jqwik.api.constraints.Scale;
import org.gritwright.core.calibration.CalibrationCatch;
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
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;

class DischargeCurveLawsTest {
    /** One physical catch. */
    record Caught(double openingMeters, double kilograms, int pulses) {}

    /** The units that one bookkeeper writes in. */
    record Units(Unit<Mass> mass, Unit<Length> length, Unit<BulkDensity> density) {}

    private static final Units SI =
            new Units(SpreadingUnits.KILOGRAM, SpreadingUnits.METER, SpreadingUnits.KILOGRAM_PER_CUBIC_METER);

    /** How a curve comes to its model: stated, or by test. */
    enum Way {
        PROPORTIONAL,
        DEAD_OPENING,
        TABLE,
        BY_TEST;

        DischargeCurve curve(List<CalibrationCatch> catches, RatioEstimator estimator) {
            return this == BY_TEST
                    ? DischargeCurve.chosenByTest(catches, CurveModel.DEAD_OPENING, estimator, CatchLimits.COMMON)
                    : DischargeCurve.fit(catches, CurveModel.valueOf(name()), estimator, CatchLimits.COMMON);
        }
    }

    /** Catches at 4, 8 and 14 cm of about 20 kg/rev per 10 cm beyond a dead opening of either sign. */
    /** Those that take catches of any lengths. */
    @Provide
    Arbitrary<RatioEstimator> ofRatios() {
        return Arbitraries.of(RatioEstimator.RATIO_OF_SUMS, RatioEstimator.MEAN_OF_RATIOS);
    }

    @Provide
    Arbitrary<List<Caught>> catches() {
        Arbitrary<Double> factors = Arbitraries.doubles().between(0.96, 1.04).ofScale(4);
        Arbitrary<Integer> pulses = Arbitraries.integers().between(500, 3000);
        Arbitrary<Double> dead = Arbitraries.doubles().between(-0.01, 0.01).ofScale(4);
        double[] openings = {0.04, 0.08, 0.14};
        return dead.flatMap(h0 -> Combinators.combine(factors, pulses)
                .as((factor, count) -> new Caught(0, factor, count))
                .list()
                .ofMinSize(3)
                .ofMaxSize(7)
                .map(drawn -> {
                    List<Caught> catches = new ArrayList<>();
                    for (int i = 0; i < drawn.size(); i++) {
                        double opening = openings[i % 3];
                        double kilograms = 200 * (opening - h0) * drawn.get(i).kilograms * drawn.get(i).pulses / 100;
                        catches.add(new Caught(opening, kilograms, drawn.get(i).pulses));
                    }
                    return catches;
                }));
    }

    @Provide
    Arbitrary<Units> units() {
        return Combinators.combine(
                        Arbitraries.of(List.of(
                                SpreadingUnits.POUND,
                                SpreadingUnits.KILOGRAM,
                                SpreadingUnits.GRAM,
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

    private static DischargeCurve curve(Way way, List<Caught> catches, Units units, RatioEstimator estimator) {
        Spreader spreader = new Spreader(
                Conveyor.of(
                        new DragChain(),
                        Map.of(
                                "teeth",
                                Amounts.of(6, SpreadingUnits.ONE),
                                "chainPitch",
                                Amounts.ofSi(0.0663, units.length))),
                Gate.of(new SlidingGate(), Map.of("width", Amounts.ofSi(0.6, units.length))),
                SENSOR);
        Material material = Material.of("salt", Amounts.ofSi(1280, units.density));
        org.gritwright.core.weighing.Scale scale = org.gritwright.core.weighing.Scale.of(
                "S", Amounts.ofSi(5000, units.mass), Amounts.ofSi(0.1, units.mass));
        List<CalibrationCatch> made = catches.stream()
                .map(c -> catchAt(
                        CalibrationPoint.of(
                                material, spreader, Setting.height(Amounts.ofSi(c.openingMeters, units.length))),
                        CaughtMass.of(
                                scale,
                                DAY,
                                new Weighing(
                                        "A", Amounts.ofSi(c.kilograms + 2, units.mass), Amounts.ofSi(2, units.mass))),
                        pulses(c.pulses)))
                .toList();
        return way.curve(made, estimator);
    }

    private static Measured<DischargePerRevolution> at(DischargeCurve curve, double meters) {
        return curve.predict(Setting.height(Amounts.of(meters, SpreadingUnits.METER)))
                .dischargePerRevolution();
    }

    private static double si(Quantity<DischargePerRevolution> discharge) {
        return Amounts.si(DischargePerRevolution.class, discharge);
    }

    private static double density(Quantity<BulkDensity> density) {
        return Amounts.si(BulkDensity.class, density);
    }

    /** A dead opening may be below zero, which no setting is. */
    private static double meters(Quantity<?> length) {
        return Amounts.si(Length.class, length.asType(Length.class));
    }

    /** Effective ones are real numbers: the span of the scale is beside the scatter. */
    private static void assertSameDegrees(OptionalDouble actual, OptionalDouble expected) {
        assertThat(actual.isPresent()).isEqualTo(expected.isPresent());
        if (expected.isPresent()) {
            double degrees = expected.getAsDouble();
            assertThat(Double.isInfinite(actual.getAsDouble())).isEqualTo(Double.isInfinite(degrees));
            assertThat(Double.isInfinite(degrees) ? 1 : actual.getAsDouble() / degrees)
                    .isCloseTo(1, within(1e-6));
        }
    }

    private static void assertSame(DischargeCurve actual, DischargeCurve expected, double factor) {
        assertThat(actual.model()).isEqualTo(expected.model());
        assertThat(codes(actual.findings())).isEqualTo(codes(expected.findings()));
        assertThat(actual.settings()).hasSameSizeAs(expected.settings());
        for (double meters : new double[] {0.03, 0.06, 0.08, 0.2}) {
            double value = si(at(expected, meters).value()) * factor;
            assertThat(si(at(actual, meters).value())).isCloseTo(value, within(1e-9 * value));
            // Uncertainties of predictions hold the rounding of scale and count, which is no part of the catch.
            if (factor == 1) {
                assertSameDegrees(
                        at(actual, meters).degreesOfFreedom(),
                        at(expected, meters).degreesOfFreedom());
                assertThat(at(actual, meters)
                                .standardUncertainty()
                                .map(u -> si(u))
                                .orElse(0.0))
                        .isCloseTo(
                                at(expected, meters)
                                        .standardUncertainty()
                                        .map(u -> si(u))
                                        .orElse(0.0),
                                within(1e-9 * value));
            }
        }
        Optional<Measured<BulkDensity>> k = expected.effectiveBulkDensity();
        assertThat(actual.effectiveBulkDensity().isPresent()).isEqualTo(k.isPresent());
        k.ifPresent(expectedK -> {
            Measured<BulkDensity> actualK = actual.effectiveBulkDensity().orElseThrow();
            double value = density(expectedK.value()) * factor;
            assertThat(density(actualK.value())).isCloseTo(value, within(1e-9 * value));
            assertThat(actualK.standardUncertainty().map(u -> density(u)).orElse(0.0))
                    .isCloseTo(
                            factor
                                    * expectedK
                                            .standardUncertainty()
                                            .map(u -> density(u))
                                            .orElse(0.0),
                            within(1e-9 * value));
        });
        assertThat(actual.deadOpening().isPresent())
                .isEqualTo(expected.deadOpening().isPresent());
        expected.deadOpening().ifPresent(h0 -> {
            assertThat(meters(actual.deadOpening().orElseThrow().value())).isCloseTo(meters(h0.value()), within(1e-11));
            assertThat(actual.deadOpening()
                            .orElseThrow()
                            .standardUncertainty()
                            .map(u -> meters(u))
                            .orElse(0.0))
                    .isCloseTo(h0.standardUncertainty().map(u -> meters(u)).orElse(0.0), within(1e-10));
        });
    }

    @Property(tries = 150)
    void theUnitsDoNotMatter(
            @ForAll("catches") List<Caught> catches,
            @ForAll("units") Units units,
            @ForAll Way way,
            @ForAll("ofRatios") RatioEstimator estimator) {
        assertSame(curve(way, catches, units, estimator), curve(way, catches, SI, estimator), 1);
    }

    @Property(tries = 150)
    void theOrderOfCatchesDoesNotMatter(
            @ForAll("catches") List<Caught> catches,
            @ForAll long seed,
            @ForAll Way way,
            @ForAll("ofRatios") RatioEstimator estimator) {
        List<Caught> shuffled = new ArrayList<>(catches);
        Collections.shuffle(shuffled, new Random(seed));

        assertSame(curve(way, shuffled, SI, estimator), curve(way, catches, SI, estimator), 1);
    }

    @Property(tries = 100)
    void aFactorOfTheMassIsOneOfTheDensityAndNotOfTheDeadOpening(
            @ForAll("catches") List<Caught> catches,
            @ForAll @Scale(4) @DoubleRange(min = 0.1, max = 3) double factor,
            @ForAll Way way) {
        List<Caught> heavier = catches.stream()
                .map(c -> new Caught(c.openingMeters, c.kilograms * factor, c.pulses))
                .toList();

        assertSame(
                curve(way, heavier, SI, RatioEstimator.RATIO_OF_SUMS),
                curve(way, catches, SI, RatioEstimator.RATIO_OF_SUMS),
                factor);
    }

    @Property(tries = 100)
    void timesTheCountIsAFractionOfTheDischarge(
            @ForAll("catches") List<Caught> catches, @ForAll @IntRange(min = 2, max = 9) int factor, @ForAll Way way) {
        List<Caught> longer = catches.stream()
                .map(c -> new Caught(c.openingMeters, c.kilograms, c.pulses * factor))
                .toList();

        assertSame(
                curve(way, longer, SI, RatioEstimator.RATIO_OF_SUMS),
                curve(way, catches, SI, RatioEstimator.RATIO_OF_SUMS),
                1.0 / factor);
    }

    @Property(tries = 100)
    void aWiderOpeningNeverDischargesLess(
            @ForAll("catches") List<Caught> catches,
            @ForAll Way way,
            @ForAll @Scale(4) @DoubleRange(min = 0.03, max = 0.5) double one,
            @ForAll @Scale(4) @DoubleRange(min = 0.03, max = 0.5) double other) {
        DischargeCurve curve = curve(way, catches, SI, RatioEstimator.RATIO_OF_SUMS);
        double low = si(at(curve, Math.min(one, other)).value());

        assertThat(low).isPositive();
        assertThat(si(at(curve, Math.max(one, other)).value())).isGreaterThanOrEqualTo(low * (1 - 1e-14));
    }

    @Property(tries = 100)
    void aProportionIsOne(
            @ForAll("catches") List<Caught> catches,
            @ForAll @Scale(4) @DoubleRange(min = 0.001, max = 0.5) double opening) {
        DischargeCurve curve = curve(Way.PROPORTIONAL, catches, SI, RatioEstimator.RATIO_OF_SUMS);
        double perMeter = si(at(curve, 0.1).value()) / 0.1;

        assertThat(si(at(curve, opening).value())).isCloseTo(perMeter * opening, within(1e-12 * perMeter));
    }
}
