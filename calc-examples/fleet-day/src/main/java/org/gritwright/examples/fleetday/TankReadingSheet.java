package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TankEntry;
import org.gritwright.core.fleet.day.TankReadingEntry;
import org.gritwright.examples.fleetday.PlanSheet.Box;
import org.gritwright.units.Amounts;

/**
 * What is written down of one tank, in the order of the document's fields and in its units, by the instrument that the document names.
 *
 * @param name the tank
 * @param facts what is known of it
 * @param boxes a box for each number
 */
record TankReadingSheet(String name, String facts, List<Box> boxes) {
    static List<TankReadingSheet> of(FleetDay day) {
        return day.tanks().stream().map(TankReadingSheet::of).toList();
    }

    private static TankReadingSheet of(TankEntry tank) {
        return new TankReadingSheet(tank.name(), facts(tank), boxes(tank));
    }

    private static String facts(TankEntry tank) {
        return tank.material() + ", " + tank.salt().words() + ". Holds " + Amounts.format(tank.capacity()) + "."
                + tank.target()
                        .map(target -> " Wanted: " + Amounts.format(target)
                                + tank.tolerance()
                                        .map(limit -> " ± " + Amounts.format(limit))
                                        .orElse("") + ".")
                        .orElse("")
                + tank.saltAtHand()
                        .map(salt -> " Salt at hand: " + Amounts.format(salt.assay()) + " pure"
                                + salt.moisture()
                                        .map(wet -> ", " + Amounts.format(wet) + " moisture")
                                        .orElse("") + ".")
                        .orElse("");
    }

    private static List<Box> boxes(TankEntry tank) {
        TankReadingEntry reading = tank.reading();
        String degrees = TruckUnits.symbolOf(tank.temperature());
        List<Box> boxes = new ArrayList<>();
        String percent = "";
        if (reading.specificGravity().isPresent()) {
            boxes.add(Box.of("specific gravity", ""));
            boxes.add(Box.of("on it: made for", degrees));
        } else if (reading.concentration().isPresent()) {
            percent = "%";
            boxes.add(Box.of("concentration", percent));
        } else {
            boxes.add(Box.of("salometer", "degrees"));
        }
        boxes.add(Box.of("± (standard)", percent));
        boxes.add(Box.of("sample at", degrees));
        boxes.add(Box.of("tank at", degrees));
        boxes.add(Box.of("level", TruckUnits.symbolOf(tank.level())));
        return boxes;
    }
}
