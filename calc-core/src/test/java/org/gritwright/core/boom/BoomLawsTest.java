package org.gritwright.core.boom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.gritwright.core.boom.BoomSamples.BOOM;
import static org.gritwright.core.boom.BoomSamples.ONE;
import static org.gritwright.core.boom.BoomSamples.WATER;
import static org.gritwright.core.boom.BoomSamples.gallonsPerMinute;
import static org.gritwright.core.boom.BoomSamples.number;
import static org.gritwright.core.boom.BoomSamples.psi;
import static org.gritwright.core.boom.BoomSamples.section;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.gritwright.core.envelope.Limit;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.FlowRate;

class BoomLawsTest {
    @Provide
    Arbitrary<Nozzle> nozzles() {
        Arbitrary<Nozzle> rated = Arbitraries.doubles()
                .between(0.05, 5)
                .map(flow -> Nozzle.rated("n", psi(40), gallonsPerMinute(flow), WATER, psi(10), psi(90)));
        Arbitrary<Nozzle> tables = Arbitraries.doubles()
                .between(0.01, 1)
                .list()
                .ofSize(5)
                .map(steps -> {
                    List<NozzlePoint> points = new ArrayList<>();
                    double flow = 0.05;
                    for (int i = 0; i < steps.size(); i++) {
                        flow += steps.get(i);
                        points.add(BoomSamples.point(10 + 20 * i, flow));
                    }
                    return Nozzle.table("t", points, WATER);
                });
        return Arbitraries.oneOf(rated, tables);
    }

    @Property
    void theFlowRisesWithThePressure(
            @ForAll("nozzles") Nozzle nozzle,
            @ForAll @DoubleRange(min = 10, max = 89) double lower,
            @ForAll @DoubleRange(min = 0.01, max = 1) double step) {
        assertThat(number(nozzle.flow(psi(lower + step), WATER))).isGreaterThan(number(nozzle.flow(psi(lower), WATER)));
    }

    @Property
    void fourTimesThePressureIsTwiceTheFlow(@ForAll @DoubleRange(min = 10, max = 22.5) double pressure) {
        assertThat(number(ONE.flow(psi(4 * pressure), WATER)))
                .isCloseTo(2 * number(ONE.flow(psi(pressure), WATER)), withinPercentage(1e-12));
    }

    @Property
    void aFlowAndBack(
            @ForAll("nozzles") Nozzle nozzle,
            @ForAll @DoubleRange(min = 10, max = 90) double pressure,
            @ForAll @DoubleRange(min = 7, max = 14) double poundsPerGallon) {
        Quantity<BulkDensity> density = Amounts.of(poundsPerGallon, SpreadingUnits.POUND_PER_US_GALLON);
        assertThat(number(nozzle.pressure(nozzle.flow(psi(pressure), density), density)))
                .isCloseTo(pressure, withinPercentage(1e-9));
        Boom boom = Boom.of(section("a", nozzle, 3), section("b", 2));
        assertThat(number(boom.pressure(boom.flow(psi(pressure), density), density)))
                .isCloseTo(pressure, withinPercentage(1e-9));
    }

    @Property
    void unitsDoNotMatter(@ForAll("nozzles") Nozzle nozzle, @ForAll @DoubleRange(min = 10.1, max = 89.9) double psi) {
        Quantity<Pressure> inBar = Amounts.of(Amounts.in(psi(psi), SpreadingUnits.BAR), SpreadingUnits.BAR);
        assertThat(Amounts.si(FlowRate.class, nozzle.flow(inBar, WATER)))
                .isCloseTo(Amounts.si(FlowRate.class, nozzle.flow(psi(psi), WATER)), withinPercentage(1e-11));
    }

    @Property
    void theSectionsAreTheWholeInAnyOrder(
            @ForAll("nozzles") Nozzle nozzle,
            @ForAll @Size(min = 1, max = 6) List<@IntRange(min = 1, max = 20) Integer> counts,
            @ForAll @DoubleRange(min = 10, max = 90) double pressure,
            @ForAll Random random) {
        List<BoomSection> sections = new ArrayList<>(IntStream.range(0, counts.size())
                .mapToObj(i -> section("s" + i, i % 2 == 0 ? nozzle : ONE, counts.get(i)))
                .toList());
        Boom boom = new Boom(sections);
        List<SectionFlow> flows = boom.sectionFlows(psi(pressure), WATER);
        double whole = number(boom.flow(psi(pressure), WATER));
        assertThat(flows.stream().mapToDouble(flow -> number(flow.flow())).sum())
                .isCloseTo(whole, withinPercentage(1e-12));
        assertThat(flows.stream().mapToDouble(flow -> number(flow.share())).sum())
                .isCloseTo(100, within(1e-11));
        Collections.shuffle(sections, random);
        assertThat(number(new Boom(sections).flow(psi(pressure), WATER))).isCloseTo(whole, withinPercentage(1e-12));
    }

    @Property
    void everyCountFromTheFewestToTheMostHoldsAtBothSpeeds(
            @ForAll @DoubleRange(min = 5, max = 100) double rate,
            @ForAll @DoubleRange(min = 5, max = 40) double slowest,
            @ForAll @DoubleRange(min = 1, max = 4) double ratio) {
        var liquidRate = Amounts.of(rate, SpreadingUnits.US_GALLON_PER_MILE);
        var slow = Amounts.of(slowest, SpreadingUnits.MILE_PER_HOUR);
        var fast = Amounts.of(slowest * ratio, SpreadingUnits.MILE_PER_HOUR);
        NozzleCounts counts = ONE.countsFor(liquidRate, slow, fast, WATER);
        for (int n : new int[] {counts.fewest() - 1, counts.fewest(), counts.most(), counts.most() + 1}) {
            if (n < 1 || n > 1000) {
                continue;
            }
            BoomEnvelope envelope =
                    new BoomEnvelope(Boom.of(section("s", n)), WATER, gallonsPerMinute(0), gallonsPerMinute(10_000));
            boolean holds = envelope.at(liquidRate, slow).limit().isEmpty()
                    && envelope.at(liquidRate, fast).limit().isEmpty();
            assertThat(holds).isEqualTo(counts.fewest() <= n && n <= counts.most());
        }
    }

    @Property
    void aSpansSidesAreWhereTheLimitsAre(@ForAll @DoubleRange(min = 5, max = 100) double rate) {
        var liquidRate = Amounts.of(rate, SpreadingUnits.US_GALLON_PER_MILE);
        BoomEnvelope envelope = new BoomEnvelope(BOOM, WATER, gallonsPerMinute(1), gallonsPerMinute(12));
        var span = envelope.speedsFor(liquidRate);
        double lowest = number(span.lowest().orElseThrow().value().value());
        double highest = number(span.highest().value().value());
        assertThat(limitAt(envelope, rate, lowest * 0.999))
                .contains(span.lowest().orElseThrow().limit());
        assertThat(limitAt(envelope, rate, highest * 1.001))
                .contains(span.highest().limit());
        assertThat(limitAt(envelope, rate, lowest * 1.001)).isEmpty();
        assertThat(limitAt(envelope, rate, highest * 0.999)).isEmpty();
    }

    private static Optional<Limit> limitAt(BoomEnvelope envelope, double rate, double mph) {
        return envelope.at(
                        Amounts.of(rate, SpreadingUnits.US_GALLON_PER_MILE),
                        Amounts.of(mph, SpreadingUnits.MILE_PER_HOUR))
                .limit();
    }

    @Provide
    Arbitrary<List<Double>> flows() {
        return Arbitraries.doubles()
                .between(0, 3)
                .ofScale(2)
                .list()
                .ofMinSize(2)
                .ofMaxSize(12)
                .filter(flows -> flows.stream().anyMatch(flow -> flow > 0));
    }

    private static List<NozzleFlow> caught(List<Double> flows) {
        return new ArrayList<>(IntStream.range(0, flows.size())
                .mapToObj(i -> new NozzleFlow(
                        "s" + i % 3,
                        "" + i,
                        Measured.of(gallonsPerMinute(flows.get(i)), gallonsPerMinute(0.01), Double.POSITIVE_INFINITY)))
                .toList());
    }

    @Property
    void theOrderOfTheNozzlesDoesNotMatter(@ForAll("flows") List<Double> flows, @ForAll Random random) {
        List<NozzleFlow> nozzles = caught(flows);
        NozzleCatches before = new NozzleCatches(nozzles);
        Collections.shuffle(nozzles, random);
        NozzleCatches after = new NozzleCatches(nozzles);
        NozzleReview one = before.byAverage(NozzleCatches.OF_AVERAGE, NozzleCatches.GUARDED);
        NozzleReview other = after.byAverage(NozzleCatches.OF_AVERAGE, NozzleCatches.GUARDED);
        assertThat(number(other.reference())).isCloseTo(number(one.reference()), withinPercentage(1e-11));
        assertThat(other.agree()).isEqualTo(one.agree());
        assertThat(other.yardstick()).isEqualTo(one.yardstick());
        Comparator<NozzleComparison> byName =
                Comparator.comparing(each -> each.nozzle().nozzle());
        assertThat(other.comparisons().stream().sorted(byName).map(NozzleComparison::condition))
                .containsExactlyElementsOf(one.comparisons().stream()
                        .sorted(byName)
                        .map(NozzleComparison::condition)
                        .toList());
    }

    @Property
    void deviationsFromTheAverageOfAllSumToNothingAndSharesToAll(@ForAll("flows") List<Double> flows) {
        NozzleCatches catches = new NozzleCatches(caught(flows));
        NozzleReview review = catches.byAverageOfAll(NozzleCatches.OF_AVERAGE, NozzleCatches.GUARDED);
        assertThat(review.comparisons().stream()
                        .mapToDouble(one -> number(one.deviation().value()))
                        .sum())
                .isCloseTo(0, within(1e-9));
        assertThat(catches.sectionShares().stream()
                        .mapToDouble(share -> number(share.share()))
                        .sum())
                .isCloseTo(100, within(1e-10));
    }
}
