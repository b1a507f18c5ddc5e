package org.gritwright.core.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

class PowerTest {
    @Test
    void oneCandidateIsTestedAtTheRiskItself() {
        Power power = Power.common(0.05, 1);

        assertThat(power.riskOfEach()).isCloseTo(0.05, within(1e-15));
        // The two-sided 5 % point of the normal distribution.
        assertThat(power.critical()).isCloseTo(1.959964, within(1e-6));
        // The non-centrality at which a two-sided 5 % test finds 95 %: 1.96 + 1.645.
        assertThat(power.nonCentrality()).isCloseTo(3.604817, within(1e-5));
    }

    @Test
    void manyCandidatesShareTheRisk() {
        Power power = Power.common(0.05, 100);

        assertThat(1 - Math.pow(1 - power.riskOfEach(), 100)).isCloseTo(0.05, within(1e-12));
        NormalDistribution normal = new NormalDistribution();
        assertThat(2 * (1 - normal.cumulativeProbability(power.critical())))
                .isCloseTo(power.riskOfEach(), within(1e-12));
        assertThat(power.found(power.nonCentrality())).isCloseTo(0.95, within(1e-12));
        assertThat(power.found(0)).isCloseTo(power.riskOfEach(), within(1e-12));
        assertThat(power.riskOfScore(power.critical())).isCloseTo(0.05, within(1e-9));
        assertThat(power.riskOfScore(-power.critical())).isCloseTo(0.05, within(1e-9));
        assertThat(power.riskOfScore(0)).isEqualTo(1);
    }

    @Test
    void aSmallPowerIsBelowTheLimit() {
        Power power = new Power(0.05, 1, 0.06);

        assertThat(power.found(power.nonCentrality())).isCloseTo(0.06, within(1e-12));
        assertThat(power.nonCentrality()).isBetween(0.01, 1.0);
    }

    @Test
    void aSuspectSaysWhatWouldHaveBeenFound() {
        Suspect suspect = new Suspect(Candidate.measurement("in"), 6, 2);
        Power power = Power.common(0.05, 1);

        assertThat(suspect.score()).isEqualTo(3);
        assertThat(suspect.drop()).isEqualTo(9);
        assertThat(suspect.nonCentrality(-8)).isEqualTo(4);
        assertThat(suspect.smallestFound(power)).isCloseTo(2 * 3.604817, within(1e-4));
    }

    @Test
    void numbersOutOfRangeAreRefused() {
        assertThatThrownBy(() -> Power.common(0, 1)).hasMessageContaining("risk");
        assertThatThrownBy(() -> Power.common(0.05, 0)).hasMessageContaining("candidates");
        assertThatThrownBy(() -> new Power(0.05, 1, 0.04)).hasMessageContaining("probability of finding");
        assertThatThrownBy(() -> new Power(0.05, 1, 0.05)).hasMessageContaining("greater than the risk 0.05");
    }
}
