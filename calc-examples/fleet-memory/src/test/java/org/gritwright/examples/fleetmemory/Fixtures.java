package org.gritwright.examples.fleetmemory;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.SignOff;
import org.gritwright.core.record.WrittenEvent;

/** A small invented fleet, and the program in this Java virtual machine. */
final class Fixtures {
    static final LocalDate TODAY = LocalDate.of(2026, 2, 10);

    /** Four trucks in two winters. */
    static final InventedSeasons FLEET = new InventedSeasons(4, 2024, 2, 1, 5);

    static final Documents DOCUMENTS = new Documents(BuiltInTypes.registry());

    private Fixtures() {}

    /** What the program said, and how it ended. */
    record Run(int code, String out, String err) {
        static Run of(String... arguments) {
            StringWriter out = new StringWriter();
            StringWriter err = new StringWriter();
            int code = FleetMemoryCommand.run(new PrintWriter(out), new PrintWriter(err), TODAY, arguments);
            return new Run(code, out.toString(), err.toString());
        }
    }

    static Run run(Database database, String command, Object... more) {
        List<String> arguments = new ArrayList<>(List.of(command, "--database", database.url()));
        for (Object one : more) {
            arguments.add(one.toString());
        }
        return Run.of(arguments.toArray(String[]::new));
    }

    /** All records of the small fleet, one document each, and its events. */
    static List<Filed> all() {
        try {
            List<Filed> all = new ArrayList<>();
            for (FleetDay day : FLEET.days()) {
                all.addAll(filed(Document.FLEET_DAY, day, "day " + day.day()));
            }
            for (WrittenEvent event : FLEET.events()) {
                all.addAll(filed(Document.FLEET_EVENT, event, event.id()));
            }
            return all;
        } catch (BadInputException e) {
            throw new AssertionError(e);
        }
    }

    static <T> List<Filed> filed(Document<T> format, T document, String from) throws BadInputException {
        return DOCUMENTS.read(format.format(), format.toText(document).getBytes(StandardCharsets.UTF_8), from);
    }

    /** The records of a day. */
    static List<CalibrationRecord> records(FleetDay day) {
        return FleetAssessor.of(BuiltInTypes.registry()).assess(day).stream()
                .map(truck -> CalibrationRecord.of(day, truck))
                .toList();
    }

    static Filed filed(CalibrationRecord record) throws BadInputException {
        return filed(Document.CALIBRATION_RECORD, record, "record").get(0);
    }

    static CalibrationRecord signed(CalibrationRecord record, String by) {
        return record.signedBy(
                new SignOff(by, Optional.empty(), record.entered().day()));
    }

    /** The same truck on the same day, with another weight of the first pail. */
    static CalibrationRecord otherwise(FleetDay day) throws Exception {
        String text = Document.FLEET_DAY.toText(day.withOnly(day.trucks().get(0)));
        String other = text.replaceFirst("\"gross\": \"\\d+(\\.\\d+)? lb\"", "\"gross\": \"34.8 lb\"");
        if (other.equals(text)) {
            throw new AssertionError("nothing was changed");
        }
        FleetDay changed = Document.FLEET_DAY.read(new ByteArrayInputStream(other.getBytes(StandardCharsets.UTF_8)));
        return records(changed).get(0);
    }

    static <T> Path write(Path file, Document<T> format, T document) throws IOException {
        return Files.writeString(file, format.toText(document));
    }

    /** A page without the marks around what a line's end must not break. */
    static String unmarked(String html) {
        return html.replaceAll("<span class=\"whole\">([^<]*)</span>", "$1");
    }

    /** All that a database holds, as an export. */
    static String export(Database database) {
        try (Store store = Store.open(database)) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ExportLines.write(store, out);
            return out.toString(StandardCharsets.UTF_8);
        } catch (Exception e) {
            throw new AssertionError(e);
        }
    }

    static Import.Result keep(Database database, List<Filed> some) throws Exception {
        return keep(database, some, Optional.empty());
    }

    static Import.Result keep(Database database, List<Filed> some, Optional<String> why) throws Exception {
        try (Batch batch = Batch.in(database.folder());
                Store store = Store.make(database)) {
            for (Filed one : some) {
                batch.add(one);
            }
            return Import.of(store, DOCUMENTS, batch, why);
        }
    }
}
