package org.gritwright.core.simulation;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CourseRunEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.units.Amounts;

/** Slips with times, the display, the wanted rate and the road. */
final class DayFaults {
    private static final double POUNDS_PER_KILOGRAM = 2.204622621848776;
    private static final double KILOMETERS_PER_MILE = 1.609344;

    private DayFaults() {}

    static List<Fault> all() {
        return List.of(
                sinceAfterCatches(),
                yearWrong(),
                morningForAfternoon(),
                displayInOtherUnit(),
                runTimeMisread(),
                rateInOtherUnit(),
                kilometerAsMile(),
                roadRunMisread(),
                ticketsSwapped());
    }

    private static InForceEntry since(InForceEntry held, Since since) {
        return new InForceEntry(held.value(), held.displayStep(), since, held.material(), held.setting(), held.slot());
    }

    private static FleetDay since(FleetDay day, UnaryOperator<Since> edit) {
        return Edit.truck(
                day,
                truck -> truck.inForce(truck.inForce().stream()
                        .map(held -> since(held, edit.apply(held.since())))
                        .toList()));
    }

    private static Fault sinceAfterCatches() {
        return Fault.of("value-dated-after-catches", "value in force dated after the catches made with it")
                .where(truck -> truck.plan().verificationCatches() > 0)
                .withDay((day, situation) ->
                        since(day, since -> Since.of(OffsetDateTime.parse("2026-10-19T19:30:00-05:00"))))
                .withRepairs(day -> List.of(since(day, since -> Since.of(TruckMaker.DAY.minusDays(1)))))
                .named("(?i)before the value in force was entered|date of the value")
                .told(NextStep.FIND_FAULT, NextStep.FIX_RECORD, NextStep.VERIFY, NextStep.MATCH_DISPLAY);
    }

    private static CatchEntry at(CatchEntry entry, OffsetDateTime time) {
        return new CatchEntry(
                time,
                entry.operator(),
                entry.scale(),
                entry.containers(),
                Optional.empty(),
                Optional.empty(),
                entry.counted(),
                entry.setting(),
                entry.material(),
                entry.conditions(),
                entry.notes());
    }

    private static Fault yearWrong() {
        return Fault.of("year-wrong", "a calibration catch dated a year ago")
                .where(truck -> truck.plan().calibrationCatches() > 0)
                .withCalibrations((catches, situation) -> Edit.one(
                        catches,
                        situation.draw().whole(0, catches.size() - 1),
                        one -> Edit.with(one, at(one.entry(), one.entry().at().minusYears(1)))))
                .withRepairs(day ->
                        Edit.eachCatch(day, entry -> at(entry, entry.at().withYear(TruckMaker.DAY.getYear()))))
                .named("(?i)\\bdated?\\b|\\byear\\b|another day")
                .told(NextStep.FIND_FAULT, NextStep.FIX_RECORD);
    }

    private static Fault morningForAfternoon() {
        return Fault.of("morning-for-afternoon", "verification catches noted 12 hours off")
                .where(truck ->
                        truck.plan().verificationCatches() > 0 && truck.plan().calibrationCatches() > 0)
                .withVerifications((catches, situation) -> Edit.verifications(
                        catches,
                        entry -> at(entry, entry.at().plusHours(entry.at().getHour() < 12 ? 12 : -12))))
                .withRepairs(day -> List.of(Edit.everyVerificationCatch(
                        day, entry -> at(entry, entry.at().plusHours(entry.at().getHour() < 12 ? 12 : -12)))))
                .named("(?i)12 h|noon|time of day|runs? backwards")
                .told(NextStep.FIND_FAULT, NextStep.FIX_RECORD, NextStep.VERIFY);
    }

    private static VerificationCatchEntry shown(VerificationCatchEntry one, double factor) {
        return Edit.withIndicated(
                one,
                shown -> Trade.written(Math.max(0.1, shown.getValue().doubleValue() * factor), 0.1, shown.getUnit()));
    }

    private static FleetDay verifications(FleetDay day, UnaryOperator<VerificationCatchEntry> edit) {
        return Edit.truck(
                day,
                truck -> truck.verificationCatches(
                        truck.verificationCatches().stream().map(edit).toList()));
    }

    private static Fault displayInOtherUnit() {
        return Fault.of("display-in-other-unit", "displayed mass in kilograms, written in pounds")
                .where(truck -> truck.trade() == Trade.US
                        && truck.plan().reading().isDisplayed()
                        && truck.plan().verificationCatches() > 0)
                .withVerifications((catches, situation) -> catches.stream()
                        .map(one -> shown(one, 1 / POUNDS_PER_KILOGRAM))
                        .toList())
                .withRepairs(day -> List.of(verifications(
                        day, one -> Edit.withIndicated(one, mass -> Edit.scaled(mass, POUNDS_PER_KILOGRAM)))))
                .named("(?i)kilogram|2\\.205|display in another unit");
    }

    private static double seconds(VerificationCatchEntry one) {
        return one.runTime().map(time -> Amounts.si(Time.class, time)).orElse(0.0);
    }

    /** One minute and thirty seconds, 1:30, as 130 seconds. */
    private static Fault runTimeMisread() {
        return Fault.of("run-time-misread", "minutes and seconds written as seconds")
                .where(truck -> truck.plan().verificationCatches() > 0)
                .withVerifications((catches, situation) -> catches.stream()
                        .map(one -> {
                            double seconds = seconds(one);
                            double asText = Math.floor(seconds / 60) * 100 + seconds % 60;
                            return Edit.withRunTime(one, asText / seconds);
                        })
                        .toList())
                .withRepairs(day -> List.of(verifications(day, one -> {
                    double text = seconds(one);
                    double seconds = Math.floor(text / 100) * 60 + text % 100;
                    return text % 100 < 60 ? Edit.withRunTime(one, seconds / text) : one;
                })))
                .named("(?i)run time .*(minutes|misread|wrong)|minutes")
                .told(NextStep.FIND_FAULT, NextStep.CHECK_DELIVERY);
    }

    private static VerificationCatchEntry rate(VerificationCatchEntry one, double factor) {
        return new VerificationCatchEntry(
                one.entry(),
                one.inForce(),
                one.slot(),
                new TargetEntry(
                        one.target().rate().map(rate -> Edit.scaled(rate, factor)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                one.testSpeed(),
                one.runTime(),
                one.testDistance(),
                one.indicated(),
                one.indicatedStep());
    }

    private static Fault rateInOtherUnit() {
        return Fault.of("rate-in-other-unit", "wanted kilograms per kilometer written in pounds per mile")
                .where(truck -> truck.plan().verificationCatches() > 0)
                .withVerifications((catches, situation) -> catches.stream()
                        .map(one -> rate(one, KILOMETERS_PER_MILE * POUNDS_PER_KILOGRAM))
                        .toList())
                .withRepairs(day -> List.of(
                        verifications(day, one -> rate(one, 1 / KILOMETERS_PER_MILE / POUNDS_PER_KILOGRAM)),
                        verifications(day, one -> rate(one, KILOMETERS_PER_MILE * POUNDS_PER_KILOGRAM))))
                .named("(?i)rate .*unit|kilograms per kilometer|3\\.548")
                .told(NextStep.FIND_FAULT, NextStep.CHECK_DELIVERY);
    }

    private static FleetDay roads(FleetDay day, UnaryOperator<RoadSpeedEntry> edit) {
        return Edit.truck(
                day,
                truck -> truck.roadSpeed().isPresent()
                        ? truck.roadSpeed(edit.apply(truck.roadSpeed().get()))
                        : truck);
    }

    private static RoadSpeedEntry pulses(RoadSpeedEntry road, double factor) {
        return new RoadSpeedEntry(
                road.on(),
                road.inForce(),
                road.runs().stream()
                        .map(run -> new CourseRunEntry(run.course(), whole(run.pulses(), factor)))
                        .toList());
    }

    private static <Q extends Quantity<Q>> Quantity<Q> whole(Quantity<Q> pulses, double factor) {
        return Amounts.of(Math.rint(pulses.getValue().doubleValue() * factor), pulses.getUnit());
    }

    /** Through the document's text: the course was 1 km, and "mi" was typed. */
    private static Fault kilometerAsMile() {
        return Fault.of("kilometer-as-mile", "a course of 1 km entered as 1 mi")
                .where(truck -> truck.plan().road() && truck.trade() == Trade.METRIC)
                .withText((json, situation) -> json.replace("\"1 km\"", "\"1 mi\""))
                .withRepairs(day -> List.of(
                        roads(day, road -> pulses(road, KILOMETERS_PER_MILE)),
                        roads(day, road -> pulses(road, 1 / KILOMETERS_PER_MILE))))
                .named("(?i)1\\.609|kilomet");
    }

    private static RoadSpeedEntry run(RoadSpeedEntry road, int index, double pulses) {
        return new RoadSpeedEntry(
                road.on(),
                road.inForce(),
                Edit.one(
                        road.runs(),
                        index,
                        run -> new CourseRunEntry(
                                run.course(), Amounts.of(pulses, run.pulses().getUnit()))));
    }

    private static Fault roadRunMisread() {
        return Fault.of("road-run-misread", "two digits of a road-speed run transposed")
                .where(truck -> truck.plan().road())
                .withDay((day, situation) -> roads(day, road -> {
                    int index = situation.draw().whole(0, road.runs().size() - 1);
                    List<Double> slips = Edit.transposed(
                            road.runs().get(index).pulses().getValue().doubleValue());
                    return slips.isEmpty()
                            ? road
                            : run(road, index, situation.draw().of(slips));
                }))
                .withRepairs(day -> day.trucks().get(0).roadSpeed().stream()
                        .flatMap(road -> IntStream.range(0, road.runs().size())
                                .boxed()
                                .flatMap(i ->
                                        Edit.transposed(road.runs()
                                                        .get(i)
                                                        .pulses()
                                                        .getValue()
                                                        .doubleValue())
                                                .stream()
                                                .map(pulses -> roads(day, one -> run(one, i, pulses)))))
                        .toList())
                .named("(?i)\\brun\\b.*(other|agree|digit)|runs (differ|disagree)");
    }

    /** The first calibration tickets of two trucks change places; the second truck is drawn with the first. */
    private static Fault ticketsSwapped() {
        return Fault.of("tickets-swapped", "a ticket of one truck and one of another swapped")
                .where(truck -> truck.plan().calibrationCatches() > 0)
                .withDay((day, situation) -> {
                    TrueTruck other = TruckMaker.make(
                            situation.truck().seed() + 500_000_009L,
                            "T-2",
                            truck -> truck.plan().calibrationCatches() > 0
                                    && truck.trade() == situation.truck().trade()
                                    && truck.scale().kind()
                                            == situation.truck().scale().kind());
                    FleetDay second = DayMaker.make(other, Fault.NONE).day();
                    FleetDay both = new FleetDay(
                            day.day(),
                            day.seasonStart(),
                            day.tolerance(),
                            day.decisionRule(),
                            day.allowances(),
                            day.site(),
                            day.technician(),
                            Stream.concat(day.scales().stream(), second.scales().stream())
                                    .toList(),
                            List.of(),
                            day.materials(),
                            day.plan(),
                            day.routes(),
                            List.of(day.trucks().get(0), second.trucks().get(0)));
                    return swapped(both, 0, 0);
                })
                .withRepairs(day -> {
                    List<FleetDay> repaired = new ArrayList<>();
                    if (day.trucks().size() > 1) {
                        for (int i = 0;
                                i < day.trucks().get(0).calibrationCatches().size();
                                i++) {
                            for (int j = 0;
                                    j < day.trucks().get(1).calibrationCatches().size();
                                    j++) {
                                repaired.add(swapped(day, i, j));
                            }
                        }
                    }
                    return repaired;
                })
                .named("(?i)swapped|another truck");
    }

    /** The masses change places, counts and times stay with their trucks. */
    private static FleetDay swapped(FleetDay day, int first, int second) {
        List<CalibrationCatchEntry> a = day.trucks().get(0).calibrationCatches();
        List<CalibrationCatchEntry> b = day.trucks().get(1).calibrationCatches();
        CatchEntry one = a.get(first).entry();
        CatchEntry two = b.get(second).entry();
        return day.withTrucks(List.of(
                day.trucks()
                        .get(0)
                        .calibrationCatches(Edit.one(
                                a, first, made -> Edit.with(made, Edit.withContainers(one, two.containers())))),
                day.trucks()
                        .get(1)
                        .calibrationCatches(Edit.one(
                                b, second, made -> Edit.with(made, Edit.withContainers(two, one.containers()))))));
    }
}
