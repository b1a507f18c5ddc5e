package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.chart.CardLine;
import org.gritwright.core.chart.FeedbackLine;
import org.gritwright.core.chart.HeldSpeeds;
import org.gritwright.core.chart.OpenLoopLine;
import org.gritwright.core.envelope.Demand;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;

/**
 * A rate on a card, as the template reads it.
 *
 * @param rate the rate
 * @param forWhat which routes ask for it
 * @param speeds between which road speeds it holds, or which control setting lays it between which
 * @param beyond where what is asked for goes beyond them
 */
record CabLine(String rate, String forWhat, List<String> speeds, List<String> beyond) {
    /** Nobody spreads faster, so that a limit beyond is none (common practice, no source). */
    private static final Quantity<Speed> FASTEST_TRUCK = Amounts.of(75, SpreadingUnits.MILE_PER_HOUR);

    private static final int DIGITS = 4;
    private static final int SPEED_DIGITS = 3;

    /** What conversions cost at the most. */
    private static final double ROUNDING = 1e-9;

    /** @param asking what asks for the rate */
    static CabLine of(CabPoint point, CardLine<?> line, List<Demand> asking) {
        String rate = Rounded.text(line.rate(), DIGITS);
        String names = CabCharts.names(asking);
        if (line instanceof OpenLoopLine<?> byHand) {
            return byHand(rate, names, byHand, asking);
        }
        Optional<HeldSpeeds> held = ((FeedbackLine<?>) line).held();
        return new CabLine(
                rate,
                names,
                List.of(held.map(CabLine::words).orElse("at no speed")),
                held.map(speeds -> beyond(
                                asking.stream()
                                        .filter(one -> !point.isDone(one))
                                        .toList(),
                                speeds))
                        .orElse(List.of()));
    }

    private static String words(HeldSpeeds held) {
        return isFaster(held.highest(), FASTEST_TRUCK)
                ? held.lowest()
                        .map(lowest -> "from " + Amounts.format(lowest) + " on")
                        .orElse("at any speed")
                : held.toString();
    }

    private static List<String> beyond(List<Demand> asking, HeldSpeeds held) {
        List<String> beyond = new ArrayList<>();
        for (Demand one : asking) {
            if (!meet(held, one)) {
                beyond.add("not for " + one.name());
                continue;
            }
            if (isFaster(one.fastest(), held.highest())) {
                beyond.add("slow down to " + Amounts.format(held.highest()) + " where " + one.name() + " allows "
                        + Amounts.format(one.fastest()));
            }
            held.lowest()
                    .filter(lowest -> isFaster(lowest, one.slowest()))
                    .ifPresent(lowest -> beyond.add("too much below " + Amounts.format(lowest) + ", and " + one.name()
                            + " begins at " + Amounts.format(one.slowest())));
        }
        return beyond;
    }

    private static boolean meet(HeldSpeeds held, Demand asked) {
        return !isFaster(asked.slowest(), held.highest())
                && held.lowest().stream().noneMatch(lowest -> isFaster(lowest, asked.fastest()));
    }

    /** Only the settings for the speeds that are asked for, and what is left between them. */
    private static CabLine byHand(String rate, String names, OpenLoopLine<?> line, List<Demand> asking) {
        List<String> settings = new ArrayList<>();
        List<HeldSpeeds> all = new ArrayList<>();
        for (OpenLoopLine.AtSetting one : line.atSettings()) {
            one.held()
                    .filter(held -> asking.stream().anyMatch(asked -> meet(held, asked)))
                    .ifPresent(held -> {
                        settings.add("set " + one.setting() + " for " + held);
                        all.add(held);
                    });
        }
        all.sort(Comparator.comparingDouble(held -> si(held.lowest().orElseThrow())));
        return new CabLine(
                rate,
                names,
                settings.isEmpty() ? List.of("no setting lays it") : settings,
                settings.isEmpty()
                        ? List.of()
                        : asking.stream()
                                .flatMap(asked -> gaps(asked, all).stream())
                                .toList());
    }

    private static List<String> gaps(Demand asked, List<HeldSpeeds> rising) {
        List<String> gaps = new ArrayList<>();
        Quantity<Speed> reached = asked.slowest();
        for (HeldSpeeds held : rising) {
            Quantity<Speed> begins = held.lowest().orElseThrow();
            if (isFaster(begins, reached) && isFaster(asked.fastest(), reached)) {
                gaps.add(gap(asked, reached, isFaster(begins, asked.fastest()) ? asked.fastest() : begins));
            }
            if (isFaster(held.highest(), reached)) {
                reached = held.highest();
            }
        }
        if (isFaster(asked.fastest(), reached)) {
            gaps.add(gap(asked, reached, asked.fastest()));
        }
        return gaps;
    }

    private static String gap(Demand asked, Quantity<Speed> from, Quantity<Speed> to) {
        return "on " + asked.name() + " no setting from " + Rounded.text(from, SPEED_DIGITS) + " to "
                + Rounded.text(to, SPEED_DIGITS);
    }

    private static boolean isFaster(Quantity<Speed> one, Quantity<Speed> other) {
        return si(one) > (1 + ROUNDING) * si(other);
    }

    private static double si(Quantity<Speed> speed) {
        return Amounts.si(Speed.class, speed);
    }
}
