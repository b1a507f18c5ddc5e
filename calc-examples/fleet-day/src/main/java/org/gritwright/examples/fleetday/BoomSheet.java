package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.boom.NozzleComparison;
import org.gritwright.core.boom.NozzleReview;
import org.gritwright.core.boom.PressureSetUp;
import org.gritwright.core.boom.SectionShare;
import org.gritwright.core.fleet.assessment.BoomAssessment;
import org.gritwright.core.fleet.day.BoomControl;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.units.Amounts;

/**
 * What a truck's boom shows, as the report shows it.
 *
 * @param tables its nozzles, the shares of its sections, the pressure that it was set with
 * @param meaning what its way of keeping the rate hides, in a sentence
 */
record BoomSheet(List<SheetTable> tables, String meaning) {

    static BoomSheet of(BoomAssessment boom) {
        List<SheetTable> tables = new ArrayList<>();
        boom.setUp().ifPresent(setUp -> tables.add(pressure(setUp)));
        boom.nozzles().ifPresent(review -> tables.add(nozzles(review)));
        if (!boom.shares().isEmpty()) {
            tables.add(sections(boom));
        }
        return new BoomSheet(tables, meaning(boom.control()));
    }

    private static String meaning(BoomControl control) {
        return switch (control) {
            case FLOW ->
                "The boom’s rate is kept by flow: the flow meter holds the total, and what one nozzle gives too much the others"
                        + " lack. Neither the display nor a verification catch shows that.";
            case PRESSURE ->
                "The boom’s rate is kept by pressure: a nozzle that gives too much adds to the total, the others keep their"
                        + " rate, and a heavier liquid comes out slower.";
        };
    }

    private static SheetTable nozzles(NozzleReview review) {
        return new SheetTable(
                "Nozzles, beside the " + review.yardstick().words() + ", "
                        + Figures.text(review.reference(), Figures.DIGITS) + ", tolerance ±"
                        + Amounts.format(review.tolerance().limit()),
                List.of("nozzle", "flow", "off by", "verdict"),
                review.comparisons().stream().map(BoomSheet::nozzle).toList(),
                review.variation().stream()
                        .map(variation -> "They vary by " + Figures.text(variation, 2)
                                + " (coefficient of variation: standard deviation ÷ mean).")
                        .toList());
    }

    private static Row nozzle(NozzleComparison one) {
        return Row.of(
                one.nozzle().section(),
                Cell.of(one.nozzle().nozzle()),
                Cell.computed(one.nozzle().flow().value(), Figures.DIGITS),
                new Cell(
                        Figures.errorForPrint(one.deviation().value()),
                        one.deviation()
                                .expandedUncertainty(Figures.COVERAGE)
                                .map(Figures::within)
                                .orElse("")),
                Cell.of(one.condition().words().replace('\'', '’')));
    }

    private static SheetTable sections(BoomAssessment boom) {
        boolean byFlow = boom.control() == BoomControl.FLOW;
        return new SheetTable(
                "Sections of the boom",
                List.of("nozzles", "share", "even share", byFlow ? "rate off by" : "share off by"),
                boom.shares().stream().map(BoomSheet::section).toList(),
                List.of());
    }

    private static Row section(SectionShare one) {
        return Row.of(
                one.section(),
                Cell.of(String.valueOf(one.nozzles())),
                Cell.of(Figures.text(one.share(), 3)),
                Cell.of(Figures.text(one.even(), 3)),
                Cell.of(Figures.errorForPrint(one.error())));
    }

    private static SheetTable pressure(PressureSetUp setUp) {
        return new SheetTable(
                "Pressure of the boom",
                List.of(),
                List.of(
                        Row.of("set up with", Cell.exact(setUp.setUpWith())),
                        Row.of("runs now", Cell.exact(setUp.runsWith())),
                        Row.of("its volume is off by", Cell.of(Figures.errorForPrint(setUp.error()))),
                        Row.of(
                                "right pressure",
                                Cell.of(Figures.text(setUp.pressureFactor(), 3) + " × the one that was set"))),
                List.of("Only if the nozzles are made for that pressure, and the maker’s manual lets you set it."));
    }
}
