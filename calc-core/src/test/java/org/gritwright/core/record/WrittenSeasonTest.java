package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.record.WrittenTruckSeason.CalibrationError;
import org.gritwright.core.season.CommonError;
import org.gritwright.core.season.Delivery;
import org.gritwright.core.season.Draw;
import org.gritwright.core.season.Season;
import org.gritwright.core.season.StatedMass;
import org.gritwright.core.season.TruckSeason;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Tag("jackson")
class WrittenSeasonTest {
    /** As version 1 of the format was typed first, kept forever: it has to be read forever. */
    private static final String GOOD = resource("/golden/version-1/season-account.json");

    private static String resource(String name) {
        try (InputStream in = WrittenSeasonTest.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static WrittenSeason read(String text) throws IOException, RejectedDocumentException {
        return DocumentLawsTest.read(Document.SEASON_ACCOUNT, text);
    }

    private static WrittenSeason good() throws IOException, RejectedDocumentException {
        return read(GOOD);
    }

    private static String with(String part, String other) {
        assertThat(GOOD).contains(part);
        return GOOD.replace(part, other);
    }

    private static List<String> problems(String text) {
        RejectedDocumentException refused = catchThrowableOfType(RejectedDocumentException.class, () -> read(text));
        assertThat(refused).as("refusal").isNotNull();
        return refused.problems().stream().map(Object::toString).toList();
    }

    private static List<String> sentences(WrittenSeason season) {
        return season.findings().stream().map(Finding::toString).toList();
    }

    @Test
    void whatIsDatedOnTheDayOfASurveyIsBeforeIt() throws Exception {
        Season season = good().toSeason();

        assertThat(season.piles().get(0).deliveries())
                .extracting(Delivery::ticket, Delivery::period)
                .containsExactly(tuple("1041", 1), tuple("1042", 2));
        assertThat(season.piles().get(0).otherUses().get(0).period()).isEqualTo(2);
        assertThat(season.trucks().get(0).draws()).extracting(Draw::period).containsExactly(1, 2);
        assertThat(season.balance().found()).isEmpty();
        assertThat(good().findings()).isEmpty();
    }

    @Test
    void theDaysOfSurveysGoWithThePilesSoThatSentencesNameThem() throws Exception {
        WrittenSeason account = good();
        List<LocalDate> expected = new ArrayList<>(List.of(account.from()));
        account.piles().get(0).surveys().forEach(survey -> expected.add(survey.on()));

        assertThat(account.toSeason().piles().get(0).days()).isEqualTo(expected).hasSizeGreaterThan(2);
    }

    @Test
    void aVerificationAndTheLoadsShareTheErrorOfTheirScale() throws Exception {
        TruckSeason truck = good().toSeason().trucks().get(0);

        assertThat(truck.common()).isPresent();
        assertThat(truck.common()).isEqualTo(truck.loads().get(0).weighed().common());
        assertThat(truck.calibrationError().orElseThrow())
                .isEqualTo(Measured.of(
                        Amounts.of(0.8, SpreadingUnits.PERCENT),
                        Amounts.of(1.2, SpreadingUnits.PERCENT),
                        Double.POSITIVE_INFINITY));
    }

    @Test
    void aCalibrationErrorFromElsewhereIsTakenWhereTheAccountStatesNone() throws Exception {
        CalibrationError known = CalibrationError.of(
                Measured.of(Amounts.of(-2, SpreadingUnits.PERCENT), Amounts.of(1, SpreadingUnits.PERCENT), 7));
        WrittenSeason filled = good().withCalibrationErrors(Map.of("T-07", known, "T-08", known, "T-99", known));

        assertThat(filled.trucks())
                .extracting(WrittenTruckSeason::calibrationError)
                .containsExactly(good().trucks().get(0).calibrationError(), Optional.of(known));
        assertThat(filled.trucks()).hasSize(2);
        assertThatThrownBy(() -> CalibrationError.of(Measured.once(Amounts.of(-2, SpreadingUnits.PERCENT))))
                .hasMessageContaining("standard uncertainty of a calibration error must be known and greater than 0");
    }

    @Test
    void aRatioIsWrittenInPercentHoweverItWasMade() throws Exception {
        CalibrationError bare = new CalibrationError(
                Amounts.of(0.25, SpreadingUnits.ONE),
                Amounts.of(0.0625, SpreadingUnits.ONE),
                Optional.of(new CommonError("loader 4", Amounts.of(0.03125, SpreadingUnits.ONE))));
        WrittenSeason filled = good().withCalibrationErrors(Map.of("T-08", bare));
        String text = Document.SEASON_ACCOUNT.toText(filled);

        assertThat(text).contains("\"25 %\"", "\"6.25 %\"", "\"3.125 %\"");
        assertThat(read(text)).isEqualTo(filled);
    }

    @Test
    void aDrawAcrossASurveyIsRefusedAndSaysWhereToSplitIt() {
        String text = with("\"to\": \"2027-01-31\", \"indicated\"", "\"to\": \"2027-02-10\", \"indicated\"")
                .replace("\"from\": \"2027-02-01\", \"to\"", "\"from\": \"2027-02-11\", \"to\"");

        assertThat(problems(text))
                .singleElement()
                .asString()
                .contains(
                        "/trucks/0/draws/0",
                        "truck T-07",
                        "line 24, column 5",
                        "split it at the survey of 2027-01-31 into one to 2027-01-31 and one from 2027-02-01",
                        "2026-11-01 to 2027-02-10");
    }

    /** Each is a slip of one text, told once and at its place. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\'', textBlock = """
            "id": "south"           | "id": "north"           | /piles/1/id                  | north again
            "id": "T-08"            | "id": "T-07"            | /trucks/1/id                 | T-07 again
            "ticket": "1042"        | "ticket": "1041"        | /piles/0/deliveries/1/ticket | 1041 again, at pile north
            "on": "2027-03-01"      | "on": "2027-04-16"      | /piles/0/otherUses/0/on      | from 2026-11-01 to 2027-04-15
            "on": "2027-02-01"      | "on": "2026-10-31"      | /piles/0/deliveries/1/on     | in season 2026/27
            "on": "2027-03-31"      | "on": "2027-03-30"      | /trucks/1/draws/0/to         | 2027-03-30, that of the last survey of pile south
            "on": "2027-01-31", "mass": "312 | "on": "2027-04-15", "mass": "312 | /piles/0/surveys/1/on | after 2027-04-15
            "pile": "south"         | "pile": "sout"          | /trucks/1/draws/0/pile       | south
            "from": "2027-02-01"    | "from": "2027-01-31"    | /trucks/0/draws/1            | split it at the survey of 2027-01-31
            "from": "2026-12-01"    | "from": "2026-10-01"    | /trucks/0/weighedLoads/0/from | in season
            "to": "2026-12-02"      | "to": "2028-12-02"      | /trucks/0/weighedLoads/0/to | in season
            "to": "2026-12-02"      | "to": "2026-11-02"      | /trucks/0/weighedLoads/0     | 2026-12-01, the first one, or later
            "to": "2027-04-15",     | "to": "2026-04-15",     | /to                          | 2026-11-01, its first day, or later
            "source": "telemetry"   | "source": "display"     | /trucks/0/draws/1/source | controller, telemetry
            "mass": "25 ton"        | "mass": "-25 ton"       | /piles/0/deliveries/1        | mass of ticket 1042
            "value": "0.8 %"        | "value": "-100 %"       | /trucks/0/calibrationError/value | above -100 %
            "value": "0.8 %"        | "value": "0.8"          | /trucks/0/calibrationError/value | written with %
            "standardUncertainty": "0.1 %" | "standardUncertainty": "0.001" | /piles/0/deliveries/0/sharedError/standardUncertainty | written with %
            "indicated": "60.5 ton" | "indicated": "0 ton"    | /trucks/0/weighedLoads/0     | indicated mass of weighed loads
            "unexplained": "5 ton"  | "unexplained": "0 ton"  | /piles/0                     | unexplained of pile north
            """)
    void oneSlipIsOneProblemAtItsPlace(String part, String slip, String pointer, String words) {
        String text = GOOD.replaceFirst(Pattern.quote(part), slip);
        assertThat(text.equals(GOOD)).isFalse();
        List<String> told = problems(text);
        assertThat(told.stream().filter(one -> one.contains(pointer) && one.contains(words)))
                .as(told.toString())
                .hasSize(1);
        assertThat(told.get(0)).contains("line ");
    }

    /** No survey is left to split it at. */
    @ParameterizedTest
    @CsvSource({"2027-04-15, 2027-04-16", "2027-03-31, 2027-04-15"})
    void aDrawThatLastsBeyondTheSeasonOrItsSurveysIsOneProblem(String part, String slip) {
        assertThat(problems(with("\"to\": \"" + part + "\", \"indicated", "\"to\": \"" + slip + "\", \"indicated")))
                .singleElement()
                .asString()
                .contains("/to (");
    }

    @Test
    void whatIsWrongInSeveralPlacesIsToldAtOnce() {
        String text = with("\"id\": \"T-08\"", "\"id\": \"T-07\"")
                .replace("\"ticket\": \"1042\"", "\"ticket\": \"1041\"")
                .replace("\"on\": \"2027-03-01\"", "\"on\": \"2028-03-01\"");

        assertThat(problems(text)).hasSize(3);
    }

    @Test
    void aMisspelledPileIsAnsweredWithTheOneThatWasMeant() {
        assertThat(problems(with("\"pile\": \"south\"", "\"pile\": \"sout\"")))
                .singleElement()
                .asString()
                .contains("one of [north, south]", "did you mean \"south\"");
    }

    @Test
    void oneScaleHasOneUncertaintyWhereverItIsNamed() {
        String text = with(
                "\"weighed\": {\"mass\": \"60 ton\", \"standardUncertainty\": \"0.2 ton\",\n"
                        + "      \"sharedError\": {\"name\": \"loader 3\", \"standardUncertainty\": \"0.5 %\"}}",
                "\"weighed\": {\"mass\": \"60 ton\", \"standardUncertainty\": \"0.2 ton\",\n"
                        + "      \"sharedError\": {\"name\": \"loader 3\", \"standardUncertainty\": \"0.4 %\"}}");

        assertThat(problems(text))
                .singleElement()
                .asString()
                .contains(
                        "/trucks/0/weighedLoads/0/weighed/sharedError/standardUncertainty",
                        "the same wherever it is named: 0.5 %");
    }

    /** The supplier's scale was stated with 0.1 %. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\'', textBlock = """
            "50 ton", "standardUncertainty": "2 ton" | /piles/1/opening
            "0 ton", "standardUncertainty": "0 ton"  | /piles/1/surveys/0
            "12 ton", "standardUncertainty": "1 ton" | /piles/0/otherUses/0
            """)
    void whateverWasWeighedOnAScaleHasItsUncertainty(String mass, String pointer) {
        String slip = ", \"sharedError\": {\"name\": \"supplier\", \"standardUncertainty\": \"0.2 %\"}";

        assertThat(problems(with(mass, mass + slip)))
                .singleElement()
                .asString()
                .contains(pointer + "/sharedError/standardUncertainty", "the same wherever it is named: 0.1 %");
    }

    @Test
    void theDeliveriesOfASupplierHaveOneUncertainty() {
        assertThat(problems(with("\"0.1 %\"}}],", "\"0.2 %\"}}],")))
                .singleElement()
                .asString()
                .contains(
                        "/piles/0/deliveries/1/sharedError/standardUncertainty",
                        "the same wherever it is named: 0.1 %");
    }

    @Test
    void anErrorOfAllThatWasIndicatedIsNone() {
        assertThatThrownBy(() -> new CalibrationError(
                        Amounts.of(-100, SpreadingUnits.PERCENT),
                        Amounts.of(1, SpreadingUnits.PERCENT),
                        Optional.empty()))
                .hasMessage("calibration error must be above -100 %: -100 %");
    }

    @Test
    void whatEndsBeforeItBeginsIsRefusedWhereItIsMade() {
        assertThatThrownBy(() -> drawn("2026-12-02", "2026-12-01", "9 ton"))
                .hasMessage(
                        "last day of a draw from pile north must be 2026-12-02, the first one, or later: 2026-12-01");
        assertThatThrownBy(() -> new WrittenTruckSeason.Loads(
                        LocalDate.parse("2026-12-02"), LocalDate.parse("2026-12-01"), stated("24 ton"), mass("24 ton")))
                .hasMessage("last day of weighed loads must be 2026-12-02, the first one, or later: 2026-12-01");
    }

    /** A draw's days, or a part of them, by telemetry beside the controller. */
    @ParameterizedTest
    @CsvSource({
        "2027-02-01, 2027-04-15, true",
        "2027-02-05, 2027-02-05, true",
        "2027-04-15, 2027-04-15, true",
        "2027-04-16, 2027-04-30, false",
        "2027-01-01, 2027-01-31, false"
    })
    void noDayOfATruckAndAPileIsInTwoDraws(LocalDate from, LocalDate to, boolean overlaps) {
        LocalDate end = LocalDate.parse("2027-05-01");
        WrittenPile pile = pile("north", survey("2027-01-31"), survey("2027-05-01"));
        WrittenTruckSeason truck = truck("T-1", drawn("2027-02-01", "2027-04-15", "10 ton"), drawn(from, to, "9 ton"));
        Runnable made = () -> new WrittenSeason("s", LocalDate.parse("2026-11-01"), end, List.of(pile), List.of(truck));

        if (overlaps) {
            assertThatThrownBy(made::run)
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessage("days of the draws of truck T-1 from pile north must be each in one draw only, and"
                            + " 2027-02-01 to 2027-04-15 is another one: " + from + " to " + to);
        } else {
            made.run();
        }
    }

    @Test
    void aDrawThatHoldsAnotherIsFoundWhicheverIsListedFirst() {
        WrittenPile pile = pile("north", survey("2027-05-01"));
        WrittenTruckSeason.Drawn all = drawn("2026-11-01", "2027-05-01", "50 ton");
        WrittenTruckSeason.Drawn part = drawn("2026-12-01", "2026-12-31", "9 ton");

        for (WrittenTruckSeason truck : List.of(truck("T-1", all, part), truck("T-1", part, all))) {
            assertThatThrownBy(() -> season(List.of(pile), truck)).hasMessageContaining("each in one draw only");
        }
        // Another truck's, or from another pile, are others.
        assertThat(season(List.of(pile), truck("T-1", all), truck("T-2", part)).trucks())
                .hasSize(2);
    }

    @Test
    void theSameLoadsAreNotListedTwice() {
        WrittenTruckSeason.Loads loads = loads("24 ton", "24 ton");
        WrittenTruckSeason truck = new WrittenTruckSeason("T-1", Optional.empty(), List.of(), List.of(loads, loads));

        assertThatThrownBy(() -> season(List.of(), truck))
                .hasMessage("weighed loads of truck T-1 must be each once: 24 ton again");
    }

    private static WrittenTruckSeason.Drawn counted(String pile, String from, String to) {
        return new WrittenTruckSeason.Drawn(
                pile,
                LocalDate.parse(from),
                LocalDate.parse(to),
                Optional.empty(),
                WrittenTruckSeason.Source.TELEMETRY);
    }

    @Test
    void aDrawByTelemetryTakesWhatItsSumsSay() {
        WrittenSeason written = season(
                List.of(pile("north", survey("2026-12-31"), survey("2027-03-31"))),
                truck(
                        "T-1",
                        counted("north", "2026-11-01", "2026-12-31"),
                        drawn("2027-01-01", "2027-01-31", "20 ton"),
                        counted("north", "2027-02-01", "2027-03-31")),
                truck("T-2", counted("north", "2026-11-01", "2026-11-30")));

        WrittenSeason filled = written.withSums((truck, draw) ->
                truck.equals("T-1") ? Optional.of(mass(draw.from().getMonthValue() + " ton")) : Optional.empty());

        assertThat(filled.trucks().get(0).draws())
                .extracting(WrittenTruckSeason.Drawn::indicated)
                .containsExactly(Optional.of(mass("11 ton")), Optional.of(mass("20 ton")), Optional.of(mass("2 ton")));
        assertThat(filled.trucks().get(1)).isEqualTo(written.trucks().get(1));
        assertThatThrownBy(filled::toSeason)
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(
                        "indicated mass that truck T-2 drew from pile north from 2026-11-01 to 2026-11-30 must be stated, or"
                                + " filled in from the sums of its telemetry: missing");
        assertThat(filled.withSums((truck, draw) -> Optional.of(mass("3 ton")))
                        .toSeason()
                        .trucks())
                .extracting(truck -> truck.draws().get(0).indicated())
                .containsExactly(mass("11 ton"), mass("3 ton"));
    }

    @Test
    void whatTheControllerSaysIsStated() {
        assertThat(problems(with("\"indicated\": \"212 ton\", ", "")))
                .singleElement()
                .asString()
                .contains("/trucks/0/draws/0", "indicated mass of a draw from pile north", "missing");
    }

    @Test
    void aDrawWithoutMassIsReadAndWrittenSo() throws Exception {
        WrittenSeason read = read(with("\"indicated\": \"225 ton\", ", ""));

        assertThat(read.trucks().get(0).draws().get(1).indicated()).isEmpty();
        assertThat(read(Document.SEASON_ACCOUNT.toText(read))).isEqualTo(read);
        assertThat(read.findings()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        // The other draw, and whether telemetry's sums would count for both.
        "south, 2026-11-30, 2026-12-10, true",
        "south, 2026-11-01, 2026-11-01, true",
        "south, 2026-12-01, 2026-12-10, false",
        "gravel, 2026-11-05, 2026-11-06, false"
    })
    void sumsThatTwoPilesOfAMaterialWouldShareAreRefused(String pile, String from, String to, boolean isRefused) {
        WrittenTruckSeason.Drawn one = counted("north", "2026-11-01", "2026-11-30");
        WrittenTruckSeason.Drawn other = counted(pile, from, to);
        List<WrittenPile> piles = List.of(
                pile("north", survey("2027-03-31")),
                pile("south", survey("2027-03-31")),
                new WrittenPile(
                        "gravel",
                        "sand",
                        stated("100 ton"),
                        List.of(survey("2027-03-31")),
                        List.of(),
                        List.of(),
                        Optional.empty()));

        // One of both that is stated doesn't tell how much of the sum was the other's.
        for (WrittenTruckSeason truck : List.of(
                truck("T-1", one, other),
                truck("T-1", other, one),
                truck("T-1", one, stating(other)),
                truck("T-1", other, stating(one)))) {
            if (isRefused) {
                assertThatThrownBy(() -> season(piles, truck))
                        .isInstanceOf(InvalidInputException.class)
                        .hasMessageContaining("sums of telemetry don't tell of which pile it was");
            } else {
                assertThat(season(piles, truck).trucks()).containsExactly(truck);
            }
        }
        assertThat(season(piles, truck("T-1", stating(one), stating(other))).trucks())
                .hasSize(1);
    }

    private static WrittenTruckSeason.Drawn stating(WrittenTruckSeason.Drawn draw) {
        return new WrittenTruckSeason.Drawn(
                draw.pile(), draw.from(), draw.to(), Optional.of(mass("5 ton")), draw.source());
    }

    @Test
    void aPileWithoutASurveyHasNoClosing() {
        assertThatThrownBy(() -> season(List.of(pile("north"))))
                .hasMessage("surveys of pile north must be at least the closing: none");
        assertThat(problems(with(
                        "\"surveys\": [{\"on\": \"2027-03-31\", \"mass\": \"0 ton\", \"standardUncertainty\": \"0 ton\"}]",
                        "\"surveys\": []")))
                .singleElement()
                .asString()
                .contains("/piles/1/surveys", "one survey or more, of which the last is the closing");
    }

    @Test
    void aTicketInPoundsOrKilogramsStandsOut() {
        assertThat(sentences(delivered("24 ton", "25 ton", "24.5 ton", "23.9 ton", "24.2 ton", "48100 ton")))
                .containsExactly(
                        "ticket-in-other-unit: Ticket 1006 of pile north says 48100 ton, where the median of the"
                                + " season's tickets is 48700 lb: it may mean 48100 lb.");
        assertThat(sentences(delivered("24 ton", "25 ton", "24.5 ton", "23.9 ton", "24.2 ton", "24.4 lb")))
                .containsExactly("ticket-in-other-unit: Ticket 1006 of pile north says 24.4 lb, where the median of the"
                        + " season's tickets is 24.1 ton: it may mean 24.4 ton.");
        assertThat(sentences(delivered("48000 lb", "50000 lb", "49000 lb", "47800 lb", "48400 lb", "22000 lb")))
                .containsExactly(
                        "ticket-in-other-unit: Ticket 1006 of pile north says 22000 lb, where the median of the"
                                + " season's tickets is 21863 kg: it may mean 22000 kg.");
    }

    @Test
    void fourUsualLoadsAreEnoughToTellTheFifth() {
        assertThat(sentences(delivered("24 ton", "25 ton", "24.5 ton", "23.9 ton", "48100 ton")))
                .hasSize(1);
    }

    @Test
    void aLoadThatWouldBeUsualInNoUnitStandsOutNowhere() {
        assertThat(sentences(delivered("24 ton", "25 ton", "24.5 ton", "23.9 ton", "24.2 ton", "60 ton")))
                .isEmpty();
    }

    /** Draws differ, so that four times the usual one may be meant. */
    @Test
    void aDrawInPoundsNeedsNotBeAsLargeAsTheOthers() {
        WrittenPile pile = new WrittenPile(
                "north",
                "salt",
                stated("900000 ton"),
                List.of(survey("2027-05-01")),
                List.of(),
                List.of(),
                Optional.empty());
        WrittenTruckSeason[] trucks = Stream.of("40 ton", "30 ton", "50 ton", "60 ton", "55 ton", "400000 ton")
                .map(mass -> truck("T of " + mass, drawn("2026-11-01", "2027-05-01", mass)))
                .toArray(WrittenTruckSeason[]::new);

        assertThat(sentences(season(List.of(pile), trucks)))
                .singleElement()
                .asString()
                .endsWith("it may mean 400000 lb.");
    }

    @Test
    void halfALoadAndLoadsOfAllSizesStandOutNowhere() {
        assertThat(sentences(delivered("24 ton", "25 ton", "24.5 ton", "23.9 ton", "24.2 ton", "12 ton")))
                .isEmpty();
        // 11 ton is 2.2 times less than 24.2, but loads are of all sizes here.
        assertThat(sentences(delivered("24 ton", "12 ton", "48 ton", "6 ton", "24.2 ton", "11 ton")))
                .isEmpty();
        // Four others say too little of what is usual.
        assertThat(sentences(delivered("24 ton", "25 ton", "24.5 ton", "48100 ton")))
                .isEmpty();
    }

    @Test
    void aTicketThatIsLeftOutInARowIsNamed() {
        assertThat(sentences(numbered("1039", "1040", "1041", "1043", "1044", "1045")))
                .containsExactly(
                        "ticket-missing: Ticket 1042 isn't in the season's list, and its neighbors 1041, of pile"
                                + " north, and 1043 are: look whether it was lost.");
        assertThat(sentences(numbered("N-099", "N-102", "N-103", "N-104", "N-105", "N-106")))
                .extracting(sentence -> sentence.substring(0, 28))
                .containsExactly("ticket-missing: Ticket N-100", "ticket-missing: Ticket N-101");
    }

    /** The row, and what it misses. */
    @ParameterizedTest
    @CsvSource({
        // Three may be lost together, and the last one's neighbor is looked at too.
        "1 2 3 4 5 9, 6 7 8",
        // A row ends where the next one begins.
        "1 2 3 5 6 7 100, 4",
        // A quarter of the steps leave one out.
        "1 2 3 5 6 7 9 10 11, 4 8",
        // More digits than these are no number of tickets.
        "100000000000001 100000000000002 100000000000003 100000000000005 100000000000006 100000000000007,"
                + " 100000000000004",
        "1000000000000001 1000000000000002 1000000000000003 1000000000000005 1000000000000006 1000000000000007, ''"
    })
    void aRowMissesWhatIsLeftOut(String row, String missing) {
        assertThat(numbered(row.split(" ")).findings().stream()
                        .map(one -> one.toString().replaceFirst("ticket-missing: Ticket (\\d+) .*", "$1"))
                        .collect(Collectors.joining(" ")))
                .isEqualTo(missing);
    }

    @Test
    void oneNumberWrittenInTwoWaysIsOneOfTheRowInAnyOrder() {
        for (WrittenSeason season :
                List.of(numbered("1", "2", "03", "3", "5", "6", "7"), numbered("1", "2", "3", "03", "5", "6", "7"))) {
            assertThat(sentences(season))
                    .singleElement()
                    .asString()
                    .startsWith("ticket-missing: Ticket 04 isn't in the season's list, and its neighbors 03,");
        }
    }

    @Test
    void numbersThatAreNoRowMissNothing() {
        assertThat(sentences(numbered("1039", "1040", "1041", "1046", "1047", "1048")))
                .isEmpty();
        assertThat(sentences(numbered("1039", "1041", "1043", "1044", "1046", "1048")))
                .isEmpty();
        assertThat(sentences(numbered("a", "b", "x9", "7", "99999999999999999999", "12")))
                .isEmpty();
        assertThat(sentences(numbered("1", "2", "3", "5", "6"))).isEmpty();
    }

    @Test
    void aTicketThatWentToAnotherPileIsNotMissing() {
        WrittenPile north = pile("north", survey("2027-05-01"), tickets("1", "2", "3", "5", "6", "7"));
        WrittenPile south = pile("south", survey("2027-05-01"), tickets("4"));

        assertThat(sentences(season(List.of(north, south)))).isEmpty();
    }

    @Test
    void aPileThatGaveHalfAsMuchAgainAsItEverHeldIsNamed() {
        WrittenPile pile = pile("north", survey("2027-05-01"), tickets("7"));
        // 100 ton at first and 24 ton by the ticket.
        assertThat(sentences(season(List.of(pile), truck("T-1", drawn("2026-11-01", "2027-05-01", "187 ton")))))
                .containsExactly(
                        "pile-overdrawn: The trucks say that they took 187 ton from pile north, where no more than"
                                + " 124 ton ever lay or came: deliveries are missing, or a draw is another pile's or in another unit.");
        assertThat(sentences(season(List.of(pile), truck("T-1", drawn("2026-11-01", "2027-05-01", "185 ton")))))
                .isEmpty();
    }

    @Test
    void aDrawInPoundsStandsOut() {
        WrittenPile pile = new WrittenPile(
                "north",
                "salt",
                stated("90000 ton"),
                List.of(survey("2027-05-01")),
                List.of(),
                List.of(),
                Optional.empty());
        List<WrittenTruckSeason> trucks = IntStream.range(0, 6)
                .mapToObj(i -> truck(
                        "T-" + i,
                        drawn(
                                "2026-11-01",
                                "2027-05-01",
                                List.of("40 ton", "3 ton", "55 ton", "60 ton", "9 ton", "90000 ton")
                                        .get(i))))
                .toList();

        assertThat(sentences(season(List.of(pile), trucks.toArray(WrittenTruckSeason[]::new))))
                .containsExactly(
                        "draw-in-other-unit: Truck T-5 drew 90000 ton from pile north in the days from 2026-11-01 on,"
                                + " where the median of the season's draws is 95000 lb: it may mean 90000 lb.");
    }

    @Test
    void aTruckWithoutDrawsAndOneWithMoreLoadsThanDrawsAreNamed() {
        WrittenPile pile = pile("north", survey("2027-05-01"));
        WrittenTruckSeason none =
                new WrittenTruckSeason("T-1", Optional.empty(), List.of(), List.of(loads("24 ton", "24 ton")));
        WrittenTruckSeason few = new WrittenTruckSeason(
                "T-2",
                Optional.empty(),
                List.of(drawn("2026-11-01", "2027-05-01", "23 ton")),
                List.of(loads("24 ton", "24 ton")));
        WrittenTruckSeason idle = truck("T-3", drawn("2026-11-01", "2027-05-01", "0 ton"));

        assertThat(sentences(season(List.of(pile), none, few, idle)))
                .containsExactly(
                        "truck-without-draws: Truck T-1 drew nothing in this season: write down what it drew, or take it out"
                                + " if it stood still.",
                        "loads-beyond-draws: Of truck T-2, loads of 24 ton by its own controller were weighed, and it drew"
                                + " only 23 ton in the season: draws are missing, or loads are listed twice.");
    }

    @Test
    void loadsWhoseTwoNumbersAreInTwoUnitsAreNamed() {
        WrittenTruckSeason truck = new WrittenTruckSeason(
                "T-1",
                Optional.empty(),
                List.of(drawn("2026-11-01", "2027-05-01", "90000 lb")),
                List.of(loads("24000 lb", "10900 lb"), loads("24000 lb", "24100 lb")));

        assertThat(sentences(season(List.of(pile("north", survey("2027-05-01"))), truck)))
                .containsExactly(
                        "loads-in-other-unit: Loads of truck T-1 from 2026-12-01 on weighed 24000 lb, and the truck"
                                + " indicated 10900 lb of them: one may be in another unit, as 10900 kg would fit what was weighed.");
    }

    @Test
    void sizesThatNoComputationHoldsTogetherAreRefusedWhenTheSeasonIsBalanced() throws Exception {
        Season season = read(with("\"standardUncertainty\": \"0 ton\"", "\"standardUncertainty\": \"5e-324 ton\""))
                .toSeason();

        assertThatThrownBy(season::balance)
                .hasMessage(
                        "quantities of a network must be of sizes that can be computed with together: too far apart");
    }

    @Provide
    Arbitrary<WrittenSeason> seasons() {
        return WrittenSeasons.any();
    }

    @Property(tries = 200, edgeCases = EdgeCasesMode.NONE)
    void whateverIsNotRefusedCanBeBalancedAndLookedAtInAnyOrder(
            @ForAll("seasons") WrittenSeason season, @ForAll Random random) {
        WrittenSeason other = new WrittenSeason(
                season.season(),
                season.from(),
                season.to(),
                shuffled(
                        season.piles().stream()
                                .map(one -> new WrittenPile(
                                        one.id(),
                                        one.material(),
                                        one.opening(),
                                        one.surveys(),
                                        shuffled(one.deliveries(), random),
                                        shuffled(one.otherUses(), random),
                                        one.unexplained()))
                                .toList(),
                        random),
                shuffled(
                        season.trucks().stream()
                                .map(one -> new WrittenTruckSeason(
                                        one.id(),
                                        one.calibrationError(),
                                        shuffled(one.draws(), random),
                                        shuffled(one.weighedLoads(), random)))
                                .toList(),
                        random));

        assertThat(other.findings()).containsExactlyInAnyOrderElementsOf(season.findings());
        assertThat(parts(other.toSeason())).isEqualTo(parts(season.toSeason()));
    }

    private static <T> List<T> shuffled(List<T> list, Random random) {
        List<T> other = new ArrayList<>(list);
        Collections.shuffle(other, random);
        return other;
    }

    /** All that a season is made of, without the order. */
    private static Map<String, Long> parts(Season season) {
        Stream<Object> piles = season.piles().stream()
                .flatMap(pile -> Stream.concat(
                        Stream.of(List.of(
                                pile.id(), pile.material(), pile.opening(), pile.surveys(), pile.unexplained())),
                        Stream.concat(pile.deliveries().stream(), pile.otherUses().stream())
                                .map(part -> List.of(pile.id(), part))));
        Stream<Object> trucks = season.trucks().stream()
                .flatMap(truck -> Stream.concat(
                        Stream.of(List.of(truck.id(), truck.calibrationError(), truck.common())),
                        Stream.concat(truck.draws().stream(), truck.loads().stream())
                                .map(part -> List.of(truck.id(), part))));
        return Stream.concat(piles, trucks)
                .map(Object::toString)
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
    }

    private static Quantity<Mass> mass(String text) {
        int space = text.indexOf(' ');
        return Amounts.of(
                Double.parseDouble(text.substring(0, space)),
                switch (text.substring(space + 1)) {
                    case "ton" -> SpreadingUnits.SHORT_TON;
                    case "lb" -> SpreadingUnits.POUND;
                    default -> throw new IllegalArgumentException(text);
                });
    }

    private static StatedMass stated(String text) {
        return StatedMass.of(mass(text), mass("0.1 ton"));
    }

    private static WrittenPile.Survey survey(String on) {
        return new WrittenPile.Survey(LocalDate.parse(on), stated("50 ton"));
    }

    private static List<WrittenPile.Ticket> tickets(String... numbers) {
        return Stream.of(numbers)
                .map(one -> new WrittenPile.Ticket(one, LocalDate.parse("2026-12-01"), stated("24 ton")))
                .toList();
    }

    private static WrittenPile pile(String id, WrittenPile.Survey... surveys) {
        return new WrittenPile(id, "salt", stated("100 ton"), List.of(surveys), List.of(), List.of(), Optional.empty());
    }

    private static WrittenPile pile(String id, WrittenPile.Survey survey, List<WrittenPile.Ticket> tickets) {
        return new WrittenPile(id, "salt", stated("100 ton"), List.of(survey), tickets, List.of(), Optional.empty());
    }

    private static WrittenTruckSeason.Drawn drawn(String from, String to, String mass) {
        return drawn(LocalDate.parse(from), LocalDate.parse(to), mass);
    }

    private static WrittenTruckSeason.Drawn drawn(LocalDate from, LocalDate to, String mass) {
        return new WrittenTruckSeason.Drawn(
                "north", from, to, Optional.of(mass(mass)), WrittenTruckSeason.Source.CONTROLLER);
    }

    private static WrittenTruckSeason.Loads loads(String weighed, String indicated) {
        LocalDate day = LocalDate.parse("2026-12-01");
        return new WrittenTruckSeason.Loads(day, day, stated(weighed), mass(indicated));
    }

    private static WrittenTruckSeason truck(String id, WrittenTruckSeason.Drawn... draws) {
        return new WrittenTruckSeason(id, Optional.empty(), List.of(draws), List.of());
    }

    private static WrittenSeason season(List<WrittenPile> piles, WrittenTruckSeason... trucks) {
        return new WrittenSeason(
                "2026/27", LocalDate.parse("2026-11-01"), LocalDate.parse("2027-05-01"), piles, List.of(trucks));
    }

    /** One ticket a mass, numbered 1001, 1002 and so on. */
    private static WrittenSeason delivered(String... masses) {
        List<WrittenPile.Ticket> tickets = new ArrayList<>();
        for (String one : masses) {
            tickets.add(new WrittenPile.Ticket(
                    String.valueOf(1001 + tickets.size()), LocalDate.parse("2026-12-01"), stated(one)));
        }
        return season(List.of(pile("north", survey("2027-05-01"), tickets)));
    }

    private static WrittenSeason numbered(String... numbers) {
        return season(List.of(pile("north", survey("2027-05-01"), tickets(numbers))));
    }
}
