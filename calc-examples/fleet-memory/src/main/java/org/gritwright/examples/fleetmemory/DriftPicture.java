package org.gritwright.examples.fleetmemory;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.Period;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.control.CusumChart;
import org.gritwright.core.control.EwmaChart;
import org.gritwright.core.history.drift.DriftChart;
import org.gritwright.core.judgement.Tolerance;

/**
 * A calibration point over the years: above, what leaves per revolution with the value in the display and its tolerance; below on the same
 * days, the two control charts with their limits.
 */
final class DriftPicture {
    private static final int TOP = 24;
    private static final int VALUES_END = 270;
    private static final int PANEL = 84;
    private static final int GAP = 22;
    private static final int BESIDE = 8;
    private static final int MOST_TICKS = 6;
    private static final int FEW_TICKS = 4;
    private static final int SAMPLES = 24;

    /** From so many catches on marks are small. */
    private static final int MANY = 40;

    private static final double MARGIN = 0.04;
    private static final double SECONDS_A_DAY = 86_400;

    /** How far ahead a line is drawn. */
    static final Duration AHEAD = Duration.ofDays(365);

    private static final List<Integer> MONTHS = List.of(1, 3, 6, 12, 24, 60, 120, 240);

    private final PointStory story;
    private final Tolerance tolerance;
    private final ZoneOffset yard;
    private final Instant from;
    private final Instant on;
    private final Instant to;
    private final Picture.Width width;
    private final Scale days;
    private final Scale values;
    private final Drawing drawing;

    DriftPicture(PointStory story, Tolerance tolerance, Instant on, ZoneOffset yard, Picture.Width width) {
        this.story = story;
        this.tolerance = tolerance;
        this.yard = yard;
        this.on = on;
        this.width = width;
        Instant first = story.catches().get(0).implied().at();
        Duration span = Duration.between(first, on);
        Duration margin = Duration.ofSeconds((long) Math.max(30 * SECONDS_A_DAY, MARGIN * span.toSeconds()));
        from = first.minus(margin);
        to = on.plus(story.line().trend().isPresent() ? AHEAD : margin);
        days = new Scale(number(from), number(to), width.left(), width.width() - BESIDE);
        values = values();
        int height = VALUES_END + 26 + (story.isCharted() ? 2 * (PANEL + GAP) : 0);
        drawing = new Drawing(width.width(), height, description());
    }

    private static double number(Instant at) {
        return at.getEpochSecond() / SECONDS_A_DAY;
    }

    private String description() {
        return "What leaves at " + story.point().name() + ", " + story.symbol() + ", on "
                + Words.count(story.catches().size(), "catch day or calibration", "catch days and calibrations")
                + ", with the value in the display and its tolerance"
                + (story.isCharted() ? "; and two control charts with their limits" : "")
                + ". The tables below give the numbers.";
    }

    private Scale values() {
        DoubleStream.Builder all = DoubleStream.builder();
        for (PointStory.Caught one : story.catches()) {
            all.add(one.value() + one.half().orElse(0.0));
            all.add(one.value() - one.half().orElse(0.0));
        }
        for (Held held : held()) {
            all.add(held.value / (1 - tolerance.ratio()));
            all.add(held.value / (1 + tolerance.ratio()));
        }
        double[] numbers = all.build().toArray();
        double low = DoubleStream.of(numbers).min().orElseThrow();
        double high = DoubleStream.of(numbers).max().orElseThrow();
        double margin = Math.max(MARGIN * (high - low), MARGIN * MARGIN * high);
        return new Scale(Math.max(0, low - margin), high + margin, VALUES_END, TOP);
    }

    /** What the display held for a time that the picture shows. */
    private record Held(Instant from, Instant to, double value) {}

    private List<Held> held() {
        List<Held> held = new ArrayList<>();
        List<PointStory.Step> steps = story.steps();
        for (int i = 0; i < steps.size(); i++) {
            Instant begin = later(steps.get(i).at(), from);
            Instant end = i + 1 < steps.size() ? steps.get(i + 1).at() : to;
            Optional<Double> value = steps.get(i).value();
            if (value.isPresent() && begin.isBefore(end)) {
                held.add(new Held(begin, end, value.get()));
            }
        }
        return held;
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    Drawing drawn() {
        if (story.catches().size() > MANY) {
            drawing.makeMarksSmall();
        }
        held().forEach(this::tolerance);
        band();
        marks();
        held().forEach(one ->
                drawing.line("solid", x(one.from), values.at(one.value), x(one.to), values.at(one.value)));
        story.catches().forEach(this::caught);
        drawing.yAxis(days.start(), values, MOST_TICKS, "what leaves, " + story.symbol());
        drawing.xAxis(VALUES_END, days, List.of(), tick -> "");
        if (story.isCharted()) {
            int top = VALUES_END + GAP;
            chart(
                    "EWMA",
                    top,
                    one -> one.ewma().map(EwmaChart.Point::value),
                    one -> one.ewma().map(EwmaChart.Point::limit));
            top += PANEL + GAP;
            sums(top);
            dates(top + PANEL);
        } else {
            dates(VALUES_END);
        }
        return drawing;
    }

    private double x(Instant at) {
        return days.at(number(at));
    }

    /** What may leave without the error of what the display holds being beyond the tolerance: held ÷ (1 ± tolerance). */
    private void tolerance(Held held) {
        double low = values.at(held.value / (1 + tolerance.ratio()));
        double high = values.at(held.value / (1 - tolerance.ratio()));
        drawing.area(
                "tolerance",
                List.of(new Drawing.Spot(x(held.from), low), new Drawing.Spot(x(held.to), low)),
                List.of(new Drawing.Spot(x(held.from), high), new Drawing.Spot(x(held.to), high)));
    }

    /** The line from the first value of the time that lasts, and the interval about it. */
    private void band() {
        if (story.line().trend().isEmpty()) {
            return;
        }
        List<PointStory.Band> bands = bands();
        for (ToDoubleFunction<PointStory.Band> edge :
                List.<ToDoubleFunction<PointStory.Band>>of(PointStory.Band::low, PointStory.Band::high)) {
            inside("dotted", bands, edge);
        }
        inside("dashed", bands, PointStory.Band::value);
    }

    private List<PointStory.Band> bands() {
        Instant begin = story.point().history().current().implied().get(0).at();
        Duration span = Duration.between(begin, to);
        List<PointStory.Band> bands = new ArrayList<>();
        for (int i = 0; i <= SAMPLES; i++) {
            bands.add(story.line().at(begin.plus(span.multipliedBy(i).dividedBy(SAMPLES))));
        }
        return bands;
    }

    /** The parts of a line that the picture's values hold. */
    private void inside(String look, List<PointStory.Band> bands, ToDoubleFunction<PointStory.Band> value) {
        List<Drawing.Spot> part = new ArrayList<>();
        for (PointStory.Band one : bands) {
            double number = value.applyAsDouble(one);
            if (values.holds(number)) {
                part.add(new Drawing.Spot(x(one.at()), values.at(number)));
            } else {
                line(look, part);
                part.clear();
            }
        }
        line(look, part);
    }

    private void line(String look, List<Drawing.Spot> part) {
        if (part.size() > 1) {
            drawing.line(look, part);
        }
    }

    /** Repairs and other changes, by their numbers in the table, and the day that all is looked at. */
    private void marks() {
        double last = days.start();
        for (int i = 0; i < story.events().size(); i++) {
            Instant at = instant(i);
            if (at.isAfter(from)) {
                drawing.line("event", x(at), TOP, x(at), bottom());
                // Numbers that would run into each other are left to the table.
                if (x(at) - last >= 12 || i == 0) {
                    drawing.text("middle", x(at), TOP - 10, String.valueOf(i + 1));
                    last = x(at);
                }
            }
        }
        drawing.line("today", x(on), TOP, x(on), bottom());
    }

    private Instant instant(int event) {
        Since at = story.events().get(event).at();
        return at.time()
                .map(OffsetDateTime::toInstant)
                .orElseGet(() -> at.day().atStartOfDay().toInstant(yard));
    }

    private double bottom() {
        return story.isCharted() ? VALUES_END + 2.0 * (PANEL + GAP) : VALUES_END;
    }

    private void caught(PointStory.Caught one) {
        double x = x(one.implied().at());
        one.half()
                .ifPresent(half ->
                        drawing.line("bar", x, values.at(one.value() - half), x, values.at(one.value() + half)));
        drawing.mark(one.isCalibration() ? Drawing.Mark.SQUARE : Drawing.Mark.CIRCLE, x, values.at(one.value()));
        if (one.isSignal()) {
            drawing.mark(Drawing.Mark.RING, x, values.at(one.value()));
        }
    }

    /** A number of one of the charts; none at the value with which it begins. */
    private interface OnChart {
        Optional<Double> of(DriftChart.Point point);
    }

    private void chart(String title, int top, OnChart value, OnChart limit) {
        Scale up = symmetric(top, List.of(value, limit));
        runs(up, value, 1);
        limits(up, limit);
        signals(
                up,
                value,
                point -> point.ewma().flatMap(EwmaChart.Point::signal).isPresent(),
                1);
        frame(up, title + ", σ");
    }

    /** Both sums of the CUSUM: what rises above zero, what falls below. */
    private void sums(int top) {
        OnChart above = point -> point.cusum().map(CusumChart.Point::above);
        OnChart below = point -> point.cusum().map(CusumChart.Point::below);
        OnChart limit = point -> point.cusum().map(CusumChart.Point::limit);
        Scale up = symmetric(top, List.of(above, below, limit));
        runs(up, above, 1);
        runs(up, below, -1);
        limits(up, limit);
        signals(up, above, point -> isBeyond(point, CusumChart.Point::above), 1);
        signals(up, below, point -> isBeyond(point, CusumChart.Point::below), -1);
        frame(up, "CUSUM, σ");
    }

    private static boolean isBeyond(DriftChart.Point point, ToDoubleFunction<CusumChart.Point> sum) {
        return point.cusum().filter(one -> sum.applyAsDouble(one) > one.limit()).isPresent();
    }

    private Scale symmetric(int top, List<OnChart> numbers) {
        double edge = story.catches().stream()
                .flatMap(one -> one.onChart().stream())
                .flatMap(point -> numbers.stream().flatMap(number -> number.of(point).stream()))
                .mapToDouble(Math::abs)
                .max()
                .orElse(1);
        return new Scale(-1.15 * edge, 1.15 * edge, top + (double) PANEL, top);
    }

    /** A line through the points of each time in which a chart went on. */
    private void runs(Scale up, OnChart value, int sign) {
        List<Drawing.Spot> run = new ArrayList<>();
        for (PointStory.Caught one : story.catches()) {
            Optional<Double> number = one.onChart().flatMap(value::of);
            if (one.onChart().filter(DriftChart.Point::isFirst).isPresent()) {
                line("solid", run);
                run.clear();
                run.add(new Drawing.Spot(x(one.implied().at()), up.at(0)));
            }
            number.ifPresent(each -> {
                run.add(new Drawing.Spot(x(one.implied().at()), up.at(sign * each)));
                drawing.mark(Drawing.Mark.CIRCLE, x(one.implied().at()), up.at(sign * each));
            });
        }
        line("solid", run);
    }

    private void limits(Scale up, OnChart limit) {
        for (int sign : new int[] {1, -1}) {
            List<Drawing.Spot> run = new ArrayList<>();
            for (PointStory.Caught one : story.catches()) {
                Optional<Double> number = one.onChart().flatMap(limit::of);
                if (one.onChart().filter(DriftChart.Point::isFirst).isPresent()) {
                    line("dashed", run);
                    run.clear();
                }
                number.ifPresent(
                        each -> run.add(new Drawing.Spot(x(one.implied().at()), up.at(sign * each))));
            }
            line("dashed", run);
        }
    }

    private void signals(Scale up, OnChart value, Predicate<DriftChart.Point> isSignal, int sign) {
        for (PointStory.Caught one : story.catches()) {
            one.onChart()
                    .filter(isSignal)
                    .flatMap(value::of)
                    .ifPresent(each ->
                            drawing.mark(Drawing.Mark.RING, x(one.implied().at()), up.at(sign * each)));
        }
    }

    private void frame(Scale up, String title) {
        drawing.line("axis", days.start(), up.at(0), days.end(), up.at(0));
        drawing.yAxis(days.start(), up, FEW_TICKS, title);
    }

    private void dates(double y) {
        List<LocalDate> all = ticks();
        drawing.line("axis", days.start(), y, days.end(), y);
        for (LocalDate tick : all) {
            double x = x(tick.atStartOfDay().toInstant(yard));
            drawing.line("axis", x, y, x, y + 4);
            drawing.text(
                    "middle",
                    Math.min(x, days.end() - 22),
                    y + 17,
                    YearMonth.from(tick).toString());
        }
    }

    /** First days of months, so far apart that their names don't run into each other. */
    private List<LocalDate> ticks() {
        LocalDate begin = from.atOffset(yard).toLocalDate();
        LocalDate end = to.atOffset(yard).toLocalDate();
        long months = Period.between(begin, end).toTotalMonths() + 1;
        int step = MONTHS.stream()
                .filter(one -> months / one < width.mostTicks())
                .findFirst()
                .orElse(MONTHS.get(MONTHS.size() - 1));
        List<LocalDate> ticks = new ArrayList<>();
        LocalDate tick = LocalDate.of(begin.getYear() - begin.getYear() % Math.max(1, step / 12), 1, 1);
        for (; !tick.isAfter(end); tick = tick.plusMonths(step)) {
            if (!tick.isBefore(begin)) {
                ticks.add(tick);
            }
        }
        return ticks;
    }
}
