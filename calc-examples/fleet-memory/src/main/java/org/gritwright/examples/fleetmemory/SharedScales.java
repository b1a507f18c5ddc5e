package org.gritwright.examples.fleetmemory;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.record.WrittenTruckSeason;
import org.gritwright.core.season.CommonError;
import org.gritwright.core.season.StatedMass;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;

/** Scales that a season's account names, and that catches of verifications were weighed on too: their error is one. */
final class SharedScales {
    /** Uncertainties that differ by more are two statements about one scale (common practice, no source). */
    private static final double MUCH = 1.5;

    private final Map<String, CommonError> byName = new HashMap<>();

    SharedScales(WrittenSeason season) {
        Stream.concat(
                        season.piles().stream()
                                .flatMap(pile -> pile.deliveries().stream())
                                .map(ticket -> ticket.mass()),
                        season.trucks().stream()
                                .flatMap(truck -> truck.weighedLoads().stream())
                                .map(WrittenTruckSeason.Loads::weighed))
                .map(StatedMass::common)
                .flatMap(Optional::stream)
                .forEach(error -> byName.putIfAbsent(error.name(), error));
    }

    /** What the verifications' scale is to the account: the one with the largest part, if several are named there. */
    private Optional<CommonError> named(List<SharedError> shared) {
        return largest(shared).map(one -> byName.get(name(one)));
    }

    private Optional<SharedError> largest(List<SharedError> shared) {
        return shared.stream()
                .filter(one -> byName.containsKey(name(one)))
                .max(Comparator.comparingDouble(one -> ratio(one.standardUncertainty())));
    }

    private static String name(SharedError error) {
        String span = ErrorSource.SCALE_SPAN.key() + " of ";
        return error.id().startsWith(span) ? error.id().substring(span.length()) : "";
    }

    /** A truck's error by its verifications, apart from what it shares with the account's scales. */
    WrittenTruckSeason.CalibrationError error(Measured<Dimensionless> error, List<SharedError> shared) {
        double all = ratio(error.standardUncertainty().orElseThrow());
        Optional<CommonError> scale = named(shared);
        double apart = scale.map(one -> all * all - Math.pow(ratio(one.standardUncertainty()), 2))
                .orElse(0.0);
        return apart > 0
                ? new WrittenTruckSeason.CalibrationError(
                        error.value(), Amounts.ofSi(Math.sqrt(apart), SpreadingUnits.PERCENT), scale)
                : WrittenTruckSeason.CalibrationError.of(error);
    }

    /** A scale may be stated twice, and otherwise. */
    Optional<String> contradiction(List<SharedError> shared) {
        return largest(shared).flatMap(one -> {
            CommonError stated = Objects.requireNonNull(byName.get(name(one)), "scale");
            double account = ratio(stated.standardUncertainty());
            double records = ratio(one.standardUncertainty());
            return Math.max(account / records, records / account) < MUCH
                    ? Optional.empty()
                    : Optional.of("The account says that " + stated.name() + " is uncertain by "
                            + Amounts.format(stated.standardUncertainty()) + ", and the records of verifications by "
                            + Rounded.text(one.standardUncertainty(), 2)
                            + ": the account's is taken.");
        });
    }

    private static double ratio(Quantity<Dimensionless> quantity) {
        return Amounts.si(Dimensionless.class, quantity);
    }
}
