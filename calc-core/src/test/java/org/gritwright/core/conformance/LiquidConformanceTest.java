package org.gritwright.core.conformance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.conformance.LawfulFlowMeter.CUTOFF;
import static org.gritwright.core.conformance.LawfulFlowMeter.PULSE;
import static org.gritwright.core.conformance.LawfulPump.SIZE;
import static org.gritwright.core.conformance.LawfulPump.SLIP;
import static org.gritwright.core.conformance.LawfulPump.TOP;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.JsonConformance;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.PumpedVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The kit passes every lawful pump and flow-meter type and names the one law that a broken one breaks. */
@Tag("jackson")
class LiquidConformanceTest {
    static Stream<PumpType> builtInPumps() {
        return BuiltInTypes.registry().pumps().stream();
    }

    static Stream<FlowMeterType> builtInFlowMeters() {
        return BuiltInTypes.registry().flowMeters().stream();
    }

    static Stream<BrokenPumps.Broken> brokenPumps() {
        return BrokenPumps.all();
    }

    static Stream<BrokenFlowMeters.Broken> brokenFlowMeters() {
        return BrokenFlowMeters.all();
    }

    @ParameterizedTest
    @MethodSource("builtInPumps")
    void everyBuiltInPumpObeysTheLaws(PumpType type) {
        assertThat(Conformance.check(type)).isEmpty();
        assertThat(JsonConformance.check(type)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("builtInFlowMeters")
    void everyBuiltInFlowMeterObeysTheLaws(FlowMeterType type) {
        assertThat(Conformance.check(type)).isEmpty();
        assertThat(JsonConformance.check(type)).isEmpty();
    }

    /** From rev/min to SI units and back the largest number overflows. */
    @Test
    void aSpeedNearTheLargestNumberIsSaidAllTheSame() {
        PumpType endless = new LawfulPump() {
            @Override
            public PumpOutput output(Parameters given) {
                return PumpOutput.of(given.get(SIZE), speed -> -1)
                        .within(
                                Amounts.of(10, SpreadingUnits.REVOLUTION_PER_MINUTE),
                                Amounts.of(Double.MAX_VALUE, SpreadingUnits.REVOLUTION_PER_MINUTE));
            }
        };

        assertThat(Conformance.check(endless)).extracting(Violation::law).contains(Law.POSITIVE);
    }

    @Test
    void anOutsidersLawfulTypesPass() {
        assertThat(Conformance.check(new LawfulPump())).isEmpty();
        assertThat(Conformance.check(new LawfulFlowMeter())).isEmpty();
        assertThat(JsonConformance.check(new LawfulPump())).isEmpty();
        assertThat(JsonConformance.check(new LawfulFlowMeter())).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("brokenPumps")
    void ofABrokenPumpTheBrokenLawIsNamedAndNoOther(BrokenPumps.Broken broken) {
        assertThat(Conformance.check(broken.type())).extracting(Violation::law).containsExactly(broken.law());
    }

    @ParameterizedTest
    @MethodSource("brokenFlowMeters")
    void ofABrokenFlowMeterTheBrokenLawIsNamedAndNoOther(BrokenFlowMeters.Broken broken) {
        assertThat(Conformance.check(broken.type())).extracting(Violation::law).containsExactly(broken.law());
    }

    private static Set<Law> lawsThat(Predicate<Law> bind) {
        return Stream.of(Law.values())
                .filter(bind)
                .filter(law -> law != Law.JSON_ROUND_TRIP)
                .collect(Collectors.toSet());
    }

    @Test
    void eachLawHasABrokenTypeOfEachSortThatItBinds() {
        assertThat(BrokenPumps.all().map(BrokenPumps.Broken::law).collect(Collectors.toSet()))
                .isEqualTo(lawsThat(Law::bindsPumps));
        assertThat(BrokenFlowMeters.all().map(BrokenFlowMeters.Broken::law).collect(Collectors.toSet()))
                .isEqualTo(lawsThat(Law::bindsFlowMeters));
    }

    /** Lawful but for the volume, and known at any speed. */
    private static PumpType atAnySpeed(PumpedVolume volume) {
        return new LawfulPump() {
            @Override
            public PumpOutput output(Parameters given) {
                given.si(TOP);
                given.si(SLIP);
                return PumpOutput.of(given.get(SIZE), volume);
            }
        };
    }

    @Test
    @Tag("locale")
    void withoutAHighestSpeedItIsAskedFromRestToMoreThanAnyPumpTurns() {
        assertThat(Conformance.check(atAnySpeed(speed -> 1e-5))).isEmpty();
        assertThat(Conformance.check(atAnySpeed(speed -> speed == 0 ? 0 : 1e-5)))
                .extracting(Violation::toString)
                .containsExactly(
                        "positive: 0 m³/rev at 0 rev/min, with {size=250.5 mL/rev, slip=5 %, top=1550 rev/min}");
        assertThat(Conformance.check(atAnySpeed(speed -> speed < 100 ? 1e-5 : 4e-6)))
                .extracting(Violation::toString)
                .containsExactly("rising: 0.00039999999999999996 m³/s at 6000 rev/min, after 0.0005 m³/s, with"
                        + " {size=250.5 mL/rev, slip=5 %, top=1550 rev/min}");
    }

    @Test
    @Tag("locale")
    void aViolationOfAFlowMeterNamesTheFlow() {
        FlowMeterType slowing = new LawfulFlowMeter() {
            @Override
            public PulseOutput output(Parameters given) {
                given.si(CUTOFF);
                return PulseOutput.of(given.get(PULSE), flow -> flow < 0.1 ? 1e-3 : 1e-2);
            }
        };

        assertThat(Conformance.check(slowing))
                .extracting(Violation::toString)
                .containsExactly("rising: 10 pulse/s at 6000 L/min, after 30 pulse/s, with {cutoff=10.5 L/min,"
                        + " pulse=50.25 mL/pulse}");
    }

    @Test
    void aLimitThatTheTypeItselfRefusesIsQuoted() {
        assertThat(BrokenPumps.all().filter(broken -> broken.law() == Law.SETTABLE_LIMITS))
                .extracting(broken -> Conformance.check(broken.type()).get(0).how())
                .satisfiesExactly(
                        how -> assertThat(how)
                                .startsWith("its own highest speed, 1550 rev/min, is refused: speed must"),
                        how -> assertThat(how).startsWith("its own lowest speed, 1 rev/s, is refused: speed must be"));
        assertThat(BrokenFlowMeters.all().filter(broken -> broken.law() == Law.SETTABLE_LIMITS))
                .extracting(broken -> Conformance.check(broken.type()).get(0).how())
                .satisfiesExactly(
                        how -> assertThat(how).startsWith("its own highest flow, 240 L/min, is refused: flow must be"),
                        how -> assertThat(how).startsWith("its own lowest flow, 10.5 L/min, is refused: flow must be"));
    }

    @Test
    @Tag("locale")
    void whatLiesBetweenTheLimitsIsAskedEvenly() {
        PumpType withAHole = new LawfulPump() {
            @Override
            public PumpOutput output(Parameters given) {
                given.si(TOP);
                given.si(SLIP);
                return PumpOutput.of(given.get(SIZE), speed -> speed == 17 ? Double.NaN : 1e-5)
                        .within(
                                Amounts.of(1, SpreadingUnits.REVOLUTION_PER_SECOND),
                                Amounts.of(33, SpreadingUnits.REVOLUTION_PER_SECOND));
            }
        };

        assertThat(Conformance.check(withAHole))
                .extracting(Violation::toString)
                .containsExactly(
                        "finite: NaN m³/rev at 17 rev/s, with {size=250.5 mL/rev, slip=5 %, top=1550 rev/min}");
    }

    @Test
    void noTypeIsAskedOutsideItsLimitsNotEvenByRounding() {
        double lowest = 0.3;
        double highest = 0.9;
        PumpType strict = new LawfulPump() {
            @Override
            public PumpOutput output(Parameters given) {
                given.si(TOP);
                given.si(SLIP);
                return PumpOutput.of(given.get(SIZE), speed -> speed >= lowest && speed <= highest ? 1e-5 : Double.NaN)
                        .within(
                                Amounts.of(lowest, SpreadingUnits.REVOLUTION_PER_SECOND),
                                Amounts.of(highest, SpreadingUnits.REVOLUTION_PER_SECOND));
            }
        };

        assertThat(lowest + (highest - lowest)).as("by rounding").isGreaterThan(highest);
        assertThat(Conformance.check(strict)).isEmpty();
    }

    @Test
    void anotherDisplacementIsShownBesideTheFirst() {
        assertThat(BrokenPumps.all().filter(broken -> broken.how().equals("another displacement each time")))
                .extracting(broken -> Conformance.check(broken.type()).get(0).how())
                .singleElement()
                .asString()
                .endsWith(" is 17 mL/rev from 0 rev/min, before 10 mL/rev from 0 rev/min");
    }

    @Test
    void anExampleIsHeldAgainstTheLawsToo() {
        PumpType type = new LawfulPump() {
            @Override
            public PumpOutput output(Parameters given) {
                boolean isBad = given.si(SIZE) == 7e-6;
                double size = given.si(SIZE);
                return output(given, speed -> isBad ? -size : size);
            }
        };
        Map<String, Object> good = Map.of(
                "size",
                Amounts.of(8, SpreadingUnits.MILLILITER_PER_REVOLUTION),
                "top",
                Amounts.of(500, SpreadingUnits.REVOLUTION_PER_MINUTE));
        Map<String, Object> bad = Map.of(
                "size",
                Amounts.of(7, SpreadingUnits.MILLILITER_PER_REVOLUTION),
                "top",
                Amounts.of(500, SpreadingUnits.REVOLUTION_PER_MINUTE));

        assertThat(Conformance.check(type, List.of(good))).isEmpty();
        assertThat(Conformance.check(type, List.of(bad)))
                .extracting(Violation::law)
                .containsExactly(Law.POSITIVE);
        assertThat(Conformance.check(new LawfulFlowMeter(), List.of(Map.of("pulse", 2))))
                .extracting(Violation::law)
                .containsExactly(Law.DESCRIBED_PARAMETERS);
    }

    @Test
    void aTypeIsGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> Conformance.check((PumpType) null))
                .withMessage("type");
        assertThatNullPointerException()
                .isThrownBy(() -> Conformance.check((FlowMeterType) null))
                .withMessage("type");
    }
}
