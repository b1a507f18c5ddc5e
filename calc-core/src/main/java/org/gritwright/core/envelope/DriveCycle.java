package org.gritwright.core.envelope;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * A road speed over time, with a steady change from each point to the next. Immutable, thread-safe, a value.
 *
 * @param points two or more, each later than the one before it
 */
public record DriveCycle(List<Point> points) {
    /**
     * A speed at a time.
     *
     * @param at since the start, 0 or more
     * @param speed the road speed, 0 or more
     */
    public record Point(Quantity<Time> at, Quantity<Speed> speed) {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if one is negative
         */
        public Point {
            Require.given(Point.class, at, speed);
            Require.notNegative("time in a drive cycle", Time.class, at);
            Require.notNegative("speed in a drive cycle", Speed.class, speed);
        }

        double seconds() {
            return Amounts.si(Time.class, at);
        }

        double metersPerSecond() {
            return Amounts.si(Speed.class, speed);
        }
    }

    /**
     * Checks the points.
     *
     * @throws org.gritwright.units.InvalidInputException if there are fewer than two, or one isn't later than that before it
     */
    public DriveCycle {
        Require.given(DriveCycle.class, points);
        points = List.copyOf(points);
        Require.that(points.size() >= 2, "points of a drive cycle", "two or more", points.size());
        for (int i = 1; i < points.size(); i++) {
            Require.that(
                    points.get(i).seconds() > points.get(i - 1).seconds(),
                    "time in a drive cycle",
                    "later than the one before it, "
                            + Amounts.format(points.get(i - 1).at()),
                    points.get(i).at());
        }
    }

    /**
     * How far it goes.
     *
     * @return the area under the speed, in meters
     */
    public Quantity<Length> distance() {
        double meters = 0;
        for (int i = 1; i < points.size(); i++) {
            Point from = points.get(i - 1);
            Point to = points.get(i);
            meters += (to.seconds() - from.seconds()) * (from.metersPerSecond() + to.metersPerSecond()) / 2;
        }
        return Amounts.of(meters, SpreadingUnits.METER);
    }
}
