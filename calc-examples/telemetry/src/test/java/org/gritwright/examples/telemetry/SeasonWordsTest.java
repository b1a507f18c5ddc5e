package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.gritwright.core.telemetry.PieceAxis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SeasonWordsTest {
    @TempDir
    private Path folder;

    private static List<String> told(Map<String, TruckSeason> seasons, Map<String, TruckSetup> setups) {
        StringWriter text = new StringWriter();
        new SeasonWords(new PrintWriter(text, true), Fixtures.OPTIONS)
                .tell(Fixtures.summary(seasons, setups), "out/run-0001");
        return text.toString().lines().toList();
    }

    @Test
    void whatWasFoundIsToldWithItsUnits() throws Exception {
        Map<String, TruckSetup> setups = Fixtures.setups(Fixtures.records(folder));
        List<String> told = told(Fixtures.plainFleet(setups), setups);
        assertThat(told)
                .anyMatch(line -> line.matches("Mill Road +[0-9,]+ \\+/-.* %   [0-9]+ of 250 wanted"))
                .anyMatch(line -> line.matches("no road is named +[0-9,]+ \\+/- +[0-9]+"))
                .anyMatch(line -> line.matches("K-03 wetted what it laid with [0-9.]+ US gal \\+/- [0-9.]+ US gal"
                        + " \\(95 %\\): 6\\.[45][0-9] US gal per short ton, which is 3[45]\\.[0-9] % less than the 10.00"
                        + " that its route asks for\\."))
                .anyMatch(line -> line.matches(" +[0-9]+  shaft: no such setting \\(K-07\\)"))
                .anyMatch(line -> line.endsWith("where the rate was at most 10 % off its target."))
                .contains("The rest is in out/run-0001")
                .noneMatch(line -> line.contains("NaN"));
    }

    @Test
    void whereNoRowNamesARoadThatIsTold() throws Exception {
        Map<String, TruckSetup> setups = Fixtures.setups(Fixtures.records(folder));
        TruckPass pass =
                new TruckPass(setups.get("K-06"), PieceAxis.everyLength(Fixtures.OPTIONS.piece()), new Buffers());
        for (InventedRow row : Fixtures.trips(Fixtures.truck("K-06")).next()) {
            pass.add(
                    row.millis(),
                    row.shaftPulses(),
                    row.roadPulses(),
                    row.gateInches(),
                    0,
                    row.mode(),
                    pass.road(" "),
                    BadRow.NO_READING);
        }
        assertThat(told(Map.of("K-06", pass.finish()), setups))
                .contains("No row names a road, so that there is nothing by roads.");
    }
}
