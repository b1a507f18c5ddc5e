package org.gritwright.examples.fleetday;

import java.util.List;
import java.util.stream.Stream;

/**
 * A picture that a template writes as SVG.
 *
 * @param description for who can't see it
 * @param shapes in the order in which they are drawn
 */
record Picture(int width, int height, String description, List<Plot.Shape> shapes, List<Plot.Label> labels) {
    static Picture of(int width, int height, String description, Plot... plots) {
        return new Picture(
                width,
                height,
                description,
                Stream.of(plots).flatMap(plot -> plot.shapes().stream()).toList(),
                Stream.of(plots).flatMap(plot -> plot.labels().stream()).toList());
    }
}
