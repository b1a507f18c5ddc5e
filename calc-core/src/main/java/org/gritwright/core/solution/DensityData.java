package org.gritwright.core.solution;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.solution.DensityModel.Column;
import org.gritwright.core.solution.DensityModel.Limits;
import org.gritwright.core.statistics.MonotoneCurve;

/**
 * The constants of Laliberté's equation with the ranges that its author gives, read second-hand in a table of an open library of
 * chemical properties; and tables of the VDI Heat Atlas (secondary coolants; read second-hand) for the cold.
 *
 * <p>Tests compare them with what is independent of them: sodium chloride with P. S. Z. Rogers and K. S. Pitzer (1982), with a
 * handbook's table at 20 °C and with Lange's Handbook; the others with the VDI tables at 20 °C, and Lange's. They agree within the
 * limits here, which are those by which published tables differ: 0.1 % for sodium chloride, 0.3 % for the others, and more where
 * the data are rounded to a kilogram per cubic meter or part further.
 */
final class DensityData {
    private static final double NONE = Double.NaN;

    /** Laliberté: 0 °C to 140 °C, up to 26.59 %, 869 measurements. Below: VDI, its columns as far as they go. */
    private static final DensityModel SODIUM_CHLORIDE = new DensityModel(
            List.of(-0.00324112223655149, 0.0636354335906616, 1.01371399467365, 0.0145951015210159, 3317.34854426537),
            0,
            26.59,
            Optional.of(Saturation.SODIUM_CHLORIDE),
            columns(
                    new double[] {0, -4, -5, -7.5, -9.8, -10, -12.2, -15, -18, -21},
                    column(7, 1054, 1055),
                    column(11, 1084, NONE, 1085, 1086),
                    column(13.6, 1106, NONE, 1108, NONE, 1110),
                    column(16.2, 1126, NONE, 1127, NONE, NONE, 1129, 1130),
                    column(18.8, 1147, NONE, 1149, NONE, NONE, 1151, NONE, 1152),
                    column(21.2, 1167, NONE, 1169, NONE, NONE, 1171, NONE, 1173, 1175),
                    column(23.1, 1183, NONE, 1185, NONE, NONE, 1187, NONE, 1189, NONE, 1191)),
            new Limits(0.001, 0, 0.002));

    /**
     * Laliberté: 15 °C to 126.7 °C, up to 51.32 %, 369 measurements. So strong are only hot solutions: we stop at 40 %, where other
     * tables end too (from memory). Below 15 °C: VDI, and water (Tanaka) as the column of 0 %, as long as it is water; that water swells by a
     * hundredth of a percent from 4 °C to 0 °C is left out, so that the column never falls.
     *
     * <p>Left out is VDI's column of 28.4 %: its 1272 kg/m³ at 20 °C is suspect, since its neighbors imply about 1265, and so does
     * the equation. Without that value the column can't be tied to the others; the two beside it do without it.
     */
    private static final DensityModel CALCIUM_CHLORIDE = new DensityModel(
            List.of(-9.72893747074295, 14.7005352975276, 4.19033341468332, 0.0397403624277021, 2708.12778894614),
            15,
            40,
            Optional.empty(),
            columns(
                    new double[] {20, 15, 10, 5, 4, 0, -5, -10, -15, -20, -25, -30},
                    column(0, water(20), water(15), water(10), water(5), water(4), water(4)),
                    column(14.7, 1128, NONE, 1131, NONE, NONE, 1135, 1137, 1138),
                    column(20.9, 1188, NONE, 1192, NONE, NONE, 1196, 1198, 1199, 1202),
                    column(25.7, 1237, NONE, 1242, NONE, NONE, 1247, NONE, 1253, 1255, 1258, 1260, 1263),
                    column(29.9, 1283, NONE, NONE, NONE, NONE, 1293, NONE, 1298, NONE, 1304, NONE, 1309)),
            new Limits(0.003, 15, 0.004));

    /**
     * Laliberté: 0 °C to 98.67 °C, up to 32.38 %, 386 measurements. Below: VDI. The two part by up to 0.43 % at 0 °C, since by the
     * equation weak solutions shrink no more between 3 °C and 0 °C, and by VDI they do: so the limits are wider below 10 °C.
     */
    private static final DensityModel MAGNESIUM_CHLORIDE = new DensityModel(
            List.of(-0.0215001423271867, 0.0441202083909434, 1.53227586827304, -0.0098078506056196, -3478.36496883693),
            0,
            32.38,
            Optional.empty(),
            columns(
                    new double[] {0, -5, -10, -14, -15, -20, -22, -25},
                    column(7.2, 1064, 1065),
                    column(11.6, 1104, 1106, 1107),
                    column(13.8, 1123, 1125, 1126, 1127),
                    column(17, 1154, 1155, 1157, NONE, 1158, 1159, 1160),
                    column(20.6, 1188, 1189, 1190, NONE, 1192, 1193, NONE, 1194)),
            new Limits(0.003, 10, 0.005));

    private static final Map<Salt, DensityModel> MODELS = Map.of(
            Salt.SODIUM_CHLORIDE, SODIUM_CHLORIDE,
            Salt.CALCIUM_CHLORIDE, CALCIUM_CHLORIDE,
            Salt.MAGNESIUM_CHLORIDE, MAGNESIUM_CHLORIDE);

    private DensityData() {}

    static Optional<DensityModel> of(Salt salt) {
        return Optional.ofNullable(MODELS.get(salt));
    }

    private static double water(double celsius) {
        return Water.kilogramsPerCubicMeter(celsius);
    }

    /** A strength, and its densities by the temperatures of its table, down to the last that it has. */
    private static double[] column(double percent, double... densities) {
        double[] all = new double[densities.length + 1];
        all[0] = percent;
        System.arraycopy(densities, 0, all, 1, densities.length);
        return all;
    }

    private static List<Column> columns(double[] temperatures, double[]... table) {
        List<Column> columns = new ArrayList<>();
        for (double[] column : table) {
            List<double[]> points = new ArrayList<>();
            for (int i = 1; i < column.length; i++) {
                if (!Double.isNaN(column[i])) {
                    points.add(new double[] {-temperatures[i - 1], column[i]});
                }
            }
            columns.add(new Column(
                    column[0],
                    MonotoneCurve.straight(
                            points.stream().mapToDouble(point -> point[0]).toArray(),
                            points.stream().mapToDouble(point -> point[1]).toArray())));
        }
        return List.copyOf(columns);
    }
}
