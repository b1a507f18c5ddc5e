package org.gritwright.core.simulation;

import java.util.List;
import java.util.function.Predicate;

/**
 * A truck with a liquid whose truth is known. Volumes are in gallons, or liters of a metric yard.
 *
 * @param us whether the yard writes gallons, pounds and miles
 * @param metered by a flow meter's pulses; else by a pump's turns
 * @param rating of the pump, volume per revolution; of the flow meter, pulses per volume
 * @param pulses of the pump's shaft per revolution; 1 of a flow meter
 * @param perPulse the true volume per pulse when the value in force was found
 * @param foundError by how much the value in force missed it, a ratio
 * @param weighed whether catches are weighed in a tote; else they are read
 * @param capacity of the container
 * @param division of its marks
 * @param marks by how much they show too much, a ratio
 * @param limit what is known of them, a ratio
 * @param density true pounds or kilograms per volume
 * @param repeatability how catches scatter, a relative standard deviation
 * @param calibrations calibration catches
 * @param verifications verification catches
 * @param enters whether the day's calibration is entered before the verification catches
 * @param reading what tells how much was pumped in a verification catch
 * @param prewets whether it wets the grains of another spreader; else it goes onto the road by itself
 */
record LiquidTruck(
        long seed,
        boolean us,
        boolean metered,
        double rating,
        int pulses,
        double perPulse,
        double foundError,
        boolean weighed,
        double capacity,
        double division,
        double marks,
        double limit,
        double density,
        double repeatability,
        int calibrations,
        int verifications,
        boolean enters,
        TrueTruck.Reading reading,
        boolean prewets) {
    static final double LITERS_PER_GALLON = 3.785411784;
    private static final List<Integer> SENSORS = List.of(1, 2, 4, 8, 16, 30, 60, 100, 180, 360);
    private static final double LEAST_REPEATABILITY = 0.002;
    private static final double GREATEST_REPEATABILITY = 0.015;
    private static final double VALUE_DEVIATION = 0.007;
    private static final double METER_DEVIATION = 0.012;
    private static final double PUMP_DEVIATION = 0.025;

    /** The first fitting truck of a row of seeds that belongs to this one alone. */
    static LiquidTruck make(long seed, Predicate<LiquidTruck> fits) {
        for (long attempt = 0; attempt < 20_000; attempt++) {
            LiquidTruck truck = draw(seed, Draw.of(seed * 1_000_003 + attempt));
            if (fits.test(truck)) {
                return truck;
            }
        }
        throw new IllegalStateException("no fitting truck for seed " + seed);
    }

    private static LiquidTruck draw(long seed, Draw draw) {
        boolean us = draw.chance(0.7);
        double unit = us ? 1 : LITERS_PER_GALLON;
        boolean metered = draw.chance(0.5);
        boolean prewets = draw.chance(0.6);
        boolean weighed = draw.chance(0.4);
        double rating;
        int pulses = 1;
        double perPulse;
        if (metered) {
            rating = Math.rint(draw.logUniform(prewets ? 800 : 100, prewets ? 6000 : 1500) / unit);
            perPulse = draw.normal(1, METER_DEVIATION) / rating;
        } else {
            double displacement = draw.logUniform(prewets ? 0.008 : 0.05, prewets ? 0.04 : 0.25) * unit;
            rating = Trade.written(displacement, Trade.displayStep(displacement) * 10);
            pulses = draw.of(SENSORS);
            perPulse = rating * Math.min(1, (1 - draw.uniform(0.02, 0.14)) * draw.normal(1, PUMP_DEVIATION)) / pulses;
        }
        boolean large = !prewets && draw.chance(0.5);
        double capacity = weighed ? us ? 40 : 150 : us ? large ? 30 : 5.5 : large ? 120 : 20;
        double division = large ? us ? 0.25 : 1 : us ? draw.of(List.of(0.02, 0.05, 0.1)) : draw.of(List.of(0.1, 0.2));
        double limit = draw.of(List.of(0.002, 0.005, 0.01, 0.02));
        int catches = draw.chance(0.75) ? draw.of(List.of(1, 2, 3, 3, 4)) : 0;
        return new LiquidTruck(
                seed,
                us,
                metered,
                rating,
                pulses,
                perPulse,
                draw.normal(0, VALUE_DEVIATION),
                weighed,
                capacity,
                division,
                draw.uniform(-limit, limit),
                limit,
                draw.uniform(9.6, 10.1) * (us ? 1 : 0.45359237 / LITERS_PER_GALLON),
                draw.logUniform(LEAST_REPEATABILITY, GREATEST_REPEATABILITY),
                catches,
                draw.chance(0.92) ? draw.whole(1, 3) : 0,
                catches > 0 && draw.chance(0.4),
                draw.of(List.of(TrueTruck.Reading.COUNT, TrueTruck.Reading.DISPLAY, TrueTruck.Reading.BOTH)),
                prewets);
    }

    boolean isCaught() {
        return calibrations + verifications > 0;
    }

    boolean isRead() {
        return !weighed && isCaught();
    }

    boolean isWeighed() {
        return weighed && isCaught();
    }

    boolean isVerified() {
        return verifications > 0;
    }

    /** Whether a sensor of 16 pulses or more counts a pump's turns in a catch. */
    boolean isCounted() {
        return !metered && pulses >= 16 && (calibrations > 0 || (isVerified() && reading.isCounted()));
    }
}
