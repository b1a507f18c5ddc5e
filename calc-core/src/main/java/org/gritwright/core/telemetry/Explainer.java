package org.gritwright.core.telemetry;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;

/** Explains one row: by what the evaluator found, and arithmetic of its own, in decimals. */
final class Explainer {
    private static final int DIGITS = 6;

    private final boolean ofLiquids;
    private final long width;
    private final List<RowExplanation.Step> steps = new ArrayList<>();

    Explainer(boolean ofLiquids, long width) {
        this.ofLiquids = ofLiquids;
        this.width = width;
    }

    private void say(String what, String value) {
        steps.add(new RowExplanation.Step(what, value));
    }

    private String unit() {
        return ofLiquids ? " µL" : " mg";
    }

    RowExplanation explain(RowState before, RowState after, RowStatus status, long time, long count, String with) {
        if (before.hasReading) {
            say("reading before", before.count + " pulse at " + Instant.ofEpochMilli(before.time));
        }
        say("reading", count + " pulse at " + Instant.ofEpochMilli(time));
        say("status", status.words());
        if (!status.isCounted() || status == RowStatus.STANDING) {
            return new RowExplanation(status, 0, steps);
        }
        say(
                "counted",
                count >= before.count
                        ? count + " − " + before.count + " = " + (count - before.count) + " pulse"
                        : count + " + " + width + " − " + before.count + " = " + (count + width - before.count)
                                + " pulse, rolled over at " + width + " pulse");
        if (status == RowStatus.TURNED_EMPTY) {
            return new RowExplanation(status, 0, steps);
        }
        return new RowExplanation(status, amount(before, after, time, count, with), steps);
    }

    private long amount(RowState before, RowState after, long time, long count, String with) {
        HeldArrays held = Objects.requireNonNull(after.held);
        say("in force", with);
        double perCount = held.perCount(after.place, after.setting);
        say("a pulse stands for", text(perCount));
        Drift drift = held.drift(after.place);
        if (drift != null && drift.onset() != Onset.Gradually.WITH_TIME) {
            return alongTheWay(drift, before, after, held, perCount);
        }
        if (drift != null) {
            perCount *= drift.trueAt(before.time / 2.0 + time / 2.0);
            say("with the error that grew until half-way", text(perCount));
        }
        long now = rounded(perCount * count);
        long then = rounded(perCount * before.count);
        long over = count >= before.count ? 0 : rounded(perCount * width);
        say(
                "amount",
                (over == 0 ? "" : over + unit() + " up to where it rolls over + ") + now + unit() + " − " + then
                        + unit() + " = " + (over + now - then) + unit());
        return over + now - then;
    }

    private long alongTheWay(Drift drift, RowState before, RowState after, HeldArrays held, double perCount) {
        int share = held.share(after.place);
        double scale = drift.onset() == Onset.Gradually.WITH_TURNS ? perCount : 1;
        long now = rounded(scale * drift.trueUpTo(after.ways[share]));
        long then = rounded(scale * drift.trueUpTo(before.ways[share]));
        say("way on which the error grew", share(before.ways[share], drift) + " to " + share(after.ways[share], drift));
        say("amount", now + unit() + " − " + then + unit() + " = " + (now - then) + unit());
        return now - then;
    }

    private static String share(double way, Drift drift) {
        return Rounded.text(Amounts.ofSi(way / drift.length(), SpreadingUnits.PERCENT), DIGITS);
    }

    private static long rounded(double amount) {
        return new BigDecimal(amount).setScale(0, RoundingMode.HALF_EVEN).longValueExact();
    }

    private String text(double perCount) {
        return ofLiquids
                ? Amounts.format(
                        Amounts.ofSi(perCount / AmountPerCount.PER_CUBIC_METER, SpreadingUnits.MILLILITER_PER_PULSE))
                : Amounts.format(Amounts.ofSi(perCount / AmountPerCount.PER_KILOGRAM, SpreadingUnits.GRAM_PER_PULSE));
    }
}
