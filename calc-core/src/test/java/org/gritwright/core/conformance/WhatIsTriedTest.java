package org.gritwright.core.conformance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.inches;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Where and with what the kit asks a type, and in which words it tells of it. */
class WhatIsTriedTest {

    /** A gate of a shape. */
    private abstract static class Shaped extends LawfulGate {
        abstract GateShape shaped(Parameters given);

        @Override
        public GateShape shape(Parameters given) {
            given.si(WIDTH);
            given.si(DEAD);
            return shaped(given);
        }
    }

    private static boolean isInInches(Parameters given) {
        return given.get(LawfulGate.WIDTH).getUnit().equals(SpreadingUnits.INCH);
    }

    @Test
    void aGateIsAskedWithinItsLimitsOnly() {
        assertThat(Conformance.check(new Shaped() {
                    @Override
                    GateShape shaped(Parameters given) {
                        return GateShape.adjustable(Setting.percent(8), Setting.percent(100), ratio -> {
                            if (ratio < 0.08 || ratio > 1) {
                                throw new InvalidInputException("ratio", "within 0.08 to 1", String.valueOf(ratio));
                            }
                            return ratio;
                        });
                    }
                }))
                .isEmpty();
    }

    @Test
    void aStepThatIsMissedByARoundingInOtherUnitsIsNoBreach() {
        assertThat(Conformance.check(new Shaped() {
                    @Override
                    GateShape shaped(Parameters given) {
                        double step = 0.15;
                        double highest = isInInches(given) ? 2 * step : Math.nextDown(2 * step);
                        return GateShape.byOpening(
                                inches(0),
                                Amounts.of(highest, SpreadingUnits.METER),
                                opening -> opening >= step ? 0.2 : 0.1);
                    }
                }))
                .isEmpty();
    }

    @Test
    void aLimitThatIsAMillionthOfAMillimeterHigherInOtherUnitsIsOne() {
        assertThat(Conformance.check(new Shaped() {
                    @Override
                    GateShape shaped(Parameters given) {
                        double highest = isInInches(given) ? 0.3 : 0.3 + 1e-9;
                        return GateShape.byOpening(
                                inches(0), Amounts.of(highest, SpreadingUnits.METER), opening -> 0.1);
                    }
                }))
                .extracting(Violation::law)
                .containsExactly(Law.UNIT_INVARIANT);
    }

    @Test
    void aClosedPositionThatTheGateItselfRefusesIsNamed() {
        Quantity<Length> closed = inches(1);
        double meters = Amounts.si(Length.class, closed);

        assertThat(Conformance.check(new Shaped() {
                    @Override
                    GateShape shaped(Parameters given) {
                        return GateShape.byOpening(inches(0), inches(12), opening -> {
                                    if (opening == meters) {
                                        throw new InvalidInputException("opening", "not 1 in", "1 in");
                                    }
                                    return Math.max(0, opening - meters);
                                })
                                .closedAt(closed);
                    }
                }))
                .extracting(Violation::toString)
                .containsExactly("settable-limits: its own closed position, 1 in, is refused: opening must be not 1 in:"
                        + " 1 in, with {dead=1.5 in, width=31 in}");
    }

    @Test
    @Tag("locale")
    void ofAFixedGateThereIsNoSettingToName() {
        AtomicInteger asked = new AtomicInteger();

        assertThat(Conformance.check(new Shaped() {
                    @Override
                    GateShape shaped(Parameters given) {
                        Quantity<Area> area = Amounts.of(0.1 * asked.incrementAndGet(), SpreadingUnits.SQUARE_METER);
                        return GateShape.fixed(area);
                    }
                }))
                .extracting(Violation::how)
                .first()
                .asString()
                .startsWith("the answer to {dead=1.5 in, width=31 in}, asked again, is 0.6")
                .contains(" m² at no setting, before 0.1 m² at no setting");
    }

    @Test
    void parametersThatAreWrongAreTriedNoFurther() {
        AtomicInteger asked = new AtomicInteger();
        ConveyorType changing = new LawfulConveyor() {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(
                        PITCH, TEETH, SHARE.withDefault(Amounts.of(asked.incrementAndGet(), SpreadingUnits.PERCENT)));
            }

            @Override
            public SweptVolume sweptVolume(Parameters given) {
                return area -> Double.NaN;
            }
        };

        assertThat(Conformance.check(changing))
                .extracting(Violation::toString)
                .containsExactly("described-parameters: parameters() is not the same when asked again");
    }

    @Test
    void ofParametersThatAreWrongItIsSaidHow() {
        assertThat(Conformance.check(new LawfulConveyor() {
                    @Override
                    public List<Parameter<?>> parameters() {
                        return List.of(PITCH, TEETH, SHARE, PITCH);
                    }

                    @Override
                    public SweptVolume sweptVolume(Parameters given) {
                        return area -> Double.NaN;
                    }
                }))
                .extracting(Violation::toString)
                .containsExactly("described-parameters: parameters() has \"pitch\" twice");
        assertThat(Conformance.check(new LawfulConveyor() {
                    @Override
                    public List<Parameter<?>> parameters() {
                        return Arrays.asList(PITCH, null);
                    }
                }))
                .extracting(Violation::toString)
                .containsExactly("described-parameters: parameters() has a null in it");
    }

    /** A gate whose table isn't read with the limits of its items. */
    private static final class Table extends LawfulGate {
        private static final Parameter<Length> STEPS =
                Parameter.length("steps", inches(1), inches(10)).asList(2, 5);

        @Override
        public List<Parameter<?>> parameters() {
            return List.of(STEPS);
        }

        @Override
        public GateShape shape(Parameters given) {
            double meters = given.asMap().get("steps").stream()
                    .mapToDouble(step -> Amounts.si(Length.class, step.asType(Length.class)))
                    .max()
                    .orElseThrow();
            return GateShape.byOpening(inches(0), inches(10), opening -> opening * meters);
        }
    }

    @Test
    void theItemsOfAListAreTriedPastTheirLimits() {
        assertThat(Conformance.check(new Table())).extracting(Violation::law).containsExactly(Law.ENFORCED_LIMITS);
    }

    /** It takes an example only, which leaves out the share, and any pitch. */
    private static final class Particular extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            if (given.si(TEETH) != 7) {
                throw new InvalidInputException("teeth", "7", Amounts.format(given.get(TEETH)));
            }
            double pitch =
                    Amounts.si(Length.class, given.asMap().get("pitch").get(0).asType(Length.class));
            double meters = pitch * (1 - given.si(SHARE));
            return area -> area * meters;
        }
    }

    @Test
    void anExampleIsTriedPastItsLimitsWithTheDefaultsThatItLeavesOut() {
        Map<String, Object> example = Map.of("pitch", inches(7), "teeth", Amounts.of(7, SpreadingUnits.ONE));

        assertThat(Conformance.check(new Particular(), List.of(example)))
                .extracting(Violation::toString)
                .singleElement()
                .asString()
                .startsWith("enforced-limits: an answer to {pitch=")
                .endsWith(" mm, share=5 %, teeth=7}");
    }

    @Test
    void whatHasNoTextIsNamedByItsClass() {
        Object mute = new Object() {
            @Override
            public String toString() {
                throw new IllegalStateException("no text");
            }
        };

        assertThat(Conformance.check(new LawfulGate(), List.of(Map.of("width", mute, "dead", inches(0)))))
                .extracting(Violation::how)
                .singleElement()
                .asString()
                .isEqualTo("java.lang.IllegalStateException: no text for {dead=0 in, width=a "
                        + mute.getClass().getName() + "}");
    }

    private static final AtomicReference<Thread> ASKING = new AtomicReference<>();
    private static final AtomicBoolean DISTURBED = new AtomicBoolean();

    /** Its function interrupts whoever waits for the answers of several threads, and keeps the threads waiting. */
    private static final class Disturbing extends LawfulConveyor {
        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = meters(given);
            return area -> {
                Thread asking = ASKING.get();
                if (Thread.currentThread() != asking && !DISTURBED.getAndSet(true)) {
                    asking.interrupt();
                    try {
                        Thread.sleep(20_000);
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                }
                return area * meters;
            };
        }
    }

    @Test
    void anInterruptionWhileThreadsAreWaitedForStays() {
        ASKING.set(Thread.currentThread());
        DISTURBED.set(false);

        List<Violation> violations = Conformance.check(new Disturbing());

        assertThat(Thread.interrupted()).isTrue();
        assertThat(violations).extracting(Violation::law).containsExactly(Law.DETERMINISTIC);
    }
}
