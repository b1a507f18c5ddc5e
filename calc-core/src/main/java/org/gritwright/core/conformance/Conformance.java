package org.gritwright.core.conformance;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.PumpType;

/**
 * Checks a type of conveyor, gate, pump or flow meter against the laws. In a test of any framework it is one line: assert that the list is
 * empty.
 *
 * <p>The type is tried with values made from what it declares ({@link TrialParameters}), and with the examples given.
 * What it throws becomes a violation, never an exception of the check; only an {@link OutOfMemoryError} passes. Only
 * the first violation of each law is reported. {@link Law#JSON_ROUND_TRIP} is checked separately, where documents are
 * known.
 */
public final class Conformance {

    private Conformance() {}

    /**
     * Checks a conveyor type.
     *
     * @param type the type
     * @return what it violates; empty if it obeys every law but the one of documents, which isn't checked here
     */
    public static List<Violation> check(ConveyorType type) {
        return check(type, List.of());
    }

    /**
     * Checks a conveyor type, with examples for a type whose values from the middle of each range don't go together.
     *
     * @param type the type
     * @param examples further sets of parameters by name, which the type must accept
     * @return what it violates; empty if it obeys every law but the one of documents, which isn't checked here
     */
    public static List<Violation> check(ConveyorType type, List<? extends Map<String, ?>> examples) {
        return new Trial<>(type, Answers::of, Objects.requireNonNull(examples, "examples")).violations();
    }

    /**
     * Checks a gate type.
     *
     * @param type the type
     * @return what it violates; empty if it obeys every law but the one of documents, which isn't checked here
     */
    public static List<Violation> check(GateType type) {
        return check(type, List.of());
    }

    /**
     * Checks a gate type, with examples for a type whose values from the middle of each range don't go together.
     *
     * @param type the type
     * @param examples further sets of parameters by name, which the type must accept
     * @return what it violates; empty if it obeys every law but the one of documents, which isn't checked here
     */
    public static List<Violation> check(GateType type, List<? extends Map<String, ?>> examples) {
        return new Trial<>(type, Answers::of, Objects.requireNonNull(examples, "examples")).violations();
    }

    /**
     * Checks a pump type.
     *
     * @param type the type
     * @return what it violates; empty if it obeys every law but the one of documents, which isn't checked here
     */
    public static List<Violation> check(PumpType type) {
        return check(type, List.of());
    }

    /**
     * Checks a pump type, with examples for a type whose values from the middle of each range don't go together.
     *
     * @param type the type
     * @param examples further sets of parameters by name, which the type must accept
     * @return what it violates; empty if it obeys every law but the one of documents, which isn't checked here
     */
    public static List<Violation> check(PumpType type, List<? extends Map<String, ?>> examples) {
        return new Trial<>(type, Answers::of, Objects.requireNonNull(examples, "examples")).violations();
    }

    /**
     * Checks a flow-meter type.
     *
     * @param type the type
     * @return what it violates; empty if it obeys every law but the one of documents, which isn't checked here
     */
    public static List<Violation> check(FlowMeterType type) {
        return check(type, List.of());
    }

    /**
     * Checks a flow-meter type, with examples for a type whose values from the middle of each range don't go together.
     *
     * @param type the type
     * @param examples further sets of parameters by name, which the type must accept
     * @return what it violates; empty if it obeys every law but the one of documents, which isn't checked here
     */
    public static List<Violation> check(FlowMeterType type, List<? extends Map<String, ?>> examples) {
        return new Trial<>(type, Answers::of, Objects.requireNonNull(examples, "examples")).violations();
    }
}
