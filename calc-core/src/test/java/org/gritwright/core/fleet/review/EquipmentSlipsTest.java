package org.gritwright.core.fleet.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.review.EnteredDays.CHAIN;
import static org.gritwright.core.fleet.review.EnteredDays.FOUR;
import static org.gritwright.core.fleet.review.EnteredDays.METERED;
import static org.gritwright.core.fleet.review.EnteredDays.TWO;
import static org.gritwright.core.fleet.review.EnteredDays.at;
import static org.gritwright.core.fleet.review.EnteredDays.calibration;
import static org.gritwright.core.fleet.review.EnteredDays.day;
import static org.gritwright.core.fleet.review.EnteredDays.net;
import static org.gritwright.core.fleet.review.EnteredDays.read;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.fleet.day.MeteringEntry;
import org.gritwright.core.fleet.day.PumpEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a revolution would sweep without each slip: all that are tried, and how often each could have been made. */
class EquipmentSlipsTest {
    private static List<String> tried(Sketch day, MeteringEntry spreader) {
        return EnteredDays.table(day, EquipmentSlips.of(day, spreader, EnteredDays.TYPES));
    }

    private static List<String> tried(Sketch day, MeteringEntry spreader, String of) {
        return tried(day, spreader).stream().filter(line -> line.contains(of)).toList();
    }

    /** One catch with 80 % of what is swept, which tells nothing of a gear. */
    private static Sketch caughtAt(CalibrationPoint point) {
        double loose = SketchedCatch.loose(point) / EnteredDays.POUND;
        return day(List.of(calibration(0, point, net(8 * loose), 1000)), List.of());
    }

    /** 50 lb at 4 in, 25 lb at 2 in; less than 12 mm is ten times less likely. A gate of 40 in can't be. */
    @Test
    void everySlipIsTriedAtOneOpeningAndWhereItAppliesAtAll() {
        Sketch day =
                day(List.of(calibration(0, FOUR, net(400), 1000), calibration(15, TWO, net(240), 1200)), List.of());

        assertThat(tried(day, CHAIN)).containsExactly("""
                        gate opening ÷ 10 (0.4 in) | 10 | 0: loose 5 lb, 1: loose 2.5 lb
                        gate opening ÷ 2.54 (1.575 in) | 1 | 0: loose 19.685 lb, 1: loose 9.8425 lb
                        gate opening × 2.54 (10.16 in) | 1 | 0: loose 127 lb, 1: loose 63.5 lb
                        gate opening ÷ 25.4 (0.1575 in) | 10 | 0: loose 1.9685 lb, 1: loose 0.98425 lb
                        gate opening ÷ 10 (0.4 in) | 20 | 0: loose 5 lb
                        gate opening ÷ 2.54 (1.575 in) | 2 | 0: loose 19.685 lb
                        gate opening × 2.54 (10.16 in) | 2 | 0: loose 127 lb
                        gate opening ÷ 25.4 (0.1575 in) | 20 | 0: loose 1.9685 lb
                        a dropped digit in the gate opening (14 in) | 20 | 0: loose 175 lb
                        a dropped digit in the gate opening (24 in) | 20 | 0: loose 300 lb
                        a dropped digit in the gate opening (34 in) | 20 | 0: loose 425 lb
                        gate opening ÷ 10 (0.2 in) | 20 | 1: loose 2.5 lb
                        gate opening × 10 (20 in) | 2 | 1: loose 250 lb
                        gate opening ÷ 2.54 (0.7874 in) | 2 | 1: loose 9.8425 lb
                        gate opening × 2.54 (5.08 in) | 2 | 1: loose 63.5 lb
                        gate opening ÷ 25.4 (0.07874 in) | 20 | 1: loose 0.98425 lb
                        a dropped digit in the gate opening (12 in) | 20 | 1: loose 150 lb
                        a dropped digit in the gate opening (20 in) | 20 | 1: loose 250 lb
                        a dropped digit in the gate opening (21 in) | 20 | 1: loose 262.5 lb
                        a dropped digit in the gate opening (22 in) | 20 | 1: loose 275 lb
                        a dropped digit in the gate opening (23 in) | 20 | 1: loose 287.5 lb
                        a dropped digit in the gate opening (24 in) | 20 | 1: loose 300 lb
                        a dropped digit in the gate opening (25 in) | 20 | 1: loose 312.5 lb
                        a dropped digit in the gate opening (26 in) | 20 | 1: loose 325 lb
                        a dropped digit in the gate opening (27 in) | 20 | 1: loose 337.5 lb
                        a dropped digit in the gate opening (28 in) | 20 | 1: loose 350 lb
                        a dropped digit in the gate opening (29 in) | 20 | 1: loose 362.5 lb
                        a dropped digit in the gate opening (32 in) | 20 | 1: loose 400 lb
                        chain pitch × 2.54 (6.35 in) | 1 | 0: loose 127 lb, 1: loose 63.5 lb
                        chain pitch ÷ 2.54 (0.9843 in) | 1 | 0: loose 19.685 lb, 1: loose 9.8425 lb
                        teeth × 2 (12) | 1 | 0: loose 100 lb, 1: loose 50 lb
                        teeth ÷ 2 (3) | 1 | 0: loose 25 lb, 1: loose 12.5 lb
                        gear ratio × 2 (2) | 10 | 0: loose 25 lb, 1: loose 12.5 lb
                        gear ratio × 10 (10) | 10 | 0: loose 5 lb, 1: loose 2.5 lb
                        """.lines().toArray(String[]::new));
    }

    @Test
    void aSingleOpeningIsTriedOnce() {
        assertThat(tried(caughtAt(FOUR), CHAIN, "gate opening ÷ 2.54")).hasSize(1);
    }

    @Test
    void aDigitTooManyLeavesAnOpening() {
        assertThat(tried(caughtAt(at(10)), CHAIN, "digit too many"))
                .containsExactly("a digit too many in the gate opening (1 in) | 1 | 0: loose 12.5 lb");
    }

    @Test
    void twelveMillimetersAreNotHardlyOpen() {
        CalibrationPoint metric = CalibrationPoint.of(
                EnteredDays.SALT, FOUR.metering(), Setting.height(Amounts.of(120, SpreadingUnits.MILLIMETER)));

        // 50 lb × 12 mm ÷ 101.6 mm
        assertThat(tried(caughtAt(metric), CHAIN, "÷ 10 (12 mm)"))
                .containsExactly("gate opening ÷ 10 (12 mm) | 1 | 0: loose 5.9055 lb");
    }

    /** A gate with a mark for every square inch: a mark has no unit to be mistaken and says nothing of a height. */
    @Test
    void ofMarksOnlyTheDecimalPointMoves() {
        SpreaderEntry marked = new SpreaderEntry(
                CHAIN.conveyor(),
                new TypedEntry(
                        "setting-table",
                        1,
                        Map.of(
                                "settings",
                                List.of(Amounts.of(0, SpreadingUnits.ONE), Amounts.of(100, SpreadingUnits.ONE)),
                                "areas",
                                List.of(
                                        Amounts.of(0, SpreadingUnits.SQUARE_INCH),
                                        Amounts.of(100, SpreadingUnits.SQUARE_INCH)))),
                CHAIN.pulsesPerRevolution(),
                CHAIN.gearRatio(),
                List.of(),
                Optional.empty());
        CalibrationPoint point = CalibrationPoint.of(
                EnteredDays.SALT, marked.metering(EnteredDays.TYPES), Setting.of(Amounts.of(0.06, SpreadingUnits.ONE)));

        // 15 in³ per square inch are 0.52083 lb
        assertThat(tried(caughtAt(point), marked, "digit too many"))
                .containsExactly("a digit too many in the gate opening (0.6) | 1 | 0: loose 0.3125 lb");
        assertThat(tried(caughtAt(point), marked, "gate opening ÷"))
                .containsExactly("gate opening ÷ 10 (0.006) | 1 | 0: loose 0.003125 lb");
    }

    /** A screw has three lengths, so that each is a third as likely. 2.54 times the shaft's diameter leave less of the screw. */
    @Test
    void everyLengthOfAMachineIsOneOfTheirNumber() {
        SpreaderEntry auger = SpreaderEntry.sensed(
                new TypedEntry(
                        "auger",
                        1,
                        Map.of(
                                "screwDiameter",
                                Amounts.of(10, SpreadingUnits.INCH),
                                "shaftDiameter",
                                Amounts.of(2, SpreadingUnits.INCH),
                                "pitch",
                                Amounts.of(6, SpreadingUnits.INCH))),
                new TypedEntry("no-gate", 1, Map.of()),
                Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION),
                Amounts.of(1, SpreadingUnits.ONE));
        CalibrationPoint point =
                CalibrationPoint.of(EnteredDays.SALT, auger.metering(EnteredDays.TYPES), Setting.none());

        // π/4 × 96 in² × 6 in are 452.39 in³ or 15.708 lb
        assertThat(tried(caughtAt(point), auger, "2.54"))
                .containsExactly(
                        "pitch × 2.54 (15.24 in) | 3 | 0: loose 39.898 lb",
                        "pitch ÷ 2.54 (2.362 in) | 3 | 0: loose 6.1842 lb",
                        "screw diameter × 2.54 (25.4 in) | 3 | 0: loose 104.91 lb",
                        "screw diameter ÷ 2.54 (3.937 in) | 3 | 0: loose 1.8817 lb",
                        "shaft diameter × 2.54 (5.08 in) | 3 | 0: loose 12.14 lb",
                        "shaft diameter ÷ 2.54 (0.7874 in) | 3 | 0: loose 16.261 lb");
    }

    /** Half of 7 teeth is no number of teeth. */
    @ParameterizedTest
    @CsvSource({"6, teeth × 2 (12); teeth ÷ 2 (3)", "7, teeth × 2 (14)", "8, teeth × 2 (16); teeth ÷ 2 (4)"})
    void teethAreCountedByTheHalfOrDoubleInWholeNumbers(double teeth, String slips) {
        SpreaderEntry chain = EnteredDays.chain(Map.of(
                "teeth", Amounts.of(teeth, SpreadingUnits.ONE), "chainPitch", Amounts.of(2.5, SpreadingUnits.INCH)));

        assertThat(tried(caughtAt(at(EnteredDays.SALT, chain, 4)), chain, "teeth").stream()
                        .map(line -> line.replaceFirst(" \\|.*", "")))
                .containsExactly(slips.split("; ", -1));
    }

    @ParameterizedTest
    @CsvSource({"1, none", "2, pockets × 2 (4)"})
    void aSinglePocketIsNotMiscounted(double pockets, String slips) {
        SpreaderEntry roller = SpreaderEntry.sensed(
                new TypedEntry(
                        "feed-roller",
                        1,
                        Map.of(
                                "pockets",
                                Amounts.of(pockets, SpreadingUnits.ONE),
                                "pocketArea",
                                Amounts.of(2, SpreadingUnits.SQUARE_INCH),
                                "rollerLength",
                                Amounts.of(60, SpreadingUnits.INCH))),
                new TypedEntry("no-gate", 1, Map.of()),
                Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION),
                Amounts.of(1, SpreadingUnits.ONE));
        CalibrationPoint point =
                CalibrationPoint.of(EnteredDays.SALT, roller.metering(EnteredDays.TYPES), Setting.none());

        assertThat(tried(caughtAt(point), roller, "pockets").stream().map(line -> line.replaceFirst(" \\|.*", "")))
                .isEqualTo(slips.equals("none") ? List.of() : List.of(slips));
    }

    /** 1000 pulses a gallon are 0.01 lb each. */
    @Test
    void aFlowMeterHasAVolumeAndNoGear() {
        Sketch day = day(List.of(calibration(0, METERED, read(40), 40_000)), List.of());

        assertThat(tried(day, EnteredDays.METER)).containsExactly("""
                        k factor × 10 (10000 pulse/gal) | 1 | 0: loose 0.001 lb
                        k factor ÷ 10 (100 pulse/gal) | 1 | 0: loose 0.1 lb
                        k factor × 3.785 (3785 pulse/gal) | 1 | 0: loose 0.0026417 lb
                        k factor ÷ 3.785 (264.2 pulse/gal) | 1 | 0: loose 0.037854 lb
                        """.lines().toArray(String[]::new));
    }

    /** Tables of numbers have no slip of one; the gear that is in the way of a pump has. */
    @Test
    void aPumpKnownByItsTableHasOnlyItsGear() {
        PumpEntry pump = PumpEntry.sensed(
                new TypedEntry(
                        "pump-table",
                        1,
                        Map.of(
                                "speeds",
                                List.of(
                                        Amounts.of(10, SpreadingUnits.REVOLUTION_PER_MINUTE),
                                        Amounts.of(100, SpreadingUnits.REVOLUTION_PER_MINUTE)),
                                "flows",
                                List.of(
                                        Amounts.of(1, SpreadingUnits.US_GALLON_PER_MINUTE),
                                        Amounts.of(10, SpreadingUnits.US_GALLON_PER_MINUTE)))),
                Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION),
                Amounts.of(1, SpreadingUnits.ONE));
        CalibrationPoint point =
                CalibrationPoint.of(EnteredDays.BRINE, pump.metering(EnteredDays.TYPES), Setting.none());
        Sketch day = day(List.of(calibration(0, point, read(40), 40_000)), List.of());

        assertThat(tried(day, pump))
                .containsExactly(
                        "gear ratio × 2 (2) | 10 | 0: loose 0.5 lb", "gear ratio × 10 (10) | 10 | 0: loose 0.1 lb");
    }

    /** A gear that slows the shaft down isn't below 1; one that is written down wasn't forgotten. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    1.9 | gear ratio × 2 (3.8) 25; gear ratio × 10 (19) 5
                    2   | gear ratio × 2 (4) 25; gear ratio ÷ 2 (1) 100; gear ratio × 10 (20) 5
                    10  | gear ratio × 2 (20) 25; gear ratio ÷ 2 (5) 100; gear ratio × 10 (100) 5; gear ratio ÷ 10 (1) 500
                    """)
    void aGearRatioIsMistakenForOneThatCanBe(double ratio, String slips) {
        SpreaderEntry geared = new SpreaderEntry(
                CHAIN.conveyor(),
                CHAIN.gate(),
                CHAIN.pulsesPerRevolution(),
                Amounts.of(ratio, SpreadingUnits.ONE),
                List.of(),
                Optional.empty());

        // 50 lb for a turn of the conveyor, so that a catch of 10 turns at 25 % speaks for a ratio that was forgotten.
        Sketch day = day(List.of(calibration(0, FOUR, net(125), 1000)), List.of());
        assertThat(tried(day, geared, "gear").stream().map(line -> line.replaceAll(" \\|.*loose (\\d+) lb", " $1")))
                .containsExactly(slips.split("; ", -1));
    }

    /** Between 50 % and 115 % usual is √(0.5 × 1.15) or 0.7583: 3.033 times 25 %, 2.496 times 30.38 %, 2.504 times 30.28 %. */
    @ParameterizedTest
    @CsvSource({
        "125, gear ratio forgotten (3) | 2 | 0: loose 16.485 lb",
        "151.4, gear ratio forgotten (2.5) | 2 | 0: loose 19.966 lb",
        "151.9, none"
    })
    void aGearIsForgottenWhereTheConveyorSeemsNearlyEmpty(double pounds, String slip) {
        Sketch day = day(List.of(calibration(0, FOUR, net(pounds), 1000)), List.of());

        assertThat(tried(day, CHAIN, "forgotten")).isEqualTo(slip.equals("none") ? List.of() : List.of(slip));
    }

    @Test
    void aGearIsForgottenWhereAValueInForceSaysSoBeforeAnythingIsCaught() {
        assertThat(tried(EnteredDays.listing("12.5 lb/rev"), CHAIN, "forgotten"))
                .containsExactly("gear ratio forgotten (3) | 2 | held 0: loose 16.485 lb");
        assertThat(tried(EnteredDays.listing("40 lb/rev"), CHAIN, "forgotten")).isEmpty();
    }

    /** 1 lb/ft³ is 16.018 kg/m³. Between 300 and 3000 kg/m³ the other unit may have been meant. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    60 kg/m³    | loose bulk density × 16.02 (60 lb/ft³) 1 50
                    18 kg/m³    | none
                    190 kg/m³   | none
                    300 lb/ft³  | loose bulk density ÷ 16.02 (300 kg/m³) 1 15.607
                    299 lb/ft³  | none
                    3000 lb/ft³ | loose bulk density ÷ 16.02 (3000 kg/m³) 1 156.07
                    3001 lb/ft³ | none
                    """)
    void aDensityIsInTheOtherUnitWhereThatCanBe(String density, String slip) {
        Quantity<BulkDensity> written = Amounts.parse(BulkDensity.class, density);
        Sketch day = caughtAt(at(Material.of("salt", written), CHAIN, 4));

        assertThat(tried(day, CHAIN, "density").stream()
                        .map(line -> line.replaceAll(" \\| (\\d) \\|.*loose ([\\d.]+) lb", " $1 $2")))
                .isEqualTo(slip.equals("none") ? List.of() : List.of(slip));
    }

    @Test
    void twoMaterialsAreHardlyInTheSameWrongUnit() {
        Material other = Material.of("sand", Amounts.of(70, SpreadingUnits.KILOGRAM_PER_CUBIC_METER));
        Material salt = Material.of("salt", Amounts.of(60, SpreadingUnits.KILOGRAM_PER_CUBIC_METER));
        Sketch day = day(
                List.of(
                        calibration(0, at(other, CHAIN, 4), net(400), 1000),
                        calibration(15, at(salt, CHAIN, 4), net(400), 1000)),
                List.of());

        assertThat(tried(day, CHAIN, "density")).isEmpty();
    }
}
