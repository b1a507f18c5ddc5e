package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.curve.DischargeCurveSamples.mark;

import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.assertj.core.data.Offset;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.metering.TableGate;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PlainGate;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Gates with three marks, 1, 3 and 5; areas in cm². */
class ContinuedGeometryTest {
    private static final Offset<Double> CLOSE = within(1e-6);

    private static ContinuedGeometry marked(double atOne, double atThree, double atFive) {
        Spreader spreader = DischargeCurveSamples.chainWith(Gate.of(
                TableGate.bySetting(),
                Map.of(
                        "settings",
                        List.of(mark(1), mark(3), mark(5)),
                        "areas",
                        List.of(area(atOne), area(atThree), area(atFive)))));
        return new ContinuedGeometry(spreader.sweptByOpening());
    }

    private static Quantity<?> area(double squareCentimeters) {
        return Amounts.of(squareCentimeters * 1e-4, SpreadingUnits.SQUARE_METER);
    }

    /** Relative to what is swept at the first mark. */
    private static double swept(ContinuedGeometry geometry, double mark) {
        return geometry.applyAsDouble(mark) / geometry.applyAsDouble(1);
    }

    @Test
    void betweenTheMarksItIsTheGate() {
        ContinuedGeometry geometry = marked(100, 140, 240);

        assertThat(swept(geometry, 3)).isCloseTo(1.4, CLOSE);
        assertThat(swept(geometry, 5)).isCloseTo(2.4, CLOSE);
    }

    @Test
    void beyondTheLastMarkItGoesOnAsSteeplyAsItEnds() {
        assertThat(swept(marked(100, 140, 240), 7)).isCloseTo(3.4, CLOSE);
    }

    @Test
    void belowTheFirstMarkItGoesOnAsSteeplyAsItBegins() {
        assertThat(swept(marked(100, 140, 240), 0)).isCloseTo(0.8, CLOSE);
        assertThat(swept(marked(100, 140, 240), -2)).isCloseTo(0.4, CLOSE);
    }

    @Test
    void itIsNeverBelowNothing() {
        assertThat(marked(100, 140, 240).applyAsDouble(-20)).isZero();
    }

    @Test
    void aReadingMayBeOffByTheWholeRangeOfTheGate() {
        assertThat(marked(100, 140, 240).lowest()).isCloseTo(-3, CLOSE);
        assertThat(marked(100, 140, 240).highest()).isCloseTo(9, CLOSE);
    }

    @Test
    void aGateThatCanBeSetToOneHeightOnlyIsAskedForNoOther() {
        double meters = 0.1;
        GateType one = new PlainGate("one-height") {
            @Override
            public GateShape shape(Parameters given) {
                Quantity<Length> height = Amounts.of(meters, SpreadingUnits.METER);
                return GateShape.byOpening(height, height, opening -> {
                    if (opening != meters) {
                        throw new IllegalArgumentException("asked for " + opening);
                    }
                    return 0.05;
                });
            }
        };
        ContinuedGeometry geometry = new ContinuedGeometry(
                DischargeCurveSamples.chainWith(Gate.of(one, Map.of())).sweptByOpening());

        assertThat(geometry.applyAsDouble(2 * meters)).isEqualTo(geometry.applyAsDouble(meters));
        assertThat(geometry.applyAsDouble(meters / 2)).isEqualTo(geometry.applyAsDouble(meters));
        assertThat(geometry.lowest()).isEqualTo(meters);
        assertThat(geometry.highest()).isEqualTo(meters);
    }

    @Test
    void butNotByMoreThanWhereItWouldBeShut() {
        assertThat(marked(100, 300, 500).lowest()).isCloseTo(0, CLOSE);
    }
}
