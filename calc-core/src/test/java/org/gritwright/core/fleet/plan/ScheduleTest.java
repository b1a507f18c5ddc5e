package org.gritwright.core.fleet.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.plan.FleetPlannerTest.PAILS;
import static org.gritwright.core.fleet.plan.FleetPlannerTest.TARP;
import static org.gritwright.core.fleet.plan.FleetPlannerTest.minutes;
import static org.gritwright.core.fleet.plan.FleetPlannerTest.plan;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.day.StepTimes;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.WeighingMethodEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** Trucks that are all alike take the same time: what a crew-day holds is whole trucks. */
class ScheduleTest {
    private static WeighingMethodEntry daily(WeighingMethodEntry method, double setUp, double cleanUp) {
        StepTimes times = method.times();
        return new WeighingMethodEntry(
                method.name(),
                method.scale(),
                method.containers(),
                new StepTimes(
                        times.setUp(),
                        times.perCatch(),
                        times.perContainer(),
                        times.perVerification(),
                        times.cleanUp(),
                        Optional.of(minutes(setUp)),
                        Optional.of(minutes(cleanUp))));
    }

    private static PlanEntry crews(PlanEntry plan, int crews, double minutesOfDay) {
        return new PlanEntry(
                plan.wantedUncertainty(),
                plan.wantedVerificationUncertainty(),
                plan.fewestRepeats(),
                plan.mostRepeats(),
                plan.shaftSpeed(),
                plan.lowestShaftSpeed(),
                plan.highestShaftSpeed(),
                plan.startTimeConstant(),
                plan.greatestStartLoss(),
                plan.countUncertainty(),
                Optional.of(crews),
                Optional.of(minutes(minutesOfDay)),
                plan.targetRates(),
                plan.testSpeeds(),
                plan.weighingMethods(),
                List.of(),
                List.of(),
                List.of());
    }

    private static FleetPlan planned(int trucks, PlanEntry plan) {
        List<TruckDay> all =
                IntStream.range(0, trucks).mapToObj(i -> idle("T-" + i)).toList();
        return FleetPlanner.of(BuiltInTypes.registry()).plan(Trucks.day(all.toArray(TruckDay[]::new)), plan);
    }

    private static double truckMinutes(FleetPlan plan, int method) {
        return Amounts.in(plan.trucks().get(0).time(method).orElseThrow(), SpreadingUnits.MINUTE);
    }

    private static double workMinutes(Schedule schedule) {
        return Amounts.in(schedule.work(), SpreadingUnits.MINUTE);
    }

    @Test
    void withoutCrewsItIsOneCrewAndEightHours() {
        FleetPlan plan = planned(1, plan(3, PAILS));
        assertThat(plan.plan().howManyCrews()).isEqualTo(1);
        assertThat(Amounts.format(plan.plan().lengthOfDay())).isEqualTo("8 h");
        Schedule schedule = plan.schedule(0);
        assertThat(schedule.crewDays()).isEqualTo(1);
        assertThat(workMinutes(schedule)).isCloseTo(truckMinutes(plan, 0), within(1e-9));
    }

    /** Pails take about 90 min a truck: with 60 min once a day, 480 min hold four trucks, and ten trucks take three days. */
    @Test
    void theYardIsSetUpOnceADayAndNotForEachTruck() {
        FleetPlan plan = planned(10, plan(3, daily(PAILS, 40, 20)));
        double truck = truckMinutes(plan, 0);
        assertThat(60 + 4 * truck).isLessThan(480);
        assertThat(60 + 5 * truck).isGreaterThan(480);
        Schedule schedule = plan.schedule(0);
        assertThat(schedule.trucks()).isEqualTo(10);
        assertThat(schedule.crewDays()).isEqualTo(3);
        assertThat(schedule.days()).isEqualTo(3);
        assertThat(schedule.trucksPerDay()).isCloseTo(10.0 / 3, within(1e-12));
        assertThat(workMinutes(schedule)).isCloseTo(10 * truck + 3 * 60, within(1e-9));
    }

    @Test
    void crewsWorkSideBySide() {
        Schedule two = planned(10, crews(plan(3, daily(PAILS, 40, 20)), 2, 480)).schedule(0);
        assertThat(two.crewDays()).isEqualTo(3);
        assertThat(two.days()).isEqualTo(2);
        assertThat(two.trucksPerDay()).isCloseTo(5, within(1e-12));
    }

    /** In a mix, a crew that uses both methods on a day sets up both. */
    @Test
    void aMixSetsUpEachMethodThatADayUses() {
        FleetPlan plan = planned(2, plan(3, daily(PAILS, 10, 5), daily(TARP, 20, 10)));
        Schedule mix = plan.schedule(truck -> Optional.of(truck.truck().id().equals("T-0") ? 0 : 1));
        assertThat(mix.crewDays()).isEqualTo(1);
        assertThat(workMinutes(mix)).isCloseTo(truckMinutes(plan, 0) + truckMinutes(plan, 1) + 15 + 30, within(1e-9));
    }

    /** Each day of 60 min has 40 left for the truck: 40 + 40 + the rest. */
    @Test
    void aTruckThatTakesMoreThanADayFillsSeveral() {
        FleetPlan plan = planned(1, crews(plan(3, daily(PAILS, 10, 10)), 1, 60));
        double truck = truckMinutes(plan, 0);
        assertThat(truck).isBetween(80.1, 119.9);
        Schedule schedule = plan.schedule(0);
        assertThat(schedule.crewDays()).isEqualTo(3);
        assertThat(workMinutes(schedule)).isCloseTo(truck + 3 * 20, within(1e-9));
    }

    /** Of two trucks of three days each the rests share the last day. */
    @Test
    void whatIsLeftOfLongTrucksSharesADay() {
        FleetPlan plan = planned(2, crews(plan(3, daily(PAILS, 10, 10)), 1, 60));
        double truck = truckMinutes(plan, 0);
        assertThat(truck).isBetween(80.1, 99.9);
        Schedule schedule = plan.schedule(0);
        assertThat(schedule.crewDays()).isEqualTo(5);
        assertThat(workMinutes(schedule)).isCloseTo(2 * truck + 5 * 20, within(1e-9));
    }

    @Test
    void anotherMethodMustFitIntoADayWithItsOwnSetUp() {
        WeighingMethodEntry pails = daily(PAILS, 10, 5);
        WeighingMethodEntry tarp = daily(TARP, 20, 10);
        FleetPlan wide = planned(2, plan(3, pails, tarp));
        double both = truckMinutes(wide, 0) + truckMinutes(wide, 1) + 15 + 30;
        for (int days = 1; days <= 2; days++) {
            FleetPlan plan = planned(2, crews(plan(3, pails, tarp), 1, days == 1 ? both + 0.1 : both - 0.1));
            assertThat(plan.schedule(truck -> Optional.of(truck.truck().id().equals("T-0") ? 0 : 1))
                            .crewDays())
                    .isEqualTo(days);
        }
    }

    @Test
    void whatIsLeftOutTakesNoTime() {
        FleetPlan plan = planned(3, plan(3, PAILS));
        Schedule none = plan.schedule(truck -> Optional.empty());
        assertThat(none.trucks()).isZero();
        assertThat(none.days()).isZero();
        assertThat(none.trucksPerDay()).isZero();
        assertThat(workMinutes(none)).isZero();
    }

    @Test
    void badCrewsAndDaysAreRefused() {
        assertRefused("crews must be from 1 to 100: 0", () -> crews(plan(3, PAILS), 0, 480));
        assertRefused("crews must be from 1 to 100: 101", () -> crews(plan(3, PAILS), 101, 480));
        assertRefused("working day must be greater than 0: 0 min", () -> crews(plan(3, PAILS), 1, 0));
        assertRefused(
                "yard's daily set-up and clean-up of weighing method pails must be shorter than the working day of 60"
                        + " min: 60 min",
                () -> crews(plan(3, daily(PAILS, 40, 20)), 1, 60));
        assertRefused("time to set up the yard must be 0 or more: -1 min", () -> daily(PAILS, -1, 0));
        assertRefused("time to clean up the yard must be 0 or more: -1 min", () -> daily(PAILS, 0, -1));
        assertRefused("crews must be 1 or more: 0", () -> new Schedule(0, minutes(0), 0, 0));
        assertRefused("trucks must be 0 or more: -1", () -> new Schedule(-1, minutes(0), 0, 1));
        assertRefused("days of a crew must be 0 or more: -1", () -> new Schedule(0, minutes(0), -1, 1));
    }
}
