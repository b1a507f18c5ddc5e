package org.gritwright.core.blend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.blend.BlendSamples.kilograms;
import static org.gritwright.core.blend.BlendSamples.number;
import static org.gritwright.core.blend.BlendSamples.percent;
import static org.gritwright.core.blend.BlendSamples.uncertainty;

import java.util.List;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

class BlendLawsTest {
    private static Arbitrary<Double> between(double low, double high) {
        return Arbitraries.doubles().between(low, high).ofScale(3);
    }

    private static BlendPart part(String name, double mass, double moisture, Moisture.Basis basis, double purity) {
        return new BlendPart(
                new BlendComponent(name, new Moisture(percent(moisture), percent(1), basis), percent(purity, 0.5)),
                kilograms(mass, 2));
    }

    private static Arbitrary<BlendPart> part(String name, Arbitrary<Double> purity) {
        return Combinators.combine(between(1, 5000), between(0, 30), Arbitraries.of(Moisture.Basis.class), purity)
                .as((mass, moisture, basis, pure) -> part(name, mass, moisture, basis, pure));
    }

    @Provide
    Arbitrary<Blend> blends() {
        return Combinators.combine(
                        part("sand", Arbitraries.just(0.0)),
                        part("salt", between(60, 100)),
                        part("grit", between(0, 5)))
                .as(Blend::of);
    }

    private static double sum(Blend blend, Function<Blend, Quantity<Mass>> mass) {
        return blend.parts().stream()
                .mapToDouble(part -> number(mass.apply(Blend.of(part))))
                .sum();
    }

    @Property
    void massesAdd(@ForAll("blends") Blend blend) {
        assertThat(number(blend.mass())).isCloseTo(sum(blend, Blend::mass), within(1e-8));
        assertThat(number(blend.dryMass())).isCloseTo(sum(blend, Blend::dryMass), within(1e-8));
        assertThat(number(blend.chemicalMass())).isCloseTo(sum(blend, Blend::chemicalMass), within(1e-8));
        assertThat(number(blend.shareOf("sand")) + number(blend.shareOf("salt")) + number(blend.shareOf("grit")))
                .isCloseTo(100, within(1e-9));
    }

    @Property
    void waterAndDryMassMakeTheMix(@ForAll("blends") Blend blend) {
        double wet = number(blend.moisture(Moisture.Basis.WET_MASS)) / 100;
        double dry = number(blend.moisture(Moisture.Basis.DRY_MASS)) / 100;

        assertThat(number(blend.mass()) * (1 - wet)).isCloseTo(number(blend.dryMass()), within(1e-8));
        assertThat(number(blend.dryMass()) * (1 + dry)).isCloseTo(number(blend.mass()), within(1e-8));
    }

    @Property
    void theOrderOfThePartsDoesntMatter(@ForAll("blends") Blend blend) {
        List<BlendPart> parts = blend.parts();
        Measured<?> turned = Blend.of(parts.get(2), parts.get(0), parts.get(1))
                .chemicalShare()
                .share();

        assertThat(number(turned)).isCloseTo(number(blend.chemicalShare().share()), within(1e-10));
        assertThat(uncertainty(turned))
                .isCloseTo(uncertainty(blend.chemicalShare().share()), within(1e-10));
    }

    @Property
    void twiceOfEverythingIsTheSameMix(
            @ForAll("blends") Blend blend, @ForAll @DoubleRange(min = 0.01, max = 100) double factor) {
        Blend more = new Blend(blend.parts().stream()
                .map(part -> new BlendPart(
                        part.component(), kilograms(factor * number(part.mass()), factor * uncertainty(part.mass()))))
                .toList());

        assertThat(number(more.chemicalShare().share()))
                .isCloseTo(number(blend.chemicalShare().share()), within(1e-9));
        assertThat(uncertainty(more.chemicalShare().share()))
                .isCloseTo(uncertainty(blend.chemicalShare().share()), within(1e-9));
    }

    private static Measured<Mass> in(Measured<Mass> mass, Unit<Mass> unit) {
        return Measured.of(
                Amounts.of(Amounts.in(mass.value(), unit), unit),
                Amounts.of(Amounts.in(mass.standardUncertainty().orElseThrow(), unit), unit),
                mass.degreesOfFreedom().orElseThrow());
    }

    @Property
    void unitsDontMatter(@ForAll("blends") Blend blend) {
        Blend pounds = new Blend(blend.parts().stream()
                .map(part -> new BlendPart(part.component(), in(part.mass(), SpreadingUnits.POUND)))
                .toList());

        assertThat(number(pounds.chemicalShare().share()))
                .isCloseTo(number(blend.chemicalShare().share()), within(1e-9));
        assertThat(uncertainty(pounds.chemicalShare().share()))
                .isCloseTo(uncertainty(blend.chemicalShare().share()), within(1e-9));
        assertThat(Amounts.si(Mass.class, pounds.chemicalMass())).isCloseTo(number(blend.chemicalMass()), within(1e-8));
    }

    @Property
    void aRateAndItsInverseAreOne(
            @ForAll("blends") Blend blend, @ForAll @DoubleRange(min = 0, max = 5000) double rate) {
        ChemicalShare share = blend.chemicalShare();
        double back = number(share.dryChemical(
                share.mix(Amounts.of(rate, SpreadingUnits.POUND_PER_LANE_MILE)).value()));

        // Multiplied and divided by one double: the same but for the last bit or two.
        assertThat(back).isCloseTo(rate, within(2 * Math.ulp(rate)));
        double forth = number(share.mixPerDistance(
                share.dryChemicalPerDistance(Amounts.of(rate, SpreadingUnits.KILOGRAM_PER_KILOMETER))
                        .value()));
        assertThat(forth).isCloseTo(rate, within(2 * Math.ulp(rate)));
    }

    @Property
    void theSquareFindsWhatWasMixed(
            @ForAll @DoubleRange(min = 1, max = 4000) double sand,
            @ForAll @DoubleRange(min = 1, max = 4000) double salt,
            @ForAll @DoubleRange(min = 0, max = 20) double moisture) {
        BlendPart first = part("salt", salt, moisture, Moisture.Basis.WET_MASS, 96);
        BlendPart second = part("sand", sand, moisture / 2, Moisture.Basis.DRY_MASS, 1);
        Blend blend = Blend.of(first, second);
        MixingSquare square = new MixingSquare(
                Blend.of(first).chemicalShare().share(),
                Blend.of(second).chemicalShare().share(),
                blend.chemicalShare().share());

        assertThat(number(square.partOfFirst())).isCloseTo(number(blend.shareOf("salt")), within(1e-8));
        assertThat(number(square.massOfFirst(blend.mass()))).isCloseTo(salt, within(1e-6));
    }

    @Property
    void theSquareOfAMixIsTheOtherWayRoundWhenTheComponentsAre(
            @ForAll @DoubleRange(min = 0, max = 40) double low,
            @ForAll @DoubleRange(min = 41, max = 100) double high,
            @ForAll @DoubleRange(min = 40, max = 41) double target) {
        MixingSquare square = new MixingSquare(percent(low, 1), percent(high, 2), percent(target, 3));
        MixingSquare turned = new MixingSquare(percent(high, 2), percent(low, 1), percent(target, 3));

        assertThat(number(square.partOfFirst()) + number(turned.partOfFirst())).isCloseTo(100, within(1e-9));
        assertThat(uncertainty(square.partOfFirst())).isCloseTo(uncertainty(turned.partOfFirst()), within(1e-9));
    }
}
