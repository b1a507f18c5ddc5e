package org.gritwright.core.boom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.boom.BoomSamples.BOOM;
import static org.gritwright.core.boom.BoomSamples.number;
import static org.gritwright.core.boom.BoomSamples.psi;
import static org.gritwright.core.boom.NozzleTest.assertRefused;

import javax.measure.Quantity;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.junit.jupiter.api.Test;

/** A boom that was set up by pressure with one liquid and runs another. */
class PressureSetUpTest {
    private static Quantity<BulkDensity> density(double kilogramsPerLiter) {
        return Amounts.of(kilogramsPerLiter, SpreadingUnits.KILOGRAM_PER_LITER);
    }

    private static final PressureSetUp BRINE = new PressureSetUp(density(1), density(1.1779));

    @Test
    void setUpWithWaterItDeliversLessBrine() {
        assertThat(number(BRINE.error())).isCloseTo(-7.9, within(0.05));
        assertThat(number(BRINE.error())).isCloseTo(100 * (1 / Math.sqrt(1.1779) - 1), within(1e-12));
        assertThat(BRINE.error().getUnit()).isEqualTo(SpreadingUnits.PERCENT);
    }

    @Test
    void theErrorIsThatOfTheBoomAtOnePressure() {
        double water = number(BOOM.flow(psi(40), density(1)));
        double brine = number(BOOM.flow(psi(40), density(1.1779)));
        assertThat(number(BRINE.error())).isCloseTo(100 * (brine / water - 1), within(1e-12));
    }

    @Test
    void soMuchMorePressureMakesUpForIt() {
        assertThat(number(BRINE.pressureFactor())).isCloseTo(1.1779, within(1e-15));
        assertThat(number(BOOM.flow(psi(40 * number(BRINE.pressureFactor())), density(1.1779))))
                .isCloseTo(number(BOOM.flow(psi(40), density(1))), within(1e-13));
    }

    @Test
    void itIsNamedWhereItMatters() {
        assertThat(BRINE.findings(NozzleCatches.OF_RATE))
                .singleElement()
                .hasToString(
                        "boom-liquid-changed: The pressure was set with a liquid of 1 kg/L, and one of 1.178 kg/L runs"
                                + " now: at the same pressure its volume is -7.861 % off. Set the pressure with the liquid that is"
                                + " sprayed.");
        assertThat(BRINE.findings(Tolerance.percent(8))).isEmpty();
        assertThat(new PressureSetUp(density(1.1779), density(1)).findings(Tolerance.percent(8)))
                .hasSize(1);
    }

    @Test
    void aLiquidHasADensity() {
        assertRefused(
                "density of the liquid at set-up must be greater than 0: 0 kg/L",
                () -> new PressureSetUp(density(0), density(1)));
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> new PressureSetUp(density(1), density(0)));
    }
}
