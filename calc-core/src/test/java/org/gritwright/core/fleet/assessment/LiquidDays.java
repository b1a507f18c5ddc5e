package org.gritwright.core.fleet.assessment;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;

/** Invented days of one truck that sprays, and of tanks, as they are written down. */
final class LiquidDays {
    /** Of salt brine, proven, with a checked road speed: nothing is to be done on it. */
    static final String SPRAYER = """
            {"id": "A-1", BOOM "flowMeter": {"type": "k-factor", "version": 1, "parameters": {"kFactor": "600 pulse/gal"}},
             "inForce": [{"value": "600 pulse/gal", "displayStep": "1 pulse/gal", "since": "2026-10-01", "material": "brine"}],
             "calibrationCatches": [CATCH(9, "20 gal", "12000 pulse"), CATCH(10, "20 gal", "12010 pulse"), CATCH(11, "20 gal", "11995 pulse")],
             "verificationCatches": [{"at": "2026-10-19T12:00:00-04:00", "material": "brine",
               "read": {"container": "M", "fills": ["20 gal"]}, "counted": {"pulses": "12000 pulse"}, "inForce": "600 pulse/gal",
               "targetRate": "40 gal/mi", "testSpeed": "30 mi/h", "runTime": "60 s"}],
             "roadSpeed": {"on": "2026-10-19", "inForce": "12600 pulse/mi", "runs": [{"course": "1 mi", "pulses": "12600 pulse"},
               {"course": "1 mi", "pulses": "12601 pulse"}, {"course": "1 mi", "pulses": "12599 pulse"}]}}""".replaceAll(
                    "CATCH\\((\\d+), (\"[^\"]+\"), (\"[^\"]+\")\\)",
                    "{\"at\": \"2026-10-19T$1:00:00-04:00\", \"material\": \"brine\", \"read\": {\"container\": \"M\", \"fills\": [$2]},"
                            + " \"counted\": {\"pulses\": $3}, \"primed\": true, \"coasting\": \"in-both\"}")
            .replace("T9:", "T09:");

    private LiquidDays() {}

    static String nozzle(String section, String nozzle, String caught) {
        return """
                {"section": "%s", "nozzle": "%s", "caught": "%s", "division": "1 fl oz", "time": "30 s", "timeHalfWidth": "0.3 s"}""".formatted(section, nozzle, caught);
    }

    static FleetDay day(String boom, String... tanks) {
        return read("""
                {"format": "gritwright/fleet-day", "formatVersion": 2, "day": "2026-10-19", "seasonStart": "2026-11-01",
                 "tolerance": "4 %%", "decisionRule": {"rule": "guarded", "risk": "5 %%"},
                 "allowances": {"repeatability": {"relativeDeviation": "0.2 %%"}}, "scales": [],
                 "graduates": [{"id": "M", "capacity": "30 gal", "division": "0.05 gal", "tolerance": "0.05 gal"}],
                 "materials": [{"name": "brine", "density": "9.82 lb/gal"}, {"name": "calcium", "density": "10.9 lb/gal"},
                               {"name": "salt", "looseBulkDensity": "78 lb/ft³"}],
                 "tanks": [%s], "trucks": [%s, %s]}""".formatted(
                        String.join(", ", tanks),
                        SPRAYER.replace("BOOM ", boom.isEmpty() ? "" : "\"boom\": " + boom + ","),
                        SPRAYER.replace("BOOM ", "").replace("A-1", "A-2")));
    }

    static FleetDay read(String text) {
        try {
            return Document.FLEET_DAY.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        } catch (IOException | RejectedDocumentException e) {
            throw new AssertionError(e.getMessage(), e);
        }
    }

    /** The first of two trucks, the one that has the boom. */
    static TruckAssessment withBoom(String boom) {
        return assess(day(boom)).get(0);
    }

    static List<TruckAssessment> assess(FleetDay day) {
        return FleetAssessor.of(BuiltInTypes.registry()).assess(day);
    }

    static List<TankAssessment> tanks(String... tanks) {
        return FleetAssessor.of(BuiltInTypes.registry()).assessTanks(day("", tanks));
    }
}
