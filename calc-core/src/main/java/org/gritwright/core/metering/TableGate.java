package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.METRE;
import static org.gritwright.units.SpreadingUnits.MILLIMETRE;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.SQUARE_METRE;

import java.util.Arrays;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.OpenArea;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;

/**
 * A gate of any form, described by a table that somebody measured: the cross-section at each of several openings, or at
 * each of several painted marks.
 *
 * <p>Between two rows the area is interpolated on a straight line; outside the table the gate can't be set. Rows are in
 * rising order of the opening, and the area never falls. Two types share this class: {@link #byOpening()} and
 * {@link #bySetting()}.
 *
 * @param <Q> what the gate is set by
 */
public final class TableGate<Q extends Quantity<Q>> implements GateType {
    private static final int FEWEST_ROWS = 2;
    private static final int MOST_ROWS = 100;

    /** The openings of a table by measured opening, in rising order. */
    public static final Parameter<Length> OPENINGS = Parameter.length(
                    "openings", Amounts.of(0, MILLIMETRE), Amounts.of(2, METRE))
            .asList(FEWEST_ROWS, MOST_ROWS);

    /** The settings of a table by painted mark, in rising order. */
    public static final Parameter<Dimensionless> SETTINGS = Parameter.of(
                    "settings", Dimensionless.class, Amounts.of(0, ONE), Amounts.of(1000, ONE))
            .asList(FEWEST_ROWS, MOST_ROWS);

    /** The cross-section in each row, never falling. */
    public static final Parameter<Area> AREAS = Parameter.of(
                    "areas", Area.class, Amounts.of(0, SQUARE_METRE), Amounts.of(5, SQUARE_METRE))
            .asList(FEWEST_ROWS, MOST_ROWS);

    private final String name;
    private final Parameter<Q> positions;

    private TableGate(String name, Parameter<Q> positions) {
        this.name = name;
        this.positions = positions;
    }

    /**
     * The type whose table goes by measured opening.
     *
     * @return type "measured-table"
     */
    public static TableGate<Length> byOpening() {
        return new TableGate<>("measured-table", OPENINGS);
    }

    /**
     * The type whose table goes by painted mark.
     *
     * @return type "setting-table"
     */
    public static TableGate<Dimensionless> bySetting() {
        return new TableGate<>("setting-table", SETTINGS);
    }

    @Override
    public TypeId id() {
        return TypeId.of(name, 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(positions, AREAS);
    }

    @Override
    public GateShape shape(Parameters given) {
        List<Quantity<Q>> rows = given.list(positions);
        List<Quantity<Area>> areas = given.list(AREAS);
        if (rows.size() != areas.size()) {
            throw new InvalidInputException(
                    AREAS.name(), "as many as " + positions.name() + ", " + rows.size(), String.valueOf(areas.size()));
        }
        double[] at = rows.stream()
                .mapToDouble(row -> Amounts.si(positions.kind(), row))
                .toArray();
        double[] squareMetres =
                areas.stream().mapToDouble(area -> Amounts.si(Area.class, area)).toArray();
        int closedRows = 0;
        for (int i = 0; i < at.length; i++) {
            if (i > 0 && !(at[i] > at[i - 1])) {
                throw outOfOrder(positions.name(), "above the one before", rows.get(i - 1), rows.get(i));
            }
            if (i > 0 && !(squareMetres[i] >= squareMetres[i - 1])) {
                throw outOfOrder(AREAS.name(), "not below the one before", areas.get(i - 1), areas.get(i));
            }
            closedRows += squareMetres[i] == 0 ? 1 : 0;
        }
        OpenArea area = position -> interpolate(at, squareMetres, position);
        GateShape.Adjustable<Q> shape =
                GateShape.adjustable(positions.kind(), rows.get(0), rows.get(rows.size() - 1), area);
        return closedRows == 0 ? shape : shape.closedAt(rows.get(closedRows - 1));
    }

    private static InvalidInputException outOfOrder(String field, String rule, Quantity<?> before, Quantity<?> value) {
        return new InvalidInputException(field, rule + ", " + Amounts.format(before), Amounts.format(value));
    }

    private static double interpolate(double[] at, double[] values, double position) {
        int found = Arrays.binarySearch(at, position);
        int above = found >= 0 ? found : -found - 1;
        if (above == 0 || above == at.length) {
            // Only the rounding of a unit's conversion leads past an end.
            return values[Math.min(above, at.length - 1)];
        }
        double part = (position - at[above - 1]) / (at[above] - at[above - 1]);
        return values[above - 1] + part * (values[above] - values[above - 1]);
    }
}
