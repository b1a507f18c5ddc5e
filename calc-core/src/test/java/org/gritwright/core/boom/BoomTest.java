package org.gritwright.core.boom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.boom.BoomSamples.BOOM;
import static org.gritwright.core.boom.BoomSamples.ONE;
import static org.gritwright.core.boom.BoomSamples.TEN_POUNDS;
import static org.gritwright.core.boom.BoomSamples.WATER;
import static org.gritwright.core.boom.BoomSamples.gallonsPerMinute;
import static org.gritwright.core.boom.BoomSamples.number;
import static org.gritwright.core.boom.BoomSamples.psi;
import static org.gritwright.core.boom.BoomSamples.section;
import static org.gritwright.core.boom.NozzleTest.assertRefused;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.Bound;
import org.gritwright.core.envelope.Limit;
import org.gritwright.core.envelope.Span;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.junit.jupiter.api.Test;

class BoomTest {
    private static final Boom OFF = BOOM.switched("left", false).switched("right", false);

    @Test
    void whatIsOnIsTreated() {
        assertThat(BOOM.nozzlesOn()).isEqualTo(10);
        assertThat(BOOM.lanesTreated()).isEqualTo(Amounts.of(2, SpreadingUnits.LANE));
        assertThat(number(BOOM.treatedWidth())).isCloseTo(300, within(1e-12));
        Boom right = BOOM.switched("left", false);
        assertThat(right.nozzlesOn()).isEqualTo(6);
        assertThat(right.lanesTreated()).isEqualTo(Amounts.of(1, SpreadingUnits.LANE));
        assertThat(number(right.treatedWidth())).isCloseTo(180, within(1e-12));
        assertThat(right.switched("left", true)).isEqualTo(BOOM);
        assertThat(number(OFF.treatedWidth())).isZero();
        assertThat(OFF.nozzlesOn()).isZero();
    }

    @Test
    void aSectionIsAsWideAsItsNozzles() {
        assertThat(section("s", 4).width()).isEqualTo(Amounts.of(120, SpreadingUnits.INCH));
    }

    @Test
    void ratesPerLaneAndAreaBecomeRatesPerDistance() {
        assertThat(number(BOOM.rateFromLaneRate(Amounts.of(20, SpreadingUnits.US_GALLON_PER_LANE_MILE))))
                .isCloseTo(40, within(1e-12));
        // 25 ft × 5280 ft are 132 of 1000 ft².
        assertThat(number(BOOM.rateFromArealRate(Amounts.of(0.5, SpreadingUnits.US_GALLON_PER_1000_SQUARE_FEET))))
                .isCloseTo(66, within(1e-12));
    }

    @Test
    void theFlowIsThatOfAllNozzles() {
        assertThat(number(BOOM.flow(psi(40), WATER))).isCloseTo(10, within(1e-13));
        assertThat(number(BOOM.switched("right", false).flow(psi(90), WATER))).isCloseTo(6, within(1e-13));
        assertThat(number(BOOM.pressure(gallonsPerMinute(15), WATER))).isCloseTo(90, within(1e-12));
        assertThat(number(BOOM.pressure(gallonsPerMinute(5), WATER))).isCloseTo(10, within(1e-12));
        assertThat(number(BOOM.pressure(gallonsPerMinute(10), TEN_POUNDS))).isCloseTo(40 / 0.834, within(1e-12));
        assertThat(BOOM.pressure(gallonsPerMinute(10), WATER).getUnit())
                .isEqualTo(SpreadingUnits.POUND_FORCE_PER_SQUARE_INCH);
        assertThat(BOOM.flow(psi(40), WATER).getUnit()).isEqualTo(SpreadingUnits.US_GALLON_PER_MINUTE);
    }

    @Test
    void eachSectionHasItsShare() {
        List<SectionFlow> flows = BOOM.sectionFlows(psi(40), WATER);
        assertThat(flows).extracting(SectionFlow::section).containsExactly("left", "right");
        assertThat(flows).extracting(SectionFlow::nozzles).containsExactly(4, 6);
        assertThat(number(flows.get(0).flow())).isCloseTo(4, within(1e-13));
        assertThat(number(flows.get(0).perNozzle())).isCloseTo(1, within(1e-13));
        assertThat(number(flows.get(0).share())).isCloseTo(40, within(1e-12));
        assertThat(number(flows.get(1).share())).isCloseTo(60, within(1e-12));
        assertThat(BOOM.switched("left", false).sectionFlows(psi(40), WATER))
                .singleElement()
                .satisfies(only -> assertThat(number(only.share())).isCloseTo(100, within(1e-12)));
    }

    @Test
    void sectionsOfDifferentNozzlesShareThePressuresThatAllAreMadeFor() {
        Nozzle high = Nozzle.rated("high", psi(40), gallonsPerMinute(2), WATER, psi(30), psi(120));
        Boom mixed = Boom.of(section("left", 4), section("right", high, 2));
        assertThat(number(mixed.flow(psi(40), WATER))).isCloseTo(8, within(1e-13));
        assertThat(number(mixed.pressure(gallonsPerMinute(12), WATER))).isCloseTo(90, within(1e-11));
        assertRefused("nozzle pressure must be within 30 psi to 90 psi: 29 psi", () -> mixed.flow(psi(29), WATER));
        assertRefused("nozzle pressure must be within 30 psi to 90 psi: 91 psi", () -> mixed.flow(psi(91), WATER));
        Nozzle other = Nozzle.rated("other", psi(140), gallonsPerMinute(2), WATER, psi(100), psi(200));
        assertRefused(
                "nozzles of the sections that are on must be made for a pressure in common: one, other",
                () -> Boom.of(section("left", 4), section("right", other, 2)).flow(psi(90), WATER));
        Nozzle meets = Nozzle.rated("meets", psi(90), gallonsPerMinute(2), WATER, psi(90), psi(200));
        assertThat(number(
                        Boom.of(section("left", 4), section("right", meets, 2)).flow(psi(90), WATER)))
                .isCloseTo(10, within(1e-13));
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> BOOM.pressure(gallonsPerMinute(15.1), WATER))
                .withMessageStartingWith("flow of the boom must be within ");
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> BOOM.pressure(gallonsPerMinute(4.9), WATER));
        assertRefused("sections of a boom must be one or more: 0", () -> Boom.of());
        assertRefused(
                "sections of a boom must be at most 100: more",
                () -> new Boom(Collections.nCopies(101, section("s", 1))));
        assertRefused(
                "name of a boom section must be in the boom once: s", () -> Boom.of(section("s", 1), section("s", 2)));
        assertRefused("boom section must be one of left, right: middle", () -> BOOM.switched("middle", true));
        assertRefused("boom must be switched on in one section or more: off", () -> OFF.flow(psi(40), WATER));
        assertRefused(
                "lanes treated must be greater than 0: 0 lane",
                () -> OFF.rateFromLaneRate(Amounts.of(20, SpreadingUnits.US_GALLON_PER_LANE_MILE)));
        assertRefused("nozzles of boom section s must be 1 to 1000: 0", () -> section("s", 0));
        assertRefused("nozzles of boom section s must be 1 to 1000: 1001", () -> section("s", 1001));
        assertThat(section("s", 1000).nozzles()).isEqualTo(1000);
        assertRefused("name of a boom section must be a text that is not blank: \"\"", () -> section("", 1));
        assertRefused(
                "lanes of boom section s must be greater than 0: 0 lane",
                () -> BoomSection.of(
                        "s", Amounts.of(0, SpreadingUnits.LANE), ONE, 1, Amounts.of(30, SpreadingUnits.INCH)));
        assertRefused(
                "spacing of the nozzles of boom section s must be greater than 0: 0 in",
                () -> BoomSection.of(
                        "s", Amounts.of(1, SpreadingUnits.LANE), ONE, 1, Amounts.of(0, SpreadingUnits.INCH)));
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> BOOM.flow(psi(40), Amounts.of(0, SpreadingUnits.KILOGRAM_PER_LITER)));
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> BOOM.sectionFlows(psi(40), Amounts.of(0, SpreadingUnits.KILOGRAM_PER_LITER)));
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> BOOM.pressure(gallonsPerMinute(10), Amounts.of(0, SpreadingUnits.KILOGRAM_PER_LITER)));
    }

    // Speeds and rates

    private static final Quantity<LiquidApplicationRate> RATE = Amounts.of(30, SpreadingUnits.US_GALLON_PER_MILE);

    private static Quantity<Speed> mph(double speed) {
        return Amounts.of(speed, SpreadingUnits.MILE_PER_HOUR);
    }

    private static BoomEnvelope withPump(double least, double most) {
        return new BoomEnvelope(BOOM, WATER, gallonsPerMinute(least), gallonsPerMinute(most));
    }

    private static void assertSpan(Span<?> span, double lowest, Limit lower, double highest, Limit upper) {
        Bound<?> low = span.lowest().orElseThrow();
        assertThat(number(low.value().value())).isCloseTo(lowest, within(1e-12 * lowest));
        assertThat(low.limit()).isEqualTo(lower);
        assertThat(number(span.highest().value().value())).isCloseTo(highest, within(1e-12 * highest));
        assertThat(span.highest().limit()).isEqualTo(upper);
        assertThat(low.value().standardUncertainty()).isEmpty();
    }

    /** 30 gal/mi at 10 mi/h are 5 gal/min. */
    @Test
    void theNozzlesOrThePumpLimitTheSpeed() {
        assertSpan(
                withPump(0, 100).speedsFor(RATE), 10, Limit.LOWEST_NOZZLE_PRESSURE, 30, Limit.HIGHEST_NOZZLE_PRESSURE);
        assertSpan(withPump(6, 12).speedsFor(RATE), 12, Limit.LEAST_PUMP_FLOW, 24, Limit.MOST_PUMP_FLOW);
        assertSpan(withPump(6, 100).speedsFor(RATE), 12, Limit.LEAST_PUMP_FLOW, 30, Limit.HIGHEST_NOZZLE_PRESSURE);
        assertSpan(withPump(0, 12).speedsFor(RATE), 10, Limit.LOWEST_NOZZLE_PRESSURE, 24, Limit.MOST_PUMP_FLOW);
        assertSpan(
                withPump(5, 15).speedsFor(RATE), 10, Limit.LOWEST_NOZZLE_PRESSURE, 30, Limit.HIGHEST_NOZZLE_PRESSURE);
        assertThat(withPump(0, 100).speedsFor(RATE).highest().value().value().getUnit())
                .isEqualTo(SpreadingUnits.MILE_PER_HOUR);
    }

    @Test
    void theyLimitTheRateAsWell() {
        assertSpan(withPump(0, 12).ratesAt(mph(20)), 15, Limit.LOWEST_NOZZLE_PRESSURE, 36, Limit.MOST_PUMP_FLOW);
        assertThat(withPump(0, 100).ratesAt(mph(20)).highest().value().value().getUnit())
                .isEqualTo(SpreadingUnits.US_GALLON_PER_MILE);
    }

    @Test
    void aPumpTooSmallForTheNozzlesHoldsNothing() {
        Span<Speed> span = withPump(0, 3).speedsFor(RATE);
        assertSpan(span, 10, Limit.LOWEST_NOZZLE_PRESSURE, 6, Limit.MOST_PUMP_FLOW);
    }

    @Test
    void aRateAtASpeedTakesItsFlowAndPressure() {
        Spraying spraying = withPump(0, 100).at(RATE, mph(20));
        assertThat(number(spraying.flow())).isCloseTo(10, within(1e-13));
        assertThat(number(spraying.pressure().orElseThrow())).isCloseTo(40, within(1e-12));
        assertThat(spraying.limit()).isEmpty();
        assertThat(spraying.sections()).extracting(SectionFlow::section).containsExactly("left", "right");
        assertThat(number(spraying.sections().get(1).flow())).isCloseTo(6, within(1e-12));
    }

    @Test
    void beyondALimitThereIsNoPressure() {
        assertThat(withPump(0, 100).at(RATE, mph(31)))
                .isEqualTo(new Spraying(
                        withPump(0, 100).at(RATE, mph(31)).flow(),
                        Optional.empty(),
                        List.of(),
                        Optional.of(Limit.HIGHEST_NOZZLE_PRESSURE)));
        assertThat(withPump(0, 100).at(RATE, mph(9)).limit()).contains(Limit.LOWEST_NOZZLE_PRESSURE);
        assertThat(withPump(6, 12).at(RATE, mph(25)).limit()).contains(Limit.MOST_PUMP_FLOW);
        assertThat(withPump(6, 12).at(RATE, mph(11)).limit()).contains(Limit.LEAST_PUMP_FLOW);
        assertThat(withPump(5, 15).at(RATE, mph(10)).limit()).isEmpty();
        assertThat(withPump(5, 15).at(RATE, mph(30)).limit()).isEmpty();
    }

    @Test
    void anEnvelopeThatCannotBeIsRefused() {
        assertRefused("least flow of the pump must be 0 or more: -1 gal/min", () -> withPump(-1, 100));
        assertRefused("most flow of the pump must be greater than 0: 0 gal/min", () -> withPump(0, 0));
        assertRefused("most flow of the pump must be at least 6 gal/min: 5 gal/min", () -> withPump(6, 5));
        Quantity<FlowRate> ten = gallonsPerMinute(10);
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> new BoomEnvelope(BOOM, Amounts.of(0, SpreadingUnits.KILOGRAM_PER_LITER), ten, ten));
        assertRefused(
                "boom must be switched on in one section or more: off", () -> new BoomEnvelope(OFF, WATER, ten, ten));
        assertRefused(
                "rate must be greater than 0: 0 gal/mi",
                () -> withPump(0, 10).speedsFor(Amounts.of(0, SpreadingUnits.US_GALLON_PER_MILE)));
        assertRefused(
                "rate must be greater than 0: 0 gal/mi",
                () -> withPump(0, 10).at(Amounts.of(0, SpreadingUnits.US_GALLON_PER_MILE), mph(10)));
        assertRefused(
                "road speed must be greater than 0: 0 mi/h",
                () -> withPump(0, 10).at(RATE, mph(0)));
        assertRefused(
                "road speed must be greater than 0: 0 mi/h",
                () -> withPump(0, 10).ratesAt(mph(0)));
    }
}
