package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.gritwright.core.document.RejectedDocumentException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ErrorChartTest {

    private static ErrorChart chart(Consumer<ObjectNode> change) throws IOException, RejectedDocumentException {
        FleetResult result = DemoDay.result(change);
        return new ErrorChart(result.day(), result.trucks());
    }

    private static List<String> labels(ErrorChart chart) {
        return chart.picture().orElseThrow().labels().stream()
                .map(Plot.Label::text)
                .toList();
    }

    @Test
    void everyTruckWithAnErrorHasItsLine() throws IOException, RejectedDocumentException {
        ErrorChart chart = chart(day -> {});
        for (String id : "T-01 T-02 T-03 T-04 T-06 T-07 T-08 T-10 T-11 T-12 T-16 T-17 T-18 T-19 T-20".split(" ", -1)) {
            assertThat(labels(chart)).containsOnlyOnce(id);
        }
        assertThat(chart.missing()).containsExactly("T-05", "T-09", "T-13", "T-14", "T-15");
        assertThat(chart.beyondEdge()).isEmpty();
    }

    @Test
    void itSaysWhatItShows() throws IOException, RejectedDocumentException {
        Picture picture = chart(day -> {}).picture().orElseThrow();
        assertThat(picture.description()).startsWith("Calibration errors of 15 trucks;");
        assertThat(picture.width()).isEqualTo(442);
    }

    /** One truck, T-11, is outside the tolerance: its mark is the only diamond, below zero and left of the band. */
    @Test
    void marksStandWhereTheirErrorsAreAndSayHowTheyAreJudged() throws IOException, RejectedDocumentException {
        Picture picture = chart(day -> {}).picture().orElseThrow();
        List<String> diamonds = picture.shapes().stream()
                .map(Plot.Shape::d)
                .filter(d -> d.endsWith("m0-6l6 6l-6 6l-6-6z"))
                .toList();
        double leftEdge = picture.shapes().stream()
                .filter(shape -> shape.look().equals("tolerance"))
                .mapToDouble(shape ->
                        Double.parseDouble(shape.d().substring(1, shape.d().indexOf(' '))))
                .findFirst()
                .orElseThrow();
        assertThat(diamonds).singleElement().satisfies(d -> {
            Plot.Label label = picture.labels().stream()
                    .filter(one -> one.text().equals("T-11"))
                    .findFirst()
                    .orElseThrow();
            String[] place = d.substring(1, d.indexOf('m')).split(" ", -1);
            assertThat(Double.parseDouble(place[0])).isLessThan(leftEdge);
            assertThat(Double.parseDouble(place[1])).isCloseTo((double) label.y(), within(0.51));
        });
    }

    /** Whoever sees a line that leaves the band would doubt a mark that says within: both have to say the same. */
    @ParameterizedTest
    @ValueSource(strings = {"1 %", "2 %", "3 %", "4 %", "6 %"})
    void aLineIsAllInTheBandWhereItsMarkSaysWithin(String tolerance) throws IOException, RejectedDocumentException {
        Picture picture =
                chart(day -> day.put("tolerance", tolerance)).picture().orElseThrow();
        List<Double> band = numbers(only(picture, "tolerance").get(0));
        double left = band.get(0);
        double right = band.get(2);
        List<String> lines = only(picture, "solid");
        assertThat(lines).hasSizeBetween(14, 15);
        for (String line : lines) {
            double from = numbers(line).get(0);
            double y = numbers(line).get(1);
            double to = numbers(line).get(2);
            String mark = only(picture, "mark").stream()
                    .filter(d -> numbers(d.substring(0, d.indexOf('m'))).get(1) == y)
                    .findFirst()
                    .orElseThrow();
            boolean inside = from > left - 0.02 && to < right + 0.02;
            boolean beyond = to < left + 0.02 || from > right - 0.02;
            assertThat(mark.contains("a4.5")).as(line).isEqualTo(inside);
            assertThat(mark.endsWith("l6 6l-6 6l-6-6z")).as(line).isEqualTo(beyond);
        }
    }

    private static List<String> only(Picture picture, String look) {
        return picture.shapes().stream()
                .filter(shape -> shape.look().equals(look))
                .map(Plot.Shape::d)
                .toList();
    }

    private static List<Double> numbers(String path) {
        return Pattern.compile("-?\\d+(?:\\.\\d+)?")
                .matcher(path)
                .results()
                .map(number -> Double.parseDouble(number.group()))
                .toList();
    }

    @Test
    void withoutAnErrorThereIsNoPicture() throws IOException, RejectedDocumentException {
        ErrorChart chart = chart(day -> {
            ObjectNode withoutError = DemoDay.truck(day, "T-05");
            day.putArray("trucks").add(withoutError);
        });
        assertThat(chart.picture()).isEmpty();
        assertThat(chart.missing()).containsExactly("T-05");
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
        assertThat(labels(chart)).containsOnlyOnce("T-16");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e-9 %", "0.003 %", "0.5 %", "7 %", "99 %", "99.999 %"})
    void anyToleranceGivesAChart(String tolerance) throws IOException, RejectedDocumentException {
        Picture picture =
                chart(day -> day.put("tolerance", tolerance)).picture().orElseThrow();
        assertThat(picture.labels()).hasSizeBetween(15 + 1 + 5, 15 + 1 + 11);
        assertThat(picture.shapes())
                .noneMatch(shape -> shape.d().contains("N") || shape.d().contains("I"));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 5, 40, 150})
    void anyNumberOfTrucksGetsItsLines(int count) throws IOException, RejectedDocumentException {
        ErrorChart chart = chart(day -> {
            ObjectNode one = DemoDay.truck(day, "T-01");
            var trucks = day.putArray("trucks");
            IntStream.rangeClosed(1, count)
                    .forEach(number -> trucks.add(one.deepCopy().put("id", "N" + number)));
        });
        IntStream.rangeClosed(1, count)
                .forEach(number -> assertThat(labels(chart)).containsOnlyOnce("N" + number));
    }

    @Test
    void longIdsAreCut() throws IOException, RejectedDocumentException {
        ErrorChart chart = chart(day -> {
            DemoDay.truck(day, "T-01").put("id", "plow and spreader 1");
            DemoDay.truck(day, "T-02").put("id", "plow and spreader 2");
        });
        assertThat(labels(chart)).filteredOn("plow and s…"::equals).hasSize(2);
    }
}
