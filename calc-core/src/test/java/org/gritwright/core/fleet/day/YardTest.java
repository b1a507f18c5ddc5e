package org.gritwright.core.fleet.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.gritwright.core.LiquidSamples;
import org.gritwright.core.Samples;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
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

    private static RouteEntry town(String name, Quantity<ApplicationRate> rate, String... trucks) {
        return new RouteEntry(
                name,
                Samples.SALT.name(),
                new TargetEntry(Optional.of(rate), Optional.empty(), Optional.empty(), Optional.empty()),
                Amounts.of(10, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(30, SpreadingUnits.MILE_PER_HOUR),
                List.of(trucks));
    }

    @Test
    void aRouteIsRefusedByItsName() {
        Quantity<ApplicationRate> rate = Amounts.of(300, SpreadingUnits.POUND_PER_MILE);
        Samples.assertRefused(
                "truck of a route must be listed once: \"T-01\"", () -> town("town", rate, "T-01", "T-01"));
        assertThatThrownBy(() -> town(" ", rate)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> town("town", Amounts.of(0, SpreadingUnits.POUND_PER_MILE)))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Yard.of(DAY.withRoutes(List.of(town("town", rate, "T-99")))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("route \"town\"")
                .hasMessageContaining("\"T-99\"");
    }

    @Test
    void aRateOfGrainsIsForNoLiquid() {
        RouteEntry route = town("town", Amounts.of(300, SpreadingUnits.POUND_PER_MILE));

        assertThat(route.demand(Samples.SALT)).isNotNull();
        Samples.assertRefused(
                "target rate of route \"town\" must be a volume per distance, as " + LiquidSamples.BRINE.name()
                        + " is a liquid: 300 lb/mi",
                () -> route.demand(LiquidSamples.BRINE));
    }

    @Test
    void aTruckAloneHasWhatItsCatchesNameAndNothingElse() {
        FleetDay day = Trucks.day(
                Trucks.with(Trucks.idle("T-01"), Trucks.calibrationCatch(9, 2)),
                TruckDay.of("T-02", Trucks.spreader(Trucks.gate())));
        FleetDay routed = day.withRoutes(List.of(
                town("both", Amounts.of(300, SpreadingUnits.POUND_PER_MILE), "T-01", "T-02"),
                town("other", Amounts.of(300, SpreadingUnits.POUND_PER_MILE), "T-02")));

        FleetDay caught = routed.withOnly(routed.trucks().get(0));
        assertThat(caught.scales()).isEqualTo(day.scales());
        assertThat(caught.materials()).isEqualTo(day.materials());
        assertThat(caught.routes()).extracting(RouteEntry::name).containsExactly("both");
        assertThat(caught.routes()).extracting(RouteEntry::trucks).containsExactly(List.of("T-01"));

        FleetDay idle = day.withOnly(day.trucks().get(1));
        assertThat(idle.scales()).isEmpty();
        assertThat(idle.materials()).isEmpty();
        assertThat(idle.trucks()).extracting(TruckDay::id).containsExactly("T-02");
    }

    @Test
    void ofManyNamesTwentyAreTold() {
        List<Material> many = IntStream.range(0, 23)
                .mapToObj(i -> Material.of("material " + (char) ('a' + i), Samples.SALT.looseBulkDensity()))
                .toList();
        Yard yard = new Yard(
                DAY,
                YARD.tolerance(),
                Map.of(),
                Map.of(),
                many.stream().collect(Collectors.toMap(Material::name, Function.identity())));

        assertThatThrownBy(() -> yard.material("quite another thing"))
                .hasMessageContaining("material t] and 3 more: ")
                .hasMessageNotContaining("material u");
    }
}
