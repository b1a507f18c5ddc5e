package org.gritwright.units;

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
        add(Mass.class, SpreadingUnits.POUND, TradeSystem.US, "lb", "pound", "lbs");
        add(Mass.class, SpreadingUnits.KILOGRAM, TradeSystem.METRIC, "kg", "kilogram");
        add(Mass.class, SpreadingUnits.OUNCE, TradeSystem.US, "oz", "ounce");
        add(Mass.class, SpreadingUnits.SHORT_TON, TradeSystem.US, "ton", "short ton", "short ton");
        add(Mass.class, SpreadingUnits.LONG_TON, TradeSystem.IMPERIAL, "long ton", "long ton");
        add(Mass.class, SpreadingUnits.GRAM, TradeSystem.METRIC, "g", "gram");
        add(Mass.class, SpreadingUnits.TONNE, TradeSystem.METRIC, "t", "tonne", "tonne");
        add(Length.class, SpreadingUnits.INCH, TradeSystem.US, "in", "inch");
        add(Length.class, SpreadingUnits.METRE, TradeSystem.METRIC, "m", "metre");
        add(Length.class, SpreadingUnits.FOOT, TradeSystem.US, "ft", "foot");
        add(Length.class, SpreadingUnits.YARD, TradeSystem.US, "yd", "yard");
        add(Length.class, SpreadingUnits.MILE, TradeSystem.US, "mi", "mile", "mile");
        add(Length.class, SpreadingUnits.MILLIMETRE, TradeSystem.METRIC, "mm", "millimetre");
        add(Length.class, SpreadingUnits.CENTIMETRE, TradeSystem.METRIC, "cm", "centimetre");
        add(Length.class, SpreadingUnits.KILOMETRE, TradeSystem.METRIC, "km", "kilometre");
        add(Time.class, SpreadingUnits.SECOND, TradeSystem.ANY, "s", "second", "sec");
        add(Time.class, SpreadingUnits.MINUTE, TradeSystem.ANY, "min", "minute");
        add(Time.class, SpreadingUnits.HOUR, TradeSystem.ANY, "h", "hour", "hr");
        add(Speed.class, SpreadingUnits.MILE_PER_HOUR, TradeSystem.US, "mi/h", "mile per hour", "mph");
        add(Speed.class, SpreadingUnits.KILOMETRE_PER_HOUR, TradeSystem.METRIC, "km/h", "kilometre per hour", "kph");
        add(Speed.class, SpreadingUnits.METRE_PER_SECOND, TradeSystem.METRIC, "m/s", "metre per second");
        add(Speed.class, SpreadingUnits.FOOT_PER_MINUTE, TradeSystem.US, "ft/min", "foot per minute");
        add(Area.class, SpreadingUnits.SQUARE_INCH, TradeSystem.US, "in²", "square inch", "in2", "sq in");
        add(Area.class, SpreadingUnits.SQUARE_METRE, TradeSystem.METRIC, "m²", "square metre", "m2");
        add(Area.class, SpreadingUnits.SQUARE_CENTIMETRE, TradeSystem.METRIC, "cm²", "square centimetre", "cm2");
        add(Area.class, SpreadingUnits.SQUARE_FOOT, TradeSystem.US, "ft²", "square foot", "ft2", "sq ft");
        add(Area.class, SpreadingUnits.SQUARE_YARD, TradeSystem.US, "yd²", "square yard", "yd2", "sq yd");
        add(Area.class, SpreadingUnits.ACRE, TradeSystem.US, "acre", "acre");
        add(Area.class, SpreadingUnits.HECTARE, TradeSystem.METRIC, "ha", "hectare");
        add(Volume.class, SpreadingUnits.US_GALLON, TradeSystem.US, "gal", "US gallon", "US gal");
        add(Volume.class, SpreadingUnits.LITRE, TradeSystem.METRIC, "L", "litre", "l");
        add(Volume.class, SpreadingUnits.IMPERIAL_GALLON, TradeSystem.IMPERIAL, "imp gal", "imperial gallon");
        add(Volume.class, SpreadingUnits.US_QUART, TradeSystem.US, "qt", "US liquid quart");
        add(Volume.class, SpreadingUnits.US_FLUID_OUNCE, TradeSystem.US, "fl oz", "US fluid ounce");
        add(Volume.class, SpreadingUnits.MILLILITRE, TradeSystem.METRIC, "mL", "millilitre", "ml");
        add(Volume.class, SpreadingUnits.CUBIC_METRE, TradeSystem.METRIC, "m³", "cubic metre", "m3");
        add(Volume.class, SpreadingUnits.CUBIC_INCH, TradeSystem.US, "in³", "cubic inch", "in3", "cu in");
        add(Volume.class, SpreadingUnits.CUBIC_FOOT, TradeSystem.US, "ft³", "cubic foot", "ft3", "cu ft");
        add(Volume.class, SpreadingUnits.CUBIC_YARD, TradeSystem.US, "yd³", "cubic yard", "yd3", "cu yd");
        add(Dimensionless.class, SpreadingUnits.ONE, TradeSystem.ANY, "", "one");
        add(Dimensionless.class, SpreadingUnits.PERCENT, TradeSystem.ANY, "%", "per cent");
        add(Temperature.class, SpreadingUnits.CELSIUS, TradeSystem.METRIC, "°C", "degree Celsius", "degC");
        add(Temperature.class, SpreadingUnits.KELVIN, TradeSystem.METRIC, "K", "kelvin");
        add(Temperature.class, SpreadingUnits.FAHRENHEIT, TradeSystem.US, "°F", "degree Fahrenheit", "degF");
    }

    private void solidRates() {
        add(
                ApplicationRate.class,
                SpreadingUnits.POUND_PER_MILE,
                TradeSystem.US,
                "lb/mi",
                "pound per mile",
                "lb/mile",
                "lbs/mi",
                "lbs/mile");
        add(
                ApplicationRate.class,
                SpreadingUnits.KILOGRAM_PER_KILOMETRE,
                TradeSystem.METRIC,
                "kg/km",
                "kilogram per kilometre");
        add(ApplicationRate.class, SpreadingUnits.KILOGRAM_PER_METRE, TradeSystem.METRIC, "kg/m", "kilogram per metre");
        add(ApplicationRate.class, SpreadingUnits.GRAM_PER_METRE, TradeSystem.METRIC, "g/m", "gram per metre");
        add(
                ApplicationRate.class,
                SpreadingUnits.TONNE_PER_KILOMETRE,
                TradeSystem.METRIC,
                "t/km",
                "tonne per kilometre",
                "tonne/km");
        add(
                ApplicationRate.class,
                SpreadingUnits.SHORT_TON_PER_MILE,
                TradeSystem.US,
                "ton/mi",
                "short ton per mile",
                "ton/mile");
        add(ApplicationRate.class, SpreadingUnits.POUND_PER_FOOT, TradeSystem.US, "lb/ft", "pound per foot");
        add(ApplicationRate.class, SpreadingUnits.POUND_PER_YARD, TradeSystem.US, "lb/yd", "pound per yard");
        add(
                LaneApplicationRate.class,
                SpreadingUnits.POUND_PER_LANE_MILE,
                TradeSystem.US,
                "lb/lane-mi",
                "pound per lane-mile",
                "lb/lane-mile",
                "lbs/lane-mi",
                "lbs/lane-mile");
        add(
                LaneApplicationRate.class,
                SpreadingUnits.KILOGRAM_PER_LANE_KILOMETRE,
                TradeSystem.METRIC,
                "kg/lane-km",
                "kilogram per lane-kilometre");
        add(
                LaneApplicationRate.class,
                SpreadingUnits.KILOGRAM_PER_LANE_METRE,
                TradeSystem.METRIC,
                "kg/lane-m",
                "kilogram per lane-metre");
        add(
                LaneApplicationRate.class,
                SpreadingUnits.SHORT_TON_PER_LANE_MILE,
                TradeSystem.US,
                "ton/lane-mi",
                "short ton per lane-mile",
                "ton/lane-mile");
        add(
                ArealApplicationRate.class,
                SpreadingUnits.GRAM_PER_SQUARE_METRE,
                TradeSystem.METRIC,
                "g/m²",
                "gram per square metre",
                "g/m2");
        add(
                ArealApplicationRate.class,
                SpreadingUnits.POUND_PER_1000_SQUARE_FEET,
                TradeSystem.US,
                "lb/1000 ft²",
                "pound per 1000 square feet",
                "lb/1000 ft2",
                "lb/1000 sq ft");
        add(
                ArealApplicationRate.class,
                SpreadingUnits.OUNCE_PER_SQUARE_YARD,
                TradeSystem.US,
                "oz/yd²",
                "ounce per square yard",
                "oz/yd2",
                "oz/sq yd");
        add(
                ArealApplicationRate.class,
                SpreadingUnits.OUNCE_PER_SQUARE_FOOT,
                TradeSystem.US,
                "oz/ft²",
                "ounce per square foot",
                "oz/ft2",
                "oz/sq ft");
        add(
                ArealApplicationRate.class,
                SpreadingUnits.POUND_PER_SQUARE_YARD,
                TradeSystem.US,
                "lb/yd²",
                "pound per square yard",
                "lb/yd2",
                "lb/sq yd");
        add(
                ArealApplicationRate.class,
                SpreadingUnits.POUND_PER_SQUARE_FOOT,
                TradeSystem.US,
                "lb/ft²",
                "pound per square foot",
                "lb/ft2",
                "lb/sq ft");
        add(ArealApplicationRate.class, SpreadingUnits.POUND_PER_ACRE, TradeSystem.US, "lb/acre", "pound per acre");
        add(
                ArealApplicationRate.class,
                SpreadingUnits.KILOGRAM_PER_HECTARE,
                TradeSystem.METRIC,
                "kg/ha",
                "kilogram per hectare");
        add(
                ArealApplicationRate.class,
                SpreadingUnits.KILOGRAM_PER_SQUARE_METRE,
                TradeSystem.METRIC,
                "kg/m²",
                "kilogram per square metre",
                "kg/m2");
        add(
                DischargeRate.class,
                SpreadingUnits.POUND_PER_MINUTE,
                TradeSystem.US,
                "lb/min",
                "pound per minute",
                "lbs/min");
        add(
                DischargeRate.class,
                SpreadingUnits.KILOGRAM_PER_MINUTE,
                TradeSystem.METRIC,
                "kg/min",
                "kilogram per minute");
        add(DischargeRate.class, SpreadingUnits.KILOGRAM_PER_SECOND, TradeSystem.METRIC, "kg/s", "kilogram per second");
        add(DischargeRate.class, SpreadingUnits.KILOGRAM_PER_HOUR, TradeSystem.METRIC, "kg/h", "kilogram per hour");
        add(DischargeRate.class, SpreadingUnits.POUND_PER_SECOND, TradeSystem.US, "lb/s", "pound per second");
        add(DischargeRate.class, SpreadingUnits.POUND_PER_HOUR, TradeSystem.US, "lb/h", "pound per hour");
        add(DischargeRate.class, SpreadingUnits.SHORT_TON_PER_HOUR, TradeSystem.US, "ton/h", "short ton per hour");
        add(DischargeRate.class, SpreadingUnits.TONNE_PER_HOUR, TradeSystem.METRIC, "t/h", "tonne per hour", "tonne/h");
    }

    private void liquidRates() {
        add(
                LiquidApplicationRate.class,
                SpreadingUnits.US_GALLON_PER_MILE,
                TradeSystem.US,
                "gal/mi",
                "US gallon per mile",
                "gal/mile");
        add(
                LiquidApplicationRate.class,
                SpreadingUnits.LITRE_PER_KILOMETRE,
                TradeSystem.METRIC,
                "L/km",
                "litre per kilometre",
                "l/km");
        add(
                LiquidApplicationRate.class,
                SpreadingUnits.LITRE_PER_METRE,
                TradeSystem.METRIC,
                "L/m",
                "litre per metre",
                "l/m");
        add(
                LiquidApplicationRate.class,
                SpreadingUnits.IMPERIAL_GALLON_PER_MILE,
                TradeSystem.IMPERIAL,
                "imp gal/mi",
                "imperial gallon per mile",
                "imp gal/mile");
        add(
                LiquidLaneApplicationRate.class,
                SpreadingUnits.US_GALLON_PER_LANE_MILE,
                TradeSystem.US,
                "gal/lane-mi",
                "US gallon per lane-mile",
                "gal/lane-mile");
        add(
                LiquidLaneApplicationRate.class,
                SpreadingUnits.LITRE_PER_LANE_KILOMETRE,
                TradeSystem.METRIC,
                "L/lane-km",
                "litre per lane-kilometre",
                "l/lane-km");
        add(
                LiquidLaneApplicationRate.class,
                SpreadingUnits.IMPERIAL_GALLON_PER_LANE_MILE,
                TradeSystem.IMPERIAL,
                "imp gal/lane-mi",
                "imperial gallon per lane-mile",
                "imp gal/lane-mile");
        add(
                LiquidArealApplicationRate.class,
                SpreadingUnits.MILLILITRE_PER_SQUARE_METRE,
                TradeSystem.METRIC,
                "mL/m²",
                "millilitre per square metre",
                "mL/m2",
                "ml/m²",
                "ml/m2");
        add(
                LiquidArealApplicationRate.class,
                SpreadingUnits.US_GALLON_PER_1000_SQUARE_FEET,
                TradeSystem.US,
                "gal/1000 ft²",
                "US gallon per 1000 square feet",
                "gal/1000 ft2",
                "gal/1000 sq ft");
        add(
                LiquidArealApplicationRate.class,
                SpreadingUnits.US_GALLON_PER_ACRE,
                TradeSystem.US,
                "gal/acre",
                "US gallon per acre");
        add(
                LiquidArealApplicationRate.class,
                SpreadingUnits.LITRE_PER_HECTARE,
                TradeSystem.METRIC,
                "L/ha",
                "litre per hectare",
                "l/ha");
        add(
                LiquidArealApplicationRate.class,
                SpreadingUnits.LITRE_PER_SQUARE_METRE,
                TradeSystem.METRIC,
                "L/m²",
                "litre per square metre",
                "L/m2",
                "l/m²",
                "l/m2");
        add(
                PrewetRate.class,
                SpreadingUnits.US_GALLON_PER_SHORT_TON,
                TradeSystem.US,
                "gal/ton",
                "US gallon per short ton",
                "gal/short ton");
        add(
                PrewetRate.class,
                SpreadingUnits.LITRE_PER_TONNE,
                TradeSystem.METRIC,
                "L/t",
                "litre per tonne",
                "l/t",
                "L/tonne",
                "l/tonne");
        add(
                PrewetRate.class,
                SpreadingUnits.MILLILITRE_PER_KILOGRAM,
                TradeSystem.METRIC,
                "mL/kg",
                "millilitre per kilogram",
                "ml/kg");
        add(
                PrewetRate.class,
                SpreadingUnits.US_GALLON_PER_TONNE,
                TradeSystem.US,
                "gal/t",
                "US gallon per tonne",
                "gal/tonne");
        add(
                PrewetRate.class,
                SpreadingUnits.US_GALLON_PER_LONG_TON,
                TradeSystem.US,
                "gal/long ton",
                "US gallon per long ton");
        add(
                PrewetRate.class,
                SpreadingUnits.US_FLUID_OUNCE_PER_POUND,
                TradeSystem.US,
                "fl oz/lb",
                "US fluid ounce per pound");
        add(
                PrewetRate.class,
                SpreadingUnits.IMPERIAL_GALLON_PER_LONG_TON,
                TradeSystem.IMPERIAL,
                "imp gal/long ton",
                "imperial gallon per long ton");
        add(
                PrewetRate.class,
                SpreadingUnits.IMPERIAL_GALLON_PER_SHORT_TON,
                TradeSystem.IMPERIAL,
                "imp gal/ton",
                "imperial gallon per short ton");
        add(
                FlowRate.class,
                SpreadingUnits.US_GALLON_PER_MINUTE,
                TradeSystem.US,
                "gal/min",
                "US gallon per minute",
                "gpm");
        add(FlowRate.class, SpreadingUnits.LITRE_PER_MINUTE, TradeSystem.METRIC, "L/min", "litre per minute", "l/min");
        add(FlowRate.class, SpreadingUnits.LITRE_PER_SECOND, TradeSystem.METRIC, "L/s", "litre per second", "l/s");
        add(
                FlowRate.class,
                SpreadingUnits.CUBIC_METRE_PER_SECOND,
                TradeSystem.METRIC,
                "m³/s",
                "cubic metre per second",
                "m3/s");
        add(FlowRate.class, SpreadingUnits.US_GALLON_PER_HOUR, TradeSystem.US, "gal/h", "US gallon per hour", "gph");
        add(
                FlowRate.class,
                SpreadingUnits.CUBIC_FOOT_PER_MINUTE,
                TradeSystem.US,
                "ft³/min",
                "cubic foot per minute",
                "ft3/min",
                "cu ft/min");
        add(
                FlowRate.class,
                SpreadingUnits.IMPERIAL_GALLON_PER_MINUTE,
                TradeSystem.IMPERIAL,
                "imp gal/min",
                "imperial gallon per minute");
    }

    private void dischargeAndCalibration() {
        add(
                DischargePerRevolution.class,
                SpreadingUnits.POUND_PER_REVOLUTION,
                TradeSystem.US,
                "lb/rev",
                "pound per revolution");
        add(
                DischargePerRevolution.class,
                SpreadingUnits.KILOGRAM_PER_REVOLUTION,
                TradeSystem.METRIC,
                "kg/rev",
                "kilogram per revolution");
        add(
                DischargePerRevolution.class,
                SpreadingUnits.GRAM_PER_REVOLUTION,
                TradeSystem.METRIC,
                "g/rev",
                "gram per revolution");
        add(DischargePerPulse.class, SpreadingUnits.POUND_PER_PULSE, TradeSystem.US, "lb/pulse", "pound per pulse");
        add(
                DischargePerPulse.class,
                SpreadingUnits.KILOGRAM_PER_PULSE,
                TradeSystem.METRIC,
                "kg/pulse",
                "kilogram per pulse");
        add(DischargePerPulse.class, SpreadingUnits.GRAM_PER_PULSE, TradeSystem.METRIC, "g/pulse", "gram per pulse");
        add(DischargePerPulse.class, SpreadingUnits.OUNCE_PER_PULSE, TradeSystem.US, "oz/pulse", "ounce per pulse");
        add(
                RevolutionsPerMass.class,
                SpreadingUnits.REVOLUTION_PER_POUND,
                TradeSystem.US,
                "rev/lb",
                "revolution per pound");
        add(
                RevolutionsPerMass.class,
                SpreadingUnits.REVOLUTION_PER_KILOGRAM,
                TradeSystem.METRIC,
                "rev/kg",
                "revolution per kilogram");
        add(
                RevolutionsPerMass.class,
                SpreadingUnits.REVOLUTION_PER_SHORT_TON,
                TradeSystem.US,
                "rev/ton",
                "revolution per short ton");
        add(
                RevolutionsPerMass.class,
                SpreadingUnits.REVOLUTION_PER_TONNE,
                TradeSystem.METRIC,
                "rev/t",
                "revolution per tonne",
                "rev/tonne");
        add(PulsesPerMass.class, SpreadingUnits.PULSE_PER_POUND, TradeSystem.US, "pulse/lb", "pulse per pound");
        add(
                PulsesPerMass.class,
                SpreadingUnits.PULSE_PER_KILOGRAM,
                TradeSystem.METRIC,
                "pulse/kg",
                "pulse per kilogram");
        add(
                PulsesPerMass.class,
                SpreadingUnits.PULSE_PER_SHORT_TON,
                TradeSystem.US,
                "pulse/ton",
                "pulse per short ton");
        add(
                PulsesPerMass.class,
                SpreadingUnits.PULSE_PER_TONNE,
                TradeSystem.METRIC,
                "pulse/t",
                "pulse per tonne",
                "pulse/tonne");
        add(
                VolumePerRevolution.class,
                SpreadingUnits.CUBIC_INCH_PER_REVOLUTION,
                TradeSystem.US,
                "in³/rev",
                "cubic inch per revolution",
                "in3/rev",
                "cu in/rev");
        add(
                VolumePerRevolution.class,
                SpreadingUnits.LITRE_PER_REVOLUTION,
                TradeSystem.METRIC,
                "L/rev",
                "litre per revolution",
                "l/rev");
        add(
                VolumePerRevolution.class,
                SpreadingUnits.CUBIC_FOOT_PER_REVOLUTION,
                TradeSystem.US,
                "ft³/rev",
                "cubic foot per revolution",
                "ft3/rev",
                "cu ft/rev");
        add(
                VolumePerRevolution.class,
                SpreadingUnits.CUBIC_METRE_PER_REVOLUTION,
                TradeSystem.METRIC,
                "m³/rev",
                "cubic metre per revolution",
                "m3/rev");
    }

    private void shaftsDensitiesAndCounts() {
        add(
                RotationalSpeed.class,
                SpreadingUnits.REVOLUTION_PER_MINUTE,
                TradeSystem.ANY,
                "rev/min",
                "revolution per minute",
                "rpm");
        add(
                RotationalSpeed.class,
                SpreadingUnits.REVOLUTION_PER_SECOND,
                TradeSystem.ANY,
                "rev/s",
                "revolution per second");
        add(
                PulsesPerRevolution.class,
                SpreadingUnits.PULSE_PER_REVOLUTION,
                TradeSystem.ANY,
                "pulse/rev",
                "pulse per revolution");
        add(
                PulsesPerDistance.class,
                SpreadingUnits.PULSE_PER_MILE,
                TradeSystem.US,
                "pulse/mi",
                "pulse per mile",
                "pulse/mile");
        add(
                PulsesPerDistance.class,
                SpreadingUnits.PULSE_PER_KILOMETRE,
                TradeSystem.METRIC,
                "pulse/km",
                "pulse per kilometre");
        add(PulsesPerDistance.class, SpreadingUnits.PULSE_PER_METRE, TradeSystem.METRIC, "pulse/m", "pulse per metre");
        add(PulsesPerDistance.class, SpreadingUnits.PULSE_PER_FOOT, TradeSystem.US, "pulse/ft", "pulse per foot");
        add(
                BulkDensity.class,
                SpreadingUnits.POUND_PER_CUBIC_FOOT,
                TradeSystem.US,
                "lb/ft³",
                "pound per cubic foot",
                "lb/ft3",
                "lb/cu ft");
        add(
                BulkDensity.class,
                SpreadingUnits.KILOGRAM_PER_CUBIC_METRE,
                TradeSystem.METRIC,
                "kg/m³",
                "kilogram per cubic metre",
                "kg/m3");
        add(
                BulkDensity.class,
                SpreadingUnits.TONNE_PER_CUBIC_METRE,
                TradeSystem.METRIC,
                "t/m³",
                "tonne per cubic metre",
                "t/m3",
                "tonne/m³",
                "tonne/m3");
        add(
                BulkDensity.class,
                SpreadingUnits.KILOGRAM_PER_LITRE,
                TradeSystem.METRIC,
                "kg/L",
                "kilogram per litre",
                "kg/l");
        add(
                BulkDensity.class,
                SpreadingUnits.POUND_PER_CUBIC_YARD,
                TradeSystem.US,
                "lb/yd³",
                "pound per cubic yard",
                "lb/yd3",
                "lb/cu yd");
        add(
                BulkDensity.class,
                SpreadingUnits.SHORT_TON_PER_CUBIC_YARD,
                TradeSystem.US,
                "ton/yd³",
                "short ton per cubic yard",
                "ton/yd3",
                "ton/cu yd");
        add(BulkDensity.class, SpreadingUnits.POUND_PER_US_GALLON, TradeSystem.US, "lb/gal", "pound per US gallon");
        add(
                BulkDensity.class,
                SpreadingUnits.POUND_PER_IMPERIAL_GALLON,
                TradeSystem.IMPERIAL,
                "lb/imp gal",
                "pound per imperial gallon");
        add(LaneWidth.class, SpreadingUnits.FOOT_PER_LANE, TradeSystem.US, "ft/lane", "foot per lane");
        add(LaneWidth.class, SpreadingUnits.METRE_PER_LANE, TradeSystem.METRIC, "m/lane", "metre per lane");
        add(PulseCount.class, SpreadingUnits.PULSE, TradeSystem.ANY, "pulse", "pulse", "pulses");
        add(RevolutionCount.class, SpreadingUnits.REVOLUTION, TradeSystem.ANY, "rev", "revolution", "revs");
        add(LaneCount.class, SpreadingUnits.LANE, TradeSystem.ANY, "lane", "lane", "lanes");
    }

    private <Q extends Quantity<Q>> void add(
            Class<Q> kind, Unit<Q> unit, TradeSystem system, String symbol, String name, String... spellings) {
        rows.add(new UnitSymbol<>(kind, unit, system, symbol, name, List.of(spellings)));
    }
}
