package org.gritwright.core;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Serializable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.spi.Spi;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Nothing of the public API changes unnoticed. */
@Tag("locale")
class PublicApiTest {
    private static final Path AGREED = Path.of("src", "test", "resources", "public-api.txt");
    private static final Path FOUND = Path.of("target", "public-api.txt");

    private static final String HEADER =
            "# The public API of both libraries, as PublicApiTest prints it. A deliberate change is made by copying"
                    + " calc-core/target/public-api.txt here and noting it under \"Versions\" in DEVELOPERS.md.";

    private static List<String> found() {
        return PublicApi.ofModulesOf(Amounts.class, Spi.class);
    }

    @Test
    void thePublicApiIsTheOneThatWasAgreedOn() throws IOException {
        List<String> found = found();
        Files.createDirectories(FOUND.getParent());
        Files.write(FOUND, Stream.concat(Stream.of(HEADER), found.stream()).collect(Collectors.toList()), UTF_8);
        List<String> agreed = Files.readAllLines(AGREED, UTF_8).stream()
                .filter(line -> !line.startsWith("#"))
                .toList();

        assertThat(PublicApi.difference(agreed, found))
                .as("The public API has changed. If that is meant, copy calc-core/target/public-api.txt over"
                        + " calc-core/src/test/resources/public-api.txt and note it under \"Versions\" in"
                        + " DEVELOPERS.md.")
                .isEmpty();
        assertThat(agreed).as("the order").isEqualTo(found);
    }

    @Test
    void theExportedPackagesArePrintedAndNoOther() {
        assertThat(found().stream()
                        .map(line -> line.substring(0, line.indexOf(": ")))
                        .map(name -> name.replaceAll("\\.[A-Z].*", ""))
                        .distinct())
                .containsExactlyInAnyOrder(
                        "org.gritwright.core.balance",
                        "org.gritwright.core.blend",
                        "org.gritwright.core.boom",
                        "org.gritwright.core.calibration",
                        "org.gritwright.core.chart",
                        "org.gritwright.core.conformance",
                        "org.gritwright.core.control",
                        "org.gritwright.core.curve",
                        "org.gritwright.core.document",
                        "org.gritwright.core.envelope",
                        "org.gritwright.core.finding",
                        "org.gritwright.core.fleet.assessment",
                        "org.gritwright.core.fleet.day",
                        "org.gritwright.core.fleet.plan",
                        "org.gritwright.core.history",
                        "org.gritwright.core.history.drift",
                        "org.gritwright.core.history.due",
                        "org.gritwright.core.history.fleet",
                        "org.gritwright.core.judgement",
                        "org.gritwright.core.lateral",
                        "org.gritwright.core.metering",
                        "org.gritwright.core.observation",
                        "org.gritwright.core.planning",
                        "org.gritwright.core.plausibility",
                        "org.gritwright.core.range",
                        "org.gritwright.core.record",
                        "org.gritwright.core.roadspeed",
                        "org.gritwright.core.season",
                        "org.gritwright.core.solution",
                        "org.gritwright.core.spi",
                        "org.gritwright.core.statistics",
                        "org.gritwright.core.telemetry",
                        "org.gritwright.core.uncertainty",
                        "org.gritwright.core.verification",
                        "org.gritwright.core.weighing",
                        "org.gritwright.units",
                        "org.gritwright.units.quantity",
                        "org.gritwright.units.rate");
    }

    @Test
    void whatIsNotPublicIsNotPrinted() {
        assertThat(found())
                .noneMatch(line -> line.startsWith("org.gritwright.core.spi.TypeCheck"))
                .noneMatch(line -> line.contains("lambda$"))
                .noneMatch(line -> line.contains("jacoco"))
                .doesNotHaveDuplicates();
    }

    @Test
    void printsTheConstantsOfTheInterfaceWithTheirValues() {
        assertThat(PublicApi.of(Spi.class))
                .containsExactly(
                        "org.gritwright.core.spi.Spi: public final class",
                        "org.gritwright.core.spi.Spi: public static final int LEVEL = 1",
                        "org.gritwright.core.spi.Spi: public static final int MOST_PARAMETERS = 1000");
    }

    /** One of everything. */
    @SuppressWarnings("unused") // reflection uses it
    static final class OneOfEach {
        private OneOfEach() {}

        abstract static class Hidden {
            public void inherited() {}

            void stillHidden() {}
        }

        @Deprecated
        public abstract static class Open<T extends Number & Comparable<T>> extends Hidden
                implements Serializable, Comparable<Open<T>> {
            private static final long serialVersionUID = 1L;
            public static final double HALF = 0.5;
            public static final String TEXT = "a text";
            public static final Map<String, ? super Integer> NO_CONSTANT = Map.of();
            protected int count;
            int hidden;

            protected Open(T[] values) throws IOException {}

            Open(int hidden) {}

            @SafeVarargs
            public static <A, B extends A> List<? extends A> of(Class<?> type, B... values)
                    throws InterruptedException, IOException {
                return List.of();
            }

            protected abstract int[][] table();

            final int hidden() {
                Comparator<Integer> lambda = (a, b) -> a - b;
                return lambda.compare(1, hidden);
            }

            @Override
            public int compareTo(Open<T> other) {
                return 0;
            }
        }

        public sealed interface Shape<Q> extends Collection<Q> permits Round, Square {
            int CORNERS = 4;

            double area();

            default Shape<Q> twice() {
                return this;
            }

            static <Q> Shape<Q> none() {
                return null;
            }
        }

        public non-sealed interface Round<Q> extends Shape<Q> {}

        public abstract static non-sealed class Square<Q> implements Shape<Q> {}

        public record Pair<A>(A first, List<? extends A> second) implements Serializable {
            public Pair(A only) {
                this(only, List.of());
            }

            public int sum() {
                return 0;
            }
        }

        public enum Side implements Serializable {
            RIGHT,
            @Deprecated
            LEFT {
                @Override
                public Side other() {
                    return RIGHT;
                }
            };

            public Side other() {
                return LEFT;
            }
        }

        @FunctionalInterface
        public interface Ask {
            char ask(long question);
        }
    }

    private static List<String> printed(Class<?> type) {
        return PublicApi.of(type).stream()
                .map(line -> line.substring(line.indexOf(": ") + 2))
                .map(line -> line.replace("org.gritwright.core.PublicApiTest.OneOfEach.", ""))
                .toList();
    }

    @Test
    void aClassWithItsMembers() {
        assertThat(printed(OneOfEach.Open.class))
                .containsExactly(
                        "@Deprecated public abstract static class<T extends Number & Comparable<T>> extends Hidden"
                                + " implements Comparable<Open<T>>, java.io.Serializable",
                        "protected int count",
                        "public static final String TEXT = \"a text\"",
                        "public static final double HALF = 0x1.0p-1",
                        "public static final java.util.Map<String, ? super Integer> NO_CONSTANT",
                        "protected Open(T[]) throws java.io.IOException",
                        "protected abstract int[][] table()",
                        "public int compareTo(Open<T>)",
                        "public static <A, B extends A> java.util.List<? extends A> of(Class<?>, B...) throws"
                                + " InterruptedException, java.io.IOException",
                        "public void inherited()");
    }

    @Test
    void aSealedInterfaceAndWhoOpensItAgain() {
        assertThat(printed(OneOfEach.Shape.class))
                .containsExactly(
                        "public sealed interface<Q> extends java.util.Collection<Q> permits Round, Square",
                        "public static final int CORNERS = 4",
                        "abstract double area()",
                        "default Shape<Q> twice()",
                        "static <Q> Shape<Q> none()");
        // What it inherits from a type that the public can't name is its own to the public.
        assertThat(printed(OneOfEach.Round.class))
                .containsExactly(
                        "public non-sealed interface<Q> extends Shape<Q>",
                        "public static final int CORNERS = 4",
                        "abstract double area()",
                        "default Shape<Q> twice()",
                        "static <Q> Shape<Q> none()");
        assertThat(printed(OneOfEach.Square.class).get(0))
                .isEqualTo("public abstract static non-sealed class<Q> implements Shape<Q>");
    }

    @Test
    void aRecordIsItsComponentsAndWhatIsAdded() {
        assertThat(printed(OneOfEach.Pair.class))
                .containsExactly(
                        "public record<A>(A first, java.util.List<? extends A> second) implements java.io.Serializable",
                        "public Pair(A)",
                        "public int sum()");
    }

    @Test
    void anEnumIsItsConstantsAndWhatIsAdded() {
        assertThat(printed(OneOfEach.Side.class))
                .containsExactly(
                        "public enum implements java.io.Serializable",
                        "@Deprecated constant LEFT",
                        "constant RIGHT",
                        "public Side other()");
    }

    @Test
    void aFunctionalInterfaceIsMarked() {
        assertThat(printed(OneOfEach.Ask.class))
                .containsExactly("@FunctionalInterface public interface", "abstract char ask(long)");
    }

    /** Two states of one type. */
    @SuppressWarnings("unused") // reflection uses it
    static final class Changes {
        private Changes() {}

        public static final class Before {
            public int teeth() {
                return 6;
            }

            public void same() {}
        }

        public static final class After {
            public long teeth() {
                return 6;
            }

            public void same() {}
        }
    }

    @Test
    void aChangedMethodShowsAsOneAddedAndOneRemoved() {
        String before = Changes.Before.class.getCanonicalName();
        List<String> agreed = PublicApi.of(Changes.Before.class);
        List<String> found = PublicApi.of(Changes.After.class).stream()
                .map(line -> line.replace(Changes.After.class.getCanonicalName(), before)
                        .replace("After()", "Before()"))
                .toList();

        assertThat(PublicApi.difference(agreed, found))
                .isEqualTo("added:\n  " + before + ": public long teeth()\nremoved:\n  " + before
                        + ": public int teeth()");
        assertThat(PublicApi.difference(agreed, agreed)).isEmpty();
        assertThat(PublicApi.difference(List.of(), List.of("a"))).isEqualTo("added:\n  a");
        assertThat(PublicApi.difference(List.of("a"), List.of())).isEqualTo("removed:\n  a");
    }
}
