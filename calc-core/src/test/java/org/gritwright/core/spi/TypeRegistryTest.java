package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;

import java.io.IOException;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.ConcurrentModificationException;
import java.util.List;
import java.util.ServiceConfigurationError;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.measure.quantity.Length;
import org.gritwright.core.metering.Auger;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.DragChain;
import org.gritwright.core.metering.NoGate;
import org.gritwright.core.metering.SlidingGate;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Registries that are made from lists: what is let in, what is left out, and what is said of it. */
class TypeRegistryTest {
    private static final ConveyorType GOOD = new PlainConveyor("good");
    private static final ConveyorType BETTER = new PlainConveyor("better");
    private static final GateType GATE = new PlainGate("gate");

    @Test
    void aMisspelledTypeIsAnsweredWithTheOneThatMayHaveBeenMeant() {
        assertThatThrownBy(() -> BuiltInTypes.registry().conveyor(TypeId.of("drag-chian", 1)))
                .hasMessageEndingWith(": drag-chian, version 1; did you mean drag-chain, version 1?");
    }

    @Test
    void theBuiltInOneHoldsTheTypesOfTheLibraryAndLeavesNothingOut() {
        TypeRegistry registry = BuiltInTypes.registry();

        assertThat(registry.conveyor(TypeId.of("drag-chain", 1))).isInstanceOf(DragChain.class);
        assertThat(registry.conveyor(TypeId.of("auger", 1))).isInstanceOf(Auger.class);
        assertThat(registry.gate(TypeId.of("sliding-gate", 1))).isInstanceOf(SlidingGate.class);
        assertThat(registry.gate(TypeId.of("no-gate", 1))).isInstanceOf(NoGate.class);
        assertThat(registry.rejected()).isEmpty();
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
    void versionsOfOneNameAreDifferentTypes() {
        ConveyorType next = new PlainConveyor("good") {
            @Override
            public TypeId id() {
                return TypeId.of("example.org/good", 2);
            }
        };
        TypeRegistry registry = TypeRegistry.of(List.of(next, GOOD), List.of());

        assertThat(registry.conveyors()).containsExactly(GOOD, next);
        assertThat(registry.conveyor(TypeId.of("example.org/good", 2))).isSameAs(next);
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
    void namesAlsoWhatWasLeftOutWhereAnIdIsUnknown() {
        ConveyorType later = new PlainConveyor("later") {
            @Override
            public int spiLevel() {
                return 2;
            }
        };
        TypeRegistry registry = TypeRegistry.of(List.of(GOOD, later), List.of(GATE));
        String leftOut = " (left out: " + later.getClass().getName()
                + ": SPI level must be one of this library's, 1 to 1: 2): example.org/later, version 1";

        assertRefused(
                "conveyor type must be one of the registry: example.org/good, version 1" + leftOut,
                () -> registry.conveyor(TypeId.of("example.org/later", 1)));
        assertRefused(
                "gate type must be one of the registry: example.org/gate, version 1" + leftOut,
                () -> registry.gate(TypeId.of("example.org/later", 1)));
    }

    @Test
    void namesAtMostFiveThatWereLeftOutAndSaysHowManyMore() {
        List<GateType> five = Collections.nCopies(6, GATE);
        List<GateType> seven = Collections.nCopies(8, GATE);

        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> TypeRegistry.of(List.of(), five).gate(TypeId.of("unknown", 1)))
                .satisfies(e -> assertThat(e.accepted()).endsWith("PlainGate)").doesNotContain("more"));
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> TypeRegistry.of(List.of(), seven).gate(TypeId.of("unknown", 1)))
                .satisfies(e -> assertThat(e.accepted()).endsWith("PlainGate; and 2 more)"));
    }

    @Test
    void aTypeMayDeclareAThousandParametersAndNotOneMore() {
        TypeRegistry registry = TypeRegistry.of(List.of(), List.of(declaring(1000), declaring(1001)));

        assertThat(registry.gates())
                .singleElement()
                .satisfies(gate -> assertThat(gate.parameters()).hasSize(1000));
        assertThat(registry.rejected())
                .singleElement()
                .satisfies(left -> assertThat(left.reason()).isEqualTo("parameters must be at most 1000: more"));
    }

    private static GateType declaring(int parameters) {
        List<Parameter<?>> declared = new ArrayList<>();
        for (int i = 0; i < parameters; i++) {
            declared.add(Parameter.length("p" + i, inches(1), inches(2)));
        }
        return new PlainGate("gate-of-" + parameters) {
            @Override
            public List<Parameter<?>> parameters() {
                return declared;
            }
        };
    }

    @Test
    void ofTwoTypesWithOneIdTheFirstStaysAndBothClassesAreNamed() {
        ConveyorType second = new PlainConveyor("good") {};
        GateType secondGate = new PlainGate("gate") {};
        TypeRegistry registry = TypeRegistry.of(List.of(GOOD, second, BETTER), List.of(GATE, secondGate));

        assertThat(registry.conveyors()).containsExactly(BETTER, GOOD);
        assertThat(registry.gates()).containsExactly(GATE);
        assertThat(registry.rejected())
                .containsExactly(
                        new RejectedType(
                                second.getClass().getName(),
                                "its id, example.org/good, version 1, is taken by " + PlainConveyor.class.getName()),
                        new RejectedType(
                                secondGate.getClass().getName(),
                                "its id, example.org/gate, version 1, is taken by " + PlainGate.class.getName()));
    }

    @Test
    void whoComesLaterDoesNotPushOutWhoWasThere() {
        TypeRegistry registry = TypeRegistry.of(List.of(GOOD), List.of())
                .with(List.of(new PlainConveyor("good") {}, BETTER), List.of());

        assertThat(registry.conveyor(GOOD.id())).isSameAs(GOOD);
        assertThat(registry.conveyor(BETTER.id())).isSameAs(BETTER);
        assertThat(registry.rejected()).hasSize(1);
    }

    @Test
    void aConveyorAndAGateMayShareAnId() {
        TypeRegistry registry = TypeRegistry.of(List.of(GOOD), List.of(new PlainGate("good")));

        assertThat(registry.conveyor(GOOD.id())).isSameAs(GOOD);
        assertThat(registry.gate(GOOD.id()).id()).isEqualTo(GOOD.id());
        assertThat(registry.rejected()).isEmpty();
    }

    /** A type that can't be used, and what is said of it. */
    private record Bad(ConveyorType type, String reason) {
        @Override
        public String toString() {
            return reason;
        }
    }

    private static ConveyorType withLevels(int first, int then) {
        AtomicInteger asked = new AtomicInteger();
        return new PlainConveyor("bad") {
            @Override
            public int spiLevel() {
                return asked.getAndIncrement() == 0 ? first : then;
            }
        };
    }

    private static ConveyorType withIds(TypeId first, TypeId then) {
        AtomicInteger asked = new AtomicInteger();
        return new PlainConveyor("bad") {
            @Override
            public TypeId id() {
                return asked.getAndIncrement() == 0 ? first : then;
            }
        };
    }

    private static ConveyorType withParameters(List<Parameter<?>> parameters) {
        return new PlainConveyor("bad") {
            @Override
            public List<Parameter<?>> parameters() {
                return parameters;
            }
        };
    }

    static Stream<Bad> bad() {
        Parameter<Length> pitch = Parameter.length("pitch", inches(1), inches(2));
        Parameter<Length> otherPitch = Parameter.length("pitch", inches(3), inches(4));
        TypeId id = TypeId.of("example.org/bad", 1);
        AtomicInteger asked = new AtomicInteger();
        return Stream.of(
                new Bad(withLevels(2, 2), "SPI level must be one of this library's, 1 to 1: 2"),
                new Bad(withLevels(0, 0), "SPI level must be one of this library's, 1 to 1: 0"),
                new Bad(withLevels(-1, -1), "SPI level must be one of this library's, 1 to 1: -1"),
                new Bad(withLevels(1, 2), "SPI level must be the same whenever asked: 1 and 2"),
                new Bad(withIds(null, null), "type id must be given, the same whenever asked: null and null"),
                new Bad(
                        withIds(id, TypeId.of("example.org/bad", 2)),
                        "type id must be given, the same whenever asked: example.org/bad, version 1 and"
                                + " example.org/bad, version 2"),
                new Bad(
                        withIds(id, null),
                        "type id must be given, the same whenever asked: example.org/bad, version 1 and null"),
                new Bad(withParameters(null), "parameters must be a list without gaps: null"),
                new Bad(
                        withParameters(Arrays.asList(pitch, null)),
                        "parameters must be a list without gaps: a list with a null in it"),
                new Bad(withParameters(List.of(pitch, otherPitch)), "parameter must be declared once: \"pitch\""),
                new Bad(
                        new PlainConveyor("bad") {
                            @Override
                            public FillLimits fillLimits() {
                                return null;
                            }
                        },
                        "fill limits must be given: null"),
                new Bad(
                        new PlainConveyor("bad") {
                            @Override
                            public boolean meteredByGate() {
                                return asked.getAndIncrement() % 2 == 0;
                            }
                        },
                        "metered by a gate must be the same whenever asked: once true, once false"));
    }

    @ParameterizedTest
    @MethodSource("bad")
    void leavesOutATypeThatCanNotBeUsedSaysWhyAndGoesOn(Bad bad) {
        TypeRegistry registry = TypeRegistry.of(List.of(GOOD, bad.type(), BETTER), List.of(GATE));

        assertThat(registry.conveyors()).containsExactly(BETTER, GOOD);
        assertThat(registry.gates()).containsExactly(GATE);
        assertThat(registry.rejected())
                .containsExactly(new RejectedType(bad.type().getClass().getName(), bad.reason()));
    }

    @Test
    void gatesAreAskedTheSame() {
        GateType later = new PlainGate("later") {
            @Override
            public int spiLevel() {
                return 2;
            }
        };
        TypeRegistry registry = TypeRegistry.of(List.of(GOOD), List.of(later, GATE));

        assertThat(registry.conveyors()).containsExactly(GOOD);
        assertThat(registry.gates()).containsExactly(GATE);
        assertThat(registry.rejected())
                .extracting(RejectedType::toString)
                .containsExactly(later.getClass().getName() + ": SPI level must be one of this library's, 1 to 1: 2");
    }

    @Test
    void aTypeOfALaterLevelIsNotEvenAskedForItsId() {
        AtomicInteger asked = new AtomicInteger();
        ConveyorType later = new PlainConveyor("later") {
            @Override
            public int spiLevel() {
                return 2;
            }

            @Override
            public TypeId id() {
                asked.incrementAndGet();
                return super.id();
            }
        };

        assertThat(TypeRegistry.of(List.of(later), List.of()).rejected()).hasSize(1);
        assertThat(asked).hasValue(0);
    }

    @Test
    void aGapInAListIsLeftOutToo() {
        TypeRegistry registry = TypeRegistry.of(Arrays.asList(null, GOOD), Arrays.asList(GATE, null));

        assertThat(registry.conveyors()).containsExactly(GOOD);
        assertThat(registry.gates()).containsExactly(GATE);
        assertThat(registry.rejected())
                .containsExactly(
                        new RejectedType("null", "type must be given: null"),
                        new RejectedType("null", "type must be given: null"));
    }

    /** A parameter that can't be: whoever touches this class gets an ExceptionInInitializerError. */
    private static final class Impossible {
        static final Parameter<Length> PITCH = Parameter.length("pitch", inches(2), inches(1));

        private Impossible() {}
    }

    @SuppressWarnings("unchecked") // that's how checked exceptions get past the compiler
    private static <T extends Throwable> Object sneak(Throwable thrown) throws T {
        throw (T) thrown;
    }

    @SuppressWarnings("InfiniteRecursion") // on purpose
    private static int deep(int depth) {
        return deep(depth + 1) + 1;
    }

    /** One whose text can't even be printed. */
    private static final class Unprintable extends RuntimeException {
        private static final long serialVersionUID = 1L;

        @Override
        public String getMessage() {
            throw new IllegalStateException("no text");
        }
    }

    /** Something that throws, and how the reason begins. */
    private record Throwing(Supplier<Object> throwing, String reason) {
        @Override
        public String toString() {
            return reason;
        }
    }

    static Stream<Throwing> throwing() {
        return Stream.of(
                new Throwing(
                        () -> sneak(new IllegalStateException("hostile")), "java.lang.IllegalStateException: hostile"),
                new Throwing(
                        () -> sneak(new RuntimeException("hostile", new IOException("disk"))),
                        "java.lang.RuntimeException: hostile (java.io.IOException: disk)"),
                new Throwing(
                        () -> sneak(new NoClassDefFoundError("hostile/Base")),
                        "java.lang.NoClassDefFoundError: hostile/Base"),
                new Throwing(
                        () -> sneak(new AbstractMethodError("no such method yet")),
                        "java.lang.AbstractMethodError: no such method yet"),
                new Throwing(() -> sneak(new AssertionError("hostile")), "java.lang.AssertionError: hostile"),
                new Throwing(() -> deep(0), "java.lang.StackOverflowError"),
                new Throwing(
                        () -> sneak(new ServiceConfigurationError("hostile")),
                        "java.util.ServiceConfigurationError: hostile"),
                new Throwing(() -> sneak(new IOException("checked")), "java.io.IOException: checked"),
                new Throwing(() -> sneak(new Throwable("neither")), "java.lang.Throwable: neither"),
                new Throwing(() -> sneak(new Unprintable()), Unprintable.class.getName()));
    }

    private static List<ConveyorType> throwingWhenAskedForAnything(Supplier<Object> throwing) {
        return List.of(
                new PlainConveyor("id") {
                    @Override
                    public TypeId id() {
                        return (TypeId) throwing.get();
                    }
                },
                new PlainConveyor("level") {
                    @Override
                    public int spiLevel() {
                        return (Integer) throwing.get();
                    }
                },
                new PlainConveyor("parameters") {
                    @Override
                    public List<Parameter<?>> parameters() {
                        return List.of((Parameter<?>) throwing.get());
                    }
                },
                new PlainConveyor("elements") {
                    @Override
                    public List<Parameter<?>> parameters() {
                        return new AbstractList<>() {
                            @Override
                            public Parameter<?> get(int index) {
                                return (Parameter<?>) throwing.get();
                            }

                            @Override
                            public int size() {
                                return 1;
                            }
                        };
                    }
                },
                new PlainConveyor("metered") {
                    @Override
                    public boolean meteredByGate() {
                        return (Boolean) throwing.get();
                    }
                },
                new PlainConveyor("fill") {
                    @Override
                    public FillLimits fillLimits() {
                        return (FillLimits) throwing.get();
                    }
                });
    }

    @ParameterizedTest
    @MethodSource("throwing")
    void whateverATypeThrowsItHindersNoOther(Throwing throwing) {
        List<ConveyorType> types = new ArrayList<>(throwingWhenAskedForAnything(throwing.throwing()));
        int bad = types.size();
        types.add(0, GOOD);
        types.add(BETTER);
        TypeRegistry registry = TypeRegistry.of(types, List.of(GATE));

        assertThat(registry.conveyors()).containsExactly(BETTER, GOOD);
        assertThat(registry.gates()).containsExactly(GATE);
        assertThat(registry.rejected())
                .extracting(RejectedType::provider)
                .containsExactlyElementsOf(types.subList(1, bad + 1).stream()
                        .map(type -> type.getClass().getName())
                        .toList());
        assertThat(registry.rejected()).extracting(RejectedType::reason).allMatch(throwing.reason()::equals);
    }

    @Test
    void anImpossibleParameterInAStaticFieldIsAReasonLikeAnyOther() {
        ConveyorType type = new PlainConveyor("impossible") {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(Impossible.PITCH);
            }
        };
        TypeRegistry first = TypeRegistry.of(List.of(type, GOOD), List.of());
        TypeRegistry second = TypeRegistry.of(List.of(type, GOOD), List.of());

        assertThat(first.conveyors()).containsExactly(GOOD);
        assertThat(first.rejected())
                .containsExactly(new RejectedType(
                        type.getClass().getName(),
                        "java.lang.ExceptionInInitializerError (org.gritwright.units.InvalidInputException: highest"
                                + " pitch must be at least 2 in: 1 in)"));
        // The JVM remembers that the class can't be used.
        assertThat(second.conveyors()).containsExactly(GOOD);
        assertThat(second.rejected())
                .extracting(RejectedType::reason)
                .allMatch(reason -> reason.startsWith("java.lang.NoClassDefFoundError: "));
    }

    @Test
    void exhaustedMemoryIsTheApplicationsTroubleAndPasses() {
        ConveyorType type = new PlainConveyor("greedy") {
            @Override
            public TypeId id() {
                throw new OutOfMemoryError("none left");
            }
        };

        assertThatExceptionOfType(OutOfMemoryError.class)
                .isThrownBy(() -> TypeRegistry.of(List.of(type), List.of()))
                .withMessage("none left");
    }

    @Test
    void whatAListItselfThrowsIsNotHidden() {
        List<ConveyorType> changing = new AbstractList<>() {
            @Override
            public ConveyorType get(int index) {
                throw new ConcurrentModificationException("changing");
            }

            @Override
            public int size() {
                return 1;
            }
        };

        assertThatExceptionOfType(ConcurrentModificationException.class)
                .isThrownBy(() -> TypeRegistry.of(changing, List.of()));
        assertThatNullPointerException().isThrownBy(() -> TypeRegistry.of(null, List.of()));
        assertThatNullPointerException().isThrownBy(() -> TypeRegistry.of(List.of(), null));
    }

    @Test
    void doesNotFollowLaterChangesOfItsLists() {
        List<ConveyorType> conveyors = new ArrayList<>(List.of(GOOD));
        List<GateType> gates = new ArrayList<>(List.of(GATE));
        TypeRegistry registry = TypeRegistry.of(conveyors, gates);
        conveyors.clear();
        gates.clear();

        assertThat(registry.conveyors()).hasSize(1);
        assertThat(registry.gates()).hasSize(1);
    }

    @Test
    void nothingInItCanBeChanged() {
        TypeRegistry registry = TypeRegistry.of(List.of(GOOD, GOOD), List.of(GATE));

        assertThatExceptionOfType(UnsupportedOperationException.class)
                .isThrownBy(() -> registry.conveyors().clear());
        assertThatExceptionOfType(UnsupportedOperationException.class)
                .isThrownBy(() -> registry.gates().clear());
        assertThatExceptionOfType(UnsupportedOperationException.class)
                .isThrownBy(() -> registry.rejected().clear());
        assertThatExceptionOfType(UnsupportedOperationException.class)
                .isThrownBy(() -> registry.conveyors().iterator().remove());
    }

    @Test
    void oneRegistryKnowsNothingOfAnother() {
        TypeRegistry first = TypeRegistry.of(List.of(GOOD), List.of());
        TypeRegistry second = TypeRegistry.of(List.of(BETTER), List.of(GATE));
        TypeRegistry more = first.with(List.of(BETTER, GOOD), List.of(GATE));

        assertThat(first.conveyors()).containsExactly(GOOD);
        assertThat(first.gates()).isEmpty();
        assertThat(first.rejected()).isEmpty();
        assertThat(second.conveyors()).containsExactly(BETTER);
        assertThat(second.gates()).containsExactly(GATE);
        assertThat(more.conveyors()).containsExactly(BETTER, GOOD);
        assertThat(more.gates()).containsExactly(GATE);
        assertThat(more.rejected()).hasSize(1);
        assertThat(BuiltInTypes.registry().conveyors()).doesNotContain(GOOD, BETTER);
    }
}
