package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.planning.Setups.inPercent;
import static org.gritwright.core.planning.Setups.percent;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The numbers of 5 lb/s, τ 0.8 s and 12 s are derived from the definition of the lag. */
class FirstOrderStartTest {
    private static final FirstOrderStart START = new FirstOrderStart(Amounts.of(0.8, SpreadingUnits.SECOND));

    @Test
    void twelveSecondsOfFivePoundsASecondAre56PoundsOfSixty() {
        assertThat(Amounts.in(
                        START.delivered(
                                Amounts.of(5, SpreadingUnits.POUND_PER_SECOND), Amounts.of(12, SpreadingUnits.SECOND)),
                        SpreadingUnits.POUND))
                .isCloseTo(56.0000, within(5e-5));
        assertThat(inPercent(START.lostPart(Amounts.of(12, SpreadingUnits.SECOND))))
                .isCloseTo(6.667, within(5e-4));
    }

    /** 0.8 s × ln 9 = 1.757780 s. */
    @Test
    void fromATenthToNineTenths() {
        assertThat(Amounts.in(START.riseTime(), SpreadingUnits.SECOND)).isCloseTo(1.757780, within(5e-7));
    }

    /** 1.757780 s ÷ ln 9 = 0.8 s. */
    @Test
    void aMeasuredRiseTimeGivesTheTimeConstantInItsUnit() {
        FirstOrderStart start = FirstOrderStart.fromRiseTime(Amounts.of(1.757780, SpreadingUnits.SECOND));
        assertThat(Amounts.in(start.timeConstant(), SpreadingUnits.SECOND)).isCloseTo(0.8, within(5e-7));
        assertThat(FirstOrderStart.fromRiseTime(Amounts.of(0.5, SpreadingUnits.MINUTE))
                        .timeConstant()
                        .getUnit())
                .isEqualTo(SpreadingUnits.MINUTE);
    }

    @Property
    void theRiseTimeOfAStartGivesThatStart(@ForAll @DoubleRange(min = 0.01, max = 100) double seconds) {
        FirstOrderStart start = new FirstOrderStart(Amounts.of(seconds, SpreadingUnits.SECOND));
        assertThat(Amounts.in(FirstOrderStart.fromRiseTime(start.riseTime()).timeConstant(), SpreadingUnits.SECOND))
                .isCloseTo(seconds, within(1e-14 * seconds));
    }

    /** By definition 1 − 1/e after τ, 90 % after τ·ln 10, and a half after τ·ln 2. */
    @ParameterizedTest
    @CsvSource({"63.21205588285577, 0.8", "90, 1.842068", "50, 0.554518"})
    void aMeasuredTimeToReachAPartGivesTheTimeConstant(double part, double seconds) {
        FirstOrderStart start =
                FirstOrderStart.fromTimeToReach(percent(part), Amounts.of(seconds, SpreadingUnits.SECOND));
        assertThat(Amounts.in(start.timeConstant(), SpreadingUnits.SECOND)).isCloseTo(0.8, within(5e-7));
    }

    /** The difference of the times to 90 % and to 10 % is the rise time. */
    @Property
    void bothWaysOfMeasuringAgree(@ForAll @DoubleRange(min = 0.01, max = 100) double seconds) {
        double toTenth = -seconds * Math.log(0.9);
        double toNineTenths = seconds * Math.log(10);
        FirstOrderStart byReaching =
                FirstOrderStart.fromTimeToReach(percent(90), Amounts.of(toNineTenths, SpreadingUnits.SECOND));
        FirstOrderStart byRiseTime =
                FirstOrderStart.fromRiseTime(Amounts.of(toNineTenths - toTenth, SpreadingUnits.SECOND));
        assertThat(Amounts.in(byReaching.timeConstant(), SpreadingUnits.SECOND))
                .isCloseTo(Amounts.in(byRiseTime.timeConstant(), SpreadingUnits.SECOND), within(1e-12 * seconds));
    }

    @Test
    void isPrintedInOurSymbols() {
        assertThat(START).hasToString("start with a time constant of 0.8 s");
    }

    /** Long runs lose τ ÷ T: 1 % of 80 s. */
    @Test
    void howLongARunMustBe() {
        assertThat(Amounts.in(START.shortestRun(percent(1)), SpreadingUnits.SECOND))
                .isCloseTo(80, within(1e-9));
    }

    @Property
    void theShortestRunLosesJustThatPart(
            @ForAll @DoubleRange(min = 0.01, max = 99) double percentLost,
            @ForAll @DoubleRange(min = 0.01, max = 100) double seconds) {
        FirstOrderStart start = new FirstOrderStart(Amounts.of(seconds, SpreadingUnits.SECOND));
        assertThat(inPercent(start.lostPart(start.shortestRun(percent(percentLost)))))
                .isCloseTo(percentLost, within(1e-9 * percentLost));
    }

    @Property
    void whatIsLostAndWhatIsDeliveredAreTheWhole(@ForAll @DoubleRange(min = 0.01, max = 1e4) double runSeconds) {
        double delivered = Amounts.in(
                START.delivered(
                        Amounts.of(5, SpreadingUnits.KILOGRAM_PER_SECOND),
                        Amounts.of(runSeconds, SpreadingUnits.SECOND)),
                SpreadingUnits.KILOGRAM);
        double lost = inPercent(START.lostPart(Amounts.of(runSeconds, SpreadingUnits.SECOND))) / 100;
        assertThat(delivered + lost * 5 * runSeconds).isCloseTo(5 * runSeconds, within(1e-9 * runSeconds));
    }

    @Test
    void badNumbersAreRefused() {
        assertRefused(
                "time constant of the start must be greater than 0: 0 s",
                () -> new FirstOrderStart(Amounts.of(0, SpreadingUnits.SECOND)));
        assertRefused(
                "rise time of the start must be greater than 0: -1 s",
                () -> FirstOrderStart.fromRiseTime(Amounts.of(-1, SpreadingUnits.SECOND)));
        assertRefused(
                "time to reach 90 % of the steady flow must be greater than 0: 0 s",
                () -> FirstOrderStart.fromTimeToReach(percent(90), Amounts.of(0, SpreadingUnits.SECOND)));
        assertRefused(
                "part of the steady flow must be below 100 %: 100 %",
                () -> FirstOrderStart.fromTimeToReach(percent(100), Amounts.of(1, SpreadingUnits.SECOND)));
        assertRefused(
                "run time must be greater than 0: 0 s", () -> START.lostPart(Amounts.of(0, SpreadingUnits.SECOND)));
        assertRefused("part lost by the start must be below 100 %: 100 %", () -> START.shortestRun(percent(100)));
        assertRefused(
                "steady flow must be greater than 0: 0 lb/s",
                () -> START.delivered(
                        Amounts.of(0, SpreadingUnits.POUND_PER_SECOND), Amounts.of(12, SpreadingUnits.SECOND)));
    }
}
