package org.gritwright.core.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class SeasonTest {
    private static final CommonError LOADER = new CommonError("loader 3", percent(0.5));

    private static Quantity<Dimensionless> percent(double value) {
        return Amounts.of(value, SpreadingUnits.PERCENT);
    }

    private static Quantity<Mass> tons(double value) {
        return Amounts.of(value, SpreadingUnits.SHORT_TON);
    }

    private static StatedMass stated(double tons, double uncertainty) {
        return StatedMass.of(tons(tons), tons(uncertainty));
    }

    private static Measured<Dimensionless> error(double percent, double uncertainty) {
        return Measured.of(percent(percent), percent(uncertainty), Double.POSITIVE_INFINITY);
    }

    private static WeighedLoads loads(double weighed, double indicated) {
        return new WeighedLoads(stated(weighed, 0.002 * weighed).sharing(LOADER), tons(indicated));
    }

    private static List<Delivery> deliveries(String of, int count, double tons) {
        List<Delivery> deliveries = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            deliveries.add(Delivery.of(of + i, stated(tons, 0.002 * tons)));
        }
        return deliveries;
    }

    private static double tons(Measured<Mass> mass) {
        return Amounts.in(mass.value(), SpreadingUnits.SHORT_TON);
    }

    private static double ratio(Measured<Dimensionless> number) {
        return Amounts.si(Dimensionless.class, number.value());
    }

    /** Two piles and three trucks; truck 2 takes what it says divided by an over-report. */
    private static Season season(double overReport, double lostTicket) {
        double indicated = 400 * (1 + overReport);
        Pile north = Pile.of("north", "salt", stated(500, 8), deliveries("N", 20, 40), stated(100 + lostTicket, 4));
        Pile south = Pile.of("south", "salt", stated(300, 6), deliveries("S", 20, 40), stated(300, 6));
        List<TruckSeason> trucks = List.of(
                TruckSeason.verified(
                        "1",
                        error(0, 1.5),
                        List.of(Draw.of("north", tons(500)), Draw.of("south", tons(200))),
                        List.of(loads(100, 100))),
                TruckSeason.verified(
                        "2",
                        error(0, 1.5),
                        List.of(Draw.of("north", tons(indicated)), Draw.of("south", tons(indicated))),
                        List.of(loads(100, 100 * (1 + overReport)))),
                TruckSeason.verified(
                        "3",
                        error(0, 1.5),
                        List.of(Draw.of("north", tons(300)), Draw.of("south", tons(200))),
                        List.of(loads(100, 100))));
        return new Season(List.of(north, south), trucks);
    }

    @Test
    void aSeasonThatAddsUpIsLeftAsItWasStated() {
        SeasonBalance balance = season(0, 0).balance();

        assertThat(balance.asStated().test().misfit()).isLessThan(1e-15);
        // Two piles and three trucks with loads.
        assertThat(balance.asStated().test().degreesOfFreedom()).isEqualTo(5);
        assertThat(balance.found()).isEmpty();
        assertThat(balance.withFound()).isEqualTo(balance.asStated());
        assertThat(balance.sentences())
                .containsExactly(
                        "All together adds up within the stated uncertainties: with no mistake anywhere, the chance of a"
                                + " misfit this large or larger is 100 %.",
                        "No single error is beyond chance.");
        assertThat(ratio(balance.asStated().truck("2").factor().orElseThrow())).isCloseTo(1, within(1e-12));
    }

    @Test
    void aTruckThatOverReportsIsFoundAndSaidInWords() {
        SeasonBalance balance = season(0.07, 0).balance();

        FoundError first = balance.found().get(0);
        assertThat(first.what()).isInstanceOfSatisfying(Suspicion.TruckReports.class, truck -> {
            assertThat(truck.truck()).isEqualTo("2");
            assertThat(ratio(truck.byTheRest().orElseThrow())).isCloseTo(0.07, within(0.0005));
            assertThat(truck.sentence())
                    .matches(
                            "Truck 2 over-reports by 7\\.0 ± 0\\.\\d % \\(95 %\\), by all numbers but its verification, which says 0 %\\.");
        });
        assertThat(first.risk()).isLessThan(0.01);
        assertThat(balance.found()).hasSize(1);
        assertThat(ratio(balance.withFound().truck("2").calibrationError().orElseThrow()))
                .isCloseTo(0.07, within(0.0005));
        assertThat(balance.withFound().truck("2").verification()).isZero();
        assertThat(balance.withFound().test().misfit())
                .isLessThan(balance.asStated().test().misfit());
        assertThat(balance.suspicions().get(0)).isEqualTo(first.what());
        assertThat(balance.sentences().get(1)).startsWith("Truck 2 over-reports by 7.0 ±");
    }

    @Test
    void aTicketThatIsMissingShowsAtItsPile() {
        SeasonBalance balance = season(0, 180).balance();

        FoundError first = balance.found().get(0);
        assertThat(first.what()).isInstanceOfSatisfying(Suspicion.PileOff.class, pile -> {
            assertThat(pile.pile()).isEqualTo("north");
            assertThat(tons(pile.missing())).isCloseTo(180, within(1.0));
            assertThat(pile.slips()).isEmpty();
            assertThat(pile.sentence())
                    .startsWith("Pile north: 180 ± 2")
                    .contains("ton (95 %) aren't written down: a delivery ticket is missing");
        });
        Flow found = balance.withFound().pile("north").flows().stream()
                .filter(flow -> flow.kind() == Flow.Kind.FOUND)
                .findFirst()
                .orElseThrow();
        assertThat(tons(found.mass())).isCloseTo(180, within(1.0));
        assertThat(first.confusion().isNone()).isTrue();
    }

    @Test
    void everyAccountAddsUpToRounding() {
        for (Season season : List.of(season(0, 0), season(0.07, 0), season(0.03, -60))) {
            SeasonBalance balance = season.balance();
            for (SeasonFigures figures : List.of(balance.asStated(), balance.withFound())) {
                for (PileAccount pile : figures.piles()) {
                    double sum = pile.flows().stream()
                            .mapToDouble(flow -> flow.kind().isIn() ? tons(flow.mass()) : -tons(flow.mass()))
                            .sum();
                    assertThat(sum).as(pile.toString()).isCloseTo(0, within(1e-9));
                }
                for (TruckFactor truck : figures.trucks()) {
                    assertThat(truck.verification() + truck.loads() + truck.piles())
                            .isCloseTo(1, within(1e-12));
                    assertThat(truck.loads()).isBetween(0.0, 1.0);
                }
            }
        }
    }

    @Test
    void weighedLoadsTellMoreThanPiles() {
        TruckFactor truck = season(0, 0).balance().asStated().truck("1");

        assertThat(truck.loads()).isGreaterThan(0.5);
        assertThat(truck.verification()).isBetween(0.05, 0.2);
        assertThat(truck.piles()).isBetween(0.0, 0.3);
    }

    @Test
    void aTicketInPoundsIsTheFirstSuspicion() {
        List<Delivery> tickets = new ArrayList<>(deliveries("N", 10, 40));
        tickets.set(3, Delivery.of("N4", stated(80_000, 160)));
        Pile north = Pile.of("north", "salt", stated(500, 8), tickets, stated(100, 4));
        Season season = new Season(
                List.of(north),
                List.of(TruckSeason.verified(
                        "1", error(0, 1.5), List.of(Draw.of("north", tons(800))), List.of(loads(100, 100)))));

        SeasonBalance balance = season.balance();
        Suspicion first = balance.found().get(0).what();
        assertThat(first)
                .isInstanceOfSatisfying(
                        Suspicion.PileOff.class,
                        pile -> assertThat(pile.slips())
                                .containsExactly(new TicketSlip("N4", TicketSlip.Kind.POUNDS_AS_TONS)));
        assertThat(first.sentence()).endsWith("Ticket N4 would fit if its number was in pounds, not tons.");
    }

    @Test
    void aTicketInTonsWrittenAsPoundsIsTheFirstSuspicion() {
        List<Delivery> tickets = new ArrayList<>(deliveries("N", 10, 40));
        Quantity<Mass> slip = Amounts.of(120, SpreadingUnits.POUND);
        tickets.set(3, Delivery.of("N4", StatedMass.of(slip, Amounts.of(0.24, SpreadingUnits.POUND))));
        Pile north = Pile.of("north", "salt", stated(500, 8), tickets, stated(180, 4));
        Season season = new Season(
                List.of(north),
                List.of(TruckSeason.verified(
                        "1", error(0, 1.5), List.of(Draw.of("north", tons(800))), List.of(loads(100, 100)))));

        assertThat(season.balance().found().get(0).what())
                .isInstanceOfSatisfying(
                        Suspicion.PileOff.class,
                        pile -> assertThat(pile.slips())
                                .contains(new TicketSlip("N4", TicketSlip.Kind.TONS_AS_POUNDS)));
    }

    @Test
    void trucksOfOnePileWithoutLoadsCannotBeToldApartAndItSaysWhy() {
        Pile north = Pile.of("north", "salt", stated(500, 5), deliveries("N", 20, 40), stated(200, 4));
        Season season = new Season(
                List.of(north),
                List.of(
                        TruckSeason.verified("1", error(0, 1), List.of(Draw.of("north", tons(700))), List.of()),
                        TruckSeason.verified("2", error(0, 1), List.of(Draw.of("north", tons(600))), List.of())));

        SeasonBalance balance = season.balance();
        FoundError found = balance.found().get(0);
        assertThat(balance.power().candidates()).isEqualTo(1);
        // Of what explains the same, what blames no truck is named first.
        assertThat(found.what()).isInstanceOf(Suspicion.PileOff.class);
        assertThat(found.confusion().same()).hasSize(2).hasOnlyElementsOfType(Suspicion.TruckReports.class);
        assertThat(found.confusion().reasons())
                .contains("No load of trucks 1, 2 was weighed.", "Trucks 1, 2 drew only from pile north.")
                .anyMatch(reason ->
                        reason.matches("Opening and closing of pile north are known to 1[23](\\.\\d)? ton.*"));
        assertThat(balance.confusedWith("2").orElseThrow().same()).hasSize(2);
        assertThat(balance.sentences())
                .anyMatch(sentence -> sentence.startsWith(
                        "The season's numbers can't tell that from a single truck that is off, any one of these: 1"
                                + " over-reports by "));
    }

    @Test
    void aDensityThatCancelsBetweenOpeningAndClosingIsNoSuspect() {
        // Misread by 20 ton: only a density off by far more than stated would explain it, by what it leaves of 400 −
        // 401.
        CommonError density = new CommonError("density", percent(1));
        Pile north = Pile.of(
                "north",
                "salt",
                stated(400, 4).sharing(density),
                deliveries("N", 10, 40),
                stated(401, 4).sharing(density));
        Season season = new Season(
                List.of(north),
                List.of(TruckSeason.verified("1", error(0, 1), List.of(Draw.of("north", tons(430))), List.of())));

        assertThat(season.balance().suspicions()).noneMatch(Suspicion.CommonOff.class::isInstance);
        Pile other = Pile.of(
                "north",
                "salt",
                stated(900, 4).sharing(density),
                deliveries("N", 10, 40),
                stated(101, 4).sharing(density));
        Season shown = new Season(
                List.of(other),
                List.of(TruckSeason.verified("1", error(0, 1), List.of(Draw.of("north", tons(1250))), List.of())));
        assertThat(shown.balance().suspicions()).anyMatch(Suspicion.CommonOff.class::isInstance);
    }

    @Test
    void aScaleThatTrucksWereVerifiedOnDoesNotAverageOut() {
        CommonError scale = new CommonError("yard scale", percent(1));
        Pile north = Pile.of("north", "salt", stated(500, 5), deliveries("N", 20, 40), stated(500, 5));
        List<TruckSeason> apart = new ArrayList<>();
        List<TruckSeason> together = new ArrayList<>();
        for (int i = 1; i <= 16; i++) {
            List<Draw> draws = List.of(Draw.of("north", tons(50)));
            apart.add(TruckSeason.verified(String.valueOf(i), error(0, 1.5), draws, List.of()));
            together.add(TruckSeason.verified(String.valueOf(i), error(0, Math.sqrt(1.25)), draws, List.of())
                    .sharing(scale));
        }
        // The balance of 800 tons by the trucks: 1.5 % / 4 each on its own; with 1 % shared, more than 1 %.
        assertThat(spread(new Season(List.of(north), apart))).isCloseTo(Math.hypot(7.2, 3), within(0.3));
        assertThat(spread(new Season(List.of(north), together))).isCloseTo(Math.hypot(7.2, 8.3), within(0.3));
    }

    /** The standard uncertainty of what the pile has too much, in tons. */
    private static double spread(Season season) {
        return season.balance().suspicions().stream()
                .filter(Suspicion.PileOff.class::isInstance)
                .map(one -> ((Suspicion.PileOff) one)
                        .missing()
                        .standardUncertainty()
                        .orElseThrow())
                .mapToDouble(u -> Amounts.in(u, SpreadingUnits.SHORT_TON))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whatAVerificationSaysIsToldNoFinerThanItIsKnown() {
        assertThat(reporting(-0.00018).sentence()).endsWith("which says 0 %.");
        assertThat(reporting(-0.154).sentence()).endsWith("which says -0.2 %.");
        assertThat(reporting(1.23).sentence()).endsWith("which says 1.2 %.");
    }

    private static Suspicion reporting(double percentByVerification) {
        return new Suspicion.TruckReports(
                "7",
                Measured.of(percent(percentByVerification), percent(0.6), Double.POSITIVE_INFINITY),
                Optional.of(Measured.of(percent(9), percent(2), Double.POSITIVE_INFINITY)),
                4);
    }

    @Test
    void anErrorThatWasStatedAsARatioIsToldInPercent() {
        Suspicion off = new Suspicion.TruckReports(
                "7",
                Measured.of(
                        Amounts.of(0.026, SpreadingUnits.ONE),
                        Amounts.of(0.01, SpreadingUnits.ONE),
                        Double.POSITIVE_INFINITY),
                Optional.of(Measured.of(percent(9), percent(2), Double.POSITIVE_INFINITY)),
                4);

        assertThat(off.sentence())
                .isEqualTo(
                        "Truck 7 over-reports by 9 ± 4 % (95 %), by all numbers but its verification, which says 2.6 %.");
    }

    @Test
    void thePowerSaysWhatWouldHaveBeenFound() {
        SeasonBalance balance = season(0, 0).balance();
        Quantity<Dimensionless> smallest = balance.smallestOverReport("2").orElseThrow();

        assertThat(Amounts.in(smallest, SpreadingUnits.PERCENT)).isBetween(5.0, 9.0);
        assertThat(balance.chanceOfFinding("2", smallest)).isCloseTo(0.95, within(1e-9));
        assertThat(balance.chanceOfFinding("2", percent(0))).isLessThan(0.01);
    }

    @Test
    void anUnverifiedTruckFollowsFromTheRest() {
        Pile north = Pile.of("north", "salt", stated(500, 5), deliveries("N", 20, 40), stated(100, 4));
        TruckSeason known = TruckSeason.verified("1", error(0, 1), List.of(Draw.of("north", tons(700))), List.of());
        TruckSeason unknown = TruckSeason.unverified("2", List.of(Draw.of("north", tons(550))), List.of());
        SeasonBalance one = new Season(List.of(north), List.of(known, unknown)).balance();

        assertThat(ratio(one.asStated().truck("2").factor().orElseThrow())).isCloseTo(500 / 550.0, within(1e-9));
        assertThat(one.smallestOverReport("2")).isEmpty();
        assertThat(one.chanceOfFinding("2", percent(50))).isZero();
        assertThat(one.confusedWith("2")).isEmpty();

        TruckSeason another = TruckSeason.unverified("3", List.of(Draw.of("north", tons(50))), List.of());
        SeasonBalance two = new Season(List.of(north), List.of(known, unknown, another)).balance();
        assertThat(two.asStated().truck("3").factor()).isEmpty();
        assertThat(two.asStated().truck("3").calibrationError()).isEmpty();
        Flow together = two.asStated().pile("north").flows().stream()
                .filter(flow -> flow.name().equals("2, 3"))
                .findFirst()
                .orElseThrow();
        assertThat(tons(together.mass())).isCloseTo(500, within(1e-9));
    }

    @Test
    void aSurveyInTheSeasonTellsWhichPeriodIsWrong() {
        Pile north = new Pile(
                        "north",
                        "salt",
                        stated(500, 5),
                        List.of(stated(400, 5), stated(100, 4)),
                        List.of(new Delivery("a", 1, stated(200, 0.5)), new Delivery("b", 2, stated(150, 0.5))),
                        List.of(),
                        Optional.empty())
                .using(new OtherUse("brine", 2, stated(20, 1)))
                .losing(tons(5));
        TruckSeason truck = TruckSeason.verified(
                "1",
                error(0, 1),
                List.of(new Draw("north", 1, tons(300)), new Draw("north", 2, tons(330))),
                List.of(loads(100, 100)));
        SeasonBalance balance = new Season(List.of(north), List.of(truck)).balance();

        assertThat(balance.found()).isNotEmpty();
        assertThat(balance.found().get(0).what()).isInstanceOfSatisfying(Suspicion.PileOff.class, pile -> {
            assertThat(pile.period()).isEqualTo(new SurveyPeriod(2, 2, List.of()));
            assertThat(pile.sentence()).startsWith("Pile north, period 2: ");
        });
        PileAccount account = balance.asStated().pile("north");
        assertThat(account.lost()).isPresent();
        double sum = account.flows().stream()
                .mapToDouble(flow -> flow.kind().isIn() ? tons(flow.mass()) : -tons(flow.mass()))
                .sum();
        assertThat(sum).isCloseTo(0, within(1e-9));
        assertThat(balance.suspicions()).anyMatch(one -> one instanceof Suspicion.SurveyOff);
    }

    @Test
    void wherePilesSayOnWhichDaysTheyWereSurveyedSentencesNameThem() {
        LocalDate opened = LocalDate.of(2026, 11, 1);
        List<LocalDate> on = List.of(LocalDate.of(2027, 1, 15), LocalDate.of(2027, 2, 20), LocalDate.of(2027, 4, 15));
        Pile numbered = Pile.of("north", "salt", stated(500, 5), List.of(), stated(600, 4));
        Pile north = new Pile(
                "north",
                "salt",
                stated(500, 5),
                List.of(stated(400, 5), stated(300, 5), stated(200, 5)),
                List.of(),
                List.of(),
                Optional.empty());
        Pile dated = north.surveyed(opened, on);

        assertThat(List.of(dated.period(1), dated.period(2), dated.period(3)))
                .extracting(SurveyPeriod::words)
                .containsExactly(
                        "between the opening of 2026-11-01 and the survey of 2027-01-15",
                        "between the surveys of 2027-01-15 and 2027-02-20",
                        "between the survey of 2027-02-20 and the closing of 2027-04-15");
        assertThat(List.of(north.period(1), north.period(3)))
                .extracting(SurveyPeriod::words)
                .containsExactly("period 1", "period 3");
        assertThat(numbered.period(1).words()).isEmpty();
        assertThat(dated.using(new OtherUse("brine", 2, stated(20, 1)))
                        .losing(tons(5))
                        .days())
                .isEqualTo(dated.days())
                .hasSize(4);
        // The same numbers, dated or not.
        List<Draw> draws = List.of(
                new Draw("north", 1, tons(100)), new Draw("north", 2, tons(180)), new Draw("north", 3, tons(100)));
        TruckSeason truck = TruckSeason.verified("1", error(0, 1), draws, List.of(loads(100, 100)));
        assertThat(sentences(dated, truck))
                .anyMatch(one -> one.startsWith("Pile north, between the surveys of 2027-01-15 and 2027-02-20: "))
                .anyMatch(one -> one.startsWith("The survey of 2027-01-15 of pile north found "))
                .noneMatch(one -> one.contains("period"));
        assertThat(sentences(north, truck))
                .anyMatch(one -> one.startsWith("Pile north, period 2: "))
                .anyMatch(one -> one.startsWith("Survey 1 of pile north found "));
        assertThat(new Season(List.of(dated), List.of(truck))
                        .balance()
                        .withFound()
                        .pile("north")
                        .flows())
                .filteredOn(flow -> flow.kind() == Flow.Kind.FOUND)
                .extracting(Flow::name)
                .containsExactly("between the surveys of 2027-01-15 and 2027-02-20");
    }

    private static List<String> sentences(Pile pile, TruckSeason truck) {
        return new Season(List.of(pile), List.of(truck))
                .balance().suspicions().stream().map(Suspicion::sentence).toList();
    }

    @Test
    void daysThatCanNotBeThoseOfSurveysAreRefused() {
        Pile north = Pile.of("north", "salt", stated(100, 2), List.of(), stated(40, 4));
        LocalDate opened = LocalDate.of(2026, 11, 1);

        assertThat(north.days()).isEmpty();
        // An opening counts with the beginning of its day, a survey with the end.
        assertThat(north.surveyed(opened, List.of(opened)).days()).containsExactly(opened, opened);
        assertThatThrownBy(() -> north.surveyed(opened, List.of()))
                .hasMessage(
                        "days of the surveys of pile north must be none, or the opening's and one for each of 1: 1");
        assertThatThrownBy(() -> north.surveyed(opened, List.of(opened.minusDays(1))))
                .hasMessage(
                        "days of the surveys of pile north must be each after the one before: 2026-11-01, 2026-10-31");
        Pile two = new Pile(
                "north",
                "salt",
                stated(100, 2),
                List.of(stated(40, 4), stated(20, 4)),
                List.of(),
                List.of(),
                Optional.empty());
        assertThatThrownBy(() -> two.surveyed(opened, List.of(opened, opened)))
                .hasMessage(
                        "days of the surveys of pile north must be each after the one before: 2026-11-01, 2026-11-01");
        assertThatThrownBy(() -> new SurveyPeriod(3, 2, List.of()))
                .hasMessage("number of a period must be within 1 to 2: 3");
        assertThatThrownBy(() -> new SurveyPeriod(1, 2, List.of(opened)))
                .hasMessage("days of a period must be two, or none where they aren't known: [2026-11-01]");
    }

    @Test
    void aScaleThatIsOffIsToldFromItsTrucks() {
        List<TruckSeason> trucks = new ArrayList<>();
        List<Pile> piles = new ArrayList<>();
        for (int i = 1; i <= 6; i++) {
            piles.add(Pile.of("p" + i, "salt", stated(300, 3), deliveries("p" + i + "-", 10, 40), stated(200, 3)));
            // Two loaders, of which loader 3 reads 6 % too much.
            CommonError scale = i % 2 == 0 ? LOADER : new CommonError("loader " + (i + 3), percent(0.5));
            double weighed = i % 2 == 0 ? 106 : 100;
            trucks.add(TruckSeason.verified(
                    String.valueOf(i),
                    error(0, 1),
                    List.of(Draw.of("p" + i, tons(500))),
                    List.of(new WeighedLoads(stated(weighed, 0.5).sharing(scale), tons(100)))));
        }
        SeasonBalance balance = new Season(piles, trucks).balance();

        assertThat(balance.found().get(0).what()).isInstanceOfSatisfying(Suspicion.CommonOff.class, scale -> {
            assertThat(scale.name()).isEqualTo("loader 3");
            assertThat(ratio(scale.error())).isCloseTo(0.0566, within(0.001));
            assertThat(scale.sentence())
                    .startsWith("All masses by loader 3 are 5.7 ±")
                    .endsWith("too large.");
        });
    }

    /** Three piles with a truck each that is right; the scale of their verifications shows 5 % too much. */
    private static Season verifiedOn(Optional<CommonError> scale) {
        List<TruckSeason> trucks = new ArrayList<>();
        List<Pile> piles = new ArrayList<>();
        for (int i = 1; i <= 3; i++) {
            piles.add(Pile.of("p" + i, "salt", stated(300, 1), deliveries("p" + i + "-", 10, 40), stated(200, 1)));
            TruckSeason truck = TruckSeason.verified(
                    String.valueOf(i), error(100 / 1.05 - 100, 0.5), List.of(Draw.of("p" + i, tons(500))), List.of());
            trucks.add(scale.map(truck::sharing).orElse(truck));
        }
        return new Season(piles, trucks);
    }

    @Test
    void theScaleOfTheVerificationsIsTheSuspectAndNoTruckIs() {
        CommonError platform = new CommonError("platform", percent(0.5));

        assertThat(verifiedOn(Optional.of(platform)).balance().found())
                .singleElement()
                .satisfies(found -> assertThat(found.what())
                        .isInstanceOfSatisfying(Suspicion.CommonOff.class, scale -> {
                            assertThat(scale.name()).isEqualTo("platform");
                            assertThat(ratio(scale.error())).isCloseTo(0.05, within(0.005));
                        }));
        assertThat(verifiedOn(Optional.empty()).balance().found())
                .hasSize(3)
                .allSatisfy(found -> assertThat(found.confusion().same())
                        .hasAtLeastOneElementOfType(Suspicion.TruckReports.class)
                        .allSatisfy(one -> assertThat(one).isNotInstanceOf(Suspicion.CommonOff.class)));
    }

    @Test
    void aScaleThatIsAsGoodAsItsUncertaintyMakesNoTruckSuspect() {
        CommonError poor = new CommonError("platform", percent(4));

        assertThat(verifiedOn(Optional.of(poor)).balance().found()).isEmpty();
    }

    @Test
    void whatAVerificationSharesMakesItsFactorUncertainAndIsNotAveragedAway() {
        CommonError scale = new CommonError("platform", percent(0.5));
        TruckSeason alone =
                TruckSeason.verified("1", error(25, 2), List.of(), List.of()).sharing(scale);
        // Factor 1 / 1.25 = 0.8, its own 0.8² × 2 %, the scale's 0.8 × 0.5 %.
        assertThat(uncertainty(alone)).isCloseTo(Math.hypot(0.0128, 0.004), within(1e-12));

        TruckSeason weighed = TruckSeason.verified(
                        "1",
                        error(25, 2),
                        List.of(),
                        List.of(new WeighedLoads(stated(80, 1).sharing(scale), tons(100))))
                .sharing(scale);
        // The loads give 0.8 ± 0.01 on the same scale: both of their own are averaged, and the scale's stays.
        double own = 1 / Math.hypot(1 / 0.0128, 1 / 0.01);
        assertThat(uncertainty(weighed)).isCloseTo(Math.hypot(own, 0.004), within(1e-9));
    }

    private static double uncertainty(TruckSeason truck) {
        Measured<Dimensionless> factor = new Season(List.of(), List.of(truck))
                .balance()
                .asStated()
                .truck("1")
                .factor()
                .orElseThrow();
        return Amounts.si(Dimensionless.class, factor.standardUncertainty().orElseThrow());
    }

    @Test
    void aVerificationSharesTheUncertaintyThatItsScaleHasElsewhere() {
        TruckSeason truck = TruckSeason.verified("1", error(0, 1), List.of(), List.of(loads(100, 100)))
                .sharing(new CommonError("loader 3", percent(0.8)));
        assertThatThrownBy(() -> new Season(List.of(), List.of(truck)))
                .hasMessage("standard uncertainty of loader 3 must be the same wherever it is named: 0.5 %: 0.8 %");
        assertThatThrownBy(
                        () -> TruckSeason.unverified("1", List.of(), List.of()).sharing(LOADER))
                .hasMessage("calibration error of truck 1 must be given where it shares the error of a scale: none");
    }

    /** A truck whose verification says 25 % and whose loads say 100 %. */
    private static SeasonBalance weighedAgainstItsVerification() {
        TruckSeason truck =
                TruckSeason.verified("1", error(25, 2), List.of(), List.of(new WeighedLoads(stated(50, 1), tons(100))));
        return new Season(List.of(), List.of(truck)).balance();
    }

    @Test
    void aVerificationAgainstLoadsIsOneNumberAgainstAnother() {
        SeasonBalance balance = weighedAgainstItsVerification();
        List<Suspicion> suspicions = balance.suspicions();

        // Factors of 0.8 ± 0.0128 and 0.5 ± 0.01.
        double score = 0.3 / Math.hypot(0.0128, 0.01);
        assertThat(suspicions)
                .hasSize(2)
                .allSatisfy(one -> assertThat(one.score()).isCloseTo(score, within(1e-9)));
        assertThat(suspicions)
                .anySatisfy(one -> assertThat(one).isInstanceOfSatisfying(Suspicion.TruckReports.class, truck -> {
                    Measured<Dimensionless> rest = truck.byTheRest().orElseThrow();
                    // 1/0.5 − 1, ± 0.01/0.5².
                    assertThat(ratio(rest)).isCloseTo(1, within(1e-9));
                    assertThat(Amounts.si(
                                    Dimensionless.class,
                                    rest.standardUncertainty().orElseThrow()))
                            .isCloseTo(0.04, within(1e-9));
                }));
        Confusion confusion = balance.confusedWith(suspicions.get(1));
        assertThat(confusion.same()).containsExactly(suspicions.get(0));
        assertThat(confusion.alike()).isEmpty();
        assertThat(balance.confusedWith(suspicions.get(0)).same()).containsExactly(suspicions.get(1));
        assertThat(confusion.reasons()).containsExactly("The loads of truck 1 were weighed on one scale only.");
        assertThatThrownBy(() -> season(0, 0).balance().confusedWith(suspicions.get(0)))
                .hasMessageContaining("suspicion must be one of the season's");
    }

    @Test
    void whatNoFactorFitsIsSaidSo() {
        // The loads say −1 % of what was indicated, by the rest of one pile.
        Pile north = Pile.of("north", "salt", stated(100, 1), List.of(), stated(110, 1));
        TruckSeason truck = TruckSeason.verified("1", error(0, 1), List.of(Draw.of("north", tons(50))), List.of());
        SeasonBalance balance = new Season(List.of(north), List.of(truck)).balance();

        assertThat(balance.suspicions())
                .anySatisfy(one ->
                        assertThat(one.sentence()).isEqualTo("Truck 1 reports far more than it can have taken."));
        assertThat(balance.sentences())
                .contains(
                        "The season's numbers can't tell that from this: Truck 1 reports far more than it can have taken.");
    }

    @Test
    void readingsThatAreHardlyDifferentAreSaidWithTheirCorrelation() {
        // Three weighings on scales of their own and no verification; two are good, and tell of each other.
        TruckSeason truck = TruckSeason.unverified(
                "1",
                List.of(),
                List.of(
                        new WeighedLoads(stated(110, 1), tons(100)),
                        new WeighedLoads(stated(100, 1), tons(100)),
                        new WeighedLoads(stated(104, 2), tons(100))));
        SeasonBalance balance = new Season(List.of(), List.of(truck)).balance();

        assertThat(balance.found()).singleElement().satisfies(found -> {
            assertThat(found.confusion().same()).isEmpty();
            assertThat(found.confusion().isNone()).isFalse();
            // Residuals of the weights 1, 1 and 1/4.
            assertThat(found.confusion().alike())
                    .singleElement()
                    .satisfies(one -> assertThat(one.correlation()).isCloseTo(0.8, within(1e-9)));
        });
        assertThat(balance.sentences())
                .anyMatch(sentence -> sentence.startsWith(
                                "Hard to tell from that (correlation 0.8): The weighed loads of truck 1 are ")
                        && sentence.endsWith(" too small."))
                .anyMatch(sentence -> sentence.contains(
                        " With no mistake in the whole season, the chance of a finding this clear is below 0.01 %."));
        Confusion confusion = balance.confusedWith(balance.suspicions().get(0));
        assertThat(confusion.same()).isEmpty();
        assertThat(confusion.alike()).hasSize(1);
    }

    @Test
    void aRiskThatIsNotTinyIsAnUpperLimit() {
        TruckSeason truck = TruckSeason.verified(
                "1", error(0, 1), List.of(), List.of(new WeighedLoads(stated(104, 0.8), tons(100))));

        // 4 % at √(1² + 0.8²) %: a score of 3.1.
        assertThat(new Season(List.of(), List.of(truck)).balance().sentences())
                .anyMatch(sentence -> sentence.contains(
                        " With no mistake in the whole season, the chance of a finding this clear is at most 0.18 %."));
    }

    @Test
    void figuresAreFoundByTheirIds() {
        SeasonFigures figures = season(0, 0).balance().asStated();

        assertThat(figures.pile("south").pile()).isEqualTo("south");
        assertThat(figures.pile("north").lost()).isEmpty();
        assertThatThrownBy(() -> figures.pile("west")).hasMessageContaining("pile must be one of the season: west");
        assertThatThrownBy(() -> figures.truck("9")).hasMessageContaining("truck must be one of the season: 9");
    }

    /** Two periods, in the first of which something else took 20 tons. */
    private static Pile used(StatedMass survey, double spread) {
        return new Pile(
                        "north",
                        "salt",
                        stated(500, 100),
                        List.of(survey, stated(480, 100)),
                        List.of(),
                        List.of(new OtherUse("brine", 1, stated(20, 1))),
                        Optional.empty())
                .losing(tons(spread));
    }

    @Test
    void whatIsUnexplainedIsSoForTheWholeSeason() {
        SeasonBalance balance = new Season(List.of(used(stated(480, 100), 5)), List.of()).balance();
        PileAccount account = balance.asStated().pile("north");
        Measured<Mass> lost = account.lost().orElseThrow();

        // Nothing else tells of a few tons: it stays as it was allowed for.
        assertThat(balance.asStated().test().misfit()).isLessThan(1e-9);
        assertThat(tons(lost)).isCloseTo(0, within(1e-9));
        assertThat(Amounts.in(lost.standardUncertainty().orElseThrow(), SpreadingUnits.SHORT_TON))
                .isCloseTo(5, within(0.01));
        assertThat(account.flows().stream().filter(flow -> flow.kind() == Flow.Kind.UNEXPLAINED))
                .extracting(Flow::mass)
                .containsExactly(lost);
    }

    @Test
    void anOtherUseBelongsToItsPeriod() {
        SeasonBalance balance = new Season(List.of(used(stated(480, 1), 0.1)), List.of()).balance();

        // 500 − 20 = 480 in the first, and nothing moved in the second.
        assertThat(balance.asStated().test().misfit()).isLessThan(1e-9);
    }

    @Test
    void anExactSurveyIsNoSuspect() {
        List<Suspicion> exact = new Season(List.of(used(stated(480, 0), 5)), List.of())
                .balance()
                .suspicions();
        List<Suspicion> uncertain = new Season(List.of(used(stated(480, 4), 5)), List.of())
                .balance()
                .suspicions();

        assertThat(exact).noneMatch(Suspicion.SurveyOff.class::isInstance);
        // Opening and closing are in their periods' balances.
        assertThat(uncertain.stream().filter(Suspicion.SurveyOff.class::isInstance))
                .extracting(one -> ((Suspicion.SurveyOff) one).number())
                .containsExactly(1);
    }

    @Test
    void exactSurveysThatContradictEachOtherAreRefusedByName() {
        Pile north = new Pile(
                "north",
                "salt",
                stated(500, 0),
                List.of(stated(400, 0), stated(300, 0)),
                List.of(),
                List.of(),
                Optional.empty());

        assertThatThrownBy(() -> new Season(List.of(north), List.of()).balance())
                .hasMessageContaining("balances must be free of contradictions")
                .hasMessageContaining("survey 1 of pile north");
    }

    @Test
    void whatWasFoundInOneOfTwoPeriodsNamesIt() {
        Pile north = new Pile(
                "north",
                "salt",
                stated(500, 2),
                List.of(stated(300, 2), stated(300, 2)),
                List.of(),
                List.of(new OtherUse("brine", 2, stated(100, 1)), new OtherUse("brine", 1, stated(200, 1))),
                Optional.empty());
        SeasonBalance balance = new Season(List.of(north), List.of()).balance();

        assertThat(balance.found()).hasSize(1);
        assertThat(balance.withFound().pile("north").flows().stream().filter(flow -> flow.kind() == Flow.Kind.FOUND))
                .singleElement()
                .satisfies(flow -> assertThat(flow.name()).isEqualTo("period 2"));
        assertThat(season(0, 180).balance().withFound().pile("north").flows().stream()
                        .filter(flow -> flow.kind() == Flow.Kind.FOUND))
                .singleElement()
                .satisfies(flow -> assertThat(flow.name()).isEmpty());
    }

    @Test
    void whatTrucksTookThatNothingTellsApartIsWhatAllElseLeaves() {
        Pile north = Pile.of("north", "salt", stated(500, 5), deliveries("N", 20, 40), stated(100, 4))
                .using(new OtherUse("brine", 1, stated(30, 1)))
                .using(new OtherUse("loan", 1, stated(70, 2)))
                .losing(tons(3));
        Season season = new Season(
                List.of(north),
                List.of(
                        TruckSeason.unverified("1", List.of(Draw.of("north", tons(300))), List.of()),
                        TruckSeason.unverified("2", List.of(Draw.of("north", tons(500))), List.of())));
        Flow together = season.balance().asStated().pile("north").flows().stream()
                .filter(flow -> flow.kind() == Flow.Kind.TRUCK)
                .findFirst()
                .orElseThrow();

        assertThat(together.name()).isEqualTo("1, 2");
        // 500 + 800 − 30 − 70 − 100; of twenty tickets 0.08 tons each.
        assertThat(tons(together.mass())).isCloseTo(1100, within(1e-9));
        assertThat(Amounts.in(together.mass().standardUncertainty().orElseThrow(), SpreadingUnits.SHORT_TON))
                .isCloseTo(Math.sqrt(25 + 16 + 1 + 4 + 9 + 20 * 0.0064), within(1e-9));
    }

    @Test
    void anErrorOfAllThatATruckTakesMayBeNeededToShow() {
        Pile north = Pile.of("north", "salt", stated(500, 50), deliveries("N", 20, 40), stated(1200, 50));
        Season season = new Season(
                List.of(north),
                List.of(TruckSeason.verified("1", error(0, 1), List.of(Draw.of("north", tons(100))), List.of())));
        SeasonBalance balance = season.balance();

        // 3.6 times 71 tons are more than the hundred that it took at all.
        assertThat(balance.smallestOverReport("1")).isEmpty();
        assertThat(balance.chanceOfFinding("1", percent(100))).isBetween(0.05, 0.5);
        assertThatThrownBy(() -> balance.chanceOfFinding("1", percent(-100)))
                .hasMessageContaining("over-report must be above -100 %");
        assertThat(balance.chanceOfFinding("1", percent(-99))).isCloseTo(1, within(1e-6));
    }

    @Test
    void badInputIsRefusedByName() {
        Pile north = Pile.of("north", "salt", stated(500, 5), deliveries("N", 2, 40), stated(100, 4));
        assertThatThrownBy(() -> Pile.of("north", "salt", stated(-1, 5), List.of(), stated(100, 4)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("opening of pile north must be 0 or more: -1 ton");
        assertThatThrownBy(() -> Delivery.of("T-7", stated(-1, 5))).hasMessageContaining("mass of ticket T-7");
        assertThatThrownBy(() -> Draw.of("north", tons(-1))).hasMessageContaining("indicated mass from pile north");
        Pile other = Pile.of("south", "salt", stated(500, 5), deliveries("N", 1, 40), stated(100, 4));
        assertThatThrownBy(() -> new Season(List.of(north, other), List.of()))
                .hasMessageContaining("tickets of pile south")
                .hasMessageContaining("N1 twice");
        assertThatThrownBy(() -> new Season(List.of(north, north), List.of())).hasMessageContaining("north twice");
        TruckSeason lost = TruckSeason.unverified("7", List.of(Draw.of("nowhere", tons(5))), List.of());
        assertThatThrownBy(() -> new Season(List.of(north), List.of(lost)))
                .hasMessage("pile that truck 7 draws from must be one of the season: nowhere");
        TruckSeason late = TruckSeason.unverified("7", List.of(new Draw("north", 2, tons(5))), List.of());
        assertThatThrownBy(() -> new Season(List.of(north), List.of(late)))
                .hasMessageContaining("period of a draw of truck 7 from pile north must be at most 1");
        assertThatThrownBy(() -> new Season(
                        List.of(),
                        List.of(
                                TruckSeason.unverified("1", List.of(), List.of()),
                                TruckSeason.unverified("1", List.of(), List.of()))))
                .hasMessageContaining("1 twice");
        CommonError twice = new CommonError("loader 3", percent(0.8));
        TruckSeason scales = TruckSeason.unverified(
                "1",
                List.of(),
                List.of(loads(100, 100), new WeighedLoads(stated(50, 1).sharing(twice), tons(50))));
        assertThatThrownBy(() -> new Season(List.of(), List.of(scales)))
                .hasMessage("standard uncertainty of loader 3 must be the same wherever it is named: 0.5 %: 0.8 %");
        assertThatThrownBy(() -> TruckSeason.verified("1", Measured.once(percent(1)), List.of(), List.of()))
                .hasMessageContaining("standard uncertainty of the calibration error of truck 1");
        assertThatThrownBy(() -> TruckSeason.verified("1", error(-100, 1), List.of(), List.of()))
                .hasMessageContaining("calibration error of truck 1 must be above -100 %");
        assertThatThrownBy(() -> new Season(List.of(north), List.of()).balance().smallestOverReport("9"))
                .hasMessageContaining("truck must be one of the season: 9");
        assertThatThrownBy(() ->
                        new Pile("north", "salt", stated(1, 1), List.of(), List.of(), List.of(), Optional.empty()))
                .hasMessageContaining("surveys of pile north");
        assertThatThrownBy(() -> north.using(new OtherUse("brine", 2, stated(1, 1))))
                .hasMessageContaining("period of brine at pile north");
    }

    @Test
    void aClosingLargerThanWhatCameIsNoExceptionButATestThatFails() {
        Pile north = Pile.of("north", "salt", stated(100, 2), deliveries("N", 2, 40), stated(400, 4));
        SeasonBalance balance = new Season(List.of(north), List.of()).balance();

        assertThat(balance.asStated().test().holds(0.05)).isFalse();
        assertThat(balance.sentences().get(0))
                .isEqualTo(
                        "It doesn't add up within the stated uncertainties: with no mistake anywhere, the chance of a"
                                + " misfit this large or larger is below 0.01 %.");
        assertThat(balance.found().get(0).what()).isInstanceOf(Suspicion.PileOff.class);
    }

    @Test
    void aSurveyWithoutAStatementIsGoodToTwoPercent() {
        StatedMass surveyed = StatedMass.surveyed(tons(500));

        assertThat(Amounts.in(surveyed.standardUncertainty(), SpreadingUnits.SHORT_TON))
                .isCloseTo(10, within(1e-12));
        assertThat(surveyed.sharing(LOADER).common()).contains(LOADER);
    }
}
