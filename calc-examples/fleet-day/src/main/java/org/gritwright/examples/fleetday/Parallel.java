package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.IntStream;

/** What is done to each of many, on all processors; its results in the order of the many. */
final class Parallel {
    private Parallel() {}

    /** What is done to one. */
    @FunctionalInterface
    interface Step<T, R> {
        /** Does it to one, at its place among the many, from 0. */
        R apply(T one, int place) throws IOException;
    }

    /** @throws IOException if it was thrown of one; of several, any */
    static <T, R> List<R> each(List<T> many, Step<T, R> step) throws IOException {
        try {
            return IntStream.range(0, many.size())
                    .parallel()
                    .mapToObj(place -> {
                        try {
                            return step.apply(many.get(place), place);
                        } catch (IOException e) {
                            throw new UncheckedIOException(e);
                        }
                    })
                    .toList();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }
}
