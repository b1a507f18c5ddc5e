package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Conformity;
import org.gritwright.core.verification.Judgement;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * An uncertainty budget as the report's template reads it: a bar a component, as long as what it contributes.
 *
 * @param caption what is uncertain
 * @param bars the components, the largest first, and what they make together
 * @param note the result
 */
record BudgetSheet(String caption, List<Bar> bars, String note) {
    private static final int DIGITS = 2;
    private static final int FACTOR_DIGITS = 3;

    /**
     * A bar.
     *
     * @param name what is uncertain
     * @param length from 0 to 100
     * @param text the standard uncertainty that it contributes
     * @param share its part of the combined variance; empty for the sum
     */
    record Bar(String name, long length, String text, String share) {}

    static List<BudgetSheet> of(TruckResult truck) {
        List<BudgetSheet> sheets = new ArrayList<>();
        for (Calibration calibration : truck.calibrations()) {
            sheets.add(of(
                    "Uncertainty of the " + Metered.discharge(calibration.point()) + ", "
                            + SheetTables.place(calibration.point()),
                    calibration.budget(),
                    calibration.point().material().isLiquid() ? part(calibration.budget()) : result -> result));
        }
        truck.judged().map(BudgetSheet::of).ifPresent(sheets::add);
        return sheets;
    }

    /** Of a liquid, people compare parts of what was found: it may be kept as a volume per pulse, or as pulses per volume. */
    private static <Q extends Quantity<Q>> Function<Quantity<Q>, Quantity<?>> part(Budget<Q> budget) {
        Quantity<Q> whole = budget.result().value();
        return uncertainty -> Amounts.of(
                100
                        * Amounts.in(uncertainty, whole.getUnit())
                        / whole.getValue().doubleValue(),
                SpreadingUnits.PERCENT);
    }

    /** An error below the tolerance means that the truck puts down more than it believes; or less than was asked for. */
    private static BudgetSheet of(VerificationSeries series) {
        Judgement judgement = series.judgement();
        boolean counted = series.last().calibrationError().isPresent();
        BudgetSheet sheet = of(
                "Uncertainty of the " + (counted ? "calibration" : "delivery") + " error, "
                        + Words.catches(series) + (series.size() == 1 ? ", " : " together, ")
                        + SheetTables.place(series.last()),
                judgement.budget(),
                result -> result);
        // An error of the calibration says how much more the truck believes than it lays, one of the delivery how much
        // it lays.
        Conformity chances = judgement.conformity();
        double tooMuch = counted ? chances.below() : chances.above();
        double tooLittle = counted ? chances.above() : chances.below();
        return new BudgetSheet(
                sheet.caption,
                sheet.bars,
                sheet.note + " Error " + Figures.errorWithin(judgement).replace('-', '−') + ": chance to be within the"
                        + " tolerance " + Figures.chance(chances.within())
                        + ", to put down too much " + Figures.chance(tooMuch) + ", too little "
                        + Figures.chance(tooLittle) + ". Verdict: "
                        + judgement.verdict().words() + "; "
                        + judgement.advice().words() + ".");
    }

    /**
     * The sheet.
     *
     * @param shown the result, or a part of its uncertainty, in the words of the yard
     */
    private static <Q extends Quantity<Q>> BudgetSheet of(
            String caption, Budget<Q> budget, Function<Quantity<Q>, Quantity<?>> shown) {
        Quantity<Q> combined = budget.result().standardUncertainty().orElseThrow();
        double longest = combined.getValue().doubleValue();
        List<Bar> bars = new ArrayList<>();
        budget.components().stream()
                .sorted((a, b) -> Double.compare(budget.shareOf(b), budget.shareOf(a)))
                .forEach(component -> bars.add(bar(budget, component, longest, shown)));
        bars.add(new Bar("together", longest > 0 ? 100 : 0, Figures.text(shown.apply(combined), DIGITS), ""));
        Quantity<Q> expanded =
                budget.result().expandedUncertainty(Figures.COVERAGE).orElseThrow();
        double factor = budget.result().coverageFactor(Figures.COVERAGE).orElseThrow();
        return new BudgetSheet(
                caption,
                bars,
                "In 95 of 100 such catches within ± " + Figures.text(shown.apply(expanded), DIGITS) + ", "
                        + Figures.text(Amounts.of(factor, SpreadingUnits.ONE), FACTOR_DIGITS)
                        + " times the standard uncertainty.");
    }

    private static <Q extends Quantity<Q>> Bar bar(
            Budget<Q> budget, Component<Q> component, double longest, Function<Quantity<Q>, Quantity<?>> shown) {
        double size = Math.abs(
                Amounts.in(component.contribution(), budget.result().value().getUnit()));
        return new Bar(
                component.name(),
                longest > 0 ? Math.round(100 * Math.min(1, size / longest)) : 0,
                Figures.text(
                        shown.apply(Amounts.of(size, budget.result().value().getUnit())), DIGITS),
                Figures.chance(budget.shareOf(component)));
    }
}
