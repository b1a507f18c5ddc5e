package org.gritwright.core.record;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.calibration.FactorForm;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.json.Codec;
import org.gritwright.core.json.Codecs;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.weighing.AccuracyClass;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;

/** Codecs of the trade's values that stand in several objects. */
final class ValueCodecs {

    /** A calibration in one of the forms that displays keep. */
    static final Codec<Quantity<?>> FACTOR = Codecs.quantity(
            "calibration-value",
            "calibration",
            "a mass or volume per revolution or pulse, or revolutions or pulses per mass or volume",
            "27.4 lb/rev",
            row -> Arrays.stream(FactorForm.values())
                    .anyMatch(form -> form.kind().equals(row.kind())));

    /** What a display showed: of grains their mass, of a liquid its volume. Which of them is a matter of its truck. */
    static final Codec<Quantity<?>> AMOUNT =
            ofKinds("amount", "amount", "a mass, or a volume of a liquid", "312 lb", Mass.class, Volume.class);

    /** A rate over the distance that a truck travels, of grains or a liquid. */
    static final Codec<Quantity<?>> TARGET_RATE = ofKinds(
            "target-rate",
            "target rate",
            "a mass or a volume per distance",
            "300 lb/mi",
            ApplicationRate.class,
            LiquidApplicationRate.class);

    /** A rate over the distance of one lane, of grains or a liquid. */
    static final Codec<Quantity<?>> TARGET_LANE_RATE = ofKinds(
            "target-lane-rate",
            "target lane rate",
            "a mass or a volume per lane distance",
            "300 lb/lane-mi",
            LaneApplicationRate.class,
            LiquidLaneApplicationRate.class);

    private static Codec<Quantity<?>> ofKinds(
            String name, String field, String accepted, String example, Class<?>... kinds) {
        return Codecs.quantity(
                name, field, accepted, example, row -> List.of(kinds).contains(row.kind()));
    }

    /** Where a gate stands, by its kind only: a value that can't be set is a matter of its truck. */
    static final Codec<Quantity<?>> SETTING = Codecs.quantity(
            "gate-setting",
            Setting.FIELD,
            "a height, the number of a painted mark, or a percentage",
            "2 in",
            row -> row.kind().equals(Length.class)
                    || row.unit().equals(SpreadingUnits.ONE)
                    || row.unit().equals(SpreadingUnits.PERCENT));

    /** What a valve is told, by its kind only: of which kind a drive's commands are is a matter of its truck. */
    static final Codec<Quantity<?>> COMMAND = Codecs.quantity(
            "drive-command",
            "command",
            "a percentage, a current in mA or a bare number",
            "40 %",
            row -> row.unit().equals(SpreadingUnits.PERCENT)
                    || row.unit().equals(SpreadingUnits.MILLIAMPERE)
                    || row.unit().equals(SpreadingUnits.ONE));

    /** Since when a display holds a value: a day, or a time with its offset. */
    static final Codec<Since> SINCE = Codecs.text(
            Since.class.getName(),
            "since",
            "a date, or a time with its offset, for example \"2026-10-19\" or \"2026-10-19T08:40:00-04:00\"",
            Codecs.DATE_OR_TIME_FORM,
            Codecs.inForm(Codecs.DATE_OR_TIME_FORM, Since::parse),
            since ->
                    since.time().map(Codecs::format).orElseGet(() -> since.day().toString()));

    /** The parameters of a conveyor, gate, pump or flow meter: a quantity each, or a list of quantities. */
    static final Codec<Map<String, Object>> PARAMETERS = parameters();

    private static final String PROPER_PART = "above 0 % and below 100 %";

    static final Codec<Quantity<Dimensionless>> TOLERANCE =
            Codecs.percentage("tolerance", PROPER_PART, "4 %", ValueCodecs::isProperPart);

    /** A part of a whole. */
    static final Codec<Quantity<Dimensionless>> PART =
            Codecs.percentage("part-of-a-whole", "from 0 % to 100 %", "80 %", number -> number >= 0 && number <= 100);

    private static final String NEW_SCALE = " new";

    /** How accurate a scale is: a part of its reading, or the class on its plate, in service unless it says new. */
    static final Codec<ScaleAccuracy> SCALE_ACCURACY = Codecs.text(
            ScaleAccuracy.class.getName(),
            "scale-accuracy",
            "a percentage of the reading or an accuracy class, for example \"0.1 %\", \"hb44-iii\" or \"r76-iii new\"",
            "^(" + Codecs.PERCENTAGE_FORM + "|("
                    + Arrays.stream(AccuracyClass.values())
                            .map(AccuracyClass::id)
                            .collect(Collectors.joining("|")) + ")( new)?)$",
            ValueCodecs::parseAccuracy,
            ValueCodecs::printAccuracy);

    private ValueCodecs() {}

    /** Which type they belong to isn't known yet, but those of the built-in types have names that say what they are. */
    private static Codec<Map<String, Object>> parameters() {
        Codec<Object> any = Codecs.oneOrSeveral(Codecs.ANY_QUANTITY);
        Map<String, Codec<Object>> known = new HashMap<>();
        BuiltInTypes.registry().all().stream()
                .flatMap(type -> type.parameters().stream())
                .forEach(parameter -> known.put(parameter.name(), Codecs.oneOrSeveral(quantity(parameter))));
        return Codecs.mapOf(any, name -> known.getOrDefault(name, any));
    }

    private static <Q extends Quantity<Q>> Quantity<Q> example(Parameter<Q> parameter) {
        Quantity<Q> usual = Amounts.of(
                parameter.isWhole() ? 8 : 2,
                UnitSymbol.ofKind(parameter.kind()).get(0).unit());
        try {
            return parameter.check(usual);
        } catch (InvalidInputException e) {
            return parameter.lowest();
        }
    }

    private static Codec<Quantity<?>> quantity(Parameter<?> parameter) {
        String example = Amounts.format(example(parameter));
        boolean isBare = parameter.lowest().getUnit().equals(SpreadingUnits.ONE);
        return Codecs.anyQuantity(
                isBare
                        ? "a number in quotation marks"
                        : article(UnitSymbol.kindName(parameter.kind())) + " with its unit",
                example);
    }

    private static boolean isProperPart(double percent) {
        return percent > 0 && percent < 100;
    }

    private static ScaleAccuracy parseAccuracy(String text) {
        boolean isNew = text.endsWith(NEW_SCALE);
        String id = isNew ? text.substring(0, text.length() - NEW_SCALE.length()) : text;
        return Arrays.stream(AccuracyClass.values())
                .filter(one -> one.id().equals(id))
                .findFirst()
                .<ScaleAccuracy>map(one -> new ScaleAccuracy.OfClass(
                        one, isNew ? AccuracyClass.Stage.NEW : AccuracyClass.Stage.IN_SERVICE))
                .orElseGet(() ->
                        new ScaleAccuracy.Stated(Codecs.parsePercentage(text, PROPER_PART, ValueCodecs::isProperPart)));
    }

    private static String printAccuracy(ScaleAccuracy accuracy) {
        if (accuracy instanceof ScaleAccuracy.OfClass ofClass) {
            return ofClass.accuracyClass().id() + (ofClass.stage() == AccuracyClass.Stage.NEW ? NEW_SCALE : "");
        }
        return Amounts.format(((ScaleAccuracy.Stated) accuracy).ofReading());
    }

    private static String article(String kind) {
        return ("aeiou".indexOf(kind.charAt(0)) < 0 ? "a " : "an ") + kind;
    }
}
