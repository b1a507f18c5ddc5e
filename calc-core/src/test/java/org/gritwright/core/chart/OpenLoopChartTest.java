package org.gritwright.core.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.chart.Trucks.SEVEN;
import static org.gritwright.core.chart.Trucks.SUBJECT;
import static org.gritwright.core.chart.Trucks.discharge;
import static org.gritwright.core.chart.Trucks.rate;
import static org.gritwright.core.chart.Trucks.rpm;
import static org.gritwright.core.chart.Trucks.setting;
import static org.gritwright.core.chart.Trucks.speed;
import static org.gritwright.core.chart.Trucks.speeds;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.Samples;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.range.Command;
import org.gritwright.core.range.CommandScale;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.DriveCurve;
import org.gritwright.core.range.DriveMeasurement;
import org.gritwright.core.range.DrivePoint;
import org.gritwright.core.range.DriveResponse;
import org.gritwright.core.range.DriveRun;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("locale")
class OpenLoopChartTest {
    /** Stands still at 20 %, 6 rev/min at 40 %, 16 at 60 %, no faster from 80 % on; read twice at 40 %. */
    static final DriveCurve DRIVE = drive(20, 0, 40, 5.9, 40, 6.1, 60, 16, 80, 22, 100, 22);

    private static DriveCurve drive(double... pairs) {
        List<DrivePoint> points = new ArrayList<>();
        for (int i = 0; i < pairs.length; i += 2) {
            points.add(DrivePoint.of(Command.percent(pairs[i]), rpm(pairs[i + 1])));
        }
        return DriveResponse.of(new DriveMeasurement(
                        CommandScale.percent(1),
                        rpm(0.1),
                        DriveConditions.NOT_SAID,
                        List.of(new DriveRun(Direction.RISING, points))))
                .curve(Direction.RISING)
                .orElseThrow();
    }

    private static OpenLoopChart<ApplicationRate> chart(
            Measured<DischargePerRevolution> discharge, List<ControlSetting> settings, List<Quantity<Speed>> speeds) {
        return new OpenLoopChart<>(
                SUBJECT, discharge, settings, speeds, RateBasis.perDistance(), SpreadingUnits.POUND_PER_MILE);
    }

    private static OpenLoopCell<ApplicationRate> cell(
            Measured<DischargePerRevolution> discharge, ControlSetting setting, double milesPerHour) {
        return chart(discharge, List.of(setting), speeds(milesPerHour)).cell(0, 0);
    }

    private static double poundsPerMile(OpenLoopCell<ApplicationRate> cell) {
        return Amounts.in(cell.rate().exact().value(), SpreadingUnits.POUND_PER_MILE);
    }

    /** 7 lb/rev × 30 rev/min × 60 ÷ 20 mi/h = 630 lb/mi; × 60 ÷ 35 = 360, not the 359.1 of a multiplier rounded to 1.71. */
    @Test
    void aCellIsTheFlowTimesTheMinutesThatAMileTakes() {
        OpenLoopChart<ApplicationRate> chart = chart(SEVEN, List.of(setting(4, 30)), speeds(20, 35, 45));

        assertThat(chart.row(0).stream().map(OpenLoopChartTest::poundsPerMile).toList())
                .usingComparatorForType((a, b) -> Math.abs(a - b) < 1e-10 ? 0 : 1, Double.class)
                .containsExactly(630.0, 360.0, 280.0);
        // 1 % of 630 is 6.3, of 360 3.6, of 280 2.8.
        assertThat(chart.row(0).stream().map(one -> one.rate().toString()).toList())
                .containsExactly("630 lb/mi", "360 lb/mi", "280 lb/mi");
    }

    /** Minnesota Snow and Ice Control Field Handbook (2012), insert on calibration: 200 lb/min at 20 mph are 600 lb/mi. */
    @Test
    void theHandbooksExampleIsMet() {
        assertThat(cell(discharge(10, 0.1), setting(3, 20), 20).rate()).hasToString("600 lb/mi");
    }

    /** 1 % and 0.4 ÷ 30 = 1.333 % make 1.667 %, of 630 10.5; degrees of freedom 1.667⁴ ÷ (1⁴ ÷ 8 + 1.333⁴ ÷ 6) = 11.84. */
    @Test
    void aRateIsAsUncertainAsCalibrationAndShaftSpeedTogether() {
        OpenLoopCell<ApplicationRate> cell =
                cell(SEVEN, new ControlSetting(Command.number(4), Measured.of(rpm(30), rpm(0.4), 6)), 20);

        assertThat(Amounts.in(cell.rate().exact().standardUncertainty().orElseThrow(), SpreadingUnits.POUND_PER_MILE))
                .isCloseTo(10.5, within(1e-9));
        assertThat(cell.rate().exact().degreesOfFreedom().orElseThrow()).isCloseTo(11.839, within(0.001));
        assertThat(cell.rate().step()).isEqualByComparingTo("10");
        assertThat(cell.isLessSure()).isFalse();
    }

    @Test
    void whatIsKnownOfAnUncertaintyIsCarriedAndWhatIsntIsSaid() {
        ControlSetting measured = new ControlSetting(Command.number(4), Measured.of(rpm(30), rpm(0.4), 6));
        Measured<DischargePerRevolution> once = Measured.once(SEVEN.value());

        assertThat(cell(SEVEN, setting(4, 30), 20).isLessSure()).isTrue();
        assertThat(Amounts.in(
                        cell(SEVEN, setting(4, 30), 20)
                                .rate()
                                .exact()
                                .standardUncertainty()
                                .orElseThrow(),
                        SpreadingUnits.POUND_PER_MILE))
                .isCloseTo(6.3, within(1e-9));
        assertThat(cell(once, measured, 20).isLessSure()).isTrue();
        // 0.4 rev/min × 7 lb/rev × 3 min.
        assertThat(Amounts.in(
                        cell(once, measured, 20)
                                .rate()
                                .exact()
                                .standardUncertainty()
                                .orElseThrow(),
                        SpreadingUnits.POUND_PER_MILE))
                .isCloseTo(8.4, within(1e-9));
        assertThat(cell(once, setting(4, 30), 20).isLessSure()).isTrue();
        assertThat(cell(once, setting(4, 30), 20).rate().exact().standardUncertainty())
                .isEmpty();
    }

    @Test
    void settingsComeFromATableOfTheYard() {
        OpenLoop table = new OpenLoop(
                Amounts.of(1, SpreadingUnits.ONE),
                List.of(
                        new OpenLoop.Row(Amounts.of(2, SpreadingUnits.ONE), rpm(10)),
                        new OpenLoop.Row(Amounts.of(4, SpreadingUnits.ONE), rpm(30))));

        assertThat(ControlSetting.of(table)).containsExactly(setting(2, 10), setting(4, 30));
        assertThat(setting(4, 30)).hasToString("4");
    }

    @Test
    void settingsComeFromAMeasuredValve() {
        List<ControlSetting> settings =
                ControlSetting.of(DRIVE, List.of(Command.percent(10), Command.percent(40), Command.percent(80)));

        assertThat(settings)
                .extracting(ControlSetting::setting)
                .containsExactly(Command.percent(10), Command.percent(40), Command.percent(80));
        assertThat(settings.get(1).shaftSpeed())
                .isEqualTo(DRIVE.speedAt(Command.percent(40)).orElseThrow());
        assertThat(settings.get(1).shaftSpeed().standardUncertainty()).isPresent();
        assertThat(cell(SEVEN, settings.get(0), 20).rate()).hasToString("0 lb/mi");
        assertThat(cell(SEVEN, settings.get(0), 20).isLessSure()).isFalse();
        assertRefused(
                "control setting must be one whose shaft speed is known: 30 %",
                () -> ControlSetting.of(DRIVE, List.of(Command.percent(30))));
    }

    /** At 20 mi/h 21 lb/mi for each rev/min: 210, 420, 630. */
    @Test
    void theBestSettingComesNearest() {
        OpenLoopChart<ApplicationRate> chart =
                chart(SEVEN, List.of(setting(2, 10), setting(3, 20), setting(4, 30)), speeds(20));
        BestSetting<ApplicationRate> best = chart.best(rate(400), speed(20));

        assertThat(best.setting()).isEqualTo(setting(3, 20));
        assertThat(best.cell()).isEqualTo(chart.cell(1, 0));
        assertThat(Amounts.in(best.error(), SpreadingUnits.PERCENT)).isCloseTo(5, within(1e-10));
        assertThat(chart.best(rate(316), speed(20)).setting()).isEqualTo(setting(3, 20));
        assertThat(chart.best(rate(314), speed(20)).setting()).isEqualTo(setting(2, 10));
        // At 40 mi/h the same settings give half: 315 at the most.
        assertThat(chart.best(rate(400), speed(40)).setting()).isEqualTo(setting(4, 30));
        assertThat(Amounts.in(chart.best(rate(400), speed(40)).error(), SpreadingUnits.PERCENT))
                .isCloseTo(-21.25, within(1e-10));
    }

    @Test
    void ofTwoThatAreEquallyNearTheLowerSettingIsTaken() {
        OpenLoopChart<ApplicationRate> chart =
                chart(SEVEN, List.of(setting(5, 30), setting(4, 30), setting(2, 10)), speeds(20));

        assertThat(chart.best(rate(420), speed(20)).setting()).isEqualTo(setting(2, 10));
        assertThat(chart.best(rate(600), speed(20)).setting()).isEqualTo(setting(4, 30));
    }

    @Test
    void ratesAreInTheUnitThatIsAskedFor() {
        OpenLoopChart<?> lanes = new OpenLoopChart<>(
                SUBJECT,
                SEVEN,
                List.of(setting(3, 20)),
                speeds(20),
                RateBasis.perLane(Amounts.of(2, SpreadingUnits.LANE)),
                SpreadingUnits.POUND_PER_LANE_MILE);
        // 420 lb/mi are 118.377 kg/km, on 8 m 14.797 g/m².
        OpenLoopChart<?> area = new OpenLoopChart<>(
                SUBJECT,
                SEVEN,
                List.of(setting(3, 20)),
                speeds(20),
                RateBasis.perArea(Amounts.of(8, SpreadingUnits.METER)),
                SpreadingUnits.GRAM_PER_SQUARE_METER);

        assertThat(lanes.cell(0, 0).rate()).hasToString("210 lb/lane-mi");
        assertThat(area.cell(0, 0).rate()).hasToString("14.8 g/m²");
    }

    @Test
    void whatCantBeAChartIsRefused() {
        List<ControlSetting> one = List.of(setting(4, 30));

        assertRefused(
                "discharge per revolution must be greater than 0: 0 lb/rev",
                () -> chart(discharge(0, 1), one, speeds(20)));
        assertRefused(
                "control settings of a chart must be one or more: none", () -> chart(SEVEN, List.of(), speeds(20)));
        assertRefused("road speeds of a chart must be one or more: none", () -> chart(SEVEN, one, List.of()));
        assertRefused("road speed must be greater than 0: 0 mi/h", () -> chart(SEVEN, one, speeds(0)));
        assertRefused(
                "control setting must be listed once: 4",
                () -> chart(SEVEN, List.of(setting(4, 30), setting(3, 20), setting(4, 31)), speeds(20)));
        assertRefused(
                "control setting must be read in the same unit as the others: 40 %",
                () -> chart(
                        SEVEN,
                        List.of(setting(4, 30), new ControlSetting(Command.percent(40), Measured.once(rpm(20)))),
                        speeds(20)));
        assertRefused("loaded shaft speed must be 0 or more: -1 rev/min", () -> setting(4, -1));
        assertRefused(
                "rate must be greater than 0: 0 lb/mi",
                () -> chart(SEVEN, one, speeds(20)).best(rate(0), speed(20)));
        assertRefused(
                "road speed must be greater than 0: 0 mi/h",
                () -> chart(SEVEN, one, speeds(20)).best(rate(1), speed(0)));
        assertRefused(
                "one unit of the rates must be a finite lane application rate: 1 lb/mi",
                OpenLoopChartTest::ofAnotherKind);
    }

    @SuppressWarnings({"unchecked", "rawtypes"}) // what a raw type would get past the compiler
    private static void ofAnotherKind() {
        RateBasis basis = RateBasis.perLane(Amounts.of(2, SpreadingUnits.LANE));
        new OpenLoopChart(SUBJECT, SEVEN, List.of(setting(4, 30)), speeds(20), basis, SpreadingUnits.POUND_PER_MILE);
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        OpenLoopChart<ApplicationRate> chart = chart(SEVEN, List.of(setting(4, 30)), speeds(20));

        Samples.assertNamesWhatIsMissing(chart);
        Samples.assertNamesWhatIsMissing(chart.cell(0, 0));
        Samples.assertNamesWhatIsMissing(chart.best(rate(300), speed(20)));
        Samples.assertNamesWhatIsMissing(setting(4, 30));
    }
}
