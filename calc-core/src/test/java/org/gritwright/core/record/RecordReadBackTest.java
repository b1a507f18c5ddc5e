package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.Material;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;

/** Whatever day is read, each truck's record can be read back. */
@Tag("jackson")
class RecordReadBackTest {
    private static final FleetAssessor ASSESSOR = FleetAssessor.of(BuiltInTypes.registry());

    @Provide
    Arbitrary<FleetDay> fleetDays() {
        return FleetDays.any();
    }

    /** As far as a day goes through the reader: that is what accepted means. */
    private static List<CalibrationRecord> records(FleetDay day) throws IOException, RejectedDocumentException {
        FleetDay read = DocumentLawsTest.read(Document.FLEET_DAY, Document.FLEET_DAY.toText(day));
        return ASSESSOR.assess(read).stream()
                .map(truck -> CalibrationRecord.of(read, truck))
                .toList();
    }

    private static String assertReadBack(CalibrationRecord record) throws IOException, RejectedDocumentException {
        String text = Document.CALIBRATION_RECORD.toText(record);
        assertThat(DocumentLawsTest.read(Document.CALIBRATION_RECORD, text)).isEqualTo(record);
        return text;
    }

    @Property(tries = 150, edgeCases = EdgeCasesMode.NONE)
    void everyRecordOfAnyDayIsReadBack(@ForAll("fleetDays") FleetDay day)
            throws IOException, RejectedDocumentException {
        for (CalibrationRecord record : records(day)) {
            assertReadBack(record);
        }
    }

    /** Sound trucks and such with slips, all of whose names are as long as names can be. */
    @Property(tries = 40, edgeCases = EdgeCasesMode.NONE)
    void everyRecordOfADayOfLongNamesIsReadBack(@ForAll Random random) throws IOException, RejectedDocumentException {
        int catches = 1 + random.nextInt(12);
        TruckDay truck = with(
                with(
                        idle("T" + "x".repeat(199)),
                        IntStream.range(0, catches)
                                .mapToObj(i -> calibrationCatch(1 + i, 1 + random.nextInt(4)))
                                .map(one -> new CalibrationCatchEntry(
                                        slipped(one.entry(), random), one.primed(), one.coasting()))
                                .toArray(CalibrationCatchEntry[]::new)),
                IntStream.range(0, random.nextInt(4))
                        .mapToObj(i ->
                                verificationCatch(15 + i, random.nextBoolean() ? "5.2 lb/rev" : "6 lb/rev", 120, 57.7))
                        .toArray(VerificationCatchEntry[]::new));
        for (CalibrationRecord record : records(Trucks.day(truck, idle("T-2")))) {
            assertReadBack(record);
        }
    }

    private static CatchEntry slipped(CatchEntry entry, Random random) {
        WeighingEntry weighing = entry.containers().get(0);
        double gross = weighing.gross().getValue().doubleValue();
        double times = List.of(1.0, 1.0, 1.0, 10.0, 0.1, 2.0).get(random.nextInt(6));
        return new CatchEntry(
                entry.at(),
                Optional.of("p".repeat(200)),
                entry.scale(),
                List.of(new WeighingEntry(
                        "c".repeat(200), Amounts.of(gross * times, SpreadingUnits.POUND), weighing.tare())),
                Optional.empty(),
                Optional.empty(),
                entry.counted(),
                entry.setting(),
                entry.material(),
                entry.conditions(),
                Optional.of("n".repeat(10_000)));
    }

    @Example
    void asMuchAsATruckMayHoldIsReadBack() throws IOException, RejectedDocumentException {
        TruckDay truck = with(
                with(
                        idle("T-1"),
                        IntStream.range(0, 1000)
                                .mapToObj(i -> calibrationCatch(1 + i % 20, 1 + i / 500.0))
                                .toArray(CalibrationCatchEntry[]::new)),
                IntStream.range(0, 1000)
                        .mapToObj(i -> verificationCatch(1 + i % 20, "5.2 lb/rev", 120, 57.7))
                        .toArray(VerificationCatchEntry[]::new));
        List<CalibrationRecord> records = records(Trucks.day(truck));

        assertThat(records.get(0).refusals()).isEmpty();
        assertReadBack(records.get(0));
    }

    @Example
    void aRecordHoldsOnlyWhatItsTruckNames() throws IOException, RejectedDocumentException {
        FleetDay one = Trucks.day(with(idle("T-1"), calibrationCatch(8, 2)), idle("T-2"));
        List<Scale> scales = new ArrayList<>(one.scales());
        List<Material> materials = new ArrayList<>(one.materials());
        for (int i = 0; i < 2000; i++) {
            scales.add(
                    Scale.of("S" + i, Amounts.of(1000, SpreadingUnits.POUND), Amounts.of(0.5, SpreadingUnits.POUND)));
            materials.add(Material.of("M" + i, Amounts.of(78, SpreadingUnits.POUND_PER_CUBIC_FOOT)));
        }
        FleetDay many = new FleetDay(
                one.day(),
                one.seasonStart(),
                one.tolerance(),
                one.decisionRule(),
                one.allowances(),
                one.site(),
                one.technician(),
                scales,
                List.of(),
                materials,
                one.plan(),
                one.routes(),
                one.trucks());
        List<CalibrationRecord> records = records(many);

        assertThat(records.get(0).entered().scales()).isEqualTo(one.scales());
        assertThat(records.get(0).entered().materials()).isEqualTo(one.materials());
        assertThat(records.get(1).entered().scales()).isEmpty();
        assertThat(assertReadBack(records.get(0))).hasSizeLessThan(20_000);
        TruckAssessment again = ASSESSOR.assess(records.get(0).entered()).get(0);
        assertThat(CalibrationRecord.of(records.get(0).entered(), again)).isEqualTo(records.get(0));
    }

    @Example
    void whatCouldNotBeReadBackIsNotWritten() {
        FleetDay day = Trucks.day(idle("T-1"));
        FleetDay longNote = Trucks.day(idle("T-1").notes("n".repeat(10_001)));
        FleetDay longName = Trucks.day(idle("T".repeat(201)));

        assertThat(Document.FLEET_DAY.toText(day)).isNotEmpty();
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> Document.FLEET_DAY.toText(longNote))
                .withMessage("document must be of at most 10000 characters a text: a text of 10001");
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> Document.FLEET_DAY.toText(longName))
                .withMessage("name must be at most 200 characters: 201 characters");
    }
}
