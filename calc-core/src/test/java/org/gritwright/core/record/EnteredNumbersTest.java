package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.metering.BuiltInTypes;

/** A number that can't be refuses its truck by name, and none stops a day. */
@Tag("jackson")
class EnteredNumbersTest {
    private static final FleetAssessor ASSESSOR = FleetAssessor.of(BuiltInTypes.registry());

    private static final String TRUCK = """
            {"id": "T-1",
             "conveyor": {"type": "drag-chain", "version": 1, "parameters": {"chainPitch": "2.609 in", "teeth": "8"}},
             "gate": {"type": "sliding-gate", "version": 1, "parameters": {"width": "20 in"}},
             "pulsesPerRevolution": "60 pulse/rev", "gearRatio": "1", "gateReading": "0.1 in",
             "inForce": [{"value": "36.31 lb/rev", "displayStep": "0.01 lb/rev", "since": "2026-09-28", "material": "salt",
               "setting": "2.5 in"}],
             "calibrationCatches": [
               {"at": "2026-10-19T08:00-05:00", "material": "salt", "setting": "2.5 in", "scale": "S",
                "containers": [{"container": "box", "gross": "351.6 lb", "tare": "61.2 lb"}],
                "counted": {"pulses": "481 pulse"}, "primed": true, "coasting": "in-both",
                "conditions": {"engineSpeed": "1500 rev/min", "oilTemperature": "120 °F"}},
               {"at": "2026-10-19T08:15-05:00", "material": "salt", "setting": "2 in", "scale": "S",
                "containers": [{"container": "box", "gross": "322.4 lb", "tare": "61.4 lb"}],
                "counted": {"start": "100 pulse", "stop": "643 pulse", "modulus": "10000 pulse"}, "primed": true,
                "coasting": "in-both"},
               {"at": "2026-10-19T08:30-05:00", "material": "salt", "setting": "3 in", "scale": "S",
                "containers": [{"container": "box", "gross": "491.9 lb", "tare": "61.3 lb"}],
                "counted": {"revolutions": "10 rev", "standardUncertainty": "0.1 rev"}, "primed": true,
                "coasting": "in-both"}],
             "verificationCatches": [
               {"at": "2026-10-19T09:00-05:00", "material": "salt", "setting": "2.5 in", "scale": "S",
                "containers": [{"container": "box", "gross": "394.2 lb", "tare": "61.3 lb"}],
                "counted": {"pulses": "551 pulse"}, "inForce": "36.31 lb/rev",
                "targetRate": "400 lb/mi", "testSpeed": "20 mi/h", "runTime": "150 s", "indicated": "333 lb",
                "indicatedStep": "1 lb"},
               {"at": "2026-10-19T09:30-05:00", "material": "salt", "setting": "2.5 in", "scale": "S",
                "containers": [{"container": "box", "gross": "394.3 lb", "tare": "61.3 lb"}],
                "counted": {"shaftSpeed": "30 rev/min", "time": "18 s"}, "inForce": "36.31 lb/rev",
                "targetLaneRate": "400 lb/lane-mi", "lanes": "1 lane", "testSpeed": "20 mi/h", "testDistance": "0.8 mi"}],
             "roadSpeed": {"on": "2026-10-19", "inForce": "13000 pulse/mi",
               "runs": [{"course": "1 mi", "pulses": "13010 pulse"}, {"course": "1 mi", "pulses": "13000 pulse"},
                 {"course": "1 mi", "pulses": "12990 pulse"}]}}""";

    private static final String DAY = """
            {"format": "gritwright/fleet-day", "formatVersion": 2, "day": "2026-10-19", "seasonStart": "2026-11-01",
             "tolerance": "4 %", "decisionRule": {"rule": "guarded", "risk": "5 %"},
             "scales": [{"id": "S", "capacity": "2000 lb", "division": "0.1 lb", "accuracy": "0.1 %",
               "checks": [{"on": "2026-10-19", "testWeight": "300 lb", "reading": "300.1 lb"}]}, {"id": "S2", "capacity": "2000 lb", "division": "0.1 lb"}],
             "materials": [{"name": "salt", "looseBulkDensity": "75 lb/ft³", "grainDiameter": "4 mm"}, {"name": "salt2",
               "looseBulkDensity": "75 lb/ft³"}], "trucks": [TRUCKS]}""";

    private static final String SOUND =
            TRUCK.replace("T-1", "T-2").replace("\"S\"", "\"S2\"").replace("\"salt\"", "\"salt2\"");

    private static final Pattern QUANTITY = Pattern.compile("\"([0-9][0-9.]*)(| (?!%)[^\"0-9][^\"]*)\"(?=[,}])");

    private static FleetDay day(String truck) throws IOException, RejectedDocumentException {
        return DocumentLawsTest.read(Document.FLEET_DAY, DAY.replace("TRUCKS", truck + "," + SOUND));
    }

    private static FleetDay dayWith(String part, String instead) throws IOException, RejectedDocumentException {
        String whole = DAY.replace("TRUCKS", TRUCK + "," + SOUND);
        assertThat(whole).contains(part);
        return DocumentLawsTest.read(
                Document.FLEET_DAY,
                whole.substring(0, whole.indexOf(part))
                        + instead
                        + whole.substring(whole.indexOf(part) + part.length()));
    }

    private static void assertRefused(String part, String instead, String refusal)
            throws IOException, RejectedDocumentException {
        List<TruckAssessment> trucks = ASSESSOR.assess(dayWith(part, instead));
        assertThat(trucks.get(0).refusals()).extracting(Refusal::toString).contains(refusal);
        assertThat(trucks.get(1).isRefused()).isFalse();
    }

    @Example
    void whatIsSoundIsNotRefused() throws IOException, RejectedDocumentException {
        assertThat(ASSESSOR.assess(day(TRUCK)))
                .allSatisfy(truck -> assertThat(truck.refusals()).isEmpty());
    }

    @Example
    void aNumberThatCanNotBeIsRefusedWhereItStandsWithItsRange() throws IOException, RejectedDocumentException {
        assertRefused(
                "\"revolutions\": \"10 rev\"",
                "\"revolutions\": \"1e-17 rev\"",
                "/trucks/0/calibrationCatches/2/counted/revolutions: revolutions must be within 0.000001 rev to"
                        + " 1000000000 rev: 1e-17 rev");
        assertRefused(
                "\"setting\": \"3 in\"",
                "\"setting\": \"1e-200 in\"",
                "/trucks/0/calibrationCatches/2/setting: setting must be within 0.001 mm to 1000 km: 1e-200 in");
        assertRefused(
                "481 pulse",
                "1e300 pulse",
                "/trucks/0/calibrationCatches/0/counted/pulses: pulses must be within 1 pulse to 1000000000000 pulse:"
                        + " 1e300 pulse");
        assertRefused(
                "\"runTime\": \"150 s\"",
                "\"runTime\": \"9e-305 s\"",
                "/trucks/0/verificationCatches/0/runTime: run time must be within 0.01 s to 1000 h: 9e-305 s");
        assertRefused(
                "400 lb/lane-mi",
                "4e99 lb/lane-mi",
                "/trucks/0/verificationCatches/1/targetLaneRate: target lane rate must be within 0.001 kg/lane-km to"
                        + " 1000000 kg/lane-km: 4e99 lb/lane-mi");
        assertRefused(
                "\"gearRatio\": \"1\"",
                "\"gearRatio\": \"1e5\"",
                "/trucks/0/gearRatio: gear ratio must be within 0.001 to 1000: 100000");
        assertRefused(
                "120 °F",
                "-500 °F",
                "/trucks/0/calibrationCatches/0/conditions/oilTemperature: oil temperature must be within -100 °C to"
                        + " 300 °C: -500 °F");
        assertRefused(
                "\"value\": \"36.31 lb/rev\"",
                "\"value\": \"5e-324 lb/rev\"",
                "/trucks/0/inForce/0/value: value must be within 0.000001 kg/rev to 100000 kg/rev: 5e-324 lb/rev");
        assertRefused(
                "\"gross\": \"351.6 lb\"",
                "\"gross\": \"1.7e308 lb\"",
                "/trucks/0/calibrationCatches/0/containers/0/gross: gross must be within 0.001 g to 1000 t: 1.7e308 lb");
    }

    @Example
    void aScaleOrMaterialThatCanNotBeRefusesThoseTrucksThatNameIt() throws IOException, RejectedDocumentException {
        assertRefused(
                "75 lb/ft³",
                "1e250 lb/ft³",
                "/materials/0/looseBulkDensity: loose bulk density must be within 1 kg/m³ to 30000 kg/m³: 1e250 lb/ft³");
        assertRefused(
                "\"testWeight\": \"300 lb\"",
                "\"testWeight\": \"3e-90 lb\"",
                "/scales/0/checks/0/testWeight: test weight must be within 0.001 g to 1000 t: 3e-90 lb");
    }

    /** One or more of the first truck's numbers, at any magnitude; what is refused by the reader is left out. */
    @Property(tries = 200)
    void whateverNumbersAreEnteredOtherTrucksAreComputedAndAllRecordsAreWritten(@ForAll Random random)
            throws IOException {
        List<MatchResult> numbers =
                new ArrayList<>(QUANTITY.matcher(TRUCK).results().toList());
        assertThat(numbers).hasSizeGreaterThan(40);
        StringBuilder truck = new StringBuilder(TRUCK);
        int chosen = 1 + random.nextInt(3);
        List<Integer> places = random.ints(0, numbers.size())
                .distinct()
                .limit(chosen)
                .boxed()
                .sorted((a, b) -> b - a)
                .toList();
        for (int place : places) {
            MatchResult number = numbers.get(place);
            truck.replace(number.start(1), number.end(1), any(random, number.group(1)));
        }
        FleetDay day;
        try {
            day = day(truck.toString());
        } catch (RejectedDocumentException e) {
            return;
        }
        List<TruckAssessment> trucks = ASSESSOR.assess(day);
        assertThat(trucks.get(1).isRefused()).as("%s", truck).isFalse();
        for (TruckAssessment one : trucks) {
            String text = Document.CALIBRATION_RECORD.toText(CalibrationRecord.of(day, one));
            assertThat(text).doesNotContain("NaN", "Infinity");
        }
    }

    private static String any(Random random, String number) {
        double value = Double.parseDouble(number);
        return switch (random.nextInt(5)) {
            case 0 -> "0";
            case 1 -> "1e" + (random.nextInt(632) - 323);
            case 2 -> "1.7e308";
            case 3 -> "5e-324";
            // Near the borders of what is accepted.
            default -> String.valueOf(value) + "e" + (random.nextInt(21) - 10);
        };
    }
}
