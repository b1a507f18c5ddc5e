package org.gritwright.core.envelope;

/**
 * Sums what is asked for and what is put down while the asked flow changes steadily, stretch by stretch. Within a stretch the times
 * at which a limit is met are found, so that the sums are exact and don't depend on how finely a cycle was written down.
 */
final class FlowOverTime {
    private final CompiledEnvelope envelope;

    /** Below it the shaft keeps its slowest speed, or stands. */
    private final double least;

    private final double greatest;
    private double asked;
    private double under;
    private double over;
    private double beyond;

    FlowOverTime(CompiledEnvelope envelope) {
        this.envelope = envelope;
        this.least = envelope.keepsSlowest()
                ? Math.min(envelope.leastFlow(), envelope.greatestFlow())
                : envelope.leastFlow();
        this.greatest = envelope.greatestFlow();
    }

    /** The asked flow goes from one to another in so many seconds. */
    void add(double from, double to, double seconds) {
        asked += seconds * (from + to) / 2;
        double low = Math.min(from, to);
        double high = Math.max(from, to);
        below(low, high, seconds);
        above(low, high, seconds);
    }

    private void below(double low, double high, double seconds) {
        double part = part(low, high, 0, least, seconds);
        double mass = part * (low + Math.min(high, least)) / 2;
        if (envelope.keepsSlowest()) {
            over += part * least - mass;
        } else {
            under += mass;
        }
        beyond += part;
    }

    private void above(double low, double high, double seconds) {
        // Where the shaft stands still below its slowest, only what is beyond that can be too much for the drive.
        double from = Math.max(greatest, least);
        double part = part(low, high, from, Double.POSITIVE_INFINITY, seconds);
        double mass = part * (Math.max(low, from) + high) / 2;
        under += greatest < least ? mass : mass - part * greatest;
        beyond += part;
    }

    /** For how long a flow that changes steadily is between two others; a flow of nothing is a truck that stands. */
    private static double part(double low, double high, double from, double to, double seconds) {
        if (high == low) {
            return low > from && low < to ? seconds : 0;
        }
        double between = Math.min(high, to) - Math.max(low, from);
        return between > 0 ? seconds * between / (high - low) : 0;
    }

    double asked() {
        return asked;
    }

    double under() {
        return under;
    }

    double over() {
        return over;
    }

    double beyond() {
        return beyond;
    }
}
