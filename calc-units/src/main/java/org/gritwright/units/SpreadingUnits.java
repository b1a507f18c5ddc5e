package org.gritwright.units;

import javax.measure.MetricPrefix;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.ElectricCurrent;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerPulse;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.DischargeRate;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LaneWidth;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidArealApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.PulsesPerDistance;
import org.gritwright.units.quantity.PulsesPerMass;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.PulsesPerVolume;
import org.gritwright.units.quantity.RevolutionCount;
import org.gritwright.units.quantity.RevolutionsPerMass;
import org.gritwright.units.quantity.RevolutionsPerVolume;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerPulse;
import org.gritwright.units.quantity.VolumePerRevolution;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.function.MultiplyConverter;
import tech.units.indriya.function.RationalNumber;
import tech.units.indriya.unit.BaseUnit;
import tech.units.indriya.unit.UnitDimension;
import tech.units.indriya.unit.Units;

/**
 * The units of spreader work, as JSR 385 units with exact rational factors.
 *
 * <p>Factors are the legal definitions: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 US gal = 231 in³, 1 imperial gal =
 * 4.54609 L, 1 acre = 43 560 ft², standard gravity = 9.80665 m/s² (NIST Special Publication 811, 2008, Appendix B; NIST Handbook 44, Appendix C; UCUM).
 * Foot, mile and acre are the international ones, not the US survey ones. Symbols, accepted spellings and names stand
 * in {@link UnitSymbol}.
 *
 * <p>{@code PULSE}, {@code REVOLUTION} and {@code LANE} are counted base units, each with a dimension of its own.
 */
public final class SpreadingUnits {
    static {
        ReferenceImplementation.prepare();
    }

    // Counts

    /** One sensor pulse: a counted base unit with a dimension of its own. */
    public static final Unit<PulseCount> PULSE = new BaseUnit<>("pulse", "pulse", UnitDimension.parse('p'));

    /** One shaft revolution: a counted base unit with a dimension of its own, so that rev/min is not hertz. */
    public static final Unit<RevolutionCount> REVOLUTION =
            new BaseUnit<>("rev", "revolution", UnitDimension.parse('r'));

    /** One traffic lane: a counted base unit with a dimension of its own, so that lb/mi is not lb/lane-mi. */
    public static final Unit<LaneCount> LANE = new BaseUnit<>("lane", "lane", UnitDimension.parse('l'));

    // Mass

    /** 1 lb = 0.45359237 kg exactly (avoirdupois). */
    public static final Unit<Mass> POUND = Units.KILOGRAM.transform(ratio(45359237L, 100000000L));

    /** Kilogram. */
    public static final Unit<Mass> KILOGRAM = Units.KILOGRAM;

    /** 1 oz = 1/16 lb exactly (avoirdupois). */
    public static final Unit<Mass> OUNCE = POUND.transform(ratio(1L, 16L));

    /** 1 ton = 2000 lb exactly. A bare "ton" is the short ton everywhere in this library. */
    public static final Unit<Mass> SHORT_TON = POUND.transform(ratio(2000L, 1L));

    /** 1 long ton = 2240 lb exactly. */
    public static final Unit<Mass> LONG_TON = POUND.transform(ratio(2240L, 1L));

    /** Gram. */
    public static final Unit<Mass> GRAM = Units.GRAM;

    /** 1 t = 1000 kg exactly. */
    public static final Unit<Mass> TONNE = Units.KILOGRAM.transform(ratio(1000L, 1L));

    // Length

    /** 1 in = 0.0254 m exactly. */
    public static final Unit<Length> INCH = Units.METRE.transform(ratio(254L, 10000L));

    /** Meter. */
    public static final Unit<Length> METER = Units.METRE;

    /** 1 ft = 0.3048 m exactly (the international foot). */
    public static final Unit<Length> FOOT = Units.METRE.transform(ratio(3048L, 10000L));

    /** 1 yd = 3 ft exactly. */
    public static final Unit<Length> YARD = FOOT.transform(ratio(3L, 1L));

    /** 1 mi = 5280 ft = 1609.344 m exactly (the international mile). */
    public static final Unit<Length> MILE = FOOT.transform(ratio(5280L, 1L));

    /** Millimeter. */
    public static final Unit<Length> MILLIMETER = Units.METRE.prefix(MetricPrefix.MILLI);

    /** Centimeter. */
    public static final Unit<Length> CENTIMETER = Units.METRE.prefix(MetricPrefix.CENTI);

    /** Kilometer. */
    public static final Unit<Length> KILOMETER = Units.METRE.prefix(MetricPrefix.KILO);

    // Time

    /** Second. */
    public static final Unit<Time> SECOND = Units.SECOND;

    /** Minute. */
    public static final Unit<Time> MINUTE = Units.MINUTE;

    /** Hour. */
    public static final Unit<Time> HOUR = Units.HOUR;

    // Speed

    /** Mile per hour. */
    public static final Unit<Speed> MILE_PER_HOUR = kind(MILE.divide(HOUR));

    /** Kilometer per hour. */
    public static final Unit<Speed> KILOMETER_PER_HOUR = Units.KILOMETRE_PER_HOUR;

    /** Meter per second. */
    public static final Unit<Speed> METER_PER_SECOND = Units.METRE_PER_SECOND;

    /** Foot per minute. */
    public static final Unit<Speed> FOOT_PER_MINUTE = kind(FOOT.divide(MINUTE));

    // Area

    /** Square inch. */
    public static final Unit<Area> SQUARE_INCH = kind(INCH.pow(2));

    /** Square meter. */
    public static final Unit<Area> SQUARE_METER = Units.SQUARE_METRE;

    /** Square centimeter. */
    public static final Unit<Area> SQUARE_CENTIMETER = kind(CENTIMETER.pow(2));

    /** Square foot. */
    public static final Unit<Area> SQUARE_FOOT = kind(FOOT.pow(2));

    /** Square yard. */
    public static final Unit<Area> SQUARE_YARD = kind(YARD.pow(2));

    /** 1 acre = 43 560 ft² exactly, of the international foot; the survey acre is 4e-6 larger. */
    public static final Unit<Area> ACRE = kind(SQUARE_FOOT.transform(ratio(43560L, 1L)));

    /** Hectare. */
    public static final Unit<Area> HECTARE = Units.SQUARE_METRE.transform(ratio(10000L, 1L));

    // Volume

    /** 1 gal = 231 in³ exactly. A bare "gal" is the US gallon everywhere in this library. */
    public static final Unit<Volume> US_GALLON = kind(INCH.pow(3).transform(ratio(231L, 1L)));

    /** Liter. */
    public static final Unit<Volume> LITER = Units.LITRE;

    /** 1 imp gal = 4.54609 L exactly. */
    public static final Unit<Volume> IMPERIAL_GALLON = Units.CUBIC_METRE.transform(ratio(454609L, 100000000L));

    /** US liquid quart. */
    public static final Unit<Volume> US_QUART = US_GALLON.transform(ratio(1L, 4L));

    /** US fluid ounce. */
    public static final Unit<Volume> US_FLUID_OUNCE = US_GALLON.transform(ratio(1L, 128L));

    /** Milliliter. */
    public static final Unit<Volume> MILLILITER = LITER.prefix(MetricPrefix.MILLI);

    /** Cubic meter. */
    public static final Unit<Volume> CUBIC_METER = Units.CUBIC_METRE;

    /** Cubic inch. */
    public static final Unit<Volume> CUBIC_INCH = kind(INCH.pow(3));

    /** Cubic foot. */
    public static final Unit<Volume> CUBIC_FOOT = kind(FOOT.pow(3));

    /** Cubic yard. */
    public static final Unit<Volume> CUBIC_YARD = kind(YARD.pow(3));

    // Ratio

    /** The number one: a bare number such as a count of teeth. */
    public static final Unit<Dimensionless> ONE = AbstractUnit.ONE;

    /** Per cent. */
    public static final Unit<Dimensionless> PERCENT = Units.PERCENT;

    // Pressure

    /**
     * 1 psi = 1 lb × 9.80665 m/s² ÷ 1 in² = 6894.757293… Pa exactly (pound-force per square inch; NIST SP 811, B.8). Like all
     * units of pressure it doesn't say whether from zero or above that of the air around; gauges show the latter.
     */
    public static final Unit<Pressure> POUND_FORCE_PER_SQUARE_INCH = Units.PASCAL
            .transform(ratio(45359237L, 100000000L))
            .transform(ratio(980665L, 100000L))
            .transform(ratio(100000000L, 254L * 254L));

    /** Kilopascal. */
    public static final Unit<Pressure> KILOPASCAL = Units.PASCAL.prefix(MetricPrefix.KILO);

    /** 1 bar = 100 kPa exactly. */
    public static final Unit<Pressure> BAR = Units.PASCAL.transform(ratio(100000L, 1L));

    /** Megapascal. */
    public static final Unit<Pressure> MEGAPASCAL = Units.PASCAL.prefix(MetricPrefix.MEGA);

    // Electric current

    /** Milliampere, in which the current through a valve's coil is given. */
    public static final Unit<ElectricCurrent> MILLIAMPERE = Units.AMPERE.prefix(MetricPrefix.MILLI);

    // Temperature

    /** Degree Celsius. */
    public static final Unit<Temperature> CELSIUS = Units.CELSIUS;

    /** Kelvin. */
    public static final Unit<Temperature> KELVIN = Units.KELVIN;

    /**
     * °F = K × 9/5 − 459.67 exactly. Temperature scales differ by an offset, so no {@link Conversion} is made between
     * them; use {@link Amounts#si} or {@code Quantity.to}.
     */
    public static final Unit<Temperature> FAHRENHEIT =
            Units.KELVIN.multiply(5).divide(9).shift(RationalNumber.of(45967, 100));

    // Mass per distance

    /** Pound per mile. */
    public static final Unit<ApplicationRate> POUND_PER_MILE = kind(POUND.divide(MILE));

    /** Kilogram per kilometer. */
    public static final Unit<ApplicationRate> KILOGRAM_PER_KILOMETER = kind(KILOGRAM.divide(KILOMETER));

    /** Kilogram per meter. */
    public static final Unit<ApplicationRate> KILOGRAM_PER_METER = kind(KILOGRAM.divide(METER));

    /** Gram per meter. */
    public static final Unit<ApplicationRate> GRAM_PER_METER = kind(GRAM.divide(METER));

    /** Tonne per kilometer. */
    public static final Unit<ApplicationRate> TONNE_PER_KILOMETER = kind(TONNE.divide(KILOMETER));

    /** Short ton per mile. */
    public static final Unit<ApplicationRate> SHORT_TON_PER_MILE = kind(SHORT_TON.divide(MILE));

    /** Pound per foot. */
    public static final Unit<ApplicationRate> POUND_PER_FOOT = kind(POUND.divide(FOOT));

    /** Pound per yard. */
    public static final Unit<ApplicationRate> POUND_PER_YARD = kind(POUND.divide(YARD));

    // Mass per lane distance

    /** Pound per lane-mile. */
    public static final Unit<LaneApplicationRate> POUND_PER_LANE_MILE = kind(POUND.divide(LANE.multiply(MILE)));

    /** Kilogram per lane-kilometer. */
    public static final Unit<LaneApplicationRate> KILOGRAM_PER_LANE_KILOMETER =
            kind(KILOGRAM.divide(LANE.multiply(KILOMETER)));

    /** Kilogram per lane-meter. */
    public static final Unit<LaneApplicationRate> KILOGRAM_PER_LANE_METER = kind(KILOGRAM.divide(LANE.multiply(METER)));

    /** Short ton per lane-mile. */
    public static final Unit<LaneApplicationRate> SHORT_TON_PER_LANE_MILE = kind(SHORT_TON.divide(LANE.multiply(MILE)));

    // Mass per area

    /** Gram per square meter. */
    public static final Unit<ArealApplicationRate> GRAM_PER_SQUARE_METER = kind(GRAM.divide(METER.pow(2)));

    /** Pound per 1000 square feet. */
    public static final Unit<ArealApplicationRate> POUND_PER_1000_SQUARE_FEET =
            kind(POUND.divide(FOOT.pow(2)).transform(ratio(1L, 1000L)));

    /** Ounce per square yard. */
    public static final Unit<ArealApplicationRate> OUNCE_PER_SQUARE_YARD = kind(OUNCE.divide(YARD.pow(2)));

    /** Ounce per square foot. */
    public static final Unit<ArealApplicationRate> OUNCE_PER_SQUARE_FOOT = kind(OUNCE.divide(FOOT.pow(2)));

    /** Pound per square yard. */
    public static final Unit<ArealApplicationRate> POUND_PER_SQUARE_YARD = kind(POUND.divide(YARD.pow(2)));

    /** Pound per square foot. */
    public static final Unit<ArealApplicationRate> POUND_PER_SQUARE_FOOT = kind(POUND.divide(FOOT.pow(2)));

    /** Pound per acre. */
    public static final Unit<ArealApplicationRate> POUND_PER_ACRE = kind(POUND.divide(ACRE));

    /** Kilogram per hectare. */
    public static final Unit<ArealApplicationRate> KILOGRAM_PER_HECTARE = kind(KILOGRAM.divide(HECTARE));

    /** Kilogram per square meter. */
    public static final Unit<ArealApplicationRate> KILOGRAM_PER_SQUARE_METER = kind(KILOGRAM.divide(METER.pow(2)));

    // Volume per distance

    /** US gallon per mile. */
    public static final Unit<LiquidApplicationRate> US_GALLON_PER_MILE = kind(US_GALLON.divide(MILE));

    /** Liter per kilometer. */
    public static final Unit<LiquidApplicationRate> LITER_PER_KILOMETER = kind(LITER.divide(KILOMETER));

    /** Liter per meter. */
    public static final Unit<LiquidApplicationRate> LITER_PER_METER = kind(LITER.divide(METER));

    /** Imperial gallon per mile. */
    public static final Unit<LiquidApplicationRate> IMPERIAL_GALLON_PER_MILE = kind(IMPERIAL_GALLON.divide(MILE));

    // Volume per lane distance

    /** US gallon per lane-mile. */
    public static final Unit<LiquidLaneApplicationRate> US_GALLON_PER_LANE_MILE =
            kind(US_GALLON.divide(LANE.multiply(MILE)));

    /** Liter per lane-kilometer. */
    public static final Unit<LiquidLaneApplicationRate> LITER_PER_LANE_KILOMETER =
            kind(LITER.divide(LANE.multiply(KILOMETER)));

    /** Imperial gallon per lane-mile. */
    public static final Unit<LiquidLaneApplicationRate> IMPERIAL_GALLON_PER_LANE_MILE =
            kind(IMPERIAL_GALLON.divide(LANE.multiply(MILE)));

    // Volume per area

    /** Milliliter per square meter. */
    public static final Unit<LiquidArealApplicationRate> MILLILITER_PER_SQUARE_METER =
            kind(MILLILITER.divide(METER.pow(2)));

    /** US gallon per 1000 square feet. */
    public static final Unit<LiquidArealApplicationRate> US_GALLON_PER_1000_SQUARE_FEET =
            kind(US_GALLON.divide(FOOT.pow(2)).transform(ratio(1L, 1000L)));

    /** US gallon per acre. */
    public static final Unit<LiquidArealApplicationRate> US_GALLON_PER_ACRE = kind(US_GALLON.divide(ACRE));

    /** Liter per hectare. */
    public static final Unit<LiquidArealApplicationRate> LITER_PER_HECTARE = kind(LITER.divide(HECTARE));

    /** Liter per square meter. */
    public static final Unit<LiquidArealApplicationRate> LITER_PER_SQUARE_METER = kind(LITER.divide(METER.pow(2)));

    // Volume per mass

    /** US gallon per short ton. */
    public static final Unit<PrewetRate> US_GALLON_PER_SHORT_TON = kind(US_GALLON.divide(SHORT_TON));

    /** Liter per tonne. */
    public static final Unit<PrewetRate> LITER_PER_TONNE = kind(LITER.divide(TONNE));

    /** Milliliter per kilogram. */
    public static final Unit<PrewetRate> MILLILITER_PER_KILOGRAM = kind(MILLILITER.divide(KILOGRAM));

    /** US gallon per tonne. */
    public static final Unit<PrewetRate> US_GALLON_PER_TONNE = kind(US_GALLON.divide(TONNE));

    /** US gallon per long ton. */
    public static final Unit<PrewetRate> US_GALLON_PER_LONG_TON = kind(US_GALLON.divide(LONG_TON));

    /** US fluid ounce per pound. */
    public static final Unit<PrewetRate> US_FLUID_OUNCE_PER_POUND = kind(US_FLUID_OUNCE.divide(POUND));

    /** Imperial gallon per long ton. */
    public static final Unit<PrewetRate> IMPERIAL_GALLON_PER_LONG_TON = kind(IMPERIAL_GALLON.divide(LONG_TON));

    /** Imperial gallon per short ton. */
    public static final Unit<PrewetRate> IMPERIAL_GALLON_PER_SHORT_TON = kind(IMPERIAL_GALLON.divide(SHORT_TON));

    // Discharge per revolution and per pulse, and their reciprocals

    /** Pound per revolution. */
    public static final Unit<DischargePerRevolution> POUND_PER_REVOLUTION = kind(POUND.divide(REVOLUTION));

    /** Kilogram per revolution. */
    public static final Unit<DischargePerRevolution> KILOGRAM_PER_REVOLUTION = kind(KILOGRAM.divide(REVOLUTION));

    /** Gram per revolution. */
    public static final Unit<DischargePerRevolution> GRAM_PER_REVOLUTION = kind(GRAM.divide(REVOLUTION));

    /** Pound per pulse. */
    public static final Unit<DischargePerPulse> POUND_PER_PULSE = kind(POUND.divide(PULSE));

    /** Kilogram per pulse. */
    public static final Unit<DischargePerPulse> KILOGRAM_PER_PULSE = kind(KILOGRAM.divide(PULSE));

    /** Gram per pulse. */
    public static final Unit<DischargePerPulse> GRAM_PER_PULSE = kind(GRAM.divide(PULSE));

    /** Ounce per pulse. */
    public static final Unit<DischargePerPulse> OUNCE_PER_PULSE = kind(OUNCE.divide(PULSE));

    /** Revolution per pound. */
    public static final Unit<RevolutionsPerMass> REVOLUTION_PER_POUND = kind(REVOLUTION.divide(POUND));

    /** Revolution per kilogram. */
    public static final Unit<RevolutionsPerMass> REVOLUTION_PER_KILOGRAM = kind(REVOLUTION.divide(KILOGRAM));

    /** Revolution per short ton. */
    public static final Unit<RevolutionsPerMass> REVOLUTION_PER_SHORT_TON = kind(REVOLUTION.divide(SHORT_TON));

    /** Revolution per tonne. */
    public static final Unit<RevolutionsPerMass> REVOLUTION_PER_TONNE = kind(REVOLUTION.divide(TONNE));

    /** Pulse per pound. */
    public static final Unit<PulsesPerMass> PULSE_PER_POUND = kind(PULSE.divide(POUND));

    /** Pulse per kilogram. */
    public static final Unit<PulsesPerMass> PULSE_PER_KILOGRAM = kind(PULSE.divide(KILOGRAM));

    /** Pulse per short ton. */
    public static final Unit<PulsesPerMass> PULSE_PER_SHORT_TON = kind(PULSE.divide(SHORT_TON));

    /** Pulse per tonne. */
    public static final Unit<PulsesPerMass> PULSE_PER_TONNE = kind(PULSE.divide(TONNE));

    // Volume per revolution

    /** Cubic inch per revolution. */
    public static final Unit<VolumePerRevolution> CUBIC_INCH_PER_REVOLUTION = kind(CUBIC_INCH.divide(REVOLUTION));

    /** Liter per revolution. */
    public static final Unit<VolumePerRevolution> LITER_PER_REVOLUTION = kind(LITER.divide(REVOLUTION));

    /** Milliliter per revolution, which is the cubic centimeter per revolution of pumps' data sheets. */
    public static final Unit<VolumePerRevolution> MILLILITER_PER_REVOLUTION = kind(MILLILITER.divide(REVOLUTION));

    /** US gallon per revolution. */
    public static final Unit<VolumePerRevolution> US_GALLON_PER_REVOLUTION = kind(US_GALLON.divide(REVOLUTION));

    /** Cubic foot per revolution. */
    public static final Unit<VolumePerRevolution> CUBIC_FOOT_PER_REVOLUTION = kind(CUBIC_FOOT.divide(REVOLUTION));

    /** Cubic meter per revolution. */
    public static final Unit<VolumePerRevolution> CUBIC_METER_PER_REVOLUTION = kind(CUBIC_METER.divide(REVOLUTION));

    // Volume per pulse, and reciprocals of volumes per revolution and per pulse

    /** US gallon per pulse. */
    public static final Unit<VolumePerPulse> US_GALLON_PER_PULSE = kind(US_GALLON.divide(PULSE));

    /** Milliliter per pulse. */
    public static final Unit<VolumePerPulse> MILLILITER_PER_PULSE = kind(MILLILITER.divide(PULSE));

    /** Liter per pulse. */
    public static final Unit<VolumePerPulse> LITER_PER_PULSE = kind(LITER.divide(PULSE));

    /** Imperial gallon per pulse. */
    public static final Unit<VolumePerPulse> IMPERIAL_GALLON_PER_PULSE = kind(IMPERIAL_GALLON.divide(PULSE));

    /** Pulse per US gallon. */
    public static final Unit<PulsesPerVolume> PULSE_PER_US_GALLON = kind(PULSE.divide(US_GALLON));

    /** Pulse per liter. */
    public static final Unit<PulsesPerVolume> PULSE_PER_LITER = kind(PULSE.divide(LITER));

    /** Pulse per imperial gallon. */
    public static final Unit<PulsesPerVolume> PULSE_PER_IMPERIAL_GALLON = kind(PULSE.divide(IMPERIAL_GALLON));

    /** Revolution per US gallon. */
    public static final Unit<RevolutionsPerVolume> REVOLUTION_PER_US_GALLON = kind(REVOLUTION.divide(US_GALLON));

    /** Revolution per liter. */
    public static final Unit<RevolutionsPerVolume> REVOLUTION_PER_LITER = kind(REVOLUTION.divide(LITER));

    /** Revolution per imperial gallon. */
    public static final Unit<RevolutionsPerVolume> REVOLUTION_PER_IMPERIAL_GALLON =
            kind(REVOLUTION.divide(IMPERIAL_GALLON));

    // Mass per time

    /** Pound per minute. */
    public static final Unit<DischargeRate> POUND_PER_MINUTE = kind(POUND.divide(MINUTE));

    /** Kilogram per minute. */
    public static final Unit<DischargeRate> KILOGRAM_PER_MINUTE = kind(KILOGRAM.divide(MINUTE));

    /** Kilogram per second. */
    public static final Unit<DischargeRate> KILOGRAM_PER_SECOND = kind(KILOGRAM.divide(SECOND));

    /** Kilogram per hour. */
    public static final Unit<DischargeRate> KILOGRAM_PER_HOUR = kind(KILOGRAM.divide(HOUR));

    /** Pound per second. */
    public static final Unit<DischargeRate> POUND_PER_SECOND = kind(POUND.divide(SECOND));

    /** Pound per hour. */
    public static final Unit<DischargeRate> POUND_PER_HOUR = kind(POUND.divide(HOUR));

    /** Short ton per hour. */
    public static final Unit<DischargeRate> SHORT_TON_PER_HOUR = kind(SHORT_TON.divide(HOUR));

    /** Tonne per hour. */
    public static final Unit<DischargeRate> TONNE_PER_HOUR = kind(TONNE.divide(HOUR));

    // Volume per time

    /** US gallon per minute. */
    public static final Unit<FlowRate> US_GALLON_PER_MINUTE = kind(US_GALLON.divide(MINUTE));

    /** Liter per minute. */
    public static final Unit<FlowRate> LITER_PER_MINUTE = kind(LITER.divide(MINUTE));

    /** Liter per second. */
    public static final Unit<FlowRate> LITER_PER_SECOND = kind(LITER.divide(SECOND));

    /** Cubic meter per second. */
    public static final Unit<FlowRate> CUBIC_METER_PER_SECOND = kind(CUBIC_METER.divide(SECOND));

    /** US gallon per hour. */
    public static final Unit<FlowRate> US_GALLON_PER_HOUR = kind(US_GALLON.divide(HOUR));

    /** Cubic foot per minute. */
    public static final Unit<FlowRate> CUBIC_FOOT_PER_MINUTE = kind(CUBIC_FOOT.divide(MINUTE));

    /** Imperial gallon per minute. */
    public static final Unit<FlowRate> IMPERIAL_GALLON_PER_MINUTE = kind(IMPERIAL_GALLON.divide(MINUTE));

    // Shafts and sensors

    /** Revolution per minute. */
    public static final Unit<RotationalSpeed> REVOLUTION_PER_MINUTE = kind(REVOLUTION.divide(MINUTE));

    /** Revolution per second. */
    public static final Unit<RotationalSpeed> REVOLUTION_PER_SECOND = kind(REVOLUTION.divide(SECOND));

    /** Pulse per revolution. */
    public static final Unit<PulsesPerRevolution> PULSE_PER_REVOLUTION = kind(PULSE.divide(REVOLUTION));

    /** Pulse per mile. */
    public static final Unit<PulsesPerDistance> PULSE_PER_MILE = kind(PULSE.divide(MILE));

    /** Pulse per kilometer. */
    public static final Unit<PulsesPerDistance> PULSE_PER_KILOMETER = kind(PULSE.divide(KILOMETER));

    /** Pulse per meter. */
    public static final Unit<PulsesPerDistance> PULSE_PER_METER = kind(PULSE.divide(METER));

    /** Pulse per foot. */
    public static final Unit<PulsesPerDistance> PULSE_PER_FOOT = kind(PULSE.divide(FOOT));

    // Density

    /** Pound per cubic foot. */
    public static final Unit<BulkDensity> POUND_PER_CUBIC_FOOT = kind(POUND.divide(CUBIC_FOOT));

    /** Kilogram per cubic meter. */
    public static final Unit<BulkDensity> KILOGRAM_PER_CUBIC_METER = kind(KILOGRAM.divide(CUBIC_METER));

    /** Tonne per cubic meter. */
    public static final Unit<BulkDensity> TONNE_PER_CUBIC_METER = kind(TONNE.divide(CUBIC_METER));

    /** Kilogram per liter. */
    public static final Unit<BulkDensity> KILOGRAM_PER_LITER = kind(KILOGRAM.divide(LITER));

    /** Pound per cubic yard. */
    public static final Unit<BulkDensity> POUND_PER_CUBIC_YARD = kind(POUND.divide(CUBIC_YARD));

    /** Short ton per cubic yard. */
    public static final Unit<BulkDensity> SHORT_TON_PER_CUBIC_YARD = kind(SHORT_TON.divide(CUBIC_YARD));

    /** Pound per US gallon. */
    public static final Unit<BulkDensity> POUND_PER_US_GALLON = kind(POUND.divide(US_GALLON));

    /** Pound per imperial gallon. */
    public static final Unit<BulkDensity> POUND_PER_IMPERIAL_GALLON = kind(POUND.divide(IMPERIAL_GALLON));

    // Lanes

    /** Foot per lane. */
    public static final Unit<LaneWidth> FOOT_PER_LANE = kind(FOOT.divide(LANE));

    /** Meter per lane. */
    public static final Unit<LaneWidth> METER_PER_LANE = kind(METER.divide(LANE));

    private SpreadingUnits() {}

    private static UnitConverter ratio(long numerator, long denominator) {
        return MultiplyConverter.ofRational(numerator, denominator);
    }

    /**
     * States the kind of a derived unit. Dimension alone can't prove it (liters per kilometer have the dimension of an
     * area), so the declared type is the statement and {@link UnitSymbol} keeps it for run time.
     */
    @SuppressWarnings("unchecked")
    private static <Q extends Quantity<Q>> Unit<Q> kind(Unit<?> unit) {
        return (Unit<Q>) unit;
    }
}
