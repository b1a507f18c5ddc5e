package org.gritwright.examples.fleetmemory;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.io.JsonEOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.gritwright.core.document.DocumentLimits;

/** A file with a document in each of its lines, as programs write what telemetry summed up. */
final class DocumentLines {
    /** So much of where a line ends tells where that is. */
    private static final int SHOWN = 30;

    private final Documents documents;

    /** Whether a format is one of documents. */
    private final Predicate<String> isKnown;

    DocumentLines(Documents documents, Predicate<String> isKnown) {
        this.documents = documents;
        this.isKnown = isKnown;
    }

    /** Hands on what each line holds. */
    void read(InputStream in, String file, Portions portions) throws IOException, BadInputException {
        int number = 1;
        for (Optional<byte[]> line = ExportLines.next(in, file, 1);
                line.isPresent();
                line = ExportLines.next(in, file, number)) {
            byte[] bytes = line.get();
            String from = file + ", line " + number;
            portions.add(bytes.length, () -> document(bytes, from));
            number++;
        }
    }

    private List<Filed> document(byte[] line, String from) throws BadInputException {
        if (new String(line, StandardCharsets.UTF_8).isBlank()) {
            return List.of();
        }
        if (line.length > DocumentLimits.COMMON.bytes()) {
            throw new BadInputException(from + " can't be used: it is too large for a document");
        }
        String format = format(line, from);
        if (!isKnown.test(format)) {
            throw new BadInputException(
                    from + " can't be used: it says \"format\": \"" + format
                            + "\", and a file of several documents has fleet days, calibration records, fleet events and season accounts");
        }
        return documents.read(format, line, from);
    }

    /** What a line says that it is; it has to be one object, and all of it. */
    private static String format(byte[] line, String from) throws BadInputException {
        DocumentHead head;
        try (JsonParser json = new JsonFactory().createParser(line)) {
            head = DocumentHead.of(json);
        } catch (JsonEOFException e) {
            throw new BadInputException(from + " can't be used: it ends in the middle of a document, behind "
                    + end(line) + "; the file was cut off, or the document goes on in the next line");
        } catch (IOException e) {
            head = DocumentHead.NONE;
        }
        if (head.after().isPresent() || head.format().isEmpty()) {
            throw new BadInputException(from
                    + " can't be used: a file of several documents has one in each line, with its" + " \"format\"");
        }
        return head.format().get();
    }

    private static String end(byte[] line) {
        String text = new String(line, StandardCharsets.UTF_8).stripTrailing();
        return "\"" + text.substring(Math.max(0, text.length() - SHOWN)) + "\"";
    }
}
