package org.gritwright.examples.fleetday;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.core.fleet.assessment.TankAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.observation.Material;
import org.gritwright.core.solution.FreezingPoint;
import org.gritwright.core.solution.Side;
import org.gritwright.core.solution.TankCorrection;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.examples.fleetday.TruckSheet.FindingLine;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;

/**
 * One tank of the yard as report and console show it.
 *
 * @param assessment what is in it, and what to add
 * @param density the density that is stated of the liquid in it
 */
record TankSheet(TankAssessment assessment, Optional<Quantity<BulkDensity>> density) {
    /** In K. */
    private static final double ICE = 273.15;

    private static final double FAHRENHEIT = 1.8;

    static List<TankSheet> of(FleetResult result) {
        return result.tanks().stream().map(tank -> of(tank, result.day())).toList();
    }

    private static TankSheet of(TankAssessment tank, FleetDay day) {
        return new TankSheet(
                tank,
                day.materials().stream()
                        .filter(material -> material.name().equals(tank.tank().material()))
                        .map(Material::looseBulkDensity)
                        .findFirst());
    }

    public String name() {
        return assessment.tank().name();
    }

    /** All tanks, one row each. */
    static SheetTable table(List<TankSheet> tanks) {
        return new SheetTable(
                "Tanks, in the order of the day",
                List.of("strength", "freezes at", "do next", "wanted", "in the tank", "density"),
                tanks.stream().map(TankSheet::row).toList(),
                List.of());
    }

    private Row row() {
        return Row.of(
                name(),
                new Cell(strength(), assessment.tank().salt().words()),
                freezesAt(),
                doNext(),
                Cell.of(wanted()),
                new Cell(
                        Figures.of(
                                Amounts.format(assessment.tank().level()),
                                Amounts.format(assessment.tank().capacity())),
                        "at " + Amounts.format(assessment.tank().temperature())),
                densityCell());
    }

    /** For example "20.99 % ± 0.20". */
    String strength() {
        return assessment.solution().map(one -> Figures.measured(one.share())).orElse("—");
    }

    private Optional<String> wanted() {
        return assessment
                .tank()
                .target()
                .map(target -> Amounts.format(target)
                        + assessment
                                .tank()
                                .tolerance()
                                .map(limit -> " ± " + Amounts.format(limit))
                                .orElse(""));
    }

    private Cell freezesAt() {
        Optional<Measured<Temperature>> temperature = assessment.freezingPoint().flatMap(FreezingPoint::temperature);
        String side = assessment
                .freezingPoint()
                .map(one -> switch (one.side()) {
                    case UP_TO_EUTECTIC -> "";
                    case UNDECIDED -> "side of the eutectic not known";
                    case BEYOND_EUTECTIC -> "beyond the eutectic";
                })
                .orElse("");
        boolean inFahrenheit = isInFahrenheit();
        return temperature
                .map(point -> new Cell(
                        degrees(point, inFahrenheit),
                        degrees(point, !inFahrenheit) + (side.isEmpty() ? "" : ", " + side)))
                .orElseGet(() -> side.isEmpty() ? Cell.of("—") : new Cell("not known", side));
    }

    private boolean isInFahrenheit() {
        return assessment.tank().temperature().getUnit().equals(SpreadingUnits.FAHRENHEIT);
    }

    /** In the degrees of the tank's own temperature, with a hyphen for minus, for the console. */
    String freezing() {
        return assessment
                .freezingPoint()
                .map(one -> one.temperature()
                                .map(point -> "freezes at "
                                        + degrees(point, isInFahrenheit()).replace('−', '-'))
                                .orElse("freezing point not known")
                        + (one.side() == Side.BEYOND_EUTECTIC ? ", beyond the eutectic" : ""))
                .orElse("freezing point not known");
    }

    /** A temperature and its uncertainty, which is a difference: 1 °C of it are 1.8 °F. */
    private static String degrees(Measured<Temperature> point, boolean inFahrenheit) {
        double celsius = Amounts.si(Temperature.class, point.value()) - ICE;
        Unit<Temperature> unit = inFahrenheit ? SpreadingUnits.FAHRENHEIT : SpreadingUnits.CELSIUS;
        double size = inFahrenheit ? FAHRENHEIT : 1;
        return Figures.degrees(Amounts.of(size * celsius + (inFahrenheit ? 32 : 0), unit))
                + point.expandedUncertainty(Figures.COVERAGE)
                        .map(half -> " "
                                + Figures.within(
                                        Amounts.of(size * half.getValue().doubleValue(), unit)))
                        .orElse("");
    }

    private Cell densityCell() {
        return assessment
                .density()
                .map(one -> {
                    Unit<BulkDensity> unit =
                            density.map(Quantity::getUnit).orElse(one.value().getUnit());
                    return Cell.of(
                            Figures.measured(in(unit, one)), in(unit, one).value(), Figures.DIGITS);
                })
                .orElse(Cell.of("—"));
    }

    private static Measured<BulkDensity> in(Unit<BulkDensity> unit, Measured<BulkDensity> density) {
        Quantity<BulkDensity> value = Amounts.of(Amounts.in(density.value(), unit), unit);
        return density.standardUncertainty()
                .map(u -> Measured.of(
                        value,
                        Amounts.of(Amounts.in(u, unit), unit),
                        density.degreesOfFreedom().orElseThrow()))
                .orElseGet(() -> Measured.once(value));
    }

    private Cell doNext() {
        return assessment
                .correction()
                .map(one -> new Cell(add(one) + ".", afterwards(one)))
                .orElseGet(() -> Cell.of(instruction() + "."));
    }

    /** For example "Add 773.7 lb ± 75 of the salt at hand". */
    String instruction() {
        if (assessment.isRefused()) {
            return "Correct what was written down";
        }
        if (assessment.correction().isPresent()) {
            return add(assessment.correction().get());
        }
        return assessment
                .obstacle()
                .map(why -> (isTooWeak() ? "Too weak" : "Too strong") + ", and can’t be corrected as it is: "
                        + why.sentence())
                .orElseGet(this::withoutCorrection);
    }

    private String withoutCorrection() {
        return assessment
                .verdict()
                .map(verdict -> switch (verdict) {
                    case WITHIN_TOLERANCE -> "Nothing to do";
                    case OUTSIDE_TOLERANCE -> isTooWeak() ? "Too weak" : "Too strong";
                    case UNDECIDED, UNDECIDABLE -> "Read it again, more finely: nobody can tell whether it is off";
                })
                .orElse("Nothing to compare it with: write down what is wanted");
    }

    private boolean isTooWeak() {
        return assessment
                .solution()
                .filter(one -> Amounts.si(Dimensionless.class, one.share().value())
                        < Amounts.si(
                                Dimensionless.class, assessment.tank().target().orElseThrow()))
                .isPresent();
    }

    private static String add(TankCorrection correction) {
        return correction
                .salt()
                .map(salt -> "Add " + Figures.measured(salt) + " of the salt at hand")
                .or(() -> correction.water().map(water -> "Add " + Figures.measured(water) + " of water"))
                .orElse("Nothing to do");
    }

    /** The same in the other unit system, and what it makes of the tank. */
    private static String afterwards(TankCorrection correction) {
        Optional<String> other = correction
                .salt()
                .flatMap(salt -> Figures.otherSystem(salt.value(), Figures.DIGITS))
                .or(() -> correction.water().flatMap(water -> Figures.otherSystem(water.value(), Figures.DIGITS)));
        return other.map(text -> text + "; ").orElse("") + "then " + Figures.text(correction.filled(), Figures.DIGITS)
                + " in it"
                + (correction.rest().getValue().doubleValue() > 0
                        ? ", and " + Figures.text(correction.rest(), 3) + " that doesn’t dissolve"
                        : "");
    }

    /** Why something isn't there, and what a person should know. */
    public List<FindingLine> lines() {
        return Stream.concat(
                        assessment.refusals().stream()
                                .map(refusal -> new FindingLine("Error", Words.ended(refusal.sentence()))),
                        assessment.findings().stream().map(FindingLine::of))
                .toList();
    }

    /** One line for a terminal. */
    String line() {
        return "Tank " + name() + ": " + strength().replace("± ", "+/-") + ", "
                + freezing().replace("± ", "+/-") + ". "
                + instruction().replace("± ", "+/-").replace('’', '\'') + ".";
    }
}
