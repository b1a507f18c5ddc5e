package org.gritwright.core.weighing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.pounds;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

class CaughtMassLawsTest {
    /** Masses as a scale shows them: so many divisions of 0.1 lb. */
    private static double divisions(int count) {
        return BigDecimal.valueOf(count, 1).doubleValue();
    }

    private static CaughtMass caught(List<Weighing> weighings) {
        return new CaughtMass(SCALE, DAY, weighings);
    }

    @Property
    void splittingAContainerChangesNothing(
            @ForAll @IntRange(min = 1, max = 20000) int first,
            @ForAll @IntRange(min = 1, max = 20000) int second,
            @ForAll @IntRange(max = 500) int tare) {
        CaughtMass inOne =
                caught(List.of(new Weighing("A", pounds(divisions(first + second + tare)), pounds(divisions(tare)))));
        CaughtMass inTwo = caught(List.of(
                new Weighing("A", pounds(divisions(first + tare)), pounds(divisions(tare))),
                new Weighing("B", pounds(divisions(second + tare)), pounds(divisions(tare)))));

        assertThat(inTwo.total()).isEqualTo(inOne.total());
    }

    @Property
    void theTareDoesNotMatter(
            @ForAll @IntRange(min = 1, max = 20000) int net, @ForAll @IntRange(max = 20000) int tare) {
        CaughtMass withTare =
                caught(List.of(new Weighing("A", pounds(divisions(net + tare)), pounds(divisions(tare)))));

        assertThat(withTare.total()).isEqualTo(pounds(divisions(net)));
    }

    @Property
    void theOrderOfContainersDoesNotMatter(
            @ForAll @Size(min = 1, max = 6) List<@IntRange(min = 1, max = 20000) Integer> nets, @ForAll long seed) {
        List<Weighing> weighings = new ArrayList<>();
        nets.forEach(net -> weighings.add(new Weighing("A", pounds(divisions(net)), pounds(0))));
        CaughtMass asGiven = caught(weighings);
        Collections.shuffle(weighings, new Random(seed));

        assertThat(caught(weighings).total()).isEqualTo(asGiven.total());
    }

    @Property
    void theUnitDoesNotMatter(@ForAll @Size(min = 1, max = 6) List<@IntRange(min = 1, max = 20000) Integer> nets) {
        List<Weighing> inPounds = new ArrayList<>();
        List<Weighing> inGrams = new ArrayList<>();
        for (int net : nets) {
            inPounds.add(new Weighing("A", pounds(divisions(net + 40)), pounds(4)));
            inGrams.add(new Weighing(
                    "A",
                    Amounts.of(Amounts.in(pounds(divisions(net + 40)), SpreadingUnits.GRAM), SpreadingUnits.GRAM),
                    Amounts.of(Amounts.in(pounds(4), SpreadingUnits.GRAM), SpreadingUnits.GRAM)));
        }

        double kilograms = caught(inPounds).kilograms();
        assertThat(caught(inGrams).kilograms()).isCloseTo(kilograms, within(1e-12 * kilograms));
    }
}
