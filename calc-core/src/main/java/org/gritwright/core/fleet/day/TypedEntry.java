package org.gritwright.core.fleet.day;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.gritwright.units.check.Require;

/**
 * A conveyor or gate as it was written down.
 *
 * @param type the name of its type
 * @param version the version of its type
 * @param parameters the type's parameters by name: a quantity, or a list of quantities where the parameter is a list
 */
public record TypedEntry(String type, int version, Map<String, ?> parameters) {

    /** Copies the parameters, in the order of their names. */
    public TypedEntry {
        Require.given(TypedEntry.class, type, parameters);
        Map<String, Object> copy = new TreeMap<>(parameters);
        copy.replaceAll((name, value) -> value instanceof List<?> list ? List.copyOf(list) : value);
        parameters = Collections.unmodifiableMap(copy);
    }
}
