package org.gritwright.core.solution;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;

/** Published tables, which the files name, and short words for quantities. */
final class SolutionSamples {
    static final Salt NACL = Salt.SODIUM_CHLORIDE;
    static final Salt CACL2 = Salt.CALCIUM_CHLORIDE;
    static final Salt MGCL2 = Salt.MAGNESIUM_CHLORIDE;

    private SolutionSamples() {}

    /** The rows of a table without its heading. */
    static List<double[]> table(String name) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(SolutionSamples.class.getResourceAsStream("/solution/" + name + ".csv"), name),
                StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> Arrays.stream(line.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Quantity<Dimensionless> percent(double percent) {
        return Amounts.of(percent, SpreadingUnits.PERCENT);
    }

    static Measured<Dimensionless> percent(double percent, double uncertainty) {
        return Measured.of(percent(percent), percent(uncertainty), Double.POSITIVE_INFINITY);
    }

    static Quantity<Temperature> celsius(double celsius) {
        return Amounts.of(celsius, SpreadingUnits.CELSIUS);
    }

    static Quantity<Temperature> fahrenheit(double fahrenheit) {
        return Amounts.of(fahrenheit, SpreadingUnits.FAHRENHEIT);
    }

    static Quantity<Mass> kilograms(double kilograms) {
        return Amounts.of(kilograms, SpreadingUnits.KILOGRAM);
    }

    static Quantity<Volume> gallons(double gallons) {
        return Amounts.of(gallons, SpreadingUnits.US_GALLON);
    }

    static Quantity<Volume> liters(double liters) {
        return Amounts.of(liters, SpreadingUnits.LITER);
    }

    static Measured<BulkDensity> density(double kilogramsPerCubicMeter, double uncertainty) {
        return Measured.of(
                Amounts.of(kilogramsPerCubicMeter, SpreadingUnits.KILOGRAM_PER_CUBIC_METER),
                Amounts.of(uncertainty, SpreadingUnits.KILOGRAM_PER_CUBIC_METER),
                Double.POSITIVE_INFINITY);
    }

    static Solution solution(Salt salt, double percent) {
        return Solution.of(salt, percent(percent));
    }

    static Solution brine(double percent) {
        return solution(NACL, percent);
    }

    /** In kg/m³. */
    static double density(Solution solution, double celsius) {
        return number(solution.density(celsius(celsius)));
    }

    /** In °C. */
    static double freezing(Solution solution) {
        return number(solution.freezingPoint().temperature().orElseThrow());
    }

    static double number(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }

    static double number(Measured<?> measured) {
        return number(measured.value());
    }

    static double uncertainty(Measured<?> measured) {
        return number(measured.standardUncertainty().orElseThrow());
    }

    static double share(Solution solution) {
        return number(solution.share());
    }
}
