package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;
import org.gritwright.core.document.RejectedDocumentException;
import org.junit.jupiter.api.Test;

/** Instructions for days that the demo fleet doesn't show. */
class InstructionTest {

    private static TruckResult truck(String id, Consumer<ObjectNode> change)
            throws IOException, RejectedDocumentException {
        return DemoDay.result(day -> change.accept(DemoDay.only(day, id)))
                .trucks()
                .get(0);
    }

    /** The display took the value; the catch after that was not counted, so it proves nothing about it. */
    @Test
    void anEnteredCorrectionIsToBeConfirmed() throws IOException, RejectedDocumentException {
        TruckResult truck = truck("T-04", t -> {
            ObjectNode later = (ObjectNode) t.get("verificationCatches").get(1);
            later.remove(List.of("counted", "indicated", "indicatedStep"));
        });
        assertThat(truck.instruction().text()).isEqualTo("Confirm 4.83 lb/rev with an independent catch");
        assertThat(truck.instruction().reasons())
                .containsExactly("The corrected calibration is unconfirmed until an independent catch passes.");
    }

    @Test
    void aCorrectionNamesItsMaterialWhereTheTruckHasSeveral() throws IOException, RejectedDocumentException {
        TruckResult truck = truck("T-11", t -> {
            ObjectNode earlier = t.get("verificationCatches").get(0).deepCopy();
            earlier.put("at", "2026-10-19T06:00:00-05:00")
                    .put("material", "sand-salt mix")
                    .put("inForce", "5.6 lb/rev")
                    .remove(List.of("indicated", "indicatedStep"));
            t.withArray("verificationCatches").insert(0, earlier);
        });
        assertThat(truck.instruction().text())
                .isEqualTo(
                        "Enter 5.68 lb/rev for road salt in slot 1 in place of 5.35 lb/rev, read it back, catch again");
    }

    @Test
    void aCalibrationWithoutVerificationSaysWhatTheDisplayShouldHold() throws IOException, RejectedDocumentException {
        TruckResult truck = truck("T-01", t -> t.remove("verificationCatches"));
        assertThat(truck.instruction().text())
                .isEqualTo("Make sure the display holds 6.56 lb/rev, then: Make a verification catch");
        TruckResult withoutStep = truck("T-01", t -> {
            t.remove("verificationCatches");
            t.remove("inForce");
        });
        assertThat(withoutStep.instruction().text())
                .isEqualTo("Make sure the display holds 6.564 lb/rev, then: Make a verification catch");
        assertThat(withoutStep.massPerRevolution()).isEmpty();
    }

    @Test
    void severalGateOpeningsAreToldApart() throws IOException, RejectedDocumentException {
        TruckResult truck = truck("T-01", t -> {
            t.remove("verificationCatches");
            ((ObjectNode) t.get("calibrationCatches").get(0)).put("setting", "2.3 in");
        });
        assertThat(truck.instruction().text())
                .isEqualTo("Make sure the display holds 6.68 lb/rev for road salt at 2.3 in, 6.51 lb/rev for road salt"
                        + " at 2.5 in, then: Make a verification catch (road salt at 2.3 in)");
    }

    @Test
    void eachTaskNamesItsGateOpeningInReportAndTable() throws IOException, RejectedDocumentException {
        FleetResult result = DemoDay.result(day -> {
            // A tolerance that the catches at 2.5 in can't show, and that the delivery of 253.1 of 260 lb misses.
            day.put("tolerance", "2 %");
            ObjectNode truck = DemoDay.only(day, "T-01");
            ObjectNode wider = truck.get("calibrationCatches").get(0).deepCopy();
            truck.withArray("calibrationCatches")
                    .insert(0, wider.put("at", "2026-10-19T07:00:00-05:00").put("setting", "3 in"));
        });
        TruckResult truck = result.trucks().get(0);
        assertThat(truck.instruction().text()).endsWith(" like the last (road salt at 2.5 in)");
        assertThat(TruckSheet.of(truck, 1).then())
                .containsExactly(
                        "Check start-up, valve and speed limits: road salt at 2.5 in",
                        "Make a verification catch: road salt at 3 in");
        assertThat(FleetCsv.text(result)).contains("; Make a verification catch: road salt at 3 in");
    }

    @Test
    void aRoadSpeedValueWithDecimalsIsMendedWithDecimals() throws IOException, RejectedDocumentException {
        TruckResult truck = truck("T-10", t -> ((ObjectNode) t.get("roadSpeed")).put("inForce", "8.2 pulse/m"));
        assertThat(truck.instruction().text())
                .isEqualTo("Enter 7.6445 pulse/m in place of 8.2 pulse/m, drive the course again");
    }

    @Test
    void aRefusedSensorLeavesTheMassPerRevolutionOpen() throws IOException, RejectedDocumentException {
        TruckResult truck = truck("T-12", t -> t.put("pulsesPerRevolution", "0 pulse/rev"));
        assertThat(truck.metering().text()).isEqualTo("? can't tell");
        assertThat(truck.roadSpeed().text()).isEqualTo("? can't tell");
        assertThat(truck.massPerRevolution()).isEmpty();
        assertThat(truck.display().asFound()).isPresent();
    }
}
