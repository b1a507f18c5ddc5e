package org.gritwright.core.conformance;

import static org.gritwright.core.conformance.LawfulGate.DEAD;
import static org.gritwright.core.conformance.LawfulGate.WIDTH;
import static org.gritwright.core.conformance.LawfulGate.area;
import static org.gritwright.core.conformance.LawfulGate.shape;

import java.io.Serializable;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.OpenArea;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;

/** Gate types that break one law each and obey the others. */
final class BrokenGates {

    private BrokenGates() {}

    /** A type that breaks a law, and how; the display name of its test. */
    record Broken(Law law, String how, GateType type) {
        @Override
        public String toString() {
            return law.id() + ": " + how;
        }
    }

    static Stream<Broken> all() {
        return Stream.of(
                new Broken(Law.STABLE_IDENTITY, "another version each time", new RisingVersion()),
                new Broken(Law.STABLE_IDENTITY, "a level of later times", new LaterLevel()),
                new Broken(Law.DESCRIBED_PARAMETERS, "other limits each time", new GrowingLimits()),
                new Broken(Law.DESCRIBED_PARAMETERS, "a name twice", new NameTwice()),
                new Broken(Law.ENFORCED_LIMITS, "a width is taken as it comes", new TakesAnyWidth()),
                new Broken(Law.NAMED_REFUSALS, "a wide gate is refused without a name", new Stumbles()),
                new Broken(Law.NAMED_REFUSALS, "no shape", new NoShape()),
                new Broken(Law.NAMED_REFUSALS, "an area that throws when asked", new OfArea((width, dead, opening) -> {
                    throw new IllegalStateException("jammed");
                })),
                new Broken(
                        Law.FINITE,
                        "infinite at the largest opening",
                        new OfArea((width, dead, opening) ->
                                opening > 0.3 ? Double.POSITIVE_INFINITY : width * Math.max(0, opening - dead))),
                new Broken(
                        Law.NOT_NEGATIVE,
                        "less than nothing below the dead opening, which is not declared closed",
                        new OfArea((width, dead, opening) -> width * (opening - dead - 0.01), false)),
                new Broken(Law.NOT_NEGATIVE, "never open", new OfArea((width, dead, opening) -> 0)),
                new Broken(
                        Law.RISING,
                        "less in the upper half",
                        new OfArea((width, dead, opening) ->
                                width * (opening > 0.15 ? 0.1 : Math.max(0, opening - dead)))),
                new Broken(Law.UNIT_INVARIANT, "the bare number is taken for inches", new BareNumbers()),
                new Broken(Law.UNIT_INVARIANT, "the limits know one unit only", new BareLimits()),
                new Broken(Law.DETERMINISTIC, "a little more each time", new Growing()),
                new Broken(Law.DETERMINISTIC, "other limits each time", new Stretching()),
                new Broken(Law.DETERMINISTIC, "another closed position each time", new Slipping()),
                new Broken(Law.DETERMINISTIC, "now fixed, now adjustable", new Turning()),
                new Broken(Law.DETERMINISTIC, "a fixed opening that grows", new GrowingHole()),
                new Broken(Law.SERIALIZABLE, "an area that holds its type", new HoldsItself()),
                new Broken(Law.SETTABLE_LIMITS, "a percentage is taken for a number up to 100", new PercentByNumber()),
                new Broken(Law.SETTABLE_LIMITS, "there is no area for the highest mark", new ShortTable()),
                new Broken(Law.SETTABLE_LIMITS, "the closed position is refused", new NeverClosed()),
                new Broken(
                        Law.CLOSED_IS_ZERO,
                        "a hole of a thousandth of a square millimeter stays open",
                        new OfArea((width, dead, opening) -> width * Math.max(0, opening - dead) + 1e-9)),
                new Broken(
                        Law.CLOSED_IS_ZERO,
                        "a slit of 1 mm stays open",
                        new OfArea((width, dead, opening) -> width * Math.max(0.001, opening - dead))),
                new Broken(
                        Law.CLOSED_IS_ZERO,
                        "a slit of a millionth of a millimeter stays open",
                        new OfArea((width, dead, opening) -> width * Math.max(1e-9, opening - dead))),
                new Broken(
                        Law.CLOSED_IS_ZERO,
                        "open just where it says that it is closed",
                        new OfArea((width, dead, opening) -> width * (opening < dead ? 0 : opening))),
                new Broken(
                        Law.CLOSED_IS_ZERO,
                        "closed too early",
                        new OfArea((width, dead, opening) -> width * Math.max(0, opening - dead / 2))));
    }

    private static final class RisingVersion extends LawfulGate {
        private final AtomicInteger version = new AtomicInteger();

        @Override
        public TypeId id() {
            return TypeId.of("example.org/rising", version.incrementAndGet());
        }
    }

    private static final class LaterLevel extends LawfulGate {
        @Override
        public int spiLevel() {
            return Spi.LEVEL + 1;
        }
    }

    private static final class GrowingLimits extends LawfulGate {
        private final AtomicInteger asked = new AtomicInteger();

        @Override
        public List<Parameter<?>> parameters() {
            return List.of(
                    WIDTH,
                    Parameter.length(
                            "dead",
                            Amounts.of(0, SpreadingUnits.INCH),
                            Amounts.of(3 - 0.1 * asked.getAndIncrement(), SpreadingUnits.INCH)));
        }
    }

    private static final class NameTwice extends LawfulGate {
        @Override
        public List<Parameter<?>> parameters() {
            return List.of(WIDTH, DEAD, DEAD);
        }
    }

    private static final class TakesAnyWidth extends LawfulGate {
        @Override
        public GateShape shape(Parameters given) {
            double width =
                    Amounts.si(Length.class, given.asMap().get("width").get(0).asType(Length.class));
            return shape(given, area(width, given.si(DEAD)));
        }
    }

    private static final class Stumbles extends LawfulGate {
        @Override
        public GateShape shape(Parameters given) {
            if (given.si(WIDTH) > 1.5) {
                throw new ArithmeticException("too wide");
            }
            return super.shape(given);
        }
    }

    private static final class NoShape extends LawfulGate {
        @Override
        public GateShape shape(Parameters given) {
            return null;
        }
    }

    /** The area from width, dead opening and opening, all in m. */
    private interface Area extends Serializable {
        double of(double width, double dead, double opening);
    }

    private static final class OfArea extends LawfulGate {
        private final Area area;
        private final boolean closes;

        OfArea(Area area) {
            this(area, true);
        }

        OfArea(Area area, boolean closes) {
            this.area = area;
            this.closes = closes;
        }

        @Override
        public GateShape shape(Parameters given) {
            double width = given.si(WIDTH);
            double dead = given.si(DEAD);
            Area asked = area;
            GateShape.Adjustable closed = shape(given, opening -> asked.of(width, dead, opening));
            return closes ? closed : GateShape.adjustable(closed.lowest(), closed.highest(), closed.area());
        }
    }

    private static final class BareNumbers extends LawfulGate {
        @Override
        public GateShape shape(Parameters given) {
            double width = given.get(WIDTH).getValue().doubleValue() * 0.0254;
            return shape(given, area(width, given.si(DEAD)));
        }
    }

    private static final class BareLimits extends LawfulGate {
        @Override
        public GateShape shape(Parameters given) {
            double width = given.si(WIDTH);
            double highest = 0.1 + given.get(DEAD).getValue().doubleValue() * 0.0254;
            given.si(DEAD);
            return GateShape.byOpening(
                    Amounts.of(0, SpreadingUnits.METER),
                    Amounts.of(highest, SpreadingUnits.METER),
                    opening -> opening > 0 ? width * 0.1 : 0);
        }
    }

    private static final class Growing extends LawfulGate {
        private static final AtomicInteger ASKED = new AtomicInteger();

        @Override
        public GateShape shape(Parameters given) {
            double width = given.si(WIDTH);
            double dead = given.si(DEAD);
            return shape(given, opening -> width * (1 + 1e-15 * ASKED.incrementAndGet()) * Math.max(0, opening - dead));
        }
    }

    private static final class Stretching extends LawfulGate {
        private final AtomicInteger asked = new AtomicInteger();

        @Override
        public GateShape shape(Parameters given) {
            double area = 0.1 * given.si(WIDTH) * (1 + given.si(DEAD));
            return GateShape.byOpening(
                    Amounts.of(0, SpreadingUnits.INCH),
                    Amounts.of(12 + asked.getAndIncrement(), SpreadingUnits.INCH),
                    opening -> area);
        }
    }

    private static final class Slipping extends LawfulGate {
        private final AtomicInteger asked = new AtomicInteger();

        @Override
        public GateShape shape(Parameters given) {
            double width = given.si(WIDTH);
            double dead = 0.1 + given.si(DEAD);
            return GateShape.byOpening(
                            Amounts.of(0, SpreadingUnits.METER), Amounts.of(1, SpreadingUnits.METER), area(width, dead))
                    .closedAt(Amounts.of(0.05 + 1e-6 * asked.getAndIncrement(), SpreadingUnits.METER));
        }
    }

    private static final class Turning extends LawfulGate {
        private final AtomicInteger asked = new AtomicInteger();

        @Override
        public GateShape shape(Parameters given) {
            GateShape adjustable = super.shape(given);
            return asked.incrementAndGet() == 7
                    ? GateShape.fixed(Amounts.of(0.1, SpreadingUnits.SQUARE_METER))
                    : adjustable;
        }
    }

    private static final class GrowingHole extends LawfulGate {
        private final AtomicInteger asked = new AtomicInteger();

        @Override
        public GateShape shape(Parameters given) {
            double area = given.si(WIDTH) * (0.1 + given.si(DEAD)) + 1e-3 * asked.getAndIncrement();
            return GateShape.fixed(Amounts.of(area, SpreadingUnits.SQUARE_METER));
        }
    }

    private static final class NeverClosed extends LawfulGate {
        @Override
        public GateShape shape(Parameters given) {
            double width = given.si(WIDTH);
            double dead = given.si(DEAD);
            return GateShape.byOpening(
                            Amounts.of(0, SpreadingUnits.METER), Amounts.of(1, SpreadingUnits.METER), opening -> {
                                if (opening == 0.03) {
                                    throw new InvalidInputException("opening", "another", "0.03 m");
                                }
                                return width * Math.max(0, opening - 0.03 - dead);
                            })
                    .closedAt(Amounts.of(0.03, SpreadingUnits.METER));
        }
    }

    /** Refuses 8 %, which comes as 0.08. */
    private static final class PercentByNumber extends LawfulGate {
        @Override
        public GateShape shape(Parameters given) {
            double width = given.si(WIDTH);
            double dead = given.si(DEAD);
            return GateShape.adjustable(Setting.percent(8), Setting.percent(100), percentage -> {
                if (!(percentage >= 8 && percentage <= 100)) {
                    throw new InvalidInputException("percentage", "within 8 to 100", String.valueOf(percentage));
                }
                return width * (dead + percentage / 100);
            });
        }
    }

    /** Has marks 0 to 9 and measured areas for 0 to 8. */
    private static final class ShortTable extends LawfulGate {
        @Override
        public GateShape shape(Parameters given) {
            double width = given.si(WIDTH);
            double dead = given.si(DEAD);
            return GateShape.adjustable(Setting.mark(0), Setting.mark(9), mark -> {
                if (mark > 8) {
                    throw new InvalidInputException("mark", "one of the table, 0 to 8", String.valueOf(mark));
                }
                return width * (dead + 0.01 * mark);
            });
        }
    }

    private static final class HoldsItself extends LawfulGate {
        private final double wear = Math.sqrt(1);

        @Override
        public GateShape shape(Parameters given) {
            double width = given.si(WIDTH);
            double dead = given.si(DEAD);
            OpenArea area = opening -> width * Math.max(0, opening - dead) * wear;
            return shape(given, area);
        }
    }
}
