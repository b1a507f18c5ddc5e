package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A worker needs no spreader type: what it gets names none. */
class ShippedTest {
    private static final String PLUGIN = "org.gritwright.examples.spreaderplugin";
    private static final String OF_TYPES = "org.gritwright.core.metering";

    @TempDir
    private Path folder;

    @Test
    void noTypeIsInWhatIsShipped() throws Exception {
        Map<String, TruckSetup> setups = Fixtures.setups(Fixtures.records(folder));
        String shipped = bytes(new TreeMap<>(setups));
        assertThat(shipped)
                .contains("K-05", "org.gritwright.core.telemetry.RowEvaluator")
                .doesNotContain(PLUGIN, OF_TYPES);
    }

    /** Of the metering that was calibrated the same can't be said: so the test above would notice. */
    @Test
    void theMeteringItselfNamesItsType() throws Exception {
        var day = InventedFleet.days().get(0);
        var truck = FleetAssessor.of(SeasonCommand.types()).assess(day).stream()
                .filter(one -> one.truck().id().equals("K-05"))
                .findFirst()
                .orElseThrow();
        assertThat(bytes(truck.inForceAfter().get(0).point().metering())).contains(PLUGIN, OF_TYPES);
    }

    private static String bytes(Object object) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(object);
        }
        return bytes.toString(StandardCharsets.ISO_8859_1);
    }
}
