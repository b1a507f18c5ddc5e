package org.gritwright.core.fleet.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.review.EnteredDays.FOUR;
import static org.gritwright.core.fleet.review.EnteredDays.calibration;
import static org.gritwright.core.fleet.review.EnteredDays.day;
import static org.gritwright.core.fleet.review.EnteredDays.net;
import static org.gritwright.core.fleet.review.EnteredDays.verification;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Trucks that discharge 40 lb a turn, and tickets that don't fit them. */
class FleetReviewTest {
    private static final CatchLimits SCATTERING = CatchLimits.COMMON.withAllowances(new CatchAllowances(
            Amounts.of(0, SpreadingUnits.PERCENT),
            Amounts.of(0, SpreadingUnits.PERCENT),
            Optional.empty(),
            Optional.of(Repeatability.assumed(Amounts.of(1, SpreadingUnits.PERCENT)))));

    /** A hundred catches that make the truck's own 40 lb a turn certain, as far as one catch scatters; then odd ones. */
    private static FleetReview.Truck truck(String id, double... turnsAndPounds) {
        List<CalibrationCatch> catches = new ArrayList<>();
        for (int i = 0; i < turnsAndPounds.length; i += 2) {
            catches.add(calibration(200 + i, FOUR, net(turnsAndPounds[i + 1]), Math.rint(100 * turnsAndPounds[i])));
        }
        IntStream.range(0, 100)
                .mapToObj(i -> calibration(i, FOUR, net(1600), 4000))
                .forEach(catches::add);
        return new FleetReview.Truck(id, "chain", Sketch.of(catches, List.of(), List.of(), List.of(), SCATTERING));
    }

    private static List<String> swapped(FleetReview.Truck of, FleetReview.Truck... others) {
        return new FleetReview(Stream.concat(Stream.of(of), Stream.of(others)).toList())
                .swapped(of.id()).stream().map(Slip::words).toList();
    }

    /** How many standard deviations of 1 % each what was caught is off, of 8 turns and of 12. */
    private static double pounds(double turns, double deviations) {
        return Math.rint(10 * 40 * turns * Math.exp(deviations * 0.01005)) / 10;
    }

    @Test
    void ticketsThatChangedPlacesAreNamedByTheOtherTruckAndBothTimes() {
        assertThat(swapped(truck("T-1", 8, 480), truck("T-2", 12, 320)))
                .containsExactly("ticket swapped with that of truck T-2, in 2 catches");
        assertThat(swapped(truck("T-2", 12, 320), truck("T-1", 8, 480)))
                .containsExactly("ticket swapped with that of truck T-1, in 2 catches");
    }

    @Test
    void aTruckDoesNotSwapTicketsWithItself() {
        assertThat(swapped(truck("T-1", 8, 480, 12, 320), truck("T-2"))).isEmpty();
        assertThat(swapped(truck("T-1", 8, 480, 12, 320))).isEmpty();
    }

    @Test
    void aSoundTicketIsNotSwapped() {
        assertThat(swapped(truck("T-1", 8, pounds(8, 2.8)), truck("T-2", 8, pounds(8, -2.8))))
                .isEmpty();
    }

    /** Off by 3.2 and 3.2, and by 2.2 if changed: e^5.4, and 100 · 2² or e^6 are asked for; exactly right if changed: e^11.6. */
    @Test
    void ticketsThatFitTheOtherTruckHardlyBetterAreNotSwapped() {
        // 8 turns and 8.08 turns are 1 % or one deviation apart: 3.2 off on one is 2.2 on the other.
        assertThat(swapped(truck("T-1", 8, pounds(8, 3.2)), truck("T-2", 8.08, pounds(8.08, -3.2))))
                .isEmpty();
        double middle = 8 * Math.exp(0.034);
        double turns = Math.rint(100 * middle) / 100;
        assertThat(swapped(truck("T-1", 8, 40 * turns), truck("T-2", turns, 320)))
                .hasSize(1);
    }

    /** 3.4² is e^11.6; 100 · 3² or e^6.8 are asked for in three trucks and 100 · 200² or e^15.2 in two hundred. */
    @Test
    void theMoreTrucksTheMoreATicketMustBeOff() {
        double turns = Math.rint(100 * 8 * Math.exp(0.034)) / 100;
        FleetReview.Truck one = truck("T-1", 8, 40 * turns);
        FleetReview.Truck other = truck("T-2", turns, 320);
        FleetReview.Truck sound =
                new FleetReview.Truck("T-3", "chain", day(List.of(calibration(0, FOUR, net(400), 1000)), List.of()));

        assertThat(swapped(one, other, sound)).hasSize(1);
        assertThat(swapped(
                        one,
                        Stream.concat(
                                        Stream.of(other),
                                        Stream.generate(() -> sound).limit(198))
                                .toArray(FleetReview.Truck[]::new)))
                .isEmpty();
    }

    /** 9.29 turns are 15 deviations more than 8: T-1's ticket fits T-2 just as it is, but T-2's is still 4 off on T-1. */
    @Test
    void aTicketThatDoesNotFitIsNotSwapped() {
        assertThat(swapped(truck("T-1", 8, pounds(8, 15)), truck("T-2", 9.3, pounds(9.3, -11))))
                .isEmpty();
    }

    /** What T-3 caught is 43 deviations off, what T-2 caught 40: T-3 needs the swap more, though it is 3 off with it. */
    @Test
    void ofTwoTicketsTheOneThatMakesBothTrucksMoreLikelyIsNamed() {
        assertThat(swapped(truck("T-1", 8, 480), truck("T-2", 12, 320), truck("T-3", 12.4, 322)))
                .containsExactly("ticket swapped with that of truck T-3, in 2 catches");
    }

    private static FleetReview.Truck filled(int number, double pounds) {
        return new FleetReview.Truck(
                "T-" + number, "chain", day(List.of(calibration(0, FOUR, net(pounds), 1000)), List.of()));
    }

    private static FleetReview review(double... pounds) {
        int[] number = {0};
        return new FleetReview(DoubleStream.of(pounds)
                .mapToObj(one -> filled(++number[0], one))
                .toList());
    }

    @Test
    void aFillUnlikeThoseOfFourOthersIsFoundAndOneOfThreeIsNot() {
        FleetReview five = review(400, 401, 402, 403, 200);

        assertThat(five.unlikeOthers("T-5").map(Finding::sentence))
                .hasValueSatisfying(
                        sentence -> assertThat(sentence).contains("0.4 of what it can hold", "5 trucks", "0.802"));
        assertThat(five.unlikeOthers("T-1")).isEmpty();
        assertThat(review(400, 401, 402, 200).unlikeOthers("T-4")).isEmpty();
    }

    /** Fills may differ by 5 % as a standard deviation, so that 3.5 of them, or 19 %, are usual. */
    @Test
    void aFillIsUnlikeOnlyWhereItIsFarFromTheOthers() {
        assertThat(review(400, 400, 400, 400, 470).unlikeOthers("T-5")).isEmpty();
        assertThat(review(400, 400, 400, 400, 480).unlikeOthers("T-5")).isPresent();
    }

    @Test
    void aTruckThatTellsOfNoFillIsNotAmongThem() {
        List<FleetReview.Truck> trucks = new ArrayList<>();
        for (double pounds : new double[] {400, 401, 402, 200}) {
            trucks.add(filled(trucks.size() + 1, pounds));
        }
        trucks.add(new FleetReview.Truck(
                "T-5", "chain", day(List.of(), List.of(verification(0, FOUR, net(400), "40 lb/rev")))));

        assertThat(new FleetReview(trucks).unlikeOthers("T-4")).isEmpty();
    }
}
