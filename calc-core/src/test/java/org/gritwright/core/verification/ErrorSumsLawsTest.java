package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.gritwright.core.budget.ScaleSpans;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.core.weighing.Weighing;

/** Catches with 6 lb/rev in force, on a scale whose accuracy is stated and on one of which nobody knows it. */
class ErrorSumsLawsTest {
    private static final Scale OTHER = Scale.of("S-9", pounds(5000), pounds(0.2));

    record Caught(double net, double count, boolean onOther) {
        CaughtMass mass() {
            return CaughtMass.of(onOther ? OTHER : SCALE, DAY, new Weighing("tarp", pounds(net + 10), pounds(10)));
        }

        VerificationCatch source() {
            return Runs.of(augerInForce(6), Runs.seconds(120), mass(), pulses(count));
        }
    }

    @Provide
    Arbitrary<Caught> caught() {
        return Combinators.combine(
                        Arbitraries.doubles().between(20, 400).ofScale(1),
                        Arbitraries.doubles().between(500, 8000).ofScale(0),
                        Arbitraries.of(true, false))
                .as(Caught::new);
    }

    private static ErrorSums sums(List<Caught> catches) {
        return catches.stream()
                .map(one -> ErrorSums.of(one.source(), 1))
                .reduce(ErrorSums::plus)
                .orElseThrow();
    }

    private static void assertSame(ErrorSums actual, ErrorSums expected) {
        assertThat(actual.catches()).isEqualTo(expected.catches());
        assertThat(actual.isCounted()).isEqualTo(expected.isCounted());
        assertThat(actual.countKnown()).isEqualTo(expected.countKnown());
        assertThat(actual.byRunTime()).isEqualTo(expected.byRunTime());
        assertClose(1 + actual.error(), 1 + expected.error());
        assertClose(actual.kilogramsPerRevolution(), expected.kilogramsPerRevolution());
        assertClose(actual.shrinking(), expected.shrinking());
        assertClose(actual.resolution(), expected.resolution());
        assertClose(actual.ofRounding(), expected.ofRounding());
        assertClose(actual.ofCounting(), expected.ofCounting());
        // Of ratios whose squares are about 1.
        assertThat(actual.scatter()).isCloseTo(expected.scatter(), within(1e-11 * (1 + expected.scatter())));
        ScaleSpans spans = expected.relativeSpans();
        assertThat(actual.relativeSpans().limits().keySet())
                .containsExactlyInAnyOrderElementsOf(spans.limits().keySet());
        spans.limits().forEach((key, limit) -> {
            ScaleSpans.Limit other = actual.relativeSpans().limits().get(key);
            assertClose(other.relative(), limit.relative());
            assertThat(other.isAssumed()).isEqualTo(limit.isAssumed());
        });
    }

    private static void assertClose(double actual, double expected) {
        assertThat(actual).isCloseTo(expected, within(1e-12 * Math.abs(expected)));
    }

    @Property(tries = 200)
    void twoLotsTogetherAreTheirCatchesOneByOne(
            @ForAll @Size(min = 2, max = 9) List<@From("caught") Caught> catches,
            @ForAll @IntRange(min = 1, max = 8) int wanted) {
        int first = Math.min(wanted, catches.size() - 1);

        assertSame(sums(catches.subList(0, first)).plus(sums(catches.subList(first, catches.size()))), sums(catches));
    }

    /** But for the expected mass, which nobody asks of a calibration catch. */
    @Property(tries = 200)
    void calibrationCatchesCountAsIfTheirValueInForceHadIndicatedThem(
            @ForAll @Size(min = 1, max = 6) List<@From("caught") Caught> catches) {
        Calibration calibration = Calibration.from(catches.stream()
                .map(one -> catchAt(AUGER_POINT, one.mass(), pulses(one.count())))
                .toList());
        ErrorSums sums = ErrorSums.of(calibration, catches.get(0).source(), 1);

        assertSame(sums, sums(catches));
        assertThat(sums.expected().total()).isZero();
    }
}
