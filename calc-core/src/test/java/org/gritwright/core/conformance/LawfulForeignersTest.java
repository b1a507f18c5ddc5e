package org.gritwright.core.conformance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.units.SpreadingUnits.CELSIUS;
import static org.gritwright.units.SpreadingUnits.FAHRENHEIT;
import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.List;
import java.util.Map;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import org.gritwright.core.record.JsonConformance;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Unusual types that obey the laws; none is accused. */
@Tag("jackson")
class LawfulForeignersTest {
    private static void assertLawful(ConveyorType type) {
        assertThat(Conformance.check(type)).isEmpty();
        assertThat(JsonConformance.check(type)).isEmpty();
    }

    private static void assertLawful(GateType type) {
        assertThat(Conformance.check(type)).isEmpty();
        assertThat(JsonConformance.check(type)).isEmpty();
    }

    @Test
    void aConveyorThatNoGateMeters() {
        assertLawful(new LawfulConveyor() {
            @Override
            public boolean meteredByGate() {
                return false;
            }

            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double volume = meters(given) * 1e-3;
                return area -> volume;
            }
        });
    }

    @Test
    void aConveyorThatNoGateMetersOffByARounding() {
        assertLawful(new LawfulConveyor() {
            @Override
            public boolean meteredByGate() {
                return false;
            }

            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double volume = meters(given) * 1e3;
                return area -> volume * (area == 0.1 ? 1 - 1e-14 : 1);
            }
        });
    }

    @Test
    void aConveyorThatIsFullFromSomeAreaOn() {
        assertLawful(new LawfulConveyor() {
            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double meters = meters(given);
                return area -> meters * Math.min(area, 0.1);
            }
        });
    }

    @Test
    void aParameterOnAScaleWithAnotherZero() {
        Parameter<Temperature> oil =
                Parameter.of("oil", Temperature.class, Amounts.of(-40, FAHRENHEIT), Amounts.of(120, CELSIUS));
        assertLawful(new LawfulConveyor() {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(oil);
            }

            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double meters = 1 + given.si(oil) / 1000;
                return area -> area * meters;
            }
        });
    }

    @Test
    void aRangeOfOneValueAndOneAsWideAsNumbersGo() {
        Parameter<Dimensionless> pinned =
                Parameter.of("pinned", Dimensionless.class, Amounts.of(3, ONE), Amounts.of(3, ONE));
        Parameter<Dimensionless> vast = Parameter.of(
                "vast", Dimensionless.class, Amounts.of(-Double.MAX_VALUE, ONE), Amounts.of(Double.MAX_VALUE, ONE));
        assertLawful(new LawfulConveyor() {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(pinned, vast);
            }

            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double meters = given.si(pinned) + Math.signum(given.si(vast));
                return area -> area * meters;
            }
        });
    }

    @Test
    void aRangeThatIsNarrowBesideItsNumbers() {
        Parameter<Dimensionless> narrow =
                Parameter.of("narrow", Dimensionless.class, Amounts.of(1e6, ONE), Amounts.of(Math.nextUp(1e6), ONE));
        assertLawful(new LawfulConveyor() {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(narrow);
            }

            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double meters = given.si(narrow);
                return area -> area * meters;
            }
        });
    }

    @Test
    void limitsThatAreQuantitiesOfAnotherMake() {
        Parameter<Length> reach = Parameter.length("reach", foreign(10, MILLIMETER), foreign(1, METER));
        assertLawful(new LawfulConveyor() {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(reach);
            }

            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double meters = given.si(reach);
                return area -> area * meters;
            }
        });
    }

    @Test
    void parametersMadeAnewEachTime() {
        assertLawful(new LawfulConveyor() {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(
                        Parameter.length("pitch", Amounts.of(10, MILLIMETER), Amounts.of(1, METER)), TEETH, SHARE);
            }
        });
    }

    @Test
    void valuesThatOnlyGoTogetherSometimes() {
        Parameter<Length> inner = Parameter.length("inner", inches(1), inches(10));
        Parameter<Length> outer = Parameter.length("outer", inches(1), inches(10));
        ConveyorType type = new LawfulConveyor() {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(inner, outer);
            }

            @Override
            public SweptVolume sweptVolume(Parameters given) {
                double meters = given.si(outer) - given.si(inner);
                if (!(meters > 1e-9)) {
                    throw new InvalidInputException("inner", "smaller", Amounts.format(given.get(inner)));
                }
                return area -> area * meters;
            }
        };

        assertLawful(type);
    }

    @Test
    void aClosedPositionThatWasConverted() {
        assertLawful(new LawfulGate() {
            @Override
            public GateShape shape(Parameters given) {
                GateShape.Adjustable shape = shape(given, area(given.si(WIDTH), given.si(DEAD)));
                double millimeters = Amounts.in(given.get(DEAD), MILLIMETER);
                return GateShape.adjustable(shape.lowest(), shape.highest(), shape.area())
                        .closedAt(Amounts.of(Math.nextUp(millimeters), MILLIMETER));
            }
        });
    }

    @Test
    void aGateThatOpensInNotches() {
        assertLawful(new LawfulGate() {
            @Override
            public GateShape shape(Parameters given) {
                double width = given.si(WIDTH);
                double notch = (0.3048 - given.si(DEAD)) / 8;
                return GateShape.byOpening(
                        Amounts.of(0, METER),
                        Amounts.of(8 * notch, METER),
                        opening -> width * notch * (1 + Math.floor(opening / notch)));
            }
        });
    }

    @Test
    void aGateSetByMarks() {
        Parameter<Dimensionless> marks = Parameter.wholeNumber("marks", 1, 12);
        assertLawful(new LawfulGate() {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(marks);
            }

            @Override
            public GateShape shape(Parameters given) {
                return GateShape.adjustable(Setting.mark(0), Setting.mark(given.si(marks)), mark -> 0.01 * mark)
                        .closedAt(Setting.mark(0));
            }
        });
    }

    @Test
    void aGateSetInPercent() {
        Parameter<Dimensionless> least =
                Parameter.of("least", Dimensionless.class, Amounts.of(1, PERCENT), Amounts.of(20, PERCENT));
        assertLawful(new LawfulGate() {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(WIDTH, least);
            }

            @Override
            public GateShape shape(Parameters given) {
                double width = given.si(WIDTH);
                Setting lowest = Setting.percent(Amounts.in(given.get(least), PERCENT));
                return GateShape.adjustable(lowest, Setting.percent(100), ratio -> width * 0.3 * ratio);
            }
        });
    }

    @Test
    void aGateWithOneOpeningOnly() {
        assertLawful(new LawfulGate() {
            @Override
            public GateShape shape(Parameters given) {
                double area = given.si(WIDTH) * (0.1 + given.si(DEAD));
                return GateShape.byOpening(inches(4), inches(4), opening -> area);
            }
        });
    }

    @Test
    void anotherInstanceThatGoesByAnotherName() {
        assertLawful(new ByName());
    }

    /** Its instances are different types, and the one that anybody can make is another than the one under trial. */
    public static final class ByName extends LawfulConveyor {
        private static int made;
        private final int version = ++made;

        public ByName() {}

        @Override
        public org.gritwright.core.spi.TypeId id() {
            return org.gritwright.core.spi.TypeId.of("example.org/by-name", version);
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = meters(given) * version;
            return area -> area * meters;
        }
    }

    @Test
    void aListWithExamples() {
        Parameter<Length> steps =
                Parameter.length("steps", inches(0), inches(10)).asList(3, 3);
        GateType type = new LawfulGate() {
            @Override
            public List<Parameter<?>> parameters() {
                return List.of(steps);
            }

            @Override
            public GateShape shape(Parameters given) {
                double[] meters = given.list(steps).stream()
                        .mapToDouble(step -> Amounts.si(Length.class, step))
                        .toArray();
                if (!(meters[0] > meters[1])) {
                    throw new InvalidInputException("steps", "falling", String.valueOf(meters[1]));
                }
                return GateShape.byOpening(inches(0), inches(10), opening -> opening * meters[0]);
            }
        };
        List<Map<String, Object>> examples = List.of(Map.of("steps", List.of(inches(9), inches(5), inches(1))));

        assertThat(Conformance.check(type)).extracting(Violation::law).containsExactly(Law.DESCRIBED_PARAMETERS);
        assertThat(Conformance.check(type, examples)).isEmpty();
        assertThat(JsonConformance.check(type, examples)).isEmpty();
    }
}
