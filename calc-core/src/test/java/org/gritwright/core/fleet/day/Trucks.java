package org.gritwright.core.fleet.day;

import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.MILE;
import static org.gritwright.units.SpreadingUnits.MILE_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.POUND;
import static org.gritwright.units.SpreadingUnits.POUND_PER_CUBIC_FOOT;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;
import static org.gritwright.units.SpreadingUnits.PULSE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_MILE;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.SECOND;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.units.Amounts;

/** Invented trucks whose true discharge is 5.2 lb/rev at 2 in, with exact numbers. */
public final class Trucks {
    public static final LocalDate DAY = LocalDate.of(2026, 10, 19);
    private static final double TRUE_POUNDS_PER_REVOLUTION = 5.2;

    /** Catches that scatter by a thousandth. */
    private static final CatchAllowances REPEATABLE = new CatchAllowances(
            Amounts.of(0, PERCENT),
            Amounts.of(0, PERCENT),
            Optional.empty(),
            Optional.of(Repeatability.assumed(Amounts.of(0.1, PERCENT))));

    private Trucks() {}

    public static FleetDay day(TruckDay... trucks) {
        Scale scale = Scale.of("platform", Amounts.of(1000, POUND), Amounts.of(0.5, POUND))
                .withAccuracy(new ScaleAccuracy.Stated(Amounts.of(0.1, PERCENT)))
                .checked(new ScaleCheck(DAY, Amounts.of(100, POUND), Amounts.of(100, POUND)));
        return new FleetDay(
                DAY,
                LocalDate.of(2026, 11, 1),
                Amounts.of(4, PERCENT),
                DecisionRule.SIMPLE,
                REPEATABLE,
                Optional.empty(),
                Optional.empty(),
                List.of(scale),
                List.of(),
                List.of(Material.of("salt", Amounts.of(78, POUND_PER_CUBIC_FOOT))),
                Optional.empty(),
                List.of(),
                List.of(trucks));
    }

    /** A truck on which nothing was done that day. */
    public static TruckDay idle(String id) {
        return TruckDay.of(id, spreader(gate())).inForce(List.of(inForce("5.2 lb/rev", DAY)));
    }

    /** The same truck with another value listed as in force. */
    public static TruckDay listing(TruckDay truck, String value) {
        return truck.inForce(List.of(inForce(value, DAY)));
    }

    /** The trucks' spreader with another gate. */
    public static SpreaderEntry spreader(TypedEntry gate) {
        return SpreaderEntry.sensed(conveyor(), gate, Amounts.of(100, PULSE_PER_REVOLUTION), Amounts.of(5.2, ONE));
    }

    public static TypedEntry conveyor() {
        return new TypedEntry(
                "drag-chain", 1, Map.of("teeth", Amounts.of(7, ONE), "chainPitch", Amounts.of(2.25, INCH)));
    }

    public static TypedEntry gate() {
        return new TypedEntry("sliding-gate", 1, Map.of("width", Amounts.of(22, INCH)));
    }

    /** For salt at 2 in. */
    public static InForceEntry inForce(String value, LocalDate since) {
        return inForce(value, 2, Since.of(since));
    }

    /** For salt at so many inches. */
    public static InForceEntry inForce(String value, double openingInches, Since since) {
        return new InForceEntry(
                Amounts.parseAny(value),
                Optional.of(Amounts.parseAny("0.01 lb/rev")),
                since,
                "salt",
                Optional.of(Amounts.of(openingInches, INCH)),
                Optional.empty());
    }

    public static TruckDay withNothingInForce(TruckDay truck) {
        return truck.inForce(List.of());
    }

    public static TruckDay with(TruckDay truck, InForceEntry... inForce) {
        return truck.inForce(List.of(inForce));
    }

    public static TruckDay with(TruckDay truck, SpreaderEntry spreader) {
        return truck.spreader(spreader);
    }

    public static TruckDay with(TruckDay truck, LocalDate changedOn, Change.Part part) {
        return truck.changes(List.of(new ChangeEntry(changedOn, part, Optional.empty())));
    }

    public static TruckDay with(TruckDay truck, CalibrationCatchEntry... catches) {
        return truck.calibrationCatches(List.of(catches));
    }

    public static TruckDay with(TruckDay truck, VerificationCatchEntry... catches) {
        return truck.verificationCatches(List.of(catches));
    }

    /** With three exact runs over a mile that counted 13 000 pulses each. */
    public static TruckDay withRoadSpeed(TruckDay truck, double pulsesPerMileInForce) {
        return withRoadSpeed(truck, DAY, pulsesPerMileInForce);
    }

    public static TruckDay withRoadSpeed(TruckDay truck, LocalDate on, double pulsesPerMileInForce) {
        List<CourseRunEntry> runs = IntStream.range(0, 3)
                .mapToObj(i -> new CourseRunEntry(Amounts.of(1, MILE), Amounts.of(13_000, PULSE)))
                .toList();
        return truck.roadSpeed(new RoadSpeedEntry(on, Amounts.of(pulsesPerMileInForce, PULSE_PER_MILE), runs));
    }

    public static CountEntry pulses(double pulses) {
        return CountEntry.ofPulses(Amounts.of(pulses, PULSE));
    }

    public static CatchEntry entry(int hour, double openingInches, double netPounds, Optional<CountEntry> counted) {
        return new CatchEntry(
                OffsetDateTime.of(DAY, LocalTime.of(hour, 0), ZoneOffset.ofHours(-5)),
                Optional.empty(),
                Optional.of("platform"),
                List.of(new WeighingEntry("tarp", Amounts.of(netPounds + 4, POUND), Amounts.of(4, POUND))),
                Optional.empty(),
                Optional.empty(),
                counted,
                Optional.of(Amounts.of(openingInches, INCH)),
                "salt",
                Optional.empty(),
                Optional.empty());
    }

    /** An exact calibration catch of 30 revolutions. */
    public static CalibrationCatchEntry calibrationCatch(int hour, double openingInches) {
        double net = 30 * TRUE_POUNDS_PER_REVOLUTION * openingInches / 2;
        return new CalibrationCatchEntry(
                entry(hour, openingInches, net, Optional.of(pulses(3000))), true, Coasting.IN_BOTH);
    }

    /** A catch at 360 lb/mi and 25 mi/h that counted some revolutions and caught what they truly discharge. */
    public static VerificationCatchEntry verificationCatch(
            int hour, String inForce, double seconds, double revolutions) {
        Optional<CountEntry> counted = Optional.of(pulses(Math.rint(revolutions * 100)));
        double net = Math.rint(Math.rint(revolutions * 100) * TRUE_POUNDS_PER_REVOLUTION) / 100;
        return verificationCatch(inForce, seconds, entry(hour, 2, net, counted));
    }

    public static VerificationCatchEntry verificationCatch(String inForce, double seconds, CatchEntry entry) {
        Quantity<?> factor = Amounts.parseAny(inForce);
        return new VerificationCatchEntry(
                entry,
                factor,
                Optional.empty(),
                new TargetEntry(
                        Optional.of(Amounts.of(360, POUND_PER_MILE)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                Amounts.of(25, MILE_PER_HOUR),
                Optional.of(Amounts.of(seconds, SECOND)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
