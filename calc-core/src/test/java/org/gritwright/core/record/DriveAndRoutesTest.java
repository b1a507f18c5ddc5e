package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.fleet.day.StatedRangeEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.range.RangeSource;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("jackson")
@Tag("locale")
class DriveAndRoutesTest {
    private static final StatedRangeEntry BY_EYE = new StatedRangeEntry(
            Amounts.of(2, SpreadingUnits.REVOLUTION_PER_MINUTE),
            Amounts.of(28, SpreadingUnits.REVOLUTION_PER_MINUTE),
            RangeSource.BY_EYE,
            Optional.empty());

    private static RouteEntry route(String name, String material, String... trucks) {
        return new RouteEntry(
                name,
                material,
                new TargetEntry(
                        Optional.of(Amounts.of(300, SpreadingUnits.POUND_PER_MILE)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                Amounts.of(10, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(35, SpreadingUnits.MILE_PER_HOUR),
                List.of(trucks));
    }

    private static FleetDay two(RouteEntry... routes) {
        TruckDay truck = FleetDays.small().trucks().get(0).drive(DriveEntry.stated(BY_EYE));
        return FleetDays.small().withTrucks(List.of(truck, truck.id("T-02"))).withRoutes(List.of(routes));
    }

    private static List<String> places(FleetDay day) {
        return DocumentRefusalTest.problems(Document.FLEET_DAY.toText(day)).stream()
                .map(problem -> problem.code() + " " + problem.pointer())
                .toList();
    }

    @Test
    void aRouteThatNamesWhatIsNotThereIsAProblemWithItsPlace() {
        assertThat(places(two(route("Hill road", "road slat"), route("Flat road", "road salt", "T-01", "T-03"))))
                .containsExactly("unknown-word /routes/0/material", "unknown-word /routes/1/trucks/1");
        assertThat(DocumentRefusalTest.problems(Document.FLEET_DAY.toText(two(route("Hill road", "road slat")))))
                .singleElement()
                .satisfies(problem -> assertThat(problem.expected()).isEqualTo("one of [road salt]"));
    }

    @Test
    void aTruckOfARouteIsNotTheDaysTruckOfThatNumber() {
        String wrong = Document.FLEET_DAY.toText(two(route("Flat road", "road salt", "T-01", "T-03")));
        assertThat(ProblemPlacesTest.refusal(wrong).problems()).singleElement().satisfies(problem -> {
            assertThat(problem.pointer()).isEqualTo("/routes/0/trucks/1");
            assertThat(problem.place().orElseThrow().subject()).isEmpty();
        });
    }

    @Test
    void aRouteOfNoTruckIsNotOneOfAll() throws IOException, RejectedDocumentException {
        FleetDay all = two(route("Flat road", "road salt"));
        assertThat(Document.FLEET_DAY.toText(all)).doesNotContain("\"trucks\": []");
        assertThat(DocumentLawsTest.read(Document.FLEET_DAY, Document.FLEET_DAY.toText(all)))
                .isEqualTo(all);
        String one = Document.FLEET_DAY.toText(two(route("Flat road", "road salt", "T-01")));
        assertThat(DocumentRefusalTest.problems(one.replaceAll("\"trucks\": \\[\\s*\"T-01\"\\s*\\]", "\"trucks\": []")))
                .singleElement()
                .satisfies(problem -> {
                    assertThat(problem.pointer()).isEqualTo("/routes/0/trucks");
                    assertThat(problem.expected()).isEqualTo("one truck or more, or no field for all trucks");
                });
    }

    @Test
    void aRouteStandsThereOnce() {
        assertThat(places(two(route("Hill road", "road salt"), route("Hill road", "road salt"))))
                .containsExactly("repeated-item /routes/1/name");
    }

    @Test
    void whatARouteAsksMustBePossible() {
        String good = Document.FLEET_DAY.toText(two(route("Hill road", "road salt")));
        assertThat(DocumentRefusalTest.problems(good.replace("\"35 mi/h\"", "\"5 mi/h\"")))
                .singleElement()
                .satisfies(problem -> assertThat(problem.pointer()).isEqualTo("/routes/0"));
        assertThat(DocumentRefusalTest.problems(good.replace("\"targetRate\": \"300 lb/mi\",", "")))
                .singleElement()
                .satisfies(problem -> assertThat(problem.pointer()).isEqualTo("/routes/0"));
    }

    @Test
    void aRecordHasTheDriveAndThoseRoutesThatAreForItsTruck() throws IOException, RejectedDocumentException {
        FleetDay day = two(
                route("Hill road", "road salt", "T-02", "T-01"),
                route("Flat road", "road salt"),
                route("Bridges", "road salt", "T-01"));
        List<CalibrationRecord> records = FleetAssessor.of(BuiltInTypes.registry()).assess(day).stream()
                .map(truck -> CalibrationRecord.of(day, truck))
                .toList();
        FleetDay entered = records.get(1).entered();
        assertThat(entered.trucks().get(0).drive()).contains(DriveEntry.stated(BY_EYE));
        assertThat(entered.routes())
                .containsExactly(route("Hill road", "road salt", "T-02"), route("Flat road", "road salt"));
        assertThat(DocumentLawsTest.read(
                        Document.CALIBRATION_RECORD, Document.CALIBRATION_RECORD.toText(records.get(1))))
                .isEqualTo(records.get(1));
        // Computed again it says the same.
        assertThat(CalibrationRecord.of(
                        entered,
                        FleetAssessor.of(BuiltInTypes.registry())
                                .assess(entered)
                                .get(0)))
                .isEqualTo(records.get(1));
    }

    @Test
    void theNextDayBeginsWithTheRangeThatWasStated() {
        FleetDay day = two();
        CalibrationRecord record = CalibrationRecord.of(
                day, FleetAssessor.of(BuiltInTypes.registry()).assess(day).get(0));
        assertThat(record.nextDay(BuiltInTypes.registry()).drive()).contains(DriveEntry.stated(BY_EYE));
    }
}
