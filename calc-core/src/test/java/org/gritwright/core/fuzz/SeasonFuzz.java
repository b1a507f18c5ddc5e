package org.gritwright.core.fuzz;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Arrays;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.json.JsonNode;
import org.gritwright.core.json.JsonText;
import org.gritwright.core.json.Problems;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.season.Season;
import org.gritwright.units.InvalidInputException;

/** Seasons' accounts with slips: refused with problems, or looked at, written and read as the same, and a season. */
public final class SeasonFuzz {
    private static final JsonNode ACCOUNT = account();

    private SeasonFuzz() {}

    private static JsonNode account() {
        try (InputStream in = SeasonFuzz.class.getResourceAsStream("/golden/version-1/season-account.json")) {
            return JsonText.read(in, DocumentLimits.COMMON, new Problems(DocumentLimits.COMMON));
        } catch (IOException | RejectedDocumentException e) {
            throw new IllegalStateException(e);
        }
    }

    /**
     * Reads bytes as choices of slips in an account.
     *
     * @param data the choices
     */
    public static void fuzzerTestOneInput(byte[] data) {
        try {
            ByteArrayOutputStream text = new ByteArrayOutputStream();
            JsonText.write(Slips.in(ACCOUNT, new Choices(data)), text);
            WrittenSeason season = Document.SEASON_ACCOUNT.read(new ByteArrayInputStream(text.toByteArray()));
            Check.equal("findings again", season.findings(), season.findings());
            Check.equal("trucks balanced", balanced(season), season.trucks().size());
            readBack(season);
        } catch (RejectedDocumentException e) {
            Check.that(!e.problems().isEmpty(), "a refusal with problems");
        } catch (IOException e) {
            throw new UncheckedIOException("memory can't fail to be read", e);
        }
    }

    /** How many trucks are in the balance; those of the account where its numbers can't be balanced. */
    private static int balanced(WrittenSeason season) {
        Season balanced = season.toSeason();
        try {
            return balanced.balance().asStated().trucks().size();
        } catch (InvalidInputException e) {
            return balanced.trucks().size();
        }
    }

    private static void readBack(WrittenSeason season) throws IOException {
        byte[] text = written(season);
        try {
            WrittenSeason again = Document.SEASON_ACCOUNT.read(new ByteArrayInputStream(text));
            Check.equal("what was read back", again, season);
            Check.that(Arrays.equals(written(again), text), "written again the same");
        } catch (RejectedDocumentException e) {
            throw new AssertionError("what was written is refused", e);
        }
    }

    private static byte[] written(WrittenSeason season) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Document.SEASON_ACCOUNT.write(season, out);
        return out.toByteArray();
    }
}
