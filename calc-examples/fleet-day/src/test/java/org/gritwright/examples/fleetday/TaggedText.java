package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDMarkedContent;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.apache.pdfbox.text.TextPosition;
import org.jspecify.annotations.Nullable;

/** The text that a PDF file's structure leads to, in its order: what it paints but nothing tags isn't here. */
final class TaggedText {
    private final Map<PDPage, Map<Integer, String>> painted = new HashMap<>();
    private final StringBuilder text = new StringBuilder();

    private TaggedText() {}

    static String of(Path file) throws IOException {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            TaggedText tagged = new TaggedText();
            tagged.collect(document.getDocumentCatalog().getStructureTreeRoot(), null);
            return tagged.text.toString();
        }
    }

    private void collect(PDStructureNode node, @Nullable PDPage page) throws IOException {
        for (Object kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                collect(element, element.getPage() == null ? page : element.getPage());
            } else if (kid instanceof PDMarkedContentReference reference) {
                add(reference.getPage() == null ? page : reference.getPage(), reference.getMCID());
            } else if (kid instanceof Integer id) {
                add(page, id);
            }
        }
    }

    private void add(@Nullable PDPage page, int id) throws IOException {
        PDPage on = Objects.requireNonNull(page);
        Map<Integer, String> texts = painted.get(on);
        if (texts == null) {
            PDFMarkedContentExtractor extractor = new PDFMarkedContentExtractor();
            extractor.processPage(on);
            texts = extractor.getMarkedContents().stream()
                    .filter(content -> content.getMCID() >= 0)
                    .collect(Collectors.toMap(PDMarkedContent::getMCID, TaggedText::text));
            painted.put(on, texts);
        }
        text.append(texts.getOrDefault(id, "")).append('\n');
    }

    private static String text(PDMarkedContent content) {
        return content.getContents().stream()
                .filter(TextPosition.class::isInstance)
                .map(position -> ((TextPosition) position).getUnicode())
                .collect(Collectors.joining());
    }
}
