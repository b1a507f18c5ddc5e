package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.fleet.assessment.Driven.first;
import static org.gritwright.core.fleet.assessment.Driven.measured;
import static org.gritwright.core.fleet.assessment.Driven.route;
import static org.gritwright.core.fleet.assessment.Driven.run;
import static org.gritwright.core.fleet.assessment.Driven.sentences;
import static org.gritwright.core.fleet.assessment.Driven.stated;
import static org.gritwright.core.fleet.assessment.Driven.steps;
import static org.gritwright.core.fleet.assessment.Driven.twoToTwentyEight;
import static org.gritwright.core.fleet.day.Trucks.DAY;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.inForce;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.Material;
import org.gritwright.core.range.Direction;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** 5.2 lb/rev at 2 in: a rate of 300 lb/mi at 35 mi/h needs 300 × 35 ÷ 60 ÷ 5.2 = 33.65 rev/min. */
class RoutesTest {
    private static TruckDay truck() {
        return idle("T-1").drive(stated(2, 28));
    }

    /** Proven by a catch that can't reach the range's limits: 28.85 rev/min asked, 2 to 30 held. */
    private static TruckDay proven() {
        return with(withRoadSpeed(idle("T-1"), 13_000), verificationCatch(9, "5.2 lb/rev", 120, 57.7))
                .drive(stated(2, 30));
    }

    private static RouteAssessment only(TruckAssessment truck) {
        assertThat(truck.refusals()).isEmpty();
        assertThat(truck.routes()).hasSize(1);
        return truck.routes().get(0);
    }

    @Test
    void aRouteThatNeedsAFasterShaftIsToldWithWhatItWillLayAndUpToWhichSpeedItHolds() {
        TruckAssessment assessed = first(day(truck()).withRoutes(List.of(route("Hill road", 300, 10, 35))));
        RouteAssessment route = only(assessed);
        assertThat(route.status()).isEqualTo(RouteAssessment.Status.NOT_HELD);
        RouteFit best = route.best().orElseThrow();
        assertThat(best.point()).hasToString("salt at 2 in");
        assertThat(best.held()).isFalse();
        // 28 rev/min × 5.2 lb/rev ÷ (35 ÷ 60 mi/min) = 249.6 lb/mi.
        assertThat(Amounts.in(best.atFastest().delivered(), SpreadingUnits.POUND_PER_MILE))
                .isCloseTo(249.6, within(1e-9));
        assertThat(best.atSlowest().limit()).isEmpty();
        assertThat(sentences(assessed, FindingCode.ROUTE_ABOVE_RANGE))
                .containsExactly(
                        "Route Hill road: 300 lb/mi at 35 mi/h needs 33.65 rev/min for salt at 2 in, but the drive"
                                + " holds 28 rev/min at most: it will lay 249.6 lb/mi. The rate holds up to 29.12 mi/h.");
        assertThat(steps(assessed)).contains(NextStep.FIT_TO_DRIVE);
    }

    @Test
    void aRouteThatNeedsASlowerShaftIsToldToo() {
        TruckAssessment assessed = first(day(truck()).withRoutes(List.of(route("Bridges", 30, 10, 40))));
        assertThat(only(assessed).status()).isEqualTo(RouteAssessment.Status.NOT_HELD);
        // 30 × 10 ÷ 60 ÷ 5.2 = 0.9615; 2 × 5.2 ÷ (10 ÷ 60) = 62.4; 2 × 5.2 × 60 ÷ 30 = 20.8.
        assertThat(sentences(assessed, FindingCode.ROUTE_BELOW_RANGE))
                .containsExactly(
                        "Route Bridges: 30 lb/mi at 10 mi/h needs only 0.9615 rev/min for salt at 2 in, but the drive"
                                + " turns no more slowly than 2 rev/min steadily: it will lay 62.4 lb/mi, unless the controller"
                                + " stops the conveyor. The rate holds from 20.8 mi/h on.");
        assertThat(sentences(assessed, FindingCode.ROUTE_ABOVE_RANGE)).isEmpty();
    }

    @Test
    void whatIsLostWithinTheToleranceIsNoMatter() {
        // 28 ÷ 28.85 is 2.9 % less, 28 ÷ 29.33 is 4.5 % less.
        assertThat(only(first(day(truck()).withRoutes(List.of(route("Flat road", 300, 10, 30)))))
                        .status())
                .isEqualTo(RouteAssessment.Status.HELD);
        assertThat(only(first(day(truck()).withRoutes(List.of(route("Flat road", 300, 10, 30.5)))))
                        .status())
                .isEqualTo(RouteAssessment.Status.NOT_HELD);
    }

    @Test
    void aTruckThatIsProvenHasSomethingToDoWhereARouteIsNotHeld() {
        assertThat(first(day(proven())).nextStep()).isEqualTo(NextStep.NOTHING);
        assertThat(first(day(proven()).withRoutes(List.of(route("Flat road", 300, 10, 30))))
                        .nextStep())
                .isEqualTo(NextStep.NOTHING);
        assertThat(first(day(proven()).withRoutes(List.of(route("Hill road", 300, 10, 35))))
                        .nextStep())
                .isEqualTo(NextStep.FIT_TO_DRIVE);
    }

    @Test
    void anotherCalibratedSettingThatServesIsNamed() {
        TruckDay two = truck().inForce(List.of(inForce("5.2 lb/rev", DAY), inForce("7.8 lb/rev", 3, Since.of(DAY))));
        TruckAssessment assessed = first(day(two).withRoutes(List.of(route("Hill road", 300, 10, 35))));
        RouteAssessment route = only(assessed);
        assertThat(route.status()).isEqualTo(RouteAssessment.Status.HELD);
        assertThat(route.fits())
                .extracting(fit -> fit.point().toString())
                .containsExactly("salt at 3 in", "salt at 2 in");
        assertThat(sentences(assessed, FindingCode.ROUTE_NEEDS_SETTING))
                .containsExactly(
                        "Route Hill road can be done with salt at 3 in, but not with salt at 2 in: there 300 lb/mi at"
                                + " 35 mi/h would come to 249.6 lb/mi.");
        assertThat(steps(assessed)).doesNotContain(NextStep.FIT_TO_DRIVE);
    }

    private static FleetDay withSand(FleetDay day) {
        Material sand = Material.of("sand", Amounts.of(95, SpreadingUnits.POUND_PER_CUBIC_FOOT));
        return new FleetDay(
                day.day(),
                day.seasonStart(),
                day.tolerance(),
                day.decisionRule(),
                day.allowances(),
                Optional.empty(),
                Optional.empty(),
                day.scales(),
                List.of(),
                List.of(day.materials().get(0), sand),
                Optional.empty(),
                day.routes(),
                day.trucks());
    }

    @Test
    void aMaterialThatIsNotCalibratedCallsForACalibration() {
        TruckAssessment assessed =
                first(withSand(day(proven())).withRoutes(List.of(route("Hill road", "sand", 300, 10, 20))));
        assertThat(only(assessed).status()).isEqualTo(RouteAssessment.Status.NOT_CALIBRATED);
        assertThat(sentences(assessed, FindingCode.ROUTE_NOT_CALIBRATED))
                .containsExactly("Route Hill road needs sand, and nothing is calibrated for it on this truck.");
        assertThat(assessed.nextStep()).isEqualTo(NextStep.CALIBRATE);
    }

    @Test
    void withoutARangeNobodyKnows() {
        TruckAssessment assessed = first(day(idle("T-1")).withRoutes(List.of(route("Hill road", 300, 10, 35))));
        assertThat(only(assessed).status()).isEqualTo(RouteAssessment.Status.RANGE_NOT_KNOWN);
        assertThat(assessed.points().get(0).envelope()).isEmpty();
        assertThat(sentences(assessed, FindingCode.ROUTE_RANGE_NOT_KNOWN))
                .containsExactly(
                        "It is not known which shaft speeds the drive holds, so that nobody can tell whether it"
                                + " can do route Hill road: measure the drive where the shaft turns.");
        assertThat(steps(assessed)).doesNotContain(NextStep.FIT_TO_DRIVE);
    }

    @Test
    void beyondTheLastCommandThatWasTriedNobodyKnowsEither() {
        // Still rising at the last command of 60 %: more may be left.
        TruckDay half = idle("T-1").drive(measured(run(Direction.RISING, 29, 0, 30, 2, 30, 2, 40, 8, 50, 14, 60, 20)));
        TruckAssessment assessed = first(day(half).withRoutes(List.of(route("Hill road", 300, 10, 35))));
        assertThat(only(assessed).status()).isEqualTo(RouteAssessment.Status.NOT_HELD);
        assertThat(sentences(assessed, FindingCode.ROUTE_BEYOND_MEASURED))
                .containsExactly(
                        "Route Hill road: 300 lb/mi at 35 mi/h needs 33.65 rev/min for salt at 2 in, but the drive was"
                                + " measured from 2 rev/min to 20 rev/min only: measure it there too.");
        assertThat(sentences(assessed, FindingCode.ROUTE_ABOVE_RANGE)).isEmpty();
    }

    @Test
    void theEnvelopeIsThatOfTheDaysCalibrationWithItsUncertainty() {
        TruckDay calibrated = with(idle("T-1"), calibrationCatch(8, 2), calibrationCatch(9, 2), calibrationCatch(10, 2))
                .drive(twoToTwentyEight());
        PointAssessment point = first(day(calibrated)).points().get(0);
        Envelope envelope = point.envelope().orElseThrow();
        assertThat(envelope.discharge())
                .isEqualTo(point.calibration().orElseThrow().dischargePerRevolution());
        assertThat(envelope.discharge().standardUncertainty()).isPresent();
        assertThat(Amounts.in(envelope.range().highest(), SpreadingUnits.REVOLUTION_PER_MINUTE))
                .isCloseTo(28, within(1e-9));
        assertThat(first(day(truck()))
                        .points()
                        .get(0)
                        .envelope()
                        .orElseThrow()
                        .discharge()
                        .standardUncertainty())
                .isEmpty();
    }

    @Test
    void theEnvelopeIsThatOfAProposedCorrection() {
        // 57.7 rev discharge 300 lb, where 4.8 lb/rev believe to lay 277 lb.
        TruckDay wrong = with(
                        idle("T-1").inForce(List.of(inForce("4.8 lb/rev", DAY))),
                        verificationCatch(9, "4.8 lb/rev", 120, 57.7))
                .drive(stated(2, 40));
        PointAssessment point = first(day(wrong)).points().get(0);
        assertThat(point.correction()).isPresent();
        assertThat(Amounts.in(point.envelope().orElseThrow().discharge().value(), SpreadingUnits.POUND_PER_REVOLUTION))
                .isCloseTo(5.2, within(1e-9));
    }

    @Test
    void aRouteIsForTheTrucksThatItNamesOrForAll() {
        List<RouteEntry> routes = List.of(route("Hill road", 300, 10, 35, "T-2"), route("Flat road", 300, 10, 20));
        List<TruckAssessment> trucks = FleetAssessor.of(BuiltInTypes.registry())
                .assess(day(truck(), idle("T-2")).withRoutes(routes));
        assertThat(trucks.get(0).routes()).extracting(one -> one.route().name()).containsExactly("Flat road");
        assertThat(trucks.get(1).routes())
                .extracting(one -> one.route().name())
                .containsExactly("Hill road", "Flat road");
    }

    @Test
    void aRouteThatNamesWhatIsNotThereRefusesTheDay() {
        assertThatThrownBy(() -> first(day(truck()).withRoutes(List.of(route("Hill road", "slat", 300, 10, 35)))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("route \"Hill road\": material must be one of [salt]: \"slat\"");
        assertThatThrownBy(() -> first(day(truck()).withRoutes(List.of(route("Hill road", 300, 10, 35, "T-7")))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("route \"Hill road\": truck must be one of [T-1]: \"T-7\"");
        RouteEntry route = route("Hill road", 300, 10, 35);
        assertThatThrownBy(() -> first(day(truck()).withRoutes(List.of(route, route))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("route must be listed once: Hill road");
    }

    @Test
    void aNumberThatCanNotBeRefusesTheTrucksOfItsRoute() {
        List<TruckAssessment> trucks = FleetAssessor.of(BuiltInTypes.registry())
                .assess(day(truck(), idle("T-2")).withRoutes(List.of(route("Hill road", 300, 10, 3500, "T-1"))));
        assertThat(Assessments.reasons(trucks.get(0)))
                .containsExactly(
                        "/routes/0/highestSpeed: highest speed must be within 0.01 km/h to 150 km/h: 3500 mi/h");
        assertThat(trucks.get(1).isRefused()).isFalse();
    }
}
