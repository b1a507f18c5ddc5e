package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class MonotoneTableLawsTest {
    /** One observation. */
    record Point(int x, double y, double weight) {}

    @Provide
    Arbitrary<List<Point>> points() {
        return Combinators.combine(
                        Arbitraries.integers().between(1, 7),
                        Arbitraries.doubles().between(1, 100).ofScale(2),
                        Arbitraries.doubles().between(0.5, 4).ofScale(2))
                .as(Point::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(12);
    }

    private static MonotoneTable table(List<Point> points) {
        return MonotoneTable.fit(
                points.stream().mapToDouble(Point::x).toArray(),
                points.stream().mapToDouble(Point::y).toArray(),
                points.stream().mapToDouble(Point::weight).toArray());
    }

    @Property
    void neverFalls(
            @ForAll("points") List<Point> points,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double one,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double other) {
        MonotoneTable table = table(points);
        double width = table.highest() - table.lowest();
        double low = table.lowest() + Math.min(one, other) * width;
        double high = table.lowest() + Math.max(one, other) * width;

        assertThat(table.at(high)).isGreaterThanOrEqualTo(table.at(low) * (1 - 1e-15));
    }

    /** Another way to the same: each row is the largest, over starts, of the least, over ends, mean of what lies between. */
    @Property
    void everyRowIsTheGreatestLeastMeanAroundIt(@ForAll("points") List<Point> points) {
        TreeMap<Integer, double[]> sums = new TreeMap<>();
        for (Point point : points) {
            sums.merge(point.x, new double[] {point.weight, point.weight * point.y}, (a, b) ->
                    new double[] {a[0] + b[0], a[1] + b[1]});
        }
        MonotoneTable table = table(points);
        for (int row : sums.keySet()) {
            double greatest = Double.NEGATIVE_INFINITY;
            for (int start : sums.headMap(row, true).keySet()) {
                double least = Double.POSITIVE_INFINITY;
                for (int end : sums.tailMap(row, true).keySet()) {
                    double weight = 0;
                    double sum = 0;
                    for (double[] between : sums.subMap(start, true, end, true).values()) {
                        weight += between[0];
                        sum += between[1];
                    }
                    least = Math.min(least, sum / weight);
                }
                greatest = Math.max(greatest, least);
            }
            assertThat(table.at(row)).isCloseTo(greatest, within(1e-12 * greatest));
        }
    }

    @Property(tries = 300)
    void theOrderOfObservationsDoesNotMatter(@ForAll("points") List<Point> points, @ForAll long seed) {
        List<Point> shuffled = new ArrayList<>(points);
        Collections.shuffle(shuffled, new Random(seed));
        MonotoneTable expected = table(points);
        MonotoneTable actual = table(shuffled);

        assertThat(actual.degreesOfFreedom()).isEqualTo(expected.degreesOfFreedom());
        for (Point point : points) {
            assertThat(actual.at(point.x)).isCloseTo(expected.at(point.x), within(1e-12 * expected.at(point.x)));
            assertThat(actual.uncertaintyAt(point.x).orElse(-1))
                    .isCloseTo(expected.uncertaintyAt(point.x).orElse(-1), within(1e-12 * expected.at(point.x)));
        }
    }

    @Property(tries = 300)
    void aScaleOfYIsAScaleOfTheTableAndItsUncertainty(
            @ForAll("points") List<Point> points,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1000) double factor) {
        MonotoneTable table = table(points);
        MonotoneTable scaled = table(
                points.stream().map(p -> new Point(p.x, p.y * factor, p.weight)).toList());
        double middle = (table.lowest() + table.highest()) / 2;
        double allowed = 1e-12 * factor * table.at(middle);

        assertThat(scaled.at(middle)).isCloseTo(factor * table.at(middle), within(allowed));
        assertThat(scaled.uncertaintyAt(middle).isPresent())
                .isEqualTo(table.uncertaintyAt(middle).isPresent());
        assertThat(scaled.uncertaintyAt(middle).orElse(0))
                .isCloseTo(factor * table.uncertaintyAt(middle).orElse(0), within(allowed));
    }

    @Property(tries = 300)
    void theWeightedSumOfTheRowsIsThatOfTheObservations(@ForAll("points") List<Point> points) {
        MonotoneTable table = table(points);
        double ofRows =
                points.stream().mapToDouble(p -> p.weight * table.at(p.x)).sum();
        double ofObservations = points.stream().mapToDouble(p -> p.weight * p.y).sum();

        assertThat(ofRows).isCloseTo(ofObservations, within(1e-12 * ofObservations));
    }
}
