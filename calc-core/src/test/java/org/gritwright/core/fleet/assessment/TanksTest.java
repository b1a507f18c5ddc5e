package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.DayLimits;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TankEntry;
import org.gritwright.core.fleet.day.TankReadingEntry;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.TankOutcome;
import org.gritwright.core.record.TankRecord;
import org.gritwright.core.solution.Concentration;
import org.gritwright.core.solution.Salometer;
import org.gritwright.core.solution.Salt;
import org.gritwright.core.solution.SaltSupply;
import org.gritwright.core.solution.Side;
import org.gritwright.core.solution.Solution;
import org.gritwright.core.solution.Tank;
import org.gritwright.core.solution.TankCorrection;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tanks of a day, from the document to what to add. */
class TanksTest {
    /** Of the page about solutions: 82 degrees at 40 °F are 20.99 %. */
    private static final String WEAK = """
            {"name": "north", "material": "brine", "salt": "sodium-chloride",
             "reading": {"salometer": "82", "standardUncertainty": "0.3"}, "temperature": "40 °F",
             "capacity": "3000 gal", "level": "2500 gal", "target": "23.3 %", "tolerance": "0.5 %",
             "saltAtHand": {"assay": "97 %", "assayUncertainty": "0.5 %", "moisture": "2 %"}}""";

    private static final String STRONG = """
            {"name": "calcium", "material": "calcium", "salt": "calcium-chloride",
             "reading": {"specificGravity": "1.335", "reference": "60 °F", "standardUncertainty": "0.001"}, "temperature": "60 °F",
             "capacity": "2000 gal", "level": "900 gal", "target": "29 %", "tolerance": "0.7 %"}""";

    private static TankAssessment only(String tank) {
        return LiquidDays.tanks(tank).get(0);
    }

    private static TankAssessment changed(String tank, String right, String wrong) {
        assertThat(tank).contains(right);
        return only(tank.replaceFirst(Pattern.quote(right), wrong));
    }

    private static List<FindingCode> codes(TankAssessment tank) {
        return tank.findings().stream().map(Finding::code).toList();
    }

    private static double percent(Quantity<Dimensionless> share) {
        return Amounts.in(share, SpreadingUnits.PERCENT);
    }

    private static Measured<Dimensionless> measured(double percent, double uncertainty) {
        return Measured.of(
                Amounts.of(percent, SpreadingUnits.PERCENT),
                Amounts.of(uncertainty, SpreadingUnits.PERCENT),
                Double.POSITIVE_INFINITY);
    }

    @Test
    void aWeakBatchIsToldHowMuchSaltItWants() {
        TankAssessment weak = only(WEAK);
        Quantity<Temperature> cold = Amounts.of(40, SpreadingUnits.FAHRENHEIT);
        Solution solution = Concentration.bySalometer(new Salometer(82, 0.3), cold);
        TankCorrection expected = new Tank(
                        Amounts.of(3000, SpreadingUnits.US_GALLON),
                        Amounts.of(2500, SpreadingUnits.US_GALLON),
                        solution,
                        cold)
                .correctedTo(
                        Amounts.of(23.3, SpreadingUnits.PERCENT),
                        SaltSupply.damp(
                                Salt.SODIUM_CHLORIDE, measured(97, 0.5), Amounts.of(2, SpreadingUnits.PERCENT)));

        assertThat(weak.refusals()).isEmpty();
        assertThat(weak.solution()).contains(solution);
        assertThat(weak.density()).contains(solution.density(cold));
        assertThat(weak.freezingPoint()).contains(solution.freezingPoint());
        assertThat(weak.verdict()).contains(Verdict.OUTSIDE_TOLERANCE);
        assertThat(weak.correction()).contains(expected);
        assertThat(Amounts.in(
                        weak.correction().orElseThrow().salt().orElseThrow().value(), SpreadingUnits.POUND))
                .isCloseTo(773.7, within(0.05));
        assertThat(codes(weak)).contains(FindingCode.TANK_OFF_TARGET, FindingCode.TANK_DENSITY_DIFFERS);
        assertThat(weak.needsAttention()).isTrue();
    }

    @Test
    void beyondTheEutecticIsSaidAndWaterBringsItBack() {
        TankAssessment strong = only(STRONG);

        assertThat(strong.refusals()).isEmpty();
        assertThat(strong.freezingPoint().orElseThrow().side()).isEqualTo(Side.BEYOND_EUTECTIC);
        assertThat(codes(strong)).contains(FindingCode.SOLUTION_BEYOND_EUTECTIC, FindingCode.TANK_OFF_TARGET);
        TankCorrection correction = strong.correction().orElseThrow();
        assertThat(correction.salt()).isEmpty();
        assertThat(Amounts.in(correction.water().orElseThrow().value(), SpreadingUnits.US_GALLON))
                .isBetween(50.0, 400.0);
        assertThat(correction.water().orElseThrow().standardUncertainty()).isPresent();
    }

    @Test
    void whatIsWithinItsToleranceWantsNothing() {
        TankAssessment right = changed(WEAK, "\"82\"", "\"91\"");
        assertThat(percent(right.solution().orElseThrow().share().value())).isCloseTo(23.3, within(0.3));
        assertThat(right.verdict()).contains(Verdict.WITHIN_TOLERANCE);
        assertThat(right.correction()).isEmpty();
        assertThat(right.obstacle()).isEmpty();
        assertThat(right.needsAttention()).isFalse();
        assertThat(codes(right)).doesNotContain(FindingCode.TANK_OFF_TARGET, FindingCode.TANK_DENSITY_DIFFERS);
    }

    @Test
    void whatCantBeToldIsNotCorrected() {
        // 0.7 % from the target, but by 2 degrees either way.
        TankAssessment rough =
                changed(WEAK, "\"82\", \"standardUncertainty\": \"0.3\"", "\"88\", \"standardUncertainty\": \"2\"");
        assertThat(rough.verdict().orElseThrow()).isIn(Verdict.UNDECIDED, Verdict.UNDECIDABLE);
        assertThat(rough.correction()).isEmpty();
        assertThat(codes(rough)).doesNotContain(FindingCode.TANK_OFF_TARGET);
    }

    /** A part of the mass may be off by parts of the mass, not by parts of the target: 23.3 % ± 0.5 % is not ± 0.12 %. */
    @ParameterizedTest
    @CsvSource({
        "22.85 %, WITHIN_TOLERANCE",
        "22.75 %, OUTSIDE_TOLERANCE",
        "23.75 %, WITHIN_TOLERANCE",
        "23.85 %, OUTSIDE_TOLERANCE"
    })
    void theToleranceIsInPercentOfTheMass(String share, Verdict verdict) {
        TankAssessment stated = changed(
                WEAK,
                "\"salometer\": \"82\", \"standardUncertainty\": \"0.3\"",
                "\"concentration\": \"" + share + "\", \"standardUncertainty\": \"0 %\"");
        assertThat(stated.verdict()).contains(verdict);
    }

    @Test
    void withoutATargetNothingIsJudged() {
        TankAssessment bare = changed(WEAK, "\"target\": \"23.3 %\", \"tolerance\": \"0.5 %\",", "");
        assertThat(bare.refusals()).isEmpty();
        assertThat(bare.verdict()).isEmpty();
        assertThat(bare.correction()).isEmpty();
        assertThat(bare.freezingPoint()).isPresent();
    }

    @Test
    void aTankThatCantTakeItSaysSoAndIsNoRefusal() {
        TankAssessment full = changed(WEAK, "3000 gal", "2510 gal");
        assertThat(full.refusals()).isEmpty();
        assertThat(full.correction()).isEmpty();
        assertThat(full.obstacle().orElseThrow().sentence())
                .startsWith("capacity of the tank must be at least 2535")
                .contains("what is in it after salt is added: 2510 gal");
        assertThat(full.solution()).isPresent();
    }

    /** 26 % of sodium chloride can be made, but it freezes warmer than 23 %. */
    @Test
    void nobodyIsSentBeyondTheEutectic() {
        TankAssessment tank = changed(WEAK, "\"target\": \"23.3 %\"", "\"target\": \"26 %\"");

        assertThat(tank.correction()).isEmpty();
        assertThat(tank.obstacle().orElseThrow().sentence())
                .startsWith("target of a tank must be one that isn't beyond the eutectic")
                .endsWith(": 26 %");
        assertThat(tank.refusals()).isEmpty();
    }

    @Test
    void whoDoesntSayWhichSaltIsAtHandIsAsked() {
        TankAssessment unsaid = changed(
                WEAK,
                ",\n \"saltAtHand\": {\"assay\": \"97 %\", \"assayUncertainty\": \"0.5 %\", \"moisture\": \"2 %\"}",
                "");
        assertThat(unsaid.refusals()).isEmpty();
        assertThat(unsaid.obstacle().orElseThrow().sentence()).startsWith("saltAtHand must be given");
    }

    @Test
    void theDensityOfTheDaysMaterialIsComparedOnlyBeyondWhatIsUncertain() {
        // 23.3 % have 9.82 lb/gal at 60 °F, and 20.99 % have 9.71 lb/gal at 40 °F: 1.1 % less.
        assertThat(codes(only(WEAK))).contains(FindingCode.TANK_DENSITY_DIFFERS);
        assertThat(codes(changed(WEAK, "\"0.3\"", "\"5\""))).doesNotContain(FindingCode.TANK_DENSITY_DIFFERS);
        assertThat(codes(changed(WEAK, "\"82\"", "\"85\""))).doesNotContain(FindingCode.TANK_DENSITY_DIFFERS);
    }

    @Test
    void betweenTheEutecticsOfTwoSourcesTheSideIsUndecided() {
        TankAssessment between = changed(
                STRONG,
                "\"specificGravity\": \"1.335\", \"reference\": \"60 °F\", \"standardUncertainty\": \"0.001\"",
                "\"concentration\": \"30.5 %\", \"standardUncertainty\": \"0.1 %\"");
        assertThat(between.freezingPoint().orElseThrow().side()).isEqualTo(Side.UNDECIDED);
        assertThat(between.freezingPoint().orElseThrow().temperature()).isEmpty();
        assertThat(codes(between)).contains(FindingCode.EUTECTIC_SIDE_UNDECIDED);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\'', textBlock = """
            "salometer": "82"          | "salometer": "182"                | /reading     | degrees of a salometer must be within 0 to 100
            "salometer": "82"          | "salometer": "82 %"               | /reading     | degrees of a salometer must be a bare number and no percentage: 82 %
            "standardUncertainty": "0.3" | "standardUncertainty": "0.3 %"  | /reading     | uncertainty of a salometer must be a bare number
            "standardUncertainty": "0.3" | "standardUncertainty": "-0.3"   | /reading     | uncertainty of a salometer must be
            "salometer": "82",         | ''                                | /reading     | one of salometer, specificGravity and concentration: none
            "salometer": "82",         | "salometer": "82", "concentration": "21 %", | /reading | one of salometer, specificGravity and concentration: 2 of them
            "salometer": "82",         | "salometer": "82", "reference": "60 °F", | /reading | left out, as only a specific gravity has one
            "salometer": "82",         | "specificGravity": "1.17",        | /reading     | given: it stands on the hydrometer
            "salometer": "82",         | "specificGravity": "117 %", "reference": "60 °F", | /reading | specific gravity must be a bare number
            "salometer": "82",         | "concentration": "21 %",          | /reading     | uncertainty of a concentration must be a percentage, as the concentration is: 0.3
            "sodium-chloride"          | "calcium-chloride"                | /reading     | salt of a solution that a salometer reads must be sodium chloride: calcium chloride
            "temperature": "40 °F"     | "temperature": "140 °F"           | /reading     | temperature of the solution must be within
            "temperature": "40 °F"     | "temperature": "4000 °F"          | /temperature | temperature must be within -100 °C to 300 °C
            "level": "2500 gal"        | "level": "25000 gal"              | /level       | level of the tank must be at most its capacity, 3000 gal: 25000 gal
            "level": "2500 gal"        | "level": "0 gal"                  | /level       | level of the tank must be greater than 0
            "material": "brine"        | "material": "salt"                | /material    | material in a tank must be a liquid, with density: salt
            , "tolerance": "0.5 %"     | ''                                | /tolerance   | tolerance of a tank must be given with the target
            "target": "23.3 %",        | ''                                | /target      | target of a tank must be given with the tolerance
            "assay": "97 %"            | "assay": "99 %", "assayed": "as-hydrate" | /saltAtHand | salt with crystal water must be calcium chloride or magnesium chloride: sodium chloride
            "moisture": "2 %"          | "moisture": "2 %", "assayed": "as-anhydrous" | /saltAtHand | moisture of the salt must be left out
            """)
    void whatCantBeComputedIsThatTanksRefusal(String right, String wrong, String pointer, String words) {
        assertThat(WEAK).contains(right);
        List<TankAssessment> both =
                LiquidDays.tanks(STRONG, WEAK.replaceFirst(Pattern.quote(right), wrong == null ? "" : wrong));

        assertThat(both.get(0).refusals()).isEmpty();
        assertThat(both.get(1).needsAttention()).isTrue();
        assertThat(both.get(1).refusals()).anySatisfy(one -> {
            assertThat(one.pointer()).isEqualTo("/tanks/1" + pointer);
            assertThat(one.sentence()).contains(words);
        });
    }

    @Test
    void saltWithCrystalWaterMustBeToldHowItIsAssayed() {
        String weak = STRONG.replace("1.335", "1.2")
                .replace(
                        "\"tolerance\": \"0.7 %\"",
                        "\"tolerance\": \"0.7 %\", \"saltAtHand\": {\"assay\": \"77 %\", \"assayUncertainty\": \"1 %\" }");
        assertThat(only(weak).refusals())
                .extracting(Refusal::toString)
                .containsExactly(
                        "/tanks/0/saltAtHand: assayed, what the assay of the salt is a part of, must be given for"
                                + " calcium chloride, which may hold crystal water: nothing");
        assertThat(only(weak).correction()).isEmpty();
        double byHydrate = pounds(only(weak.replace("\"1 %\" }", "\"1 %\", \"assayed\": \"as-hydrate\" }")));
        double byAnhydrous = pounds(only(weak.replace("\"1 %\" }", "\"1 %\", \"assayed\": \"as-anhydrous\" }")));
        double without = pounds(only(weak.replace("\"1 %\" }", "\"1 %\", \"assayed\": \"no-crystal-water\" }")));
        // Of the same 77 %, crystals hold the least, and water that comes along must be salted too.
        assertThat(byHydrate).isGreaterThan(byAnhydrous);
        assertThat(byAnhydrous).isGreaterThan(without);
    }

    private static double pounds(TankAssessment tank) {
        return Amounts.in(tank.correction().orElseThrow().salt().orElseThrow().value(), SpreadingUnits.POUND);
    }

    @Test
    void ofAcetatesNothingIsComputedButWhatIsStated() {
        TankAssessment acetate = changed(
                WEAK.replace("sodium-chloride", "potassium-acetate"),
                "\"salometer\": \"82\", \"standardUncertainty\": \"0.3\"",
                "\"concentration\": \"50 %\", \"standardUncertainty\": \"0.1 %\"");
        assertThat(acetate.refusals())
                .extracting(Refusal::pointer)
                .contains("/tanks/0/temperature", "/tanks/0/reading");
        assertThat(codes(acetate)).contains(FindingCode.SOLUTION_BEYOND_EUTECTIC);
        assertThat(acetate.correction()).isEmpty();
    }

    @Test
    void aSampleMayBeWarmerThanTheTank() {
        TankAssessment warm = changed(
                WEAK,
                "\"standardUncertainty\": \"0.3\"",
                "\"standardUncertainty\": \"0.3\", \"temperature\": \"60 °F\"");
        // At 60 °F degrees are percent of saturation, 26.395 %.
        assertThat(percent(warm.solution().orElseThrow().share().value())).isCloseTo(0.82 * 26.395, within(1e-6));
    }

    @Test
    void theOrderOfTheTanksDoesntMatter() {
        List<TankAssessment> one = LiquidDays.tanks(WEAK, STRONG);
        List<TankAssessment> other = LiquidDays.tanks(STRONG, WEAK);
        assertThat(other).containsExactly(one.get(1), one.get(0));
    }

    @Test
    void whatIsShownIsTheSameInEveryUnit() {
        FleetDay day = LiquidDays.day("", WEAK);
        TankEntry us = day.tanks().get(0);
        TankEntry metric = new TankEntry(
                us.name(),
                us.material(),
                us.salt(),
                us.reading(),
                Amounts.of((40 - 32) / 1.8, SpreadingUnits.CELSIUS),
                liters(us.capacity()),
                liters(us.level()),
                us.target(),
                us.tolerance(),
                us.saltAtHand());
        TankAssessment inLiters = FleetAssessor.of(BuiltInTypes.registry())
                .assessTanks(day.withTanks(List.of(metric)))
                .get(0);
        TankAssessment inGallons = only(WEAK);

        assertThat(percent(inLiters.solution().orElseThrow().share().value()))
                .isCloseTo(percent(inGallons.solution().orElseThrow().share().value()), within(1e-9));
        assertThat(pounds(inLiters)).isCloseTo(pounds(inGallons), within(1e-6));
        assertThat(codes(inLiters)).isEqualTo(codes(inGallons));
    }

    private static Quantity<Volume> liters(Quantity<Volume> volume) {
        return Amounts.of(Amounts.in(volume, SpreadingUnits.LITER), SpreadingUnits.LITER);
    }

    @Test
    void tanksAreNoPartOfATrucksRecord() {
        FleetDay day = LiquidDays.day("", WEAK, STRONG);
        assertThat(day.tanks()).hasSize(2);
        assertThat(day.withOnly(day.trucks().get(0)).tanks()).isEmpty();
    }

    @Test
    void aTankOfALiquidThatIsntThereIsNobodysAndTwoOfOneNameAreOne() {
        String text = Document.FLEET_DAY.toText(LiquidDays.day("", WEAK));
        assertThatThrownBy(() -> Document.FLEET_DAY.read(new ByteArrayInputStream(
                        text.replaceFirst("\"material\": ?\"brine\"", "\"material\": \"brime\"")
                                .getBytes(StandardCharsets.UTF_8))))
                .isInstanceOf(RejectedDocumentException.class)
                .hasMessageContaining("/tanks/0/material")
                .hasMessageContaining("did you mean \"brine\"?");

        FleetDay day = LiquidDays.day("", WEAK);
        FleetAssessor assessor = FleetAssessor.of(BuiltInTypes.registry());
        TankEntry tank = day.tanks().get(0);
        TankEntry unknown = new TankEntry(
                tank.name(),
                "brime",
                tank.salt(),
                tank.reading(),
                tank.temperature(),
                tank.capacity(),
                tank.level(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        assertThatThrownBy(() -> assessor.assessTanks(day.withTanks(List.of(unknown))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("tank \"north\": material must be one of [brine, calcium, salt]");
        assertThatThrownBy(() -> assessor.assessTanks(day.withTanks(List.of(tank, tank))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("tank must be listed once: north");
        assertThatThrownBy(() -> assessor.within(new DayLimits(10, 100, 100, 100, 1, 10))
                        .assessTanks(LiquidDays.day("", WEAK, STRONG)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("tanks of a day must be at most 1: 2");
    }

    @Test
    void aReadingMadeInCodeIsTheSameAsOneWrittenDown() {
        assertThat(LiquidDays.day("", WEAK).tanks().get(0).reading())
                .isEqualTo(TankReadingEntry.bySalometer(
                        Amounts.of(82, SpreadingUnits.ONE), Amounts.of(0.3, SpreadingUnits.ONE)));
        assertThat(LiquidDays.day("", STRONG).tanks().get(0).reading())
                .isEqualTo(TankReadingEntry.byHydrometer(
                        Amounts.of(1.335, SpreadingUnits.ONE),
                        Amounts.of(60, SpreadingUnits.FAHRENHEIT),
                        Amounts.of(0.001, SpreadingUnits.ONE)));
        assertThat(TankReadingEntry.stated(
                                Amounts.of(21, SpreadingUnits.PERCENT), Amounts.of(0.1, SpreadingUnits.PERCENT))
                        .solution(Salt.SODIUM_CHLORIDE, Amounts.of(40, SpreadingUnits.FAHRENHEIT))
                        .share())
                .isEqualTo(measured(21, 0.1));
    }

    /** What is to be done follows from all that is known of a tank, and nothing that a finding asks for is "nothing to do". */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\'', textBlock = """
            82   | 0.3 | 23.3 % | 3000 gal | CORRECT
            82   | 0.3 | 23.3 % | 2510 gal | FIND_ANOTHER_WAY
            82   | 0.3 | 26 %   | 3000 gal | FIND_ANOTHER_WAY
            88   | 2   | 23.3 % | 3000 gal | READ_AGAIN
            82   | 0.3 | 21 %   | 3000 gal | CHECK_ENTRIES
            86   | 0.3 | 22 %   | 3000 gal | NOTHING
            91   | 0.3 | 23.3 % | 3000 gal | NOTHING
            93   | 0.3 | 23.9 % | 3000 gal | KEEP_FROM_COLD
            982  | 0.3 | 23.3 % | 3000 gal | FIX_RECORD
            82   | 0.3 | ''     | 3000 gal | CHECK_ENTRIES
            86   | 0.3 | ''     | 3000 gal | STATE_TARGET
            91   | 0.3 | ''     | 3000 gal | READ_AGAIN
            93   | 0.3 | ''     | 3000 gal | KEEP_FROM_COLD
            """)
    void whatIsToBeDoneFollowsFromAllThatIsKnown(
            String degrees, String uncertainty, String target, String capacity, TankStep step) {
        TankAssessment tank = only(WEAK.replace(
                        "\"82\", \"standardUncertainty\": \"0.3\"",
                        "\"" + degrees + "\", \"standardUncertainty\": \"" + uncertainty + "\"")
                .replace(
                        "\"target\": \"23.3 %\", \"tolerance\": \"0.5 %\",",
                        target.isEmpty() ? "" : "\"target\": \"" + target + "\", \"tolerance\": \"0.5 %\",")
                .replace("3000 gal", capacity));

        assertThat(tank.nextStep()).as(tank.toString()).isEqualTo(step);
        assertThat(tank.needsAttention()).isEqualTo(step != TankStep.NOTHING && step != TankStep.STATE_TARGET);
        if (!tank.needsAttention()) {
            // Brine as strong as the eutectic always reads so.
            assertThat(codes(tank)).isSubsetOf(FindingCode.EUTECTIC_SIDE_UNDECIDED);
        }
    }

    @Test
    void aTanksRecordHasTheReadingAndWhatItShowed() throws IOException, RejectedDocumentException {
        FleetDay day =
                LiquidDays.day("", WEAK, STRONG, WEAK.replace("north", "full").replace("3000 gal", "2510 gal"));
        List<TankAssessment> tanks = FleetAssessor.of(BuiltInTypes.registry()).assessTanks(day);
        for (TankAssessment tank : tanks) {
            TankRecord record = TankRecord.of(day, tank);
            String text = Document.TANK_RECORD.toText(record);
            assertThat(Document.TANK_RECORD.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))))
                    .isEqualTo(record);
            assertThat(record.tank()).isEqualTo(tank.tank());
            assertThat(record.day()).isEqualTo(day.day());
            assertThat(record.decisionRule()).isEqualTo(day.decisionRule());
            assertThat(record.material().name()).isEqualTo(tank.tank().material());
            assertThat(record.findings()).isEqualTo(tank.findings());
            assertThat(record.outcome().share())
                    .contains(tank.solution().orElseThrow().share().value());
            assertThat(record.outcome().verdict()).isEqualTo(tank.verdict());
        }
        TankOutcome weak = TankRecord.of(day, tanks.get(0)).outcome();
        assertThat(TankRecord.of(day, tanks.get(0)).nextStep()).isEqualTo(TankStep.CORRECT);
        assertThat(Amounts.in(weak.correction().orElseThrow().salt().orElseThrow(), SpreadingUnits.POUND))
                .isCloseTo(773.7, within(0.05));
        assertThat(weak.correction().orElseThrow().saltUncertainty()).isPresent();
        assertThat(weak.correction().orElseThrow().water()).isEmpty();
        assertThat(weak.side()).contains(Side.UP_TO_EUTECTIC);
        // A difference: as many kelvins as degrees Celsius.
        assertThat(Amounts.in(weak.freezingPointUncertainty().orElseThrow(), SpreadingUnits.KELVIN))
                .isEqualTo(tanks.get(0)
                        .freezingPoint()
                        .orElseThrow()
                        .temperature()
                        .orElseThrow()
                        .standardUncertainty()
                        .orElseThrow()
                        .getValue()
                        .doubleValue());
        assertThat(TankRecord.of(day, tanks.get(1))
                        .outcome()
                        .correction()
                        .orElseThrow()
                        .water())
                .isPresent();
        assertThat(TankRecord.of(day, tanks.get(2)).outcome().obstacle())
                .isEqualTo(tanks.get(2).obstacle());
    }

    @Test
    void theRecordOfARefusedTankHasTheReasonsAndWhatWasWrittenDown() {
        FleetDay day = LiquidDays.day("", WEAK.replace("\"82\"", "\"182\""));
        TankAssessment refused =
                FleetAssessor.of(BuiltInTypes.registry()).assessTanks(day).get(0);
        TankRecord record = TankRecord.of(day, refused);
        assertThat(record.refusals()).isEqualTo(refused.refusals()).isNotEmpty();
        assertThat(record.outcome().share()).isEmpty();
        assertThat(record.nextStep()).isEqualTo(TankStep.FIX_RECORD);
        assertThat(record.tank()).isEqualTo(day.tanks().get(0));
    }

    @Test
    void aTankOfAnotherDaysMaterialHasNoRecordOfThisDay() {
        FleetDay day = LiquidDays.day("", WEAK);
        TankAssessment tank =
                FleetAssessor.of(BuiltInTypes.registry()).assessTanks(day).get(0);
        FleetDay other = LiquidDays.read(
                Document.FLEET_DAY.toText(LiquidDays.day("")).replace("\"brine\"", "\"brine of the south yard\""));
        assertThatThrownBy(() -> TankRecord.of(other, tank))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("material of tank \"north\" must be one of the day's: brine");
    }

    @Test
    void aTargetBetweenTheEutecticsOfTwoSourcesIsNotBeyondThem() {
        TankAssessment thinned = changed(STRONG, "\"29 %\"", "\"30.5 %\"");

        assertThat(thinned.verdict()).contains(Verdict.OUTSIDE_TOLERANCE);
        assertThat(thinned.obstacle()).isEmpty();
        assertThat(thinned.correction().orElseThrow().water()).isPresent();
    }
}
