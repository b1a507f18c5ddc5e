package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.telemetry.PieceSums;
import org.gritwright.units.SpreadingUnits;

/**
 * A part of a truck's rows without a long pause, cut into pieces of equal length.
 *
 * @param startMillis its first row, in milliseconds since 1970-01-01T00:00Z
 * @param all its pieces
 * @param wanted the same without the way on which spreading was switched off, which is unknown here
 */
record Trip(long startMillis, PieceSums all, PieceSums wanted) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * A piece of the trip.
     *
     * @param number from 0
     * @param milligrams laid in it
     * @param spreadingMillimeters of its way that on which spreading was on and it is known what was laid
     * @param offMillimeters that on which it was off
     * @param unknownMillimeters that of which nobody knows what was laid
     * @param millis how long, in rows that were counted
     * @param poundsPerMile the rate where spreading was on; NaN where there is none
     */
    record Piece(
            long number,
            long milligrams,
            long spreadingMillimeters,
            long offMillimeters,
            long unknownMillimeters,
            long millis,
            double poundsPerMile,
            Verdict verdict) {}

    Way way() {
        return Way.of(all, wanted);
    }

    List<Piece> pieces(Target target) {
        List<Piece> pieces = new ArrayList<>();
        for (long number : all.pieces()) {
            long spreading = wanted.covered(number);
            long unknown = all.unknown(number);
            double rate = spreading > 0
                    ? wanted.rate(number, SpreadingUnits.POUND_PER_MILE)
                            .getValue()
                            .doubleValue()
                    : Double.NaN;
            Verdict verdict =
                    spreading > 0 ? target.verdict(rate) : unknown > 0 ? Verdict.UNKNOWN : Verdict.NOT_SPREADING;
            pieces.add(new Piece(
                    number,
                    all.amount(number),
                    spreading,
                    wanted.unknown(number) - unknown,
                    unknown,
                    all.millis(number),
                    rate,
                    verdict));
        }
        return pieces;
    }
}
