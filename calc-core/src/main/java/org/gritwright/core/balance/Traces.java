package org.gritwright.core.balance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Which candidates have the same trace, by what they make of two right sides without pattern. */
final class Traces {
    private static final double SAME = 1e-6;

    private Traces() {}

    /** A number from 1 to 2 that follows no pattern (the mixing of SplitMix64). */
    static double patternless(int index, int seed) {
        long mixed = (index + 1) * 0x9E3779B97F4A7C15L + seed * 0xBF58476D1CE4E5B9L;
        mixed = (mixed ^ (mixed >>> 30)) * 0xBF58476D1CE4E5B9L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94D049BB133111EBL;
        return 1 + ((mixed ^ (mixed >>> 31)) >>> 11) * 0x1p-53;
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
