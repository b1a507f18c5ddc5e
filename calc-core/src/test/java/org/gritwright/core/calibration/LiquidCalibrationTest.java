package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.LiquidSamples.BRINE;
import static org.gritwright.core.LiquidSamples.METER;
import static org.gritwright.core.LiquidSamples.METER_POINT;
import static org.gritwright.core.LiquidSamples.catchAt;
import static org.gritwright.core.LiquidSamples.gallons;
import static org.gritwright.core.LiquidSamples.inForce;
import static org.gritwright.core.LiquidSamples.meter;
import static org.gritwright.core.LiquidSamples.pumpPoint;
import static org.gritwright.core.LiquidSamples.read;
import static org.gritwright.core.LiquidSamples.weighed;
import static org.gritwright.core.Samples.AUGER;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.NOON;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.core.Samples.revolutionsByEye;

import java.util.List;
import org.gritwright.core.budget.SharedErrors;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.plausibility.ApparentFill;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.ReadVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.VolumePerRevolution;
import org.junit.jupiter.api.Test;

class LiquidCalibrationTest {
    private static Calibration of(CalibrationCatch... catches) {
        return Calibration.from(List.of(catches));
    }

    private static double gallonsPerTurn(Calibration calibration) {
        return Amounts.in(
                calibration.volumePerRevolution().orElseThrow().value(), SpreadingUnits.US_GALLON_PER_REVOLUTION);
    }

    /** 1000 Hz at 50 gal/min are 1200 pulses a gallon (instructions of flow meters; see the published checks). */
    @Test
    void pulsesOverGallonsAreTheKFactor() {
        Calibration calibration = of(catchAt(METER_POINT, read(5), 6000));

        assertThat(calibration
                        .factor(SpreadingUnits.PULSE_PER_US_GALLON)
                        .value()
                        .getValue()
                        .doubleValue())
                .isCloseTo(1200, within(1e-9));
        assertThat(calibration
                        .entered(Amounts.of(1, SpreadingUnits.PULSE_PER_US_GALLON))
                        .factor())
                .isEqualTo(CalibrationFactor.parse("1200 pulse/gal"));
        assertThat(calibration.apparentFill().value()).isCloseTo(1, within(1e-12));
        assertThat(calibration.apparentFill().finding()).isEmpty();
    }

    @Test
    void aPumpsVolumePerRevolutionIsCaughtOverTurns() {
        // 100 pulses a revolution
        Calibration calibration = of(catchAt(pumpPoint(SENSOR), read(4.75), 10_000));

        assertThat(gallonsPerTurn(calibration)).isCloseTo(0.0475, within(1e-12));
        // 95 % of the displacement: what slips back is the rest.
        assertThat(calibration.apparentFill().value()).isCloseTo(0.95, within(1e-12));
        assertThat(calibration
                        .factor(SpreadingUnits.US_GALLON_PER_REVOLUTION)
                        .kilogramsPerRevolution(pumpPoint(SENSOR)))
                .isCloseTo(0.0475 * 9.8 * 0.45359237, within(1e-12));
    }

    @Test
    void theMassPerRevolutionIsAtTheStatedDensity() {
        Calibration calibration = of(catchAt(pumpPoint(SENSOR), read(4.75), 10_000));

        assertThat(Amounts.in(calibration.dischargePerRevolution().value(), SpreadingUnits.POUND_PER_REVOLUTION))
                .isCloseTo(0.0475 * 9.8, within(1e-12));
        assertThat(relative(calibration)).isCloseTo(relativeOfMass(calibration), within(1e-15));
    }

    private static double relative(Calibration calibration) {
        var volume = calibration.volumePerRevolution().orElseThrow();
        return Amounts.si(
                        VolumePerRevolution.class, volume.standardUncertainty().orElseThrow())
                / Amounts.si(VolumePerRevolution.class, volume.value());
    }

    private static double relativeOfMass(Calibration calibration) {
        var mass = calibration.dischargePerRevolution();
        return mass.standardUncertainty().orElseThrow().getValue().doubleValue()
                / mass.value().getValue().doubleValue();
    }

    @Test
    void ofGrainsThereIsNoVolumePerRevolution() {
        assertThat(of(augerCatch(100, 2000)).volumePerRevolution()).isEmpty();
    }

    @Test
    void aReadVolumeIsAsUncertainAsMarksAndReadingAre() {
        Calibration calibration = of(catchAt(METER_POINT, read(5), 6000));
        double perPulse = 9.8 / 1200;

        Component<?> reading = component(calibration, ErrorSource.CONTAINER_READING);
        assertThat(reading.distribution()).isEqualTo(Distribution.RECTANGULAR);
        assertThat(number(reading)).isCloseTo(0.05 / Math.sqrt(12) / 5 * perPulse, within(1e-12));
        Component<?> marks =
                calibration.budget().component(ErrorSource.spanOf(read(5))).orElseThrow();
        assertThat(marks.name()).isEqualTo("marks of container P-1");
        assertThat(number(marks)).isCloseTo(0.03 / 5 / Math.sqrt(3) * perPulse, within(1e-12));
        assertThat(calibration.budget().component(ErrorSource.LIQUID_DENSITY.key()))
                .isEmpty();
    }

    private static Component<?> component(Calibration calibration, ErrorSource source) {
        return calibration.budget().component(source.key()).orElseThrow();
    }

    private static double number(Component<?> component) {
        return component.contribution().getValue().doubleValue();
    }

    @Test
    void aWeighedVolumeIsAsUncertainAsItsDensityToo() {
        Calibration calibration = of(catchAt(METER_POINT, weighed(49, 9.8), 6000));

        Component<?> density = component(calibration, ErrorSource.LIQUID_DENSITY);
        assertThat(density.distribution()).isEqualTo(Distribution.NORMAL);
        assertThat(number(density)).isCloseTo(0.02 / 9.8 * 9.8 / 1200, within(1e-12));
        assertThat(calibration.budget().component(ErrorSource.spanOf(caught(49))))
                .isPresent();
        assertThat(calibration
                        .factor(SpreadingUnits.PULSE_PER_US_GALLON)
                        .value()
                        .getValue()
                        .doubleValue())
                .isCloseTo(1200, within(1e-9));
    }

    @Test
    void aSharedDensityCancelsBetweenWeighedCatchesOnly() {
        assertThat(SharedErrors.of(List.of(weighed(49, 9.8)), List.of(weighed(40, 9.8))))
                .contains(ErrorSource.LIQUID_DENSITY.key(), ErrorSource.spanOf(caught(49)));
        assertThat(SharedErrors.of(List.of(weighed(49, 9.8)), List.of(read(5))))
                .doesNotContain(ErrorSource.LIQUID_DENSITY.key(), ErrorSource.spanOf(read(5)));
        assertThat(SharedErrors.of(List.of(read(4)), List.of(read(5))))
                .contains(ErrorSource.spanOf(read(5)))
                .doesNotContain(ErrorSource.LIQUID_DENSITY.key());
    }

    @Test
    void aContainerWithoutToleranceIsSaidToBeAssumed() {
        ReadVolume volume = ReadVolume.of(Graduate.of("P-2", gallons(6), gallons(0.05)), DAY, gallons(5));
        Calibration calibration = of(catchAt(METER_POINT, volume, 6000));

        assertThat(only(FindingCode.UNCERTAINTY_ASSUMED, calibration.findings()).sentence())
                .contains("the tolerance of container P-2");
    }

    @Test
    void aVolumeOfFewDivisionsIsSmall() {
        Finding small = only(
                FindingCode.CAUGHT_VOLUME_SMALL,
                of(catchAt(METER_POINT, read(0.5), 600)).findings());

        assertThat(small.sentence())
                .isEqualTo("The caught volume 0.5 gal is small against the container's division 0.05 gal: catch more.");
    }

    @Test
    void aDensityThatIsNotTheLiquidsDoubtsTheCatch() {
        // weighed as brine, divided by the density of water
        Calibration calibration = of(catchAt(METER_POINT, weighed(49, 8.34), 7050));

        assertThat(only(FindingCode.LIQUID_DENSITY_DIFFERS, calibration.findings())
                        .sentence())
                .contains("8.34 lb/gal", "brine", "9.8 lb/gal");
        assertThat(calibration.isDoubted()).isTrue();
        assertThat(codes(of(catchAt(METER_POINT, weighed(49, 9.6), 6100)).findings()))
                .doesNotContain(FindingCode.LIQUID_DENSITY_DIFFERS);
    }

    @Test
    void pulsesOfAFlowMeterAreNoFewRevolutions() {
        assertThat(codes(of(catchAt(METER_POINT, read(5), 6000)).findings()))
                .doesNotContain(FindingCode.TOO_FEW_REVOLUTIONS, FindingCode.TOO_FEW_PULSES);
    }

    private static ApparentFill fill(double gallons, double pulsesCounted, double kFactor) {
        return of(catchAt(CalibrationPoint.of(BRINE, meter(kFactor), Setting.none()), read(gallons), pulsesCounted))
                .apparentFill();
    }

    @Test
    void aKFactorTenTimesOffIsImpossibleAndNamed() {
        ApparentFill fill = fill(5, 6000, 12_000);

        assertThat(fill.finding().orElseThrow().code()).isEqualTo(FindingCode.METERED_VOLUME_IMPOSSIBLE);
        assertThat(fill.slips()).hasToString("[pulses per volume ÷ 10 (1200 pulse/gal)]");
    }

    @Test
    void litersWrittenAsGallonsAreNamed() {
        // 5 gal are 18.93 L
        Calibration calibration = of(catchAt(
                METER_POINT, ReadVolume.of(Graduate.of("P-3", gallons(30), gallons(0.05)), DAY, gallons(18.93)), 6000));

        assertThat(calibration.isDoubted()).isTrue();
        assertThat(calibration.apparentFill().slips())
                .hasToString("[pulses per volume ÷ 3.785 (317 pulse/gal), caught volume read in liters and written in"
                        + " gallons]");
    }

    @Test
    void gallonsWrittenAsLitersAndImperialOnesAsUsGallonsAreNamed() {
        assertThat(fill(5 / 3.785411784, 6000, 1200).slips().toString())
                .contains("caught volume read in gallons and written in liters");
        assertThat(fill(5 / 1.20095, 6000, 1200).slips().toString())
                .contains("caught volume read in imperial gallons and written in US gallons");
    }

    @Test
    void aPumpThatDeliversMoreThanItsDisplacementIsNamedAsOne() {
        Calibration calibration = of(catchAt(pumpPoint(SENSOR), read(5), 5000));

        assertThat(calibration.apparentFill().finding().orElseThrow().code())
                .isEqualTo(FindingCode.PUMPED_VOLUME_IMPOSSIBLE);
        assertThat(calibration.apparentFill().slips().toString()).contains("pulses per revolution ÷ 2");
    }

    @Test
    void gallonsAndGrainsDoNotMix() {
        assertRefused(
                "caught amount must be a volume, or a mass with the density, as brine is a liquid: 49 lb",
                () -> Observation.of(METER_POINT, NOON, caught(49)));
        assertRefused(
                "caught amount must be a mass, as salt is granular: 5 gal",
                () -> Observation.of(AUGER_POINT, NOON, read(5)));
        assertRefused(
                "material must be granular, as a conveyor meters it: brine, a liquid",
                () -> CalibrationPoint.of(BRINE, AUGER, Setting.none()));
        assertRefused(
                "material must be a liquid, as a pump or a flow meter meters it: salt, granular",
                () -> CalibrationPoint.of(SALT, METER, Setting.none()));
        assertRefused(
                "calibration must be by volume, as brine is a liquid: in pulse/lb",
                () -> CalibrationFactor.parse("20 pulse/lb").kilogramsPerRevolution(METER_POINT));
        assertRefused(
                "calibration must be by mass, as salt is granular: in pulse/gal",
                () -> CalibrationFactor.parse("1200 pulse/gal").kilogramsPerRevolution(AUGER_POINT));
        assertRefused(
                "calibration must be by mass, as nobody says how dense a liquid it is for: in pulse/gal",
                () -> CalibrationFactor.parse("1200 pulse/gal").kilogramsPerRevolution(SENSOR));
        assertRefused(
                "calibration must be by pulse, as a flow meter has no shaft: in gal/rev",
                () -> CalibrationFactor.parse("0.05 gal/rev").kilogramsPerRevolution(METER_POINT));
    }

    @Test
    void aFlowMeterCountsPulsesAndNothingElse() {
        assertRefused(
                "count must be in pulses, as a flow meter has no shaft: 20 rev by eye, standard uncertainty 0.1 rev",
                () -> Observation.of(METER_POINT, NOON, read(5)).counted(revolutionsByEye(20)));
        assertRefused(
                "gate setting must be left out for a flow meter, which has nothing to set: 2 in",
                () -> CalibrationPoint.of(BRINE, METER, Setting.height(Amounts.of(2, SpreadingUnits.INCH))));
    }

    @Test
    void aPumpWithoutSensorIsWatched() {
        CalibrationPoint watched = pumpPoint(NoSensor.onDriveShaft());
        Calibration calibration =
                of(CalibrationCatch.of(Observation.of(watched, NOON, read(4.8)).counted(revolutionsByEye(100))));

        assertThat(gallonsPerTurn(calibration)).isCloseTo(0.048, within(1e-12));
        assertRefused(
                "count must be revolutions or shaft speed × time, as the drive has no pulse sensor: 5 pulse",
                () -> Observation.of(watched, NOON, read(5)).counted(pulses(5)));
    }

    @Test
    void theValueInForceSaysItsForm() {
        assertThat(inForce(1200).factor().form()).isEqualTo(FactorForm.PULSES_PER_VOLUME);
        assertThat(inForce(1200).kilogramsPerRevolution()).isCloseTo(9.8 * 0.45359237 / 1200, within(1e-15));
        assertThat(CalibrationFactor.parse("3.15 mL/pulse").form()).isEqualTo(FactorForm.VOLUME_PER_PULSE);
        assertThat(CalibrationFactor.parse("20 rev/gal").form()).isEqualTo(FactorForm.REVOLUTIONS_PER_VOLUME);
        assertThat(CalibrationFactor.parse("20 rev/gal").kilogramsPerRevolution(pumpPoint(SENSOR)))
                .isCloseTo(9.8 * 0.45359237 / 20, within(1e-15));
    }
}
