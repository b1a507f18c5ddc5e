package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;

import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RoundGateTest {
    private static final double RADIUS = 0.1;
    private static final Gate GATE = Gate.of(new RoundGate(), Map.of("diameter", Amounts.of(0.2, METER)));

    private static double area(double openingMeters) {
        return GATE.squareMeters(Setting.of(Amounts.of(openingMeters, METER)));
    }

    @Test
    void isAHalfCircleWhereTheSlideStandsAtTheMiddle() {
        assertThat(area(RADIUS)).isCloseTo(Math.PI * 0.01 / 2, within(1e-16));
    }

    @Test
    void isTheWholeCircleWhereTheSlideHasLeftIt() {
        assertThat(area(2 * RADIUS)).isCloseTo(Math.PI * 0.01, within(1e-16));
    }

    @Test
    void isAThirdOfATurnLessItsTriangleAtHalfTheRadius() {
        // derived: at h = r/2 the chord is seen under 120°, so A = r²·(π/3 − √3/4)
        assertThat(area(RADIUS / 2)).isCloseTo(0.01 * (Math.PI / 3 - Math.sqrt(3) / 4), within(1e-16));
    }

    @Test
    void isNothingWhereTheSlideCoversItAll() {
        assertThat(area(0)).isZero();
        assertThat(GATE.adjustable().orElseThrow().closed())
                .hasValueSatisfying(closed -> assertThat(closed.si()).isZero());
    }

    /** ∫ 2·√(2·r·y − y²) dy from 0 to h by Simpson's rule, with y = h·t², which takes the root out of the integrand. */
    private static double integrated(double height) {
        int intervals = 20_000;
        double sum = 0;
        for (int i = 0; i <= intervals; i++) {
            double t = i / (double) intervals;
            double weight = i == 0 || i == intervals ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * t * t * Math.sqrt(2 * RADIUS - height * t * t);
        }
        return 4 * Math.pow(height, 1.5) * sum / (3 * intervals);
    }

    /** Down to a nanometer, and on both sides of the angle at which the series takes over, near 31 µm. */
    @ParameterizedTest
    @ValueSource(
            doubles = {1e-9, 1e-7, 1e-6, 1e-5, 3.1e-5, 3.12e-5, 3.13e-5, 3.2e-5, 1e-4, 1e-3, 0.03, 0.07, 0.12, 0.19})
    void isTheIntegralOfTheChord(double height) {
        assertThat(area(height)).isCloseTo(integrated(height), within(2e-12 * integrated(height)));
    }

    @Test
    void growsWithTheOpeningToThePowerOfOneAndAHalfWhereItIsSmall() {
        // derived: the first term of the series, 4/3·h·√(2·r·h); the next is −3·h/(20·r) of it
        assertThat(area(1e-9)).isCloseTo(4.0 / 3 * 1e-9 * Math.sqrt(2 * RADIUS * 1e-9), within(1e-21));
    }

    @Property
    void aWiderOpeningIsNeverSmaller(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.2) double one,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.2) double two) {
        double rounding = 1e-12 * area(Math.max(one, two));

        assertThat(area(Math.max(one, two))).isGreaterThanOrEqualTo(area(Math.min(one, two)) - rounding);
    }

    @Property
    void whatIsOpenBelowTheEdgeIsWhatIsClosedAboveItSeenFromTheOtherSide(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.2) double opening) {
        assertThat(area(opening) + area(0.2 - opening)).isCloseTo(Math.PI * 0.01, within(1e-15));
    }

    @Test
    void opensToItsDiameterInWhateverUnit() {
        Gate inInches = Gate.of(new RoundGate(), Map.of("diameter", inches(8)));

        assertThat(inInches.accepts(Setting.of(inches(8)))).isTrue();
        assertThat(inInches.squareMeters(Setting.of(Amounts.of(203.2, MILLIMETER))))
                .isCloseTo(Math.PI * 0.1016 * 0.1016, within(1e-16));
        assertRefused(
                "gate setting must be within 0 in to 8 in: 8.1 in",
                () -> inInches.squareMeters(Setting.of(inches(8.1))));
    }

    @Test
    void refusesADiameterThatNoGateHas() {
        assertRefused(
                "diameter of round-opening must be within 20 mm to 1 m: 0.5 in",
                () -> Gate.of(new RoundGate(), Map.of("diameter", inches(0.5))));
    }
}
