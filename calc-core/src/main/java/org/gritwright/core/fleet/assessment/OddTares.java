package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.name;
import static org.gritwright.core.finding.Argument.number;
import static org.gritwright.core.finding.Argument.time;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Mass;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;

/** Containers of one truck that are said to weigh much more empty in one catch than in another, or nothing beside others. */
final class OddTares {
    /** What sticks to a container, or another one of the same name, explains less (common practice, no source). */
    private static final double GREATEST_RATIO = 3;

    private OddTares() {}

    private record Tare(Observation in, Weighing weighing) {
        double kilograms() {
            return Amounts.si(Mass.class, weighing.tare());
        }
    }

    /** The first contradiction. */
    static Optional<Finding> of(List<Observation> inOrder) {
        Map<String, Tare> lightest = new HashMap<>();
        Map<String, Tare> heaviest = new HashMap<>();
        for (Observation one : inOrder) {
            for (Weighing weighing : one.caught().weighings()) {
                Tare tare = new Tare(one, weighing);
                // One of 0 is asked for elsewhere.
                if (tare.kilograms() > 0) {
                    String container = weighing.container();
                    Tare low = lightest.merge(container, tare, (a, b) -> a.kilograms() <= b.kilograms() ? a : b);
                    Tare high = heaviest.merge(container, tare, (a, b) -> a.kilograms() >= b.kilograms() ? a : b);
                    if (high.kilograms() > GREATEST_RATIO * low.kilograms()) {
                        return Optional.of(differs(container, low, high));
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** A tare of 0 beside another: the scale wasn't set to zero with the empty containers on it, so one was left out. */
    static Optional<Finding> leftOut(List<Observation> inOrder) {
        return inOrder.stream()
                .map(Observation::caught)
                .filter(caught ->
                        caught.weighings().stream().anyMatch(weighing -> Amounts.si(Mass.class, weighing.tare()) == 0))
                .flatMap(caught -> caught.findings().stream())
                .filter(finding -> finding.code() == FindingCode.TARES_UNEQUAL)
                .findFirst();
    }

    private static Finding differs(String container, Tare low, Tare high) {
        return Finding.of(
                FindingCode.TARES_DIFFER,
                Map.of(
                        "container", name(container),
                        "lowest", number(low.weighing().tare()),
                        "first", time(low.in().at()),
                        "highest", number(high.weighing().tare()),
                        "second", time(high.in().at())));
    }
}
