package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.assessment.ToDo;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.roadspeed.RoadSpeedCheck;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.verification.Judgement;
import org.gritwright.core.verification.Verification;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;

/**
 * The day as a table for spreadsheets (RFC 4180): a row a truck, in the order of the day, units in the header or, where
 * they differ from truck to truck, in the cell.
 */
final class FleetCsv {
    private final CsvTable<TruckResult> table = new CsvTable<>();

    private FleetCsv(FleetResult result) {
        table.text("truck", TruckResult::id);
        table.text("day", truck -> result.day().day().toString());
        table.text("needs attention", truck -> truck.needsAttention() ? "yes" : "no");
        table.text("next step", truck -> truck.assessment().nextStep().words());
        table.text("instruction", truck -> truck.instruction().text());
        table.text(
                "to do",
                truck -> truck.assessment().toDo().stream().map(ToDo::toString).collect(Collectors.joining("; ")));
        table.text("metered by", TruckResult::machine);
        table.text("metering", truck -> truck.metering().words());
        table.text("road speed", truck -> truck.roadSpeed().words());
        table.text("material", FleetCsv::material);
        table.optional("value as found", truck -> truck.display().asFound().map(Amounts::format));
        table.optional("value as left", truck -> truck.display().asLeft().map(Amounts::format));
        table.optional("value to enter", FleetCsv::toEnter);
        massPerRevolution();
        calibration();
        verification();
        roadSpeed();
        table.text("findings", truck -> CsvTable.codes(truck.assessment().findings()));
        table.text(
                "record refused because",
                truck -> CsvTable.sentences(truck.assessment().refusals()));
        table.text("record", TruckResult::recordPath);
    }

    static String text(FleetResult result) throws IOException {
        return new FleetCsv(result).table.of(result.trucks());
    }

    private void massPerRevolution() {
        table.number(
                "mass per revolution measured (lb/rev)",
                truck -> truck.measured().map(m -> Figures.number(m.value(), SpreadingUnits.POUND_PER_REVOLUTION)));
        table.number(
                "expanded uncertainty of the measured (lb/rev)",
                truck -> truck.measured()
                        .flatMap(m -> m.expandedUncertainty(Figures.COVERAGE))
                        .map(u -> Figures.number(u, SpreadingUnits.POUND_PER_REVOLUTION)));
        table.number(
                "mass per revolution as left (lb/rev)",
                truck -> truck.massPerRevolution().map(m -> Figures.number(m, SpreadingUnits.POUND_PER_REVOLUTION)));
        table.number(
                "mass per revolution as left (kg/rev)",
                truck -> truck.massPerRevolution().map(m -> Figures.number(m, SpreadingUnits.KILOGRAM_PER_REVOLUTION)));
    }

    /** Several calibrations of a truck, for several materials or gate openings, stand in one cell, with their units. */
    private void calibration() {
        calibrations("mass per revolution by calibration catches", isOfLiquid(false, FleetCsv::found));
        calibrations("volume per revolution or pulse by calibration catches", isOfLiquid(true, FleetCsv::found));
        calibrations(
                "expanded uncertainty (95 %)",
                c -> Optional.of(Figures.text(
                        c.point()
                                .asMetered(c.dischargePerRevolution()
                                        .expandedUncertainty(Figures.COVERAGE)
                                        .orElseThrow()),
                        2)));
        calibrations(
                "largest source of uncertainty",
                c -> Optional.of(c.budget().dominant().map(Component::name).orElse("none")));
        calibrations("apparent fill (1 is loose bulk density)", isOfLiquid(false, FleetCsv::fill));
        calibrations("part of what the pump or flow meter is rated for", isOfLiquid(true, FleetCsv::fill));
    }

    private static Function<Calibration, Optional<String>> isOfLiquid(
            boolean wanted, Function<Calibration, String> cell) {
        return one -> Optional.of(one)
                .filter(c -> c.point().material().isLiquid() == wanted)
                .map(cell);
    }

    private static String found(Calibration one) {
        return Figures.text(one.point().asMetered(one.dischargePerRevolution().value()), Figures.DIGITS);
    }

    private static String fill(Calibration one) {
        return Figures.text(one.apparentFill().quantity(), 3);
    }

    private void verification() {
        table.text(
                "verification catches (count)",
                truck -> String.valueOf(truck.assessment().verifications().size()));
        amounts(Mass.class, SpreadingUnits.POUND);
        amounts(Mass.class, SpreadingUnits.KILOGRAM);
        amounts(Volume.class, SpreadingUnits.US_GALLON);
        amounts(Volume.class, SpreadingUnits.LITER);
        last("calibration error (%)", v -> v.calibrationError().map(e -> Figures.number(e, SpreadingUnits.PERCENT)));
        judged(
                "error of the catches judged together (%)",
                j -> percent(j.budget().result().value()));
        judged("expanded uncertainty of the error (%)", j -> percent(j.expandedUncertainty()));
        judged("guard band (%)", j -> percent(j.guardBand()));
        judged("probability below tolerance (%)", j -> percent(j.conformity().below()));
        judged("probability within tolerance (%)", j -> percent(j.conformity().within()));
        judged("probability above tolerance (%)", j -> percent(j.conformity().above()));
        judged("verdict of the last catches", j -> Optional.of(j.verdict().words()));
        judged("advice", j -> Optional.of(j.advice().words()));
        catchMore(Mass.class, SpreadingUnits.POUND);
        catchMore(Mass.class, SpreadingUnits.KILOGRAM);
        catchMore(Volume.class, SpreadingUnits.US_GALLON);
        catchMore(Volume.class, SpreadingUnits.LITER);
        always("delivery error (%)", v -> Figures.number(v.deliveryError(), SpreadingUnits.PERCENT));
        delivered(ApplicationRate.class, SpreadingUnits.POUND_PER_MILE);
        delivered(ApplicationRate.class, SpreadingUnits.KILOGRAM_PER_KILOMETER);
        delivered(LiquidApplicationRate.class, SpreadingUnits.US_GALLON_PER_MILE);
        delivered(LiquidApplicationRate.class, SpreadingUnits.LITER_PER_KILOMETER);
        table.number(
                "dry chemical with the wetted (% more displayed than laid)",
                truck -> truck.assessment()
                        .prewet()
                        .flatMap(total -> percent(total.error().value())));
        table.number(
                "verdict of the dry chemical",
                truck ->
                        truck.assessment().prewet().map(total -> total.verdict().words()));
    }

    private <Q extends Quantity<Q>> void amounts(Class<Q> kind, Unit<Q> unit) {
        String in = " (" + UnitSymbol.of(unit).symbol() + ")";
        last("expected" + in, v -> number(v.expected(), kind, unit));
        last("indicated" + in, v -> v.indicated().flatMap(shown -> number(shown, kind, unit)));
        last("caught" + in, v -> number(v.source().caught().total(), kind, unit));
    }

    private <Q extends Quantity<Q>> void catchMore(Class<Q> kind, Unit<Q> unit) {
        judged(
                "catch more (" + UnitSymbol.of(unit).symbol() + ")",
                j -> j.further().flatMap(further -> number(further.amount(), kind, unit)));
    }

    private <Q extends Quantity<Q>> void delivered(Class<Q> kind, Unit<Q> unit) {
        last("delivered rate (" + UnitSymbol.of(unit).symbol() + ")", v -> number(v.deliveredRate(), kind, unit));
    }

    /** Masses stand in columns of masses, volumes of liquids in others. */
    private static <Q extends Quantity<Q>> Optional<String> number(Quantity<?> value, Class<Q> kind, Unit<Q> unit) {
        return UnitSymbol.of(value.getUnit()).kind() == kind
                ? Optional.of(Figures.number(value.asType(kind), unit))
                : Optional.empty();
    }

    private void roadSpeed() {
        road("road-speed value in force", check -> Amounts.format(check.inForce()));
        road("road-speed value measured", check -> Figures.text(check.measured().value(), 5));
        road("effect on rate (%)", check -> Figures.number(check.effectOnRate(), SpreadingUnits.PERCENT));
    }

    private void last(String name, Function<Verification, Optional<String>> cell) {
        table.number(name, truck -> truck.lastVerification().flatMap(cell));
    }

    private void always(String name, Function<Verification, String> cell) {
        last(name, verification -> Optional.of(cell.apply(verification)));
    }

    private void calibrations(String name, Function<Calibration, Optional<String>> cell) {
        table.text(
                name,
                truck -> truck.calibrations().stream()
                        .flatMap(one -> cell.apply(one).stream())
                        .collect(Collectors.joining("; ")));
    }

    private void judged(String name, Function<Judgement, Optional<String>> cell) {
        table.number(name, truck -> truck.judged().flatMap(series -> cell.apply(series.judgement())));
    }

    private static Optional<String> percent(Quantity<Dimensionless> ratio) {
        return Optional.of(Figures.number(ratio, SpreadingUnits.PERCENT));
    }

    /** To a ten-thousandth of a percent: nobody needs to know how unlikely the unlikely is. */
    private static Optional<String> percent(double ratio) {
        BigDecimal rounded = BigDecimal.valueOf(100 * ratio).setScale(4, RoundingMode.HALF_EVEN);
        return Optional.of(
                rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString());
    }

    private void road(String name, Function<RoadSpeedCheck, String> cell) {
        table.number(name, truck -> truck.assessment().roadSpeed().map(cell));
    }

    private static String material(TruckResult truck) {
        TruckAssessment assessment = truck.assessment();
        return Stream.concat(
                        assessment.truck().calibrationCatches().stream().map(c -> c.entry()),
                        assessment.truck().verificationCatches().stream().map(v -> v.entry()))
                .map(CatchEntry::material)
                .distinct()
                .collect(Collectors.joining("; "));
    }

    private static Optional<String> toEnter(TruckResult truck) {
        return truck.assessment()
                .toCorrect()
                .flatMap(PointAssessment::correction)
                .filter(c -> truck.assessment().nextStep() == NextStep.ENTER_CORRECTION)
                .map(c -> Amounts.format(c.toEnter().value()));
    }
}
