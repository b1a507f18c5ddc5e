package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.season.CommonError;
import org.gritwright.core.season.Delivery;
import org.gritwright.core.season.Draw;
import org.gritwright.core.season.OtherUse;
import org.gritwright.core.season.Pile;
import org.gritwright.core.season.Season;
import org.gritwright.core.season.StatedMass;
import org.gritwright.core.season.TruckSeason;
import org.gritwright.core.season.WeighedLoads;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** An invented season of two piles and five trucks, two of which nothing tells apart. */
final class InventedSeason {
    private static final CommonError LOADER = new CommonError("loader 3", Amounts.of(0.5, SpreadingUnits.PERCENT));

    private InventedSeason() {}

    static Quantity<Mass> tons(double value) {
        return Amounts.of(value, SpreadingUnits.SHORT_TON);
    }

    static StatedMass stated(double tons, double uncertainty) {
        return StatedMass.of(tons(tons), tons(uncertainty));
    }

    private static TruckSeason truck(String id, double fromNorth, double fromSouth, double overReport) {
        return TruckSeason.verified(
                id,
                Measured.of(
                        Amounts.of(0.3, SpreadingUnits.PERCENT),
                        Amounts.of(1.5, SpreadingUnits.PERCENT),
                        Double.POSITIVE_INFINITY),
                List.of(
                        Draw.of("north", tons(fromNorth * (1 + overReport))),
                        Draw.of("south", tons(fromSouth * (1 + overReport)))),
                List.of(new WeighedLoads(stated(100, 0.2).sharing(LOADER), tons(100 * (1 + overReport)))));
    }

    private static TruckSeason unverified(String id, double fromSouth) {
        return TruckSeason.unverified(id, List.of(Draw.of("south", tons(fromSouth))), List.of());
    }

    /**
     * A season.
     *
     * @param overReport by how much truck C-07 over-reports
     * @param lostTicket how much came to the north pile by a ticket that is lost, in tons
     * @param loss how much of the south pile was lost, in tons
     */
    static Season of(double overReport, double lostTicket, double loss) {
        return new Season(
                List.of(
                        Pile.of(
                                        "north",
                                        "road salt",
                                        stated(500.3, 8),
                                        deliveries("N-", 12, 61.37),
                                        stated(500.3 + 12 * 61.37 - 350.77 - 260.01 - 180.5 - 21.3 + lostTicket, 4))
                                .using(new OtherUse("brine making", 1, stated(21.3, 1))),
                        Pile.of(
                                        "south",
                                        "road salt",
                                        stated(300.05, 6),
                                        deliveries("S-", 7, 58.91),
                                        stated(300.05 + 7 * 58.91 - 120 - 160.2 - 90.33 - 75.2 - 64.9 - loss, 6))
                                .losing(tons(5))),
                List.of(
                        truck("C-05", 350.77, 120, 0),
                        truck("C-07", 260.01, 160.2, overReport),
                        truck("C-12", 180.5, 90.33, 0),
                        unverified("C-20", 75.2),
                        unverified("C-21", 64.9)));
    }

    private static List<Delivery> deliveries(String of, int count, double tons) {
        List<Delivery> deliveries = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            deliveries.add(Delivery.of(of + i, stated(tons, 0.002 * tons)));
        }
        return deliveries;
    }

    static SeasonPage page(Season season) {
        return new SeasonPage(
                "Season 2025/26",
                LocalDate.of(2025, 11, 1),
                LocalDate.of(2026, 4, 15),
                List.of("Kestrel County, south yard."),
                Tickets.NONE,
                season,
                season.balance());
    }
}
