package org.gritwright.core.conformance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.inches;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.measure.quantity.Length;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.TableGate;
import org.gritwright.core.record.JsonConformance;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.SpreaderType;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The law that is checked where documents are known. */
@Tag("jackson")
@Tag("locale")
class JsonRoundTripTest {
    /** Longer than any text that a document may hold. */
    /** One that no document takes for the name of a field. */
    private static final Parameter<Length> UNWRITABLE = Parameter.length(
                    "a".repeat(DocumentLimits.COMMON.nameLength() + 1), inches(1), inches(9))
            .withDefault(inches(2));

    private static final LawfulConveyor UNWRITABLE_CONVEYOR = new LawfulConveyor() {
        @Override
        public List<Parameter<?>> parameters() {
            return List.of(PITCH, TEETH, SHARE, UNWRITABLE);
        }

        @Override
        public SweptVolume sweptVolume(Parameters given) {
            double meters = given.si(UNWRITABLE) * meters(given);
            return area -> area * meters;
        }
    };

    private static final LawfulGate UNWRITABLE_GATE = new LawfulGate() {
        @Override
        public List<Parameter<?>> parameters() {
            return List.of(WIDTH, DEAD, UNWRITABLE);
        }

        @Override
        public GateShape shape(Parameters given) {
            return shape(given, area(given.si(WIDTH) + given.si(UNWRITABLE), given.si(DEAD)));
        }
    };

    static Stream<SpreaderType> builtIn() {
        return BuiltInTypes.registry().all().stream();
    }

    /** All but those that don't tell their parameters: they can't be tried. */
    static Stream<SpreaderType> otherwiseBroken() {
        return Stream.of(
                        BrokenConveyors.all()
                                .filter(broken -> broken.law() != Law.DESCRIBED_PARAMETERS
                                        && broken.type().id() != null)
                                .map(BrokenConveyors.Broken::type),
                        BrokenGates.all()
                                .filter(broken -> broken.law() != Law.DESCRIBED_PARAMETERS)
                                .map(BrokenGates.Broken::type),
                        BrokenPumps.all()
                                .filter(broken -> broken.law() != Law.DESCRIBED_PARAMETERS)
                                .map(BrokenPumps.Broken::type),
                        BrokenFlowMeters.all()
                                .filter(broken -> broken.law() != Law.DESCRIBED_PARAMETERS)
                                .map(BrokenFlowMeters.Broken::type))
                .flatMap(types -> types);
    }

    @ParameterizedTest
    @MethodSource("builtIn")
    void everyBuiltInTypeSurvivesADocument(SpreaderType type) {
        assertThat(JsonConformance.check(type)).isEmpty();
    }

    @Test
    void soDoTablesOfAnyLength() {
        assertThat(JsonConformance.check(
                        TableGate.byOpening(),
                        List.of(Map.of(
                                "openings",
                                List.of(inches(0), inches(2.5)),
                                "areas",
                                List.of(
                                        Amounts.of(0, SpreadingUnits.SQUARE_METER),
                                        Amounts.of(1.0 / 3, SpreadingUnits.SQUARE_METER))))))
                .isEmpty();
    }

    @Test
    void whoCanNotBeWrittenIsNamed() {
        assertThat(JsonConformance.check(UNWRITABLE_CONVEYOR))
                .extracting(Violation::law)
                .containsExactly(Law.JSON_ROUND_TRIP);
        assertThat(JsonConformance.check(UNWRITABLE_GATE))
                .extracting(Violation::law)
                .containsExactly(Law.JSON_ROUND_TRIP);
    }

    @Test
    void whoCanNotBeWrittenMayObeyTheOtherLaws() {
        assertThat(Conformance.check(UNWRITABLE_CONVEYOR)).isEmpty();
        assertThat(Conformance.check(UNWRITABLE_GATE)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("otherwiseBroken")
    void whoBreaksAnotherLawIsNotAccusedOfThisOne(SpreaderType type) {
        assertThat(JsonConformance.check(type)).isEmpty();
    }

    @Test
    void anExampleThatTheDeclarationRefusesIsNamed() {
        assertThat(JsonConformance.check(new LawfulGate(), List.of(Map.of("width", inches(1), "dead", inches(0)))))
                .extracting(Violation::toString)
                .containsExactly("json-round-trip: width must be within 2 in to 5 ft: 1 in, with the parameters [dead,"
                        + " width]");
    }

    @Test
    void thereIsOneViolationAtMost() {
        List<Map<String, Object>> examples =
                List.of(Map.of("width", inches(1)), Map.of("width", "wide"), Map.of("length", inches(1)));

        assertThat(JsonConformance.check(new LawfulGate(), examples)).hasSize(1);
    }
}
