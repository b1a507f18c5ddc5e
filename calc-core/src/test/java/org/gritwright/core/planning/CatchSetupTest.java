package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.planning.Setups.percent;

import java.util.Optional;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.observation.Repeatability;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CatchSetupTest {
    private static final CatchSetup UNKNOWN =
            Setups.setup(Setups.scale(0.5, 0.1), Setups.pails(4, 60), Setups.SIXTY_PULSES);
    private static final Optional<Moisture> WET =
            Optional.of(new Moisture(percent(5), percent(1), Moisture.Basis.WET_MASS));

    private static CatchSetup knownTo(double degreesOfFreedom) {
        return UNKNOWN.allowing(new CatchAllowances(
                percent(2), percent(1), WET, Optional.of(new Repeatability(percent(1), degreesOfFreedom))));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 10})
    void eachCalibrationCatchAfterTheFirstShowsMoreOfTheScatter(int catches) {
        assertThat(knownTo(7).afterCalibration(catches).scatter())
                .isEqualTo(new Repeatability(percent(1), 7 + catches - 1));
        assertThat(UNKNOWN.afterCalibration(catches).scatter()).isEqualTo(new Repeatability(percent(1), catches + 1));
    }

    @Test
    void whatIsStatedFirmlyStays() {
        assertThat(knownTo(Double.POSITIVE_INFINITY).afterCalibration(5).scatter())
                .isEqualTo(Repeatability.assumed(percent(1)));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void oneCatchShowsNothingAndTheScatterStaysAsItIsKnown(int catches) {
        assertThat(knownTo(7).afterCalibration(catches).scatter()).isEqualTo(new Repeatability(percent(1), 7));
        assertThat(UNKNOWN.afterCalibration(catches).scatter()).isEqualTo(Repeatability.COMMON);
        assertThat(UNKNOWN.afterCalibration(catches).limits().allowances().repeatability())
                .isEmpty();
    }

    @Test
    void moistureIsLeftOutAndTheRestStays() {
        CatchSetup after = knownTo(7).afterCalibration(5);

        assertThat(after.limits().allowances())
                .isEqualTo(new CatchAllowances(
                        percent(2), percent(1), Optional.empty(), Optional.of(new Repeatability(percent(1), 11))));
        assertThat(after.amount()).isEqualTo(UNKNOWN.amount());
        assertThat(after.expected()).isEqualTo(UNKNOWN.expected());
        assertThat(after.count()).isEqualTo(UNKNOWN.count());
    }
}
