package org.gritwright.core.lateral;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.lateral.LateralSamples.grams;
import static org.gritwright.core.lateral.LateralSamples.meters;
import static org.gritwright.core.lateral.LateralSamples.number;
import static org.gritwright.core.lateral.LateralSamples.strip;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Offset;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;

class LateralLawsTest {
    /** In percent: where a lane ends just between two pans, a last digit of a length decides on a part in 10¹⁶ of the other pan. */
    private static final Offset<Double> SPARE = within(1e-4);

    private static final Offset<Double> PERCENT = within(1e-7);

    /** Three to fourteen pans of various widths and gaps, in meters and grams; at least one caught something. */
    @Provide
    Arbitrary<SpreadPattern> patterns() {
        Arbitrary<double[]> pan = Combinators.combine(
                        Arbitraries.doubles().between(0, 0.8).ofScale(2),
                        Arbitraries.doubles().between(0.1, 0.9).ofScale(2),
                        Arbitraries.doubles().between(0, 50).ofScale(1))
                .as((gap, width, grams) -> new double[] {gap, width, grams});
        return Combinators.combine(
                        pan.list().ofMinSize(3).ofMaxSize(14),
                        Arbitraries.doubles().between(-6, 0).ofScale(2))
                .as(LateralLawsTest::pattern);
    }

    private static SpreadPattern pattern(List<double[]> pans, double first) {
        List<Pan> row = new ArrayList<>();
        double left = first;
        for (double[] pan : pans) {
            left += pan[0];
            double caught = row.size() == 1 ? pan[2] + 1 : pan[2];
            row.add(new Pan(
                    meters(left + pan[1] / 2), meters(pan[1]), meters(0.6), grams(caught), Optional.of(grams(0.03))));
            left += pan[1];
        }
        return SpreadPattern.of(row);
    }

    @Provide
    Arbitrary<RoadStrip> lanes() {
        return Combinators.combine(
                        Arbitraries.doubles().between(-3, 3).ofScale(2),
                        Arbitraries.doubles().between(0.5, 5).ofScale(2))
                .as((left, width) -> strip(left, left + width));
    }

    private static Pan with(Pan pan, double sign, double mass) {
        return new Pan(
                meters(sign * number(pan.position())),
                pan.width(),
                pan.length(),
                grams(mass * number(pan.caught())),
                pan.rounding().map(u -> grams(mass * number(u))));
    }

    private static SpreadPattern changed(SpreadPattern pattern, double sign, double mass) {
        return SpreadPattern.of(
                pattern.pans().stream().map(pan -> with(pan, sign, mass)).toList());
    }

    private static RoadStrip mirrored(RoadStrip strip) {
        return strip(-number(strip.right()), -number(strip.left()));
    }

    private static boolean isCaughtIn(SpreadPattern pattern, RoadStrip lane) {
        return number(pattern.meanRate(lane)) > 1e-6
                && pattern.profile()
                                .steps()
                                .within(lane.leftMeters(), lane.rightMeters())
                                .total()
                        > 1e-6;
    }

    @Property
    void insideAndOutsideAreOne(@ForAll("patterns") SpreadPattern pattern, @ForAll("lanes") RoadStrip lane) {
        LaneShares shares = pattern.shares(lane);

        assertThat(number(shares.inside()) + number(shares.outside())).isCloseTo(100, PERCENT);
    }

    @Property
    void whatLiesInTheLaneIsItsShareOfAll(@ForAll("patterns") SpreadPattern pattern, @ForAll("lanes") RoadStrip lane) {
        double inside = number(pattern.meanRate(lane)) * number(lane.width());

        assertThat(inside)
                .isCloseTo(
                        number(pattern.massPerDistance())
                                * number(pattern.shares(lane).inside())
                                / 100,
                        within(1e-7));
    }

    @Property
    void mirroredPansHaveTheMirroredOffsetAndTheSameVariation(
            @ForAll("patterns") SpreadPattern pattern, @ForAll("lanes") RoadStrip lane) {
        SpreadPattern mirrored = changed(pattern, -1, 1);

        assertThat(number(mirrored.offset())).isCloseTo(-number(pattern.offset()), within(1e-9));
        assertThat(number(mirrored.massPerDistance())).isCloseTo(number(pattern.massPerDistance()), within(1e-9));
        assertThat(number(mirrored.treated().left()))
                .isCloseTo(-number(pattern.treated().right()), within(1e-9));
        assertThat(number(mirrored.treated().right()))
                .isCloseTo(-number(pattern.treated().left()), within(1e-9));
        assertThat(number(mirrored.shares(mirrored(lane)).left()))
                .isCloseTo(number(pattern.shares(lane).right()), PERCENT);
        if (isCaughtIn(pattern, lane)) {
            assertThat(number(mirrored.variation(mirrored(lane)))).isCloseTo(number(pattern.variation(lane)), SPARE);
        }
    }

    @Property
    void twiceTheMassIsTwiceTheRateAndNothingElse(
            @ForAll("patterns") SpreadPattern pattern,
            @ForAll("lanes") RoadStrip lane,
            @ForAll @DoubleRange(min = 0.1, max = 20) double factor) {
        SpreadPattern more = changed(pattern, 1, factor);

        assertThat(number(more.massPerDistance())).isCloseTo(factor * number(pattern.massPerDistance()), within(1e-8));
        assertThat(LateralSamples.uncertainty(more.massPerDistance()))
                .isCloseTo(factor * LateralSamples.uncertainty(pattern.massPerDistance()), within(1e-9));
        assertThat(number(more.offset())).isCloseTo(number(pattern.offset()), within(1e-9));
        assertThat(number(more.shares(lane).inside()))
                .isCloseTo(number(pattern.shares(lane).inside()), PERCENT);
        assertThat(number(more.treated().width()))
                .isCloseTo(number(pattern.treated().width()), within(1e-9));
        if (isCaughtIn(pattern, lane)) {
            assertThat(number(more.variation(lane))).isCloseTo(number(pattern.variation(lane)), SPARE);
        }
    }

    @Property
    void theOrderOfThePansDoesntMatter(@ForAll("patterns") SpreadPattern pattern, @ForAll Random random) {
        List<Pan> shuffled = new ArrayList<>(pattern.pans());
        Collections.shuffle(shuffled, random);

        assertThat(SpreadPattern.of(shuffled)).isEqualTo(pattern).hasSameHashCodeAs(pattern);
    }

    @Property
    void unitsDontMatter(@ForAll("patterns") SpreadPattern pattern, @ForAll("lanes") RoadStrip lane) {
        SpreadPattern us = SpreadPattern.of(pattern.pans().stream()
                .map(pan -> new Pan(
                        in(pan.position(), SpreadingUnits.FOOT),
                        in(pan.width(), SpreadingUnits.INCH),
                        in(pan.length(), SpreadingUnits.YARD),
                        in(pan.caught(), SpreadingUnits.OUNCE),
                        pan.rounding().map(u -> in(u, SpreadingUnits.OUNCE))))
                .toList());
        RoadStrip usLane = new RoadStrip(in(lane.left(), SpreadingUnits.FOOT), in(lane.right(), SpreadingUnits.FOOT));

        assertThat(Amounts.si(Length.class, us.offset().value())).isCloseTo(number(pattern.offset()), within(1e-9));
        assertThat(1000 * Amounts.si(ApplicationRate.class, us.massPerDistance().value()))
                .isCloseTo(number(pattern.massPerDistance()), within(1e-8));
        assertThat(number(us.shares(usLane).inside()))
                .isCloseTo(number(pattern.shares(lane).inside()), PERCENT);
        assertThat(LateralSamples.uncertainty(us.shares(usLane).inside()))
                .isCloseTo(LateralSamples.uncertainty(pattern.shares(lane).inside()), PERCENT);
        if (isCaughtIn(pattern, lane)) {
            assertThat(number(us.variation(usLane))).isCloseTo(number(pattern.variation(lane)), SPARE);
        }
    }

    private static <Q extends Quantity<Q>> Quantity<Q> in(Quantity<Q> quantity, Unit<Q> unit) {
        return Amounts.of(Amounts.in(quantity, unit), unit);
    }

    @Property
    void twoPassesLayTwiceTheMass(
            @ForAll("patterns") SpreadPattern pattern,
            @ForAll @DoubleRange(min = 0.05, max = 12) double spacing,
            @ForAll Driving driving) {
        assertThat(number(pattern.overlap(meters(spacing), driving).massPerDistance()))
                .isCloseTo(2 * number(pattern.massPerDistance()), within(1e-7));
    }

    @Property
    void aReturnOnOneSideIsThatOfTheMirroredPatternOnTheOther(
            @ForAll("patterns") SpreadPattern pattern,
            @ForAll @DoubleRange(min = 0.5, max = 6) double spacing,
            @ForAll @DoubleRange(min = -8, max = 8) double position) {
        Overlap left = pattern.overlap(meters(spacing), Driving.RETURN_ON_LEFT);
        Overlap right = changed(pattern, -1, 1).overlap(meters(spacing), Driving.RETURN_ON_RIGHT);

        assertThat(number(left.highest())).isCloseTo(number(right.highest()), within(1e-9));
        assertThat(number(left.lowest())).isCloseTo(number(right.lowest()), within(1e-9));
        assertThat(number(left.rateAt(meters(position + 1e-7))))
                .isCloseTo(number(right.rateAt(meters(-position - 1e-7))), within(1e-9));
    }

    @Property(tries = 30)
    void noWiderSpacingThatIsLookedAtKeepsTheLimit(
            @ForAll("patterns") SpreadPattern pattern,
            @ForAll @DoubleRange(min = 5, max = 90) double limit,
            @ForAll Driving driving) {
        Optional<Quantity<Length>> widest =
                pattern.widestSpacing(driving, Amounts.of(limit, SpreadingUnits.PERCENT), meters(0.5));

        widest.ifPresent(
                spacing -> assertThat(number(pattern.overlap(spacing, driving).variation()))
                        .isLessThanOrEqualTo(limit + 1e-6));
        double from = widest.map(LateralSamples::number).orElse(0.5);
        double touching = 2
                * Math.max(
                        Math.abs(pattern.profile().left()),
                        Math.abs(pattern.profile().right()));
        double step = (touching - 0.5) / 2000;
        for (int i = 0; touching - i * step > from + step; i += 50) {
            double wider = touching - i * step;
            assertThat(variationOrNone(pattern, wider, driving)).isGreaterThan(limit - 1e-6);
        }
    }

    private static double variationOrNone(SpreadPattern pattern, double spacing, Driving driving) {
        Overlap overlap = pattern.overlap(meters(spacing), driving);
        return number(overlap.highest()) > 0 ? number(overlap.variation()) : Double.POSITIVE_INFINITY;
    }
}
