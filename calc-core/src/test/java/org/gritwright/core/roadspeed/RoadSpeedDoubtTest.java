package org.gritwright.core.roadspeed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import javax.measure.quantity.Length;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.PulsesPerDistance;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RoadSpeedDoubtTest {
    private static RoadSpeedCheck check(String course, String inForce, double... pulses) {
        List<RoadSpeedRun> runs = DoubleStream.of(pulses)
                .mapToObj(count ->
                        new RoadSpeedRun(Amounts.parse(Length.class, course), Amounts.of(count, SpreadingUnits.PULSE)))
                .toList();
        return RoadSpeedCheck.of(runs, Amounts.parse(PulsesPerDistance.class, inForce), Tolerance.percent(4));
    }

    private static Optional<FindingCode> doubt(String course, String inForce, double... pulses) {
        return check(course, inForce, pulses).doubt().map(Finding::code);
    }

    private static String sentence(String course, String inForce, double... pulses) {
        return check(course, inForce, pulses).doubt().orElseThrow().sentence();
    }

    @Test
    void runsThatAgreeAreInNoDoubt() {
        assertThat(doubt("1 mi", "8200 pulse/mi", 8200, 8200, 8200)).isEmpty();
        assertThat(doubt("1 mi", "8200 pulse/mi", 8160, 8204, 8241)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "2803, two digits swapped",
        "8023, two digits swapped",
        "82013, a digit too many",
        "823, a dropped digit",
        "7400, a wrong reading or another course"
    })
    void aRunThatDiffersIsNamedWithItsProbableSlip(double misread, String slip) {
        RoadSpeedCheck check = check("1 mi", "8200 pulse/mi", 8190, misread, 8216);

        assertThat(check.findings()).hasSize(1);
        assertThat(check.findings().get(0).sentence())
                .isEqualTo("Run 2 over the course counted " + (int) misread
                        + " pulse, but by the other runs it would be about 8203 pulse: probably " + slip + ".");
    }

    @Test
    void whereASlipExplainsARunLessHasToBeWrong() {
        assertThat(doubt("1 mi", "8000 pulse/mi", 8010, 8000, 8160)).isEmpty();
        assertThat(doubt("1 mi", "8060 pulse/mi", 8061, 8065, 8206)).contains(FindingCode.ROAD_RUN_DIFFERS);
    }

    @Test
    void twoRunsThatDifferFromEachOtherMakeTheThirdNoOutlier() {
        assertThat(doubt("1 mi", "8200 pulse/mi", 8000, 8100, 8240)).isEmpty();
        assertThat(sentence("1 mi", "8200 pulse/mi", 7600, 8000, 8500))
                .isEqualTo(
                        "The runs over the course disagree, from 7600 pulse/mi to 8500 pulse/mi, and nobody can tell which"
                                + " is right: check the entries, or drive the course again.");
    }

    @Test
    void aPulseAtEitherEndAndTheStopAtTheMarkAreAllowedFor() {
        assertThat(doubt("100 m", "300 pulse/km", 30, 30, 32)).isEmpty();
        assertThat(doubt("100 m", "5000 pulse/km", 500, 500, 512)).isEmpty();
        assertThat(doubt("100 m", "5000 pulse/km", 500, 500, 520)).contains(FindingCode.ROAD_RUN_DIFFERS);
    }

    @Test
    void aCourseInAnotherUnitIsNamed() {
        assertThat(sentence("1 mi", "8200 pulse/km", 8190, 8203, 8216))
                .isEqualTo(
                        "The course was probably 1 km, not 1 mi, or the road-speed value 8200 pulse/km is in another unit:"
                                + " the runs miss it by a factor of 1.609.");
        assertThat(sentence("500 m", "8200 pulse/km", 1250, 1249, 1251))
                .contains("500 ft, not 500 m", "factor of 3.281");
        assertThat(doubt("1 mi", "8600 pulse/km", 8190, 8203, 8216))
                .as("5 % off then")
                .isEmpty();
    }

    @Test
    void aFactorOfTwoOrTenIsASlip() {
        assertThat(sentence("1 mi", "8200 pulse/mi", 16_400, 16_390, 16_410))
                .isEqualTo(
                        "The runs give 16400 pulse/mi where 8200 pulse/mi is in force, a factor of 2: look for a slip in"
                                + " course, pulses or value before entering anything.");
        assertThat(doubt("1 mi", "8200 pulse/mi", 820, 820, 821)).contains(FindingCode.ROAD_SPEED_BY_FACTOR);
        assertThat(doubt("1 mi", "8200 pulse/mi", 10_000, 10_000, 10_001)).isEmpty();
    }

    @Test
    void pulsesThatNoTireMakesAreImplausible() {
        assertThat(sentence("1 km", "200 pulse/km", 200, 200, 200))
                .isEqualTo("The runs give one pulse every 5 m, outside the plausible 0.004 m to 4.5 m: check course and"
                        + " pulses.");
        assertThat(doubt("1 km", "260000 pulse/km", 260_000, 260_000, 260_000))
                .contains(FindingCode.ROAD_PULSES_IMPLAUSIBLE);
        assertThat(doubt("1 km", "240 pulse/km", 240, 240, 240)).isEmpty();
        assertThat(doubt("1 km", "240000 pulse/km", 240_000, 240_000, 240_000)).isEmpty();
    }

    @Test
    void aPulseEveryFourMillimetersOrFourAndAHalfMetersIsJustPlausible() {
        assertThat(doubt("1 km", "250000 pulse/km", 250_000, 250_000, 250_000)).isEmpty();
        assertThat(doubt("4.5 km", "222.22222222222223 pulse/km", 1000, 1000, 1000))
                .isEmpty();
    }

    @Test
    void ofTwoRunsThatDifferAlikeTheFirstIsNamed() {
        assertThat(sentence("1 mi", "8200 pulse/mi", 8200, 8200, 8200, 9000, 9000))
                .startsWith("Run 4 ");
    }

    /** By 1 % as a rule, so that 3.5 % is nothing special. */
    @Test
    void amongRunsThatScatterOneMustBeFurtherOff() {
        assertThat(doubt("1 mi", "8000 pulse/mi", 7920, 7920, 7920, 8000, 8080, 8080, 8280))
                .isEmpty();
        assertThat(doubt("1 mi", "8000 pulse/mi", 7990, 7990, 7990, 8000, 8010, 8010, 8280))
                .contains(FindingCode.ROAD_RUN_DIFFERS);
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(check("1 mi", "8200 pulse/mi", 8200, 8200, 8200));
        assertNamesWhatIsMissing(
                new RoadSpeedRun(Amounts.parse(Length.class, "1 mi"), Amounts.of(8200, SpreadingUnits.PULSE)));
    }
}
