package org.gritwright.core.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.CHAIN;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.SENSOR;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.height;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pulses;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PlainGate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Cost, counted in areas that a gate was asked for: it tells the same on every machine, however busy. */
class DischargeCurveCostTest {
    private static final AtomicLong AREAS = new AtomicLong();

    /** 24 in wide. It counts, as no real type may. */
    private static final class CountingGate extends PlainGate {
        CountingGate() {
            super("counting-gate");
        }

        @Override
        public GateShape shape(Parameters given) {
            return GateShape.byOpening(inches(0.1), inches(40), meters -> {
                AREAS.incrementAndGet();
                return meters * 24 * 0.0254;
            });
        }
    }

    private static final Spreader COUNTING =
            new Spreader(CHAIN.conveyor(), Gate.of(new CountingGate(), Map.of()), SENSOR);

    /** Openings from 1 in to 5 in, two catches each, one opening off by a tenth. */
    private static List<CalibrationCatch> catches(int openings) {
        List<CalibrationCatch> catches = new ArrayList<>();
        for (int i = 0; i < openings; i++) {
            double inches = 1 + 4.0 * i / openings;
            double off = i == openings / 3 ? 1.1 : 1;
            for (double factor : new double[] {0.998, 1.003}) {
                catches.add(catchAt(
                        CalibrationPoint.of(SALT, COUNTING, height(inches)),
                        caught(160 * (inches - 0.2) * off * factor),
                        pulses(1000)));
            }
        }
        return catches;
    }

    private static long areas(Runnable work) {
        long before = AREAS.get();
        work.run();
        return AREAS.get() - before;
    }

    @ParameterizedTest
    @EnumSource
    void aCurveThroughTwiceTheOpeningsCostsTwice(CurveModel model) {
        List<CalibrationCatch> some = catches(64);
        List<CalibrationCatch> twice = catches(128);
        long ofSome = areas(() -> DischargeCurve.fit(some, model));
        long ofTwice = areas(() -> DischargeCurve.fit(twice, model));

        assertThat(ofSome).isPositive();
        assertThat((double) ofTwice / ofSome).isBetween(1.5, 2.2);
    }

    @Test
    void aCurveChosenByTestThroughTwiceTheOpeningsCostsTwice() {
        List<CalibrationCatch> some = catches(64);
        List<CalibrationCatch> twice = catches(128);
        long ofSome = areas(() -> DischargeCurve.chosenByTest(some, CurveModel.DEAD_OPENING));
        long ofTwice = areas(() -> DischargeCurve.chosenByTest(twice, CurveModel.DEAD_OPENING));

        assertThat((double) ofTwice / ofSome).isBetween(1.5, 2.2);
    }

    @ParameterizedTest
    @EnumSource
    void aPredictionCostsTheSameHoweverManyCatchesThereAre(CurveModel model) {
        DischargeCurve ofSome = DischargeCurve.fit(catches(8), model);
        DischargeCurve ofMany = DischargeCurve.fit(catches(128), model);

        assertThat(areas(() -> ofMany.predict(height(3.01), inches(0.05))))
                .isEqualTo(areas(() -> ofSome.predict(height(3.01), inches(0.05))))
                .isLessThan(30);
    }
}
