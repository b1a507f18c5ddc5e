package org.gritwright.core.boom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.boom.BoomSamples.gallonsPerMinute;
import static org.gritwright.core.boom.BoomSamples.number;
import static org.gritwright.core.boom.NozzleCatches.GUARDED;
import static org.gritwright.core.boom.NozzleCatches.OF_AVERAGE;
import static org.gritwright.core.boom.NozzleCatches.OF_NEW;
import static org.gritwright.core.boom.NozzleCatches.OF_RATE;
import static org.gritwright.core.boom.NozzleCondition.HIGH;
import static org.gritwright.core.boom.NozzleCondition.LOW;
import static org.gritwright.core.boom.NozzleCondition.UNDECIDED;
import static org.gritwright.core.boom.NozzleCondition.WITHIN;
import static org.gritwright.core.boom.NozzleTest.assertRefused;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class NozzleCatchesTest {

    /** A nozzle of so many gal/min, known to a standard uncertainty. */
    private static NozzleFlow flow(String section, String nozzle, double flow, double uncertainty) {
        return new NozzleFlow(
                section,
                nozzle,
                Measured.of(gallonsPerMinute(flow), gallonsPerMinute(uncertainty), Double.POSITIVE_INFINITY));
    }

    /** Nozzles 1, 2, 3 … of one section. */
    private static NozzleCatches row(double uncertainty, double... flows) {
        return new NozzleCatches(IntStream.range(0, flows.length)
                .mapToObj(i -> flow("all", String.valueOf(i + 1), flows[i], uncertainty))
                .toList());
    }

    private static NozzleCatches unknown(double... flows) {
        return new NozzleCatches(IntStream.range(0, flows.length)
                .mapToObj(i -> new NozzleFlow("all", "" + i, Measured.once(gallonsPerMinute(flows[i]))))
                .toList());
    }

    private static List<NozzleCondition> conditions(NozzleReview review) {
        return review.comparisons().stream().map(NozzleComparison::condition).toList();
    }

    private static double[] deviations(NozzleReview review) {
        return review.comparisons().stream()
                .mapToDouble(one -> number(one.deviation().value()))
                .toArray();
    }

    private static List<FindingCode> codes(List<Finding> findings) {
        return findings.stream().map(Finding::code).toList();
    }

    // A catch

    /** 1 L in 30 s; 10 mL of division are 2.887 mL, 0.5 s either way are 0.2887 s. */
    @Test
    void aCatchIsVolumeOverTime() {
        NozzleFlow caught = NozzleFlow.caught(
                "left",
                "3",
                Amounts.of(1000, SpreadingUnits.MILLILITER),
                Amounts.of(10, SpreadingUnits.MILLILITER),
                Amounts.of(30, SpreadingUnits.SECOND),
                Amounts.of(0.5, SpreadingUnits.SECOND));
        assertThat(caught.flow().value().getUnit()).isEqualTo(SpreadingUnits.LITER_PER_MINUTE);
        assertThat(number(caught.flow().value())).isCloseTo(2, within(1e-14));
        assertThat(number(caught.flow().standardUncertainty().orElseThrow()))
                .isCloseTo(2 * Math.hypot(0.01 / Math.sqrt(12), 0.5 / 30 / Math.sqrt(3)), within(1e-14));
        assertThat(caught.flow().degreesOfFreedom()).hasValue(Double.POSITIVE_INFINITY);
        assertThat(caught.section()).isEqualTo("left");
        assertThat(caught.nozzle()).isEqualTo("3");
    }

    @Test
    void aBlockedNozzleGivesNothingAsFinelyAsTheGraduateReads() {
        NozzleFlow blocked = caught(0, 10, 30, 0.5);
        assertThat(number(blocked.flow().value())).isZero();
        assertThat(number(blocked.flow().standardUncertainty().orElseThrow()))
                .isCloseTo(0.02 / Math.sqrt(12), within(1e-15));
    }

    private static NozzleFlow caught(double milliliters, double division, double seconds, double eitherWay) {
        return NozzleFlow.caught(
                "s",
                "n",
                Amounts.of(milliliters, SpreadingUnits.MILLILITER),
                Amounts.of(division, SpreadingUnits.MILLILITER),
                Amounts.of(seconds, SpreadingUnits.SECOND),
                Amounts.of(eitherWay, SpreadingUnits.SECOND));
    }

    @Test
    void catchesThatCannotBeAreRefused() {
        assertRefused("volume caught must be 0 or more: -1 mL", () -> caught(-1, 10, 30, 0));
        assertRefused("division of the graduate must be greater than 0: 0 mL", () -> caught(1, 0, 30, 0));
        assertRefused("time of the catch must be greater than 0: 0 s", () -> caught(1, 10, 0, 0));
        assertRefused("uncertainty of the time of the catch must be 0 or more: -1 s", () -> caught(1, 10, 30, -1));
        assertRefused(
                "uncertainty of the time of the catch must be below the time, 30 s: 30 s", () -> caught(1, 10, 30, 30));
        assertRefused("flow of nozzle n must be 0 or more: -1 gal/min", () -> flow("s", "n", -1, 0));
        assertRefused("name of a boom section must be a text that is not blank: \"\"", () -> flow("", "n", 1, 0));
        assertRefused("name of a nozzle must be a text that is not blank: \"\"", () -> flow("s", "", 1, 0));
        assertRefused("nozzles of a boom must be two or more: 1", () -> row(0, 1));
        assertRefused("flow of all nozzles must be greater than 0: 0", () -> row(0, 0, 0));
        assertRefused(
                "nozzle of section s must be caught once: n",
                () -> new NozzleCatches(List.of(flow("s", "n", 1, 0), flow("s", "n", 2, 0))));
        assertRefused(
                "nozzles of a boom must be at most 10000: more",
                () -> new NozzleCatches(Collections.nCopies(10_001, flow("s", "n", 1, 0))));
        assertThat(new NozzleCatches(List.of(flow("s", "n", 1, 0), flow("t", "n", 2, 0))).flows())
                .hasSize(2);
    }

    // Average, variation, total

    @Test
    void averageAndVariation() {
        NozzleCatches catches = row(0.3, 1, 2, 3);
        assertThat(number(catches.average().value())).isCloseTo(2, within(1e-14));
        assertThat(number(catches.average().standardUncertainty().orElseThrow()))
                .isCloseTo(0.3 / Math.sqrt(3), within(1e-14));
        assertThat(number(catches.variation())).isCloseTo(50, within(1e-12));
        assertThat(catches.byAverage(OF_AVERAGE, GUARDED).variation()).contains(catches.variation());
        assertThat(catches.average().value().getUnit()).isEqualTo(SpreadingUnits.US_GALLON_PER_MINUTE);
    }

    @Test
    void oneNozzleAloneVariesFromNone() {
        NozzleReview two = row(0.01, 1, 1).byNew(gallonsPerMinute(1), OF_AVERAGE, GUARDED);
        NozzleReview one = new NozzleReview(
                two.yardstick(),
                two.reference(),
                two.tolerance(),
                two.comparisons().subList(0, 1),
                two.agree());

        assertThat(two.variation()).isPresent();
        assertThat(one.variation()).isEmpty();
    }

    @Test
    void theTotalBesideTheFlowThatIsWanted() {
        NozzleCatches catches = row(0.01, 1.1, 1.1, 1.1, 1.1);
        Measured<?> error = catches.totalError(gallonsPerMinute(4));
        assertThat(number(error.value())).isCloseTo(10, within(1e-12));
        assertThat(number(error.standardUncertainty().orElseThrow())).isCloseTo(0.5, within(1e-12));
        assertThat(catches.totalFindings(gallonsPerMinute(4), OF_RATE, GUARDED))
                .singleElement()
                .hasToString("boom-rate-off: All nozzles together give 4.4 gal/min where rate and speed need 4 gal/min,"
                        + " 10 % off, and the limit is 5 %: adjust pressure or speed, or change nozzles.");
        assertThat(catches.totalFindings(gallonsPerMinute(4.2), OF_RATE, GUARDED))
                .isEmpty();
        assertThat(catches.totalFindings(gallonsPerMinute(5), OF_RATE, GUARDED)).hasSize(1);
        assertRefused("wanted flow must be greater than 0: 0 gal/min", () -> catches.totalError(gallonsPerMinute(0)));
    }

    // Which nozzles are off

    /** By the letter of the rule the good ones would be worn; the yardstick's name says what they are compared with. */
    @Test
    void oneBlockedNozzleDoesNotMakeGoodOnesLookWorn() {
        NozzleCatches catches = row(0.005, 1, 1, 1, 0);

        NozzleReview letter = catches.byAverageOfAll(OF_AVERAGE, GUARDED);
        assertThat(letter.yardstick()).isEqualTo(NozzleYardstick.AVERAGE_OF_ALL);
        assertThat(number(letter.reference())).isCloseTo(0.75, within(1e-14));
        assertThat(deviations(letter))
                .containsExactly(new double[] {100 / 3.0, 100 / 3.0, 100 / 3.0, -100}, within(1e-12));
        assertThat(conditions(letter)).containsExactly(HIGH, HIGH, HIGH, LOW);

        NozzleReview review = catches.byAverage(OF_AVERAGE, GUARDED);
        assertThat(review.yardstick()).isEqualTo(NozzleYardstick.AVERAGE_OF_THOSE_THAT_AGREE);
        assertThat(number(review.reference())).isCloseTo(1, within(1e-14));
        assertThat(conditions(review)).containsExactly(WITHIN, WITHIN, WITHIN, LOW);
        assertThat(review.off())
                .singleElement()
                .satisfies(one -> assertThat(one.nozzle().nozzle()).isEqualTo("4"));
        assertThat(review.findings())
                .singleElement()
                .hasToString(
                        "nozzle-off-average: Nozzle 4 of section all gives 0 gal/min, -100 % from the average of"
                                + " 1 gal/min, and the limit is 10 % either way: clean it, compare it with a new one, replace it if it"
                                + " gives too much. Under flow control the total stays right and the other nozzles make up for it.");
    }

    @Test
    void nozzlesThatAllAgreeAreComparedWithTheAverageOfAll() {
        NozzleReview review = row(0.001, 1, 1.02, 0.98, 1).byAverage(OF_AVERAGE, GUARDED);
        assertThat(review.yardstick()).isEqualTo(NozzleYardstick.AVERAGE_OF_ALL);
        assertThat(review.agree()).isTrue();
        assertThat(review.tolerance()).isEqualTo(OF_AVERAGE);
        assertThat(conditions(review)).containsOnly(WITHIN);
        assertThat(review.findings()).isEmpty();
    }

    @Test
    void halfAgainstHalfIsNoMajority() {
        NozzleReview review = row(0.001, 1, 1, 0.5, 0.5).byAverage(OF_AVERAGE, GUARDED);
        assertThat(review.yardstick()).isEqualTo(NozzleYardstick.AVERAGE_OF_ALL);
        assertThat(review.agree()).isFalse();
        assertThat(conditions(review)).containsExactly(HIGH, HIGH, LOW, LOW);
        assertThat(codes(review.findings()))
                .containsExactly(
                        FindingCode.NOZZLES_DISAGREE,
                        FindingCode.NOZZLE_OFF_AVERAGE,
                        FindingCode.NOZZLE_OFF_AVERAGE,
                        FindingCode.NOZZLE_OFF_AVERAGE,
                        FindingCode.NOZZLE_OFF_AVERAGE);
        assertThat(row(0.001, 1, 1, 0.5, 0.5)
                        .byAverageOfAll(OF_AVERAGE, GUARDED)
                        .agree())
                .isFalse();
        // Two of four lie at the median: half, not more.
        assertThat(row(0.001, 2, 1, 1, 0.5).byAverage(OF_AVERAGE, GUARDED).agree())
                .isFalse();
    }

    @Test
    void nozzlesThatGiveNothingAgreeOnNothing() {
        NozzleReview review = row(0.001, 1, 0, 0).byAverage(OF_AVERAGE, GUARDED);
        assertThat(review.agree()).isFalse();
        assertThat(conditions(review)).containsExactly(HIGH, LOW, LOW);
    }

    /** At 90 % of the median one agrees still. */
    @Test
    void theToleranceIsOfTheMedian() {
        assertThat(number(row(0.001, 1, 1, 0.9, 0.5, 1.11)
                        .byAverage(OF_AVERAGE, GUARDED)
                        .reference()))
                .isCloseTo(2.9 / 3, within(1e-14));
    }

    @Test
    void theMedianIsTheMiddleOne() {
        assertThat(number(row(0.001, 1.3, 1, 1).byAverage(OF_AVERAGE, GUARDED).reference()))
                .isCloseTo(1, within(1e-14));
        // Of four, the middle of the two in the middle, 0.95: 0.85 isn't within a tenth of it, 1.04 is.
        assertThat(number(row(0.001, 1.04, 1, 0.9, 0.85)
                        .byAverage(OF_AVERAGE, GUARDED)
                        .reference()))
                .isCloseTo(2.94 / 3, within(1e-14));
    }

    @Test
    void onlyANewOneTellsThatAllAreWorn() {
        NozzleCatches worn = row(0.005, 1.2, 1.2, 1.2);
        assertThat(conditions(worn.byAverage(OF_AVERAGE, GUARDED))).containsOnly(WITHIN);

        NozzleReview review = worn.byNew(gallonsPerMinute(1), OF_NEW, GUARDED);
        assertThat(review.yardstick()).isEqualTo(NozzleYardstick.NEW_NOZZLE);
        assertThat(review.reference()).isEqualTo(gallonsPerMinute(1));
        assertThat(deviations(review)).containsExactly(new double[] {20, 20, 20}, within(1e-12));
        assertThat(conditions(review)).containsOnly(HIGH);
        assertThat(review.findings())
                .hasSize(3)
                .first()
                .hasToString(
                        "nozzle-off-new: Nozzle 1 of section all gives 1.2 gal/min, 20 % from the 1 gal/min of a new one, and the"
                                + " limit is 10 % either way: clean it if it gives too little, replace it if that doesn't help or if"
                                + " it gives too much.");
        assertRefused(
                "flow of a new nozzle must be greater than 0: 0 gal/min",
                () -> worn.byNew(gallonsPerMinute(0), OF_NEW, GUARDED));
    }

    @Test
    void besideANewOneItDoesNotMatterWhetherTheyAgree() {
        NozzleReview review = row(0.001, 1, 0.5).byNew(gallonsPerMinute(1), OF_NEW, GUARDED);
        assertThat(review.agree()).isFalse();
        assertThat(codes(review.findings())).containsExactly(FindingCode.NOZZLE_OFF_NEW);
    }

    /** 10.5 % too much is shown at a standard uncertainty of 0.2 %, but not at 1 %; k is 1.645. */
    @Test
    void aNozzleIsCalledOffOnlyWhereItIsShown() {
        assertThat(conditions(row(0.002, 1.105, 1.05).byNew(gallonsPerMinute(1), OF_NEW, GUARDED)))
                .containsExactly(HIGH, WITHIN);
        NozzleReview rough = row(0.01, 1.105, 1.05).byNew(gallonsPerMinute(1), OF_NEW, GUARDED);
        assertThat(conditions(rough)).containsExactly(UNDECIDED, WITHIN);
        assertThat(rough.off()).isEmpty();
        assertThat(rough.findings())
                .singleElement()
                .hasToString(
                        "nozzle-undecided: Nozzle 1 of section all gave 1.105 gal/min, 10.5 % from 1 gal/min: too near"
                                + " to the limit of 10 % for how finely it was measured. Catch for longer or read more finely.");
        // A guard band as wide as the tolerance shows nothing to be within.
        assertThat(conditions(row(0.1, 1, 1).byNew(gallonsPerMinute(1), OF_NEW, GUARDED)))
                .containsOnly(UNDECIDED);
    }

    /** Own reading and average move together: of two nozzles, u ÷ √2. */
    @Test
    void theAverageIsUncertainToo() {
        Measured<?> deviation = row(0.1, 1, 1)
                .byAverage(OF_AVERAGE, GUARDED)
                .comparisons()
                .get(0)
                .deviation();
        assertThat(number(deviation.standardUncertainty().orElseThrow())).isCloseTo(10 / Math.sqrt(2), within(1e-12));
        // Of a nozzle that isn't in the average of three: √(1 + ratio²/3).
        Measured<?> left = row(0.1, 1, 1, 1, 0.5)
                .byAverage(OF_AVERAGE, GUARDED)
                .comparisons()
                .get(3)
                .deviation();
        assertThat(number(left.standardUncertainty().orElseThrow()))
                .isCloseTo(10 * Math.sqrt(1 + 0.25 / 3), within(1e-12));
    }

    @Test
    void withoutAnUncertaintyNothingIsShown() {
        NozzleCatches catches = unknown(1, 1, 2);
        assertThat(catches.average().standardUncertainty()).isEmpty();
        assertThat(conditions(catches.byNew(gallonsPerMinute(1), OF_NEW, GUARDED)))
                .containsOnly(UNDECIDED);
        assertThat(conditions(catches.byNew(gallonsPerMinute(1), OF_NEW, DecisionRule.SIMPLE)))
                .containsExactly(WITHIN, WITHIN, HIGH);
    }

    @Test
    void oneUnknownUncertaintyMakesTheAverageUnknown() {
        NozzleCatches catches = new NozzleCatches(
                List.of(flow("s", "1", 1, 0.001), new NozzleFlow("s", "2", Measured.once(gallonsPerMinute(1)))));
        assertThat(conditions(catches.byAverage(OF_AVERAGE, GUARDED))).containsOnly(UNDECIDED);
        assertThat(conditions(catches.byNew(gallonsPerMinute(1), OF_NEW, GUARDED)))
                .containsExactly(WITHIN, UNDECIDED);
    }

    @Test
    void theFewestDegreesOfFreedomCount() {
        NozzleCatches catches = new NozzleCatches(List.of(
                flow("s", "1", 1, 0.01),
                new NozzleFlow("s", "2", Measured.of(gallonsPerMinute(1), gallonsPerMinute(0.01), 2))));
        assertThat(catches.average().degreesOfFreedom()).hasValue(2);
        assertThat(catches.byNew(gallonsPerMinute(1), OF_NEW, GUARDED)
                        .comparisons()
                        .get(0)
                        .deviation()
                        .degreesOfFreedom())
                .hasValue(Double.POSITIVE_INFINITY);
    }

    @Test
    void theTolerancesAreThoseOfTheSources() {
        assertThat(OF_AVERAGE).isEqualTo(Tolerance.percent(10));
        assertThat(OF_NEW).isEqualTo(Tolerance.percent(10));
        assertThat(OF_RATE).isEqualTo(Tolerance.percent(5));
        assertThat(GUARDED).isEqualTo(DecisionRule.guarded(5));
    }

    // Shares

    /** 2.2 of 4.2 in two nozzles of four: under flow control that section gets 4.76 % too much. */
    @Test
    void aWornNozzleTakesFromTheOtherSections() {
        NozzleCatches catches = new NozzleCatches(List.of(
                flow("left", "1", 1.2, 0.01),
                flow("right", "1", 1, 0.01),
                flow("left", "2", 1, 0.01),
                flow("right", "2", 1, 0.01)));
        List<SectionShare> shares = catches.sectionShares();
        assertThat(shares).extracting(SectionShare::section).containsExactly("left", "right");
        assertThat(shares).extracting(SectionShare::nozzles).containsExactly(2, 2);
        assertThat(number(shares.get(0).share())).isCloseTo(220 / 4.2, within(1e-12));
        assertThat(number(shares.get(0).even())).isCloseTo(50, within(1e-12));
        assertThat(number(shares.get(0).error())).isCloseTo(100 * (4.4 / 4.2 - 1), within(1e-12));
        assertThat(number(shares.get(1).error())).isCloseTo(100 * (4 / 4.2 - 1), within(1e-12));
    }

    @Test
    void wordsDiffer() {
        assertThat(Arrays.stream(NozzleCondition.values()).map(NozzleCondition::words))
                .doesNotHaveDuplicates()
                .contains("within tolerance", "can't tell");
        assertThat(Arrays.stream(NozzleYardstick.values()).map(NozzleYardstick::words))
                .doesNotHaveDuplicates()
                .contains("average of all nozzles");
        assertThat(List.of(HIGH.isOff(), LOW.isOff(), WITHIN.isOff(), UNDECIDED.isOff()))
                .containsExactly(true, true, false, false);
    }
}
