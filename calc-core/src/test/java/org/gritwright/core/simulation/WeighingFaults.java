package org.gritwright.core.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javax.measure.quantity.Mass;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Slips at the scale and with its tickets. */
final class WeighingFaults {
    private static final double POUNDS_PER_KILOGRAM = 1 / Amounts.si(Mass.class, Amounts.of(1, SpreadingUnits.POUND));

    private WeighingFaults() {}

    static List<Fault> all() {
        return List.of(
                tareForgottenInAll(),
                tareForgottenInOne(),
                digitsTransposed(),
                decimalPoint(),
                kilogramsAsPounds(),
                kilogramsAsPoundsInOne(),
                ticketTwice());
    }

    private static boolean tared(TrueTruck truck) {
        return truck.plan().tares() != TrueTruck.TareHabit.SCALE_ZEROED;
    }

    private static boolean caught(TrueTruck truck) {
        return truck.plan().calibrationCatches() > 0;
    }

    private static CatchEntry withoutTares(CatchEntry entry) {
        return Edit.containers(
                entry,
                one -> new WeighingEntry(
                        one.container(), one.gross(), Amounts.of(0, one.tare().getUnit())));
    }

    /** The tare that was forgotten could be any of those that usual containers have. */
    private static List<CatchEntry> withUsualTares(CatchEntry entry) {
        boolean zero = entry.containers().stream()
                .allMatch(one -> one.tare().getValue().doubleValue() == 0);
        return IntStream.rangeClosed(1, 12)
                .filter(step -> zero)
                .mapToObj(step -> Edit.containers(
                        entry,
                        one -> new WeighingEntry(
                                one.container(), one.gross(), Edit.scaled(one.gross(), 0.01 * step * step / 2))))
                .toList();
    }

    private static Fault tareForgottenInAll() {
        return Fault.of("tare-forgotten-in-all", "tare forgotten in every catch")
                .where(truck -> tared(truck) && caught(truck))
                .withCalibrations((catches, situation) -> Edit.calibrations(catches, WeighingFaults::withoutTares))
                .withVerifications((catches, situation) -> Edit.verifications(catches, WeighingFaults::withoutTares))
                .withRepairs(day -> {
                    List<FleetDay> repaired = new ArrayList<>();
                    for (int i = 0; i < 12; i++) {
                        int step = i;
                        repaired.add(Edit.everyCatch(day, entry -> {
                            List<CatchEntry> usual = withUsualTares(entry);
                            return usual.isEmpty() ? entry : usual.get(step);
                        }));
                    }
                    return repaired;
                })
                .named("(?i)\\btares?\\b")
                .alike("tare-forgotten");
    }

    private static Fault tareForgottenInOne() {
        return Fault.of("tare-forgotten-in-one", "tare forgotten in one catch")
                .where(truck -> tared(truck) && caught(truck))
                .withCalibrations((catches, situation) -> Edit.one(
                        catches,
                        situation.draw().whole(0, catches.size() - 1),
                        one -> Edit.with(one, withoutTares(one.entry()))))
                .withRepairs(day -> {
                    List<FleetDay> repaired = new ArrayList<>();
                    for (int i = 0; i < 12; i++) {
                        int step = i;
                        repaired.addAll(Edit.eachCatch(day, entry -> {
                            List<CatchEntry> usual = withUsualTares(entry);
                            return usual.isEmpty() ? entry : usual.get(step);
                        }));
                    }
                    return repaired;
                })
                .named("(?i)\\btares?\\b")
                .alike("tare-forgotten");
    }

    private static CatchEntry withGross(CatchEntry entry, int container, double gross) {
        return Edit.withContainers(
                entry,
                Edit.one(
                        entry.containers(),
                        container,
                        one -> new WeighingEntry(
                                one.container(), Amounts.of(gross, one.gross().getUnit()), one.tare())));
    }

    private static List<Double> transposedGross(CatchEntry entry, int container) {
        WeighingEntry one = entry.containers().get(container);
        double tare = one.tare().getValue().doubleValue();
        return Edit.transposed(one.gross().getValue().doubleValue()).stream()
                .filter(gross -> gross > tare)
                .toList();
    }

    private static Fault digitsTransposed() {
        return Fault.of("digits-transposed", "two digits of a gross mass transposed")
                .where(WeighingFaults::caught)
                .withCalibrations((catches, situation) -> {
                    int index = situation.draw().whole(0, catches.size() - 1);
                    CatchEntry entry = catches.get(index).entry();
                    int container = situation.draw().whole(0, entry.containers().size() - 1);
                    List<Double> slips = transposedGross(entry, container);
                    return slips.isEmpty()
                            ? catches
                            : Edit.one(
                                    catches,
                                    index,
                                    one -> Edit.with(
                                            one,
                                            withGross(
                                                    entry,
                                                    container,
                                                    situation.draw().of(slips))));
                })
                .withRepairs(WeighingFaults::transposedBack)
                .named("(?i)digits? (of|in) (the|a) (gross|mass|weighing)|transposed");
    }

    private static List<FleetDay> transposedBack(FleetDay day) {
        List<FleetDay> repaired = new ArrayList<>();
        List<CalibrationCatchEntry> catches = day.trucks().get(0).calibrationCatches();
        for (int i = 0; i < catches.size(); i++) {
            CatchEntry entry = catches.get(i).entry();
            for (int j = 0; j < entry.containers().size(); j++) {
                for (double gross : transposedGross(entry, j)) {
                    repaired.add(withCatch(day, i, withGross(entry, j, gross)));
                }
            }
        }
        return repaired;
    }

    private static FleetDay withCatch(FleetDay day, int index, CatchEntry entry) {
        return Edit.truck(
                day,
                truck -> truck.calibrationCatches(
                        Edit.one(truck.calibrationCatches(), index, one -> Edit.with(one, entry))));
    }

    private static Fault decimalPoint() {
        return Fault.of("decimal-point", "decimal point of a gross mass moved")
                .where(WeighingFaults::caught)
                .withCalibrations((catches, situation) -> {
                    int index = situation.draw().whole(0, catches.size() - 1);
                    CatchEntry entry = catches.get(index).entry();
                    double gross = entry.containers().get(0).gross().getValue().doubleValue();
                    return Edit.one(catches, index, one -> Edit.with(one, withGross(entry, 0, 10 * gross)));
                })
                .withRepairs(day -> {
                    List<FleetDay> repaired = new ArrayList<>();
                    List<CalibrationCatchEntry> catches = day.trucks().get(0).calibrationCatches();
                    for (int i = 0; i < catches.size(); i++) {
                        CatchEntry entry = catches.get(i).entry();
                        for (int j = 0; j < entry.containers().size(); j++) {
                            WeighingEntry one = entry.containers().get(j);
                            double gross = one.gross().getValue().doubleValue() / 10;
                            if (gross > one.tare().getValue().doubleValue()) {
                                repaired.add(withCatch(day, i, withGross(entry, j, gross)));
                            }
                        }
                    }
                    return repaired;
                })
                .named("(?i)(gross|mass).*÷ 10|decimal point|capacity");
    }

    private static CatchEntry masses(CatchEntry entry, double factor) {
        return Edit.containers(entry, one -> Edit.masses(one, factor, factor));
    }

    /** The scale was set to kilograms, and the form says pounds. */
    private static Fault kilogramsAsPounds() {
        return Fault.of("kilograms-as-pounds", "every mass read in kilograms and written in pounds")
                .where(truck -> truck.trade() == Trade.US && caught(truck))
                .withCalibrations((catches, situation) ->
                        Edit.calibrations(catches, entry -> rounded(masses(entry, 1 / POUNDS_PER_KILOGRAM))))
                .withVerifications((catches, situation) ->
                        Edit.verifications(catches, entry -> rounded(masses(entry, 1 / POUNDS_PER_KILOGRAM))))
                .withRepairs(day -> List.of(Edit.everyCatch(day, entry -> masses(entry, POUNDS_PER_KILOGRAM))))
                .named("(?i)kilogram|2\\.205")
                .alike("kilograms-as-pounds");
    }

    private static CatchEntry rounded(CatchEntry entry) {
        return Edit.containers(
                entry,
                one -> new WeighingEntry(
                        one.container(),
                        Trade.written(
                                one.gross().getValue().doubleValue(),
                                0.1,
                                one.gross().getUnit()),
                        Trade.written(
                                one.tare().getValue().doubleValue(),
                                0.1,
                                one.tare().getUnit())));
    }

    private static Fault kilogramsAsPoundsInOne() {
        return Fault.of("kilograms-as-pounds-in-one", "one catch read in kilograms and written in pounds")
                .where(truck -> truck.trade() == Trade.US && caught(truck))
                .withCalibrations((catches, situation) -> Edit.one(
                        catches,
                        situation.draw().whole(0, catches.size() - 1),
                        one -> Edit.with(one, rounded(masses(one.entry(), 1 / POUNDS_PER_KILOGRAM)))))
                .withRepairs(day -> Edit.eachCatch(day, entry -> masses(entry, POUNDS_PER_KILOGRAM)))
                .named("(?i)kilogram|2\\.205")
                .alike("kilograms-as-pounds");
    }

    private static Fault ticketTwice() {
        return Fault.of("ticket-twice", "a ticket entered twice")
                .where(WeighingFaults::caught)
                .withCalibrations((catches, situation) -> {
                    List<CalibrationCatchEntry> twice = new ArrayList<>(catches);
                    int index = situation.draw().whole(0, catches.size() - 1);
                    twice.add(index + 1, catches.get(index));
                    return twice;
                })
                .withRepairs(day -> {
                    List<FleetDay> repaired = new ArrayList<>();
                    List<CalibrationCatchEntry> catches = day.trucks().get(0).calibrationCatches();
                    for (int i = 1; i < catches.size(); i++) {
                        if (Ideal.isSameTicket(
                                catches.get(i - 1).entry(), catches.get(i).entry())) {
                            List<CalibrationCatchEntry> once = new ArrayList<>(catches);
                            once.remove(i);
                            repaired.add(Edit.truck(day, truck -> truck.calibrationCatches(once)));
                        }
                    }
                    return repaired;
                })
                .named("(?i)twice|same ticket|duplicate");
    }
}
