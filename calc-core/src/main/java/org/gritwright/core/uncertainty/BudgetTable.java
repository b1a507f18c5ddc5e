package org.gritwright.core.uncertainty;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.measure.Quantity;
import org.gritwright.core.statistics.Student;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;

/** A budget as lines of text. */
final class BudgetTable {
    private static final int DIGITS = 3;
    private static final double COVERAGE = 0.95;
    private static final List<String> HEAD = List.of(
            "component", "type", "distribution", "standard uncertainty", "contribution", "share", "degrees of freedom");

    private BudgetTable() {}

    static <Q extends Quantity<Q>> String of(Budget<Q> budget) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(HEAD);
        for (Component<Q> component : budget.components()) {
            rows.add(List.of(
                    component.name()
                            + component.group().map(g -> " (" + g + ")").orElse(""),
                    component.evaluation() == Component.Evaluation.TYPE_A ? "A" : "B",
                    words(component.distribution()),
                    Rounded.text(component.standardUncertainty(), DIGITS),
                    Rounded.text(component.contribution(), DIGITS),
                    percent(budget.shareOf(component)),
                    Student.words(component.degreesOfFreedom())));
        }
        Measured<Q> result = budget.result();
        rows.add(List.of(
                "combined",
                "",
                "",
                "",
                Rounded.text(result.standardUncertainty().orElseThrow(), DIGITS),
                budget.components().isEmpty() ? "" : "100 %",
                Student.words(result.degreesOfFreedom().orElseThrow())));
        Quantity<Q> expanded = result.expandedUncertainty(COVERAGE).orElseThrow();
        return aligned(rows) + asFineAs(expanded, result.value()) + " ± " + Rounded.text(expanded, DIGITS) + " (95 %)";
    }

    /** The value with as many decimals as its uncertainty. */
    private static <Q extends Quantity<Q>> String asFineAs(Quantity<Q> uncertainty, Quantity<Q> value) {
        BigDecimal rounded = BigDecimal.valueOf(uncertainty.getValue().doubleValue())
                .round(new MathContext(DIGITS, RoundingMode.HALF_EVEN));
        if (rounded.signum() == 0) {
            return Amounts.format(value);
        }
        BigDecimal number = BigDecimal.valueOf(value.getValue().doubleValue())
                .setScale(Math.max(0, rounded.scale()), RoundingMode.HALF_EVEN);
        return Amounts.format(Amounts.of(number.doubleValue(), value.getUnit()));
    }

    private static String words(Distribution distribution) {
        return distribution.name().toLowerCase(Locale.ROOT);
    }

    private static String percent(double share) {
        return BigDecimal.valueOf(100 * share)
                        .setScale(1, RoundingMode.HALF_EVEN)
                        .toPlainString() + " %";
    }

    private static String aligned(List<List<String>> rows) {
        int[] widths = new int[HEAD.size()];
        for (List<String> row : rows) {
            for (int i = 0; i < row.size(); i++) {
                widths[i] = Math.max(widths[i], row.get(i).length());
            }
        }
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < row.size(); i++) {
                line.append(row.get(i)).append(" ".repeat(widths[i] - row.get(i).length() + 2));
            }
            text.append(line.toString().stripTrailing()).append('\n');
        }
        return text.toString();
    }
}
