package org.gritwright.core.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.PulsesPerRevolution;

/**
 * What a truck's document says of its discharge, as logarithms with known scatter.
 *
 * @param settings the openings that are named, each once
 * @param discharges what catches and values in force say of the discharge per revolution at one of them
 */
record Evidence(List<Optional<Setting>> settings, List<Discharge> discharges) {
    /** Two readings of a scale, each rounded to a division. */
    private static final double READINGS_OF_A_NET_MASS = 2;

    /** Of a rectangle of width 1, and of the difference of two of them. */
    private static final double RECTANGLE = 1.0 / 12;

    private static final double TRIANGLE = 1.0 / 6;

    /**
     * One statement.
     *
     * @param opening which of the openings
     * @param logarithm of the stated kilograms per revolution
     * @param logarithmOfLoose of the kilograms per revolution that loose material would give by the geometry alone
     * @param variance its own, relative
     * @param scale on which it was weighed; none for a value in force
     */
    record Discharge(int opening, double logarithm, double logarithmOfLoose, double variance, Optional<String> scale) {}

    /** What one verification catch says of how far the shaft turned. */
    record Turned(double revolutions, double variance) {}

    static Evidence of(FleetDay day, TruckDay truck, double repeatability) {
        List<Optional<Setting>> settings = new ArrayList<>();
        List<Discharge> discharges = new ArrayList<>();
        Spreader spreader = Edit.spreader(truck).metering(Equipment.TYPES);
        for (CalibrationCatchEntry one : truck.calibrationCatches()) {
            turned(one.entry(), Edit.spreader(truck))
                    .ifPresent(turned ->
                            discharges.add(caught(day, one.entry(), turned, spreader, repeatability, settings)));
        }
        for (VerificationCatchEntry one : truck.verificationCatches()) {
            turned(one, Edit.spreader(truck))
                    .ifPresent(turned ->
                            discharges.add(caught(day, one.entry(), turned, spreader, repeatability, settings)));
        }
        return new Evidence(List.copyOf(settings), List.copyOf(discharges));
    }

    private static int opening(Optional<Quantity<?>> reading, List<Optional<Setting>> settings) {
        Optional<Setting> setting = reading.map(Setting::of);
        if (!settings.contains(setting)) {
            settings.add(setting);
        }
        return settings.indexOf(setting);
    }

    int opening(Optional<Quantity<?>> reading) {
        return settings.indexOf(reading.<Setting>map(Setting::of));
    }

    private static Discharge caught(
            FleetDay day,
            CatchEntry entry,
            Turned turned,
            Spreader spreader,
            double repeatability,
            List<Optional<Setting>> settings) {
        double kilograms = Recorded.kilograms(entry);
        double division = day.scales().stream()
                .filter(scale -> entry.scale().filter(scale.id()::equals).isPresent())
                .mapToDouble(scale -> Amounts.si(Mass.class, scale.division()))
                .findFirst()
                .orElseThrow();
        double rounding =
                RECTANGLE * READINGS_OF_A_NET_MASS * entry.containers().size() * Math.pow(division / kilograms, 2);
        return new Discharge(
                opening(entry.setting(), settings),
                Math.log(kilograms / turned.revolutions()),
                logarithmOfLoose(day, entry.material(), entry.setting(), spreader),
                repeatability * repeatability + rounding + turned.variance(),
                entry.scale());
    }

    static double logarithmOfLoose(FleetDay day, String material, Optional<Quantity<?>> reading, Spreader spreader) {
        double density = day.materials().stream()
                .filter(one -> one.name().equals(material))
                .map(Material::looseBulkDensity)
                .mapToDouble(one -> Amounts.si(BulkDensity.class, one))
                .findFirst()
                .orElseThrow();
        Setting setting = reading.<Setting>map(Setting::of).orElse(Setting.none());
        return Math.log(density * spreader.sweptCubicMetersPerRevolution(setting));
    }

    private static double pulsesPerRevolution(SpreaderEntry spreader) {
        return spreader.pulsesPerRevolution()
                .map(one -> Amounts.si(PulsesPerRevolution.class, one))
                .orElse(0.0);
    }

    /** Counted, by pulses or by eye. */
    static Optional<Turned> turned(CatchEntry entry, SpreaderEntry spreader) {
        OptionalDouble revolutions = Recorded.revolutions(entry, spreader);
        if (revolutions.isEmpty()) {
            return Optional.empty();
        }
        boolean byEye = entry.counted().orElseThrow().revolutions().isPresent();
        double pulse = byEye ? 0 : 1 / pulsesPerRevolution(spreader);
        double eye = byEye ? DayMaker.EYE_DEVIATION : 0;
        double counted = revolutions.getAsDouble();
        return Optional.of(new Turned(counted, (TRIANGLE * pulse * pulse + eye * eye) / (counted * counted)));
    }

    /** Counted, or else displayed. */
    static Optional<Turned> turned(VerificationCatchEntry one, SpreaderEntry spreader) {
        Optional<Turned> counted = turned(one.entry(), spreader);
        return counted.isPresent() ? counted : displayed(one, spreader);
    }

    /** A displayed mass resolves no finer than its step, and no finer than one pulse. */
    static Optional<Turned> displayed(VerificationCatchEntry one, SpreaderEntry spreader) {
        if (one.indicated().isEmpty()) {
            return Optional.empty();
        }
        double shown = Amounts.si(Mass.class, one.indicated().get().asType(Mass.class));
        double step = one.indicatedStep()
                .map(s -> Amounts.si(Mass.class, s.asType(Mass.class)))
                .orElse(0.0);
        double revolutions = shown / kilogramsPerRevolution(one.inForce());
        double pulses = pulsesPerRevolution(spreader);
        double pulse = pulses > 0 ? 1 / pulses : 0;
        double hidden = Trade.displayStep(one.inForce().getValue().doubleValue())
                / one.inForce().getValue().doubleValue();
        return Optional.of(new Turned(
                revolutions,
                RECTANGLE * Math.pow(step / shown, 2)
                        + 2 * TRIANGLE * Math.pow(pulse / revolutions, 2)
                        + RECTANGLE * hidden * hidden));
    }

    /** The simulator writes values in force as a mass per revolution. */
    static double kilogramsPerRevolution(Quantity<?> value) {
        return Amounts.si(DischargePerRevolution.class, discharge(value));
    }

    @SuppressWarnings("unchecked") // the kind is compared when it is converted
    private static Quantity<DischargePerRevolution> discharge(Quantity<?> value) {
        return (Quantity<DischargePerRevolution>) value;
    }

    /** The values in force of the truck, each with the one that its catches were made with where that is another. */
    static List<InForceEntry> held(TruckDay truck) {
        List<InForceEntry> held = new ArrayList<>();
        for (InForceEntry listed : truck.inForce()) {
            held.add(truck.verificationCatches().stream()
                    .filter(one -> one.entry().setting().equals(listed.setting()))
                    .reduce((first, second) -> second)
                    .map(one -> new InForceEntry(
                            one.inForce(),
                            listed.displayStep(),
                            listed.since(),
                            listed.material(),
                            listed.setting(),
                            listed.slot()))
                    .orElse(listed));
        }
        return held;
    }

    static boolean isZeroTare(WeighingEntry one) {
        return one.tare().getValue().doubleValue() == 0;
    }
}
