package org.gritwright.core.chart;

import java.util.List;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.CompiledEnvelope;
import org.gritwright.core.envelope.Delivered;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.envelope.Limit;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.DischargeRate;
import org.gritwright.units.rate.Rates;

/**
 * The chart of a spreader that controls its shaft speed, for one material and gate setting: a row for each rate, a column for each
 * road speed. A cell is what the envelope answers, rounded once; what isn't a number of the chart is made when it is asked for.
 * Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of rate
 * @param subject what the chart is for
 * @param envelope what the truck can do with that material at that gate setting
 * @param basis what the rates are stated for
 * @param rates of the rows, each greater than zero and listed once, 1 to 1000 in any order; kept rising
 * @param speeds of the columns, likewise
 */
public record FeedbackChart<Q extends Quantity<Q>>(
        ChartSubject subject,
        Envelope envelope,
        RateBasis<Q> basis,
        List<Quantity<Q>> rates,
        List<Quantity<Speed>> speeds) {
    /**
     * Checks and sorts rates and speeds.
     *
     * @throws org.gritwright.units.InvalidInputException if there are none, too many, or one twice, or one isn't greater than zero
     */
    public FeedbackChart {
        Require.given(FeedbackChart.class, subject, envelope, basis, rates, speeds);
        rates = Axis.of("rate", basis.kind(), rates);
        speeds = Axis.of("road speed", Speed.class, speeds);
    }

    /**
     * A cell.
     *
     * @param row which rate, from 0
     * @param column which road speed, from 0
     * @return what the rate asks for at the speed; the rate in its own unit, the flow in its unit system
     * @throws IndexOutOfBoundsException if there is no such row or column
     */
    public FeedbackCell<Q> cell(int row, int column) {
        Quantity<Q> rate = rates.get(row);
        Quantity<Speed> speed = speeds.get(column);
        Quantity<ApplicationRate> onTheRoad = basis.onTheRoad(rate);
        Delivered answer = envelope.deliveredAt(onTheRoad, speed);
        return new FeedbackCell<>(
                asCalibrated(answer.shaftSpeed()),
                asCalibrated(Rates.dischargeFromRate(onTheRoad, speed)),
                answer.limit().map(limit -> outside(limit, answer, rate, speed)));
    }

    private FeedbackCell.Outside<Q> outside(Limit limit, Delivered answer, Quantity<Q> rate, Quantity<Speed> speed) {
        Quantity<Q> delivered = basis.stated(answer.delivered(), rate.getUnit());
        Quantity<DischargeRate> flow = Rates.dischargeFromRate(answer.delivered(), speed);
        // How fast grains run is a rule of thumb, without an uncertainty.
        return limit == Limit.GRAIN_FLOW || grainsAreSlowerThanAnyShaft()
                ? new FeedbackCell.Outside<>(
                        limit, new CellValue<>(Measured.once(delivered)), new CellValue<>(Measured.once(flow)))
                : new FeedbackCell.Outside<>(limit, asCalibrated(delivered), asCalibrated(flow));
    }

    private boolean grainsAreSlowerThanAnyShaft() {
        CompiledEnvelope flows = envelope.compiled();
        return flows.greatestFlow() < flows.leastFlow();
    }

    private <R extends Quantity<R>> CellValue<R> asCalibrated(Quantity<R> result) {
        return new CellValue<>(Carried.by(envelope.discharge(), result));
    }

    /**
     * The cells of a rate.
     *
     * @param row which rate, from 0
     * @return its cells, one for each road speed
     * @throws IndexOutOfBoundsException if there is no such row
     */
    public List<FeedbackCell<Q>> row(int row) {
        return IntStream.range(0, speeds.size())
                .mapToObj(column -> cell(row, column))
                .toList();
    }
}
