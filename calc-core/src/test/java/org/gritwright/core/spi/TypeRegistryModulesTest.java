package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.lang.module.Configuration;
import java.lang.module.ModuleFinder;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.gritwright.core.metering.BuiltInTypes;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Registries that are made from the services of modules. Modules can't read a core that is on the class path. */
class TypeRegistryModulesTest {
    private static final TypeRegistry NOTHING = TypeRegistry.of(List.of(), List.of());

    @TempDir
    private Path folder;

    @BeforeEach
    void theCoreIsAModule() {
        assumeTrue(TypeRegistry.class.getModule().isNamed(), "the core is on the class path");
    }

    /** A module with a good type of each sort, and a conveyor that can't be made. */
    private Path module(String name, Path... others) {
        return new ProviderSources()
                .source("module-info", """
                        module %s {
                            requires org.gritwright.core;
                            provides org.gritwright.core.spi.ConveyorType with %s.Good, %s.Bad;
                            provides org.gritwright.core.spi.GateType with %s.GoodGate;
                            provides org.gritwright.core.spi.PumpType with %s.GoodPump;
                            provides org.gritwright.core.spi.FlowMeterType with %s.GoodMeter;
                        }
                        """.formatted(name, name, name, name, name, name))
                .conveyor(name + ".Good", "example.org/" + name, "")
                .conveyor(
                        name + ".Bad",
                        "example.org/" + name + "-bad",
                        "public static ConveyorType provider() { throw new IllegalStateException(\"no provider\"); }")
                .gate(name + ".GoodGate", "example.org/" + name)
                .pump(name + ".GoodPump", "example.org/" + name)
                .flowMeter(name + ".GoodMeter", "example.org/" + name)
                .asModuleInto(folder.resolve(name), others);
    }

    private static ModuleLayer layer(Path module, String name, ModuleLayer parent) {
        Configuration configuration =
                parent.configuration().resolve(ModuleFinder.of(module), ModuleFinder.of(), Set.of(name));
        return ModuleLayer.defineModulesWithOneLoader(
                        configuration, List.of(parent), TypeRegistry.class.getClassLoader())
                .layer();
    }

    private static ModuleLayer ours() {
        return TypeRegistry.class.getModule().getLayer();
    }

    private static List<String> namesOf(TypeRegistry registry) {
        return registry.conveyors().stream().map(type -> type.id().name()).toList();
    }

    @Test
    void findsWhatTheModulesOfALayerProvide() {
        ModuleLayer plugins = layer(module("first"), "first", ours());
        TypeRegistry registry = BuiltInTypes.registry().withServices(plugins);

        ConveyorType found = registry.conveyor(TypeId.of("example.org/first", 1));
        assertThat(found.getClass().getModule().getName()).isEqualTo("first");
        assertThat(registry.gate(TypeId.of("example.org/first", 1)).id().version())
                .isEqualTo(1);
        assertThat(registry.pump(TypeId.of("example.org/first", 1)).getClass().getModule())
                .isSameAs(found.getClass().getModule());
        assertThat(registry.flowMeter(TypeId.of("example.org/first", 1))
                        .getClass()
                        .getModule())
                .isSameAs(found.getClass().getModule());
        assertThat(registry.conveyors())
                .hasSize(BuiltInTypes.registry().conveyors().size() + 1);
        assertThat(registry.rejected())
                .singleElement()
                .extracting(RejectedType::toString)
                .asString()
                .startsWith("service provider: ")
                .contains("first.Bad")
                .contains("no provider");
    }

    @Test
    void twoLayersSideBySideMakeTwoRegistries() {
        ModuleLayer first = layer(module("first"), "first", ours());
        ModuleLayer second = layer(module("second"), "second", ours());

        assertThat(namesOf(NOTHING.withServices(first))).containsExactly("example.org/first");
        assertThat(namesOf(NOTHING.withServices(second))).containsExactly("example.org/second");
        assertThat(NOTHING.withServices(ours()).conveyors()).isEmpty();
    }

    @Test
    void theModulesOfAParentLayerCountToo() {
        Path parent = module("first");
        ModuleLayer child = layer(module("second", parent), "second", layer(parent, "first", ours()));

        assertThat(namesOf(NOTHING.withServices(child))).containsExactly("example.org/first", "example.org/second");
    }

    @Test
    void theLoaderOfALayerOffersTheSame() {
        ModuleLayer plugins = layer(module("first"), "first", ours());

        assertThat(namesOf(NOTHING.withServices(plugins.findLoader("first")))).containsExactly("example.org/first");
    }
}
