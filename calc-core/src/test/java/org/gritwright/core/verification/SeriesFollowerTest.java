package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.goodAugerCatches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.assertj.core.data.Percentage;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** With 6 lb/rev in force; ±4 %. */
class SeriesFollowerTest {
    private static final Percentage ROUNDING = Percentage.withPercentage(1e-9);
    private static final Optional<Calibration> GOOD = Optional.of(Calibration.from(goodAugerCatches()));

    private static Verification assessed(VerificationCatch source, Optional<Calibration> calibration) {
        return source.assess(Tolerance.percent(4), DecisionRule.SIMPLE, VerificationLimits.COMMON, calibration);
    }

    private static Verification counted(double pulses, double poundsCaught) {
        return assessed(Runs.counted(pulses, poundsCaught), GOOD);
    }

    private static Verification displayed(double poundsShown, double poundsCaught) {
        return assessed(Runs.openLoop(poundsCaught).indicated(pounds(poundsShown), pounds(1)), GOOD);
    }

    private static VerificationSeries followed(Verification... verifications) {
        SeriesFollower follower = new SeriesFollower();
        VerificationSeries last = null;
        for (Verification one : verifications) {
            last = follower.follow(one);
        }
        return last;
    }

    private static double percent(Quantity<Dimensionless> quantity) {
        return Amounts.in(quantity, PERCENT);
    }

    private static void assertSame(VerificationSeries grown, VerificationSeries given) {
        assertThat(grown.size()).isEqualTo(given.size());
        assertThat(grown.verdict()).isEqualTo(given.verdict());
        assertThat(grown.advice())
                .isEqualTo(given.advice())
                .isEqualTo(grown.judgement().advice());
        assertThat(grown.passes()).isEqualTo(given.passes());
        assertThat(percent(grown.error())).isCloseTo(percent(given.error()), ROUNDING);
        assertThat(names(grown)).isEqualTo(names(given));
        for (int i = 0; i < names(given).size(); i++) {
            assertThat(contribution(grown, i)).isCloseTo(contribution(given, i), ROUNDING);
        }
        assertThat(grown.dischargePerRevolution().isPresent())
                .isEqualTo(given.dischargePerRevolution().isPresent());
    }

    private static List<String> names(VerificationSeries series) {
        return series.judgement().budget().components().stream()
                .map(Component::name)
                .toList();
    }

    private static double contribution(VerificationSeries series, int index) {
        return percent(series.judgement().budget().components().get(index).contribution());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void aSeriesThatGrewIsTheOneThatIsGiven(long seed) {
        Random random = new Random(seed);
        Optional<Calibration> calibration = seed % 2 == 0 ? GOOD : Optional.empty();
        List<Verification> all = new ArrayList<>();
        SeriesFollower follower = new SeriesFollower();
        for (int i = 0; i < 40; i++) {
            double pounds = 300 + 5 * random.nextGaussian();
            VerificationCatch source = seed % 3 == 0 ? Runs.openLoop(pounds) : Runs.counted(5000 + i, pounds);
            Verification next = assessed(source, calibration);
            all.add(next);

            VerificationSeries grown = follower.follow(next);

            assertThat(grown.verifications()).isEqualTo(all);
            assertThat(grown.last()).isSameAs(next);
            assertSame(grown, VerificationSeries.of(all));
        }
    }

    @Test
    void theScatterIsThatOfTheDeviationsFromTheErrorOfTheSums() {
        Random random = new Random(1);
        int n = 1000;
        double[] pounds = IntStream.range(0, n)
                .mapToDouble(i -> 200 + 100 * random.nextDouble())
                .toArray();
        double[] pulses = new double[n];
        Verification[] verifications = new Verification[n];
        for (int i = 0; i < n; i++) {
            pulses[i] = Math.rint(pounds[i] / 6 * 100 * (1.02 + 0.01 * random.nextGaussian()));
            verifications[i] = assessed(Runs.counted(pulses[i], pounds[i]), Optional.empty());
        }
        VerificationSeries series = followed(verifications);

        double indicated = 0;
        double weighed = 0;
        double squaredMasses = 0;
        for (int i = 0; i < n; i++) {
            indicated += pulses[i] * 6 / 100;
            weighed += pounds[i];
            squaredMasses += pounds[i] * pounds[i];
        }
        double ratio = indicated / weighed;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double deviation = pulses[i] * 6 / 100 / pounds[i] / ratio - 1;
            squares += deviation * deviation;
        }
        // Two readings to half a pound, and a pulse more or less, of all the mass; 1 % was assumed with 2 degrees of
        // freedom.
        double rounded = 0;
        for (int i = 0; i < n; i++) {
            rounded += (2 * 0.25 / 12 + Math.pow(pounds[i] / pulses[i], 2) / 6) / squaredMasses;
        }
        double scatter = Math.sqrt((2 * 1e-4 + squares - (n - 1) * rounded) / (n + 1));
        double expected = scatter * Math.sqrt(squaredMasses) / weighed * ratio * 100;

        assertThat(percent(series.error())).isCloseTo((ratio - 1) * 100, ROUNDING);
        assertThat(names(series))
                .containsExactly(
                        "rounding of the scale", "count of revolutions", "scatter of the catches", "span of scale S-1");
        assertThat(contribution(series, 2)).isCloseTo(expected, ROUNDING);
    }

    /** A difference of two sums of squares would leave about a ten-millionth of the ratio of 20. */
    @Test
    void catchesAlikeScatterByNothingHoweverFarOffTheyAre() {
        Verification[] alike = IntStream.range(0, 500)
                .mapToObj(i -> assessed(Runs.counted(1000 * (1 + i), 3 * (1 + i)), Optional.empty()))
                .toArray(Verification[]::new);
        ErrorSums sums = alike[0].sums();
        for (int i = 1; i < alike.length; i++) {
            sums = sums.plus(alike[i].sums());
        }

        assertThat(sums.error()).isCloseTo(19, ROUNDING);
        assertThat(Math.sqrt(sums.scatter() / alike.length)).isLessThan(1e-14);
    }

    @Test
    void aSeriesStaysAsItWasWhenItIsExtended() {
        SeriesFollower follower = new SeriesFollower();
        VerificationSeries one = follower.follow(counted(5000, 290));
        double error = percent(one.error());
        VerificationSeries two = follower.follow(counted(5100, 300));

        assertThat(one.verifications()).hasSize(1);
        assertThat(percent(one.error())).isEqualTo(error);
        assertThat(one.judgement()).isSameAs(one.last().judgement());
        assertThat(two.verifications()).startsWith(one.last()).hasSize(2);
    }

    @Test
    void aDischargeWrittenDownTwiceCountsOnceAndIsTheLastAllTheSame() {
        Verification first = counted(5000, 290);
        Verification second = counted(5100, 300);
        Verification again = counted(5000, 290);
        VerificationSeries series = followed(first, second, again);

        assertThat(series.verifications()).containsExactly(first, second);
        assertThat(series.size()).isEqualTo(2);
        assertThat(series.last()).isSameAs(again);
        assertSame(series, VerificationSeries.of(List.of(first, second)));
        assertThat(followed(first, again).verifications()).containsExactly(again);
    }

    @Test
    void catchesThatDifferInMassCountOrRunAreTwo() {
        Verification one = counted(5000, 290);
        Verification otherRun = assessed(Runs.of(augerInForce(6), Runs.seconds(121), caught(290), pulses(5000)), GOOD);

        assertThat(followed(one, counted(5000, 290.5)).size()).isEqualTo(2);
        assertThat(followed(one, counted(5001, 290)).size()).isEqualTo(2);
        assertThat(followed(one, otherRun).size()).isEqualTo(2);
    }

    /** The display goes by whole pounds. */
    @ParameterizedTest
    @CsvSource({"296, 296, 1", "296, 297, 1", "297, 296, 1", "296, 297.1, 2", "296, 294.9, 2"})
    void displayedMassesOfOneCatchWithinAStepAreOneDischarge(double one, double other, int catches) {
        assertThat(followed(displayed(280, 290), displayed(one, 290), displayed(other, 290))
                        .size())
                .isEqualTo(1 + catches);
    }

    @Test
    void eachDischargeIsComparedWithTheOneThatCounts() {
        assertThat(followed(displayed(296, 290), displayed(297, 290), displayed(298, 290))
                        .size())
                .as("297 lb is taken for 298 lb written down before")
                .isEqualTo(1);
        assertThat(followed(displayed(280, 290), displayed(296, 290), displayed(297, 290), displayed(298, 290))
                        .size())
                .as("297 lb is 296 lb again and counts no more, 298 lb is another")
                .isEqualTo(3);
    }

    @Test
    void anotherValueInForceBeginsAnew() {
        Verification other = assessed(Runs.of(augerInForce(5.9), Runs.seconds(120), caught(290), pulses(5000)), GOOD);

        assertThat(followed(counted(5000, 290), other).verifications()).containsExactly(other);
        assertThat(followed(counted(5000, 290), other, counted(5000, 290)).size())
                .isEqualTo(1);
    }

    @Test
    void aCatchWithoutACountIsNotJudgedWithCountedOnes() {
        Verification uncounted = assessed(Runs.openLoop(290), GOOD);

        assertThat(followed(counted(5000, 290), uncounted).verifications()).containsExactly(uncounted);
        assertThat(followed(uncounted, counted(5000, 290)).size()).isEqualTo(1);
    }

    @Test
    void aCatchWhoseDataAreDoubtedStandsAlone() {
        Verification doubted = counted(500, 290);
        Verification good = counted(5000, 290);

        assertThat(doubted.isDoubted()).isTrue();
        assertThat(followed(good, doubted).verifications()).containsExactly(doubted);
        assertThat(followed(doubted, good).verifications()).containsExactly(good);
        assertThat(VerificationSeries.of(List.of(good, doubted)).passes()).isFalse();
    }

    @Test
    void aSeriesPassesAsASingleCatchWould() {
        assertThat(followed(counted(5000, 300), counted(5000, 301)).passes()).isTrue();
        assertThat(followed(counted(5000, 270), counted(5000, 271)).passes()).isFalse();
        assertThat(followed(assessed(Runs.openLoop(300), GOOD)).passes()).isFalse();
        assertThat(counted(5000, 300).passes()).isTrue();
        assertThat(counted(5000, 270).passes()).isFalse();
        assertThat(counted(500, 30).passes()).as("few pulses are no doubt").isTrue();
        assertThat(assessed(Runs.openLoop(300), GOOD).passes()).isFalse();
    }
}
