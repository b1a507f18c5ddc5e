package org.gritwright.units.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.DischargeRate;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LaneWidth;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidArealApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.quantity.RotationalSpeed;

/** Every conversion there and back again, in any of the units. */
class RateLawsTest {
    private static <Q extends Quantity<Q>> Arbitrary<Quantity<Q>> quantities(Class<Q> kind) {
        Arbitrary<Unit<Q>> units = Arbitraries.of(
                UnitSymbol.ofKind(kind).stream().map(UnitSymbol::unit).toList());
        return Arbitraries.doubles()
                .between(0.001, 10_000)
                .ofScale(4)
                .flatMap(value -> units.map(unit -> Amounts.of(value, unit)));
    }

    @Provide
    Arbitrary<Quantity<ApplicationRate>> rates() {
        return quantities(ApplicationRate.class);
    }

    @Provide
    Arbitrary<Quantity<LaneApplicationRate>> laneRates() {
        return quantities(LaneApplicationRate.class);
    }

    @Provide
    Arbitrary<Quantity<ArealApplicationRate>> arealRates() {
        return quantities(ArealApplicationRate.class);
    }

    @Provide
    Arbitrary<Quantity<LiquidApplicationRate>> liquidRates() {
        return quantities(LiquidApplicationRate.class);
    }

    @Provide
    Arbitrary<Quantity<LiquidLaneApplicationRate>> liquidLaneRates() {
        return quantities(LiquidLaneApplicationRate.class);
    }

    @Provide
    Arbitrary<Quantity<LiquidArealApplicationRate>> liquidArealRates() {
        return quantities(LiquidArealApplicationRate.class);
    }

    @Provide
    Arbitrary<Quantity<PrewetRate>> prewetRates() {
        return quantities(PrewetRate.class);
    }

    @Provide
    Arbitrary<Quantity<BulkDensity>> densities() {
        return Arbitraries.doubles()
                .between(0.8, 2)
                .ofScale(3)
                .map(density -> Amounts.of(density, SpreadingUnits.KILOGRAM_PER_LITER));
    }

    @Provide
    Arbitrary<SolutionShare> shares() {
        return Arbitraries.doubles().between(0.1, 99.9).ofScale(2).map(SolutionShare::percent);
    }

    @Provide
    Arbitrary<LiquidChemical> solutions() {
        return densities()
                .flatMap(density -> Arbitraries.doubles()
                        .between(1, 50)
                        .ofScale(1)
                        .map(percent -> new LiquidChemical(density, Amounts.of(percent, SpreadingUnits.PERCENT))));
    }

    @Provide
    Arbitrary<Quantity<DischargePerRevolution>> discharges() {
        return quantities(DischargePerRevolution.class);
    }

    @Provide
    Arbitrary<Quantity<LaneCount>> lanes() {
        return Arbitraries.doubles().between(0.5, 6).ofScale(1).map(lanes -> Amounts.of(lanes, SpreadingUnits.LANE));
    }

    @Provide
    Arbitrary<Quantity<LaneWidth>> laneWidths() {
        return quantities(LaneWidth.class);
    }

    @Provide
    Arbitrary<Quantity<Length>> widths() {
        return quantities(Length.class);
    }

    @Provide
    Arbitrary<Quantity<Speed>> speeds() {
        return quantities(Speed.class);
    }

    private static <Q extends Quantity<Q>> void assertSame(Class<Q> kind, Quantity<Q> actual, Quantity<Q> expected) {
        double si = Amounts.si(kind, expected);
        assertThat(Amounts.si(kind, actual)).isCloseTo(si, within(1e-14 * si));
    }

    @Property
    void acrossLanesAndBack(
            @ForAll("rates") Quantity<ApplicationRate> rate,
            @ForAll("liquidRates") Quantity<LiquidApplicationRate> liquid,
            @ForAll("lanes") Quantity<LaneCount> lanes) {
        assertSame(ApplicationRate.class, Rates.rateFromLaneRate(Rates.laneRateFromRate(rate, lanes), lanes), rate);
        assertSame(
                LiquidApplicationRate.class,
                LiquidRates.rateFromLaneRate(LiquidRates.laneRateFromRate(liquid, lanes), lanes),
                liquid);
    }

    @Property
    void overALanesWidthAndBack(
            @ForAll("laneRates") Quantity<LaneApplicationRate> rate,
            @ForAll("liquidLaneRates") Quantity<LiquidLaneApplicationRate> liquid,
            @ForAll("laneWidths") Quantity<LaneWidth> width) {
        assertSame(
                LaneApplicationRate.class,
                Rates.laneRateFromArealRate(Rates.arealRateFromLaneRate(rate, width), width),
                rate);
        assertSame(
                LiquidLaneApplicationRate.class,
                LiquidRates.laneRateFromArealRate(LiquidRates.arealRateFromLaneRate(liquid, width), width),
                liquid);
    }

    @Property
    void overTheTreatedWidthAndBack(
            @ForAll("rates") Quantity<ApplicationRate> rate,
            @ForAll("liquidRates") Quantity<LiquidApplicationRate> liquid,
            @ForAll("widths") Quantity<Length> width) {
        assertSame(ApplicationRate.class, Rates.rateFromArealRate(Rates.arealRateFromRate(rate, width), width), rate);
        assertSame(
                LiquidApplicationRate.class,
                LiquidRates.rateFromArealRate(LiquidRates.arealRateFromRate(liquid, width), width),
                liquid);
    }

    @Property
    void perTwoLaneDistanceAndBack(
            @ForAll("laneRates") Quantity<LaneApplicationRate> rate,
            @ForAll("liquidLaneRates") Quantity<LiquidLaneApplicationRate> liquid) {
        assertSame(LaneApplicationRate.class, Rates.laneRateFromTwoLaneRate(Rates.twoLaneRateFromLaneRate(rate)), rate);
        assertSame(
                LiquidLaneApplicationRate.class,
                LiquidRates.laneRateFromTwoLaneRate(LiquidRates.twoLaneRateFromLaneRate(liquid)),
                liquid);
    }

    @Property
    void atASpeedAndBack(
            @ForAll("rates") Quantity<ApplicationRate> rate,
            @ForAll("liquidRates") Quantity<LiquidApplicationRate> liquid,
            @ForAll("speeds") Quantity<Speed> speed) {
        assertSame(ApplicationRate.class, Rates.rateFromDischarge(Rates.dischargeFromRate(rate, speed), speed), rate);
        assertSame(
                LiquidApplicationRate.class,
                LiquidRates.rateFromFlow(LiquidRates.flowFromRate(liquid, speed), speed),
                liquid);
    }

    @Property
    void atAShaftSpeedAndBack(
            @ForAll("rates") Quantity<ApplicationRate> rate,
            @ForAll("speeds") Quantity<Speed> speed,
            @ForAll("discharges") Quantity<DischargePerRevolution> discharge) {
        Quantity<RotationalSpeed> shaft = Rates.shaftSpeedFromRate(rate, speed, discharge);

        assertSame(ApplicationRate.class, Rates.rateFromShaftSpeed(discharge, shaft, speed), rate);
    }

    @Property
    void prewetAndBack(
            @ForAll("rates") Quantity<ApplicationRate> dry,
            @ForAll("laneRates") Quantity<LaneApplicationRate> dryLane,
            @ForAll("prewetRates") Quantity<PrewetRate> prewet) {
        assertSame(
                PrewetRate.class,
                PrewetRates.prewetRateFromRates(PrewetRates.liquidRateFromDryRate(dry, prewet), dry),
                prewet);
        assertSame(
                PrewetRate.class,
                PrewetRates.prewetRateFromLaneRates(
                        PrewetRates.liquidLaneRateFromDryLaneRate(dryLane, prewet), dryLane),
                prewet);
    }

    /** 1 − share loses digits where little is dry: at 99.9 % three of them. */
    @Property
    void aSolutionShareAsPrewetRateAndBack(
            @ForAll("shares") SolutionShare share, @ForAll("densities") Quantity<BulkDensity> density) {
        double ratio = Amounts.si(Dimensionless.class, share.ofTotal());
        SolutionShare again = SolutionShare.fromPrewetRate(share.prewetRate(density), density);
        assertThat(Amounts.si(Dimensionless.class, again.ofTotal())).isCloseTo(ratio, within(1e-14 * ratio));
    }

    @Property
    void thePartsOfADoseAreTheDose(
            @ForAll("arealRates") Quantity<ArealApplicationRate> total, @ForAll("shares") SolutionShare share) {
        Quantity<ArealApplicationRate> dry = share.dryPart(total);
        Quantity<ArealApplicationRate> wet = share.solutionPart(total);
        assertSame(ArealApplicationRate.class, dry.add(wet), total);
        assertSame(ArealApplicationRate.class, share.totalFromSolutionPart(wet), total);
        assertThat(Amounts.si(ArealApplicationRate.class, share.totalFromDryPart(dry)))
                .isCloseTo(Amounts.si(ArealApplicationRate.class, total), withinPercentage(1e-10));
    }

    /** Conservation of mass: the solution by share and the prewetting liquid by volume × density are the same. */
    @Property
    void bothConventionsSpreadTheSameLiquid(
            @ForAll("arealRates") Quantity<ArealApplicationRate> total,
            @ForAll("shares") SolutionShare share,
            @ForAll("densities") Quantity<BulkDensity> density) {
        Quantity<LiquidArealApplicationRate> liquid =
                PrewetRates.liquidArealRateFromDryArealRate(share.dryPart(total), share.prewetRate(density));
        assertThat(Amounts.si(LiquidArealApplicationRate.class, liquid) * Amounts.si(BulkDensity.class, density))
                .isCloseTo(Amounts.si(ArealApplicationRate.class, share.solutionPart(total)), withinPercentage(1e-10));
    }

    @Property
    void dryChemicalAsLiquidAndBack(
            @ForAll("rates") Quantity<ApplicationRate> rate,
            @ForAll("laneRates") Quantity<LaneApplicationRate> laneRate,
            @ForAll("arealRates") Quantity<ArealApplicationRate> arealRate,
            @ForAll("solutions") LiquidChemical liquid) {
        assertSame(
                ApplicationRate.class,
                DryChemicalRates.rateFromLiquidRate(DryChemicalRates.liquidRateFromRate(rate, liquid), liquid),
                rate);
        assertSame(
                LaneApplicationRate.class,
                DryChemicalRates.laneRateFromLiquidLaneRate(
                        DryChemicalRates.liquidLaneRateFromLaneRate(laneRate, liquid), liquid),
                laneRate);
        assertSame(
                ArealApplicationRate.class,
                DryChemicalRates.arealRateFromLiquidArealRate(
                        DryChemicalRates.liquidArealRateFromArealRate(arealRate, liquid), liquid),
                arealRate);
    }

    @Property
    void theTotalPerDistanceIsTheTotalPerLaneTimesLanes(
            @ForAll("rates") Quantity<ApplicationRate> granular,
            @ForAll("liquidRates") Quantity<LiquidApplicationRate> direct,
            @ForAll("prewetRates") Quantity<PrewetRate> prewet,
            @ForAll("solutions") LiquidChemical liquid,
            @ForAll("lanes") Quantity<LaneCount> lanes) {
        Quantity<Dimensionless> purity = Amounts.of(95, SpreadingUnits.PERCENT);
        assertSame(
                LaneApplicationRate.class,
                DryChemicalRates.totalLaneRate(
                        Rates.laneRateFromRate(granular, lanes),
                        purity,
                        prewet,
                        liquid,
                        LiquidRates.laneRateFromRate(direct, lanes),
                        liquid),
                Rates.laneRateFromRate(
                        DryChemicalRates.totalRate(granular, purity, prewet, liquid, direct, liquid), lanes));
    }

    @Property
    void aLanesRateOverItsWidthIsTheRateOverAllLanes(
            @ForAll("rates") Quantity<ApplicationRate> rate,
            @ForAll("lanes") Quantity<LaneCount> lanes,
            @ForAll("laneWidths") Quantity<LaneWidth> width) {
        Quantity<Length> treated = Amounts.ofSi(
                Amounts.si(LaneCount.class, lanes) * Amounts.si(LaneWidth.class, width), SpreadingUnits.METER);

        assertSame(
                ArealApplicationRate.class,
                Rates.arealRateFromLaneRate(Rates.laneRateFromRate(rate, lanes), width),
                Rates.arealRateFromRate(rate, treated));
    }

    @Property
    void thePrewettingFlowIsTheSameByDistanceAndByTime(
            @ForAll("rates") Quantity<ApplicationRate> dry,
            @ForAll("prewetRates") Quantity<PrewetRate> prewet,
            @ForAll("speeds") Quantity<Speed> speed) {
        assertSame(
                FlowRate.class,
                PrewetRates.flowFromDischarge(Rates.dischargeFromRate(dry, speed), prewet),
                LiquidRates.flowFromRate(PrewetRates.liquidRateFromDryRate(dry, prewet), speed));
    }

    @Property
    void ratesScale(@ForAll("rates") Quantity<ApplicationRate> rate, @ForAll("speeds") Quantity<Speed> speed) {
        Quantity<ApplicationRate> doubled = Amounts.of(rate.getValue().doubleValue() * 2, rate.getUnit());
        Quantity<DischargeRate> discharge = Rates.dischargeFromRate(rate, speed);

        assertThat(Amounts.si(DischargeRate.class, Rates.dischargeFromRate(doubled, speed)))
                .isCloseTo(
                        2 * Amounts.si(DischargeRate.class, discharge),
                        within(1e-14 * 2 * Amounts.si(DischargeRate.class, discharge)));
    }
}
