package org.gritwright.core.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.chart.Trucks.ENVELOPE;
import static org.gritwright.core.chart.Trucks.SUBJECT;
import static org.gritwright.core.chart.Trucks.rate;
import static org.gritwright.core.chart.Trucks.rates;
import static org.gritwright.core.chart.Trucks.speeds;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.Samples;
import org.gritwright.core.chart.FeedbackCell.Outside;
import org.gritwright.core.envelope.BelowRange;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.envelope.Limit;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** By hand: 7 lb/rev at 5 to 50 rev/min are 35 to 350 lb/min; 300 lb/mi at 20 mi/h are 300 × 20 ÷ 60 = 100 lb/min. */
@Tag("locale")
class FeedbackChartTest {
    static FeedbackChart<ApplicationRate> chart(Envelope envelope, double poundsPerMile, double... milesPerHour) {
        return new FeedbackChart<>(
                SUBJECT, envelope, RateBasis.perDistance(), rates(poundsPerMile), speeds(milesPerHour));
    }

    private static Outside<ApplicationRate> outside(Envelope envelope, double poundsPerMile, double milesPerHour) {
        return chart(envelope, poundsPerMile, milesPerHour).cell(0, 0).outside().orElseThrow();
    }

    @Test
    void aCellSaysHowFastTheShaftTurnsAndWhatFlows() {
        FeedbackCell<ApplicationRate> cell = chart(ENVELOPE, 300, 20).cell(0, 0);

        assertThat(Amounts.in(cell.shaftSpeed().exact().value(), SpreadingUnits.REVOLUTION_PER_MINUTE))
                .isCloseTo(100 / 7.0, within(1e-12));
        // 1 % of 14.29 is 0.143, so the step is 0.1; 1 % of 100 is 1.
        assertThat(cell.shaftSpeed()).hasToString("14.3 rev/min");
        assertThat(cell.flow()).hasToString("100 lb/min");
        assertThat(Amounts.in(cell.flow().exact().standardUncertainty().orElseThrow(), SpreadingUnits.POUND_PER_MINUTE))
                .isCloseTo(1, within(1e-12));
        assertThat(cell.shaftSpeed().exact().degreesOfFreedom()).hasValue(8);
        assertThat(cell.outside()).isEmpty();
    }

    @Test
    void aboveTheRangeACellSaysWhyAndWhatIsPutDownInstead() {
        FeedbackCell<ApplicationRate> cell = chart(ENVELOPE, 300, 75).cell(0, 0);
        Outside<ApplicationRate> outside = cell.outside().orElseThrow();

        // 375 lb/min asked for, 350 there: 350 × 60 ÷ 75 = 280 lb/mi. 1 % of 53.57 rev/min is 0.54, so the step is 0.5.
        assertThat(cell.shaftSpeed()).hasToString("53.5 rev/min");
        assertThat(outside.limit()).isEqualTo(Limit.FASTEST_SHAFT);
        assertThat(outside.delivered()).hasToString("280 lb/mi");
        assertThat(outside.flow()).hasToString("350 lb/min");
        assertThat(Amounts.in(
                        outside.delivered().exact().standardUncertainty().orElseThrow(), SpreadingUnits.POUND_PER_MILE))
                .isCloseTo(2.8, within(1e-12));
    }

    @Test
    void belowTheRangeTooMuchIsPutDownOrNothing() {
        Outside<ApplicationRate> goesOn = outside(ENVELOPE, 300, 5);
        Outside<ApplicationRate> stops = outside(ENVELOPE.with(BelowRange.STOPS), 300, 5);

        // 35 lb/min × 60 ÷ 5 = 420 lb/mi.
        assertThat(goesOn.limit()).isEqualTo(stops.limit()).isEqualTo(Limit.SLOWEST_STEADY_SHAFT);
        assertThat(goesOn.delivered()).hasToString("420 lb/mi");
        assertThat(stops.delivered()).hasToString("0 lb/mi");
        assertThat(stops.flow()).hasToString("0 lb/min");
    }

    @Test
    void howFastGrainsRunHasNoUncertainty() {
        Envelope slowGrains = ENVELOPE.withGreatestFlow(Amounts.of(200, SpreadingUnits.POUND_PER_MINUTE));
        Envelope slowerThanAnyShaft = ENVELOPE.withGreatestFlow(Amounts.of(20, SpreadingUnits.POUND_PER_MINUTE));

        // 200 lb/min × 60 ÷ 75 = 160 lb/mi; 20 lb/min × 60 ÷ 2 = 600 lb/mi where 10 lb/min are asked for.
        assertThat(outside(slowGrains, 300, 75).limit()).isEqualTo(Limit.GRAIN_FLOW);
        assertThat(outside(slowGrains, 300, 75).delivered()).hasToString("160 lb/mi");
        assertThat(outside(slowGrains, 300, 75).delivered().exact().standardUncertainty())
                .isEmpty();
        assertThat(outside(slowGrains, 300, 75).flow().exact().standardUncertainty())
                .isEmpty();
        assertThat(outside(slowGrains, 300, 5).flow().exact().standardUncertainty())
                .isPresent();
        assertThat(outside(slowerThanAnyShaft, 300, 2).limit()).isEqualTo(Limit.SLOWEST_STEADY_SHAFT);
        assertThat(outside(slowerThanAnyShaft, 300, 2).delivered()).hasToString("600 lb/mi");
        assertThat(outside(slowerThanAnyShaft, 300, 2).flow().exact().standardUncertainty())
                .isEmpty();
    }

    /** The limit of the grains alone counts where both are the same: then it is the shaft's, with its uncertainty. */
    @Test
    void grainsThatRunAsFastAsTheSlowestShaftGivesAreAsSureAsTheCalibration() {
        Envelope envelope = ENVELOPE.withGreatestFlow(
                Amounts.ofSi(ENVELOPE.compiled().leastFlow(), SpreadingUnits.KILOGRAM_PER_SECOND));

        assertThat(outside(envelope, 300, 2).flow().exact().standardUncertainty())
                .isPresent();
    }

    @Test
    void aCalibrationWithoutUncertaintyGivesThreeDigits() {
        Envelope envelope = Envelope.of(Measured.once(Trucks.SEVEN.value()), Trucks.RANGE);

        assertThat(chart(envelope, 300, 20).cell(0, 0).shaftSpeed()).hasToString("14.3 rev/min");
        assertThat(chart(envelope, 300, 75).cell(0, 0).shaftSpeed()).hasToString("53.6 rev/min");
    }

    @Test
    void ratesPerLaneAreThoseOfAllLanesTogether() {
        FeedbackChart<LaneApplicationRate> chart = new FeedbackChart<>(
                SUBJECT,
                ENVELOPE,
                RateBasis.perLane(Amounts.of(2, SpreadingUnits.LANE)),
                List.of(Amounts.of(150, SpreadingUnits.POUND_PER_LANE_MILE)),
                speeds(20, 75));

        assertThat(chart.cell(0, 0).flow()).hasToString("100 lb/min");
        assertThat(chart.cell(0, 1).outside().orElseThrow().delivered()).hasToString("140 lb/lane-mi");
    }

    /** 20 g/m² on 8 m are 160 kg/km; at 30 km/h 80 kg/min, and 7 lb/rev are 3.175 kg/rev: 25.20 rev/min. */
    @Test
    void ratesPerAreaAreThoseOfTheWholeWidth() {
        FeedbackChart<?> chart = new FeedbackChart<>(
                SUBJECT,
                ENVELOPE,
                RateBasis.perArea(Amounts.of(8, SpreadingUnits.METER)),
                List.of(Amounts.of(20, SpreadingUnits.GRAM_PER_SQUARE_METER)),
                List.of(
                        Amounts.of(30, SpreadingUnits.KILOMETER_PER_HOUR),
                        Amounts.of(90, SpreadingUnits.KILOMETER_PER_HOUR)));

        assertThat(chart.cell(0, 0).flow()).hasToString("80.0 kg/min");
        assertThat(chart.cell(0, 0).shaftSpeed()).hasToString("25.2 rev/min");
        // 350 lb/min are 158.757 kg/min; × 60 ÷ 90 ÷ 8 = 13.23 g/m², 1 % of it 0.13.
        assertThat(chart.cell(0, 1).outside().orElseThrow().delivered()).hasToString("13.2 g/m²");
    }

    @Test
    void rowsAndColumnsRiseInWhateverOrderTheyAreListed() {
        FeedbackChart<ApplicationRate> chart =
                new FeedbackChart<>(SUBJECT, ENVELOPE, RateBasis.perDistance(), rates(400, 200, 300), speeds(30, 10));

        assertThat(chart.rates()).isEqualTo(rates(200, 300, 400));
        assertThat(chart.speeds()).isEqualTo(speeds(10, 30));
        assertThat(chart.row(1)).containsExactly(chart.cell(1, 0), chart.cell(1, 1));
        // 300 × 30 ÷ 60.
        assertThat(chart.cell(1, 1).flow()).hasToString("150 lb/min");
        assertThat(chart)
                .isEqualTo(new FeedbackChart<>(
                        SUBJECT, ENVELOPE, RateBasis.perDistance(), rates(200, 300, 400), speeds(10, 30)));
    }

    @Test
    void whatCantBeAChartIsRefused() {
        List<Quantity<ApplicationRate>> tooMany = Collections.nCopies(1001, rate(300));
        List<Quantity<Speed>> twice =
                List.of(Trucks.speed(20), Amounts.of(32.18688, SpreadingUnits.KILOMETER_PER_HOUR));

        assertRefused("rates of a chart must be one or more: none", () -> refused(List.of(), speeds(20)));
        assertRefused("road speeds of a chart must be one or more: none", () -> refused(rates(300), List.of()));
        assertRefused("rates of a chart must be at most 1000: more", () -> refused(tooMany, speeds(20)));
        assertRefused("rate must be greater than 0: 0 lb/mi", () -> refused(rates(0), speeds(20)));
        assertRefused("road speed must be greater than 0: 0 mi/h", () -> refused(rates(300), speeds(0)));
        assertRefused("rate must be listed once: 300 lb/mi", () -> refused(rates(300, 200, 300), speeds(20)));
        assertRefused("road speed must be listed once: 32.18688 km/h", () -> refused(rates(300), twice));
        assertRefused(
                "rate must be a finite application rate: 300 lb/lane-mi",
                () -> refused(
                        List.of(Samples.wrongKind(Amounts.of(300, SpreadingUnits.POUND_PER_LANE_MILE))), speeds(20)));
        assertThatThrownBy(() -> chart(ENVELOPE, 300, 20).cell(0, 1)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    private static FeedbackChart<ApplicationRate> refused(
            List<Quantity<ApplicationRate>> rates, List<Quantity<Speed>> speeds) {
        return new FeedbackChart<>(SUBJECT, ENVELOPE, RateBasis.perDistance(), rates, speeds);
    }

    @Test
    void aThousandRatesAreAChart() {
        double[] thousand = new double[1000];
        Arrays.setAll(thousand, i -> i + 1);

        assertThat(refused(rates(thousand), speeds(20)).rates()).hasSize(1000);
    }

    @Test
    void aSubjectIsATitle() {
        assertThat(SUBJECT).hasToString("T-12: road salt, gate at 2 in");
        assertThat(new ChartSubject("T-12", "road salt", Setting.none())).hasToString("T-12: road salt");
        assertRefused(
                "truck must be a text that is not blank: \" \"", () -> new ChartSubject(" ", "salt", Setting.none()));
        assertRefused(
                "material must be a text that is not blank: \"\"", () -> new ChartSubject("T-12", "", Setting.none()));
    }

    @Test
    void aBasisSaysWhatRatesAreStatedFor() {
        assertThat(RateBasis.perDistance()).hasToString("per distance of travel");
        assertThat(RateBasis.perLane(Amounts.of(2, SpreadingUnits.LANE)))
                .hasToString("per distance of lane, treated at once: 2 lane");
        assertThat(RateBasis.perArea(Amounts.of(8, SpreadingUnits.METER))).hasToString("per area, on a width of 8 m");
        assertRefused(
                "lanes treated must be greater than 0: 0 lane",
                () -> RateBasis.perLane(Amounts.of(0, SpreadingUnits.LANE)));
        assertRefused(
                "treated width must be greater than 0: 0 m",
                () -> RateBasis.perArea(Amounts.of(0, SpreadingUnits.METER)));
        assertRefused(
                "rate must be 0 or more: -1 lb/mi",
                () -> RateBasis.perDistance().onTheRoad(rate(-1)));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        FeedbackChart<ApplicationRate> chart = chart(ENVELOPE, 300, 75);

        Samples.assertNamesWhatIsMissing(chart);
        Samples.assertNamesWhatIsMissing(chart.cell(0, 0));
        Samples.assertNamesWhatIsMissing(chart.cell(0, 0).outside().orElseThrow());
        Samples.assertNamesWhatIsMissing(chart.cell(0, 0).flow());
        Samples.assertNamesWhatIsMissing(SUBJECT);
    }
}
