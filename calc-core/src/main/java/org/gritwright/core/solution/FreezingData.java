package org.gritwright.core.solution;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.statistics.MonotoneCurve;

/** Published freezing points, and where they part. */
final class FreezingData {
    private static final String FHWA = "FHWA-RD-95-202 (1996), Appendix A";

    private static final Map<Salt, List<Eutectic>> EUTECTICS = Map.of(
            Salt.SODIUM_CHLORIDE,
            List.of(
                    Eutectic.of(23.3, -21, FHWA),
                    Eutectic.of(23.31, -21.12, "Salt Institute, chemical and physical properties of salt")),
            Salt.CALCIUM_CHLORIDE,
            List.of(Eutectic.of(29.8, -51, FHWA), Eutectic.of(31, -50, "phasediagram.dk, calcium chloride and water")),
            Salt.MAGNESIUM_CHLORIDE,
            List.of(
                    Eutectic.of(21.6, -33, FHWA),
                    Eutectic.of(22, -32.8, "Lange's Handbook of Chemistry, 15th edition, Table 5.13, its lowest")),
            Salt.CALCIUM_MAGNESIUM_ACETATE,
            List.of(Eutectic.of(32.5, -27.5, FHWA)),
            Salt.POTASSIUM_ACETATE,
            List.of(Eutectic.of(49, -60, FHWA)));

    /**
     * Lange's Table 5.13 (second-hand; minus signs restored), whose rows from 10 % to 14 % were not to be read: in between −6.56 °C at
     * 10 %, from another handbook, second-hand too. Beyond the eutectic the table of solubility the other way round, as far as what
     * drops out of the cold solution is the dihydrate. By 2 % and 0.05 K other tables differ (VDI, the other handbook).
     */
    private static final FreezingCurve SODIUM_CHLORIDE = new FreezingCurve(
            falling(
                    new double[] {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 15, 16, 17, 18, 19, 20, 21, 22, 23, 23.3},
                    0,
                    -0.58,
                    -1.13,
                    -1.72,
                    -2.35,
                    -2.97,
                    -3.63,
                    -4.32,
                    -5.03,
                    -5.77,
                    -6.56,
                    -10.88,
                    -11.90,
                    -12.93,
                    -14.03,
                    -15.21,
                    -16.46,
                    -17.78,
                    -19.19,
                    -20.69,
                    -21.1),
            Optional.of(MonotoneCurve.cubic(
                    new double[] {23.31, 23.83, 24.7, 25.53, 26.16, 26.29, 26.31},
                    Arrays.stream(new double[] {-6, 0, 10, 20, 30, 32, 32.2})
                            .map(Celsius::ofFahrenheit)
                            .toArray())),
            23.31,
            26.31,
            0.02);

    /**
     * Up to 7.7 % the Smithsonian Physical Tables, 9th edition (second-hand, by molality); from 14.7 % on VDI (second-hand); last the
     * eutectic of FHWA. Left out are the Smithsonian's values from 1 mol/kg on, which lie up to 1 K from the curve on either side and
     * within its limits, and VDI's −55 °C at 29.9 %, which is colder than any eutectic that is published. Beyond the eutectic no table was read.
     */
    private static final FreezingCurve CALCIUM_CHLORIDE = new FreezingCurve(
            falling(
                    new double[] {0, 1.098, 2.700, 5.257, 7.684, 14.7, 20.9, 25.7, 28.4, 29.8},
                    0,
                    -0.49,
                    -1.27,
                    -2.66,
                    -4.28,
                    -10.2,
                    -19.2,
                    -31.2,
                    -43.6,
                    -51),
            Optional.empty(),
            31,
            40,
            0.11);

    /**
     * Lange's Table 5.13 (second-hand; minus signs restored) up to 21 % and from 22 % on; between them the eutectic of FHWA, where the
     * two branches of the table meet. At 19 % the table prints 25.6 °C beside 12.2 °F below zero, which is 24.6 °C and fits its
     * neighbors: that is taken. VDI's freezing points are colder, by up to 4.3 K at 20.6 %: the limits are as wide as that.
     */
    private static final FreezingCurve MAGNESIUM_CHLORIDE = new FreezingCurve(
            falling(
                    new double[] {0, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 21.6},
                    0,
                    -3.11,
                    -3.89,
                    -4.72,
                    -5.67,
                    -6.67,
                    -7.83,
                    -9.05,
                    -10.5,
                    -12.1,
                    -13.7,
                    -15.6,
                    -17.6,
                    -19.7,
                    -22.1,
                    -24.6,
                    -27.4,
                    -30.6,
                    -33),
            Optional.of(MonotoneCurve.cubic(
                    new double[] {22, 23, 24, 25, 26, 27, 28, 29, 30},
                    new double[] {-32.8, -28.9, -25.6, -23.3, -21.1, -19.4, -18.3, -17.2, -16.7})),
            22,
            30,
            0.16);

    private static final Map<Salt, FreezingCurve> CURVES = Map.of(
            Salt.SODIUM_CHLORIDE, SODIUM_CHLORIDE,
            Salt.CALCIUM_CHLORIDE, CALCIUM_CHLORIDE,
            Salt.MAGNESIUM_CHLORIDE, MAGNESIUM_CHLORIDE);

    private FreezingData() {}

    static List<Eutectic> eutectics(Salt salt) {
        return EUTECTICS.getOrDefault(salt, List.of());
    }

    static Optional<FreezingCurve> of(Salt salt) {
        return Optional.ofNullable(CURVES.get(salt));
    }

    private static MonotoneCurve falling(double[] percents, double... celsius) {
        return MonotoneCurve.cubic(
                percents, Arrays.stream(celsius).map(t -> 0 - t).toArray());
    }
}
