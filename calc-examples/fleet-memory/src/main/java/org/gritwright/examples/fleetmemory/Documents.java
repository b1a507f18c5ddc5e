package org.gritwright.examples.fleetmemory;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.history.Event;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.PlacedDocument;
import org.gritwright.core.record.WrittenEvent;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.InvalidInputException;

/** Documents: from their texts to what is kept, and from what is kept to events. */
final class Documents {
    /** Ids that begin so are those of what records tell. */
    private static final List<String> RESERVED = List.of("record ", "season from ");

    private final TypeRegistry types;

    Documents(TypeRegistry types) {
        this.types = types;
    }

    /** What a file's document says, one or, of a fleet's day, one a truck. */
    List<Filed> read(String format, byte[] text, String from) throws BadInputException {
        if (format.equals(Document.FLEET_DAY.format())) {
            return ofDay(placed(Document.FLEET_DAY, text, from), from);
        }
        if (format.equals(Document.CALIBRATION_RECORD.format())) {
            return List.of(new Filed(
                    kept(placed(Document.CALIBRATION_RECORD, text, from).document(), from), from));
        }
        if (format.equals(Document.SEASON_ACCOUNT.format())) {
            return List.of(
                    new Filed(kept(placed(Document.SEASON_ACCOUNT, text, from).document()), from));
        }
        return List.of(new Filed(kept(placed(Document.FLEET_EVENT, text, from).document(), from), from));
    }

    /** What an export keeps of a document, read and computed anew. */
    Kept read(Kind kind, String text, String from) throws BadInputException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return switch (kind) {
            case RECORD -> kept(placed(Document.CALIBRATION_RECORD, bytes, from).document(), from);
            case EVENT -> kept(placed(Document.FLEET_EVENT, bytes, from).document(), from);
            case SEASON -> kept(placed(Document.SEASON_ACCOUNT, bytes, from).document());
        };
    }

    static <T> PlacedDocument<T> placed(Document<T> format, byte[] text, String from) throws BadInputException {
        try {
            return format.readPlaced(new ByteArrayInputStream(text), DocumentLimits.COMMON);
        } catch (RejectedDocumentException e) {
            List<String> lines = new ArrayList<>();
            lines.add(from + " can't be used:");
            e.problems().stream().map(Problem::toString).map("  "::concat).forEach(lines::add);
            if (e.more() > 0) {
                lines.add("  and " + e.more() + " more");
            }
            throw new BadInputException(lines);
        } catch (IOException e) {
            throw new IllegalStateException("memory can't fail to be read", e);
        }
    }

    private List<Filed> ofDay(PlacedDocument<FleetDay> read, String from) throws BadInputException {
        FleetDay day = read.document();
        List<TruckAssessment> trucks;
        try {
            trucks = FleetAssessor.of(types).assess(day);
        } catch (InvalidInputException e) {
            throw new BadInputException(from + " can't be used: " + e.getMessage());
        }
        List<String> refusals = new ArrayList<>();
        for (TruckAssessment truck : trucks) {
            truck.refusals().forEach(refusal -> refusals.add("  " + sentence(read, refusal)));
        }
        if (!refusals.isEmpty()) {
            refusals.add(0, from + " can't be computed with, and nothing of it is kept:");
            throw new BadInputException(refusals);
        }
        List<Filed> filed = new ArrayList<>();
        for (TruckAssessment truck : trucks) {
            filed.add(new Filed(kept(CalibrationRecord.of(day, truck), from), from));
        }
        return filed;
    }

    private static String sentence(PlacedDocument<FleetDay> read, Refusal refusal) {
        return refusal.pointer()
                + read.place(refusal.pointer()).map(place -> " (" + place + ")").orElse("")
                + ": " + refusal.sentence();
    }

    private Kept kept(CalibrationRecord record, String from) throws BadInputException {
        String text;
        Kept kept;
        try {
            text = Document.CALIBRATION_RECORD.toText(record);
            kept = new Kept(
                    Kind.RECORD,
                    identity(record),
                    Optional.of(record.entered().trucks().get(0).id()),
                    record.entered().day().toString(),
                    Hash.of(Document.FLEET_DAY.toText(record.entered())),
                    Hash.of(text),
                    text);
            // What tells no events is no use, and better refused now than found later.
            record.events(kept.name().toString(), types);
        } catch (InvalidInputException e) {
            throw new BadInputException(from + " can't be used: " + e.getMessage());
        }
        return kept;
    }

    private static String identity(CalibrationRecord record) {
        return record.entered().trucks().get(0).id() + " " + record.entered().day();
    }

    private static Kept kept(WrittenEvent event, String from) throws BadInputException {
        if (RESERVED.stream().anyMatch(event.id()::startsWith)) {
            throw new BadInputException(from + " can't be used: the id \"" + event.id()
                    + "\" begins like those of what calibration records tell; give it another");
        }
        String text = Document.FLEET_EVENT.toText(event);
        String hash = Hash.of(text);
        return new Kept(Kind.EVENT, event.id(), event.truck(), event.at().day().toString(), hash, hash, text);
    }

    private static Kept kept(WrittenSeason season) {
        String text = Document.SEASON_ACCOUNT.toText(season);
        String hash = Hash.of(text);
        return new Kept(
                Kind.SEASON, season.season(), Optional.empty(), season.from().toString(), hash, hash, text);
    }

    /** A kept account of a season. */
    static WrittenSeason season(Kept kept) throws BadInputException {
        return placed(Document.SEASON_ACCOUNT, bytes(kept), inDatabase(kept)).document();
    }

    /** A kept record. */
    static CalibrationRecord record(Kept kept) throws BadInputException {
        return placed(Document.CALIBRATION_RECORD, bytes(kept), inDatabase(kept))
                .document();
    }

    /** What a kept document tells a history. */
    List<Event> events(Kept kept) throws BadInputException {
        if (kept.kind() == Kind.SEASON) {
            return List.of();
        }
        if (kept.kind() == Kind.EVENT) {
            return List.of(placed(Document.FLEET_EVENT, bytes(kept), inDatabase(kept))
                    .document()
                    .event());
        }
        try {
            return record(kept).events(kept.name().toString(), types);
        } catch (InvalidInputException e) {
            throw new BadInputException(inDatabase(kept) + " can't be used: " + e.getMessage());
        }
    }

    /** The curves that a kept record fits to its catches, computed anew as its events are. */
    List<DischargeCurve> curves(Kept kept) throws BadInputException {
        CalibrationRecord record = record(kept);
        return record.curves().isEmpty()
                ? List.of()
                : FleetAssessor.of(types).assess(record.entered()).get(0).curves();
    }

    private static byte[] bytes(Kept kept) {
        return kept.text().getBytes(StandardCharsets.UTF_8);
    }

    private static String inDatabase(Kept kept) {
        return kept.name() + " in the database";
    }
}
