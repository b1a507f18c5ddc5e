package org.gritwright.core.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class CatchLimitsTest {
    private static Quantity<Dimensionless> percent(double percent) {
        return Amounts.of(percent, SpreadingUnits.PERCENT);
    }

    private static CatchLimits limits(
            double pulses, double revolutions, double divisions, double scatter, double countUncertainty) {
        return new CatchLimits(
                Optional.empty(),
                Amounts.of(pulses, SpreadingUnits.PULSE),
                Amounts.of(revolutions, SpreadingUnits.REVOLUTION),
                divisions,
                percent(scatter),
                percent(countUncertainty),
                CatchAllowances.NONE);
    }

    @Test
    void theCommonOnesAreThese() {
        // common practice, no source
        assertThat(CatchLimits.COMMON).isEqualTo(limits(100, 5, 100, 5, 2));
    }

    @Test
    void zeroSwitchesALimitOff() {
        assertThat(limits(0, 0, 0, 0, 0).fewestDivisions()).isZero();
    }

    @Test
    void refusesNegativeOnes() {
        assertRefused("fewest pulses must be 0 or more: -1 pulse", () -> limits(-1, 5, 100, 5, 2));
        assertRefused("fewest revolutions must be 0 or more: -1 rev", () -> limits(100, -1, 100, 5, 2));
        assertRefused("fewest divisions must be 0 or more: -1", () -> limits(100, 5, -1, 5, 2));
        assertRefused("greatest scatter must be 0 or more: -1 %", () -> limits(100, 5, 100, -1, 2));
        assertRefused("greatest count uncertainty must be 0 or more: -1 %", () -> limits(100, 5, 100, 5, -1));
    }
}
