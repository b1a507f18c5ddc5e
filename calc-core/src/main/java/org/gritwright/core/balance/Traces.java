package org.gritwright.core.balance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Which candidates have the same trace, by what they make of two right sides without pattern. */
final class Traces {
    private static final double SAME = 1e-6;
    private static final double FAR = 1e6;

    private Traces() {}

    /**
     * Numbers from 1 to 2 that follow no pattern: decimals of square roots, far behind the point. Of whole numbers, roots have sums in
     * common (√1 + √25 = √4 + √16); not of these.
     *
     * @param seed 1 or 2: other roots for each
     */
    static double[] patternless(int count, int seed) {
        return IntStream.range(0, count)
                .mapToDouble(i -> 1 + FAR * Math.sqrt(i + seed / Math.PI) % 1)
                .toArray();
    }

    static List<List<Candidate>> groups(List<Candidate> candidates, double[] once, double[] again) {
        List<List<Candidate>> groups = new ArrayList<>();
        runs(IntStream.range(0, once.length).boxed().toList(), once)
                .forEach(run -> runs(run, again)
                        .forEach(same -> groups.add(
                                same.stream().map(candidates::get).sorted().toList())));
        groups.sort(Comparator.comparing(group -> group.get(0)));
        return groups;
    }

    /** Those whose numbers agree without their sign, together. */
    private static List<List<Integer>> runs(List<Integer> of, double[] numbers) {
        List<Integer> sorted = of.stream()
                .sorted(Comparator.comparingDouble(i -> Math.abs(numbers[i])))
                .toList();
        List<List<Integer>> runs = new ArrayList<>();
        double last = Double.NEGATIVE_INFINITY;
        for (int i : sorted) {
            double size = Math.abs(numbers[i]);
            if (!(size - last <= SAME * (1 + size))) {
                runs.add(new ArrayList<>());
            }
            runs.get(runs.size() - 1).add(i);
            last = size;
        }
        return runs;
    }
}
