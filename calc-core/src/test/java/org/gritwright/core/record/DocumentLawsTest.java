package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.day.FleetDay;

@Tag("jackson")
@Tag("locale")
class DocumentLawsTest {

    static <T> T read(Document<T> document, String text) throws IOException, RejectedDocumentException {
        return document.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    }

    @Provide
    Arbitrary<FleetDay> fleetDays() {
        return FleetDays.any();
    }

    @Provide
    Arbitrary<CalibrationRecord> calibrationRecords() {
        return CalibrationRecords.any();
    }

    @Property(tries = 200, edgeCases = EdgeCasesMode.NONE)
    void readingAWrittenFleetDayGivesTheSameDayAndWritingItAgainTheSameText(@ForAll("fleetDays") FleetDay day)
            throws IOException, RejectedDocumentException {
        String text = Document.FLEET_DAY.toText(day);
        FleetDay again = read(Document.FLEET_DAY, text);
        assertThat(again).isEqualTo(day);
        assertThat(Document.FLEET_DAY.toText(again)).isEqualTo(text);
    }

    @Property(tries = 120, edgeCases = EdgeCasesMode.NONE)
    void readingAWrittenRecordGivesTheSameRecordAndWritingItAgainTheSameText(
            @ForAll("calibrationRecords") CalibrationRecord record) throws IOException, RejectedDocumentException {
        String text = Document.CALIBRATION_RECORD.toText(record);
        CalibrationRecord again = read(Document.CALIBRATION_RECORD, text);
        assertThat(again).isEqualTo(record);
        assertThat(Document.CALIBRATION_RECORD.toText(again)).isEqualTo(text);
    }

    @Provide
    Arbitrary<TankRecord> tankRecords() {
        return TankRecords.any();
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void readingAWrittenRecordOfATankGivesTheSameAndWritingItAgainTheSameText(@ForAll("tankRecords") TankRecord record)
            throws IOException, RejectedDocumentException {
        String text = Document.TANK_RECORD.toText(record);
        TankRecord again = read(Document.TANK_RECORD, text);
        assertThat(again).isEqualTo(record);
        assertThat(Document.TANK_RECORD.toText(again)).isEqualTo(text);
    }

    @Provide
    Arbitrary<WrittenSeason> seasons() {
        return WrittenSeasons.any();
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void readingAWrittenSeasonGivesTheSameAndWritingItAgainTheSameText(@ForAll("seasons") WrittenSeason season)
            throws IOException, RejectedDocumentException {
        String text = Document.SEASON_ACCOUNT.toText(season);
        WrittenSeason again = read(Document.SEASON_ACCOUNT, text);
        assertThat(again).isEqualTo(season);
        assertThat(Document.SEASON_ACCOUNT.toText(again)).isEqualTo(text);
    }
}
