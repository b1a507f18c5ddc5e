package org.gritwright.core.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_KILOMETER;
import static org.gritwright.units.SpreadingUnits.KILOMETER_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.ApplicationRate;
import org.junit.jupiter.api.Test;

class EnvelopeLawsTest {
    private static Envelope envelope(double pounds, double lowest, double highest) {
        return Envelope.of(
                Measured.once(Amounts.of(pounds, POUND_PER_REVOLUTION)),
                new WorkingRange(
                        Amounts.of(lowest, REVOLUTION_PER_MINUTE), Amounts.of(highest, REVOLUTION_PER_MINUTE)));
    }

    private static Quantity<ApplicationRate> rate(double poundsPerMile) {
        return Amounts.of(poundsPerMile, POUND_PER_MILE);
    }

    /** What is a step beyond, by a part in a million, is not. */
    @Property
    void theCornersAreReachedAndAStepBeyondIsNot(
            @ForAll @DoubleRange(min = 1, max = 60) double pounds,
            @ForAll @DoubleRange(min = 1, max = 10) double lowest,
            @ForAll @DoubleRange(min = 11, max = 90) double highest,
            @ForAll @DoubleRange(min = 50, max = 900) double asked) {
        Envelope envelope = envelope(pounds, lowest, highest);
        Span<Speed> speeds = envelope.speedsFor(rate(asked));
        Quantity<Speed> slowest = speeds.lowest().orElseThrow().value().value();
        Quantity<Speed> fastest = speeds.highest().value().value();

        assertThat(envelope.deliveredAt(rate(asked), slowest).limit()).isEmpty();
        assertThat(envelope.deliveredAt(rate(asked), fastest).limit()).isEmpty();
        assertThat(envelope.deliveredAt(rate(asked), slowest.multiply(1 - 1e-6)).limit())
                .contains(Limit.SLOWEST_STEADY_SHAFT);
        assertThat(envelope.deliveredAt(rate(asked), fastest.multiply(1 + 1e-6)).limit())
                .contains(Limit.FASTEST_SHAFT);
    }

    @Property
    void aWiderRangeNeverShrinksTheEnvelope(
            @ForAll @DoubleRange(min = 1, max = 10) double lowest,
            @ForAll @DoubleRange(min = 11, max = 90) double highest,
            @ForAll @DoubleRange(min = 0, max = 1) double less,
            @ForAll @DoubleRange(min = 1, max = 3) double more,
            @ForAll @DoubleRange(min = 10, max = 900) double asked,
            @ForAll @DoubleRange(min = 1, max = 70) double milesPerHour) {
        Delivered narrow = envelope(6, lowest, highest).deliveredAt(rate(asked), EnvelopeTest.speed(milesPerHour));
        Delivered wide =
                envelope(6, lowest * less, highest * more).deliveredAt(rate(asked), EnvelopeTest.speed(milesPerHour));

        assertThat(wide.limit().isPresent() && narrow.limit().isEmpty()).isFalse();
    }

    @Property
    void unitsDontMatter(
            @ForAll @DoubleRange(min = 10, max = 900) double asked,
            @ForAll @DoubleRange(min = 1, max = 90) double milesPerHour) {
        Quantity<ApplicationRate> metric = rate(asked).to(KILOGRAM_PER_KILOMETER);
        Quantity<Speed> kilometers = EnvelopeTest.speed(milesPerHour).to(KILOMETER_PER_HOUR);
        Delivered inPounds = EnvelopeTest.SIX.deliveredAt(rate(asked), EnvelopeTest.speed(milesPerHour));
        Delivered inKilograms = EnvelopeTest.SIX.deliveredAt(metric, kilometers);

        assertThat(Amounts.in(inKilograms.delivered(), POUND_PER_MILE))
                .isCloseTo(Amounts.in(inPounds.delivered(), POUND_PER_MILE), within(1e-9 * asked));
        assertThat(inKilograms.limit()).isEqualTo(inPounds.limit());
    }

    /** Mass is neither made nor lost: put down = asked − under + over, and twice the rate at half the flow per pound is the same. */
    @Property
    void whatIsPutDownIsWhatWasAskedLessWhatIsMissingAndMoreWhatIsTooMuch(
            @ForAll @DoubleRange(min = 0, max = 90) double from,
            @ForAll @DoubleRange(min = 0, max = 90) double to,
            @ForAll boolean stops) {
        Envelope envelope = EnvelopeTest.SIX.with(stops ? BelowRange.STOPS : BelowRange.KEEPS_SLOWEST);
        Driven driven = envelope.over(rate(300), DriveCycleTest.cycle(0, from, 100, to));
        double sum = 0;
        int steps = 20_000;
        CompiledEnvelope compiled = envelope.compiled();
        double perMeter = Amounts.si(ApplicationRate.class, rate(300));
        for (int i = 0; i < steps; i++) {
            double milesPerHour = from + (to - from) * (i + 0.5) / steps;
            sum += compiled.flow(perMeter * Amounts.si(Speed.class, EnvelopeTest.speed(1)) * milesPerHour)
                    * 100
                    / steps;
        }

        assertThat(Amounts.si(Mass.class, driven.delivered())).isCloseTo(sum, within(0.002 + 1e-4 * sum));
        assertThat(Amounts.si(Mass.class, driven.under())).isNotNegative();
        assertThat(Amounts.si(Mass.class, driven.over())).isNotNegative();
    }

    @Property
    void everyCellOfAChartIsTheAnswerToItsQuestion(
            @ForAll @DoubleRange(min = 10, max = 900) double asked,
            @ForAll @DoubleRange(min = 1, max = 90) double milesPerHour) {
        double[] rates = {0, Amounts.si(ApplicationRate.class, rate(asked))};
        double[] speeds = {0, Amounts.si(Speed.class, EnvelopeTest.speed(milesPerHour)), -1};
        double[] cells = new double[6];
        EnvelopeTest.SIX.compiled().fill(rates, speeds, cells);

        assertThat(cells[4])
                .isCloseTo(
                        Amounts.si(
                                ApplicationRate.class,
                                EnvelopeTest.SIX
                                        .deliveredAt(rate(asked), EnvelopeTest.speed(milesPerHour))
                                        .delivered()),
                        within(1e-12));
        assertThat(new double[] {cells[0], cells[1], cells[2], cells[3], cells[5]})
                .containsOnly(0);
    }

    @Test
    void aChartNeedsACellForEachRateAndSpeed() {
        assertRefused(
                "cells of a chart must be as many as rates times speeds: 5",
                () -> EnvelopeTest.SIX.compiled().fill(new double[2], new double[3], new double[5]));
        assertRefused("least flow must be 0 or more: -1.0", () -> new CompiledEnvelope(-1, 1, true));
        assertRefused("greatest flow must be greater than 0: 0.0", () -> new CompiledEnvelope(0, 0, true));
    }
}
