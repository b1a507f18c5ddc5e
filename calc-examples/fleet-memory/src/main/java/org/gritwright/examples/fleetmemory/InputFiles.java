package org.gritwright.examples.fleetmemory;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.record.Document;

/** Files that are to be imported; each says by its "format" what it is. */
final class InputFiles {
    private static final Set<String> DOCUMENTS = Set.of(
            Document.FLEET_DAY.format(),
            Document.CALIBRATION_RECORD.format(),
            Document.FLEET_EVENT.format(),
            Document.SEASON_ACCOUNT.format());

    private final Documents documents;

    InputFiles(Documents documents) {
        this.documents = documents;
    }

    /** Puts what all files hold into a batch, or tells every reason why some can't be used. */
    void read(List<Path> files, Batch into) throws BadInputException {
        Portions portions = new Portions(into::add);
        for (Path file : files) {
            portions.begin(file.toString());
            try {
                read(file, portions);
            } catch (BadInputException e) {
                portions.refuse(e.lines());
            } catch (IOException e) {
                portions.refuse(List.of("can't read " + file + ": " + Failure.words(e)));
            }
        }
        portions.end();
    }

    private void read(Path file, Portions portions) throws IOException, BadInputException {
        if (Files.isDirectory(file)) {
            throw new BadInputException("can't read " + file + ": it is a folder; name the files in it");
        }
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new BadInputException("can't read " + file + ": it is no regular file");
        }
        if (Files.size(file) == 0) {
            throw new BadInputException(file + " can't be used: it is empty");
        }
        requireText(file);
        DocumentHead head = head(file);
        Optional<String> format = head.format();
        if (format.filter(ExportLines.FORMAT::equals).isPresent()) {
            try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
                new ExportLines(documents).read(in, file.toString(), portions);
            }
            return;
        }
        if (head.after().equals(Optional.of(JsonToken.START_OBJECT))) {
            try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
                new DocumentLines(documents, DOCUMENTS::contains).read(in, file.toString(), portions);
            }
            return;
        }
        if (Files.size(file) > DocumentLimits.COMMON.bytes()) {
            throw new BadInputException(file + " can't be used: it is too large for a document");
        }
        if (format.isPresent() && !DOCUMENTS.contains(format.get())) {
            throw new BadInputException(file + " can't be used: it says \"format\": \"" + format.get()
                    + "\", and is no fleet day, calibration record, fleet event, season account or export");
        }
        // What doesn't say what it is, is no JSON or names no format: the library says where.
        String known = format.orElse(Document.CALIBRATION_RECORD.format());
        portions.add(Files.size(file), () -> documents.read(known, Files.readAllBytes(file), file.toString()));
    }

    /** What a program or an editor made of a document that can be told by its first bytes. */
    private static void requireText(Path file) throws IOException, BadInputException {
        byte[] first;
        try (InputStream in = Files.newInputStream(file)) {
            first = in.readNBytes(2);
        }
        if (first.length < 2) {
            return;
        }
        String packed = switch (HexFormat.of().formatHex(first)) {
            case "1f8b" -> "it is compressed (gzip); unpack it first";
            case "504b" -> "it is compressed (zip); unpack it first";
            case "fffe", "feff" -> "its text is UTF-16; save it as UTF-8";
            default -> "";
        };
        if (!packed.isEmpty()) {
            throw new BadInputException(file + " can't be used: " + packed);
        }
    }

    /** What the first line or document of a file says that it is; where it is no JSON, the library says where. */
    private static DocumentHead head(Path file) throws IOException {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file));
                JsonParser json = new JsonFactory().createParser(in)) {
            return DocumentHead.of(json);
        } catch (JsonProcessingException e) {
            return DocumentHead.NONE;
        }
    }
}
