package org.gritwright.core.weighing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.LiquidSamples.PAIL;
import static org.gritwright.core.LiquidSamples.gallons;
import static org.gritwright.core.LiquidSamples.poundsPerGallon;
import static org.gritwright.core.LiquidSamples.read;
import static org.gritwright.core.LiquidSamples.weighed;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.caught;

import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.Samples;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class CaughtVolumeTest {
    private static final double GALLON = 0.003785411784;

    @Test
    void fillsOfOneContainerAddUp() {
        ReadVolume volume = new ReadVolume(
                PAIL, DAY, List.of(gallons(5), gallons(4.1), Amounts.of(3.785411784, SpreadingUnits.LITER)));

        assertThat(volume.total().getUnit()).isEqualTo(SpreadingUnits.US_GALLON);
        assertThat(volume.si()).isCloseTo(10.1 * GALLON, within(1e-15));
        assertThat(volume.divisions()).isCloseTo(202, within(1e-9));
        assertThat(volume.readings()).isEqualTo(3);
        assertThat(volume.readingsSi()).hasSize(3);
        assertThat(volume.readingsSi().get(1)).isCloseTo(4.1 * GALLON, within(1e-17));
        assertThat(volume.instrument()).isEqualTo("P-1");
        assertThat(volume.weighings()).isEmpty();
        assertThat(volume).hasToString("10.1 gal in container P-1, 2026-10-19");
    }

    @Test
    void eachFillIsRoundedToTheDivision() {
        double one = 0.05 * GALLON / Math.sqrt(12);

        assertThat(read(5).roundingSi()).isCloseTo(one, within(1e-18));
        assertThat(new ReadVolume(PAIL, DAY, List.of(gallons(5), gallons(5), gallons(5), gallons(5))).roundingSi())
                .isCloseTo(2 * one, within(1e-18));
        assertThat(Amounts.in(read(5).readingUncertainty().asType(Volume.class), SpreadingUnits.US_GALLON))
                .isCloseTo(0.05 / Math.sqrt(12), within(1e-15));
    }

    @Test
    void aWrongMarkIsWrongInEveryFill() {
        assertThat(read(5).relativeSpanLimit().orElseThrow()).isCloseTo(0.03 / 5, within(1e-15));
        assertThat(new ReadVolume(PAIL, DAY, List.of(gallons(5), gallons(3)))
                        .relativeSpanLimit()
                        .orElseThrow())
                .isCloseTo(2 * 0.03 / 8, within(1e-15));
        assertThat(read(5).isSpanTested()).isTrue();
    }

    @Test
    void ofAContainerWithoutToleranceTwoPercentAreAssumed() {
        ReadVolume volume = ReadVolume.of(Graduate.of("P-2", gallons(6), gallons(0.1)), DAY, gallons(5));

        assertThat(volume.relativeSpanLimit()).isEmpty();
        assertThat(volume.assumedSpanLimit()).isEqualTo(0.02);
        assertThat(volume.isSpanTested()).isFalse();
        assertThat(volume.isWeighed()).isFalse();
        assertThat(volume.relativeDensityUncertainty()).isZero();
        assertThat(volume.findings()).isEmpty();
    }

    @Test
    void aWeighedLiquidIsItsMassOverTheDensity() {
        WeighedVolume volume = weighed(49, 9.8);

        assertThat(volume.total().getUnit()).isEqualTo(SpreadingUnits.US_GALLON);
        assertThat(Amounts.in(volume.total(), SpreadingUnits.US_GALLON)).isCloseTo(5, within(1e-12));
        assertThat(volume.si()).isCloseTo(5 * GALLON, within(1e-15));
        assertThat(volume.relativeDensityUncertainty()).isCloseTo(0.02 / 9.8, within(1e-15));
        assertThat(volume.roundingSi() / volume.si())
                .isCloseTo(caught(49).roundingKilograms() / caught(49).kilograms(), within(1e-15));
        assertThat(volume.divisions()).isCloseTo(98, within(1e-9));
        assertThat(volume.readings()).isEqualTo(2);
        assertThat(volume.instrument()).isEqualTo("S-1");
        assertThat(volume.isWeighed()).isTrue();
        assertThat(volume.relativeSpanLimit()).isEqualTo(caught(49).relativeSpanLimit());
        assertThat(volume.assumedSpanLimit()).isEqualTo(Scale.COMMON_SPAN_LIMIT);
        assertThat(volume.isSpanTested()).isEqualTo(caught(49).isSpanTested());
        assertThat(volume.findings()).isEqualTo(caught(49).findings());
        assertThat(volume.weighings()).isEqualTo(caught(49).weighings());
        assertThat(volume.readingsSi()).isEqualTo(caught(49).readingsSi());
        assertThat(volume.division()).isEqualTo(Samples.SCALE.division());
        assertThat(volume.measuredOn()).isEqualTo(DAY);
        assertThat(volume).hasToString(caught(49) + ", at 9.8 lb/gal");
    }

    @Test
    void aMassIsKilogramsWhereverOnlyTheAmountMatters() {
        CaughtMass mass = caught(49);

        assertThat(mass.si()).isEqualTo(mass.kilograms()).isCloseTo(49 * 0.45359237, within(1e-12));
        assertThat(mass.roundingSi()).isEqualTo(mass.roundingKilograms()).isPositive();
        assertThat(mass.isWeighed()).isTrue();
        assertThat(mass.relativeDensityUncertainty()).isZero();
        Weighing only = mass.weighings().get(0);
        assertThat(mass.readingsSi())
                .containsExactly(Amounts.si(Mass.class, only.gross()), Amounts.si(Mass.class, only.tare()));
    }

    @Test
    void aScaleThatNobodyCheckedIsAsDoubtfulForALiquid() {
        Scale unchecked = Scale.of("S-9", Samples.pounds(100), Samples.pounds(0.5));
        CaughtMass mass = CaughtMass.of(unchecked, DAY, new Weighing("pail 1", Samples.pounds(51), Samples.pounds(2)));
        WeighedVolume volume = new WeighedVolume(
                mass, Measured.of(poundsPerGallon(9.8), poundsPerGallon(0.02), Double.POSITIVE_INFINITY));

        assertThat(Samples.codes(volume.findings())).containsExactly(FindingCode.SCALE_NOT_CHECKED);
        assertThat(volume.isSpanTested()).isFalse();
    }

    @Test
    void aContainerNamesWhatIsMissing() throws ReflectiveOperationException {
        Samples.assertNamesWhatIsMissing(PAIL);
    }

    @Test
    void whatWasNotCaughtIsRefused() {
        assertRefused("fills of container P-1 must be one or more: none", () -> new ReadVolume(PAIL, DAY, List.of()));
        assertRefused("volume read in container P-1 must be greater than 0: 0 gal", () -> read(0));
        assertRefused("volume read in container P-1 must be at most its highest mark, 6 gal: 6.5 gal", () -> read(6.5));
        assertThat(read(6).si()).isCloseTo(6 * GALLON, within(1e-15));
        assertRefused("density of the liquid must be greater than 0: 0 lb/gal", () -> weighed(49, 0));
        assertRefused(
                "uncertainty of the density of the liquid must be given: nothing",
                () -> new WeighedVolume(caught(49), Measured.once(poundsPerGallon(9.8))));
    }

    @Test
    void aContainerIsDescribedAsItCanBe() {
        assertRefused(
                "division of container P-1 must be greater than 0: 0 gal",
                () -> Graduate.of("P-1", gallons(6), gallons(0)));
        assertRefused(
                "capacity of container P-1 must be at least 0.1 gal: 0.05 gal",
                () -> Graduate.of("P-1", gallons(0.05), gallons(0.1)));
        assertRefused(
                "tolerance of container P-1 must be below its capacity, 6 gal: 6 gal", () -> PAIL.within(gallons(6)));
        assertRefused("tolerance of container P-1 must be 0 or more: -0.1 gal", () -> PAIL.within(gallons(-0.1)));
        assertThat(PAIL.within(gallons(0)).tolerance()).contains(gallons(0));
        assertThat(Graduate.of("P-1", gallons(6), gallons(6)).tolerance()).isEqualTo(Optional.empty());
    }
}
