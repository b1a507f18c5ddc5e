package org.gritwright.core;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Pressure;
import org.gritwright.core.PublishedCheck.Source;
import org.gritwright.core.PublishedCheck.Tolerance;
import org.gritwright.core.boom.Nozzle;
import org.gritwright.core.boom.PressureSetUp;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.rate.SolutionShare;

/** Published numbers of nozzles, and derived ones of prewet shares and booms. */
final class BoomChecks extends CheckList {
    private static final Quantity<BulkDensity> WATER = poundsPerGallon(8.34);

    private static final Nozzle NOZZLE = Nozzle.rated(
            "0.4", psi(40), Amounts.of(0.40, SpreadingUnits.US_GALLON_PER_MINUTE), WATER, psi(20), psi(80));

    /** Pounds per gallon and the factor printed; one widely copied list has .88 for 8.0, a misprint of .98. */
    private static final String[][] FACTORS = {
        {"6.6", "0.89"},
        {"7.0", "0.92"},
        {"8.0", "0.98"},
        {"8.34", "1.00"},
        {"9.0", "1.04"},
        {"10.0", "1.10"},
        {"10.65", "1.13"},
        {"11.0", "1.15"},
        {"11.06", "1.15"},
        {"11.4", "1.17"},
        {"11.5", "1.17"},
        {"11.6", "1.18"},
        {"12.0", "1.20"},
        {"14.0", "1.30"},
        {"16.0", "1.39"}
    };

    private BoomChecks() {}

    static List<PublishedCheck> all() {
        BoomChecks checks = new BoomChecks();
        checks.nozzles();
        checks.prewet();
        return checks.rows();
    }

    private static Quantity<BulkDensity> poundsPerGallon(double value) {
        return Amounts.of(value, SpreadingUnits.POUND_PER_US_GALLON);
    }

    private static Quantity<Pressure> psi(double value) {
        return Amounts.of(value, SpreadingUnits.POUND_FORCE_PER_SQUARE_INCH);
    }

    private static double number(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }

    private void nozzles() {
        for (String[] row : FACTORS) {
            add(
                    "nozzle-density-" + row[0],
                    "a liquid of " + row[0] + " lb/gal through a nozzle that is rated with water of 8.34: factor",
                    Source.CROPWATCH,
                    row[1],
                    "",
                    Tolerance.LAST_DIGIT,
                    () -> number(NOZZLE.densityFactor(poundsPerGallon(Double.parseDouble(row[0])))));
        }
        add(
                "nozzle-pressure",
                "a nozzle of 0.40 gal/min at 40 psi, at 60 psi: 0.40 × √1.5",
                Source.ARITHMETIC,
                "0.489898",
                "gal/min",
                Tolerance.LAST_DIGIT,
                () -> number(NOZZLE.flow(psi(60), WATER)));
        add(
                "boom-water-for-brine",
                "set up by pressure with water, run with brine of specific gravity 1.1779: error of the rate, 1 ÷ √1.1779 − 1",
                Source.ARITHMETIC,
                "-7.9",
                "%",
                Tolerance.LAST_DIGIT,
                () -> number(new PressureSetUp(
                                Amounts.of(1, SpreadingUnits.KILOGRAM_PER_LITER),
                                Amounts.of(1.1779, SpreadingUnits.KILOGRAM_PER_LITER))
                        .error()));
    }

    private void prewet() {
        add(
                "prewet-field",
                "10 gal/ton (short) in mm³/kg, the unit in which ISO 11783-11 gives volume per mass",
                Source.UNITS,
                "41727",
                "mm³/kg",
                Tolerance.LAST_DIGIT,
                () -> 1000
                        * Amounts.in(
                                Amounts.of(10, SpreadingUnits.US_GALLON_PER_SHORT_TON),
                                SpreadingUnits.LITER_PER_TONNE));
        add(
                "solution-share-dry",
                "20 g/m² of which 30 % of the total are solution: dry part",
                Source.ARITHMETIC,
                "14",
                "g/m²",
                Tolerance.EXACT,
                () -> number(SolutionShare.percent(30).dryPart(Amounts.of(20, SpreadingUnits.GRAM_PER_SQUARE_METER))));
        add(
                "solution-share-wet",
                "20 g/m² of which 30 % of the total are solution: solution",
                Source.ARITHMETIC,
                "6",
                "g/m²",
                Tolerance.EXACT,
                () -> number(
                        SolutionShare.percent(30).solutionPart(Amounts.of(20, SpreadingUnits.GRAM_PER_SQUARE_METER))));
    }
}
