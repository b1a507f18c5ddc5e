package org.gritwright.core.simulation;

import static org.gritwright.units.SpreadingUnits.*;

import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.DensityEntry;
import org.gritwright.core.fleet.day.FlowMeterEntry;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.MeteringEntry;
import org.gritwright.core.fleet.day.PumpEntry;
import org.gritwright.core.fleet.day.ReadEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.observation.Material;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.BulkDensity;

/** The day of one truck with a liquid, catch by catch, with a fault where it happens. */
final class LiquidDay {
    private static final double DRIVE_DEVIATION = DayMaker.DRIVE_DEVIATION;
    private static final double DENSITY_DEVIATION = 0.002;
    /** Of a kilogram per kilometer. */
    private static final double POUNDS_PER_MILE = 3.548;

    private static final int MINUTES = 12;

    private final LiquidTruck truck;
    private final LiquidFault fault;
    private final String id;
    private final Draw draw;
    private final boolean up;
    private final double strength;
    private final double tare;
    private final double stated;
    private final int odd;
    private int made;
    private int minute = 8 * 60;
    private double caughtInAll;
    private double worstCatch;

    private LiquidDay(LiquidTruck truck, LiquidFault fault, String id) {
        this.truck = truck;
        this.fault = fault;
        this.id = id;
        this.draw = Draw.of(truck.seed() * 7_919 + 17);
        this.up = draw.chance(0.5);
        this.strength = draw.uniform(0, 1);
        this.tare = Math.rint(draw.uniform(20, 60) / (truck.us() ? 1 : 2));
        this.stated = truck.density() * draw.normal(1, DENSITY_DEVIATION);
        // Of the catches that a fault of one may be in: those of the calibration where there are any.
        this.odd =
                draw.whole(0, Math.max(1, truck.calibrations() > 0 ? truck.calibrations() : truck.verifications()) - 1);
    }

    /**
     * What was written down and what was true.
     *
     * @param entry the truck
     * @param brine what it lays
     * @param graduates its containers
     * @param truth true volume per pulse today
     * @param held the volume per pulse that the controller holds after the day
     * @param written the number in the display for it
     * @param commanded by what the controller wants more than is written
     * @param worstCatch the greatest part that a catch as written is off what was caught
     */
    record Made(
            LiquidTruck truck,
            TruckDay entry,
            Material brine,
            List<Graduate> graduates,
            double truth,
            double held,
            double written,
            double commanded,
            double worstCatch) {

        /** By how much the road gets too much as things stand. */
        double roadError() {
            return truth / held * commanded - 1;
        }

        /** And once another number is entered. */
        double roadError(double entered) {
            double factor = truck.metered() ? written / entered : entered / written;
            return truth / (held * factor) * commanded - 1;
        }
    }

    static Made make(LiquidTruck truck, LiquidFault fault, String id) {
        return new LiquidDay(truck, fault, id).day();
    }

    private boolean is(LiquidFault one) {
        return fault == one;
    }

    private Unit<Volume> volume() {
        return truck.us() ? US_GALLON : LITER;
    }

    /** The equipment with a slip in it. */
    private MeteringEntry equipment() {
        if (truck.metered()) {
            double k = truck.rating() * (is(LiquidFault.K_IN_ENTRY) ? up ? 10 : 0.1 : 1);
            return new FlowMeterEntry(new TypedEntry(
                    "k-factor",
                    1,
                    Map.of("kFactor", Amounts.of(k, truck.us() ? PULSE_PER_US_GALLON : PULSE_PER_LITER))));
        }
        return PumpEntry.sensed(
                new TypedEntry(
                        "displacement-pump",
                        1,
                        Map.of(
                                "displacement",
                                Amounts.of(
                                        truck.rating(), truck.us() ? US_GALLON_PER_REVOLUTION : LITER_PER_REVOLUTION))),
                Amounts.of(sensor(), PULSE_PER_REVOLUTION),
                Amounts.of(1, ONE));
    }

    private double sensor() {
        return truck.pulses()
                * switch (fault) {
                    case PULSES_HALF -> 0.5;
                    case PULSES_DOUBLE -> 2;
                    case PULSES_TENTH -> 0.1;
                    case PULSES_TENFOLD -> 10;
                    default -> 1;
                };
    }

    private double perPulseToday() {
        return truck.perPulse()
                * (is(LiquidFault.WORN)
                        ? 1 - (0.08 + 0.12 * strength)
                        : is(LiquidFault.AIR_IN_ALL) ? 1 - (0.1 + 0.3 * strength) : 1);
    }

    /** The number in a display for a volume per pulse. */
    private double number(double perPulse, double pulsesPerRevolution) {
        double number = truck.metered() ? 1 / perPulse : perPulse * pulsesPerRevolution;
        return Trade.written(number, Trade.displayStep(number));
    }

    private Quantity<?> value(double number) {
        return truck.metered()
                ? Amounts.of(number, truck.us() ? PULSE_PER_US_GALLON : PULSE_PER_LITER)
                : Amounts.of(number, truck.us() ? US_GALLON_PER_REVOLUTION : LITER_PER_REVOLUTION);
    }

    private Made day() {
        double truth = perPulseToday();
        List<CalibrationCatchEntry> calibrations = new ArrayList<>();
        double pulses = 0;
        for (int i = 0; i < truck.calibrations(); i++) {
            double counted = pulses(wanted() / truth);
            pulses += counted;
            calibrations.add(
                    new CalibrationCatchEntry(caught(counted * truth, Optional.of(counted)), true, Coasting.IN_BOTH));
        }
        if (is(LiquidFault.TWICE)) {
            calibrations.add(odd + 1, calibrations.get(odd));
        }
        double found = number(truck.perPulse() * (1 + truck.foundError()), truck.pulses());
        double entered = truck.enters() ? number(caughtInAll / pulses, sensor()) : found;
        double slip = switch (fault) {
            case K_IN_DISPLAY -> up ? 10 : 0.1;
            case PER_LITER -> truck.metered() ? 1 / LiquidTruck.LITERS_PER_GALLON : LiquidTruck.LITERS_PER_GALLON;
            default -> 1;
        };
        double written = Trade.written(entered * slip, Trade.displayStep(entered * slip));
        double held = truck.metered() ? 1 / written : written / truck.pulses();
        double commanded = is(LiquidFault.OTHER_TON) ? up ? 1.10231131 : 0.90718474 : 1;
        boolean now = truck.enters() && draw.chance(0.6);
        Since since = now ? Since.of(at()) : Since.of(TruckMaker.DAY.minusDays(draw.whole(5, 60)));
        List<VerificationCatchEntry> verifications = new ArrayList<>();
        for (int i = 0; i < truck.verifications(); i++) {
            verifications.add(verified(written, held, truth, commanded));
        }
        String brine = "brine " + id;
        TruckDay entry = TruckDay.of(id, equipment())
                .inForce(List.of(new InForceEntry(
                        value(now || !truck.enters() ? written : found),
                        Optional.of(value(Trade.displayStep(now || !truck.enters() ? written : found))),
                        since,
                        brine,
                        Optional.empty(),
                        Optional.empty())))
                .calibrationCatches(calibrations)
                .verificationCatches(verifications);
        return new Made(
                truck,
                truck.prewets() ? entry.wetting("T-1") : entry.roadSpeed(LiquidFleet.roadSpeed(truck.us())),
                Material.liquid(brine, density(truck.density(), 0.01)).withChemical(Amounts.of(23.3, PERCENT)),
                graduates(),
                truth,
                held,
                written,
                commanded,
                worstCatch);
    }

    private List<Graduate> graduates() {
        if (truck.weighed()) {
            return List.of();
        }
        Graduate used = Graduate.of(
                container(), Amounts.of(truck.capacity(), volume()), Amounts.of(truck.division(), volume()));
        return List.of(
                truck.limit() < 0.02
                        ? used.within(Amounts.of(Trade.written(truck.limit() * truck.capacity(), 0.001), volume()))
                        : used,
                Graduate.of(
                        other(),
                        Amounts.of(truck.us() ? 8 : 30, volume()),
                        Amounts.of(truck.us() ? 0.05 : 0.2, volume())));
    }

    private String container() {
        return "pail of " + id;
    }

    private String other() {
        return "drum of " + id;
    }

    private Quantity<BulkDensity> density(double number, double step) {
        return Trade.written(
                number, truck.us() ? step : step / 10, truck.us() ? POUND_PER_US_GALLON : KILOGRAM_PER_LITER);
    }

    private OffsetDateTime at() {
        return OffsetDateTime.of(TruckMaker.DAY, LocalTime.ofSecondOfDay(minute * 60L), ZoneOffset.ofHours(-5));
    }

    /** Liters in the place of gallons are more than the container holds, unless it is filled to a quarter. */
    private double wanted() {
        boolean quarter = is(LiquidFault.LITERS_IN_ALL) || is(LiquidFault.LITERS_IN_ONE);
        return truck.capacity() * (quarter && up ? 0.26 : 1) * draw.uniform(0.2, 0.95);
    }

    /** Pulses aren't started or stopped for: the edge falls anywhere. */
    private double pulses(double exact) {
        return Math.max(1, Math.floor(exact + draw.uniform(0, 1)));
    }

    /** Whether it is the catch that a fault of one is made in. */
    private boolean isOdd() {
        return made == odd;
    }

    private CatchEntry caught(double asPumped, Optional<Double> counted) {
        double edge = counted.isPresent() ? draw.uniform(-0.5, 0.5) / counted.get() : 0;
        double truth = asPumped
                * (1 + edge)
                * draw.normal(1, truck.repeatability())
                * (is(LiquidFault.AIR_IN_ONE) && isOdd() ? 1 - (0.1 + 0.3 * strength) : 1);
        CatchEntry plain = truck.weighed() ? weighed(truth) : read(truth);
        made++;
        minute += MINUTES;
        return counted.map(pulses -> plain.counted(CountEntry.ofPulses(Amounts.of(pulses, PULSE))))
                .orElse(plain);
    }

    private void written(double volume, double truth) {
        caughtInAll += volume;
        worstCatch = Math.max(worstCatch, Math.abs(volume / truth - 1));
    }

    private CatchEntry read(double truth) {
        boolean liters = is(LiquidFault.LITERS_IN_ALL) || (is(LiquidFault.LITERS_IN_ONE) && isOdd());
        double number = Trade.written(
                truth * (1 + truck.marks()) * (liters ? LiquidTruck.LITERS_PER_GALLON : 1), truck.division());
        if (is(LiquidFault.DIGITS) && isOdd()) {
            List<Double> swapped = Edit.transposed(number);
            number = swapped.isEmpty() ? number : draw.of(swapped);
        }
        written(number, truth);
        return CatchEntry.read(
                at(),
                "brine " + id,
                ReadEntry.of(is(LiquidFault.OTHER_CONTAINER) ? other() : container(), Amounts.of(number, volume())));
    }

    private CatchEntry weighed(double truth) {
        Unit<Mass> mass = truck.us() ? POUND : KILOGRAM;
        double division = truck.us() ? 0.5 : 0.2;
        double gross = Trade.written(truth * truck.density() + tare, division);
        boolean none = is(LiquidFault.NO_TARE) && (up || isOdd());
        double empty = none ? 0 : Trade.written(tare, division);
        double water = truck.us() ? 8.34 : 0.998;
        double density = is(LiquidFault.WATER) ? water : stated;
        written((gross - empty) / density, truth);
        return CatchEntry.of(
                        at(),
                        "brine " + id,
                        "platform",
                        new WeighingEntry("tote", Amounts.of(gross, mass), Amounts.of(empty, mass)))
                .withDensity(new DensityEntry(density(density, 0.001), density(DENSITY_DEVIATION * density, 0.001)));
    }

    private VerificationCatchEntry verified(double number, double held, double truth, double commanded) {
        double dry = draw.whole(4, 10) * 50;
        double prewet = truck.us() ? draw.whole(6, 20) : draw.whole(3, 12) * 10;
        double liquid = truck.us() ? draw.whole(20, 50) : draw.whole(40, 120);
        double speed = draw.whole(3, 7) * 5;
        // A gallon a ton of so many pounds a mile, a liter a tonne of so many kilograms a kilometer.
        double ton = !truck.us() ? 1000 : is(LiquidFault.OTHER_TON) && up ? 2204.62262 : 2000;
        double perDistance = truck.prewets() ? dry * prewet / ton : liquid;
        // The truck lays what is meant, and the form says something else.
        double unit = is(LiquidFault.OTHER_DRY_RATE) ? POUNDS_PER_MILE : 1;
        // A run is ended before the container runs over.
        double laid = commanded * unit * Math.max(1, truth / held);
        double seconds = Math.max(5, Math.rint(wanted() / perDistance / laid / speed * 3600));
        double expected = perDistance * speed / 3600 * seconds * commanded * unit;
        double pulses = pulses(expected / held * draw.normal(1, DRIVE_DEVIATION));
        CatchEntry entry = caught(pulses * truth, truck.reading().isCounted() ? Optional.of(pulses) : Optional.empty());
        minute += (int) (seconds / 60);
        Optional<Quantity<?>> display = truck.reading().isDisplayed()
                ? Optional.of(Trade.written(Math.max(0.01, pulses * held), 0.01, volume()))
                : Optional.empty();
        return new VerificationCatchEntry(
                entry,
                value(number),
                Optional.empty(),
                new TargetEntry(
                        Optional.of(
                                truck.prewets()
                                        ? Amounts.of(dry, truck.us() ? POUND_PER_MILE : KILOGRAM_PER_KILOMETER)
                                        : Amounts.of(liquid, truck.us() ? US_GALLON_PER_MILE : LITER_PER_KILOMETER)),
                        Optional.empty(),
                        Optional.empty(),
                        truck.prewets()
                                ? Optional.of(Amounts.of(
                                        prewet,
                                        is(LiquidFault.OTHER_TON) && up
                                                ? US_GALLON_PER_TONNE
                                                : truck.us() ? US_GALLON_PER_SHORT_TON : LITER_PER_TONNE))
                                : Optional.empty()),
                Amounts.of(speed, truck.us() ? MILE_PER_HOUR : KILOMETER_PER_HOUR),
                Optional.of(Amounts.of(seconds, SECOND)),
                Optional.empty(),
                display,
                display.map(shown -> Amounts.of(0.01, volume())));
    }
}
