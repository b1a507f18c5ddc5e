package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.units.SpreadingUnits.CENTIMETER;
import static org.gritwright.units.SpreadingUnits.CUBIC_INCH_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.LITER_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.MILLILITER_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_MINUTE;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.core.Shipped;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The pump types of the library. */
class PumpTest {
    private static final Pump GEARS = gears(2, 4.2, 3.5);
    private static final Pump BY_PLATE =
            Pump.of(new DisplacementPump(), Map.of("displacement", Amounts.of(1.5, CUBIC_INCH_PER_REVOLUTION)));
    private static final Pump TABLE = table(new double[] {60, 120, 600}, new double[] {3, 7.2, 42});

    private static Pump gears(double width, double tips, double centers) {
        return Pump.of(
                new GearPump(),
                Map.of(
                        "gearWidth", Amounts.of(width, CENTIMETER),
                        "tipDiameter", Amounts.of(tips, CENTIMETER),
                        "centerDistance", Amounts.of(centers, CENTIMETER)));
    }

    private static Pump table(double[] speeds, double[] flows) {
        return Pump.of(
                new TablePump(),
                Map.of(
                        "speeds",
                                Arrays.stream(speeds).mapToObj(PumpTest::turns).toList(),
                        "flows",
                                Arrays.stream(flows)
                                        .mapToObj(flow -> Amounts.of(flow, LITER_PER_MINUTE))
                                        .toList()));
    }

    private static Quantity<RotationalSpeed> turns(double perMinute) {
        return Amounts.of(perMinute, REVOLUTION_PER_MINUTE);
    }

    private static double litersPerMinute(Pump pump, double turns) {
        return Amounts.in(pump.flow(turns(turns)), LITER_PER_MINUTE);
    }

    @Test
    void twoGearsGiveTwiceTheRingBetweenPitchCircleAndTips() {
        assertThat(gears(2, 4.2, 3.5).cubicMetersPerRevolution()).isCloseTo(Math.PI * 5.39e-6, within(1e-18));
        assertThat(GEARS.cubicMetersPerRevolution(7)).isEqualTo(GEARS.cubicMetersPerRevolution());
        assertThat(GEARS.cubicMetersPerRevolution(0)).isEqualTo(GEARS.cubicMetersPerRevolution());
        assertThat(GEARS.lowestSpeed()).isEqualTo(turns(0));
        assertThat(GEARS.highestSpeed()).isEmpty();
        assertThat(litersPerMinute(GEARS, 1000)).isCloseTo(Math.PI * 5.39, within(1e-12));
    }

    @Test
    void gearsThatDoNotMeshAreRefused() {
        assertRefused(
                "tipDiameter must be above centerDistance, else the teeth don't mesh, and below twice as much, 4 cm: 4 cm",
                () -> gears(2, 4, 4));
        assertRefused(
                "tipDiameter must be above centerDistance, else the teeth don't mesh, and below twice as much, 4 cm: 8 cm",
                () -> gears(2, 8, 4));
        assertThat(gears(2, 7.9, 4).cubicMetersPerRevolution()).isPositive();
    }

    @Test
    void resultsAreInTheUnitsThatThePumpWasDescribedIn() {
        Pump inInches = Pump.of(
                new GearPump(),
                Map.of("gearWidth", inches(1), "tipDiameter", inches(2), "centerDistance", inches(1.5)));

        assertThat(Amounts.format(GEARS.displacement())).endsWith(" L/rev");
        assertThat(Amounts.format(inInches.displacement())).endsWith(" in³/rev");
        assertThat(Amounts.format(inInches.flow(turns(100)))).endsWith(" gal/min");
        assertThat(Amounts.format(GEARS.flow(turns(100)))).endsWith(" L/min");
    }

    @Test
    void byItsPlateItGivesItsDisplacementLessWhatSlips() {
        Pump slipping = Pump.of(
                new DisplacementPump(),
                Map.of("displacement", Amounts.of(1.5, CUBIC_INCH_PER_REVOLUTION), "slip", Amounts.of(10, PERCENT)));

        assertThat(BY_PLATE.cubicMetersPerRevolution(30)).isEqualTo(BY_PLATE.cubicMetersPerRevolution());
        assertThat(Amounts.in(slipping.flow(turns(1800)), US_GALLON_PER_MINUTE))
                .isCloseTo(1.5 * 1800 / 231 * 0.9, within(1e-12));
        assertThat(slipping.cubicMetersPerRevolution())
                .as("what a catch is compared with")
                .isEqualTo(BY_PLATE.cubicMetersPerRevolution());
        assertRefused(
                "displacement of displacement-pump must be within 0.1 mL/rev to 10 L/rev: 0 mL/rev",
                () -> Pump.of(
                        new DisplacementPump(), Map.of("displacement", Amounts.of(0, MILLILITER_PER_REVOLUTION))));
    }

    @Test
    void aTableGivesWhatWasMeasuredAndAStraightLineBetween() {
        assertThat(litersPerMinute(TABLE, 60)).isCloseTo(3, within(1e-12));
        assertThat(litersPerMinute(TABLE, 120)).isCloseTo(7.2, within(1e-12));
        assertThat(litersPerMinute(TABLE, 90)).isCloseTo(5.1, within(1e-12));
        assertThat(litersPerMinute(TABLE, 600)).isCloseTo(42, within(1e-12));
        assertThat(TABLE.cubicMetersPerRevolution(1)).isCloseTo(5e-5, within(1e-18));
        assertThat(TABLE.cubicMetersPerRevolution(2)).isCloseTo(6e-5, within(1e-18));
        assertThat(TABLE.cubicMetersPerRevolution())
                .as("the most that a revolution gave")
                .isCloseTo(7e-5, within(1e-18));
    }

    @Test
    void theLargestVolumeOfATableMayBeInAnyRow() {
        assertThat(table(new double[] {60, 120, 600}, new double[] {3, 7.2, 30}).cubicMetersPerRevolution())
                .isCloseTo(6e-5, within(1e-18));
    }

    @Test
    void outsideTheTableNothingIsGuessed() {
        assertThat(TABLE.lowestSpeed()).isEqualTo(turns(60));
        assertThat(TABLE.highestSpeed()).isEqualTo(Optional.of(turns(600)));
        assertRefused("shaft speed must be within 60 rev/min to 600 rev/min: 59 rev/min", () -> TABLE.flow(turns(59)));
        assertRefused(
                "shaft speed must be within 60 rev/min to 600 rev/min: 601 rev/min", () -> TABLE.flow(turns(601)));
        assertRefused(
                "shaft speed must be within 60 rev/min to 600 rev/min: 0 rev/min",
                () -> TABLE.cubicMetersPerRevolution(0));
    }

    @Test
    void aTableRises() {
        assertRefused(
                "speeds must be above the one before, 120 rev/min: 120 rev/min",
                () -> table(new double[] {60, 120, 120}, new double[] {3, 7, 8}));
        assertRefused(
                "flows must be not below the one before, 7 L/min: 6.9 L/min",
                () -> table(new double[] {60, 120, 180}, new double[] {3, 7, 6.9}));
        assertRefused(
                "flows must be as many as speeds, 3: 2", () -> table(new double[] {60, 120, 180}, new double[] {3, 7}));
    }

    @Property
    void theFlowOfATableNeverFalls(
            @ForAll @DoubleRange(min = 1, max = 10) double one, @ForAll @DoubleRange(min = 1, max = 10) double two) {
        double slow = Math.min(one, two);
        double fast = Math.max(one, two);

        assertThat(fast * TABLE.cubicMetersPerRevolution(fast))
                .isGreaterThanOrEqualTo(slow * TABLE.cubicMetersPerRevolution(slow) * (1 - 1e-14));
        assertThat(TABLE.cubicMetersPerRevolution(fast))
                .isLessThanOrEqualTo(TABLE.cubicMetersPerRevolution() * (1 + 1e-14));
    }

    @Property
    void gearsTwiceAsLargeGiveEightTimesAsMuch(
            @ForAll @DoubleRange(min = 0.5, max = 10) double width,
            @ForAll @DoubleRange(min = 2, max = 15) double centers,
            @ForAll @DoubleRange(min = 1.01, max = 1.3) double ratio) {
        double small = gears(width, ratio * centers, centers).cubicMetersPerRevolution();
        double large = gears(2 * width, 2 * ratio * centers, 2 * centers).cubicMetersPerRevolution();

        assertThat(large).isCloseTo(8 * small, within(1e-12 * large));
    }

    @Property
    void theFlowOfAPumpByItsPlateIsProportionalToItsSpeed(@ForAll @DoubleRange(min = 1, max = 3000) double turns) {
        Quantity<FlowRate> once = BY_PLATE.flow(turns(turns));
        Quantity<FlowRate> twice = BY_PLATE.flow(turns(2 * turns));

        assertThat(Amounts.si(FlowRate.class, twice)).isCloseTo(2 * Amounts.si(FlowRate.class, once), within(1e-15));
    }

    @Test
    @Tag("locale")
    void arrivesAsItWasAndPrintsAsPeopleWriteIt() {
        Pump arrived = Shipped.copyOf(TABLE);

        assertThat(arrived.cubicMetersPerRevolution(5)).isEqualTo(TABLE.cubicMetersPerRevolution(5));
        assertThat(arrived.highestSpeed()).isEqualTo(TABLE.highestSpeed());
        Shipped.assertIsAValue(GEARS, gears(2, 4.2, 3.5), gears(2, 4.2, 3.6));
        assertThat(BY_PLATE).hasToString("displacement-pump, version 1 {displacement=1.5 in³/rev, slip=0 %}");
        assertThat(List.of(GEARS.fillLimits(), BY_PLATE.fillLimits(), TABLE.fillLimits()))
                .containsOnly(FillLimits.PUMP);
    }
}
