package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.goodAugerCatches;
import static org.gritwright.core.Samples.observed;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.assertj.core.data.Percentage;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.verification.VerificationLimits;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** What is followed in one pass is what comes out if for every catch all catches so far are judged again. */
class CorrectionTrailTest {
    private static final Calibration GOOD = Calibration.from(goodAugerCatches());
    private static final TestRun RUN = TestRun.lasting(
            Amounts.of(360, SpreadingUnits.POUND_PER_MILE),
            Amounts.of(25, SpreadingUnits.MILE_PER_HOUR),
            Amounts.of(120, SpreadingUnits.SECOND));

    /** The plain way, at a cost that grows with the square of the catches. */
    private static final class JudgedAgain {
        private final List<Verification> followed = new ArrayList<>();
        private Optional<VerificationSeries> judged = Optional.empty();
        private Correction correction;
        private int contradictions;

        void follow(Verification next) {
            followed.add(next);
            VerificationSeries series = VerificationSeries.of(together());
            judged = Optional.of(series);
            CalibrationFactor inForce = next.source().inForce().factor();
            boolean proposed = correction != null && correction.status() == Correction.Status.PROPOSED;
            if (proposed && !inForce.equals(correction.asFound())) {
                correction = correction.entered(
                        inForce, next.source().observation().at().toLocalDate());
            } else if (proposed && next.passes()) {
                contradictions++;
                correction = null;
            } else if (proposed
                    && series.verifications().size() > 1
                    && series.judgement().advice() != Advice.CORRECT) {
                correction = null;
            }
            if (correction != null
                    && series.verifications().stream().allMatch(v -> correction.isConfirmableBy(v.source()))) {
                correction = correction.confirmedBy(series);
            }
            boolean again = correction != null && next.source().isSameDischarge(correction.evidence());
            if (series.judgement().advice() == Advice.CORRECT && !again) {
                correction = series.proposedCorrection().orElse(correction);
            }
        }

        private List<Verification> together() {
            Verification last = followed.get(followed.size() - 1);
            Deque<Verification> together = new ArrayDeque<>(List.of(last));
            for (int i = followed.size() - 2; i >= 0 && !last.isDoubted(); i--) {
                Verification earlier = followed.get(i);
                if (!earlier.source().inForce().equals(last.source().inForce())
                        || earlier.calibrationError().isPresent()
                                != last.calibrationError().isPresent()
                        || earlier.isDoubted()) {
                    break;
                }
                if (together.stream().noneMatch(v -> v.source().isSameDischarge(earlier.source()))) {
                    together.addFirst(earlier);
                }
            }
            return List.copyOf(together);
        }
    }

    private static Verification verification(Random random, double inForce, double off) {
        CalibrationInForce value = augerInForce(inForce);
        int pulses = 4900 + random.nextInt(200);
        double pounds = pulses / 100.0 * 6 * (1 + off + 0.005 * random.nextGaussian());
        int kind = random.nextInt(12);
        VerificationCatch source = kind == 0
                ? VerificationCatch.of(observed(value.point(), caught(pounds)), value, RUN)
                : VerificationCatch.of(
                        // A tenth of the pulses: more than the conveyor can take, which doubts the data.
                        observed(value.point(), caught(pounds)).counted(pulses(kind == 1 ? pulses / 10 : pulses)),
                        value,
                        RUN);
        return assessed(source, off);
    }

    private static Verification assessed(VerificationCatch source, double off) {
        return source.assess(
                Tolerance.percent(4),
                DecisionRule.SIMPLE,
                VerificationLimits.COMMON,
                off > 0 ? Optional.of(GOOD) : Optional.empty());
    }

    /** The same discharge, written down as if the value in force had been another. */
    private static Verification again(Verification earlier, double inForce, double off) {
        return assessed(VerificationCatch.of(earlier.source().observation(), augerInForce(inForce), RUN), off);
    }

    private static List<Verification> day(long seed) {
        Random random = new Random(seed);
        List<Verification> day = new ArrayList<>();
        double inForce = 6;
        double off = 0.14 * (random.nextDouble() - 0.5);
        for (int i = 0; i < 14; i++) {
            if (random.nextInt(5) == 0) {
                inForce = random.nextBoolean() ? Math.rint(600 * (1 + off)) / 100 : 5.9 + 0.1 * random.nextInt(3);
            }
            int kind = i == 0 ? 0 : random.nextInt(10);
            if (kind < 7) {
                day.add(verification(random, inForce, off));
            } else {
                Verification earlier = day.get(random.nextInt(i));
                day.add(kind == 7 ? earlier : again(earlier, inForce, off));
            }
        }
        return day;
    }

    private static void assertSame(CorrectionTrail trail, JudgedAgain anew) {
        VerificationSeries series = trail.judged().orElseThrow();
        VerificationSeries expected = anew.judged.orElseThrow();
        assertThat(series.last()).isSameAs(expected.last());
        assertThat(series.verifications()).hasSameSizeAs(expected.verifications());
        assertThat(series.advice()).isEqualTo(expected.judgement().advice());
        assertThat(Amounts.in(series.error(), PERCENT))
                .isCloseTo(Amounts.in(expected.error(), PERCENT), Percentage.withPercentage(1e-9));
        assertThat(trail.contradictions()).hasSize(anew.contradictions);
        assertThat(trail.correction().isPresent()).isEqualTo(anew.correction != null);
        trail.correction().ifPresent(correction -> {
            assertThat(correction.status()).isEqualTo(anew.correction.status());
            assertThat(correction.asFound()).isEqualTo(anew.correction.asFound());
            assertThat(correction.toEnter()).isEqualTo(anew.correction.toEnter());
            assertThat(correction.asLeft()).isEqualTo(anew.correction.asLeft());
            assertThat(correction.basis()).isEqualTo(anew.correction.basis());
            assertThat(correction.evidence()).isSameAs(anew.correction.evidence());
            assertThat(correction.confirmation()).isEqualTo(anew.correction.confirmation());
            assertThat(correction.reason().verdict())
                    .isEqualTo(anew.correction.reason().verdict());
        });
    }

    @Test
    void oneGoesThroughTheDayAsJudgingItAnewForEveryCatchWould() {
        Set<Correction.Status> met = EnumSet.noneOf(Correction.Status.class);
        int together = 0;
        int contradictions = 0;
        for (long seed = 0; seed < 300; seed++) {
            CorrectionTrail trail = new CorrectionTrail();
            JudgedAgain anew = new JudgedAgain();
            for (Verification next : day(seed)) {
                trail.follow(next);
                anew.follow(next);
                assertSame(trail, anew);
                trail.correction().ifPresent(c -> met.add(c.status()));
                together = Math.max(together, trail.judged().orElseThrow().size());
            }
            contradictions += anew.contradictions;
        }

        assertThat(met).containsExactlyInAnyOrder(Correction.Status.values());
        assertThat(together).isGreaterThan(8);
        assertThat(contradictions).isPositive();
    }
}
