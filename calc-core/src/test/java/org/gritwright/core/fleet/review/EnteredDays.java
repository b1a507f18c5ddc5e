package org.gritwright.core.fleet.review;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.fleet.day.FlowMeterEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.weighing.Caught;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.ReadVolume;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * Invented days whose numbers can be followed by hand: a revolution sweeps 6 × 2.5 in × 24 in × 4 in, which is 5/6 ft³ or 50 lb of
 * loose salt; 80 % of it, 40 lb, are discharged. At 2 in it is half of that. The scale rounds to 0.1 lb.
 */
final class EnteredDays {
    static final double POUND = 0.45359237;
    static final LocalDate DAY = LocalDate.of(2026, 10, 19);
    static final Scale SCALE =
            Scale.of("S", Amounts.of(50_000, SpreadingUnits.POUND), Amounts.of(0.1, SpreadingUnits.POUND));
    static final Material SALT = Material.of("salt", Amounts.of(60, SpreadingUnits.POUND_PER_CUBIC_FOOT));
    static final TypeRegistry TYPES = BuiltInTypes.registry();
    static final SpreaderEntry CHAIN = chain(
            Map.of("teeth", Amounts.of(6, SpreadingUnits.ONE), "chainPitch", Amounts.of(2.5, SpreadingUnits.INCH)));
    static final CalibrationPoint FOUR = at(4);
    static final CalibrationPoint TWO = at(2);

    /** 10 lb/gal, so that a gallon is 10 lb. */
    static final Material BRINE = Material.liquid("brine", Amounts.of(10, SpreadingUnits.POUND_PER_US_GALLON));

    /** 1000 pulses a gallon. */
    static final FlowMeterEntry METER = new FlowMeterEntry(
            new TypedEntry("k-factor", 1, Map.of("kFactor", Amounts.of(1000, SpreadingUnits.PULSE_PER_US_GALLON))));

    static final Graduate PAIL =
            Graduate.of("pail", Amounts.of(53, SpreadingUnits.US_GALLON), Amounts.of(0.1, SpreadingUnits.US_GALLON));

    static final CalibrationPoint METERED = CalibrationPoint.of(BRINE, METER.metering(TYPES), Setting.none());

    /** For 50 gal. */
    static final TestRun PUMPED = TestRun.pumpingOver(
            Amounts.of(50, SpreadingUnits.US_GALLON_PER_MILE),
            Amounts.of(20, SpreadingUnits.MILE_PER_HOUR),
            Amounts.of(1, SpreadingUnits.MILE));

    private EnteredDays() {}

    static SpreaderEntry chain(Map<String, ?> parameters) {
        return SpreaderEntry.sensed(
                new TypedEntry("drag-chain", 1, parameters),
                new TypedEntry("sliding-gate", 1, Map.of("width", Amounts.of(24, SpreadingUnits.INCH))),
                Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION),
                Amounts.of(1, SpreadingUnits.ONE));
    }

    static CalibrationPoint at(double inches) {
        return at(SALT, CHAIN, inches);
    }

    static CalibrationPoint at(Material material, SpreaderEntry spreader, double inches) {
        return CalibrationPoint.of(
                material, spreader.metering(TYPES), Setting.height(Amounts.of(inches, SpreadingUnits.INCH)));
    }

    static OffsetDateTime time(int minutesAfterEight) {
        return OffsetDateTime.of(DAY, LocalTime.of(8, 0).plusMinutes(minutesAfterEight), ZoneOffset.UTC);
    }

    static Weighing box(double gross, double tare) {
        return new Weighing("box", Amounts.of(gross, SpreadingUnits.POUND), Amounts.of(tare, SpreadingUnits.POUND));
    }

    static CaughtMass weighed(Weighing... boxes) {
        return CaughtMass.of(SCALE, DAY, boxes);
    }

    /** In a box of 50 lb. */
    static CaughtMass net(double pounds) {
        return weighed(box(pounds + 50, 50));
    }

    static ReadVolume read(double... gallons) {
        return new ReadVolume(
                PAIL,
                DAY,
                IntStream.range(0, gallons.length)
                        .mapToObj(i -> Amounts.of(gallons[i], SpreadingUnits.US_GALLON))
                        .toList());
    }

    static ShaftCount pulses(double pulses) {
        return new ShaftCount.Pulses(Amounts.of(pulses, SpreadingUnits.PULSE));
    }

    /** At 100 pulses a revolution. */
    static CalibrationCatch calibration(int minutes, CalibrationPoint point, Caught caught, double pulses) {
        return CalibrationCatch.of(Observation.of(point, time(minutes), caught).counted(pulses(pulses)));
    }

    static CalibrationInForce inForce(CalibrationPoint point, String value) {
        return CalibrationInForce.of(point, CalibrationFactor.parse(value), Optional.empty());
    }

    /** For 420 lb: 400 lb/mi over 1.05 mi. */
    static TestRun run() {
        return TestRun.over(
                Amounts.of(400, SpreadingUnits.POUND_PER_MILE),
                Amounts.of(20, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(1.05, SpreadingUnits.MILE));
    }

    static VerificationCatch verification(int minutes, CalibrationPoint point, Caught caught, String inForce) {
        return VerificationCatch.of(Observation.of(point, time(minutes), caught), inForce(point, inForce), run());
    }

    static VerificationCatch verification(
            int minutes, CalibrationPoint point, Caught caught, double pulses, String inForce) {
        return VerificationCatch.of(
                Observation.of(point, time(minutes), caught).counted(pulses(pulses)), inForce(point, inForce), run());
    }

    static Sketch day(List<CalibrationCatch> calibrationCatches, List<VerificationCatch> verificationCatches) {
        return Sketch.of(calibrationCatches, verificationCatches, List.of(), List.of(), CatchLimits.COMMON);
    }

    /** Nothing was caught. */
    static Sketch listing(String... values) {
        return Sketch.of(
                List.of(),
                List.of(),
                List.of(),
                Stream.of(values).map(value -> inForce(FOUR, value)).toList(),
                CatchLimits.COMMON);
    }

    /** "slip | in how many places | what is otherwise", numbers in pounds and revolutions; of several days, with "or" between. */
    static List<String> table(Sketch day, List<Hypothesis> all) {
        return all.stream()
                .map(one -> one.slip().words() + " | " + one.places() + " | "
                        + one.repaired().stream()
                                .map(repaired -> changes(day, repaired))
                                .collect(Collectors.joining(" or ")))
                .toList();
    }

    private static String changes(Sketch day, Sketch repaired) {
        List<String> changes = new ArrayList<>();
        for (int i = 0; i < day.catches().size(); i++) {
            SketchedCatch before = day.catches().get(i);
            SketchedCatch after = repaired.catches().get(i);
            List<String> numbers = new ArrayList<>();
            change("", before.kilograms() / POUND, after.kilograms() / POUND, " lb", numbers);
            change("", before.counted().orElse(Double.NaN), after.counted().orElse(Double.NaN), " rev", numbers);
            change("shown ", pounds(before.shownKilograms()), pounds(after.shownKilograms()), " lb", numbers);
            change("held ", before.heldKilograms() / POUND, after.heldKilograms() / POUND, " lb", numbers);
            change("loose ", before.looseKilograms() / POUND, after.looseKilograms() / POUND, " lb", numbers);
            if (!numbers.isEmpty()) {
                changes.add(i + ": " + String.join(" ", numbers));
            }
        }
        if (repaired.held().size() != day.held().size()) {
            changes.add(repaired.held().stream()
                    .map(one -> rounded(one.kilogramsPerRevolution() / POUND) + " lb")
                    .collect(Collectors.joining(" and ", "of values ", ", " + repaired.unlisted() + " unlisted")));
        } else {
            for (int i = 0; i < day.held().size(); i++) {
                Sketch.Held before = day.held().get(i);
                Sketch.Held after = repaired.held().get(i);
                List<String> numbers = new ArrayList<>();
                change(
                        "",
                        before.kilogramsPerRevolution() / POUND,
                        after.kilogramsPerRevolution() / POUND,
                        " lb",
                        numbers);
                change("loose ", before.looseKilograms() / POUND, after.looseKilograms() / POUND, " lb", numbers);
                if (!numbers.isEmpty()) {
                    changes.add("held " + i + ": " + String.join(" ", numbers));
                }
            }
        }
        return String.join(", ", changes);
    }

    private static double pounds(OptionalDouble kilograms) {
        return kilograms.orElse(Double.NaN) / POUND;
    }

    private static void change(String what, double before, double after, String unit, List<String> changes) {
        if (Double.compare(before, after) != 0) {
            changes.add(what + (Double.isNaN(after) ? "none" : rounded(after)) + unit);
        }
    }

    private static String rounded(double number) {
        return String.format(Locale.ROOT, "%.5g", number)
                .replaceFirst("(\\.\\d*?)0+$", "$1")
                .replaceFirst("\\.$", "");
    }
}
