package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import javax.measure.Unit;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.gritwright.core.Samples;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;

class CalibrationFactorLawsTest {
    /** Every unit of the four forms that the symbol table knows. */
    @Provide
    Arbitrary<Unit<?>> units() {
        List<Class<?>> kinds = Arrays.stream(FactorForm.values())
                .filter(form -> !form.isByVolume())
                .<Class<?>>map(FactorForm::kind)
                .toList();
        return Arbitraries.of(UnitSymbol.all().stream()
                .filter(row -> kinds.contains(row.kind()))
                .<Unit<?>>map(UnitSymbol::unit)
                .toList());
    }

    private static ShaftSensor sensor(int pulsesPerRevolution) {
        return ShaftSensor.of(Amounts.of(pulsesPerRevolution, SpreadingUnits.PULSE_PER_REVOLUTION));
    }

    @Property
    void everyFormGivesTheDischargeBack(
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1000) double kilogramsPerRevolution,
            @ForAll @IntRange(min = 1, max = 1000) int pulsesPerRevolution,
            @ForAll("units") Unit<?> unit) {
        ShaftSensor sensor = sensor(pulsesPerRevolution);
        CalibrationFactor factor =
                CalibrationFactor.ofDischarge(kilogramsPerRevolution, Samples.augerPoint(sensor), unit);

        assertThat(factor.value().getUnit()).isEqualTo(unit);
        assertThat(factor.kilogramsPerRevolution(Samples.augerPoint(sensor)))
                .isCloseTo(kilogramsPerRevolution, within(1e-14 * kilogramsPerRevolution));
    }

    @Property
    void fromFormToFormAndBackIsTheSameFactor(
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1000) double value,
            @ForAll @IntRange(min = 1, max = 1000) int pulsesPerRevolution,
            @ForAll("units") Unit<?> first,
            @ForAll("units") Unit<?> second) {
        ShaftSensor sensor = sensor(pulsesPerRevolution);
        CalibrationFactor factor = CalibrationFactor.of(Amounts.of(value, first));
        CalibrationFactor other = CalibrationFactor.ofDischarge(
                factor.kilogramsPerRevolution(Samples.augerPoint(sensor)), Samples.augerPoint(sensor), second);
        CalibrationFactor back = CalibrationFactor.ofDischarge(
                other.kilogramsPerRevolution(Samples.augerPoint(sensor)), Samples.augerPoint(sensor), first);

        assertThat(back.value().getValue().doubleValue()).isCloseTo(value, within(1e-14 * value));
    }
}
