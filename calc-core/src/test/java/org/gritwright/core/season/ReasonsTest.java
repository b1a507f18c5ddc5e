package org.gritwright.core.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class ReasonsTest {
    private static Quantity<Mass> tons(double value) {
        return Amounts.of(value, SpreadingUnits.SHORT_TON);
    }

    private static StatedMass stated(double tons, double uncertainty) {
        return StatedMass.of(tons(tons), tons(uncertainty));
    }

    private static Draw north(double tons) {
        return Draw.of("north", tons(tons));
    }

    private static Draw south(double tons) {
        return Draw.of("south", tons(tons));
    }

    private static TruckSeason truck(String id, List<Draw> draws, String... scales) {
        List<WeighedLoads> loads = new ArrayList<>();
        for (String scale : scales) {
            StatedMass weighed = stated(100, 1);
            loads.add(new WeighedLoads(
                    scale.isEmpty()
                            ? weighed
                            : weighed.sharing(new CommonError(scale, Amounts.of(1, SpreadingUnits.PERCENT))),
                    tons(100)));
        }
        return TruckSeason.unverified(id, draws, loads);
    }

    /** What is said where these trucks' loads may be off. */
    private static List<String> reasons(Season season, String... trucks) {
        List<Suspicion> errors = Arrays.stream(trucks)
                .<Suspicion>map(id -> new Suspicion.LoadsOff(id, Optional.empty(), mass(), 3))
                .toList();
        return Reasons.of(season, errors);
    }

    private static Measured<Mass> mass() {
        return Measured.of(tons(5), tons(1), Double.POSITIVE_INFINITY);
    }

    private static Season season(TruckSeason... trucks) {
        return new Season(
                List.of(
                        Pile.of("north", "salt", stated(500, 3), List.of(), stated(100, 4)),
                        Pile.of("south", "salt", stated(300, 6), List.of(), stated(300, 8))),
                List.of(trucks));
    }

    @Test
    void onlyWhatIsMeantIsSpokenOf() {
        Season season = season(
                truck("1", List.of(north(50))), truck("2", List.of(north(50))), truck("3", List.of(south(50)), "a"));

        assertThat(reasons(season, "1"))
                .containsExactly("No load of truck 1 was weighed.", "Truck 1 drew only from pile north.");
        assertThat(reasons(season, "1", "2"))
                .containsExactly("No load of trucks 1, 2 was weighed.", "Trucks 1, 2 drew only from pile north.");
        assertThat(reasons(season, "2", "3"))
                .containsExactly(
                        "No load of truck 2 was weighed.",
                        "The loads of truck 3 were weighed on one scale only.",
                        "Truck 2 drew only from pile north.",
                        "Truck 3 drew only from pile south.");
    }

    @Test
    void scalesAreToldByTheirNames() {
        List<Draw> none = List.of();
        Season season = season(
                truck("1", none, "a", "a"),
                truck("2", none, "a", "b"),
                truck("3", none, "", ""),
                truck("4", none, "", "a"));

        assertThat(reasons(season, "1", "2", "3", "4"))
                .containsExactly("The loads of trucks 1, 3 were weighed on one scale only.");
    }

    @Test
    void whoDrewFromTwoPilesIsAlikeInTheSameProportion() {
        // Of 100 tons and of 300: a tenth from the south, less than 5 % more, 5 % more, and a half.
        TruckSeason first = truck("1", List.of(north(90), south(10)), "a", "b");
        TruckSeason alike = truck("2", List.of(south(44), north(256)), "a", "b");
        TruckSeason other = truck("3", List.of(north(84.9), south(15.1)), "a", "b");
        TruckSeason half = truck("4", List.of(north(25), north(25), south(50)), "a", "b");
        TruckSeason one = truck("5", List.of(north(50), south(0)), "a", "b");

        assertThat(reasons(season(first, alike), "1", "2"))
                .containsExactly("Trucks 1, 2 drew from the same piles in the same proportion.");
        assertThat(reasons(season(first, other), "1", "3")).isEmpty();
        assertThat(reasons(season(other, first, half, alike), "1", "2", "3", "4"))
                .containsExactly("Trucks 3, 2 drew from the same piles in the same proportion.");
        // What wasn't drawn is no pile.
        assertThat(reasons(season(first, one), "1", "5")).containsExactly("Truck 5 drew only from pile north.");
    }

    @Test
    void otherPilesAreNotTheSame() {
        Season three = new Season(
                List.of(
                        Pile.of("north", "salt", stated(500, 3), List.of(), stated(100, 4)),
                        Pile.of("south", "salt", stated(300, 6), List.of(), stated(300, 8)),
                        Pile.of("west", "salt", stated(300, 6), List.of(), stated(300, 8))),
                List.of(
                        truck("1", List.of(north(50), south(50)), "a", "b"),
                        truck("2", List.of(north(50), Draw.of("west", tons(50))), "a", "b"),
                        truck("3", List.of(north(49), south(49), Draw.of("west", tons(2))), "a", "b")));

        assertThat(reasons(three, "1", "2", "3")).isEmpty();
    }

    @Test
    void whatIsKnownOfAPileIsToldWhereItIsMeant() {
        Suspicion pile = new Suspicion.PileOff("north", new SurveyPeriod(1, 1, List.of()), mass(), List.of(), 3);
        Suspicion survey = new Suspicion.SurveyOff("south", 1, Optional.empty(), mass(), 3);

        // Twice the root of 3² + 4², and of 6² + 8².
        assertThat(Reasons.of(season(), List.of(pile)))
                .containsExactly(
                        "Opening and closing of pile north are known to 10 ton (95 %): a smaller error can't be seen there.");
        assertThat(Reasons.of(season(), List.of(survey)))
                .containsExactly(
                        "Opening and closing of pile south are known to 20 ton (95 %): a smaller error can't be seen there.");
    }

    @Test
    void aTruckThatReportsIsATruckToo() {
        Suspicion truck = new Suspicion.TruckReports(
                "1",
                Measured.of(
                        Amounts.of(1, SpreadingUnits.PERCENT),
                        Amounts.of(1, SpreadingUnits.PERCENT),
                        Double.POSITIVE_INFINITY),
                Optional.empty(),
                3);

        assertThat(Reasons.of(season(truck("1", List.of())), List.of(truck)))
                .containsExactly("No load of truck 1 was weighed.");
        assertThat(truck.sentence()).isEqualTo("Truck 1 reports far more than it can have taken.");
    }
}
