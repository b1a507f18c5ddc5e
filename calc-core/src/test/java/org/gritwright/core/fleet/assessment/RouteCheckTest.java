package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.assessment.Driven.first;
import static org.gritwright.core.fleet.assessment.Driven.route;
import static org.gritwright.core.fleet.assessment.Driven.sentences;
import static org.gritwright.core.fleet.assessment.Driven.speed;
import static org.gritwright.core.fleet.assessment.Driven.stated;
import static org.gritwright.core.fleet.assessment.Written.bySlot;
import static org.gritwright.core.fleet.assessment.Written.inSlot;
import static org.gritwright.core.fleet.assessment.Written.verifies;
import static org.gritwright.core.fleet.assessment.Written.withMaterials;
import static org.gritwright.core.fleet.day.Trucks.DAY;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.inForce;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withNothingInForce;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.observation.Material;
import org.gritwright.core.range.RangeSource;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Routes of several settings, materials and liquids. */
class RouteCheckTest {
    private static final Material SAND = Material.of("sand", Amounts.of(90, SpreadingUnits.POUND_PER_CUBIC_FOOT));

    private static RouteAssessment only(TruckAssessment truck) {
        assertThat(truck.refusals()).isEmpty();
        assertThat(truck.routes()).hasSize(1);
        return truck.routes().get(0);
    }

    /** At 2 in, 28 rev/min lay 3.98 % too little at 30.33 mi/h; at 3 in, 2 rev/min lay 4.05 % too much at 3 mi/h. */
    @Test
    void aSettingThatHoldsTheToleranceComesBeforeOneThatLosesLess() {
        TruckDay truck = with(
                        idle("T-1"), inForce("5.2 lb/rev", 2, Since.of(DAY)), inForce("7.8 lb/rev", 3, Since.of(DAY)))
                .drive(stated(2, 28));
        RouteAssessment route = only(first(day(truck).withRoutes(List.of(route("Hill road", 300, 2.9986, 30.33)))));

        assertThat(route.fits()).extracting(RouteFit::held).containsExactly(true, false);
        assertThat(route.best().orElseThrow().point()).hasToString("salt at 2 in");
        assertThat(route.status()).isEqualTo(RouteAssessment.Status.HELD);
    }

    @Test
    void whatWasCaughtWithTheDisplaySetForAnotherMaterialIsNotCalibrated() {
        VerificationCatchEntry salt = verificationCatch(9, "5.2 lb/rev", 120, 57.7);
        TruckDay truck = with(
                        with(idle("T-1"), inSlot("1", inForce("5.2 lb/rev", 2, Since.of(DAY)))),
                        bySlot("1", verifies(Written.of("sand", salt.entry()), salt)))
                .drive(stated(2, 40));
        FleetDay day = day(truck);
        TruckAssessment assessed = first(withMaterials(day, day.materials().get(0), SAND)
                .withRoutes(List.of(route("Hill road", "sand", 300, 10, 20))));

        assertThat(only(assessed).status()).isEqualTo(RouteAssessment.Status.NOT_CALIBRATED);
        assertThat(sentences(assessed, FindingCode.DISPLAY_SET_FOR_ANOTHER_MATERIAL))
                .hasSize(1);
        assertThat(sentences(assessed, FindingCode.DISPLAY_SET_FOR_ANOTHER_SETTING))
                .as("both at 2 in")
                .isEmpty();
    }

    @Test
    void theDaysCalibrationCountsBeforeItIsEntered() {
        TruckDay truck =
                with(withNothingInForce(idle("T-1")), calibrationCatch(8, 2)).drive(stated(2, 40));

        assertThat(only(first(day(truck).withRoutes(List.of(route("Hill road", 300, 10, 20)))))
                        .status())
                .isEqualTo(RouteAssessment.Status.HELD);
    }

    private static RouteEntry sprayed(double gallonsPerMile, double slowest, double fastest) {
        return new RouteEntry(
                "parkway",
                "brine",
                new TargetEntry(
                        Optional.of(Amounts.of(gallonsPerMile, SpreadingUnits.US_GALLON_PER_MILE)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                Amounts.of(slowest, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(fastest, SpreadingUnits.MILE_PER_HOUR),
                List.of());
    }

    private static FleetDay liquids(String truck) {
        return LiquidDays.read("""
                {"format": "gritwright/fleet-day", "formatVersion": 2, "day": "2026-10-19", "seasonStart": "2026-11-01",
                 "tolerance": "4 %%", "scales": [],
                 "graduates": [{"id": "M", "capacity": "5.5 gal", "division": "0.02 gal", "tolerance": "0.01 gal"}],
                 "materials": [{"name": "brine", "density": "9.82 lb/gal"}, {"name": "calcium", "density": "10.9 lb/gal"}],
                 "trucks": [{"id": "P-1", %s}]}""".formatted(truck));
    }

    /** Known from 60 to 600 rev/min at 0.016 gal each. */
    private static FleetDay pump(String rest) {
        return liquids("""
                "pump": {"type": "pump-table", "version": 1, "parameters": {"speeds": ["60 rev/min", "600 rev/min"],
                  "flows": ["0.96 gal/min", "9.6 gal/min"]}}, "pulsesPerRevolution": "30 pulse/rev", "gearRatio": "1", %s""".formatted(rest));
    }

    private static final String LISTED =
            "\"inForce\": [{\"value\": \"0.016 gal/rev\", \"since\": \"2026-10-01\", \"material\": \"brine\"}]";

    /** 300 rev. */
    private static final String CAUGHT = """
            "calibrationCatches": [{"at": "2026-10-19T09:00:00-04:00", "material": "brine",
              "read": {"container": "M", "fills": ["4.8 gal"]}, "counted": {"pulses": "9000 pulse"},
              "primed": true, "coasting": "in-both"}]""";

    /** 10 gal/mi at 57 mi/h are 9.5 gal/min, 593.75 rev/min; at 58 mi/h 604. */
    @ParameterizedTest
    @CsvSource({"6, 57, true", "6, 58, false", "5.7, 57, false"})
    void aPumpIsTurnedByWhatItDischargesARevolution(double slowest, double fastest, boolean good) {
        for (String discharge : List.of(LISTED, CAUGHT)) {
            TruckAssessment assessed = first(pump(discharge).withRoutes(List.of(sprayed(10, slowest, fastest))));
            assertThat(only(assessed).status())
                    .isEqualTo(good ? RouteAssessment.Status.RANGE_NOT_KNOWN : RouteAssessment.Status.NOT_HELD);
            assertThat(sentences(assessed, FindingCode.ROUTE_OUTSIDE_METER)).hasSize(good ? 0 : 1);
        }
    }

    @Test
    void ofALiquidTheVolumeIsTold() {
        FleetDay day = pump(LISTED);
        TruckDay driven = day.trucks().get(0).drive(DriveEntry.stated(Driven.range(60, 600, RangeSource.FROM_MAKER)));
        TruckAssessment assessed = first(day.withTrucks(List.of(driven)).withRoutes(List.of(sprayed(10, 10, 70))));

        // 600 × 0.016 ÷ (70 ÷ 60) = 8.229; 600 × 0.016 × 60 ÷ 10 = 57.6.
        assertThat(sentences(assessed, FindingCode.ROUTE_ABOVE_RANGE))
                .containsExactly(
                        "Route parkway: 10 gal/mi at 70 mi/h needs 729.2 rev/min for brine, but the drive holds"
                                + " 600 rev/min at most: it will lay 8.229 gal/mi. The rate holds up to 57.6 mi/h.");
        assertThat(only(assessed).best().orElseThrow().envelope().range().highest())
                .isEqualTo(speed(600));
    }

    /** 80 gal/mi at 3.8 mi/h are 5.07 gal/min of brine; as many pounds of calcium are 4.56 gal/min. */
    @Test
    void aRouteOfOneLiquidIsNotJudgedByAnother() {
        FleetDay day = liquids("""
                "flowMeter": {"type": "k-factor", "version": 1, "parameters": {"kFactor": "600 pulse/gal", "lowFlowCutoff": "5 gal/min"}},
                 "inForce": [{"value": "600 pulse/gal", "since": "2026-10-01", "material": "brine"},
                   {"value": "600 pulse/gal", "since": "2026-10-01", "material": "calcium"}]""");

        assertThat(only(first(day.withRoutes(List.of(sprayed(80, 3.8, 30))))).status())
                .isEqualTo(RouteAssessment.Status.RANGE_NOT_KNOWN);
        assertThat(only(first(day.withRoutes(List.of(sprayed(80, 3.7, 30))))).status())
                .isEqualTo(RouteAssessment.Status.NOT_HELD);
    }

    /** What can't be computed stops this truck only. */
    @Test
    void aRouteWhoseRateIsOfALiquidRefusesTheTruckWithGrains() {
        RouteEntry wrong = new RouteEntry(
                "parkway",
                "salt",
                sprayed(10, 10, 20).target(),
                Amounts.of(10, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(20, SpreadingUnits.MILE_PER_HOUR),
                List.of("T-1"));
        List<TruckAssessment> both = LiquidDays.assess(
                day(idle("T-1").drive(stated(2, 28)), idle("T-2")).withRoutes(List.of(wrong)));

        assertThat(Assessments.reasons(both.get(0)))
                .singleElement()
                .satisfies(one -> assertThat(one).startsWith("/trucks/0: ").contains("a mass per distance"));
        assertThat(both.get(1).refusals()).isEmpty();
    }
}
