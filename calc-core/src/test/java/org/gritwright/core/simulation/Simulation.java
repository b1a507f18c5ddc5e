package org.gritwright.core.simulation;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.record.Document;

/** Draws trucks, writes their documents, reads them back and has them assessed, all through the public API. */
final class Simulation {
    private static final FleetAssessor ASSESSOR = FleetAssessor.of(Equipment.TYPES);

    private Simulation() {}

    static DayMaker.Made make(Fault fault, long seed, Predicate<TrueTruck> fits) {
        TrueTruck truck = TruckMaker.make(seed, "T-1", one -> fault.fits(one) && fits.test(one));
        return DayMaker.make(truck, fault);
    }

    /** The document as text, with the slips of a hand at the keyboard. */
    static String text(DayMaker.Made made, Fault fault) {
        Situation situation = new Situation(made.truck(), Draw.of(made.truck().seed() + 3));
        return fault.text(Document.FLEET_DAY.toText(made.day()), situation);
    }

    /** The document as it is read; none if the reader rejects it. */
    static Optional<FleetDay> read(String text) {
        try {
            return Optional.of(
                    Document.FLEET_DAY.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))));
        } catch (RejectedDocumentException e) {
            return Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static TruckAssessment assess(FleetDay day) {
        return ASSESSOR.assess(day).get(0);
    }

    static Outcome run(Fault fault, long seed, Predicate<TrueTruck> fits) {
        DayMaker.Made made = make(fault, seed, fits);
        Optional<FleetDay> read = read(text(made, fault));
        if (read.isEmpty()) {
            return new Outcome(
                    made,
                    fault,
                    Told.rejected("the document is rejected"),
                    Double.POSITIVE_INFINITY,
                    Double.NEGATIVE_INFINITY,
                    Ideal.Decision.UNDECIDED);
        }
        Told told = Told.of(assess(read.get()));
        Ideal ideal = new Ideal(made.truck(), read.get());
        if (!ideal.isPossible()) {
            return new Outcome(
                    made, fault, told, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Ideal.Decision.UNDECIDED);
        }
        double ratio = ideal.ratio(fault);
        // Without a visible fault nobody asks which; without any, which one seems to be there is the simulator's own
        // matter.
        double rival = ratio > Ideal.VISIBLE ? rival(ideal, fault) : Double.NEGATIVE_INFINITY;
        return new Outcome(made, fault, told, ratio, rival, ideal.decision());
    }

    /** The greatest Λ of faults that have another cause. */
    static double rival(Ideal ideal, Fault fault) {
        return Faults.ALL.stream()
                .filter(other -> !other.hasSameCauseAs(fault))
                .mapToDouble(ideal::ratio)
                .max()
                .orElse(Double.NEGATIVE_INFINITY);
    }

    static List<Outcome> run(Fault fault, Predicate<TrueTruck> fits, long firstSeed, int trucks) {
        return LongStream.range(firstSeed, firstSeed + trucks)
                .parallel()
                .mapToObj(seed -> run(fault, seed, fits))
                .toList();
    }
}
