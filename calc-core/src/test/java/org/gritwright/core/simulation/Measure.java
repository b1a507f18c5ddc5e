package org.gritwright.core.simulation;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.gritwright.core.fleet.assessment.NextStep;

/** A share of trucks that ought to be small or large, and the bar that it ought to reach. */
@SuppressWarnings("ImmutableEnumChecker") // the predicates hold nothing
enum Measure {
    HEALTHY_NOTHING(
            "healthy, complete, decidable: nothing to do",
            Direction.HIGHER,
            OptionalDouble.of(0.95),
            Measure::isDecidablyHealthy,
            outcome -> outcome.told().isNothing()),
    HEALTHY_FALSE(
            "healthy, complete, decidable: find the fault, or a correction",
            Direction.LOWER,
            OptionalDouble.of(0.003),
            Measure::isDecidablyHealthy,
            outcome -> outcome.told().isFault() || outcome.told().step() == NextStep.ENTER_CORRECTION),
    HEALTHY_WARNED(
            "healthy, complete, decidable: a warning",
            Direction.LOWER,
            OptionalDouble.of(0.1),
            Measure::isDecidablyHealthy,
            outcome -> outcome.told().warned()),
    HEALTHY_CATCH_MORE(
            "healthy, the ideal rule could decide: catch more",
            Direction.LOWER,
            OptionalDouble.empty(),
            outcome -> isHealthy(outcome) && outcome.decision() == Ideal.Decision.WITHIN,
            outcome -> outcome.told().step() == NextStep.CATCH_MORE),
    HEALTHY_FAULT(
            "healthy: find the fault",
            Direction.LOWER,
            OptionalDouble.of(0.03),
            Measure::isHealthy,
            outcome -> outcome.told().isFault()),
    CATCH_MORE_SAYS_HOW_MUCH(
            "told to catch more: how much is said",
            Direction.HIGHER,
            OptionalDouble.empty(),
            outcome -> outcome.told().step() == NextStep.CATCH_MORE,
            outcome -> outcome.told().further().isPresent()),
    FAULT_UNSEEN(
            "off on the road, and visible: nothing to do",
            Direction.LOWER,
            OptionalDouble.of(0.01),
            outcome -> outcome.isOffOnTheRoad() && outcome.isVisible(),
            outcome -> outcome.told().isNothing()),
    CONTRADICTION_UNSEEN(
            "visible: nothing to do",
            Direction.LOWER,
            OptionalDouble.empty(),
            Outcome::isVisible,
            outcome -> outcome.told().isNothing()),
    CAUSE_FIRST(
            "cause can be told: named first",
            Direction.HIGHER,
            OptionalDouble.of(0.8),
            Outcome::isTellable,
            Outcome::isNamedFirst),
    CAUSE_NAMED(
            "cause can be told: named at all",
            Direction.HIGHER,
            OptionalDouble.of(0.95),
            Outcome::isTellable,
            Outcome::isNamed),
    CONTRADICTION_CORRECTED(
            "visible: a correction is proposed",
            Direction.LOWER,
            OptionalDouble.of(0),
            Outcome::isVisible,
            Outcome::isCorrected),
    DRIFT_UNSEEN(
            "drifted, decidable: nothing to do",
            Direction.LOWER,
            OptionalDouble.of(0.01),
            Measure::isDecidablyWrong,
            outcome -> outcome.told().isNothing()),
    DRIFT_CORRECTED(
            "drifted, decidable: gets its correction",
            Direction.HIGHER,
            OptionalDouble.of(0.9),
            Measure::isDecidablyWrong,
            Outcome::isCorrected),
    DRIFT_FAULT(
            "drifted, decidable: find the fault",
            Direction.LOWER,
            OptionalDouble.empty(),
            Measure::isDecidablyWrong,
            outcome -> outcome.told().isFault()),
    CORRECTION_MISSES(
            "corrections outside their own 99 % interval",
            Direction.LOWER, OptionalDouble.of(0.015), Outcome::isCorrected, Outcome::isCorrectionOutsideItsInterval);

    /** Which way is better. */
    enum Direction {
        LOWER,
        HIGHER
    }

    private final String words;
    private final Direction direction;
    private final OptionalDouble bar;
    private final Predicate<Outcome> counts;
    private final Predicate<Outcome> hits;

    Measure(String words, Direction direction, OptionalDouble bar, Predicate<Outcome> counts, Predicate<Outcome> hits) {
        this.words = words;
        this.direction = direction;
        this.bar = bar;
        this.counts = counts;
        this.hits = hits;
    }

    private static boolean isHealthy(Outcome outcome) {
        return !outcome.isOffOnTheRoad()
                && outcome.made().truck().drive().cap() == 1
                && outcome.made().truck().drive().lostSeconds() < 1;
    }

    private static boolean isDecidablyHealthy(Outcome outcome) {
        return isHealthy(outcome) && outcome.made().truck().isComplete() && outcome.decision() == Ideal.Decision.WITHIN;
    }

    private static boolean isDecidablyWrong(Outcome outcome) {
        return outcome.isOffOnTheRoad() && outcome.decision() == Ideal.Decision.OUTSIDE;
    }

    String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static Measure named(String id) {
        return Arrays.stream(values())
                .filter(measure -> measure.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(id));
    }

    String words() {
        return words;
    }

    OptionalDouble bar() {
        return bar;
    }

    Direction direction() {
        return direction;
    }

    boolean counts(Outcome outcome) {
        return counts.test(outcome);
    }

    boolean hits(Outcome outcome) {
        return hits.test(outcome);
    }

    /** A share that is worse than another by more than one truck, since some are shares of what is told. */
    boolean isWorse(Tally now, Tally then) {
        double slack = then.trials() == now.trials() ? 0 : 1.0 / Math.max(1, now.trials());
        double difference = now.share() - then.share();
        return direction == Direction.LOWER ? difference > slack + 1e-9 : -difference > slack + 1e-9;
    }

    /** Whether the bar is reached, and by the bound of 99 %. */
    Optional<String> verdict(Tally tally) {
        if (bar.isEmpty() || tally.trials() == 0) {
            return Optional.empty();
        }
        double limit = bar.getAsDouble();
        boolean lower = direction == Direction.LOWER;
        boolean met = lower ? tally.share() <= limit : tally.share() >= limit;
        boolean proven = lower ? tally.upperBound() <= limit : tally.lowerBound() >= limit;
        return Optional.of(proven ? "met, proven" : met ? "met" : "not met");
    }
}
