package org.gritwright.core.roadspeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.numbers;
import static org.gritwright.core.Samples.only;

import java.util.List;
import java.util.stream.DoubleStream;
import javax.measure.Quantity;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.finding.Term;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.PulsesPerDistance;
import org.junit.jupiter.api.Test;

class RoadSpeedCheckTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(3);

    private static RoadSpeedRun run(double miles, double pulses) {
        return new RoadSpeedRun(Amounts.of(miles, SpreadingUnits.MILE), Amounts.of(pulses, SpreadingUnits.PULSE));
    }

    private static Quantity<PulsesPerDistance> perMile(double pulses) {
        return Amounts.of(pulses, SpreadingUnits.PULSE_PER_MILE);
    }

    /** Runs over a quarter mile against a value in force. */
    private static RoadSpeedCheck check(double inForce, double... pulses) {
        return RoadSpeedCheck.of(
                DoubleStream.of(pulses).mapToObj(p -> run(0.25, p)).toList(), perMile(inForce), TOLERANCE);
    }

    private static double number(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }

    @Test
    void pulsesPerDistanceAreTotalPulsesOverTotalDistance() {
        // 999, 1000 and 1001 pulses a quarter mile; residuals −1, 0, 1; u² = 3/2 · 2/0.75²
        RoadSpeedCheck check = check(4000, 999, 1000, 1001);

        assertThat(check.measured().value().getUnit()).isEqualTo(SpreadingUnits.PULSE_PER_MILE);
        assertThat(number(check.measured().value())).isCloseTo(4000, within(1e-9));
        assertThat(number(check.measured().standardUncertainty().orElseThrow()))
                .isCloseTo(Math.sqrt(3) / 0.75, within(1e-9));
        assertThat(check.measured().degreesOfFreedom()).hasValue(2);
    }

    @Test
    void coursesMayDiffer() {
        RoadSpeedCheck check =
                RoadSpeedCheck.of(List.of(run(0.25, 1000), run(0.5, 2000), run(1, 4000)), perMile(4000), TOLERANCE);

        assertThat(number(check.measured().value())).isCloseTo(4000, within(1e-9));
        assertThat(number(check.error())).isCloseTo(0, within(1e-12));
    }

    @Test
    void aValueInForceTooHighLaysTooLittle() {
        // 4 200 in force and 4 000 in truth: a true mile counts as 0.952 of one, and is laid 0.952 of the target.
        RoadSpeedCheck check = check(4200, 1000, 1000, 1000);

        assertThat(number(check.error())).isCloseTo(5, within(1e-11));
        assertThat(number(check.effectOnRate())).isCloseTo((4000.0 / 4200 - 1) * 100, within(1e-11));
        assertThat(check.verdict()).isEqualTo(Verdict.OUTSIDE_TOLERANCE);
    }

    @Test
    void aValueInForceTooLowLaysTooMuch() {
        RoadSpeedCheck check = check(3800, 1000, 1000, 1000);

        assertThat(number(check.error())).isCloseTo(-5, within(1e-11));
        assertThat(number(check.effectOnRate())).isCloseTo((4000.0 / 3800 - 1) * 100, within(1e-11));
    }

    @Test
    void anEffectBeyondTheToleranceIsAFinding() {
        Finding finding =
                only(FindingCode.ROAD_SPEED_OFF, check(4200, 1000, 1000, 1000).findings());

        assertThat(finding.severity()).isEqualTo(Severity.WARNING);
        assertThat(numbers(finding)).containsOnlyKeys("inForce", "measured", "error", "effect");
        assertThat(finding.sentence())
                .isEqualTo("The road-speed value 4200 pulse/mi is off by 5 %; measured 4000 pulse/mi. The truck lays"
                        + " 4.762 % too little.");
    }

    /** A truck that stops by itself once it believes to have gone a mile, and lays what is wanted of a mile until then. */
    @Test
    void theFindingSaysWhatTheTruckLays() {
        for (double inForce : new double[] {3600, 4400}) {
            double milesDriven = inForce / 4000;
            double laidOfWanted = 1 / milesDriven;
            Finding finding = only(
                    FindingCode.ROAD_SPEED_OFF, check(inForce, 1000, 1000, 1000).findings());

            assertThat(number(finding.number("effect"))).isCloseTo(Math.abs(laidOfWanted - 1) * 100, within(1e-9));
            assertThat(finding.arguments()).containsEntry("way", laidOfWanted > 1 ? Term.TOO_MUCH : Term.TOO_LITTLE);
        }
    }

    @Test
    void theTolerancesLimitPasses() {
        // 4 120 pulses a mile in truth, 4 000 in force: the rate is 3 % too high.
        RoadSpeedCheck check = check(4000, 1030, 1030, 1030);

        assertThat(number(check.effectOnRate())).isCloseTo(3, within(1e-11));
        assertThat(check.verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
        assertThat(check.findings()).isEmpty();
        assertThat(check(4000, 1030, 1030, 1031).findings()).hasSize(1);
    }

    @Test
    void refusesFewerThanThreeRuns() {
        assertRefused("runs over the course must be three or more: 2", () -> check(4000, 1000, 1000));
    }

    @Test
    void refusesValuesThatAreNone() {
        assertRefused("road-speed value must be greater than 0: 0 pulse/mi", () -> check(0, 1000, 1000, 1000));
        assertRefused("length of the course must be greater than 0: 0 mi", () -> run(0, 1000));
        assertRefused("road-speed pulses must be greater than 0: 0 pulse", () -> run(0.25, 0));
        assertRefused("road-speed pulses must be a whole number, 0 or more: 0.5 pulse", () -> run(0.25, 0.5));
    }
}
