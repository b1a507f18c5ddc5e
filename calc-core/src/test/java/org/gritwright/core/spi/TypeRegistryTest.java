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

        assertThat(registry.conveyors()).extracting(type -> type.id().name()).containsExactly("auger", "drag-chain");
        assertThat(registry.gates()).extracting(type -> type.id().name()).containsExactly("no-gate", "sliding-gate");
    }

    @Test
    void namesTheKnownIdsWhereOneIsUnknown() {
        TypeRegistry registry = BuiltInTypes.registry();

        assertRefused(
                "conveyor type must be one of the registry: auger, version 1; drag-chain, version 1:"
                        + " auger, version 2",
                () -> registry.conveyor(TypeId.of("auger", 2)));
        assertRefused(
                "gate type must be one of the registry: no-gate, version 1; sliding-gate, version 1: iris, version 1",
                () -> registry.gate(TypeId.of("iris", 1)));
    }

    @Test
    void refusesAnIdTwice() {
        assertRefused(
                "conveyor type must be listed once: auger, version 1",
                () -> TypeRegistry.of(List.of(new Auger(), new Auger()), List.of()));
        assertRefused(
                "gate type must be listed once: no-gate, version 1",
                () -> TypeRegistry.of(List.of(), List.of(new NoGate(), new NoGate())));
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
