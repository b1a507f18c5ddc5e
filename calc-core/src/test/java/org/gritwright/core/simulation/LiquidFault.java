package org.gritwright.core.simulation;

import java.util.Locale;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/** Something that is wrong with what meters a liquid, or with what is written down of it. Where it is made, {@link LiquidDay} says. */
@SuppressWarnings("ImmutableEnumChecker") // the predicates hold nothing
enum LiquidFault {
    NONE("sound", "(?!)", truck -> true),
    LITERS_IN_ALL(
            "liters written as gallons in all catches",
            "read in liters and written in gallons|highest mark",
            truck -> truck.isRead() && truck.us()),
    LITERS_IN_ONE(
            "liters written as gallons in one catch",
            "read in liters and written in gallons|highest mark",
            truck -> truck.isRead() && truck.us()),
    K_IN_ENTRY(
            "K factor of the flow meter written ten times off",
            "(pulses per volume|k factor).* [×÷] 10 ",
            LiquidTruck::metered),
    K_IN_DISPLAY(
            "K factor in the display ten times off", "value in force ([×÷] 10 |not as listed)", LiquidTruck::metered),
    PULSES_HALF(
            "pulses per revolution of the pump written as half", "pulses per revolution × 2", LiquidTruck::isCounted),
    PULSES_DOUBLE(
            "pulses per revolution of the pump written as double", "pulses per revolution ÷ 2", LiquidTruck::isCounted),
    PULSES_TENTH(
            "pulses per revolution of the pump written as a tenth",
            "pulses per revolution × 10",
            LiquidTruck::isCounted),
    PULSES_TENFOLD(
            "pulses per revolution of the pump written as tenfold",
            "pulses per revolution ÷ 10",
            LiquidTruck::isCounted),
    AIR_IN_ALL(
            "air in the line takes 10 to 40 % of every catch",
            "[Aa]ir in the line|air is in the line", LiquidTruck::isVerified),
    AIR_IN_ONE(
            "air in the line takes 10 to 40 % of one catch", "[Aa]ir in the line", truck -> truck.calibrations() > 1),
    WORN(
            "worn by 8 to 20 % since the value was found",
            "(?!)", truck -> truck.isVerified() && !truck.metered() && !truck.enters()),
    OTHER_TON(
            "the display takes gal/ton for gal/t, or the other way round",
            "short tons and tonnes",
            truck -> truck.isVerified() && truck.us() && truck.prewets()),
    OTHER_DRY_RATE(
            "wanted kilograms per kilometer of grains written in pounds per mile",
            "fit a target rate of",
            truck -> truck.isVerified() && truck.us() && truck.prewets()),
    NO_TARE("tare of 0 of a tote", "(?i)\\btares?\\b", LiquidTruck::isWeighed),
    DIGITS("two digits of a fill swapped", "two digits in the caught volume swapped|highest mark", LiquidTruck::isRead),
    WATER("a weighed brine divided by the density of water", "with a density of", LiquidTruck::isWeighed),
    PER_LITER(
            "the value per liter in a display for gallons",
            "value in force ([×÷] 3\\.785|not as listed)",
            truck -> truck.isVerified() && truck.us()),
    OTHER_CONTAINER("fills entered for another container", "(?i)container", LiquidTruck::isRead),
    TWICE("a catch entered twice", "(?i)twice|same ticket", truck -> truck.calibrations() > 0),
    SWAPPED(
            "a catch of one brine and one of another swapped",
            "swapped with that of truck",
            truck -> truck.verifications() > 0 && truck.reading().isCounted());

    private final String words;
    private final Pattern cause;
    private final Predicate<LiquidTruck> fits;

    LiquidFault(String words, String cause, Predicate<LiquidTruck> fits) {
        this.words = words;
        this.cause = Pattern.compile(cause);
        this.fits = fits;
    }

    String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    String words() {
        return words;
    }

    boolean fits(LiquidTruck truck) {
        return fits.test(truck);
    }

    boolean isNamedIn(String sentence) {
        return cause.matcher(sentence).find();
    }
}
