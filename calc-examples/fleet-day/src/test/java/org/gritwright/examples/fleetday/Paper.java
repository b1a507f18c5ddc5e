package org.gritwright.examples.fleetday;

import java.awt.geom.GeneralPath;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineNode;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.util.Matrix;
import org.apache.pdfbox.util.Vector;
import org.jspecify.annotations.Nullable;

/**
 * What a PDF file holds.
 *
 * @param pages its pages
 * @param outline the names in its list of contents, those within others after them
 * @param title its title
 * @param language its language
 */
record Paper(List<Page> pages, List<String> outline, String title, String language) {
    static final double MILLIMETER = 72 / 25.4;

    /**
     * What is on a page; all places in points from the lower left corner.
     *
     * @param text in the order in which it was written
     * @param glyphs where each glyph stands: as wide as it is, and as high as a small letter
     * @param shapes where each line and area is
     * @param images how many images it shows
     * @param notEmbedded fonts that the file doesn't hold
     */
    record Page(
            Rectangle2D size,
            String text,
            List<Rectangle2D> glyphs,
            List<Rectangle2D> shapes,
            int images,
            Set<String> notEmbedded) {}

    String text() {
        return String.join("\n", pages.stream().map(Page::text).toList());
    }

    static Paper of(Path file) throws IOException {
        return of(Files.readAllBytes(file));
    }

    static Paper of(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<Page> pages = new ArrayList<>();
            for (int number = 1; number <= document.getNumberOfPages(); number++) {
                PDFTextStripper text = new PDFTextStripper();
                text.setStartPage(number);
                text.setEndPage(number);
                PDPage page = document.getPage(number - 1);
                Marks marks = new Marks(page);
                marks.processPage(page);
                pages.add(new Page(
                        new Rectangle2D.Double(
                                0,
                                0,
                                page.getMediaBox().getWidth(),
                                page.getMediaBox().getHeight()),
                        text.getText(document),
                        marks.glyphs,
                        marks.shapes,
                        marks.images,
                        marks.notEmbedded));
            }
            List<String> outline = new ArrayList<>();
            collect(document.getDocumentCatalog().getDocumentOutline(), outline);
            return new Paper(
                    pages,
                    outline,
                    document.getDocumentInformation().getTitle(),
                    document.getDocumentCatalog().getCOSObject().getString(COSName.LANG));
        }
    }

    private static void collect(@Nullable PDOutlineNode node, List<String> outline) {
        if (node == null) {
            return;
        }
        for (PDOutlineItem item : node.children()) {
            outline.add(item.getTitle());
            collect(item, outline);
        }
    }

    private static final class Marks extends PDFGraphicsStreamEngine {
        private final List<Rectangle2D> glyphs = new ArrayList<>();
        private final List<Rectangle2D> shapes = new ArrayList<>();
        private final Set<String> notEmbedded = new HashSet<>();
        private final GeneralPath path = new GeneralPath();
        private int images;
        private boolean isClip;

        Marks(PDPage page) {
            super(page);
        }

        @Override
        protected void showGlyph(Matrix place, PDFont font, int code, Vector displacement) throws IOException {
            if (!font.isEmbedded()) {
                notEmbedded.add(font.getName());
            }
            if (displacement.getX() > 0 && !font.toUnicode(code).isBlank()) {
                glyphs.add(place.createAffineTransform()
                        .createTransformedShape(new Rectangle2D.Double(0, 0, displacement.getX(), 0.5))
                        .getBounds2D());
            }
        }

        /** What goes on over pages is in the file of each, and only some of it is seen. */
        private void drawn() {
            Rectangle2D seen = path.getBounds2D()
                    .createIntersection(
                            getGraphicsState().getCurrentClippingPath().getBounds2D());
            if (seen.getWidth() >= 0 && seen.getHeight() >= 0) {
                shapes.add(seen);
            }
            path.reset();
        }

        @Override
        public void strokePath() {
            drawn();
        }

        @Override
        public void fillPath(int windingRule) {
            drawn();
        }

        @Override
        public void fillAndStrokePath(int windingRule) {
            drawn();
        }

        @Override
        public void appendRectangle(Point2D a, Point2D b, Point2D c, Point2D d) {
            path.moveTo(a.getX(), a.getY());
            path.lineTo(b.getX(), b.getY());
            path.lineTo(c.getX(), c.getY());
            path.lineTo(d.getX(), d.getY());
            path.closePath();
        }

        @Override
        public void moveTo(float x, float y) {
            path.moveTo(x, y);
        }

        @Override
        public void lineTo(float x, float y) {
            path.lineTo(x, y);
        }

        @Override
        public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
            path.curveTo(x1, y1, x2, y2, x3, y3);
        }

        @Override
        public Point2D getCurrentPoint() {
            return path.getCurrentPoint();
        }

        @Override
        public void closePath() {
            path.closePath();
        }

        @Override
        public void endPath() {
            if (isClip) {
                getGraphicsState().intersectClippingPath(path);
                isClip = false;
            }
            path.reset();
        }

        @Override
        public void clip(int windingRule) {
            isClip = true;
        }

        @Override
        public void drawImage(PDImage image) {
            images++;
        }

        @Override
        public void shadingFill(COSName name) {
            images++;
        }
    }
}
