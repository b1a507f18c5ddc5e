package org.gritwright.core.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * At which control setting a spreader without feedback lays a rate between which road speeds, within a tolerance. Above them it lays
 * too little, below them too much. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of rate
 * @param discharge the discharge per revolution of the watched shaft, greater than zero
 * @param settings the control settings, all read in one unit and each listed once, 1 to 1000 in any order; kept rising
 * @param basis what the rate is stated for
 * @param rate the rate, greater than zero
 * @param tolerance how far what is laid may be off either way, greater than 0 % and below 100 %
 */
public record OpenLoopLine<Q extends Quantity<Q>>(
        Measured<DischargePerRevolution> discharge,
        List<ControlSetting> settings,
        RateBasis<Q> basis,
        Quantity<Q> rate,
        Quantity<Dimensionless> tolerance)
        implements CardLine<Q> {
    /**
     * The speeds of a control setting.
     *
     * @param setting the setting
     * @param nominal the speed at which exactly the rate is laid
     * @param lowest the lowest speed within the tolerance, before rounding
     * @param highest the highest speed within the tolerance, before rounding
     */
    public record AtSetting(
            ControlSetting setting, Measured<Speed> nominal, Measured<Speed> lowest, Measured<Speed> highest) {
        /** Checks that nothing is null. */
        public AtSetting {
            Require.given(AtSetting.class, setting, nominal, lowest, highest);
        }

        /**
         * The speeds that the card promises.
         *
         * @return rounded inward; none where no speed is left
         */
        public Optional<HeldSpeeds> held() {
            return HeldSpeeds.within(Optional.of(lowest), highest);
        }
    }

    /**
     * Checks the values and sorts the settings.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public OpenLoopLine {
        Require.given(OpenLoopLine.class, discharge, settings, basis, rate, tolerance);
        Require.positive("discharge per revolution", DischargePerRevolution.class, discharge.value());
        settings = ControlSetting.sorted(settings);
        Require.positive("rate", basis.kind(), rate);
        Require.fraction("tolerance", tolerance);
    }

    /**
     * The speeds of each setting at which the shaft turns: at v = m · n ÷ r exactly the rate is laid, and within a tolerance t from
     * v ÷ (1 + t) to v ÷ (1 − t).
     *
     * @return in the order of the settings, speeds in the rate's unit system
     */
    public List<AtSetting> atSettings() {
        double allowed = Amounts.si(Dimensionless.class, tolerance);
        return settings.stream()
                .filter(setting -> setting.revolutionsPerSecond() > 0)
                .map(setting -> new AtSetting(
                        setting, speed(setting, 1), speed(setting, 1 + allowed), speed(setting, 1 - allowed)))
                .toList();
    }

    private Measured<Speed> speed(ControlSetting setting, double part) {
        double kilogramsPerMeter = part * Amounts.si(ApplicationRate.class, basis.onTheRoad(rate));
        double kilogramsPerRevolution = Amounts.si(DischargePerRevolution.class, discharge.value());
        Unit<Speed> unit = UnitSymbol.tradeUnit(Speed.class, rate);
        return Carried.by(
                discharge,
                setting.shaftSpeed(),
                turning -> Amounts.ofSi(
                        kilogramsPerRevolution * Amounts.si(RotationalSpeed.class, turning) / kilogramsPerMeter, unit));
    }

    @Override
    public List<String> words() {
        List<String> words = new ArrayList<>();
        for (AtSetting one : atSettings()) {
            one.held().ifPresent(speeds -> words.add("set " + one.setting() + " for " + speeds));
        }
        return words.isEmpty() ? List.of("no setting lays it within " + Amounts.format(tolerance)) : List.copyOf(words);
    }
}
