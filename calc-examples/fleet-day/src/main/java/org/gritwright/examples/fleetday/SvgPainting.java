package org.gritwright.examples.fleetday;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.io.StringWriter;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGGraphics2DIOException;
import org.apache.batik.svggen.SVGIDGenerator;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Paints a picture as an SVG element to be set into a page. */
final class SvgPainting {
    private static final String SVG = "http://www.w3.org/2000/svg";

    private SvgPainting() {}

    /**
     * The picture, scaled by its box on the page.
     *
     * @param name a name that no other picture of the page has
     * @param painter paints it
     * @param description what a person who can't see it is told
     */
    static String of(String name, int width, int height, Consumer<Graphics2D> painter, String description) {
        SVGGraphics2D graphics = new SVGGraphics2D(context(name), false);
        graphics.setSVGCanvasSize(new Dimension(width, height));
        painter.accept(graphics);
        Element root = graphics.getRoot();
        withoutSharedIds(root);
        root.setAttributeNS(null, "viewBox", "0 0 " + width + " " + height);
        root.removeAttributeNS(null, "width");
        root.removeAttributeNS(null, "height");
        root.setAttributeNS(null, "role", "img");
        root.setAttributeNS(null, "aria-label", description);
        StringWriter written = new StringWriter();
        try {
            graphics.stream(root, written, true, false);
        } catch (SVGGraphics2DIOException e) {
            throw new IllegalStateException("memory can't fail to be written", e);
        }
        // In a page the picture stands without the XML declaration and document type before it.
        String text = written.toString();
        return text.substring(text.indexOf("<svg"));
    }

    /** A report without a picture is better than none: a machine without any font can't draw one. */
    static String orNothing(Supplier<String> picture, Consumer<String> progress) {
        try {
            return picture.get();
        } catch (RuntimeException | InternalError | LinkageError failure) {
            progress.accept(
                    "The report goes without a chart, which this machine can't draw: " + Failure.words(failure));
            return "";
        }
    }

    /** All pictures of a page share one space of ids: what one clips by must not be found in another. */
    private static SVGGeneratorContext context(String name) {
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(emptyDocument());
        context.setIDGenerator(new SVGIDGenerator() {
            @Override
            public String generateID(String prefix) {
                return name + "-" + super.generateID(prefix);
            }
        });
        return context;
    }

    /** One id is the same in every picture, and nothing refers to it. */
    private static void withoutSharedIds(Element root) {
        NodeList definitions = root.getElementsByTagNameNS(SVG, "defs");
        for (int i = 0; i < definitions.getLength(); i++) {
            Element one = (Element) definitions.item(i);
            if (one.getAttributeNS(null, "id").equals("genericDefs")) {
                one.removeAttributeNS(null, "id");
            }
        }
    }

    private static Document emptyDocument() {
        try {
            return DocumentBuilderFactory.newDefaultNSInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument(SVG, "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("the JDK's own parser needs no configuration", e);
        }
    }
}
