package org.gritwright.core.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** The ideal rule keeps its own promises, by the truth that only the simulator knows. */
class IdealTest {
    private static final int TRUCKS = 150;

    /** The value was found before, so that its error doesn't depend on the day's catches. */
    private static boolean isFoundBefore(TrueTruck truck) {
        return !truck.plan().enters();
    }

    private static List<DayMaker.Made> trucks(Fault fault) {
        return LongStream.range(1, 1 + TRUCKS)
                .mapToObj(seed -> Simulation.make(fault, seed, IdealTest::isFoundBefore))
                .toList();
    }

    private static Ideal.Decision decision(DayMaker.Made made) {
        return new Ideal(made.truck(), made.day()).decision();
    }

    @Test
    void whatIsDecidedIsRarelyWrong() {
        List<DayMaker.Made> made =
                List.of(Fault.NONE, Faults.named("drift-5-to-8"), Faults.named("drift-8-to-12")).stream()
                        .flatMap(fault -> trucks(fault).stream())
                        .toList();
        List<DayMaker.Made> within = made.stream()
                .filter(one -> decision(one) == Ideal.Decision.WITHIN)
                .toList();
        List<DayMaker.Made> outside = made.stream()
                .filter(one -> decision(one) == Ideal.Decision.OUTSIDE)
                .toList();

        assertThat(within).hasSizeGreaterThan(60);
        assertThat(within.stream().filter(one -> Math.abs(one.roadError()) > DayMaker.TOLERANCE + 0.005))
                .hasSizeLessThan(within.size() / 20);
        assertThat(outside).hasSizeGreaterThan(150);
        assertThat(outside.stream().filter(one -> Math.abs(one.roadError()) < DayMaker.TOLERANCE - 0.005))
                .hasSizeLessThan(outside.size() / 20);
    }

    /** A drift contradicts nothing: the value is out of date. */
    @Test
    void aDriftIsNoSlip() {
        assertThat(trucks(Faults.named("drift-5-to-8")).stream()
                        .filter(made ->
                                Simulation.rival(new Ideal(made.truck(), made.day()), Fault.NONE) > Ideal.VISIBLE))
                .hasSizeLessThan(TRUCKS / 10);
    }

    /** Half the pulses per revolution halve every discharge, which no drift explains. */
    @Test
    void halfThePulsesAreVisible() {
        Fault half = Faults.named("pulses-half");

        assertThat(trucks(half).stream()
                        .filter(made -> new Ideal(made.truck(), made.day()).ratio(half) > Ideal.VISIBLE))
                .hasSizeGreaterThan(TRUCKS * 9 / 10);
    }

    @Test
    void withoutFaultOneIsRarelyVisible() {
        long seemsVisible = LongStream.range(1, 101)
                .mapToObj(seed -> Simulation.make(Fault.NONE, seed, truck -> true))
                .filter(made -> Simulation.rival(new Ideal(made.truck(), made.day()), Fault.NONE) > Ideal.VISIBLE)
                .count();

        // One in 100 for each fault, and many faults can't be in one document.
        assertThat(seemsVisible).isLessThan(15);
    }
}
