package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.gritwright.core.fleet.day.DayLimits;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;

class InParallelTest {
    private static final FleetAssessor ASSESSOR = FleetAssessor.of(BuiltInTypes.registry());

    /** Right, wrong, refused, untouched; some tickets are those of another truck. */
    private static TruckDay truck(int number) {
        String id = "T-" + number;
        return switch (number % 4) {
            case 0 -> idle(id);
            case 1 -> withRoadSpeed(with(idle(id), calibrationCatch(7, 2), calibrationCatch(8, 2)), 13_000 + number);
            case 2 ->
                with(Trucks.listing(idle(id), "5.5 lb/rev"), verificationCatch(9, "5.5 lb/rev", 120, 50 + number));
            default -> with(idle(id), Trucks.spreader(new TypedEntry("unknown-gate", 1, Map.of())));
        };
    }

    @Test
    void severalTrucksAtATimeGiveTheSameInTheSameOrder() {
        List<TruckDay> trucks =
                IntStream.range(0, 200).mapToObj(InParallelTest::truck).toList();
        FleetDay day = Trucks.day(trucks.toArray(TruckDay[]::new));

        List<TruckAssessment> oneByOne = ASSESSOR.assess(day);
        assertThat(ASSESSOR.assessInParallel(day)).isEqualTo(oneByOne);
        assertThat(oneByOne).extracting(TruckAssessment::isRefused).contains(true, false);
    }

    @Test
    void whatIsRefusedOneByOneIsRefusedTogether() {
        FleetDay day = Trucks.day(truck(0), truck(1));
        FleetAssessor small = ASSESSOR.within(new DayLimits(1, 100, 100, 100, 100, 100));

        assertThatThrownBy(() -> small.assessInParallel(day)).isInstanceOf(InvalidInputException.class);
    }
}
