package org.gritwright.core.fleet;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import javax.measure.Quantity;

/**
 * A conveyor or gate as it was written down.
 *
 * @param type the name of its type
 * @param version the version of its type
 * @param parameters the type's parameters by name
 */
public record TypedEntry(String type, int version, Map<String, Quantity<?>> parameters) {

    /** Copies the parameters, in the order of their names. */
    public TypedEntry {
        parameters = Collections.unmodifiableMap(new TreeMap<>(parameters));
    }
}
