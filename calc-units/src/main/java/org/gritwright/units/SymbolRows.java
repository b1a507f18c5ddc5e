package org.gritwright.units;

import static org.gritwright.units.SpreadingUnits.*;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
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
import org.gritwright.units.quantity.RevolutionCount;
import org.gritwright.units.quantity.RevolutionsPerMass;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;

/** The rows of the symbol table, kind by kind; within a kind and a trade system, the trade's usual unit comes first. */
final class SymbolRows {
    private final List<UnitSymbol<?>> rows = new ArrayList<>();

    private SymbolRows() {}

    static List<UnitSymbol<?>> all() {
        SymbolRows table = new SymbolRows();
        table.everydayUnits();
        table.solidRates();
        table.liquidRates();
        table.dischargeAndCalibration();
        table.shaftsDensitiesAndCounts();
        return List.copyOf(table.rows);
    }

    private void everydayUnits() {
        of(Mass.class)
                .us(POUND, "lb", "pound", "lbs")
                .metric(KILOGRAM, "kg", "kilogram")
                .us(OUNCE, "oz", "ounce")
                .us(SHORT_TON, "ton", "short ton", "short ton")
                .imperial(LONG_TON, "long ton", "long ton")
                .metric(GRAM, "g", "gram")
                .metric(TONNE, "t", "tonne", "tonne");
        of(Length.class)
                .us(INCH, "in", "inch")
                .metric(METER, "m", "meter")
                .us(FOOT, "ft", "foot")
                .us(YARD, "yd", "yard")
                .us(MILE, "mi", "mile", "mile")
                .metric(MILLIMETER, "mm", "millimeter")
                .metric(CENTIMETER, "cm", "centimeter")
                .metric(KILOMETER, "km", "kilometer");
        of(Time.class)
                .any(SECOND, "s", "second", "sec")
                .any(MINUTE, "min", "minute")
                .any(HOUR, "h", "hour", "hr");
        of(Speed.class)
                .us(MILE_PER_HOUR, "mi/h", "mile per hour", "mph")
                .metric(KILOMETER_PER_HOUR, "km/h", "kilometer per hour", "kph")
                .metric(METER_PER_SECOND, "m/s", "meter per second")
                .us(FOOT_PER_MINUTE, "ft/min", "foot per minute");
        of(Area.class)
                .us(SQUARE_INCH, "in²", "square inch", "in2", "sq in")
                .metric(SQUARE_METER, "m²", "square meter", "m2")
                .metric(SQUARE_CENTIMETER, "cm²", "square centimeter", "cm2")
                .us(SQUARE_FOOT, "ft²", "square foot", "ft2", "sq ft")
                .us(SQUARE_YARD, "yd²", "square yard", "yd2", "sq yd")
                .us(ACRE, "acre", "acre")
                .metric(HECTARE, "ha", "hectare");
        of(Volume.class)
                .us(US_GALLON, "gal", "US gallon", "US gal")
                .metric(LITER, "L", "liter", "l")
                .imperial(IMPERIAL_GALLON, "imp gal", "imperial gallon")
                .us(US_QUART, "qt", "US liquid quart")
                .us(US_FLUID_OUNCE, "fl oz", "US fluid ounce")
                .metric(MILLILITER, "mL", "milliliter", "ml")
                .metric(CUBIC_METER, "m³", "cubic meter", "m3")
                .us(CUBIC_INCH, "in³", "cubic inch", "in3", "cu in")
                .us(CUBIC_FOOT, "ft³", "cubic foot", "ft3", "cu ft")
                .us(CUBIC_YARD, "yd³", "cubic yard", "yd3", "cu yd");
        of(Dimensionless.class).any(ONE, "", "one").any(PERCENT, "%", "percent");
        of(Temperature.class)
                .metric(CELSIUS, "°C", "degree Celsius", "degC")
                .metric(KELVIN, "K", "kelvin")
                .us(FAHRENHEIT, "°F", "degree Fahrenheit", "degF");
    }

    private void solidRates() {
        of(ApplicationRate.class)
                .us(POUND_PER_MILE, "lb/mi", "pound per mile", "lb/mile", "lbs/mi", "lbs/mile")
                .metric(KILOGRAM_PER_KILOMETER, "kg/km", "kilogram per kilometer")
                .metric(KILOGRAM_PER_METER, "kg/m", "kilogram per meter")
                .metric(GRAM_PER_METER, "g/m", "gram per meter")
                .metric(TONNE_PER_KILOMETER, "t/km", "tonne per kilometer", "tonne/km")
                .us(SHORT_TON_PER_MILE, "ton/mi", "short ton per mile", "ton/mile")
                .us(POUND_PER_FOOT, "lb/ft", "pound per foot")
                .us(POUND_PER_YARD, "lb/yd", "pound per yard");
        of(LaneApplicationRate.class)
                .us(
                        POUND_PER_LANE_MILE,
                        "lb/lane-mi",
                        "pound per lane-mile",
                        "lb/lane-mile",
                        "lbs/lane-mi",
                        "lbs/lane-mile")
                .metric(KILOGRAM_PER_LANE_KILOMETER, "kg/lane-km", "kilogram per lane-kilometer")
                .metric(KILOGRAM_PER_LANE_METER, "kg/lane-m", "kilogram per lane-meter")
                .us(SHORT_TON_PER_LANE_MILE, "ton/lane-mi", "short ton per lane-mile", "ton/lane-mile");
        of(ArealApplicationRate.class)
                .metric(GRAM_PER_SQUARE_METER, "g/m²", "gram per square meter", "g/m2")
                .us(
                        POUND_PER_1000_SQUARE_FEET,
                        "lb/1000 ft²",
                        "pound per 1000 square feet",
                        "lb/1000 ft2",
                        "lb/1000 sq ft")
                .us(OUNCE_PER_SQUARE_YARD, "oz/yd²", "ounce per square yard", "oz/yd2", "oz/sq yd")
                .us(OUNCE_PER_SQUARE_FOOT, "oz/ft²", "ounce per square foot", "oz/ft2", "oz/sq ft")
                .us(POUND_PER_SQUARE_YARD, "lb/yd²", "pound per square yard", "lb/yd2", "lb/sq yd")
                .us(POUND_PER_SQUARE_FOOT, "lb/ft²", "pound per square foot", "lb/ft2", "lb/sq ft")
                .us(POUND_PER_ACRE, "lb/acre", "pound per acre")
                .metric(KILOGRAM_PER_HECTARE, "kg/ha", "kilogram per hectare")
                .metric(KILOGRAM_PER_SQUARE_METER, "kg/m²", "kilogram per square meter", "kg/m2");
        of(DischargeRate.class)
                .us(POUND_PER_MINUTE, "lb/min", "pound per minute", "lbs/min")
                .metric(KILOGRAM_PER_MINUTE, "kg/min", "kilogram per minute")
                .metric(KILOGRAM_PER_SECOND, "kg/s", "kilogram per second")
                .metric(KILOGRAM_PER_HOUR, "kg/h", "kilogram per hour")
                .us(POUND_PER_SECOND, "lb/s", "pound per second")
                .us(POUND_PER_HOUR, "lb/h", "pound per hour")
                .us(SHORT_TON_PER_HOUR, "ton/h", "short ton per hour")
                .metric(TONNE_PER_HOUR, "t/h", "tonne per hour", "tonne/h");
    }

    private void liquidRates() {
        of(LiquidApplicationRate.class)
                .us(US_GALLON_PER_MILE, "gal/mi", "US gallon per mile", "gal/mile")
                .metric(LITER_PER_KILOMETER, "L/km", "liter per kilometer", "l/km")
                .metric(LITER_PER_METER, "L/m", "liter per meter", "l/m")
                .imperial(IMPERIAL_GALLON_PER_MILE, "imp gal/mi", "imperial gallon per mile", "imp gal/mile");
        of(LiquidLaneApplicationRate.class)
                .us(US_GALLON_PER_LANE_MILE, "gal/lane-mi", "US gallon per lane-mile", "gal/lane-mile")
                .metric(LITER_PER_LANE_KILOMETER, "L/lane-km", "liter per lane-kilometer", "l/lane-km")
                .imperial(
                        IMPERIAL_GALLON_PER_LANE_MILE,
                        "imp gal/lane-mi",
                        "imperial gallon per lane-mile",
                        "imp gal/lane-mile");
        of(LiquidArealApplicationRate.class)
                .metric(MILLILITER_PER_SQUARE_METER, "mL/m²", "milliliter per square meter", "mL/m2", "ml/m²", "ml/m2")
                .us(
                        US_GALLON_PER_1000_SQUARE_FEET,
                        "gal/1000 ft²",
                        "US gallon per 1000 square feet",
                        "gal/1000 ft2",
                        "gal/1000 sq ft")
                .us(US_GALLON_PER_ACRE, "gal/acre", "US gallon per acre")
                .metric(LITER_PER_HECTARE, "L/ha", "liter per hectare", "l/ha")
                .metric(LITER_PER_SQUARE_METER, "L/m²", "liter per square meter", "L/m2", "l/m²", "l/m2");
        of(PrewetRate.class)
                .us(US_GALLON_PER_SHORT_TON, "gal/ton", "US gallon per short ton", "gal/short ton")
                .metric(LITER_PER_TONNE, "L/t", "liter per tonne", "l/t", "L/tonne", "l/tonne")
                .metric(MILLILITER_PER_KILOGRAM, "mL/kg", "milliliter per kilogram", "ml/kg")
                .us(US_GALLON_PER_TONNE, "gal/t", "US gallon per tonne", "gal/tonne")
                .us(US_GALLON_PER_LONG_TON, "gal/long ton", "US gallon per long ton")
                .us(US_FLUID_OUNCE_PER_POUND, "fl oz/lb", "US fluid ounce per pound")
                .imperial(IMPERIAL_GALLON_PER_LONG_TON, "imp gal/long ton", "imperial gallon per long ton")
                .imperial(IMPERIAL_GALLON_PER_SHORT_TON, "imp gal/ton", "imperial gallon per short ton");
        of(FlowRate.class)
                .us(US_GALLON_PER_MINUTE, "gal/min", "US gallon per minute", "gpm")
                .metric(LITER_PER_MINUTE, "L/min", "liter per minute", "l/min")
                .metric(LITER_PER_SECOND, "L/s", "liter per second", "l/s")
                .metric(CUBIC_METER_PER_SECOND, "m³/s", "cubic meter per second", "m3/s")
                .us(US_GALLON_PER_HOUR, "gal/h", "US gallon per hour", "gph")
                .us(CUBIC_FOOT_PER_MINUTE, "ft³/min", "cubic foot per minute", "ft3/min", "cu ft/min")
                .imperial(IMPERIAL_GALLON_PER_MINUTE, "imp gal/min", "imperial gallon per minute");
    }

    private void dischargeAndCalibration() {
        of(DischargePerRevolution.class)
                .us(POUND_PER_REVOLUTION, "lb/rev", "pound per revolution")
                .metric(KILOGRAM_PER_REVOLUTION, "kg/rev", "kilogram per revolution")
                .metric(GRAM_PER_REVOLUTION, "g/rev", "gram per revolution");
        of(DischargePerPulse.class)
                .us(POUND_PER_PULSE, "lb/pulse", "pound per pulse")
                .metric(KILOGRAM_PER_PULSE, "kg/pulse", "kilogram per pulse")
                .metric(GRAM_PER_PULSE, "g/pulse", "gram per pulse")
                .us(OUNCE_PER_PULSE, "oz/pulse", "ounce per pulse");
        of(RevolutionsPerMass.class)
                .us(REVOLUTION_PER_POUND, "rev/lb", "revolution per pound")
                .metric(REVOLUTION_PER_KILOGRAM, "rev/kg", "revolution per kilogram")
                .us(REVOLUTION_PER_SHORT_TON, "rev/ton", "revolution per short ton")
                .metric(REVOLUTION_PER_TONNE, "rev/t", "revolution per tonne", "rev/tonne");
        of(PulsesPerMass.class)
                .us(PULSE_PER_POUND, "pulse/lb", "pulse per pound")
                .metric(PULSE_PER_KILOGRAM, "pulse/kg", "pulse per kilogram")
                .us(PULSE_PER_SHORT_TON, "pulse/ton", "pulse per short ton")
                .metric(PULSE_PER_TONNE, "pulse/t", "pulse per tonne", "pulse/tonne");
        of(VolumePerRevolution.class)
                .us(CUBIC_INCH_PER_REVOLUTION, "in³/rev", "cubic inch per revolution", "in3/rev", "cu in/rev")
                .metric(LITER_PER_REVOLUTION, "L/rev", "liter per revolution", "l/rev")
                .us(CUBIC_FOOT_PER_REVOLUTION, "ft³/rev", "cubic foot per revolution", "ft3/rev", "cu ft/rev")
                .metric(CUBIC_METER_PER_REVOLUTION, "m³/rev", "cubic meter per revolution", "m3/rev");
    }

    private void shaftsDensitiesAndCounts() {
        of(RotationalSpeed.class)
                .any(REVOLUTION_PER_MINUTE, "rev/min", "revolution per minute", "rpm")
                .any(REVOLUTION_PER_SECOND, "rev/s", "revolution per second");
        of(PulsesPerRevolution.class).any(PULSE_PER_REVOLUTION, "pulse/rev", "pulse per revolution");
        of(PulsesPerDistance.class)
                .us(PULSE_PER_MILE, "pulse/mi", "pulse per mile", "pulse/mile")
                .metric(PULSE_PER_KILOMETER, "pulse/km", "pulse per kilometer")
                .metric(PULSE_PER_METER, "pulse/m", "pulse per meter")
                .us(PULSE_PER_FOOT, "pulse/ft", "pulse per foot");
        of(BulkDensity.class)
                .us(POUND_PER_CUBIC_FOOT, "lb/ft³", "pound per cubic foot", "lb/ft3", "lb/cu ft")
                .metric(KILOGRAM_PER_CUBIC_METER, "kg/m³", "kilogram per cubic meter", "kg/m3")
                .metric(TONNE_PER_CUBIC_METER, "t/m³", "tonne per cubic meter", "t/m3", "tonne/m³", "tonne/m3")
                .metric(KILOGRAM_PER_LITER, "kg/L", "kilogram per liter", "kg/l")
                .us(POUND_PER_CUBIC_YARD, "lb/yd³", "pound per cubic yard", "lb/yd3", "lb/cu yd")
                .us(SHORT_TON_PER_CUBIC_YARD, "ton/yd³", "short ton per cubic yard", "ton/yd3", "ton/cu yd")
                .us(POUND_PER_US_GALLON, "lb/gal", "pound per US gallon")
                .imperial(POUND_PER_IMPERIAL_GALLON, "lb/imp gal", "pound per imperial gallon");
        of(LaneWidth.class)
                .us(FOOT_PER_LANE, "ft/lane", "foot per lane")
                .metric(METER_PER_LANE, "m/lane", "meter per lane");
        of(PulseCount.class).any(PULSE, "pulse", "pulse", "pulses");
        of(RevolutionCount.class).any(REVOLUTION, "rev", "revolution", "revs");
        of(LaneCount.class).any(LANE, "lane", "lane", "lanes");
    }

    private <Q extends Quantity<Q>> RowsOf<Q> of(Class<Q> kind) {
        return new RowsOf<>(kind, rows);
    }

    /** The rows of one kind. */
    private record RowsOf<Q extends Quantity<Q>>(Class<Q> kind, List<UnitSymbol<?>> rows) {
        RowsOf<Q> us(Unit<Q> unit, String symbol, String name, String... spellings) {
            return add(TradeSystem.US, unit, symbol, name, spellings);
        }

        RowsOf<Q> metric(Unit<Q> unit, String symbol, String name, String... spellings) {
            return add(TradeSystem.METRIC, unit, symbol, name, spellings);
        }

        RowsOf<Q> imperial(Unit<Q> unit, String symbol, String name, String... spellings) {
            return add(TradeSystem.IMPERIAL, unit, symbol, name, spellings);
        }

        RowsOf<Q> any(Unit<Q> unit, String symbol, String name, String... spellings) {
            return add(TradeSystem.ANY, unit, symbol, name, spellings);
        }

        private RowsOf<Q> add(TradeSystem system, Unit<Q> unit, String symbol, String name, String... spellings) {
            rows.add(new UnitSymbol<>(kind, unit, system, symbol, name, List.of(spellings)));
            return this;
        }
    }
}
