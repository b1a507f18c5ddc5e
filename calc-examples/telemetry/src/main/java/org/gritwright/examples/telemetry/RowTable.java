package org.gritwright.examples.telemetry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructField;
import org.apache.spark.sql.types.StructType;

/** The columns of a truck's rows. */
final class RowTable {
    static final int TRUCK = 0;
    static final int TIME = 1;
    static final int SHAFT = 2;
    static final int ROAD = 3;
    static final int GATE = 4;
    static final int SLOT = 5;
    static final int MODE = 6;
    static final int ROAD_ID = 7;
    static final int LIQUID = 8;

    /** What every file has. */
    static final StructType SCHEMA = new StructType()
            .add("truck", DataTypes.StringType, false)
            .add("time", DataTypes.TimestampType, false)
            .add("shaft_pulse", DataTypes.LongType, false)
            .add("road_pulse", DataTypes.LongType, false)
            .add("gate_in", DataTypes.DoubleType, true)
            .add("slot", DataTypes.StringType, false)
            .add("mode", DataTypes.IntegerType, false);

    /** With what a file may have beside that. */
    static final StructType ALL =
            SCHEMA.add("road_id", DataTypes.StringType, true).add("liquid_pulse", DataTypes.LongType, true);

    private RowTable() {}

    /** The columns in their order, with nothing in those that no file has. */
    static Dataset<Row> columns(Dataset<Row> table) {
        return table.select(Arrays.stream(ALL.fields())
                .map(column -> table.schema().getFieldIndex(column.name()).isDefined()
                        ? functions.col(column.name())
                        : functions.lit(null).cast(column.dataType()).as(column.name()))
                .toArray(Column[]::new));
    }

    /** Refuses a file without a column that is needed, or with one of another type; columns that nobody knows do no harm. */
    static void check(String place, StructType found) throws BadInputException {
        List<String> wrong = new ArrayList<>();
        for (StructField needed : ALL.fields()) {
            if (found.getFieldIndex(needed.name()).isEmpty()) {
                if (SCHEMA.getFieldIndex(needed.name()).isDefined()) {
                    wrong.add("there is no column " + needed.name());
                }
            } else {
                String type = found.apply(needed.name()).dataType().simpleString();
                if (!type.equals(needed.dataType().simpleString())) {
                    wrong.add("column " + needed.name() + " is a " + type + " and not a "
                            + needed.dataType().simpleString());
                }
            }
        }
        if (!wrong.isEmpty()) {
            throw new BadInputException(place + " can't be used: " + String.join("; ", wrong));
        }
    }
}
