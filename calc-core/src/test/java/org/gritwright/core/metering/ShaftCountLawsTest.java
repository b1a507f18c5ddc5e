package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import javax.measure.Quantity;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.PulseCount;

class ShaftCountLawsTest {
    private static Quantity<PulseCount> reading(int pulses) {
        return Amounts.of(pulses, SpreadingUnits.PULSE);
    }

    @Property
    void aRollOverGivesThePlainDifference(
            @ForAll @IntRange(min = 2, max = 1_000_000) int modulus,
            @ForAll @IntRange(max = 999_999) int startSeed,
            @ForAll @IntRange(max = 999_998) int countSeed) {
        int start = startSeed % modulus;
        int count = 1 + countSeed % (modulus - 1);
        ShaftCount.CounterReadings rollingOver = new ShaftCount.CounterReadings(
                reading(start), reading((start + count) % modulus), Optional.of(reading(modulus)));
        ShaftCount.CounterReadings neverFull =
                new ShaftCount.CounterReadings(reading(start), reading(start + count), Optional.empty());

        assertThat(rollingOver.pulses()).isEqualTo(neverFull.pulses());
        assertThat(rollingOver.pulses()).isEqualTo(new ShaftCount.Pulses(reading(count)));
    }
}
