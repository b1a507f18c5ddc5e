package org.gritwright.core.conformance;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.ObjectStreamClass;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BiFunction;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.RejectedType;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SpreaderType;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.jspecify.annotations.Nullable;

/** One type, tried against the laws. */
final class Trial<T extends SpreaderType> {
    private static final double SAME = 1e-9;
    private static final double ROUNDING = 1e-12;
    private static final int THREADS = 4;
    private static final int TIMES_IN_EACH_THREAD = 64;

    private final T type;
    private final BiFunction<T, Parameters, Answer> ask;
    private final List<? extends Map<String, ?>> examples;
    private final List<Violation> violations = new ArrayList<>();
    private String firstRefusal = "";

    Trial(T type, BiFunction<T, Parameters, Answer> ask, List<? extends Map<String, ?>> examples) {
        this.type = Objects.requireNonNull(type, "type");
        this.ask = ask;
        this.examples = examples;
    }

    /** A set of values that the type accepts, with what its function said the first time that it was asked. */
    private record Accepted(Map<String, Object> set, Answer answer, List<Double> values) {}

    List<Violation> violations() {
        identity();
        String fill = "fillLimits()";
        if (type instanceof ConveyorType conveyor) {
            askedTwice(Law.PLAUSIBLE_FILL, fill, conveyor::fillLimits);
        } else if (type instanceof PumpType pump) {
            askedTwice(Law.PLAUSIBLE_FILL, fill, pump::fillLimits);
        } else if (type instanceof FlowMeterType meter) {
            askedTwice(Law.PLAUSIBLE_FILL, fill, meter::fillLimits);
        }
        parameters().ifPresent(this::answers);
        return List.copyOf(violations);
    }

    private void violated(Law law, String how) {
        if (!isViolated(law)) {
            violations.add(new Violation(law, how));
        }
    }

    private boolean isViolated(Law law) {
        return violations.stream().anyMatch(v -> v.law() == law);
    }

    /** What a type throws is an answer too. */
    private <A> Optional<A> asked(Law law, String what, Callable<A> question) {
        try {
            A answer = question.call();
            if (answer == null) {
                violated(law, what + " is null");
            }
            return Optional.ofNullable(answer);
        } catch (Throwable thrown) {
            violated(law, what + " throws " + RejectedType.reason(thrown));
            return Optional.empty();
        }
    }

    /** Values in words that know no locale. */
    private static String text(Map<String, Object> set) {
        Map<String, String> texts = new TreeMap<>();
        set.forEach((name, value) -> texts.put(
                name,
                value instanceof List<?> list
                        ? list.stream().map(Trial::text).collect(Collectors.joining(", ", "[", "]"))
                        : text(value)));
        return texts.toString();
    }

    private static String text(Object value) {
        try {
            return value instanceof Quantity<?> quantity ? Amounts.format(quantity) : String.valueOf(value);
        } catch (RuntimeException e) {
            // Only an example can hold what has no text.
            return "a " + value.getClass().getName();
        }
    }

    private void identity() {
        askedTwice(Law.STABLE_IDENTITY, "id()", type::id);
        askedTwice(Law.STABLE_IDENTITY, "spiLevel()", type::spiLevel)
                .filter(level -> level < 1 || level > Spi.LEVEL)
                .ifPresent(level ->
                        violated(Law.STABLE_IDENTITY, "spiLevel() is " + level + ", accepted is 1 to " + Spi.LEVEL));
    }

    private <A> Optional<A> askedTwice(Law law, String what, Callable<A> question) {
        Optional<A> first = asked(law, what, question);
        first.ifPresent(answer -> asked(law, what, question)
                .filter(again -> !again.equals(answer))
                .ifPresent(again -> violated(law, what + " is " + answer + " and then " + again)));
        return first;
    }

    private Optional<List<Parameter<?>>> parameters() {
        return askedForParameters().filter(declared -> {
            Optional<List<Parameter<?>>> again = askedForParameters();
            return asked(
                            Law.DESCRIBED_PARAMETERS,
                            "parameters()",
                            () -> again.isPresent() && describe(declared).equals(describe(again.get())))
                    .filter(same -> {
                        if (!same) {
                            violated(Law.DESCRIBED_PARAMETERS, "parameters() is not the same when asked again");
                        }
                        return same;
                    })
                    .isPresent();
        });
    }

    /** A copy of the type's list, which may be a list of the type's own making, if nothing is wrong with it. */
    private Optional<List<Parameter<?>>> askedForParameters() {
        Optional<List<Parameter<?>>> declared = asked(Law.DESCRIBED_PARAMETERS, "parameters()", () -> {
            List<Parameter<?>> given = type.parameters();
            return given == null ? null : Require.noMoreThan(Spi.MOST_PARAMETERS, "parameters", given);
        });
        return declared.filter(list -> {
            Optional<String> wrong = wrongIn(list);
            wrong.ifPresent(what -> violated(Law.DESCRIBED_PARAMETERS, "parameters() has " + what));
            return wrong.isEmpty();
        });
    }

    private static Optional<String> wrongIn(List<Parameter<?>> declared) {
        Set<String> names = new HashSet<>();
        for (Parameter<?> parameter : declared) {
            if (parameter == null) {
                return Optional.of("a null in it");
            }
            if (!names.add(parameter.name())) {
                return Optional.of("\"" + parameter.name() + "\" twice");
            }
        }
        return Optional.empty();
    }

    private static List<String> describe(List<Parameter<?>> parameters) {
        return parameters.stream()
                .map(p -> p.name() + ", " + p.kind().getName() + " from " + text(p.lowest()) + " to "
                        + text(p.highest()) + ", " + p.isWhole() + ", "
                        + p.standard().map(Trial::text) + ", " + p.fewest() + " to " + p.most())
                .toList();
    }

    private void answers(List<Parameter<?>> declared) {
        List<Accepted> accepted = new ArrayList<>();
        List<Map<String, Object>> made = asked(
                        Law.DESCRIBED_PARAMETERS, "a set of trial values", () -> TrialParameters.of(declared))
                .orElse(List.of());
        for (Map<String, Object> set : made) {
            accept(declared, set, false).ifPresent(accepted::add);
        }
        for (Map<String, ?> example : examples) {
            accept(declared, new LinkedHashMap<>(example), true).ifPresent(accepted::add);
        }
        boolean isExplained = isViolated(Law.NAMED_REFUSALS)
                || isViolated(Law.SETTABLE_LIMITS)
                || isViolated(Law.DESCRIBED_PARAMETERS);
        if (accepted.isEmpty() && !isExplained) {
            violated(
                    Law.DESCRIBED_PARAMETERS,
                    "no trial values are accepted: " + firstRefusal
                            + "; give examples of values that go together, Conformance.check(type, examples)");
        }
        determinism(declared, accepted);
        boolean unmetered = type instanceof ConveyorType conveyor && !isMetered(conveyor);
        for (Accepted one : accepted) {
            values(one, unmetered);
            asked(Law.ENFORCED_LIMITS, "a value past its limits", () -> {
                limits(declared, one.set());
                return one;
            });
            // What is not the same when asked twice can't be compared with anything.
            if (!isViolated(Law.DETERMINISTIC)) {
                unitInvariance(declared, one);
                serialization(one);
            }
        }
    }

    private Optional<Accepted> accept(List<Parameter<?>> declared, Map<String, Object> set, boolean mustBeAccepted) {
        Answer answer;
        try {
            answer = ask.apply(type, Parameters.of(declared, set));
        } catch (InvalidInputException e) {
            String refusal = text(set) + " is refused: " + e.getMessage();
            if (mustBeAccepted) {
                violated(Law.DESCRIBED_PARAMETERS, "the example " + refusal);
            }
            firstRefusal = firstRefusal.isEmpty() ? refusal : firstRefusal;
            return Optional.empty();
        } catch (Throwable thrown) {
            violated(Law.NAMED_REFUSALS, RejectedType.reason(thrown) + " for " + text(set));
            return Optional.empty();
        }
        if (answer.given() == null) {
            violated(Law.NAMED_REFUSALS, "no answer to " + text(set));
            return Optional.empty();
        }
        String function = "the function for " + text(set);
        return asked(Law.NAMED_REFUSALS, function, answer::refusedLimit)
                .filter(refused -> {
                    refused.ifPresent(how -> violated(Law.SETTABLE_LIMITS, how + ", with " + text(set)));
                    return refused.isEmpty();
                })
                .flatMap(settable -> asked(Law.NAMED_REFUSALS, function, answer::values))
                .map(values -> new Accepted(set, answer, values));
    }

    private boolean isMetered(ConveyorType conveyor) {
        Optional<Boolean> metered = asked(Law.NAMED_REFUSALS, "meteredByGate()", conveyor::meteredByGate);
        Optional<Boolean> again = asked(Law.NAMED_REFUSALS, "meteredByGate()", conveyor::meteredByGate);
        if (!metered.equals(again)) {
            violated(Law.DETERMINISTIC, "meteredByGate() is not the same when asked again");
        }
        return metered.orElse(true);
    }

    private void values(Accepted accepted, boolean unmetered) {
        List<Double> values = accepted.values();
        Answer answer = accepted.answer();
        double largest = largest(values);
        boolean mustBePositive = type instanceof PumpType || type instanceof FlowMeterType;
        for (int i = 0; i < values.size(); i++) {
            double value = values.get(i);
            String here = answer.value(value) + " at " + answer.point(i) + ", with " + text(accepted.set());
            if (!Double.isFinite(value)) {
                violated(Law.FINITE, here);
                continue;
            }
            if (mustBePositive && value <= 0) {
                violated(Law.POSITIVE, here);
                continue;
            }
            if (value < 0) {
                violated(Law.NOT_NEGATIVE, here);
            }
            rises(accepted, i);
            if (unmetered && Math.abs(value - values.get(0)) > ROUNDING * largest) {
                violated(Law.RISING, here + ", though no gate meters the conveyor");
            }
            // A converted closed position is off by a rounding from the one that the function knows.
            if (i < answer.closedPoints() && Math.abs(value) > SAME * largest) {
                violated(Law.CLOSED_IS_ZERO, here);
            }
        }
        int last = values.size() - 1;
        if (!mustBePositive && values.get(last) == 0 && last > 0) {
            violated(Law.NOT_NEGATIVE, "nothing even at " + answer.point(last) + ", with " + text(accepted.set()));
        }
    }

    private void rises(Accepted accepted, int i) {
        Answer answer = accepted.answer();
        int previous = Math.max(0, i - 1);
        double before = answer.rising(previous, accepted.values().get(previous));
        double now = answer.rising(i, accepted.values().get(i));
        if (now < before - ROUNDING * Math.abs(before)) {
            violated(
                    Law.RISING,
                    answer.risingText(now) + " at " + answer.point(i) + ", after " + answer.risingText(before)
                            + ", with " + text(accepted.set()));
        }
    }

    private static double largest(List<Double> values) {
        return values.stream()
                .filter(Double::isFinite)
                .mapToDouble(Math::abs)
                .max()
                .orElse(0);
    }

    private void unitInvariance(List<Parameter<?>> declared, Accepted accepted) {
        asked(Law.UNIT_INVARIANT, "the answer to " + text(accepted.set()) + ", asked in other units,", () -> {
            Map<String, Object> others = TrialParameters.inOtherUnits(declared, accepted.set());
            Answer answer = ask.apply(type, Parameters.of(declared, others));
            difference(accepted, answer, answer.values())
                    .ifPresent(how -> violated(
                            Law.UNIT_INVARIANT,
                            how.now() + " with " + text(others) + ", but " + how.before() + " with "
                                    + text(accepted.set())));
            return answer;
        });
    }

    /** What an answer is now and what it was before, in words. */
    private record Difference(String before, String now) {}

    /** The first point or value that differs by more than rounding, which may fall to either side of a step. */
    private static Optional<Difference> difference(Accepted accepted, Answer answer, List<Double> values) {
        List<Double> points = answer.points();
        List<Double> expectedPoints = accepted.answer().points();
        double widest = SAME * largest(expectedPoints);
        boolean hasSamePoints = points.size() == expectedPoints.size()
                && IntStream.range(0, points.size())
                        .allMatch(i -> Math.abs(points.get(i) - expectedPoints.get(i)) <= widest);
        double nominal = accepted.answer().stated().nominal();
        boolean hasSameNominal = Math.abs(answer.stated().nominal() - nominal) <= SAME * nominal;
        return hasSamePoints && hasSameNominal
                ? difference(accepted, values, i -> isSame(accepted, i, values.get(i)))
                : Optional.of(ofWholes(accepted, answer));
    }

    /** The first value that is not the same, bit for bit. */
    private static Optional<Difference> difference(Accepted accepted, List<Double> values) {
        return difference(
                accepted, values, i -> values.get(i).equals(accepted.values().get(i)));
    }

    private static Optional<Difference> difference(Accepted accepted, List<Double> values, IntPredicate isSame) {
        Answer answer = accepted.answer();
        return IntStream.range(0, values.size())
                .filter(isSame.negate())
                .mapToObj(i -> new Difference(
                        answer.value(accepted.values().get(i)) + " at " + answer.point(i),
                        answer.value(values.get(i)) + " at " + answer.point(i)))
                .findFirst();
    }

    private static Difference ofWholes(Accepted accepted, Answer answer) {
        return new Difference(accepted.answer().whole(), answer.whole());
    }

    private static boolean isSame(Accepted accepted, int i, double value) {
        double expected = accepted.values().get(i);
        double tolerance = SAME * largest(accepted.values());
        double lowest = Math.min(expected, accepted.answer().beside(i, -SAME)) - tolerance;
        double highest = Math.max(expected, accepted.answer().beside(i, SAME)) + tolerance;
        return !Double.isFinite(expected) || (value >= lowest && value <= highest);
    }

    private void serialization(Accepted accepted) {
        String function = "the function for " + text(accepted.set()) + ", serialized,";
        asked(Law.SERIALIZABLE, function, () -> {
                    Serializable copy =
                            copy(Objects.requireNonNull(accepted.answer().given()));
                    return difference(accepted, accepted.answer().valuesOf(copy));
                })
                .ifPresent(difference -> difference.ifPresent(how ->
                        violated(Law.SERIALIZABLE, function + " answers " + how.now() + ", before " + how.before())));
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
        Map<String, Object> complete = new LinkedHashMap<>(set);
        declared.forEach(parameter ->
                parameter.standard().ifPresent(standard -> complete.putIfAbsent(parameter.name(), standard)));
        List<Parameter<?>> wide = new ArrayList<>();
        declared.forEach(parameter -> wide.add(TrialParameters.widened(parameter)));
        for (Parameter<?> parameter : declared) {
            for (Quantity<?> value : TrialParameters.past(parameter)) {
                for (Object replaced : replaced(complete.get(parameter.name()), value)) {
                    Map<String, Object> past = new LinkedHashMap<>(complete);
                    past.put(parameter.name(), replaced);
                    refusal(wide, past).ifPresent(how -> violated(Law.ENFORCED_LIMITS, how + text(past)));
                }
            }
        }
    }

    /** One value in place of another; in a list, in place of the first and of the last. */
    private static List<Object> replaced(@Nullable Object kept, Object value) {
        if (!(kept instanceof List<?> list)) {
            return List.of(value);
        }
        List<Object> first = new ArrayList<>(list);
        first.set(0, value);
        List<Object> last = new ArrayList<>(list);
        last.set(list.size() - 1, value);
        return List.of(first, last);
    }

    /** Empty if the type refuses as it should; else what it does instead. */
    private Optional<String> refusal(List<Parameter<?>> wide, Map<String, Object> past) {
        try {
            Answer answer = ask.apply(type, Parameters.of(wide, past));
            return Optional.of(answer.given() == null ? "null for " : "an answer to ");
        } catch (InvalidInputException e) {
            return Optional.empty();
        } catch (Throwable thrown) {
            return Optional.of(RejectedType.reason(thrown) + " for ");
        }
    }

    /**
     * Each function is asked again: after all others were made and asked, made once more, from another instance, and by
     * several threads.
     */
    private void determinism(List<Parameter<?>> declared, List<Accepted> accepted) {
        Optional<T> another = another();
        for (Accepted one : accepted) {
            String question = "the answer to " + text(one.set()) + ", asked again,";
            asked(
                            Law.DETERMINISTIC,
                            question,
                            () -> difference(one, one.answer().values())
                                    .or(() -> differenceOfAnother(declared, one, type))
                                    .or(() -> another.flatMap(other -> differenceOfAnother(declared, one, other))))
                    .ifPresent(difference -> difference.ifPresent(how ->
                            violated(Law.DETERMINISTIC, question + " is " + how.now() + ", before " + how.before())));
        }
        asked(Law.DETERMINISTIC, "a function, asked by several threads,", () -> isSameInThreads(accepted))
                .filter(same -> !same)
                .ifPresent(differs -> violated(
                        Law.DETERMINISTIC, "a function, asked by several threads, does not agree with itself"));
    }

    private Optional<Difference> differenceOfAnother(List<Parameter<?>> declared, Accepted accepted, T asked) {
        Answer answer = ask.apply(asked, Parameters.of(declared, accepted.set()));
        return answer.hasPointsOf(accepted.answer())
                ? difference(accepted, answer.values())
                : Optional.of(ofWholes(accepted, answer));
    }

    /** Another instance of the type, if anyone may make one and it has the same id. */
    private Optional<T> another() {
        try {
            @SuppressWarnings("unchecked") // the type's own class
            T another = (T) type.getClass().getConstructor().newInstance();
            return Optional.of(another).filter(other -> type.id().equals(other.id()));
        } catch (Throwable thrown) {
            if (thrown instanceof OutOfMemoryError outOfMemory) {
                throw outOfMemory;
            }
            // There is no such constructor, or it is not accessible. The other laws have seen what asking throws.
            return Optional.empty();
        }
    }

    private static boolean isSameInThreads(List<Accepted> accepted) throws Exception {
        Callable<Boolean> question = () -> IntStream.range(0, TIMES_IN_EACH_THREAD)
                .allMatch(i -> accepted.stream()
                        .allMatch(one -> one.values().equals(one.answer().values())));
        // Waiting may or may not notice an interruption; asking always does.
        if (Thread.currentThread().isInterrupted()) {
            throw new InterruptedException("the thread was interrupted");
        }
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        try {
            boolean isSame = true;
            for (Future<Boolean> same : threads.invokeAll(Collections.nCopies(THREADS, question))) {
                isSame &= same.get();
            }
            return isSame;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw e;
        } finally {
            threads.shutdownNow();
        }
    }
}
