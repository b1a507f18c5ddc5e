package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.SQUARE_METER;

import java.util.List;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.MeasuredTable;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;

/**
 * A gate of any form, described by a table that somebody measured: the cross-section at each of several openings, or at
 * each of several painted marks or percentages.
 *
 * <p>Between two rows the area is interpolated on a straight line; outside the table the gate can't be set. Rows are in
 * rising order of the opening, and the area never falls. Two types share this class: {@link #byOpening()} and {@link
 * #bySetting()}. A gate whose rows are percentages is set by percentage, one whose rows are bare numbers by its marks;
 * the two are never mixed in one table.
 */
public final class TableGate implements GateType {
    private static final int FEWEST_ROWS = 2;
    private static final int MOST_ROWS = 100;

    /** The openings of a table by measured opening, in rising order. */
    public static final Parameter<Length> OPENINGS = Parameter.length(
                    "openings", Amounts.of(0, MILLIMETER), Amounts.of(2, METER))
            .asList(FEWEST_ROWS, MOST_ROWS);

    /** The settings of a table by painted mark or in percent, in rising order. */
    public static final Parameter<Dimensionless> SETTINGS = Parameter.of(
                    "settings", Dimensionless.class, Amounts.of(0, ONE), Amounts.of(1000, ONE))
            .asList(FEWEST_ROWS, MOST_ROWS);

    /** The cross-section in each row, never falling. */
    public static final Parameter<Area> AREAS = Parameter.of(
                    "areas", Area.class, Amounts.of(0, SQUARE_METER), Amounts.of(5, SQUARE_METER))
            .asList(FEWEST_ROWS, MOST_ROWS);

    private final String name;
    private final Parameter<?> positions;

    private TableGate(String name, Parameter<?> positions) {
        this.name = name;
        this.positions = positions;
    }

    /**
     * The type whose table goes by measured opening.
     *
     * @return type "measured-table"
     */
    public static TableGate byOpening() {
        return new TableGate("measured-table", OPENINGS);
    }

    /**
     * The type whose table goes by painted mark or in percent.
     *
     * @return type "setting-table"
     */
    public static TableGate bySetting() {
        return new TableGate("setting-table", SETTINGS);
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
        MeasuredTable areas = MeasuredTable.neverFalling(given, positions, AREAS);
        List<Setting> rows = given.list(positions).stream().map(Setting::of).toList();
        for (Setting row : rows) {
            if (row.scale() != rows.get(0).scale()) {
                throw new InvalidInputException(
                        positions.name(),
                        "all marks or all percentages, as the first is, " + text(rows.get(0)),
                        text(row));
            }
        }
        GateShape.Adjustable shape = GateShape.adjustable(rows.get(0), rows.get(rows.size() - 1), areas::value);
        int closedRows = (int) areas.values().filter(area -> area == 0).count();
        return closedRows == 0 ? shape : shape.closedAt(rows.get(closedRows - 1));
    }

    private static String text(Setting row) {
        return row.quantity().map(Amounts::format).orElseThrow();
    }
}
