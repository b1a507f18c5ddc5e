package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import org.gritwright.core.document.RejectedDocumentException;
import org.junit.jupiter.api.Test;

class CausesTest {
    private static String causes(String oil, String hopper) throws IOException, RejectedDocumentException {
        FleetResult result = DemoDay.result(day -> {
            ObjectNode truck = DemoDay.only(day, "T-14");
            for (var one : truck.get("calibrationCatches")) {
                ObjectNode conditions = ((ObjectNode) one).putObject("conditions");
                conditions.put("oilTemperature", oil);
                conditions.put("hopperLevel", hopper);
            }
        });
        return result.trucks().get(0).instruction().causes();
    }

    @Test
    void aFaultNamesWhatAMechanicLooksFor() throws IOException, RejectedDocumentException {
        assertThat(causes("104 °F", "70 %"))
                .isEqualTo(
                        "Look for material bridging over the conveyor, a nearly empty hopper, a gate that slipped or was"
                                + " read wrong, cold oil, or a pail that wasn’t emptied, or was weighed twice."
                                + " Nobody enters the hopper: bridged material is loosened from outside, locked out.");
    }

    /** A fault of the hydraulics sends somebody to hot oil. */
    @Test
    void whereSomebodyIsSentCarriesItsCaution() throws IOException, RejectedDocumentException {
        String causes = DemoDay.result(day -> DemoDay.only(day, "T-06"))
                .trucks()
                .get(0)
                .instruction()
                .causes();

        assertThat(causes)
                .startsWith("Look for a slow or limited valve or pump, cold oil, or material bridging")
                .endsWith(" loosened from outside, locked out. Oil is hot and under pressure: no hand near a leak.");
    }

    @Test
    void whatTheConditionsPointToStandsFirst() throws IOException, RejectedDocumentException {
        assertThat(causes("20 °F", "5 %"))
                .isEqualTo("Look for cold oil and a nearly empty hopper, as was written down, and then for material"
                        + " bridging over the conveyor, a gate that slipped or was read wrong, or a pail that wasn’t emptied,"
                        + " or was weighed twice. Nobody enters the hopper: bridged material is loosened from outside,"
                        + " locked out.");
        assertThat(causes("20 °F", "70 %")).startsWith("Look for cold oil, as was written down, and then for material");
    }

    @Test
    void withoutAFaultThereIsNothingToLookFor() {
        assertThat(Causes.sentence(List.of(), false)).isEmpty();
    }
}
