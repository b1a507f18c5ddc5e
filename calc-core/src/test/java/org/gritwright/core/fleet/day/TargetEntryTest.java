package org.gritwright.core.fleet.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_KILOMETER;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_LANE_KILOMETER;
import static org.gritwright.units.SpreadingUnits.LANE;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.observation.Conditions;
import org.gritwright.core.observation.Moisture;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.junit.jupiter.api.Test;

class TargetEntryTest {
    private static final Optional<Quantity<?>> RATE = Optional.of(Amounts.of(85, KILOGRAM_PER_KILOMETER));
    private static final Optional<Quantity<?>> LANE_RATE = Optional.of(Amounts.of(42.5, KILOGRAM_PER_LANE_KILOMETER));
    private static final Optional<Quantity<LaneCount>> LANES = Optional.of(Amounts.of(2, LANE));

    @Test
    void aLaneRateTimesItsLanesIsARatePerDistance() {
        Quantity<?> rate = new TargetEntry(Optional.empty(), LANE_RATE, LANES, Optional.empty()).perDistance();
        assertThat(Amounts.in(rate.asType(ApplicationRate.class), KILOGRAM_PER_KILOMETER))
                .isEqualTo(85);
    }

    @Test
    void aRatePerDistanceStaysAsItIsWhateverTheLanes() {
        assertThat(new TargetEntry(RATE, Optional.empty(), LANES, Optional.empty()).perDistance())
                .isSameAs(RATE.get());
    }

    @Test
    void aLaneRateWithoutLanesBothRatesOrNoneAreRefused() {
        assertThatThrownBy(() ->
                        new TargetEntry(Optional.empty(), LANE_RATE, Optional.empty(), Optional.empty()).perDistance())
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("lanes treated must be given with a target rate per lane distance: nothing");
        assertThatThrownBy(() -> new TargetEntry(RATE, LANE_RATE, LANES, Optional.empty()).perDistance())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageEndingWith(": both");
        assertThatThrownBy(() ->
                        new TargetEntry(Optional.empty(), Optional.empty(), LANES, Optional.empty()).perDistance())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageEndingWith(": neither");
    }

    @Test
    void aMoistureWithoutItsBasisIsRefusedAndSoIsABasisWithoutMoisture() {
        assertThatThrownBy(() -> moist(Optional.of(Amounts.of(3, PERCENT)), Optional.empty()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("moisture must be given together with its basis: without basis");
        assertThatThrownBy(() -> moist(Optional.empty(), Optional.of(Moisture.Basis.DRY_MASS)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("moisture must be given together with its basis: missing");
    }

    private static Conditions moist(Optional<Quantity<Dimensionless>> content, Optional<Moisture.Basis> basis) {
        return new Conditions(Optional.empty(), Optional.empty(), Optional.empty(), content, basis, false);
    }

    private static TargetEntry of(Quantity<?> rate, Quantity<?> laneRate, Quantity<PrewetRate> prewet) {
        return new TargetEntry(
                Optional.ofNullable(rate),
                Optional.ofNullable(laneRate),
                laneRate == null ? Optional.empty() : LANES,
                Optional.ofNullable(prewet));
    }

    @Test
    void aRateOfALiquidIsOneToo() {
        Quantity<LiquidApplicationRate> rate = Amounts.of(80, SpreadingUnits.US_GALLON_PER_MILE);
        Quantity<?> ofLanes = of(null, Amounts.of(40, SpreadingUnits.US_GALLON_PER_LANE_MILE), null)
                .perDistance();

        assertThat(of(rate, null, null).perDistance()).isSameAs(rate);
        assertThat(Amounts.in(ofLanes.asType(LiquidApplicationRate.class), SpreadingUnits.US_GALLON_PER_MILE))
                .isEqualTo(80);
    }

    /** 10 gal on each short ton of 300 lb/mi; on two lanes of 150 lb/lane-mi the same. */
    @Test
    void aPrewetRateIsOnTheDryMaterial() {
        Quantity<PrewetRate> prewet = Amounts.of(10, SpreadingUnits.US_GALLON_PER_SHORT_TON);
        for (TargetEntry target : List.of(
                of(Amounts.of(300, SpreadingUnits.POUND_PER_MILE), null, prewet),
                of(null, Amounts.of(150, SpreadingUnits.POUND_PER_LANE_MILE), prewet))) {
            assertThat(Amounts.in(
                            target.perDistance().asType(LiquidApplicationRate.class),
                            SpreadingUnits.US_GALLON_PER_MILE))
                    .isCloseTo(1.5, within(1e-12));
        }
    }

    @Test
    void whatIsNoRateOrTwiceALiquidIsRefused() {
        assertThatThrownBy(() -> of(
                                Amounts.of(1.5, SpreadingUnits.US_GALLON_PER_MILE),
                                null,
                                Amounts.of(10, SpreadingUnits.US_GALLON_PER_SHORT_TON))
                        .perDistance())
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(
                        "target rate with a prewet rate must be that of the dry material, a mass per distance: 1.5 gal/mi");
        assertThatThrownBy(() -> of(Amounts.of(1.5, SpreadingUnits.US_GALLON), null, null)
                        .perDistance())
                .hasMessage("target rate must be a mass or a volume per distance: 1.5 gal");
        assertThatThrownBy(() -> of(null, Amounts.of(1.5, SpreadingUnits.US_GALLON_PER_MILE), null)
                        .perDistance())
                .hasMessage("target lane rate must be a mass or a volume per lane distance: 1.5 gal/mi");
    }
}
