package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.number;
import static org.gritwright.core.finding.Argument.time;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.verification.Verification;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.PrewetRate;

/** A prewet rate per short ton that a display took as one per tonne, or the other way round: a tenth too little, or too much. */
final class OtherTon {
    /** How near what was delivered must be to the other rate (common practice, no source). */
    private static final double NEAR = 0.02;

    /** Where display and catch disagree by more, something else is wrong (common practice, no source). */
    private static final double AGREES = 0.04;

    private OtherTon() {}

    /** The first catch that shows it, if all prewet catches do. */
    static Optional<Finding> of(List<PointAssessment> points, Function<Verification, TargetEntry> targets) {
        List<Caught> all = points.stream()
                .flatMap(point -> point.verifications().stream())
                .flatMap(one -> targets.apply(one).prewetRate().map(rate -> new Caught(one, rate)).stream())
                .toList();
        return all.stream()
                .findFirst()
                .filter(first -> all.stream().allMatch(one -> one.isByOtherTon()))
                .map(Caught::finding);
    }

    private record Caught(Verification made, Quantity<PrewetRate> rate) {
        /** The same number per the other ton; none for a rate that nobody would mix up. */
        private Optional<Quantity<PrewetRate>> other() {
            return Stream.of(
                            Map.entry(SpreadingUnits.US_GALLON_PER_SHORT_TON, SpreadingUnits.US_GALLON_PER_TONNE),
                            Map.entry(SpreadingUnits.US_GALLON_PER_TONNE, SpreadingUnits.US_GALLON_PER_SHORT_TON))
                    .filter(pair -> pair.getKey().equals(rate.getUnit()))
                    .map(Map.Entry::getValue)
                    .map((Unit<PrewetRate> unit) -> Amounts.of(rate.getValue().doubleValue(), unit))
                    .findFirst();
        }

        boolean isByOtherTon() {
            boolean agrees = made.calibrationError()
                    .filter(error -> Math.abs(Amounts.si(Dimensionless.class, error)) <= AGREES)
                    .isPresent();
            return agrees
                    && other().map(instead ->
                                    Amounts.si(PrewetRate.class, instead) / Amounts.si(PrewetRate.class, rate))
                            .filter(factor -> Math.abs(delivered() / factor - 1) <= NEAR)
                            .isPresent();
        }

        private double delivered() {
            return 1 + Amounts.si(Dimensionless.class, made.deliveryError());
        }

        Finding finding() {
            return Finding.of(
                    FindingCode.PREWET_BY_OTHER_TON,
                    Map.of(
                            "at", time(made.source().observation().at()),
                            "delivered", number(made.source().caught().total()),
                            "rate", number(rate),
                            "instead", number(other().orElseThrow())));
        }
    }
}
