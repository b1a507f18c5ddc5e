package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.entry;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.pulses;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.units.SpreadingUnits.CENTIMETRE;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.SECOND;
import static org.gritwright.units.SpreadingUnits.SQUARE_CENTIMETRE;
import static org.gritwright.units.SpreadingUnits.SQUARE_INCH;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.observation.Coasting;
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
        return new CountEntry(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Amounts.of(setting, ONE)),
                Optional.of(Amounts.of(seconds, SECOND)));
    }

    /** Without a sensor: 10 rev/min at 2, 30 rev/min at 4. */
    private static TruckDay openLoop() {
        TruckDay truck = idle("T-01");
        return TruckDay.of("T-01", truck.conveyor(), truck.gate(), Optional.empty(), truck.gearRatio())
                .withControlSettings(List.of(row(2, 10), row(4, 30)));
    }

    private static TruckDay openLoop(CountEntry counted, double netPounds) {
        return with(openLoop(), caught(8, netPounds, counted, Optional.of(inches(2))));
    }

    @Test
    void aControlSettingAndATimeAreRevolutionsByTheTrucksTable() {
        // 20 rev/min for 90 s are 30 revolutions.
        TruckAssessment assessment = assess(openLoop(atSetting(3, 90), 156));

        assertThat(assessment.refusal()).isEmpty();
        assertThat(poundsPerRevolution(assessment.calibrations().get(0))).isCloseTo(5.2, within(1e-12));
    }

    @Test
    void aSettingOutsideTheTableIsRefused() {
        assertThat(assess(openLoop(atSetting(5, 90), 156)).refusal())
                .hasValueSatisfying(reason -> assertThat(reason).contains("control setting must be within 2 to 4: 5"));
    }

    @Test
    void aSettingWithoutATableIsRefused() {
        TruckDay withSensor = with(idle("T-01"), caught(8, 156, atSetting(3, 90), Optional.of(inches(2))));

        assertThat(assess(withSensor).refusal())
                .hasValueSatisfying(reason -> assertThat(reason)
                        .contains("count must be in a form that needs no table of control settings")
                        .endsWith("control setting 3"));
        assertThat(assess(openLoop(atSetting(3, 90), 156).withControlSettings(List.of()))
                        .refusal())
                .isPresent();
    }

    @Test
    void pulsesOfADriveWithoutSensorAreRefusedWithATableToo() {
        assertThat(assess(with(openLoop(), calibrationCatch(8, 2))).refusal())
                .hasValueSatisfying(reason -> assertThat(reason).contains("the drive has no pulse sensor: 3000 pulse"));
    }

    @Test
    void aTableTogetherWithASensorIsRefused() {
        TruckDay both = idle("T-01").withControlSettings(List.of(row(2, 10), row(4, 30)));

        assertThat(assess(both).refusal())
                .contains("control settings must be left out for a drive with a shaft sensor: a table");
        assertThat(assess(both).nextStep()).isEqualTo(NextStep.MEND_RECORD);
    }

    @Test
    void aTableThatDoesNotRiseIsRefusedForThisTruckOnly() {
        TruckDay wrong = openLoop().withControlSettings(List.of(row(4, 30), row(2, 10)));
        List<TruckAssessment> both = ASSESSOR.assess(day(wrong, with(idle("T-02"), calibrationCatch(8, 2))));

        assertThat(both.get(0).refusal()).contains("control setting must be above the one before, 4: 2");
        assertThat(both.get(1).refusal()).isEmpty();
        assertThat(assess(openLoop().withControlSettings(List.of(row(2, 10)))).refusal())
                .contains("table of control settings must be two rows or more: 1");
    }

    @Test
    void aShaftThatStandsStillGivesNoCount() {
        TruckDay truck = openLoop(atSetting(1, 90), 156).withControlSettings(List.of(row(1, 0), row(4, 30)));

        assertThat(assess(truck).refusal())
                .contains("catch of 08:00: control setting must be one at which the shaft turns: 1");
    }

    private static TruckDay gated(TypedEntry gate) {
        TruckDay truck = idle("T-01");
        return TruckDay.of("T-01", truck.conveyor(), gate, truck.pulsesPerRevolution(), truck.gearRatio());
    }

    /** The marks 0 to 6, each of which opens as much as an inch of the others' gate, 22 in wide. */
    private static TruckDay byMarks() {
        return gated(new TypedEntry(
                "setting-table",
                1,
                Map.of(
                        "settings", List.of(Amounts.of(0, ONE), Amounts.of(6, ONE)),
                        "areas", List.of(Amounts.of(0, SQUARE_CENTIMETRE), Amounts.of(22 * 6, SQUARE_INCH)))));
    }

    @Test
    void aPaintedMarkIsAGateOpening() {
        TruckAssessment assessment = assess(with(
                byMarks(),
                caught(8, 156, pulses(3000), Optional.of(Amounts.of(2, ONE))),
                caught(9, 312, pulses(3000), Optional.of(Amounts.of(4, ONE)))));

        assertThat(assessment.refusal()).isEmpty();
        assertThat(assessment.calibrations())
                .extracting(Calibration::opening)
                .containsExactly(Optional.of(Amounts.of(2, ONE)), Optional.of(Amounts.of(4, ONE)));
        assertThat(poundsPerRevolution(assessment.calibrations().get(0))).isCloseTo(5.2, within(1e-12));
        assertThat(assessment.curves()).hasSize(1);
        assertThat(Amounts.in(
                        assessment
                                .curves()
                                .get(0)
                                .predict(Amounts.of(3, ONE))
                                .dischargePerRevolution()
                                .value(),
                        POUND_PER_REVOLUTION))
                .isCloseTo(7.8, within(1e-6));
    }

    @Test
    void aHeightIsNoMarkAndAMarkNoHeight() {
        assertThat(assess(with(byMarks(), caught(8, 156, pulses(3000), Optional.of(inches(2)))))
                        .refusal())
                .contains("catch of 08:00: gate opening must be the setting of a painted mark, a bare number: 2 in");
        assertThat(assess(with(idle("T-01"), caught(8, 156, pulses(3000), Optional.of(Amounts.of(2, ONE)))))
                        .refusal())
                .contains("catch of 08:00: gate opening must be a length: 2");
    }

    @Test
    void aFixedGateHasNoOpeningToWriteDown() {
        TruckDay fixed = gated(new TypedEntry("fixed-opening", 1, Map.of("width", inches(22), "height", inches(2))));
        TruckAssessment assessment = assess(with(fixed, caught(8, 156, pulses(3000), Optional.empty())));

        assertThat(assessment.refusal()).isEmpty();
        assertThat(poundsPerRevolution(assessment.calibrations().get(0))).isCloseTo(5.2, within(1e-12));
        assertThat(assessment.calibrations().get(0).apparentFill().value())
                .isCloseTo(
                        assess(with(idle("T-01"), calibrationCatch(8, 2)))
                                .calibrations()
                                .get(0)
                                .apparentFill()
                                .value(),
                        within(1e-12));
        assertThat(assessment.curves()).isEmpty();
        assertThat(assess(with(fixed, calibrationCatch(8, 2))).refusal())
                .contains("catch of 08:00: gate opening must be left out for gate type fixed-opening, version 1: 2 in");
    }

    @Test
    void aColumnOfAnotherLengthIsRefusedForThisTruckOnly() {
        TruckDay wrong = gated(new TypedEntry(
                "measured-table",
                1,
                Map.of(
                        "openings", List.of(Amounts.of(1, CENTIMETRE), Amounts.of(6, CENTIMETRE)),
                        "areas", List.of(Amounts.of(0, SQUARE_CENTIMETRE)))));
        TruckDay single = gated(new TypedEntry("measured-table", 1, Map.of("openings", inches(1), "areas", inches(1))));

        assertThat(assess(wrong).refusal()).contains("gate: areas must be a list of 2 to 100: a list of 1");
        assertThat(assess(single).refusal()).contains("gate: openings must be a list of 2 to 100: one value");
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

        assertThat(assess(truck).refusal()).contains("catch of 08:00: gate opening must be within 0 m to 1 m: 50 in");
    }

    @Test
    void theCalibrationInForceIsForAnOpeningThatTheGateHas() {
        InForceEntry entry = new InForceEntry(
                Amounts.parseAny("5.2 lb/rev"),
                Optional.empty(),
                Trucks.DAY,
                "salt",
                Optional.of(inches(50)),
                Optional.empty());

        assertThat(assess(idle("T-01").withInForce(Optional.of(entry))).refusal())
                .contains("calibration in force: gate opening must be within 0 m to 1 m: 50 in");
    }
}
