package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.lang.reflect.Array;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.BiConsumer;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.balance.Adjustment;
import org.gritwright.core.balance.Network;
import org.gritwright.core.boom.NozzleFlow;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.chart.ControlSetting;
import org.gritwright.core.curve.CurveModel;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.curve.SlipCurve;
import org.gritwright.core.curve.SlipSamples;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.lateral.SpreadPattern;
import org.gritwright.core.metering.Belt;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.FlowMeter;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.GearPump;
import org.gritwright.core.metering.KFactorMeter;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.metering.Pump;
import org.gritwright.core.metering.RoundGate;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.range.CommandScale;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.DriveCurve;
import org.gritwright.core.range.DriveMeasurement;
import org.gritwright.core.season.SurveyPeriod;
import org.gritwright.core.solution.Recipe;
import org.gritwright.core.solution.Salt;
import org.gritwright.core.solution.SaltSupply;
import org.gritwright.core.solution.Solution;
import org.gritwright.core.solution.SpecificGravity;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.MeteredVolume;
import org.gritwright.core.spi.OpenArea;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.PumpedVolume;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SpreaderType;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.Counter;
import org.gritwright.core.telemetry.RowEvaluator;
import org.gritwright.core.telemetry.RowSums;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.core.telemetry.TimelineEntry;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.verification.Runs;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationLimits;
import org.gritwright.core.weighing.Caught;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.TradeSystem;
import org.gritwright.units.UnitSymbol;
import org.junit.jupiter.api.Test;

/** The one rule for null: every public factory and constructor answers it with an exception that names the parameter. */
class NullsTest {
    private static final Solution BRINE = Solution.of(Salt.SODIUM_CHLORIDE, Amounts.of(20, SpreadingUnits.PERCENT));

    private static final AsFound AS_FOUND = new AsFound(
            "1",
            Setting.none(),
            Instant.EPOCH.minusSeconds(1),
            Instant.EPOCH.plusSeconds(1),
            Measured.once(Amounts.of(1, SpreadingUnits.PERCENT)));

    private static final RowEvaluator ROWS = RowEvaluator.compile(
            Timeline.of(List.of(TimelineEntry.value(Instant.EPOCH, Samples.augerInForce(2)))),
            Counter.ofShaft(
                    Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION),
                    Amounts.of(60, SpreadingUnits.REVOLUTION_PER_MINUTE)),
            Instant.EPOCH,
            Instant.EPOCH.plusSeconds(1));

    private final Map<Class<?>, Optional<Object>> samples = new HashMap<>();

    NullsTest() {
        Stream.of(
                        Map.entry(String.class, "T-1"),
                        Map.entry(CharSequence.class, "T-1"),
                        Map.entry(Class.class, Mass.class),
                        Map.entry(Unit.class, SpreadingUnits.POUND),
                        Map.entry(LocalDate.class, Samples.DAY),
                        Map.entry(OffsetDateTime.class, Samples.NOON),
                        Map.entry(Set.class, Set.of()),
                        Map.entry(Collection.class, List.of()),
                        Map.entry(
                                Adjustment.class,
                                Network.of(List.of(), List.of()).adjust()),
                        Map.entry(Map.class, Map.of()),
                        Map.entry(Collection.class, List.of()),
                        Map.entry(Optional.class, Optional.empty()),
                        Map.entry(OptionalDouble.class, OptionalDouble.empty()),
                        Map.entry(double[].class, new double[] {0.5, 0.6, 0.7}),
                        Map.entry(double.class, 0.5),
                        Map.entry(int.class, 2),
                        Map.entry(long.class, 2L),
                        Map.entry(byte.class, (byte) 0),
                        Map.entry(boolean.class, true),
                        Map.entry(RandomGenerator.class, new SplittableRandom(1)),
                        Map.entry(ToDoubleFunction.class, (ToDoubleFunction<double[]>) values -> 1),
                        Map.entry(CurveFit.Shape.class, (CurveFit.Shape) at -> at),
                        Map.entry(OpenArea.class, (OpenArea) height -> height),
                        Map.entry(SurveyPeriod.class, new SurveyPeriod(1, 1, List.of())),
                        Map.entry(SpreaderType.class, new Belt()),
                        Map.entry(ConveyorType.class, new Belt()),
                        Map.entry(GateType.class, new RoundGate()),
                        Map.entry(PumpType.class, new GearPump()),
                        Map.entry(FlowMeterType.class, new KFactorMeter()),
                        Map.entry(PumpedVolume.class, (PumpedVolume) speed -> 1),
                        Map.entry(MeteredVolume.class, (MeteredVolume) flow -> 1),
                        Map.entry(Parameters.class, Parameters.of(List.of(), Map.of())),
                        Map.entry(Metering.class, Samples.AUGER),
                        Map.entry(Conveyor.class, Samples.AUGER.conveyor()),
                        Map.entry(Gate.class, Samples.AUGER.gate()),
                        Map.entry(CalibrationPoint.class, Samples.AUGER_POINT),
                        Map.entry(Material.class, Samples.SALT),
                        Map.entry(CaughtMass.class, Samples.caught(100)),
                        Map.entry(Caught.class, Samples.caught(100)),
                        Map.entry(Graduate.class, LiquidSamples.PAIL),
                        Map.entry(FlowMeter.class, LiquidSamples.METER.meter()),
                        Map.entry(Pump.class, LiquidSamples.pump(Samples.SENSOR).pump()),
                        Map.entry(CalibrationInForce.class, Samples.augerInForce(2)),
                        Map.entry(
                                CalibrationFactor.class, Samples.augerInForce(2).factor()),
                        Map.entry(FillLimits.class, FillLimits.COMMON),
                        Map.entry(SpreadPattern.class, Samples.PATTERN),
                        Map.entry(
                                Moisture.class,
                                new Moisture(
                                        Amounts.of(4, SpreadingUnits.PERCENT),
                                        Amounts.of(1, SpreadingUnits.PERCENT),
                                        Moisture.Basis.WET_MASS)),
                        Map.entry(
                                DriveMeasurement.class,
                                new DriveMeasurement(
                                        CommandScale.percent(1),
                                        Amounts.of(0.1, SpreadingUnits.REVOLUTION_PER_MINUTE),
                                        DriveConditions.NOT_SAID,
                                        List.of())),
                        Map.entry(
                                NozzleFlow.class,
                                new NozzleFlow(
                                        "left", "1", Measured.once(Amounts.of(1, SpreadingUnits.LITER_PER_MINUTE)))),
                        Map.entry(Envelope.class, Samples.ENVELOPE),
                        Map.entry(OpenLoop.class, Samples.OPEN_LOOP),
                        Map.entry(CalibrationCatch.class, Samples.augerCatch(100, 2000)),
                        Map.entry(
                                SlipCurve.class,
                                SlipCurve.chosenByTest(SlipSamples.pairs(SlipSamples::leaking, 100, 400))),
                        Map.entry(
                                DischargeCurve.class,
                                DischargeCurve.fit(
                                        List.of(Samples.catchAt(
                                                Samples.chainAt(2), Samples.caught(150), Samples.pulses(500))),
                                        CurveModel.PROPORTIONAL)),
                        Map.entry(DriveCurve.class, Samples.DRIVE_CURVE),
                        Map.entry(
                                ControlSetting.class,
                                ControlSetting.of(Samples.OPEN_LOOP).get(0)),
                        Map.entry(TypeId.class, TypeId.of("belt", 1)),
                        Map.entry(Solution.class, BRINE),
                        Map.entry(
                                SpecificGravity.class,
                                new SpecificGravity(
                                        Measured.once(Amounts.of(1.15, SpreadingUnits.ONE)),
                                        Amounts.of(60, SpreadingUnits.FAHRENHEIT))),
                        Map.entry(
                                Recipe.class,
                                new Recipe(
                                        BRINE,
                                        SaltSupply.pure(Salt.SODIUM_CHLORIDE),
                                        Amounts.of(2, SpreadingUnits.CELSIUS))),
                        Map.entry(
                                RouteEntry.class,
                                new RouteEntry(
                                        "hill road",
                                        "salt",
                                        new TargetEntry(
                                                Optional.of(Amounts.of(300, SpreadingUnits.POUND_PER_MILE)),
                                                Optional.empty(),
                                                Optional.empty(),
                                                Optional.empty()),
                                        Amounts.of(10, SpreadingUnits.MILE_PER_HOUR),
                                        Amounts.of(35, SpreadingUnits.MILE_PER_HOUR),
                                        List.of())),
                        Map.entry(Instant.class, Instant.EPOCH),
                        Map.entry(ZoneOffset.class, ZoneOffset.UTC),
                        Map.entry(AsFound.class, AS_FOUND),
                        Map.entry(
                                Verification.class,
                                Runs.counted(5000, 290)
                                        .assess(
                                                Tolerance.percent(4),
                                                DecisionRule.SIMPLE,
                                                VerificationLimits.COMMON,
                                                Optional.empty())),
                        Map.entry(RowEvaluator.class, ROWS),
                        Map.entry(RowSums.class, ROWS.sums()),
                        Map.entry(Record.class, FillLimits.COMMON),
                        Map.entry(BiConsumer.class, (BiConsumer<Object, Object>) (at, why) -> {}))
                .forEach(sample -> samples.put(sample.getKey(), Optional.of(sample.getValue())));
    }

    private static List<Class<?>> publicTypes() {
        return new ClassFileImporter()
                .importUrl(Spi.class.getProtectionDomain().getCodeSource().getLocation()).stream()
                        .filter(type -> !Set.of(
                                        "org.gritwright.core.json",
                                        "org.gritwright.core.budget",
                                        "org.gritwright.core.fleet.review")
                                .contains(type.getPackageName()))
                        .filter(type -> !type.getName().endsWith("-info"))
                        .<Class<?>>map(JavaClass::reflect)
                        .filter(NullsTest::isPublic)
                        .filter(type -> !isOutcome(type))
                        .sorted(Comparator.comparing(Class::getName))
                        .toList();
    }

    /** Only the library makes these, out of results that were checked, or by reading a document, which has no nulls. */
    private static boolean isOutcome(Class<?> type) {
        return type.getName().matches("org\\.gritwright\\.core\\.record\\.\\w+Outcome(\\$\\w+)?");
    }

    private static boolean isPublic(Class<?> type) {
        return type == null || (Modifier.isPublic(type.getModifiers()) && isPublic(type.getEnclosingClass()));
    }

    private static List<Executable> makers(Class<?> type) {
        return Stream.<Executable>concat(
                        Arrays.stream(type.getConstructors()),
                        Arrays.stream(type.getDeclaredMethods())
                                .filter(method -> Modifier.isStatic(method.getModifiers())))
                .filter(maker -> Modifier.isPublic(maker.getModifiers()) && !maker.isSynthetic())
                .filter(maker -> !maker.getName().equals("valueOf"))
                .sorted(Comparator.comparing(Executable::getParameterCount).thenComparing(Executable::toString))
                .toList();
    }

    private static Object call(Executable maker, Object[] arguments) throws Throwable {
        try {
            return maker instanceof Constructor<?> constructor
                    ? constructor.newInstance(arguments)
                    : ((Method) maker).invoke(null, arguments);
        } catch (InvocationTargetException e) {
            throw e.getCause();
        }
    }

    /** A value of a type, made with the first of its public makers that takes samples; none if none does. */
    private Optional<Object> sample(Type type) {
        Class<?> raw = type instanceof ParameterizedType generic
                ? (Class<?>) generic.getRawType()
                : type instanceof Class<?> one ? one : Object.class;
        if (raw == Quantity.class) {
            return Optional.of(ofKind(type));
        }
        if (raw == List.class) {
            Type item = ((ParameterizedType) type).getActualTypeArguments()[0];
            return Optional.of(sample(item).map(List::of).orElse(List.of()));
        }
        if (!samples.containsKey(raw)) {
            samples.put(raw, Optional.empty()); // whatever needs one of itself
            samples.put(raw, make(raw));
        }
        return samples.get(raw);
    }

    @SuppressWarnings({"unchecked", "rawtypes"}) // the kind is one of the symbol table
    private static Quantity<?> ofKind(Type quantity) {
        Type kind = ((ParameterizedType) quantity).getActualTypeArguments()[0];
        return kind instanceof Class<?> one
                ? Amounts.of(
                        kind == Dimensionless.class ? 0.5 : 2, UnitSymbol.tradeUnit((Class) one, TradeSystem.METRIC))
                : Amounts.of(2, SpreadingUnits.POUND);
    }

    private Optional<Object> make(Class<?> type) {
        if (type.isArray()) {
            return sample(type.getComponentType()).map(one -> {
                Object array = Array.newInstance(type.getComponentType(), 1);
                Array.set(array, 0, one);
                return array;
            });
        }
        if (type.isEnum()) {
            return Optional.of(type.getEnumConstants()[0]);
        }
        if (type.isSealed()) {
            return Arrays.stream(type.getPermittedSubclasses())
                    .flatMap(one -> sample(one).stream())
                    .findFirst();
        }
        for (Executable maker : makers(type)) {
            try {
                Object made = call(maker, arguments(maker));
                if (type.isInstance(made)) {
                    return Optional.of(made);
                }
            } catch (Throwable refused) {
                // The next one may take samples.
            }
        }
        return Optional.empty();
    }

    private Object[] arguments(Executable maker) {
        return Arrays.stream(maker.getGenericParameterTypes())
                .map(type -> sample(type).orElse(null))
                .toArray();
    }

    @Test
    void everyParameterThatIsNullIsNamed() {
        List<String> tried = new ArrayList<>();
        for (Class<?> type : publicTypes()) {
            for (Executable maker : makers(type)) {
                for (int i = 0; i < maker.getParameterCount(); i++) {
                    if (!maker.getParameterTypes()[i].isPrimitive()) {
                        tried.add(assertNamed(maker, i));
                    }
                }
            }
        }
        assertThat(tried)
                .hasSizeGreaterThan(600)
                .contains("Calibration.from: catches", "CountEntry.ofPulses: pulses", "Scale: division");
    }

    private String assertNamed(Executable maker, int which) {
        Object[] arguments = arguments(maker);
        assertThat(arguments).as("samples for " + maker).doesNotContainNull();
        arguments[which] = null;
        assertThatThrownBy(() -> call(maker, arguments))
                .as(maker + ", parameter " + (which + 1))
                .isInstanceOf(NullPointerException.class)
                // In the trade's words, or by the virtual machine, which quotes.
                .message()
                .matches("[A-Za-z][\\w .-]*|.* because \"" + maker.getParameters()[which].getName() + "\" is null");
        String type = maker.getDeclaringClass().getSimpleName();
        String called = maker instanceof Constructor ? type : type + "." + maker.getName();
        return called + ": " + maker.getParameters()[which].getName();
    }
}
