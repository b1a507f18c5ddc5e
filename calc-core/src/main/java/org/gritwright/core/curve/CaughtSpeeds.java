package org.gritwright.core.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.LackOfFit;
import org.gritwright.core.statistics.Scatter;
import org.gritwright.units.check.Comparison;

/**
 * The catches of a pump as arrays: shaft speeds and flows, each weighed by its revolutions. A leak flow b makes the flow a·n − b, which
 * is k·(n − n₀) with k = a and n₀ = b/a: the same curve as that of a gate with a dead opening.
 *
 * <p>A shaft is never set to quite the same speed twice, and the test asks for repeats. So speeds that follow each other by no more
 * than {@value #SAME_SPEED} of the slower are repeats at one speed, and what such a catch gave per revolution counts as given there.
 * What a leak makes of that difference enters the scatter of the repeats, where it hides a leak rather than making one up.
 */
final class CaughtSpeeds implements FittedData {
    /** Common practice, no source. */
    private static final double SAME_SPEED = 0.03;

    private final double[] speeds;
    private final double[] flows;
    private final double[] revolutions;
    /** Of each catch, that of the repeats to which it belongs. */
    private final double[] repeatedSpeeds;
    /** What the catch would have given in that speed. */
    private final double[] repeatedFlows;

    private final int groups;

    private CaughtSpeeds(double[] speeds, double[] volumes, double[] revolutions) {
        int n = speeds.length;
        this.speeds = speeds;
        this.flows = new double[n];
        this.revolutions = revolutions;
        this.repeatedSpeeds = new double[n];
        this.repeatedFlows = new double[n];
        List<int[]> repeats = repeats();
        this.groups = repeats.size();
        for (int[] group : repeats) {
            double weight = 0;
            double sum = 0;
            for (int i : group) {
                weight += revolutions[i];
                sum += revolutions[i] * speeds[i];
            }
            for (int i : group) {
                flows[i] = volumes[i] * speeds[i];
                repeatedSpeeds[i] = sum / weight;
                repeatedFlows[i] = volumes[i] * repeatedSpeeds[i];
            }
        }
    }

    static CaughtSpeeds of(List<TimedCatch> catches, CatchAllowances allowances) {
        int n = catches.size();
        double[] speeds = new double[n];
        double[] volumes = new double[n];
        double[] revolutions = new double[n];
        for (int i = 0; i < n; i++) {
            TimedCatch one = catches.get(i);
            speeds[i] = one.revolutionsPerSecond();
            revolutions[i] = one.made().revolutions();
            volumes[i] = one.made().observation().kilograms()
                    * allowances.spillageFactor()
                    / one.made().point().material().kilogramsPerAmount()
                    / revolutions[i];
        }
        return new CaughtSpeeds(speeds, volumes, revolutions);
    }

    private List<int[]> repeats() {
        int[] rising = IntStream.range(0, speeds.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> speeds[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        List<int[]> found = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= rising.length; i++) {
            if (i == rising.length || Comparison.isAbove(speeds[rising[i]], speeds[rising[i - 1]] * (1 + SAME_SPEED))) {
                found.add(Arrays.copyOfRange(rising, from, i));
                from = i;
            }
        }
        return found;
    }

    /** How many speeds there are, where repeats are one. */
    int differentSpeeds() {
        return groups;
    }

    double slowest() {
        return Arrays.stream(speeds).min().orElseThrow();
    }

    double fastest() {
        return Arrays.stream(speeds).max().orElseThrow();
    }

    @Override
    public CurveFit fit(CurveModel model) {
        return model == CurveModel.PROPORTIONAL
                ? CurveFit.proportional(new Straight(), speeds, flows, revolutions)
                : CurveFit.shifted(new Straight(), lowestLimit(), highestLimit(), speeds, flows, revolutions);
    }

    @Override
    public Optional<LackOfFit> test(CurveFit fit) {
        return LackOfFit.test(Scatter.RELATIVE, repeatedSpeeds, repeatedFlows, revolutions, fit::at, fit.parameters());
    }

    @Override
    public double worstMisfit(CurveFit fit) {
        return repeats().stream()
                .mapToDouble(group -> {
                    double weight = 0;
                    double sum = 0;
                    for (int i : group) {
                        weight += revolutions[i];
                        sum += revolutions[i] * repeatedFlows[i];
                    }
                    return Math.abs(sum / weight / fit.at(repeatedSpeeds[group[0]]) - 1);
                })
                .max()
                .orElseThrow();
    }

    @Override
    public double lowestLimit() {
        return 0;
    }

    /** Far enough for a volume per revolution that falls with the speed, which is no leak. */
    @Override
    public double highestLimit() {
        return 2 * fastest();
    }

    /** g(n) = n. */
    private record Straight() implements CurveFit.Shape {
        private static final long serialVersionUID = 1L;

        @Override
        public double applyAsDouble(double speed) {
            return speed;
        }
    }
}
