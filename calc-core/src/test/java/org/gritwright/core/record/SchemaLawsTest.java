package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import org.gritwright.core.fleet.day.FleetDay;

@Tag("jackson")
class SchemaLawsTest {
    private static final Schema FLEET_DAY = SchemaTest.schema(Document.FLEET_DAY);
    private static final Schema RECORD = SchemaTest.schema(Document.CALIBRATION_RECORD);
    private static final Schema SEASON = SchemaTest.schema(Document.SEASON_ACCOUNT);

    @Provide
    Arbitrary<FleetDay> fleetDays() {
        return FleetDays.any();
    }

    @Provide
    Arbitrary<CalibrationRecord> calibrationRecords() {
        return CalibrationRecords.any();
    }

    @Property(tries = 200, edgeCases = EdgeCasesMode.NONE)
    void everyFleetDayThatIsWrittenIsValidByTheSchema(@ForAll("fleetDays") FleetDay day) {
        assertThat(FLEET_DAY.validate(Document.FLEET_DAY.toText(day), InputFormat.JSON))
                .isEmpty();
    }

    @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
    void everyRecordThatIsWrittenIsValidByTheSchema(@ForAll("calibrationRecords") CalibrationRecord record) {
        assertThat(RECORD.validate(Document.CALIBRATION_RECORD.toText(record), InputFormat.JSON))
                .isEmpty();
    }

    @Provide
    Arbitrary<WrittenSeason> seasons() {
        return WrittenSeasons.any();
    }

    @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
    void everySeasonThatIsWrittenIsValidByTheSchema(@ForAll("seasons") WrittenSeason season) {
        assertThat(SEASON.validate(Document.SEASON_ACCOUNT.toText(season), InputFormat.JSON))
                .isEmpty();
    }
}
