package org.gritwright.core.fleet.assessment;

import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.Yard;
import org.gritwright.units.quantity.PrewetRate;

/** Puts a liquid that wets and the grains of another spreader of the day together. */
final class PrewetTotals {
    private PrewetTotals() {}

    /** The same assessments, those of liquids that wet with their totals. */
    static List<TruckAssessment> of(List<TruckAssessment> alone, Yard yard) {
        if (alone.stream().allMatch(one -> one.truck().wets().isEmpty())) {
            return alone;
        }
        Map<String, TruckAssessment> byId = alone.stream()
                .collect(Collectors.toMap(one -> one.truck().id(), Function.identity(), (one, other) -> one));
        return alone.stream()
                .map(liquid -> liquid.truck()
                        .wets()
                        .map(byId::get)
                        .flatMap(grains -> total(grains, liquid, yard))
                        .map(total -> liquid.with(total, total.findings(yard)))
                        .orElse(liquid))
                .toList();
    }

    private static Optional<PrewetTotal> total(TruckAssessment grains, TruckAssessment liquid, Yard yard) {
        Optional<PointAssessment> salt = lastVerified(grains);
        Optional<PointAssessment> brine = lastVerified(liquid);
        Optional<Quantity<PrewetRate>> rate = lastRate(liquid.truck());
        return salt.isEmpty() || brine.isEmpty() || rate.isEmpty()
                ? Optional.empty()
                : PrewetTotal.of(grains.truck().id(), salt.get(), brine.get(), rate.get(), yard);
    }

    private static Optional<PointAssessment> lastVerified(TruckAssessment truck) {
        return truck.points().stream()
                .filter(point -> point.judged().isPresent())
                .max(Comparator.comparing(PrewetTotals::verifiedAt));
    }

    private static OffsetDateTime verifiedAt(PointAssessment point) {
        return point.lastVerification().orElseThrow().source().observation().at();
    }

    private static Optional<Quantity<PrewetRate>> lastRate(TruckDay truck) {
        return truck.verificationCatches().stream()
                .max(Comparator.comparing(one -> one.entry().at()))
                .map(VerificationCatchEntry::target)
                .flatMap(TargetEntry::prewetRate);
    }
}
