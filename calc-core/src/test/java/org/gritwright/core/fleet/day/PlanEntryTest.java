package org.gritwright.core.fleet.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.HOUR;
import static org.gritwright.units.SpreadingUnits.MILE_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.MINUTE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.POUND;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;
import static org.gritwright.units.SpreadingUnits.REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.SECOND;
import static org.gritwright.units.SpreadingUnits.US_GALLON;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_MILE;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_SHORT_TON;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.planning.Containers;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a day can't be planned for is refused by its name. */
class PlanEntryTest {
    private static final PlanEntry GOOD = PlanEntry.of(
            Amounts.of(2, PERCENT),
            List.of(Amounts.of(300, POUND_PER_MILE)),
            List.of(Amounts.of(25, MILE_PER_HOUR)),
            List.of(method("pails", 4, 0)));

    private static WeighingMethodEntry method(String name, int containers, double dailyHours) {
        StepTimes each = new StepTimes(minutes(20), minutes(5), minutes(3), minutes(6), minutes(10));
        StepTimes times = new StepTimes(
                each.setUp(),
                each.perCatch(),
                each.perContainer(),
                each.perVerification(),
                each.cleanUp(),
                Optional.of(Amounts.of(dailyHours, HOUR)),
                Optional.empty());
        return new WeighingMethodEntry(
                name,
                "platform",
                new Containers(containers, Amounts.of(60, POUND), Amounts.of(4, POUND)),
                Optional.empty(),
                times);
    }

    private static Quantity<Time> minutes(double minutes) {
        return Amounts.of(minutes, MINUTE);
    }

    /** The good one with other values of some components. */
    private static PlanEntry with(Map<String, ?> changed) {
        RecordComponent[] components = PlanEntry.class.getRecordComponents();
        assertThat(components).extracting(RecordComponent::getName).containsAll(changed.keySet());
        try {
            Object[] values = new Object[components.length];
            for (int i = 0; i < values.length; i++) {
                String name = components[i].getName();
                values[i] = changed.containsKey(name)
                        ? changed.get(name)
                        : components[i].getAccessor().invoke(GOOD);
            }
            return PlanEntry.class
                    .getDeclaredConstructor(Arrays.stream(components)
                            .map(RecordComponent::getType)
                            .toArray(Class<?>[]::new))
                    .newInstance(values);
        } catch (InvocationTargetException e) {
            throw (RuntimeException) e.getCause();
        } catch (ReflectiveOperationException e) {
            throw new LinkageError(e.getMessage(), e);
        }
    }

    private static Map<String, Object> and(String name, Object value, Map<String, Object> others) {
        Map<String, Object> all = new TreeMap<>(others);
        all.put(name, value);
        return all;
    }

    private static Arguments refused(String field, String component, Object value) {
        return Arguments.of(field, Map.of(component, value));
    }

    static Stream<Arguments> whatIsRefused() {
        var rest = Amounts.of(0, REVOLUTION_PER_MINUTE);
        return Stream.of(
                refused("wanted uncertainty", "wantedUncertainty", Amounts.of(0, PERCENT)),
                refused(
                        "wanted uncertainty of a verification",
                        "wantedVerificationUncertainty",
                        Optional.of(Amounts.of(0, PERCENT))),
                refused("fewest repeats", "fewestRepeats", Optional.of(0)),
                refused("fewest repeats", "fewestRepeats", Optional.of(1001)),
                refused("most repeats", "mostRepeats", Optional.of(0)),
                Arguments.of("most repeats", Map.of("fewestRepeats", Optional.of(4), "mostRepeats", Optional.of(3))),
                refused("shaft speed", "shaftSpeed", Optional.of(rest)),
                refused("steady shaft speeds", "lowestShaftSpeed", Optional.of(rest)),
                refused("steady shaft speeds", "highestShaftSpeed", Optional.of(rest)),
                Arguments.of(
                        "highest steady shaft speed",
                        Map.of(
                                "lowestShaftSpeed", Optional.of(Amounts.of(20, REVOLUTION_PER_MINUTE)),
                                "highestShaftSpeed", Optional.of(Amounts.of(10, REVOLUTION_PER_MINUTE)))),
                refused("time constant of the start", "startTimeConstant", Optional.of(Amounts.of(-1, SECOND))),
                refused("part lost by the start", "greatestStartLoss", Optional.of(Amounts.of(2, PERCENT))),
                Arguments.of(
                        "part lost by the start",
                        Map.of(
                                "startTimeConstant", Optional.of(Amounts.of(1, SECOND)),
                                "greatestStartLoss", Optional.of(Amounts.of(0, PERCENT)))),
                refused("uncertainty of the count", "countUncertainty", Optional.of(Amounts.of(-1, REVOLUTION))),
                refused("crews", "crews", Optional.of(0)),
                refused("crews", "crews", Optional.of(101)),
                refused("working day", "workingDay", Optional.of(Amounts.of(0, HOUR))),
                refused("target rate", "targetRates", List.of(Amounts.of(0, POUND_PER_MILE))),
                refused("test speed", "testSpeeds", List.of(Amounts.of(0, MILE_PER_HOUR))),
                refused("target rate of a liquid", "liquidRates", List.of(Amounts.of(0, US_GALLON_PER_MILE))),
                refused("prewet rate", "prewetRates", List.of(Amounts.of(0, US_GALLON_PER_SHORT_TON))),
                Arguments.of(
                        "prewet rates",
                        Map.of(
                                "prewetRates", List.of(Amounts.of(10, US_GALLON_PER_SHORT_TON)),
                                "targetRates", List.of(),
                                "liquidRates", List.of(Amounts.of(40, US_GALLON_PER_MILE)))),
                refused("verification catches", "targetRates", List.of()),
                refused("verification catches", "testSpeeds", List.of()),
                refused("weighing methods", "weighingMethods", List.of()),
                refused("weighing method", "weighingMethods", List.of(method("a", 1, 0), method("a", 2, 0))),
                refused(
                        "yard's daily set-up and clean-up of weighing method a",
                        "weighingMethods",
                        List.of(method("a", 1, 8))));
    }

    @ParameterizedTest
    @MethodSource("whatIsRefused")
    void whatNobodyCanPlanForIsRefusedByItsName(String field, Map<String, Object> changed) {
        InvalidInputException refused = catchThrowableOfType(InvalidInputException.class, () -> with(changed));

        assertThat(refused).as("%s", changed).isNotNull();
        assertThat(refused.field()).isEqualTo(field);
    }

    static Stream<Map<String, Object>> whatIsTaken() {
        return Stream.of(
                Map.of("fewestRepeats", Optional.of(1), "mostRepeats", Optional.of(1)),
                Map.of("fewestRepeats", Optional.of(1000)),
                Map.of("mostRepeats", Optional.of(1000)),
                Map.of("crews", Optional.of(1)),
                Map.of("crews", Optional.of(100)),
                Map.of("targetRates", List.of(), "testSpeeds", List.of()),
                Map.of("targetRates", List.of(), "liquidRates", List.of(Amounts.of(40, US_GALLON_PER_MILE))),
                Map.of("prewetRates", List.of(Amounts.of(10, US_GALLON_PER_SHORT_TON))),
                Map.of("weighingMethods", List.of(method("a", 1, 7.99))),
                Map.of("weighingMethods", List.of(method("a", 1, 9)), "workingDay", Optional.of(Amounts.of(10, HOUR))));
    }

    @ParameterizedTest
    @MethodSource("whatIsTaken")
    void whatIsJustPossibleIsPlannedFor(Map<String, Object> changed) {
        assertThatCode(() -> with(changed)).doesNotThrowAnyException();
    }

    @Test
    void aThousandRunsArePlannedAndNoMore() {
        Map<String, Object> tenByTen = Map.of(
                "targetRates", Collections.nCopies(10, Amounts.of(300, POUND_PER_MILE)),
                "testSpeeds", Collections.nCopies(10, Amounts.of(25, MILE_PER_HOUR)));
        List<WeighingMethodEntry> ten = IntStream.range(0, 10)
                .mapToObj(i -> method("method " + i, 1, 0))
                .toList();
        Map<String, Object> most = and("weighingMethods", ten, tenByTen);
        assertThatCode(() -> with(most)).doesNotThrowAnyException();

        assertRuns(1100, and("targetRates", Collections.nCopies(11, Amounts.of(300, POUND_PER_MILE)), most));
        assertRuns(1100, and("testSpeeds", Collections.nCopies(11, Amounts.of(25, MILE_PER_HOUR)), most));
        // Each rate of the grains with each of what wets them.
        assertRuns(2000, and("prewetRates", Collections.nCopies(2, Amounts.of(10, US_GALLON_PER_SHORT_TON)), most));
        assertRuns(1100, and("liquidRates", Collections.nCopies(11, Amounts.of(40, US_GALLON_PER_MILE)), most));
    }

    private static void assertRuns(int runs, Map<String, Object> changed) {
        InvalidInputException refused = catchThrowableOfType(InvalidInputException.class, () -> with(changed));
        assertThat(refused.field()).isEqualTo("target rates × test speeds × weighing methods");
        assertThat(refused.value()).isEqualTo(String.valueOf(runs));
    }

    @Test
    void tenThousandContainersAreWeighedAndNoMore() {
        assertThatCode(() ->
                        with(Map.of("weighingMethods", List.of(method("a", 1000, 0)), "mostRepeats", Optional.of(10))))
                .doesNotThrowAnyException();
        InvalidInputException refused = catchThrowableOfType(
                InvalidInputException.class,
                () -> with(Map.of("weighingMethods", List.of(method("a", 1000, 0)), "mostRepeats", Optional.of(11))));
        assertThat(refused.field()).isEqualTo("repeats × containers of weighing method a");
        assertThat(refused.value()).isEqualTo("11000");
    }

    @Test
    void aReadingMethodHasAFillOrMore() {
        Quantity<Time> none = minutes(0);
        StepTimes times = new StepTimes(none, none, none, none, none);
        var gallons = Amounts.of(5, US_GALLON);

        assertThat(new ReadingMethodEntry("pail", "M", 3, gallons, times).mostContainers())
                .isEqualTo(3);
        assertRefused(
                "fills of reading method pail must be 1 or more: 0",
                () -> new ReadingMethodEntry("pail", "M", 0, gallons, times));
    }
}
