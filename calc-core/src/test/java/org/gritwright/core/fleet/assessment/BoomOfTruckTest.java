package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.fleet.assessment.LiquidDays.nozzle;
import static org.gritwright.core.fleet.assessment.LiquidDays.withBoom;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.gritwright.core.boom.NozzleCondition;
import org.gritwright.core.boom.NozzleReview;
import org.gritwright.core.boom.SectionShare;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.BoomEntry;
import org.gritwright.core.fleet.day.DayLimits;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.NozzleEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.BoomOutcome;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Booms of trucks, from the document to what is to be done. */
class BoomOfTruckTest {
    /** Nine nozzles of which that in the middle of the third section is worn. */
    private static final List<String> WORN = List.of(
            nozzle("left", "1", "96 fl oz"),
            nozzle("left", "2", "97 fl oz"),
            nozzle("left", "3", "95 fl oz"),
            nozzle("center", "1", "96 fl oz"),
            nozzle("center", "2", "97 fl oz"),
            nozzle("center", "3", "96 fl oz"),
            nozzle("right", "1", "95 fl oz"),
            nozzle("right", "2", "121 fl oz"),
            nozzle("right", "3", "96 fl oz"));

    private static String flow(List<String> nozzles) {
        return "{\"control\": \"flow\", \"nozzles\": [" + String.join(",", nozzles) + "]}";
    }

    private static String pressure(String setUpWith) {
        return "{\"control\": \"pressure\", \"setUpWith\": \"" + setUpWith + "\"}";
    }

    private static List<FindingCode> codes(TruckAssessment truck) {
        return truck.findings().stream().map(Finding::code).toList();
    }

    private static List<NextStep> steps(TruckAssessment truck) {
        return truck.toDo().stream().map(ToDo::step).toList();
    }

    @Test
    void aTruckWithoutABoomHasNothingOfIt() {
        TruckAssessment bare = withBoom("");
        assertThat(bare.refusals()).isEmpty();
        assertThat(bare.boom()).isEmpty();
        assertThat(bare.massProof()).isEqualTo(MassProof.PROVEN);
        assertThat(bare.toDo()).isEmpty();
    }

    @Test
    void aWornNozzleSpoilsTheDistributionAndNotTheFlowMeter() {
        TruckAssessment bare = withBoom("");
        TruckAssessment worn = withBoom(flow(WORN));

        assertThat(worn.refusals()).isEmpty();
        assertThat(worn.massProof()).isEqualTo(MassProof.PROVEN);
        assertThat(worn.points()).isEqualTo(bare.points());
        assertThat(steps(worn)).containsExactly(NextStep.MEND_NOZZLES);
        assertThat(NextStep.MEND_NOZZLES.needsAttention()).isTrue();
        assertThat(worn.findings())
                .filteredOn(one -> one.code() == FindingCode.NOZZLE_OFF_AVERAGE)
                .singleElement()
                .satisfies(
                        one -> assertThat(one.sentence()).startsWith("Nozzle 2 of section right gives 1.891 gal/min"));
        // 312 of 889 fluid ounces where a third would be even.
        SectionShare right = worn.boom().orElseThrow().shares().get(2);
        assertThat(right.section()).isEqualTo("right");
        assertThat(Amounts.in(right.error(), SpreadingUnits.PERCENT))
                .isCloseTo(100 * (3 * 312 / 889.0 - 1), within(1e-9));
    }

    @Test
    void evenNozzlesAreNothingToDo() {
        TruckAssessment even = withBoom(flow(WORN).replace("121", "96"));
        assertThat(even.boom().orElseThrow().nozzles().orElseThrow().off()).isEmpty();
        assertThat(even.toDo()).isEmpty();
        assertThat(even.findings()).isEqualTo(withBoom("").findings());
    }

    @Test
    void aNozzleOfWhichTheCatchCantTellIsNoReasonToMend() {
        // 106 beside 96 is 10.1 % off, and the graduate is read to an ounce.
        TruckAssessment near = withBoom(flow(WORN).replace("121", "106"));
        assertThat(codes(near)).contains(FindingCode.NOZZLE_UNDECIDED);
        assertThat(steps(near)).containsExactly(NextStep.CATCH_NOZZLES);
        assertThat(NextStep.CATCH_NOZZLES.needsAttention()).isTrue();
    }

    @Test
    void nozzlesThatAreMendedAreCaughtAgainAnyway() {
        TruckAssessment both = withBoom(flow(WORN).replaceFirst("95", "106"));
        assertThat(codes(both)).contains(FindingCode.NOZZLE_UNDECIDED, FindingCode.NOZZLE_OFF_AVERAGE);
        assertThat(steps(both)).containsExactly(NextStep.MEND_NOZZLES);
    }

    @Test
    void nozzlesThatDisagreeAreLookedInto() {
        TruckAssessment mixed = withBoom(flow(List.of(
                nozzle("left", "1", "60 fl oz"),
                nozzle("left", "2", "80 fl oz"),
                nozzle("right", "1", "110 fl oz"),
                nozzle("right", "2", "150 fl oz"))));
        assertThat(codes(mixed)).contains(FindingCode.NOZZLES_DISAGREE);
        assertThat(steps(mixed)).containsExactly(NextStep.MEND_NOZZLES);
    }

    @Test
    void sectionsOfOneNozzleAndOfSeveralGetSharesByTheirNozzles() {
        List<SectionShare> shares = withBoom(flow(List.of(
                        nozzle("edge", "1", "100 fl oz"),
                        nozzle("lane", "1", "100 fl oz"),
                        nozzle("lane", "2", "100 fl oz"))))
                .boom()
                .orElseThrow()
                .shares();
        assertThat(shares).extracting(SectionShare::nozzles).containsExactly(1, 2);
        assertThat(shares)
                .allSatisfy(one -> assertThat(Amounts.in(one.error(), SpreadingUnits.PERCENT))
                        .isCloseTo(0, within(1e-9)));
    }

    /** √(8.34 ÷ 9.82) − 1. */
    @Test
    void aPressureSetWithWaterIsWrongForBrine() {
        TruckAssessment water = withBoom(pressure("8.34 lb/gal"));

        assertThat(Amounts.in(water.boom().orElseThrow().setUp().orElseThrow().error(), SpreadingUnits.PERCENT))
                .isCloseTo(100 * (Math.sqrt(8.34 / 9.82) - 1), within(1e-9));
        assertThat(codes(water)).contains(FindingCode.BOOM_LIQUID_CHANGED);
        assertThat(steps(water)).containsExactly(NextStep.SET_BOOM_PRESSURE);
        assertThat(water.massProof()).isEqualTo(MassProof.PROVEN);

        TruckAssessment brine = withBoom(pressure("9.8 lb/gal"));
        assertThat(brine.boom().orElseThrow().setUp()).isPresent();
        assertThat(brine.toDo()).isEmpty();
        assertThat(brine.findings()).isEqualTo(withBoom("").findings());
    }

    /** 40 gal/mi at 30 mi/h for a minute are 20 gal, and 7.8 % less are 18.43 gal. */
    @ParameterizedTest
    @CsvSource({"18.45 gal, 11070 pulse, false", "16 gal, 9600 pulse, true", "21.6 gal, 12960 pulse, true"})
    void whatThePressureExplainsIsNoOtherFault(String caught, String pulses, boolean isCheckedToo) {
        String text = Document.FLEET_DAY.toText(LiquidDays.day(pressure("8.34 lb/gal")));
        int verification = text.indexOf("\"verificationCatches\"");
        TruckAssessment less = LiquidDays.assess(LiquidDays.read(text.substring(0, verification)
                        + text.substring(verification)
                                .replaceFirst("\"20 gal\"", "\"" + caught + "\"")
                                .replaceFirst("12000 pulse", pulses)))
                .get(0);

        assertThat(less.massProof()).isEqualTo(MassProof.PROVEN);
        assertThat(steps(less)).startsWith(NextStep.SET_BOOM_PRESSURE);
        assertThat(steps(less).contains(NextStep.CHECK_DELIVERY)).isEqualTo(isCheckedToo);
        assertThat(codes(less)).containsAnyOf(FindingCode.SHORTFALL, FindingCode.OVERRUN);
    }

    @Test
    void ofSeveralLiquidsNoneIsGuessed() {
        String text = Document.FLEET_DAY.toText(LiquidDays.day(pressure("8.34 lb/gal")));
        TruckAssessment several = LiquidDays.assess(
                        LiquidDays.read(
                                text.replaceFirst(
                                        "\"inForce\": \\[",
                                        "\"inForce\": [ { \"value\": \"610 pulse/gal\", \"since\": \"2026-10-01\", \"material\": \"calcium\" },")))
                .get(0);

        assertThat(several.boom().orElseThrow().setUp()).isEmpty();
        assertThat(several.boom().orElseThrow().liquids()).containsExactly("calcium", "brine");
        assertThat(several.findings())
                .filteredOn(one -> one.code() == FindingCode.BOOM_LIQUID_UNCLEAR)
                .singleElement()
                .satisfies(one -> assertThat(one.sentence()).contains("calcium and brine"));
        assertThat(steps(several)).doesNotContain(NextStep.SET_BOOM_PRESSURE);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\'', textBlock = """
            "nozzle": "3"      | "nozzle": "02"              | /trucks/0/boom/nozzles/2/nozzle  | nozzle of section left must be listed once: "02"
            "section": "left", "nozzle": "3" | "section": "Left ", "nozzle": "3" | /trucks/0/boom/nozzles/2/section | section of nozzle 3 must be spelled alike for all its nozzles, "left": "Left "
            "time": "30 s"     | "time": "0 s"               | /trucks/0/boom/nozzles/0         | time of the catch must be greater than 0
            "time": "30 s"     | "time": "2000 h"            | /trucks/0/boom/nozzles/0/time    | time must be within 0.01 s to 1000 h: 2000 h
            "timeHalfWidth": "0.3 s" | "timeHalfWidth": "45 s" | /trucks/0/boom/nozzles/0       | uncertainty of the time of the catch must be below the time, 30 s: 45 s
            "caught": "96 fl oz" | "caught": "-96 fl oz"     | /trucks/0/boom/nozzles/0         | volume caught must be 0 or more
            "division": "1 fl oz" | "division": "0 fl oz"    | /trucks/0/boom/nozzles/0         | division of the graduate must be greater than 0
            "control": "flow"  | "control": "pressure"       | /trucks/0/boom/setUpWith         | given for a rate that is kept by pressure: nothing
            "control": "flow"  | "control": "flow", "setUpWith": "8.34 lb/gal" | /trucks/0/boom/setUpWith | left out for a rate that is kept by flow: 8.34 lb/gal
            "control": "flow"  | "control": "pressure", "setUpWith": "0 lb/gal" | /trucks/0/boom/setUpWith | density of the liquid at set-up must be
            """)
    void aWrongEntryIsTheRefusalOfItsTruckAlone(String right, String wrong, String pointer, String words) {
        String boom = flow(WORN);
        assertThat(boom).contains(right);
        List<TruckAssessment> both = LiquidDays.assess(LiquidDays.day(boom.replaceFirst(Pattern.quote(right), wrong)));

        assertThat(both.get(0).refusals())
                .extracting(Refusal::pointer)
                .isNotEmpty()
                .allMatch(pointer::equals);
        assertThat(both.get(0).refusals().get(0).sentence()).contains(words);
        assertThat(steps(both.get(0))).containsExactly(NextStep.FIX_RECORD);
        assertThat(both.get(1).massProof()).isEqualTo(MassProof.PROVEN);
    }

    @Test
    void oneNozzleAloneAndNozzlesThatGiveNothingAreRefused() {
        assertThat(withBoom(flow(WORN.subList(0, 1))).refusals())
                .extracting(Refusal::toString)
                .containsExactly("/trucks/0/boom/nozzles: boom: nozzles of a boom must be two or more: 1");
        assertThat(withBoom(flow(WORN.subList(0, 2)).replaceAll("9. fl", "0 fl"))
                        .refusals())
                .extracting(Refusal::toString)
                .containsExactly("/trucks/0/boom/nozzles: boom: flow of all nozzles must be greater than 0: 0");
    }

    @Test
    void nozzlesThatWereCaughtWithTwoLiquidsAreNotCompared() {
        String mixed = flow(List.of(
                WORN.get(0).replace("}", ", \"liquid\": \"water\"}"),
                WORN.get(1).replace("}", ", \"liquid\": \"Water\"}"),
                WORN.get(2),
                WORN.get(3).replace("}", ", \"liquid\": \"brine\"}")));
        assertThat(withBoom(mixed).refusals())
                .extracting(Refusal::toString)
                .containsExactly("/trucks/0/boom/nozzles/3/liquid: boom: liquid that a nozzle was caught with must be"
                        + " the same for all nozzles, \"water\": \"brine\"");
        assertThat(withBoom(mixed.replace("\"liquid\": \"brine\"", "\"liquid\": \"water\""))
                        .refusals())
                .isEmpty();
    }

    @Test
    void moreNozzlesThanADayMayHoldAreNotComputedWith() {
        FleetDay day = LiquidDays.day(flow(WORN));
        DayLimits few = new DayLimits(10, 100, 100, 8);
        assertThat(FleetAssessor.of(BuiltInTypes.registry())
                        .within(few)
                        .assess(day)
                        .get(0)
                        .refusals())
                .extracting(Refusal::toString)
                .containsExactly("/trucks/0: nozzles of the boom must be at most 8: 9");
    }

    @ParameterizedTest
    @ValueSource(strings = {"flow", "pressure"})
    void aBoomBesideAConveyorIsRefused(String control) {
        String text = Document.FLEET_DAY
                .toText(LiquidDays.day(""))
                .replaceFirst(
                        "\"flowMeter\": \\{[^}]*\\{[^}]*}\\s*}",
                        "\"conveyor\": {\"type\": \"auger\", \"version\": 1}, \"gate\": {\"type\": \"no-gate\", \"version\": 1},"
                                + " \"gearRatio\": \"1\", \"boom\": {\"control\": \"" + control + "\"}");
        assertThatThrownBy(
                        () -> Document.FLEET_DAY.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))))
                .isInstanceOf(RejectedDocumentException.class)
                .hasMessageContaining("/trucks/0/boom")
                .hasMessageContaining("no such field beside a conveyor");
    }

    @Test
    void aBoomBesideAConveyorIsRefusedWhereNoDocumentIsReadToo() {
        FleetDay day = LiquidDays.day(flow(WORN));
        TruckDay truck = day.trucks().get(0);
        TruckDay conveyor = TruckDay.of("T-1", Trucks.spreader(Trucks.gate()))
                .boom(truck.boom().orElseThrow());
        assertThat(LiquidDays.assess(day.withTrucks(List.of(conveyor))).get(0).refusals())
                .extracting(Refusal::toString)
                .containsExactly("/trucks/0/boom: boom: boom must be left out beside a conveyor: a boom");
    }

    @Test
    void theOrderOfTheNozzlesDoesntMatter() {
        Map<String, NozzleCondition> conditions = conditions(WORN);
        Map<String, Double> shares = shares(WORN);
        for (int seed = 0; seed < 20; seed++) {
            List<String> other = new ArrayList<>(WORN);
            Collections.shuffle(other, new Random(seed));
            assertThat(conditions(other)).isEqualTo(conditions);
            shares(other).forEach((section, error) -> assertThat(error).isCloseTo(shares.get(section), within(1e-9)));
        }
    }

    private static Map<String, NozzleCondition> conditions(List<String> nozzles) {
        NozzleReview review =
                withBoom(flow(nozzles)).boom().orElseThrow().nozzles().orElseThrow();
        return review.comparisons().stream()
                .collect(Collectors.toMap(
                        one -> one.nozzle().section() + " " + one.nozzle().nozzle(), one -> one.condition()));
    }

    private static Map<String, Double> shares(List<String> nozzles) {
        return withBoom(flow(nozzles)).boom().orElseThrow().shares().stream()
                .collect(Collectors.toMap(
                        SectionShare::section, one -> Amounts.in(one.error(), SpreadingUnits.PERCENT)));
    }

    @Test
    void whatIsShownIsTheSameInEveryUnit() {
        FleetDay day = LiquidDays.day(flow(WORN));
        BoomEntry boom = day.trucks().get(0).boom().orElseThrow();
        BoomEntry metric = BoomEntry.keptByFlow(boom.nozzles().stream()
                .map(one -> new NozzleEntry(
                        one.section(),
                        one.nozzle(),
                        Amounts.of(Amounts.in(one.caught(), SpreadingUnits.LITER), SpreadingUnits.LITER),
                        Amounts.of(Amounts.in(one.division(), SpreadingUnits.MILLILITER), SpreadingUnits.MILLILITER),
                        Amounts.of(Amounts.in(one.time(), SpreadingUnits.MINUTE), SpreadingUnits.MINUTE),
                        one.timeHalfWidth(),
                        one.liquid()))
                .toList());
        BoomAssessment other = LiquidDays.assess(
                        day.withTrucks(List.of(day.trucks().get(0).boom(metric))))
                .get(0)
                .boom()
                .orElseThrow();
        NozzleReview us = withBoom(flow(WORN)).boom().orElseThrow().nozzles().orElseThrow();
        NozzleReview si = other.nozzles().orElseThrow();

        assertThat(IntStream.range(0, 9).mapToObj(i -> si.comparisons().get(i).condition()))
                .containsExactlyElementsOf(
                        us.comparisons().stream().map(one -> one.condition()).toList());
        for (int i = 0; i < 9; i++) {
            assertThat(Amounts.in(si.comparisons().get(i).deviation().value(), SpreadingUnits.PERCENT))
                    .isCloseTo(
                            Amounts.in(us.comparisons().get(i).deviation().value(), SpreadingUnits.PERCENT),
                            within(1e-9));
        }
    }

    @Test
    void theRecordHasTheBoomAndTheNextDayItsControl() throws IOException, RejectedDocumentException {
        FleetDay day = LiquidDays.day(flow(WORN).replace("\"flow\"", "\"pressure\", \"setUpWith\": \"8.34 lb/gal\""));
        CalibrationRecord record =
                CalibrationRecord.of(day, LiquidDays.assess(day).get(0));
        String text = Document.CALIBRATION_RECORD.toText(record);

        assertThat(Document.CALIBRATION_RECORD.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))))
                .isEqualTo(record);
        assertThat(record.entered().trucks().get(0).boom())
                .isEqualTo(day.trucks().get(0).boom());
        assertThat(record.nextDay(BuiltInTypes.registry()).boom())
                .contains(BoomEntry.keptByPressure(Amounts.of(8.34, SpreadingUnits.POUND_PER_US_GALLON), List.of()));
    }

    @Test
    void theRecordHasWhatTheBoomShowed() {
        FleetDay day = LiquidDays.day(flow(WORN).replace("\"flow\"", "\"pressure\", \"setUpWith\": \"8.34 lb/gal\""));
        TruckAssessment truck = LiquidDays.assess(day).get(0);
        BoomAssessment boom = truck.boom().orElseThrow();
        BoomOutcome recorded = CalibrationRecord.of(day, truck).boom().orElseThrow();

        BoomOutcome.Review review = recorded.review().orElseThrow();
        assertThat(review.tolerance())
                .isEqualTo(boom.nozzles().orElseThrow().tolerance().limit());
        assertThat(review.reference()).isEqualTo(boom.nozzles().orElseThrow().reference());
        assertThat(review.agree()).isTrue();
        assertThat(review.nozzles()).hasSize(9);
        BoomOutcome.Nozzle worn = review.nozzles().get(7);
        assertThat(worn.section()).isEqualTo("right");
        assertThat(worn.nozzle()).isEqualTo("2");
        assertThat(worn.condition()).isEqualTo(NozzleCondition.HIGH);
        // 121 fl oz in 30 s
        assertThat(Amounts.in(worn.flow(), SpreadingUnits.US_GALLON_PER_MINUTE)).isCloseTo(242 / 128.0, within(1e-9));
        assertThat(worn.flowUncertainty()).isPresent();
        assertThat(worn.deviationUncertainty()).isPresent();
        assertThat(recorded.sections())
                .extracting(BoomOutcome.Section::error)
                .containsExactlyElementsOf(
                        boom.shares().stream().map(SectionShare::error).toList());
        assertThat(recorded.pressure().orElseThrow().volumeError())
                .isEqualTo(boom.setUp().orElseThrow().error());
        assertThat(recorded.pressure().orElseThrow().pressureFactor())
                .isEqualTo(boom.setUp().orElseThrow().pressureFactor());
    }

    @Test
    void aRecordFromBeforeBoomsWereInRecordsStillReads() throws IOException, RejectedDocumentException {
        FleetDay day = LiquidDays.day(flow(WORN));
        CalibrationRecord record =
                CalibrationRecord.of(day, LiquidDays.assess(day).get(0));
        String text = Document.CALIBRATION_RECORD.toText(record);
        String older = text.replaceFirst("(?s)\n  \"boom\": \\{.*?\n  },", "");
        assertThat(older).isNotEqualTo(text);

        CalibrationRecord read =
                Document.CALIBRATION_RECORD.read(new ByteArrayInputStream(older.getBytes(StandardCharsets.UTF_8)));
        assertThat(read.boom()).isEmpty();
        assertThat(read.findings()).isEqualTo(record.findings());
    }

    @Test
    void withoutABoomOrItsNozzlesTheRecordHasNothingOfThem() {
        FleetDay bare = LiquidDays.day("");
        assertThat(CalibrationRecord.of(bare, LiquidDays.assess(bare).get(0)).boom())
                .isEmpty();
        FleetDay uncaught = LiquidDays.day("{\"control\": \"flow\"}");
        assertThat(CalibrationRecord.of(uncaught, LiquidDays.assess(uncaught).get(0))
                        .boom())
                .contains(new BoomOutcome(Optional.empty(), List.of(), Optional.empty()));
    }
}
