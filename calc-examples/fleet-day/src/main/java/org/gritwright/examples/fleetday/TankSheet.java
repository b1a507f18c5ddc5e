package org.gritwright.examples.fleetday;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.core.fleet.assessment.TankAssessment;
import org.gritwright.core.fleet.assessment.TankStep;
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
 * @param recordFile the file name of its record
 */
record TankSheet(TankAssessment assessment, Optional<Quantity<BulkDensity>> density, String recordFile) {
    /** In K. */
    private static final double ICE = 273.15;

    /** Of a difference of temperatures: 1 °C of it are 1.8 °F. */
    static final double FAHRENHEIT = 1.8;

    static List<TankSheet> of(FleetResult result) {
        RecordNames names = new RecordNames();
        return result.tanks().stream()
                .map(tank -> of(tank, result.day(), names.next(tank.tank().name())))
                .toList();
    }

    private static TankSheet of(TankAssessment tank, FleetDay day, String recordFile) {
        return new TankSheet(
                tank,
                day.materials().stream()
                        .filter(material -> material.name().equals(tank.tank().material()))
                        .map(Material::looseBulkDensity)
                        .findFirst(),
                recordFile);
    }

    /** Where its record is, seen from the output folder. */
    String recordPath() {
        return OutputFolder.TANK_RECORDS + "/" + recordFile;
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
                .map(FreezingPoint::side)
                .filter(one -> one != Side.UP_TO_EUTECTIC)
                .map(TankSheet::words)
                .orElse("");
        boolean inFahrenheit = isInFahrenheit();
        return temperature
                .map(point -> new Cell(
                        degrees(point, inFahrenheit),
                        degrees(point, !inFahrenheit) + (side.isEmpty() ? "" : ", " + side)))
                .orElseGet(() -> side.isEmpty() ? Cell.of("—") : new Cell("not known", side));
    }

    static String words(Side side) {
        return switch (side) {
            case UP_TO_EUTECTIC -> "up to the eutectic";
            case UNDECIDED -> "side of the eutectic not known";
            case BEYOND_EUTECTIC -> "beyond the eutectic";
        };
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
        Unit<Temperature> unit = inFahrenheit ? SpreadingUnits.FAHRENHEIT : SpreadingUnits.CELSIUS;
        double size = inFahrenheit ? FAHRENHEIT : 1;
        return Figures.degrees(Amounts.of(number(point.value(), inFahrenheit), unit))
                + point.expandedUncertainty(Figures.COVERAGE)
                        .map(half -> " "
                                + Figures.within(
                                        Amounts.of(size * half.getValue().doubleValue(), unit)))
                        .orElse("");
    }

    /** On one of the two scales, which differ by more than a factor. */
    static double number(Quantity<Temperature> temperature, boolean inFahrenheit) {
        double celsius = Amounts.si(Temperature.class, temperature) - ICE;
        return inFahrenheit ? FAHRENHEIT * celsius + 32 : celsius;
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
                .orElseGet(() -> new Cell(instruction() + ".", isAsWantedAtEutectic() ? "as strong as is wanted" : ""));
    }

    /** The finding that nobody can tell the side stands beside it. */
    private boolean isAsWantedAtEutectic() {
        return assessment.nextStep() == TankStep.NOTHING
                && assessment
                        .freezingPoint()
                        .filter(one -> one.side() == Side.UNDECIDED)
                        .isPresent();
    }

    /** For example "Add 773.7 lb ± 75 of the salt at hand". */
    String instruction() {
        TankStep step = assessment.nextStep();
        return switch (step) {
            case CORRECT -> add(assessment.correction().orElseThrow());
            case FIND_ANOTHER_WAY -> isTooWeak() ? "Too weak" + why() : "Too strong" + why();
            case READ_AGAIN ->
                step.words() + ": nobody can tell "
                        + (assessment.verdict().isPresent()
                                ? "whether it is off"
                                : "on which side of the eutectic it is");
            case STATE_TARGET -> "Nothing to compare it with: write down what is wanted";
            case FIX_RECORD, CHECK_ENTRIES, KEEP_FROM_COLD, NOTHING ->
                step.words().replace('\'', '’');
        };
    }

    private String why() {
        return assessment
                .obstacle()
                .map(why -> ", and can’t be corrected as it is: " + why.sentence())
                .orElse("");
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
