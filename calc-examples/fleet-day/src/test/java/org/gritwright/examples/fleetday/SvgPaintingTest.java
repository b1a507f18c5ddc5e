package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class SvgPaintingTest {

    /** What is clipped refers to its clip by an id, and an id is looked for in the whole page. */
    private static String clipped(String name) {
        return SvgPainting.of(
                name,
                100,
                50,
                graphics -> {
                    graphics.clip(new Rectangle(10, 10, 20, 20));
                    graphics.drawLine(0, 0, 100, 50);
                },
                "a line & its <clip>");
    }

    private static List<String> ids(String svg) {
        return Pattern.compile("\\bid=\"([^\"]+)\"")
                .matcher(svg)
                .results()
                .map(id -> id.group(1))
                .toList();
    }

    @Test
    void picturesOfOnePageShareNoIds() {
        String one = clipped("one");
        String other = clipped("other");
        List<String> all = new ArrayList<>(ids(one));
        all.addAll(ids(other));
        assertThat(all).hasSizeGreaterThanOrEqualTo(2).doesNotHaveDuplicates();
        assertThat(one).contains("url(#one-clipPath1)", "id=\"one-clipPath1\"").doesNotContain("other");
    }

    @Test
    void itScalesWithItsBoxAndIsDescribed() {
        assertThat(clipped("one"))
                .startsWith("<svg")
                .contains("viewBox=\"0 0 100 50\"", "role=\"img\"", "aria-label=\"a line &amp; its &lt;clip&gt;\"")
                .doesNotContain(" width=\"100\"", " height=\"50\"");
    }

    @Test
    void whatCannotBePaintedIsLeftOutAndTold() {
        List<String> told = new ArrayList<>();
        String nothing = SvgPainting.orNothing(
                () -> {
                    throw new IllegalStateException("no font here");
                },
                told::add);
        assertThat(nothing).isEmpty();
        assertThat(told)
                .containsExactly("The report goes without a chart, which this machine can't draw: no font here");
        assertThat(SvgPainting.orNothing(() -> "<svg/>", told::add)).isEqualTo("<svg/>");
        assertThat(told).hasSize(1);
    }
}
