package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.telemetry.Trucks.COUNTER;
import static org.gritwright.core.telemetry.Trucks.START;
import static org.gritwright.core.telemetry.Trucks.auger;
import static org.gritwright.core.telemetry.Trucks.chain;
import static org.gritwright.core.telemetry.Trucks.evaluated;
import static org.gritwright.core.telemetry.Trucks.evaluator;
import static org.gritwright.core.telemetry.Trucks.every;

import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Volume;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class AppliedTotalTest {
    private static double uncertainty(RowEvaluator evaluator, Rows rows) {
        return Amounts.in(
                evaluator
                        .total(evaluated(evaluator, rows).sums())
                        .mass(SpreadingUnits.GRAM)
                        .standardUncertainty()
                        .orElseThrow(),
                SpreadingUnits.GRAM);
    }

    /** 25 g a pulse, 1/√12 pulse a reading; the reading between two rows that are counted alike doesn't matter. */
    @Test
    void aRunOfRowsIsAsUncertainAsItsFirstAndItsLastReading() {
        double reading = 25 / Math.sqrt(12);

        assertThat(uncertainty(Trucks.plain(), every(1, 0, 10, 20, 30)))
                .isCloseTo(Math.sqrt(2) * reading, within(1e-9));
        assertThat(uncertainty(Trucks.plain(), every(1, 0, 10))).isCloseTo(Math.sqrt(2) * reading, within(1e-9));
        // A restart ends a run and begins another.
        assertThat(uncertainty(Trucks.plain(), every(1, 50, 60, 5, 15))).isCloseTo(2 * reading, within(1e-9));
        assertThat(uncertainty(Trucks.plain(), every(1, 50))).isZero();
    }

    /** 25 g before and 50 g after: the reading between counts for the difference. */
    @Test
    void whereWhatAPulseStandsForChangesTheReadingCountsForTheDifference() {
        RowEvaluator changed = evaluator(COUNTER, chain(START, 4, 2.5), chain(START.plusSeconds(2), 4, 5));

        assertThat(uncertainty(changed, every(1, 0, 10, 20)))
                .isCloseTo(Math.sqrt((25 * 25 + 25 * 25 + 50 * 50) / 12.0), within(1e-9));
    }

    @Test
    void sharedErrorsDontAverageOutAndThoseOfOneIdAreOne() {
        RowEvaluator evaluator = evaluator(
                COUNTER, auger().withErrors(List.of(Totals.error("scale", 0.01), Totals.error("salt", 0.02))));
        AppliedTotal one =
                evaluator.total(evaluated(evaluator, every(1, 0, 100, 200)).sums());

        // 5 kg: 0.05 kg by the scale, 0.1 kg by the salt.
        assertThat(one.sharedErrors()).isEqualTo(Map.of("scale", 50_000L, "salt", 100_000L));
        AppliedTotal hundred = one;
        for (int i = 1; i < 100; i++) {
            hundred = hundred.plus(one);
        }
        assertThat(hundred.sharedErrors()).isEqualTo(Map.of("scale", 5_000_000L, "salt", 10_000_000L));
        assertThat(hundred.amount()).isEqualTo(500_000_000);
        assertThat(relative(hundred)).isCloseTo(Math.hypot(0.01, 0.02), within(1e-5));
        AppliedTotal other = new AppliedTotal(false, 5_000_000, Map.of("other", 50_000L), BigInteger.ZERO);
        assertThat(relative(other.plus(other))).isCloseTo(0.01, within(1e-12));
        assertThat(relative(other.plus(new AppliedTotal(false, 5_000_000, Map.of("third", 50_000L), BigInteger.ZERO))))
                .isCloseTo(0.01 / Math.sqrt(2), within(1e-12));
    }

    private static double relative(AppliedTotal total) {
        var mass = total.mass(SpreadingUnits.KILOGRAM);
        return Amounts.in(mass.standardUncertainty().orElseThrow(), SpreadingUnits.KILOGRAM)
                / Amounts.in(mass.value(), SpreadingUnits.KILOGRAM);
    }

    /** 1200 pulse/gal; a gallon has 3 785 411.784 µL (NIST SP 811). */
    @Test
    void aLiquidIsCountedInMicroliters() {
        CalibrationInForce value = CalibrationInForce.of(
                LiquidSamples.METER_POINT,
                CalibrationFactor.of(Amounts.of(1200, SpreadingUnits.PULSE_PER_US_GALLON)),
                Optional.empty());
        Counter counter = Counter.ofFlow(
                Amounts.of(1200, SpreadingUnits.PULSE_PER_US_GALLON),
                Amounts.of(60, SpreadingUnits.US_GALLON_PER_MINUTE));
        RowEvaluator meter = evaluator(counter, TimelineEntry.value(START, value));
        AppliedTotal total =
                meter.total(evaluated(meter, every(1, 0, 1200, 2400)).sums());

        assertThat(meter.isOfLiquids()).isTrue();
        assertThat(total.amount()).isEqualTo(7_570_824);
        Measured<Volume> volume = total.volume(SpreadingUnits.US_GALLON);
        assertThat(Amounts.in(volume.value(), SpreadingUnits.US_GALLON)).isCloseTo(2, within(1e-6));
        assertThatThrownBy(() -> total.mass(SpreadingUnits.KILOGRAM))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("total must be of grains: of a liquid");
        assertThatThrownBy(() -> new AppliedTotal(false, 1, Map.of(), BigInteger.ZERO).plus(total))
                .hasMessage("total to add must be of grains: the other kind");
    }

    @Test
    void aTotalThatWouldOverflowIsRefused() {
        AppliedTotal most = new AppliedTotal(false, Long.MAX_VALUE, Map.of(), BigInteger.ZERO);

        assertThatThrownBy(() -> most.plus(new AppliedTotal(false, 1, Map.of(), BigInteger.ZERO)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("total to add must be at most 9.2 × 10¹² kg in all");
        assertThatThrownBy(() -> new AppliedTotal(false, -1, Map.of(), BigInteger.ZERO))
                .hasMessage("amount laid must be 0 or more: -1");
        assertThatThrownBy(() -> new AppliedTotal(false, 1, Map.of(), BigInteger.valueOf(-1)))
                .hasMessageContaining("sum of squares");
    }

    @Test
    void aCountIsNoMoreThanATonne() {
        assertThat(evaluator(COUNTER, chain(START, 4, 100_000))).isNotNull();
        assertThatThrownBy(() -> chain(START, 4, 100_001))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("calibration in force must be at most 1 t or 1 m³ per pulse");
    }

    @Test
    void squaresAreSummedInManyBits() {
        WideSum sum = new WideSum();
        BigInteger exact = BigInteger.ZERO;
        for (long number : new long[] {1L << 62, -(1L << 61) - 1, 3, 1L << 40, (1L << 61) - 7}) {
            sum.addSquare(number);
            exact = exact.add(BigInteger.valueOf(number).pow(2));
        }
        assertThat(sum.value()).isEqualTo(exact);
        assertThat(sum).hasToString(exact.toString());
    }
}
