package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.gritwright.core.season.Flow;

/** A pile's account as flows: what was there or came from the left, what left or remains to the right, each as wide as it is heavy. */
final class FlowPicture {
    private static final int TOP = 26;
    private static final int TALL = 240;

    private static final int LINE = 18;

    private static final int BETWEEN = 4;
    private static final int WORDS = 8;

    private static final int SHORTEST_NAME = 8;

    /** More flows a side are too many to read; the table has them all. */
    private static final int MOST = 24;

    /** More tickets are one flow, beside which what nobody wrote down is seen. */
    private static final int TICKETS = 8;

    /**
     * Where things stand.
     *
     * @param left where flows begin, with their words on its left
     * @param pileFrom where the pile begins
     * @param longest so many letters fit beside a flow
     * @param lines name and mass of a flow stand in so many lines
     */
    private record Layout(int width, int left, int pileFrom, int longest, int lines) {
        static Layout of(Picture.Width width) {
            return switch (width) {
                case WIDE -> new Layout(width.width(), 182, 228, 22, 1);
                case NARROW -> new Layout(width.width(), 114, 136, 13, 2);
            };
        }

        int right() {
            return width - left;
        }

        int pileTo() {
            return width - pileFrom;
        }

        /** So that each flow's words have their own lines. */
        int least() {
            return LINE * lines;
        }

        boolean isNarrow() {
            return lines > 1;
        }
    }

    private final PileSheet sheet;
    private final Layout layout;

    /** What is drawn as one flow. */
    private record Band(String name, String mass, double steps, String look) {}

    FlowPicture(PileSheet sheet, Picture.Width width) {
        this.sheet = sheet;
        layout = Layout.of(width);
    }

    Drawing drawn() {
        List<Band> in = bands(sheet.in());
        List<Band> out = bands(sheet.out());
        double total = in.stream().mapToDouble(Band::steps).sum();
        double scale = total > 0 ? TALL / total : 0;
        double height = Math.max(height(in, scale), height(out, scale));
        Drawing drawing = new Drawing(
                layout.width,
                (int) Math.ceil(TOP + height + 8),
                "Flows of pile " + sheet.pile().id() + ": "
                        + Words.count(sheet.in().size(), "flow") + " from the left and "
                        + Words.count(sheet.out().size(), "flow") + " to the right, "
                        + sheet.rounding().text(sheet.sum()) + " each. The table gives the numbers.");
        double middle = TOP + height / 2;
        side(drawing, in, scale, middle, layout.left, layout.pileFrom, "end", layout.left - WORDS);
        side(drawing, out, scale, middle, layout.right(), layout.pileTo(), "start", layout.right() + WORDS);
        double top = middle - TALL / 2.0;
        drawing.area(
                "pile",
                List.of(new Drawing.Spot(layout.pileFrom, top), new Drawing.Spot(layout.pileTo(), top)),
                List.of(new Drawing.Spot(layout.pileFrom, top + TALL), new Drawing.Spot(layout.pileTo(), top + TALL)));
        drawing.text("middle", layout.width / 2.0, middle, sheet.rounding().number(sheet.sum()));
        drawing.text(
                "middle", layout.width / 2.0, middle + LINE, sheet.rounding().symbol());
        drawing.text("start", 0, 12, "was there or came");
        drawing.text("end", layout.width, 12, "left or remains");
        return drawing;
    }

    /** The lines of a side, many tickets as one. */
    static List<PileSheet.Line> lines(List<PileSheet.Line> all) {
        boolean isMany = all.stream()
                        .filter(line -> line.flow().kind() == Flow.Kind.DELIVERY)
                        .count()
                > TICKETS;
        return isMany ? PileSheet.folded(all) : all;
    }

    private List<Band> bands(List<PileSheet.Line> all) {
        List<PileSheet.Line> lines = lines(all);
        Set<Integer> shown = new HashSet<>(IntStream.range(0, lines.size())
                .boxed()
                .sorted(Comparator.comparing((Integer i) -> !isSupposed(lines.get(i)))
                        .thenComparing(i -> -lines.get(i).adjusted()))
                .limit(lines.size() > MOST ? MOST - 1 : MOST)
                .toList());
        List<Band> bands = new ArrayList<>();
        double rest = 0;
        long printed = 0;
        for (int i = 0; i < lines.size(); i++) {
            PileSheet.Line line = lines.get(i);
            if (shown.contains(i)) {
                String mass = sheet.rounding().text(line.printed());
                bands.add(new Band(
                        shortened(line.name(), mass), mass, line.adjusted(), isSupposed(line) ? "found" : "flow"));
            } else {
                rest += line.adjusted();
                printed += line.printed();
            }
        }
        if (shown.size() < lines.size()) {
            bands.add(new Band(
                    lines.size() - shown.size() + " more", sheet.rounding().text(printed), rest, "flow"));
        }
        return bands;
    }

    private static boolean isSupposed(PileSheet.Line line) {
        return line.flow().kind() == Flow.Kind.FOUND || line.flow().kind() == Flow.Kind.UNEXPLAINED;
    }

    /** At a comma, if there is one, so that no word is cut that the rest makes no sense without. */
    private String shortened(String name, String mass) {
        int most = Math.max(SHORTEST_NAME, layout.longest - (layout.isNarrow() ? 0 : mass.length() + 2));
        if (name.codePointCount(0, name.length()) <= most) {
            return name;
        }
        String start = name.substring(0, name.offsetByCodePoints(0, most - 1));
        int comma = start.lastIndexOf(',');
        return (comma > 0 ? start.substring(0, comma) : start) + "…";
    }

    private double place(Band band, double scale) {
        return Math.max(layout.least(), band.steps * scale + BETWEEN);
    }

    private double height(List<Band> bands, double scale) {
        return Math.max(
                TALL, bands.stream().mapToDouble(band -> place(band, scale)).sum());
    }

    private void side(
            Drawing drawing,
            List<Band> bands,
            double scale,
            double middle,
            double outer,
            double inner,
            String look,
            double words) {
        double place =
                middle - bands.stream().mapToDouble(band -> place(band, scale)).sum() / 2;
        double stacked = middle - TALL / 2.0;
        for (Band band : bands) {
            double center = place + place(band, scale) / 2;
            double half = band.steps * scale / 2;
            double bend = (outer + inner) / 2;
            drawing.shape(
                    band.look,
                    "M" + Drawing.place(outer, center - half)
                            + curve(bend, center - half, stacked, inner)
                            + "L" + Drawing.place(inner, stacked + 2 * half)
                            + curve(bend, stacked + 2 * half, center + half, outer) + "Z");
            if (layout.isNarrow()) {
                drawing.text(look, words, center - LINE / 2.0 + 1, band.name);
                drawing.text(look, words, center + LINE / 2.0 - 1, band.mass);
            } else {
                drawing.text(look, words, center, band.name + ", " + band.mass);
            }
            place += place(band, scale);
            stacked += 2 * half;
        }
    }

    /** A smooth way from one height to another. */
    private static String curve(double bend, double fromY, double toY, double toX) {
        return "C" + Drawing.place(bend, fromY) + " " + Drawing.place(bend, toY) + " " + Drawing.place(toX, toY);
    }
}
