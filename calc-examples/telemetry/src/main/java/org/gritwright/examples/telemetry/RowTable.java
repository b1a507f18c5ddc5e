package org.gritwright.examples.telemetry;

import java.util.ArrayList;
import java.util.List;
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

    static final StructType SCHEMA = new StructType()
            .add("truck", DataTypes.StringType, false)
            .add("time", DataTypes.TimestampType, false)
            .add("shaft_pulse", DataTypes.LongType, false)
            .add("road_pulse", DataTypes.LongType, false)
            .add("gate_in", DataTypes.DoubleType, true)
            .add("slot", DataTypes.StringType, false)
            .add("mode", DataTypes.IntegerType, false);

    private RowTable() {}

    /** Refuses a file without a column that is needed, or with one of another type; more columns do no harm. */
    static void check(String place, StructType found) throws BadInputException {
        List<String> wrong = new ArrayList<>();
        for (StructField needed : SCHEMA.fields()) {
            if (found.getFieldIndex(needed.name()).isEmpty()) {
                wrong.add("there is no column " + needed.name());
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
