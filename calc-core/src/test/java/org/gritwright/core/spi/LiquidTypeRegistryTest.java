package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.assertRefused;

import java.util.Arrays;
import java.util.List;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.GearPump;
import org.gritwright.core.metering.KFactorMeter;
import org.junit.jupiter.api.Test;

/** Pump and flow-meter types in a registry, which treats them as it does conveyor and gate types. */
class LiquidTypeRegistryTest {
    private static final PumpType PUMP = new PlainPump("plain");
    private static final FlowMeterType METER = new PlainFlowMeter("plain");
    private static final TypeRegistry BOTH = TypeRegistry.of(List.of(), List.of(), List.of(PUMP), List.of(METER));

    @Test
    void theBuiltInOneHoldsTheTypesOfTheLibrary() {
        TypeRegistry registry = BuiltInTypes.registry();

        assertThat(registry.pump(TypeId.of("gear-pump", 1))).isInstanceOf(GearPump.class);
        assertThat(registry.flowMeter(TypeId.of("k-factor", 1))).isInstanceOf(KFactorMeter.class);
        assertThat(registry.pumps())
                .extracting(type -> type.id().name())
                .containsExactly("displacement-pump", "gear-pump", "pump-table");
        assertThat(registry.flowMeters())
                .extracting(type -> type.id().name())
                .containsExactly("k-factor", "k-factor-table");
    }

    @Test
    void allOfThemAreListedTogetherToo() {
        TypeRegistry registry = TypeRegistry.of(
                List.of(new PlainConveyor("a")), List.of(new PlainGate("b")), List.of(PUMP), List.of(METER));

        assertThat(registry.all())
                .extracting(type -> type.getClass().getSimpleName())
                .containsExactly("PlainConveyor", "PlainGate", "PlainPump", "PlainFlowMeter");
        assertThatThrownBy(() -> registry.all().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void oneIdMayStandForATypeOfEachSort() {
        TypeId id = TypeId.of("example.org/plain", 1);

        assertThat(BOTH.pump(id)).isSameAs(PUMP);
        assertThat(BOTH.flowMeter(id)).isSameAs(METER);
        assertThat(BOTH.rejected()).isEmpty();
    }

    @Test
    void namesTheKnownIdsWhereOneIsUnknown() {
        assertRefused(
                "pump type must be one of the registry: displacement-pump, version 1; gear-pump, version 1; pump-table,"
                        + " version 1: gear-pump, version 2",
                () -> BuiltInTypes.registry().pump(TypeId.of("gear-pump", 2)));
        assertThatThrownBy(() -> BuiltInTypes.registry().flowMeter(TypeId.of("kfactor", 1)))
                .hasMessage(
                        "flow-meter type must be one of the registry: k-factor, version 1; k-factor-table, version 1:"
                                + " kfactor, version 1; did you mean k-factor, version 1?");
    }

    @Test
    void typesAreAddedToThoseThatAreThere() {
        TypeRegistry more = BOTH.with(
                List.of(), List.of(), List.of(new PlainPump("second")), List.of(new PlainFlowMeter("second")));

        assertThat(more.pumps()).hasSize(2).contains(PUMP);
        assertThat(more.flowMeters()).hasSize(2).contains(METER);
        assertThat(BOTH.with(List.of(), List.of()).pumps()).containsExactly(PUMP);
        assertThat(BOTH.pumps()).hasSize(1);
        assertThat(BOTH.flowMeters()).hasSize(1);
    }

    @Test
    void whatCanNotBeUsedIsLeftOutAndSaysWhy() {
        PumpType again = new PlainPump("plain");
        PumpType withoutLimits = new PlainPump("limitless") {
            @Override
            public FillLimits fillLimits() {
                return null;
            }
        };
        FlowMeterType meterWithoutLimits = new PlainFlowMeter("limitless") {
            @Override
            public FillLimits fillLimits() {
                return null;
            }
        };
        FlowMeterType later = new PlainFlowMeter("later") {
            @Override
            public int spiLevel() {
                return Spi.LEVEL + 1;
            }
        };

        TypeRegistry registry = BOTH.with(
                List.of(), List.of(), Arrays.asList(again, withoutLimits, null), List.of(meterWithoutLimits, later));

        assertThat(registry.pumps()).containsExactly(PUMP);
        assertThat(registry.flowMeters()).containsExactly(METER);
        assertThat(registry.rejected())
                .extracting(RejectedType::reason)
                .containsExactly(
                        "its id, example.org/plain, version 1, is taken by " + PlainPump.class.getName(),
                        "fill limits must be given: null",
                        "type must be given: null",
                        "fill limits must be given: null",
                        "SPI level must be one of this library's, 1 to 1: 2");
    }

    @Test
    void nothingInItCanBeChanged() {
        assertThatThrownBy(() -> BOTH.pumps().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> BOTH.flowMeters().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void listsAreGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> TypeRegistry.of(List.of(), List.of(), null, List.of()))
                .withMessage("pumps");
        assertThatNullPointerException()
                .isThrownBy(() -> TypeRegistry.of(List.of(), List.of(), List.of(), null))
                .withMessage("flowMeters");
    }
}
