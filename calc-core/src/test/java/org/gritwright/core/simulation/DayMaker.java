package org.gritwright.core.simulation;

import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.PULSE;
import static org.gritwright.units.SpreadingUnits.REVOLUTION;
import static org.gritwright.units.SpreadingUnits.SECOND;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.CourseRunEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.RoadSpeedEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.ApplicationRate;

/**
 * A truck's day in the yard, hour by hour: calibration catches, the value that is in force or entered, verification catches
 * with it. A mistake is made where it happens, so that a value found from wrong numbers is what the controller then works
 * with.
 */
final class DayMaker {
    static final double TOLERANCE = 0.04;
    static final double RISK = 0.05;

    /** Of a count by eye. */
    static final double EYE_DEVIATION = 0.15;

    private static final double EYE_STEP = 0.25;
    private static final int MINUTES = 12;

    /** How far the delivered revolutions scatter about what the controller wants. */
    static final double DRIVE_DEVIATION = 0.004;

    private final TrueTruck truck;
    private final Fault fault;
    private final Draw draw;
    private final Situation situation;
    private int minute = 8 * 60;
    private double counter;

    private DayMaker(TrueTruck truck, Fault fault, Draw draw) {
        this.truck = truck;
        this.fault = fault;
        this.draw = draw;
        this.situation = new Situation(truck, draw.split());
        this.counter = draw.whole(0, 5000);
    }

    /**
     * What was written down and what was true.
     *
     * @param held the value in the controller after the day, in true kilograms per revolution, for each opening
     */
    record Made(TrueTruck truck, FleetDay day, List<Double> held) {
        /** By how much the mass on the road is off if the controller holds such a value at an opening. */
        double roadError(int opening, double kilogramsPerRevolution) {
            return truck.discharge().get(opening) / kilogramsPerRevolution - 1;
        }

        /** The worst of the openings, as things stand. */
        double roadError() {
            double worst = 0;
            for (int i = 0; i < held.size(); i++) {
                double error = roadError(i, held.get(i));
                worst = Math.abs(error) > Math.abs(worst) ? error : worst;
            }
            return worst;
        }
    }

    static Made make(TrueTruck truck, Fault fault) {
        Draw draw = Draw.of(truck.seed() * 7_919 + 17);
        return new DayMaker(fault.truth(truck, draw.split()), fault, draw).day();
    }

    private Made day() {
        SpreaderEntry spreader = fault.spreader(truck.equipment().entry(), situation);
        List<CalibrationCatchEntry> calibrations = new ArrayList<>();
        for (int i = 0; i < truck.discharge().size(); i++) {
            for (int j = 0; j < truck.plan().calibrationCatches(); j++) {
                calibrations.add(calibrationCatch(i));
            }
        }
        List<CalibrationCatchEntry> written = fault.calibrations(calibrations, situation);
        OffsetDateTime entered = now();
        List<Quantity<?>> found = new ArrayList<>();
        List<Quantity<?>> values = new ArrayList<>();
        List<Double> held = new ArrayList<>();
        List<VerificationCatchEntry> verifications = new ArrayList<>();
        for (int i = 0; i < truck.discharge().size(); i++) {
            double asFound = truck.trade().ofKilograms(truck.foundKilogramsPerRevolution(i));
            double step = Trade.displayStep(asFound);
            found.add(Trade.written(asFound, step, truck.trade().discharge));
            double value = truck.plan().enters()
                    ? Recorded.ratio(written, spreader, truck, i).orElse(asFound)
                    : asFound;
            values.add(Trade.written(value, step, truck.trade().discharge));
            double hidden = draw.uniform(-0.5, 0.5) * step;
            double inside = Trade.written(value, step) + (truck.plan().enters() ? 0 : hidden);
            double kilograms = inside * Amounts.si(Mass.class, Amounts.of(1, truck.trade().mass));
            held.add(fault.heldByController(kilograms, situation));
            for (int j = 0; j < truck.plan().verificationCatches(); j++) {
                verifications.add(verificationCatch(i, values.get(i), kilograms));
            }
        }
        TruckDay checked = TruckDay.of(truck.id(), spreader)
                .inForce(inForce(found, values, entered))
                .calibrationCatches(written)
                .verificationCatches(fault.verifications(verifications, situation));
        TruckDay entry = truck.plan().road() ? checked.roadSpeed(roadSpeed()) : checked;
        FleetDay day = new FleetDay(
                TruckMaker.DAY,
                LocalDate.of(2026, 11, 1),
                Amounts.of(100 * TOLERANCE, PERCENT),
                DecisionRule.guarded(100 * RISK),
                allowances(),
                Optional.empty(),
                Optional.empty(),
                List.of(truck.scale().entry()),
                List.of(),
                List.of(truck.material()),
                Optional.empty(),
                List.of(),
                List.of(entry));
        return new Made(truck, fault.day(day, situation), List.copyOf(held));
    }

    private CatchAllowances allowances() {
        double stated = Trade.written(100 * truck.repeatability(), 0.1);
        return truck.plan().states()
                ? new CatchAllowances(
                        Amounts.of(0, PERCENT),
                        Amounts.of(0, PERCENT),
                        Optional.empty(),
                        Optional.of(Repeatability.assumed(Amounts.of(stated, PERCENT))))
                : CatchAllowances.NONE;
    }

    /** The display's list says what it holds, or what it held when the day began. */
    private List<InForceEntry> inForce(List<Quantity<?>> found, List<Quantity<?>> values, OffsetDateTime entered) {
        boolean now = truck.plan().enters() && draw.chance(0.6);
        Since since = now ? Since.of(entered) : Since.of(TruckMaker.DAY.minusDays(draw.whole(5, 60)));
        List<InForceEntry> entries = new ArrayList<>();
        for (int i = 0; i < values.size(); i++) {
            Quantity<?> value = now ? values.get(i) : found.get(i);
            entries.add(new InForceEntry(
                    value,
                    Optional.of(Amounts.of(Trade.displayStep(value.getValue().doubleValue()), truck.trade().discharge)),
                    since,
                    truck.material().name(),
                    setting(i),
                    Optional.empty()));
        }
        return entries;
    }

    private Optional<Quantity<?>> setting(int opening) {
        return truck.openings().isEmpty()
                ? Optional.empty()
                : Optional.of(truck.openings().get(opening));
    }

    private OffsetDateTime now() {
        return OffsetDateTime.of(TruckMaker.DAY, LocalTime.ofSecondOfDay(minute * 60L), ZoneOffset.ofHours(-5));
    }

    private double wantedKilograms() {
        TrueScale.Kind kind = truck.scale().kind();
        return draw.uniform(kind.lightest, kind.heaviest)
                * (truck.scale().division() / kind.division)
                * Amounts.si(Mass.class, Amounts.of(1, truck.trade().mass));
    }

    private double scattered() {
        return draw.normal(1, truck.repeatability());
    }

    private CalibrationCatchEntry calibrationCatch(int opening) {
        double discharge = truck.discharge().get(opening);
        double turns = Math.max(
                1, Math.rint(wantedKilograms() / discharge / truck.equipment().gearRatio()));
        double revolutions = turns * truck.equipment().gearRatio() + draw.uniform(0, 0.3);
        CatchEntry entry = entry(opening, revolutions * discharge * scattered(), count(revolutions));
        return new CalibrationCatchEntry(entry, true, Coasting.IN_BOTH);
    }

    private CatchEntry entry(int opening, double kilograms, Optional<CountEntry> count) {
        CatchEntry plain = CatchEntry.of(
                now(), truck.material().name(), truck.scale().entry().id(), weighings(kilograms));
        minute += MINUTES;
        CatchEntry counted = count.map(plain::counted).orElse(plain);
        return setting(opening).<CatchEntry>map(counted::at).orElse(counted);
    }

    private WeighingEntry[] weighings(double kilograms) {
        TrueScale scale = truck.scale();
        double total = truck.trade().ofKilograms(kilograms);
        double perContainer =
                scale.kind().heaviest / scale.kind().containers * scale.division() / scale.kind().division;
        int containers = (int) Math.ceil(total / perContainer);
        double shift = draw.uniform(0, 1);
        double unit = scale.division() / scale.kind().division;
        double usual = draw.uniform(scale.kind().lightestTare, scale.kind().heaviestTare) * unit;
        return IntStream.range(0, containers)
                .mapToObj(i -> {
                    double tare = usual * (1 + 0.02 * Math.sin(i + 6 * shift));
                    double net = total / containers;
                    double reading = scale.reading(net + tare);
                    double empty =
                            scale.reading(truck.plan().tares() == TrueTruck.TareHabit.ONE_FOR_ALL ? usual : tare);
                    boolean zeroed = truck.plan().tares() == TrueTruck.TareHabit.SCALE_ZEROED;
                    return new WeighingEntry(
                            "container " + (i + 1),
                            Amounts.of(zeroed ? scale.reading(net) : reading, truck.trade().mass),
                            Amounts.of(zeroed ? 0 : empty, truck.trade().mass));
                })
                .toArray(WeighingEntry[]::new);
    }

    private double pulses(double revolutions) {
        return Math.max(1, Math.floor(truck.pulsesPerRevolution() * revolutions + draw.uniform(0, 1)));
    }

    private Optional<CountEntry> count(double revolutions) {
        return truck.hasSensor() ? Optional.of(counted(pulses(revolutions))) : Optional.of(byEye(revolutions));
    }

    private CountEntry counted(double pulses) {
        if (!truck.plan().readings()) {
            return CountEntry.ofPulses(Amounts.of(pulses, PULSE));
        }
        double start = counter;
        counter += pulses;
        return CountEntry.ofReadings(Amounts.of(start, PULSE), Amounts.of(counter, PULSE));
    }

    private CountEntry byEye(double revolutions) {
        double seen = Math.max(EYE_STEP, Trade.written(draw.normal(revolutions, EYE_DEVIATION), EYE_STEP));
        return CountEntry.byEye(Amounts.of(seen, REVOLUTION), Amounts.of(EYE_DEVIATION, REVOLUTION));
    }

    /** The controller turns the shaft until it believes to have laid what is wanted. */
    private VerificationCatchEntry verificationCatch(int opening, Quantity<?> written, double held) {
        double rate = draw.whole(4, 10) * 50;
        double speed = draw.whole(3, 7) * 5;
        double metersPerSecond = Amounts.si(Speed.class, Amounts.of(speed, truck.trade().speed));
        double perMeter = Amounts.si(ApplicationRate.class, Amounts.of(rate, truck.trade().rate));
        double seconds = Math.max(10, Math.rint(wantedKilograms() / perMeter / metersPerSecond));
        double expected = perMeter * metersPerSecond * seconds;
        double part = Math.min(truck.drive().cap(), 1)
                * (1 - Math.min(0.5, truck.drive().lostSeconds() / seconds))
                * draw.normal(1, DRIVE_DEVIATION);
        double believed = fault.heldByController(held, situation);
        double revolutions = expected / believed * part;
        TrueTruck.Reading reading = truck.plan().reading();
        double counted = truck.hasSensor() ? pulses(revolutions) : 0;
        CatchEntry entry = entry(
                opening,
                fault.verified(truck.discharge().get(opening), situation) * revolutions * scattered(),
                reading.isCounted()
                        ? Optional.of(truck.hasSensor() ? counted(counted) : byEye(revolutions))
                        : Optional.empty());
        minute += (int) (seconds / 60);
        double slip = draw.chance(0.2) ? draw.whole(0, 1) * 2 - 1 : 0;
        double shown = truck.trade()
                .ofKilograms(believed
                        * (truck.hasSensor()
                                ? Math.max(1, counted + slip) / truck.pulsesPerRevolution()
                                : revolutions));
        double step = truck.plan().stepped();
        Optional<Quantity<?>> display = Optional.of(Trade.written(Math.max(step, shown), step, truck.trade().mass));
        return new VerificationCatchEntry(
                entry,
                written,
                Optional.empty(),
                new TargetEntry(
                        Optional.of(Amounts.of(rate, truck.trade().rate)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                Amounts.of(speed, truck.trade().speed),
                Optional.of(Amounts.of(seconds, SECOND)),
                Optional.empty(),
                display.filter(mass -> reading.isDisplayed()),
                display.filter(mass -> reading.isDisplayed()).map(mass -> Amounts.of(step, truck.trade().mass)));
    }

    /** Three runs over a mile or kilometer; the value in force is right. */
    private RoadSpeedEntry roadSpeed() {
        double truth = draw.whole(6000, 15_000);
        List<CourseRunEntry> runs = IntStream.range(0, 3)
                .mapToObj(i -> new CourseRunEntry(
                        Amounts.of(1, truck.trade().distance),
                        Amounts.of(Math.rint(truth * draw.normal(1, 0.002)), PULSE)))
                .toList();
        return new RoadSpeedEntry(
                TruckMaker.DAY, Amounts.of(Math.rint(truth * draw.normal(1, 0.003)), truck.trade().road), runs);
    }
}
