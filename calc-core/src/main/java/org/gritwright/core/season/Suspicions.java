package org.gritwright.core.season;

import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.balance.Estimate;
import org.gritwright.core.balance.Suspect;
import org.gritwright.core.uncertainty.Measured;

/** What gross errors of a network mean in the yard. */
final class Suspicions {
    private Suspicions() {}

    private static double score(Suspect suspect) {
        return Math.abs(suspect.score());
    }

    /** What the rest says is less uncertain than its difference from what was stated. */
    private static double ofTheRest(Suspect suspect, double stated) {
        double square = suspect.standardUncertainty() * suspect.standardUncertainty() - stated * stated;
        return Math.sqrt(Math.max(0, square));
    }

    static Suspicion truck(TruckSeason truck, Suspect suspect) {
        double factor = truck.statedFactor().orElseThrow() - suspect.size();
        double u = ofTheRest(suspect, truck.statedFactorUncertainty());
        Optional<Measured<Dimensionless>> byTheRest =
                factor > 0 ? Optional.of(Words.percent(1 / factor - 1, u / (factor * factor))) : Optional.empty();
        return new Suspicion.TruckReports(
                truck.id(), truck.calibrationError().orElseThrow(), byTheRest, score(suspect));
    }

    static Suspicion pile(Pile pile, int period, Suspect suspect) {
        return new Suspicion.PileOff(
                pile.id(),
                pile.period(period),
                Words.mass(
                        new Estimate(-suspect.size(), suspect.standardUncertainty()),
                        pile.opening().mass().getUnit()),
                TicketSlips.of(pile, period, suspect),
                score(suspect));
    }

    static Suspicion survey(Pile pile, int number, Suspect suspect) {
        return new Suspicion.SurveyOff(
                pile.id(),
                number,
                pile.day(number),
                Words.mass(
                        new Estimate(suspect.size(), suspect.standardUncertainty()),
                        pile.opening().mass().getUnit()),
                score(suspect));
    }

    static Suspicion loads(TruckSeason truck, StatedMass weighed, Suspect suspect) {
        return new Suspicion.LoadsOff(
                truck.id(),
                weighed.common().map(CommonError::name),
                Words.mass(
                        new Estimate(suspect.size(), suspect.standardUncertainty()),
                        weighed.mass().getUnit()),
                score(suspect));
    }

    /** It was stated as 0 ± 1 in its standard uncertainties. */
    static Suspicion common(CommonError error, Suspect suspect) {
        return new Suspicion.CommonOff(
                error.name(),
                Words.percent(suspect.size() * error.ratio(), ofTheRest(suspect, 1) * error.ratio()),
                score(suspect));
    }
}
