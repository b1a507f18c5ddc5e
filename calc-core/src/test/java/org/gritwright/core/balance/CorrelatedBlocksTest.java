package org.gritwright.core.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CorrelatedBlocksTest {
    private static final Variable A = Variable.measured("a", 5, 1);
    private static final Variable B = Variable.measured("b", 8, 1);
    private static final Variable C = Variable.measured("c", 0, 2);
    private static final Map<String, Integer> INDEX = Map.of("a", 0, "b", 1, "c", 2);

    private static Adjustment adjusted(CorrelatedErrors... correlations) {
        return new Network(List.of(A, B, C), List.of(), List.of(correlations)).adjust();
    }

    @Test
    void whatIsCorrelatedWithNoneIsAlone() {
        CorrelatedBlocks blocks =
                new CorrelatedBlocks(List.of(A, B, C), INDEX, List.of(new CorrelatedErrors("c", "a", 0.6)));

        assertThat(blocks.members(1)).containsExactly(1);
        assertThat(blocks.root(1)).containsExactly(1);
        assertThat(blocks.members(0)).containsExactlyInAnyOrder(0, 2);
        // 0.6² + 0.8² = 1.
        assertThat(blocks.root(2)).containsExactly(new double[] {0.6, 0.8}, within(1e-15));
    }

    @Test
    void aBlockIsAllThatAreCorrelatedOneByOne() {
        CorrelatedBlocks blocks = new CorrelatedBlocks(
                List.of(A, B, C),
                INDEX,
                List.of(new CorrelatedErrors("c", "b", 0.5), new CorrelatedErrors("b", "a", 0.5)));

        assertThat(blocks.members(0)).containsExactlyInAnyOrder(0, 1, 2);
    }

    @Test
    void theDifferenceOfFullyCorrelatedReadingsIsExact() {
        Adjustment adjustment = adjusted(new CorrelatedErrors("a", "b", 1));

        assertThat(adjustment.covariance("a", "b")).isCloseTo(1, within(1e-14));
        assertThat(adjustment.combination(Map.of("a", 1.0, "b", -1.0)).standardUncertainty())
                .isCloseTo(0, within(1e-7));
        assertThat(adjusted(new CorrelatedErrors("a", "b", -1)).covariance("a", "b"))
                .isCloseTo(-1, within(1e-14));
    }

    @Test
    void whatIsCorrelatedWithOneOfTwoThatAreTheSameIsSoWithTheOther() {
        Adjustment adjustment = adjusted(
                new CorrelatedErrors("a", "b", 1),
                new CorrelatedErrors("a", "c", 0.6),
                new CorrelatedErrors("b", "c", 0.6));

        // Covariance ÷ the uncertainties 1 and 2.
        assertThat(adjustment.covariance("b", "c") / 2).isCloseTo(0.6, within(1e-12));
        assertThat(adjustment.covariance("a", "c") / 2).isCloseTo(0.6, within(1e-12));
        assertThat(adjustment.uncertainty("c").orElseThrow()).isCloseTo(2, within(1e-12));
        assertThatThrownBy(() -> adjusted(
                        new CorrelatedErrors("a", "b", 1),
                        new CorrelatedErrors("a", "c", 0.6),
                        new CorrelatedErrors("b", "c", 0.5)))
                .hasMessageContaining("possible together");
    }
}
