package org.gritwright.core.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.augerInForce;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.numbers;
import static org.gritwright.core.Samples.only;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.assertj.core.data.Offset;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/**
 * Made-up runs with 6 lb/rev in force and a target flow of 2.5 lb/s: whatever loss and steady error went in must come
 * out.
 */
class StartUpTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(4);
    private static final Offset<Double> ROUNDING = within(1e-9);

    /** A run of so many seconds that indicated so many pounds. */
    private static VerificationCatch run(double seconds, double indicatedPounds) {
        ShaftCount count = new ShaftCount.ByEye(
                Amounts.of(indicatedPounds / 6, SpreadingUnits.REVOLUTION), Amounts.of(0, SpreadingUnits.REVOLUTION));
        return Runs.of(augerInForce(6), Runs.seconds(seconds), caught(indicatedPounds), count);
    }

    /** Runs that lose so many pounds each and run off the target flow by so much. */
    private static StartUp separate(double lostPounds, double steadyError, double... seconds) {
        return StartUp.separate(
                Arrays.stream(seconds)
                        .mapToObj(s -> run(s, 2.5 * (1 + steadyError) * s - lostPounds))
                        .toList(),
                TOLERANCE);
    }

    private static double number(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }

    @Test
    void twoRunTimesGiveBackLossAndSteadyError() {
        StartUp startUp = separate(15, -0.02, 60, 120);

        assertThat(startUp.lostMassPerStart().getUnit()).isEqualTo(SpreadingUnits.POUND);
        assertThat(number(startUp.lostMassPerStart())).isCloseTo(15, ROUNDING);
        assertThat(number(startUp.lostTimePerStart())).isCloseTo(15 / 2.45, ROUNDING);
        assertThat(number(startUp.steadyError())).isCloseTo(-2, ROUNDING);
        assertThat(startUp.steadyErrorUncertainty()).isEmpty();
        assertThat(number(startUp.expectedMassOfShortestRun())).isCloseTo(150, ROUNDING);
        assertThat(startUp.tolerance()).isEqualTo(TOLERANCE);
    }

    @Test
    void threeRunTimesOnALineHaveNoUncertaintyButItIsThere() {
        StartUp startUp = separate(15, -0.02, 60, 120, 240);

        assertThat(number(startUp.lostMassPerStart())).isCloseTo(15, ROUNDING);
        assertThat(number(startUp.steadyError())).isCloseTo(-2, ROUNDING);
        assertThat(number(startUp.steadyErrorUncertainty().orElseThrow())).isCloseTo(0, ROUNDING);
    }

    @Test
    void threeRunTimesOffALineTellHowUncertainTheSteadyErrorIs() {
        // y = 0, 1, 1 at x = 0, 1, 2 has the slope 1/2 with an uncertainty of √(1/12); here y is 150 lb and x is 60 s
        // longer, so that the steady flow is 1.25 lb/s, half the target, uncertain by √(1/12) of the target.
        StartUp startUp = StartUp.separate(List.of(run(60, 150), run(120, 300), run(180, 300)), TOLERANCE);

        assertThat(number(startUp.steadyError())).isCloseTo(-50, ROUNDING);
        assertThat(number(startUp.steadyErrorUncertainty().orElseThrow()))
                .isCloseTo(100 * Math.sqrt(1 / 12.0), ROUNDING);
    }

    @Test
    void aFirstOrderStartLosesItsTimeConstant() {
        // Derived: m = r·(T − τ·(1 − e^(−T/τ))) with r 2.5 lb/s, τ 0.8 s; after 12 s and more the exponential is gone.
        List<VerificationCatch> runs = IntStream.of(12, 24, 36)
                .mapToObj(t -> run(t, 2.5 * (t - 0.8 * (1 - Math.exp(-t / 0.8)))))
                .toList();
        StartUp startUp = StartUp.separate(runs, TOLERANCE);

        assertThat(number(startUp.lostTimePerStart())).isCloseTo(0.8, within(1e-6));
        assertThat(number(startUp.steadyError())).isCloseTo(0, within(1e-5));
    }

    @Test
    void aLossBeyondTheToleranceOfTheShortestRunIsAFinding() {
        List<Finding> findings = separate(6.1, 0, 60, 120).findings();
        Finding finding = only(FindingCode.START_UP_LOSS, findings);

        assertThat(codes(findings)).containsExactly(FindingCode.START_UP_LOSS);
        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(numbers(finding)).containsOnlyKeys("lostMass", "lostTime");
        assertThat(finding.sentence())
                .isEqualTo("Each start loses about 6.1 lb or 2.44 s; the steady flow is judged separately.");
        assertThat(separate(6, 0, 60, 120).findings()).isEmpty();
    }

    @Test
    void aGainIsANumberButNoLoss() {
        StartUp startUp = separate(-10, 0, 60, 120);

        assertThat(number(startUp.lostMassPerStart())).isCloseTo(-10, ROUNDING);
        assertThat(number(startUp.lostTimePerStart())).isCloseTo(-4, ROUNDING);
        assertThat(startUp.findings()).isEmpty();
    }

    @Test
    void aSteadyFlowBeyondTheToleranceIsAFinding() {
        List<Finding> findings = separate(0, -0.05, 60, 120).findings();
        Finding finding = only(FindingCode.STEADY_FLOW_OFF, findings);

        assertThat(codes(findings)).containsExactly(FindingCode.STEADY_FLOW_OFF);
        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(number(finding.number("error"))).isCloseTo(-5, ROUNDING);
        assertThat(finding.sentence()).isEqualTo("The steady flow is off the target flow by -5 %.");
        assertThat(numbers(finding)).isInstanceOf(Map.class).hasSize(1);
        assertThat(codes(separate(0, 0.05, 60, 120).findings())).containsExactly(FindingCode.STEADY_FLOW_OFF);
        assertThat(separate(0, 0.04, 60, 120).findings()).isEmpty();
    }
}
