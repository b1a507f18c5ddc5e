package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.augerCatch;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.goodAugerCatches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.pulses;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.assertj.core.data.Offset;
import org.gritwright.core.SimulatedDay;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** By hand: 6 lb/rev in force, half-pound readings of a scale that is right to 0.1 %; ±4 %, guarded with a risk of 5 %. */
class VerificationSeriesTest {
    private static final Offset<Double> EXACT = within(1e-10);
    private static final DecisionRule GUARDED = DecisionRule.guarded(5);
    private static final Tolerance FOUR = Tolerance.percent(4);
    private static final double TWO_READINGS = Math.sqrt(2) * 0.5 / Math.sqrt(12);
    private static final double COUNT = 0.01 / Math.sqrt(6);
    private static final double SPAN = 0.001 / Math.sqrt(3);
    private static final Calibration GOOD = Calibration.from(goodAugerCatches());

    /** Of 1 %, with 2 degrees of freedom. */
    private static final Calibration SCATTERED =
            Calibration.from(List.of(augerCatch(118.5, 2000), augerCatch(119.685, 2000), augerCatch(117.315, 2000)));

    /** 160 lb each, with a deviation of half a pound. */
    private static final Calibration LONG =
            Calibration.from(List.of(augerCatch(160, 2667), augerCatch(160.5, 2667), augerCatch(159.5, 2667)));

    private static final String[] ALL = {
        "rounding of the scale", "count of revolutions", "scatter of the catches", "span of scale S-1"
    };

    private static Verification assuming(double percentScatter, VerificationCatch source) {
        return source.assess(
                FOUR,
                GUARDED,
                new VerificationLimits(
                        SimulatedDay.limits(0, percentScatter / 100), VerificationLimits.COMMON.greatestCorrection()),
                Optional.empty());
    }

    private static Verification after(Calibration calibration, VerificationCatch source) {
        return source.assess(FOUR, GUARDED, VerificationLimits.COMMON, Optional.of(calibration));
    }

    private static Verification plain(VerificationCatch source) {
        return assuming(0, source);
    }

    private static VerificationSeries series(Verification... verifications) {
        return VerificationSeries.of(List.of(verifications));
    }

    private static double contribution(VerificationSeries series, String name) {
        return series.judgement().budget().components().stream()
                .filter(c -> c.name().equals(name))
                .mapToDouble(c -> Amounts.in(c.contribution(), PERCENT))
                .findFirst()
                .orElseThrow(() ->
                        new AssertionError(name + " of\n" + series.judgement().budget()));
    }

    private static List<String> names(VerificationSeries series) {
        return series.judgement().budget().components().stream()
                .map(Component::name)
                .toList();
    }

    private static double uncertainty(VerificationSeries series) {
        return Amounts.in(
                series.judgement().budget().result().standardUncertainty().orElseThrow(), PERCENT);
    }

    private static double hypot(double... parts) {
        return Math.sqrt(DoubleStream.of(parts).map(p -> p * p).sum());
    }

    @Test
    void theErrorIsThatOfTheSums() {
        VerificationSeries counted = series(plain(Runs.counted(5000, 290)), plain(Runs.counted(2500, 155)));
        VerificationSeries openLoop = series(plain(Runs.openLoop(290)), plain(Runs.openLoop(304)));

        // 300 and 150 lb indicated; 300 lb expected of each.
        assertThat(Amounts.in(counted.error(), PERCENT)).isCloseTo(100 * 450 / 445.0 - 100, EXACT);
        assertThat(Amounts.in(counted.judgement().budget().result().value(), PERCENT))
                .isCloseTo(100 * 450 / 445.0 - 100, EXACT);
        assertThat(Amounts.in(openLoop.error(), PERCENT)).isCloseTo(100 * 594 / 600.0 - 100, EXACT);
    }

    @Test
    void aSingleCatchIsJudgedAsItIsAlone() {
        Verification one = after(GOOD, Runs.counted(5000, 280));

        assertThat(series(one).judgement()).isEqualTo(one.judgement());
        assertThat(Amounts.in(series(one).error(), PERCENT))
                .isCloseTo(Amounts.in(one.calibrationError().orElseThrow(), PERCENT), EXACT);
        assertThat(series(one).proposedCorrection()).isPresent().isEqualTo(one.proposedCorrection());
    }

    @Test
    void theScatterIsPooledWithThatOfTheCalibration() {
        VerificationSeries two = series(after(GOOD, Runs.counted(5000, 290)), after(GOOD, Runs.counted(5000, 296)));
        // Of 293 lb on average; the calibration's 0.5 of 118.5 lb with 2 degrees of freedom, one of these, and 2 of 1
        // %.
        double squares = 2 * Math.pow(0.5 / 118.5, 2) + Math.pow(293 / 290.0 - 1, 2) + Math.pow(293 / 296.0 - 1, 2);
        double shrinking = Math.hypot(290, 296) / 586;
        double rounded = 2 * square(hypot(resolution(118.5, 20), resolution(119, 20), resolution(118, 20))) / 3
                + square(hypot(290 * resolution(290, 50), 296 * resolution(296, 50)) / hypot(290, 296));
        Component<Dimensionless> scatter = two.judgement().budget().components().get(2);

        assertThat(names(two)).containsExactly(ALL);
        assertThat(contribution(two, "scatter of the catches"))
                .isCloseTo(100 * 600 / 586.0 * Math.sqrt((2e-4 + squares - rounded) / 5) * shrinking, EXACT);
        assertThat(scatter.degreesOfFreedom()).isEqualTo(5);
        assertThat(contribution(two, "span of scale S-1")).isCloseTo(100 * 600 / 586.0 * SPAN, EXACT);
    }

    private static double square(double number) {
        return number * number;
    }

    /** Of a scatter of 1 % that is simply stated: chi-squared of three catches off by 3.3 % is 22, beyond 5.99. */
    @Test
    void whatIsStatedFirmlyStandsUntilTheCatchesRefuteIt() {
        Verification a = assuming(1, Runs.counted(5000, 290));
        Verification b = assuming(1, Runs.counted(5000, 300));
        Verification c = assuming(1, Runs.counted(5000, 310));
        Verification close = assuming(1, Runs.counted(5000, 296));
        double squares = square(300 / 290.0 - 1) + square(300 / 310.0 - 1);
        double rounded = square(hypot(290 * resolution(290, 50), 300 * resolution(300, 50), 310 * resolution(310, 50))
                / hypot(290, 300, 310));
        double shrinking = hypot(290, 300, 310) / 900;

        assertThat(names(series(a, b, c))).containsExactly(ALL);
        assertThat(contribution(series(a, b, c), "scatter of the catches"))
                .isCloseTo(100 * Math.sqrt(squares / 2 - rounded) * shrinking, EXACT);
        assertThat(names(series(close, b)))
                .containsExactly(
                        "rounding of the scale",
                        "count of revolutions",
                        "scatter of catches, from experience",
                        "span of scale S-1");
        assertThat(contribution(series(close, b), "scatter of catches, from experience"))
                .isCloseTo(600 / 596.0 * Math.hypot(296, 300) / 596, EXACT);
    }

    /** 290 and 300 lb of 300: of two catches that are off by as much as that nobody knew anything before. */
    @Test
    void withoutACalibrationTwoCatchesTellOfTheirScatterToo() {
        VerificationSeries two = series(plain(Runs.counted(5000, 290)), plain(Runs.counted(5000, 300)));
        double squares = square(295 / 290.0 - 1) + square(295 / 300.0 - 1);
        double rounded = square(hypot(290 * resolution(290, 50), 300 * resolution(300, 50)) / hypot(290, 300));

        assertThat(names(two)).containsExactly(ALL);
        assertThat(contribution(two, "scatter of the catches"))
                .isCloseTo(
                        100 * 600 / 590.0 * Math.sqrt((2e-4 + squares - rounded) / 3) * Math.hypot(290, 300) / 590,
                        EXACT);
    }

    /** 1.645·1.025·1 % is more than the 1.5 % left of 4 %; divided by √2 it is less. */
    @Test
    void twoCatchesTellTogetherWhatNeitherCan() {
        Verification one = assuming(1, Runs.counted(5000, 300 / 1.025));
        Verification other = assuming(1, Runs.counted(4000, 240 / 1.025));

        for (Verification alone : List.of(one, other)) {
            assertThat(alone.verdict()).isEqualTo(Verdict.UNDECIDED);
            assertThat(alone.judgement().advice()).isEqualTo(Advice.CATCH_MORE);
        }
        assertThat(series(one, other).judgement().verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
        // 1.96·1.025·1 % ÷ √2 is less than 2.5 %.
        assertThat(series(one, other).judgement().advice()).isEqualTo(Advice.OPTIONAL);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-2.5, 1.9, 2, 2.5, 3, 5.5, 6.1})
    void theCatchesThatWereAskedForDoTell(double percent) {
        double pounds = 300 / (1 + percent / 100);
        Verification one = after(SCATTERED, Runs.counted(5000, pounds));
        Judgement.FurtherCatches further = one.judgement().further().orElseThrow();

        assertThat(one.judgement().advice()).isEqualTo(Advice.CATCH_MORE);
        assertThat(Amounts.in(further.amount().asType(Mass.class), SpreadingUnits.POUND))
                .isCloseTo(further.catches() * pounds, within(1e-9));
        assertThat(VerificationSeries.of(Collections.nCopies(1 + further.catches(), one))
                        .judgement()
                        .advice())
                .isNotEqualTo(Advice.CATCH_MORE);
    }

    /** 3 %: of n catches 1.7, 1.2 and 0.99 %, of which 1 % is there; of two it is still one that is wanted. */
    @Test
    void whatIsAskedForShrinksByWhatWasCaught() {
        Verification one = assuming(1, Runs.counted(5000, 300 / 1.03));

        assertThat(series(one).judgement().further().orElseThrow().catches()).isEqualTo(2);
        assertThat(series(one, one).judgement().advice()).isEqualTo(Advice.CATCH_MORE);
        assertThat(series(one, one).judgement().further().orElseThrow().catches())
                .isEqualTo(1);
        assertThat(Amounts.in(
                        series(one, one)
                                .judgement()
                                .further()
                                .orElseThrow()
                                .amount()
                                .asType(Mass.class),
                        SpreadingUnits.POUND))
                .isCloseTo(300 / 1.03, within(1e-9));
    }

    @Test
    void catchesOfDifferentKindsAreNotJudgedTogether() {
        String message = "verification catches to judge together must be made with one calibration in force, and all"
                + " counted or none: another one";
        VerificationCatch withAnother = Runs.of(augerInForce(5.9), Runs.seconds(120), caught(300), pulses(5000));
        Verification one = plain(Runs.counted(5000, 290));

        assertRefused(message, () -> series(one, plain(Runs.openLoop(290))));
        assertRefused(message, () -> series(plain(Runs.openLoop(290)), one));
        assertRefused(message, () -> series(plain(withAnother), one));
        assertRefused(message, () -> series(one).plus(plain(Runs.openLoop(290))));
        assertRefused(message, () -> series(one).again(plain(withAnother)));
        assertRefused(
                "verification catches to judge together must be one or more: none", VerificationSeriesTest::series);
    }

    @Test
    void aCatchThatIsDoubtedDoubtsTheSeries() {
        Verification good = plain(Runs.counted(5000, 300));
        Verification doubted = plain(Runs.counted(5000, 300).indicated(pounds(310), pounds(1)));

        assertThat(series(good, good).judgement().advice()).isNotEqualTo(Advice.FIND_FAULT);
        assertThat(series(good, doubted).judgement().advice()).isEqualTo(Advice.FIND_FAULT);
        assertThat(series(doubted, good).judgement().advice()).isEqualTo(Advice.FIND_FAULT);
    }

    /** Beyond 10¹⁶ doubles are two apart. */
    @Test
    void aSumKeepsWhatRoundingTakesOffIt() {
        assertThat(new ErrorSums.Sum(1e16, 0).plus(1).plus(1).total()).isEqualTo(1e16 + 2);
        assertThat(new ErrorSums.Sum(1, 0.5).total()).isEqualTo(1.5);
    }

    /** 20 lb in 333 pulses. */
    private static Verification shortCatch() {
        return after(LONG, Runs.counted(333, 20));
    }

    private static double resolution(double pounds, double revolutions) {
        return Math.hypot(TWO_READINGS / pounds, COUNT / revolutions);
    }

    /** The square of what LONG shows without its rounding, relative, with 2 degrees of freedom. */
    private static double ofLong() {
        return square(0.5 / 160)
                - square(hypot(resolution(160, 26.67), resolution(160.5, 26.67), resolution(159.5, 26.67))) / 3;
    }

    @Test
    void aCatchCoarserThanTheCalibrationsHasItsOwnRounding() {
        double factor = 100 * 3.33 * 6 / 20;

        assertThat(names(series(shortCatch()))).containsExactly(ALL);
        assertThat(contribution(series(shortCatch()), "rounding of the scale"))
                .isCloseTo(factor * TWO_READINGS / 20, EXACT);
        assertThat(contribution(series(shortCatch()), "count of revolutions")).isCloseTo(factor * COUNT / 3.33, EXACT);
        assertThat(contribution(series(shortCatch()), "scatter of the catches"))
                .isCloseTo(factor * Math.sqrt((2e-4 + 2 * ofLong()) / 4), EXACT);
    }

    /** They are rounded by so much more than they and the calibration's catches scatter that no scatter of theirs is left. */
    @Test
    void shortCatchesAlikeAreNoSurerThanTheirOwnRounding() {
        VerificationSeries two = series(shortCatch(), shortCatch());
        double factor = 100 * 3.33 * 6 / 20;

        assertThat(names(two)).containsExactly(ALL);
        assertThat(contribution(two, "scatter of the catches")).isCloseTo(factor * Math.sqrt(2e-4 / 5 / 2), EXACT);
        assertThat(uncertainty(two))
                .isCloseTo(factor * hypot(resolution(20, 3.33) / Math.sqrt(2), Math.sqrt(2e-4 / 5 / 2), SPAN), EXACT);
    }

    /** Eight catches of 20 lb are read sixteen times, one of 160 lb twice. */
    @Test
    void shortCatchesAreRoundedMoreThanOneOfTheSameMass() {
        VerificationSeries one = series(after(LONG, Runs.counted(2664, 160)));
        VerificationSeries eight = VerificationSeries.of(Collections.nCopies(8, shortCatch()));

        assertThat(contribution(eight, "rounding of the scale"))
                .isCloseTo(Math.sqrt(8) * contribution(one, "rounding of the scale"), EXACT);
        assertThat(contribution(eight, "count of revolutions"))
                .isCloseTo(Math.sqrt(8) * contribution(one, "count of revolutions"), EXACT);
        assertThat(uncertainty(series(shortCatch()))).isGreaterThan(1.5 * uncertainty(one));
    }

    @Test
    void theDischargeIsAsUncertainAsTheErrorRelativeToItself() {
        VerificationSeries two = series(assuming(1, Runs.counted(5000, 290)), assuming(1, Runs.counted(2500, 147)));
        Measured<DischargePerRevolution> discharge =
                two.dischargePerRevolution().orElseThrow();
        // Readings of two catches in 437 lb; scatter and count of each weigh by the catch's part of the mass.
        double relative = hypot(
                TWO_READINGS * Math.sqrt(2) / 437,
                290 / 437.0 * COUNT / 50,
                147 / 437.0 * COUNT / 25,
                0.01 * Math.hypot(290, 147) / 437,
                SPAN);

        assertThat(Amounts.in(discharge.value(), SpreadingUnits.POUND_PER_REVOLUTION))
                .isCloseTo(437 / 75.0, EXACT);
        assertThat(Amounts.in(discharge.standardUncertainty().orElseThrow(), SpreadingUnits.POUND_PER_REVOLUTION))
                .isCloseTo(437 / 75.0 * relative, EXACT);
        assertThat(discharge.degreesOfFreedom()).hasValue(Double.POSITIVE_INFINITY);
        assertThat(series(plain(Runs.openLoop(290))).dischargePerRevolution()).isEmpty();
    }

    @Test
    void aCorrectionIsByAllCatches() {
        VerificationSeries two = series(after(GOOD, Runs.counted(5000, 280)), after(GOOD, Runs.counted(4000, 225.8)));
        Correction correction = two.proposedCorrection().orElseThrow();

        // 505.8 lb in 90 revolutions.
        assertThat(Amounts.in(two.dischargePerRevolution().orElseThrow().value(), SpreadingUnits.POUND_PER_REVOLUTION))
                .isCloseTo(5.62, EXACT);
        assertThat(correction.computed().value().getValue().doubleValue()).isCloseTo(5.62, EXACT);
        assertThat(correction.toEnter()).isEqualTo(CalibrationFactor.parse("5.62 lb/rev"));
        assertThat(correction.basis()).isEqualTo(Correction.Basis.SEVERAL_CATCHES);
        assertThat(correction.reason()).isEqualTo(two.judgement());
        assertThat(correction.evidence()).isEqualTo(two.last().source());
        assertThat(series(plain(Runs.openLoop(280)), plain(Runs.openLoop(283))).proposedCorrection())
                .isEmpty();
    }

    @Test
    void severalCatchesConfirmWhatNeitherDoesAlone() {
        Correction entered = assuming(1, Runs.counted(5000, 280))
                .proposedCorrection()
                .orElseThrow()
                .entered(CalibrationFactor.parse("5.6 lb/rev"));
        Verification one =
                assuming(1, Runs.of(augerInForce(5.6), Runs.seconds(120), caught(280 / 1.025), pulses(5000)));
        Verification other =
                assuming(1, Runs.of(augerInForce(5.6), Runs.seconds(120), caught(224 / 1.025), pulses(4000)));
        Correction confirmed = entered.confirmedBy(series(one, other));

        assertThat(entered.confirmedBy(one).status()).isEqualTo(Correction.Status.UNCONFIRMED);
        assertThat(entered.confirmedBy(other).status()).isEqualTo(Correction.Status.UNCONFIRMED);
        assertThat(confirmed.status()).isEqualTo(Correction.Status.CONFIRMED);
        assertThat(confirmed.confirmation()).hasValue(other.source());
        assertThat(confirmed.history().get(3).why()).hasValue(series(one, other).judgement());
    }

    @Test
    void noneOfTheConfirmingCatchesMayBeTheEvidence() {
        Verification found = assuming(1, Runs.counted(5000, 295));
        Correction entered = found.proposedCorrection().orElseThrow().entered(CalibrationFactor.parse("6 lb/rev"));

        assertRefused(
                "confirming catch must be a different catch from the one that the correction was made from: the same"
                        + " catch",
                () -> entered.confirmedBy(series(found, assuming(1, Runs.counted(5000, 300)))));
    }

    /** Of 2 % that may be spilled, half is taken as lost; what is to be caught is weighed as these were. */
    @Test
    void whatIsAskedForIsWhatTheScaleWillShow() {
        VerificationLimits limits =
                new VerificationLimits(SimulatedDay.limits(0.02, 0.02), VerificationLimits.COMMON.greatestCorrection());
        Verification one = Runs.counted(5000, 297 / 1.02).assess(FOUR, GUARDED, limits, Optional.empty());
        Judgement.FurtherCatches further =
                series(one, one).judgement().further().orElseThrow();

        assertThat(Amounts.in(further.amount().asType(Mass.class), SpreadingUnits.POUND))
                .isCloseTo(further.catches() * 297 / 1.02, within(1e-9));
    }

    /** A value: what it was made from decides. */
    @Test
    void equalCatchesJudgedAlikeAreEqual() {
        VerificationCatch source = Runs.counted(1000, 104);
        Verification one = source.assess(FOUR, GUARDED, VerificationLimits.COMMON, Optional.of(GOOD));

        assertThat(Runs.counted(1000, 104).assess(FOUR, GUARDED, VerificationLimits.COMMON, Optional.of(GOOD)))
                .isEqualTo(one)
                .hasSameHashCodeAs(one);
        for (Verification other : List.of(
                Runs.counted(1000, 104.5).assess(FOUR, GUARDED, VerificationLimits.COMMON, Optional.of(GOOD)),
                source.assess(Tolerance.percent(5), GUARDED, VerificationLimits.COMMON, Optional.of(GOOD)),
                source.assess(FOUR, DecisionRule.SIMPLE, VerificationLimits.COMMON, Optional.of(GOOD)),
                source.assess(FOUR, DecisionRule.guarded(4), VerificationLimits.COMMON, Optional.of(GOOD)),
                source.assess(FOUR, GUARDED, VerificationLimits.COMMON, Optional.of(SCATTERED)),
                source.assess(FOUR, GUARDED, VerificationLimits.COMMON, Optional.empty()),
                source.assess(
                        FOUR,
                        GUARDED,
                        new VerificationLimits(
                                SimulatedDay.limits(0, 0.5), VerificationLimits.COMMON.greatestCorrection()),
                        Optional.of(GOOD)))) {
            assertThat(other).isNotEqualTo(one);
        }
        assertThat(one).isNotEqualTo(source);
    }

    @Test
    void equalCatchesTogetherAreEqual() {
        Verification one = plain(Runs.counted(1000, 104));
        Verification other = plain(Runs.counted(1000, 103));
        VerificationSeries together = series(one, other);

        assertThat(series(plain(Runs.counted(1000, 104)), plain(Runs.counted(1000, 103))))
                .isEqualTo(together)
                .hasSameHashCodeAs(together);
        assertThat(series(one).plus(other)).isEqualTo(together).hasSameHashCodeAs(together);
        for (VerificationSeries different :
                List.of(series(one), series(other), series(other, one), series(one, other, other), series(one, one))) {
            assertThat(different).isNotEqualTo(together);
        }
        assertThat(together).isNotEqualTo(other);
    }
}
