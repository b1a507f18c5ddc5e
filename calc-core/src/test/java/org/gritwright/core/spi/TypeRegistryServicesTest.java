package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.spi.ProviderSources.loader;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import java.util.function.Predicate;
import org.gritwright.core.metering.Auger;
import org.gritwright.core.metering.BuiltInTypes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Registries that are made from the services of class loaders. */
class TypeRegistryServicesTest {
    private static final TypeRegistry NOTHING = TypeRegistry.of(List.of(), List.of());

    @TempDir
    private Path folder;

    /** A conveyor, a gate, a pump and a flow meter, all declared. */
    private Path goodOnes(String name) {
        return new ProviderSources()
                .conveyor("plugin.Good", "example.org/" + name, "")
                .gate("plugin.GoodGate", "example.org/" + name)
                .pump("plugin.GoodPump", "example.org/" + name)
                .flowMeter("plugin.GoodMeter", "example.org/" + name)
                .service(ConveyorType.class, "plugin.Good")
                .service(GateType.class, "# what this jar offers", "", "plugin.GoodGate # the only one")
                .service(PumpType.class, "plugin.GoodPump")
                .service(FlowMeterType.class, "plugin.GoodMeter")
                .into(folder.resolve(name));
    }

    private static List<String> namesOf(TypeRegistry registry) {
        return registry.conveyors().stream().map(type -> type.id().name()).toList();
    }

    private static Predicate<RejectedType> saying(String... parts) {
        return rejected ->
                List.of(parts).stream().allMatch(part -> rejected.toString().contains(part));
    }

    @Test
    void findsWhatALoaderOffers() throws IOException {
        try (URLClassLoader plugins = loader(goodOnes("found"))) {
            TypeRegistry registry = BuiltInTypes.registry().withServices(plugins);

            assertThat(registry.conveyor(TypeId.of("example.org/found", 1))
                            .getClass()
                            .getClassLoader())
                    .isSameAs(plugins);
            assertThat(registry.gate(TypeId.of("example.org/found", 1))
                            .getClass()
                            .getName())
                    .isEqualTo("plugin.GoodGate");
            assertThat(registry.pump(TypeId.of("example.org/found", 1))
                            .getClass()
                            .getName())
                    .isEqualTo("plugin.GoodPump");
            assertThat(registry.flowMeter(TypeId.of("example.org/found", 1))
                            .getClass()
                            .getName())
                    .isEqualTo("plugin.GoodMeter");
            assertThat(registry.conveyor(TypeId.of("auger", 1))).isInstanceOf(Auger.class);
            assertThat(registry.rejected()).isEmpty();
        }
    }

    @Test
    void aLoaderThatOffersNothingAddsNothing() throws IOException {
        try (URLClassLoader plugins = loader(folder)) {
            TypeRegistry registry = NOTHING.withServices(plugins);

            assertThat(registry.conveyors()).isEmpty();
            assertThat(registry.gates()).isEmpty();
            assertThat(registry.rejected()).isEmpty();
        }
    }

    @Test
    void twoLoadersSideBySideMakeTwoRegistries() throws IOException {
        try (URLClassLoader first = loader(goodOnes("first"));
                URLClassLoader second = loader(goodOnes("second"))) {
            TypeRegistry ofFirst = NOTHING.withServices(first);
            TypeRegistry ofSecond = NOTHING.withServices(second);
            TypeRegistry ofFirstAgain = NOTHING.withServices(first);

            assertThat(namesOf(ofFirst)).containsExactly("example.org/first");
            assertThat(namesOf(ofSecond)).containsExactly("example.org/second");
            assertThat(namesOf(ofFirstAgain)).containsExactly("example.org/first");
            assertThat(ofFirst.conveyors().iterator().next().getClass().getName())
                    .isEqualTo(ofSecond.conveyors().iterator().next().getClass().getName());
            assertThat(namesOf(ofFirst.withServices(second)))
                    .containsExactly("example.org/first", "example.org/second");
        }
    }

    @Test
    void theThreadsOwnLoaderIsNotAsked() throws IOException {
        ClassLoader before = Thread.currentThread().getContextClassLoader();
        try (URLClassLoader first = loader(goodOnes("first"));
                URLClassLoader second = loader(goodOnes("second"))) {
            Thread.currentThread().setContextClassLoader(second);

            assertThat(namesOf(NOTHING.withServices(first))).containsExactly("example.org/first");
        } finally {
            Thread.currentThread().setContextClassLoader(before);
        }
    }

    @Test
    void aPluginDoesNotPushOutABuiltInType() throws IOException {
        Path jar = new ProviderSources()
                .conveyor("plugin.MyAuger", "auger", "")
                .service(ConveyorType.class, "plugin.MyAuger")
                .into(folder);
        try (URLClassLoader plugins = loader(jar)) {
            TypeRegistry registry = BuiltInTypes.registry().withServices(plugins);

            assertThat(registry.conveyor(TypeId.of("auger", 1))).isInstanceOf(Auger.class);
            assertThat(registry.rejected())
                    .containsExactly(new RejectedType(
                            "plugin.MyAuger", "its id, auger, version 1, is taken by " + Auger.class.getName()));
        }
    }

    /** Broken lines between two good ones; Orphan's superclass is missing. */
    private Path brokenOnes() throws IOException {
        Path jar = new ProviderSources()
                .conveyor("plugin.First", "example.org/first", "")
                .source("plugin.NoType", "public class NoType {}")
                .source(
                        "plugin.Abstract",
                        "public abstract class Abstract implements org.gritwright.core.spi.ConveyorType {}")
                .source("plugin.Base", "public abstract class Base implements org.gritwright.core.spi.ConveyorType {}")
                .source("plugin.Orphan", """
                        import java.util.List;
                        import org.gritwright.core.spi.*;
                        public class Orphan extends Base {
                            public TypeId id() { return TypeId.of("example.org/orphan", 1); }
                            public int spiLevel() { return Spi.LEVEL; }
                            public List<Parameter<?>> parameters() { return List.of(); }
                            public boolean meteredByGate() { return false; }
                            public SweptVolume sweptVolume(Parameters given) { return area -> 1; }
                        }
                        """)
                .conveyor("plugin.Hidden", "example.org/hidden", "private Hidden() {}")
                .conveyor("plugin.Demanding", "example.org/demanding", "public Demanding(String name) {}")
                .conveyor(
                        "plugin.Impossible",
                        "example.org/impossible",
                        "static final Parameter<javax.measure.quantity.Length> PITCH = Parameter.length(\"pitch\","
                                + " org.gritwright.units.Amounts.of(2, org.gritwright.units.SpreadingUnits.INCH),"
                                + " org.gritwright.units.Amounts.of(1, org.gritwright.units.SpreadingUnits.INCH));")
                .conveyor("plugin.Last", "example.org/last", "")
                .gate("plugin.Stray", "example.org/stray")
                .service(
                        ConveyorType.class,
                        "plugin.First",
                        "plugin.Missing",
                        "plugin.NoType",
                        "plugin.Abstract",
                        "plugin.Orphan",
                        "plugin.Hidden",
                        "plugin.Demanding",
                        "plugin.Impossible",
                        "plugin.Stray",
                        "plugin.Last")
                .into(folder.resolve("broken"));
        Files.delete(jar.resolve("plugin").resolve("Base.class"));
        return jar;
    }

    @Test
    void aBrokenProviderHindersNoOther() throws IOException {
        Path jar = brokenOnes();
        try (URLClassLoader plugins = loader(jar)) {
            TypeRegistry registry = NOTHING.withServices(plugins);

            assertThat(namesOf(registry)).containsExactly("example.org/first", "example.org/last");
            assertThat(registry.rejected()).extracting(RejectedType::provider).containsOnly("service provider");
            assertThat(registry.rejected())
                    .satisfiesExactly(
                            r -> assertThat(r).matches(saying("plugin.Missing", "not found")),
                            r -> assertThat(r).matches(saying("plugin.NoType", "not a subtype")),
                            r -> assertThat(r).matches(saying("plugin.Abstract", "InstantiationException")),
                            r -> assertThat(r).matches(saying("java.lang.NoClassDefFoundError: plugin/Base")),
                            r -> assertThat(r).matches(saying("plugin.Hidden", "no-arg constructor")),
                            r -> assertThat(r).matches(saying("plugin.Demanding", "no-arg constructor")),
                            r -> assertThat(r)
                                    .matches(saying(
                                            "plugin.Impossible",
                                            "could not be instantiated",
                                            "ExceptionInInitializerError")),
                            r -> assertThat(r).matches(saying("plugin.Stray", "not a subtype")));
        }
    }

    @Test
    void aFileThatCanNotBeReadHindersNoOther() throws IOException {
        Path garbled = new ProviderSources()
                .conveyor("garbled.Lost", "example.org/lost", "")
                .service(ConveyorType.class, "garbled.Lost", "this is no class name")
                .into(folder.resolve("garbled"));
        try (URLClassLoader plugins = loader(garbled, goodOnes("found"))) {
            TypeRegistry registry = NOTHING.withServices(plugins);

            // The JDK takes a file as a whole.
            assertThat(namesOf(registry)).containsExactly("example.org/found");
            assertThat(registry.gates()).hasSize(1);
            assertThat(registry.rejected())
                    .singleElement()
                    .matches(saying("garbled", ConveyorType.class.getName(), ":2: Illegal"));
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    throw new IllegalStateException("hostile");   | java.lang.IllegalStateException: hostile
                    throw new AssertionError("hostile");          | java.lang.AssertionError: hostile
                    throw new NoClassDefFoundError("hostile/X");  | java.lang.NoClassDefFoundError: hostile/X
                    throw new StackOverflowError();               | java.lang.StackOverflowError
                    deep();                                       | java.lang.StackOverflowError
                    Bad.<RuntimeException>sneak(new java.io.IOException("hostile")); | java.io.IOException: hostile
                    """)
    void aConstructorThatThrowsHindersNoOther(String statement, String thrown) throws IOException {
        String members = """
                public Bad() { if (!Boolean.getBoolean("never")) { %s } }
                private static int deep() { return 1 + deep(); }
                @SuppressWarnings("unchecked")
                private static <T extends Throwable> void sneak(Throwable t) throws T { throw (T) t; }
                """.formatted(statement);
        Path jar = new ProviderSources()
                .conveyor("plugin.Bad", "example.org/bad", members)
                .conveyor("plugin.Good", "example.org/good", "")
                .service(ConveyorType.class, "plugin.Bad", "plugin.Good")
                .into(folder);
        try (URLClassLoader plugins = loader(jar)) {
            TypeRegistry registry = NOTHING.withServices(plugins);

            assertThat(namesOf(registry)).containsExactly("example.org/good");
            assertThat(registry.rejected())
                    .singleElement()
                    .matches(saying("plugin.Bad could not be instantiated", "(" + thrown + ")"));
        }
    }

    @Test
    void aProviderOfALaterLevelIsLeftOut() throws IOException {
        Path jar = new ProviderSources()
                .source("plugin.Later", """
                        import java.util.List;
                        import org.gritwright.core.spi.*;
                        public class Later implements ConveyorType {
                            public TypeId id() { throw new NoSuchMethodError("of later times"); }
                            public int spiLevel() { return 2; }
                            public List<Parameter<?>> parameters() { return List.of(); }
                            public boolean meteredByGate() { return false; }
                            public SweptVolume sweptVolume(Parameters given) { return area -> 1; }
                        }
                        """)
                .service(ConveyorType.class, "plugin.Later")
                .into(folder);
        try (URLClassLoader plugins = loader(jar)) {
            TypeRegistry registry = NOTHING.withServices(plugins);

            assertThat(registry.conveyors()).isEmpty();
            assertThat(registry.rejected())
                    .containsExactly(
                            new RejectedType("plugin.Later", "SPI level must be one of this library's, 1 to 1: 2"));
        }
    }

    @Test
    void aProviderWhoseClassesAreMissingWhenAskedIsLeftOut() throws IOException {
        Path jar = new ProviderSources()
                .source("plugin.Helper", "class Helper { static String name() { return \"example.org/x\"; } }")
                .source("plugin.Needy", """
                        import java.util.List;
                        import org.gritwright.core.spi.*;
                        public class Needy implements GateType {
                            public TypeId id() { return TypeId.of(Helper.name(), 1); }
                            public int spiLevel() { return Spi.LEVEL; }
                            public List<Parameter<?>> parameters() { return List.of(); }
                            public GateShape shape(Parameters given) { return GateShape.none(); }
                        }
                        """)
                .service(GateType.class, "plugin.Needy")
                .into(folder);
        Files.delete(jar.resolve("plugin").resolve("Helper.class"));
        try (URLClassLoader plugins = loader(jar)) {
            TypeRegistry registry = NOTHING.withServices(plugins);

            assertThat(registry.gates()).isEmpty();
            assertThat(registry.rejected())
                    .singleElement()
                    .matches(saying("plugin.Needy: java.lang.NoClassDefFoundError: plugin/Helper"));
        }
    }

    @Test
    void aLoaderThatThrowsOnOneClassHindersNoOther() throws IOException {
        Path jar = new ProviderSources()
                .conveyor("plugin.Good", "example.org/good", "")
                .service(ConveyorType.class, "plugin.Locked", "plugin.Good")
                .into(folder);
        try (URLClassLoader plugins = loader(jar)) {
            ClassLoader choosy = new ClassLoader(plugins) {
                @Override
                protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
                    if (name.equals("plugin.Locked")) {
                        throw new IllegalStateException("locked");
                    }
                    return super.loadClass(name, resolve);
                }
            };
            TypeRegistry registry = NOTHING.withServices(choosy);

            assertThat(namesOf(registry)).containsExactly("example.org/good");
            assertThat(registry.rejected())
                    .containsExactly(new RejectedType("service provider", "java.lang.IllegalStateException: locked"));
        }
    }

    @Test
    void aLoaderThatCanNotBeReadIsGivenUpAndReportedOnce() {
        ClassLoader unreadable = new ClassLoader(TypeRegistry.class.getClassLoader()) {
            @Override
            public Enumeration<URL> getResources(String name) throws IOException {
                throw new IOException("disk gone");
            }
        };
        TypeRegistry registry = BuiltInTypes.registry().withServices(unreadable);

        assertThat(registry.conveyors()).hasSameSizeAs(BuiltInTypes.registry().conveyors());
        RejectedType givenUp = new RejectedType("service provider", "not asked any further after 1000 failures");
        assertThat(registry.rejected())
                .satisfiesExactly(
                        r -> assertThat(r).matches(saying(ConveyorType.class.getName(), "disk gone")),
                        r -> assertThat(r).isEqualTo(givenUp),
                        r -> assertThat(r).matches(saying(GateType.class.getName(), "disk gone")),
                        r -> assertThat(r).isEqualTo(givenUp),
                        r -> assertThat(r).matches(saying(PumpType.class.getName(), "disk gone")),
                        r -> assertThat(r).isEqualTo(givenUp),
                        r -> assertThat(r).matches(saying(FlowMeterType.class.getName(), "disk gone")),
                        r -> assertThat(r).isEqualTo(givenUp));
    }

    @Test
    void anEndlessRowOfFailuresEnds() throws IOException {
        Path garbled = new ProviderSources()
                .service(ConveyorType.class, "this is no class name")
                .into(folder);
        URL file = garbled.resolve("META-INF")
                .resolve("services")
                .resolve(ConveyorType.class.getName())
                .toUri()
                .toURL();
        ClassLoader endless = new ClassLoader(TypeRegistry.class.getClassLoader()) {
            @Override
            public Enumeration<URL> getResources(String name) {
                return !name.endsWith(ConveyorType.class.getName())
                        ? Collections.emptyEnumeration()
                        : new Enumeration<>() {
                            @Override
                            public boolean hasMoreElements() {
                                return true;
                            }

                            @Override
                            public URL nextElement() {
                                return file;
                            }
                        };
            }
        };
        TypeRegistry registry = NOTHING.withServices(endless);

        assertThat(registry.conveyors()).isEmpty();
        assertThat(registry.rejected())
                .satisfiesExactly(
                        r -> assertThat(r).matches(saying(":1: Illegal")),
                        r -> assertThat(r).matches(saying("not asked any further")));
    }
}
