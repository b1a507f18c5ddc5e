package org.gritwright.core.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.solution.SolutionSamples.NACL;
import static org.gritwright.core.solution.SolutionSamples.brine;
import static org.gritwright.core.solution.SolutionSamples.celsius;
import static org.gritwright.core.solution.SolutionSamples.density;
import static org.gritwright.core.solution.SolutionSamples.fahrenheit;
import static org.gritwright.core.solution.SolutionSamples.gallons;
import static org.gritwright.core.solution.SolutionSamples.number;
import static org.gritwright.core.solution.SolutionSamples.percent;
import static org.gritwright.core.solution.SolutionSamples.share;

import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** What is printed, said and copied about brine, and isn't so. */
class PrintedTrapsTest {
    @Test
    void eightyFiveOnASalometerIsNot23Point3Percent() {
        Solution brine = Concentration.bySalometer(new Salometer(85, 0), fahrenheit(60));

        assertThat(share(brine)).isCloseTo(22.436, within(0.001));
        assertThat(share(Concentration.bySalometer(new Salometer(88.274, 0), fahrenheit(60))))
                .isCloseTo(23.3, within(0.001));
    }

    @Test
    void perGallonOfWaterIsNotPerGallonOfBrine() {
        Recipe recipe = new Recipe(brine(23.3), SaltSupply.pure(NACL), celsius(15));
        double perWater = Amounts.in(recipe.saltPerWater().massPerWater().value(), SpreadingUnits.POUND_PER_US_GALLON);
        double perBrine = Amounts.in(recipe.saltPerBrine().massPerBrine().value(), SpreadingUnits.POUND_PER_US_GALLON);

        // 2.534 lb by water of 8.34 lb/gal, and 2.288 lb.
        assertThat(perWater).isCloseTo(2.534, within(0.002));
        assertThat(perBrine).isCloseTo(2.288, within(0.0025));
        // Who pours the salt for a gallon of brine on a gallon of water gets 21.5 %.
        assertThat(perBrine / (perBrine + 8.338)).isCloseTo(0.2154, within(0.0002));
    }

    @Test
    void aGallonInTheUnitedStatesIsNotAnImperialOne() {
        double us = number(Portion.ofVolume(brine(23.3), gallons(1000), celsius(15))
                .volume(celsius(15), SpreadingUnits.IMPERIAL_GALLON));

        assertThat(us).isCloseTo(832.674, within(0.001));
        double perUs =
                Amounts.in(brine(23.3).chemicalPerVolume(celsius(15)).value(), SpreadingUnits.POUND_PER_US_GALLON);
        double perImperial = Amounts.in(
                brine(23.3).chemicalPerVolume(celsius(15)).value(), SpreadingUnits.POUND_PER_IMPERIAL_GALLON);
        assertThat(perImperial / perUs).isCloseTo(1.20095, within(1e-5));
    }

    @Test
    void aShareOfTheVolumeIsNotAShareOfTheMass() {
        // 23.3 L of brine of 23.3 % in 100 L of a mixture with water: 5.4 % would be 0.233 × 0.233 by volume.
        Portion brine = Portion.ofVolume(brine(23.3), SolutionSamples.liters(23.3), celsius(15));
        Portion water = Portion.ofVolume(Solution.water(NACL), SolutionSamples.liters(76.7), celsius(15));
        double byMass = share(Mixture.of(brine, water).result().solution());

        assertThat(byMass).isCloseTo(6.143, within(0.01));
        assertThat(byMass / (23.3 * 0.233)).isGreaterThan(1.13);
        // Grams per liter aren't percent either: 23.3 % are 274 g/L.
        assertThat(number(brine(23.3).chemicalPerVolume(celsius(15)))).isCloseTo(274.2, within(0.3));
    }

    @Test
    void aSquareInVolumesTakes15PercentTooLittleWater() {
        BrineSquare square = new BrineSquare(brine(23.3), Solution.water(NACL), percent(20, 0));
        double byMass = 100 / number(square.partOfFirst()) - 1;
        double byVolume = number(square.volumeOfSecondPerFirst(celsius(15))) / 100;

        assertThat(byMass).isCloseTo(0.165, within(1e-9));
        assertThat(byVolume).isCloseTo(0.1944, within(0.0001));
        assertThat(1 - byMass / byVolume).isCloseTo(0.15, within(0.003));
        assertThat(byVolume / byMass).isCloseTo(density(brine(23.3), 15) / 999.1026, within(1e-6));
    }

    @Test
    void moreSaltIsNotAlwaysColder() {
        assertThat(number(brine(25).freezingPoint().temperature().orElseThrow()))
                .isGreaterThan(number(brine(23.3).freezingPoint().temperature().orElseThrow()) + 9);
    }
}
