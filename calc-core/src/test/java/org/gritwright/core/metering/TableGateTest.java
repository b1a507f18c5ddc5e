package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.SQUARE_CENTIMETER;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class TableGateTest {
    /** 0, 60, 150 and 180 cm² at 10, 50, 100 and 150 mm. */
    private static final Gate BY_OPENING = byOpening(millimeters(10, 50, 100, 150), squareCentimeters(0, 60, 150, 180));

    /** 0, 0, 40 and 200 cm² at the marks 0, 1, 2 and 6. */
    private static final Gate BY_SETTING = bySetting(marks(0, 1, 2, 6), squareCentimeters(0, 0, 40, 200));

    private static Gate byOpening(List<Quantity<Length>> openings, List<Quantity<Area>> areas) {
        return Gate.of(TableGate.byOpening(), Map.of("openings", openings, "areas", areas));
    }

    private static Gate bySetting(List<Quantity<Dimensionless>> settings, List<Quantity<Area>> areas) {
        return Gate.of(TableGate.bySetting(), Map.of("settings", settings, "areas", areas));
    }

    private static List<Quantity<Length>> millimeters(double... values) {
        return Arrays.stream(values).mapToObj(v -> Amounts.of(v, MILLIMETER)).toList();
    }

    private static List<Quantity<Dimensionless>> marks(double... values) {
        return Arrays.stream(values).mapToObj(v -> Amounts.of(v, ONE)).toList();
    }

    private static List<Quantity<Area>> squareCentimeters(double... values) {
        return Arrays.stream(values)
                .mapToObj(v -> Amounts.of(v, SQUARE_CENTIMETER))
                .toList();
    }

    private static double squareCentimetersAt(Gate gate, Quantity<?> opening) {
        return gate.squareMeters(Setting.of(opening)) * 1e4;
    }

    @Test
    void aRowIsWhatWasMeasured() {
        assertThat(squareCentimetersAt(BY_OPENING, Amounts.of(50, MILLIMETER))).isCloseTo(60, within(1e-12));
        assertThat(squareCentimetersAt(BY_OPENING, Amounts.of(150, MILLIMETER))).isCloseTo(180, within(1e-12));
        assertThat(squareCentimetersAt(BY_SETTING, Amounts.of(2, ONE))).isCloseTo(40, within(1e-12));
    }

    @Test
    void betweenTwoRowsIsAStraightLine() {
        assertThat(squareCentimetersAt(BY_OPENING, Amounts.of(60, MILLIMETER))).isCloseTo(78, within(1e-12));
        assertThat(squareCentimetersAt(BY_OPENING, Amounts.of(125, MILLIMETER))).isCloseTo(165, within(1e-12));
        assertThat(squareCentimetersAt(BY_SETTING, Amounts.of(3, ONE))).isCloseTo(80, within(1e-12));
        assertThat(squareCentimetersAt(BY_SETTING, Amounts.of(1.25, ONE))).isCloseTo(10, within(1e-12));
    }

    @Test
    void anEndInAnotherUnitIsStillTheEnd() {
        // 150 mm are 5.905511811023622 in, which come back as a little more or less.
        assertThat(squareCentimetersAt(BY_OPENING, inches(150 / 25.4))).isCloseTo(180, within(1e-10));
        assertThat(squareCentimetersAt(BY_OPENING, inches(10 / 25.4))).isCloseTo(0, within(1e-10));
        // A hair past either end, as rounding leads there, is the end and never past it.
        assertThat(squareCentimetersAt(BY_OPENING, Amounts.of(150 * (1 + 1e-13), MILLIMETER)))
                .isEqualTo(squareCentimetersAt(BY_OPENING, Amounts.of(150, MILLIMETER)));
        assertThat(squareCentimetersAt(BY_OPENING, Amounts.of(10 * (1 - 1e-13), MILLIMETER)))
                .isZero();
    }

    @Test
    void outsideTheTableTheGateCanNotBeSet() {
        assertRefused(
                "gate setting must be within 10 mm to 150 mm: 9 mm",
                () -> BY_OPENING.squareMeters(Setting.of(Amounts.of(9, MILLIMETER))));
        assertRefused(
                "gate setting must be within 10 mm to 150 mm: 151 mm",
                () -> BY_OPENING.squareMeters(Setting.of(Amounts.of(151, MILLIMETER))));
        assertRefused(
                "gate setting must be within 0 to 6: 7", () -> BY_SETTING.squareMeters(Setting.of(Amounts.of(7, ONE))));
    }

    @Test
    void aMarkIsNoHeightAndAHeightNoMark() {
        assertThat(BY_OPENING.accepts(Setting.of(Amounts.of(0.1, ONE)))).isFalse();
        assertThat(BY_SETTING.accepts(Setting.of(inches(2)))).isFalse();
        assertRefused(
                "gate setting must be a height from 10 mm to 150 mm: 0.1",
                () -> BY_OPENING.squareMeters(Setting.of(Amounts.of(0.1, ONE))));
        assertRefused(
                "gate setting must be the number of a painted mark from 0 to 6: 2 in",
                () -> BY_SETTING.squareMeters(Setting.of(inches(2))));
    }

    @Test
    void theLastRowWithoutAreaIsTheClosedPosition() {
        assertThat(closed(BY_OPENING)).contains(Setting.height(Amounts.of(10, MILLIMETER)));
        assertThat(closed(BY_SETTING)).contains(Setting.mark(1));
        assertThat(closed(byOpening(millimeters(10, 50), squareCentimeters(1, 60))))
                .as("open a little at its lowest")
                .isEmpty();
        assertThat(squareCentimetersAt(BY_SETTING, Amounts.of(0.5, ONE))).isZero();
    }

    private static Optional<Setting> closed(Gate gate) {
        return gate.adjustable().orElseThrow().closed();
    }

    @Test
    void metersAConveyorByItsMarks() {
        Spreader spreader = new Spreader(CHAIN.conveyor(), BY_SETTING, SENSOR);
        double travelMeters = 6 * 2.609 * 0.0254;

        assertThat(spreader.sweptCubicMetersPerRevolution(Setting.of(Amounts.of(3, ONE))))
                .isCloseTo(0.008 * travelMeters, within(1e-16));
        assertRefused(
                "gate setting must be one at which the conveyor sweeps a volume: 1",
                () -> spreader.sweptCubicMetersPerRevolution(Setting.of(Amounts.of(1, ONE))));
    }

    /** 10, 100 and 250 cm² at 8 %, 40 % and 100 %. */
    private static Gate inPercent() {
        return bySetting(percentages(8, 40, 100), squareCentimeters(10, 100, 250));
    }

    private static List<Quantity<Dimensionless>> percentages(double... values) {
        return Arrays.stream(values).mapToObj(v -> Amounts.of(v, PERCENT)).toList();
    }

    @Test
    void aTableOfPercentagesIsSetInPercent() {
        assertThat(squareCentimetersAt(inPercent(), Amounts.of(8, PERCENT))).isCloseTo(10, within(1e-12));
        assertThat(squareCentimetersAt(inPercent(), Amounts.of(40, PERCENT))).isCloseTo(100, within(1e-12));
        assertThat(squareCentimetersAt(inPercent(), Amounts.of(70, PERCENT))).isCloseTo(175, within(1e-12));
        assertThat(new Spreader(CHAIN.conveyor(), inPercent(), SENSOR)
                        .sweptCubicMetersPerRevolution(Setting.percent(40)))
                .isCloseTo(0.01 * 6 * 2.609 * 0.0254, within(1e-16));
        assertRefused(
                "gate setting must be within 8 % to 100 %: 7 %",
                () -> inPercent().squareMeters(Setting.percent(7)));
        assertRefused(
                "gate setting must be a percentage from 8 % to 100 %: 40",
                () -> inPercent().squareMeters(Setting.mark(40)));
        assertRefused(
                "gate setting must be a percentage from 8 % to 100 %: 2 in",
                () -> inPercent().squareMeters(Setting.height(inches(2))));
    }

    @Test
    void marksAndPercentagesAreNotMixed() {
        assertRefused(
                "settings must be all marks or all percentages, as the first is, 8 %: 0.4",
                () -> bySetting(
                        List.of(Amounts.of(8, PERCENT), Amounts.of(0.4, ONE), Amounts.of(100, PERCENT)),
                        squareCentimeters(10, 100, 250)));
    }

    @Test
    void refusesRowsThatDoNotRise() {
        assertRefused(
                "openings must be above the one before, 50 mm: 50 mm",
                () -> byOpening(millimeters(10, 50, 50), squareCentimeters(0, 60, 70)));
        assertRefused(
                "openings must be above the one before, 50 mm: 40 mm",
                () -> byOpening(millimeters(50, 40), squareCentimeters(0, 60)));
        assertRefused(
                "settings must be above the one before, 2: 1", () -> bySetting(marks(2, 1), squareCentimeters(0, 60)));
        assertRefused(
                "areas must be not below the one before, 60 cm²: 59 cm²",
                () -> byOpening(millimeters(10, 50, 60), squareCentimeters(0, 60, 59)));
    }

    @Test
    void areasMayStayTheSameFromRowToRow() {
        Gate gate = byOpening(millimeters(10, 50, 60), squareCentimeters(20, 60, 60));

        assertThat(squareCentimetersAt(gate, Amounts.of(55, MILLIMETER))).isCloseTo(60, within(1e-12));
    }

    @Test
    void refusesColumnsOfDifferentLengths() {
        assertRefused(
                "areas must be as many as openings, 2: 3",
                () -> byOpening(millimeters(10, 50), squareCentimeters(0, 60, 70)));
        assertRefused(
                "areas must be as many as settings, 3: 2", () -> bySetting(marks(1, 2, 3), squareCentimeters(0, 60)));
    }

    @Test
    void refusesAColumnThatIsNone() {
        assertRefused(
                "openings of measured-table must be a list of 2 to 100: a list of 1",
                () -> byOpening(millimeters(10), squareCentimeters(0, 60)));
        assertRefused(
                "openings of measured-table must be a list of 2 to 100: one value",
                () -> Gate.of(TableGate.byOpening(), Map.of("openings", inches(1), "areas", squareCentimeters(0, 1))));
        assertRefused(
                "openings, value 2 of measured-table must be within 0 mm to 2 m: 2001 mm",
                () -> byOpening(millimeters(10, 2001), squareCentimeters(0, 60)));
    }

    @Property
    void aHigherMarkIsNeverASmallerArea(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 6) double one,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 6) double two) {
        double lower = squareCentimetersAt(BY_SETTING, Amounts.of(Math.min(one, two), ONE));
        double higher = squareCentimetersAt(BY_SETTING, Amounts.of(Math.max(one, two), ONE));

        assertThat(higher).isGreaterThanOrEqualTo(lower);
    }
}
