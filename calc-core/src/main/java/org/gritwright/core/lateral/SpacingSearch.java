package org.gritwright.core.lateral;

import java.util.OptionalDouble;

/**
 * The widest spacing at which two passes are even enough. Evenness doesn't fall steadily with the spacing: a wide spacing may
 * pass where a narrower one doesn't. So it looks from the widest on, step by step, and halves the step in which it passes first;
 * an island narrower than a step may be missed.
 */
record SpacingSearch(Profile first, Driving driving, double limit) {
    private static final int STEPS = 2000;
    private static final int HALVINGS = 50;

    /** From where the two passes don't touch any more down to a narrowest spacing; meters. */
    OptionalDouble widest(double narrowest) {
        double touching = 2 * Math.max(Math.abs(first.left()), Math.abs(first.right()));
        double step = (touching - narrowest) / STEPS;
        for (int i = 0; i <= STEPS && step >= 0; i++) {
            double spacing = touching - i * step;
            if (isEven(spacing)) {
                return OptionalDouble.of(i == 0 ? spacing : edge(spacing, spacing + step));
            }
        }
        return OptionalDouble.empty();
    }

    private double edge(double even, double uneven) {
        double low = even;
        double high = uneven;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (isEven(middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private boolean isEven(double spacing) {
        double second = driving.side(spacing);
        // Not a number, where nothing lies between, isn't even.
        return first.steps()
                        .plus(driving.second(first, spacing).steps())
                        .within(Math.min(0, second), Math.max(0, second))
                        .variation()
                <= limit;
    }
}
