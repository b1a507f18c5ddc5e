package org.gritwright.examples.fleetday;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.GregorianCalendar;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.w3c.dom.Document;

/**
 * Sets pages as PDF, with fonts of its own and nothing of the host: the same page gives the same bytes on every machine. Nothing
 * that a page names is fetched, be it a file or an address.
 */
final class Papers {
    static final String FONT = "DejaVu Sans Condensed";

    private static final String FONTS = "net/sf/jasperreports/fonts/dejavu/DejaVuSansCondensed";
    private static final int NORMAL = 400;
    private static final int BOLD = 700;

    private final TrueTypeFont upright;
    private final TrueTypeFont bold;
    private final TrueTypeFont slanted;

    private Papers(TrueTypeFont upright, TrueTypeFont bold, TrueTypeFont slanted) {
        this.upright = upright;
        this.bold = bold;
        this.slanted = slanted;
    }

    /** @throws IOException if the fonts aren't beside the program */
    static Papers load() throws IOException {
        // A setting of the engine's for all of the Java virtual machine. What stops it is thrown too.
        XRLog.setLoggingEnabled(false);
        return new Papers(font(".ttf"), font("-Bold.ttf"), font("-Oblique.ttf"));
    }

    private static TrueTypeFont font(String which) throws IOException {
        try (InputStream in = Papers.class.getClassLoader().getResourceAsStream(FONTS + which)) {
            if (in == null) {
                throw new FileNotFoundException("no font " + FONTS + which);
            }
            TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
            // Ligatures would take a third of the time.
            font.setEnableGsub(false);
            return font;
        }
    }

    /**
     * The page as PDF.
     *
     * @param page as {@link PaperPage} reads it
     * @param day the date that the file bears
     * @throws IOException if the page can't be set
     */
    byte[] pdf(String page, LocalDate day) throws IOException {
        try (PDDocument pdf = new PDDocument()) {
            draw(PaperPage.of(page), pdf);
            GregorianCalendar midnight = GregorianCalendar.from(day.atStartOfDay(ZoneOffset.UTC));
            pdf.getDocumentInformation().setCreationDate(midnight);
            pdf.getDocumentInformation().setModificationDate(midnight);
            pdf.setDocumentId(day.toEpochDay());
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            pdf.save(out);
            return out.toByteArray();
        }
    }

    private void draw(Document page, PDDocument pdf) throws IOException {
        PdfRendererBuilder builder = new PdfRendererBuilder()
                .usePDDocument(pdf)
                .withW3cDocument(page, "")
                .withProducer("fleet-day")
                .usePdfUaAccessibility(true)
                .useSVGDrawer(new PictureDrawer(FONT))
                .useReplacementText(PaperPage.UNKNOWN)
                .useUriResolver((base, uri) -> uri.startsWith("#") ? uri : null)
                .useExternalResourceAccessControl(
                        (uri, type) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI)
                .useExternalResourceAccessControl(
                        (uri, type) -> false, ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI)
                .useFont(embedded(upright, pdf), FONT, NORMAL, FontStyle.NORMAL, true)
                .useFont(embedded(bold, pdf), FONT, BOLD, FontStyle.NORMAL, true)
                .useFont(embedded(slanted, pdf), FONT, NORMAL, FontStyle.ITALIC, true);
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.createPDFWithoutClosing();
        }
    }

    private static PDFontSupplier embedded(TrueTypeFont font, PDDocument pdf) throws IOException {
        return new PDFontSupplier(PDType0Font.load(pdf, font, true));
    }
}
