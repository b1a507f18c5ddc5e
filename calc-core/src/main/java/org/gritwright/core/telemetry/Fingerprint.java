package org.gritwright.core.telemetry;

/**
 * A number that two timelines have in common only if they are the same, but for chance: by it sums tell whose they are. Numbers count to
 * seven digits, so that it is the same on every machine, whatever the last bit of its logarithms.
 */
final class Fingerprint {
    /** The golden ratio in 64 bits, as in Knuth's multiplicative hashing (The Art of Computer Programming 3, 6.4). */
    private static final long MULTIPLIER = 0x9E3779B97F4A7C15L;

    private long mark;

    Fingerprint add(long part) {
        mark = (mark ^ part) * MULTIPLIER;
        mark ^= mark >>> 32;
        return this;
    }

    Fingerprint add(String part) {
        return add(part.hashCode());
    }

    Fingerprint add(double... parts) {
        for (double part : parts) {
            add(Float.floatToIntBits((float) part));
        }
        return add(parts.length);
    }

    long value() {
        return mark;
    }
}
