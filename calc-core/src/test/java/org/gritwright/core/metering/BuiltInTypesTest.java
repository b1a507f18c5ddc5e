package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class BuiltInTypesTest {
    /** A registry leaves out what isn't made for its level. */
    @Test
    void theRegistryTakesAllOfThem() {
        assertThat(BuiltInTypes.registry().rejected()).isEmpty();
        assertThat(BuiltInTypes.registry().conveyors())
                .extracting(type -> type.id().name())
                .containsExactlyInAnyOrder("drag-chain", "belt", "auger", "twin-auger", "feed-roller");
        assertThat(BuiltInTypes.registry().gates())
                .extracting(type -> type.id().name())
                .containsExactlyInAnyOrder(
                        "sliding-gate", "round-opening", "fixed-opening", "measured-table", "setting-table", "no-gate");
    }
}
