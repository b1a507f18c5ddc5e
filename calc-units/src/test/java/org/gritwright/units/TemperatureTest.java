package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Temperature;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tech.units.indriya.quantity.Quantities;

/** Temperature scales differ by an offset: they read, print and go to SI, but have no conversion factor. */
class TemperatureTest {

    /** Fixed points of the scales by their definitions: 0 °C = 273.15 K = 32 °F, 100 °C = 212 °F (NIST SP 811, B.8). */
    @ParameterizedTest
    @CsvSource({
        "32 °F, 273.15",
        "212 °F, 373.15",
        "-40 °F, 233.15",
        "-459.67 °F, 0",
        "0 °C, 273.15",
        "100 °C, 373.15",
        "-40 °C, 233.15",
        "-273.15 °C, 0",
        "233.15 K, 233.15",
        "50 degF, 283.15",
        "10 degC, 283.15"
    })
    void theSiValueIsInKelvin(String text, double kelvin) {
        assertThat(Amounts.si(Temperature.class, Amounts.parse(Temperature.class, text)))
                .isEqualTo(kelvin);
    }

    /** To the last bit, and of a difference too, which has no offset. */
    @Property
    void theSiValueIsThatOfTheReferenceImplementation(
            @ForAll @DoubleRange(min = -500, max = 5_000) double number, @ForAll Quantity.Scale scale) {
        for (Unit<Temperature> unit :
                List.of(SpreadingUnits.CELSIUS, SpreadingUnits.KELVIN, SpreadingUnits.FAHRENHEIT)) {
            Quantity<Temperature> temperature = Quantities.getQuantity(number, unit, scale);
            assertThat(Amounts.si(Temperature.class, temperature))
                    .isEqualTo(temperature.toSystemUnit().getValue().doubleValue());
        }
    }

    @ParameterizedTest
    @CsvSource({"-40 °C, -40", "0 °C, 32", "100 °C, 212", "-17.5 °C, 0.5"})
    void jsr385ConvertsBetweenTheScales(String celsius, double fahrenheit) {
        Quantity<Temperature> converted =
                Amounts.parse(Temperature.class, celsius).to(SpreadingUnits.FAHRENHEIT);
        assertThat(converted.getValue().doubleValue()).isEqualTo(fahrenheit);
    }

    @Test
    void aTemperatureIsGivenInItsOwnUnit() {
        assertThat(Amounts.in(Amounts.of(-17.5, SpreadingUnits.CELSIUS), SpreadingUnits.CELSIUS))
                .isEqualTo(-17.5);
    }

    @Test
    void noFactorConvertsBetweenTwoScales() {
        List<Unit<Temperature>> scales =
                List.of(SpreadingUnits.CELSIUS, SpreadingUnits.KELVIN, SpreadingUnits.FAHRENHEIT);
        for (Unit<Temperature> from : scales) {
            for (Unit<Temperature> to : scales) {
                if (from != SpreadingUnits.KELVIN || to != SpreadingUnits.KELVIN) {
                    assertThatThrownBy(() -> Conversion.between(from, to))
                            .isInstanceOf(InvalidInputException.class)
                            .hasMessageContaining("a temperature scale also has an offset");
                }
            }
        }
        assertThatThrownBy(() -> Amounts.in(Amounts.of(32, SpreadingUnits.FAHRENHEIT), SpreadingUnits.CELSIUS))
                .isInstanceOf(InvalidInputException.class);
    }

    @Test
    void aScaleWithAnOffsetIsNotMadeFromSi() {
        assertThatThrownBy(() -> Amounts.ofSi(273.15, SpreadingUnits.CELSIUS))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("unit must be one without an offset: \"°C\"");
        assertThat(Amounts.ofSi(273.15, SpreadingUnits.KELVIN)).isEqualTo(Amounts.of(273.15, SpreadingUnits.KELVIN));
    }
}
