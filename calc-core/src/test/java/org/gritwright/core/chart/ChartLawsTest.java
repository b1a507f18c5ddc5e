package org.gritwright.core.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.chart.Trucks.SUBJECT;
import static org.gritwright.core.chart.Trucks.discharge;
import static org.gritwright.core.chart.Trucks.rate;
import static org.gritwright.core.chart.Trucks.rpm;
import static org.gritwright.core.chart.Trucks.speed;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Speed;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.Size;
import org.gritwright.core.envelope.BelowRange;
import org.gritwright.core.envelope.Delivered;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.range.Command;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.rate.Rates;

class ChartLawsTest {
    private static final List<BigDecimal> STEPS = IntStream.range(-20, 20)
            .boxed()
            .flatMap(power -> Stream.of(1, 2, 5).map(lead -> BigDecimal.valueOf(lead, -power)))
            .toList();

    private static Envelope envelope(double pounds, double relative, double lowest, double highest) {
        return Envelope.of(discharge(pounds, relative * pounds), new WorkingRange(rpm(lowest), rpm(highest)));
    }

    private static <Q extends Quantity<Q>> FeedbackCell<Q> cell(
            Envelope envelope, RateBasis<Q> basis, Quantity<Q> rate, Quantity<Speed> speed) {
        return new FeedbackChart<>(SUBJECT, envelope, basis, List.of(rate), List.of(speed)).cell(0, 0);
    }

    private static double number(CellValue<?> cell) {
        return cell.exact().value().getValue().doubleValue();
    }

    private static <Q extends Quantity<Q>> double in(CellValue<Q> cell, Unit<Q> unit) {
        return Amounts.in(cell.exact().value(), unit);
    }

    /** By looking for it among all steps, without a logarithm. */
    private static BigDecimal stepByLooking(double uncertainty) {
        return STEPS.stream()
                .filter(step -> step.compareTo(BigDecimal.valueOf(uncertainty).round(new MathContext(13))) <= 0)
                .reduce((smaller, larger) -> larger)
                .orElseThrow();
    }

    @Property
    void theStepIsTheLargestThatIsntAboveTheUncertainty(
            @ForAll @Scale(9) @DoubleRange(min = 1e-6, max = 1e6) double uncertainty) {
        assertThat(CellValueTest.known(1, uncertainty).step()).isEqualByComparingTo(stepByLooking(uncertainty));
    }

    /** The step is at most the uncertainty u, so that the whole is at most u·√(1 + 1/12). */
    @Property
    void roundingMovesANumberByHalfAStepAtMostAndOnlyOnce(
            @ForAll @Scale(9) @DoubleRange(min = -1e6, max = 1e6) double value,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 100) double uncertainty) {
        CellValue<ApplicationRate> cell = CellValueTest.known(value, uncertainty);
        CellValue<ApplicationRate> again =
                CellValueTest.known(cell.rounded().getValue().doubleValue(), uncertainty);
        BigDecimal moved = cell.decimal().subtract(BigDecimal.valueOf(value)).abs();

        assertThat(moved.add(moved)).isLessThanOrEqualTo(cell.step());
        assertThat(cell.decimal().remainder(cell.step())).isEqualByComparingTo(BigDecimal.ZERO);
        assertThat(again.decimal()).isEqualByComparingTo(cell.decimal());
        assertThat(new BigDecimal(cell.number())).isEqualByComparingTo(cell.decimal());
    }

    @Property
    void inwardIsTheNextMultipleOnTheRightSide(
            @ForAll @Scale(9) @DoubleRange(min = 0.1, max = 1e4) double value,
            @ForAll @Scale(9) @DoubleRange(min = 1e-3, max = 10) double uncertainty) {
        CellValue<ApplicationRate> cell = CellValueTest.known(value, uncertainty);
        double down = cell.down().getValue().doubleValue();
        double up = cell.up().getValue().doubleValue();
        double step = cell.step().doubleValue();

        assertThat(down).isBetween(value - step * (1 + 1e-9), value * (1 + 1.001e-12));
        assertThat(up).isBetween(value * (1 - 1.001e-12), value + step * (1 + 1e-9));
        assertThat(BigDecimal.valueOf(down).remainder(cell.step())).isEqualByComparingTo(BigDecimal.ZERO);
        assertThat(BigDecimal.valueOf(up).remainder(cell.step())).isEqualByComparingTo(BigDecimal.ZERO);
    }

    @Property
    void everyCellIsTheSingleAnswerRoundedOnce(
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 60) double pounds,
            @ForAll @Scale(9) @DoubleRange(min = 0.001, max = 0.2) double relative,
            @ForAll boolean stops,
            @ForAll @Scale(9) @DoubleRange(min = 10, max = 900) double asked,
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 70) double milesPerHour) {
        Envelope envelope = envelope(pounds, relative, 2, 28).with(stops ? BelowRange.STOPS : BelowRange.KEEPS_SLOWEST);
        FeedbackChart<ApplicationRate> chart = new FeedbackChart<>(
                SUBJECT,
                envelope,
                RateBasis.perDistance(),
                Trucks.rates(asked, asked / 2, asked * 2),
                Trucks.speeds(milesPerHour, milesPerHour / 2, milesPerHour * 2));

        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                Quantity<ApplicationRate> rate = chart.rates().get(row);
                Quantity<Speed> speed = chart.speeds().get(column);
                Delivered answer = envelope.deliveredAt(rate, speed);
                FeedbackCell<ApplicationRate> cell = chart.row(row).get(column);

                assertThat(cell.shaftSpeed().exact().value()).isEqualTo(envelope.shaftSpeed(rate, speed));
                assertThat(cell.flow().exact().value()).isEqualTo(Rates.dischargeFromRate(rate, speed));
                assertThat(cell.outside().map(FeedbackCell.Outside::limit)).isEqualTo(answer.limit());
                assertRoundedOnce(cell.shaftSpeed(), relative);
                assertRoundedOnce(cell.flow(), relative);
                cell.outside().ifPresent(outside -> {
                    assertThat(outside.delivered().exact().value()).isEqualTo(answer.delivered());
                    if (number(outside.delivered()) > 0) {
                        assertRoundedOnce(outside.delivered(), relative);
                        assertRoundedOnce(outside.flow(), relative);
                    }
                });
            }
        }
    }

    private static void assertRoundedOnce(CellValue<?> cell, double relative) {
        double uncertainty =
                cell.exact().standardUncertainty().orElseThrow().getValue().doubleValue();
        assertThat(uncertainty).isCloseTo(relative * number(cell), within(1e-12 * number(cell)));
        BigDecimal step = stepByLooking(uncertainty);
        assertThat(cell.decimal())
                .isEqualByComparingTo(BigDecimal.valueOf(number(cell))
                        .divide(step, 0, RoundingMode.HALF_EVEN)
                        .multiply(step));
    }

    @Property
    void unitsDontMatterBeforeRounding(
            @ForAll @Scale(9) @DoubleRange(min = 10, max = 900) double asked,
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 90) double milesPerHour) {
        Envelope envelope = envelope(7, 0.01, 2, 28);
        Quantity<ApplicationRate> metricRate = Amounts.of(
                Amounts.in(rate(asked), SpreadingUnits.KILOGRAM_PER_KILOMETER), SpreadingUnits.KILOGRAM_PER_KILOMETER);
        Quantity<Speed> metricSpeed = Amounts.of(
                Amounts.in(speed(milesPerHour), SpreadingUnits.KILOMETER_PER_HOUR), SpreadingUnits.KILOMETER_PER_HOUR);
        FeedbackCell<ApplicationRate> pounds =
                cell(envelope, RateBasis.perDistance(), rate(asked), speed(milesPerHour));
        FeedbackCell<ApplicationRate> kilograms = cell(envelope, RateBasis.perDistance(), metricRate, metricSpeed);

        assertThat(number(kilograms.shaftSpeed()))
                .isCloseTo(number(pounds.shaftSpeed()), within(1e-12 * number(pounds.shaftSpeed())));
        assertThat(in(kilograms.flow(), SpreadingUnits.POUND_PER_MINUTE))
                .isCloseTo(number(pounds.flow()), within(1e-12 * number(pounds.flow())));
        assertThat(kilograms.flow().exact().value().getUnit()).isEqualTo(SpreadingUnits.KILOGRAM_PER_MINUTE);
        assertThat(kilograms.outside().isPresent()).isEqualTo(pounds.outside().isPresent());
        pounds.outside()
                .ifPresent(outside -> assertThat(
                                in(kilograms.outside().orElseThrow().delivered(), SpreadingUnits.POUND_PER_MILE))
                        .isCloseTo(number(outside.delivered()), within(1e-12 * number(outside.delivered()))));
    }

    @Property
    void twiceTheLanesAreTwiceTheRate(
            @ForAll @Scale(9) @DoubleRange(min = 10, max = 900) double asked,
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 4) double lanes,
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 90) double milesPerHour) {
        Envelope envelope = envelope(7, 0.01, 2, 28);
        Quantity<LaneApplicationRate> once = Amounts.of(asked, SpreadingUnits.POUND_PER_LANE_MILE);
        Quantity<LaneApplicationRate> twice = Amounts.of(2 * asked, SpreadingUnits.POUND_PER_LANE_MILE);
        FeedbackCell<LaneApplicationRate> moreLanes = cell(
                envelope, RateBasis.perLane(Amounts.of(2 * lanes, SpreadingUnits.LANE)), once, speed(milesPerHour));
        FeedbackCell<LaneApplicationRate> moreRate =
                cell(envelope, RateBasis.perLane(Amounts.of(lanes, SpreadingUnits.LANE)), twice, speed(milesPerHour));

        assertThat(number(moreLanes.shaftSpeed()))
                .isCloseTo(number(moreRate.shaftSpeed()), within(1e-12 * number(moreRate.shaftSpeed())));
        assertThat(moreLanes.outside().isPresent()).isEqualTo(moreRate.outside().isPresent());
        moreRate.outside()
                .ifPresent(outside -> assertThat(
                                2 * number(moreLanes.outside().orElseThrow().delivered()))
                        .isCloseTo(number(outside.delivered()), within(1e-12 * number(outside.delivered()))));
    }

    /** What a setting gives, asked for at the same speed, needs the setting's shaft speed. */
    @Property
    void bothChartsAgree(
            @ForAll @Scale(9) @DoubleRange(min = 3, max = 27) double shaft,
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 90) double milesPerHour,
            @ForAll @Scale(9) @DoubleRange(min = 2, max = 12) double meters) {
        RateBasis<ArealApplicationRate> basis = RateBasis.perArea(Amounts.of(meters, SpreadingUnits.METER));
        Envelope envelope = envelope(7, 0.01, 2, 28);
        ControlSetting setting = new ControlSetting(Command.number(1), Measured.of(rpm(shaft), rpm(0), 5));
        OpenLoopCell<ArealApplicationRate> given = new OpenLoopChart<>(
                        SUBJECT,
                        envelope.discharge(),
                        List.of(setting),
                        List.of(speed(milesPerHour)),
                        basis,
                        SpreadingUnits.GRAM_PER_SQUARE_METER)
                .cell(0, 0);
        FeedbackCell<ArealApplicationRate> asked =
                cell(envelope, basis, given.rate().exact().value(), speed(milesPerHour));

        assertThat(number(asked.shaftSpeed())).isCloseTo(shaft, within(1e-12 * shaft));
        assertThat(asked.outside()).isEmpty();
    }

    @Property
    void noSettingIsBetterThanTheBest(
            @ForAll @Size(min = 1, max = 12) List<@Scale(9) @DoubleRange(min = 0, max = 60) Double> shafts,
            @ForAll @Scale(9) @DoubleRange(min = 10, max = 900) double asked,
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 90) double milesPerHour) {
        List<ControlSetting> settings = IntStream.range(0, shafts.size())
                .mapToObj(i -> Trucks.setting(i, shafts.get(i)))
                .toList();
        OpenLoopChart<ApplicationRate> chart = new OpenLoopChart<>(
                SUBJECT,
                Trucks.SEVEN,
                settings,
                List.of(speed(milesPerHour)),
                RateBasis.perDistance(),
                SpreadingUnits.POUND_PER_MILE);
        BestSetting<ApplicationRate> best = chart.best(rate(asked), speed(milesPerHour));
        double least = Math.abs(Amounts.in(best.error(), SpreadingUnits.PERCENT));

        assertThat(settings).contains(best.setting());
        assertThat(number(best.cell().rate()) / asked - 1)
                .isCloseTo(Amounts.in(best.error(), SpreadingUnits.PERCENT) / 100, within(1e-9));
        for (int row = 0; row < settings.size(); row++) {
            double error = 100 * Math.abs(number(chart.cell(row, 0).rate()) / asked - 1);
            assertThat(error).isGreaterThanOrEqualTo(least - 1e-9 * (1 + error));
        }
    }

    @Property
    void theOrderInWhichRatesSpeedsAndSettingsAreListedSaysNothing(
            @ForAll @IntRange(min = 1, max = 9) int size, @ForAll long chance) {
        List<Quantity<ApplicationRate>> rates =
                IntStream.range(0, size).mapToObj(i -> rate(100 + 50 * i)).toList();
        List<Quantity<Speed>> speeds =
                IntStream.range(0, size).mapToObj(i -> speed(10 + 5 * i)).toList();
        List<ControlSetting> settings =
                IntStream.range(0, size).mapToObj(i -> Trucks.setting(i, 3 * i)).toList();
        Random random = new Random(chance);

        assertThat(new FeedbackChart<>(
                        SUBJECT,
                        Trucks.ENVELOPE,
                        RateBasis.perDistance(),
                        shuffled(rates, random),
                        shuffled(speeds, random)))
                .isEqualTo(new FeedbackChart<>(SUBJECT, Trucks.ENVELOPE, RateBasis.perDistance(), rates, speeds));
        assertThat(openLoop(shuffled(settings, random), shuffled(speeds, random)))
                .isEqualTo(openLoop(settings, speeds));
    }

    private static OpenLoopChart<ApplicationRate> openLoop(
            List<ControlSetting> settings, List<Quantity<Speed>> speeds) {
        return new OpenLoopChart<>(
                SUBJECT, Trucks.SEVEN, settings, speeds, RateBasis.perDistance(), SpreadingUnits.POUND_PER_MILE);
    }

    private static <T> List<T> shuffled(List<T> list, Random random) {
        List<T> copy = new ArrayList<>(list);
        Collections.shuffle(copy, random);
        return copy;
    }

    /** Asked at both ends, the envelope sees no limit; and no more than a step and a whole unit is given away. */
    @Property
    void aCardPromisesOnlyWhatIsHeld(
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 60) double pounds,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 0.1) double relative,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 20) double lowest,
            @ForAll @Scale(9) @DoubleRange(min = 20, max = 90) double highest,
            @ForAll @Scale(9) @DoubleRange(min = 10, max = 900) double asked) {
        Envelope envelope = envelope(pounds, relative, lowest, highest);
        FeedbackLine<ApplicationRate> line = CabCardTest.line(envelope, asked);

        line.held().ifPresent(held -> {
            assertThat(envelope.deliveredAt(rate(asked), held.highest()).limit())
                    .isEmpty();
            held.lowest()
                    .ifPresent(speed -> assertThat(
                                    envelope.deliveredAt(rate(asked), speed).limit())
                            .isEmpty());
            assertThat(held.lowest().isPresent())
                    .isEqualTo(line.exact().lowest().isPresent());
            CellValue<Speed> end = new CellValue<>(line.exact().highest().value());
            assertThat(Amounts.in(held.highest(), SpreadingUnits.MILE_PER_HOUR))
                    .isGreaterThan(number(end) - Math.max(1, end.step().doubleValue()) * (1 + 1e-9) - 1)
                    .isEqualTo(Math.rint(Amounts.in(held.highest(), SpreadingUnits.MILE_PER_HOUR)));
        });
    }

    @Property
    void anOpenLoopCardPromisesOnlyWhatIsWithinTheTolerance(
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 60) double shaft,
            @ForAll @Scale(9) @DoubleRange(min = 0.1, max = 60) double percent,
            @ForAll @Scale(9) @DoubleRange(min = 10, max = 900) double asked) {
        ControlSetting setting = Trucks.setting(1, shaft);
        OpenLoopLine<ApplicationRate> line = CabCardTest.openLoop(asked, percent, setting);

        line.atSettings().get(0).held().ifPresent(held -> {
            OpenLoopChart<ApplicationRate> chart = openLoop(List.of(setting), List.of(held.highest()));
            for (Quantity<Speed> end : List.of(held.lowest().orElseThrow(), held.highest())) {
                assertThat(Math.abs(Amounts.in(chart.best(rate(asked), end).error(), SpreadingUnits.PERCENT)))
                        .isLessThanOrEqualTo(percent + 1e-9);
            }
        });
    }
}
