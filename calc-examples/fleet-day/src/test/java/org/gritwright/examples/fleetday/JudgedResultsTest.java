package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.gritwright.core.document.RejectedDocumentException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the outputs say of uncertainties, verdicts and what more to catch. */
class JudgedResultsTest {

    private static TruckResult truck(String id, Consumer<ObjectNode> change)
            throws IOException, RejectedDocumentException {
        return DemoDay.result(change).trucks().stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static CSVRecord row(String id) throws IOException, RejectedDocumentException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser = CSVParser.parse(FleetCsv.text(DemoDay.result(day -> {})), format)) {
            return parser.getRecords().stream()
                    .filter(one -> one.get("truck").equals(id))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static void guarded(ObjectNode day, String risk) {
        day.putObject("decisionRule").put("rule", "guarded").put("risk", risk);
    }

    @Test
    void aCatchThatCanNotTellSaysHowMuchMoreToCatch() throws IOException, RejectedDocumentException {
        Instruction instruction = truck("T-15", day -> {}).instruction();

        assertThat(instruction.text())
                .isEqualTo("Catch 203 kg more with the same value in the display, in 3 catches like the last");
        assertThat(instruction.shortReason()).isEqualTo("can't tell yet");
        assertThat(instruction.reasons())
                .containsExactly("By the last catch the error is -3.1 ± 1.5 %: can't tell, chance to be within: 86 %.");
    }

    /** T-01's one verification catch can't show ±4 %, but with the three calibration catches it does; not ±2 %. */
    @Test
    void whereTheCalibrationCatchesAreJudgedTooItIsSaid() throws IOException, RejectedDocumentException {
        TruckResult within = truck("T-01", day -> {});
        TruckResult open = truck("T-01", day -> day.put("tolerance", "2 %"));

        assertThat(within.assessment().verdict()).isEqualTo("conveyor right, road speed right");
        assertThat(notes(within))
                .contains("The last catch and the calibration catches, road salt, gate 2.5\u00a0in\u00a0(63.5\u00a0mm),"
                        + " together: error +0.5 ± 1.8 %, within tolerance, chance to be within: 99.7 %.");
        assertThat(BudgetSheet.of(within))
                .extracting(BudgetSheet::caption)
                .anyMatch(caption -> caption.startsWith("Uncertainty of the calibration error, last catch and the"
                        + " calibration catches together, road salt, gate 2.5"));
        assertThat(open.instruction().reasons())
                .containsExactly("By the last catch and the calibration catches the error is +0.5 ± 1.8 %: can't tell,"
                        + " chance to be within: 94 %.");
        assertThat(notes(truck("T-04", day -> {}))).noneMatch(note -> note.contains("calibration catches"));
    }

    private static List<String> notes(TruckResult truck) {
        return TruckSheet.of(truck, 1).catches().stream()
                .flatMap(table -> table.notes().stream())
                .toList();
    }

    @Test
    void anAssumedScatterIsCalledAssumed() throws IOException, RejectedDocumentException {
        assertThat(scatter("T-04", day -> {})).isEqualTo("scatter of catches, from experience");
        assertThat(scatter("T-04", day -> day.remove("allowances"))).isEqualTo("scatter of catches, assumed");
    }

    private static String scatter(String id, Consumer<ObjectNode> change)
            throws IOException, RejectedDocumentException {
        return BudgetSheet.of(truck(id, change)).get(0).bars().get(0).name();
    }

    @Test
    void probableSlipsStandFirstAndInFull() throws IOException, RejectedDocumentException {
        String wrongOpening = "The entries don't fit together as they are; with one slip they would. Probably, the most"
                + " probable first: gate opening ÷ 10 (2 in); pulses per revolution × 10 (900 pulse/rev).";
        TruckResult truck = truck("T-05", day -> {});

        assertThat(truck.instruction().reasons()).element(0).isEqualTo(wrongOpening);
        assertThat(truck.instruction().reasons())
                .element(1)
                .asString()
                .startsWith("By the entries the conveyor is filled to 0.08767 of what");
        assertThat(TruckSheet.of(truck, 1).findings())
                .element(0)
                .isEqualTo(new TruckSheet.FindingLine("Check", wrongOpening));
        assertThat(TruckSheet.of(truck("T-14", day -> {}), 1).findings())
                .element(0)
                .extracting(TruckSheet.FindingLine::sentence)
                .asString()
                .endsWith("two digits in the gross mass of pail 1 swapped (54.5 lb), catch of 2026-10-19 16:12.");
    }

    /** At a risk of 0.1 % and with a span that may be off by 5 %, no number of catches shows ±4 %. */
    @Test
    void whereNoNumberOfCatchesCouldTellItSaysTheMainCause() throws IOException, RejectedDocumentException {
        Instruction instruction = truck("T-16", day -> {
                    guarded(day, "0.1 %");
                    day.withArray("scales").forEach(scale -> {
                        ((ObjectNode) scale).put("accuracy", "5 %");
                        ((ObjectNode) scale).remove("checks");
                    });
                })
                .instruction();

        assertThat(instruction.text()).isEqualTo("Weigh or count better: 50 more catches like the last could not tell");
        assertThat(instruction.shortReason()).startsWith("main cause: span of scale ");
    }

    @Test
    void bySimpleAcceptanceAndWithoutARuleTheSameTruckHasNothingToDo() throws IOException, RejectedDocumentException {
        String proven = "conveyor right as delivered, road speed right";
        for (TruckResult simple : List.of(
                truck("T-15", day -> day.remove("decisionRule")),
                truck("T-15", day -> day.putObject("decisionRule").put("rule", "simple")))) {
            assertThat(simple.assessment().verdict()).isEqualTo(proven);
            assertThat(simple.instruction().text()).isEqualTo("Nothing to do");
        }
        assertThat(truck("T-15", day -> {}).assessment().verdict()).isEqualTo("conveyor can't tell, road speed right");
    }

    @ParameterizedTest
    @CsvSource({
        "guarded, , nothing",
        "simple, 5 %, 5 %",
        "guarded, 50 %, 50 %",
        "guarded, 0 %, 0 %",
        "guarded, 0.05, 0.05",
        "certain, 5 %, certain"
    })
    void aRuleThatCanNotBeIsRefused(String rule, String risk, String named) {
        assertThatExceptionOfType(RejectedDocumentException.class)
                .isThrownBy(() -> DemoDay.result(day -> {
                    ObjectNode object = day.putObject("decisionRule").put("rule", rule);
                    if (risk != null) {
                        object.put("risk", risk);
                    }
                }))
                .satisfies(e -> assertThat(e.problems().toString()).contains("decisionRule", named));
    }

    @ParameterizedTest
    @CsvSource({"greatestSpillage, 101 %", "greatestTransient, -1 %", "greatestSpillage, 0.01", "spillage, 1 %"})
    void anAllowanceThatCanNotBeIsRefused(String name, String value) {
        assertThatExceptionOfType(RejectedDocumentException.class)
                .isThrownBy(
                        () -> DemoDay.result(day -> day.putObject("allowances").put(name, value)))
                .satisfies(e -> assertThat(e.problems().toString()).contains("/allowances/" + name));
    }

    @ParameterizedTest
    @CsvSource({"hb44-v", "r76-iii old", "0 %", "100 %", "0.1", "''"})
    void anAccuracyThatIsNoneIsRefused(String accuracy) {
        assertThatExceptionOfType(RejectedDocumentException.class)
                .isThrownBy(() -> DemoDay.result(
                        day -> ((ObjectNode) day.withArray("scales").get(0)).put("accuracy", accuracy)))
                .satisfies(e -> assertThat(e.problems().toString()).contains("/scales/0/accuracy"));
    }

    @Test
    void aScaleOfMoreDivisionsThanItsClassAllowsIsRefused() {
        assertThatExceptionOfType(RejectedDocumentException.class)
                .isThrownBy(() -> DemoDay.result(
                        day -> ((ObjectNode) day.withArray("scales").get(0)).put("accuracy", "r76-iiii")))
                .satisfies(e -> assertThat(e.problems().toString())
                        .contains("load on a scale of class r76-iiii", "at most 1000.0 divisions"));
    }

    @Test
    void spillageMakesTheMassPerRevolutionLarger() throws IOException, RejectedDocumentException {
        double without = discharge(day -> {});
        double with = discharge(day -> day.putObject("allowances").put("greatestSpillage", "4 %"));

        assertThat(with / without).isCloseTo(1 / 0.98, within(1e-12));
    }

    private static double discharge(Consumer<ObjectNode> change) throws IOException, RejectedDocumentException {
        return truck("T-03", change)
                .calibrations()
                .get(0)
                .dischargePerRevolution()
                .value()
                .getValue()
                .doubleValue();
    }

    @Test
    void theTableHasUncertaintyVerdictAndProbabilities() throws IOException, RejectedDocumentException {
        CSVRecord row = row("T-15");

        assertThat(row.get("verdict of the last catches")).isEqualTo("can't tell");
        assertThat(row.get("advice")).isEqualTo("catch more");
        // Three times the 67.8 kg of the last catch.
        assertThat(row.get("catch more (kg)")).isEqualTo("203.4");
        assertThat(row.get("catch more (lb)")).startsWith("448.4");
        double sum = List.of(
                        "probability below tolerance (%)",
                        "probability within tolerance (%)", "probability above tolerance (%)")
                .stream()
                .mapToDouble(name -> Double.parseDouble(row.get(name)))
                .sum();
        assertThat(sum).isCloseTo(100, within(1e-3));
        assertThat(Double.parseDouble(row.get("expanded uncertainty of the error (%)")))
                .isBetween(1.5, 1.56);
        // 1.645 standard uncertainties for a risk of 5 %, where the interval of 95 % has 1.96.
        assertThat(Double.parseDouble(row.get("guard band (%)"))).isBetween(1.26, 1.31);
        assertThat(row.get("largest source of uncertainty")).isEqualTo("scatter of catches, from experience");
        assertThat(row("T-04").get("catch more (lb)")).isEmpty();
    }

    @Test
    void eachBudgetIsDrawnTheLargestFirstAndSumsUp() throws IOException, RejectedDocumentException {
        List<BudgetSheet> budgets = BudgetSheet.of(truck("T-03", day -> {}));

        assertThat(budgets)
                .extracting(BudgetSheet::caption)
                .containsExactly(
                        "Uncertainty of the mass per revolution, road salt",
                        "Uncertainty of the calibration error, last catch, road salt");
        for (BudgetSheet budget : budgets) {
            assertThat(budget.bars()).last().satisfies(sum -> {
                assertThat(sum.name()).isEqualTo("together");
                assertThat(sum.length()).isEqualTo(100);
            });
            assertThat(budget.bars())
                    .extracting(BudgetSheet.Bar::length)
                    .allMatch(length -> length >= 0 && length <= 100);
            assertThat(budget.bars().get(0).length())
                    .isGreaterThanOrEqualTo(budget.bars().get(1).length());
            double squares = budget.bars().subList(0, budget.bars().size() - 1).stream()
                    .mapToDouble(bar -> bar.length() * bar.length())
                    .sum();
            assertThat(Math.sqrt(squares)).isCloseTo(100, within(3.0));
        }
        assertThat(budgets.get(1).note())
                .contains(
                        "chance to be within the tolerance 9", "to put down too much ", "within tolerance; leave it.");
    }

    /** g = 18 in · (h − 0.366 in): at 2.5 in a standard uncertainty of 0.0625/√3 in is 1.69 % of the discharge. */
    @Test
    void theGatesReadingWidensWhatIsPredictedAndNotWhatWasCalibrated() throws IOException, RejectedDocumentException {
        TruckResult read = truck("T-17", day -> {});
        TruckResult exact = truck("T-17", day -> DemoDay.truck(day, "T-17").remove("gateReading"));

        assertThat(read.calibrations().get(1).budget())
                .isEqualTo(exact.calibrations().get(1).budget());
        assertThat(atTwoAndAHalf(read)).isEqualTo("± 1.1 lb/rev");
        assertThat(atTwoAndAHalf(exact)).isEqualTo("± 0.32 lb/rev");
    }

    private static String atTwoAndAHalf(TruckResult truck) {
        return CurveSheet.of(
                        truck.assessment().curves().get(0),
                        truck.assessment().truck().spreader().gateReading())
                .table()
                .rows()
                .stream()
                .filter(row -> row.head().startsWith("2.5 in"))
                .findFirst()
                .orElseThrow()
                .cells()
                .get(1)
                .main();
    }
}
