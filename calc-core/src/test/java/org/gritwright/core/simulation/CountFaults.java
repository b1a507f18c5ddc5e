package org.gritwright.core.simulation;

import static org.gritwright.units.SpreadingUnits.ONE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Time;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Slips with what counts revolutions. */
final class CountFaults {

    private CountFaults() {}

    static List<Fault> all() {
        return List.of(
                pulsesHalf(),
                pulsesDouble(),
                pulsesHalfInController(),
                turnTooManyInAll(),
                turnTooManyInOne(),
                counterNotReset(),
                secondsAsCount(),
                gearForgotten());
    }

    private static boolean counted(TrueTruck truck) {
        return truck.hasSensor() && truck.plan().calibrationCatches() > 0;
    }

    private static List<FleetDay> sensor(FleetDay day, double factor) {
        boolean fits = Edit.spreader(day.trucks().get(0)).pulsesPerRevolution().isPresent();
        return fits
                ? List.of(Edit.truck(day, truck -> Edit.spreader(truck, spreader -> Edit.sensor(spreader, factor))))
                : List.of();
    }

    /** Both are seen with sensors of 16 pulses a revolution or more, so that no other limit plays a part. */
    private static Fault pulsesHalf() {
        return Fault.of("pulses-half", "pulses per revolution written as half")
                .where(truck -> counted(truck) && truck.pulsesPerRevolution() >= 16)
                .withSpreader((spreader, situation) -> Edit.sensor(spreader, 0.5))
                .withRepairs(day -> sensor(day, 2))
                .named("pulses per revolution × 2")
                .alike("pulses-half");
    }

    private static Fault pulsesDouble() {
        return Fault.of("pulses-double", "pulses per revolution written as double")
                .where(truck -> counted(truck) && truck.pulsesPerRevolution() >= 16)
                .withSpreader((spreader, situation) -> Edit.sensor(spreader, 2))
                .withRepairs(day -> sensor(day, 0.5))
                .named("pulses per revolution ÷ 2");
    }

    private static Fault pulsesHalfInController() {
        return Fault.of("pulses-half-in-controller", "pulses per revolution half, in the controller too")
                .where(truck -> counted(truck) && truck.pulsesPerRevolution() >= 16)
                .withSpreader((spreader, situation) -> Edit.sensor(spreader, 0.5))
                .withController(situation -> 2)
                .withRepairs(day -> sensor(day, 2))
                .named("pulses per revolution × 2")
                .alike("pulses-half");
    }

    private static CatchEntry turns(CatchEntry entry, double pulsesPerRevolution, double more) {
        return Edit.count(entry, 1, more * Math.max(1, pulsesPerRevolution));
    }

    private static double sensor(FleetDay day) {
        return Edit.spreader(day.trucks().get(0))
                .pulsesPerRevolution()
                .map(pulses -> pulses.getValue().doubleValue())
                .orElse(0.0);
    }

    private static Fault turnTooManyInAll() {
        return Fault.of("turn-too-many-in-all", "one turn too many in every catch")
                .where(truck -> truck.plan().calibrationCatches() > 0)
                .withCalibrations((catches, situation) -> Edit.calibrations(
                        catches, entry -> turns(entry, situation.truck().pulsesPerRevolution(), 1)))
                .withRepairs(day -> List.of(Edit.everyCalibrationCatch(day, entry -> turns(entry, sensor(day), -1))))
                .named("(?i)turn too many|one turn|revolution too many")
                .alike("turn-too-many");
    }

    private static Fault turnTooManyInOne() {
        return Fault.of("turn-too-many-in-one", "one turn too many in one catch")
                .where(truck -> truck.plan().calibrationCatches() > 0)
                .withCalibrations((catches, situation) -> Edit.one(
                        catches,
                        situation.draw().whole(0, catches.size() - 1),
                        one -> Edit.with(
                                one, turns(one.entry(), situation.truck().pulsesPerRevolution(), 1))))
                .withRepairs(day -> Edit.eachCatch(day, entry -> turns(entry, sensor(day), -1)))
                .named("(?i)turn too many|one turn|revolution too many")
                .alike("turn-too-many");
    }

    private static double pulses(CalibrationCatchEntry one) {
        return one.entry()
                .counted()
                .map(count -> Recorded.pulses(count).orElse(0))
                .orElse(0.0);
    }

    private static Fault counterNotReset() {
        return Fault.of("counter-not-reset", "the counter was not set back before a catch")
                .where(truck -> counted(truck)
                        && truck.plan().calibrationCatches() > 1
                        && !truck.plan().readings())
                .withCalibrations((catches, situation) -> {
                    int index = situation.draw().whole(1, catches.size() - 1);
                    double before = pulses(catches.get(index - 1));
                    return Edit.one(catches, index, one -> Edit.with(one, Edit.count(one.entry(), 1, before)));
                })
                .withRepairs(day -> {
                    List<FleetDay> repaired = new ArrayList<>();
                    List<CalibrationCatchEntry> catches = day.trucks().get(0).calibrationCatches();
                    for (int i = 1; i < catches.size(); i++) {
                        int index = i;
                        double before = pulses(catches.get(i - 1));
                        if (pulses(catches.get(i)) > before && before > 0) {
                            repaired.add(Edit.truck(
                                    day,
                                    truck -> truck.calibrationCatches(Edit.one(
                                            truck.calibrationCatches(),
                                            index,
                                            one -> Edit.with(one, Edit.count(one.entry(), 1, -before))))));
                        }
                    }
                    return repaired;
                })
                .named("(?i)not (been )?(re)?set|counter (was )?not");
    }

    private static CatchEntry withoutCount(CatchEntry entry) {
        return new CatchEntry(
                entry.at(),
                entry.operator(),
                entry.scale(),
                entry.containers(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                entry.setting(),
                entry.material(),
                entry.conditions(),
                entry.notes());
    }

    private static double seconds(VerificationCatchEntry one) {
        return one.runTime().map(time -> Amounts.si(Time.class, time)).orElse(0.0);
    }

    private static boolean isCountOfSeconds(VerificationCatchEntry one) {
        return one.entry()
                .counted()
                .filter(count -> Recorded.pulses(count).orElse(-1) == seconds(one))
                .isPresent();
    }

    private static Fault secondsAsCount() {
        return Fault.of("seconds-as-count", "the run time written as the count")
                .where(truck -> truck.hasSensor()
                        && truck.plan().reading().isCounted()
                        && truck.plan().verificationCatches() > 0)
                .withVerifications((catches, situation) -> catches.stream()
                        .map(one -> Edit.with(
                                one,
                                one.entry()
                                        .counted(CountEntry.ofPulses(Amounts.of(seconds(one), SpreadingUnits.PULSE)))))
                        .toList())
                .withRepairs(day -> day.trucks().get(0).verificationCatches().stream()
                                .noneMatch(CountFaults::isCountOfSeconds)
                        ? List.of()
                        : List.of(Edit.truck(
                                day,
                                truck -> truck.verificationCatches(truck.verificationCatches().stream()
                                        .map(one ->
                                                isCountOfSeconds(one) ? Edit.with(one, withoutCount(one.entry())) : one)
                                        .toList()))))
                .named("(?i)run time (written|entered|taken) as|seconds");
    }

    private static Fault gearForgotten() {
        return Fault.of("gear-forgotten", "the gear ratio of a sensed motor written as 1")
                .where(truck -> truck.equipment().gearRatio() > 1)
                .withSpreader((spreader, situation) -> Edit.gear(spreader, Amounts.of(1, ONE)))
                .withRepairs(day -> List.of(5.2, 6.0, 25.0).stream()
                        .filter(gear -> day.trucks()
                                        .get(0)
                                        .spreader()
                                        .gearRatio()
                                        .getValue()
                                        .doubleValue()
                                == 1)
                        .map(gear -> Edit.truck(
                                day,
                                truck -> Edit.spreader(truck, spreader -> Edit.gear(spreader, Amounts.of(gear, ONE)))))
                        .toList())
                .named("(?i)gear ratio × (5|6|25)|gear ratio.* forgotten");
    }
}
