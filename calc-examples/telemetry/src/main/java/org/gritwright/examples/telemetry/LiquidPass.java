package org.gritwright.examples.telemetry;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.telemetry.AppliedTotal;
import org.gritwright.core.telemetry.RowEvaluator;
import org.gritwright.core.telemetry.RowState;
import org.gritwright.core.telemetry.RowStatus;
import org.gritwright.core.telemetry.RowSums;

/**
 * The counter of the liquid that wets what a truck lays, row by row beside the shaft's. Of a truck that has none it takes nothing, and
 * what a counter without a calibration counts is told. For one thread.
 */
final class LiquidPass {
    private final Optional<RowEvaluator> evaluator;
    private final Buffers buffers;
    private final List<BadRow> badRows;
    private final Optional<RowState> state;
    private final Wetting wetting = new Wetting();
    private Optional<RowSums> all;
    private Optional<RowSums> ofRoad;
    private long lastReading = BadRow.NO_READING;

    LiquidPass(TruckSetup setup, Buffers buffers, List<BadRow> badRows) {
        this.evaluator = setup.liquid().map(TruckSetup.Liquid::counter);
        this.buffers = buffers;
        this.badRows = badRows;
        this.state = evaluator.map(RowEvaluator::start);
        this.all = evaluator.map(RowEvaluator::sums);
        this.ofRoad = all;
    }

    void enterRoad() {
        ofRoad = evaluator.map(RowEvaluator::sums);
    }

    /** Takes rows of one road, after the shaft's counter did. */
    void evaluate(int from, int to) {
        if (evaluator.isEmpty()) {
            noteUncalibrated(from, to);
            return;
        }
        evaluator
                .get()
                .evaluate(
                        buffers.liquidRows,
                        from,
                        to,
                        state.orElseThrow(),
                        ofRoad.orElseThrow(),
                        buffers.microliters,
                        buffers.liquidStatuses);
        for (int i = from; i < to; i++) {
            RowStatus status = RowStatus.of(buffers.liquidStatuses[i]);
            RowStatus dry = RowStatus.of(buffers.statuses[i]);
            if (!status.isCounted() && status != RowStatus.FIRST && status != dry) {
                badRows.add(BadRow.of(buffers.times[i], BadRow.About.LIQUID, buffers.liquid[i], status));
            }
            wetting.add(dry, buffers.laid[i], status, status.isOnRoad() ? buffers.microliters[i] : 0);
        }
    }

    private void noteUncalibrated(int from, int to) {
        for (int i = from; i < to; i++) {
            long reading = buffers.liquid[i];
            if (reading != BadRow.NO_READING) {
                if (lastReading != BadRow.NO_READING && reading != lastReading) {
                    badRows.add(BadRow.of(buffers.times[i], BadRow.About.LIQUID, reading, RowStatus.NO_CALIBRATION));
                }
                lastReading = reading;
            }
        }
    }

    /** What ran on the road that is left now. */
    AppliedTotal leaveRoad() {
        AppliedTotal total = total(ofRoad);
        all = evaluator.map(one -> one.merged(all.orElseThrow(), ofRoad.orElseThrow()));
        return total;
    }

    Wetting.Sums wetted() {
        return wetting.taken();
    }

    /** What ran on all roads that were left. */
    AppliedTotal total() {
        return total(all);
    }

    private AppliedTotal total(Optional<RowSums> sums) {
        return evaluator.map(one -> one.total(sums.orElseThrow())).orElse(RoadTotals.NO_LIQUID);
    }
}
