package org.gritwright.core.blend;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.observation.Moisture;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A mix by what went into it. Masses add: of the mix, of its dry matter and of its chemical. Immutable, thread-safe, a value.
 *
 * @param parts what went into it, one part or more, each component's name once
 */
public record Blend(List<BlendPart> parts) {
    private static final int MOST = 100;

    /**
     * Copies the list and checks the names.
     *
     * @throws InvalidInputException if there is no part, more than 100, or a name occurs twice
     */
    public Blend {
        Require.given(Blend.class, parts);
        parts = List.copyOf(Require.noMoreThan(MOST, "parts of a mix", parts));
        Require.that(!parts.isEmpty(), "parts of a mix", "one or more", "none");
        Set<String> names = new HashSet<>();
        parts.forEach(part -> Require.that(
                names.add(part.component().name()),
                "component of a mix",
                "named once",
                part.component().name()));
    }

    /**
     * A mix.
     *
     * @param parts what went into it
     * @return the mix
     * @throws InvalidInputException as for the full form
     */
    public static Blend of(BlendPart... parts) {
        return new Blend(List.of(Objects.requireNonNull(parts, "parts")));
    }

    private double sum(ToDoubleFunction<BlendPart> kilograms) {
        return parts.stream().mapToDouble(kilograms).sum();
    }

    /**
     * The mass of the mix as it lies.
     *
     * @return the sum of the parts, water included, in the unit of the first
     */
    public Quantity<Mass> mass() {
        return mass(sum(BlendPart::kilograms));
    }

    /**
     * The dry mass.
     *
     * @return the sum of the parts without their water, in the unit of the first
     */
    public Quantity<Mass> dryMass() {
        return mass(sum(BlendPart::dryKilograms));
    }

    /**
     * The mass of dry chemical.
     *
     * @return the sum over the parts of mass × dry part × purity, in the unit of the first
     */
    public Quantity<Mass> chemicalMass() {
        return mass(sum(BlendPart::chemicalKilograms));
    }

    private Quantity<Mass> mass(double kilograms) {
        return Amounts.ofSi(kilograms, parts.get(0).mass().value().getUnit());
    }

    /**
     * The moisture of the mix.
     *
     * @param basis what it is to be a part of
     * @return its water ÷ its mass or its dry mass, in percent
     */
    public Quantity<Dimensionless> moisture(Moisture.Basis basis) {
        double dry = sum(BlendPart::dryKilograms);
        double water = sum(BlendPart::kilograms) - dry;
        return Contributions.percent(
                switch (basis) {
                    case WET_MASS -> water / (water + dry);
                    case DRY_MASS -> water / dry;
                });
    }

    /**
     * A component's share of the mass as it lies.
     *
     * @param component the component's name
     * @return its mass ÷ the mass of the mix, in percent
     * @throws InvalidInputException if no part has that name
     */
    public Quantity<Dimensionless> shareOf(String component) {
        BlendPart part = parts.stream()
                .filter(one -> one.component().name().equals(component))
                .findFirst()
                .orElseThrow(() -> new InvalidInputException("component of a mix", "one of its parts", component));
        return Contributions.percent(part.kilograms() / sum(BlendPart::kilograms));
    }

    /**
     * How much of the mix is dry chemical.
     *
     * @return the mass of dry chemical ÷ the mass as it lies; its uncertainty is propagated to first order from those of masses,
     *     moistures and purities, which are independent, and is absent if one of them is
     */
    public ChemicalShare chemicalShare() {
        double whole = sum(BlendPart::kilograms);
        double share = sum(BlendPart::chemicalKilograms) / whole;
        Contributions budget = new Contributions();
        for (BlendPart part : parts) {
            BlendComponent component = part.component();
            double chemicalPart = part.chemicalKilograms() / part.kilograms();
            budget.add("mass of " + component.name(), Mass.class, part.mass(), (chemicalPart - share) / whole);
            budget.add(
                    "moisture of " + component.name(),
                    component.moisture(),
                    part.kilograms() * component.purityRatio() / whole);
            budget.add(
                    "purity of " + component.name(),
                    Dimensionless.class,
                    component.purity(),
                    part.dryKilograms() / whole);
        }
        return new ChemicalShare(budget.of(share));
    }
}
