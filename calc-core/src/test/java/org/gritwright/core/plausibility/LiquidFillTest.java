package org.gritwright.core.plausibility;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.LiquidSamples.BRINE;

import java.util.Optional;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.Samples;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.junit.jupiter.api.Test;

/** The volume that a turn or a pulse gives over what it is said to give, and the single slips that explain an odd one. */
class LiquidFillTest {
    private static final double KILOGRAMS_PER_GALLON =
            0.003785411784 * Amounts.si(BulkDensity.class, BRINE.looseBulkDensity());

    /** A meter of 1200 pulses a gallon whose pulses gave so many times a 1200th gallon. */
    private static ApparentFill ofMeter(double times) {
        return ofMeter(times, 1200);
    }

    private static ApparentFill ofMeter(double times, double kFactor) {
        CalibrationPoint point = CalibrationPoint.of(BRINE, LiquidSamples.meter(kFactor), Setting.none());
        return ApparentFill.of(times * KILOGRAMS_PER_GALLON / 1200, 0, true, point, Optional.empty());
    }

    /** A pump of 0.05 gallons a revolution that gave so many times as much. */
    private static ApparentFill ofPump(double times) {
        CalibrationPoint point = LiquidSamples.pumpPoint(Samples.SENSOR);
        return ApparentFill.of(times * KILOGRAMS_PER_GALLON * 0.05, 0, true, point, Optional.empty());
    }

    @Test
    void aMeterThatGivesWhatItIsRatedForIsUsual() {
        assertThat(ofMeter(1).finding()).isEmpty();
        assertThat(ofMeter(1).slips()).isEmpty();
        assertThat(ofMeter(1).metering()).isEqualTo(Metering.Kind.FLOW_METER);
        assertThat(ofMeter(0.9).finding().orElseThrow().code()).isEqualTo(FindingCode.METERED_VOLUME_IMPLAUSIBLE);
        assertThat(ofMeter(0.7).finding().orElseThrow().code()).isEqualTo(FindingCode.METERED_VOLUME_IMPOSSIBLE);
    }

    @Test
    void aPumpGivesALittleLessThanItsDisplacement() {
        assertThat(ofPump(0.95).finding()).isEmpty();
        assertThat(ofPump(0.6).finding().orElseThrow().code()).isEqualTo(FindingCode.PUMPED_VOLUME_IMPLAUSIBLE);
        assertThat(ofPump(1.2).finding().orElseThrow().code()).isEqualTo(FindingCode.PUMPED_VOLUME_IMPOSSIBLE);
    }

    @Test
    void aMisplacedDecimalPointOfTheKFactorIsNamedBothWays() {
        assertThat(ofMeter(1, 12_000).slips()).hasToString("[pulses per volume ÷ 10 (1200 pulse/gal)]");
        assertThat(ofMeter(1, 120).slips()).hasToString("[pulses per volume × 10 (1200 pulse/gal)]");
    }

    @Test
    void litersForGallonsAreNamedAndNothingElse() {
        double liters = Amounts.in(Amounts.of(1, SpreadingUnits.US_GALLON), SpreadingUnits.LITER);

        assertThat(ofMeter(liters).slips())
                .hasToString("[pulses per volume ÷ 3.785 (317 pulse/gal), caught volume read in liters and written in"
                        + " gallons]");
        assertThat(ofMeter(1 / liters).slips())
                .hasToString("[pulses per volume × 3.785 (4542 pulse/gal), caught volume read in gallons and written in"
                        + " liters]");
    }

    @Test
    void imperialGallonsForUsOnesAreNamed() {
        double usGallons = Amounts.in(Amounts.of(1, SpreadingUnits.IMPERIAL_GALLON), SpreadingUnits.US_GALLON);

        assertThat(ofMeter(1 / usGallons).slips())
                .hasToString("[pulses per volume × 1.201 (1441 pulse/gal), caught volume read in imperial gallons and"
                        + " written in US gallons]");
    }

    @Test
    void ofAPumpTheShaftIsSuspectedToo() {
        assertThat(ofPump(2).slips().toString())
                .contains("pulses per revolution ÷ 2 (50 pulse/rev)", "gear ratio ÷ 2 (0.5)");
        assertThat(ofPump(0.05).slips()).noneMatch(slip -> slip.words().startsWith("caught volume"));
        assertThat(ofPump(3.6).slips().toString()).contains("caught volume read in liters and written in gallons");
    }
}
