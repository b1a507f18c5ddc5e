package org.gritwright.core;

import java.util.List;
import java.util.Locale;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.core.PublishedCheck.Source;
import org.gritwright.core.PublishedCheck.Tolerance;
import org.gritwright.core.solution.BrineSquare;
import org.gritwright.core.solution.Concentration;
import org.gritwright.core.solution.Recipe;
import org.gritwright.core.solution.Salometer;
import org.gritwright.core.solution.Salt;
import org.gritwright.core.solution.SaltSupply;
import org.gritwright.core.solution.Solution;
import org.gritwright.core.solution.Water;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Published numbers of brines. */
final class BrineChecks extends CheckList {
    private static final double SALT_WEIGHT = 58.443;

    private BrineChecks() {}

    static List<PublishedCheck> all() {
        BrineChecks checks = new BrineChecks();
        checks.water();
        checks.sodiumChloride();
        checks.otherSalts();
        checks.specificGravities();
        checks.freezingPoints();
        checks.readings();
        checks.recipes();
        return checks.rows();
    }

    private static Quantity<Temperature> celsius(double celsius) {
        return Amounts.of(celsius, SpreadingUnits.CELSIUS);
    }

    private static Quantity<Dimensionless> percent(double percent) {
        return Amounts.of(percent, SpreadingUnits.PERCENT);
    }

    private static Solution solution(Salt salt, double percent) {
        return Solution.of(salt, percent(percent));
    }

    private static double number(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }

    private static double density(Salt salt, double percent, double celsius) {
        return number(solution(salt, percent).density(celsius(celsius)).value());
    }

    private void water() {
        for (String[] row : new String[][] {
            {"0", "999.8428"}, {"10", "999.7027"}, {"15", "999.1026"}, {"20", "998.2067455596"}, {"30", "995.6488"}
        }) {
            add(
                    "water-" + row[0],
                    "density of water at " + row[0] + " °C",
                    Source.TANAKA,
                    row[1],
                    "kg/m³",
                    Tolerance.LAST_DIGIT,
                    () -> number(Water.density(celsius(Double.parseDouble(row[0])))));
        }
    }

    private void sodiumChloride() {
        for (String[] row : new String[][] {
            {"0", "1", "0.959525"}, {"0", "5", "0.848646"}, {"10", "2", "0.927905"}, {"20", "0.5", "0.981833"},
            {"20", "1", "0.963544"}, {"20", "3", "0.902565"}, {"20", "5", "0.855469"}, {"40", "4", "0.885276"}
        }) {
            double molality = Double.parseDouble(row[1]);
            double percent = 100 * molality * SALT_WEIGHT / (1000 + molality * SALT_WEIGHT);
            add(
                    "rogers-pitzer-" + row[0] + "-" + row[1],
                    "volume of a gram of sodium chloride solution, " + row[1] + " mol/kg at " + row[0] + " °C",
                    Source.ROGERS_PITZER,
                    row[2],
                    "cm³/g",
                    Tolerance.BRINE_TABLES,
                    () -> 1000 / density(Salt.SODIUM_CHLORIDE, percent, Double.parseDouble(row[0])));
        }
        for (String[] row : new String[][] {
            {"1", "1005.3"},
            {"4", "1026.8"},
            {"8", "1055.9"},
            {"12", "1085.7"},
            {"16", "1116.2"},
            {"20", "1147.8"},
            {"22", "1164.0"},
            {"24", "1180.4"},
            {"26", "1197.2"}
        }) {
            add(
                    "wnt-" + row[0],
                    "density of sodium chloride solution of " + row[0] + " % at 20 °C",
                    Source.WNT,
                    row[1],
                    "kg/m³",
                    Tolerance.BRINE_TABLES,
                    () -> density(Salt.SODIUM_CHLORIDE, Double.parseDouble(row[0]), 20));
        }
    }

    private void otherSalts() {
        vdi(Salt.CALCIUM_CHLORIDE, "14.7", "1128");
        vdi(Salt.CALCIUM_CHLORIDE, "20.9", "1188");
        vdi(Salt.CALCIUM_CHLORIDE, "25.7", "1237");
        vdi(Salt.CALCIUM_CHLORIDE, "29.9", "1283");
        vdi(Salt.MAGNESIUM_CHLORIDE, "7.2", "1059");
        vdi(Salt.MAGNESIUM_CHLORIDE, "11.6", "1099");
        vdi(Salt.MAGNESIUM_CHLORIDE, "13.8", "1119");
        vdi(Salt.MAGNESIUM_CHLORIDE, "17", "1150");
        vdi(Salt.MAGNESIUM_CHLORIDE, "20.6", "1183");
    }

    private void vdi(Salt salt, String percent, String stated) {
        add(
                "vdi-" + salt.words().replace(' ', '-') + "-" + percent,
                "density of " + salt.words() + " solution of " + percent + " % at 20 °C",
                Source.VDI,
                stated,
                "kg/m³",
                Tolerance.OTHER_BRINE_TABLES,
                () -> density(salt, Double.parseDouble(percent), 20));
    }

    private void specificGravities() {
        lange(Salt.SODIUM_CHLORIDE, "15", 15, "1.112", Tolerance.BRINE_TABLES);
        lange(Salt.SODIUM_CHLORIDE, "22", 15, "1.168", Tolerance.BRINE_TABLES);
        lange(Salt.SODIUM_CHLORIDE, "23.3", 15, "1.179", Tolerance.BRINE_TABLES);
        lange(Salt.MAGNESIUM_CHLORIDE, "15", 15.6, "1.132", Tolerance.OTHER_BRINE_TABLES);
        lange(Salt.MAGNESIUM_CHLORIDE, "25", 15.6, "1.230", Tolerance.OTHER_BRINE_TABLES);
    }

    private void lange(Salt salt, String percent, double celsius, String stated, Tolerance tolerance) {
        add(
                "lange-" + salt.words().replace(' ', '-') + "-" + percent,
                "specific gravity of " + salt.words() + " solution of " + percent + " % at " + celsius + " °C",
                Source.LANGE,
                stated,
                "",
                tolerance,
                () -> density(salt, Double.parseDouble(percent), celsius) / number(Water.density(celsius(celsius))));
    }

    private void freezingPoints() {
        for (String[] row : new String[][] {{"5", "-3.05"}, {"15", "-10.89"}, {"20", "-16.46"}}) {
            freezing(Salt.SODIUM_CHLORIDE, row[0], Source.CHEMISTRY_HANDBOOK, row[1]);
        }
        for (String[] row : new String[][] {{"7", "-4.4"}, {"11", "-7.5"}, {"16.2", "-12.2"}, {"23.1", "-21.2"}}) {
            freezing(Salt.SODIUM_CHLORIDE, row[0], Source.VDI, row[1]);
        }
    }

    private void freezing(Salt salt, String percent, Source source, String stated) {
        add(
                "freezing-" + source.name().toLowerCase(Locale.ROOT) + "-" + percent,
                "freezing point of " + salt.words() + " solution of " + percent + " %",
                source,
                stated,
                "°C",
                Tolerance.FREEZING_TABLES,
                () -> number(solution(salt, Double.parseDouble(percent))
                        .freezingPoint()
                        .temperature()
                        .orElseThrow()
                        .value()));
    }

    private void readings() {
        Quantity<Temperature> sixty = Amounts.of(60, SpreadingUnits.FAHRENHEIT);
        add(
                "salometer-100",
                "100 degrees on a salometer at 60 °F",
                Source.SALT_INSTITUTE,
                "26.395",
                "%",
                Tolerance.LAST_DIGIT,
                () -> number(Concentration.bySalometer(new Salometer(100, 0), sixty)
                        .share()
                        .value()));
        add(
                "salometer-85",
                "85 degrees on a salometer at 60 °F: 0.85 × 26.395 %",
                Source.ARITHMETIC,
                "22.436",
                "%",
                Tolerance.LAST_DIGIT,
                () -> number(Concentration.bySalometer(new Salometer(85, 0), sixty)
                        .share()
                        .value()));
    }

    private void recipes() {
        Solution brine = solution(Salt.SODIUM_CHLORIDE, 23.3);
        Recipe recipe = new Recipe(brine, SaltSupply.pure(Salt.SODIUM_CHLORIDE), celsius(15));
        add(
                "salt-per-water",
                "23.3 %: salt per gallon of water of 15 °C, 23.3 ÷ 76.7 × 999.1026 kg/m³",
                Source.ARITHMETIC,
                "2.5329",
                "lb/gal",
                Tolerance.LAST_DIGIT,
                () -> Amounts.in(recipe.saltPerWater().massPerWater().value(), SpreadingUnits.POUND_PER_US_GALLON));
        add(
                "salt-per-brine",
                "23.3 %: salt per gallon of brine of 15 °C, by a density of 1176.7 kg/m³",
                Source.ARITHMETIC,
                "2.288",
                "lb/gal",
                Tolerance.BRINE_TABLES,
                () -> Amounts.in(recipe.saltPerBrine().massPerBrine().value(), SpreadingUnits.POUND_PER_US_GALLON));
        add(
                "brine-square",
                "23.3 % down to 20 % at 15 °C: water per brine by volume, 0.165 × 1176.9 ÷ 999.1",
                Source.ARITHMETIC,
                "19.44",
                "%",
                Tolerance.HAND_ROUNDED,
                () -> number(new BrineSquare(brine, Solution.water(Salt.SODIUM_CHLORIDE), Measured.once(percent(20)))
                        .volumeOfSecondPerFirst(celsius(15))));
    }
}
