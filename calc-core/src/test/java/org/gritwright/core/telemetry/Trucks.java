package org.gritwright.core.telemetry;

import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.chainAt;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Trucks with 100 pulses a revolution, and their rows. */
final class Trucks {
    static final Instant START = Instant.parse("2026-11-01T12:00:00Z");
    static final Instant FROM = START.minusSeconds(86_400);
    static final Instant UNTIL = START.plusSeconds(200L * 86_400);
    static final long T0 = START.toEpochMilli();

    /** 100 pulses a second at most: 60 rev/min. */
    static final Counter COUNTER = Counter.ofShaft(
            Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION), Amounts.of(60, SpreadingUnits.REVOLUTION_PER_MINUTE));

    private Trucks() {}

    static CalibrationInForce value(CalibrationPoint point, double kilogramsPerRevolution) {
        return CalibrationInForce.of(
                point,
                CalibrationFactor.of(Amounts.of(kilogramsPerRevolution, SpreadingUnits.KILOGRAM_PER_REVOLUTION)),
                Optional.empty());
    }

    /** 2.5 kg/rev of the auger, 25 000 mg a pulse, from the start on. */
    static TimelineEntry auger() {
        return TimelineEntry.value(START, value(AUGER_POINT, 2.5));
    }

    static TimelineEntry chain(Instant from, double inches, double kilogramsPerRevolution) {
        return TimelineEntry.value(
                from, value(chainAt(inches), kilogramsPerRevolution).inSlot("1"));
    }

    static RowEvaluator plain() {
        return evaluator(COUNTER, auger());
    }

    static RowEvaluator evaluator(Counter counter, TimelineEntry... entries) {
        return RowEvaluator.compile(Timeline.of(List.of(entries)), counter, FROM, UNTIL);
    }

    static Counter rollingOverAt(long count) {
        return COUNTER.rollingOverAt(Amounts.of((double) count, SpreadingUnits.PULSE));
    }

    /** Rows in equal steps of seconds. */
    static Rows every(double seconds, long... counts) {
        long[] times = new long[counts.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = T0 + Math.round(1000 * seconds * (double) i);
        }
        return Rows.of(times, counts);
    }

    /** What became of rows. */
    record Done(List<Long> amounts, List<RowStatus> statuses, RowSums sums) {}

    static Done evaluated(RowEvaluator evaluator, Rows rows) {
        long[] amounts = new long[rows.size()];
        byte[] statuses = new byte[rows.size()];
        RowSums sums = evaluator.sums();
        evaluator.evaluate(rows, 0, rows.size(), evaluator.start(), sums, amounts, statuses);
        return done(amounts, statuses, sums);
    }

    /** The same, one row after the other. */
    static Done stepped(RowEvaluator evaluator, Rows rows) {
        long[] amounts = new long[rows.size()];
        byte[] statuses = new byte[rows.size()];
        RowSums sums = evaluator.sums();
        RowState state = evaluator.start();
        for (int i = 0; i < rows.size(); i++) {
            statuses[i] = evaluator
                    .step(state, sums, rows.times()[i], rows.counts()[i], rows.setting(i), rows.slot(i), rows.mode(i))
                    .code();
            amounts[i] = state.amount();
        }
        return done(amounts, statuses, sums);
    }

    private static Done done(long[] amounts, byte[] statuses, RowSums sums) {
        List<Long> all = new ArrayList<>();
        List<RowStatus> became = new ArrayList<>();
        for (int i = 0; i < amounts.length; i++) {
            all.add(amounts[i]);
            became.add(RowStatus.of(statuses[i]));
        }
        return new Done(all, became, sums);
    }
}
