package org.gritwright.core.fleet.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.measure.quantity.Volume;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.planning.RunPlan;
import org.gritwright.core.record.Document;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Planning a conveyor, what wets its grains, and a flow meter that lays its liquid alone, in one plan. */
class LiquidFleetPlanTest {
    private static FleetDay day(String plan) {
        String text = """
                {"format": "gritwright/fleet-day", "formatVersion": 2, "day": "2026-10-19", "seasonStart": "2026-11-01",
                 "tolerance": "4 %%", "allowances": {"repeatability": {"relativeDeviation": "0.7 %%"}},
                 "scales": [{"id": "S", "capacity": "1000 lb", "division": "0.5 lb", "accuracy": "0.1 %%"}],
                 "graduates": [{"id": "M", "capacity": "5.5 gal", "division": "0.02 gal", "tolerance": "0.02 gal"}],
                 "materials": [{"name": "salt", "looseBulkDensity": "78 lb/ft³"}, {"name": "brine", "density": "9.82 lb/gal"}],
                 "plan": {%s},
                 "trucks": [
                  {"id": "T-1", "conveyor": {"type": "auger", "version": 1,
                     "parameters": {"screwDiameter": "6 in", "shaftDiameter": "1.5 in", "pitch": "5 in"}},
                   "gate": {"type": "no-gate", "version": 1}, "pulsesPerRevolution": "60 pulse/rev", "gearRatio": "1"},
                  {"id": "T-1 brine", "wets": "T-1", "pump": {"type": "displacement-pump", "version": 1,
                     "parameters": {"displacement": "0.016 gal/rev"}}, "pulsesPerRevolution": "30 pulse/rev", "gearRatio": "1"},
                  {"id": "A-1", "flowMeter": {"type": "k-factor", "version": 1, "parameters": {"kFactor": "600 pulse/gal"}},
                   "inForce": [{"value": "600 pulse/gal", "since": "2026-10-01", "material": "brine"}]}]}""".formatted(plan);
        try {
            return Document.FLEET_DAY.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        } catch (IOException | RejectedDocumentException e) {
            throw new AssertionError(e.getMessage(), e);
        }
    }

    private static final String TIMES =
            "\"times\": {\"setUp\": \"10 min\", \"perCatch\": \"5 min\", \"perContainer\": \"3 min\", \"perVerification\": \"7 min\","
                    + " \"cleanUp\": \"8 min\"}";

    private static final String WHOLE = """
            "wantedUncertainty": "2.5 %%", "shaftSpeed": "30 rev/min", "targetRates": ["300 lb/mi"], "testSpeeds": ["25 mi/h"],
            "liquidTargetRates": ["24 gal/mi", "80 gal/mi"], "prewetRates": ["10 gal/ton"],
            "weighingMethods": [
              {"name": "tarp", "scale": "S", "containers": "1", "holds": "300 lb", "tare": "12 lb", %1$s},
              {"name": "tote", "scale": "S", "containers": "1", "holds": "700 lb", "tare": "46 lb",
               "density": {"value": "9.82 lb/gal", "standardUncertainty": "0.02 lb/gal"}, %1$s}],
            "readingMethods": [{"name": "measure", "container": "M", "fills": "1", "holds": "5 gal", %1$s}]""".formatted(TIMES);

    private static List<TruckPlan> planned(String plan) {
        FleetDay day = day(plan);
        return FleetPlanner.of(BuiltInTypes.registry())
                .plan(day, day.plan().orElseThrow())
                .trucks();
    }

    @Test
    void eachIsPlannedWithTheMethodsThatAreForIt() {
        List<TruckPlan> trucks = planned(WHOLE);

        assertThat(trucks).allSatisfy(truck -> assertThat(truck.refusal()).isEmpty());
        assertThat(trucks).extracting(truck -> truck.isReachedBy(0)).containsExactly(true, false, false);
        assertThat(trucks).extracting(truck -> truck.isReachedBy(1)).containsExactly(false, true, true);
        assertThat(trucks).extracting(truck -> truck.isReachedBy(2)).containsExactly(false, true, true);
        assertThat(trucks.get(1).points().get(0).methods().get(0).refusal())
                .contains("method must be one for liquids: tarp");
    }

    @Test
    void aMethodOfTheOtherKindIsOutOfReachOfNobody() {
        FleetDay day = day(WHOLE);
        FleetPlan plan =
                FleetPlanner.of(BuiltInTypes.registry()).plan(day, day.plan().orElseThrow());

        assertThat(plan.outOfReach(0)).isEmpty();
        assertThat(plan.outOfReach(2)).isEmpty();
    }

    @Test
    void whatWetsIsVerifiedAtThePrewetRateAndWhatIsLaidAloneAtItsOwn() {
        List<TruckPlan> trucks = planned(WHOLE);
        List<RunPlan> wetting = trucks.get(1).points().get(0).methods().get(2).runs();
        List<RunPlan> alone = trucks.get(2).points().get(0).methods().get(1).runs();

        assertThat(trucks).extracting(truck -> truck.targetRates().size()).containsExactly(1, 1, 2);
        assertThat(wetting)
                .singleElement()
                .satisfies(run ->
                        assertThat(Amounts.format(run.run().targetRate())).isEqualTo("1.5 gal/mi"));
        assertThat(alone).hasSize(2);
        // 1.5 gal/mi at 25 mi/h are 0.625 gal/min.
        RunPlan run = wetting.get(0);
        double gallons =
                Amounts.in(run.result().series().amountPerCatch().asType(Volume.class), SpreadingUnits.US_GALLON);
        assertThat(gallons)
                .isCloseTo(0.625 / 60 * Amounts.in(run.runTime(), SpreadingUnits.SECOND), within(1e-9))
                .isLessThanOrEqualTo(5);
    }

    @Test
    void twoSettingsOfOneFlowAreVerifiedOnce() {
        TruckPlan wetting = planned(WHOLE.replace("[\"300 lb/mi\"]", "[\"200 lb/mi\", \"400 lb/mi\"]")
                        .replace("[\"10 gal/ton\"]", "[\"5 gal/ton\", \"10 gal/ton\"]"))
                .get(1);

        assertThat(wetting.targetRates())
                .extracting(rate -> Amounts.format(rate))
                .containsExactly("0.5 gal/mi", "1 gal/mi", "2 gal/mi");
        assertThat(wetting.points().get(0).methods().get(2).runs()).hasSize(3);
    }

    @Test
    void aPlansShaftSpeedIsThatOfConveyors() {
        List<TruckPlan> with = planned(WHOLE);
        List<TruckPlan> without = planned(WHOLE.replace("\"shaftSpeed\": \"30 rev/min\", ", ""));

        assertThat(with.get(0).time(0)).isNotEqualTo(without.get(0).time(0));
        assertThat(with.get(1).time(2)).isEqualTo(without.get(1).time(2));
        assertThat(with.get(1).range()).isEmpty();
    }

    @Test
    void aContainerThatIsNotThereIsRefusedWithTheMethodsName() {
        assertThatThrownBy(() -> planned(WHOLE.replace("\"container\": \"M\"", "\"container\": \"N\"")))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("reading method \"measure\"")
                .hasMessageContaining("one of [M]");
    }

    @Test
    void prewetRatesNeedTheRatesOfWhatIsWetted() {
        assertThatThrownBy(() -> day(WHOLE.replace("\"targetRates\": [\"300 lb/mi\"], ", "")))
                .hasMessageContaining("prewet rates")
                .hasMessageContaining("given with the target rates of what is wetted");
    }
}
