package org.gritwright.core;

import java.util.List;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.PublishedCheck.Source;
import org.gritwright.core.PublishedCheck.Tolerance;
import org.gritwright.core.blend.BlendComponent;
import org.gritwright.core.blend.BlendPart;
import org.gritwright.core.blend.MixingSquare;
import org.gritwright.core.lateral.Driving;
import org.gritwright.core.lateral.Pan;
import org.gritwright.core.lateral.RoadStrip;
import org.gritwright.core.lateral.SpreadPattern;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Published numbers of what lies where across the road, and of mixes. */
final class SpreadChecks extends CheckList {
    /** Square feet, so that a pan's pounds are its lb/ft². */
    private static final Quantity<Length> FOOT = Amounts.of(1, SpreadingUnits.FOOT);

    private SpreadChecks() {}

    static List<PublishedCheck> all() {
        SpreadChecks checks = new SpreadChecks();
        checks.catchCans();
        checks.effectiveSwath();
        checks.tarp();
        checks.variation();
        checks.squares();
        checks.dampSand();
        return checks.rows();
    }

    private static Quantity<Length> feet(double feet) {
        return Amounts.of(feet, SpreadingUnits.FOOT);
    }

    private static double number(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }

    /** Pans of a square foot from a first position on, so far apart. */
    private static SpreadPattern row(double first, double apart, double... pounds) {
        return SpreadPattern.of(IntStream.range(0, pounds.length)
                .mapToObj(i -> Pan.of(feet(first + i * apart), FOOT, FOOT, Amounts.of(pounds[i], SpreadingUnits.POUND)))
                .toList());
    }

    /** Water in cans is as good as salt in pans: so many inches an hour are here so many pounds per square foot. */
    private void catchCans() {
        SpreadPattern cans = row(-35, 10, 0.10, 0.21, 0.24, 0.28, 0.23, 0.21, 0.03);
        String[] forty = {"0.33", "0.42", "0.27", "0.28"};
        String[] sixty = {"0.23", "0.21", "0.13", "0.21", "0.24", "0.28"};
        overlapped(cans, 40, forty);
        overlapped(cans, 60, sixty);
    }

    private void overlapped(SpreadPattern cans, int spacing, String... stated) {
        for (int i = 0; i < stated.length; i++) {
            int at = 5 + 10 * i;
            add(
                    "catch-cans-" + spacing + "-" + at,
                    "catch cans 10 ft apart, first row, passes " + spacing + " ft apart: both together at " + at
                            + " ft",
                    Source.CATCH_CANS,
                    stated[i],
                    "",
                    Tolerance.LAST_DIGIT,
                    () -> number(cans.overlap(feet(spacing), Driving.SAME_DIRECTION)
                                    .rateAt(feet(at)))
                            / 1000);
        }
    }

    private void effectiveSwath() {
        SpreadPattern boxes = row(-9, 1, 0, 0, 1, 2, 3, 4, 4, 4, 4, 4, 4, 4, 4, 4, 3, 2, 1, 0, 0);
        add(
                "effective-swath",
                "boxes a foot apart, 4 in deep in the middle and 2 in at 6 ft on either side: effective swath width",
                Source.BULLETIN_817,
                "12",
                "ft",
                Tolerance.LAST_DIGIT,
                () -> number(boxes.treated().width()));
    }

    private void tarp() {
        Quantity<Length> side = Amounts.of(56, SpreadingUnits.INCH);
        SpreadPattern tarps = SpreadPattern.of(IntStream.range(0, 3)
                .mapToObj(i -> Pan.of(feet(6 * i), side, side, Amounts.of(1, SpreadingUnits.POUND)))
                .toList());
        add(
                "tarp",
                "1 lb on a tarp of 56 in × 56 in, 1/2000 acre, is a ton per acre",
                Source.IOWA_TARP,
                "2000",
                "lb/acre",
                Tolerance.LAST_DIGIT,
                () -> Amounts.in(tarps.rates().get(0).value(), SpreadingUnits.POUND_PER_ACRE));
    }

    private void variation() {
        SpreadPattern pans = row(-2, 1, 1, 2, 3, 2, 1);
        add(
                "pan-variation",
                "five pans beside each other with 1, 2, 3, 2 and 1: √0.56 ÷ 1.8",
                Source.ARITHMETIC,
                "41.574",
                "%",
                Tolerance.LAST_DIGIT,
                () -> number(pans.variation(new RoadStrip(feet(-2.5), feet(2.5)))));
    }

    private static Measured<Dimensionless> percent(double percent) {
        return Measured.once(Amounts.of(percent, SpreadingUnits.PERCENT));
    }

    private void squares() {
        square("pearson-first", "12.25 and 10.8 for 11: of the first", Source.PEARSON, 12.25, 10.8, 11, "13.8");
        square("pearson-second", "12.25 and 10.8 for 11: of the second", Source.PEARSON, 10.8, 12.25, 11, "86.2");
        square(
                "mixing-square",
                "45 and 10 for 14: 4 of 35 parts of the first",
                Source.ARITHMETIC,
                45,
                10,
                14,
                "11.429");
    }

    private void square(
            String id, String what, Source source, double first, double second, double target, String stated) {
        MixingSquare square = new MixingSquare(percent(first), percent(second), percent(target));
        add(
                id,
                what,
                source,
                stated,
                "%",
                Tolerance.LAST_DIGIT,
                () -> number(square.partOfFirst().value()));
    }

    private void dampSand() {
        Moisture damp = new Moisture(
                Amounts.of(5, SpreadingUnits.PERCENT), Amounts.of(0, SpreadingUnits.PERCENT), Moisture.Basis.DRY_MASS);
        BlendComponent sand = BlendComponent.inert("sand", damp);
        add(
                "damp-sand",
                "dry sand of 1600 kg/m³ made 25 % larger by 5 % of water: dry mass of a loose cubic meter of 1344 kg",
                Source.ARITHMETIC,
                "1280",
                "kg",
                Tolerance.EXACT,
                () -> {
                    BlendPart bucket = BlendPart.byVolume(
                            sand,
                            Measured.once(Amounts.of(1, SpreadingUnits.CUBIC_METER)),
                            Measured.once(Amounts.of(1344, SpreadingUnits.KILOGRAM_PER_CUBIC_METER)));
                    return number(bucket.mass().value()) * damp.dryPart();
                });
    }
}
