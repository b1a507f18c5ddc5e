package org.gritwright.core.simulation;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.gritwright.core.fleet.assessment.NextStep;

/** A share of trucks with liquids; small ones are good but for the three last. */
@SuppressWarnings("ImmutableEnumChecker") // the predicates hold nothing
enum LiquidMeasure {
    FALSE_ALARM(
            "sound: find the fault, or a correction",
            OptionalDouble.of(0.003),
            outcome -> outcome.fault() == LiquidFault.NONE && !outcome.isOff(),
            outcome -> outcome.told().isFault() || outcome.told().step() == NextStep.ENTER_CORRECTION),
    WARNED(
            "sound: a warning",
            OptionalDouble.of(0.1),
            outcome -> outcome.fault() == LiquidFault.NONE && !outcome.isOff(),
            outcome -> outcome.told().warned()),
    UNSEEN_ON_THE_ROAD(
            "off on the road: nothing to do",
            OptionalDouble.of(0.01),
            LiquidFleet.Outcome::isOff,
            outcome -> outcome.told().isNothing()),
    UNSEEN_IN_THE_RECORD(
            "wrongly recorded: nothing to do",
            OptionalDouble.empty(),
            outcome -> outcome.fault() != LiquidFault.NONE && !outcome.isOff() && outcome.isWronglyRecorded(),
            outcome -> outcome.told().isNothing()),
    MISCORRECTED(
            "wrongly recorded: a correction that leaves the road off",
            OptionalDouble.of(0.01),
            outcome -> outcome.fault() != LiquidFault.NONE && outcome.isWronglyRecorded(),
            LiquidFleet.Outcome::isMiscorrected),
    FIRST(
            "off or wrongly recorded: named first",
            OptionalDouble.empty(),
            outcome -> outcome.fault() != LiquidFault.NONE
                    && outcome.fault() != LiquidFault.WORN
                    && (outcome.isOff() || outcome.isWronglyRecorded()),
            LiquidFleet.Outcome::isNamedFirst),
    NAMED("off or wrongly recorded: named at all", OptionalDouble.empty(), FIRST.counts, LiquidFleet.Outcome::isNamed),
    CORRECTED(
            "off by wear: gets its correction",
            OptionalDouble.empty(),
            outcome -> outcome.fault() == LiquidFault.WORN && outcome.isOff(),
            outcome -> outcome.told().step() == NextStep.ENTER_CORRECTION);

    private final String words;
    private final OptionalDouble bar;
    private final Predicate<LiquidFleet.Outcome> counts;
    private final Predicate<LiquidFleet.Outcome> hits;

    LiquidMeasure(
            String words,
            OptionalDouble bar,
            Predicate<LiquidFleet.Outcome> counts,
            Predicate<LiquidFleet.Outcome> hits) {
        this.words = words;
        this.bar = bar;
        this.counts = counts;
        this.hits = hits;
    }

    String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    String words() {
        return words;
    }

    private boolean isBetterHigh() {
        return this == FIRST || this == NAMED || this == CORRECTED;
    }

    boolean isWorse(Tally now, Tally then) {
        double difference = now.share() - then.share();
        return (isBetterHigh() ? -difference : difference) > 1e-9;
    }

    String bound(Tally tally) {
        return isBetterHigh()
                ? String.format(Locale.ROOT, "≥ %.1f %%", 100 * tally.lowerBound())
                : String.format(Locale.ROOT, "≤ %.1f %%", 100 * tally.upperBound());
    }

    String barInWords() {
        return bar.isPresent() ? String.format(Locale.ROOT, "≤ %.1f %%", 100 * bar.getAsDouble()) : "";
    }

    String verdict(Tally tally) {
        if (bar.isEmpty()) {
            return "";
        }
        return tally.upperBound() <= bar.getAsDouble()
                ? "met, proven"
                : tally.share() <= bar.getAsDouble() ? "met" : "not met";
    }

    boolean counts(LiquidFleet.Outcome outcome) {
        return counts.test(outcome);
    }

    boolean hits(LiquidFleet.Outcome outcome) {
        return hits.test(outcome);
    }
}
