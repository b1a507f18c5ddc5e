package org.gritwright.core.conformance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.util.AbstractList;
import java.util.Collections;
import java.util.List;
import java.util.ServiceConfigurationError;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.measure.quantity.Length;
import org.gritwright.core.record.JsonConformance;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.MeteredVolume;
import org.gritwright.core.spi.OpenArea;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.PumpedVolume;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever a type does, the kit returns violations and throws nothing. */
@Tag("jackson")
class HostileTypesTest {
    /** One more thing that may be asked: after so many calls something is done. */
    private static final class Fuse {
        private final int burnsAt;
        private final Supplier<? extends Throwable> thrown;
        private final AtomicInteger calls = new AtomicInteger();

        Fuse(int burnsAt, Supplier<? extends Throwable> thrown) {
            this.burnsAt = burnsAt;
            this.thrown = thrown;
        }

        /** Throws at one call; with 0, at every call. */
        void burn() {
            int call = calls.incrementAndGet();
            if (burnsAt == 0 || call == burnsAt) {
                HostileTypesTest.<RuntimeException>sneak(thrown.get());
            }
        }
    }

    @SuppressWarnings("unchecked") // that's how checked exceptions get past the compiler
    private static <T extends Throwable> void sneak(Throwable thrown) throws T {
        throw (T) thrown;
    }

    /** A lawful conveyor type but for the fuse; at one of its areas, in the thread of the test, the function asks it too. */
    private static final class FusedConveyor extends LawfulConveyor {
        private static final ThreadLocal<Fuse> LIT = new ThreadLocal<>();
        private final Fuse fuse;

        FusedConveyor(Fuse fuse) {
            this.fuse = fuse;
            LIT.set(fuse);
        }

        @Override
        public TypeId id() {
            fuse.burn();
            return super.id();
        }

        @Override
        public int spiLevel() {
            fuse.burn();
            return super.spiLevel();
        }

        @Override
        public List<Parameter<?>> parameters() {
            fuse.burn();
            return super.parameters();
        }

        @Override
        public boolean meteredByGate() {
            fuse.burn();
            return super.meteredByGate();
        }

        @Override
        public FillLimits fillLimits() {
            fuse.burn();
            return super.fillLimits();
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            fuse.burn();
            double meters = meters(given);
            return area -> {
                Fuse lit = LIT.get();
                if (lit != null && area == 0.1) {
                    lit.burn();
                }
                return area * meters;
            };
        }
    }

    /** A lawful gate type but for the fuse; at the lowest opening, in the thread of the test, the area asks it too. */
    private static final class FusedGate extends LawfulGate {
        private static final ThreadLocal<Fuse> LIT = new ThreadLocal<>();
        private final Fuse fuse;

        FusedGate(Fuse fuse) {
            this.fuse = fuse;
            LIT.set(fuse);
        }

        @Override
        public TypeId id() {
            fuse.burn();
            return super.id();
        }

        @Override
        public int spiLevel() {
            fuse.burn();
            return super.spiLevel();
        }

        @Override
        public List<Parameter<?>> parameters() {
            fuse.burn();
            return super.parameters();
        }

        @Override
        public GateShape shape(Parameters given) {
            fuse.burn();
            OpenArea area = area(given.si(WIDTH), given.si(DEAD));
            return shape(given, opening -> {
                Fuse lit = LIT.get();
                if (lit != null && opening == 0) {
                    lit.burn();
                }
                return area.squareMeters(opening);
            });
        }
    }

    /** A lawful pump type but for the fuse; at its lowest speed, in the thread of the test, the volume asks it too. */
    private static final class FusedPump extends LawfulPump {
        private static final ThreadLocal<Fuse> LIT = new ThreadLocal<>();
        private final Fuse fuse;

        FusedPump(Fuse fuse) {
            this.fuse = fuse;
            LIT.set(fuse);
        }

        @Override
        public TypeId id() {
            fuse.burn();
            return super.id();
        }

        @Override
        public int spiLevel() {
            fuse.burn();
            return super.spiLevel();
        }

        @Override
        public List<Parameter<?>> parameters() {
            fuse.burn();
            return super.parameters();
        }

        @Override
        public FillLimits fillLimits() {
            fuse.burn();
            return super.fillLimits();
        }

        @Override
        public PumpOutput output(Parameters given) {
            fuse.burn();
            PumpedVolume volume = volume(given.si(SIZE), given.si(SLIP));
            return output(given, speed -> {
                Fuse lit = LIT.get();
                if (lit != null && speed == 1) {
                    lit.burn();
                }
                return volume.cubicMetersPerRevolution(speed);
            });
        }
    }

    /** A lawful flow-meter type but for the fuse; about 4 L/s, in the thread of the test, the volume asks it too. */
    private static final class FusedFlowMeter extends LawfulFlowMeter {
        private static final ThreadLocal<Fuse> LIT = new ThreadLocal<>();
        private final Fuse fuse;

        FusedFlowMeter(Fuse fuse) {
            this.fuse = fuse;
            LIT.set(fuse);
        }

        @Override
        public TypeId id() {
            fuse.burn();
            return super.id();
        }

        @Override
        public int spiLevel() {
            fuse.burn();
            return super.spiLevel();
        }

        @Override
        public List<Parameter<?>> parameters() {
            fuse.burn();
            return super.parameters();
        }

        @Override
        public FillLimits fillLimits() {
            fuse.burn();
            return super.fillLimits();
        }

        @Override
        public PulseOutput output(Parameters given) {
            fuse.burn();
            MeteredVolume volume = volume(given.si(PULSE), given.si(CUTOFF));
            return output(given, flow -> {
                Fuse lit = LIT.get();
                if (lit != null && flow > 0.0039) {
                    lit.burn();
                }
                return volume.cubicMetersPerPulse(flow);
            });
        }
    }

    /** One whose text can't even be printed. */
    private static final class Unprintable extends RuntimeException {
        private static final long serialVersionUID = 1L;

        @Override
        public String getMessage() {
            throw new IllegalStateException("no text");
        }
    }

    @SuppressWarnings("InfiniteRecursion") // on purpose
    private static int deep(int depth) {
        return deep(depth + 1) + 1;
    }

    static Stream<Supplier<Throwable>> throwables() {
        return Stream.of(
                () -> new IllegalStateException("hostile"),
                () -> new IOException("hostile, and checked"),
                () -> new AssertionError("hostile"),
                () -> new StackOverflowError("hostile"),
                () -> new NoClassDefFoundError("hostile/Base"),
                () -> new ServiceConfigurationError("hostile"),
                () -> new InternalError("hostile"),
                Unprintable::new,
                () -> {
                    deep(0);
                    return new AssertionError("unreachable");
                });
    }

    @ParameterizedTest
    @MethodSource("throwables")
    void aConveyorThatThrowsWhereverItIsAsked(Supplier<Throwable> thrown) {
        ConveyorType type = new FusedConveyor(new Fuse(0, thrown));

        assertThat(Conformance.check(type))
                .extracting(Violation::law)
                .containsExactly(Law.STABLE_IDENTITY, Law.PLAUSIBLE_FILL, Law.DESCRIBED_PARAMETERS);
        assertThat(JsonConformance.check(type)).extracting(Violation::law).containsExactly(Law.JSON_ROUND_TRIP);
    }

    @ParameterizedTest
    @MethodSource("throwables")
    void aGateThatThrowsWhereverItIsAsked(Supplier<Throwable> thrown) {
        GateType type = new FusedGate(new Fuse(0, thrown));

        assertThat(Conformance.check(type))
                .extracting(Violation::law)
                .containsExactly(Law.STABLE_IDENTITY, Law.DESCRIBED_PARAMETERS);
        assertThat(JsonConformance.check(type)).extracting(Violation::law).containsExactly(Law.JSON_ROUND_TRIP);
    }

    @ParameterizedTest
    @MethodSource("throwables")
    void aPumpOrAFlowMeterThatThrowsWhereverItIsAsked(Supplier<Throwable> thrown) {
        PumpType pump = new FusedPump(new Fuse(0, thrown));
        FlowMeterType meter = new FusedFlowMeter(new Fuse(0, thrown));

        assertThat(Conformance.check(pump))
                .extracting(Violation::law)
                .containsExactly(Law.STABLE_IDENTITY, Law.PLAUSIBLE_FILL, Law.DESCRIBED_PARAMETERS);
        assertThat(Conformance.check(meter))
                .extracting(Violation::law)
                .containsExactly(Law.STABLE_IDENTITY, Law.PLAUSIBLE_FILL, Law.DESCRIBED_PARAMETERS);
        assertThat(JsonConformance.check(pump)).extracting(Violation::law).containsExactly(Law.JSON_ROUND_TRIP);
        assertThat(JsonConformance.check(meter)).extracting(Violation::law).containsExactly(Law.JSON_ROUND_TRIP);
    }

    /** How often a lawful type is asked before the kit is done with it. */
    private static int callsOf(Function<Fuse, List<Violation>> check) {
        Fuse neverBurns = new Fuse(-1, AssertionError::new);
        assertThat(check.apply(neverBurns)).isEmpty();
        return neverBurns.calls.get();
    }

    private static void assertCaughtAtEveryCall(Function<Fuse, List<Violation>> check) {
        List<Supplier<Throwable>> throwables = throwables().toList();
        int calls = callsOf(check);
        assertThat(calls).isGreaterThan(50);
        for (int call = 1; call <= calls; call++) {
            Fuse fuse = new Fuse(call, throwables.get(call % throwables.size()));
            assertThat(check.apply(fuse)).as("thrown at call " + call).isNotEmpty();
        }
    }

    @Test
    void aConveyorThatThrowsAtAnyOneCallIsCaught() {
        assertCaughtAtEveryCall(fuse -> Conformance.check(new FusedConveyor(fuse)));
    }

    @Test
    void aGateThatThrowsAtAnyOneCallIsCaught() {
        assertCaughtAtEveryCall(fuse -> Conformance.check(new FusedGate(fuse)));
    }

    @Test
    void aPumpThatThrowsAtAnyOneCallIsCaught() {
        assertCaughtAtEveryCall(fuse -> Conformance.check(new FusedPump(fuse)));
    }

    @Test
    void aFlowMeterThatThrowsAtAnyOneCallIsCaught() {
        assertCaughtAtEveryCall(fuse -> Conformance.check(new FusedFlowMeter(fuse)));
    }

    @ParameterizedTest
    @MethodSource("throwables")
    void aFunctionThatThrowsInOtherThreadsOnly(Supplier<Throwable> thrown) {
        Thread first = Thread.currentThread();
        ConveyorType type = new LawfulConveyor() {
            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double meters = meters(given);
                return area -> {
                    if (!Thread.currentThread().equals(first)) {
                        HostileTypesTest.<RuntimeException>sneak(thrown.get());
                    }
                    return area * meters;
                };
            }
        };

        assertThat(Conformance.check(type)).extracting(Violation::law).containsExactly(Law.DETERMINISTIC);
    }

    @Test
    void typesThatGiveNothing() {
        ConveyorType conveyor = new ConveyorType() {
            @Override
            public TypeId id() {
                return null;
            }

            @Override
            public int spiLevel() {
                return 0;
            }

            @Override
            public List<Parameter<?>> parameters() {
                return null;
            }

            @Override
            public boolean meteredByGate() {
                return false;
            }

            @Override
            public SweptVolume sweptVolume(Parameters given) {
                return null;
            }

            @Override
            public FillLimits fillLimits() {
                return null;
            }
        };
        GateType gate = new GateType() {
            @Override
            public TypeId id() {
                return null;
            }

            @Override
            public int spiLevel() {
                return Spi.LEVEL;
            }

            @Override
            public List<Parameter<?>> parameters() {
                return List.of();
            }

            @Override
            public GateShape shape(Parameters given) {
                return null;
            }
        };

        assertThat(Conformance.check(conveyor))
                .extracting(Violation::toString)
                .containsExactly(
                        "stable-identity: id() is null",
                        "plausible-fill: fillLimits() is null",
                        "described-parameters: parameters() is null");
        assertThat(Conformance.check(gate))
                .extracting(Violation::toString)
                .containsExactly("stable-identity: id() is null", "named-refusals: no answer to {}");
        assertThat(JsonConformance.check(conveyor)).extracting(Violation::law).containsExactly(Law.JSON_ROUND_TRIP);
        assertThat(JsonConformance.check(gate)).extracting(Violation::law).containsExactly(Law.JSON_ROUND_TRIP);
    }

    @Test
    void aListOfItsOwnMakingIsNoWayOut() {
        ConveyorType type = new LawfulConveyor() {
            @Override
            public List<Parameter<?>> parameters() {
                return new AbstractList<>() {
                    @Override
                    public Parameter<?> get(int index) {
                        throw new IllegalStateException("no parameter " + index);
                    }

                    @Override
                    public int size() {
                        return 3;
                    }
                };
            }
        };

        assertThat(Conformance.check(type)).extracting(Violation::law).containsExactly(Law.DESCRIBED_PARAMETERS);
        assertThat(JsonConformance.check(type)).extracting(Violation::law).containsExactly(Law.JSON_ROUND_TRIP);
    }

    @Test
    void aListThatNobodyCouldWriteIsNotTriedInFull() {
        Parameter<Length> endless = LawfulConveyor.PITCH.asList(Integer.MAX_VALUE, Integer.MAX_VALUE);
        ConveyorType type = new LawfulConveyor() {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(endless);
            }
        };

        assertThat(Conformance.check(type)).extracting(Violation::law).containsExactly(Law.DESCRIBED_PARAMETERS);
    }

    @Test
    void exhaustedMemoryIsNoMatterOfLawsAndPasses() {
        assertThatExceptionOfType(OutOfMemoryError.class)
                .isThrownBy(() ->
                        Conformance.check(new FusedConveyor(new Fuse(0, () -> new OutOfMemoryError("none left")))));
        assertThatExceptionOfType(OutOfMemoryError.class)
                .isThrownBy(() ->
                        JsonConformance.check(new FusedGate(new Fuse(0, () -> new OutOfMemoryError("none left")))));
    }

    @Test
    void aTypeThatInterruptsIsCaughtAndTheInterruptionStays() {
        ConveyorType type = new LawfulConveyor() {
            @Override
            public SweptVolume sweptVolume(Parameters given) {
                Thread.currentThread().interrupt();
                return super.sweptVolume(given);
            }
        };

        List<Violation> violations = Conformance.check(type);

        assertThat(Thread.interrupted()).isTrue();
        assertThat(violations).extracting(Violation::law).containsExactly(Law.DETERMINISTIC);
    }

    /** More parameters than any memory holds. */
    private static final class EndlessConveyor extends LawfulConveyor {
        @Override
        public List<Parameter<?>> parameters() {
            return Collections.nCopies(Integer.MAX_VALUE, super.parameters().get(0));
        }
    }

    @Test
    void aListOfParametersThatNoMemoryHoldsIsAViolation() {
        assertThat(Conformance.check(new EndlessConveyor()))
                .extracting(Violation::law)
                .contains(Law.DESCRIBED_PARAMETERS);
        assertThat(JsonConformance.check(new EndlessConveyor()))
                .singleElement()
                .satisfies(violation -> assertThat(violation.how()).contains("at most 1000"));
    }
}
