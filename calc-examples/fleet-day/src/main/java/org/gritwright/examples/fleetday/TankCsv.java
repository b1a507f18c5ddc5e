package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.Optional;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.gritwright.core.fleet.day.TankEntry;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.solution.FreezingPoint;
import org.gritwright.core.solution.Solution;
import org.gritwright.core.solution.TankCorrection;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** The day's tanks as a table for spreadsheets: a row a tank, in the order of the day. */
final class TankCsv {
    private final CsvTable<TankSheet> table = new CsvTable<>();

    private TankCsv(FleetResult result) {
        table.text("tank", TankSheet::name);
        table.text("day", tank -> result.day().day().toString());
        table.text("needs attention", tank -> tank.assessment().needsAttention() ? "yes" : "no");
        table.text("next step", tank -> tank.assessment().nextStep().words());
        table.text("instruction", TankSheet::instruction);
        entered("material", TankEntry::material);
        entered("salt", tank -> tank.salt().words());
        table.measured("strength", tank -> tank.assessment().solution().map(Solution::share), SpreadingUnits.PERCENT);
        table.quantity("wanted", tank -> tank.assessment().tank().target(), SpreadingUnits.PERCENT);
        table.quantity(
                "tolerance of the strength", tank -> tank.assessment().tank().tolerance(), SpreadingUnits.PERCENT);
        table.number("verdict", tank -> tank.assessment().verdict().map(Verdict::words));
        freezing();
        correction();
        inTheTank();
        table.text("findings", tank -> CsvTable.codes(tank.assessment().findings()));
        table.text(
                "refused because", tank -> CsvTable.sentences(tank.assessment().refusals()));
        table.text("record", TankSheet::recordPath);
    }

    static String text(FleetResult result) throws IOException {
        return new TankCsv(result).table.of(TankSheet.of(result));
    }

    private void entered(String name, Function<TankEntry, String> cell) {
        table.text(name, tank -> cell.apply(tank.assessment().tank()));
    }

    private static Optional<Measured<Temperature>> freezingPoint(TankSheet tank) {
        return tank.assessment().freezingPoint().flatMap(FreezingPoint::temperature);
    }

    private void freezing() {
        temperature("freezes at", tank -> freezingPoint(tank).map(Measured::value));
        within("expanded uncertainty of freezes at (°F)", TankSheet.FAHRENHEIT);
        within("expanded uncertainty of freezes at (°C)", 1);
        table.number(
                "side of the eutectic",
                tank -> tank.assessment().freezingPoint().map(point -> TankSheet.words(point.side())));
    }

    private void within(String name, double ofOneCelsius) {
        table.number(
                name,
                tank -> freezingPoint(tank)
                        .flatMap(one -> one.expandedUncertainty(Figures.COVERAGE))
                        .map(half -> bare(ofOneCelsius * half.getValue().doubleValue())));
    }

    private void temperature(String name, Function<TankSheet, Optional<Quantity<Temperature>>> cell) {
        table.number(name + " (°F)", tank -> cell.apply(tank).map(one -> bare(TankSheet.number(one, true))));
        table.number(name + " (°C)", tank -> cell.apply(tank).map(one -> bare(TankSheet.number(one, false))));
    }

    private static String bare(double number) {
        return Figures.number(Amounts.of(number, SpreadingUnits.ONE), SpreadingUnits.ONE);
    }

    private void correction() {
        table.measured(
                "add salt",
                tank -> tank.assessment().correction().flatMap(TankCorrection::salt),
                SpreadingUnits.POUND,
                SpreadingUnits.KILOGRAM);
        table.measured(
                "add water",
                tank -> tank.assessment().correction().flatMap(TankCorrection::water),
                SpreadingUnits.US_GALLON,
                SpreadingUnits.LITER);
        table.quantity(
                "then in the tank",
                tank -> tank.assessment().correction().map(TankCorrection::filled),
                SpreadingUnits.US_GALLON,
                SpreadingUnits.LITER);
        table.quantity(
                "salt that doesn't dissolve",
                tank -> tank.assessment().correction().map(TankCorrection::rest),
                SpreadingUnits.POUND,
                SpreadingUnits.KILOGRAM);
        table.optional(
                "can't be corrected because",
                tank -> tank.assessment().obstacle().map(why -> why.sentence()));
    }

    private void inTheTank() {
        quantity("in the tank", TankEntry::level);
        quantity("capacity", TankEntry::capacity);
        temperature("temperature", tank -> Optional.of(tank.assessment().tank().temperature()));
        table.measured(
                "density",
                tank -> tank.assessment().density(),
                SpreadingUnits.POUND_PER_US_GALLON,
                SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
    }

    private void quantity(String name, Function<TankEntry, Quantity<Volume>> cell) {
        table.quantity(
                name,
                tank -> Optional.of(cell.apply(tank.assessment().tank())),
                SpreadingUnits.US_GALLON,
                SpreadingUnits.LITER);
    }
}
