package org.gritwright.core.simulation;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.PulsesPerRevolution;

/** Changes of what was written down, in one place or in all. */
final class Edit {

    private Edit() {}

    /** The simulated trucks have conveyors. */
    static SpreaderEntry spreader(TruckDay truck) {
        return (SpreaderEntry) truck.spreader();
    }

    static CalibrationCatchEntry with(CalibrationCatchEntry one, CatchEntry entry) {
        return new CalibrationCatchEntry(entry, one.primed(), one.coasting());
    }

    static VerificationCatchEntry with(VerificationCatchEntry one, CatchEntry entry) {
        return new VerificationCatchEntry(
                entry,
                one.inForce(),
                one.slot(),
                one.target(),
                one.testSpeed(),
                one.runTime(),
                one.testDistance(),
                one.indicated(),
                one.indicatedStep());
    }

    static VerificationCatchEntry withInForce(VerificationCatchEntry one, Quantity<?> value) {
        return new VerificationCatchEntry(
                one.entry(),
                value,
                one.slot(),
                one.target(),
                one.testSpeed(),
                one.runTime(),
                one.testDistance(),
                one.indicated(),
                one.indicatedStep());
    }

    static VerificationCatchEntry withIndicated(VerificationCatchEntry one, UnaryOperator<Quantity<Mass>> edit) {
        return new VerificationCatchEntry(
                one.entry(),
                one.inForce(),
                one.slot(),
                one.target(),
                one.testSpeed(),
                one.runTime(),
                one.testDistance(),
                one.indicated().map(shown -> edit.apply(shown.asType(Mass.class))),
                one.indicatedStep());
    }

    static VerificationCatchEntry withRunTime(VerificationCatchEntry one, double factor) {
        return new VerificationCatchEntry(
                one.entry(),
                one.inForce(),
                one.slot(),
                one.target(),
                one.testSpeed(),
                one.runTime().map(time -> scaled(time, factor)),
                one.testDistance(),
                one.indicated(),
                one.indicatedStep());
    }

    static <Q extends Quantity<Q>> Quantity<Q> scaled(Quantity<Q> quantity, double factor) {
        return Amounts.of(quantity.getValue().doubleValue() * factor, quantity.getUnit());
    }

    static Quantity<?> scaledAny(Quantity<?> quantity, double factor) {
        return any(quantity, quantity.getValue().doubleValue() * factor);
    }

    /** Another number with the same unit. */
    @SuppressWarnings({"unchecked", "rawtypes"}) // whatever kind it is, it stays
    static Quantity<?> any(Quantity<?> quantity, double number) {
        return Amounts.of(number, ((Quantity) quantity).getUnit());
    }

    static List<CalibrationCatchEntry> calibrations(
            List<CalibrationCatchEntry> catches, UnaryOperator<CatchEntry> edit) {
        return catches.stream().map(one -> with(one, edit.apply(one.entry()))).toList();
    }

    static List<VerificationCatchEntry> verifications(
            List<VerificationCatchEntry> catches, UnaryOperator<CatchEntry> edit) {
        return catches.stream().map(one -> with(one, edit.apply(one.entry()))).toList();
    }

    static <T> List<T> one(List<T> all, int index, UnaryOperator<T> edit) {
        List<T> edited = new ArrayList<>(all);
        edited.set(index, edit.apply(all.get(index)));
        return edited;
    }

    static FleetDay truck(FleetDay day, UnaryOperator<TruckDay> edit) {
        return day.withTrucks(one(day.trucks(), 0, edit));
    }

    static TruckDay spreader(TruckDay truck, UnaryOperator<SpreaderEntry> edit) {
        return truck.spreader(edit.apply(spreader(truck)));
    }

    /** All catches of the first truck. */
    static FleetDay everyCatch(FleetDay day, UnaryOperator<CatchEntry> edit) {
        return truck(
                day,
                truck -> truck.calibrationCatches(calibrations(truck.calibrationCatches(), edit))
                        .verificationCatches(verifications(truck.verificationCatches(), edit)));
    }

    static FleetDay everyCalibrationCatch(FleetDay day, UnaryOperator<CatchEntry> edit) {
        return truck(day, truck -> truck.calibrationCatches(calibrations(truck.calibrationCatches(), edit)));
    }

    static FleetDay everyVerificationCatch(FleetDay day, UnaryOperator<CatchEntry> edit) {
        return truck(day, truck -> truck.verificationCatches(verifications(truck.verificationCatches(), edit)));
    }

    /** One document for each calibration catch of the first truck, with that catch alone changed. */
    static List<FleetDay> eachCalibrationCatch(FleetDay day, UnaryOperator<CatchEntry> edit) {
        TruckDay truck = day.trucks().get(0);
        return IntStream.range(0, truck.calibrationCatches().size())
                .mapToObj(i -> truck(
                        day,
                        one -> one.calibrationCatches(
                                Edit.one(one.calibrationCatches(), i, made -> with(made, edit.apply(made.entry()))))))
                .toList();
    }

    /** One document for each catch of the first truck, with that catch alone changed. */
    static List<FleetDay> eachCatch(FleetDay day, UnaryOperator<CatchEntry> edit) {
        TruckDay truck = day.trucks().get(0);
        List<FleetDay> all = new ArrayList<>(eachCalibrationCatch(day, edit));
        for (int i = 0; i < truck.verificationCatches().size(); i++) {
            int index = i;
            all.add(truck(
                    day,
                    one -> one.verificationCatches(
                            Edit.one(one.verificationCatches(), index, made -> with(made, edit.apply(made.entry()))))));
        }
        return List.copyOf(all);
    }

    static CatchEntry withContainers(CatchEntry entry, List<WeighingEntry> containers) {
        return new CatchEntry(
                entry.at(),
                entry.operator(),
                entry.scale(),
                containers,
                Optional.empty(),
                Optional.empty(),
                entry.counted(),
                entry.setting(),
                entry.material(),
                entry.conditions(),
                entry.notes());
    }

    static CatchEntry containers(CatchEntry entry, UnaryOperator<WeighingEntry> edit) {
        return withContainers(entry, entry.containers().stream().map(edit).toList());
    }

    static WeighingEntry masses(WeighingEntry one, double grossFactor, double tareFactor) {
        return new WeighingEntry(one.container(), scaled(one.gross(), grossFactor), scaled(one.tare(), tareFactor));
    }

    /** A count of so many pulses or revolutions more, and so many times as many. */
    static CatchEntry count(CatchEntry entry, double factor, double more) {
        return entry.counted()
                .map(count -> entry.counted(counted(count, factor, more)))
                .orElse(entry);
    }

    private static CountEntry counted(CountEntry count, double factor, double more) {
        if (count.revolutions().isPresent()) {
            double seen = count.revolutions().get().getValue().doubleValue() * factor + more;
            return CountEntry.byEye(
                    Amounts.of(Math.max(0.25, seen), SpreadingUnits.REVOLUTION),
                    count.standardUncertainty().orElseThrow());
        }
        double pulses = Math.max(1, Math.rint(Recorded.pulses(count).orElseThrow() * factor + more));
        if (count.start().isEmpty()) {
            return CountEntry.ofPulses(Amounts.of(pulses, SpreadingUnits.PULSE));
        }
        double start = count.start().get().getValue().doubleValue();
        return CountEntry.ofReadings(
                Amounts.of(start, SpreadingUnits.PULSE), Amounts.of(start + pulses, SpreadingUnits.PULSE));
    }

    static SpreaderEntry sensor(SpreaderEntry entry, double factor) {
        Optional<Quantity<PulsesPerRevolution>> sensor =
                entry.pulsesPerRevolution().map(pulses -> scaled(pulses, factor));
        return new SpreaderEntry(
                entry.conveyor(),
                entry.gate(),
                sensor,
                entry.gearRatio(),
                entry.controlSettings(),
                entry.gateReading());
    }

    static SpreaderEntry gear(SpreaderEntry entry, Quantity<Dimensionless> ratio) {
        return new SpreaderEntry(
                entry.conveyor(),
                entry.gate(),
                entry.pulsesPerRevolution(),
                ratio,
                entry.controlSettings(),
                entry.gateReading());
    }

    static SpreaderEntry conveyor(SpreaderEntry entry, String parameter, Quantity<?> value) {
        Map<String, Object> parameters = new TreeMap<>(entry.conveyor().parameters());
        parameters.put(parameter, value);
        return new SpreaderEntry(
                new TypedEntry(entry.conveyor().type(), entry.conveyor().version(), parameters),
                entry.gate(),
                entry.pulsesPerRevolution(),
                entry.gearRatio(),
                entry.controlSettings(),
                entry.gateReading());
    }

    /** All settings of the first truck, of catches and of values in force. */
    static FleetDay settings(FleetDay day, UnaryOperator<Quantity<?>> edit) {
        FleetDay caught = everyCatch(
                day,
                entry -> entry.setting().map(at -> entry.at(edit.apply(at))).orElse(entry));
        return truck(
                caught,
                truck -> truck.inForce(truck.inForce().stream()
                        .map(held -> new InForceEntry(
                                held.value(),
                                held.displayStep(),
                                held.since(),
                                held.material(),
                                held.setting().map(edit),
                                held.slot()))
                        .toList()));
    }

    static FleetDay materials(FleetDay day, UnaryOperator<Material> edit) {
        return new FleetDay(
                day.day(),
                day.seasonStart(),
                day.tolerance(),
                day.decisionRule(),
                day.allowances(),
                day.site(),
                day.technician(),
                day.scales(),
                List.of(),
                day.materials().stream().map(edit).toList(),
                day.plan(),
                day.routes(),
                day.trucks());
    }

    /** All numbers that come of a number by two neighboring digits changing places. */
    static List<Double> transposed(double number) {
        String digits = BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
        List<Double> all = new ArrayList<>();
        for (int i = 0; i + 1 < digits.length(); i++) {
            char a = digits.charAt(i);
            char b = digits.charAt(i + 1);
            if (Character.isDigit(a) && Character.isDigit(b) && a != b && !(i == 0 && b == '0')) {
                all.add(Double.parseDouble(digits.substring(0, i) + b + a + digits.substring(i + 2)));
            }
        }
        return all;
    }
}
