package org.gritwright.core.fleet.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.finding.Slip.Mistake;
import org.gritwright.core.finding.Term;
import org.gritwright.core.fleet.day.MeteringEntry;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.plausibility.Digits;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.PulsesPerVolume;
import org.gritwright.units.quantity.VolumePerPulse;
import org.gritwright.units.quantity.VolumePerRevolution;

/** The slips of what catches are compared with: gate opening, gear ratio, conveyor, loose bulk density, value in force. */
final class EquipmentSlips {
    /** Gates are hardly ever set lower, in meters (common practice, no source). */
    private static final double LEAST_OPENING = 0.012;

    /** Loose materials that are spread weigh from 300 to 3000 kg/m³ (common practice, no source). */
    private static final double LEAST_DENSITY = 300;

    private static final double GREATEST_DENSITY = 3000;

    /** What a pump or flow meter is rated for. */
    private static final Set<Class<?>> OF_VOLUMES =
            Set.of(VolumePerRevolution.class, PulsesPerVolume.class, VolumePerPulse.class);

    /** Slips that few people make are so many times less likely. */
    private static final int UNLIKELY = 10;

    private final Sketch day;
    private final MeteringEntry spreader;
    private final TypeRegistry types;
    private final List<Hypothesis> all = new ArrayList<>();

    private EquipmentSlips(Sketch day, MeteringEntry spreader, TypeRegistry types) {
        this.day = day;
        this.spreader = spreader;
        this.types = types;
    }

    static List<Hypothesis> of(Sketch day, MeteringEntry spreader, TypeRegistry types) {
        EquipmentSlips made = new EquipmentSlips(day, spreader, types);
        made.openings();
        made.machine();
        made.gear();
        made.densities();
        return made.all;
    }

    /** What a revolution would discharge of loose material, by point; none if such equipment can't be. */
    private Optional<Sketch> where(ToDoubleFunction<CalibrationPoint> loose) {
        try {
            return Optional.of(day.withLoose(loose));
        } catch (RuntimeException e) {
            // Types of others may answer what nobody entered with any exception: such equipment can't be.
            return Optional.empty();
        }
    }

    private void add(Slip slip, int places, ToDoubleFunction<CalibrationPoint> loose) {
        where(loose).ifPresent(repaired -> all.add(new Hypothesis(slip, List.of(repaired), places)));
    }

    private static double density(CalibrationPoint point) {
        return Amounts.si(BulkDensity.class, point.material().looseBulkDensity());
    }

    /** All openings read in the same wrong way, or one of them. */
    private void openings() {
        List<Setting> settings = day.points()
                .map(CalibrationPoint::setting)
                .filter(setting -> setting.quantity().isPresent())
                .distinct()
                .toList();
        if (settings.size() > 1) {
            factors(settings.get(0), setting -> true, 1);
        }
        for (Setting one : settings) {
            factors(one, one::isSameAs, settings.size());
            Quantity<?> reading = one.quantity().orElseThrow();
            double number = reading.getValue().doubleValue();
            int places = settings.size();
            digits(one, reading, Mistake.DIGIT_TOO_MANY, Digits.withOneLess(number), places);
            digits(one, reading, Mistake.DIGIT_DROPPED, Digits.withOneMore(number), UNLIKELY * places);
        }
    }

    private void factors(Setting first, Predicate<Setting> which, int places) {
        Quantity<?> reading = first.quantity().orElseThrow();
        for (double factor : first.scale() == Setting.Scale.HEIGHT ? Digits.LENGTH_FACTORS : List.of(10.0)) {
            opening(
                    Slip.byFactor(Term.GATE_SETTING, Mistake.TOO_LARGE, factor, scaled(reading, 1 / factor)),
                    1 / factor,
                    which,
                    places);
            opening(
                    Slip.byFactor(Term.GATE_SETTING, Mistake.TOO_SMALL, factor, scaled(reading, factor)),
                    factor,
                    which,
                    places);
        }
    }

    private void digits(Setting one, Quantity<?> reading, Mistake mistake, Set<Double> numbers, int places) {
        for (double number : numbers) {
            if (number > 0) {
                opening(
                        Slip.of(Term.GATE_SETTING, mistake, List.of(scaledTo(reading, number))),
                        number / reading.getValue().doubleValue(),
                        one::isSameAs,
                        places);
            }
        }
    }

    private void opening(Slip slip, double factor, Predicate<Setting> which, int places) {
        boolean hardlyOpen = slip.values().stream().anyMatch(EquipmentSlips::isHardlyOpen);
        add(slip, hardlyOpen ? UNLIKELY * places : places, point -> {
            Setting setting = which.test(point.setting())
                    ? point.setting()
                            .quantity()
                            .<Setting>map(given -> Setting.of(scaled(given, factor)))
                            .orElse(point.setting())
                    : point.setting();
            return density(point) * point.metering().sweptCubicMetersPerRevolution(setting);
        });
    }

    private static boolean isHardlyOpen(Quantity<?> opening) {
        Setting setting = Setting.of(opening);
        return setting.scale() == Setting.Scale.HEIGHT && setting.si() < LEAST_OPENING;
    }

    private static Quantity<?> scaled(Quantity<?> quantity, double factor) {
        return scaledTo(quantity, quantity.getValue().doubleValue() * factor);
    }

    private static <Q extends Quantity<Q>> Quantity<Q> scaledTo(Quantity<?> quantity, double number) {
        @SuppressWarnings("unchecked") // whatever kind it is, it stays
        Quantity<Q> same = (Quantity<Q>) quantity;
        return Amounts.of(number, same.getUnit());
    }

    /** Lengths and volumes in another unit, and numbers of teeth or the like counted by a half or double. */
    private void machine() {
        long lengths = spreader.machine().parameters().values().stream()
                .filter(value -> value instanceof Quantity<?> written
                        && UnitSymbol.of(written.getUnit()).kind() == Length.class)
                .count();
        spreader.machine().parameters().forEach((name, value) -> {
            if (!(value instanceof Quantity<?> written)) {
                return;
            }
            Class<?> kind = UnitSymbol.of(written.getUnit()).kind();
            List<Double> factors = kind == Length.class
                    ? Digits.LENGTH_FACTORS
                    : OF_VOLUMES.contains(kind)
                            ? Digits.VOLUME_FACTORS
                            : kind == Dimensionless.class && isWhole(written) ? List.of(2.0) : List.of();
            int places = kind == Length.class ? (int) lengths : 1;
            for (double factor : factors) {
                parameter(name, written, factor, Mistake.TOO_SMALL, places);
                if (kind != Dimensionless.class || isWhole(scaled(written, 1 / factor))) {
                    parameter(name, written, 1 / factor, Mistake.TOO_LARGE, places);
                }
            }
        });
    }

    private static boolean isWhole(Quantity<?> written) {
        double number = written.getValue().doubleValue();
        return number > 1 && number == Math.rint(number);
    }

    private void parameter(String name, Quantity<?> written, double factor, Mistake mistake, int places) {
        Quantity<?> instead = scaled(written, factor);
        Map<String, Object> parameters = new TreeMap<>(spreader.machine().parameters());
        parameters.put(name, instead);
        TypedEntry changed =
                new TypedEntry(spreader.machine().type(), spreader.machine().version(), parameters);
        try {
            Metering metering = spreader.withMachine(changed).metering(types);
            add(
                    Slip.byFactor(Term.PARAMETER, mistake, Math.max(factor, 1 / factor), instead)
                            .of(words(name)),
                    places,
                    point -> density(point) * metering.sweptCubicMetersPerRevolution(point.setting()));
        } catch (RuntimeException e) {
            // Whatever a type answers it with, such a conveyor can't be, so nobody meant it.
            return;
        }
    }

    /** "chainPitch" as people say it. */
    private static String words(String name) {
        StringBuilder words = new StringBuilder();
        name.chars()
                .forEach(
                        c -> words.append(Character.isUpperCase(c) ? " " : "").append((char) Character.toLowerCase(c)));
        return words.toString();
    }

    private void gear() {
        if (day.points().noneMatch(point -> point.metering().hasShaft())) {
            return;
        }
        double ratio = Amounts.si(Dimensionless.class, spreader.gearRatio());
        for (double factor : List.of(2.0, 10.0)) {
            gear(Slip.byFactor(Term.GEAR_RATIO, Mistake.TOO_SMALL, factor, gear(ratio * factor)), factor, UNLIKELY);
            if (ratio / factor >= 1) {
                gear(
                        Slip.byFactor(Term.GEAR_RATIO, Mistake.TOO_LARGE, factor, gear(ratio / factor)),
                        1 / factor,
                        UNLIKELY);
            }
        }
        OptionalDouble median = day.catches().isEmpty() ? day.medianLogFillOfHeld() : day.medianLogFill();
        if (ratio == 1 && median.isPresent()) {
            double implied = Math.exp(day.usualLogFill() - median.getAsDouble());
            if (implied > 2.5) {
                gear(
                        Slip.of(
                                Term.GEAR_RATIO,
                                Mistake.FORGOTTEN,
                                List.of(Amounts.of(Math.rint(10 * implied) / 10, SpreadingUnits.ONE))),
                        implied,
                        2);
            }
        }
    }

    private static Quantity<Dimensionless> gear(double ratio) {
        return Amounts.of(ratio, SpreadingUnits.ONE);
    }

    private void gear(Slip slip, double factor, int places) {
        add(slip, places, point -> SketchedCatch.loose(point) / factor);
    }

    /** Pounds per cubic foot written as kilograms per cubic meter, and the other way round. */
    private void densities() {
        double factor = Amounts.si(BulkDensity.class, Amounts.of(1, SpreadingUnits.POUND_PER_CUBIC_FOOT));
        List<Quantity<BulkDensity>> written = day.points()
                .map(point -> point.material().looseBulkDensity())
                .distinct()
                .toList();
        if (written.size() != 1) {
            return;
        }
        boolean metric = written.get(0).getUnit().equals(SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
        double number = written.get(0).getValue().doubleValue();
        Quantity<BulkDensity> instead = Amounts.of(
                number, metric ? SpreadingUnits.POUND_PER_CUBIC_FOOT : SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
        double si = Amounts.si(BulkDensity.class, instead);
        if (si < LEAST_DENSITY || si > GREATEST_DENSITY) {
            return;
        }
        add(
                Slip.byFactor(Term.DENSITY, metric ? Mistake.TOO_SMALL : Mistake.TOO_LARGE, factor, instead),
                1,
                point -> SketchedCatch.loose(point) * (metric ? factor : 1 / factor));
    }
}
