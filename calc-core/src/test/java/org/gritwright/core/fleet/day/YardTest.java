package org.gritwright.core.fleet.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.gritwright.core.Samples;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class YardTest {
    private static final FleetDay DAY = Trucks.day(Trucks.idle("T-01"));
    private static final Yard YARD = Yard.of(DAY);

    @Test
    void aMisspelledScaleIsAnsweredWithTheOneThatMayHaveBeenMeant() {
        String id = DAY.scales().get(0).id();
        InvalidInputException refused =
                catchThrowableOfType(InvalidInputException.class, () -> YARD.scale(id.replaceFirst("a", "")));

        assertThat(refused).hasMessageEndingWith("; did you mean \"" + id + "\"?");
        assertThat(refused.field()).isEqualTo("scale");
        assertThat(refused.value()).isEqualTo("\"" + id.replaceFirst("a", "") + "\"");
    }

    @Test
    void anythingElseIsAnsweredWithAllThatThereAre() {
        assertThatThrownBy(() -> YARD.material("quite another thing"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("material must be one of [")
                .hasMessageEndingWith("]: \"quite another thing\"");
    }

    @Test
    void aDayHasOneTruckOrMore() {
        assertThatThrownBy(() -> DAY.withTrucks(List.of()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("trucks of a day must be one or more: none");
    }

    @Test
    void whatIsWettedHasAConveyor() {
        TruckDay pump = TruckDay.of(
                        "brine",
                        new FlowMeterEntry(new TypedEntry(
                                "k-factor", 1, Map.of("kFactor", Amounts.of(600, SpreadingUnits.PULSE_PER_US_GALLON)))))
                .wetting("T-99");
        FleetDay two = DAY.withTrucks(List.of(DAY.trucks().get(0), pump));

        assertThatThrownBy(() -> Yard.of(two))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("truck with a conveyor, to be wetted, must be one of [T-01]: \"T-99\"");
        assertThatThrownBy(() -> Yard.of(DAY.withTrucks(List.of(DAY.trucks().get(0), pump.wetting("brine")))))
                .isInstanceOf(InvalidInputException.class);
        assertThat(Yard.of(DAY.withTrucks(List.of(pump))).day().trucks()).hasSize(1);
        assertThat(Yard.of(DAY.withTrucks(List.of(
                                DAY.trucks().get(0),
                                pump.wetting(DAY.trucks().get(0).id()))))
                        .day()
                        .trucks())
                .hasSize(2);
    }

    @Test
    void aRouteForAllIsForThoseThatCanMeterItsMaterial() {
        TruckDay pump = TruckDay.of(
                "brine",
                new FlowMeterEntry(new TypedEntry(
                        "k-factor", 1, Map.of("kFactor", Amounts.of(600, SpreadingUnits.PULSE_PER_US_GALLON)))));
        FleetDay day = DAY.withTrucks(List.of(DAY.trucks().get(0), pump))
                .withRoutes(List.of(new RouteEntry(
                        "town",
                        Samples.SALT.name(),
                        new TargetEntry(
                                Optional.of(Amounts.of(300, SpreadingUnits.POUND_PER_MILE)),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty()),
                        Amounts.of(10, SpreadingUnits.MILE_PER_HOUR),
                        Amounts.of(30, SpreadingUnits.MILE_PER_HOUR),
                        List.of())));

        assertThat(day.routesOf(DAY.trucks().get(0))).hasSize(1);
        assertThat(day.routesOf(pump)).isEmpty();
        assertThat(day.withOnly(pump).routes()).isEmpty();
    }
}
