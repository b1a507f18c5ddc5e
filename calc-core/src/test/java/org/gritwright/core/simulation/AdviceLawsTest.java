package org.gritwright.core.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.ToDo;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.CountEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.fleet.day.WeighingEntry;
import org.gritwright.core.verification.Advice;
import org.gritwright.core.verification.Verification;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Laws of advice, on simulated trucks: healthy ones and those with a fault. The trucks are the same in every run. */
class AdviceLawsTest {
    private static final int FIRST_SEED = 5_000_000;

    private static FleetDay day(int seed, Fault fault) {
        return DayMaker.make(TruckMaker.make(FIRST_SEED + seed, "T-1", fault::fits), fault)
                .day();
    }

    private static Fault fault(int index) {
        return index == 0 ? Fault.NONE : Faults.ALL.get(index - 1);
    }

    private static List<NextStep> steps(FleetDay day) {
        return Simulation.assess(day).toDo().stream().map(ToDo::step).toList();
    }

    @Property(tries = 120, seed = "20261127")
    void otherNamesNeverChangeTheAdvice(@ForAll @IntRange(max = 500) int seed, @ForAll @IntRange(max = 35) int fault) {
        FleetDay day = day(seed, fault(fault));
        FleetDay renamed = Edit.everyCatch(
                day,
                entry -> Edit.containers(
                        entry, one -> new WeighingEntry("tub of " + one.container(), one.gross(), one.tare())));

        assertThat(steps(renamed)).isEqualTo(steps(day));
    }

    @Property(tries = 120, seed = "20261127")
    void theOrderInWhichCatchesAreWrittenDownNeverChangesTheAdvice(
            @ForAll @IntRange(max = 500) int seed, @ForAll @IntRange(max = 35) int fault) {
        FleetDay day = day(seed, fault(fault));
        FleetDay reversed = Edit.truck(day, truck -> {
            List<CalibrationCatchEntry> calibrations = new ArrayList<>(truck.calibrationCatches());
            Collections.reverse(calibrations);
            List<VerificationCatchEntry> verifications = new ArrayList<>(truck.verificationCatches());
            Collections.reverse(verifications);
            return truck.calibrationCatches(calibrations).verificationCatches(verifications);
        });

        assertThat(steps(reversed)).containsExactlyInAnyOrderElementsOf(steps(day));
    }

    /** In kilograms as in pounds: the same masses, written with all their digits. Pounds may also be suspected to be kilograms. */
    @Property(tries = 120, seed = "20261127")
    void theUnitOfMassNeverChangesTheAdviceOfASoundDay(@ForAll @IntRange(max = 2000) int seed) {
        FleetDay day = day(seed, Fault.NONE);
        FleetDay converted = Edit.everyCatch(
                day,
                entry -> Edit.containers(
                        entry,
                        one -> new WeighingEntry(one.container(), converted(one.gross()), converted(one.tare()))));

        assertThat(Simulation.assess(converted).nextStep())
                .isEqualTo(Simulation.assess(day).nextStep());
    }

    private static Quantity<Mass> converted(Quantity<Mass> mass) {
        return Amounts.ofSi(
                Amounts.si(Mass.class, mass),
                mass.getUnit().equals(SpreadingUnits.POUND) ? SpreadingUnits.KILOGRAM : SpreadingUnits.POUND);
    }

    /**
     * A verification catch twice as large as the last one, and of the same error: it says the same again, so whatever was proven
     * stays proven. A catch that merely scatters as the others do may take a proof away, since it moves the error.
     */
    @Property(tries = 200, seed = "20261127")
    void oneMoreCatchThatSaysTheSameNeverTakesAProofAway(@ForAll @IntRange(max = 2000) int seed) {
        FleetDay day = day(seed, Fault.NONE);
        TruckDay truck = day.trucks().get(0);
        Assume.that(Simulation.assess(day).massProof() == MassProof.PROVEN);
        // A display's step doesn't double with what it shows.
        Assume.that(truck.inForce().size() == 1
                && truck.verificationCatches().stream()
                        .allMatch(one -> one.indicated().isEmpty()));
        VerificationCatchEntry last =
                truck.verificationCatches().get(truck.verificationCatches().size() - 1);
        Assume.that(
                last.entry().counted().stream().allMatch(count -> count.pulses().isPresent()));
        FleetDay more = Edit.truck(
                day,
                one -> one.verificationCatches(
                        Stream.concat(one.verificationCatches().stream(), Stream.of(doubled(last)))
                                .toList()));
        TruckAssessment assessed = Simulation.assess(more);
        Assume.that(!assessed.isRefused() && !isSlipSuspected(more));

        assertThat(assessed.massProof()).isEqualTo(MassProof.PROVEN);
    }

    private static long minutes(VerificationCatchEntry one) {
        return (long) Amounts.in(one.runTime().orElseThrow(), SpreadingUnits.MINUTE);
    }

    private static VerificationCatchEntry doubled(VerificationCatchEntry last) {
        CatchEntry entry = Edit.containers(
                last.entry(),
                one -> new WeighingEntry(
                        one.container(),
                        Amounts.of(
                                2 * one.gross().getValue().doubleValue()
                                        - one.tare().getValue().doubleValue(),
                                one.gross().getUnit()),
                        one.tare()));
        CatchEntry later = new CatchEntry(
                // After both runs.
                entry.at().plusMinutes(20 + 3 * minutes(last)),
                entry.operator(),
                entry.scale(),
                entry.containers(),
                entry.read(),
                entry.density(),
                entry.counted()
                        .map(count ->
                                CountEntry.ofPulses(Edit.scaled(count.pulses().orElseThrow(), 2))),
                entry.setting(),
                entry.material(),
                entry.conditions(),
                entry.notes());
        return Edit.withRunTime(Edit.withIndicated(Edit.with(last, later), shown -> Edit.scaled(shown, 2)), 2);
    }

    /** The value that is listed and that the catch was made with is off by more and more; everything else stays. */
    @Property(tries = 100, seed = "20261127")
    void aLargerErrorNeverMakesTheAdviceMilder(
            @ForAll @IntRange(max = 500) int seed,
            @ForAll @IntRange(min = 0, max = 40) int first,
            @ForAll @IntRange(min = 1, max = 40) int more) {
        FleetDay sound = day(seed, Fault.NONE);
        TruckDay truck = sound.trucks().get(0);
        Assume.that(truck.verificationCatches().size() == 1
                && truck.inForce().size() == 1
                && truck.verificationCatches().get(0).entry().counted().isPresent()
                && truck.verificationCatches().get(0).indicated().isEmpty());
        double middle = Simulation.assess(sound)
                        .verifications()
                        .get(0)
                        .calibrationError()
                        .orElseThrow()
                        .getValue()
                        .doubleValue()
                / 100;

        FleetDay smaller = off(sound, middle, first);
        FleetDay larger = off(sound, middle, first + more);
        Assume.that(!isSlipSuspected(smaller) && !isSlipSuspected(larger));
        assertThat(severity(larger)).isGreaterThanOrEqualTo(severity(smaller));
    }

    /** A slip may explain one error and not a larger one. */
    private static boolean isSlipSuspected(FleetDay day) {
        return Simulation.assess(day).findings().stream()
                .anyMatch(finding -> finding.code() == FindingCode.PROBABLE_SLIPS);
    }

    /** With the indicated mass too large by so many half percents. */
    private static FleetDay off(FleetDay day, double middle, int halfPercents) {
        double factor = (1 + halfPercents * 0.005) / (1 + middle);
        return Edit.truck(
                day,
                truck -> truck.inForce(truck.inForce().stream()
                                .map(held -> new org.gritwright.core.fleet.day.InForceEntry(
                                        Edit.scaledAny(held.value(), factor),
                                        java.util.Optional.empty(),
                                        held.since(),
                                        held.material(),
                                        held.setting(),
                                        held.slot()))
                                .toList())
                        .verificationCatches(truck.verificationCatches().stream()
                                .map(one -> Edit.withInForce(one, Edit.scaledAny(one.inForce(), factor)))
                                .toList()));
    }

    /** What is said of the mass: nothing, catch more, enter another value, something is wrong. */
    private static int severity(FleetDay day) {
        List<NextStep> steps = steps(day);
        if (steps.contains(NextStep.FIND_FAULT) || steps.contains(NextStep.CHECK_ENTRIES)) {
            return 3;
        }
        if (steps.contains(NextStep.ENTER_CORRECTION)) {
            return 2;
        }
        return steps.contains(NextStep.CATCH_MORE) ? 1 : 0;
    }

    @Property(tries = 150, seed = "20261127")
    void aCatchWhoseDataAreDoubtedIsNeverAdvisedOtherwise(
            @ForAll @IntRange(max = 500) int seed, @ForAll @IntRange(max = 35) int fault) {
        TruckAssessment truck = Simulation.assess(day(seed, fault(fault)));
        for (Verification one : truck.verifications()) {
            if (one.isDoubted()) {
                assertThat(one.judgement().advice()).isEqualTo(Advice.FIND_FAULT);
                assertThat(one.judgement().further()).isEmpty();
                assertThat(one.proposedCorrection()).isEmpty();
            }
            if (one.judgement().advice() == Advice.CORRECT) {
                assertThat(one.proposedCorrection()).isPresent();
            }
        }
        if (truck.findings().stream().anyMatch(finding -> finding.code().doubtsData()) && !truck.isRefused()) {
            assertThat(truck.nextStep()).isIn(NextStep.FIND_FAULT, NextStep.CHECK_ENTRIES);
        }
    }
}
