package org.gritwright.core.spi;

import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.gritwright.units.InvalidInputException;

/**
 * The conveyor and gate types an application knows: an ordinary immutable object that is made from lists and passed
 * around. There is no global one. Thread-safe.
 */
public final class TypeRegistry {
    private final Map<TypeId, ConveyorType> conveyors;
    private final Map<TypeId, GateType> gates;

    private TypeRegistry(Map<TypeId, ConveyorType> conveyors, Map<TypeId, GateType> gates) {
        this.conveyors = conveyors;
        this.gates = gates;
    }

    /**
     * A registry of exactly these types.
     *
     * @param conveyors conveyor types, ids unique
     * @param gates gate types, ids unique
     * @return the registry
     * @throws InvalidInputException if an id occurs twice
     */
    public static TypeRegistry of(List<? extends ConveyorType> conveyors, List<? extends GateType> gates) {
        return new TypeRegistry(
                byId("conveyor type", conveyors, ConveyorType::id), byId("gate type", gates, GateType::id));
    }

    private static <T> Map<TypeId, T> byId(String field, List<? extends T> types, Function<T, TypeId> id) {
        Map<TypeId, T> byId = new TreeMap<>();
        for (T type : types) {
            if (byId.put(id.apply(type), type) != null) {
                throw new InvalidInputException(
                        field, "listed once", id.apply(type).toString());
            }
        }
        return Collections.unmodifiableMap(byId);
    }

    /**
     * A conveyor type by id.
     *
     * @param id the id
     * @return the type
     * @throws InvalidInputException if it isn't known; the message lists those that are
     */
    public ConveyorType conveyor(TypeId id) {
        return known("conveyor type", conveyors, id);
    }

    /**
     * A gate type by id.
     *
     * @param id the id
     * @return the type
     * @throws InvalidInputException if it isn't known; the message lists those that are
     */
    public GateType gate(TypeId id) {
        return known("gate type", gates, id);
    }

    private static <T> T known(String field, Map<TypeId, T> types, TypeId id) {
        T type = types.get(id);
        if (type == null) {
            String known = types.keySet().stream().map(TypeId::toString).collect(Collectors.joining("; "));
            throw new InvalidInputException(field, "one of the registry: " + known, id.toString());
        }
        return type;
    }

    /**
     * All conveyor types, in the order of their ids.
     *
     * @return the types
     */
    public Collection<ConveyorType> conveyors() {
        return conveyors.values();
    }

    /**
     * All gate types, in the order of their ids.
     *
     * @return the types
     */
    public Collection<GateType> gates() {
        return gates.values();
    }
}
