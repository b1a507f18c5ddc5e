package org.gritwright.core.blend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.blend.BlendSamples.kilograms;
import static org.gritwright.core.blend.BlendSamples.number;
import static org.gritwright.core.blend.BlendSamples.percent;
import static org.gritwright.core.blend.BlendSamples.uncertainty;

import javax.measure.Quantity;
import org.assertj.core.data.Offset;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.junit.jupiter.api.Test;

class BlendSquareTest {
    private static final Offset<Double> TINY = within(1e-9);

    private static MixingSquare square(double first, double second, double target) {
        return new MixingSquare(percent(first, 0), percent(second, 0), percent(target, 0));
    }

    private static Quantity<BulkDensity> density(double density) {
        return Amounts.of(density, SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
    }

    @Test
    void thePartsAreTheDistancesAcross() {
        // Parts 0.2 and 1.25 of 1.45 (Montana State University's example), and 4 and 31 of 35.
        assertThat(number(square(12.25, 10.8, 11).partOfFirst())).isCloseTo(100 * 0.2 / 1.45, TINY);
        assertThat(number(square(10.8, 12.25, 11).partOfFirst())).isCloseTo(100 * 1.25 / 1.45, TINY);
        assertThat(number(square(45, 10, 14).partOfFirst())).isCloseTo(100 * 4 / 35.0, TINY);
    }

    @Test
    void aTargetMayBeOneOfTheComponentsButNotBeyondThem() {
        assertThat(number(square(95, 0, 95).partOfFirst())).isCloseTo(100, TINY);
        assertThat(number(square(95, 0, 0).partOfFirst())).isZero();
        assertRefused(
                "share of the mix must be between those of its components, 12 % and 10 %: 14 %",
                () -> square(12, 10, 14));
        assertRefused(
                "share of the mix must be between those of its components, 10 % and 12 %: 9 %",
                () -> square(10, 12, 9));
    }

    @Test
    void twoOfAKindMakeNoOther() {
        assertRefused(
                "share of the second component must be another than the first's, 10 %: 10 %", () -> square(10, 10, 10));
    }

    @Test
    void sharesAreFromNoneToAll() {
        assertRefused("share of the first component must be within 0 % to 100 %: 101 %", () -> square(101, 0, 50));
        assertRefused("share of the second component must be within 0 % to 100 %: -1 %", () -> square(100, -1, 50));
        assertRefused("share of the mix must be within 0 % to 100 %: 101 %", () -> square(100, 0, 101));
    }

    @Test
    void allThreeSharesMakeThePartUncertain() {
        // (t − b)/(a − b) with a 90, b 10, t 30: by t 1/80, by a −0.25/80, by b −0.75/80.
        MixingSquare square = new MixingSquare(percent(90, 2), percent(10, 4), percent(30, 3));

        assertThat(number(square.partOfFirst())).isCloseTo(25, TINY);
        assertThat(uncertainty(square.partOfFirst())).isCloseTo(100 * Math.sqrt(9 + 0.25 + 9) / 80, TINY);
        assertThat(new MixingSquare(percent(90, 2), percent(10, 4), Measured.once(percent(30)))
                        .partOfFirst()
                        .standardUncertainty())
                .isEmpty();
    }

    @Test
    void theMassOfTheFirstIsItsPartOfTheMix() {
        assertThat(number(square(90, 10, 30).massOfFirst(kilograms(2000)))).isCloseTo(500, TINY);
        assertThat(square(90, 10, 30).massOfFirst(kilograms(2000)).getUnit()).isEqualTo(SpreadingUnits.KILOGRAM);
        assertRefused(
                "mass of the mix must be greater than 0: 0 kg",
                () -> square(90, 10, 30).massOfFirst(kilograms(0)));
    }

    @Test
    void aLoaderCountsVolumesAndNotMasses() {
        // 1 t of 1250 kg/m³ and 3 t of 1500: 0.8 m³ and 2 m³.
        assertThat(number(square(90, 10, 30).looseVolumeOfFirst(density(1250), density(1500))))
                .isCloseTo(100 * 0.8 / 2.8, TINY);
        assertRefused(
                "loose bulk density of the first must be greater than 0: 0 kg/m³",
                () -> square(90, 10, 30).looseVolumeOfFirst(density(0), density(1500)));
        assertRefused(
                "loose bulk density of the second must be greater than 0: 0 kg/m³",
                () -> square(90, 10, 30).looseVolumeOfFirst(density(1500), density(0)));
    }
}
