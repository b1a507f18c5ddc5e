package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.core.statistics.MonotoneRegression.Row;

class MonotoneRegressionLawsTest {
    /** One observation. */
    record Point(double x, double y, double weight) {}

    @Provide
    Arbitrary<List<Point>> points() {
        return Combinators.combine(
                        Arbitraries.integers().between(1, 8),
                        Arbitraries.doubles().between(-50, 50).ofScale(2),
                        Arbitraries.integers().between(1, 5))
                .as((x, y, weight) -> new Point(x, y, weight))
                .list()
                .ofMinSize(1)
                .ofMaxSize(16);
    }

    private static MonotoneRegression fit(List<Point> points) {
        return MonotoneRegression.fit(
                points.stream().mapToDouble(Point::x).toArray(),
                points.stream().mapToDouble(Point::y).toArray(),
                points.stream().mapToDouble(Point::weight).toArray());
    }

    private static double[] values(List<Row> rows) {
        return rows.stream().mapToDouble(Row::value).toArray();
    }

    @Property
    void itNeverFalls(@ForAll("points") List<Point> points) {
        assertThat(values(fit(points).rows())).isSorted();
    }

    @Property
    void theWeightedSumIsKept(@ForAll("points") List<Point> points) {
        double given = points.stream().mapToDouble(p -> p.weight * p.y).sum();
        double fitted = fit(points).rows().stream()
                .mapToDouble(row -> row.weight() * row.value())
                .sum();

        assertThat(fitted).isCloseTo(given, within(1e-9));
    }

    @Property
    void aFitToTheFittedIsItself(@ForAll("points") List<Point> points) {
        List<Row> rows = fit(points).rows();
        List<Point> fitted = rows.stream()
                .map(row -> new Point(row.x(), row.value(), row.weight()))
                .toList();

        assertThat(values(fit(fitted).rows())).containsExactly(values(rows), within(1e-12));
    }

    @Property
    void theOrderOfTheObservationsDoesntMatter(@ForAll("points") List<Point> points, @ForAll Random random) {
        List<Point> shuffled = new ArrayList<>(points);
        Collections.shuffle(shuffled, random);

        assertThat(values(fit(shuffled).rows()))
                .containsExactly(values(fit(points).rows()), within(1e-12));
    }

    @Property
    void itScalesAndShiftsWithWhatIsGiven(
            @ForAll("points") List<Point> points,
            @ForAll @DoubleRange(min = 0.01, max = 100) double scale,
            @ForAll @IntRange(min = -50, max = 50) int shift) {
        List<Point> other = points.stream()
                .map(p -> new Point(3 * p.x - 5, scale * p.y + shift, p.weight))
                .toList();
        double[] expected = values(fit(points).rows());
        for (int i = 0; i < expected.length; i++) {
            expected[i] = scale * expected[i] + shift;
        }

        assertThat(values(fit(other).rows())).containsExactly(expected, within(1e-9));
    }

    @Property
    void aMeanOfReadingsWeighsLikeItsReadings(@ForAll("points") List<Point> points) {
        List<Point> single = points.stream()
                .flatMap(p -> Collections.nCopies((int) p.weight, new Point(p.x, p.y, 1)).stream())
                .toList();

        assertThat(values(fit(single).rows()))
                .containsExactly(values(fit(points).rows()), within(1e-12));
    }

    /** Another way to the same: each row is the largest, over starts, of the least, over ends, mean of what lies between. */
    @Property
    void everyRowIsTheGreatestLeastMeanAroundIt(@ForAll("points") List<Point> points) {
        List<Row> rows = fit(points).rows();
        for (int i = 0; i < rows.size(); i++) {
            double greatest = Double.NEGATIVE_INFINITY;
            for (int from = 0; from <= i; from++) {
                double least = Double.POSITIVE_INFINITY;
                for (int to = i; to < rows.size(); to++) {
                    List<Row> between = rows.subList(from, to + 1);
                    double weight = between.stream().mapToDouble(Row::weight).sum();
                    double sum = between.stream()
                            .mapToDouble(row -> row.weight() * row.mean())
                            .sum();
                    least = Math.min(least, sum / weight);
                }
                greatest = Math.max(greatest, least);
            }
            assertThat(rows.get(i).value()).isCloseTo(greatest, within(1e-9));
        }
    }
}
