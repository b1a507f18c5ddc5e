package org.gritwright.core.fleet.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.fleet.review.EnteredDays.FOUR;
import static org.gritwright.core.fleet.review.EnteredDays.POUND;
import static org.gritwright.core.fleet.review.EnteredDays.TWO;
import static org.gritwright.core.fleet.review.EnteredDays.box;
import static org.gritwright.core.fleet.review.EnteredDays.calibration;
import static org.gritwright.core.fleet.review.EnteredDays.day;
import static org.gritwright.core.fleet.review.EnteredDays.inForce;
import static org.gritwright.core.fleet.review.EnteredDays.net;
import static org.gritwright.core.fleet.review.EnteredDays.time;
import static org.gritwright.core.fleet.review.EnteredDays.verification;
import static org.gritwright.core.fleet.review.EnteredDays.weighed;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Conditions;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.hipparchus.distribution.multivariate.MultivariateNormalDistribution;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Facts of a day as numbers, the likelihoods by the whole covariance of what is written down. */
class SketchTest {
    /** The middle of 50 % and 115 %, and a quarter of what lies between, as logarithms. */
    private static final double USUAL = Math.log(Math.sqrt(0.5 * 1.15));

    private static final double SPREAD = Math.log(1.15 / 0.5) / 4;
    private static final double SHAPE = 0.04;
    private static final double DRIFT = 0.06;
    private static final double NEVER = 1e-4;

    /** 1/100 turn, triangular; 0.1 lb twice, rectangular. */
    private static double variance(double pounds, double turns) {
        return 0.01 * 0.01 / 6 / (turns * turns) + 0.1 * 0.1 / 12 * 2 / (pounds * pounds);
    }

    private static double density(double logarithm, double variance) {
        return Math.exp(-logarithm * logarithm / 2 / variance) / Math.sqrt(2 * Math.PI * variance);
    }

    /** A logarithm of a fill, with what it scatters by, at a point. */
    private record Fill(double fill, double variance, int place) {
        static Fill of(double pounds, double turns, double loose, int place, double scatter) {
            return new Fill(
                    Math.log(pounds / turns / loose), scatter * scatter + SketchTest.variance(pounds, turns), place);
        }
    }

    private static RealMatrix covariance(List<Fill> fills) {
        RealMatrix covariance = MatrixUtils.createRealMatrix(fills.size(), fills.size());
        for (int i = 0; i < fills.size(); i++) {
            for (int j = 0; j < fills.size(); j++) {
                covariance.setEntry(
                        i,
                        j,
                        SPREAD * SPREAD
                                + (fills.get(i).place() == fills.get(j).place() ? SHAPE * SHAPE : 0)
                                + (i == j ? fills.get(i).variance() : 0));
            }
        }
        return covariance;
    }

    private static double joint(List<Fill> fills) {
        double[] means = fills.stream().mapToDouble(one -> USUAL).toArray();
        return new MultivariateNormalDistribution(means, covariance(fills).getData())
                .density(fills.stream().mapToDouble(Fill::fill).toArray());
    }

    private static final List<CalibrationCatch> CAUGHT = List.of(
            calibration(0, FOUR, net(400), 1000),
            calibration(15, FOUR, net(415), 1000),
            calibration(30, TWO, net(180), 900));

    private static double ofCaught(double scatter, Fill... more) {
        return joint(Stream.concat(
                        Stream.of(
                                Fill.of(400, 10, 50, 0, scatter),
                                Fill.of(415, 10, 50, 0, scatter),
                                Fill.of(180, 9, 25, 1, scatter)),
                        Stream.of(more))
                .toList());
    }

    /** Any of four scatters may be true. */
    @Test
    void fillsAreAsLikelyAsTheirJointNormalDistributionSays() {
        double mean = Stream.of(0.004, 0.008, 0.016, 0.032)
                .mapToDouble(SketchTest::ofCaught)
                .average()
                .orElseThrow();

        assertThat(day(CAUGHT, List.of()).logLikelihood()).isCloseTo(Math.log(mean), within(1e-7));
    }

    @Test
    void theScatterIsTheStatedOneButNeverLessThanThreeThousandths() {
        assertThat(repeatable(0.6).logLikelihood()).isCloseTo(Math.log(ofCaught(0.006)), within(1e-7));
        assertThat(repeatable(0.1).logLikelihood()).isCloseTo(Math.log(ofCaught(0.003)), within(1e-7));
    }

    private static CatchLimits scattering(double percent) {
        return CatchLimits.COMMON.withAllowances(new CatchAllowances(
                Amounts.of(0, SpreadingUnits.PERCENT),
                Amounts.of(0, SpreadingUnits.PERCENT),
                Optional.empty(),
                Optional.of(Repeatability.assumed(Amounts.of(percent, SpreadingUnits.PERCENT)))));
    }

    private static Sketch repeatable(double percent) {
        return Sketch.of(CAUGHT, List.of(), List.of(), List.of(), scattering(percent));
    }

    private static Sketch verified(VerificationCatch one) {
        return Sketch.of(CAUGHT, List.of(one), List.of(), List.of(), scattering(1));
    }

    private static VerificationCatch shown(VerificationCatch one, double pounds) {
        return one.indicated(Amounts.of(pounds, SpreadingUnits.POUND), Amounts.of(1, SpreadingUnits.POUND));
    }

    /**
     * 410 lb in 10.5 turns with 41 lb/rev in force: by the value 430.5 lb were laid of 420 lb wanted; the display shows 430 lb,
     * which are 10.488 turns.
     */
    @Test
    void aVerificationIsAsLikelyAsItsFillItsDeliveryAndItsDisplay() {
        Sketch day = verified(shown(verification(60, FOUR, net(410), 1050, "41 lb/rev"), 430));
        double turns = 0.01 * 0.01 / 6 / (10.5 * 10.5);
        double display = 1 / 12.0 / (430 * 430.0) + 0.41 * 0.41 / 3 / (430 * 430.0);

        assertThat(day.logLikelihood())
                .isCloseTo(
                        Math.log(ofCaught(
                                        0.01,
                                        Fill.of(410, 10.5, 50, 0, 0.01),
                                        new Fill(Math.log(41.0 / 50), DRIFT * DRIFT, 0)))
                                + Math.log(0.8 * density(Math.log(430.5 / 420), 1e-4 + turns) + NEVER)
                                + Math.log(density(Math.log(10.5 * 41 / 430), turns + display) + NEVER),
                        within(1e-7));
    }

    /** Without a count the display tells of the turns, and of nothing else. */
    @Test
    void whereNothingWasCountedTheDisplayTellsOfTheTurns() {
        Sketch day = verified(shown(verification(60, FOUR, net(410), "41 lb/rev"), 430));
        double display = 1 / 12.0 / (430 * 430.0) + 0.41 * 0.41 / 3 / (430 * 430.0);
        double ofMass = 0.1 * 0.1 / 12 * 2 / (410 * 410.0);

        assertThat(day.logLikelihood())
                .isCloseTo(
                        Math.log(ofCaught(
                                        0.01,
                                        new Fill(Math.log(410 / (430 / 41.0) / 50), 1e-4 + ofMass + display, 0),
                                        new Fill(Math.log(41.0 / 50), DRIFT * DRIFT, 0)))
                                + Math.log(0.8 * density(Math.log(430 / 420.0), 1e-4 + display) + NEVER),
                        within(1e-7));
    }

    @Test
    void whereNothingTellsOfTheTurnsOnlyTheValueInForceCounts() {
        assertThat(verified(verification(60, FOUR, net(410), "41 lb/rev")).logLikelihood())
                .isCloseTo(Math.log(ofCaught(0.01, new Fill(Math.log(41.0 / 50), DRIFT * DRIFT, 0))), within(1e-7));
    }

    /** Where nothing at all says how full the conveyor ran, nothing is unlikely. */
    @Test
    void aDayWithoutFillsIsAsLikelyAsAny() {
        Sketch nothing = new Sketch(List.of(), List.of(), List.of(), FillLimits.COMMON, List.of(0.01), 0, 0);

        assertThat(nothing.logLikelihood()).isZero();
        assertThat(nothing.greatestGainByEquipment()).isZero();
        assertThat(nothing.medianLogFill()).isEmpty();
        assertThat(nothing.medianLogFillOfHeld()).isEmpty();
    }

    /** Of a fifth that are slow, evenly from 0 down to −0.75; at the ends a drive isn't slow. */
    @ParameterizedTest
    @CsvSource({"-0.5, 0.2666", "-0.7499, 0.2666", "-0.75, 0", "-0.8, 0", "0.5, 0"})
    void aSlowDriveLaysLessButNotMore(double logarithm, double slow) {
        assertThat(Math.exp(Sketch.logDelivered(logarithm, 0, 0.2))).isCloseTo(slow + NEVER, within(1e-4));
    }

    @Test
    void whatWasWantedIsUsuallyDelivered() {
        assertThat(Sketch.logDelivered(0, 3e-4, 0.2))
                .isCloseTo(Math.log(0.8 / Math.sqrt(2 * Math.PI * 4e-4) + NEVER), within(1e-12));
    }

    @Test
    void aValueThatIsNeitherListedNorFoundHappensHardlyEver() {
        Sketch day = day(CAUGHT, List.of());
        Sketch unlisted =
                new Sketch(day.catches(), day.held(), day.expected(), day.fill(), day.scatters(), 2, day.places());

        assertThat(unlisted.logLikelihood() - day.logLikelihood()).isCloseTo(2 * Math.log(NEVER), within(1e-9));
    }

    /** The same masses with and without tares. */
    @Test
    void taresOfNoughtBesideOthersHappenHardlyEverAndAllOfThemNowAndThen() {
        double tared = likelihood(net(400), net(410));
        assertThat(likelihood(weighed(box(400, 0)), net(410)) - tared).isCloseTo(Math.log(NEVER), within(1e-9));
        assertThat(likelihood(weighed(box(400, 0)), weighed(box(410, 0))) - tared)
                .isCloseTo(Math.log(0.002), within(1e-9));
    }

    private static double likelihood(CaughtMass... caught) {
        return day(List.of(calibration(0, FOUR, caught[0], 1000), calibration(15, FOUR, caught[1], 1000)), List.of())
                .logLikelihood();
    }

    @Test
    void aTareOfNoughtThatIsRepairedIsNoMoreUnlikely() {
        Sketch day = day(List.of(calibration(0, FOUR, weighed(box(400, 0)), 1000)), List.of());
        Sketch halved = day.with(one -> one.withKilograms(200 * POUND));

        double untared = new Sketch(
                        day(List.of(calibration(0, FOUR, net(400), 1000)), List.of())
                                .with(one -> one.withKilograms(200 * POUND))
                                .catches(),
                        List.of(),
                        List.of(),
                        day.fill(),
                        day.scatters(),
                        0,
                        1)
                .logLikelihood();
        assertThat(halved.logLikelihood()).isCloseTo(untared, within(1e-9));
    }

    @Test
    void aScaleThatWasSetToZeroWithTheBoxOnItMissesNoTare() {
        Observation zeroed = Observation.of(FOUR, time(0), weighed(box(400, 0)))
                .counted(EnteredDays.pulses(1000))
                .under(Conditions.NONE.withScaleZeroed());

        assertThat(day(List.of(CalibrationCatch.of(zeroed), calibration(15, FOUR, net(410), 1000)), List.of())
                        .logLikelihood())
                .isCloseTo(likelihood(net(400), net(410)), within(1e-9));
    }

    /** Half the squared distance of the points' means from the usual fill, by their covariance; of the least scatter. */
    @Test
    void equipmentGainsAtMostWhatThePointsAreOffFromTheUsualFill() {
        Sketch day = day(List.of(calibration(0, FOUR, net(200), 1000), calibration(30, TWO, net(180), 900)), List.of());
        List<Fill> fills = List.of(Fill.of(200, 10, 50, 0, 0.004), Fill.of(180, 9, 25, 1, 0.004));
        RealVector off = MatrixUtils.createRealVector(
                fills.stream().mapToDouble(one -> one.fill() - USUAL).toArray());

        assertThat(day.greatestGainByEquipment())
                .isCloseTo(
                        off.dotProduct(new LUDecomposition(covariance(fills))
                                        .getSolver()
                                        .solve(off))
                                / 2,
                        within(1e-7));
    }

    /** 400 and 403 lb are 0.7 % apart, 400 and 405 lb 1.2 %; another point and what nothing tells of don't count. */
    @Test
    void catchesAreAlikeWithinAPercentAtEachPoint() {
        assertThat(alike(403)).isTrue();
        assertThat(alike(405)).isFalse();
    }

    private static boolean alike(double pounds) {
        return day(
                        List.of(
                                calibration(0, FOUR, net(400), 1000),
                                calibration(15, FOUR, net(pounds), 1000),
                                calibration(30, TWO, net(180), 1000)),
                        List.of(verification(45, FOUR, net(300), "40 lb/rev")))
                .isAlike();
    }

    @Test
    void theCatchesThatFitWorstAreThoseFarthestFromTheMiddle() {
        Sketch day = day(
                List.of(
                        calibration(0, FOUR, net(400), 1000),
                        calibration(15, FOUR, net(350), 1000),
                        calibration(30, FOUR, net(405), 1000),
                        calibration(45, FOUR, net(480), 1000)),
                List.of());

        assertThat(day.worstFitting(2).stream().map(SketchedCatch::at)).containsExactly(time(45), time(15));
        assertThat(day.worstFitting(4)).isSameAs(day.catches());
    }

    /** By another catch, the value in force, and what another opening and the usual fill say of this one. */
    @Test
    void whatACatchShouldHaveCaughtIsTheWeightedMeanOfAllElse() {
        Sketch day = Sketch.of(
                CAUGHT,
                List.of(),
                List.of(),
                List.of(inForce(FOUR, "41 lb/rev"), inForce(TWO, "30 lb/rev")),
                CatchLimits.COMMON);
        double scatter = 0.016;
        double[][] elsewhere = {
            {USUAL, SPREAD * SPREAD},
            {Math.log(20 / 25.0), scatter * scatter + variance(180, 9) + SHAPE * SHAPE}
        };
        double[][] here = {
            {Math.log(41.5 / 50), scatter * scatter + variance(415, 10)},
            {Math.log(41.0 / 50), DRIFT * DRIFT},
            {mean(elsewhere), 1 / weights(elsewhere) + SHAPE * SHAPE}
        };

        Sketch.Expected first = day.expectedMasses().get(0);
        assertThat(first.of().at()).isEqualTo(time(0));
        assertThat(first.logKilograms()).isCloseTo(mean(here) + Math.log(500 * POUND), within(1e-9));
        assertThat(first.deviation())
                .isCloseTo(Math.sqrt(1 / weights(here) + scatter * scatter + variance(400, 10)), within(1e-12));
        assertThat(day.expectedMasses()).hasSize(3);
    }

    private static double weights(double[][] estimates) {
        return Stream.of(estimates).mapToDouble(one -> 1 / one[1]).sum();
    }

    private static double mean(double[][] estimates) {
        return Stream.of(estimates).mapToDouble(one -> one[0] / one[1]).sum() / weights(estimates);
    }

    @Test
    void nothingIsExpectedOfACatchThatTellsOfNoTurns() {
        Sketch day = day(List.of(), List.of(verification(60, FOUR, net(410), "41 lb/rev")));

        assertThat(day.expectedMasses()).isEmpty();
    }

    @Test
    void catchesAreInTheOrderOfTimeAndKnowTheirPoint() {
        Sketch day = day(
                List.of(calibration(30, TWO, net(180), 900), calibration(0, FOUR, net(400), 1000)),
                List.of(verification(60, TWO, net(410), 2100, "20 lb/rev")));

        assertThat(day.catches().stream().map(one -> one.at() + " " + one.place()))
                .containsExactly(time(0) + " 0", time(30) + " 1", time(60) + " 1");
        assertThat(day.places()).isEqualTo(2);
        assertThat(day.material()).isEqualTo("salt");
        assertThat(EnteredDays.listing("40 lb/rev").material()).isEqualTo("salt");
    }

    /** A calibration found 40 lb/rev at 4 in and 20 lb/rev at 2 in. */
    private static Sketch calibrated(List<CalibrationInForce> listed, VerificationCatch... catches) {
        return Sketch.of(
                CAUGHT,
                List.of(catches),
                List.of(
                        Calibration.from(List.of(calibration(0, FOUR, net(400), 1000))),
                        Calibration.from(List.of(calibration(0, TWO, net(180), 900))),
                        Calibration.from(List.of(calibration(0, FOUR, net(600), 1000)))),
                listed,
                CatchLimits.COMMON);
    }

    /** 0.2 % is what people round by; 40.1 lb/rev is off by more. */
    @Test
    void aValueThatTheDayFoundTellsNothingMore() {
        assertThat(calibrated(List.of(inForce(FOUR, "40.05 lb/rev"), inForce(TWO, "20 lb/rev")))
                        .held())
                .isEmpty();
        assertThat(calibrated(List.of(inForce(FOUR, "40.1 lb/rev"), inForce(FOUR, "60 lb/rev")))
                        .held())
                .hasSize(2);
        assertThat(calibrated(List.of()).expected().stream()
                        .map(one -> Math.rint(one.kilogramsPerRevolution() / POUND) + " " + one.place()))
                .containsExactly("40.0 0", "20.0 1", "60.0 0");
    }

    @ParameterizedTest
    @CsvSource({"41 lb/rev, 0, 1", "40.05 lb/rev, 0, 1", "40.1 lb/rev, 1, 2", "45 lb/rev, 1, 2"})
    void aCatchIsMadeWithAListedOrAFoundValue(String used, int unlisted, int held) {
        Sketch day = calibrated(List.of(inForce(FOUR, "41 lb/rev")), verification(60, FOUR, net(410), 1025, used));

        assertThat(day.unlisted()).isEqualTo(unlisted);
        assertThat(day.held()).hasSize(held);
    }

    @Test
    void whereNothingIsListedNoValueIsUnlistedAndALaterOneAtAPointMayBeACorrection() {
        Sketch day = day(
                List.of(),
                List.of(
                        verification(0, FOUR, net(410), 1025, "45 lb/rev"),
                        verification(15, FOUR, net(410), 1025, "40 lb/rev")));

        assertThat(day.unlisted()).isZero();
        assertThat(day.held()).hasSize(1);
    }

    /** A step of 10 of 40 kg/rev is a quarter: just as much as 40 is more than 32. */
    @Test
    void aValueIsRoundedByAStepOfTheDisplayAtMost() {
        CalibrationInForce coarse = CalibrationInForce.of(
                FOUR,
                CalibrationFactor.parse("40 kg/rev"),
                Optional.of(Amounts.of(10, SpreadingUnits.KILOGRAM_PER_REVOLUTION)));

        assertThat(Sketch.isRounded(coarse, 32)).isTrue();
        assertThat(Sketch.isRounded(coarse, 31.9)).isFalse();
    }

    /** 42, 40, and 45 lb of 50 lb. */
    @Test
    void theMiddleOfTheValuesInForceIsTheirMedian() {
        assertThat(EnteredDays.listing("42 lb/rev", "40 lb/rev", "45 lb/rev").medianLogFillOfHeld())
                .hasValueCloseTo(Math.log(0.84), within(1e-12));
        assertThat(day(CAUGHT, List.of()).medianLogFill()).hasValueCloseTo(Math.log(0.8), within(1e-12));
        assertThat(day(CAUGHT, List.of()).usualLogFill()).isCloseTo(USUAL, within(1e-12));
    }

    /** What a count from speed and time is uncertain by nobody knows: half a turn. */
    @Test
    void aCountOfUnknownUncertaintyIsHalfATurnOff() {
        ShaftCount timed = new ShaftCount.SpeedTimesTime(
                Amounts.of(60, SpreadingUnits.REVOLUTION_PER_MINUTE), Amounts.of(10, SpreadingUnits.SECOND));
        SketchedCatch one =
                SketchedCatch.of(0, Observation.of(FOUR, time(0), net(400)).counted(timed));

        assertThat(one.turnsVariance()).isCloseTo(0.05 * 0.05, within(1e-12));
        assertThat(one.isInPulses()).isFalse();
    }

    @Test
    void withoutASensorADisplayIsAsFineAsItsStep() {
        CalibrationPoint watched = CalibrationPoint.of(
                EnteredDays.SALT,
                new Spreader(
                        EnteredDays.CHAIN.conveyor(EnteredDays.TYPES),
                        EnteredDays.CHAIN.gate(EnteredDays.TYPES),
                        new NoSensor(Amounts.of(1, SpreadingUnits.ONE))),
                FOUR.setting());
        SketchedCatch one = SketchedCatch.of(0, shown(verification(0, watched, net(400), "40 lb/rev"), 410));

        assertThat(one.displayVariance()).isCloseTo(1 / 12.0 / (410 * 410.0), within(1e-15));
        assertThat(one.displayed()).hasValueCloseTo(10.25, within(1e-12));
        assertThat(one.pulse()).isEqualTo(1);
    }
}
