package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What one truck laid of each material on each day, as indicated.
 *
 * @param rows how many rows it has
 * @param badRows how many of them can't be counted
 */
record TruckDays(String truck, double pulsesPerTurn, SortedMap<Key, Sums> days, long rows, long badRows)
        implements OfTruck, Serializable {
    private static final long serialVersionUID = 1L;

    TruckDays {
        days = new TreeMap<>(days);
    }

    /** A day of the yard, and a material's name. */
    record Key(LocalDate day, String material) implements Comparable<Key>, Serializable {
        private static final long serialVersionUID = 1L;

        @Override
        public int compareTo(Key other) {
            return Comparator.comparing(Key::day).thenComparing(Key::material).compare(this, other);
        }
    }

    /**
     * Sums.
     *
     * @param milligrams laid on the road
     * @param pulses by which it was laid
     * @param unattributed pulses of which nobody can say what they laid, as far as readings tell
     */
    record Sums(long milligrams, long pulses, long unattributed) implements Serializable {
        private static final long serialVersionUID = 1L;

        Sums plus(Sums other) {
            return new Sums(milligrams + other.milligrams, pulses + other.pulses, unattributed + other.unattributed);
        }

        boolean isNothing() {
            return milligrams == 0 && pulses == 0 && unattributed == 0;
        }
    }
}
