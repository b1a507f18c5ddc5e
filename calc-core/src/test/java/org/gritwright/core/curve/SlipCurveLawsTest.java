package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.curve.SlipSamples.at;
import static org.gritwright.core.curve.SlipSamples.caught;
import static org.gritwright.core.curve.SlipSamples.gallonsPerRevolution;
import static org.gritwright.core.curve.SlipSamples.relative;
import static org.gritwright.core.curve.SlipSamples.rpm;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import javax.measure.Unit;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RotationalSpeed;

class SlipCurveLawsTest {
    /** One physical catch. */
    record Caught(double rpm, double revolutions, double gallonsPerRevolution) {
        TimedCatch made() {
            return at(rpm, revolutions, gallonsPerRevolution);
        }
    }

    /** The units that one bookkeeper writes in. */
    record Units(Unit<Volume> volume, Unit<Time> time, Unit<RotationalSpeed> speed) {
        TimedCatch made(Caught caught) {
            return TimedCatch.of(caught(
                    Amounts.ofSi(
                            Amounts.si(
                                    Volume.class,
                                    Amounts.of(
                                            caught.revolutions * caught.gallonsPerRevolution,
                                            SpreadingUnits.US_GALLON)),
                            volume),
                    new ShaftCount.SpeedTimesTime(
                            Amounts.ofSi(caught.rpm / 60, speed),
                            Amounts.ofSi(60 * caught.revolutions / caught.rpm, time))));
        }
    }

    /** Catches at about 100, 200 and 400 rev/min of a pump that leaks up to a quarter of its slowest flow, or that doesn't. */
    @Provide
    Arbitrary<List<Caught>> catches() {
        Arbitrary<Double> leaks = Arbitraries.doubles().between(0, 1).ofScale(3);
        Arbitrary<Double> factors = Arbitraries.doubles().between(0.97, 1.03).ofScale(4);
        Arbitrary<Double> speeds = Arbitraries.doubles().between(0.995, 1.005).ofScale(4);
        Arbitrary<Integer> revolutions = Arbitraries.integers().between(50, 500);
        double[] set = {100, 200, 400};
        return leaks.flatMap(leak -> Combinators.combine(factors, speeds, revolutions)
                .as((factor, speed, turns) -> new Caught(speed, turns, factor))
                .list()
                .ofMinSize(3)
                .ofMaxSize(9)
                .map(drawn -> {
                    List<Caught> catches = new ArrayList<>();
                    for (int i = 0; i < drawn.size(); i++) {
                        double speed = set[i % 3] * drawn.get(i).rpm;
                        catches.add(new Caught(
                                speed,
                                drawn.get(i).revolutions,
                                (0.05 - leak / speed) * drawn.get(i).gallonsPerRevolution));
                    }
                    return catches;
                }));
    }

    @Provide
    Arbitrary<Units> units() {
        return Combinators.combine(
                        Arbitraries.of(
                                List.of(SpreadingUnits.US_GALLON, SpreadingUnits.LITER, SpreadingUnits.CUBIC_METER)),
                        Arbitraries.of(List.of(SpreadingUnits.SECOND, SpreadingUnits.MINUTE, SpreadingUnits.HOUR)),
                        Arbitraries.of(
                                List.of(SpreadingUnits.REVOLUTION_PER_MINUTE, SpreadingUnits.REVOLUTION_PER_SECOND)))
                .as(Units::new);
    }

    private static void assertAlike(SlipCurve one, SlipCurve other) {
        assertThat(other.model()).isEqualTo(one.model());
        assertThat(codes(other.findings())).isEqualTo(codes(one.findings()));
        for (double rpm : new double[] {101, 160, 300, 397}) {
            double expected = gallonsPerRevolution(one, rpm);
            assertThat(gallonsPerRevolution(other, rpm)).isCloseTo(expected, within(1e-9 * expected));
            double uncertainty = relative(one.volumePerRevolution(rpm(rpm)));
            assertThat(relative(other.volumePerRevolution(rpm(rpm))))
                    .isCloseTo(uncertainty, within(1e-6 * uncertainty + 1e-9));
        }
    }

    private static SlipCurve curve(List<Caught> catches) {
        return SlipCurve.chosenByTest(catches.stream().map(Caught::made).toList());
    }

    @Property(tries = 300)
    void unitsChangeNothing(@ForAll("catches") List<Caught> catches, @ForAll("units") Units units) {
        assertAlike(
                curve(catches),
                SlipCurve.chosenByTest(catches.stream().map(units::made).toList()));
    }

    @Property(tries = 300)
    void orderChangesNothing(@ForAll("catches") List<Caught> catches, @ForAll Random random) {
        List<Caught> shuffled = new ArrayList<>(catches);
        Collections.shuffle(shuffled, random);

        assertAlike(curve(catches), curve(shuffled));
    }

    /** Catches without scatter give the leak back, however they are spread over the speeds. */
    @Property(tries = 300)
    void anExactLeakIsRecovered(
            @ForAll @DoubleRange(min = 0.01, max = 1) double whole,
            @ForAll @DoubleRange(min = 0.01, max = 0.9) double ofSlowest,
            @ForAll @DoubleRange(min = 20, max = 300) double slowest,
            @ForAll @DoubleRange(min = 1.6, max = 10) double times,
            @ForAll @IntRange(min = 1, max = 3) int between) {
        double leak = ofSlowest * whole * slowest;
        List<TimedCatch> catches = new ArrayList<>();
        for (int i = 0; i <= between; i++) {
            double rpm = slowest * Math.pow(times, i / (double) between);
            catches.add(at(rpm, whole - leak / rpm));
            catches.add(at(rpm, 300, whole - leak / rpm));
        }
        SlipCurve curve = SlipCurve.chosenByTest(catches);

        assertThat(curve.model()).isEqualTo(SlipModel.LEAK);
        assertThat(Amounts.in(curve.leak().orElseThrow().value(), SpreadingUnits.US_GALLON_PER_MINUTE))
                .isCloseTo(leak, within(1e-8 * leak));
        assertThat(gallonsPerRevolution(curve.withoutLeak().orElseThrow())).isCloseTo(whole, within(1e-8 * whole));
        double middle = slowest * Math.sqrt(times);
        assertThat(gallonsPerRevolution(curve, middle))
                .isCloseTo(whole - leak / middle, within(1e-8 * (whole - leak / middle)));
    }

    /** The volume per revolution rises with the speed, and a constant one is too much at the slow end and too little at the fast one. */
    @Property(tries = 300)
    void aConstantVolumeIsOffBothWays(@ForAll("catches") List<Caught> catches) {
        SlipCurve curve = curve(catches);
        double slow = Amounts.in(curve.errorOfConstant(curve.lowestSpeed()), SpreadingUnits.PERCENT);
        double fast = Amounts.in(curve.errorOfConstant(curve.highestSpeed()), SpreadingUnits.PERCENT);

        if (curve.model() == SlipModel.LEAK) {
            assertThat(slow).isPositive();
            assertThat(fast).isNegative();
            assertThat(codes(curve.findings())).contains(FindingCode.LEAK_FOUND);
        } else {
            assertThat(slow).isCloseTo(0, within(1e-9));
            assertThat(fast).isCloseTo(0, within(1e-9));
            assertThat(codes(curve.findings())).doesNotContain(FindingCode.LEAK_FOUND);
        }
    }
}
