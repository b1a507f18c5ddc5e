package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.LiquidSamples.PAIL;
import static org.gritwright.core.LiquidSamples.gallons;
import static org.gritwright.core.LiquidSamples.pumpPoint;
import static org.gritwright.core.LiquidSamples.weighed;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SENSOR;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.metering.PumpMetering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.weighing.Caught;
import org.gritwright.core.weighing.ReadVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

class LiquidLawsTest {
    private static double gallonsPerTurn(CalibrationPoint point, Caught caught, int pulses) {
        return Amounts.in(
                Calibration.from(List.of(LiquidSamples.catchAt(point, caught, pulses)))
                        .volumePerRevolution()
                        .orElseThrow()
                        .value(),
                SpreadingUnits.US_GALLON_PER_REVOLUTION);
    }

    private static CalibrationPoint brineOf(double poundsPerGallon) {
        PumpMetering pump = LiquidSamples.pump(SENSOR);
        return CalibrationPoint.of(
                Material.liquid("brine", LiquidSamples.poundsPerGallon(poundsPerGallon)), pump, Setting.none());
    }

    @Property
    void caughtByMassAndByVolumeAgreeThroughTheDensity(
            @ForAll @DoubleRange(min = 1, max = 6) double gallons,
            @ForAll @DoubleRange(min = 8.3, max = 11.5) double density,
            @ForAll @IntRange(min = 100, max = 20_000) int pulses) {
        double byVolume = gallonsPerTurn(brineOf(density), ReadVolume.of(PAIL, DAY, gallons(gallons)), pulses);
        double byMass = gallonsPerTurn(brineOf(density), weighed(gallons * density, density), pulses);

        assertThat(byMass).isCloseTo(byVolume, within(1e-12 * byVolume));
        assertThat(byVolume).isCloseTo(gallons / pulses * 100, within(1e-12 * byVolume));
    }

    @Property
    void theStatedDensityChangesNoVolume(
            @ForAll @DoubleRange(min = 1, max = 6) double gallons,
            @ForAll @DoubleRange(min = 8.3, max = 11.5) double one,
            @ForAll @DoubleRange(min = 8.3, max = 11.5) double other) {
        ReadVolume caught = ReadVolume.of(PAIL, DAY, gallons(gallons));
        double byOne = gallonsPerTurn(brineOf(one), caught, 10_000);

        assertThat(gallonsPerTurn(brineOf(other), caught, 10_000)).isCloseTo(byOne, within(1e-12 * byOne));
    }

    @Property
    void litersAreGallons(@ForAll @DoubleRange(min = 1, max = 6) double gallons) {
        double liters = Amounts.in(gallons(gallons), SpreadingUnits.LITER);
        double byGallons = gallonsPerTurn(pumpPoint(SENSOR), ReadVolume.of(PAIL, DAY, gallons(gallons)), 10_000);

        assertThat(gallonsPerTurn(
                        pumpPoint(SENSOR), ReadVolume.of(PAIL, DAY, Amounts.of(liters, SpreadingUnits.LITER)), 10_000))
                .isCloseTo(byGallons, within(1e-12 * byGallons));
    }

    @Property
    void everyFormByVolumeGivesTheDischargeBack(
            @ForAll @Scale(4) @DoubleRange(min = 0.001, max = 10) double kilogramsPerRevolution,
            @ForAll @IntRange(min = 0, max = 3) int form) {
        var unit = List.of(
                        SpreadingUnits.US_GALLON_PER_REVOLUTION,
                        SpreadingUnits.MILLILITER_PER_PULSE,
                        SpreadingUnits.REVOLUTION_PER_US_GALLON,
                        SpreadingUnits.PULSE_PER_LITER)
                .get(form);
        CalibrationPoint point = pumpPoint(SENSOR);
        CalibrationFactor factor = CalibrationFactor.ofDischarge(kilogramsPerRevolution, point, unit);

        assertThat(factor.form().isByVolume()).isTrue();
        assertThat(factor.kilogramsPerRevolution(point))
                .isCloseTo(kilogramsPerRevolution, within(1e-13 * kilogramsPerRevolution));
    }
}
