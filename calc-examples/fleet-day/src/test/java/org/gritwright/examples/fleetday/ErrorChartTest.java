package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.gritwright.core.document.RejectedDocumentException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The chart; with a time limit, as the chart library has been seen to search for axis labels without end. */
@Timeout(60)
class ErrorChartTest {

    private static ErrorChart chart(Consumer<ObjectNode> change) throws IOException, RejectedDocumentException {
        return new ErrorChart(DemoDay.result(change));
    }

    private static long labels(String svg, String id) {
        return Pattern.compile("<text[^>]*>" + Pattern.quote(id) + "</text")
                .matcher(svg)
                .results()
                .count();
    }

    @Test
    void everyTruckWithAnErrorHasItsLine() throws IOException, RejectedDocumentException {
        ErrorChart chart = chart(day -> {});
        String svg = chart.svg();
        for (String id : "T-01 T-02 T-03 T-04 T-06 T-07 T-08 T-10 T-11 T-12 T-16 T-17 T-18 T-19 T-20".split(" ", -1)) {
            assertThat(labels(svg, id)).as(id).isOne();
        }
        assertThat(chart.missing()).containsExactly("T-05", "T-09", "T-13", "T-14", "T-15");
        assertThat(chart.beyondEdge()).isEmpty();
    }

    @Test
    void itSaysWhatItShowsAndScalesWithItsBox() throws IOException, RejectedDocumentException {
        assertThat(chart(day -> {}).svg())
                .startsWith("<svg")
                .contains("role=\"img\"", "aria-label=\"Calibration errors of 15 trucks;", "viewBox=\"0 0 442 ");
    }

    @Test
    void aWildErrorStandsAtTheEdgeAndIsNamed() throws IOException, RejectedDocumentException {
        ErrorChart chart = chart(day -> {
            ObjectNode wild = (ObjectNode)
                    DemoDay.truck(day, "T-16").get("verificationCatches").get(0);
            wild.put("inForce", "57 lb/rev");
            wild.remove("indicated");
            wild.remove("indicatedStep");
        });
        assertThat(chart.beyondEdge()).singleElement().asString().startsWith("T-16 +893.5");
        assertThat(labels(chart.svg(), "T-16")).isOne();
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e-9 %", "0.003 %", "0.5 %", "7 %", "99 %", "99.999 %"})
    void anyToleranceGivesAChart(String tolerance) throws IOException, RejectedDocumentException {
        assertThat(chart(day -> day.put("tolerance", tolerance)).svg()).matches("(?s)<svg.*</svg\\s*>\\s*");
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 5, 40, 150})
    void anyNumberOfTrucksGetsItsLines(int count) throws IOException, RejectedDocumentException {
        String svg = chart(day -> {
                    ObjectNode one = DemoDay.truck(day, "T-01");
                    var trucks = day.putArray("trucks");
                    IntStream.rangeClosed(1, count)
                            .forEach(number -> trucks.add(one.deepCopy().put("id", "N" + number)));
                })
                .svg();
        IntStream.rangeClosed(1, count)
                .forEach(number -> assertThat(labels(svg, "N" + number)).isOne());
    }

    @Test
    void longIdsAreCut() throws IOException, RejectedDocumentException {
        String svg = chart(day -> {
                    DemoDay.truck(day, "T-01").put("id", "plow and spreader 1");
                    DemoDay.truck(day, "T-02").put("id", "plow and spreader 2");
                })
                .svg();
        assertThat(labels(svg, "plow and s…")).isEqualTo(2);
    }
}
