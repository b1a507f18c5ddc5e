package org.gritwright.examples.telemetry;

import org.apache.spark.sql.types.StructField;
import org.apache.spark.sql.types.StructType;

/** The rows' columns, each of which may be missing in a row. */
final class Nullable {
    static final StructType SCHEMA = schema();

    private Nullable() {}

    private static StructType schema() {
        StructType schema = new StructType();
        for (StructField field : RowTable.ALL.fields()) {
            schema = schema.add(field.name(), field.dataType(), true);
        }
        return schema;
    }
}
