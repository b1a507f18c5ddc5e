package org.gritwright.core.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.solution.SolutionSamples.CACL2;
import static org.gritwright.core.solution.SolutionSamples.MGCL2;
import static org.gritwright.core.solution.SolutionSamples.NACL;
import static org.gritwright.core.solution.SolutionSamples.brine;
import static org.gritwright.core.solution.SolutionSamples.celsius;
import static org.gritwright.core.solution.SolutionSamples.density;
import static org.gritwright.core.solution.SolutionSamples.fahrenheit;
import static org.gritwright.core.solution.SolutionSamples.number;
import static org.gritwright.core.solution.SolutionSamples.percent;
import static org.gritwright.core.solution.SolutionSamples.share;
import static org.gritwright.core.solution.SolutionSamples.solution;
import static org.gritwright.core.solution.SolutionSamples.uncertainty;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.junit.jupiter.api.Test;

class ConcentrationTest {
    private static Measured<Temperature> exactly(Quantity<Temperature> temperature) {
        return Measured.of(temperature, Amounts.of(0, temperature.getUnit()), Double.POSITIVE_INFINITY);
    }

    private static Measured<Temperature> known(Quantity<Temperature> temperature, double uncertainty) {
        return Measured.of(temperature, Amounts.of(uncertainty, temperature.getUnit()), Double.POSITIVE_INFINITY);
    }

    @Test
    void aHandbooksDensityIsThatOfItsStrength() {
        Solution brine = Concentration.byDensity(NACL, density(1147.8, 0), celsius(20));

        assertThat(share(brine)).isCloseTo(20, within(0.05));
        assertThat(brine.share().value().getUnit()).isEqualTo(SpreadingUnits.PERCENT);
    }

    @Test
    void readingAndTablesMakeTheShareUncertain() {
        // 8.0 kg/m³ per percent about 20 % by the handbook.
        double slope = (1164.0 - 1131.9) / 4;
        Solution brine = Concentration.byDensity(NACL, density(1147.8, 2), celsius(20));

        assertThat(uncertainty(brine.share()))
                .isCloseTo(Math.hypot(2, 1147.8 * 0.001 / Math.sqrt(3)) / slope, within(0.003));
        Quantity<BulkDensity> once = Amounts.of(1147.8, SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
        assertThat(Concentration.byDensity(NACL, Measured.once(once), celsius(20))
                        .share()
                        .standardUncertainty())
                .isEmpty();
    }

    @Test
    void aDensityThatNoStrengthHasIsRefused() {
        assertRefused(
                "density of a solution of sodium chloride at 20 °C must be within 998.206745 kg/m³ to"
                        + " 1200.270041 kg/m³: 1210 kg/m³",
                () -> Concentration.byDensity(NACL, density(1210, 1), celsius(20)));
        assertRefused(
                "density must be greater than 0: 0 kg/m³",
                () -> Concentration.byDensity(NACL, density(0, 1), celsius(20)));
        assertRefused(
                "temperature of the solution must be within -22 °C to 40 °C: 41 °C",
                () -> Concentration.byDensity(MGCL2, density(1100, 1), celsius(41)));
    }

    @Test
    void aHydrometerStatesTheWaterItComparesWith() {
        double brine = density(brine(20), 15);
        Solution sixty = Concentration.bySpecificGravity(
                NACL, gravity(brine / number(Water.density(celsius(15))), celsius(15)), celsius(15));
        Solution four = Concentration.bySpecificGravity(
                NACL, gravity(brine / number(Water.density(celsius(4))), celsius(4)), celsius(15));

        assertThat(share(sixty)).isCloseTo(20, within(1e-9));
        assertThat(share(four)).isCloseTo(20, within(1e-9));
    }

    private static SpecificGravity gravity(double reading, Quantity<Temperature> reference) {
        return new SpecificGravity(
                Measured.of(
                        Amounts.of(reading, SpreadingUnits.ONE),
                        Amounts.of(0.001, SpreadingUnits.ONE),
                        Double.POSITIVE_INFINITY),
                reference);
    }

    @Test
    void theReferenceTemperatureMattersByATenthOfAPercent() {
        Solution sixty = Concentration.bySpecificGravity(NACL, gravity(1.15, celsius(15)), celsius(15));
        Solution four = Concentration.bySpecificGravity(NACL, gravity(1.15, celsius(4)), celsius(15));

        assertThat(share(four) - share(sixty)).isBetween(0.1, 0.15);
    }

    @Test
    void aHydrometersDivisionGlassAndTheTablesMakeTheShareUncertain() {
        double slope = (1164.0 - 1131.9) / 4;
        double tables = 1148 * 0.001 / Math.sqrt(3);
        double ofReading = 0.001 * 999.1;
        double glass = 25e-6 * 5 * 1148 / Math.sqrt(3);

        assertThat(uncertainty(Concentration.bySpecificGravity(NACL, gravity(1.15, celsius(15)), celsius(20))
                        .share()))
                .isCloseTo(Math.sqrt(ofReading * ofReading + tables * tables + glass * glass) / slope, within(0.002));
        assertThat(uncertainty(Concentration.bySpecificGravity(NACL, gravity(1.15, celsius(40)), celsius(0))
                        .share()))
                .isCloseTo(
                        Math.sqrt(ofReading * ofReading + tables * tables + 64 * glass * glass) / 8.3, within(0.004));
    }

    @Test
    void readingsAreChecked() {
        assertRefused("specific gravity must be greater than 0: 0", () -> gravity(0, celsius(15)));
        assertRefused("reference temperature must be within 0 °C to 40 °C: 60 °C", () -> gravity(1.1, celsius(60)));
        assertRefused("degrees of a salometer must be within 0 to 100: 101.0", () -> new Salometer(101, 0));
        assertRefused("degrees of a salometer must be within 0 to 100: -1.0", () -> new Salometer(-1, 0));
        assertRefused("degrees of a salometer must be within 0 to 100: NaN", () -> new Salometer(Double.NaN, 0));
        assertRefused("uncertainty of a salometer must be 0 or more: -1.0", () -> new Salometer(1, -1));
    }

    @Test
    void salometerDegreesArePercentOfSaturationAt60Fahrenheit() {
        assertThat(share(Concentration.bySalometer(new Salometer(100, 0.3), fahrenheit(60))))
                .isCloseTo(26.395, within(1e-9));
        assertThat(share(Concentration.bySalometer(new Salometer(0, 0.3), fahrenheit(60))))
                .isCloseTo(0, within(1e-9));
        assertThat(share(Concentration.bySalometer(new Salometer(50, 0.3), fahrenheit(60))))
                .isCloseTo(26.395 / 2, within(1e-9));
        assertThat(100 * 23.3 / 26.395).isCloseTo(88.27, within(0.005));
        assertThat(share(Concentration.bySalometer(new Salometer(88.27, 0.3), fahrenheit(60))))
                .isCloseTo(23.3, within(0.002));
    }

    @Test
    void aColdBrineFloatsTheSalometerHigher() {
        // About 0.43 kg/m³ per K at 20 %: 11.1 K colder is 4.8 kg/m³ denser, 0.6 % of salt.
        double cold = share(Concentration.bySalometer(new Salometer(80, 0.3), fahrenheit(40)));

        assertThat(0.8 * 26.395 - cold).isBetween(0.45, 0.75);
    }

    @Test
    void aSalometersReadingGlassAndTheTablesMakeTheShareUncertain() {
        double slope = (1164.0 - 1131.9) / 4;
        double tables = 1157 * 0.001 / Math.sqrt(3) / slope;
        double ofReading = 0.5 * 0.26395;

        assertThat(uncertainty(Concentration.bySalometer(new Salometer(80, 0.5), fahrenheit(60))
                        .share()))
                .isCloseTo(Math.hypot(ofReading, tables), within(0.003));
        double glass = 25e-6 * 20 * 1157 / Math.sqrt(3) / slope;
        assertThat(uncertainty(Concentration.bySalometer(new Salometer(80, 0), fahrenheit(96))
                        .share()))
                .isCloseTo(Math.hypot(glass, tables), within(0.003));
    }

    @Test
    void aFreezingPointBelongsToTwoStrengths() {
        FreezingMatch match = Concentration.byFreezingPoint(NACL, exactly(fahrenheit(10)));

        assertThat(share(match.weaker())).isBetween(16.0, 17.0);
        assertThat(share(match.stronger().orElseThrow())).isCloseTo(24.7, within(1e-6));
        assertThat(match.stronger().orElseThrow().share().standardUncertainty()).isEmpty();
    }

    @Test
    void beyondTheEutecticOneStrengthMayBeUnknown() {
        assertThat(Concentration.byFreezingPoint(CACL2, exactly(celsius(-30))).stronger())
                .isEmpty();
        assertThat(Concentration.byFreezingPoint(MGCL2, exactly(celsius(-10))).stronger())
                .isEmpty();
        assertThat(share(Concentration.byFreezingPoint(MGCL2, exactly(celsius(-23.3)))
                        .stronger()
                        .orElseThrow()))
                .isCloseTo(25, within(1e-9));
    }

    @Test
    void aReadingInFahrenheitIsUncertainInFahrenheit() {
        // 1.03 K per percent about 16.4 %; 1.8 °F are 1 K.
        double slope = 12.93 - 11.90;
        double limit = (0.05 + 0.02 * 12.22) / Math.sqrt(3);
        Measured<?> inFahrenheit = Concentration.byFreezingPoint(NACL, known(fahrenheit(10), 0.9))
                .weaker()
                .share();
        Measured<?> inCelsius = Concentration.byFreezingPoint(NACL, known(celsius(-110 / 9.0), 0.5))
                .weaker()
                .share();

        assertThat(uncertainty(inFahrenheit)).isCloseTo(Math.hypot(0.5, limit) / slope, within(0.01));
        assertThat(uncertainty(inCelsius)).isCloseTo(uncertainty(inFahrenheit), within(1e-6));
        assertThat(Concentration.byFreezingPoint(NACL, Measured.once(celsius(-12)))
                        .weaker()
                        .share()
                        .standardUncertainty())
                .isEmpty();
    }

    @Test
    void whatFreezesColderThanTheEutecticOrAboveWaterIsRefused() {
        assertRefused(
                "freezing point must be within -21.1 °C to 0 °C: -7 °F",
                () -> Concentration.byFreezingPoint(NACL, exactly(fahrenheit(-7))));
        assertRefused(
                "freezing point must be within -51 °C to 0 °C: 1 °C",
                () -> Concentration.byFreezingPoint(CACL2, exactly(celsius(1))));
        assertThat(share(Concentration.byFreezingPoint(NACL, exactly(celsius(-21.1)))
                        .weaker()))
                .isEqualTo(23.3);
        assertThat(share(Concentration.byFreezingPoint(NACL, exactly(fahrenheit(32)))
                        .weaker()))
                .isZero();
    }

    @Test
    void aDensityTellsWhichOfTheTwoItIs() {
        FreezingMatch match = Concentration.byFreezingPoint(NACL, exactly(fahrenheit(10)));

        assertThat(match.beside(brine(15))).isEqualTo(match.weaker());
        assertThat(match.beside(brine(25))).isEqualTo(match.stronger().orElseThrow());
        assertRefused(
                "solution by its density must be on one side of the eutectic for certain: 23 % (u 1 %, ∞ degrees of"
                        + " freedom)",
                () -> match.beside(new Solution(NACL, percent(23, 1))));
        assertRefused(
                "solution by its density must be of sodium chloride: calcium chloride",
                () -> match.beside(solution(CACL2, 20)));
        FreezingMatch alone = new FreezingMatch(solution(CACL2, 25), Optional.empty());
        assertRefused(
                "solution by its density must be up to the eutectic, where freezing points are known: 32 % (u 0 %, ∞"
                        + " degrees of freedom)",
                () -> alone.beside(solution(CACL2, 32)));
    }

    @Test
    void degreesFahrenheitAreTurnedToDegreesCelsius() {
        assertThat(Celsius.ofFahrenheit(32)).isZero();
        assertThat(Celsius.ofFahrenheit(212)).isEqualTo(100);
        assertThat(Celsius.ofFahrenheit(-40)).isEqualTo(-40);
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(brine(20));
        assertNamesWhatIsMissing(brine(20).freezingPoint());
        assertNamesWhatIsMissing(NACL.eutectics().get(0));
        assertNamesWhatIsMissing(gravity(1.15, celsius(15)));
        assertNamesWhatIsMissing(Concentration.byFreezingPoint(NACL, exactly(celsius(-10))));
    }
}
