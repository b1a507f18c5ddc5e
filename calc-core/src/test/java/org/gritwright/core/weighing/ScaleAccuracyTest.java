package org.gritwright.core.weighing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.core.weighing.AccuracyClass.Stage;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How far off a scale's span may be; the tables of the handbooks are among the published checks. */
class ScaleAccuracyTest {
    private static final Scale UNKNOWN = Scale.of("S-1", pounds(500), pounds(0.5));
    private static final Scale STATED = UNKNOWN.withAccuracy(stated(0.4));

    private static ScaleAccuracy stated(double percent) {
        return new ScaleAccuracy.Stated(Amounts.of(percent, SpreadingUnits.PERCENT));
    }

    private static ScaleCheck check(double testWeight, double reading) {
        return new ScaleCheck(DAY, pounds(testWeight), pounds(reading));
    }

    private static double limit(Scale scale, double load) {
        return scale.relativeSpanLimit(pounds(load), DAY).orElseThrow();
    }

    @Property
    void aNewScaleIsTwiceAsGoodAsOneInService(
            @ForAll AccuracyClass accuracyClass, @ForAll @DoubleRange(min = 0, max = 1000) double load) {
        double inService = accuracyClass.tolerance(load, Stage.IN_SERVICE);

        assertThat(accuracyClass.tolerance(load, Stage.NEW)).isEqualTo(inService / 2);
        assertThat(accuracyClass.tolerance(load / 2, Stage.IN_SERVICE)).isBetween(1.0, inService);
    }

    @ParameterizedTest
    @EnumSource
    void aLoadAtAStepBelongsBelowItThoughRoundingPutsItAHairAbove(AccuracyClass accuracyClass) {
        for (double step : new double[] {50, 200, 500, 1000}) {
            assertThat(accuracyClass.tolerance(step * (1 + 1e-15), Stage.IN_SERVICE))
                    .isEqualTo(accuracyClass.tolerance(step, Stage.IN_SERVICE));
        }
    }

    @Test
    void idsAreThoseOfDocuments() {
        assertThat(AccuracyClass.values())
                .extracting(AccuracyClass::id)
                .containsExactly("hb44-iii", "hb44-iiil", "hb44-iiii", "r76-i", "r76-ii", "r76-iii", "r76-iiii");
    }

    @Test
    void anInternationalTableEnds() {
        assertRefused(
                "load on a scale of class r76-iii must be at most 10000.0 divisions: 10001.0 divisions",
                () -> AccuracyClass.R76_III.tolerance(10001, Stage.NEW));
        assertRefused(
                "load on a scale of class r76-iii must be at most 10000.0 divisions: 20000.0 divisions",
                () -> Scale.of("S-1", pounds(10000), pounds(0.5))
                        .withAccuracy(new ScaleAccuracy.OfClass(AccuracyClass.R76_III, Stage.NEW)));
        assertThat(AccuracyClass.HB44_III.tolerance(1e6, Stage.NEW)).isEqualTo(2.5);
        assertThat(AccuracyClass.R76_I.tolerance(1e9, Stage.IN_SERVICE)).isEqualTo(3);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesALoadThatIsNone(double load) {
        assertRefused(
                "load in divisions must be 0 or more: " + load,
                () -> AccuracyClass.HB44_III.tolerance(load, Stage.NEW));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, 100})
    void refusesAStatedAccuracyThatIsNone(double percent) {
        String accepted = percent < 100 ? "greater than 0" : "below 100 %";
        assertRefused(
                "stated accuracy of a scale must be " + accepted + ": "
                        + Amounts.format(Amounts.of(percent, SpreadingUnits.PERCENT)),
                () -> stated(percent));
    }

    @Test
    void aStatedAccuracyIsAPartOfTheReading() {
        assertThat(limit(STATED, 60)).isCloseTo(0.004, within(1e-15));
        assertThat(limit(STATED, 400)).isCloseTo(0.004, within(1e-15));
    }

    @Test
    void aClassIsDivisionsOfTheLoad() {
        Scale classed = UNKNOWN.withAccuracy(new ScaleAccuracy.OfClass(AccuracyClass.HB44_III, Stage.IN_SERVICE));

        // 200 divisions: 1 of them; 600 divisions: 2 of them.
        assertThat(limit(classed, 100)).isCloseTo(0.005, within(1e-15));
        assertThat(limit(classed, 300)).isCloseTo(1 / 300.0, within(1e-15));
    }

    @Test
    void ofAnUnknownScaleNothingIsKnown() {
        assertThat(UNKNOWN.relativeSpanLimit(pounds(60), DAY)).isEmpty();
        assertThat(UNKNOWN.isTestedNear(pounds(60), DAY)).isFalse();
    }

    @Test
    void aTestWeightNearTheLoadBoundsTheSpan() {
        Scale tested = UNKNOWN.checked(check(100, 100.5));

        // (0.5 + 0.25) of 100 lb
        assertThat(limit(tested, 60)).isCloseTo(0.0075, within(1e-15));
        assertThat(tested.relativeSpanLimit(pounds(60), DAY.plusDays(1))).isEmpty();
        assertThat(tested.relativeSpanLimit(pounds(201), DAY)).isEmpty();
        assertThat(tested.relativeSpanLimit(pounds(49), DAY)).isEmpty();
        assertThat(tested.isTestedNear(pounds(50), DAY)).isTrue();
        assertThat(tested.isTestedNear(pounds(200), DAY)).isTrue();
        assertThat(tested.isTestedNear(pounds(49.9), DAY)).isFalse();
        assertThat(tested.isTestedNear(pounds(200.1), DAY)).isFalse();
    }

    @Test
    void theCloserOfAccuracyAndTestHolds() {
        assertThat(limit(STATED.checked(check(100, 100)), 100)).isCloseTo(0.0025, within(1e-15));
        assertThat(limit(STATED.checked(check(50, 50)), 60)).isCloseTo(0.004, within(1e-15));
    }

    @Test
    void aTestThatShowsTheScaleWrongIsBelieved() {
        assertThat(limit(STATED.checked(check(100, 101)), 100)).isCloseTo(0.0125, within(1e-15));
    }

    /** In kilograms, so that half of the load is just a half. */
    @Test
    void aTestThatMissesByJustWhatIsStatedShowsNothingWrong() {
        Scale scale = Scale.of("S-1", kilograms(500), kilograms(0.5))
                .withAccuracy(stated(50))
                .checked(new ScaleCheck(DAY, kilograms(100), kilograms(150)));

        assertThat(scale.relativeSpanLimit(kilograms(100), DAY)).hasValue(0.5);
    }

    private static Quantity<Mass> kilograms(double kilograms) {
        return Amounts.of(kilograms, SpreadingUnits.KILOGRAM);
    }

    @Test
    void ofTwoTestsTheOneThatShowsTheScaleWrongIsBelieved() {
        assertThat(limit(UNKNOWN.checked(check(100, 100)).checked(check(60, 62)), 80))
                .isCloseTo(2.25 / 60, within(1e-15));
        assertThat(limit(UNKNOWN.checked(check(60, 62)).checked(check(100, 100)), 80))
                .isCloseTo(2.25 / 60, within(1e-15));
        assertThat(limit(UNKNOWN.checked(check(60, 60)).checked(check(100, 100)), 80))
                .isCloseTo(0.0025, within(1e-15));
    }

    @Test
    void theHeaviestContainerIsWhatTheSpanIsOf() {
        Scale classed = UNKNOWN.withAccuracy(new ScaleAccuracy.OfClass(AccuracyClass.HB44_III, Stage.IN_SERVICE))
                .checked(check(250, 250));
        CaughtMass caught = new CaughtMass(
                classed,
                DAY,
                List.of(
                        new Weighing("a", pounds(100), pounds(5)),
                        new Weighing("b", pounds(400), pounds(5)),
                        new Weighing("c", pounds(60), pounds(5))));

        // 800 divisions: 2 of them, 0.25 %; by the test (0.25 of 250) 0.1 %.
        assertThat(caught.relativeSpanLimit()).hasValueCloseTo(0.001, within(1e-15));
        assertThat(caught.isSpanTested()).isTrue();
        assertThat(CaughtMass.of(classed, DAY, new Weighing("a", pounds(100), pounds(5)))
                        .isSpanTested())
                .isFalse();
    }

    @Test
    void roundingsOfAllReadingsAreIndependent() {
        double one = 0.5 / Math.sqrt(12) * 0.45359237;

        assertThat(UNKNOWN.roundingKilograms()).isCloseTo(one, within(1e-15));
        assertThat(CaughtMass.of(UNKNOWN, DAY, new Weighing("a", pounds(100), pounds(5)))
                        .roundingKilograms())
                .isCloseTo(one * Math.sqrt(2), within(1e-15));
        assertThat(CaughtMass.of(
                                UNKNOWN,
                                DAY,
                                new Weighing("a", pounds(100), pounds(5)),
                                new Weighing("b", pounds(100), pounds(5)),
                                new Weighing("c", pounds(100), pounds(5)))
                        .roundingKilograms())
                .isCloseTo(one * Math.sqrt(6), within(1e-15));
    }

    @Test
    void aWrongZeroCancelsInGrossLessTare() {
        CaughtMass right = CaughtMass.of(STATED, DAY, new Weighing("a", pounds(100), pounds(5)));
        CaughtMass shifted = CaughtMass.of(STATED, DAY, new Weighing("a", pounds(103), pounds(8)));

        assertThat(shifted.total()).isEqualTo(right.total());
        assertThat(shifted.relativeSpanLimit()).isEqualTo(right.relativeSpanLimit());
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(STATED);
        assertNamesWhatIsMissing(new ScaleAccuracy.OfClass(AccuracyClass.R76_III, Stage.NEW));
    }
}
