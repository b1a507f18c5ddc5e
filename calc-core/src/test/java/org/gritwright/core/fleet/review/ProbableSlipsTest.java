package org.gritwright.core.fleet.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.quantity.Length;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * One slip after the other in a day that is right without it. A revolution sweeps 8 × 2.609 in × 20 in × 2.5 in, or 45.3 lb of
 * loose salt of 75 lb/ft³; 36.2 lb are discharged, 80 % of it.
 */
@Tag("jackson")
class ProbableSlipsTest {
    private static final String TRUCK = """
            {"id": "T-1",
             "conveyor": {"type": "drag-chain", "version": 1, "parameters": {"chainPitch": "2.609 in", "teeth": "8"}},
             "gate": {"type": "sliding-gate", "version": 1, "parameters": {"width": "20 in"}},
             "pulsesPerRevolution": "60 pulse/rev",
             "gearRatio": "1",
             "inForce": [{"value": "36.31 lb/rev", "displayStep": "0.01 lb/rev", "since": "2026-09-28", "material": "salt",
               "setting": "2.5 in"}],
             "calibrationCatches": [
               {"at": "2026-10-19T08:00-05:00", "material": "salt", "setting": "2.5 in", "scale": "S",
                "containers": [{"container": "box", "gross": "351.6 lb", "tare": "61.2 lb"}],
                "counted": {"pulses": "481 pulse"}, "primed": true, "coasting": "in-both"},
               {"at": "2026-10-19T08:15-05:00", "material": "salt", "setting": "2.5 in", "scale": "S",
                "containers": [{"container": "box", "gross": "388.4 lb", "tare": "61.4 lb"}],
                "counted": {"pulses": "543 pulse"}, "primed": true, "coasting": "in-both"},
               {"at": "2026-10-19T08:30-05:00", "material": "salt", "setting": "2.5 in", "scale": "S",
                "containers": [{"container": "box", "gross": "421.9 lb", "tare": "61.3 lb"}],
                "counted": {"pulses": "597 pulse"}, "primed": true, "coasting": "in-both"}],
             "verificationCatches": [
               {"at": "2026-10-19T09:00-05:00", "material": "salt", "setting": "2.5 in", "scale": "S",
                "containers": [{"container": "box", "gross": "394.2 lb", "tare": "61.3 lb"}],
                "counted": {"pulses": "551 pulse"}, "inForce": "36.31 lb/rev",
                "targetRate": "400 lb/mi", "testSpeed": "20 mi/h", "runTime": "150 s"}]}""";

    private static String day(List<String> trucks) {
        return """
            {"format": "gritwright/fleet-day", "formatVersion": 2, "day": "2026-10-19", "seasonStart": "2026-11-01",
             "tolerance": "4 %", "decisionRule": {"rule": "guarded", "risk": "5 %"},
             "allowances": {"repeatability": {"relativeDeviation": "0.6 %"}},
             "scales": [{"id": "S", "capacity": "2000 lb", "division": "0.1 lb", "accuracy": "0.1 %"}],
             "materials": [{"name": "salt", "looseBulkDensity": "75 lb/ft³"}], "trucks": [TRUCKS]}""".replace("TRUCKS", String.join(",", trucks));
    }

    private static List<TruckAssessment> assess(String document) {
        return assess(document, BuiltInTypes.registry());
    }

    private static List<TruckAssessment> assess(String document, TypeRegistry types) {
        try {
            return FleetAssessor.of(types)
                    .assess(Document.FLEET_DAY.read(
                            new ByteArrayInputStream(document.getBytes(StandardCharsets.UTF_8))));
        } catch (IOException | RejectedDocumentException e) {
            throw new AssertionError(e.toString(), e);
        }
    }

    private static TruckAssessment with(String right, String wrong) {
        String day = day(List.of(TRUCK));
        assertThat(day).contains(right);
        return assess(day.replace(right, wrong)).get(0);
    }

    private static List<String> slips(TruckAssessment truck) {
        return truck.findings().stream()
                .filter(finding -> finding.code() == FindingCode.PROBABLE_SLIPS)
                .map(Finding::sentence)
                .flatMap(sentence ->
                        Stream.of(sentence.replaceFirst(".*first: ", "").split("; ", -1)))
                .toList();
    }

    @Test
    void aSoundDayShowsNone() {
        TruckAssessment truck = assess(day(List.of(TRUCK))).get(0);

        assertThat(slips(truck)).isEmpty();
        assertThat(truck.massProof()).isEqualTo(MassProof.PROVEN);
        assertThat(truck.nextStep()).isEqualTo(NextStep.CHECK_ROAD_SPEED);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    "gross": "388.4 lb"           | "gross": "338.4 lb"          | two digits in the gross mass of box swapped (383.4 lb)
                    "gross": "388.4 lb"           | "gross": "884.3 lb"          | none
                    "gross": "351.6 lb", "tare": "61.2 lb" | "gross": "351.6 lb", "tare": "0 lb" | tare forgotten
                    "pulses": "543 pulse"         | "pulses": "603 pulse"        | one turn too many in the count
                    "pulses": "543 pulse"         | "pulses": "1024 pulse"       | counter not reset
                    "pulses": "551 pulse"         | "pulses": "150 pulse"        | the run time written as the count
                    60 pulse/rev                  | 30 pulse/rev                 | pulses per revolution × 2 (60 pulse/rev)
                    60 pulse/rev                  | 120 pulse/rev                | pulses per revolution ÷ 2 (60 pulse/rev)
                    75 lb/ft³                     | 75 kg/m³                     | loose bulk density × 16.02 (75 lb/ft³)
                    "width": "20 in"              | "width": "200 in"            | none
                    "inForce": "36.31 lb/rev"     | "inForce": "33.61 lb/rev"    | value in force not as listed (36.31 lb/rev)
                    """)
    void aSlipIsNamedFirst(String right, String wrong, String words) {
        List<String> slips = slips(with(right, wrong));
        if (words.equals("none")) {
            assertThat(slips).noneMatch(slip -> slip.contains("swapped (388.4"));
        } else {
            assertThat(slips.get(0)).startsWith(words);
        }
    }

    @Test
    void aGateReadInCentimetersIsNamedAndNothingIsBuiltOnIt() {
        String inCentimeters = day(List.of(TRUCK)).replace("\"2.5 in\"", "\"6.35 in\"");
        TruckAssessment truck = assess(inCentimeters).get(0);

        assertThat(slips(truck)).anyMatch(slip -> slip.startsWith("gate opening ÷ 2.54 (2.5 in)"));
        assertThat(truck.massProof()).isNotEqualTo(MassProof.PROVEN);
        assertThat(truck.nextStep()).isIn(NextStep.CHECK_ENTRIES, NextStep.FIND_FAULT);
    }

    @Test
    void massesInKilogramsAreNamedWhereverTheyAre() {
        TruckAssessment truck = with(
                "\"gross\": \"388.4 lb\", \"tare\": \"61.4 lb\"", "\"gross\": \"176.2 lb\", \"tare\": \"27.9 lb\"");

        assertThat(slips(truck).get(0)).startsWith("caught mass read in kilograms and written in pounds");
    }

    @Test
    void aVerificationThatWasMadeElsewhereIsNamed() {
        TruckAssessment truck = with("\"gross\": \"394.2 lb\"", "\"gross\": \"454.8 lb\"");

        assertThat(slips(truck)).anyMatch(slip -> slip.startsWith("verification made with another material"));
    }

    @Test
    void taresOfNoughtAreAskedForUnlessTheScaleWasSetToZeroWithTheContainersOnIt() {
        String untared = TRUCK.replaceAll("\"tare\": \"[0-9.]+ lb\"", "\"tare\": \"0 lb\"");
        TruckAssessment asked = assess(day(List.of(untared))).get(0);
        assertThat(asked.nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        assertThat(slips(asked).get(0)).startsWith("tare forgotten");

        TruckAssessment stated = assess(day(List.of(untared.replace(
                        "\"scale\": \"S\",", "\"scale\": \"S\", \"conditions\": {\"scaleZeroed\": true},"))))
                .get(0);
        assertThat(stated.nextStep()).isNotEqualTo(NextStep.CHECK_ENTRIES);
        assertThat(slips(stated)).isEmpty();
    }

    @Test
    void aCatchThatTwoSlipsExplainAsWellNamesBoth() {
        TruckAssessment truck = with("\"teeth\": \"8\"", "\"teeth\": \"16\"");

        assertThat(slips(truck))
                .anyMatch(slip -> slip.startsWith("teeth ÷ 2 (8)"))
                .hasSizeGreaterThan(1);
    }

    /** The masses of two trucks' first tickets change places; the counts stay. */
    /** Before anything is caught, a value in force says how full the conveyor would run. */
    @ParameterizedTest
    @CsvSource({
        "36.31 lb/rev, 363.1 lb/rev, value in force ÷ 10 (36.31 lb/rev)",
        "36.31 lb/rev, 16.47 lb/rev, value in force × 2.205 (36.31 lb/rev)",
        "36.31 lb/rev, 36.31 lb/rev, none"
    })
    void aValueInForceThatDoesNotFitTheEquipmentIsNamedBeforeAnythingIsCaught(String right, String wrong, String slip) {
        String uncaught =
                TRUCK.replaceAll("(?s)calibrationCatches.*", "calibrationCatches\": [], \"verificationCatches\": []}");
        TruckAssessment truck =
                assess(day(List.of(uncaught.replace(right, wrong)))).get(0);

        assertThat(slip.equals("none") ? "none" : String.join("; ", slips(truck)))
                .contains(slip);
        assertThat(slips(truck).isEmpty()).isEqualTo(slip.equals("none"));
        assertThat(truck.nextStep()).isEqualTo(slip.equals("none") ? NextStep.VERIFY : NextStep.CHECK_ENTRIES);
    }

    @Test
    void ticketsOfTwoTrucksThatChangedPlacesAreNamedOnBoth() {
        String other = TRUCK.replace("T-1", "T-2")
                .replace("\"gross\": \"351.6 lb\"", "\"gross\": \"467.3 lb\"")
                .replace("481 pulse", "671 pulse");
        List<TruckAssessment> swapped = assess(day(List.of(
                TRUCK.replace("\"gross\": \"351.6 lb\"", "\"gross\": \"467.3 lb\""),
                other.replace("\"gross\": \"467.3 lb\"", "\"gross\": \"351.6 lb\""))));

        assertThat(slips(swapped.get(0)).get(0)).startsWith("ticket swapped with that of truck T-2");
        assertThat(slips(swapped.get(1)).get(0)).startsWith("ticket swapped with that of truck T-1");
        assertThat(assess(day(List.of(TRUCK, other))))
                .allMatch(truck -> slips(truck).isEmpty());
    }

    /** Six trucks, one of which has a fill that is usual for the type and half of the others' for all that. */
    @Test
    void aFillUnlikeThoseOfTheFleetIsFound() {
        List<String> fleet = IntStream.rangeClosed(1, 6)
                .mapToObj(i -> TRUCK.replace("T-1", "T-" + i))
                .collect(Collectors.toList());
        assertThat(assess(day(fleet)))
                .allMatch(truck -> truck.findings().stream()
                        .noneMatch(finding -> finding.code() == FindingCode.FILL_UNLIKE_FLEET));

        fleet.set(3, fleet.get(3).replace("\"width\": \"20 in\"", "\"width\": \"30 in\""));
        List<TruckAssessment> trucks = assess(day(fleet));

        assertThat(trucks.get(3).findings().stream().map(Finding::sentence))
                .contains(
                        "By the entries the conveyor is filled to 0.5334 of what it can hold, unlike the fleet's 6 trucks of this"
                                + " type with this material, half of which are at 0.8001 or more: check the entries.");
        assertThat(trucks.get(3).nextStep()).isEqualTo(NextStep.CHECK_ENTRIES);
        assertThat(trucks.get(2).nextStep()).isEqualTo(NextStep.CHECK_ROAD_SPEED);
    }

    /** A chain of others that fails on every pitch but the one that it was made for, also where it sweeps. */
    private record Touchy() implements ConveyorType {
        private static final Parameter<Length> PITCH = Parameter.length(
                "chainPitch", Amounts.of(0.01, SpreadingUnits.INCH), Amounts.of(1000, SpreadingUnits.INCH));

        @Override
        public TypeId id() {
            return TypeId.of("example.org/touchy", 1);
        }

        @Override
        public int spiLevel() {
            return Spi.LEVEL;
        }

        @Override
        public List<Parameter<?>> parameters() {
            return List.of(PITCH);
        }

        @Override
        public boolean meteredByGate() {
            return true;
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = given.si(PITCH);
            if (meters > 0.07) {
                throw new IllegalStateException("never made so long");
            }
            return area -> {
                if (meters < 0.06 || area > 0.1) {
                    throw new ArithmeticException("never turned so");
                }
                return 8 * meters * area;
            };
        }
    }

    @Test
    void aTypeThatThrowsWhatItLikesWhereASlipIsTriedStopsNoTruck() {
        String touchy =
                TRUCK.replace("\"drag-chain\"", "\"example.org/touchy\"").replace(", \"teeth\": \"8\"", "");
        TypeRegistry types = BuiltInTypes.registry().with(List.of(new Touchy()), List.of());

        assertThat(slips(assess(day(List.of(touchy)).replace("60 pulse/rev", "30 pulse/rev"), types)
                        .get(0)))
                .first()
                .asString()
                .startsWith("pulses per revolution × 2 (60 pulse/rev)");
    }

    @Test
    void numbersAtTheEndOfWhatANumberCanBeStopNoTruck() {
        List<TruckAssessment> fleet =
                assess(day(List.of(TRUCK.replace("60 pulse/rev", "1e308 pulse/rev"), TRUCK.replace("T-1", "T-2"))));

        assertThat(fleet.get(0).nextStep()).isIn(NextStep.FIX_RECORD, NextStep.FIND_FAULT);
        assertThat(fleet.get(1).isRefused()).isFalse();
        assertThat(fleet.get(1).points()).hasSize(1);
    }
}
