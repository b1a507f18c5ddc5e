package org.gritwright.core.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.BelowRange;
import org.gritwright.core.envelope.Bound;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.envelope.Span;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * Between which road speeds a spreader that controls its shaft speed holds a rate. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of rate
 * @param envelope what the truck can do
 * @param basis what the rate is stated for
 * @param rate the rate, greater than zero
 */
public record FeedbackLine<Q extends Quantity<Q>>(Envelope envelope, RateBasis<Q> basis, Quantity<Q> rate)
        implements CardLine<Q> {
    /**
     * Checks the rate.
     *
     * @throws org.gritwright.units.InvalidInputException if it isn't greater than zero
     */
    public FeedbackLine {
        Require.given(FeedbackLine.class, envelope, basis, rate);
        Require.positive("rate", basis.kind(), rate);
    }

    /**
     * The speeds before rounding, and why they end there.
     *
     * @return the span, in the rate's unit system
     */
    public Span<Speed> exact() {
        return envelope.speedsFor(basis.onTheRoad(rate));
    }

    /**
     * The speeds that the card promises.
     *
     * @return rounded inward to whole units; none where no speed is left
     */
    public Optional<HeldSpeeds> held() {
        Span<Speed> exact = exact();
        return HeldSpeeds.within(
                        exact.lowest().map(Bound::value), exact.highest().value())
                .flatMap(HeldSpeeds::whole);
    }

    @Override
    public List<String> words() {
        Span<Speed> exact = exact();
        String limit = exact.highest().limit().words();
        return held().map(speeds -> words(speeds, limit)).orElseGet(() -> List.of("no speed holds it: " + limit));
    }

    private List<String> words(HeldSpeeds speeds, String limit) {
        List<String> words = new ArrayList<>();
        words.add("slow down above " + Amounts.format(speeds.highest()) + ": " + limit);
        String below = envelope.below() == BelowRange.STOPS ? "nothing is laid" : "too much is laid";
        exact().lowest()
                .ifPresent(bound -> words.add("below "
                        + Amounts.format(speeds.lowest().orElseThrow())
                        + " " + below + ": " + bound.limit().words()));
        return List.copyOf(words);
    }
}
