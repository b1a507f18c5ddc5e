package org.gritwright.core.simulation;

import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_CUBIC_METER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_CUBIC_FOOT;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;

/** Slips with gate, conveyor, material and the value in force. */
final class SettingFaults {
    private static final double CENTIMETERS_PER_INCH = 2.54;

    private SettingFaults() {}

    static List<Fault> all() {
        return List.of(
                gateInCentimeters(),
                teethWrong(),
                pitchWrong(),
                densityUnit(),
                otherMaterial(),
                otherOpening(),
                verificationValueTransposed(),
                listedValueTransposed());
    }

    private static boolean isChain(TrueTruck truck) {
        return truck.equipment().conveyor().type().equals("drag-chain");
    }

    private static Fault gateInCentimeters() {
        return Fault.of("gate-in-centimeters", "gate read in centimeters and written in inches")
                .where(truck -> truck.equipment().isGateMeasured()
                        && truck.equipment().gate().type().equals("sliding-gate")
                        && truck.plan().calibrationCatches() > 0)
                .withDay((day, situation) ->
                        Edit.settings(day, setting -> rounded(Edit.scaledAny(setting, CENTIMETERS_PER_INCH))))
                .withRepairs(day ->
                        Edit.spreader(day.trucks().get(0)).gate().type().equals("sliding-gate")
                                ? List.of(Edit.settings(
                                        day, setting -> Edit.scaledAny(setting, 1 / CENTIMETERS_PER_INCH)))
                                : List.of())
                .named("gate opening ÷ 2.54");
    }

    private static Quantity<?> rounded(Quantity<?> setting) {
        return Edit.any(setting, Trade.written(setting.getValue().doubleValue(), 0.1));
    }

    private static double parameter(TruckDay truck, String name) {
        return Edit.spreader(truck).conveyor().parameters().get(name) instanceof Quantity<?> quantity
                ? quantity.getValue().doubleValue()
                : 0;
    }

    private static FleetDay withParameter(FleetDay day, String name, double number) {
        return Edit.truck(
                day,
                truck -> Edit.spreader(
                        truck,
                        spreader -> spreader.conveyor().parameters().get(name) instanceof Quantity<?> quantity
                                ? Edit.conveyor(spreader, name, Edit.any(quantity, number))
                                : spreader));
    }

    private static Fault teethWrong() {
        return Fault.of("teeth-wrong", "teeth of the drive sprocket counted wrongly, by a half or double")
                .where(SettingFaults::isChain)
                .withSpreader((spreader, situation) ->
                        Edit.conveyor(spreader, "teeth", Amounts.of(2 * teeth(situation.truck()), ONE)))
                .withRepairs(day -> Stream.of(0.5, 2.0)
                        .map(factor -> parameter(day.trucks().get(0), "teeth") * factor)
                        .filter(teeth -> teeth >= 3 && teeth <= 60 && teeth == Math.rint(teeth))
                        .map(teeth -> withParameter(day, "teeth", teeth))
                        .toList())
                .named("(?i)teeth");
    }

    private static double teeth(TrueTruck truck) {
        return truck.equipment().conveyor().parameters().get("teeth") instanceof Quantity<?> quantity
                ? quantity.getValue().doubleValue()
                : 0;
    }

    private static Fault pitchWrong() {
        return Fault.of("pitch-wrong", "chain pitch written in centimeters as inches")
                .where(SettingFaults::isChain)
                .withSpreader((spreader, situation) ->
                        spreader.conveyor().parameters().get("chainPitch") instanceof Quantity<?> pitch
                                ? Edit.conveyor(
                                        spreader,
                                        "chainPitch",
                                        Edit.any(
                                                pitch,
                                                Trade.written(
                                                        pitch.getValue().doubleValue() * CENTIMETERS_PER_INCH, 0.01)))
                                : spreader)
                .withRepairs(day -> {
                    double pitch = parameter(day.trucks().get(0), "chainPitch");
                    return pitch > 0
                            ? List.of(withParameter(day, "chainPitch", pitch / CENTIMETERS_PER_INCH))
                            : List.of();
                })
                .named("(?i)chain pitch");
    }

    private static Fault densityUnit() {
        return Fault.of("density-unit", "density in pounds per cubic foot written as kilograms per cubic meter")
                .where(truck -> truck.trade() == Trade.US)
                .withDay((day, situation) -> Edit.materials(
                        day,
                        material -> Material.of(
                                material.name(),
                                Amounts.of(
                                        material.looseBulkDensity().getValue().doubleValue(),
                                        KILOGRAM_PER_CUBIC_METER))))
                .withRepairs(day -> List.of(Edit.materials(
                        day,
                        material -> Material.of(
                                material.name(),
                                Amounts.of(
                                        material.looseBulkDensity().getValue().doubleValue(),
                                        material.looseBulkDensity().getUnit().equals(POUND_PER_CUBIC_FOOT)
                                                ? KILOGRAM_PER_CUBIC_METER
                                                : POUND_PER_CUBIC_FOOT)))))
                .named("(?i)density");
    }

    /** What was caught in the verification catches was so many times what it is said to be. */
    private static List<FleetDay> dischargedMore(FleetDay day) {
        return Stream.of(0.6, 0.7, 0.76, 0.82, 0.88, 0.94, 1.06, 1.12, 1.18, 1.25, 1.35, 1.5, 1.7)
                .map(factor -> Edit.everyVerificationCatch(
                        day, entry -> Edit.containers(entry, one -> Edit.masses(one, 1 / factor, 1 / factor))))
                .toList();
    }

    private static Fault otherMaterial() {
        return Fault.of("other-material", "verification made with another material, 18 % heavier")
                .where(truck ->
                        truck.plan().verificationCatches() > 0 && truck.plan().calibrationCatches() > 0)
                .withVerified(situation -> 1.18)
                .withRepairs(SettingFaults::dischargedMore)
                .named("(?i)another material|other material")
                .alike("made-elsewhere");
    }

    private static Fault otherOpening() {
        return Fault.of("other-opening", "verification made at another gate opening, 25 % more open")
                .where(truck -> truck.equipment().isGateMeasured()
                        && truck.plan().verificationCatches() > 0
                        && truck.plan().calibrationCatches() > 0)
                .withVerified(situation -> 1.25)
                .withRepairs(day -> day.trucks().get(0).verificationCatches().stream()
                                .allMatch(one -> one.entry().setting().isPresent())
                        ? dischargedMore(day)
                        : List.of())
                .named("(?i)another (gate )?(opening|setting)|other opening")
                .alike("made-elsewhere");
    }

    private static Quantity<?> slipped(Quantity<?> value, Situation situation) {
        List<Double> slips = Edit.transposed(value.getValue().doubleValue());
        return slips.isEmpty() ? value : Edit.any(value, situation.draw().of(slips));
    }

    private static Fault verificationValueTransposed() {
        return Fault.of(
                        "value-of-catch-transposed",
                        "value in force of the verification catches with digits transposed")
                .where(truck -> truck.plan().verificationCatches() > 0)
                .withVerifications((catches, situation) -> {
                    Quantity<?> slipped = slipped(catches.get(0).inForce(), situation);
                    Quantity<?> right = catches.get(0).inForce();
                    return catches.stream()
                            .map(one -> one.inForce().equals(right) ? Edit.withInForce(one, slipped) : one)
                            .toList();
                })
                .withRepairs(day -> List.of(Edit.truck(
                        day,
                        truck -> truck.verificationCatches(truck.verificationCatches().stream()
                                .map(one -> asListed(one, truck.inForce()))
                                .toList()))))
                .named("(?i)value in force.*(listed|differ|digit|transposed)|two values in force")
                .alike("value-transposed");
    }

    private static VerificationCatchEntry asListed(VerificationCatchEntry one, List<InForceEntry> listed) {
        return listed.stream()
                .filter(held -> held.setting().equals(one.entry().setting()))
                .findFirst()
                .map(held -> Edit.withInForce(one, held.value()))
                .orElse(one);
    }

    private static Fault listedValueTransposed() {
        return Fault.of("listed-value-transposed", "value in force of the truck with digits transposed")
                .where(truck ->
                        truck.plan().verificationCatches() > 0 && !truck.plan().enters())
                .withDay((day, situation) -> Edit.truck(
                        day,
                        truck -> truck.inForce(Edit.one(
                                truck.inForce(), 0, held -> withValue(held, slipped(held.value(), situation))))))
                .withRepairs(SettingFaults::listedAsCaught)
                .named("(?i)value in force.*(listed|differ|digit|transposed)|two values in force")
                .alike("value-transposed");
    }

    private static InForceEntry withValue(InForceEntry held, Quantity<?> value) {
        return new InForceEntry(value, held.displayStep(), held.since(), held.material(), held.setting(), held.slot());
    }

    private static List<FleetDay> listedAsCaught(FleetDay day) {
        List<InForceEntry> held = new ArrayList<>();
        TruckDay truck = day.trucks().get(0);
        for (InForceEntry entry : truck.inForce()) {
            held.add(truck.verificationCatches().stream()
                    .filter(one -> one.entry().setting().equals(entry.setting()))
                    .findFirst()
                    .map(one -> withValue(entry, one.inForce()))
                    .orElse(entry));
        }
        return List.of(Edit.truck(day, one -> one.inForce(held)));
    }
}
