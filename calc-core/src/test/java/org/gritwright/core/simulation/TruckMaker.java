package org.gritwright.core.simulation;

import static org.gritwright.units.SpreadingUnits.POUND_PER_CUBIC_FOOT;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import javax.measure.Quantity;
import org.gritwright.core.observation.Material;
import org.gritwright.core.simulation.TrueTruck.Drive;
import org.gritwright.core.simulation.TrueTruck.Plan;
import org.gritwright.core.simulation.TrueTruck.Reading;
import org.gritwright.core.simulation.TrueTruck.TareHabit;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.BulkDensity;

/**
 * Draws trucks. All shares and ranges are invented; they are wide on purpose, so that no part of the assessment is tuned to
 * one yard.
 */
final class TruckMaker {
    static final LocalDate DAY = LocalDate.of(2026, 10, 19);

    /** Of the logarithm of the apparent fill. */
    static final double FILL_MEAN = Math.log(0.82);

    static final double FILL_DEVIATION = 0.12;
    private static final double LEAST_FILL = 0.56;
    private static final double GREATEST_FILL = 1.03;

    /** By how much the fill differs from opening to opening of one gate. */
    static final double SHAPE_DEVIATION = 0.02;

    /** How well a value in force was found. */
    static final double VALUE_DEVIATION = 0.007;

    static final double LEAST_REPEATABILITY = 0.003;
    static final double GREATEST_REPEATABILITY = 0.03;

    /** Technicians are asked for gross and tare; one in so many writes net masses. */
    static final double NET_WRITERS = 0.002;

    private static final double METRIC = 0.25;
    private static final double SLOW_START = 0.15;
    private static final double CAPPED = 0.05;

    private TruckMaker() {}

    /** The first fitting truck of a row of seeds that belongs to this one alone. */
    static TrueTruck make(long seed, String id, Predicate<TrueTruck> fits) {
        for (long attempt = 0; attempt < 20_000; attempt++) {
            TrueTruck truck = draw(seed, Draw.of(seed * 1_000_003 + attempt), id);
            if (fits.test(truck)) {
                return truck;
            }
        }
        throw new IllegalStateException("no fitting truck for seed " + seed);
    }

    private static TrueTruck draw(long seed, Draw draw, String id) {
        Trade trade = draw.chance(METRIC) ? Trade.METRIC : Trade.US;
        Equipment equipment = Equipment.draw(draw.split());
        double density = draw.whole(70, 84);
        Material material = Material.of(
                "salt",
                trade == Trade.US
                        ? Amounts.of(density, trade.density)
                        : Trade.written(
                                Amounts.si(BulkDensity.class, Amounts.of(density, POUND_PER_CUBIC_FOOT)),
                                10,
                                trade.density));
        TrueScale scale = TrueScale.draw(draw.split(), trade, id, DAY);
        double fill = Math.exp(draw.normal(FILL_MEAN, FILL_DEVIATION));
        fill = Math.max(LEAST_FILL, Math.min(GREATEST_FILL, fill));
        List<Quantity<?>> openings = openings(draw, equipment);
        List<Double> discharge = new ArrayList<>();
        for (int i = 0; i < Math.max(1, openings.size()); i++) {
            Setting setting = openings.isEmpty() ? Setting.none() : Setting.of(openings.get(i));
            discharge.add(equipment.sweptCubicMeters(setting)
                    * Amounts.si(BulkDensity.class, material.looseBulkDensity())
                    * fill
                    * draw.normal(1, SHAPE_DEVIATION));
        }
        Plan plan = plan(draw, equipment, scale);
        Drive drive = new Drive(
                draw.chance(SLOW_START) ? draw.uniform(1, 6) : draw.uniform(0, 0.4),
                draw.chance(CAPPED) ? draw.uniform(0.6, 0.92) : 1);
        return new TrueTruck(
                seed,
                id,
                trade,
                equipment,
                material,
                scale,
                fill,
                List.copyOf(discharge),
                openings,
                draw.logUniform(LEAST_REPEATABILITY, GREATEST_REPEATABILITY),
                0,
                draw.normal(0, VALUE_DEVIATION),
                plan,
                drive);
    }

    /** One to three, from the lowest up. */
    private static List<Quantity<?>> openings(Draw draw, Equipment equipment) {
        if (equipment.settings().isEmpty()) {
            return List.of();
        }
        int number = 1 + draw.weighted(0.7, 0.15, 0.15);
        int first = draw.whole(0, equipment.settings().size() - number);
        return List.copyOf(equipment.settings().subList(first, first + number));
    }

    private static Plan plan(Draw draw, Equipment equipment, TrueScale scale) {
        boolean calibrated = draw.chance(0.75);
        int catches = calibrated ? List.of(1, 2, 3, 3, 3, 4, 5).get(draw.whole(0, 6)) : 0;
        Reading reading = List.of(Reading.values()).get(draw.weighted(0.55, 0.17, 0.23, 0.05));
        return new Plan(
                catches,
                draw.chance(0.9) ? draw.whole(1, 2) : 0,
                reading,
                calibrated && draw.chance(0.4),
                draw.chance(0.5),
                equipment.pulsesPerRevolution().isPresent() && draw.chance(0.25),
                draw.of(List.of(0.1, 1.0)),
                draw.chance(NET_WRITERS)
                        ? TareHabit.SCALE_ZEROED
                        : draw.chance(0.3) && scale.kind().containers > 1 ? TareHabit.ONE_FOR_ALL : TareHabit.WEIGHED,
                draw.chance(0.6));
    }
}
