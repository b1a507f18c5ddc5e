package org.gritwright.core.solution;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;

/**
 * A salt that is dissolved in water for winter roads. Of the chlorides density and freezing point are known, of the acetates only
 * the eutectic: for their solutions everything else is refused.
 */
public enum Salt {
    /** Sodium chloride, NaCl. */
    SODIUM_CHLORIDE("sodium chloride"),
    /** Calcium chloride, CaCl₂, without its crystal water. */
    CALCIUM_CHLORIDE("calcium chloride"),
    /** Magnesium chloride, MgCl₂, without its crystal water. */
    MAGNESIUM_CHLORIDE("magnesium chloride"),
    /** Potassium acetate, KCH₃COO. */
    POTASSIUM_ACETATE("potassium acetate"),
    /** Calcium magnesium acetate. */
    CALCIUM_MAGNESIUM_ACETATE("calcium magnesium acetate");

    private final String words;

    Salt(String words) {
        this.words = words;
    }

    /**
     * In English.
     *
     * @return for example "sodium chloride"
     */
    public String words() {
        return words;
    }

    /**
     * What the sources say about the eutectic, which need not be the same.
     *
     * @return one or more, the weakest first
     */
    public List<Eutectic> eutectics() {
        return FreezingData.eutectics(this);
    }

    /**
     * The strongest solution there is at a temperature.
     *
     * @param temperature −6 °F to 125 °F
     * @return the salt's part of the mass; absent but for sodium chloride, of which alone a table was read
     * @throws InvalidInputException if the temperature is outside the table
     */
    public Optional<Quantity<Dimensionless>> saturation(Quantity<Temperature> temperature) {
        Celsius.of("temperature", temperature);
        return DensityData.of(this).flatMap(DensityModel::saturation).map(table -> {
            double celsius = Celsius.within("temperature", temperature, table.lowest(), table.highest());
            return Amounts.of(Saturation.percent(table, celsius), SpreadingUnits.PERCENT);
        });
    }

    DensityModel densities() {
        return DensityData.of(this).orElseThrow(() -> unpublished("density"));
    }

    FreezingCurve freezing() {
        return FreezingData.of(this).orElseThrow(() -> unpublished("freezing point"));
    }

    private InvalidInputException unpublished(String what) {
        return new InvalidInputException(
                "salt",
                "one whose " + what + " is known here: sodium chloride, calcium chloride, magnesium chloride",
                words);
    }
}
