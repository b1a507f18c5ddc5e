package org.gritwright.core.history.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.day;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.Samples;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.Happenings;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class FleetComparisonTest {
    private static Event calibrated(String truck, CalibrationPoint point, double pounds, double scatterPercent) {
        return Event.of(
                truck + " calibrated",
                day("2026-10-19"),
                truck,
                new What.Calibrated(
                        point,
                        Measured.once(Amounts.of(pounds, SpreadingUnits.POUND_PER_REVOLUTION)),
                        List.of(),
                        3,
                        Optional.of(new Repeatability(Amounts.of(scatterPercent, SpreadingUnits.PERCENT), 2))),
                "day book");
    }

    /** Twelve drag chains, of which T-3 scatters ten times as much and T-5 runs a fifth fuller; and an auger. */
    private static History fleet() {
        List<Event> events = new ArrayList<>();
        for (int truck = 0; truck < 12; truck++) {
            events.add(calibrated("T-" + truck, TWO, truck == 5 ? 30 : 25 + 0.1 * (truck % 3), truck == 3 ? 8 : 0.8));
        }
        events.add(calibrated("A-1", Samples.AUGER_POINT, 5, 1.5));
        return History.of(events, Happenings.YARD);
    }

    @Test
    void theScatterOfAKindIsPooledWithoutTheOddTruck() {
        List<FleetScatter> all = FleetScatter.of(fleet());

        assertThat(all).hasSize(2);
        FleetScatter chains = all.stream()
                .filter(one -> one.kind().equals(Kind.of(TWO)))
                .findFirst()
                .orElseThrow();
        assertThat(chains.odd()).containsExactly("T-3");
        assertThat(chains.trucks()).isEqualTo(11);
        assertThat(chains.repeatability().relative()).isCloseTo(0.008, within(1e-12));
        assertThat(chains.repeatability().degreesOfFreedom()).isEqualTo(22);
        assertThat(chains.chance().orElseThrow()).isLessThan(0.01);
    }

    @Test
    void severalSamplesOfATruckAreOneOfItsOwn() {
        List<Event> events = new ArrayList<>(fleet().events());
        events.add(Event.of(
                "again",
                day("2026-11-19"),
                "A-1",
                ((What.Calibrated) events.stream()
                        .filter(one -> one.truck().filter("A-1"::equals).isPresent())
                        .findFirst()
                        .orElseThrow()
                        .what()),
                "day book"));

        assertThat(FleetScatter.of(History.of(events, Happenings.YARD)))
                .filteredOn(one -> one.kind().equals(Kind.of(Samples.AUGER_POINT)))
                .singleElement()
                .satisfies(one -> {
                    assertThat(one.trucks()).isEqualTo(1);
                    assertThat(one.repeatability().degreesOfFreedom()).isEqualTo(4);
                    assertThat(one.chance()).isEmpty();
                });
    }

    /** 25.1 lb/rev of a chain that sweeps its volume, at 80 lb/ft³. */
    @Test
    void theFillOfAKindHasItsMiddleAndTheTruckThatIsFarFromItIsNamed() {
        FleetFill chains = FleetFill.of(fleet()).stream()
                .filter(one -> one.kind().equals(Kind.of(TWO)))
                .findFirst()
                .orElseThrow();
        double swept = TWO.metering().sweptCubicMetersPerRevolution(TWO.setting());
        double density = 80 * 0.45359237 / Math.pow(0.3048, 3);

        assertThat(Amounts.si(Dimensionless.class, chains.median()))
                .isCloseTo(25.1 * 0.45359237 / (swept * density), within(1e-12));
        assertThat(chains.points())
                .hasSize(12)
                .filteredOn(FleetFill.OfPoint::isOdd)
                .extracting(FleetFill.OfPoint::truck)
                .containsExactly("T-5");
    }

    @Test
    void ofFewTrucksNoneIsOdd() {
        History few = History.of(
                List.of(
                        calibrated("T-1", TWO, 25, 1),
                        calibrated("T-2", TWO, 25, 1),
                        calibrated("T-3", TWO, 25, 1),
                        calibrated("T-4", TWO, 50, 1)),
                Happenings.YARD);

        assertThat(FleetFill.of(few))
                .singleElement()
                .satisfies(one -> assertThat(one.points()).noneMatch(FleetFill.OfPoint::isOdd));
        assertThat(Kind.of(TWO)).hasToString("drag-chain, version 1, salt");
    }

    private static FleetFill chains(double odd, int others) {
        List<Event> events = new ArrayList<>();
        events.add(calibrated("T-0", TWO, odd, 1));
        for (int truck = 1; truck <= others; truck++) {
            events.add(calibrated("T-" + truck, TWO, 25, 1));
        }
        return FleetFill.of(History.of(events, Happenings.YARD)).get(0);
    }

    /** Fills that are all alike are taken to vary by 1 % of them: 3.5 times that is odd. */
    @Test
    void ofFiveTrucksOneMayBeOddAndHowAlikeTheOthersAreDoesntMakeItSo() {
        assertThat(chains(25 * 1.036, 4).points())
                .filteredOn(FleetFill.OfPoint::isOdd)
                .extracting(FleetFill.OfPoint::truck)
                .containsExactly("T-0");
        assertThat(chains(25 * 1.034, 4).points()).noneMatch(FleetFill.OfPoint::isOdd);
        assertThat(chains(25 * 1.5, 3).points()).noneMatch(FleetFill.OfPoint::isOdd);
    }

    @Test
    void aPumpAndAFlowMeterAreOfTheTypeThatMeters() {
        assertThat(Kind.of(LiquidSamples.METER_POINT).type())
                .isEqualTo(LiquidSamples.METER.meter().id());
        assertThat(Kind.of(LiquidSamples.pumpPoint(Samples.SENSOR)).type())
                .isEqualTo(LiquidSamples.pump(Samples.SENSOR).pump().id());
        assertThat(Kind.of(LiquidSamples.METER_POINT)).isNotEqualTo(Kind.of(LiquidSamples.pumpPoint(Samples.SENSOR)));
    }
}
