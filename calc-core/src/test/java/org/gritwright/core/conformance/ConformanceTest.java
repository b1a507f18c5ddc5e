package org.gritwright.core.conformance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.inches;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The kit passes every lawful type and names the one law that a broken type breaks. */
class ConformanceTest {
    static Stream<ConveyorType> builtInConveyors() {
        return BuiltInTypes.registry().conveyors().stream();
    }

    static Stream<GateType> builtInGates() {
        return BuiltInTypes.registry().gates().stream();
    }

    static Stream<BrokenConveyors.Broken> brokenConveyors() {
        return BrokenConveyors.all();
    }

    static Stream<BrokenGates.Broken> brokenGates() {
        return BrokenGates.all();
    }

    private static Set<Law> laws(List<Violation> violations) {
        return violations.stream()
                .map(Violation::law)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Law.class)));
    }

    @ParameterizedTest
    @MethodSource("builtInConveyors")
    void everyBuiltInConveyorObeysTheLaws(ConveyorType type) {
        assertThat(Conformance.check(type)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("builtInGates")
    void everyBuiltInGateObeysTheLaws(GateType type) {
        assertThat(Conformance.check(type)).isEmpty();
    }

    @Test
    void anOutsidersLawfulTypesPass() {
        assertThat(Conformance.check(new LawfulConveyor())).isEmpty();
        assertThat(Conformance.check(new LawfulGate())).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("brokenConveyors")
    void ofABrokenConveyorTheBrokenLawIsNamedAndNoOther(BrokenConveyors.Broken broken) {
        assertThat(Conformance.check(broken.type())).extracting(Violation::law).containsExactly(broken.law());
    }

    @ParameterizedTest
    @MethodSource("brokenGates")
    void ofABrokenGateTheBrokenLawIsNamedAndNoOther(BrokenGates.Broken broken) {
        assertThat(Conformance.check(broken.type())).extracting(Violation::law).containsExactly(broken.law());
    }

    @Test
    void eachLawHasABrokenTypeOfEachSortThatItBinds() {
        assertThat(BrokenConveyors.all().map(BrokenConveyors.Broken::law).collect(Collectors.toSet()))
                .containsExactlyInAnyOrderElementsOf(Stream.of(Law.values())
                        .filter(Law::bindsConveyors)
                        .filter(law -> law != Law.JSON_ROUND_TRIP)
                        .toList());
        assertThat(BrokenGates.all().map(BrokenGates.Broken::law).collect(Collectors.toSet()))
                .containsExactlyInAnyOrderElementsOf(Stream.of(Law.values())
                        .filter(Law::bindsGates)
                        .filter(law -> law != Law.JSON_ROUND_TRIP)
                        .toList());
    }

    @Test
    void severalBrokenLawsAreAllNamed() {
        assertThat(laws(Conformance.check(new LawfulConveyor() {
                    @Override
                    public int spiLevel() {
                        return 7;
                    }

                    @Override
                    public SweptVolume sweptVolume(Parameters given) {
                        Object notSerializable = new Object();
                        double metres = metres(given);
                        return area -> notSerializable.equals(area) ? 1 : -metres * area;
                    }
                })))
                .containsExactly(Law.STABLE_IDENTITY, Law.NOT_NEGATIVE, Law.RISING, Law.SERIALIZABLE);
    }

    @Test
    @Tag("locale")
    void aViolationSaysWhatWasAskedAndWhatCameBack() {
        List<Violation> violations = Conformance.check(new LawfulConveyor() {
            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double metres = metres(given);
                return area -> area == 0.03 ? Double.NaN : metres * area;
            }
        });

        assertThat(violations)
                .extracting(Violation::toString)
                .containsExactly("finite: NaN at 0.03, with {pitch=505 mm, share=5 %, teeth=32}");
    }

    @Test
    void whatIsThrownIsQuoted() {
        assertThat(Conformance.check(new LawfulGate() {
                    @Override
                    public int spiLevel() {
                        throw new IllegalStateException("no idea");
                    }
                }))
                .extracting(Violation::toString)
                .containsExactly("stable-identity: spiLevel() throws java.lang.IllegalStateException: no idea");
    }

    /** Its pitch must be 7 in, which is not in the middle, nor at an end, of the range. */
    private static final class Picky extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            if (Math.abs(given.si(PITCH) - 0.1778) > 1e-9) {
                throw new InvalidInputException("pitch", "7 in", Amounts.format(given.get(PITCH)));
            }
            return super.sweptVolume(given);
        }
    }

    @Test
    void aTypeThatNoTrialValueSuitsNeedsExamples() {
        Map<String, Object> example = Map.of("pitch", inches(7), "teeth", Amounts.of(7, SpreadingUnits.ONE));

        assertThat(Conformance.check(new Picky()))
                .extracting(Violation::toString)
                .containsExactly(
                        "described-parameters: no trial values are accepted, {pitch=505 mm, share=5 %, teeth=32}"
                                + " among them; give examples that are");
        assertThat(Conformance.check(new Picky(), List.of(example))).isEmpty();
    }

    @Test
    void anExampleIsHeldAgainstTheLawsToo() {
        ConveyorType type = new LawfulConveyor() {
            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double metres = metres(given);
                boolean bad = given.si(TEETH) == 7;
                return area -> bad ? -metres * area : metres * area;
            }
        };
        Map<String, Object> example = Map.of("pitch", inches(7), "teeth", Amounts.of(7, SpreadingUnits.ONE));

        assertThat(Conformance.check(type)).isEmpty();
        assertThat(laws(Conformance.check(type, List.of(example)))).containsExactly(Law.NOT_NEGATIVE, Law.RISING);
    }

    @Test
    void anExampleThatIsRefusedIsAViolation() {
        List<Map<String, Object>> tooShort =
                List.of(Map.of("pitch", inches(0.1), "teeth", Amounts.of(7, SpreadingUnits.ONE)));
        List<Map<String, Object>> unknown = List.of(Map.of("width", inches(24)));
        List<Map<String, Object>> noQuantity = List.of(Map.of("width", "wide", "dead", inches(0)));

        assertThat(Conformance.check(new LawfulConveyor(), tooShort))
                .extracting(Violation::toString)
                .containsExactly("described-parameters: the example {pitch=0.1 in, teeth=7} is refused:"
                        + " pitch must be within 10 mm to 1 m: 0.1 in");
        assertThat(Conformance.check(new LawfulConveyor(), unknown))
                .extracting(Violation::toString)
                .containsExactly("described-parameters: the example {width=24 in} is refused: pitch must be given:"
                        + " nothing");
        assertThat(Conformance.check(new LawfulGate(), noQuantity))
                .extracting(Violation::toString)
                .containsExactly("described-parameters: the example {dead=0 in, width=wide} is refused:"
                        + " width must be length: wide");
    }

    @Test
    void violationsCanNotBeChanged() {
        List<Violation> violations = Conformance.check(new LawfulConveyor() {
            @Override
            public int spiLevel() {
                return 0;
            }
        });

        assertThat(violations).hasSize(1);
        assertThatExceptionOfType(UnsupportedOperationException.class).isThrownBy(violations::clear);
    }

    @Test
    void aTypeIsGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> Conformance.check((ConveyorType) null))
                .withMessage("type");
        assertThatNullPointerException()
                .isThrownBy(() -> new Violation(null, "how"))
                .withMessage("law");
        assertThatNullPointerException()
                .isThrownBy(() -> new Violation(Law.FINITE, null))
                .withMessage("how");
    }
}
