package org.gritwright.examples.fleetday;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.curve.DischargePrediction;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.DischargePerRevolution;

/** A discharge curve over the gate opening, with its interval as a band and the catches on it. */
final class CurveChart {
    private static final int WIDTH = 440;
    private static final int HEIGHT = 260;
    private static final int DEVIATIONS_HEIGHT = 190;
    private static final int SAMPLES = 60;

    /** The deviations' scale ends no nearer than this, in percent, so that tiny ones look tiny. */
    private static final double LEAST_EDGE = 1;

    /** How many times the shown range the scale may cover at most for the band's sake. */
    private static final double WIDEST_BAND = 3;

    /** How far beyond the largest caught opening the curve is drawn. */
    private static final double BEYOND = 1.2;

    private final DischargeCurve curve;
    private final Unit<?> settingUnit;
    private final Unit<DischargePerRevolution> unit;
    private final List<Sample> samples;
    private final List<Sample> inside;
    private final List<Caught> caught;

    /**
     * The curve at an opening.
     *
     * @param half half the interval's width, or 0 without one
     * @param percent the same in percent of the value
     * @param isInside whether it is among the caught openings
     */
    private record Sample(double at, double value, double half, double percent, boolean isInside) {
        static Sample of(DischargePrediction prediction) {
            double value = CurveSheet.number(prediction.dischargePerRevolution().value());
            double half = prediction
                    .dischargePerRevolution()
                    .expandedUncertainty(Figures.COVERAGE)
                    .map(CurveSheet::number)
                    .orElse(0.0);
            double at = CurveSheet.number(prediction.setting());
            return new Sample(
                    at, value, half, 100 * half / value, prediction.findings().isEmpty());
        }
    }

    /** @param deviation from the curve, in percent */
    private record Caught(double at, double value, double deviation) {}

    CurveChart(DischargeCurve curve) {
        Setting like = curve.settings().get(0);
        this.curve = curve;
        this.settingUnit = like.quantity().orElseThrow().getUnit();
        this.unit = curve.predict(like).dischargePerRevolution().value().getUnit();
        this.samples = samples(curve);
        this.inside = samples.stream().filter(Sample::isInside).toList();
        this.caught = curve.catches().stream().map(this::caught).toList();
    }

    /** From the gate's lowest opening to a little beyond the largest caught one, the caught ones among them. */
    private static List<Sample> samples(DischargeCurve curve) {
        List<Setting> caught = curve.settings();
        Setting last = caught.get(caught.size() - 1);
        double end = Math.min(
                BEYOND * last.si(), curve.metering().sweptByOpening().highest().si());
        Stream<Setting> even = IntStream.rangeClosed(0, SAMPLES).mapToObj(i -> last.withSi(end * i / SAMPLES));
        return Stream.concat(caught.stream(), even)
                .sorted(Comparator.comparingDouble(Setting::si))
                .map(setting -> CurveSheet.predict(curve, setting, Optional.empty()))
                .flatMap(Optional::stream)
                .map(Sample::of)
                .toList();
    }

    private Caught caught(CalibrationCatch one) {
        double value = CurveSheet.number(Amounts.ofSi(one.observation().kilograms() / one.revolutions(), unit));
        double byCurve = Sample.of(curve.predict(one.point().setting())).value();
        return new Caught(CurveSheet.setting(curve, one), value, 100 * (value / byCurve - 1));
    }

    /** The curve, and below it the deviations from it, which are too small to see in it. */
    Picture picture() {
        String yTitle = "mass per revolution" + inUnit(unit);
        String xTitle = "gate opening" + inUnit(settingUnit);
        double highest = Math.max(largest(samples, Sample::value), largest(caught, Caught::value));
        double top = 1.05 * withBand(highest, largest(samples, sample -> sample.value() + sample.half()));
        double farthest = Math.max(LEAST_EDGE, largest(caught, one -> Math.abs(one.deviation())));
        double edge = 1.2 * withBand(farthest, largest(inside, Sample::percent));
        Plot.Span values = new Plot.Span(0, top);
        Plot.Span deviations = new Plot.Span(-edge, edge);
        Plot.Span across =
                new Plot.Span(32 + Math.max(Plot.widthOfLabels(values), Plot.widthOfLabels(deviations)), WIDTH - 12.0);
        Plot.Span openings = new Plot.Span(0, samples.get(samples.size() - 1).at());
        return Picture.of(
                WIDTH,
                HEIGHT + DEVIATIONS_HEIGHT,
                "Two charts of " + curve.material().name() + ": " + yTitle + ", over " + xTitle + ", with "
                        + caught.size() + " catches; and how far each of them is off the curve, %."
                        + " The table gives the numbers.",
                above(new Plot(across, new Plot.Span(HEIGHT - 32.0, 10), openings, values), yTitle, top),
                below(
                        new Plot(
                                across,
                                new Plot.Span(HEIGHT + DEVIATIONS_HEIGHT - 48.0, HEIGHT + 10.0),
                                openings,
                                deviations),
                        xTitle,
                        edge));
    }

    /** The end of a scale: a wide band runs out of the picture rather than flatten what is in it. */
    private static double withBand(double content, double band) {
        return Math.max(content, Math.min(band, WIDEST_BAND * content));
    }

    private Plot above(Plot plot, String yTitle, double top) {
        if (CurveSheet.hasInterval(curve)) {
            // Beyond its rows a table has none.
            plot.band(
                    "band",
                    curve.model() == CurveModel.TABLE ? inside : samples,
                    Sample::at,
                    sample -> Math.max(0, sample.value() - sample.half()),
                    sample -> Math.min(top, sample.value() + sample.half()));
        }
        plot.xAxis(Plot::text);
        plot.yAxis(yTitle);
        plot.line("dashed", samples, Sample::at, Sample::value);
        plot.line("solid", inside, Sample::at, Sample::value);
        caught.forEach(one -> plot.mark(Plot.Mark.CIRCLE, one.at(), one.value()));
        return plot;
    }

    /** The axis of openings serves both parts, so its title stands here only. */
    private Plot below(Plot plot, String xTitle, double edge) {
        if (CurveSheet.hasInterval(curve)) {
            plot.band(
                    "band",
                    inside,
                    Sample::at,
                    sample -> -Math.min(edge, sample.percent()),
                    sample -> Math.min(edge, sample.percent()));
        }
        plot.xAxis(Plot::text);
        plot.xTitle(xTitle);
        plot.yAxis("off the curve, %");
        plot.line("solid", inside, Sample::at, sample -> 0);
        caught.forEach(one -> plot.mark(Plot.Mark.CIRCLE, one.at(), one.deviation()));
        return plot;
    }

    private static <T> double largest(List<T> all, ToDoubleFunction<T> number) {
        return all.stream().mapToDouble(number).max().orElse(0);
    }

    private static <Q extends Quantity<Q>> String inUnit(Unit<?> unit) {
        @SuppressWarnings("unchecked") // whatever kind it is, only its symbol is asked for
        String symbol = UnitSymbol.of((Unit<Q>) unit).symbol();
        return symbol.isEmpty() ? "" : ", " + symbol;
    }
}
