package org.gritwright.core.conformance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.inches;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.OpenArea;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Setting;
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
                        double meters = meters(given);
                        return area -> notSerializable.equals(area) ? 1 : -meters * area;
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
                double meters = meters(given);
                return area -> area == 0.03 ? Double.NaN : meters * area;
            }
        });

        assertThat(violations)
                .extracting(Violation::toString)
                .containsExactly("finite: NaN m³/rev at 0.03 m² open, with {pitch=505 mm, share=5 %, teeth=32}");
    }

    /** A gate from 8 % to 100 % that gives these areas, in turn, for all that it is asked at one shape. */
    private static GateType inPercent(OpenArea... areas) {
        AtomicInteger asked = new AtomicInteger();
        return new LawfulGate() {
            @Override
            public GateShape shape(Parameters given) {
                given.si(WIDTH);
                given.si(DEAD);
                return GateShape.adjustable(
                        Setting.percent(0),
                        Setting.percent(100),
                        areas[Math.min(asked.getAndIncrement(), areas.length - 1)]);
            }
        };
    }

    @Test
    @Tag("locale")
    void aViolationOfAGateNamesTheSetting() {
        OpenArea lawful = ratio -> ratio;

        assertThat(Conformance.check(inPercent(ratio -> ratio == 0.25 ? -1 : ratio)))
                .extracting(Violation::toString)
                .containsExactly(
                        "not-negative: -1 m² at 25 %, with {dead=1.5 in, width=31 in}",
                        "rising: -1 m² at 25 %, after 0.21875 m², with {dead=1.5 in, width=31 in}");
        assertThat(Conformance.check(inPercent(lawful)))
                .as("lawful but for the bad value")
                .isEmpty();
    }

    @Test
    @Tag("locale")
    void theFirstSampleThatDiffersIsNamedAndNoOther() {
        assertThat(Conformance.check(inPercent(ratio -> ratio, ratio -> ratio < 0.5 ? ratio : 1)))
                .filteredOn(violation -> violation.law() == Law.DETERMINISTIC)
                .extracting(Violation::how)
                .containsExactly("the answer to {dead=1.5 in, width=31 in}, asked again, is 1 m² at 50 %, before"
                        + " 0.5 m² at 50 %");
    }

    @Test
    void ofAnotherShapeTheLimitsAreNamed() {
        AtomicInteger asked = new AtomicInteger();
        GateType stretching = new LawfulGate() {
            @Override
            public GateShape shape(Parameters given) {
                given.si(WIDTH);
                given.si(DEAD);
                return GateShape.byOpening(inches(0), inches(12 + asked.getAndIncrement()), opening -> 0.1);
            }
        };

        assertThat(Conformance.check(stretching))
                .extracting(Violation::how)
                .first(InstanceOfAssertFactories.STRING)
                .startsWith("the answer to {dead=1.5 in, width=31 in}, asked again, is set by a height from 0 in to ")
                .endsWith(" in, before set by a height from 0 in to 12 in");
    }

    @Test
    void aLimitThatTheGateItselfRefusesIsQuoted() {
        GateType byNumber = inPercent(percentage -> {
            if (!(percentage >= 1 || percentage == 0)) {
                throw new InvalidInputException("percentage", "0, or 1 and more", String.valueOf(percentage));
            }
            return percentage;
        });
        GateType short1 = inPercent(ratio -> {
            if (ratio >= 1) {
                throw new InvalidInputException("ratio", "below 1", String.valueOf(ratio));
            }
            return ratio;
        });

        assertThat(Conformance.check(byNumber))
                .as("both limits can be set, what lies between can't")
                .extracting(Violation::law)
                .containsExactly(Law.NAMED_REFUSALS);
        assertThat(Conformance.check(short1))
                .extracting(Violation::toString)
                .containsExactly("settable-limits: its own highest setting, 100 %, is refused: ratio must be below 1:"
                        + " 1.0, with {dead=1.5 in, width=31 in}");
    }

    @ParameterizedTest
    @MethodSource("builtInGates")
    void theLimitsOfEveryBuiltInGateAreAcceptedByTheGate(GateType type) {
        for (Map<String, Object> set : TrialParameters.of(type.parameters())) {
            Gate gate = Gate.of(type, set);
            gate.adjustable()
                    .ifPresent(shape -> assertThat(Stream.of(shape.lowest(), shape.highest()))
                            .allMatch(gate::accepts));
            gate.adjustable()
                    .flatMap(GateShape.Adjustable::closed)
                    .ifPresent(closed -> assertThat(gate.accepts(closed)).isTrue());
            assertThat(gate.accepts(Setting.none())).isEqualTo(!gate.isAdjustable());
        }
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
                        "described-parameters: no trial values are accepted: {pitch=505 mm, share=5 %, teeth=32} is"
                                + " refused: pitch must be 7 in: 505 mm; give examples of values that go together,"
                                + " Conformance.check(type, examples)");
        assertThat(Conformance.check(new Picky(), List.of(example))).isEmpty();
    }

    @Test
    void anExampleIsHeldAgainstTheLawsToo() {
        ConveyorType type = new LawfulConveyor() {
            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double meters = meters(given);
                boolean bad = given.si(TEETH) == 7;
                return area -> bad ? -meters * area : meters * area;
            }
        };
        Map<String, Object> example = Map.of("pitch", inches(7), "teeth", Amounts.of(7, SpreadingUnits.ONE));

        assertThat(Conformance.check(type)).isEmpty();
        assertThat(laws(Conformance.check(type, List.of(example)))).containsExactly(Law.NOT_NEGATIVE, Law.RISING);
    }

    @Test
    void inAnExampleADefaultStandsForWhatIsLeftOut() {
        ConveyorType type = new LawfulConveyor() {
            @Override
            public SweptVolume sweptVolume(Parameters given) {
                if (given.si(TEETH) != 7) {
                    throw new InvalidInputException("teeth", "7", Amounts.format(given.get(TEETH)));
                }
                double meters = given.si(PITCH);
                return area -> area * meters;
            }
        };
        Map<String, Object> example = Map.of("pitch", inches(7), "teeth", Amounts.of(7, SpreadingUnits.ONE));

        assertThat(Conformance.check(type, List.of(example)))
                .as("a share past its limits isn't refused")
                .extracting(Violation::toString)
                .containsExactly("enforced-limits: an answer to {pitch=7 in, share=-0.5 %, teeth=7}");
    }

    @Test
    @Tag("locale")
    void nothingForAValuePastItsLimitsIsAViolation() {
        assertThat(Conformance.check(new LawfulConveyor() {
                    @Override
                    public SweptVolume sweptVolume(Parameters given) {
                        double share =
                                given.asMap().get("share").get(0).getValue().doubleValue();
                        double meters = given.si(PITCH) * given.si(TEETH);
                        return share < 0 || share > 50 ? null : area -> area * meters;
                    }
                }))
                .extracting(Violation::toString)
                .containsExactly("enforced-limits: null for {pitch=505 mm, share=-0.5 %, teeth=32}");
    }

    @Test
    void aQuantityWithoutTextIsNamedByItsClass() {
        Map<String, Object> example = Map.of(
                "pitch", Amounts.of(1, SpreadingUnits.METER.multiply(7)), "teeth", Amounts.of(7, SpreadingUnits.ONE));

        assertThat(Conformance.check(new LawfulConveyor(), List.of(example)))
                .singleElement()
                .satisfies(violation -> assertThat(violation.how())
                        .startsWith("the example {pitch=a tech.units.indriya.")
                        .contains(", teeth=7} is refused: "));
    }

    @Test
    @Tag("locale")
    void whatCanNotBeSetHasNoSetting() {
        assertThat(BrokenGates.all().filter(broken -> broken.how().equals("a fixed opening that grows")))
                .extracting(broken -> Conformance.check(broken.type()).get(0).how())
                .singleElement()
                .asString()
                .matches("the answer to .*, asked again, is .* m² at " + Setting.none() + ", before .* m² at "
                        + Setting.none());
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
                .containsExactly("described-parameters: the example {width=24 in} is refused: parameter must be one of"
                        + " pitch, share, teeth: \"width\"");
        assertThat(Conformance.check(new LawfulGate(), noQuantity))
                .extracting(Violation::toString)
                .containsExactly("described-parameters: the example {dead=0 in, width=wide} is refused:"
                        + " width must be a quantity from 2 in to 5 ft: wide (String)");
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
