package org.gritwright.examples.fleetday;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.curve.DischargePrediction;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * A discharge curve as the report's template reads it.
 *
 * @param table what the curve gives at round openings, inside the caught ones and one step beyond
 * @param chart the picture as an SVG element; empty where this machine can't draw
 * @param legend what the picture shows
 */
record CurveSheet(SheetTable table, Picture chart, String legend) {
    /** More than anybody reads off a gate, fewer than a double holds. */
    private static final int READING_DIGITS = 12;

    /** @param gateReading how far an opening that is set by reading may be off */
    static CurveSheet of(DischargeCurve curve, Optional<Quantity<?>> gateReading) {
        return new CurveSheet(
                table(curve, gateReading),
                new CurveChart(curve).picture(),
                "● catches. Above, the curve, " + curve.model().term().words()
                        + ", dashed where it is geometry alone; below, how far each catch is from it. "
                        + (hasInterval(curve)
                                ? "Gray band: the 95 % interval of the curve; single catches scatter more."
                                : "Too few catches for an interval.")
                        + (curve.model() == CurveModel.TABLE
                                ? ""
                                : " g is the volume that the geometry sweeps at the gate opening h."));
    }

    /** Whether the catches allow an uncertainty; for all caught openings they do or don't. */
    static boolean hasInterval(DischargeCurve curve) {
        return curve.predict(curve.settings().get(0))
                .dischargePerRevolution()
                .standardUncertainty()
                .isPresent();
    }

    private static SheetTable table(DischargeCurve curve, Optional<Quantity<?>> gateReading) {
        List<Row> rows = new ArrayList<>();
        for (Setting setting : roundSettings(curve)) {
            predict(curve, setting, gateReading).ifPresent(prediction -> rows.add(row(prediction)));
        }
        return new SheetTable(
                "Mass per revolution by gate opening, " + curve.material().name(),
                List.of("by the curve", "within, 95 %"),
                rows,
                gateReading.isPresent()
                        ? List.of(
                                note(curve),
                                "The gate opening is read to ± " + Figures.both(gateReading.get())
                                        + ", which is in the intervals of the table.")
                        : List.of(note(curve)));
    }

    private static Row row(DischargePrediction prediction) {
        Measured<DischargePerRevolution> discharge = prediction.dischargePerRevolution();
        return Row.of(
                Figures.both(prediction.setting().quantity().orElseThrow()),
                Cell.computed(discharge.value(), Figures.DIGITS),
                new Cell(
                        discharge
                                .expandedUncertainty(Figures.COVERAGE)
                                .map(half -> "± " + Figures.text(half, 2))
                                .orElse("not known"),
                        prediction.findings().isEmpty() ? "" : "geometry alone"));
    }

    private static String note(DischargeCurve curve) {
        if (curve.model() == CurveModel.TABLE) {
            return "The table follows whatever was caught, so there is no shape to test.";
        }
        return curve.effectiveBulkDensity()
                        .map(k -> "Effective bulk density k = " + Figures.text(k.value(), 3) + ". ")
                        .orElse("")
                + curve.deadOpening()
                        .map(dead -> "Dead opening h0 = "
                                + Figures.text(dead.value(), 3).replace('-', '−')
                                + dead.standardUncertainty()
                                        .map(u -> ", standard uncertainty " + Figures.text(u, 2))
                                        .orElse("")
                                + ". ")
                        .orElse("")
                + curve.test()
                        .map(test -> "Lack-of-fit test: the chance of a misfit like this is "
                                + Figures.chance(test.chance()) + ".")
                        .orElse("The curve's shape could not be tested.");
    }

    /** Nothing where by the curve nothing is discharged, or the gate can't be set there. */
    static Optional<DischargePrediction> predict(
            DischargeCurve curve, Setting setting, Optional<Quantity<?>> gateReading) {
        try {
            return Optional.of(
                    gateReading.isPresent() ? curve.predict(setting, gateReading.get()) : curve.predict(setting));
        } catch (InvalidInputException e) {
            return Optional.empty();
        }
    }

    /** Multiples of a round step in the catches' own unit, from one below the caught openings to one above. */
    private static List<Setting> roundSettings(DischargeCurve curve) {
        List<Setting> caught = curve.settings();
        BigDecimal lowest = decimal(caught.get(0));
        BigDecimal highest = decimal(caught.get(caught.size() - 1));
        BigDecimal step = Plot.roundStep(highest.subtract(lowest));
        if (caught.stream().allMatch(CurveSheet::isWholeMark)) {
            step = step.max(BigDecimal.ONE);
        }
        long first = lowest.divide(step, 0, RoundingMode.CEILING).longValueExact();
        long last = highest.divide(step, 0, RoundingMode.FLOOR).longValueExact();
        List<Setting> settings = new ArrayList<>();
        for (long i = Math.max(1, first - 1); i <= last + 1; i++) {
            settings.add(withNumber(
                    caught.get(0).quantity().orElseThrow(),
                    step.multiply(BigDecimal.valueOf(i)).doubleValue()));
        }
        return settings;
    }

    private static <Q extends Quantity<Q>> Setting withNumber(Quantity<Q> like, double number) {
        return Setting.of(Amounts.of(number, like.getUnit()));
    }

    /** The curve has its settings from SI units: 2.8 in come back as a little less. */
    private static BigDecimal decimal(Setting setting) {
        return BigDecimal.valueOf(number(setting)).round(new MathContext(READING_DIGITS));
    }

    /** Nobody sets a gate between its painted marks. */
    private static boolean isWholeMark(Setting setting) {
        return setting.scale() == Setting.Scale.MARK
                && decimal(setting).stripTrailingZeros().scale() <= 0;
    }

    static double number(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }

    static double number(Setting setting) {
        return number(setting.quantity().orElseThrow());
    }

    /** A catch's setting in the unit of the curve's. */
    static double setting(DischargeCurve curve, CalibrationCatch one) {
        return number(curve.settings().get(0).withSi(one.point().setting().si()));
    }
}
