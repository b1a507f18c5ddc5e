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
        Instruction instruction = truck("T-01", day -> {}).instruction();

        assertThat(instruction.text())
                .isEqualTo("Catch 251 lb more with the same value in the display, in 1 catch like the last");
        assertThat(instruction.shortReason()).isEqualTo("can't tell yet");
        assertThat(instruction.reasons())
                .containsExactly("By this catch the error is +0.8 ± 6.1 %: one such catch can't decide,"
                        + " chance to be within: 88 %.");
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
        assertThat(truck("T-01", day -> day.remove("decisionRule")).verdict())
                .isEqualTo("mass per revolution proven, road speed proven");
        assertThat(truck("T-01", day -> day.putObject("decisionRule").put("rule", "simple"))
                        .verdict())
                .isEqualTo("mass per revolution proven, road speed proven");
        assertThat(truck("T-01", day -> {}).verdict())
                .isEqualTo("mass per revolution not shown either way, road speed proven");
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
        CSVRecord row = row("T-01");

        assertThat(row.get("verdict of the last catches")).isEqualTo("one such catch can't decide");
        assertThat(row.get("advice")).isEqualTo("catch more");
        assertThat(row.get("catch more (lb)")).isEqualTo("251");
        assertThat(row.get("catch more (kg)")).startsWith("113.8");
        double sum = List.of(
                        "probability below tolerance (%)",
                        "probability within tolerance (%)", "probability above tolerance (%)")
                .stream()
                .mapToDouble(name -> Double.parseDouble(row.get(name)))
                .sum();
        assertThat(sum).isCloseTo(100, within(1e-3));
        assertThat(Double.parseDouble(row.get("expanded uncertainty of the error (%)")))
                .isBetween(6.1, 6.2);
        assertThat(Double.parseDouble(row.get("guard band (%)"))).isGreaterThan(4);
        assertThat(row.get("largest source of uncertainty")).isEqualTo("scatter of the catches");
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
                        "curve",
                        truck.assessment().curves().get(0),
                        truck.assessment().truck().spreader().gateReading(),
                        message -> {})
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
