package org.gritwright.core.simulation;

import java.util.List;
import java.util.SplittableRandom;

/** Dice with a seed: what is drawn from one seed is the same on every machine. */
final class Draw {
    private final SplittableRandom random;

    private Draw(SplittableRandom random) {
        this.random = random;
    }

    static Draw of(long seed) {
        return new Draw(new SplittableRandom(seed));
    }

    /** Dice of their own, so that one more throw here changes nothing there. */
    Draw split() {
        return new Draw(random.split());
    }

    double uniform(double from, double to) {
        return from + (to - from) * random.nextDouble();
    }

    /** With equal chances for every factor. */
    double logUniform(double from, double to) {
        return Math.exp(uniform(Math.log(from), Math.log(to)));
    }

    double normal(double mean, double deviation) {
        return mean + deviation * random.nextGaussian();
    }

    boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    /** From the lowest to the highest, both included. */
    int whole(int lowest, int highest) {
        return random.nextInt(lowest, highest + 1);
    }

    <T> T of(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    /** One of the choices, by its weight. */
    int weighted(double... weights) {
        double sum = 0;
        for (double weight : weights) {
            sum += weight;
        }
        double left = uniform(0, sum);
        for (int i = 0; i < weights.length - 1; i++) {
            left -= weights[i];
            if (left < 0) {
                return i;
            }
        }
        return weights.length - 1;
    }
}
