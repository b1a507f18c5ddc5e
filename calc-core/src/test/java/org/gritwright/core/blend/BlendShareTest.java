package org.gritwright.core.blend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.blend.BlendSamples.kilograms;
import static org.gritwright.core.blend.BlendSamples.number;
import static org.gritwright.core.blend.BlendSamples.percent;
import static org.gritwright.core.blend.BlendSamples.uncertainty;
import static org.gritwright.core.blend.BlendSamples.wet;

import javax.measure.Quantity;
import org.assertj.core.data.Offset;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.junit.jupiter.api.Test;

class BlendShareTest {
    private static final Offset<Double> TINY = within(1e-9);
    private static final ChemicalShare FIFTH = new ChemicalShare(percent(20, 1));

    private static Quantity<LaneApplicationRate> laneRate(double rate) {
        return Amounts.of(rate, SpreadingUnits.POUND_PER_LANE_MILE);
    }

    private static Quantity<ApplicationRate> rate(double rate) {
        return Amounts.of(rate, SpreadingUnits.KILOGRAM_PER_KILOMETER);
    }

    @Test
    void aRateOfTheMixLaysItsShareOfDryChemical() {
        Measured<LaneApplicationRate> dry = FIFTH.dryChemical(laneRate(500));

        assertThat(number(dry)).isCloseTo(100, TINY);
        assertThat(dry.value().getUnit()).isEqualTo(SpreadingUnits.POUND_PER_LANE_MILE);
        assertThat(uncertainty(dry)).isCloseTo(5, TINY);
        assertThat(number(FIFTH.dryChemicalPerDistance(rate(150)))).isCloseTo(30, TINY);
    }

    @Test
    void aWantedRateOfDryChemicalNeedsMoreOfTheMix() {
        Measured<LaneApplicationRate> mix = FIFTH.mix(laneRate(100));

        assertThat(number(mix)).isCloseTo(500, TINY);
        assertThat(uncertainty(mix)).isCloseTo(25, TINY);
        assertThat(mix.degreesOfFreedom()).hasValue(Double.POSITIVE_INFINITY);
        assertThat(number(FIFTH.mixPerDistance(rate(30)))).isCloseTo(150, TINY);
        assertThat(FIFTH.mixPerDistance(rate(30)).value().getUnit()).isEqualTo(SpreadingUnits.KILOGRAM_PER_KILOMETER);
    }

    @Test
    void ofAShareOfUnknownUncertaintyTheRatesAreUnknownToo() {
        ChemicalShare share = new ChemicalShare(Measured.once(percent(20)));

        assertThat(share.dryChemical(laneRate(500)).standardUncertainty()).isEmpty();
        assertThat(number(share.dryChemical(laneRate(500)))).isCloseTo(100, TINY);
        assertThat(share.mix(laneRate(100)).standardUncertainty()).isEmpty();
    }

    @Test
    void aShareIsAboveNoneAndAtMostAll() {
        assertRefused("share of dry chemical must be greater than 0: 0 %", () -> new ChemicalShare(percent(0, 0)));
        assertRefused(
                "share of dry chemical must be within 0 % to 100 %: 100.1 %",
                () -> new ChemicalShare(percent(100.1, 0)));
        assertThat(number(new ChemicalShare(percent(100, 0)).mix(laneRate(7)))).isEqualTo(7);
    }

    @Test
    void negativeRatesAreRefused() {
        assertRefused("rate of the mix must be 0 or more: -1 lb/lane-mi", () -> FIFTH.dryChemical(laneRate(-1)));
        assertRefused("rate of the mix must be 0 or more: -1 kg/km", () -> FIFTH.dryChemicalPerDistance(rate(-1)));
        assertRefused("rate of dry chemical must be 0 or more: -1 lb/lane-mi", () -> FIFTH.mix(laneRate(-1)));
        assertRefused("rate of dry chemical must be 0 or more: -1 kg/km", () -> FIFTH.mixPerDistance(rate(-1)));
        assertThat(number(FIFTH.mix(laneRate(0)))).isZero();
    }

    @Test
    void whatWashesOutIsTheChemical() {
        // 2 kg with 4 % water: 1.92 kg dry, of which 1.6 kg stays.
        DissolvedSample sample = new DissolvedSample(kilograms(2), kilograms(1.6), wet(4, 0.5), kilograms(0.001));
        Measured<?> share = sample.chemicalShare().share();

        assertThat(number(share)).isCloseTo(16, TINY);
        double rounding = 0.001 / 2 / Math.sqrt(12);
        double moisture = 0.005 / Math.sqrt(3);
        assertThat(uncertainty(share))
                .isCloseTo(100 * Math.sqrt(moisture * moisture + rounding * rounding * (1 + 0.8 * 0.8)), TINY);
    }

    @Test
    void moistureOfTheDryMassIsTakenOffAsSuch() {
        // 25 % of the dry mass is 20 % of the wet.
        Moisture moisture = new Moisture(percent(25), percent(0), Moisture.Basis.DRY_MASS);

        assertThat(number(new DissolvedSample(kilograms(2), kilograms(1), moisture, kilograms(0.001))
                        .chemicalShare()
                        .share()))
                .isCloseTo(30, TINY);
    }

    @Test
    void samplesAreChecked() {
        assertRefused(
                "mass of the residue must be below the sample's dry mass, 0.5 kg: 0.5 kg",
                () -> new DissolvedSample(kilograms(1), kilograms(0.5), wet(50, 0), kilograms(0.001)));
        assertRefused(
                "mass of the residue must be 0 or more: -1 kg",
                () -> new DissolvedSample(kilograms(1), kilograms(-1), wet(5, 0), kilograms(0.001)));
        assertRefused(
                "mass of the sample must be greater than 0: 0 kg",
                () -> new DissolvedSample(kilograms(0), kilograms(0), wet(5, 0), kilograms(0.001)));
        assertRefused(
                "division of the scale must be greater than 0: 0 kg",
                () -> new DissolvedSample(kilograms(1), kilograms(0), wet(5, 0), kilograms(0)));
    }
}
