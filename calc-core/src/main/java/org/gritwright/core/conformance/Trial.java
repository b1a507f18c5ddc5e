package org.gritwright.core.conformance;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.ObjectStreamClass;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SpreaderType;
import org.gritwright.units.InvalidInputException;

/** One type before the laws. */
final class Trial {
    private static final double SAME = 1e-9;
    private static final double ROUNDING = 1e-12;
    private static final int ASKED_IN_PARALLEL = 256;

    private final SpreaderType type;
    private final Function<Parameters, Answer> ask;
    private final List<? extends Map<String, ?>> examples;
    private final List<Violation> violations = new ArrayList<>();

    Trial(SpreaderType type, Function<Parameters, Answer> ask, List<? extends Map<String, ?>> examples) {
        this.type = Objects.requireNonNull(type, "type");
        this.ask = ask;
        this.examples = examples;
    }

    List<Violation> violations() {
        identity();
        if (type instanceof ConveyorType conveyor) {
            fill(conveyor);
        }
        Optional<List<Parameter<?>>> declared = parameters();
        declared.ifPresent(this::answers);
        return List.copyOf(violations);
    }

    private void violated(Law law, String how) {
        Violation violation = new Violation(law, how);
        if (violations.stream().noneMatch(v -> v.law() == law)) {
            violations.add(violation);
        }
    }

    /** What a type throws is an answer too. */
    private <T> Optional<T> asked(Law law, String what, Callable<T> question) {
        try {
            T answer = question.call();
            if (answer == null) {
                violated(law, what + " is null");
            }
            return Optional.ofNullable(answer);
        } catch (Exception | LinkageError | AssertionError | StackOverflowError e) {
            violated(law, what + " throws " + e);
            return Optional.empty();
        }
    }

    private void identity() {
        asked(Law.STABLE_IDENTITY, "id()", type::id).ifPresent(id -> {
            if (!asked(Law.STABLE_IDENTITY, "id()", type::id).equals(Optional.of(id))) {
                violated(Law.STABLE_IDENTITY, "id() is not " + id + " when asked again");
            }
        });
        asked(Law.STABLE_IDENTITY, "spiLevel()", type::spiLevel).ifPresent(level -> {
            if (level < 1 || level > Spi.LEVEL || level != type.spiLevel()) {
                violated(
                        Law.STABLE_IDENTITY,
                        "spiLevel() is " + level + ", accepted is 1 to " + Spi.LEVEL + ", the same when asked again");
            }
        });
    }

    private void fill(ConveyorType conveyor) {
        asked(Law.PLAUSIBLE_FILL, "fillLimits()", conveyor::fillLimits).ifPresent(limits -> {
            if (!limits.equals(conveyor.fillLimits())) {
                violated(Law.PLAUSIBLE_FILL, "fillLimits() is not " + limits + " when asked again");
            }
        });
    }

    private Optional<List<Parameter<?>>> parameters() {
        Optional<List<Parameter<?>>> declared = asked(Law.DESCRIBED_PARAMETERS, "parameters()", type::parameters);
        if (declared.isEmpty()) {
            return declared;
        }
        Set<String> names = new HashSet<>();
        for (Parameter<?> parameter : declared.get()) {
            if (parameter == null) {
                violated(Law.DESCRIBED_PARAMETERS, "parameters() has a null in it");
                return Optional.empty();
            }
            if (!names.add(parameter.name())) {
                violated(Law.DESCRIBED_PARAMETERS, "parameters() has \"" + parameter.name() + "\" twice");
                return Optional.empty();
            }
        }
        List<String> described = describe(declared.get());
        List<Parameter<?>> again = asked(Law.DESCRIBED_PARAMETERS, "parameters()", type::parameters)
                .orElse(List.of());
        if (!described.equals(describe(again))) {
            violated(Law.DESCRIBED_PARAMETERS, "parameters() is not " + described + " when asked again");
            return Optional.empty();
        }
        return declared;
    }

    private static List<String> describe(List<Parameter<?>> parameters) {
        return parameters.stream()
                .map(p -> p.name() + " from " + p.lowest() + " to " + p.highest() + ", " + p.isWhole() + ", "
                        + p.standard() + ", " + p.fewest() + " to " + p.most())
                .toList();
    }

    private void answers(List<Parameter<?>> declared) {
        List<Map<String, Object>> sets = new ArrayList<>(TrialParameters.of(declared));
        int made = sets.size();
        examples.forEach(example -> sets.add(new LinkedHashMap<>(example)));
        Map<Map<String, Object>, Answer> accepted = new LinkedHashMap<>();
        for (int i = 0; i < sets.size(); i++) {
            Map<String, Object> set = sets.get(i);
            boolean mustBeAccepted = i >= made;
            answer(declared, set, mustBeAccepted).ifPresent(answer -> accepted.put(set, answer));
        }
        if (accepted.isEmpty()) {
            violated(
                    Law.DESCRIBED_PARAMETERS,
                    "no trial values are accepted, " + sets.get(0) + " among them; give examples that are");
        }
        accepted.forEach((set, answer) -> {
            values(set, answer);
            unitInvariance(declared, set, answer);
            serialization(set, answer);
            limits(declared, set);
        });
        determinism(declared, accepted);
    }

    private Optional<Answer> answer(List<Parameter<?>> declared, Map<String, Object> set, boolean mustBeAccepted) {
        try {
            Answer answer = ask.apply(Parameters.of(declared, set));
            if (answer.function() == null) {
                violated(Law.NAMED_REFUSALS, "no answer to " + set);
                return Optional.empty();
            }
            answer.values();
            return Optional.of(answer);
        } catch (InvalidInputException e) {
            if (mustBeAccepted) {
                violated(Law.DESCRIBED_PARAMETERS, "the example " + set + " is refused: " + e.getMessage());
            }
            return Optional.empty();
        } catch (RuntimeException | LinkageError | AssertionError | StackOverflowError e) {
            violated(Law.NAMED_REFUSALS, e + " for " + set);
            return Optional.empty();
        }
    }

    private void values(Map<String, Object> set, Answer answer) {
        double[] values = answer.values();
        double last = values[values.length - 1];
        for (int i = 0; i < values.length; i++) {
            String here = values[i] + " at " + answer.point(i) + ", with " + set;
            if (!Double.isFinite(values[i])) {
                violated(Law.FINITE, here);
            } else if (values[i] < 0) {
                violated(Law.NOT_NEGATIVE, here);
            }
            if (i > 0 && values[i] < values[i - 1] - ROUNDING * Math.abs(values[i - 1])) {
                violated(Law.RISING, here + ", after " + values[i - 1]);
            }
            if (type instanceof ConveyorType conveyor && !conveyor.meteredByGate() && values[i] != values[0]) {
                violated(Law.RISING, here + ", though no gate meters the conveyor");
            }
            if (i < answer.closedPoints() && values[i] != 0) {
                violated(Law.CLOSED_IS_ZERO, here);
            }
        }
        if (last == 0 && values.length > 1) {
            violated(Law.NOT_NEGATIVE, "nothing even at " + answer.point(values.length - 1) + ", with " + set);
        }
    }

    private void unitInvariance(List<Parameter<?>> declared, Map<String, Object> set, Answer answer) {
        Map<String, Object> others = TrialParameters.inOtherUnits(declared, set);
        asked(
                        Law.UNIT_INVARIANT,
                        "the same in other units, " + others + ",",
                        () -> ask.apply(Parameters.of(declared, others)).values())
                .ifPresent(values -> {
                    double[] before = answer.values();
                    boolean same = values.length == before.length
                            && IntStream.range(0, values.length)
                                    .allMatch(i -> !Double.isFinite(before[i])
                                            || Math.abs(values[i] - before[i]) <= SAME * largest(before));
                    if (!same) {
                        violated(
                                Law.UNIT_INVARIANT,
                                Arrays.toString(values) + " with " + others + ", but " + Arrays.toString(before)
                                        + " with " + set);
                    }
                });
    }

    private static double largest(double[] values) {
        return Arrays.stream(values)
                .filter(Double::isFinite)
                .map(Math::abs)
                .max()
                .orElse(0);
    }

    private void serialization(Map<String, Object> set, Answer answer) {
        asked(Law.SERIALIZABLE, "the function for " + set, () -> copy(answer.function()))
                .ifPresent(copy -> {
                    if (!Arrays.equals(answer.values(), answer.valuesOf(copy))) {
                        violated(Law.SERIALIZABLE, "the function for " + set + " answers otherwise afterwards");
                    }
                });
    }

    private Serializable copy(Serializable function) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(function);
        }
        ClassLoader loader = type.getClass().getClassLoader();
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray())) {
            @Override
            protected Class<?> resolveClass(ObjectStreamClass wanted) throws IOException, ClassNotFoundException {
                try {
                    return Class.forName(wanted.getName(), false, loader);
                } catch (ClassNotFoundException e) {
                    return super.resolveClass(wanted);
                }
            }
        }) {
            return (Serializable) in.readObject();
        }
    }

    /** Values past the limits, slipped past the declaration: what reads them with the declared parameters refuses. */
    private void limits(List<Parameter<?>> declared, Map<String, Object> set) {
        List<Parameter<?>> wide = new ArrayList<>();
        declared.forEach(parameter -> wide.add(TrialParameters.widened(parameter)));
        for (Parameter<?> parameter : declared) {
            for (Quantity<?> value : TrialParameters.past(parameter)) {
                Map<String, Object> past = new LinkedHashMap<>(set);
                declared.forEach(
                        p -> past.computeIfAbsent(p.name(), n -> p.standard().orElse(null)));
                past.computeIfPresent(
                        parameter.name(), (name, kept) -> kept instanceof List<?> list ? replaced(list, value) : value);
                refusal(Parameters.of(wide, past)).ifPresent(how -> violated(Law.ENFORCED_LIMITS, how + past));
            }
        }
    }

    /** Empty if the type refuses as it should; else what it does instead. */
    private Optional<String> refusal(Parameters past) {
        try {
            return Optional.of(ask.apply(past).function() == null ? "null for " : "an answer to ");
        } catch (InvalidInputException e) {
            return Optional.empty();
        } catch (RuntimeException | LinkageError | AssertionError | StackOverflowError e) {
            return Optional.of(e + " for ");
        }
    }

    private static List<Object> replaced(List<?> list, Object last) {
        List<Object> replaced = new ArrayList<>(list);
        replaced.set(replaced.size() - 1, last);
        return replaced;
    }

    /** Each function is asked again after all others were made and asked, once more afresh, and by many threads. */
    private void determinism(List<Parameter<?>> declared, Map<Map<String, Object>, Answer> accepted) {
        Map<Map<String, Object>, double[]> before = new LinkedHashMap<>();
        accepted.forEach((set, answer) -> before.put(set, answer.values()));
        accepted.forEach((set, answer) -> {
            double[] expected = before.get(set);
            String question = "the answer to " + set + ", asked again,";
            asked(Law.DETERMINISTIC, question, () -> {
                        boolean later = Arrays.equals(expected, answer.values());
                        boolean afresh = Arrays.equals(
                                expected,
                                ask.apply(Parameters.of(declared, set)).values());
                        return later
                                && afresh
                                && IntStream.range(0, ASKED_IN_PARALLEL)
                                        .parallel()
                                        .allMatch(i -> Arrays.equals(expected, answer.values()));
                    })
                    .filter(same -> !same)
                    .ifPresent(differs -> violated(
                            Law.DETERMINISTIC, question + " is not " + Arrays.toString(expected) + " any more"));
        });
    }
}
