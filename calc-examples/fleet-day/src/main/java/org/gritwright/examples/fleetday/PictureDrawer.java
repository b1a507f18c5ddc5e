package org.gritwright.examples.fleetday;

import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.css.parser.FSRGBColor;
import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CalculatedStyle;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.css.value.FontSpecification;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.render.AbstractOutputDevice;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.PageBox;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.BasicStroke;
import java.awt.geom.AffineTransform;
import java.io.File;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Draws what {@code picture.peb} writes, and no other SVG: shapes by their look, and labels that stay text in the paper's own
 * font. The engine's own way brings a dozen libraries, and draws text with the fonts of the host.
 */
final class PictureDrawer implements SVGDrawer {
    private static final float FONT_SIZE = 13;

    /** Where a line of text stands below its middle, in sizes of the font. */
    private static final double BELOW_MIDDLE = 0.36;

    private static final int VIEW_BOX_NUMBERS = 4;
    private static final double DASH = 4;
    private static final double GAP = 3;
    private static final float MITER_LIMIT = 10;

    /** What the style sheet of the page says for the same names. */
    private enum Look {
        MARK(0x1c2024, 0),
        TOLERANCE(0xe4e7e9, 0),
        BAND(0xc3c8cc, 0),
        STROKE(0x1c2024, 1),
        AXIS(0x7d848a, 1),
        GUIDE(0xc3c8cc, .5),
        DASHED(0x7d848a, 1),
        SOLID(0x1c2024, 1.6);

        private final int color;
        private final double width;

        /** @param width of the line, or 0 to fill the shape */
        Look(int color, double width) {
            this.color = color;
            this.width = width;
        }

        FSRGBColor color() {
            return new FSRGBColor(color);
        }

        BasicStroke stroke(double scale) {
            float[] dashes = {(float) (DASH * scale), (float) (GAP * scale)};
            return new BasicStroke(
                    (float) (width * scale),
                    BasicStroke.CAP_BUTT,
                    BasicStroke.JOIN_MITER,
                    MITER_LIMIT,
                    this == DASHED ? dashes : null,
                    0);
        }

        static Look of(Element shape) {
            for (Look look : values()) {
                if (look.name().equalsIgnoreCase(shape.getAttribute("class"))) {
                    return look;
                }
            }
            throw new IllegalArgumentException("no look of this name: " + shape.getAttribute("class"));
        }
    }

    private final String font;

    /** @param font the family that labels are written in */
    PictureDrawer(String font) {
        this.font = font;
    }

    @Override
    public SVGImage buildSVGImage(
            Element svg, Box box, CssContext context, double width, double height, double dotsPerPixel) {
        String[] viewBox = svg.getAttribute("viewBox").split(" ", VIEW_BOX_NUMBERS);
        double across = Double.parseDouble(viewBox[2]);
        double down = Double.parseDouble(viewBox[3]);
        double scale = width >= 0 ? width / across : dotsPerPixel;
        return new Drawing(svg, across * scale, down * scale, scale);
    }

    private final class Drawing implements SVGImage {
        private final Element svg;
        private final double width;
        private final double height;
        private final double scale;

        Drawing(Element svg, double width, double height, double scale) {
            this.svg = svg;
            this.width = width;
            this.height = height;
            this.scale = scale;
        }

        @Override
        public int getIntrinsicWidth() {
            return (int) Math.round(width);
        }

        @Override
        public int getIntrinsicHeight() {
            return (int) Math.round(height);
        }

        @Override
        public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
            AffineTransform place = new AffineTransform(scale, 0, 0, scale, x, y);
            var strokeBefore = device.getStroke();
            NodeList shapes = svg.getElementsByTagName("path");
            for (int i = 0; i < shapes.getLength(); i++) {
                draw(device, place, (Element) shapes.item(i));
            }
            device.setStroke(strokeBefore);
            NodeList labels = svg.getElementsByTagName("text");
            for (int i = 0; i < labels.getLength(); i++) {
                write(device, context, place, (Element) labels.item(i));
            }
        }

        private void draw(OutputDevice device, AffineTransform place, Element shape) {
            Look look = Look.of(shape);
            var path = place.createTransformedShape(SvgPath.of(shape.getAttribute("d")));
            device.setColor(look.color());
            if (look.width == 0) {
                device.fill(path);
                return;
            }
            device.setStroke(look.stroke(scale));
            device.draw(path);
        }

        private void write(OutputDevice device, RenderingContext context, AffineTransform place, Element label) {
            FontSpecification specification = new FontSpecification();
            specification.families = new String[] {font};
            specification.size = (float) (FONT_SIZE * scale);
            specification.fontWeight = IdentValue.NORMAL;
            specification.fontStyle = IdentValue.NORMAL;
            specification.variant = IdentValue.NORMAL;
            var chosen = context.getFont(specification);
            String text = label.getTextContent();
            double length = context.getTextRenderer().getWidth(context.getFontContext(), chosen, text);
            double down = BELOW_MIDDLE * FONT_SIZE * scale;
            device.setColor(Look.MARK.color());
            device.setFont(chosen);
            ((AbstractOutputDevice) device).setFontSpecification(specification);
            double x = place.getTranslateX() + scale * Double.parseDouble(label.getAttribute("x"));
            double y = place.getTranslateY() + scale * Double.parseDouble(label.getAttribute("y"));
            switch (label.getAttribute("class")) {
                case "start" -> write(device, context, text, x, y + down);
                case "end" -> write(device, context, text, x - length, y + down);
                case "middle" -> write(device, context, text, x - length / 2, y);
                default -> {
                    device.pushTransformLayer(upright(context, x, y));
                    write(device, context, text, x - length / 2, y + down);
                    device.popTransformLayer();
                }
            }
        }

        private static void write(OutputDevice device, RenderingContext context, String text, double x, double y) {
            context.getTextRenderer().drawString(device, text, (float) x, (float) y);
        }

        /** A quarter turn to the left about a place of the document, in the page's own coordinates, which grow upward. */
        private static AffineTransform upright(RenderingContext context, double x, double y) {
            PageBox page = context.getPage();
            double right = x + page.getMarginBorderPadding(context, CalculatedStyle.LEFT);
            double down = y - page.getPaintingTop() + page.getMarginBorderPadding(context, CalculatedStyle.TOP);
            return AffineTransform.getRotateInstance(Math.PI / 2, right, page.getHeight(context) - down);
        }
    }

    @Override
    public void importFontFaceRules(List<FontFaceRule> rules, SharedContext context) {
        // Labels are written in the paper's font.
    }

    @Override
    public void addFontFile(File file, String family, Integer weight, FontStyle style) {
        // As above.
    }

    @Override
    public void close() {
        // Nothing is held open.
    }
}
