package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** The pictures are XML, say what they show and in which unit, and don't rely on color. */
class ChartsTest {
    @TempDir
    private Path folder;

    private static List<String> texts(Drawing drawing, String element) throws Exception {
        StringWriter text = new StringWriter();
        drawing.writeTo(text);
        Document svg = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(text.toString())));
        NodeList found = svg.getElementsByTagName(element);
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            texts.add(
                    element.equals("path")
                            ? found.item(i).getAttributes().getNamedItem("d").getNodeValue()
                            : found.item(i).getTextContent());
        }
        return texts;
    }

    @Test
    void aTripHasItsUnitsItsBandAndWordsOnWhatWasOff() throws Exception {
        Map<String, TruckSetup> setups = Fixtures.setups(Fixtures.records(folder));
        TruckSeason season = Fixtures.plainFleet(setups).get("K-06");
        Drawing drawing =
                new TripChart("K-06", season.target(), season.trips().get(0), 0.1, ZoneOffset.ofHours(-6)).drawing();
        assertThat(texts(drawing, "text"))
                .contains(
                        "K-06: rate laid on the trip that began 23 November 2026, 23:12",
                        "target 250 lb per lane-mile, band ±10 %; 1 lane in a pass; one step is 0.1 mi",
                        "distance, mi",
                        "rate, lb per lane-mile",
                        "below",
                        "above",
                        "nobody knows what was laid");
        // In the legend, and on the road.
        assertThat(texts(drawing, "text").stream().filter("below"::equals)).hasSizeGreaterThan(5);
        assertThat(texts(drawing, "path")).noneMatch(d -> d.contains("NaN") || d.contains("Infinity"));
    }

    @Test
    void theFleetHasABarATruckAndWhatItLaid() throws Exception {
        Map<String, TruckSetup> setups = Fixtures.setups(Fixtures.records(folder));
        Summary summary = Fixtures.summary(Fixtures.plainFleet(setups), setups);
        List<String> texts = texts(SharesChart.ofFleet(summary).drawing(), "text");
        assertThat(texts)
                .contains("K-01", "K-06", "fleet", "share of the way, %", "laid, short tons (95 %)", "within the band")
                .anyMatch(text -> text.matches("[0-9]+\\.[0-9]{2} ± [0-9]+\\.[0-9]{2}, [0-9]+ bad rows"));
    }

    @Test
    void aRoadHasABarOfAllTrucksThatWereOnItAndTheWorstIsFirst() throws Exception {
        Map<String, TruckSetup> setups = Fixtures.setups(Fixtures.records(folder));
        SortedMap<String, RoadTotals> roads =
                Fixtures.roads(Fixtures.plainFleet(setups).values());
        List<String> texts = texts(SharesChart.ofRoads(roads).drawing(), "text");
        assertThat(texts).contains("Ferry Bridge", "share of the way, %").doesNotContain("");
        // The truck whose pump is worn is on Mill Road and never on Alder Road.
        assertThat(texts.indexOf("Mill Road")).isLessThan(texts.indexOf("Alder Road"));
    }
}
