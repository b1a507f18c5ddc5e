package org.gritwright.core.weighing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.numbers;
import static org.gritwright.core.Samples.only;
import static org.gritwright.core.Samples.pounds;

import java.util.List;
import java.util.Map;
import javax.measure.quantity.Mass;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class CaughtMassFindingsTest {
    private static final Scale UNCHECKED = Scale.of("S-2", pounds(500), pounds(0.1));

    private static List<Finding> withTares(double first, double second) {
        return CaughtMass.of(
                        SCALE,
                        DAY,
                        new Weighing("A", pounds(50), pounds(first)),
                        new Weighing("B", pounds(50), pounds(second)),
                        new Weighing("C", pounds(50), pounds(first)))
                .findings();
    }

    private static List<Finding> checkedWith(double reading) {
        Scale scale = UNCHECKED.checked(new ScaleCheck(DAY, pounds(50), pounds(reading)));
        return CaughtMass.of(scale, DAY, new Weighing("A", pounds(50), pounds(4)))
                .findings();
    }

    @Test
    void aGoodWeighingHasNone() {
        assertThat(withTares(4, 4.2)).isEmpty();
    }

    @Test
    void tareMoreThanTwiceAnotherIsUnequal() {
        Finding finding = only(FindingCode.TARES_UNEQUAL, withTares(8.1, 4));

        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(numbers(finding)).isEqualTo(Map.of("lowest", pounds(4), "highest", pounds(8.1)));
        assertThat(finding.sentence()).isEqualTo("The empty containers weigh from 4 lb to 8.1 lb: check the tares.");
    }

    @Test
    void tareTwiceAnotherIsNotUnequal() {
        assertThat(withTares(8, 4)).isEmpty();
    }

    @Test
    void aTareOfZeroBesideAnotherIsUnequal() {
        assertThat(withTares(0, 4)).extracting(Finding::code).containsExactly(FindingCode.TARES_UNEQUAL);
        assertThat(withTares(0, 0)).isEmpty();
    }

    @Test
    void aScaleThatWasNotCheckedThatDayIsNamed() {
        Scale checkedTheDayBefore = UNCHECKED.checked(new ScaleCheck(DAY.minusDays(1), pounds(50), pounds(50)));
        List<Finding> findings = CaughtMass.of(checkedTheDayBefore, DAY, new Weighing("A", pounds(50), pounds(4)))
                .findings();

        Finding finding = only(FindingCode.SCALE_NOT_CHECKED, findings);
        assertThat(finding.severity()).isEqualTo(Severity.NOTE);
        assertThat(finding.sentence()).isEqualTo("Scale S-2 was not checked with a test weight that day.");
    }

    @Test
    void aCheckThatMissesByMoreThanAScaleOfUnknownAccuracyMayDoubtsTheData() {
        Finding finding = only(FindingCode.SCALE_CHECK_MISSED, checkedWith(50.6));

        assertThat(finding.severity()).isEqualTo(Severity.ERROR);
        assertThat(finding.code().doubtsData()).isTrue();
        assertThat(numbers(finding)).isEqualTo(Map.of("reading", pounds(50.6), "testWeight", pounds(50)));
        assertThat(finding.sentence()).isEqualTo("Scale S-2 showed 50.6 lb for a test weight of 50 lb that day.");
        assertThat(checkedWith(49.4)).extracting(Finding::code).containsExactly(FindingCode.SCALE_CHECK_MISSED);
    }

    @Test
    void aCheckThatMissesByADivisionPasses() {
        assertThat(checkedWith(50.1)).isEmpty();
        assertThat(checkedWith(49.9)).isEmpty();
        assertThat(checkedWith(50)).isEmpty();
    }

    /** 1 % of 50 lb and half a division of 0.1 lb. */
    @Test
    void aScaleOfUnknownAccuracyMayBeOffByOnePercent() {
        assertThat(checkedWith(50.5)).isEmpty();
        assertThat(checkedWith(49.5)).isEmpty();
    }

    @Test
    void aCheckMayMissByWhatTheScalesAccuracyAllowsAndHalfADivision() {
        Scale stated = Scale.of("S-3", pounds(1000), pounds(0.1))
                .withAccuracy(new ScaleAccuracy.Stated(Amounts.of(0.3, SpreadingUnits.PERCENT)));

        // 0.3 % of 550 lb is 1.65 lb.
        assertThat(stated.acceptedMissKilograms(pounds(550)))
                .isCloseTo(Amounts.si(Mass.class, pounds(1.7)), within(1e-12));
        assertThat(UNCHECKED.acceptedMissKilograms(pounds(50)))
                .isCloseTo(Amounts.si(Mass.class, pounds(0.55)), within(1e-12));
        // Not even a division is 1 % of 5 lb and half of one.
        assertThat(UNCHECKED.acceptedMissKilograms(pounds(4)))
                .isCloseTo(Amounts.si(Mass.class, UNCHECKED.division()), within(1e-12));
    }

    @Test
    void aMissedCheckOfAnotherDayIsOfThatDay() {
        Scale scale = UNCHECKED
                .checked(new ScaleCheck(DAY.minusDays(1), pounds(50), pounds(45)))
                .checked(new ScaleCheck(DAY, pounds(50), pounds(50)));

        assertThat(CaughtMass.of(scale, DAY, new Weighing("A", pounds(50), pounds(4)))
                        .findings())
                .isEmpty();
    }
}
