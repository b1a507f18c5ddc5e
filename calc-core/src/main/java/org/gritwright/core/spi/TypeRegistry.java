package org.gritwright.core.spi;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.NearestName;

/**
 * The types of conveyors, gates, pumps and flow meters that an application knows: an ordinary immutable object that is made from lists, from service
 * loaders, or from both, and passed around. There is no global one, and nothing is cached: a server may hold one for
 * each of its class loaders.
 *
 * <p>A type that can't be used never hinders the others: it is left out and {@linkplain #rejected() reported}, whatever
 * it throws; only an {@link OutOfMemoryError} passes. Of two types with one id the first stays; conveyor, gate, pump and
 * flow-meter types have their ids apart. Immutable; thread-safe if the types in it are.
 */
public final class TypeRegistry {
    /** A class path with more broken providers than this is broken itself; asking on might never end. */
    private static final int MOST_FAILURES = 1000;

    /** So many of those left out are named in a refusal, which stands at every truck with the type. */
    private static final int MOST_NAMED = 5;

    /** What is named where no class is known. */
    private static final String PROVIDER = "service provider";

    private final Map<TypeId, ConveyorType> conveyors;
    private final Map<TypeId, GateType> gates;
    private final Map<TypeId, PumpType> pumps;
    private final Map<TypeId, FlowMeterType> flowMeters;
    private final List<RejectedType> rejected;

    private TypeRegistry(
            Map<TypeId, ConveyorType> conveyors,
            Map<TypeId, GateType> gates,
            Map<TypeId, PumpType> pumps,
            Map<TypeId, FlowMeterType> flowMeters,
            List<RejectedType> rejected) {
        this.conveyors = Collections.unmodifiableMap(conveyors);
        this.gates = Collections.unmodifiableMap(gates);
        this.pumps = Collections.unmodifiableMap(pumps);
        this.flowMeters = Collections.unmodifiableMap(flowMeters);
        this.rejected = List.copyOf(rejected);
    }

    /**
     * A registry of types that dose what is dry.
     *
     * @param conveyors conveyor types
     * @param gates gate types
     * @return the registry
     */
    public static TypeRegistry of(List<? extends ConveyorType> conveyors, List<? extends GateType> gates) {
        return of(conveyors, gates, List.of(), List.of());
    }

    /**
     * A registry of these types.
     *
     * @param conveyors conveyor types
     * @param gates gate types
     * @param pumps pump types
     * @param flowMeters flow-meter types
     * @return the registry
     */
    public static TypeRegistry of(
            List<? extends ConveyorType> conveyors,
            List<? extends GateType> gates,
            List<? extends PumpType> pumps,
            List<? extends FlowMeterType> flowMeters) {
        return new TypeRegistry(Map.of(), Map.of(), Map.of(), Map.of(), List.of())
                .with(
                        Objects.requireNonNull(conveyors, "conveyors"),
                        Objects.requireNonNull(gates, "gates"),
                        Objects.requireNonNull(pumps, "pumps"),
                        Objects.requireNonNull(flowMeters, "flowMeters"));
    }

    /**
     * This registry and more types that dose what is dry.
     *
     * @param moreConveyors conveyor types
     * @param moreGates gate types
     * @return a registry of all
     */
    public TypeRegistry with(List<? extends ConveyorType> moreConveyors, List<? extends GateType> moreGates) {
        return with(moreConveyors, moreGates, List.of(), List.of());
    }

    /**
     * This registry and more types.
     *
     * @param moreConveyors conveyor types
     * @param moreGates gate types
     * @param morePumps pump types
     * @param moreFlowMeters flow-meter types
     * @return a registry of all
     */
    public TypeRegistry with(
            List<? extends ConveyorType> moreConveyors,
            List<? extends GateType> moreGates,
            List<? extends PumpType> morePumps,
            List<? extends FlowMeterType> moreFlowMeters) {
        // Copies: what a list itself throws is its maker's mistake and not that of a type in it.
        return with(
                new ArrayList<>(moreConveyors).iterator(),
                new ArrayList<>(moreGates).iterator(),
                new ArrayList<>(morePumps).iterator(),
                new ArrayList<>(moreFlowMeters).iterator());
    }

    /**
     * This registry and the types that a class loader's service providers offer, whether they are declared in
     * {@code META-INF/services} on a class path or with {@code provides} in a module.
     *
     * @param loader the class loader, for example the application's own
     * @return a registry of all
     */
    public TypeRegistry withServices(ClassLoader loader) {
        return with(
                ServiceLoader.load(ConveyorType.class, loader).iterator(),
                ServiceLoader.load(GateType.class, loader).iterator(),
                ServiceLoader.load(PumpType.class, loader).iterator(),
                ServiceLoader.load(FlowMeterType.class, loader).iterator());
    }

    /**
     * This registry and the types that the modules of a layer, and of its parents, provide.
     *
     * @param layer the module layer
     * @return a registry of all
     */
    public TypeRegistry withServices(ModuleLayer layer) {
        return with(
                ServiceLoader.load(layer, ConveyorType.class).iterator(),
                ServiceLoader.load(layer, GateType.class).iterator(),
                ServiceLoader.load(layer, PumpType.class).iterator(),
                ServiceLoader.load(layer, FlowMeterType.class).iterator());
    }

    private TypeRegistry with(
            Iterator<? extends ConveyorType> moreConveyors,
            Iterator<? extends GateType> moreGates,
            Iterator<? extends PumpType> morePumps,
            Iterator<? extends FlowMeterType> moreFlowMeters) {
        Map<TypeId, ConveyorType> allConveyors = new TreeMap<>(conveyors);
        Map<TypeId, GateType> allGates = new TreeMap<>(gates);
        Map<TypeId, PumpType> allPumps = new TreeMap<>(pumps);
        Map<TypeId, FlowMeterType> allFlowMeters = new TreeMap<>(flowMeters);
        List<RejectedType> allRejected = new ArrayList<>(rejected);
        addAll(moreConveyors, allConveyors, allRejected);
        addAll(moreGates, allGates, allRejected);
        addAll(morePumps, allPumps, allRejected);
        addAll(moreFlowMeters, allFlowMeters, allRejected);
        return new TypeRegistry(allConveyors, allGates, allPumps, allFlowMeters, allRejected);
    }

    /**
     * A broken provider shows when it is looked for, when it is made, or when it is asked: a missing class is a bare
     * {@link LinkageError}, a bad line in a services file comes out of {@code hasNext}, and a class loader may throw
     * anything. Each is a reason to leave that one out and to go on.
     */
    private static <T extends SpreaderType> void addAll(
            Iterator<? extends T> offered, Map<TypeId, T> types, List<RejectedType> rejected) {
        RejectedType last = null;
        for (int failures = 0; failures < MOST_FAILURES; ) {
            try {
                if (!offered.hasNext()) {
                    return;
                }
                add(offered.next(), types, rejected);
            } catch (Throwable thrown) {
                failures++;
                RejectedType failure = new RejectedType(PROVIDER, RejectedType.reason(thrown));
                // A loader that can't be read at all says so again each time it is asked.
                if (!failure.equals(last)) {
                    rejected.add(failure);
                }
                last = failure;
            }
        }
        rejected.add(new RejectedType(PROVIDER, "not asked any further after " + MOST_FAILURES + " failures"));
    }

    private static <T extends SpreaderType> void add(T type, Map<TypeId, T> types, List<RejectedType> rejected) {
        String provider = type == null ? "null" : type.getClass().getName();
        try {
            TypeId id = TypeCheck.check(type);
            T first = types.putIfAbsent(id, type);
            if (first != null) {
                rejected.add(new RejectedType(
                        provider,
                        "its id, " + id + ", is taken by " + first.getClass().getName()));
            }
        } catch (Throwable thrown) {
            rejected.add(new RejectedType(provider, RejectedType.reason(thrown)));
        }
    }

    /**
     * A conveyor type by id.
     *
     * @param id the id
     * @return the type
     * @throws InvalidInputException if it isn't known; the message lists those that are, and those that were left out
     */
    public ConveyorType conveyor(TypeId id) {
        return known("conveyor type", conveyors, id);
    }

    /**
     * A gate type by id.
     *
     * @param id the id
     * @return the type
     * @throws InvalidInputException if it isn't known; the message lists those that are, and those that were left out
     */
    public GateType gate(TypeId id) {
        return known("gate type", gates, id);
    }

    /**
     * A pump type by id.
     *
     * @param id the id
     * @return the type
     * @throws InvalidInputException if it isn't known; the message lists those that are, and those that were left out
     */
    public PumpType pump(TypeId id) {
        return known("pump type", pumps, id);
    }

    /**
     * A flow-meter type by id.
     *
     * @param id the id
     * @return the type
     * @throws InvalidInputException if it isn't known; the message lists those that are, and those that were left out
     */
    public FlowMeterType flowMeter(TypeId id) {
        return known("flow-meter type", flowMeters, id);
    }

    private <T> T known(String field, Map<TypeId, T> types, TypeId id) {
        T type = types.get(id);
        if (type == null) {
            String known = types.keySet().stream().map(TypeId::toString).collect(Collectors.joining("; "));
            String more = rejected.size() > MOST_NAMED ? "; and " + (rejected.size() - MOST_NAMED) + " more" : "";
            String leftOut = rejected.isEmpty()
                    ? ""
                    : rejected.stream()
                            .limit(MOST_NAMED)
                            .map(RejectedType::toString)
                            .collect(Collectors.joining("; ", " (left out: ", more + ")"));
            InvalidInputException unknown =
                    new InvalidInputException(field, "one of the registry: " + known + leftOut, id.toString());
            throw nearest(types.keySet(), id)
                    .map(near -> unknown.withWords(unknown.getMessage() + "; did you mean " + near + "?"))
                    .orElse(unknown);
        }
        return type;
    }

    /** The newest type whose own name may have been meant, of the same origin, which would make any two long names near. */
    private static Optional<TypeId> nearest(Set<TypeId> known, TypeId id) {
        int own = id.name().lastIndexOf('/') + 1;
        String origin = id.name().substring(0, own);
        List<String> names = known.stream()
                .map(TypeId::name)
                .filter(name -> name.startsWith(origin) && name.indexOf('/', own) < 0)
                .map(name -> name.substring(own))
                .toList();
        return NearestName.of(id.name().substring(own), names)
                .filter(name -> !id.name().equals(origin + name))
                .flatMap(name -> known.stream()
                        .filter(type -> type.name().equals(origin + name))
                        .max(Comparator.naturalOrder()));
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

    /**
     * All pump types, in the order of their ids.
     *
     * @return the types
     */
    public Collection<PumpType> pumps() {
        return pumps.values();
    }

    /**
     * All flow-meter types, in the order of their ids.
     *
     * @return the types
     */
    public Collection<FlowMeterType> flowMeters() {
        return flowMeters.values();
    }

    /**
     * All types, as a form or a schema goes through their parameters.
     *
     * @return conveyor, gate, pump and flow-meter types, each in the order of their ids
     */
    public List<SpreaderType> all() {
        List<SpreaderType> all = new ArrayList<>(conveyors.values());
        all.addAll(gates.values());
        all.addAll(pumps.values());
        all.addAll(flowMeters.values());
        return Collections.unmodifiableList(all);
    }

    /**
     * The types that were offered and left out: those that could not be loaded or made, that threw when asked about
     * themselves, have an id that is taken, ask for another SPI level or describe parameters that can't be.
     *
     * @return provider and reason, in the order in which they were met
     */
    public List<RejectedType> rejected() {
        return rejected;
    }
}
