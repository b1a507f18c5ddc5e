package org.gritwright.core.statistics;

/** Shapes for fits, with their derivatives by hand, from 0 to {@link #HIGHEST}. */
enum CurveFitShapes implements CurveFit.Shape {
    LINEAR {
        @Override
        public double applyAsDouble(double x) {
            return x;
        }

        @Override
        double slope(double x) {
            return 1;
        }
    },
    QUADRATIC {
        @Override
        public double applyAsDouble(double x) {
            return x * x;
        }

        @Override
        double slope(double x) {
            return 2 * x;
        }
    },
    /** The segment of a circle of diameter 40: r²·acos(1 − h/r) − (r − h)·√(2rh − h²); it grows by the chord. */
    SEGMENT {
        @Override
        public double applyAsDouble(double x) {
            return RADIUS * RADIUS * Math.acos(1 - x / RADIUS) - (RADIUS - x) * halfChord(x);
        }

        @Override
        double slope(double x) {
            return 2 * halfChord(x);
        }
    };

    static final double HIGHEST = 40;

    private static final double RADIUS = HIGHEST / 2;

    abstract double slope(double x);

    private static double halfChord(double height) {
        return Math.sqrt(2 * RADIUS * height - height * height);
    }
}
