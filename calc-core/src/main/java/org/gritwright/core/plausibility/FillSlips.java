package org.gritwright.core.plausibility;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoublePredicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import org.gritwright.core.metering.OpeningReading;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.UnitSymbol;

/**
 * The search for every single slip of input that explains an unusual apparent fill: what would have to be read instead
 * for the fill to be usual. It picks none.
 */
final class FillSlips {
    /** Decimal point misplaced; inches and centimetres mixed up; inches and millimetres mixed up. */
    private static final List<Double> OPENING_FACTORS = List.of(10.0, 2.54, 25.4);

    /** Decimal point misplaced. */
    private static final List<Double> SETTING_FACTORS = List.of(10.0);

    /** Both edges of a pulse counted or one of two; decimal point misplaced. */
    private static final List<Double> SENSOR_FACTORS = List.of(2.0, 10.0);

    private static final int DIGITS = 4;
    private static final Pattern NUMBER = Pattern.compile("(0|[1-9]\\d*)(\\.\\d+)?");

    private final double looseCubicMetresPerRevolution;
    private final Spreader spreader;
    private final FillLimits limits;
    private final List<String> found = new ArrayList<>();

    private FillSlips(double looseCubicMetresPerRevolution, Spreader spreader, FillLimits limits) {
        this.looseCubicMetresPerRevolution = looseCubicMetresPerRevolution;
        this.spreader = spreader;
        this.limits = limits;
    }

    /**
     * Every single slip that would make the fill usual.
     *
     * @param looseCubicMetresPerRevolution discharge per revolution of the sensed shaft ÷ loose bulk density
     * @param fill the unusual apparent fill
     * @param inPulses whether the revolutions came from pulses
     */
    static List<String> search(
            double looseCubicMetresPerRevolution,
            double fill,
            boolean inPulses,
            Spreader spreader,
            Optional<Quantity<?>> opening,
            FillLimits limits) {
        FillSlips slips = new FillSlips(looseCubicMetresPerRevolution, spreader, limits);
        opening.ifPresent(slips::openingSlips);
        if (inPulses && spreader.feedback() instanceof ShaftSensor sensor) {
            slips.sensorSlips("pulses per revolution", sensor.pulsesPerRevolution(), fill);
        }
        slips.sensorSlips("gear ratio", spreader.feedback().gearRatio(), fill);
        return slips.found;
    }

    /** The fill grows with both: with pulses per revolution by the mass, with the gear ratio by the swept volume. */
    private <Q extends Quantity<Q>> void sensorSlips(String what, Quantity<Q> recorded, double fill) {
        for (double factor : SENSOR_FACTORS) {
            addFactorSlips(what, recorded, factor, asRead -> limits.isUsual(fill * asRead / numberOf(recorded)));
        }
    }

    private <Q extends Quantity<Q>> void openingSlips(Quantity<?> reading) {
        @SuppressWarnings("unchecked") // whatever kind it is, it stays
        Quantity<Q> recorded = (Quantity<Q>) reading;
        DoublePredicate restores = asRead -> {
            Quantity<Q> opening = Amounts.of(asRead, recorded.getUnit());
            return asRead > 0
                    && spreader.gate().accepts(opening)
                    && limits.isUsual(looseCubicMetresPerRevolution
                            / spreader.sweptCubicMetresPerRevolution(Optional.of(opening)));
        };
        for (double factor : OpeningReading.isLength(recorded) ? OPENING_FACTORS : SETTING_FACTORS) {
            addFactorSlips("gate opening", recorded, factor, restores);
        }
        String digits =
                BigDecimal.valueOf(numberOf(recorded)).stripTrailingZeros().toPlainString();
        String symbol = UnitSymbol.of(recorded.getUnit()).symbol();
        addDigitSlip("a digit too many in the gate opening", withOneDigitLess(digits), symbol, restores);
        addDigitSlip("a dropped digit in the gate opening", withOneDigitMore(digits), symbol, restores);
    }

    private <Q extends Quantity<Q>> void addFactorSlips(
            String what, Quantity<Q> recorded, double factor, DoublePredicate restores) {
        String factorText = BigDecimal.valueOf(factor).stripTrailingZeros().toPlainString();
        double larger = numberOf(recorded) * factor;
        if (restores.test(larger)) {
            found.add(what + " × " + factorText + asRead(larger, recorded));
        }
        double smaller = numberOf(recorded) / factor;
        if (restores.test(smaller)) {
            found.add(what + " ÷ " + factorText + asRead(smaller, recorded));
        }
    }

    private static <Q extends Quantity<Q>> String asRead(double number, Quantity<Q> recorded) {
        return " (" + Rounded.text(Amounts.of(number, recorded.getUnit()), DIGITS) + ")";
    }

    private static double numberOf(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }

    private void addDigitSlip(String what, Set<String> candidates, String symbol, DoublePredicate restores) {
        String restoring = candidates.stream()
                .filter(candidate -> restores.test(Double.parseDouble(candidate)))
                .sorted(Comparator.comparingDouble(Double::parseDouble))
                .map(candidate -> symbol.isEmpty() ? candidate : candidate + " " + symbol)
                .collect(Collectors.joining(" or "));
        if (!restoring.isEmpty()) {
            found.add(what + " (" + restoring + ")");
        }
    }

    private static Set<String> withOneDigitLess(String number) {
        Set<String> shorter = new TreeSet<>();
        for (int i = 0; i < number.length(); i++) {
            addIfNumber(number.substring(0, i) + number.substring(i + 1), shorter);
        }
        return shorter;
    }

    private static Set<String> withOneDigitMore(String number) {
        Set<String> longer = new TreeSet<>();
        for (int i = 0; i <= number.length(); i++) {
            for (char digit = '0'; digit <= '9'; digit++) {
                addIfNumber(number.substring(0, i) + digit + number.substring(i), longer);
            }
        }
        return longer;
    }

    private static void addIfNumber(String candidate, Set<String> numbers) {
        if (NUMBER.matcher(candidate).matches()) {
            numbers.add(candidate);
        }
    }
}
