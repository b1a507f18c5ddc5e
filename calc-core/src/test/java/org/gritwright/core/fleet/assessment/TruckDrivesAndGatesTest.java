package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.fleet.assessment.Assessments.calibrations;
import static org.gritwright.core.fleet.assessment.Assessments.reasons;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.pulses;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.units.SpreadingUnits.CENTIMETER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.SECOND;
import static org.gritwright.units.SpreadingUnits.SQUARE_CENTIMETER;
import static org.gritwright.units.SpreadingUnits.SQUARE_INCH;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

/** Trucks with other gates and drives than a sliding gate and a sensor. */
class TruckDrivesAndGatesTest {
    private static final FleetAssessor ASSESSOR = FleetAssessor.of(BuiltInTypes.registry());

    private static TruckAssessment assess(TruckDay truck) {
        return ASSESSOR.assess(day(truck)).get(0);
    }

    private static double poundsPerRevolution(Calibration calibration) {
        return Amounts.in(calibration.dischargePerRevolution().value(), POUND_PER_REVOLUTION);
    }

    private static CalibrationCatchEntry caught(
            int hour, double netPounds, CountEntry counted, Optional<Quantity<?>> opening) {
        CatchEntry e = entry(hour, 2, netPounds, Optional.of(counted));
        return new CalibrationCatchEntry(
                new CatchEntry(
                        e.at(),
                        e.operator(),
                        e.scale(),
                        e.containers(),
                        Optional.empty(),
                        Optional.empty(),
                        e.counted(),
                        opening,
                        e.material(),
                        e.conditions(),
                        e.notes()),
                true,
                Coasting.IN_BOTH);
    }

    private static OpenLoop.Row row(double setting, double revolutionsPerMinute) {
        return new OpenLoop.Row(Amounts.of(setting, ONE), Amounts.of(revolutionsPerMinute, REVOLUTION_PER_MINUTE));
    }

    private static CountEntry atSetting(double setting, double seconds) {
        return CountEntry.atControlSetting(Amounts.of(setting, ONE), Amounts.of(seconds, SECOND));
    }

    /** Without a sensor: 10 rev/min at 2, 30 rev/min at 4. */
    private static TruckDay openLoop() {
        return openLoop(row(2, 10), row(4, 30));
    }

    private static TruckDay openLoop(OpenLoop.Row... table) {
        return TruckDay.of(
                "T-01",
                SpreaderEntry.watched(Trucks.conveyor(), Trucks.gate(), Amounts.of(5.2, ONE))
                        .withControlSettings(List.of(table)));
    }

    private static TruckDay openLoop(CountEntry counted, double netPounds) {
        return with(openLoop(), caught(8, netPounds, counted, Optional.of(inches(2))));
    }

    @Test
    void aControlSettingAndATimeAreRevolutionsByTheTrucksTable() {
        // 20 rev/min for 90 s are 30 revolutions.
        TruckAssessment assessment = assess(openLoop(atSetting(3, 90), 156));

        assertThat(assessment.refusals()).isEmpty();
        assertThat(poundsPerRevolution(calibrations(assessment).get(0))).isCloseTo(5.2, within(1e-12));
    }

    @Test
    void aSettingOutsideTheTableIsRefused() {
        assertThat(reasons(assess(openLoop(atSetting(5, 90), 156))))
                .containsExactly(
                        "/trucks/0/calibrationCatches/0/counted: catch of 08:00: control setting must be within"
                                + " 2 to 4: 5");
    }

    @Test
    void aSettingWithoutATableIsRefused() {
        TruckDay withSensor = with(idle("T-01"), caught(8, 156, atSetting(3, 90), Optional.of(inches(2))));

        assertThat(reasons(assess(withSensor)))
                .singleElement()
                .satisfies(reason -> assertThat(reason)
                        .startsWith("/trucks/0/calibrationCatches/0/counted: catch of 08:00: ")
                        .contains("count must be in a form that needs no table of control settings")
                        .endsWith("control setting 3"));
        assertThat(assess(with(openLoop(new OpenLoop.Row[0]), caught(8, 156, atSetting(3, 90), Optional.of(inches(2)))))
                        .isRefused())
                .isTrue();
    }

    @Test
    void pulsesOfADriveWithoutSensorAreRefusedWithATableToo() {
        assertThat(reasons(assess(with(openLoop(), calibrationCatch(8, 2)))))
                .singleElement()
                .satisfies(reason -> assertThat(reason)
                        .startsWith("/trucks/0/calibrationCatches/0/counted: catch of 08:00: ")
                        .endsWith("the drive has no pulse sensor: 3000 pulse"));
    }

    @Test
    void aTableTogetherWithASensorIsRefused() {
        TruckDay both = with(
                idle("T-01"),
                ((SpreaderEntry) idle("T-01").spreader()).withControlSettings(List.of(row(2, 10), row(4, 30))));

        assertThat(reasons(assess(both)))
                .containsExactly(
                        "/trucks/0: control settings must be left out for a drive with a shaft sensor: a table");
        assertThat(assess(both).nextStep()).isEqualTo(NextStep.FIX_RECORD);
    }

    @Test
    void aTableThatDoesNotRiseIsRefusedForThisTruckOnly() {
        TruckDay wrong = openLoop(row(4, 30), row(2, 10));
        List<TruckAssessment> both = ASSESSOR.assess(day(wrong, with(idle("T-02"), calibrationCatch(8, 2))));

        assertThat(reasons(both.get(0)))
                .containsExactly("/trucks/0: control setting must be above the one before, 4: 2");
        assertThat(both.get(1).refusals()).isEmpty();
        assertThat(reasons(assess(openLoop(row(2, 10)))))
                .containsExactly("/trucks/0: table of control settings must be two rows or more: 1");
    }

    @Test
    void aShaftThatStandsStillGivesNoCount() {
        TruckDay truck =
                with(openLoop(row(1, 0), row(4, 30)), caught(8, 156, atSetting(1, 90), Optional.of(inches(2))));

        assertThat(reasons(assess(truck)))
                .containsExactly(
                        "/trucks/0/calibrationCatches/0/counted: catch of 08:00: control setting must be one at"
                                + " which the shaft turns: 1");
    }

    private static TruckDay gated(TypedEntry gate) {
        return TruckDay.of("T-01", Trucks.spreader(gate));
    }

    /** The marks 0 to 6, each of which opens as much as an inch of the others' gate, 22 in wide. */
    private static TruckDay byMarks() {
        return gated(new TypedEntry(
                "setting-table",
                1,
                Map.of(
                        "settings", List.of(Amounts.of(0, ONE), Amounts.of(6, ONE)),
                        "areas", List.of(Amounts.of(0, SQUARE_CENTIMETER), Amounts.of(22 * 6, SQUARE_INCH)))));
    }

    @Test
    void aPaintedMarkIsAGateOpening() {
        TruckAssessment assessment = assess(with(
                byMarks(),
                caught(8, 156, pulses(3000), Optional.of(Amounts.of(2, ONE))),
                caught(9, 312, pulses(3000), Optional.of(Amounts.of(4, ONE)))));

        assertThat(assessment.refusals()).isEmpty();
        assertThat(calibrations(assessment))
                .extracting(calibration -> calibration.point().setting())
                .containsExactly(Setting.mark(2), Setting.mark(4));
        assertThat(poundsPerRevolution(calibrations(assessment).get(0))).isCloseTo(5.2, within(1e-12));
        assertThat(assessment.curves()).hasSize(1);
        assertThat(Amounts.in(
                        assessment
                                .curves()
                                .get(0)
                                .predict(Setting.mark(3))
                                .dischargePerRevolution()
                                .value(),
                        POUND_PER_REVOLUTION))
                .isCloseTo(7.8, within(1e-6));
    }

    @Test
    void aHeightIsNoMarkAndAMarkNoHeight() {
        assertThat(reasons(assess(with(byMarks(), caught(8, 156, pulses(3000), Optional.of(inches(2)))))))
                .containsExactly(
                        "/trucks/0/calibrationCatches/0/setting: catch of 08:00: gate setting must be the number of"
                                + " a painted mark from 0 to 6: 2 in");
        assertThat(reasons(assess(with(idle("T-01"), caught(8, 156, pulses(3000), Optional.of(Amounts.of(2, ONE)))))))
                .containsExactly(
                        "/trucks/0/calibrationCatches/0/setting: catch of 08:00: gate setting must be a height from"
                                + " 0 m to 1 m: 2");
    }

    @Test
    void aFixedGateHasNoOpeningToWriteDown() {
        TruckDay fixed = gated(new TypedEntry("fixed-opening", 1, Map.of("width", inches(22), "height", inches(2))));
        TruckAssessment assessment = assess(with(fixed, caught(8, 156, pulses(3000), Optional.empty())));

        assertThat(assessment.refusals()).isEmpty();
        assertThat(poundsPerRevolution(calibrations(assessment).get(0))).isCloseTo(5.2, within(1e-12));
        assertThat(calibrations(assessment).get(0).apparentFill().value())
                .isCloseTo(
                        calibrations(assess(with(idle("T-01"), calibrationCatch(8, 2))))
                                .get(0)
                                .apparentFill()
                                .value(),
                        within(1e-12));
        assertThat(assessment.curves()).isEmpty();
        assertThat(reasons(assess(with(fixed, calibrationCatch(8, 2)))))
                .containsExactly(
                        "/trucks/0/calibrationCatches/0/setting: catch of 08:00: gate setting must be left out for"
                                + " gate type fixed-opening, version 1: 2 in");
    }

    @Test
    void aColumnOfAnotherLengthIsRefusedForThisTruckOnly() {
        TruckDay wrong = gated(new TypedEntry(
                "measured-table",
                1,
                Map.of(
                        "openings", List.of(Amounts.of(1, CENTIMETER), Amounts.of(6, CENTIMETER)),
                        "areas", List.of(Amounts.of(0, SQUARE_CENTIMETER)))));
        TruckDay single = gated(new TypedEntry("measured-table", 1, Map.of("openings", inches(1), "areas", inches(1))));

        assertThat(reasons(assess(wrong)))
                .containsExactly(
                        "/trucks/0/gate: gate: areas of measured-table must be a list of 2 to 100: a list of 1");
        assertThat(reasons(assess(single)))
                .containsExactly(
                        "/trucks/0/gate: gate: openings of measured-table must be a list of 2 to 100: one value");
    }

    @Test
    void anEntryDoesNotFollowLaterChangesOfItsLists() {
        List<Quantity<?>> openings = new ArrayList<>(List.of(inches(1), inches(2)));
        TypedEntry entry = new TypedEntry("measured-table", 1, Map.of("openings", openings));
        openings.clear();

        assertThat(entry.parameters()).hasToString("{openings=" + List.of(inches(1), inches(2)) + "}");
        assertThat(entry)
                .isEqualTo(new TypedEntry("measured-table", 1, Map.of("openings", List.of(inches(1), inches(2)))));
    }

    @Test
    void aRefusedOpeningNamesItsCatch() {
        TruckDay truck =
                with(idle("T-01"), calibrationCatch(7, 2), caught(8, 156, pulses(3000), Optional.of(inches(50))));

        assertThat(reasons(assess(truck)))
                .containsExactly(
                        "/trucks/0/calibrationCatches/1/setting: catch of 08:00: gate setting must be within 0 m to"
                                + " 1 m: 50 in");
    }

    @Test
    void theCalibrationInForceIsForAnOpeningThatTheGateHas() {
        InForceEntry entry = Trucks.inForce("5.2 lb/rev", 50, Since.of(Trucks.DAY));

        assertThat(reasons(assess(with(idle("T-01"), entry))))
                .containsExactly("/trucks/0/inForce/0/setting: calibration in force: gate setting must be within 0 m to"
                        + " 1 m: 50 in");
    }
}
