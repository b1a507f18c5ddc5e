package org.gritwright.core.record;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.List;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.json.Format;
import org.gritwright.core.json.Migration;
import org.gritwright.core.json.ObjectCodec;

/**
 * A kind of document: a JSON format with a name and a version, read strictly and written in one canonical form.
 *
 * <p>Reading gives back what was written ({@code read(write(d))} equals {@code d}), and writing what was read changes
 * nothing further. Every quantity is a text with its unit. Reading refuses unknown, repeated and missing fields, null,
 * numbers without unit, quantities of another kind, and files past the limits, and lists everything it finds with JSON
 * pointers. Formats keep their name. A document of an older version is read as one of the newest; one of a newer version
 * is refused with a problem that says so.
 *
 * <p>This alone needs Jackson (jackson-core 2.15 or any later 2.x) on the class path or module path. Immutable,
 * thread-safe.
 *
 * @param <T> the type of the document
 */
public final class Document<T> {
    /** A fleet's calibration day, the input: format "gritwright/fleet-day", version 2. */
    public static final Document<FleetDay> FLEET_DAY =
            new Document<>("gritwright/fleet-day", 0, FleetDayCodecs.FLEET_DAY, FleetDayMigrations.STEPS);

    /** One truck's calibration record, the result: format "gritwright/calibration-record", version 2. */
    public static final Document<CalibrationRecord> CALIBRATION_RECORD = new Document<>(
            "gritwright/calibration-record",
            0,
            CalibrationRecordCodecs.CALIBRATION_RECORD,
            CalibrationRecordMigrations.STEPS);

    private final Format<T> format;

    private Document(String name, int minor, ObjectCodec<T> codec, List<Migration> migrations) {
        this.format = new Format<>(name, minor, codec, migrations);
    }

    /**
     * The format's name.
     *
     * @return for example "gritwright/fleet-day"
     */
    public String format() {
        return format.name();
    }

    /**
     * The version that is written, the newest that is read. All versions before it are read too.
     *
     * @return the version
     */
    public int version() {
        return format.version();
    }

    /**
     * The minor version that is written, the newest of its version that is read. Minor versions differ by fields that
     * may be left out.
     *
     * @return the minor version; 0 is written by leaving it out
     */
    public int minorVersion() {
        return format.minor();
    }

    /**
     * Reads a document within the common limits.
     *
     * @param in UTF-8 text; not closed
     * @return the document
     * @throws IOException if the stream can't be read
     * @throws RejectedDocumentException if the document can't be used; it lists everything that is wrong
     */
    public T read(InputStream in) throws IOException, RejectedDocumentException {
        return read(in, DocumentLimits.COMMON);
    }

    /**
     * Reads a document.
     *
     * @param in UTF-8 text; not closed
     * @param limits how large it may be
     * @return the document
     * @throws IOException if the stream can't be read
     * @throws RejectedDocumentException if the document can't be used; it lists everything that is wrong
     */
    public T read(InputStream in, DocumentLimits limits) throws IOException, RejectedDocumentException {
        return format.read(in, limits);
    }

    /**
     * Writes a document in its canonical form.
     *
     * @param document the document
     * @param out receives UTF-8 text; not closed
     * @throws IOException if the stream can't be written
     */
    public void write(T document, OutputStream out) throws IOException {
        format.write(document, out);
    }

    /**
     * Writes a document into a text.
     *
     * @param document the document
     * @return the canonical form
     */
    public String toText(T document) {
        return format.toText(document);
    }

    /**
     * The JSON Schema (draft 2020-12) of the format, made from the same definitions that read and write it. The jar
     * holds it as a file in {@code META-INF/schemas}, named after format and version.
     *
     * @return the schema
     */
    public String schema() {
        return format.schema();
    }
}
