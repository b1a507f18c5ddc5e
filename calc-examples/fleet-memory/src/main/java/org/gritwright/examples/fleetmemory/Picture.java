package org.gritwright.examples.fleetmemory;

import java.util.function.Function;

/**
 * A picture for desks and paper, and the same for a phone: what is made smaller until it fits can't be read in a yard.
 *
 * @param wide as wide as a sheet of paper
 * @param narrow as wide as a phone
 */
record Picture(Drawing wide, Drawing narrow) {
    /** How wide each is drawn. */
    enum Width {
        WIDE(520, 84, 6),
        NARROW(340, 72, 4);

        private final int width;
        private final int left;
        private final int mostTicks;

        Width(int width, int left, int mostTicks) {
            this.width = width;
            this.left = left;
            this.mostTicks = mostTicks;
        }

        int width() {
            return width;
        }

        /** Where a chart's axis upward stands, beside its numbers and what they are. */
        int left() {
            return left;
        }

        /** So many words fit below a chart. */
        int mostTicks() {
            return mostTicks;
        }
    }

    static Picture of(Function<Width, Drawing> drawn) {
        return new Picture(drawn.apply(Width.WIDE), drawn.apply(Width.NARROW));
    }
}
