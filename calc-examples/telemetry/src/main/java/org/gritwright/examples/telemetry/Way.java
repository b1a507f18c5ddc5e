package org.gritwright.examples.telemetry;

import java.io.Serializable;
import org.gritwright.core.telemetry.PieceSums;

/**
 * How far a truck went.
 *
 * @param spreading millimeters with spreading on
 * @param off with spreading off
 * @param unknown of which nobody knows what was laid
 */
record Way(long spreading, long off, long unknown) implements Serializable {
    private static final long serialVersionUID = 1L;

    static final Way NONE = new Way(0, 0, 0);

    /**
     * The way in pieces.
     *
     * @param all the pieces
     * @param wanted the same, where spreading off is unknown
     */
    static Way of(PieceSums all, PieceSums wanted) {
        long spreading = 0;
        long off = 0;
        long unknown = 0;
        for (long piece : all.pieces()) {
            spreading += wanted.covered(piece);
            off += wanted.unknown(piece) - all.unknown(piece);
            unknown += all.unknown(piece);
        }
        return new Way(spreading, off, unknown);
    }

    Way plus(Way other) {
        return new Way(spreading + other.spreading, off + other.off, unknown + other.unknown);
    }

    Way minus(Way other) {
        return new Way(spreading - other.spreading, off - other.off, unknown - other.unknown);
    }
}
