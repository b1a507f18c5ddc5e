package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.Proxy;
import java.lang.reflect.RecordComponent;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.lateral.Pan;
import org.gritwright.core.lateral.SpreadPattern;
import org.gritwright.core.metering.Auger;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.DragChain;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.NoGate;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.metering.SlidingGate;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.range.Command;
import org.gritwright.core.range.CommandScale;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.DriveCurve;
import org.gritwright.core.range.DriveMeasurement;
import org.gritwright.core.range.DrivePoint;
import org.gritwright.core.range.DriveResponse;
import org.gritwright.core.range.DriveRun;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.ScaleAccuracy;
import org.gritwright.core.weighing.ScaleCheck;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;

/** An invented yard for tests: one scale, two spreaders, one salt. */
public final class Samples {
    public static final LocalDate DAY = LocalDate.of(2026, 10, 19);

    public static final OffsetDateTime NOON = noonOf(DAY);

    /** Right to a thousandth and checked that day; 5 000 lb by 0.5 lb. */
    public static final Scale SCALE = Scale.of("S-1", pounds(5000), pounds(0.5))
            .withAccuracy(new ScaleAccuracy.Stated(Amounts.of(0.1, SpreadingUnits.PERCENT)))
            .checked(new ScaleCheck(DAY, pounds(50), pounds(50)));

    public static final ShaftSensor SENSOR = ShaftSensor.of(Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION));

    public static final Material SALT = Material.of("salt", Amounts.of(80, SpreadingUnits.POUND_PER_CUBIC_FOOT));

    /** Sweeps 150.796 in³/rev; 5.934 lb/rev of salt at a fill of 0.85. */
    public static final Spreader AUGER = augerWith(SENSOR);

    /** Sweeps 1502.784 in³/rev at 4 in; 62.616 lb/rev of salt at a fill of 0.9. */
    public static final Spreader CHAIN = chainWith(SENSOR);

    /** Salt by the auger, which has nothing to set. */
    public static final CalibrationPoint AUGER_POINT = CalibrationPoint.of(SALT, AUGER, Setting.none());

    /** Three pans of a square foot beside each other, the middle one before the truck. */
    public static final SpreadPattern PATTERN = SpreadPattern.of(List.of(
            Pan.of(inches(-12), inches(12), inches(12), pounds(1)),
            Pan.of(inches(0), inches(12), inches(12), pounds(2)),
            Pan.of(inches(12), inches(12), inches(12), pounds(1))));

    /** What a drive holds. */
    public static final WorkingRange RANGE = new WorkingRange(
            Amounts.of(2, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(28, SpreadingUnits.REVOLUTION_PER_MINUTE));

    /** One that meters 2 kg/rev. */
    public static final Envelope ENVELOPE =
            Envelope.of(Measured.once(Amounts.of(2, SpreadingUnits.KILOGRAM_PER_REVOLUTION)), RANGE);

    /** 2 rev/min at 1, 28 at 9. */
    public static final OpenLoop OPEN_LOOP = new OpenLoop(
            Amounts.of(1, SpreadingUnits.ONE),
            List.of(
                    new OpenLoop.Row(Amounts.of(1, SpreadingUnits.ONE), RANGE.lowest()),
                    new OpenLoop.Row(Amounts.of(9, SpreadingUnits.ONE), RANGE.highest())));

    /** 2 rev/min at 30 %, 28 at 90 %. */
    public static final DriveCurve DRIVE_CURVE = DriveResponse.of(new DriveMeasurement(
                    CommandScale.percent(1),
                    Amounts.of(0.1, SpreadingUnits.REVOLUTION_PER_MINUTE),
                    DriveConditions.NOT_SAID,
                    List.of(new DriveRun(
                            Direction.RISING,
                            List.of(
                                    DrivePoint.of(Command.percent(30), RANGE.lowest()),
                                    DrivePoint.of(Command.percent(90), RANGE.highest()))))))
            .curve(Direction.RISING)
            .orElseThrow();

    private Samples() {}

    public static Spreader augerWith(DriveFeedback feedback) {
        return new Spreader(
                Conveyor.of(
                        new Auger(),
                        Map.of("screwDiameter", inches(6), "shaftDiameter", inches(2), "pitch", inches(6))),
                Gate.of(new NoGate(), Map.of()),
                feedback);
    }

    public static Spreader chainWith(DriveFeedback feedback) {
        return new Spreader(
                Conveyor.of(
                        new DragChain(),
                        Map.of("teeth", Amounts.of(6, SpreadingUnits.ONE), "chainPitch", inches(2.609))),
                Gate.of(new SlidingGate(), Map.of("width", inches(24))),
                feedback);
    }

    /** Salt by an auger that is counted in another way. */
    public static CalibrationPoint augerPoint(DriveFeedback feedback) {
        return CalibrationPoint.of(SALT, augerWith(feedback), Setting.none());
    }

    /** Salt by the chain, its gate so many inches open. */
    public static CalibrationPoint chainAt(double inches) {
        return chainAt(inches(inches));
    }

    /** Salt by the chain, its gate open so far. */
    public static CalibrationPoint chainAt(Quantity<Length> opening) {
        return CalibrationPoint.of(SALT, CHAIN, Setting.height(opening));
    }

    public static Setting height(double inches) {
        return Setting.height(inches(inches));
    }

    public static OffsetDateTime noonOf(LocalDate day) {
        return day.atTime(LocalTime.NOON).atOffset(ZoneOffset.ofHours(-4));
    }

    public static Quantity<Mass> pounds(double pounds) {
        return Amounts.of(pounds, SpreadingUnits.POUND);
    }

    public static Quantity<Length> inches(double inches) {
        return Amounts.of(inches, SpreadingUnits.INCH);
    }

    public static ShaftCount pulses(double pulses) {
        return new ShaftCount.Pulses(Amounts.of(pulses, SpreadingUnits.PULSE));
    }

    public static ShaftCount revolutionsByEye(double revolutions) {
        return new ShaftCount.ByEye(
                Amounts.of(revolutions, SpreadingUnits.REVOLUTION), Amounts.of(0.1, SpreadingUnits.REVOLUTION));
    }

    /** A net mass in one container without tare. */
    public static CaughtMass caught(double pounds) {
        return caught(pounds(pounds));
    }

    public static CaughtMass caught(Quantity<Mass> net) {
        return CaughtMass.of(SCALE, DAY, new Weighing("tarp", net, Amounts.of(0, net.getUnit())));
    }

    /** What was caught at noon of the day on which it was weighed; nothing was counted. */
    public static Observation observed(CalibrationPoint point, CaughtMass caught) {
        return Observation.of(point, noonOf(caught.measuredOn()), caught);
    }

    /** A catch from rest to rest with a primed conveyor. */
    public static CalibrationCatch catchAt(CalibrationPoint point, CaughtMass caught, ShaftCount count) {
        return CalibrationCatch.of(observed(point, caught).counted(count));
    }

    /** A catch with the auger: so many pounds in so many pulses of 100 a revolution. */
    public static CalibrationCatch augerCatch(double pounds, double pulses) {
        return catchAt(AUGER_POINT, caught(pounds), pulses(pulses));
    }

    /** Three catches of 20 revolutions, about 5.93 lb/rev, fill about 0.85; no finding. */
    public static List<CalibrationCatch> goodAugerCatches() {
        return List.of(augerCatch(118.5, 2000), augerCatch(119, 2000), augerCatch(118, 2000));
    }

    /** The auger with salt and a calibration; the display takes hundredths. */
    public static CalibrationInForce augerInForce(double poundsPerRevolution) {
        return CalibrationInForce.of(
                AUGER_POINT,
                CalibrationFactor.of(Amounts.of(poundsPerRevolution, SpreadingUnits.POUND_PER_REVOLUTION)),
                Optional.of(Amounts.of(0.01, SpreadingUnits.POUND_PER_REVOLUTION)));
    }

    public static List<FindingCode> codes(List<Finding> findings) {
        return findings.stream().map(Finding::code).toList();
    }

    /** The numbers among a finding's arguments. */
    public static Map<String, Quantity<?>> numbers(Finding finding) {
        Map<String, Quantity<?>> numbers = new TreeMap<>();
        finding.arguments().forEach((name, argument) -> {
            if (argument instanceof Argument.Amount amount) {
                numbers.put(name, amount.quantity());
            }
        });
        return numbers;
    }

    /** Findings but for those that say what nobody knows of an uncertainty. */
    public static List<Finding> butForUnknown(List<Finding> findings) {
        return findings.stream()
                .filter(f -> f.code() != FindingCode.UNCERTAINTY_INCOMPLETE)
                .filter(f -> f.code() != FindingCode.UNCERTAINTY_ASSUMED)
                .toList();
    }

    public static Finding only(FindingCode code, List<Finding> findings) {
        List<Finding> found = findings.stream().filter(f -> f.code() == code).toList();
        if (found.size() != 1) {
            throw new AssertionError("one finding " + code + " wanted: " + findings);
        }
        return found.get(0);
    }

    /** Asserts that a call is refused with exactly this message. */
    public static void assertRefused(String message, ThrowingCallable call) {
        assertThatExceptionOfType(InvalidInputException.class).isThrownBy(call).withMessage(message);
    }

    /** Asserts that each component of a public record, when it is null, is named by its name. */
    public static void assertNamesWhatIsMissing(Record good) throws ReflectiveOperationException {
        RecordComponent[] components = good.getClass().getRecordComponents();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        for (int missing = 0; missing < components.length; missing++) {
            if (!types[missing].isPrimitive()) {
                Object[] values = new Object[components.length];
                for (int i = 0; i < values.length; i++) {
                    values[i] =
                            i == missing ? null : components[i].getAccessor().invoke(good);
                }
                assertThatThrownBy(() -> good.getClass().getConstructor(types).newInstance(values))
                        .cause()
                        .isInstanceOf(NullPointerException.class)
                        .hasMessage(components[missing].getName());
            }
        }
    }

    /** A quantity of another implementation, which may hold what ours can't. */
    @SuppressWarnings("unchecked") // the proxy implements nothing else
    public static <Q extends Quantity<Q>> Quantity<Q> foreign(double value, Unit<Q> unit) {
        return (Quantity<Q>) Proxy.newProxyInstance(
                Samples.class.getClassLoader(),
                new Class<?>[] {Quantity.class},
                (proxy, method, arguments) -> switch (method.getName()) {
                    case "getValue" -> value;
                    case "getUnit" -> unit;
                    default -> throw new UnsupportedOperationException(method.getName());
                });
    }

    /** What raw types let through: a quantity of one kind in the place of another. */
    @SuppressWarnings("unchecked") // the wrong kind on purpose
    public static <Q extends Quantity<Q>> Quantity<Q> wrongKind(Quantity<?> quantity) {
        return (Quantity<Q>) quantity;
    }
}
