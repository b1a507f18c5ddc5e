package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class HeldArraysTest {
    private final HeldArrays curve = HeldArrays.curve(
            5,
            9,
            new CurveTable(new double[] {1, 2, 3}, new double[] {100, 300, 400}, new double[] {0.01, 0.03, 0.02}),
            2,
            7,
            null);

    private static HeldArrays values(double... settings) {
        double[] perCounts = new double[settings.length];
        int[] shares = new int[settings.length];
        for (int i = 0; i < settings.length; i++) {
            perCounts[i] = 10 * (i + 1);
            shares[i] = i + 3;
        }
        return HeldArrays.values(0, 1, settings, perCounts, shares, new Drift[settings.length]);
    }

    @Test
    void anErrorThatGrewIsPartOfWhatTellsItApart() {
        HeldArrays grown = HeldArrays.curve(
                5,
                9,
                new CurveTable(new double[] {1, 2, 3}, new double[] {100, 300, 400}, new double[] {0.01, 0.03, 0.02}),
                2,
                7,
                new Drift(Onset.Gradually.WITH_TIME, 0.1, 5, 4));
        Fingerprint without = new Fingerprint();
        curve.addTo(without);
        Fingerprint with = new Fingerprint();
        grown.addTo(with);

        assertThat(with.value()).isNotEqualTo(without.value());
    }

    @Test
    void itHoldsFromItsBeginningToBeforeItsEnd() {
        assertThat(curve.holds(4)).isFalse();
        assertThat(curve.holds(5)).isTrue();
        assertThat(curve.holds(8)).isTrue();
        assertThat(curve.holds(9)).isFalse();
    }

    @Test
    void aCurveIsInterpolatedBetweenItsSettingsAndDividedByWhatWasFound() {
        assertThat(curve.place(1)).isZero();
        assertThat(curve.place(1.5)).isZero();
        assertThat(curve.place(2.5)).isEqualTo(1);
        assertThat(curve.perCount(0, 1)).isEqualTo(50);
        assertThat(curve.perCount(0, 1.5)).isEqualTo(100);
        assertThat(curve.perCount(1, 2.5)).isEqualTo(175);
        assertThat(curve.perCount(curve.place(3), 3)).isEqualTo(200);
        assertThat(curve.relativeParts(0, 1)).isEqualTo(Math.round(0.01 * 65_536));
        assertThat(curve.relativeParts(0, 1.5)).isEqualTo(Math.round(0.02 * 65_536));
        assertThat(curve.relativeParts(1, 2.5)).isEqualTo(Math.round(0.025 * 65_536));
        assertThat(curve.share(1)).isEqualTo(7);
        assertThat(curve.mostPerCount()).isEqualTo(200);
    }

    @Test
    void beyondItsSettingsACurveHoldsNothingButWhatUnitsLose() {
        // A millionth of the highest.
        assertThat(curve.place(1 - 2.9e-6)).isZero();
        assertThat(curve.place(1 - 3.1e-6)).isEqualTo(HeldArrays.NONE);
        assertThat(curve.place(3 + 2.9e-6)).isEqualTo(2);
        assertThat(curve.place(3 + 3.1e-6)).isEqualTo(HeldArrays.NONE);
        assertThat(curve.place(Double.NaN)).isEqualTo(HeldArrays.NONE);
        assertThat(curve.perCount(2, 3 + 2.9e-6)).isEqualTo(200);
    }

    @Test
    void ofValuesOneHoldsAtItsSettingAndUnitsMayLoseAMillionth() {
        HeldArrays three = values(1, 2, 4);
        assertThat(three.place(1)).isZero();
        assertThat(three.place(4)).isEqualTo(2);
        assertThat(three.place(1 - 0.9e-6)).isZero();
        assertThat(three.place(2 + 1.9e-6)).isEqualTo(1);
        assertThat(three.place(2 - 1.9e-6)).isEqualTo(1);
        assertThat(three.place(2 + 2.1e-6)).isEqualTo(HeldArrays.NONE);
        assertThat(three.place(4 + 3.9e-6)).isEqualTo(2);
        assertThat(three.place(4.1)).isEqualTo(HeldArrays.NONE);
        assertThat(three.place(0.5)).isEqualTo(HeldArrays.NONE);
        assertThat(three.perCount(1, 2)).isEqualTo(20);
        assertThat(three.relativeParts(1, 2)).isZero();
        assertThat(three.share(1)).isEqualTo(4);
        assertThat(three.mostPerCount()).isEqualTo(30);
    }

    @Test
    void whereNobodyKnowsTheSettingTheOnlyValueHolds() {
        assertThat(values(Double.NaN).place(7)).isZero();
        assertThat(values(2).place(Double.NaN)).isZero();
        assertThat(values(2).place(3)).isEqualTo(HeldArrays.NONE);
        assertThat(values(2, 3).place(Double.NaN)).isEqualTo(HeldArrays.NONE);
        assertThat(HeldArrays.nothing(0, 1).place(2)).isEqualTo(HeldArrays.NONE);
        assertThat(HeldArrays.nothing(0, 1).isNothing()).isTrue();
        assertThat(HeldArrays.nothing(0, 1).mostPerCount()).isZero();
        assertThat(values(2).isNothing()).isFalse();
    }

    private static CalibrationCatch caught(double inches, double pounds) {
        return Samples.catchAt(Samples.chainAt(inches), Samples.caught(pounds), Samples.pulses(500));
    }

    @Test
    void aLineIsATableOfThirtyTwoSteps() {
        DischargeCurve line = DischargeCurve.fit(
                List.of(caught(2, 150), caught(2, 151), caught(3, 230), caught(4, 312)), CurveModel.DEAD_OPENING);
        CurveTable table = CurveTable.of(line);

        assertThat(table.settings()).hasSize(33).isSorted();
        assertThat(table.settings()[0]).isEqualTo(line.lowestCaught().si());
        assertThat(table.settings()[32]).isEqualTo(line.highestCaught().si());
        for (int i = 0; i <= 32; i++) {
            assertThat(table.settings()[i]).isCloseTo(0.0254 * (2 + 2 * i / 32.0), within(1e-12));
        }
    }

    private static DischargeCurve bent(double... openings) {
        List<CalibrationCatch> catches = new ArrayList<>();
        for (double inches : openings) {
            catches.add(caught(inches, 20 * Math.pow(inches, 1.9)));
            catches.add(caught(inches, 20.1 * Math.pow(inches, 1.9)));
        }
        return DischargeCurve.fit(catches, CurveModel.TABLE);
    }

    private static void assertFollows(CurveTable table, DischargeCurve curve) {
        for (int i = 0; i + 1 < table.settings().length; i++) {
            double half = (table.settings()[i] + table.settings()[i + 1]) / 2;
            double there = 1e4
                    * Amounts.in(
                            curve.predict(curve.lowestCaught().withSi(half))
                                    .dischargePerRevolution()
                                    .value(),
                            SpreadingUnits.KILOGRAM_PER_REVOLUTION);
            assertThat((table.perCounts()[i] + table.perCounts()[i + 1]) / 2).isCloseTo(there, within(1e-4 * there));
        }
    }

    @Test
    void whereACurveBendsAtItsCaughtSettingsTheyAreInTheTable() {
        DischargeCurve curve = bent(1, 2, 3, 4);
        CurveTable table = CurveTable.of(curve);

        // 18 steps are the fewest from 16 on that meet thirds.
        assertThat(table.settings()).hasSize(37);
        assertThat(table.settings()[12]).isCloseTo(2 * 0.0254, within(1e-12));
        assertFollows(table, curve);
        for (double relative : table.relatives()) {
            assertThat(relative).isBetween(1e-4, 0.5);
        }
    }

    @Test
    void whereStepsCantMeetItsBendsTheyAreSmallEnough() {
        DischargeCurve curve = bent(1, 1 + 3 / Math.E, 4);
        CurveTable table = CurveTable.of(curve);

        assertThat(table.settings().length).isEqualTo(1 + 16 * 512);
        assertFollows(table, curve);
    }

    @Test
    void onlyAccurateTablesAreMade() {
        assertThatThrownBy(() -> CurveTable.of(
                        DischargeCurve.fit(List.of(caught(2, 150), caught(2, 151)), CurveModel.PROPORTIONAL)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("curve must be one caught at two settings or more");
    }
}
