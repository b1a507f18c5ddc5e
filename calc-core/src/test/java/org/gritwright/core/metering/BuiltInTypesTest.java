package org.gritwright.core.metering;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import org.gritwright.core.spi.SpreaderType;
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
        assertThat(BuiltInTypes.registry().pumps())
                .extracting(type -> type.id().name())
                .containsExactlyInAnyOrder("gear-pump", "displacement-pump", "pump-table");
        assertThat(BuiltInTypes.registry().flowMeters())
                .extracting(type -> type.id().name())
                .containsExactlyInAnyOrder("k-factor", "k-factor-table");
    }

    /** Documents know the parameters of the built-in types by their names, before they know the type. */
    @Test
    void aNameOfAParameterMeansOneKindOfQuantity() {
        Map<String, Class<?>> kinds = new HashMap<>();

        assertThat(BuiltInTypes.registry().all())
                .flatExtracting(SpreaderType::parameters)
                .allSatisfy(parameter -> assertThat(
                                kinds.merge(parameter.name(), parameter.kind(), (before, now) -> before))
                        .isEqualTo(parameter.kind()));
        assertThat(kinds).hasSizeGreaterThan(20);
    }
}
