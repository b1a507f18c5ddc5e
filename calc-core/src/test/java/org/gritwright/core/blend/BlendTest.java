package org.gritwright.core.blend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.blend.BlendSamples.DRY_SALT;
import static org.gritwright.core.blend.BlendSamples.DRY_SAND;
import static org.gritwright.core.blend.BlendSamples.SALT;
import static org.gritwright.core.blend.BlendSamples.blend;
import static org.gritwright.core.blend.BlendSamples.dryBasis;
import static org.gritwright.core.blend.BlendSamples.kilograms;
import static org.gritwright.core.blend.BlendSamples.number;
import static org.gritwright.core.blend.BlendSamples.percent;
import static org.gritwright.core.blend.BlendSamples.uncertainty;
import static org.gritwright.core.blend.BlendSamples.wet;

import java.util.Collections;
import java.util.List;
import javax.measure.quantity.Volume;
import org.assertj.core.data.Offset;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.junit.jupiter.api.Test;

class BlendTest {
    private static final Offset<Double> TINY = within(1e-9);

    private static Measured<Volume> cubicMeters(double volume, double uncertainty, double degrees) {
        return Measured.of(
                Amounts.of(volume, SpreadingUnits.CUBIC_METER),
                Amounts.of(uncertainty, SpreadingUnits.CUBIC_METER),
                degrees);
    }

    private static Measured<BulkDensity> density(double kilogramsPerCubicMeter, double uncertainty, double degrees) {
        return Measured.of(
                Amounts.of(kilogramsPerCubicMeter, SpreadingUnits.KILOGRAM_PER_CUBIC_METER),
                Amounts.of(uncertainty, SpreadingUnits.KILOGRAM_PER_CUBIC_METER),
                degrees);
    }

    @Test
    void theShareOfDryPureSaltIsItsShareByMass() {
        assertThat(number(blend(DRY_SAND, 900, DRY_SALT, 100).chemicalShare().share()))
                .isCloseTo(10, TINY);
    }

    @Test
    void waterAndImpuritiesAreNoChemical() {
        // 100 kg × 0.95 dry × 0.95 pure of 1000 kg
        Blend blend = blend(DRY_SAND, 900, SALT, 100);

        assertThat(number(blend.chemicalShare().share())).isCloseTo(9.025, TINY);
        assertThat(number(blend.chemicalMass())).isCloseTo(90.25, TINY);
        assertThat(number(blend.dryMass())).isCloseTo(995, TINY);
        assertThat(number(blend.mass())).isCloseTo(1000, TINY);
        assertThat(number(SALT.chemicalPart())).isCloseTo(90.25, TINY);
        assertThat(SALT.chemicalPart().getUnit()).isEqualTo(SpreadingUnits.PERCENT);
    }

    @Test
    void theMoistureOfAMixIsGivenOnTheBasisThatIsAskedFor() {
        // 1000 kg with 50 kg of water.
        Blend blend = blend(DRY_SAND, 600, BlendComponent.pure("salt", wet(12.5, 0)), 400);

        assertThat(number(blend.moisture(Moisture.Basis.WET_MASS))).isCloseTo(5, TINY);
        assertThat(number(blend.moisture(Moisture.Basis.DRY_MASS))).isCloseTo(100 * 50 / 950.0, TINY);
    }

    @Test
    void oneMoistureIsTheSameOnEitherBasis() {
        // 20 of 100 wet is 25 of 100 dry.
        Blend wetBasis = blend(BlendComponent.inert("sand", wet(20, 0)), 900, DRY_SALT, 100);
        Blend dryBasis = blend(BlendComponent.inert("sand", dryBasis(25)), 900, DRY_SALT, 100);

        assertThat(number(dryBasis.dryMass())).isCloseTo(number(wetBasis.dryMass()), TINY);
        assertThat(number(dryBasis.moisture(Moisture.Basis.WET_MASS))).isCloseTo(18, TINY);
    }

    @Test
    void massesAreInTheUnitOfTheFirstPart() {
        Blend blend = Blend.of(
                BlendPart.byMass(DRY_SAND, Amounts.of(1, SpreadingUnits.SHORT_TON)),
                BlendPart.byMass(DRY_SALT, Amounts.of(200, SpreadingUnits.POUND)));

        assertThat(blend.mass().getUnit()).isEqualTo(SpreadingUnits.SHORT_TON);
        assertThat(number(blend.mass())).isCloseTo(1.1, TINY);
        assertThat(number(blend.shareOf("salt"))).isCloseTo(100 / 11.0, TINY);
    }

    @Test
    void dampSandTakesMoreRoom() {
        // Dry 1600 kg/m³; damp and 25 % larger 1280 dry: with 5 % water of the dry mass 1344 as it lies.
        BlendComponent damp = BlendComponent.inert("sand", dryBasis(5));
        BlendPart bucket = BlendPart.byVolume(damp, cubicMeters(1, 0, 1), density(1344, 0, 1));

        assertThat(number(bucket.mass())).isCloseTo(1344, TINY);
        assertThat(bucket.mass().value().getUnit()).isEqualTo(SpreadingUnits.KILOGRAM);
        assertThat(number(Blend.of(bucket).dryMass())).isCloseTo(0.8 * 1600, TINY);
    }

    @Test
    void aVolumesUncertaintyIsThatOfBothRatios() {
        // 3 % and 4 % make 5 %.
        BlendPart part = BlendPart.byVolume(DRY_SAND, cubicMeters(2, 0.06, 9), density(1500, 60, 4));

        assertThat(number(part.mass())).isCloseTo(3000, TINY);
        assertThat(uncertainty(part.mass())).isCloseTo(150, TINY);
        assertThat(part.mass().degreesOfFreedom()).hasValue(4);
        assertThat(BlendPart.byVolume(DRY_SAND, cubicMeters(2, 0.06, 3), density(1500, 60, 4))
                        .mass()
                        .degreesOfFreedom())
                .hasValue(3);
    }

    @Test
    void aVolumesUncertaintyIsUnknownIfOneOfThemIs() {
        assertThat(BlendPart.byVolume(
                                DRY_SAND, Measured.once(cubicMeters(2, 0, 1).value()), density(1500, 60, 4))
                        .mass()
                        .standardUncertainty())
                .isEmpty();
        assertThat(BlendPart.byVolume(
                                DRY_SAND,
                                cubicMeters(2, 0, 1),
                                Measured.once(density(1500, 0, 1).value()))
                        .mass()
                        .standardUncertainty())
                .isEmpty();
    }

    @Test
    void poundsPerCubicFootGivePounds() {
        BlendPart part = BlendPart.byVolume(
                DRY_SAND,
                Measured.once(Amounts.of(1, SpreadingUnits.CUBIC_YARD)),
                Measured.once(Amounts.of(100, SpreadingUnits.POUND_PER_CUBIC_FOOT)));

        assertThat(part.mass().value().getUnit()).isEqualTo(SpreadingUnits.POUND);
        assertThat(number(part.mass())).isCloseTo(2700, TINY);
    }

    @Test
    void everyInputCarriesItsUncertaintyToTheShare() {
        BlendComponent sand = BlendComponent.inert("sand", wet(4, 1));
        BlendComponent salt = new BlendComponent("salt", wet(2, 0.5), percent(95, 1));
        Blend blend = Blend.of(new BlendPart(sand, kilograms(800, 10)), new BlendPart(salt, kilograms(200, 5)));
        double share = 0.2 * 0.98 * 0.95;
        double bySand = share / 1000 * 10;
        double bySalt = (0.98 * 0.95 - share) / 1000 * 5;
        double byMoisture = 0.2 * 0.95 * 0.005 / Math.sqrt(3);
        double byPurity = 0.2 * 0.98 * 0.01;

        Measured<?> result = blend.chemicalShare().share();

        assertThat(number(result)).isCloseTo(100 * share, TINY);
        assertThat(uncertainty(result))
                .isCloseTo(
                        100
                                * Math.sqrt(bySand * bySand
                                        + bySalt * bySalt
                                        + byMoisture * byMoisture
                                        + byPurity * byPurity),
                        TINY);
        assertThat(result.degreesOfFreedom()).hasValue(Double.POSITIVE_INFINITY);
    }

    @Test
    void fewDegreesOfFreedomStayFew() {
        Blend blend = Blend.of(
                new BlendPart(DRY_SAND, kilograms(800, 0)),
                new BlendPart(DRY_SALT, Measured.of(kilograms(200), kilograms(5), 3)));

        assertThat(blend.chemicalShare().share().degreesOfFreedom().orElseThrow())
                .isCloseTo(3, TINY);
    }

    @Test
    void withoutTheUncertaintyOfEveryInputThereIsNone() {
        Blend blend = Blend.of(new BlendPart(DRY_SAND, kilograms(800, 1)), BlendPart.byMass(DRY_SALT, kilograms(200)));

        assertThat(blend.chemicalShare().share().standardUncertainty()).isEmpty();
        assertThat(number(blend.chemicalShare().share())).isCloseTo(20, TINY);
    }

    @Test
    void partsAndComponentsAreChecked() {
        assertRefused("mass of sand must be greater than 0: 0 kg", () -> BlendPart.byMass(DRY_SAND, kilograms(0)));
        assertRefused(
                "volume of sand must be greater than 0: 0 m³",
                () -> BlendPart.byVolume(DRY_SAND, cubicMeters(0, 0, 1), density(1500, 0, 1)));
        assertRefused(
                "loose bulk density of sand must be greater than 0: 0 kg/m³",
                () -> BlendPart.byVolume(DRY_SAND, cubicMeters(1, 0, 1), density(0, 0, 1)));
        assertRefused(
                "purity of salt must be within 0 % to 100 %: 101 %",
                () -> new BlendComponent("salt", wet(0, 0), percent(101, 0)));
        assertRefused(
                "component of a mix must be a text that is not blank: \"\"", () -> BlendComponent.inert("", wet(0, 0)));
        assertRefused("parts of a mix must be one or more: none", () -> new Blend(List.of()));
        assertRefused("component of a mix must be named once: salt", () -> blend(DRY_SALT, 1, SALT, 1));
        assertRefused(
                "component of a mix must be one of its parts: grit",
                () -> blend(DRY_SAND, 1, SALT, 1).shareOf("grit"));
        assertRefused(
                "parts of a mix must be at most 100: more",
                () -> new Blend(Collections.nCopies(101, BlendPart.byMass(DRY_SAND, kilograms(1)))));
    }

    @Test
    void sandAloneHasNoChemicalToDoseBy() {
        Blend sand = Blend.of(BlendPart.byMass(DRY_SAND, kilograms(1)));

        assertThat(number(sand.chemicalMass())).isZero();
        assertRefused("share of dry chemical must be greater than 0: 0 %", sand::chemicalShare);
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        Blend blend = blend(DRY_SAND, 4, SALT, 1);
        assertNamesWhatIsMissing(SALT);
        assertNamesWhatIsMissing(blend.parts().get(0));
        assertNamesWhatIsMissing(blend);
        assertNamesWhatIsMissing(blend.chemicalShare());
        assertNamesWhatIsMissing(new DissolvedSample(kilograms(2), kilograms(1), wet(5, 0), kilograms(0.1)));
        assertNamesWhatIsMissing(new MixingSquare(percent(90, 0), percent(0, 0), percent(20, 0)));
    }
}
