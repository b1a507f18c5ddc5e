package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** A day on which trucks are caught: what truly leaves falls into pails that are weighed, and pulses are counted. */
final class InventedDay {
    static final String MATERIAL = "road salt";

    private static final double PULSES_PER_REVOLUTION = 100;
    private static final double CALIBRATION_REVOLUTIONS = 30;
    private static final double DIVISION = 0.2;
    private static final double TARE = 3.4;
    private static final int PAILS = 5;
    private static final double SECONDS = 60;
    private static final double MILES_PER_HOUR = 25;
    private static final double POUNDS_PER_MILE = 360;
    private static final double SECONDS_PER_HOUR = 3600;

    /** Beyond it the crew corrects the display. */
    private static final double CORRECTED_FROM = 0.035;

    private static final int MINUTES_A_CATCH = 12;

    private final LocalDate day;
    private final LocalDate seasonStart;
    private final double looseDensity;
    private final ZoneOffset yard;

    InventedDay(LocalDate day, LocalDate seasonStart, double looseDensity, ZoneOffset yard) {
        this.day = day;
        this.seasonStart = seasonStart;
        this.looseDensity = looseDensity;
        this.yard = yard;
    }

    /** What is written down of the day; the trucks' displays hold what was entered then. */
    FleetDay of(List<InventedTruck> trucks, Set<String> calibrated) {
        Scale scale = Scale.of("hanging 2", pounds(300), pounds(DIVISION))
                .withAccuracy(new ScaleAccuracy.Stated(Amounts.of(0.2, SpreadingUnits.PERCENT)))
                .checked(new ScaleCheck(day, pounds(50), pounds(50)));
        CatchAllowances allowances = new CatchAllowances(
                Amounts.of(0, SpreadingUnits.PERCENT),
                Amounts.of(0.2, SpreadingUnits.PERCENT),
                Optional.empty(),
                Optional.of(Repeatability.assumed(Amounts.of(0.5, SpreadingUnits.PERCENT))));
        List<TruckDay> written = new ArrayList<>();
        for (InventedTruck truck : trucks) {
            truck.begin();
            written.add(truck(truck, calibrated.contains(truck.id()), LocalTime.of(7 + written.size() % 8, 0)));
        }
        return new FleetDay(
                day,
                seasonStart,
                Amounts.of(4, SpreadingUnits.PERCENT),
                DecisionRule.SIMPLE,
                allowances,
                Optional.of("Kestrel County, south yard"),
                Optional.of("R. Alder"),
                List.of(scale),
                List.of(),
                List.of(Material.of(MATERIAL, Amounts.of(looseDensity, SpreadingUnits.POUND_PER_CUBIC_FOOT))),
                Optional.empty(),
                List.of(),
                written);
    }

    private TruckDay truck(InventedTruck truck, boolean isCalibrated, LocalTime from) {
        List<InForceEntry> inForce = new ArrayList<>();
        List<CalibrationCatchEntry> calibrations = new ArrayList<>();
        List<VerificationCatchEntry> verifications = new ArrayList<>();
        LocalTime at = from;
        for (double opening : truck.openings()) {
            inForce.add(inForce(truck, opening));
            if (isCalibrated) {
                double caught = 0;
                for (int i = 0; i < 2; i++) {
                    CatchEntry one = entry(truck, opening, CALIBRATION_REVOLUTIONS, at);
                    caught += net(one);
                    calibrations.add(new CalibrationCatchEntry(one, true, Coasting.IN_BOTH));
                    at = at.plusMinutes(MINUTES_A_CATCH);
                }
                truck.enter(opening, caught / (2 * CALIBRATION_REVOLUTIONS), day);
            }
            VerificationCatchEntry found = verification(truck, opening, at);
            at = at.plusMinutes(MINUTES_A_CATCH);
            verifications.add(found);
            double held = truck.held(opening).poundsPerRevolution();
            double error = held * revolutions(found) / net(found.entry()) - 1;
            if (Math.abs(error) > CORRECTED_FROM) {
                truck.enter(opening, held / (1 + error), day);
                verifications.add(verification(truck, opening, at));
                at = at.plusMinutes(MINUTES_A_CATCH);
            }
        }
        return TruckDay.of(truck.id(), spreader())
                .inForce(inForce)
                .calibrationCatches(calibrations)
                .verificationCatches(verifications);
    }

    static SpreaderEntry spreader() {
        return SpreaderEntry.sensed(
                new TypedEntry(
                        "drag-chain",
                        1,
                        Map.of(
                                "teeth", Amounts.of(7, SpreadingUnits.ONE),
                                "chainPitch", Amounts.of(2.25, SpreadingUnits.INCH))),
                new TypedEntry("sliding-gate", 1, Map.of("width", Amounts.of(22, SpreadingUnits.INCH))),
                Amounts.of(PULSES_PER_REVOLUTION, SpreadingUnits.PULSE_PER_REVOLUTION),
                Amounts.of(5.2, SpreadingUnits.ONE));
    }

    private static InForceEntry inForce(InventedTruck truck, double opening) {
        InventedTruck.Held held = truck.held(opening);
        return new InForceEntry(
                perRevolution(held.poundsPerRevolution()),
                Optional.of(perRevolution(0.01)),
                Since.of(held.since()),
                MATERIAL,
                Optional.of(Amounts.of(opening, SpreadingUnits.INCH)),
                Optional.of(slot(truck, opening)));
    }

    private static String slot(InventedTruck truck, double opening) {
        return String.valueOf(truck.openings().indexOf(opening) + 1);
    }

    /** The controller counts turns until it takes the target for laid. */
    private VerificationCatchEntry verification(InventedTruck truck, double opening, LocalTime at) {
        double held = truck.held(opening).poundsPerRevolution();
        double wanted = POUNDS_PER_MILE * MILES_PER_HOUR * SECONDS / SECONDS_PER_HOUR;
        return new VerificationCatchEntry(
                entry(truck, opening, Math.rint(wanted / held * PULSES_PER_REVOLUTION) / PULSES_PER_REVOLUTION, at),
                perRevolution(held),
                Optional.of(slot(truck, opening)),
                new TargetEntry(
                        Optional.of(Amounts.of(POUNDS_PER_MILE, SpreadingUnits.POUND_PER_MILE)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                Amounts.of(MILES_PER_HOUR, SpreadingUnits.MILE_PER_HOUR),
                Optional.of(Amounts.of(SECONDS, SpreadingUnits.SECOND)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private CatchEntry entry(InventedTruck truck, double opening, double revolutions, LocalTime at) {
        double pounds = truck.pounds(opening, revolutions, day);
        List<WeighingEntry> pails = new ArrayList<>();
        for (int pail = 1; pail <= PAILS; pail++) {
            pails.add(new WeighingEntry("pail " + pail, pounds(read(pounds / PAILS + TARE)), pounds(TARE)));
        }
        return new CatchEntry(
                OffsetDateTime.of(day, at, yard),
                Optional.empty(),
                Optional.of("hanging 2"),
                pails,
                Optional.empty(),
                Optional.empty(),
                Optional.of(CountEntry.ofPulses(
                        Amounts.of(Math.rint(revolutions * PULSES_PER_REVOLUTION), SpreadingUnits.PULSE))),
                Optional.of(Amounts.of(opening, SpreadingUnits.INCH)),
                MATERIAL,
                Optional.empty(),
                Optional.empty());
    }

    /** As a scale shows it, to its division. */
    private static double read(double pounds) {
        return Math.rint(Math.rint(pounds / DIVISION) * DIVISION * 10) / 10;
    }

    private static double net(CatchEntry entry) {
        return entry.containers().stream()
                .mapToDouble(pail -> pail.gross().getValue().doubleValue()
                        - pail.tare().getValue().doubleValue())
                .sum();
    }

    private static double revolutions(VerificationCatchEntry found) {
        return found.entry()
                        .counted()
                        .orElseThrow()
                        .pulses()
                        .orElseThrow()
                        .getValue()
                        .doubleValue()
                / PULSES_PER_REVOLUTION;
    }

    private static Quantity<Mass> pounds(double pounds) {
        return Amounts.of(pounds, SpreadingUnits.POUND);
    }

    private static Quantity<?> perRevolution(double pounds) {
        return Amounts.of(pounds, SpreadingUnits.POUND_PER_REVOLUTION);
    }
}
