package org.gritwright.examples.telemetry;

import org.gritwright.core.telemetry.Rows;

/** Columns of a few thousand rows, filled again and again. */
final class Buffers {
    /** Enough to spread what a call costs, and little enough for the processor's cache. */
    static final int SIZE = 4096;

    final long[] times = new long[SIZE];
    final long[] shaft = new long[SIZE];
    final long[] road = new long[SIZE];
    final double[] gates = new double[SIZE];
    final int[] slots = new int[SIZE];
    final byte[] modes = new byte[SIZE];
    final int[] roads = new int[SIZE];
    final long[] liquid = new long[SIZE];
    final Rows rows = new Rows(times, shaft, gates, slots, modes);

    /** No gate meters a liquid here, and the slot is the dry material's. */
    final Rows liquidRows = new Rows(times, liquid, new double[0], new int[0], modes);

    final long[] amounts = new long[SIZE];
    final byte[] statuses = new byte[SIZE];
    final long[] millimeters = new long[SIZE];
    final byte[] roadStatuses = new byte[SIZE];
    final long[] microliters = new long[SIZE];
    final byte[] liquidStatuses = new byte[SIZE];

    /** A mode that no column of modes has, for numbers that don't fit. */
    private static final byte NO_MODE = -1;

    /** What the shaft's evaluator takes of a row. */
    void put(int at, long millis, long shaftPulses, double gateMeters, int slot, int mode) {
        times[at] = millis;
        shaft[at] = shaftPulses;
        gates[at] = gateMeters;
        slots[at] = slot;
        modes[at] = mode == (byte) mode ? (byte) mode : NO_MODE;
    }

    /** What was laid on the road, and the statuses as the cutters take them: {@link TruckPass}. */
    final long[] laid = new long[SIZE];

    final byte[] known = new byte[SIZE];
    final byte[] wanted = new byte[SIZE];
}
