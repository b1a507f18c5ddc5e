package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.assertRefused;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.spreader.Auger;
import org.gritwright.core.spreader.BuiltInTypes;
import org.gritwright.core.spreader.DragChain;
import org.gritwright.core.spreader.NoGate;
import org.gritwright.core.spreader.SlidingGate;
import org.junit.jupiter.api.Test;

class TypeRegistryTest {
    @Test
    void theBuiltInOneHoldsDragChainAndAugerSlidingGateAndNoGate() {
        TypeRegistry registry = BuiltInTypes.registry();

        assertThat(registry.conveyor(TypeId.of("drag-chain", 1))).isInstanceOf(DragChain.class);
        assertThat(registry.conveyor(TypeId.of("auger", 1))).isInstanceOf(Auger.class);
        assertThat(registry.gate(TypeId.of("sliding-gate", 1))).isInstanceOf(SlidingGate.class);
        assertThat(registry.gate(TypeId.of("no-gate", 1))).isInstanceOf(NoGate.class);
    }

    @Test
    void listsItsTypesInTheOrderOfTheirIds() {
        TypeRegistry registry = BuiltInTypes.registry();

        assertThat(registry.conveyors())
                .extracting(type -> type.id().name())
                .containsExactly("auger", "belt", "drag-chain", "feed-roller", "twin-auger");
        assertThat(registry.gates())
                .extracting(type -> type.id().name())
                .containsExactly(
                        "fixed-opening", "measured-table", "no-gate", "round-opening", "setting-table", "sliding-gate");
    }

    @Test
    void namesTheKnownIdsWhereOneIsUnknown() {
        TypeRegistry registry = BuiltInTypes.registry();

        assertRefused(
                "conveyor type must be one of the registry: auger, version 1; belt, version 1; drag-chain, version 1;"
                        + " feed-roller, version 1; twin-auger, version 1: auger, version 2",
                () -> registry.conveyor(TypeId.of("auger", 2)));
        assertRefused(
                "gate type must be one of the registry: fixed-opening, version 1; measured-table, version 1;"
                        + " no-gate, version 1; round-opening, version 1; setting-table, version 1;"
                        + " sliding-gate, version 1: iris, version 1",
                () -> registry.gate(TypeId.of("iris", 1)));
    }

    @Test
    void leavesOutTheSecondOfOneId() {
        Auger first = new Auger();
        TypeRegistry registry = TypeRegistry.of(List.of(first, new Auger()), List.of(new NoGate(), new NoGate()));

        assertThat(registry.conveyors()).containsExactly(first);
        assertThat(registry.gates()).hasSize(1);
        assertThat(registry.rejected())
                .containsExactly(
                        new RejectedType(
                                Auger.class.getName(),
                                "its id, auger, version 1, is taken by " + Auger.class.getName()),
                        new RejectedType(
                                NoGate.class.getName(),
                                "its id, no-gate, version 1, is taken by " + NoGate.class.getName()));
    }

    @Test
    void doesNotFollowLaterChangesOfItsLists() {
        List<ConveyorType> conveyors = new ArrayList<>(List.of(new Auger()));
        TypeRegistry registry = TypeRegistry.of(conveyors, List.of());
        conveyors.clear();

        assertThat(registry.conveyors()).hasSize(1);
        assertThatThrownBy(() -> registry.conveyors().clear()).isInstanceOf(UnsupportedOperationException.class);
    }
}
